//! Whole runs of the program on three tops: `skinspan check`, from its start to its end, by the clock and by processor.
//! Never a timed test: machines differ. `cargo bench --bench whole`.
#![allow(clippy::print_stdout, reason = "what a benchmark is for")]
#![allow(clippy::unwrap_used, reason = "a benchmark that cannot go on has failed")]

use std::{process::Command, time::Instant};

const TOPS: [&str; 3] = ["survey-launch", "kelp-harvester", "galley-roof"];

/// Times that each is run; the medians count.
const SAMPLES: usize = 5;

/// Ticks of a second in `/proc`: the same on every Linux that says.
const TICKS: f64 = 100.0;

/// Processor seconds of all children that have ended; only Linux says.
fn of_children() -> Option<f64> {
    let stat = std::fs::read_to_string("/proc/self/stat").ok()?;
    // The name of the program, which may hold blanks, ends at the last bracket; after it, from the state on.
    let mut words = stat.rsplit_once(')')?.1.split_whitespace().skip(13);
    let mut ticks = || words.next()?.parse::<f64>().ok();
    Some((ticks()? + ticks()?) / TICKS)
}

fn median(mut list: Vec<f64>) -> f64 {
    list.sort_by(f64::total_cmp);
    list[list.len() / 2]
}

fn main() {
    println!("{:<16} {:>9} {:>12}  (s, medians of {SAMPLES})", "top", "clock", "processor");
    for top in TOPS {
        let file = format!("{}/examples/{top}.toml", env!("CARGO_MANIFEST_DIR"));
        let (mut clock, mut processor) = (Vec::new(), Vec::new());
        for _ in 0..SAMPLES {
            let (before, start) = (of_children(), Instant::now());
            let output = Command::new(env!("CARGO_BIN_EXE_skinspan")).args(["check", &file]).output().unwrap();
            clock.push(start.elapsed().as_secs_f64());
            assert!(matches!(output.status.code(), Some(0 | 1)), "{top}: no answer");
            processor.extend(of_children().zip(before).map(|(after, before)| after - before));
        }
        let processor = if processor.is_empty() { "not known".to_owned() } else { format!("{:.2}", median(processor)) };
        println!("{top:<16} {:>9.2} {processor:>12}", median(clock));
    }
}

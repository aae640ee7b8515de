//! How the cost of a plate grows with its unknowns: square plates of about 12 500, 25 000, 50 000 and 100 000, step by
//! step, and the memory they take. Never a timed test: machines differ. `cargo bench --bench growth`.
#![allow(clippy::print_stdout, reason = "what a benchmark is for")]
#![allow(clippy::cast_precision_loss, reason = "some dozen cells, some million kilobytes")]
#![allow(clippy::unwrap_used, reason = "a benchmark that cannot go on has failed")]

#[path = "../plates/kit.rs"]
#[allow(dead_code, reason = "the tests use the rest")]
mod kit;

use std::{
    env, hint, process,
    time::{Duration, Instant},
};

use skinspan::finite_element::{Degree, Fields, Load, Model, Ordered};

use kit::{Grid, pa, sandwich, steps};

/// Cells along each side.
const CELLS: [usize; 4] = [20, 29, 41, 58];

/// Times that each size is solved; the median counts.
const SAMPLES: usize = 5;

/// Right-hand sides that are solved for together.
const MANY: usize = 16;

const STEPS: [&str; 5] = ["order", "assembly", "factor", "solve 1", "solve 16"];

/// The largest that this process ever was, in kilobytes; only Linux says.
fn peak() -> Option<f64> {
    let status = std::fs::read_to_string("/proc/self/status").ok()?;
    status.lines().find_map(|line| line.strip_prefix("VmHWM:"))?.trim().strip_suffix("kB")?.trim().parse().ok()
}

fn timed<T>(work: impl FnOnce() -> T) -> (T, Duration) {
    let start = Instant::now();
    let done = hint::black_box(work());
    (done, start.elapsed())
}

/// One round: unknowns, the time of each step, and the peaks so far after one and after many right-hand sides.
fn round(grid: &Grid) -> (usize, [Duration; 5], [Option<f64>; 2]) {
    let (shell, held) = (sandwich(), grid.simply_supported());
    let model = Model {
        corners: &grid.corners,
        triangles: &grid.triangles,
        degree: Degree::Four,
        fields: Fields::Bending,
        shells: &|_| shell,
        held: &held,
        beds: &[],
    };
    let (ordered, order) = timed(|| Ordered::new(&model).unwrap());
    let (assembled, assembly) = timed(|| ordered.assembled(&model).unwrap());
    let (plate, factor) = timed(|| assembled.factored().unwrap());
    let load = Load::none(&plate).pressed(&plate, &|_| pa(1000.0));
    let (_, one) = timed(|| plate.solve(&[&load]));
    let after_one = peak();
    let (_, many) = timed(|| plate.solve(&[&load; MANY]));
    (plate.unknowns(), [order, assembly, factor, one, many], [after_one, peak()])
}

/// A size in this process: unknowns, milliseconds of each step, kilobytes of the first round (-1: not known).
fn one(cells: usize) {
    let grid = Grid::new(&steps(0.0, 2.0, cells), &steps(0.0, 2.0, cells));
    let rounds: Vec<_> = (0..SAMPLES).map(|_| round(&grid)).collect();
    let median = |step: usize| {
        let mut times: Vec<Duration> = rounds.iter().map(|round| round.1[step]).collect();
        times.sort_unstable();
        times[SAMPLES / 2].as_secs_f64() * 1e3
    };
    let times: Vec<String> = (0..STEPS.len()).map(|step| median(step).to_string()).collect();
    let peaks = rounds[0].2.map(|peak| peak.unwrap_or(-1.0).to_string());
    println!("{} {} {}", rounds[0].0, times.join(" "), peaks.join(" "));
}

/// The exponent of growth that fits all sizes best.
fn exponent(unknowns: &[f64], cost: &[f64]) -> f64 {
    let logs = |list: &[f64]| list.iter().map(|value| value.ln()).collect::<Vec<_>>();
    let (x, y) = (logs(unknowns), logs(cost));
    let mean = |list: &[f64]| list.iter().sum::<f64>() / list.len() as f64;
    let (xm, ym) = (mean(&x), mean(&y));
    let along: f64 = x.iter().map(|x| (x - xm).powi(2)).sum();
    x.iter().zip(&y).map(|(x, y)| (x - xm) * (y - ym)).sum::<f64>() / along
}

/// Each size in a process of its own, so that its peak is its own.
fn all() {
    println!(
        "times in ms, median of {SAMPLES}; peaks of the process in MB, after one and after {MANY} right-hand sides"
    );
    println!(
        "{:>9} {} {:>9} {:>9} {:>9}",
        "unknowns",
        STEPS.map(|s| format!("{s:>9}")).join(" "),
        "peak 1",
        "peak 16",
        "kB each"
    );
    let program = env::current_exe().unwrap();
    let rows: Vec<Vec<f64>> = CELLS
        .iter()
        .map(|cells| {
            let output = process::Command::new(&program).arg(cells.to_string()).output().unwrap();
            let text = String::from_utf8(output.stdout).unwrap();
            let row: Vec<f64> = text.split_whitespace().map(|word| word.parse().unwrap()).collect();
            let (times, peaks) = row[1..].split_at(STEPS.len());
            let times: Vec<String> = times.iter().map(|ms| format!("{ms:>9.2}")).collect();
            let known = |value: f64, text: String| if value < 0.0 { "not known".to_owned() } else { text };
            let [mut megabytes, mut each] = [Vec::new(), Vec::new()];
            for &peak in peaks {
                megabytes.push(known(peak, format!("{:>9.1}", peak / 1024.0)));
                each.push(known(peak, format!("{:>9.2}", peak / row[0])));
            }
            println!("{:>9} {} {} {}", row[0], times.join(" "), megabytes.join(" "), each[0]);
            row
        })
        .collect();
    let column = |k: usize| rows.iter().map(|row| row[k]).collect::<Vec<f64>>();
    let exponents: Vec<String> =
        (1..=STEPS.len()).map(|k| format!("{:>9.2}", exponent(&column(0), &column(k)))).collect();
    println!("{:>9} {}", "exponent", exponents.join(" "));
}

fn main() {
    // Cargo passes options of its own.
    match env::args().skip(1).find_map(|word| word.parse().ok()) {
        Some(cells) => one(cells),
        None => all(),
    }
}

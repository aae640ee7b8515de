//! Closed forms over a whole space, beside what `choose` makes of the same space and what looking at each by both methods takes.
//! `tests/bench/sweep` sets it beside the same closed forms in an array library, which has to find the same numbers.
//! Never a timed test: machines differ. `cargo bench --bench sweep`; `-- FOLDER COUNT` leaves in the folder what the other needs.
#![allow(clippy::print_stdout, reason = "what a benchmark is for")]
#![allow(clippy::unwrap_used, reason = "a benchmark that cannot go on has failed")]
#![allow(clippy::cast_precision_loss, reason = "some hundred thousand candidates")]

use std::{env, fs, path::Path, time::Instant};

use rayon::prelude::*;
use serde_json::{Value, json};
use skinspan::{
    analysis::{Analysis, DIVISIONS, Sections},
    check::run,
    choice::{Arrangement, Limits, Order, Space, Watch, choose},
    geometry::Axis,
    input::{NamedText, read_design, read_tables},
    section::{CoreLayer, Section, Width},
    top::{Schedule, Top},
    units::{ForcePerWidth, Length},
};

const LARGEST: &str = "survey-launch";

/// Candidates, where nothing else is asked for.
const COUNT: usize = 200_000;

/// A strip on two hinges: its span in m, the pressure on it in Pa, the load per width at its middle in N/m.
const SPAN: f64 = 1.0;
const PRESSURE: f64 = 2000.0;
const LOAD: f64 = 1500.0;

/// Numbers of each candidate: rigidity, shear stiffness, core shear under the pressure, sag under the pressure and under the load.
type Numbers = [f64; 5];

/// Candidates that are looked at one by one by both methods.
const LOOKED_AT: usize = 4;

struct Nobody;

impl Watch for Nobody {
    fn at(&self, _: usize, _: usize, _: usize) {}
    fn stops(&self) -> bool {
        false
    }
}

/// All cores and skins of the largest example, so many of them.
fn space(most: usize) -> (Top, Space) {
    let table = read_tables(&[]).unwrap();
    let path = format!("{}/examples/{LARGEST}.toml", env!("CARGO_MANIFEST_DIR"));
    let text = NamedText { name: LARGEST.to_owned(), text: fs::read_to_string(path).unwrap() };
    let top = read_design(&text, &table, None).unwrap();
    let mut space = Space {
        arrangements: vec![Arrangement::own(&top)],
        prices: None,
        cores: Space::sheets(&top, table.cores(), None, None),
        outer: Space::skins(&top.outer),
        inner: Space::skins(&top.inner),
        limits: Limits::default(),
        order: Order::Weight,
    };
    let skins = space.outer.len() * space.inner.len();
    space.cores.truncate((most / skins).max(1));
    (top, space)
}

fn core(top: &Top, space: &Space, core: usize) -> CoreLayer {
    let top = Top { core: space.cores[core].clone(), ..top.clone() };
    *Sections::new(&top, &Axis::BOTH).unwrap().field.section.core()
}

/// ```text
/// D = 1/(D*⁻¹)xx, D* = D − B A⁻¹ B;  S = G d²/c;  τ = q L/(2 d);
/// w_q = 5 q L⁴/(384 D) + q L²/(8 S);  w_P = P L³/(48 D) + P L/(4 S)
/// ```
fn numbers(outer: &Schedule, core: CoreLayer, inner: &Schedule) -> Numbers {
    let section = Section::new(outer.laminate().clone(), core, inner.laminate().clone()).unwrap();
    let d = section.bending(Axis::X, Width::Narrow).rigidity.value;
    let s = section.shear_stiffness(Axis::X).value;
    let end = ForcePerWidth { value: PRESSURE * SPAN / 2.0, ..ForcePerWidth::default() };
    let shear = section.core_shear_stress(Axis::X, end).value;
    let even = 5.0 * PRESSURE * SPAN.powi(4) / (384.0 * d) + PRESSURE * SPAN * SPAN / (8.0 * s);
    let middle = LOAD * SPAN.powi(3) / (48.0 * d) + LOAD * SPAN / (4.0 * s);
    [d, s, shear, even, middle]
}

fn plies(skin: &Schedule) -> Value {
    let plies = skin.laminate().plies().map(|ply| {
        let elastic = ply.elastic;
        let (thick, angle): (Length, f64) = (ply.thickness, ply.angle.value);
        json!([elastic.e1.value, elastic.e2.value, elastic.g12.value, elastic.nu12.value, thick.value, angle])
    });
    plies.collect()
}

/// What the other needs: skins by their plies, cores by their constants, and what comes out here.
fn leave(folder: &Path, space: &Space, cores: &[CoreLayer], found: &[Numbers], seconds: f64) {
    let cores = cores.iter().map(|core| {
        assert_eq!(core.e_x, core.e_y, "the other takes a core as alike in its plane");
        json!([core.thickness.value, core.e_x.value, core.nu.value, core.g_xz.value])
    });
    let given = json!({
        "span": SPAN, "pressure": PRESSURE, "load": LOAD, "seconds": seconds,
        "cores": cores.collect::<Vec<_>>(),
        "outer": space.outer.iter().map(plies).collect::<Vec<_>>(),
        "inner": space.inner.iter().map(plies).collect::<Vec<_>>(),
    });
    fs::write(folder.join("given.json"), given.to_string()).unwrap();
    let bytes: Vec<u8> = found.iter().flatten().flat_map(|number| number.to_le_bytes()).collect();
    fs::write(folder.join("found.f64"), bytes).unwrap();
}

fn say(what: &str, count: usize, seconds: f64) {
    println!("{what:<58} {count:>8} {seconds:>9.3} s {:>12.1} a second", count as f64 / seconds);
}

fn main() {
    // Cargo passes options of its own.
    let asked: Vec<String> = env::args().skip(1).filter(|word| !word.starts_with('-')).collect();
    let most = asked.get(1).map_or(COUNT, |count| count.parse().unwrap());
    let (top, space) = space(most);
    let cores: Vec<CoreLayer> = (0..space.cores.len()).map(|number| core(&top, &space, number)).collect();
    let of = |number: usize| {
        let of = space.candidate(number);
        numbers(&space.outer[of.outer], cores[of.core], &space.inner[of.inner])
    };
    let start = Instant::now();
    let found: Vec<Numbers> = (0..space.len()).map(of).collect();
    let seconds = start.elapsed().as_secs_f64();
    say("closed form alone, here, one thread", space.len(), seconds);
    let start = Instant::now();
    let together: Vec<Numbers> = (0..space.len()).into_par_iter().map(of).collect();
    say("closed form alone, here, all threads", space.len(), start.elapsed().as_secs_f64());
    assert_eq!(found, together);
    if let Some(folder) = asked.first() {
        leave(Path::new(folder), &space, &cores, &found, seconds);
    }
    let start = Instant::now();
    let shown = choose(&top, &space, &Nobody).found.len();
    say(&format!("all checks, `choose` ({shown} shown)"), space.len(), start.elapsed().as_secs_f64());
    let start = Instant::now();
    let step = (space.len() / LOOKED_AT).max(1);
    let mut looked_at = 0;
    for number in (0..space.len()).rev().step_by(step).take(LOOKED_AT) {
        let other = space.top(space.candidate(number));
        // A core that a conduit fills cannot be laid up.
        let Ok(analysis) = Analysis::new(&other, DIVISIONS) else { continue };
        assert!(!run(&analysis.with_plate_method()).is_empty());
        looked_at += 1;
    }
    assert!(looked_at > 0);
    say("all checks, both methods on each", looked_at, start.elapsed().as_secs_f64());
}

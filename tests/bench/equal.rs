//! A reference plate at given degrees and meshes: what comes out, and how long it takes. `tests/reference/run speed` holds
//! it beside another library at equal accuracy. Never a timed test: machines differ. `cargo bench --bench equal -- 4:6`.
#![allow(clippy::print_stdout, reason = "what a benchmark is for")]
#![allow(clippy::cast_precision_loss, reason = "some dozen cells")]
#![allow(clippy::unwrap_used, reason = "a benchmark that cannot go on has failed")]

#[path = "../plates/kit.rs"]
#[allow(dead_code, reason = "the tests use the rest")]
mod kit;

use std::{env, time::Instant};

use skinspan::finite_element::Degree;

use kit::{DEGREES, Grid, numbers, orthotropic, point, pressed, steps};

/// As the program has it.
#[global_allocator]
static ALLOCATOR: mimalloc::MiMalloc = mimalloc::MiMalloc;

/// Times that each is solved.
const SAMPLES: usize = 5;

/// The square on hard simple supports.
fn problem() -> toml::Table {
    let path = format!("{}/tests/reference/plates/a1_square.toml", env!("CARGO_MANIFEST_DIR"));
    std::fs::read_to_string(path).unwrap().parse().unwrap()
}

/// Prints degree, cells along a side, unknowns, deflection of the middle in m, shear at the middle of an edge in N/m, and
/// seconds from the mesh to the solution, the median and the fewest.
fn solve(problem: &toml::Table, degree: Degree, cells: usize) {
    let value = |table: &str, key: &str| problem[table][key].as_float().unwrap();
    let [d11, d12, d22, d66, sx, sy] = ["D11", "D12", "D22", "D66", "Sx", "Sy"].map(|key| value("stiffness", key));
    let shell = orthotropic([[d11, d12, 0.0], [d12, d22, 0.0], [0.0, 0.0, d66]], [sx, sy]);
    let (a, b) = (value("plate", "length_x"), value("plate", "length_y"));
    let pressure = -problem["load"][0]["pressure"].as_float().unwrap();
    let grid = Grid::new(&steps(0.0, a, cells), &steps(0.0, b, cells));
    let held = grid.simply_supported();
    let mut seconds = Vec::new();
    let mut made = None;
    // The first finds the shape functions; it is not counted.
    for _ in 0..=SAMPLES {
        let start = Instant::now();
        let plate = grid.plate(degree, &shell, &held, &[]);
        let solution = pressed(&plate, pressure);
        seconds.push(start.elapsed().as_secs_f64());
        made = Some((plate, solution));
    }
    let (plate, solution) = made.unwrap();
    seconds.remove(0);
    seconds.sort_by(f64::total_cmp);
    let towards = point(0.4 * a, 0.45 * b);
    let middle = numbers(&grid.state(&plate, &solution, point(0.5 * a, 0.5 * b), towards));
    let edge = numbers(&grid.state(&plate, &solution, point(0.0, 0.5 * b), towards));
    let number = DEGREES.iter().position(|own| *own == degree).unwrap() + 2;
    let (median, fewest) = (seconds[SAMPLES / 2], seconds[0]);
    println!("{number} {cells} {} {} {} {median} {fewest}", plate.unknowns(), middle[0], edge[7]);
}

fn main() {
    let problem = problem();
    // Cargo passes options of its own.
    let asked: Vec<String> = env::args().skip(1).filter(|word| word.contains(':')).collect();
    for word in if asked.is_empty() { vec!["4:4".to_owned(), "4:30".to_owned()] } else { asked } {
        let (degree, cells) = word.split_once(':').unwrap();
        let degree: usize = degree.parse().unwrap();
        solve(&problem, DEGREES[degree - 2], cells.parse().unwrap());
    }
}

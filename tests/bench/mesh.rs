//! Benchmarks: the mesh of a usual top. Never a timed test: machines differ. `cargo bench --bench mesh`.

#[path = "../mesh/plans.rs"]
mod plans;

use divan::{Bencher, black_box};
use skinspan::mesh::{Mesh, Plan};

use plans::{MERGE, flat, mm, points, rounded, usual, usual_size};

fn usual_plan() -> Plan<'static> {
    let (outline, lines) = usual();
    Plan {
        outline: points(&outline),
        holes: Vec::new(),
        lines: lines.iter().map(|line| points(line)).collect(),
        size: &usual_size,
        merge: mm(MERGE),
    }
}

#[divan::bench]
fn usual_top(bencher: Bencher) {
    let plan = usual_plan();
    bencher.bench_local(|| black_box(Mesh::new(black_box(&plan)).expect("the usual top").triangles().len()));
}

#[divan::bench]
fn bare_top(bencher: Bencher) {
    let plan = Plan {
        outline: points(&rounded(2800.0, 1900.0, 150.0, 7)),
        holes: Vec::new(),
        lines: Vec::new(),
        size: &flat,
        merge: mm(MERGE),
    };
    bencher.bench_local(|| black_box(Mesh::new(black_box(&plan)).expect("a bare top").triangles().len()));
}

#[divan::bench]
fn triangle_of_a_place(bencher: Bencher) {
    let mesh = Mesh::new(&usual_plan()).expect("the usual top");
    bencher.bench_local(|| black_box(mesh.holding(black_box(plans::point((1234.0, 567.0))))));
}

fn main() {
    divan::main();
}

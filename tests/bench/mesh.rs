//! Benchmarks: the mesh of a usual top. Never a timed test: machines differ. `cargo bench --bench mesh`.

#[path = "../mesh/plans.rs"]
mod plans;

use divan::{Bencher, black_box};
use skinspan::mesh::Mesh;

use plans::{bare, point, usual};

#[divan::bench]
fn usual_top(bencher: Bencher) {
    let plan = usual();
    bencher.bench_local(|| black_box(Mesh::new(black_box(&plan)).expect("the usual top").triangles().len()));
}

#[divan::bench]
fn bare_top(bencher: Bencher) {
    let plan = bare();
    bencher.bench_local(|| black_box(Mesh::new(black_box(&plan)).expect("a bare top").triangles().len()));
}

#[divan::bench]
fn triangle_of_a_place(bencher: Bencher) {
    let mesh = Mesh::new(&usual()).expect("the usual top");
    bencher.bench_local(|| black_box(mesh.holding(black_box(point((1234.0, 567.0))))));
}

fn main() {
    divan::main();
}

//! Benchmarks: one candidate through sections, load cases, hand method and all checks; and the parts of a whole run.
//! Never a timed test: machines differ. `cargo bench`.

use divan::{Bencher, black_box};
use skinspan::{
    analysis::{Analysis, DIVISIONS},
    check::run,
    criteria::Criteria,
    input::{NamedText, read_design, read_tables},
    material::MaterialTable,
    report::Report,
    top::Top,
};

const LARGEST: &str = "survey-launch.toml";

fn text(name: &str) -> NamedText {
    let path = format!("{}/examples/{name}", env!("CARGO_MANIFEST_DIR"));
    NamedText { name: name.to_owned(), text: std::fs::read_to_string(path).expect("an example") }
}

fn table() -> MaterialTable {
    read_tables(&[]).expect("the built-in table")
}

fn top(name: &str) -> Top {
    read_design(&text(name), &table(), None).expect("an example that reads")
}

#[divan::bench(args = [LARGEST, "galley-roof.toml"])]
fn candidate(bencher: Bencher, name: &str) {
    let top = top(name);
    bencher.bench_local(|| {
        let analysis = Analysis::new(black_box(&top), DIVISIONS).expect("a layout");
        black_box(run(&analysis).len())
    });
}

#[divan::bench]
fn analysis_alone(bencher: Bencher) {
    let top = top(LARGEST);
    bencher.bench_local(|| black_box(Analysis::new(black_box(&top), DIVISIONS).expect("a layout").strips.len()));
}

#[divan::bench]
fn material_table(bencher: Bencher) {
    bencher.bench_local(|| black_box(table()));
}

#[divan::bench]
fn criteria(bencher: Bencher) {
    bencher.bench_local(|| black_box(Criteria::built_in().expect("the built-in criteria")));
}

#[divan::bench]
fn design_file(bencher: Bencher) {
    let (text, table) = (text(LARGEST), table());
    bencher.bench_local(|| black_box(read_design(&text, &table, None).expect("an example that reads")));
}

#[divan::bench]
fn whole_report(bencher: Bencher) {
    let (top, table) = (top(LARGEST), table());
    bencher.bench_local(|| black_box(Report::new(&top, &table).checks.len()));
}

fn main() {
    divan::main();
}

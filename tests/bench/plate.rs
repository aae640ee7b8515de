//! Benchmarks of the plate method on whole tops. Never a timed test: machines differ. `cargo bench --bench plate`.

use divan::{Bencher, black_box};
use skinspan::{
    analysis::{Analysis, DIVISIONS},
    input::{NamedText, read_design, read_tables},
    top::Top,
};

fn top(name: &str) -> Top {
    let path = format!("{}/examples/{name}.toml", env!("CARGO_MANIFEST_DIR"));
    let text = NamedText { name: name.to_owned(), text: std::fs::read_to_string(path).expect("an example") };
    read_design(&text, &read_tables(&[]).expect("the built-in table"), None).expect("an example that reads")
}

#[divan::bench(args = ["survey-launch", "kelp-harvester", "galley-roof"], sample_count = 5)]
fn whole_top(bencher: Bencher, name: &str) {
    let top = top(name);
    bencher.bench_local(|| {
        let analysis = Analysis::new(black_box(&top), DIVISIONS).expect("a layout").with_plate_method();
        black_box(analysis.fields().count())
    });
}

fn main() {
    divan::main();
}

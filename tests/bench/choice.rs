//! Benchmarks: the search over what one can lay up, by the number of candidates; and a candidate of it at a glance.
//! Never a timed test: machines differ. `cargo bench --bench choice`.

use divan::{Bencher, black_box};
use skinspan::{
    choice::{Space, Watch, choose},
    input::{NamedText, read_design, read_tables},
    top::Top,
};

const LARGEST: &str = "survey-launch.toml";

const FAMILIES: [&str; 8] =
    ["pvc-foam", "san-foam", "pet-foam", "pmi-foam", "pu-foam", "pvc-linear-foam", "balsa", "aramid-honeycomb"];

struct Nobody;

impl Watch for Nobody {
    fn at(&self, _: usize, _: usize, _: usize) {}
    fn stops(&self) -> bool {
        false
    }
}

/// The largest example with at most so many candidates.
fn space(most: usize) -> (Top, Space) {
    let table = read_tables(&[]).expect("the built-in table");
    let path = format!("{}/examples/{LARGEST}", env!("CARGO_MANIFEST_DIR"));
    let text = NamedText { name: LARGEST.to_owned(), text: std::fs::read_to_string(path).expect("an example") };
    let top = read_design(&text, &table, None).expect("an example that reads");
    let families = FAMILIES.map(|id| table.core(id).expect("a family of the built-in table"));
    let mut space = Space {
        arrangements: vec![skinspan::choice::Arrangement::own(&top)],
        prices: None,
        cores: Space::sheets(&top, families, None, None),
        outer: Space::skins(&top.outer),
        inner: Space::skins(&top.inner),
        limits: skinspan::choice::Limits::default(),
        order: skinspan::choice::Order::Weight,
    };
    let skins = space.outer.len() * space.inner.len();
    space.cores.truncate((most / skins).max(1));
    (top, space)
}

#[divan::bench(sample_count = 1, sample_size = 1, args = [25_000, 50_000, 100_000, 200_000])]
fn candidates(bencher: Bencher, most: usize) {
    let (top, space) = space(most);
    bencher.bench_local(|| black_box(choose(black_box(&top), &space, &Nobody).found.len()));
}

fn main() {
    divan::main();
}

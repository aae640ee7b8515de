//! Benchmarks of the plate method: whole tops, and square plates of growing size. Never a timed test: machines differ.

use divan::{Bencher, black_box};
use skinspan::{
    analysis::{Analysis, DIVISIONS},
    finite_element::{Degree, Fields, Held, Load, Model, Plate, ShellStiffness},
    geometry::Point,
    input::{NamedText, read_design, read_tables},
    top::Top,
    units::{Force, Length, Pressure, per_width},
};
use uom::si::{force::newton, length::meter, pressure::pascal};

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

/// Cells along each side: about 6 000, 12 000, 25 000, 50 000 and 100 000 unknowns.
#[divan::bench(args = [14, 20, 29, 41, 58], sample_count = 5)]
fn square(bencher: Bencher, cells: u32) {
    let side = cells as usize + 1;
    #[expect(clippy::cast_precision_loss, reason = "some dozen cells")]
    let at = |k: usize| Length::new::<meter>(2.0) * (k as f64 / f64::from(cells));
    let corners: Vec<Point> = (0..side * side).map(|k| Point { x: at(k % side), y: at(k / side) }).collect();
    let mut triangles = Vec::new();
    for j in 1..side {
        for i in 1..side {
            let (a, b) = ((j - 1) * side + i - 1, j * side + i);
            triangles.extend([[a, a + 1, b], [a, b, b - 1]]);
        }
    }
    let d = |x: f64| per_width(Force::new::<newton>(x) * Length::new::<meter>(1.0));
    let shear = per_width(Force::new::<newton>(1.2e6) / Length::new::<meter>(1.0));
    let bending = [[d(4500.0), d(1350.0), d(0.0)], [d(1350.0), d(4500.0), d(0.0)], [d(0.0), d(0.0), d(1575.0)]];
    let shell = ShellStiffness::of_plate(bending, [shear; 2]);
    let supported = Held { deflection: true, ..Held::default() };
    let rim = |line: Vec<usize>| (line, supported);
    let held = [
        rim((0..side).collect()),
        rim((side * (side - 1)..side * side).collect()),
        rim((0..side).map(|k| k * side).collect()),
        rim((0..side).map(|k| k * side + side - 1).collect()),
    ];
    bencher.bench_local(|| {
        let plate = Plate::new(&Model {
            corners: &corners,
            triangles: &triangles,
            degree: Degree::Four,
            fields: Fields::Bending,
            shells: &|_| shell,
            held: &held,
            beds: &[],
        })
        .expect("a plate that is held");
        let load = Load::none(&plate).pressed(&plate, &|_| Pressure::new::<pascal>(1000.0));
        black_box(plate.solve(&[load]).len())
    });
}

fn main() {
    divan::main();
}

//! Benchmarks: the balance of one footing. Never a timed test: machines differ. `cargo bench --bench fixings`.

use divan::{Bencher, black_box};
use skinspan::{
    analysis::{Analysis, DIVISIONS},
    check::run,
    closed_form::fixing_group::{FixingGroup, FootingAction},
    geometry::{Foot, Pattern},
    input::{NamedText, read_design, read_tables},
    units::{Angle, Force, Length, Pressure, Torque},
};
use uom::si::{force::newton, length::millimeter, pressure::megapascal, torque::newton_meter};

fn mm(x: f64) -> Length {
    Length::new::<millimeter>(x)
}

fn group(at: Pattern, foot: Foot) -> FixingGroup {
    let stiffness = Force::new::<newton>(20e3) / mm(1.0);
    FixingGroup::new(at.points(), foot, stiffness, Pressure::new::<megapascal>(8.0) / mm(1.0)).expect("a footing")
}

fn action() -> FootingAction {
    let (n, nm) = (Force::new::<newton>, Torque::new::<newton_meter>);
    FootingAction { pull: n(-200.0), side: [n(120.0), n(40.0)], moment: [nm(47.0), nm(12.0)], twist: nm(3.0) }
}

#[divan::bench]
fn four_in_a_square(bencher: Bencher) {
    let at = Pattern::Grid { along_x: 2, along_y: 2, pitch_x: mm(90.0), pitch_y: mm(90.0) };
    let group = group(at, Foot::Rectangle { length: mm(120.0), width: mm(120.0) });
    let action = action();
    bencher.bench_local(|| group.pulls(black_box(&action)).expect("a balance").greatest());
}

#[divan::bench(args = [4, 12])]
fn in_a_disc(bencher: Bencher, count: u32) {
    let at = Pattern::Circle { count, diameter: mm(100.0), first: Angle::default() };
    let group = group(at, Foot::Disc { diameter: mm(130.0) });
    let action = action();
    bencher.bench_local(|| group.pulls(black_box(&action)).expect("a balance").greatest());
}

#[divan::bench]
fn shears(bencher: Bencher) {
    let at = Pattern::Circle { count: 12, diameter: mm(100.0), first: Angle::default() };
    let group = group(at, Foot::Disc { diameter: mm(130.0) });
    let action = action();
    bencher.bench_local(|| group.shears(black_box(&action)).expect("two or more"));
}

/// A radar on twelve bolts: its patch with the forces of every case and all checks of fixings, and the patch alone, whose
/// sections and cases are in both: the difference is the mount.
#[divan::bench(args = [true, false])]
fn a_mount_of_twelve_and_all_cases(bencher: Bencher, mounted: bool) {
    let path = format!("{}/examples/radar-pad.toml", env!("CARGO_MANIFEST_DIR"));
    let text = std::fs::read_to_string(path).expect("an example").replace("circle = 6", "circle = 12");
    let table = read_tables(&[]).expect("the built-in table");
    let mut top =
        read_design(&NamedText { name: "radar-pad".to_owned(), text }, &table, None).expect("an example that reads");
    if !mounted {
        top.gear[0].fastened = None;
    }
    bencher.bench_local(|| {
        let analysis = Analysis::new(black_box(&top), DIVISIONS).expect("a patch");
        black_box(run(&analysis).len())
    });
}

fn main() {
    divan::main();
}

//! Benchmarks: the balance of one footing. Never a timed test: machines differ. `cargo bench --bench fixings`.

use divan::{Bencher, black_box};
use skinspan::{
    closed_form::fixing_group::{FixingGroup, FootingAction},
    geometry::{Foot, Pattern},
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

fn main() {
    divan::main();
}

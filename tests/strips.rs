//! Strips over pipes that meet: each place of the top is carried once.

#![allow(clippy::unwrap_used)] // a test may panic

use approx::assert_relative_eq;
use skinspan::{
    analysis::{Analysis, DIVISIONS, Line, Role, StripForces},
    geometry::{Point, Polyline},
    input::{NamedText, read_design, read_tables},
    top::{Support, Top},
    units::Length,
};
use uom::si::length::inch;

/// Sums in another order.
const ROUNDING: f64 = 1e-9;

/// The survey launch, without fixings, on pipes named and led as given, in inches.
fn on_pipes(pipes: &[(&str, [[f64; 2]; 2])]) -> Top {
    let text = std::fs::read_to_string(concat!(env!("CARGO_MANIFEST_DIR"), "/examples/survey-launch.toml")).unwrap();
    let file = NamedText { name: "top.toml".to_owned(), text };
    let mut top = read_design(&file, &read_tables(&[]).unwrap(), None).unwrap();
    let rail = top.supports[0].clone();
    let place = |[x, y]: [f64; 2]| Point { x: Length::new::<inch>(x), y: Length::new::<inch>(y) };
    let led = |(name, along): &(&str, [[f64; 2]; 2])| Support {
        name: (*name).to_owned(),
        along: Polyline::new(along.map(place).to_vec()).unwrap(),
        ..rail.clone()
    };
    top.supports = pipes.iter().map(led).collect();
    top
}

fn refused(pipes: &[(&str, [[f64; 2]; 2])]) -> String {
    Analysis::new(&on_pipes(pipes), DIVISIONS).expect_err("a strip tips")
}

const PORT: (&str, [[f64; 2]; 2]) = ("port", [[3.0, 9.0], [107.0, 9.0]]);
const STARBOARD: (&str, [[f64; 2]; 2]) = ("starboard", [[3.0, 67.0], [107.0, 67.0]]);

#[test]
fn a_rail_of_two_pieces_carries_as_one() {
    let whole = on_pipes(&[PORT, ("middle", [[3.0, 38.0], [107.0, 38.0]]), STARBOARD]);
    let joint = [[3.0, 38.0], [50.0, 38.0]];
    let joined = on_pipes(&[PORT, ("fore", joint), ("aft", [[50.0, 38.0], [107.0, 38.0]]), STARBOARD]);
    let [whole, joined] = [&whole, &joined].map(|top| Analysis::new(top, DIVISIONS).unwrap());
    // Of each strip where it runs and what presses on its pipes; the strip at the joint is one more.
    let stands = |analysis: &Analysis<'_>, forces: &StripForces| -> Vec<f64> {
        let seats = analysis.lines[forces.line].seats.iter().flat_map(|seat| [seat.at.value, seat.width.value]);
        seats.chain(forces.seats.iter().map(|seat| seat.push.value.value)).collect()
    };
    let mut compared = 0;
    for forces in &whole.strips {
        let line = &whole.lines[forces.line];
        let twin = |other: &&StripForces| {
            let known = &joined.lines[other.line];
            known.role == line.role && known.station == line.station && other.case == forces.case
        };
        if let Some(twin) = joined.strips.iter().find(twin) {
            let [one, two] = [(&whole, forces), (&joined, twin)].map(|(analysis, forces)| stands(analysis, forces));
            assert_eq!(one.len(), two.len());
            for (one, two) in one.into_iter().zip(two) {
                assert_relative_eq!(one, two, max_relative = ROUNDING);
            }
            compared += usize::from(line.role == Role::Edge);
        }
    }
    // At the joint the strip stands on three places, not four.
    let at_joint = |line: &&Line| (line.station - Length::new::<inch>(50.0)).abs().value < ROUNDING;
    let joint = joined.lines.iter().find(at_joint).expect("a strip at the joint");
    assert_eq!(joint.seats.len(), 3);
    assert!(compared > 5, "{compared}");
}

#[test]
fn of_two_pipes_that_meet_the_narrower_seat_carries() {
    let mut top =
        on_pipes(&[PORT, ("one", [[3.0, 20.0], [107.0, 60.0]]), ("other", [[3.0, 60.0], [107.0, 20.0]]), STARBOARD]);
    top.supports[2].seat *= 0.5;
    let analysis = Analysis::new(&top, DIVISIONS).unwrap();
    let crossing = analysis.lines.iter().find(|line| (line.station - Length::new::<inch>(55.0)).abs().value < 1e-9);
    let pipes: Vec<_> = crossing.expect("a strip where they cross").seats.iter().map(|seat| seat.pipe).collect();
    assert_eq!(pipes, [Some(0), Some(2), Some(3)]);
}

#[test]
fn two_pipes_that_cross_where_nothing_else_carries_are_refused_by_name() {
    // Off the middle: the strip there is looked at because they cross there.
    let reason = refused(&[("one", [[8.0, 9.0], [100.0, 67.0]]), ("other", [[8.0, 50.0], [100.0, 9.0]])]);
    assert!(reason.starts_with("one and other meet at x 46.1 in (1171 mm), y 33.02 in (838.7 mm)"), "{reason}");
    assert!(reason.contains("lead another pipe past it"), "{reason}");
    // An end that touches, from whichever side of the list.
    let legs = [("left", [[8.0, 38.0], [100.0, 67.0]]), ("right", [[8.0, 37.0], [100.0, 9.0]])];
    let reason = refused(&legs);
    assert!(reason.starts_with("left and right meet at x 8.00 in (203.2 mm)"), "{reason}");
    // Apart by more than their diameter they carry as two.
    let legs = [("left", [[8.0, 38.0], [100.0, 67.0]]), ("right", [[8.0, 35.9], [100.0, 9.0]])];
    assert!(Analysis::new(&on_pipes(&legs), DIVISIONS).is_ok());
}

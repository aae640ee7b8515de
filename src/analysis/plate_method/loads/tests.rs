//! What the pipes bear of gear: all of it, wherever its footing lies.
#![allow(clippy::unwrap_used)] // a test may panic

use uom::si::{acceleration::meter_per_second_squared, force::newton, length::meter, ratio::ratio};

use super::*;
use crate::{
    analysis::sections::Sections,
    finite_element::Degree,
    geometry::{Axis, Contour},
    input::{NamedText, read_design, read_tables},
    load_case::{OnGear, load_cases},
    top::{Gear, Hole, Outline},
    units::{Mass, Ratio},
};

/// Places and forces go through a system of some thousand unknowns.
const ROUNDING: f64 = 1e-6;

fn point(x: f64, y: f64) -> Point {
    Point { x: Length::new::<meter>(x), y: Length::new::<meter>(y) }
}

fn gear_at(x: f64, y: f64) -> Gear {
    let m = Length::new::<meter>;
    Gear {
        name: "light".to_owned(),
        mass: Mass::new::<uom::si::mass::kilogram>(30.0),
        cg_height: m(0.2),
        at: point(x, y),
        foot: Foot::Rectangle { length: m(0.3), width: m(0.2) },
        wind_area: Area::default(),
        wind_height: m(0.2),
        drag: Ratio::default(),
        lift: Ratio::default(),
        limber: false,
        grab_height: Some(m(0.5)),
        given: Vec::new(),
        fastened: None,
    }
}

/// A roof of 1.5 m by 1.3 m with a hole of half a metre in its middle.
fn roof(gear: Vec<Gear>) -> Top {
    let path = concat!(env!("CARGO_MANIFEST_DIR"), "/examples/galley-roof.toml");
    let text = NamedText { name: "galley-roof".to_owned(), text: std::fs::read_to_string(path).unwrap() };
    let mut top = read_design(&text, &read_tables(&[]).unwrap(), None).unwrap();
    let hole = Hole {
        name: "hatch".to_owned(),
        contour: Contour::circle(point(0.75, 0.65), Length::new::<meter>(0.5)).unwrap(),
    };
    top.outline = Outline::new(&top.outline.contour().clone(), vec![hole]).unwrap();
    top.gear = gear;
    top
}

/// Push of the pipes under a case, and its moments along and across: solution by solution.
fn pushes(top: &Top, id: &str) -> Vec<[f64; 3]> {
    let on_gear = OnGear { grabbed: true, ..OnGear::default() };
    let (cases, _) = load_cases(&top.service, &top.criteria, top.outline.width(), on_gear);
    let number = cases.iter().position(|case| case.id == id).unwrap();
    let sections = Sections::new(top, &Axis::BOTH).unwrap();
    let net = Net::new(top, &sections, Ratio::new::<ratio>(1.0)).unwrap();
    let plate = net.plate(top, &sections, (Degree::Two, Ratio::new::<ratio>(1.0)), None).unwrap();
    let solved =
        StillLoads::new(top, &net, &plate).solve(&sections, (&cases, &[number]), &Winds::new(top, &net, &cases));
    let sums = |solution: &Solution| {
        let all = (0..net.stretches.len()).flat_map(|bed| plate.pushes(bed, solution));
        all.fold([0.0; 3], |[force, along, across], push| {
            let own = push.force.get::<newton>();
            [force + own, along + own * push.place.x.value, across + own * push.place.y.value]
        })
    };
    let whole = |from: &Vec<(usize, f64)>| {
        let parts: Vec<_> = from.iter().map(|&(part, times)| (&solved[0].parts[part], times)).collect();
        sums(&Solution::sum(&parts).unwrap())
    };
    solved[0].from.iter().map(whole).collect()
}

#[test]
fn the_pipes_bear_all_of_gear_whose_footing_hangs_over() {
    let g = gravity().get::<meter_per_second_squared>();
    let bare = pushes(&roof(Vec::new()), "own-weight")[0][0];
    // In the rounded corner, half over the rim, half over the hole, and where the design file may not put it: off the top.
    for (x, y) in [(0.04, 0.04), (0.75, 0.02), (0.75, 0.395), (-1.0, -1.0)] {
        let with = pushes(&roof(vec![gear_at(x, y)]), "own-weight")[0][0];
        assert!(((with - bare) / (30.0 * g) - 1.0).abs() < ROUNDING, "{x} {y}: {}", (with - bare) / g);
    }
}

#[test]
fn a_footing_that_hangs_over_makes_the_whole_moment_and_no_other() {
    let top = roof(vec![gear_at(0.57, 0.45)]);
    let moment = (top.service.hand_load * top.gear[0].grab_height.unwrap()).value;
    let from = pushes(&top, "grab");
    assert_eq!(from.len(), DIRECTIONS.len());
    // From one side and from the other, from one end and from the other.
    for (one, other, expected) in [(0, 4, [moment, 0.0]), (2, 6, [0.0, moment])] {
        let half = [0, 1, 2].map(|k| 0.5 * (from[one][k] - from[other][k]));
        assert!(half[0].abs() < ROUNDING * moment, "no push comes of a moment: {half:?}");
        assert!((half[1] - expected[0]).abs() < ROUNDING * moment, "{half:?} {moment}");
        assert!((half[2] - expected[1]).abs() < ROUNDING * moment, "{half:?} {moment}");
    }
}

#[test]
fn a_hand_has_one_piece_of_gear_at_a_time() {
    let top = roof(vec![gear_at(0.3, 0.3), gear_at(1.2, 1.0)]);
    let moment = (top.service.hand_load * top.gear[0].grab_height.unwrap()).value;
    let from = pushes(&top, "grab");
    assert_eq!(from.len(), 2 * DIRECTIONS.len());
    for solutions in from.chunks(DIRECTIONS.len()) {
        let half = 0.5 * (solutions[0][1] - solutions[4][1]);
        assert!((half - moment).abs() < ROUNDING * moment, "{half} {moment}");
    }
    // Wind and motion have all of it at once.
    assert_eq!(pushes(&top, "own-weight").len(), 1);
}

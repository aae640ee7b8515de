//! A bare top as slings hold it.

use crate::{
    geometry::{Foot, Point},
    load::weight::gravity,
    top::{Gear, GivenForce, Pad, Support, Top},
    units::{Area, Force, Length, Mass, Ratio, Torque},
};

fn support(number: usize, at: Point, side: Length) -> Result<Support, String> {
    let seat = Pad { at, foot: Foot::Rectangle { length: side, width: side } };
    let made = Support::pad(format!("sling {}", number + 1), seat, None);
    made.map_err(|_| "the slings bear on nothing: is `sling-pad` right?".to_owned())
}

/// The bare top on pads where all slings bear.
pub(super) fn on_pads(top: &Top, places: &[Point; 4], pad: Length) -> Result<Top, String> {
    let supports: Result<Vec<Support>, String> =
        places.iter().enumerate().map(|(number, at)| support(number, *at, pad)).collect();
    Ok(Top { supports: supports?, gear: Vec::new(), ..top.clone() })
}

/// Side of a speck that keeps a top in its place, over that of a pad: it bears nothing, and must not hold the top from turning.
const SPECK: f64 = 0.05;

/// The bare top lifted by two forces as gear that is pulled up, each half of its weight times the jerk.
pub(super) fn on_diagonal(
    top: &Top,
    places: &[Point; 4],
    (two, pad): ([usize; 2], Length),
    factor: Ratio,
) -> Result<Top, String> {
    let others = (0..4).filter(|number| !two.contains(number)).take(1);
    let supports: Result<Vec<Support>, String> =
        two.into_iter().chain(others).map(|number| support(number, places[number], pad * SPECK)).collect();
    let half: Mass = top.weight().bare * 0.5;
    let pulled = |number: usize| {
        // What of its own weight counts against a pull is pulled up with it.
        let up: Force = half * gravity() * (factor + top.criteria.weight_against_uplift.value);
        Gear {
            name: format!("sling {}", number + 1),
            mass: half,
            cg_height: Length::default(),
            at: places[number],
            foot: Foot::Rectangle { length: pad, width: pad },
            wind_area: Area::default(),
            wind_height: Length::default(),
            drag: Ratio::default(),
            lift: Ratio::default(),
            limber: false,
            grab_height: None,
            given: vec![GivenForce {
                name: "sling".to_owned(),
                up,
                side: Force::default(),
                height: Length::default(),
                twist: Torque::default(),
            }],
            fastened: None,
        }
    };
    Ok(Top { supports: supports?, gear: two.map(pulled).to_vec(), ..top.clone() })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{
        analysis::Analysis,
        input::{NamedText, read_design, read_tables},
        order::lift_check::{LiftOn, lift},
    };

    /// What the mesh of a top weighs beside it, and the peaks of what specks press, of what a sling bears.
    const ROUNDING: f64 = 0.05;

    #[test]
    fn two_slings_of_a_diagonal_bear_all_of_it() {
        for text in
            [include_str!("../../examples/galley-roof.toml"), include_str!("../../examples/kelp-harvester.toml")]
        {
            let text = text.to_owned();
            let table = read_tables(&[]).unwrap_or_else(|_| panic!("the table"));
            let top = read_design(&NamedText { name: String::new(), text }, &table, None);
            let top = top.unwrap_or_else(|_| panic!("an example"));
            let (pad, middle) = (top.criteria.sling_pad.value, top.weight().bare_centre);
            let place = |x: f64, y: f64| Point {
                x: middle.x + Length::new::<uom::si::length::meter>(x),
                y: middle.y + Length::new::<uom::si::length::meter>(y),
            };
            let places = [place(-0.5, -0.4), place(0.5, -0.4), place(0.5, 0.4), place(-0.5, 0.4)];
            let factor = Ratio::from(1.5);
            let lifted = on_diagonal(&top, &places, ([1, 3], pad), factor).unwrap_or_else(|reason| panic!("{reason}"));
            let case = lift(LiftOn::Diagonal([1, 3]), factor);
            let analysis = Analysis::by_plate_alone(&lifted, vec![case]).unwrap_or_else(|reason| panic!("{reason}"));
            let forces = analysis.fields().next().unwrap_or_else(|| panic!("{:?}", analysis.whole));
            let sling: Force = top.weight().bare * gravity() * factor / 2.0;
            assert_eq!(forces.pipes.len(), 3);
            for speck in &forces.pipes {
                let bears = (speck.push.max(speck.pull) * (pad * SPECK)) / sling;
                assert!(bears.value < ROUNDING, "{}: {bears:?}", top.title);
            }
        }
    }
}

//! Two inserts, and one beside a free edge. No published number was found. The flow of shear of two loads on a wide plate
//! is summed as vectors all round an insert, and its balance is counted along lines.

use std::f64::consts::PI;

use approx::assert_relative_eq;
use skinspan::{
    fastening::{Neighbour, core_shear_beside_free_edge, core_shear_with_neighbour},
    strength::{RoundFoot, SkinBending, punching_shear_at},
    units::Force,
};
use uom::si::force::newton;

use crate::kit::{m, pressure};

/// Grids of places on both sides.
const GRIDS: f64 = 1e-4;
/// A line that ends at ±400 *e* loses (1 + 3)/(400 π) of the flow.
const TRUNCATED_LINE: f64 = 3.3e-3;

const D: f64 = 20.6e-3;
const RADIUS: f64 = 10e-3;
const P: f64 = 1000.0;

fn panel() -> SkinBending {
    SkinBending::of_equal_skins(pressure(14e9), pressure(27e6), m(1.6e-3), m(19e-3))
}

fn foot() -> RoundFoot {
    RoundFoot { force: Force::new::<newton>(P), radius: m(RADIUS), skin_distance: m(D) }
}

/// Core shear as a vector at a place seen from the insert; the neighbour stands at (a, 0).
fn flow(x: f64, y: f64, force: f64, a: f64) -> f64 {
    let r = x.hypot(y);
    let own = punching_shear_at(m(r), &foot(), &panel()).value / r;
    let square = (x - a).powi(2) + y * y;
    let other = panel().core_share().value * force / (2.0 * PI * D * square);
    (own * x + other * (x - a)).hypot((own + other) * y)
}

#[test]
fn sum_is_greatest_on_the_line_of_centres() {
    for a in [40e-3, 60e-3, 80e-3, 200e-3] {
        for force in [P, -P, 0.3 * P, -0.3 * P] {
            let neighbour = Neighbour { force: Force::new::<newton>(force), distance: m(a) };
            let peak = core_shear_with_neighbour(&foot(), &panel(), neighbour).expect("they do not touch").stress.value;
            let mut greatest = 0.0f64;
            for i in 0..1500 {
                let r = RADIUS + (a - RADIUS) * (f64::from(i) / 1500.0).powi(2);
                // What is nearer to the neighbour is its own affair.
                let angles = (0..=12).map(|j| PI * f64::from(j) / 12.0).filter(|angle| r * angle.cos() <= a / 2.0);
                greatest =
                    angles.map(|angle| flow(r * angle.cos(), r * angle.sin(), force, a)).fold(greatest, f64::max);
            }
            assert_relative_eq!(peak, greatest, max_relative = GRIDS);
        }
    }
}

#[test]
fn no_shear_leaves_through_a_free_edge_and_all_goes_inwards() {
    // Flow per length of the two loads through the edge x = e, and through the line x = −e.
    let e = 40e-3;
    let through = |line: f64| {
        const STEPS: i32 = 400_000;
        let step = 800.0 * e / f64::from(STEPS);
        (0..STEPS)
            .map(|i| -400.0 * e + step * (f64::from(i) + 0.5))
            .map(|y| {
                let one = |place: f64| P * (line - place) / (2.0 * PI * ((line - place).powi(2) + y * y));
                (one(0.0) + one(2.0 * e)) * step
            })
            .sum::<f64>()
    };
    assert!(through(e).abs() < 1e-9 * P);
    assert_relative_eq!(through(-e), -P, max_relative = TRUNCATED_LINE);
    let image = Neighbour { force: Force::new::<newton>(P), distance: m(2.0 * e) };
    let with_image = core_shear_with_neighbour(&foot(), &panel(), image).expect("they do not touch");
    assert_eq!(core_shear_beside_free_edge(&foot(), &panel(), m(e)), Ok(with_image));
    assert!(core_shear_beside_free_edge(&foot(), &panel(), m(RADIUS)).is_err());
}

//! Prying of an elastic foot, against the stiffness matrices of a beam in two parts. No published number was found; a
//! foot with *n* = 1.25 *m* gives 1.28, where practice takes 1.3.

use approx::assert_relative_eq;
use nalgebra::{Matrix3, Matrix4, Vector3};
use skinspan::{fastening::elastic_prying_factor, units::Length};
use uom::si::length::millimeter;

/// Bernoulli beam, *EI* = 1: deflection and slope at both ends.
fn beam(l: f64) -> Matrix4<f64> {
    let (l2, l3) = (l * l, l * l * l);
    Matrix4::new(
        12.0 / l3,
        6.0 / l2,
        -12.0 / l3,
        6.0 / l2,
        6.0 / l2,
        4.0 / l,
        -6.0 / l2,
        2.0 / l,
        -12.0 / l3,
        -6.0 / l2,
        12.0 / l3,
        -6.0 / l2,
        6.0 / l2,
        2.0 / l,
        -6.0 / l2,
        4.0 / l,
    )
}

/// Force in a bolt that does not give, over the pull of 1 at the web: edge (held down on the base, free to turn), bolt
/// (held), web (rises without turning).
fn by_stiffness(m: f64, n: f64) -> f64 {
    let (edge, web) = (beam(n), beam(m));
    // Unknown: slope at the edge, slope at the bolt, rise of the web.
    let stiffness = Matrix3::new(
        edge[(1, 1)],
        edge[(1, 3)],
        0.0,
        edge[(3, 1)],
        edge[(3, 3)] + web[(1, 1)],
        web[(1, 2)],
        0.0,
        web[(2, 1)],
        web[(2, 2)],
    );
    let moved = stiffness.try_inverse().expect("a beam on two supports") * Vector3::new(0.0, 0.0, 1.0);
    let on_edge = edge[(0, 1)] * moved[0] + edge[(0, 3)] * moved[1];
    1.0 + on_edge.abs()
}

#[test]
fn bolt_force_by_stiffness_matrices() {
    for m in [8.0, 20.0, 45.0] {
        for ratio in [0.3, 0.5, 1.0, 1.25, 3.0] {
            let mm = Length::new::<millimeter>;
            let factor = elastic_prying_factor(mm(m), mm(ratio * m)).value;
            assert_relative_eq!(factor, by_stiffness(m, ratio * m), max_relative = 1e-12);
        }
    }
}

#[test]
fn practice_of_1_3() {
    let mm = Length::new::<millimeter>;
    assert!((elastic_prying_factor(mm(20.0), mm(25.0)).value - 1.3).abs() < 0.02);
}

//! Chapman and others, *Factors Affecting the Pullout Strength of Cancellous Bone Screws*, 1996: *F* = *S* π *D* *L* TSF,
//! TSF = 0.5 + 0.57735 *h*/*p* (from memory). No number of their tests was found. The form is the nut's area of the
//! thread standards for a symmetrical thread, exactly.

use std::f64::consts::PI;

use approx::assert_relative_eq;
use skinspan::{
    fastening::{ThreadMating, board_strip_capacity, strip_capacity, thread_shape_factor},
    units::{Length, Pressure, Ratio},
};
use uom::si::{length::millimeter, pressure::megapascal};

/// 0.57735 for 1/√3.
const FIVE_DIGITS: f64 = 1e-5;

fn mm(x: f64) -> Length {
    Length::new::<millimeter>(x)
}

/// Outside and root diameter, pitch: screws from No. 8 to No. 14 as made.
const SCREWS: [[f64; 3]; 4] = [[4.17, 3.0, 1.7], [4.83, 3.45, 2.12], [5.49, 4.0, 1.81], [6.3, 4.9, 1.8]];

#[test]
fn the_published_form() {
    for [major, minor, pitch] in SCREWS {
        let shape = thread_shape_factor(mm(major), mm(minor), mm(pitch));
        let printed = 0.5 + 0.57735 * (major - minor) / 2.0 / pitch;
        assert_relative_eq!(shape.value, printed, max_relative = FIVE_DIGITS);
        let force = board_strip_capacity(Pressure::new::<megapascal>(4.0), mm(major), mm(25.0), shape);
        assert_relative_eq!(force.value, 4.0 * PI * major * 25.0 * printed, max_relative = FIVE_DIGITS);
    }
}

#[test]
fn same_as_the_thread_standards_for_a_symmetrical_thread() {
    for [major, minor, pitch] in SCREWS {
        let middle = mm(f64::midpoint(major, minor));
        let mating = ThreadMating {
            pitch: mm(pitch),
            screw_major: mm(major),
            screw_pitch_diameter: middle,
            nut_pitch_diameter: middle,
            nut_minor: mm(minor),
        };
        let tau = Pressure::new::<megapascal>(4.0);
        let standard = strip_capacity(tau, mating.nut_area(mm(25.0)));
        let shape = thread_shape_factor(mm(major), mm(minor), mm(pitch));
        let ours = board_strip_capacity(tau, mm(major), mm(25.0), shape);
        assert_relative_eq!(ours.value, standard.value, max_relative = 1e-14);
    }
}

#[test]
fn no_thread_is_deeper_than_the_board_between_its_turns() {
    assert_eq!(thread_shape_factor(mm(10.0), mm(4.0), mm(1.0)), Ratio::from(1.0));
    assert_relative_eq!(thread_shape_factor(mm(5.0), mm(5.0), mm(2.0)).value, 0.5, max_relative = 1e-15);
}

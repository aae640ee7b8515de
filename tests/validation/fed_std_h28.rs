//! FED-STD-H28, shear areas of threads: an example of the length of engagement of M10 in aluminium, read in the abstract
//! of a handbook's chapter. That example enters 9.968 mm as the least major diameter of 6g, which is its greatest; with the
//! true least, 9.732 mm (from memory), the answer is 16 % longer.

use approx::assert_relative_eq;
use skinspan::{
    fastening::{ScrewThread, ThreadForm, ThreadMating, engagement_needed, strip_capacity},
    units::{Area, Force, Length, Pressure},
};
use uom::si::{force::newton, length::millimeter, pressure::megapascal};

/// Three digits, 21.6: half a unit of the last.
const THREE_DIGITS: f64 = 0.0024;

fn mm(x: f64) -> Length {
    Length::new::<millimeter>(x)
}

fn m10_in_aluminium(screw_major: f64) -> ThreadMating {
    let basic = ThreadMating::basic(&ScrewThread { major: mm(10.0), pitch: mm(1.5), form: ThreadForm::Metric });
    ThreadMating { screw_major: mm(screw_major), nut_pitch_diameter: mm(9.206), ..basic }
}

fn engagement(screw_major: f64) -> f64 {
    // 1200 MPa on 58 mm² in aluminium of 130 MPa.
    let per_length = m10_in_aluminium(screw_major).nut_area(mm(1.0)) / mm(1.0);
    let load = Force::new::<newton>(1200.0 * 58.0);
    engagement_needed(load, Pressure::new::<megapascal>(130.0), per_length).get::<millimeter>()
}

#[test]
fn m10_in_aluminium_needs_21_6_mm() {
    assert_relative_eq!(engagement(9.968), 21.6, max_relative = THREE_DIGITS);
    let bracket = |d: f64| d * (0.75 + (d - 9.206) / 3f64.sqrt());
    let longer = engagement(9.732) / engagement(9.968);
    assert_relative_eq!(longer, bracket(9.968) / bracket(9.732), max_relative = 1e-12);
    assert_relative_eq!(longer, 1.157, max_relative = 0.001);
}

#[test]
fn that_engagement_bears_the_load() {
    let length = mm(engagement(9.968));
    let area = m10_in_aluminium(9.968).nut_area(length);
    let load = strip_capacity(Pressure::new::<megapascal>(130.0), area);
    assert_relative_eq!(load.value, 1200.0 * 58.0, max_relative = 1e-13);
}

#[test]
fn sheared_areas_are_the_widths_of_the_profile() {
    // The profile by its corners: the ridge of the nut widens by 2 tan 30° per unit of radius towards its root. Width on the
    // screw's crest (d/2) and on the nut's crest (D₁/2), from half the pitch on each pitch line.
    for (d, p) in [(4.0, 0.7), (6.0, 1.0), (8.0, 1.25), (10.0, 1.5)] {
        let thread = ScrewThread { major: mm(d), pitch: mm(p), form: ThreadForm::Metric };
        let mating = ThreadMating::basic(&thread);
        let tan = (std::f64::consts::PI / 6.0).tan();
        let (d2, d1) = (thread.pitch_diameter().get::<millimeter>(), thread.minor_diameter().get::<millimeter>());
        let nut_width = p / 2.0 + 2.0 * tan * (d - d2) / 2.0;
        let screw_width = p / 2.0 + 2.0 * tan * (d2 - d1) / 2.0;
        // Basic profile: the nut's root is p/8 wide and the screw's crest too: 7p/8; the nut's crest p/4: 3p/4.
        assert_relative_eq!(nut_width, 7.0 / 8.0 * p, max_relative = 1e-12);
        assert_relative_eq!(screw_width, 3.0 / 4.0 * p, max_relative = 1e-12);
        let pi = std::f64::consts::PI;
        let turns = 12.0 / p;
        assert_relative_eq!(mating.nut_area(mm(12.0)).value * 1e6, pi * d * nut_width * turns, max_relative = 1e-12);
        assert_relative_eq!(
            mating.screw_area(mm(12.0)).value * 1e6,
            pi * d1 * screw_width * turns,
            max_relative = 1e-12
        );
    }
}

#[test]
fn a_hole_as_wide_as_the_screw_holds_nothing() {
    let basic = ThreadMating::basic(&ScrewThread { major: mm(6.0), pitch: mm(1.0), form: ThreadForm::Metric });
    let bored = ThreadMating { nut_minor: mm(6.0), ..basic };
    assert_eq!(bored.nut_area(mm(20.0)), Area::default());
    assert_eq!(bored.screw_area(mm(20.0)), Area::default());
}

//! Clamp loads and dry torques of grade 2 bolts: proof stress 55 ksi, three quarters of it as preload, *K* = 0.2. The
//! table was read in two transcriptions; for 5/16-18 one has 11.5 ft·lbf and the other 11.3:
//! 0.2 × 0.3125 in × 2162 lbf is 11.26, so the second is taken.

use approx::assert_relative_eq;
use skinspan::{
    fastening::{ScrewThread, ThreadForm, preload_range, tensile_capacity, tightening_torque, torque_within},
    units::{Force, Length, Pressure, Ratio, parse},
};
use uom::si::{area::square_meter, length::meter};

/// Loads come from areas with three digits, the least of them 0.0318: half a unit of the last.
const THREE_DIGITS: f64 = 0.0016;
/// Torques have two digits at the small end, 5.4: half a unit of the last, and the load's.
const TWO_DIGITS: f64 = 0.013;

/// Diameter in inches, threads per inch, torque in ft·lbf, clamp load in lbf, stress area in in².
const GRADE_2: [[f64; 5]; 16] = [
    [0.25, 20.0, 5.4, 1312.0, 0.0318],
    [0.25, 28.0, 6.3, 1502.0, 0.0364],
    [0.3125, 18.0, 11.3, 2162.0, 0.0524],
    [0.3125, 24.0, 12.5, 2397.0, 0.0580],
    [0.375, 16.0, 20.0, 3197.0, 0.0775],
    [0.375, 24.0, 22.6, 3622.0, 0.0878],
    [0.4375, 14.0, 32.0, 4385.0, 0.1063],
    [0.4375, 20.0, 35.7, 4896.0, 0.1187],
    [0.5, 13.0, 48.8, 5853.0, 0.1419],
    [0.5, 20.0, 55.0, 6600.0, 0.1599],
    [0.5625, 12.0, 70.4, 7508.0, 0.182],
    [0.5625, 18.0, 78.5, 8374.0, 0.203],
    [0.625, 11.0, 97.1, 9323.0, 0.226],
    [0.625, 18.0, 110.0, 10_560.0, 0.256],
    [0.75, 10.0, 172.0, 13_778.0, 0.334],
    [0.75, 16.0, 192.0, 15_366.0, 0.373],
];
const INCH: f64 = 0.0254;
const K: f64 = 0.2;

fn unified(diameter: f64, threads: f64) -> ScrewThread {
    let inches = |x: f64| Length::new::<meter>(x * INCH);
    ScrewThread { major: inches(diameter), pitch: inches(1.0 / threads), form: ThreadForm::Unified }
}

fn lbf() -> f64 {
    parse::<Force>("1 lbf").expect("a force").value
}

fn clamp(thread: &ScrewThread) -> Force {
    let proof = parse::<Pressure>("55 ksi").expect("a stress");
    tensile_capacity(0.75 * proof, thread.stress_area(), Ratio::from(1.0))
}

#[test]
fn stress_areas_of_unified_threads() {
    for [d, n, _, _, area] in GRADE_2 {
        let square_inches = unified(d, n).stress_area().get::<square_meter>() / (INCH * INCH);
        assert_relative_eq!(square_inches, area, max_relative = THREE_DIGITS);
    }
}

#[test]
fn clamp_loads_and_torques_of_grade_2() {
    for [d, n, torque, load, _] in GRADE_2 {
        let thread = unified(d, n);
        let clamp = clamp(&thread);
        assert_relative_eq!(clamp.value / lbf(), load, max_relative = THREE_DIGITS);
        let made = tightening_torque(Ratio::from(K), thread.major, clamp).value / (12.0 * INCH * lbf());
        assert_relative_eq!(made, torque, max_relative = TWO_DIGITS);
    }
}

#[test]
fn torque_and_preload_are_inverse() {
    let thread = unified(0.375, 16.0);
    let clamp = clamp(&thread);
    let torque = tightening_torque(Ratio::from(K), thread.major, clamp);
    for other in [0.12, 0.2, 0.3] {
        let factors = [Ratio::from(K), Ratio::from(other)];
        let range = preload_range(torque, thread.major, factors);
        let (least, greatest) = if other < K { (1.0, K / other) } else { (K / other, 1.0) };
        assert_relative_eq!(range.least.value, clamp.value * least, max_relative = 1e-14);
        assert_relative_eq!(range.greatest.value, clamp.value * greatest, max_relative = 1e-14);
        // The torque for a limit brings the greatest preload just there.
        let limited = torque_within(clamp, thread.major, factors);
        let greatest = preload_range(limited, thread.major, factors).greatest;
        assert_relative_eq!(greatest.value, clamp.value, max_relative = 1e-14);
    }
}

//! VDI 2230, preload and torque at 90 % of the yield stress: a supplier's table for austenitic stainless bolts of class 70,
//! *R*ₚ = 450 MPa (read; it names only the 90 %). Faces of the heads: ISO 4014 washer faces and ISO 273 medium holes, from
//! memory. The formulas are from memory: the table confirms them, the factor 3/2 of a section that has yielded too.

use std::f64::consts::PI;

use approx::assert_relative_eq;
use skinspan::{
    fastening::{ScrewThread, ThreadForm, nut_factor, preload_at_yield, tightening_torque},
    units::{Length, Pressure, Ratio},
};
use uom::si::{force::kilonewton, length::millimeter, pressure::megapascal, torque::newton_meter};

/// Two digits at the small end, 5.5 kN: half a unit, and 0.2 % that the table's own areas may differ by.
const TWO_DIGITS: f64 = 0.011;
/// The same for torques, and the unknown faces under the head.
const TORQUE_DIGITS: f64 = 0.015;

/// Diameter, pitch, washer face, hole; then for frictions of 0.1, 0.2 and 0.3: kN and N·m.
type Row = ([f64; 4], [[f64; 2]; 3]);
const CLASS_70: [Row; 4] = [
    ([5.0, 0.8, 6.9, 5.5], [[5.2, 3.6], [4.51, 5.7], [3.85, 7.0]]),
    ([6.0, 1.0, 8.9, 6.6], [[7.3, 6.3], [6.4, 10.0], [5.5, 12.2]]),
    ([8.0, 1.25, 11.6, 9.0], [[13.4, 15.2], [11.6, 24.1], [9.9, 30.0]]),
    ([10.0, 1.5, 14.6, 11.0], [[21.3, 30.0], [18.5, 47.7], [15.8, 59.0]]),
];

fn mm(x: f64) -> Length {
    Length::new::<millimeter>(x)
}

#[test]
fn preload_and_torque_of_stainless_class_70() {
    for ([d, p, face, hole], printed) in CLASS_70 {
        let thread = ScrewThread { major: mm(d), pitch: mm(p), form: ThreadForm::Metric };
        for (mu, [preload, torque]) in [0.1, 0.2, 0.3].into_iter().zip(printed) {
            let mu = Ratio::from(mu);
            let ours = preload_at_yield(&thread, Pressure::new::<megapascal>(450.0), Ratio::from(0.9), mu);
            assert_relative_eq!(ours.get::<kilonewton>(), preload, max_relative = TWO_DIGITS);
            let factor = nut_factor(&thread, mu, mu, mm(f64::midpoint(face, hole)));
            let made = tightening_torque(factor, thread.major, ours);
            assert_relative_eq!(made.get::<newton_meter>(), torque, max_relative = TORQUE_DIGITS);
        }
    }
}

#[test]
fn pull_and_twist_reach_the_yield_stress_together() {
    // σ² + 3 τ² = (ν R_p)², τ of a bar that has yielded across: M/(π d³/12).
    let thread = ScrewThread { major: mm(8.0), pitch: mm(1.25), form: ThreadForm::Metric };
    for mu in [0.0, 0.1, 0.3] {
        let proof = Pressure::new::<megapascal>(450.0);
        let force = preload_at_yield(&thread, proof, Ratio::from(0.9), Ratio::from(mu)).value;
        // The thread's part of the torque is the whole with no friction under the head.
        let factor = nut_factor(&thread, Ratio::from(mu), Ratio::from(0.0), mm(10.0)).value;
        let moment = factor * 8e-3 * force;
        let diameter = thread.stress_diameter().value;
        let (sigma, tau) = (force / (PI * diameter * diameter / 4.0), 12.0 * moment / (PI * diameter.powi(3)));
        assert_relative_eq!((sigma * sigma + 3.0 * tau * tau).sqrt(), 0.9 * proof.value, max_relative = 1e-13);
    }
}

//! Skins and core beside a hard edge: the closed forms against a finite-difference solution of the two coupled
//! equations *D₂* L θ = *S*γ − *Q* and *D₀* L ψ = −*S*γ, with γ = θ − ψ, clamped at the edge. No published number was
//! found for it; the handbook forms of the two constants are from memory.

#![allow(clippy::cast_precision_loss)] // indices of a grid of 15 000 places

use std::f64::consts::PI;

use approx::assert_relative_eq;
use nalgebra::{Matrix2, Vector2};
use skinspan::{
    fastening::{BackingLoad, core_shear_round_plug, full_depth_pull, skin_stress_at_backing},
    strength::{
        Pad, RoundFoot, SkinBending, plate_modulus, punching_peak, punching_shear_at, punching_stress,
        skin_moment_at_edge, skin_moment_at_round_edge,
    },
    units::{Force, ForcePerWidth, Length, Pressure, Ratio, Torque, per_width},
};
use uom::si::{
    force::newton,
    length::{meter, millimeter},
    pressure::megapascal,
    torque::newton_meter,
};

/// Differences of second order at a step of 1/1000 of the decay length.
const DIFFERENCES: f64 = 1e-5;
/// Six digits agree between the remembered form and ours.
const SIX_DIGITS: f64 = 1e-6;
/// Arithmetic by hand.
const THREE_DIGITS: f64 = 0.002;

const T: f64 = 1.6e-3;
const C: f64 = 19e-3;
const D: f64 = T + C;

fn panel() -> SkinBending {
    let mpa = Pressure::new::<megapascal>;
    SkinBending::of_equal_skins(mpa(14_000.0), mpa(27.0), Length::new::<meter>(T), Length::new::<meter>(C))
}

fn shear(newtons_per_meter: f64) -> ForcePerWidth {
    per_width(Force::new::<newton>(newtons_per_meter) / Length::new::<meter>(1.0))
}

/// θ and ψ from a hard edge at `start` outwards, on a grid.
struct Solution {
    start: f64,
    step: f64,
    slopes: Vec<Vector2<f64>>,
}

impl Solution {
    /// Shear force per length `edge_shear` at the edge; `round` lets it fall as 1/r.
    fn new(start: f64, edge_shear: f64, round: bool) -> Self {
        const N: usize = 15_000;
        let p = panel();
        let (d0, d2, s) = (p.flanges.value, p.skins.value, p.shear.value);
        let step = 15.0 * p.decay_length().value / N as f64;
        // Block elimination of A u₍ᵢ₋₁₎ + B uᵢ + C u₍ᵢ₊₁₎ = f, from u₀ = 0 to a free end u_N = u₍N₋₁₎.
        let mut eliminated: Vec<(Matrix2<f64>, Vector2<f64>)> = vec![(Matrix2::zeros(), Vector2::zeros())];
        for i in 1..N {
            let r = start + i as f64 * step;
            let (first, zeroth, q) =
                if round { (1.0 / r, -1.0 / (r * r), edge_shear * start / r) } else { (0.0, 0.0, edge_shear) };
            let rigidity = Matrix2::new(d2, 0.0, 0.0, d0);
            let before = rigidity * (1.0 / (step * step) - first / (2.0 * step));
            let after = rigidity * (1.0 / (step * step) + first / (2.0 * step));
            let here = rigidity * (-2.0 / (step * step) + zeroth) - Matrix2::new(s, -s, -s, s);
            let (factor, constant) = eliminated[i - 1];
            let inverse = (here + before * factor).try_inverse().expect("both rigidities are above zero");
            eliminated.push((-inverse * after, inverse * (Vector2::new(-q, 0.0) - before * constant)));
        }
        let (factor, constant) = eliminated[N - 1];
        let mut slopes = vec![Vector2::zeros(); N + 1];
        slopes[N] = (Matrix2::identity() - factor).try_inverse().expect("both rigidities are above zero") * constant;
        for i in (1..N).rev() {
            slopes[i] = eliminated[i].0 * slopes[i + 1] + eliminated[i].1;
        }
        Self { start, step, slopes }
    }

    /// Core shear stress *S*γ/*d* at a grid point.
    fn core_shear(&self, i: usize) -> f64 {
        panel().shear.value * (self.slopes[i][0] - self.slopes[i][1]) / D
    }

    fn place(&self, i: usize) -> f64 {
        self.start + i as f64 * self.step
    }

    /// What both skins carry beyond their share of the moment at the edge.
    fn skin_moment(&self) -> f64 {
        let p = panel();
        let slope = (4.0 * self.slopes[1] - self.slopes[2]) / (2.0 * self.step);
        let whole = p.skins.value * slope[0] + p.flanges.value * slope[1];
        p.skins.value * slope[0] - p.skins.value / p.rigidity().value * whole
    }
}

#[test]
fn straight_edge_solves_the_coupled_equations() {
    let (panel, v) = (panel(), shear(10e3));
    let solution = Solution::new(0.0, v.value, false);
    let moment = skin_moment_at_edge(v, &panel, panel.skins).value;
    assert_relative_eq!(solution.skin_moment().abs(), moment, max_relative = DIFFERENCES);
    // The core's share of V/d comes in as 1 − e^(−αx): it never passes V/d.
    for i in [500, 1000, 3000] {
        let x = solution.place(i) / panel.decay_length().value;
        let stress = v.value / D * panel.core_share().value * -(-x).exp_m1();
        assert_relative_eq!(solution.core_shear(i), stress, max_relative = DIFFERENCES);
    }
}

#[test]
fn round_edge_solves_the_coupled_equations() {
    let panel = panel();
    for radius in [3e-3, 15e-3, 50e-3] {
        let force = 1000.0;
        let v = shear(force / (2.0 * PI * radius));
        let solution = Solution::new(radius, v.value, true);
        let foot = RoundFoot {
            force: Force::new::<newton>(force),
            radius: Length::new::<meter>(radius),
            skin_distance: Length::new::<meter>(D),
        };
        let moment = skin_moment_at_round_edge(v, foot.radius, &panel, panel.skins).value;
        assert_relative_eq!(solution.skin_moment().abs(), moment, max_relative = 2.0 * DIFFERENCES);
        for i in [500, 1000, 3000] {
            let stress = punching_shear_at(Length::new::<meter>(solution.place(i)), &foot, &panel).value;
            assert_relative_eq!(solution.core_shear(i), stress, max_relative = DIFFERENCES);
        }
        let highest = (0..8000).map(|i| solution.core_shear(i)).fold(0.0, f64::max);
        assert_relative_eq!(punching_peak(&foot, &panel).stress.value, highest, max_relative = DIFFERENCES);
    }
}

#[test]
fn strip_with_force_and_moment_solves_the_coupled_equations() {
    // 1000 N and 30 N·m on 100 mm × 50 mm: the sides carry 10 ± 6 N/mm.
    let panel = panel();
    let load = BackingLoad {
        force: Force::new::<newton>(1000.0),
        moment: Torque::new::<newton_meter>(-30.0),
        width: Length::new::<millimeter>(100.0),
        length: Length::new::<millimeter>(50.0),
    };
    assert_relative_eq!(load.line_shear().value, 16e3, max_relative = 1e-12);
    let solution = Solution::new(0.0, 16e3, false);
    let far = (5000..10_000).map(|i| solution.core_shear(i)).fold(0.0, f64::max); // 5 to 10 decay lengths
    assert_relative_eq!(load.core_shear(&panel, Length::new::<meter>(D)).value, far, max_relative = 10.0 * DIFFERENCES);
    // The surface of one skin at the edge, with a membrane stress of 20 MPa from elsewhere.
    let moment = skin_moment_at_edge(load.line_shear(), &panel, panel.skins / 2.0);
    let stress = skin_stress_at_backing(Pressure::new::<megapascal>(20.0), moment, Length::new::<meter>(T));
    let expected = 20e6 + 6.0 * solution.skin_moment().abs() / 2.0 / (T * T);
    assert_relative_eq!(stress.value, expected, max_relative = DIFFERENCES);
}

#[test]
fn full_depth_pull_brings_the_core_to_its_strength() {
    let panel = panel();
    for radius in [3e-3, 15e-3, 50e-3] {
        let strength = Pressure::new::<megapascal>(0.8);
        let force =
            full_depth_pull(Length::new::<meter>(radius), strength, &panel, Length::new::<meter>(D)).get::<newton>();
        let solution = Solution::new(radius, force / (2.0 * PI * radius), true);
        let highest = (0..8000).map(|i| solution.core_shear(i)).fold(0.0, f64::max);
        assert_relative_eq!(highest, strength.value, max_relative = DIFFERENCES);
    }
}

#[test]
fn rectangular_plug_of_no_width_is_a_strip() {
    let (panel, force) = (panel(), Force::new::<newton>(1000.0));
    let (length, d) = (Length::new::<millimeter>(200.0), Length::new::<meter>(D));
    let plug = Pad { length, width: Length::default() };
    let strip = BackingLoad { force, moment: Torque::default(), width: length, length };
    let stress = core_shear_round_plug(force, plug, Ratio::from(1.0), &panel, d);
    assert_relative_eq!(stress.value, strip.core_shear(&panel, d).value, max_relative = 1e-12);
    let square = Pad { length, width: length };
    let uneven = core_shear_round_plug(force, square, Ratio::from(0.8), &panel, d);
    assert_relative_eq!(uneven.value, stress.value / 2.0 / 0.8, max_relative = 1e-12);
}

#[test]
fn constants_insert_handbook_form() {
    // α = (1/f) √{12(1−ν²)(G/E)[β/2 + 1 + 2/(3β)]},  c D₀/(d D) = β(β+1)/(β² + 2β + 4/3),  β = c/f; the modulus here
    // is E/(1−ν²).
    let beta: f64 = C / T;
    let alpha = (12.0 * 27.0 / 14_000.0 * (beta / 2.0 + 1.0 + 2.0 / (3.0 * beta))).sqrt() / T;
    assert_relative_eq!(1.0 / panel().decay_length().value, alpha, max_relative = SIX_DIGITS);
    let share = beta * (beta + 1.0) / (beta * beta + 2.0 * beta + 4.0 / 3.0);
    assert_relative_eq!(panel().core_share().value * C / D, share, max_relative = SIX_DIGITS);
}

#[test]
fn peak_insert_handbook_fit() {
    // r_m = b [1 + (αb)^−0.593] (from memory) gives the peak within 1.1 %.
    let panel = panel();
    for ab in [3.6, 5.0, 9.1, 12.2] {
        let radius = ab * panel.decay_length();
        let foot = RoundFoot { force: Force::new::<newton>(1000.0), radius, skin_distance: Length::new::<meter>(D) };
        let peak = punching_peak(&foot, &panel);
        let fit = punching_shear_at(radius * (1.0 + ab.powf(-0.593)), &foot, &panel);
        assert!(fit <= peak.stress);
        assert_relative_eq!(fit.value, peak.stress.value, max_relative = 0.011);
        assert!(peak.stress < punching_stress(foot.force, 2.0 * PI * radius, foot.skin_distance));
    }
}

#[test]
fn straight_edge_by_hand() {
    // With E/(1−ν²) = 14/0.91 GPa: 1/α = 4.17 mm; 10 N/mm make 20.8 N·mm/mm in each skin and 6 m/t² = 48.8 MPa.
    let mpa = Pressure::new::<megapascal>;
    let e = plate_modulus(mpa(14_000.0), Ratio::from(0.3));
    let panel = SkinBending::of_equal_skins(e, mpa(27.0), Length::new::<meter>(T), Length::new::<meter>(C));
    assert_relative_eq!(panel.decay_length().get::<millimeter>(), 4.17, max_relative = THREE_DIGITS);
    let m = skin_moment_at_edge(shear(10e3), &panel, panel.skins / 2.0).value;
    assert_relative_eq!(6.0 * m / (T * T) / 1e6, 48.8, max_relative = THREE_DIGITS);
}

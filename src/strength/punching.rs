//! Shear of the core round a foot, an insert or a strip of solid backing.

use std::f64::consts::PI;

use super::{SkinBending, kelvin::scaled_k0_k1};
use crate::units::{Force, ForcePerWidth, Length, Pressure, Torque, per_width, plain};

/// Shear stress of the core at the rim of a foot if the core carries everything there.
///
/// ```text
///   τ = P / (u d)
/// ```
///
/// | symbol | meaning                                   | argument        |
/// |--------|-------------------------------------------|-----------------|
/// | *P*    | load                                      | `force`         |
/// | *u*    | length of the rim of the foot             | `perimeter`     |
/// | *d*    | distance between the middles of the skins | `skin_distance` |
///
/// # Validity
///
/// Any outline without re-entrant corners. High, on the safe side: the skins take over at a hard rim, see
/// [`punching_peak`]. At the corners of a rectangle the stress rises above the mean: common practice takes 0.8 of the
/// allowable there.
///
/// # Source
///
/// [`DERIVED`](crate::source::DERIVED): equilibrium.
///
/// # Examples
///
/// 800 N on a foot 100 mm square, *d* = 20 mm: 800/(400 × 20) = 0.1 MPa.
///
/// ```
/// use skinspan::{strength::punching_stress, units::{Force, Length}};
/// use uom::si::{force::newton, length::millimeter, pressure::megapascal};
/// let mm = Length::new::<millimeter>;
/// let tau = punching_stress(Force::new::<newton>(800.0), mm(400.0), mm(20.0));
/// assert!((tau.get::<megapascal>() - 0.1).abs() < 1e-12);
/// ```
#[must_use]
pub fn punching_stress(force: Force, perimeter: Length, skin_distance: Length) -> Pressure {
    force / (perimeter * skin_distance)
}

/// Largest shear stress of the core at the rim of a foot that is tipped, if the core carries everything there.
///
/// ```text
///   τ = 4 M / (π a² d),   q(θ) = 4 M / (π a²) cos θ round the rim
/// ```
///
/// | symbol | meaning                                    | argument        |
/// |--------|--------------------------------------------|-----------------|
/// | *M*    | overturning moment                         | `moment`        |
/// | *a*    | diameter of the foot, or its smaller side  | `width`         |
/// | *d*    | distance between the middles of the skins  | `skin_distance` |
///
/// # Validity
///
/// A rigid round foot in a wide panel. For a rectangle with *a* its smaller side it is high, on the safe side: the disc
/// within it has less rim and less arm. As in [`punching_stress`], what the skins take over is left out.
///
/// # Source
///
/// [`DERIVED`](crate::source::DERIVED): moment of a line force that goes with the cosine, `M = ∫ q r cos θ r dθ = π q r²`.
///
/// # Examples
///
/// 40 N·m on a disc of 100 mm, *d* = 20 mm: 4 × 40000/(π × 10000 × 20) = 0.2546 MPa.
///
/// ```
/// use skinspan::{strength::tipping_stress, units::{Force, Length, Torque}};
/// use uom::si::{length::millimeter, pressure::megapascal, torque::newton_meter};
/// let mm = Length::new::<millimeter>;
/// let tau = tipping_stress(Torque::new::<newton_meter>(40.0), mm(100.0), mm(20.0));
/// assert!((tau.get::<megapascal>() - 0.254_648).abs() < 1e-6);
/// ```
#[must_use]
pub fn tipping_stress(moment: Torque, width: Length, skin_distance: Length) -> Pressure {
    plain(tipping_shear(moment, width)) / skin_distance
}

/// Largest shear force of the panel per width at the rim of a foot that is tipped.
///
/// ```text
///   V = 4 M / (π a²)
/// ```
///
/// | symbol | meaning                                    | argument        |
/// |--------|--------------------------------------------|-----------------|
/// | *M*    | overturning moment                         | `moment`        |
/// | *a*    | diameter of the foot, or its smaller side  | `width`         |
///
/// # Validity
///
/// As [`tipping_stress`].
///
/// # Source
///
/// [`DERIVED`](crate::source::DERIVED) as [`tipping_stress`].
///
/// # Examples
///
/// 40 N·m on a disc of 100 mm: 4 × 40/(π × 0.01) = 5093 N/m.
///
/// ```
/// use skinspan::{strength::tipping_shear, units::{Length, Torque}};
/// use uom::si::{length::millimeter, torque::newton_meter};
/// let shear = tipping_shear(Torque::new::<newton_meter>(40.0), Length::new::<millimeter>(100.0));
/// assert!((shear.value - 5092.96).abs() < 0.01); // N/m
/// ```
#[must_use]
pub fn tipping_shear(moment: Torque, width: Length) -> ForcePerWidth {
    per_width(moment * (4.0 / PI) / (width * width))
}

/// Load on a hard disc that is fast to the panel.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RoundFoot {
    /// Load across the panel.
    pub force: Force,
    /// Radius of the disc.
    pub radius: Length,
    /// Distance between the middles of the skins.
    pub skin_distance: Length,
}

/// Largest shear stress of the core round a disc, and where it is.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PeakShear {
    /// The stress.
    pub stress: Pressure,
    /// Distance from the middle of the disc.
    pub radius: Length,
}

/// Shear stress of the core at a distance from a round hard foot, the skins' share taken off.
///
/// ```text
///              P   D₀  ┌ 1     K₁(αr)   ┐
///   τ(r)  =  ----- --- │--- - ----------│        r ≥ b
///            2 π d  D  └ r    b K₁(αb)  ┘
/// ```
///
/// | symbol | meaning                                               | argument or field     |
/// |--------|-------------------------------------------------------|-----------------------|
/// | *P*    | load on the foot                                      | `foot.force`          |
/// | *b*    | radius of the foot                                    | `foot.radius`         |
/// | *d*    | distance between the middles of the skins             | `foot.skin_distance`  |
/// | *r*    | distance from its middle                              | `radius`              |
/// | *D₀*/*D* | [`SkinBending::core_share`]                         | `panel`               |
/// | 1/*α*  | [`SkinBending::decay_length`]                         | `panel`               |
/// | *K₁*   | modified Bessel function of the second kind           |                       |
///
/// # Validity
///
/// Disc fast to both skins (full-depth insert or plug), panel wide against *b* and 1/*α*. Zero at the rim, where the
/// skins carry all.
///
/// # Source
///
/// [`DERIVED`](crate::source::DERIVED) from the equations in [`skin_moment_at_edge`](super::skin_moment_at_edge) for
/// axial symmetry, checked against a numerical solution; the form agrees with the handbooks on inserts (from memory).
///
/// # Examples
///
/// At the rim 0; far out the 1/*r* term alone: 1000 N, *d* = 20 mm, *r* = 200 mm: 0.99668 × 1000/(2π × 20 × 200) =
/// 0.03966 MPa.
///
/// ```
/// use skinspan::{strength::{RoundFoot, SkinBending, punching_shear_at}, units::{Force, Length, Pressure}};
/// use uom::si::{force::newton, length::millimeter, pressure::megapascal};
/// let (mpa, mm) = (Pressure::new::<megapascal>, Length::new::<millimeter>);
/// let panel = SkinBending::of_equal_skins(mpa(12_000.0), mpa(27.0), mm(2.0), mm(18.0));
/// let foot = RoundFoot { force: Force::new::<newton>(1000.0), radius: mm(20.0), skin_distance: mm(20.0) };
/// assert!(punching_shear_at(mm(20.0), &foot, &panel).get::<megapascal>().abs() < 1e-12);
/// assert!((punching_shear_at(mm(200.0), &foot, &panel).get::<megapascal>() - 0.03966).abs() < 1e-5);
/// ```
#[must_use]
pub fn punching_shear_at(radius: Length, foot: &RoundFoot, panel: &SkinBending) -> Pressure {
    let alpha = 1.0 / panel.decay_length();
    let rim = (foot.radius * alpha).value;
    let share = core_shear_outside((radius * alpha).value, rim, kept_by_skins(rim));
    panel.core_share() * share * punching_stress(foot.force, 2.0 * PI * foot.radius, foot.skin_distance)
}

/// Largest shear stress of the core round a round hard foot.
///
/// ```text
///   max over r ≥ b of τ(r) as in punching_shear_at
/// ```
///
/// | symbol | meaning                            | argument      |
/// |--------|------------------------------------|---------------|
/// | *τ*(*r*) | [`punching_shear_at`]            | `foot`, `panel` |
/// | *b*    | radius of the foot                 | `foot.radius` |
///
/// # Validity
///
/// As [`punching_shear_at`]. Always below [`punching_stress`] on the rim.
///
/// # Source
///
/// [`DERIVED`](crate::source::DERIVED): the zero of dτ/d*r*, by bisection.
///
/// # Examples
///
/// A disc with *αb* = 3.88 (1/*α* = 5.155 mm, *b* = 20 mm): the core sees little more than half of *P*/(2π*bd*) =
/// 0.398 MPa.
///
/// ```
/// use skinspan::{strength::{RoundFoot, SkinBending, punching_peak}, units::{Force, Length, Pressure}};
/// use uom::si::{force::newton, length::millimeter, pressure::megapascal};
/// let (mpa, mm) = (Pressure::new::<megapascal>, Length::new::<millimeter>);
/// let panel = SkinBending::of_equal_skins(mpa(12_000.0), mpa(27.0), mm(2.0), mm(18.0));
/// let foot = RoundFoot { force: Force::new::<newton>(1000.0), radius: mm(20.0), skin_distance: mm(20.0) };
/// let peak = punching_peak(&foot, &panel);
/// assert!(peak.stress.get::<megapascal>() > 0.5 * 0.398 && peak.stress.get::<megapascal>() < 0.6 * 0.398);
/// assert!(peak.radius > mm(20.0));
/// ```
#[must_use]
pub fn punching_peak(foot: &RoundFoot, panel: &SkinBending) -> PeakShear {
    let decay = panel.decay_length();
    let rim = (foot.radius / decay).value;
    let radius = peak_distance(rim, kept_by_skins(rim)) * decay;
    PeakShear { stress: punching_shear_at(radius, foot, panel), radius }
}

/// What the skins keep from the core at the rim of a disc that holds them, e^(−αb)/K₁(αb).
fn kept_by_skins(rim: f64) -> f64 {
    1.0 / scaled_k0_k1(rim).1
}

/// Shear of the core outside a disc over that of its rim, b/r − k e^b K₁(r) for lengths times α.
pub(super) fn core_shear_outside(r: f64, b: f64, kept: f64) -> f64 {
    b / r - (b - r).exp() * scaled_k0_k1(r).1 * kept
}

/// *αr* at which [`core_shear_outside`] is largest.
pub(super) fn peak_distance(b: f64, kept: f64) -> f64 {
    // Derivative times r²/b, so that it stays of order one; positive at the rim, negative far out.
    let rising = |r: f64| {
        let (k0, k1) = scaled_k0_k1(r);
        (b - r).exp() * (k0 + k1 / r) * kept * r * r / b > 1.0
    };
    let mut low = b;
    let mut step = 1.0;
    while rising(low + step) {
        low += step;
        step *= 2.0;
    }
    let mut high = low + step;
    // The shear hardly changes beside its peak: a place to nine digits is more than it needs.
    for _ in 0..32 {
        let middle = f64::midpoint(low, high);
        if rising(middle) {
            low = middle;
        } else {
            high = middle;
        }
    }
    f64::midpoint(low, high)
}

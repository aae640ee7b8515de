//! Shear of the core under and round a foot that presses evenly on a skin, as a sole does.

use std::f64::consts::TAU;

use super::{
    DiscLoad, PeakShear, SkinBending,
    kelvin::{scaled_i1, scaled_k0_k1},
    punching::{core_shear_outside, peak_distance, punching_stress},
};
use crate::units::{Length, Pressure};

/// Shear stress of the core at a distance from the middle of a disc that presses evenly, the skins' share taken off.
///
/// ```text
///              P   D₀  ┌ r                     ┐                       P   D₀  ┌ 1     2             ┐
///   τ(r)  =  ----- --- │--- - 2 K₁(αb) I₁(αr)/b │   r ≤ b,   τ(r)  =  ----- --- │--- - - I₁(αb) K₁(αr) │   r ≥ b
///            2 π d  D  └ b²                     ┘                      2 π d  D  └ r     b             ┘
/// ```
///
/// | symbol | meaning                                               | argument or field     |
/// |--------|-------------------------------------------------------|-----------------------|
/// | *P*, *b* | load, and the radius over which it is spread        | `load`                |
/// | *d*    | distance between the middles of the skins             | `skin_distance`       |
/// | *r*    | distance from the middle of the disc                  | `radius`              |
/// | *D₀*/*D* | [`SkinBending::core_share`]                         | `panel`               |
/// | 1/*α*  | [`SkinBending::decay_length`]                         | `panel`               |
/// | *I₁*, *K₁* | modified Bessel functions                         |                       |
///
/// # Validity
///
/// Load that follows the skin as it bends: a sole, a fender, a bag; panel wide against *b* and 1/*α*. At the rim it is
/// `1 − 2 I₁(αb) K₁(αb)`, about 1 − 1/(*αb*), of what the core would carry without the skins. For a disc that holds the skins
/// [`punching_shear_at`](super::punching_shear_at).
///
/// # Source
///
/// [`DERIVED`](crate::source::DERIVED): the core's shear *q* has Δ*q* − *q*/*r*² − *α*² *q* = −*α*² (*D₀*/*D*) *Q*, *Q* that of
/// the panel by equilibrium, *P r*/(2π*b*²) inside and *P*/(2π*r*) outside; *q* and its slope go on through the rim.
///
/// # Examples
///
/// A disc with *αb* = 3.88 (1/*α* = 5.155 mm, *b* = 20 mm): at the rim 1 − 2 × 8.7481 × 0.014334 = 0.7492 of
/// 0.99668 × 1000/(2π × 20 × 20) = 0.3966 MPa: 0.2971 MPa.
///
/// ```
/// use skinspan::{strength::{DiscLoad, SkinBending, even_punching_shear_at}, units::{Force, Length, Pressure}};
/// use uom::si::{force::newton, length::millimeter, pressure::megapascal};
/// let (mpa, mm) = (Pressure::new::<megapascal>, Length::new::<millimeter>);
/// let panel = SkinBending::of_equal_skins(mpa(12_000.0), mpa(27.0), mm(2.0), mm(18.0));
/// let load = DiscLoad { force: Force::new::<newton>(1000.0), radius: mm(20.0) };
/// let at = |r| even_punching_shear_at(mm(r), load, mm(20.0), &panel).get::<megapascal>();
/// assert!((at(20.0) - 0.2971).abs() < 1e-4);
/// assert!(at(0.0).abs() < 1e-12);
/// // Far out the skins' share is gone: 0.99668 × 1000/(2π × 20 × 200) = 0.03966 MPa.
/// assert!((at(200.0) - 0.03966).abs() < 1e-5);
/// ```
#[must_use]
pub fn even_punching_shear_at(radius: Length, load: DiscLoad, skin_distance: Length, panel: &SkinBending) -> Pressure {
    let alpha = 1.0 / panel.decay_length();
    let [r, b] = [radius, load.radius].map(|length| (length * alpha).value);
    let share = if r > b {
        core_shear_outside(r, b, kept_by_skins(b))
    } else {
        r / b - 2.0 * (r - b).exp() * scaled_i1(r) * scaled_k0_k1(b).1
    };
    panel.core_share() * share * punching_stress(load.force, TAU * load.radius, skin_distance)
}

/// Largest shear stress of the core under and round a disc that presses evenly.
///
/// ```text
///   max over r of τ(r) as in even_punching_shear_at
/// ```
///
/// | symbol | meaning                            | argument      |
/// |--------|------------------------------------|---------------|
/// | *τ*(*r*) | [`even_punching_shear_at`]       | `load`, `skin_distance`, `panel` |
///
/// # Validity
///
/// As [`even_punching_shear_at`]. It lies outside the rim, within a fortieth of *b* from *αb* = 5 on. Above
/// [`punching_peak`](super::punching_peak) of a disc that holds the skins, below
/// [`punching_stress`] on the rim.
///
/// # Source
///
/// [`DERIVED`](crate::source::DERIVED): inside, τ grows all the way, since −(*I₁K₁*)′ > 0; outside, the zero of dτ/d*r*, by
/// bisection.
///
/// # Examples
///
/// The disc of [`even_punching_shear_at`]: 0.7516 × 0.3966 = 0.2981 MPa at 20.85 mm.
///
/// ```
/// use skinspan::{strength::{DiscLoad, SkinBending, even_punching_peak}, units::{Force, Length, Pressure}};
/// use uom::si::{force::newton, length::millimeter, pressure::megapascal};
/// let (mpa, mm) = (Pressure::new::<megapascal>, Length::new::<millimeter>);
/// let panel = SkinBending::of_equal_skins(mpa(12_000.0), mpa(27.0), mm(2.0), mm(18.0));
/// let load = DiscLoad { force: Force::new::<newton>(1000.0), radius: mm(20.0) };
/// let peak = even_punching_peak(load, mm(20.0), &panel);
/// assert!((peak.stress.get::<megapascal>() - 0.2981).abs() < 1e-4);
/// assert!((peak.radius.get::<millimeter>() - 20.849).abs() < 1e-2);
/// ```
#[must_use]
pub fn even_punching_peak(load: DiscLoad, skin_distance: Length, panel: &SkinBending) -> PeakShear {
    let decay = panel.decay_length();
    let rim = (load.radius / decay).value;
    let radius = peak_distance(rim, kept_by_skins(rim)) * decay;
    PeakShear { stress: even_punching_shear_at(radius, load, skin_distance, panel), radius }
}

/// What the skins keep from the core at the rim, 2 e^(−αb) I₁(αb).
fn kept_by_skins(rim: f64) -> f64 {
    2.0 * scaled_i1(rim)
}

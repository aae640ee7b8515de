//! Round plugs of potting or solid board: what they bear in each direction.

use std::f64::consts::PI;

use crate::{
    strength::{RoundFoot, SkinBending, punching_peak},
    units::{Force, Length, Pressure, Ratio, Torque},
};

/// Pull or push on a full-depth plug at which the core round it shears.
///
/// ```text
///   P = τ_c/(max τ/P₁)
/// ```
///
/// | symbol | meaning                                        | argument        |
/// |--------|------------------------------------------------|-----------------|
/// | `τ_c`  | shear strength of the core                     | `core_shear`    |
/// | *τ*    | [`punching_peak`] under any load *P₁*          | `panel`         |
/// | *b*    | radius of the plug: of its bore, in foam       | `radius`        |
/// | *d*    | distance between the middles of the skins      | `skin_distance` |
///
/// # Validity
///
/// As [`punching_peak`].
///
/// # Source
///
/// [`DERIVED`](crate::source::DERIVED): inverse of [`punching_peak`].
///
/// # Examples
///
/// *b* = 20 mm, *d* = 20 mm, 1 MPa: more than 2π*bdτ* = 2513 N, because the skins carry a share at the rim; less than
/// twice that.
///
/// ```
/// use skinspan::{fastening::full_depth_pull, strength::SkinBending, units::{Length, Pressure}};
/// use uom::si::{force::newton, length::millimeter, pressure::megapascal};
/// let (mpa, mm) = (Pressure::new::<megapascal>, Length::new::<millimeter>);
/// let panel = SkinBending::of_equal_skins(mpa(12_000.0), mpa(27.0), mm(2.0), mm(18.0));
/// let p = full_depth_pull(mm(20.0), mpa(1.0), &panel, mm(20.0)).get::<newton>();
/// assert!(p > 2513.0 / 0.6 && p < 2513.0 / 0.5);
/// ```
#[must_use]
pub fn full_depth_pull(radius: Length, core_shear: Pressure, panel: &SkinBending, skin_distance: Length) -> Force {
    let force = core_shear * (2.0 * PI * radius * skin_distance);
    let peak = punching_peak(&RoundFoot { force, radius, skin_distance }, panel).stress;
    force * (core_shear / peak)
}

/// Pull on a plug that ends within the core.
///
/// ```text
///   P = k (2π b h τ_c + π b² σ_ct)
/// ```
///
/// | symbol  | meaning                                                       | argument       |
/// |---------|---------------------------------------------------------------|----------------|
/// | *b*     | radius of the plug                                            | `radius`       |
/// | *h*     | its depth in the core                                         | `depth`        |
/// | `τ_c`   | shear strength of the core                                    | `core_shear`   |
/// | `σ_ct`  | tensile strength of the core across the panel                 | `core_tension` |
/// | *k*     | what is left because side and bottom do not peak at once      | `together`     |
///
/// # Validity
///
/// Upper bound with *k* = 1, for core that yields. What the skin round the mouth carries is left out. The far skin gets
/// nothing: a plug of full depth is better.
///
/// # Source
///
/// [`DERIVED`](crate::source::DERIVED): equilibrium of the plug at full plasticity.
///
/// # Examples
///
/// *b* = 10 mm, *h* = 10 mm, 0.8 and 1.5 MPa, *k* = 0.7: 0.7 (502.7 + 471.2) = 681.7 N.
///
/// ```
/// use skinspan::{fastening::partly_potted_pull, units::{Length, Pressure, Ratio}};
/// use uom::si::{force::newton, length::millimeter, pressure::megapascal};
/// let (mpa, mm) = (Pressure::new::<megapascal>, Length::new::<millimeter>);
/// let p = partly_potted_pull(mm(10.0), mm(10.0), mpa(0.8), mpa(1.5), Ratio::from(0.7));
/// assert!((p.get::<newton>() - 681.7).abs() < 0.1);
/// ```
#[must_use]
pub fn partly_potted_pull(
    radius: Length,
    depth: Length,
    core_shear: Pressure,
    core_tension: Pressure,
    together: Ratio,
) -> Force {
    let side = 2.0 * PI * radius * depth * core_shear;
    let bottom = PI * radius * radius * core_tension;
    together * (side + bottom)
}

/// Moment about its own axis at which a round plug turns in the core.
///
/// ```text
///   M = 2π b² c τ_c
/// ```
///
/// | symbol | meaning                          | argument         |
/// |--------|----------------------------------|------------------|
/// | *b*    | radius of the plug               | `radius`         |
/// | *c*    | depth of its side in the core    | `depth`          |
/// | `τ_c`  | shear strength of the core, or of the glue round the plug if less | `core_shear` |
///
/// # Validity
///
/// Even shear on the side; what the skins bear is left out, safe side.
///
/// # Source
///
/// [`DERIVED`](crate::source::DERIVED): equilibrium.
///
/// # Examples
///
/// *b* = 10 mm, *c* = 19 mm, 0.8 MPa: 2π × 100 × 19 × 0.8 = 9550 N·mm.
///
/// ```
/// use skinspan::{fastening::torsion_capacity, units::{Length, Pressure}};
/// use uom::si::{length::millimeter, pressure::megapascal};
/// let mm = Length::new::<millimeter>;
/// let m = torsion_capacity(mm(10.0), mm(19.0), Pressure::new::<megapascal>(0.8));
/// assert!((m.value - 9.550).abs() < 1e-3); // N·m
/// ```
#[must_use]
pub fn torsion_capacity(radius: Length, depth: Length, core_shear: Pressure) -> Torque {
    (2.0 * PI * radius * radius * depth * core_shear).into()
}

//! Buckling of a simply supported isotropic sandwich plate under compression along one side.

use std::f64::consts::PI;

use crate::units::{FlexuralRigidity, ForcePerWidth, Length, Ratio, ShearStiffness, per_width, plain};

/// Simply supported plate with one rigidity in both directions.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct IsotropicPlate {
    /// Flexural rigidity per width.
    pub rigidity: FlexuralRigidity,
    /// Shear stiffness per width.
    pub shear: ShearStiffness,
    /// Side along the compression.
    pub length: Length,
    /// Side across the compression.
    pub width: Length,
}

/// How a plate buckles.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PlateBuckling {
    /// Compressive load per width.
    pub load: ForcePerWidth,
    /// Length of half a wave along the load; `None` when the plate crimps in waves without length.
    pub half_wave: Option<Length>,
}

/// Buckling load of a simply supported isotropic sandwich plate, and its half wave.
///
/// ```text
///                D g²/α²
///   N = min  -------------        α = m π/a    β = π/b    g = α² + β²
///        m    1 + D g/S
/// ```
///
/// | symbol | meaning                              | field      |
/// |--------|--------------------------------------|------------|
/// | *D*    | flexural rigidity per width          | `rigidity` |
/// | *S*    | shear stiffness per width            | `shear`    |
/// | *a*    | side along the compression           | `length`   |
/// | *b*    | side across the compression          | `width`    |
/// | *m*    | number of half waves along the load  |            |
///
/// As a function of *α*² the load has one minimum, at *α*²/*β*² = (1 + *r*)/(1 − *r*) with *r* = *D β*²/*S*, so only
/// the two whole numbers beside it are tried. For *r* ≥ 1 there is none: shorter waves are always easier and the
/// bound is *S*.
///
/// # Validity
///
/// Equal stiffness in both directions, all four edges supported but free to turn, uniform compression along *a*, thin
/// skins. Foam cores fit; honeycomb, with unequal shear moduli, does not: use its lower one.
///
/// # Source
///
/// [`ALLEN_1969`](crate::source::ALLEN_1969) (name from memory); [`DERIVED`](crate::source::DERIVED) from the Navier
/// solution with shear.
///
/// # Examples
///
/// Square plate, *D* = 3000 N·m, side 1 m, *S* = 620 kN/m, one half wave: *g* = 2π² = 19.739 m⁻², *D g*²/*α*² = 118
/// 435 N/m, *D g*/*S* = 0.09551, so *N* = 118 435/1.09551 = 108.1 kN/m.
///
/// ```
/// use skinspan::{strength::{IsotropicPlate, plate_buckling}, units::{Force, Length, per_width}};
/// use uom::si::{force::newton, length::meter};
/// let l = Length::new::<meter>(1.0);
/// let buckling = plate_buckling(&IsotropicPlate {
///     rigidity: per_width(Force::new::<newton>(3000.0) * l),
///     shear: per_width(Force::new::<newton>(620e3) / l),
///     length: l,
///     width: l,
/// });
/// assert!((buckling.load.value - 108_110.0).abs() < 10.0);
/// assert_eq!(buckling.half_wave, Some(l));
/// ```
#[must_use]
pub fn plate_buckling(plate: &IsotropicPlate) -> PlateBuckling {
    let (a, b) = (plate.length, plate.width);
    let beta_squared = PI * PI / (b * b);
    let r: Ratio = plain(plate.rigidity) * beta_squared / plain(plate.shear);

    let load = |waves: f64| {
        let x = (waves * b / a).value.powi(2);
        let g = beta_squared * (1.0 + x);
        let bending = plain(plate.rigidity) * g * ((1.0 + x) / x);
        per_width(bending / (1.0 + r.value * (1.0 + x)))
    };

    if r.value >= 1.0 {
        return PlateBuckling { load: plate.shear, half_wave: None };
    }
    let best = (a / b).value * ((1.0 + r.value) / (1.0 - r.value)).sqrt();
    let below = best.floor().max(1.0);
    let above = below + 1.0;
    let waves = if load(above) < load(below) { above } else { below };
    PlateBuckling { load: load(waves), half_wave: Some(a / waves) }
}

//! Buckling of a strip of the panel as a column, with the shear of the core.

use std::f64::consts::PI;

use crate::units::{FlexuralRigidity, ForcePerWidth, Length, ShearStiffness, per_width, plain};

/// Buckling load per width of a column that does not shear.
///
/// ```text
///   P_E = π² D / L²
/// ```
///
/// | symbol | meaning                                           | argument    |
/// |--------|---------------------------------------------------|-------------|
/// | *D*    | flexural rigidity per width                       | `rigidity`  |
/// | *L*    | effective length: the span if the ends may turn   | `effective_length` |
///
/// # Validity
///
/// Straight, elastic column; *L* is half the span when both ends are held against turning.
///
/// # Source
///
/// [`ALLEN_1969`](crate::source::ALLEN_1969) (name from memory); Euler's column.
///
/// # Examples
///
/// *D* = 3000 N·m over 1 m: 9.8696 × 3000 = 29.61 kN/m.
///
/// ```
/// use skinspan::{strength::euler_load, units::{Force, Length, per_width}};
/// use uom::si::{force::newton, length::meter};
/// let l = Length::new::<meter>(1.0);
/// let rigidity = per_width(Force::new::<newton>(3000.0) * l);
/// assert!((euler_load(rigidity, l).value - 29_609.0).abs() < 1.0);
/// ```
#[must_use]
pub fn euler_load(rigidity: FlexuralRigidity, effective_length: Length) -> ForcePerWidth {
    per_width(PI * PI * plain(rigidity) / (effective_length * effective_length))
}

/// Buckling load per width of a sandwich column: bending and shear give way one after the other.
///
/// ```text
///            P_E
///   P = -----------        P_E = π² D/L²
///       1 + P_E/S
/// ```
///
/// | symbol | meaning                                           | argument           |
/// |--------|---------------------------------------------------|--------------------|
/// | *D*    | flexural rigidity per width                       | `rigidity`         |
/// | *S*    | shear stiffness per width                         | `shear`            |
/// | *L*    | effective length: the span if the ends may turn   | `effective_length` |
///
/// # Validity
///
/// Wide panel free along its sides, thin skins. Never above `P_E`, never above *S*. This is Engesser's form, the
/// lower of the two in use; Haringx's differs when the stress in the skins is not small against *S*.
///
/// # Source
///
/// Bažant, *Shear Buckling of Sandwich, Fiber Composite and Lattice Columns*, Journal of Applied Mechanics 70, 2003,
/// names both forms (read in an excerpt); [`ALLEN_1969`](crate::source::ALLEN_1969) (from memory).
///
/// # Examples
///
/// `P_E` = 29.61 kN/m and *S* = 620 kN/m: 29.61/1.04776 = 28.26 kN/m.
///
/// ```
/// use skinspan::{strength::wide_column_load, units::{Force, Length, per_width}};
/// use uom::si::{force::newton, length::meter};
/// let l = Length::new::<meter>(1.0);
/// let rigidity = per_width(Force::new::<newton>(3000.0) * l);
/// let shear = per_width(Force::new::<newton>(620e3) / l);
/// assert!((wide_column_load(rigidity, shear, l).value - 28_260.0).abs() < 2.0);
/// ```
#[must_use]
pub fn wide_column_load(rigidity: FlexuralRigidity, shear: ShearStiffness, effective_length: Length) -> ForcePerWidth {
    let p_e = euler_load(rigidity, effective_length);
    p_e / (1.0 + (p_e / shear).value)
}

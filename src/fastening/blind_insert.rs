//! Blind threaded inserts (rivet nuts) in a skin, plate or tube.

use std::f64::consts::{FRAC_PI_4, PI};

use crate::units::{Force, Length, Pressure, Ratio};

/// Pull that draws a blind insert out.
///
/// ```text
///   F = min(F_t, k π d_b t τ)
/// ```
///
/// | symbol | meaning                                                             | argument         |
/// |--------|---------------------------------------------------------------------|------------------|
/// | `F_t`  | proof load of its thread                                            | `thread_proof`   |
/// | `d_b`  | diameter of the bulge behind the sheet                              | `bulge_diameter` |
/// | *t*    | thickness that the bulge bears on                                   | `thickness`      |
/// | *τ*    | strength of the sheet in shear through its thickness                | `shear_strength` |
/// | *k*    | share for a bulge that is uneven, or crushes a laminate as it forms | `share`          |
///
/// # Validity
///
/// Metal sheet, or solid laminate with a share well below 1; never one skin of a cored panel, which peels. The bulge
/// itself may fold first: what the maker's tests say goes into `thread_proof`.
///
/// # Source
///
/// [`DERIVED`](crate::source::DERIVED): equilibrium on the cylinder under the bulge. No published formula was found.
///
/// # Examples
///
/// M6 with a thread of 16.5 kN and a bulge of 11 mm in 2.5 mm of laminate, 60 MPa, *k* = 0.5: 0.5 × π × 11 × 2.5 × 60 =
/// 2592 N.
///
/// ```
/// use skinspan::{fastening::insert_pull_out, units::{Force, Length, Pressure, Ratio}};
/// use uom::si::{force::newton, length::millimeter, pressure::megapascal};
/// let (n, mm) = (Force::new::<newton>, Length::new::<millimeter>);
/// let f = insert_pull_out(n(16_500.0), mm(11.0), mm(2.5), Pressure::new::<megapascal>(60.0), Ratio::from(0.5));
/// assert!((f.get::<newton>() - 2591.8).abs() < 0.1);
/// ```
#[must_use]
pub fn insert_pull_out(
    thread_proof: Force,
    bulge_diameter: Length,
    thickness: Length,
    shear_strength: Pressure,
    share: Ratio,
) -> Force {
    let sheet = share * shear_strength * (PI * bulge_diameter * thickness);
    if sheet > thread_proof { thread_proof } else { sheet }
}

/// Flange of a blind insert on the near side.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct InsertFlange {
    /// Outside diameter of the flange.
    pub diameter: Length,
    /// Diameter of the hole that it covers.
    pub hole: Length,
}

/// Push that drives a blind insert through.
///
/// ```text
///   F = min((π/4)(d_f² − d_h²) σ_c,  π d_f t τ)
/// ```
///
/// | symbol | meaning                                                | argument          |
/// |--------|--------------------------------------------------------|-------------------|
/// | `d_f`  | diameter of the flange                                 | `flange.diameter` |
/// | `d_h`  | diameter of the hole                                   | `flange.hole`     |
/// | `σ_c`  | strength of the skin in compression through its thickness | `bearing_strength` |
/// | *t*    | thickness of the skin                                  | `thickness`       |
/// | *τ*    | its strength in shear through its thickness            | `shear_strength`  |
///
/// # Validity
///
/// As [`insert_pull_out`]. A flush or countersunk flange has no ring to bear on: the answer is zero where the flange is
/// no wider than the hole.
///
/// # Source
///
/// [`DERIVED`](crate::source::DERIVED): equilibrium.
///
/// # Examples
///
/// Flange 13 mm on a hole of 9 mm, 120 MPa: 69.1 mm² and 8294 N; shear through 2.5 mm of 60 MPa: 6126 N, which is less.
///
/// ```
/// use skinspan::{fastening::{InsertFlange, insert_push_out}, units::{Length, Pressure}};
/// use uom::si::{force::newton, length::millimeter, pressure::megapascal};
/// let (mm, mpa) = (Length::new::<millimeter>, Pressure::new::<megapascal>);
/// let flange = InsertFlange { diameter: mm(13.0), hole: mm(9.0) };
/// assert!((insert_push_out(flange, mpa(120.0), mm(2.5), mpa(60.0)).get::<newton>() - 6126.1).abs() < 0.1);
/// assert!((insert_push_out(flange, mpa(80.0), mm(2.5), mpa(60.0)).get::<newton>() - 5529.2).abs() < 0.1);
/// ```
#[must_use]
pub fn insert_push_out(
    flange: InsertFlange,
    bearing_strength: Pressure,
    thickness: Length,
    shear_strength: Pressure,
) -> Force {
    let (outer, inner) = (flange.diameter, flange.hole);
    if outer <= inner {
        return Force::default();
    }
    let bearing = bearing_strength * (FRAC_PI_4 * (outer * outer - inner * inner));
    let punching = shear_strength * (PI * outer * thickness);
    if bearing > punching { punching } else { bearing }
}

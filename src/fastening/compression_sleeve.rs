//! A sleeve round a bolt that keeps the preload off the core.

use std::f64::consts::FRAC_PI_4;

use crate::units::{Area, Force, Length, Pressure, Ratio};

/// Tube round a bolt, from skin to skin.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Sleeve {
    /// Outer diameter.
    pub outer: Length,
    /// Diameter of the bore.
    pub inner: Length,
    /// Length.
    pub length: Length,
    /// Young's modulus.
    pub modulus: Pressure,
}

impl Sleeve {
    fn area(&self) -> Area {
        FRAC_PI_4 * (self.outer * self.outer - self.inner * self.inner)
    }

    /// Compressive stress of the sleeve.
    ///
    /// ```text
    ///   σ = F/(π (D² − d²)/4)
    /// ```
    ///
    /// | symbol | meaning                          | field or argument |
    /// |--------|----------------------------------|-------------------|
    /// | *F*    | load on the sleeve               | `force`           |
    /// | *D*    | outer diameter                   | `outer`           |
    /// | *d*    | bore                             | `inner`           |
    ///
    /// # Validity
    ///
    /// Ends cut square; short enough not to buckle.
    ///
    /// # Source
    ///
    /// [`DERIVED`](crate::source::DERIVED): definition of stress.
    ///
    /// # Examples
    ///
    /// 5 kN on a tube of 10 mm with a bore of 6 mm: 5000/50.27 = 99.5 MPa.
    ///
    /// ```
    /// use skinspan::{fastening::Sleeve, units::{Force, Length, Pressure}};
    /// use uom::si::{force::newton, length::millimeter, pressure::{gigapascal, megapascal}};
    /// let mm = Length::new::<millimeter>;
    /// let sleeve =
    ///     Sleeve { outer: mm(10.0), inner: mm(6.0), length: mm(25.0), modulus: Pressure::new::<gigapascal>(70.0) };
    /// assert!((sleeve.stress(Force::new::<newton>(5000.0)).get::<megapascal>() - 99.47).abs() < 0.01);
    /// ```
    #[must_use]
    pub fn stress(&self, force: Force) -> Pressure {
        force / self.area()
    }

    /// Shortening of the sleeve.
    ///
    /// ```text
    ///   δ = σ L/E
    /// ```
    ///
    /// | symbol | meaning                       | field or argument |
    /// |--------|-------------------------------|-------------------|
    /// | *σ*    | [`stress`](Self::stress)      | `force`           |
    /// | *L*    | length                        | `length`          |
    /// | *E*    | Young's modulus               | `modulus`         |
    ///
    /// # Validity
    ///
    /// As [`stress`](Self::stress), elastic.
    ///
    /// # Source
    ///
    /// [`DERIVED`](crate::source::DERIVED): Hooke's law.
    ///
    /// # Examples
    ///
    /// 99.47 MPa over 25 mm of 70 GPa: 0.0355 mm.
    ///
    /// ```
    /// use skinspan::{fastening::Sleeve, units::{Force, Length, Pressure}};
    /// use uom::si::{force::newton, length::millimeter, pressure::gigapascal};
    /// let mm = Length::new::<millimeter>;
    /// let sleeve =
    ///     Sleeve { outer: mm(10.0), inner: mm(6.0), length: mm(25.0), modulus: Pressure::new::<gigapascal>(70.0) };
    /// assert!((sleeve.shortening(Force::new::<newton>(5000.0)).get::<millimeter>() - 0.035525).abs() < 1e-5);
    /// ```
    #[must_use]
    pub fn shortening(&self, force: Force) -> Length {
        self.length * (self.stress(force) / self.modulus)
    }
}

/// Share of the preload that squeezes the skins and the core beside a sleeve.
///
/// ```text
///   F_s/F = k_s (1 + k_e g/F)/(k_s + k_e)  =  (δ_e + g)/(δ_s + δ_e),     0 ≤ F_s/F ≤ 1
/// ```
///
/// With *δ* = *F*/*k*: what either would give under the whole preload. A sleeve that is short by *g* lets the skins
/// come together by *g* before it carries; one that is too long (*g* below zero) leaves them loose.
///
/// | symbol | meaning                                                           | argument          |
/// |--------|-------------------------------------------------------------------|-------------------|
/// | `δ_s`  | approach of the skins if the whole preload came on them           | `approach`        |
/// | `δ_e`  | shortening of the sleeve if it carried the whole preload, [`Sleeve::shortening`] | `shortening` |
/// | *g*    | thickness of the panel less the length of the sleeve              | `gap`             |
///
/// # Validity
///
/// Elastic skins and core; stiff washer that bears on skin and sleeve. The approach is twice the
/// [`dent`](crate::strength::SkinOnCore::dent) of one skin if both dent.
///
/// # Source
///
/// [`DERIVED`](crate::source::DERIVED): two springs side by side, one with a gap.
///
/// # Examples
///
/// `δ_s` = 0.9 mm, `δ_e` = 0.1 mm: 0.1 with no gap, 0.2 with 0.1 mm, none if the sleeve is 0.1 mm too long.
///
/// ```
/// use skinspan::{fastening::skins_share_beside_sleeve, units::Length};
/// use uom::si::length::millimeter;
/// let mm = Length::new::<millimeter>;
/// let share = |gap: f64| skins_share_beside_sleeve(mm(0.9), mm(0.1), mm(gap)).value;
/// assert!((share(0.0) - 0.1).abs() < 1e-12 && (share(0.1) - 0.2).abs() < 1e-12);
/// assert!(share(-0.1).abs() < 1e-12 && share(-0.5) == 0.0 && share(2.0) == 1.0);
/// ```
#[must_use]
pub fn skins_share_beside_sleeve(approach: Length, shortening: Length, gap: Length) -> Ratio {
    let share = (shortening + gap) / (approach + shortening);
    Ratio::from(share.value.clamp(0.0, 1.0))
}

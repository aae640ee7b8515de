//! The skins' own bending beside a hard edge: where the sandwich cannot shear, the skins must bend.

use crate::units::{Curvature, FlexuralRigidity, Length, Pressure, Ratio, ShearStiffness, per_width, plain};

/// The two ways in which a sandwich bends, and the shear stiffness between them.
///
/// Next to anything that holds the section from shearing (a solid strip, an insert, the line of a pipe) the skins
/// bend on their own, each about its own middle. The disturbance dies out as e^(−αx).
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SkinBending {
    /// Rigidity of the skins as the flanges of one section, *D₀*.
    pub flanges: FlexuralRigidity,
    /// Rigidity of the skins about their own middles, both together, *D₂*.
    pub skins: FlexuralRigidity,
    /// Shear stiffness of the sandwich, *S*.
    pub shear: ShearStiffness,
}

impl SkinBending {
    /// Rigidities of equal isotropic skins on a core that carries shear only.
    ///
    /// ```text
    ///   D₀ = E′ t d²/2      D₂ = E′ t³/6      S = G_c d²/c      d = c + t
    /// ```
    ///
    /// | symbol  | meaning                                         | argument             |
    /// |---------|-------------------------------------------------|----------------------|
    /// | *E′*    | modulus of the skins, [`plate_modulus`](super::plate_modulus) | `skin_modulus` |
    /// | `G_c`   | shear modulus of the core                       | `core_shear_modulus` |
    /// | *t*     | thickness of one skin                           | `skin_thickness`     |
    /// | *c*     | thickness of the core                           | `core_thickness`     |
    ///
    /// # Validity
    ///
    /// Equal skins; for others give the fields: `D₀ = A₁ A₂ d²/(A₁ + A₂)` with `A = E′ t`, *D₂* the sum over the
    /// skins.
    ///
    /// # Source
    ///
    /// [`ALLEN_1969`](crate::source::ALLEN_1969), chapter 2 (from memory); [`DERIVED`](crate::source::DERIVED).
    ///
    /// # Examples
    ///
    /// *E′* = 12 GPa, `G_c` = 27 MPa, *t* = 2 mm, *c* = 18 mm: *D₀* = 12 000 × 2 × 400/2 = 4.8 × 10⁶ N·mm, *D₂* = 16
    /// 000 N·mm, *S* = 600 N/mm.
    ///
    /// ```
    /// use skinspan::{strength::SkinBending, units::{Length, Pressure}};
    /// use uom::si::{length::millimeter, pressure::megapascal};
    /// let (mpa, mm) = (Pressure::new::<megapascal>, Length::new::<millimeter>);
    /// let b = SkinBending::of_equal_skins(mpa(12_000.0), mpa(27.0), mm(2.0), mm(18.0));
    /// assert!((b.flanges.value - 4800.0).abs() < 1e-6); // N·m
    /// assert!((b.skins.value - 16.0).abs() < 1e-9);
    /// assert!((b.shear.value - 600e3).abs() < 1e-3); // N/m
    /// ```
    #[must_use]
    pub fn of_equal_skins(
        skin_modulus: Pressure,
        core_shear_modulus: Pressure,
        skin_thickness: Length,
        core_thickness: Length,
    ) -> Self {
        let (e, t, c) = (skin_modulus, skin_thickness, core_thickness);
        let d = t + c;
        Self {
            flanges: per_width(e * t * d * d / 2.0),
            skins: per_width(e * t * t * t / 6.0),
            shear: per_width(core_shear_modulus * d * d / c),
        }
    }

    /// Rigidity of the whole section.
    ///
    /// ```text
    ///   D = D₀ + D₂
    /// ```
    ///
    /// | symbol | meaning                             | field     |
    /// |--------|-------------------------------------|-----------|
    /// | *D₀*   | rigidity of the skins as flanges    | `flanges` |
    /// | *D₂*   | rigidity of the skins by themselves | `skins`   |
    ///
    /// # Validity
    ///
    /// Core without stiffness in its own plane.
    ///
    /// # Source
    ///
    /// [`DERIVED`](crate::source::DERIVED): definition.
    ///
    /// # Examples
    ///
    /// 4800 + 16 = 4816 N·m.
    ///
    /// ```
    /// use skinspan::{strength::SkinBending, units::{Length, Pressure}};
    /// use uom::si::{length::millimeter, pressure::megapascal};
    /// let (mpa, mm) = (Pressure::new::<megapascal>, Length::new::<millimeter>);
    /// let b = SkinBending::of_equal_skins(mpa(12_000.0), mpa(27.0), mm(2.0), mm(18.0));
    /// assert!((b.rigidity().value - 4816.0).abs() < 1e-6);
    /// ```
    #[must_use]
    pub fn rigidity(&self) -> FlexuralRigidity {
        self.flanges + self.skins
    }

    /// Share of the shear force that the core carries far from any edge.
    ///
    /// ```text
    ///   D₀ / D
    /// ```
    ///
    /// | symbol | meaning                             | field     |
    /// |--------|-------------------------------------|-----------|
    /// | *D₀*   | rigidity of the skins as flanges    | `flanges` |
    /// | *D*    | [`rigidity`](Self::rigidity)        |           |
    ///
    /// # Validity
    ///
    /// As [`rigidity`](Self::rigidity).
    ///
    /// # Source
    ///
    /// [`DERIVED`](crate::source::DERIVED): both parts have the same curvature there.
    ///
    /// # Examples
    ///
    /// 4800/4816 = 0.99668.
    ///
    /// ```
    /// use skinspan::{strength::SkinBending, units::{Length, Pressure}};
    /// use uom::si::{length::millimeter, pressure::megapascal};
    /// let (mpa, mm) = (Pressure::new::<megapascal>, Length::new::<millimeter>);
    /// let b = SkinBending::of_equal_skins(mpa(12_000.0), mpa(27.0), mm(2.0), mm(18.0));
    /// assert!((b.core_share().value - 0.99668).abs() < 1e-5);
    /// ```
    #[must_use]
    pub fn core_share(&self) -> Ratio {
        self.flanges / self.rigidity()
    }

    /// Length over which a disturbance falls to 1/e.
    ///
    /// ```text
    ///   1/α = √(D₀ D₂ / (S D))
    /// ```
    ///
    /// | symbol | meaning                             | field     |
    /// |--------|-------------------------------------|-----------|
    /// | *D₀*   | rigidity of the skins as flanges    | `flanges` |
    /// | *D₂*   | rigidity of the skins by themselves | `skins`   |
    /// | *D*    | [`rigidity`](Self::rigidity)        |           |
    /// | *S*    | shear stiffness                     | `shear`   |
    ///
    /// # Validity
    ///
    /// Core that keeps its thickness; five such lengths from an edge the field is undisturbed.
    ///
    /// # Source
    ///
    /// [`ALLEN_1969`](crate::source::ALLEN_1969), chapter 2 (from memory); [`DERIVED`](crate::source::DERIVED) in
    /// [`skin_moment_at_edge`](super::skin_moment_at_edge).
    ///
    /// # Examples
    ///
    /// √(4800 × 16/(600 000 × 4816)) = 5.155 mm.
    ///
    /// ```
    /// use skinspan::{strength::SkinBending, units::{Length, Pressure}};
    /// use uom::si::{length::millimeter, pressure::megapascal};
    /// let (mpa, mm) = (Pressure::new::<megapascal>, Length::new::<millimeter>);
    /// let b = SkinBending::of_equal_skins(mpa(12_000.0), mpa(27.0), mm(2.0), mm(18.0));
    /// assert!((b.decay_length().get::<millimeter>() - 5.155).abs() < 1e-3);
    /// ```
    #[must_use]
    pub fn decay_length(&self) -> Length {
        let alpha: Curvature =
            (plain(self.shear) / plain(self.flanges) * (plain(self.rigidity()) / plain(self.skins))).sqrt();
        1.0 / alpha
    }
}

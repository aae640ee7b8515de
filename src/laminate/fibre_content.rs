//! How much of a laminate is fibre, and how thick and heavy that makes a ply.

use crate::units::{ArealMassDensity, Length, MassDensity, Ratio};

/// Densities of what a laminate is made of, cured.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Densities {
    /// Of the fibre.
    pub fibre: MassDensity,
    /// Of the cured resin.
    pub resin: MassDensity,
}

impl Densities {
    /// Share of the volume that is fibre, from its share of the mass.
    ///
    /// ```text
    /// Vf = (psi/rho_f)/(psi/rho_f + (1 − psi)/rho_r)
    /// ```
    ///
    /// | symbol | meaning |
    /// |---|---|
    /// | `psi` | fibre mass fraction |
    /// | `rho_f`, `rho_r` | densities of fibre and cured resin |
    ///
    /// # Validity
    /// No voids. `0 <= psi <= 1`.
    ///
    /// # Source
    /// [`DERIVED`](crate::source::DERIVED), volumes add up.
    ///
    /// # Examples
    /// Equal masses: the volumes are as 1/2560 to 1/1200, so `Vf = 1200/3760`.
    /// ```
    /// use skinspan::{laminate::fibre_content::Densities, units::{MassDensity, Ratio}};
    /// use uom::si::{mass_density::kilogram_per_cubic_meter, ratio::ratio};
    /// let glass_polyester = Densities {
    ///     fibre: MassDensity::new::<kilogram_per_cubic_meter>(2560.0),
    ///     resin: MassDensity::new::<kilogram_per_cubic_meter>(1200.0),
    /// };
    /// let vf = glass_polyester.fibre_volume_fraction(Ratio::new::<ratio>(0.5));
    /// assert!((vf.value - 1200.0 / 3760.0).abs() < 1e-15);
    /// ```
    #[must_use]
    pub fn fibre_volume_fraction(&self, psi: Ratio) -> Ratio {
        self.density(psi) * psi / self.fibre
    }

    /// Density of the laminate.
    ///
    /// ```text
    /// rho = 1/(psi/rho_f + (1 − psi)/rho_r)
    /// ```
    ///
    /// | symbol | meaning |
    /// |---|---|
    /// | `psi` | fibre mass fraction |
    /// | `rho_f`, `rho_r` | densities of fibre and cured resin |
    ///
    /// # Validity
    /// No voids. `0 <= psi <= 1`.
    ///
    /// # Source
    /// [`DERIVED`](crate::source::DERIVED), volumes add up.
    ///
    /// # Examples
    /// ```
    /// use skinspan::{laminate::fibre_content::Densities, units::{MassDensity, Ratio}};
    /// use uom::si::{mass_density::kilogram_per_cubic_meter, ratio::ratio};
    /// let glass_polyester = Densities {
    ///     fibre: MassDensity::new::<kilogram_per_cubic_meter>(2400.0),
    ///     resin: MassDensity::new::<kilogram_per_cubic_meter>(1200.0),
    /// };
    /// // 1 kg of each fills 1/2400 + 1/1200 = 3/2400 m³
    /// let rho = glass_polyester.density(Ratio::new::<ratio>(0.5));
    /// assert!((rho.value - 1600.0).abs() < 1e-9);
    /// ```
    #[must_use]
    pub fn density(&self, psi: Ratio) -> MassDensity {
        ((psi / self.fibre) + (1.0 - psi.value) / self.resin).recip()
    }

    /// Cured thickness of a ply.
    ///
    /// ```text
    /// t = w (1/rho_f + (1/psi − 1)/rho_r)
    /// ```
    ///
    /// | symbol | meaning |
    /// |---|---|
    /// | `w` | dry fibre mass per area |
    /// | `psi` | fibre mass fraction |
    /// | `rho_f`, `rho_r` | densities of fibre and cured resin |
    ///
    /// # Validity
    /// No voids. `0 < psi <= 1`.
    ///
    /// # Source
    /// [`DERIVED`](crate::source::DERIVED), volumes add up. [`rule_ply_thickness`] is the same formula with numbers in.
    ///
    /// # Examples
    /// ```
    /// use skinspan::{laminate::fibre_content::Densities, units::{ArealMassDensity, MassDensity, Ratio}};
    /// use uom::si::areal_mass_density::kilogram_per_square_meter;
    /// use uom::si::{length::millimeter, mass_density::kilogram_per_cubic_meter, ratio::ratio};
    /// let glass_polyester = Densities {
    ///     fibre: MassDensity::new::<kilogram_per_cubic_meter>(2400.0),
    ///     resin: MassDensity::new::<kilogram_per_cubic_meter>(1200.0),
    /// };
    /// let w = ArealMassDensity::new::<kilogram_per_square_meter>(1.2);
    /// // 0.5 mm of glass and 1 mm of resin
    /// let t = glass_polyester.ply_thickness(w, Ratio::new::<ratio>(0.5));
    /// assert!((t.get::<millimeter>() - 1.5).abs() < 1e-12);
    /// ```
    #[must_use]
    pub fn ply_thickness(&self, w: ArealMassDensity, psi: Ratio) -> Length {
        w / self.fibre + resin_mass(w, psi) / self.resin
    }

    /// Fibre mass fraction of a ply whose thickness was measured.
    ///
    /// ```text
    /// psi = 1/(1 + (t/w − 1/rho_f) rho_r)
    /// ```
    ///
    /// | symbol | meaning |
    /// |---|---|
    /// | `t` | cured thickness |
    /// | `w` | dry fibre mass per area |
    /// | `rho_f`, `rho_r` | densities of fibre and cured resin |
    ///
    /// # Validity
    /// No voids: with them the true fibre mass fraction is higher. A result above 1 says that `t` is less than the
    /// thickness of the glass alone, and that one of the two numbers is wrong.
    ///
    /// # Source
    /// [`DERIVED`](crate::source::DERIVED), [`ply_thickness`](Self::ply_thickness) solved for `psi`.
    ///
    /// # Examples
    /// ```
    /// use skinspan::{laminate::fibre_content::Densities, units::{ArealMassDensity, Length, MassDensity}};
    /// use uom::si::areal_mass_density::kilogram_per_square_meter;
    /// use uom::si::{length::millimeter, mass_density::kilogram_per_cubic_meter};
    /// let glass_polyester = Densities {
    ///     fibre: MassDensity::new::<kilogram_per_cubic_meter>(2400.0),
    ///     resin: MassDensity::new::<kilogram_per_cubic_meter>(1200.0),
    /// };
    /// let w = ArealMassDensity::new::<kilogram_per_square_meter>(1.2);
    /// let psi = glass_polyester.fibre_mass_fraction(w, Length::new::<millimeter>(1.5));
    /// assert!((psi.value - 0.5).abs() < 1e-12);
    /// ```
    #[must_use]
    pub fn fibre_mass_fraction(&self, w: ArealMassDensity, t: Length) -> Ratio {
        let resin_to_fibre = (t - w / self.fibre) * self.resin / w;
        (Ratio::from(1.0) + resin_to_fibre).recip()
    }
}

/// Resin that a ply holds, per area.
///
/// ```text
/// r = w (1/psi − 1)
/// ```
///
/// | symbol | meaning |
/// |---|---|
/// | `w` | dry fibre mass per area |
/// | `psi` | fibre mass fraction |
///
/// # Validity
/// `0 < psi <= 1`. Resin in the laminate, not in the bucket.
///
/// # Source
/// [`DERIVED`](crate::source::DERIVED), definition of the mass fraction.
///
/// # Examples
/// ```
/// use skinspan::{laminate::fibre_content::resin_mass, units::{ArealMassDensity, Ratio}};
/// use uom::si::{areal_mass_density::kilogram_per_square_meter, ratio::ratio};
/// let mat = ArealMassDensity::new::<kilogram_per_square_meter>(0.45);
/// let resin = resin_mass(mat, Ratio::new::<ratio>(0.3));
/// assert!((resin.value - 1.05).abs() < 1e-12); // 0.45/0.3 − 0.45
/// ```
#[must_use]
pub fn resin_mass(w: ArealMassDensity, psi: Ratio) -> ArealMassDensity {
    w / psi - w
}

/// Cured thickness of a glass ply by the formula of the scantling rules.
///
/// ```text
/// t = (w/3.072)(2.56/psi − 1.36)
/// ```
///
/// | symbol | meaning |
/// |---|---|
/// | `t` | cured thickness, in mm |
/// | `w` | dry glass mass per area, in kg/m² |
/// | `psi` | glass mass fraction |
///
/// # Validity
/// E-glass in polyester, 2560 and 1200 kg/m³: with those densities it is [`Densities::ply_thickness`], to the digit.
///
/// # Source
/// [`ISO_12215_5_2008`](crate::source::ISO_12215_5_2008), annex C, and [`LR_SSC`](crate::source::LR_SSC): the formula
/// from memory; it reproduces the seven thicknesses read in table H.1.
///
/// # Examples
/// ```
/// use skinspan::{laminate::fibre_content::rule_ply_thickness, units::{ArealMassDensity, Ratio}};
/// use uom::si::{areal_mass_density::kilogram_per_square_meter, length::millimeter, ratio::ratio};
/// let mat = ArealMassDensity::new::<kilogram_per_square_meter>(0.3072);
/// let t = rule_ply_thickness(mat, Ratio::new::<ratio>(0.32));
/// assert!((t.get::<millimeter>() - 0.664).abs() < 1e-12); // 0.1 (8 − 1.36)
/// ```
#[must_use]
pub fn rule_ply_thickness(w: ArealMassDensity, psi: Ratio) -> Length {
    use uom::si::{areal_mass_density::kilogram_per_square_meter, length::millimeter};
    Length::new::<millimeter>(w.get::<kilogram_per_square_meter>() / 3.072 * (2.56 / psi.value - 1.36))
}

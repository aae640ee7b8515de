//! Shear of the bond between a backing and a skin.

use crate::units::{Force, ForcePerWidth, Length, Pressure, per_width, plain};

/// Two sheets with a layer of glue between them: a skin and a backing.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BondLine {
    /// Stiffness of one sheet in its plane, modulus times thickness.
    pub first: ForcePerWidth,
    /// Stiffness of the other; infinite for one that does not stretch.
    pub second: ForcePerWidth,
    /// Thickness of the glue.
    pub glue_thickness: Length,
    /// Shear modulus of the glue.
    pub glue_shear_modulus: Pressure,
}

impl BondLine {
    /// Length over which a load passes from one sheet to the other.
    ///
    /// ```text
    ///   1/L_t² = (G/η)(1/A₁ + 1/A₂)
    /// ```
    ///
    /// | symbol       | meaning                                     | field                |
    /// |--------------|---------------------------------------------|----------------------|
    /// | *A₁*, *A₂*   | stiffness of the sheets, *E t*              | `first`, `second`    |
    /// | *η*          | thickness of the glue                       | `glue_thickness`     |
    /// | *G*          | its shear modulus                           | `glue_shear_modulus` |
    ///
    /// # Validity
    ///
    /// Sheets that stretch only, glue that shears only: no peel, no bending of a single lap.
    ///
    /// # Source
    ///
    /// [`VOLKERSEN_1938`](crate::source::VOLKERSEN_1938) (from memory); [`DERIVED`](crate::source::DERIVED).
    ///
    /// # Examples
    ///
    /// Skin of 12 GPa × 2 mm on a rigid backing, 0.5 mm of glue of 400 MPa: √(24 000 × 0.5/400) = 5.477 mm.
    ///
    /// ```
    /// use skinspan::{fastening::BondLine, units::{Length, Pressure, per_width}};
    /// use uom::si::{length::millimeter, pressure::megapascal};
    /// let (mpa, mm) = (Pressure::new::<megapascal>, Length::new::<millimeter>);
    /// let bond = BondLine {
    ///     first: per_width(mpa(12_000.0) * mm(2.0)),
    ///     second: per_width(mpa(f64::INFINITY) * mm(20.0)),
    ///     glue_thickness: mm(0.5),
    ///     glue_shear_modulus: mpa(400.0),
    /// };
    /// assert!((bond.transfer_length().get::<millimeter>() - 5.477).abs() < 1e-3);
    /// ```
    #[must_use]
    pub fn transfer_length(&self) -> Length {
        let give = 1.0 / plain(self.first) + 1.0 / plain(self.second);
        (self.glue_thickness / (self.glue_shear_modulus * give)).sqrt()
    }

    /// Length of bond that counts when its most stressed end governs.
    ///
    /// ```text
    ///   L_eff = L_t tanh x/(a + (1 − a)/cosh x)       x = L/L_t
    ///   a = (1/A)/(1/A₁ + 1/A₂) of the sheet that stretches more
    ///   L_eff ≤ L_t/a;   L_t tanh x on a rigid backing,   2 L_t tanh(x/2) for equal sheets
    /// ```
    ///
    /// | symbol       | meaning                                          | field or argument |
    /// |--------------|--------------------------------------------------|-------------------|
    /// | *L*          | length of the bond along the load                | `length`          |
    /// | `L_t`        | [`transfer_length`](Self::transfer_length)       |                   |
    /// | *A₁*, *A₂*   | stiffness of the sheets                          | `first`, `second` |
    ///
    /// # Validity
    ///
    /// Load enters one sheet at one end and leaves the other at the other end. Elastic glue: one that yields bears
    /// more. As [`transfer_length`](Self::transfer_length). A backing that is held midway may count both halves if the
    /// skin carries on to both sides.
    ///
    /// # Source
    ///
    /// [`VOLKERSEN_1938`](crate::source::VOLKERSEN_1938) (from memory); [`DERIVED`](crate::source::DERIVED), checked
    /// against a numerical solution.
    ///
    /// # Examples
    ///
    /// Rigid backing, `L_t` = 5.477 mm: 50 mm of bond count as 5.477 mm, 2 mm as 5.477 tanh 0.3651 = 1.916 mm.
    ///
    /// ```
    /// use skinspan::{fastening::BondLine, units::{Length, Pressure, per_width}};
    /// use uom::si::{length::millimeter, pressure::megapascal};
    /// let (mpa, mm) = (Pressure::new::<megapascal>, Length::new::<millimeter>);
    /// let bond = BondLine {
    ///     first: per_width(mpa(12_000.0) * mm(2.0)),
    ///     second: per_width(mpa(f64::INFINITY) * mm(20.0)),
    ///     glue_thickness: mm(0.5),
    ///     glue_shear_modulus: mpa(400.0),
    /// };
    /// assert!((bond.effective_length(mm(50.0)).get::<millimeter>() - 5.477).abs() < 1e-3);
    /// assert!((bond.effective_length(mm(2.0)).get::<millimeter>() - 1.916).abs() < 1e-3);
    /// ```
    #[must_use]
    pub fn effective_length(&self, length: Length) -> Length {
        let transfer = self.transfer_length();
        let x = (length / transfer).value;
        let softer = plain(self.first.min(self.second));
        let give = 1.0 / plain(self.first) + 1.0 / plain(self.second);
        let share = (1.0 / (softer * give)).value;
        transfer * (x.tanh() / (share + (1.0 - share) / x.cosh()))
    }

    /// Largest shear stress of the glue.
    ///
    /// ```text
    ///   τ = V/(w L_eff)
    /// ```
    ///
    /// | symbol  | meaning                                          | argument |
    /// |---------|--------------------------------------------------|----------|
    /// | *V*     | load that passes through the bond                | `force`  |
    /// | *w*     | width of the bond across the load                | `width`  |
    /// | `L_eff` | [`effective_length`](Self::effective_length)     | `length` |
    ///
    /// # Validity
    ///
    /// As [`effective_length`](Self::effective_length).
    ///
    /// # Source
    ///
    /// As [`effective_length`](Self::effective_length).
    ///
    /// # Examples
    ///
    /// 2000 N on 100 mm × 50 mm with `L_eff` = 5.477 mm: 3.65 MPa, where the mean is 0.4 MPa.
    ///
    /// ```
    /// use skinspan::{fastening::BondLine, units::{Force, Length, Pressure, per_width}};
    /// use uom::si::{force::newton, length::millimeter, pressure::megapascal};
    /// let (mpa, mm) = (Pressure::new::<megapascal>, Length::new::<millimeter>);
    /// let bond = BondLine {
    ///     first: per_width(mpa(12_000.0) * mm(2.0)),
    ///     second: per_width(mpa(f64::INFINITY) * mm(20.0)),
    ///     glue_thickness: mm(0.5),
    ///     glue_shear_modulus: mpa(400.0),
    /// };
    /// let tau = bond.peak_shear(Force::new::<newton>(2000.0), mm(100.0), mm(50.0));
    /// assert!((tau.get::<megapascal>() - 3.651).abs() < 1e-3);
    /// ```
    #[must_use]
    pub fn peak_shear(&self, force: Force, width: Length, length: Length) -> Pressure {
        let line: ForcePerWidth = per_width(force / width);
        plain(line) / self.effective_length(length)
    }
}

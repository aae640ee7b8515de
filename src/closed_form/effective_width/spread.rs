use crate::{
    closed_form::plate::PlateStiffness,
    units::{FlexuralRigidity, Ratio, ShearStiffness, si},
};

/// How far a plate spreads loads across the strip, against one that is alike in all directions: 1 for that one.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Spread {
    /// Of moments under the load: from bending, twist and shear stiffness.
    pub moment: Ratio,
    /// Of moments away from the load, over supports.
    pub remote_moment: Ratio,
    /// Of shear forces.
    pub shear: Ratio,
    /// Of deflections from bending.
    pub bending_deflection: Ratio,
    /// Of deflections from shear.
    pub shear_deflection: Ratio,
    pub(super) d: FlexuralRigidity,
    pub(super) s: ShearStiffness,
}

impl Spread {
    /// Spread of a plate for strips along its `x`.
    ///
    /// ```text
    /// δ = (D22/D11)^¼,  η = (D12 + 2 D66)/√(D11 D22),  σ = √(Sy/Sx)
    /// bending deflection: δ √((1 + η)/2)       shear deflection: σ
    /// moment: min(δ, √δ)·min(1, (1 + η)/2)·min(1, σ)
    /// moment away from the load: min(δ, √δ)·min(1, σ)        shear: min(1, σ)
    /// ```
    ///
    /// | symbol | meaning |
    /// |---|---|
    /// | `D11`, `D22`, `D12`, `D66` | bending along and across the strip, coupling, twist |
    /// | `Sx`, `Sy` | shear stiffness along and across the strip |
    ///
    /// # Validity
    /// The factor of the bending deflection is exact for each sine wave along a thin simple span: the strip that
    /// deflects like the plate is `4 L/(π m)` wide times it. The others are cut off on the safe side.
    ///
    /// # Source
    /// [`DERIVED`](crate::source::DERIVED) for the deflections; fitted to series for the others (our assumption).
    ///
    /// # Examples
    /// Half as stiff across in shear, alike otherwise: `σ = √½` = 0.7071.
    /// ```
    /// use skinspan::closed_form::{effective_width::Spread, plate::PlateStiffness};
    /// use skinspan::units::{Force, Length, Ratio, per_width};
    /// use uom::si::{force::newton, length::meter, ratio::ratio};
    /// let m = Length::new::<meter>(1.0);
    /// let d = per_width(Force::new::<newton>(1000.0) * m);
    /// let s = per_width(Force::new::<newton>(1e5) / m);
    /// let mut plate = PlateStiffness::isotropic(d, Ratio::new::<ratio>(0.3), s);
    /// plate.shear_y = s / 2.0;
    /// let spread = Spread::new(&plate);
    /// assert!((spread.shear.value - 0.7071).abs() < 1e-4 && (spread.bending_deflection.value - 1.0).abs() < 1e-12);
    /// ```
    #[must_use]
    pub fn new(plate: &PlateStiffness) -> Self {
        let delta = (plate.d22 / plate.d11).value.sqrt().sqrt();
        let eta = (plate.d12.value + 2.0 * plate.d66.value) / (plate.d11.value * plate.d22.value).sqrt();
        let sigma = (plate.shear_y / plate.shear_x).value.sqrt();
        let twist = f64::midpoint(1.0, eta);
        let remote = delta.min(delta.sqrt()) * sigma.min(1.0);
        Self {
            moment: si(remote * twist.min(1.0)),
            remote_moment: si(remote),
            shear: si(sigma.min(1.0)),
            bending_deflection: si(delta * twist.sqrt()),
            shear_deflection: si(sigma),
            d: plate.d11,
            s: plate.shear_x,
        }
    }
}

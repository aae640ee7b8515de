//! Pull and shear on one fixing at once.

use crate::units::Ratio;

/// Rule by which pull and shear use up a fixing together.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Interaction {
    /// *R*ₜ + *R*ᵥ = 1: for boards, wood and laminate, where nothing better is known.
    Linear,
    /// *R*ᵥ + *R*ₜ/1.4 = 1, and neither alone above 1: steel bolts.
    SteelBolt,
    /// *R*ₜ² + *R*ᵥ² = 1: screws in wood by some rules; only where tests support it.
    Ellipse,
    /// *R*ₜ² + *R*ᵥ³ = 1: bolts with preload.
    PreloadedBolt,
    /// *R*ₜ^1.5 + *R*ᵥ^2.5 = 1: the plane of shear cuts the shank.
    ShankSheared,
    /// *R*ₜ² + *R*ᵥ^1.2 = 1: the plane of shear cuts the thread.
    ThreadSheared,
}

impl Interaction {
    /// Utilisation of a fixing under pull and shear.
    ///
    /// The rule says at which multiple *λ* of both actions the fixing fails; the utilisation is 1/*λ*, so that it
    /// doubles when both actions double:
    ///
    /// ```text
    ///   (λ Rₜ)^m + (λ Rᵥ)^n = 1,        u = 1/λ
    /// ```
    ///
    /// | symbol     | meaning                                                        | argument  |
    /// |------------|----------------------------------------------------------------|-----------|
    /// | *R*ₜ       | pull over what is borne in pull alone, bending of the bolt added | `tension` |
    /// | *R*ᵥ       | shear over what is borne in shear alone                        | `shear`   |
    /// | *m*, *n*   | exponents of the rule                                          | `self`    |
    ///
    /// # Validity
    ///
    /// Both allowables of the same failure: bolt with bolt, thread in board with board. A push counts as no pull; the
    /// sign of the shear does not matter.
    ///
    /// # Source
    ///
    /// | rule | source |
    /// |------|--------|
    /// | [`Linear`](Self::Linear) | [`DERIVED`](crate::source::DERIVED): it lies within every rule that bulges outwards, Hankinson's for screws in [`NDS_2018`](crate::source::NDS_2018), 12.4.2 (from memory), among them |
    /// | [`SteelBolt`](Self::SteelBolt) | [`EN_1993_1_8`](crate::source::EN_1993_1_8), Table 3.4 (quoted at second hand) |
    /// | [`Ellipse`](Self::Ellipse) | [`EN_1995_1_1`](crate::source::EN_1995_1_1), 8.3.3, screws (from memory) |
    /// | [`PreloadedBolt`](Self::PreloadedBolt) | [`NSTS_08307`](crate::source::NSTS_08307) (quoted at second hand) |
    /// | [`ShankSheared`](Self::ShankSheared), [`ThreadSheared`](Self::ThreadSheared) | [`NASA_STD_5020`](crate::source::NASA_STD_5020) (from memory) |
    ///
    /// # Examples
    ///
    /// *R*ₜ = 0.6, *R*ᵥ = 0.8: linear 1.4; ellipse 1; steel bolt 0.8 + 0.6/1.4 = 1.2286.
    ///
    /// ```
    /// use skinspan::{fastening::Interaction, units::Ratio};
    /// let u = |rule: Interaction| rule.utilisation(Ratio::from(0.6), Ratio::from(0.8)).value;
    /// assert!((u(Interaction::Linear) - 1.4).abs() < 1e-12);
    /// assert!((u(Interaction::Ellipse) - 1.0).abs() < 1e-12);
    /// assert!((u(Interaction::SteelBolt) - 1.2286).abs() < 1e-4);
    /// ```
    #[must_use]
    pub fn utilisation(self, tension: Ratio, shear: Ratio) -> Ratio {
        let tension = if tension.value < 0.0 { Ratio::from(0.0) } else { tension };
        let shear = shear.abs();
        match self {
            Self::Linear => tension + shear,
            Self::SteelBolt => {
                let both = shear + tension / 1.4;
                if tension > both { tension } else { both }
            }
            Self::Ellipse => load_factor_inverse(tension, shear, 2.0, 2.0),
            Self::PreloadedBolt => load_factor_inverse(tension, shear, 2.0, 3.0),
            Self::ShankSheared => load_factor_inverse(tension, shear, 1.5, 2.5),
            Self::ThreadSheared => load_factor_inverse(tension, shear, 2.0, 1.2),
        }
    }
}

/// *u* of (*t*/*u*)^m + (*s*/*u*)^n = 1, by bisection: with exponents of 1 and more it lies between the larger of the
/// two and their sum.
fn load_factor_inverse(tension: Ratio, shear: Ratio, m: f64, n: f64) -> Ratio {
    let (t, s) = (tension.value, shear.value);
    let sum = t + s;
    if !sum.is_finite() || sum <= 0.0 {
        return Ratio::from(sum);
    }
    let (mut low, mut high) = (t.max(s), sum);
    for _ in 0..60 {
        let middle = f64::midpoint(low, high);
        if (t / middle).powf(m) + (s / middle).powf(n) > 1.0 {
            low = middle;
        } else {
            high = middle;
        }
    }
    Ratio::from(high)
}

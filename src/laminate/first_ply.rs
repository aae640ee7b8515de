//! First-ply failure: how much the load can grow until a ply fails, and how it fails then.

use uom::ConstZero;

use super::{PlyStress, Strength};
use crate::units::{Pressure, Ratio};

/// How a ply fails.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Mode {
    /// Fibres tear.
    FibreTension,
    /// Fibres buckle.
    FibreCompression,
    /// Cracks along the fibres open.
    TransverseTension,
    /// The resin crushes across the fibres.
    TransverseCompression,
    /// In-plane shear.
    Shear,
}

impl Mode {
    fn of(stress: &PlyStress, fibre: f64, transverse: f64, shear: f64) -> Self {
        if shear >= fibre && shear >= transverse {
            Self::Shear
        } else if fibre >= transverse {
            if stress.s1 < Pressure::ZERO { Self::FibreCompression } else { Self::FibreTension }
        } else if stress.s2 < Pressure::ZERO {
            Self::TransverseCompression
        } else {
            Self::TransverseTension
        }
    }
}

/// Rule by which a ply fails.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Criterion {
    /// All components together, [`TsaiWu`].
    TsaiWu,
    /// Each component alone, [`max_stress`].
    MaxStress,
}

/// Factor on the load at which a ply fails.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Reserve {
    /// Load at failure over load; infinite without load, zero if the residual stress alone is too much.
    pub factor: Ratio,
    /// The largest contribution at failure.
    pub mode: Mode,
}

impl Reserve {
    /// Load over load at failure: finite without load.
    #[must_use]
    pub fn utilisation(&self) -> Ratio {
        self.factor.recip()
    }
}

/// Tsai-Wu criterion of one material, its coefficients at hand.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TsaiWu {
    f1: f64,
    f2: f64,
    f11: f64,
    f22: f64,
    f66: f64,
    f12: f64,
}

impl TsaiWu {
    /// Coefficients from strengths.
    ///
    /// ```text
    /// F1 = 1/Xt − 1/Xc, F11 = 1/(Xt Xc), F2 = 1/Yt − 1/Yc, F22 = 1/(Yt Yc), F66 = 1/S², F12 = −½ √(F11 F22)
    /// ```
    ///
    /// | symbol | meaning |
    /// |---|---|
    /// | `Xt`, `Xc` | strengths along the fibres in tension and compression |
    /// | `Yt`, `Yc` | strengths across the fibres |
    /// | `S` | in-plane shear strength |
    ///
    /// # Validity
    /// Unidirectional plies; for a woven or mat ply taken as one, `1` and `2` are warp and weft. The interaction term
    /// `F12` is a convention, not a measurement; with it the failure surface is closed.
    ///
    /// # Source
    /// [`TSAI_WU_1971`](crate::source::TSAI_WU_1971); interaction term by
    /// [`JONES_1999`](crate::source::JONES_1999), ch. 2; from memory.
    #[must_use]
    pub fn new(strength: &Strength) -> Self {
        let Strength { xt, xc, yt, yc, s } = *strength;
        let (f11, f22) = (1.0 / (xt.value * xc.value), 1.0 / (yt.value * yc.value));
        Self {
            f1: 1.0 / xt.value - 1.0 / xc.value,
            f2: 1.0 / yt.value - 1.0 / yc.value,
            f11,
            f22,
            f66: 1.0 / (s.value * s.value),
            f12: -0.5 * (f11 * f22).sqrt(),
        }
    }

    /// Value of the criterion; the ply fails at 1.
    #[must_use]
    pub fn index(&self, stress: &PlyStress) -> Ratio {
        Ratio::from(self.linear(stress) + self.quadratic(stress, stress))
    }

    /// Factor on `mechanical` at which the ply fails while `residual` stays as it is.
    #[must_use]
    pub fn reserve(&self, mechanical: &PlyStress, residual: &PlyStress) -> Reserve {
        let a = self.quadratic(mechanical, mechanical);
        let b = self.linear(mechanical) + 2.0 * self.quadratic(mechanical, residual);
        let c = self.linear(residual) + self.quadratic(residual, residual) - 1.0;
        let factor = positive_root(a, b, c);
        let scale = if factor.is_finite() { factor } else { 0.0 };
        let failing = *mechanical * scale + *residual;
        let fibre = failing.s1.value * (self.f1 + self.f11 * failing.s1.value);
        let transverse = failing.s2.value * (self.f2 + self.f22 * failing.s2.value);
        let shear = self.f66 * failing.s12.value * failing.s12.value;
        Reserve { factor: Ratio::from(factor), mode: Mode::of(&failing, fibre, transverse, shear) }
    }

    fn linear(&self, s: &PlyStress) -> f64 {
        self.f1 * s.s1.value + self.f2 * s.s2.value
    }

    fn quadratic(&self, s: &PlyStress, t: &PlyStress) -> f64 {
        self.f11 * s.s1.value * t.s1.value
            + self.f22 * s.s2.value * t.s2.value
            + self.f66 * s.s12.value * t.s12.value
            + self.f12 * (s.s1.value * t.s2.value + s.s2.value * t.s1.value)
    }
}

/// Positive root of `a R² + b R + c`, where `a >= 0`; zero if `c >= 0`, infinite if nothing grows with `R`.
fn positive_root(a: f64, b: f64, c: f64) -> f64 {
    if c >= 0.0 {
        return 0.0;
    }
    let root = (b * b - 4.0 * a * c).sqrt();
    // the form without a difference of nearly equal numbers
    if b > 0.0 {
        -2.0 * c / (b + root)
    } else if a > 0.0 {
        (root - b) / (2.0 * a)
    } else {
        f64::INFINITY
    }
}

/// Factor on the load at which one stress component reaches its strength.
#[must_use]
pub fn max_stress(mechanical: &PlyStress, residual: &PlyStress, strength: &Strength) -> Reserve {
    let signed = |m: Pressure, r: Pressure, tension: Pressure, compression: Pressure| {
        if r >= tension || -r >= compression {
            return Ratio::ZERO;
        }
        let room = if m < Pressure::ZERO { compression + r } else { tension - r };
        room / m.abs()
    };
    let fibre = signed(mechanical.s1, residual.s1, strength.xt, strength.xc);
    let transverse = signed(mechanical.s2, residual.s2, strength.yt, strength.yc);
    let shear = signed(mechanical.s12, residual.s12, strength.s, strength.s);
    let mode = Mode::of(mechanical, fibre.recip().value, transverse.recip().value, shear.recip().value);
    Reserve { factor: fibre.min(transverse).min(shear), mode }
}

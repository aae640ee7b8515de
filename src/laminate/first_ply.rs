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
    /// What stress across the fibres has of the contributions at failure, those that help left out.
    pub across: Ratio,
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
    /// [`TSAI_WU_1971`](crate::source::TSAI_WU_1971); interaction term by [`JONES_1999`](crate::source::JONES_1999), ch. 2;
    /// from memory.
    ///
    /// # Examples
    /// ```
    /// # use skinspan::{laminate::*, units::*};
    /// # use uom::{ConstZero, si::{angle::degree, length::millimeter, pressure::{gigapascal, megapascal}, ratio::ratio}};
    /// # let gpa = |x: f64| Pressure::new::<gigapascal>(x);
    /// # let mm = |x: f64| Length::new::<millimeter>(x);
    /// let mpa = |x: f64| Pressure::new::<megapascal>(x);
    /// let strength = Strength { xt: mpa(800.0), xc: mpa(400.0), yt: mpa(40.0), yc: mpa(160.0), s: mpa(50.0) };
    /// let across = PlyStress { s2: mpa(40.0), ..PlyStress::default() };
    /// assert!((TsaiWu::new(&strength).index(&across).value - 1.0).abs() < 1e-12);
    /// ```
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
    ///
    /// ```text
    /// f = F1 s1 + F2 s2 + F11 s1² + F22 s2² + F66 s12² + 2 F12 s1 s2
    /// ```
    ///
    /// | symbol | meaning |
    /// |---|---|
    /// | `s1`, `s2`, `s12` | stress along and across the fibres, and shear |
    /// | `F…` | coefficients, see [`TsaiWu::new`] |
    ///
    /// # Validity
    /// Not a utilisation: it does not grow in proportion to the load. [`TsaiWu::reserve`] does.
    ///
    /// # Source
    /// [`TSAI_WU_1971`](crate::source::TSAI_WU_1971), from memory.
    ///
    /// # Examples
    /// ```
    /// # use skinspan::{laminate::*, units::*};
    /// # use uom::{ConstZero, si::{angle::degree, length::millimeter, pressure::{gigapascal, megapascal}, ratio::ratio}};
    /// # let gpa = |x: f64| Pressure::new::<gigapascal>(x);
    /// # let mm = |x: f64| Length::new::<millimeter>(x);
    /// let mpa = |x: f64| Pressure::new::<megapascal>(x);
    /// let strength = Strength { xt: mpa(800.0), xc: mpa(400.0), yt: mpa(40.0), yc: mpa(160.0), s: mpa(50.0) };
    /// let half = PlyStress { s12: mpa(25.0), ..PlyStress::default() };
    /// assert!((TsaiWu::new(&strength).index(&half).value - 0.25).abs() < 1e-12); // (25/50)²
    /// ```
    #[must_use]
    pub fn index(&self, stress: &PlyStress) -> Ratio {
        Ratio::from(self.linear(stress) + self.quadratic(stress, stress))
    }

    /// Factor on `mechanical` at which the ply fails while `residual` stays as it is.
    ///
    /// ```text
    /// a R² + b R + c = 0,   R the positive root
    /// a = m·F·m,   b = F·m + 2 m·F·r,   c = F·r + r·F·r − 1
    /// ```
    ///
    /// | symbol | meaning |
    /// |---|---|
    /// | `R` | reserve factor, load at failure over load |
    /// | `m`, `r` | mechanical and residual stress of the ply |
    /// | `F` | linear and quadratic coefficients, see [`TsaiWu::new`] |
    ///
    /// # Validity
    /// Infinite without mechanical stress; zero if the residual stress alone is at failure. The mode is that of the largest
    /// of the three sums `F1 s1 + F11 s1²`, `F2 s2 + F22 s2²`, `F66 s12²` at failure, and of them `across` is the second's share
    /// (our assumption: the criterion itself names none).
    ///
    /// # Source
    /// [`TSAI_WU_1971`](crate::source::TSAI_WU_1971) for the criterion, from memory; the quadratic is derived.
    ///
    /// # Examples
    /// ```
    /// # use skinspan::{laminate::*, units::*};
    /// # use uom::{ConstZero, si::{angle::degree, length::millimeter, pressure::{gigapascal, megapascal}, ratio::ratio}};
    /// # let gpa = |x: f64| Pressure::new::<gigapascal>(x);
    /// # let mm = |x: f64| Length::new::<millimeter>(x);
    /// let mpa = |x: f64| Pressure::new::<megapascal>(x);
    /// let strength = Strength { xt: mpa(800.0), xc: mpa(400.0), yt: mpa(40.0), yc: mpa(160.0), s: mpa(50.0) };
    /// let shear = PlyStress { s12: mpa(10.0), ..PlyStress::default() };
    /// let reserve = TsaiWu::new(&strength).reserve(&shear, &PlyStress::default());
    /// assert!((reserve.factor.value - 5.0).abs() < 1e-12); // 50/10
    /// assert_eq!(reserve.mode, Mode::Shear);
    /// // with 30 MPa of shear locked in there is room for 20 more
    /// let locked = PlyStress { s12: mpa(30.0), ..PlyStress::default() };
    /// assert!((TsaiWu::new(&strength).reserve(&shear, &locked).factor.value - 2.0).abs() < 1e-12);
    /// ```
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
        let [along, across, sheared] = [fibre, transverse, shear].map(|part| part.max(0.0));
        let all = along + across + sheared;
        let across = if all > 0.0 { Ratio::from(across / all) } else { Ratio::ZERO };
        Reserve { factor: Ratio::from(factor), mode: Mode::of(&failing, fibre, transverse, shear), across }
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

/// Factor on `mechanical` at which one stress component reaches its strength.
///
/// ```text
/// R = min over components of (X − r)/|m|,   X the strength on the side to which m points, r counted to that side
/// ```
///
/// | symbol | meaning |
/// |---|---|
/// | `m`, `r` | mechanical and residual stress |
/// | `X` | strength of the component |
///
/// # Validity
/// Components do not interact. Infinite without mechanical stress; zero if the residual stress alone is at failure.
///
/// # Source
/// [`JONES_1999`](crate::source::JONES_1999), ch. 2, maximum stress criterion; from memory.
///
/// # Examples
/// ```
/// # use skinspan::{laminate::*, units::*};
/// # use uom::{ConstZero, si::{angle::degree, length::millimeter, pressure::{gigapascal, megapascal}, ratio::ratio}};
/// # let gpa = |x: f64| Pressure::new::<gigapascal>(x);
/// # let mm = |x: f64| Length::new::<millimeter>(x);
/// let mpa = |x: f64| Pressure::new::<megapascal>(x);
/// let strength = Strength { xt: mpa(800.0), xc: mpa(400.0), yt: mpa(40.0), yc: mpa(160.0), s: mpa(50.0) };
/// let stress = PlyStress { s1: mpa(-100.0), s2: mpa(20.0), s12: Pressure::ZERO };
/// let reserve = max_stress(&stress, &PlyStress::default(), &strength);
/// assert_eq!(reserve.mode, Mode::TransverseTension); // 40/20 = 2 before 400/100 = 4
/// assert!((reserve.factor.value - 2.0).abs() < 1e-12);
/// ```
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
    let is_across = matches!(mode, Mode::TransverseTension | Mode::TransverseCompression);
    let across = if is_across { Ratio::from(1.0) } else { Ratio::ZERO };
    Reserve { factor: fibre.min(transverse).min(shear), mode, across }
}

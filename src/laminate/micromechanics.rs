//! Ply constants from those of fibre and resin: a first estimate where no coupon was tested.

use super::Elastic;
use crate::units::{Pressure, Ratio, TemperatureCoefficient};

/// Fibre or resin, taken as isotropic.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Constituent {
    /// Modulus.
    pub modulus: Pressure,
    /// Poisson's ratio.
    pub nu: Ratio,
    /// Thermal expansion.
    pub alpha: TemperatureCoefficient,
}

impl Constituent {
    fn shear_modulus(&self) -> Pressure {
        self.modulus / (2.0 * (1.0 + self.nu.value))
    }
}

/// A ply of straight parallel fibres.
///
/// ```text
/// E1 = Vf Ef + Vm Em,   nu12 = Vf nuf + Vm num
/// P/Pm = (1 + xi eta Vf)/(1 − eta Vf),  eta = (Pf/Pm − 1)/(Pf/Pm + xi);  P = E2: xi = 2;  P = G12: xi = 1
/// alpha1 = (Vf Ef af + Vm Em am)/E1
/// alpha2 = (1 + nuf) af Vf + (1 + num) am Vm − alpha1 nu12
/// ```
///
/// | symbol | meaning |
/// |---|---|
/// | `Vf`, `Vm` | volume fractions of fibre and resin, `Vm = 1 − Vf` |
/// | `Ef`, `Em`, `nuf`, `num`, `af`, `am` | moduli, Poisson's ratios, expansions of fibre and resin |
/// | `P`, `Pf`, `Pm` | the property of ply, fibre and resin |
///
/// # Validity
/// `0 <= Vf <= 0.75` or so; isotropic fibre (glass, not carbon); straight fibres, no voids. Crimp and waviness cost a
/// stitched ply some 5 to 10 %, a woven one 12 to 15 % (our assumption).
///
/// # Source
/// [`HALPIN_KARDOS_1976`](crate::source::HALPIN_KARDOS_1976) for `E2` and `G12`,
/// [`SCHAPERY_1968`](crate::source::SCHAPERY_1968) for the expansions, [`JONES_1999`](crate::source::JONES_1999), ch. 3,
/// for the rest; all from memory.
///
/// # Examples
/// Without fibre it is the resin.
/// ```
/// use skinspan::laminate::micromechanics::{Constituent, unidirectional};
/// use skinspan::units::{Pressure, Ratio, TemperatureCoefficient};
/// use uom::si::{pressure::gigapascal, ratio::ratio, temperature_coefficient::per_kelvin};
/// let glass = Constituent {
///     modulus: Pressure::new::<gigapascal>(72.0),
///     nu: Ratio::new::<ratio>(0.22),
///     alpha: TemperatureCoefficient::new::<per_kelvin>(5e-6),
/// };
/// let resin = Constituent {
///     modulus: Pressure::new::<gigapascal>(3.0),
///     nu: Ratio::new::<ratio>(0.35),
///     alpha: TemperatureCoefficient::new::<per_kelvin>(60e-6),
/// };
/// let half = unidirectional(&glass, &resin, Ratio::new::<ratio>(0.5));
/// assert!((half.e1.get::<gigapascal>() - 37.5).abs() < 1e-12); // 36 + 1.5
/// assert!((half.alpha1.value - 0.27e-3 / 37.5).abs() < 1e-12); // (36·5 + 1.5·60)/37.5 = 7.2e-6
/// // Ef/Em = 24, eta = 23/26, E2 = 3 (1 + 23/26)/(1 − 23/52) = 3·98/29
/// assert!((half.e2.get::<gigapascal>() - 3.0 * 98.0 / 29.0).abs() < 1e-12);
/// ```
#[must_use]
pub fn unidirectional(fibre: &Constituent, resin: &Constituent, vf: Ratio) -> Elastic {
    let (v, m) = (vf.value, 1.0 - vf.value);
    let e1 = fibre.modulus * v + resin.modulus * m;
    let nu12 = fibre.nu * v + resin.nu * m;
    let alpha1 = (fibre.alpha * (fibre.modulus * v) + resin.alpha * (resin.modulus * m)) / e1;
    let free = |c: &Constituent, share: f64| c.alpha * ((1.0 + c.nu.value) * share);
    Elastic {
        e1,
        e2: halpin_tsai(fibre.modulus, resin.modulus, vf, 2.0),
        g12: halpin_tsai(fibre.shear_modulus(), resin.shear_modulus(), vf, 1.0),
        nu12,
        alpha1,
        alpha2: free(fibre, v) + free(resin, m) - alpha1 * nu12,
    }
}

fn halpin_tsai(fibre: Pressure, resin: Pressure, vf: Ratio, xi: f64) -> Pressure {
    let ratio = (fibre / resin).value;
    let eta = (ratio - 1.0) / (ratio + xi);
    resin * ((1.0 + xi * eta * vf.value) / (1.0 - eta * vf.value))
}

/// How fibres lie, as far as stiffness in one direction is concerned.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Lay {
    /// All along the direction.
    Unidirectional,
    /// Half along it, half across.
    Balanced,
    /// Half at +45°, half at −45°.
    Diagonal,
    /// Evenly in all directions of the plane.
    Random,
}

impl Lay {
    /// Share of the fibre stiffness that counts: the mean of `cos⁴` over the fibres.
    ///
    /// ```text
    /// eta0 = Σ a cos⁴(theta):  1 along,  1/2 at 0/90,  1/4 at ±45,  3/8 random in the plane
    /// ```
    ///
    /// | symbol | meaning |
    /// |---|---|
    /// | `a` | share of the fibres at the angle `theta` to the direction of load |
    ///
    /// # Validity
    /// Fibres carry no transverse stress.
    ///
    /// # Source
    /// [`KRENCHEL_1964`](crate::source::KRENCHEL_1964), from memory; derived as the mean of `cos⁴`.
    ///
    /// # Examples
    /// ```
    /// use skinspan::laminate::micromechanics::Lay;
    /// assert_eq!(Lay::Random.efficiency().value, 0.375);
    /// ```
    #[must_use]
    pub fn efficiency(self) -> Ratio {
        Ratio::from(match self {
            Self::Unidirectional => 1.0,
            Self::Balanced => 0.5,
            Self::Diagonal => 0.25,
            Self::Random => 0.375,
        })
    }
}

/// Modulus in one direction of a laminate whose fibres do not all lie along it.
///
/// ```text
/// E = eta0 Ef Vf + Em (1 − Vf)
/// ```
///
/// | symbol | meaning |
/// |---|---|
/// | `eta0` | efficiency of the lay, [`Lay::efficiency`] |
/// | `Ef`, `Em` | moduli of fibre and resin |
/// | `Vf` | fibre volume fraction |
///
/// # Validity
/// Long fibres. A rough estimate; at ±45° too low, since the shear stiffness of the plies is left out.
///
/// # Source
/// [`KRENCHEL_1964`](crate::source::KRENCHEL_1964), from memory.
///
/// # Examples
/// ```
/// use skinspan::{laminate::micromechanics::{Lay, krenchel_modulus}, units::{Pressure, Ratio}};
/// use uom::si::{pressure::gigapascal, ratio::ratio};
/// let (glass, resin) = (Pressure::new::<gigapascal>(72.0), Pressure::new::<gigapascal>(3.0));
/// let mat = krenchel_modulus(Lay::Random, glass, resin, Ratio::new::<ratio>(0.2));
/// assert!((mat.get::<gigapascal>() - 7.8).abs() < 1e-12); // 5.4 + 2.4
/// ```
#[must_use]
pub fn krenchel_modulus(lay: Lay, fibre: Pressure, resin: Pressure, vf: Ratio) -> Pressure {
    fibre * lay.efficiency() * vf + resin * (1.0 - vf.value)
}

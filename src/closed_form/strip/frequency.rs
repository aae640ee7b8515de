use std::f64::consts::TAU;

use super::{
    Strip, StripError,
    core::check_inside,
    si,
    swing::{Jet, Part, characteristic, parts},
};
use crate::units::{Frequency, Length, LinearMassDensity};

/// Distance of the bounds of ω² at which they count as one; the answer, the lower bound, is better than this.
const MET: f64 = 1e-6;
/// Steps enough for any strip: a step leaves less than a third of the distance even between equal frequencies.
const STEPS: usize = 40;

/// A strip that swings, with bounds of its lowest natural frequency that can be drawn together.
///
/// ```text
/// Δ(ω²) = Δ(0) Π (1 − ω²/ω_i²),   p = ω² below ω_1²,   s_k = Σ 1/(ω_i² − p)^k
/// s_1 = −Δ'/Δ      s_2 = s_1² − Δ''/Δ      p + 1/√s_2  ≤  ω_1²  ≤  p + s_1/s_2
/// ```
///
/// | symbol | meaning |
/// |---|---|
/// | `Δ` | function of `ω²` that is zero at the natural frequencies: what the end of the strip does not let through |
/// | `ω_i` | natural circular frequencies |
/// | `p` | the last lower bound, at first 0: then `1/s_1` would be the bound of Dunkerley |
///
/// # Validity
/// As [`Strip::first_frequency`]. `Δ` of a strip grows slower than any exponential, so that it is the product of its
/// zeros; all of them are real and positive. The lower bound rises with each step, at last to the third order.
///
/// # Source
/// [`DERIVED`](crate::source::DERIVED): the sums of powers of the roots of a product, as in Laguerre's method.
#[derive(Clone, Debug)]
pub struct Swing {
    parts: Vec<Part>,
    low: f64,
    high: f64,
}

impl Strip {
    /// Lowest natural frequency of the strip with its own mass and concentrated masses.
    ///
    /// ```text
    /// ω² = min over w of (strain energy of w)/(kinetic energy of w at unit ω);   f = ω/2π
    /// one bay, uniform, on two pipes:  ω² = (π/L)⁴ D/m / (1 + (π/L)² D/S)
    /// ```
    ///
    /// | symbol | meaning |
    /// |---|---|
    /// | `ω`, `f` | circular frequency, frequency |
    /// | `L`, `D`, `S`, `m` | bay, flexural rigidity, shear stiffness, mass per area |
    ///
    /// Each extra mass is a mass per area times its length along the strip, that is kg per metre of width.
    ///
    /// # Validity
    /// As [`Strip::new`]; the inertia of rotation is left out (below 0.1 % for a panel with thin skins). Numerical
    /// error below 1e-6: the bounds of [`Swing`] meet so far.
    ///
    /// # Errors
    /// [`StripError::NoMass`] if nothing has mass, [`StripError::Outside`] if an extra mass lies beyond the strip,
    /// [`StripError::Load`] if an extra mass is negative.
    ///
    /// # Source
    /// [`DERIVED`](crate::source::DERIVED): exact elements, and the bounds of [`Swing`].
    ///
    /// # Examples
    /// A tip mass of 10 kg/m on a clamped strip of 1 m without mass of its own, `D` = 1000 N·m²/m, `S` = 3000 N/m:
    /// `1/k = L³/(3D) + L/S` = 1/1500, so `f = √(1500/10)/2π` = 1.9493 Hz.
    /// ```
    /// use skinspan::closed_form::strip::{Segment, Strip, Support};
    /// use skinspan::units::{ArealMassDensity, Force, Length, per_width};
    /// use uom::si::{areal_mass_density::kilogram_per_square_meter, force::newton, frequency::hertz, length::meter};
    /// let m = Length::new::<meter>;
    /// let section = Segment {
    ///     length: m(1.0),
    ///     rigidity: per_width(Force::new::<newton>(1000.0) * m(1.0)),
    ///     shear: per_width(Force::new::<newton>(3000.0) / m(1.0)),
    ///     mass: ArealMassDensity::default(),
    /// };
    /// let strip = Strip::new(&[section], &[Support::clamp(m(0.0))], &[], 4)?;
    /// let tip = (m(1.0), ArealMassDensity::new::<kilogram_per_square_meter>(10.0) * m(1.0));
    /// let f = strip.first_frequency(&[tip])?;
    /// assert!((f.get::<hertz>() - 1.9493).abs() < 1e-4);
    /// # Ok::<(), skinspan::closed_form::strip::StripError>(())
    /// ```
    pub fn first_frequency(&self, extra: &[(Length, LinearMassDensity)]) -> Result<Frequency, StripError> {
        Ok(self.swing(extra)?.first_frequency())
    }

    /// The strip with its own mass and concentrated masses, with first bounds of its lowest natural frequency.
    ///
    /// # Errors
    /// As [`first_frequency`](Self::first_frequency).
    pub fn swing(&self, extra: &[(Length, LinearMassDensity)]) -> Result<Swing, StripError> {
        let length = self.core.length();
        let mut masses = Vec::with_capacity(extra.len());
        for (at, mass) in extra {
            check_inside("mass", at.value, length)?;
            if !(mass.value.is_finite() && mass.value >= 0.0) {
                return Err(StripError::Load { what: "a mass is negative or not a number" });
            }
            masses.push((at.value.clamp(0.0, length), mass.value));
        }
        masses.sort_by(|a, b| a.0.total_cmp(&b.0));
        let parts = parts(&self.core, &masses);
        let (low, high) = bounds(characteristic(&parts, 0.0)).ok_or(StripError::NoMass)?;
        Ok(Swing { parts, low, high })
    }
}

impl Swing {
    /// A bound that the lowest natural frequency does not lie below.
    #[must_use]
    pub fn at_least(&self) -> Frequency {
        si(self.low.sqrt() / TAU)
    }

    /// The lowest natural frequency.
    #[must_use]
    pub fn first_frequency(&self) -> Frequency {
        let (mut low, mut high) = (self.low, self.high);
        for _ in 0..STEPS {
            if high - low <= MET * low {
                break;
            }
            // Where rounding leaves nothing to tell, the bounds have met.
            let Some((up, over)) = bounds(characteristic(&self.parts, low)) else { break };
            (low, high) = (low + up, low + over);
        }
        si(low.sqrt() / TAU)
    }
}

/// Bounds of the distance to the first zero; none where there is no zero above.
fn bounds(Jet([value, slope, half_bend]): Jet) -> Option<(f64, f64)> {
    let s1 = -slope / value;
    let s2 = s1 * s1 - 2.0 * half_bend / value;
    (s1 > 0.0 && s2 > 0.0 && s2.is_finite()).then(|| (s2.sqrt().recip(), s1 / s2))
}

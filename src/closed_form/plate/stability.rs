use std::f64::consts::{PI, TAU};

use super::{Plate, PlateFault, navier::Numbers};
use crate::units::{ArealMassDensity, ForcePerWidth, Frequency, si};

/// Half waves tried along the load: beyond, the load is that of crimping within rounding.
const MOST_WAVES: u32 = 4096;

/// Compression at which a plate buckles.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PlateBuckling {
    /// Force per width, compression positive.
    pub load: ForcePerWidth,
    /// Half waves along the load; `None` if they grow short without limit, which is shear crimping.
    pub half_waves: Option<u32>,
}

impl Plate {
    /// Lowest natural frequency of a simply supported plate.
    ///
    /// ```text
    /// ω² = 1/(m W11),  f = ω/2π        W11: deflection amplitude for unit load amplitude, m = n = 1
    /// isotropic:  ω² = D g²/m/(1 + D g/S),  g = (π/a)² + (π/b)²
    /// ```
    ///
    /// | symbol | meaning |
    /// |---|---|
    /// | `ω`, `f` | circular frequency, frequency |
    /// | `m` | mass per area |
    /// | `W11` | see [`Plate::at`] |
    ///
    /// # Validity
    /// As [`Plate::at`]; the inertia of rotation is left out (below 0.1 % for a panel with thin skins).
    ///
    /// # Errors
    /// [`PlateFault::Stiffness`] if the mass is not positive.
    ///
    /// # Source
    /// [`DERIVED`](crate::source::DERIVED).
    ///
    /// # Examples
    /// `D` = 1000 N·m²/m, `S` so large that it does not matter, 1 m square, 10 kg/m²: `ω = 2π² √(D/m)` = 197.39 1/s.
    /// ```
    /// use skinspan::closed_form::plate::{Plate, PlateStiffness};
    /// use skinspan::units::{ArealMassDensity, Force, Length, Ratio, per_width};
    /// use uom::si::{areal_mass_density::kilogram_per_square_meter, force::newton, frequency::hertz};
    /// use uom::si::{length::meter, ratio::ratio};
    /// let m = Length::new::<meter>;
    /// let d = per_width(Force::new::<newton>(1000.0) * m(1.0));
    /// let s = per_width(Force::new::<newton>(1e12) / m(1.0));
    /// let plate = Plate::new(m(1.0), m(1.0), PlateStiffness::isotropic(d, Ratio::new::<ratio>(0.3), s))?;
    /// let f = plate.first_frequency(ArealMassDensity::new::<kilogram_per_square_meter>(10.0))?;
    /// assert!((f.get::<hertz>() - 197.392 / std::f64::consts::TAU).abs() < 1e-3);
    /// # Ok::<(), skinspan::closed_form::plate::PlateFault>(())
    /// ```
    pub fn first_frequency(&self, mass: ArealMassDensity) -> Result<Frequency, PlateFault> {
        let k = Numbers::new(self);
        if !(mass.value > 0.0 && mass.value.is_finite()) {
            return Err(PlateFault::Stiffness);
        }
        let w = k.term(PI / k.a, PI / k.b).w;
        Ok(si((w * mass.value).recip().sqrt() / TAU))
    }

    /// Compression along `x` at which a simply supported plate buckles, of one kind with Engesser's column.
    ///
    /// ```text
    /// N = min over m of 1/(α² W_m1),  and at most Sx           α = mπ/a, β = π/b
    /// isotropic:  N = (D g²/α²)/(1 + D g/S),  g = α² + β²
    /// ```
    ///
    /// | symbol | meaning |
    /// |---|---|
    /// | `N` | compression per width |
    /// | `W_m1` | deflection amplitude for unit load amplitude, see [`Plate::at`] |
    /// | `Sx` | shear stiffness along the load: the load of shear crimping |
    ///
    /// # Validity
    /// As [`Plate::at`]; flat plate, even compression, skins elastic and not wrinkling.
    ///
    /// # Source
    /// [`ALLEN_1969`](crate::source::ALLEN_1969) (from memory); derived.
    ///
    /// # Examples
    /// A thin square of 1 m, `D` = 1000 N·m²/m: `N = 4π² D/b²` = 39.478 kN/m in one half wave.
    /// ```
    /// use skinspan::closed_form::plate::{Plate, PlateStiffness};
    /// use skinspan::units::{Force, Length, Ratio, per_width};
    /// use uom::si::{force::newton, length::meter, ratio::ratio};
    /// let m = Length::new::<meter>;
    /// let d = per_width(Force::new::<newton>(1000.0) * m(1.0));
    /// let s = per_width(Force::new::<newton>(1e12) / m(1.0));
    /// let plate = Plate::new(m(1.0), m(1.0), PlateStiffness::isotropic(d, Ratio::new::<ratio>(0.3), s))?;
    /// let buckling = plate.buckling_along_x();
    /// assert!((buckling.load.value - 39478.4).abs() < 0.1 && buckling.half_waves == Some(1));
    /// # Ok::<(), skinspan::closed_form::plate::PlateFault>(())
    /// ```
    #[must_use]
    pub fn buckling_along_x(&self) -> PlateBuckling {
        let k = Numbers::new(self);
        let mut best = (k.sx, None);
        for m in 1..=MOST_WAVES {
            let al = f64::from(m) * PI / k.a;
            let load = 1.0 / (al * al * k.term(al, PI / k.b).w);
            if load < best.0 {
                best = (load, Some(m));
            }
        }
        PlateBuckling { load: si(best.0), half_waves: best.1 }
    }
}

use std::f64::consts::TAU;

use super::{
    Strip, StripError,
    core::{Core, check_inside},
    loads::{Kind, Loads, State},
    si,
    solve::Work,
};
use crate::units::{Frequency, Length, LinearMassDensity};

/// Parts of a bay whose mass is gathered at two Gauss points each. Gathered mass makes steps in the shear; the error in
/// ω² goes with the square of the part, so a second run with half as long parts removes it.
const PARTS: f64 = 6.0;
/// Relative change of ω² at which the iteration stops; the answer is better than this, as it is stationary.
const SETTLED: f64 = 1e-8;
/// Enough for neighbouring frequencies 1 % apart.
const ROUNDS: usize = 2000;

/// A concentrated mass, or the mass of a short part of the strip.
#[derive(Clone, Copy)]
struct Lump {
    element: usize,
    s: f64,
    mass: f64,
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
    /// error below 1e-5.
    ///
    /// # Errors
    /// [`StripError::NoMass`] if nothing has mass, [`StripError::Outside`] if an extra mass lies beyond the strip,
    /// [`StripError::Load`] if an extra mass is negative.
    ///
    /// # Source
    /// [`DERIVED`](crate::source::DERIVED): inverse iteration with the Rayleigh quotient.
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
        let coarse = self.core.eigenvalue(&lumps(&self.core, extra, 1.0)?)?;
        let fine = self.core.eigenvalue(&lumps(&self.core, extra, 2.0)?)?;
        let omega2 = fine + (fine - coarse) / 3.0;
        Ok(si(omega2.sqrt() / TAU))
    }
}

impl Core {
    /// Lowest ω² by inverse iteration.
    fn eigenvalue(&self, lumps: &[Lump]) -> Result<f64, StripError> {
        let (mut loads, mut work) = (Loads::new(self), Work::new(self));
        // Uneven on purpose: an even start would never find the mode of two equal bays, which is odd.
        let mut shape: Vec<f64> = (0_u32..).zip(lumps).map(|(i, _)| 1.0 + 0.4 * f64::from(i % 7)).collect();
        let mut omega2 = 0.0;
        for _ in 0..ROUNDS {
            loads.clear();
            let mut energy = 0.0;
            for (l, w) in lumps.iter().zip(&shape) {
                loads.point(self, self.x[l.element] + l.s, l.mass * w, Kind::Force)?;
            }
            self.solve(&loads, &mut work);
            let mut norm = 0.0;
            let mut next = 0;
            for (l, w) in lumps.iter().zip(&mut shape) {
                // Pieces stand in the order of the lumps, element by element.
                while next < loads.pieces.len() && loads.pieces[next].element < l.element {
                    next += 1;
                }
                let n = &work.nodes[l.element];
                let e = &self.elements[l.element];
                let mut at = State { w: n.w, psi: n.psi, m: n.m[1], v: n.v[1] }.over_part(e, l.s);
                for p in loads.pieces[next..].iter().take_while(|p| p.element == l.element) {
                    at = at.plus(p.effect(e, l.s, true));
                }
                energy += l.mass * *w * at.w;
                norm += l.mass * at.w * at.w;
                *w = at.w;
            }
            if norm <= 0.0 || energy <= 0.0 {
                return Err(StripError::NoMass);
            }
            let last = omega2;
            omega2 = energy / norm;
            let scale = norm.sqrt().recip();
            for w in &mut shape {
                *w *= scale;
            }
            if (omega2 - last).abs() <= SETTLED * omega2 {
                break;
            }
        }
        Ok(omega2)
    }
}

/// The strip's own mass at two Gauss points for each part, and the extra masses; by element, left to right.
fn lumps(core: &Core, extra: &[(Length, LinearMassDensity)], finer: f64) -> Result<Vec<Lump>, StripError> {
    let mut lumps = Vec::new();
    let mut ends = vec![0];
    ends.extend(core.supports.iter().map(|s| s.node));
    ends.push(core.x.len() - 1);
    for part in ends.windows(2) {
        let bay = core.x[part[1]] - core.x[part[0]];
        for element in part[0]..part[1] {
            let e = &core.elements[element];
            let parts = finer * (PARTS * e.h / bay).ceil().max(1.0);
            let half = e.h / parts / 2.0;
            let mut middle = half;
            while e.mass > 0.0 && middle < e.h {
                for side in [-1.0, 1.0] {
                    lumps.push(Lump { element, s: middle + side * half / 3.0_f64.sqrt(), mass: e.mass * half });
                }
                middle += 2.0 * half;
            }
        }
    }
    for (at, mass) in extra {
        check_inside("mass", at.value, core.length())?;
        if !(mass.value.is_finite() && mass.value >= 0.0) {
            return Err(StripError::Load { what: "a mass is negative or not a number" });
        }
        let x = at.value.clamp(0.0, core.length());
        let element = core.element_at(x);
        lumps.push(Lump { element, s: x - core.x[element], mass: mass.value });
    }
    lumps.sort_by(|a, b| a.element.cmp(&b.element).then(a.s.total_cmp(&b.s)));
    Ok(lumps)
}

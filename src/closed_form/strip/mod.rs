//! A strip of the top, of unit width, over any number of rigid line supports, flexible in bending and in shear.
//!
//! The strip runs along `x` from station 0. Supports hold it up and down; a clamped support also holds the rotation of
//! its section. Bays lie between supports, overhangs beyond the outer ones.
//!
//! # Signs
//! | quantity | positive |
//! |---|---|
//! | `x` | from station 0 along the strip |
//! | pressure, force, deflection `w` | down |
//! | moment `M` | sagging (lower skin in tension) |
//! | shear `V = dM/dx` | what lies left of the section pushes up on what lies right of it |
//! | rotation `ψ` of the section | in the sense of `dw/dx`; with shear, `dw/dx = ψ + V/S` |
//! | reaction | up, on the strip |
//! | applied moment | raises the sagging moment right of it |
//! | free curvature | that of a sagging moment: the strip, if free, bows down |
//!
//! # Method
//! Statics gives the moments of overhangs and of bays cut at their supports; the moments over the supports follow from
//! the continuity of rotation (three-moment equations with shear, a tridiagonal system that is factored once);
//! deflections follow by exact integration. Stations that divide a bay therefore change nothing: they only say where
//! results are listed. Natural frequencies come from the same equations with the inertia in them, see [`Swing`].

mod action;
mod core;
mod element;
mod error;
mod extremes;
mod forces;
mod frequency;
mod loads;
mod moving;
mod peaks;
mod solve;
mod swing;
mod tail;

pub use self::{
    action::Action,
    error::StripError,
    extremes::Extreme,
    forces::{Peak, Reaction, Station, StripForces},
    frequency::Swing,
    moving::{Envelope, MovingPatch},
};

use self::core::Core;
use crate::units::si;
use crate::units::{ArealMassDensity, FlexuralRigidity, Length, ShearStiffness};

/// A stretch of strip with one section.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Segment {
    /// Length along the strip.
    pub length: Length,
    /// Flexural rigidity per width, `D`.
    pub rigidity: FlexuralRigidity,
    /// Transverse shear stiffness per width, `S`.
    pub shear: ShearStiffness,
    /// Mass per area; counts only in [`Strip::first_frequency`].
    pub mass: ArealMassDensity,
}

/// A rigid line support across the strip.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Support {
    /// Station of the support.
    pub at: Length,
    /// Whether it also holds the rotation of the section.
    pub clamped: bool,
}

impl Support {
    /// A support that lets the section rotate: a pipe under the top.
    #[must_use]
    pub const fn pipe(at: Length) -> Self {
        Self { at, clamped: false }
    }

    /// A support that holds the rotation of the section.
    #[must_use]
    pub const fn clamp(at: Length) -> Self {
        Self { at, clamped: true }
    }
}

/// Where a station lies.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Place {
    /// Between two neighbouring supports.
    Bay {
        /// The support before it.
        from: Length,
        /// The support after it.
        to: Length,
    },
    /// Beyond an outer support.
    Overhang {
        /// The support it hangs from.
        root: Length,
        /// The free end.
        tip: Length,
    },
}

/// A strip, factored once and ready for many loads.
#[derive(Clone, Debug)]
pub struct Strip {
    core: Core,
}

impl Strip {
    /// Builds a strip of `segments` laid end to end over `supports`.
    ///
    /// Results are listed at stations: both ends, supports, segment ends, `extra_stations`, and points that divide each
    /// bay and each overhang so that no element is longer than its bay over `divisions`. Stations within 1e-9 of the
    /// strip's length of one another are one.
    ///
    /// ```text
    /// M = −D (dψ/dx + κ0)      V = dM/dx = S (dw/dx − ψ)      dV/dx = −q
    /// ```
    ///
    /// | symbol | meaning |
    /// |---|---|
    /// | `M`, `V` | moment and shear per width |
    /// | `D`, `S` | flexural rigidity and shear stiffness per width |
    /// | `w`, `ψ` | deflection, rotation of the section |
    /// | `q`, `κ0` | pressure, free curvature |
    ///
    /// # Validity
    /// Small deflections; linear core; line supports that do not yield and that hold both ways. Beside a point load or
    /// a clamp the skins bend on their own over a length of about `√(D0 Df/(S D))` (`D0` from the skins as membranes,
    /// `Df` from the skins alone); that is not in here.
    ///
    /// # Errors
    /// [`StripError`] if a length or a stiffness is not positive, if a support lies outside the strip or on another
    /// one, or if the supports leave a mechanism: fewer than two and none clamped.
    ///
    /// # Source
    /// [`DERIVED`](crate::source::DERIVED); the beam theory is Timoshenko's, the shear-flexible sandwich form is in
    /// [`ALLEN_1969`](crate::source::ALLEN_1969) ch. 2 (from memory).
    ///
    /// # Examples
    /// One metre between two pipes under 1 kPa, `D` = 1000 N·m²/m, `S` = 125 kN/m: `q L²/8` = 125 N·m/m and
    /// `w = 5 q L⁴/(384 D) + q L²/(8 S)` = 13.0208 mm + 1 mm.
    /// ```
    /// use skinspan::closed_form::strip::{Action, Segment, Strip, Support};
    /// use skinspan::units::{ArealMassDensity, Curvature, Force, Length, Pressure, Torque, per_width};
    /// use uom::si::{areal_mass_density::kilogram_per_square_meter, force::newton, length::meter, pressure::pascal};
    /// let m = Length::new::<meter>;
    /// let strip = Strip::new(
    ///     &[Segment {
    ///         length: m(1.0),
    ///         rigidity: per_width(Force::new::<newton>(1000.0) * m(1.0)),
    ///         shear: per_width(Force::new::<newton>(125e3) / m(1.0)),
    ///         mass: ArealMassDensity::new::<kilogram_per_square_meter>(8.0),
    ///     }],
    ///     &[Support::pipe(m(0.0)), Support::pipe(m(1.0))],
    ///     &[],
    ///     2,
    /// )?;
    /// let forces = strip.solve(&[Action::uniform_all(&strip, Pressure::new::<pascal>(1000.0))])?;
    /// let middle = forces.at(m(0.5))?;
    /// assert!((middle.moment_left.value - 125.0).abs() < 1e-10);
    /// assert!((middle.deflection.value - (5.0 / 384.0 + 0.001)).abs() < 1e-14);
    /// # Ok::<(), skinspan::closed_form::strip::StripError>(())
    /// ```
    pub fn new(
        segments: &[Segment],
        supports: &[Support],
        extra_stations: &[Length],
        divisions: usize,
    ) -> Result<Self, StripError> {
        Ok(Self { core: Core::new(segments, supports, extra_stations, divisions)? })
    }

    /// The same stations and supports with other sections between them: what heat or time leaves of the strip.
    ///
    /// # Errors
    /// [`StripError`] as in [`new`](Self::new), and where the segments are not as long as those of the strip.
    pub fn with_sections(&self, segments: &[Segment]) -> Result<Self, StripError> {
        Ok(Self { core: self.core.with_sections(segments)? })
    }

    /// Length of the strip.
    #[must_use]
    pub fn length(&self) -> Length {
        si(self.core.length())
    }

    /// Stations at which results are listed, ascending.
    #[must_use]
    pub fn stations(&self) -> impl ExactSizeIterator<Item = Length> + '_ {
        self.core.x.iter().map(|&x| si(x))
    }

    /// Supports, ascending.
    #[must_use]
    pub fn supports(&self) -> impl ExactSizeIterator<Item = Support> + '_ {
        self.core.supports.iter().map(|s| Support { at: si(self.core.x[s.node]), clamped: s.clamped })
    }

    /// The bay or overhang in which station `x` lies; a support belongs to the bay on its right where there is one.
    ///
    /// # Errors
    /// [`StripError::Outside`] if `x` is not on the strip.
    pub fn place(&self, x: Length) -> Result<Place, StripError> {
        let c = &self.core;
        let here = c.position(x.value)?;
        let at = |i: usize| c.x[c.supports[i].node];
        let last = c.supports.len() - 1;
        let behind = (0..=last).filter(|&i| at(i) <= here + c.tolerance()).count();
        let end_overhang = c.supports[last].node + 1 < c.x.len();
        Ok(if behind == 0 {
            Place::Overhang { root: si(at(0)), tip: si(0.0) }
        } else if behind <= last {
            Place::Bay { from: si(at(behind - 1)), to: si(at(behind)) }
        } else if end_overhang || last == 0 {
            let tip = if end_overhang { c.length() } else { 0.0 };
            Place::Overhang { root: si(at(last)), tip: si(tip) }
        } else {
            Place::Bay { from: si(at(last - 1)), to: si(at(last)) }
        })
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test that cannot go on has failed")]
mod tests {
    use super::*;

    fn section(length: f64) -> Segment {
        Segment { length: si(length), rigidity: si(3000.0), shear: si(4e5), mass: si(8.0) }
    }

    fn built(supports: &[Support]) -> Result<Strip, StripError> {
        Strip::new(&[section(2.0)], supports, &[], 1)
    }

    #[test]
    fn faults_are_named() {
        let pipe = |x: f64| Support::pipe(si(x));
        assert_eq!(built(&[]).unwrap_err(), StripError::Mechanism);
        assert_eq!(built(&[pipe(1.0)]).unwrap_err(), StripError::Mechanism);
        assert_eq!(built(&[pipe(1.0), pipe(1.0)]).unwrap_err(), StripError::SameStation { at: si(1.0) });
        assert_eq!(built(&[pipe(1.0), pipe(2.1)]).unwrap_err(), StripError::Outside { what: "support", at: si(2.1) });
        assert_eq!(Strip::new(&[], &[], &[], 1).unwrap_err(), StripError::Empty);
        let soft = Segment { shear: si(0.0), ..section(1.0) };
        assert!(matches!(
            Strip::new(&[section(1.0), soft], &[pipe(0.0), pipe(1.0)], &[], 1).unwrap_err(),
            StripError::Segment { index: 1, .. }
        ));
        let strip = built(&[pipe(0.0), pipe(2.0)]).unwrap();
        let off = Action::Patch { centre: si(1.95), length: si(0.2), force: si(1.0) };
        assert!(matches!(strip.solve(&[off]).unwrap_err(), StripError::Outside { .. }));
        let back = Action::Uniform { from: si(1.0), to: si(0.5), pressure: si(1.0) };
        assert!(matches!(strip.solve(&[back]).unwrap_err(), StripError::Load { .. }));
        let nan = Action::Point { at: si(1.0), force: si(f64::NAN) };
        assert!(matches!(strip.solve(&[nan]).unwrap_err(), StripError::Load { .. }));
        let still = Segment { mass: si(0.0), ..section(2.0) };
        let still = Strip::new(&[still], &[pipe(0.0), pipe(2.0)], &[], 1).unwrap();
        assert_eq!(still.first_frequency(&[]).unwrap_err(), StripError::NoMass);
    }

    #[test]
    fn place_names_bays_and_overhangs() {
        let strip = built(&[Support::pipe(si(0.5)), Support::pipe(si(1.5))]).unwrap();
        let bay = Place::Bay { from: si(0.5), to: si(1.5) };
        assert_eq!(strip.place(si(0.2)).unwrap(), Place::Overhang { root: si(0.5), tip: si(0.0) });
        assert_eq!(strip.place(si(0.5)).unwrap(), bay);
        assert_eq!(strip.place(si(1.0)).unwrap(), bay);
        assert_eq!(strip.place(si(1.8)).unwrap(), Place::Overhang { root: si(1.5), tip: si(2.0) });
        let flush = built(&[Support::pipe(si(0.0)), Support::pipe(si(2.0))]).unwrap();
        assert_eq!(flush.place(si(2.0)).unwrap(), Place::Bay { from: si(0.0), to: si(2.0) });
        let alone = built(&[Support::clamp(si(2.0))]).unwrap();
        assert_eq!(alone.place(si(1.0)).unwrap(), Place::Overhang { root: si(2.0), tip: si(0.0) });
    }
}

//! Stripping of threads.

use std::f64::consts::PI;

use super::ScrewThread;
use crate::units::{Area, Force, Length, Pressure};

/// Diameters that decide how much of two threads lies within each other.
///
/// ```text
///   in the nut or tapped hole   A_i = (π L/p) d  [p/2 + (d  − D₂)/√3]
///   on the screw                A_e = (π L/p) D₁ [p/2 + (d₂ − D₁)/√3]
/// ```
///
/// | symbol | meaning                                               | field or argument      |
/// |--------|-------------------------------------------------------|------------------------|
/// | *p*    | pitch                                                 | `pitch`                |
/// | *d*    | major diameter of the screw, at its least             | `screw_major`          |
/// | *d₂*   | pitch diameter of the screw, at its least             | `screw_pitch_diameter` |
/// | *D₂*   | pitch diameter of the nut, at its greatest            | `nut_pitch_diameter`   |
/// | *D₁*   | minor diameter of the nut, at its greatest            | `nut_minor`            |
/// | *L*    | length of full thread in engagement                   | `length`               |
///
/// The material of the nut shears at the crest of the screw, that of the screw at the crest of the nut. Where the
/// crest of the screw no longer reaches into the nut, both areas are zero.
///
/// # Validity
///
/// Flanks at 60°. Evenly loaded turns, which holds in a soft board; between steel threads the first turns carry more,
/// and the nut's rim spreads: keep to standard nuts there.
///
/// # Source
///
/// [`FED_STD_H28`](crate::source::FED_STD_H28), also in ASME B1.1 (quoted at second hand).
///
/// # Examples
///
/// M6 by its basic dimensions, for each mm: in the nut π × 6 × (0.5 + 0.6495/√3) = 16.493 mm², on the screw
/// π × 4.9175 × (0.5 + 0.4330/√3) = 11.587 mm².
///
/// ```
/// use skinspan::{fastening::{ScrewThread, ThreadForm, ThreadMating}, units::Length};
/// use uom::si::{area::square_millimeter, length::millimeter};
/// let mm = Length::new::<millimeter>;
/// let mating = ThreadMating::basic(&ScrewThread { major: mm(6.0), pitch: mm(1.0), form: ThreadForm::Metric });
/// assert!((mating.nut_area(mm(1.0)).get::<square_millimeter>() - 16.493).abs() < 1e-3);
/// assert!((mating.screw_area(mm(1.0)).get::<square_millimeter>() - 11.587).abs() < 1e-3);
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ThreadMating {
    /// Distance from one turn to the next.
    pub pitch: Length,
    /// Least major diameter of the screw.
    pub screw_major: Length,
    /// Least pitch diameter of the screw.
    pub screw_pitch_diameter: Length,
    /// Greatest pitch diameter of the nut.
    pub nut_pitch_diameter: Length,
    /// Greatest minor diameter of the nut: the drilled hole.
    pub nut_minor: Length,
}

impl ThreadMating {
    /// Screw and nut without tolerances. High by a few per cent: the limits of the tolerance class are lower.
    #[must_use]
    pub fn basic(thread: &ScrewThread) -> Self {
        Self {
            pitch: thread.pitch,
            screw_major: thread.major,
            screw_pitch_diameter: thread.pitch_diameter(),
            nut_pitch_diameter: thread.pitch_diameter(),
            nut_minor: thread.minor_diameter(),
        }
    }

    /// Area of the nut's thread that shears.
    #[must_use]
    pub fn nut_area(&self, length: Length) -> Area {
        self.sheared(length, self.screw_major, self.screw_major - self.nut_pitch_diameter)
    }

    /// Area of the screw's thread that shears.
    #[must_use]
    pub fn screw_area(&self, length: Length) -> Area {
        self.sheared(length, self.nut_minor, self.screw_pitch_diameter - self.nut_minor)
    }

    fn sheared(&self, length: Length, diameter: Length, beyond_pitch_line: Length) -> Area {
        if self.screw_major <= self.nut_minor {
            return diameter * Length::default();
        }
        PI * length * diameter * ((self.pitch / 2.0 + beyond_pitch_line / 3f64.sqrt()) / self.pitch)
    }
}

/// Pull that strips a thread.
///
/// ```text
///   F = τ A
/// ```
///
/// | symbol | meaning                                                                      | argument         |
/// |--------|------------------------------------------------------------------------------|------------------|
/// | *τ*    | shear strength of the part whose thread shears                               | `shear_strength` |
/// | *A*    | [`ThreadMating::nut_area`] with the nut's, [`ThreadMating::screw_area`] with the screw's strength | `area` |
///
/// # Validity
///
/// As [`ThreadMating`]; the lower of both parts counts.
///
/// # Source
///
/// [`FED_STD_H28`](crate::source::FED_STD_H28) (quoted at second hand).
///
/// # Examples
///
/// Laminate of 60 MPa, 16.5 mm² per mm over 10 mm: 9.9 kN.
///
/// ```
/// use skinspan::{fastening::strip_capacity, units::{Area, Pressure}};
/// use uom::si::{area::square_millimeter, force::kilonewton, pressure::megapascal};
/// let f = strip_capacity(Pressure::new::<megapascal>(60.0), Area::new::<square_millimeter>(165.0));
/// assert!((f.get::<kilonewton>() - 9.9).abs() < 1e-12);
/// ```
#[must_use]
pub fn strip_capacity(shear_strength: Pressure, area: Area) -> Force {
    shear_strength * area
}

/// Length of full thread that a pull needs.
///
/// ```text
///   L = F / (τ a)
/// ```
///
/// | symbol | meaning                                                | argument          |
/// |--------|--------------------------------------------------------|-------------------|
/// | *F*    | pull                                                   | `force`           |
/// | *τ*    | shear strength of the part whose thread shears         | `shear_strength`  |
/// | *a*    | area per length of engagement, `nut_area(L)`/*L*       | `area_per_length` |
///
/// # Validity
///
/// As [`strip_capacity`].
///
/// # Source
///
/// As [`strip_capacity`], turned round.
///
/// # Examples
///
/// 6.6 kN in a board of 4 MPa with 16.5 mm² per mm: 100 mm, so a through-bolt it is.
///
/// ```
/// use skinspan::{fastening::engagement_needed, units::{Force, Length, Pressure}};
/// use uom::si::{force::kilonewton, length::millimeter, pressure::megapascal};
/// let per_mm = Length::new::<millimeter>(16.5);
/// let l = engagement_needed(Force::new::<kilonewton>(6.6), Pressure::new::<megapascal>(4.0), per_mm);
/// assert!((l.get::<millimeter>() - 100.0).abs() < 1e-9);
/// ```
#[must_use]
pub fn engagement_needed(force: Force, shear_strength: Pressure, area_per_length: Length) -> Length {
    force / (shear_strength * area_per_length)
}

//! Diameters and areas of screw threads.

use std::f64::consts::{FRAC_PI_4, PI};

use crate::units::{Area, Length};

/// Profile of the thread, which decides how deep its root lies.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ThreadForm {
    /// ISO metric, M.
    Metric,
    /// Unified, UNC and UNF.
    Unified,
}

/// A screw thread of 60°.
///
/// ```text
///   H  = (√3/2) p
///   d₂ = d − (3/4) H         D₁ = d − (5/4) H
///   d₃ = d − (17/12) H       metric
///   d₃ = d − (3/2) H         Unified
///   A_s = (π/4) ((d₂ + d₃)/2)²
/// ```
///
/// | symbol | meaning                                             | argument or method        |
/// |--------|-----------------------------------------------------|---------------------------|
/// | *d*    | major diameter                                      | `major`                   |
/// | *p*    | pitch; for a Unified thread 1/(threads per length)  | `pitch`                   |
/// | *d₂*   | pitch diameter                                      | [`Self::pitch_diameter`]  |
/// | *D₁*   | minor diameter of the nut                           | [`Self::minor_diameter`]  |
/// | *d₃*   | root diameter of the screw                          | [`Self::root_diameter`]   |
/// | `A_s`  | stress area                                         | [`Self::stress_area`]     |
///
/// Written out, `A_s` is (π/4)(*d* − 0.9382 *p*)² for metric and (π/4)(*d* − 0.9743 *p*)² for Unified threads. The
/// metric form on a Unified thread would be 2 % too large at 1/4-20.
///
/// # Validity
///
/// Basic dimensions, no tolerances. The stress area is that of a plain bar that breaks at the same load, known to hold
/// for metal screws with standard threads.
///
/// # Source
///
/// [`ISO_898_1`](crate::source::ISO_898_1), 9.1.6.1, for the metric area (quoted at second hand);
/// [`SHIGLEY_9`](crate::source::SHIGLEY_9), Table 8-2, for the Unified ones (from memory: its root area is that of *d*
/// − 1.299038 *p*).
///
/// # Examples
///
/// M6 × 1: *H* = 0.86603, *d₂* = 5.3505, *d₃* = 4.7731, mean 5.0618, area 20.12 mm².
///
/// ```
/// use skinspan::{fastening::{ScrewThread, ThreadForm}, units::Length};
/// use uom::si::{area::square_millimeter, length::millimeter};
/// let mm = Length::new::<millimeter>;
/// let m6 = ScrewThread { major: mm(6.0), pitch: mm(1.0), form: ThreadForm::Metric };
/// assert!((m6.stress_area().get::<square_millimeter>() - 20.12).abs() < 0.005);
/// assert!((m6.minor_diameter().get::<millimeter>() - 4.9175).abs() < 1e-4);
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ScrewThread {
    /// Outside diameter of the screw.
    pub major: Length,
    /// Distance from one turn to the next.
    pub pitch: Length,
    /// Profile.
    pub form: ThreadForm,
}

impl ScrewThread {
    /// Diameter at which thread and gap are equally wide.
    #[must_use]
    pub fn pitch_diameter(&self) -> Length {
        self.major - 0.75 * self.triangle()
    }

    /// Inside diameter of the nut, the hole before it is tapped.
    #[must_use]
    pub fn minor_diameter(&self) -> Length {
        self.major - 1.25 * self.triangle()
    }

    /// Diameter of the screw at the bottom of its thread.
    #[must_use]
    pub fn root_diameter(&self) -> Length {
        let depth = match self.form {
            ThreadForm::Metric => 17.0 / 12.0,
            ThreadForm::Unified => 1.5,
        };
        self.major - depth * self.triangle()
    }

    /// Diameter of the stress area.
    #[must_use]
    pub fn stress_diameter(&self) -> Length {
        (self.pitch_diameter() + self.root_diameter()) / 2.0
    }

    /// Area that bears tension.
    #[must_use]
    pub fn stress_area(&self) -> Area {
        round_area(self.stress_diameter())
    }

    /// Height of the sharp triangle of the profile.
    fn triangle(&self) -> Length {
        self.pitch * (PI / 3.0).sin()
    }
}

/// Area of a round section: shank, or thread at a given diameter.
///
/// ```text
///   A = (π/4) d²
/// ```
///
/// | symbol | meaning  | argument   |
/// |--------|----------|------------|
/// | *d*    | diameter | `diameter` |
///
/// # Validity
///
/// Any round section.
///
/// # Source
///
/// [`DERIVED`](crate::source::DERIVED): the circle.
///
/// # Examples
///
/// A shank of 6 mm: 28.27 mm².
///
/// ```
/// use skinspan::{fastening::round_area, units::Length};
/// use uom::si::{area::square_millimeter, length::millimeter};
/// let shank = round_area(Length::new::<millimeter>(6.0));
/// assert!((shank.get::<square_millimeter>() - 28.27).abs() < 0.005);
/// ```
#[must_use]
pub fn round_area(diameter: Length) -> Area {
    FRAC_PI_4 * diameter * diameter
}

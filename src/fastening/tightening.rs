//! Torque and preload.

use std::f64::consts::PI;

use super::ScrewThread;
use crate::units::{Force, Length, Ratio, Torque};

/// Torque over preload and diameter, from the friction in thread and head.
///
/// ```text
///   K = (p/(2π) + μ_t d₂/√3 + μ_h D_h/2) / d
/// ```
///
/// | symbol | meaning                                                                   | argument          |
/// |--------|---------------------------------------------------------------------------|-------------------|
/// | *d*, *p*, *d₂* | diameter, pitch and pitch diameter of the thread                  | `thread`          |
/// | `μ_t`  | friction in the thread                                                    | `thread_friction` |
/// | `μ_h`  | friction under the head or nut that turns                                 | `head_friction`   |
/// | `D_h`  | mean diameter of the face that turns, (outside + hole)/2                  | `head_diameter`   |
///
/// # Validity
///
/// Flanks at 60°. The product of lead and friction in the thread is left out: 1 % of *K*, at most. Locking nuts and glue add a torque of their own.
///
/// # Source
///
/// [`VDI_2230`](crate::source::VDI_2230), tightening torque (0.159 *p* + 0.577 *d₂* *μ* + 0.5 *D* *μ*, from memory);
/// it reproduces a published table.
///
/// # Examples
///
/// M6, both frictions 0.2, head face from 6.6 to 8.9 mm: (0.1592 + 0.2 × 5.3505/√3 + 0.2 × 7.75/2)/6 = 1.5520/6 = 0.2587.
///
/// ```
/// use skinspan::{fastening::{ScrewThread, ThreadForm, nut_factor}, units::{Length, Ratio}};
/// use uom::si::length::millimeter;
/// let (mm, mu) = (Length::new::<millimeter>, Ratio::from(0.2));
/// let m6 = ScrewThread { major: mm(6.0), pitch: mm(1.0), form: ThreadForm::Metric };
/// assert!((nut_factor(&m6, mu, mu, mm(7.75)).value - 0.2587).abs() < 1e-4);
/// ```
#[must_use]
pub fn nut_factor(thread: &ScrewThread, thread_friction: Ratio, head_friction: Ratio, head_diameter: Length) -> Ratio {
    let lead = thread.pitch / (2.0 * PI);
    let flanks = thread_friction * thread.pitch_diameter() / 3f64.sqrt();
    let head = head_friction * head_diameter / 2.0;
    (lead + flanks + head) / thread.major
}

/// Torque that makes a preload.
///
/// ```text
///   T = K d F
/// ```
///
/// | symbol | meaning                                              | argument     |
/// |--------|------------------------------------------------------|--------------|
/// | *K*    | nut factor, from a table or by [`nut_factor`]        | `nut_factor` |
/// | *d*    | diameter of the thread                               | `diameter`   |
/// | *F*    | preload                                              | `preload`    |
///
/// # Validity
///
/// As good as *K* is known: bolts of one lot, lubricated and brought to one torque, scattered by 8 % (standard
/// deviation of ten); dry ones do by 30 % (from memory). See [`preload_range`] and [`torque_within`].
///
/// # Source
///
/// [`SHIGLEY_9`](crate::source::SHIGLEY_9), equation 8-27, Tables 8-14 and 8-15 (the page with the tables was read).
///
/// # Examples
///
/// M6, *K* = 0.2, 5 kN: 6 N·m.
///
/// ```
/// use skinspan::{fastening::tightening_torque, units::{Force, Length, Ratio}};
/// use uom::si::{force::kilonewton, length::millimeter, torque::newton_meter};
/// let f = Force::new::<kilonewton>(5.0);
/// let t = tightening_torque(Ratio::from(0.2), Length::new::<millimeter>(6.0), f);
/// assert!((t.get::<newton_meter>() - 6.0).abs() < 1e-12);
/// ```
#[must_use]
pub fn tightening_torque(nut_factor: Ratio, diameter: Length, preload: Force) -> Torque {
    (nut_factor * diameter * preload).into()
}

/// Preload that one torque can make.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PreloadRange {
    /// With the highest nut factor.
    pub least: Force,
    /// With the lowest.
    pub greatest: Force,
}

/// Preload that a torque makes, over the range in which the nut factor may lie.
///
/// ```text
///   F = T/(K d)
/// ```
///
/// | symbol | meaning                                   | argument       |
/// |--------|-------------------------------------------|----------------|
/// | *T*    | torque                                    | `torque`       |
/// | *d*    | diameter of the thread                    | `diameter`     |
/// | *K*    | lowest and highest nut factor, in any order, above zero | `nut_factors` |
///
/// # Validity
///
/// As [`tightening_torque`]. Holding the joint closed counts on the least, crushing on the greatest.
///
/// # Source
///
/// As [`tightening_torque`].
///
/// # Examples
///
/// 6 N·m on M6, *K* from 0.125 to 0.25: 4 to 8 kN.
///
/// ```
/// use skinspan::{fastening::preload_range, units::{Length, Ratio, Torque}};
/// use uom::si::{force::kilonewton, length::millimeter, torque::newton_meter};
/// let torque = Torque::new::<newton_meter>(6.0);
/// let range = preload_range(torque, Length::new::<millimeter>(6.0), [Ratio::from(0.125), Ratio::from(0.25)]);
/// assert!((range.least.get::<kilonewton>() - 4.0).abs() < 1e-12);
/// assert!((range.greatest.get::<kilonewton>() - 8.0).abs() < 1e-12);
/// ```
#[must_use]
pub fn preload_range(torque: Torque, diameter: Length, nut_factors: [Ratio; 2]) -> PreloadRange {
    let preload = |factor: Ratio| torque / (factor * diameter);
    let [a, b] = nut_factors.map(preload);
    if b < a { PreloadRange { least: b, greatest: a } } else { PreloadRange { least: a, greatest: b } }
}

/// Torque whose preload stays below a limit however well the thread runs.
///
/// ```text
///   T = K_min d F_max
/// ```
///
/// | symbol  | meaning                                                                     | argument      |
/// |---------|-----------------------------------------------------------------------------|---------------|
/// | `F_max` | what core, board, thread in the board or sleeve allow under the head        | `limit`       |
/// | *d*     | diameter of the thread                                                      | `diameter`    |
/// | `K_min` | lower of the nut factors, in any order                                      | `nut_factors` |
///
/// # Validity
///
/// As [`tightening_torque`]. On foam the answer is finger-tight.
///
/// # Source
///
/// As [`tightening_torque`].
///
/// # Examples
///
/// 342 N on the foam under a washer, M6, *K* from 0.12 to 0.2: 0.12 × 6 × 342 = 0.246 N·m.
///
/// ```
/// use skinspan::{fastening::torque_within, units::{Force, Length, Ratio}};
/// use uom::si::{force::newton, length::millimeter, torque::newton_meter};
/// let limit = Force::new::<newton>(342.0);
/// let t = torque_within(limit, Length::new::<millimeter>(6.0), [Ratio::from(0.12), Ratio::from(0.2)]);
/// assert!((t.get::<newton_meter>() - 0.24624).abs() < 1e-9);
/// ```
#[must_use]
pub fn torque_within(limit: Force, diameter: Length, nut_factors: [Ratio; 2]) -> Torque {
    let [a, b] = nut_factors;
    tightening_torque(if b < a { b } else { a }, diameter, limit)
}

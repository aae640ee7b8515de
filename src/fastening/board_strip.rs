//! Stripping of a screw out of board.

use std::f64::consts::PI;

use crate::units::{Force, Length, Pressure, Ratio};

/// Share of the cylinder round a screw that is board between its threads.
///
/// ```text
///   TSF = 1/2 + h/(√3 p),        h = (D − D₁)/2
/// ```
///
/// | symbol | meaning                         | argument |
/// |--------|---------------------------------|----------|
/// | *D*    | outside diameter of the thread  | `major`  |
/// | *D₁*   | diameter at its root            | `minor`  |
/// | *p*    | pitch                           | `pitch`  |
///
/// # Validity
///
/// A screw that fills its hole, thread as wide as the gap at half depth. Coarse deep threads reach 1 and no more.
///
/// # Source
///
/// [`CHAPMAN_1996`](crate::source::CHAPMAN_1996) (from memory). The same as the nut's area in
/// [`ThreadMating`](super::ThreadMating) with a pitch diameter of (*D* + *D₁*)/2.
///
/// # Examples
///
/// A No. 10 tapping screw, 4.83 and 3.45 mm, pitch 2.12 mm: 0.5 + 0.69/3.672 = 0.6879.
///
/// ```
/// use skinspan::{fastening::thread_shape_factor, units::Length};
/// use uom::si::length::millimeter;
/// let mm = Length::new::<millimeter>;
/// assert!((thread_shape_factor(mm(4.83), mm(3.45), mm(2.12)).value - 0.6879).abs() < 1e-4);
/// ```
#[must_use]
pub fn thread_shape_factor(major: Length, minor: Length, pitch: Length) -> Ratio {
    let depth = (major - minor) / 2.0;
    let share = Ratio::from(0.5) + depth / (3f64.sqrt() * pitch);
    if share.value > 1.0 { Ratio::from(1.0) } else { share }
}

/// Pull that strips a screw out of a board.
///
/// ```text
///   F = τ π D L TSF
/// ```
///
/// | symbol | meaning                                           | argument         |
/// |--------|---------------------------------------------------|------------------|
/// | *τ*    | shear strength of the board                       | `shear_strength` |
/// | *D*    | outside diameter of the thread                    | `major`          |
/// | *L*    | [`effective_engagement`](super::effective_engagement) | `length`     |
/// | TSF    | [`thread_shape_factor`]                           | `shape`          |
///
/// # Validity
///
/// Boards without grain, cells small against the pitch: rigid polyurethane foam, board and thermoplastics; found by
/// tests on foam. The pilot hole hardly matters until it passes the pitch diameter.
///
/// # Source
///
/// [`CHAPMAN_1996`](crate::source::CHAPMAN_1996), for screws in rigid polyurethane foam (from memory).
///
/// # Examples
///
/// The screw above over 25.4 mm in a board of 4 MPa: 4 × π × 4.83 × 25.4 × 0.6879 = 1060 N.
///
/// ```
/// use skinspan::{fastening::board_strip_capacity, units::{Length, Pressure, Ratio}};
/// use uom::si::{force::newton, length::millimeter, pressure::megapascal};
/// let mm = Length::new::<millimeter>;
/// let f = board_strip_capacity(Pressure::new::<megapascal>(4.0), mm(4.83), mm(25.4), Ratio::from(0.6879));
/// assert!((f.get::<newton>() - 1060.5).abs() < 0.1);
/// ```
#[must_use]
pub fn board_strip_capacity(shear_strength: Pressure, major: Length, length: Length, shape: Ratio) -> Force {
    shape * shear_strength * (PI * major * length)
}

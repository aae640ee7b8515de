//! Internal forces of a strip under a case: the peaks that checks look at, with their places.

use super::line::Region;
use crate::units::{ForcePerWidth, Length, MomentPerWidth};

/// Share by which a value has to be larger than another to take its place: of places that are alike the first is named,
/// whatever rounding makes of them.
pub(crate) const LARGER: f64 = 1e-12;

/// A largest value, where on the strip, and where the person stands who causes it.
#[derive(Clone, Copy, Debug, PartialEq, Default)]
pub struct Peak<Q> {
    /// The value, with its sign.
    pub value: Q,
    /// Place along the strip.
    pub at: Length,
    /// Place of the load that moves, where one has a part in it.
    pub load_at: Option<Length>,
}

/// Largest forces within one region of a strip.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RegionForces {
    /// What lies between the skins.
    pub region: Region,
    /// Sagging moment: the outer skin is pressed.
    pub sagging: Peak<MomentPerWidth>,
    /// Hogging moment, as a positive number: the inner skin is pressed.
    pub hogging: Peak<MomentPerWidth>,
    /// Transverse shear, without its sign.
    pub shear: Peak<ForcePerWidth>,
}

/// Largest forces where core ends and a backing begins.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct EdgeForces {
    /// The backing, as its place in the list.
    pub backing: usize,
    /// Sagging moment.
    pub sagging: Peak<MomentPerWidth>,
    /// Hogging moment, as a positive number.
    pub hogging: Peak<MomentPerWidth>,
    /// Transverse shear, without its sign.
    pub shear: Peak<ForcePerWidth>,
}

/// Largest reactions at one seat.
#[derive(Clone, Copy, Debug, PartialEq, Default)]
pub struct SeatForces {
    /// Push of the top on the pipe.
    pub push: Peak<ForcePerWidth>,
    /// Pull of the top at the fixings, as a positive number.
    pub pull: Peak<ForcePerWidth>,
}

/// Largest deflection of one bay or overhang, without its sign.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Sag {
    /// The deflection.
    pub peak: Peak<Length>,
    /// Span of the bay, or reach of the overhang.
    pub over: Length,
    /// Whether it is the tip of an overhang.
    pub tip: bool,
}

/// Forces of one strip under one case.
#[derive(Clone, Debug, PartialEq)]
pub struct StripForces {
    /// The strip, as its place in the list.
    pub line: usize,
    /// The case, as its place in the list.
    pub case: usize,
    /// By region.
    pub regions: Vec<RegionForces>,
    /// By edge of a backing, in the order of the strip.
    pub edges: Vec<EdgeForces>,
    /// By seat, in the order of the strip.
    pub seats: Vec<SeatForces>,
    /// By bay and overhang.
    pub sags: Vec<Sag>,
    /// Largest deflection that a load which moves causes by itself.
    pub under_load: Peak<Length>,
}

//! Loads as pieces inside elements and jumps at stations, and their exact effect along an element.

use std::ops::Range;

use super::{
    Action, StripError,
    core::{Core, check_inside},
    element::{Element, Section},
};

/// Moment, shear, rotation and deflection at one place; also what a load adds to them.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct State {
    pub w: f64,
    pub psi: f64,
    pub m: f64,
    pub v: f64,
}

impl State {
    #[inline]
    pub fn plus(self, o: Self) -> Self {
        Self { w: self.w + o.w, psi: self.psi + o.psi, m: self.m + o.m, v: self.v + o.v }
    }

    /// Carries the state over an element and adds what its loads do. Bracketed so that each sum waits for one addition
    /// of the element before only: this is the inner loop of the moving load.
    #[inline]
    pub fn over(self, e: &Element, load: &Self) -> Self {
        Self {
            w: self.w + (self.psi * e.h + (e.w_m * self.m + (e.w_v * self.v + load.w))),
            psi: self.psi + (e.psi_m * self.m + (e.psi_v * self.v + load.psi)),
            m: self.m + (self.v * e.h + load.m),
            v: self.v + load.v,
        }
    }

    /// What unit pressure over the length `h` adds at its end.
    pub fn pressed(h: f64, section: &Section) -> Self {
        let bend = h * h / section.d;
        Self { w: h * h * (bend / 24.0 - 0.5 / section.s), psi: h * bend / 6.0, m: -h * h / 2.0, v: -h }
    }

    /// What unit free curvature over the length `h` adds at its end.
    #[inline]
    pub fn curved(h: f64) -> Self {
        Self { w: -h * h / 2.0, psi: -h, ..Self::default() }
    }

    #[inline]
    pub fn times(self, f: f64) -> Self {
        Self { w: self.w * f, psi: self.psi * f, m: self.m * f, v: self.v * f }
    }

    /// Carries the state over the length `h` of an element without loads.
    pub fn over_part(self, e: &Element, h: f64) -> Self {
        let hd = h / e.d;
        Self {
            w: self.w + self.psi * h - hd * h / 2.0 * self.m + (h / e.s - hd * h * h / 6.0) * self.v,
            psi: self.psi - hd * self.m - hd * h / 2.0 * self.v,
            m: self.m + self.v * h,
            v: self.v,
        }
    }
}

#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Kind {
    Force,
    Moment,
    Curvature,
}

/// A load on the stretch from `start` to `end` of one element, measured from its left end; a point if they are equal.
#[derive(Clone, Copy, Debug)]
pub(super) struct Piece {
    pub element: usize,
    pub start: f64,
    pub end: f64,
    /// Whole force, whole moment, or whole angle (curvature times length).
    pub total: f64,
    pub kind: Kind,
}

impl Piece {
    /// What the piece adds at `h` from the left end, a point load that stands there included or not. Written about the middle of the piece, so that a short piece in a
    /// long element loses no digits.
    pub fn effect(&self, e: &Element, h: f64, after: bool) -> State {
        if h < self.start || (h <= self.start && !after) {
            return State::default();
        }
        let cut = self.end.min(h);
        let whole = self.end - self.start;
        let share = if whole > 0.0 { (cut - self.start) / whole } else { 1.0 };
        let (p, c, r) = (self.total * share, cut - self.start, h - f64::midpoint(self.start, cut));
        match self.kind {
            Kind::Force => State {
                v: -p,
                m: -p * r,
                psi: p * (r * r / 2.0 + c * c / 24.0) / e.d,
                w: p * (r * (r * r / 6.0 + c * c / 24.0) / e.d - r / e.s),
            },
            Kind::Moment => State { v: 0.0, m: p, psi: -p * r / e.d, w: -p * r * r / (2.0 * e.d) },
            Kind::Curvature => State { v: 0.0, m: 0.0, psi: -p, w: -p * r },
        }
    }

    /// Force per length on the piece.
    pub fn intensity(&self) -> f64 {
        let whole = self.end - self.start;
        if whole > 0.0 { self.total / whole } else { 0.0 }
    }
}

/// Loads of one solution.
#[derive(Clone, Debug)]
pub(super) struct Loads {
    /// Loads on parts of elements.
    pub pieces: Vec<Piece>,
    /// Pressure and free curvature all over each element.
    pub even: Vec<[f64; 2]>,
    /// Effect of the loads of each element at its right end.
    pub element: Vec<State>,
    /// Force and moment that act on each station itself.
    pub node: Vec<[f64; 2]>,
    /// First and last station that loads reach.
    reach: [usize; 2],
}

/// Reach of no load.
const NOWHERE: [usize; 2] = [usize::MAX, 0];

impl Loads {
    pub fn new(core: &Core) -> Self {
        Self {
            pieces: Vec::with_capacity(8),
            even: vec![[0.0; 2]; core.elements.len()],
            element: vec![State::default(); core.elements.len()],
            node: vec![[0.0; 2]; core.x.len()],
            reach: NOWHERE,
        }
    }

    pub fn clear(&mut self) {
        let [from, to] = self.reach;
        if from <= to {
            let end = to.min(self.element.len());
            self.even[from.min(end)..end].fill([0.0; 2]);
            self.element[from.min(end)..end].fill(State::default());
            self.node[from..=to].fill([0.0; 2]);
        }
        self.pieces.clear();
        self.reach = NOWHERE;
    }

    /// Whether a load reaches inside the stretch between two stations.
    pub fn between(&self, first: usize, last: usize) -> bool {
        self.reach[1] > first && self.reach[0] < last
    }

    /// Whether a load stands on an end of a stretch that is a free end.
    pub fn at_end(&self, first: usize, last: usize, free: [bool; 2]) -> bool {
        (free[0] && self.reach[0] <= first) || (free[1] && self.reach[1] >= last && self.reach[1] != usize::MAX)
    }

    fn reached(&mut self, from: usize, to: usize) {
        self.reach = [self.reach[0].min(from), self.reach[1].max(to)];
    }

    pub fn add(&mut self, core: &Core, action: &Action) -> Result<(), StripError> {
        match *action {
            Action::Uniform { from, to, pressure } => {
                let total = pressure.value * (to.value - from.value);
                self.stretch(core, from.value, to.value, total, Kind::Force)
            }
            Action::Point { at, force } => self.point(core, at.value, force.value, Kind::Force),
            Action::Patch { centre, length, force } => {
                let half = length.value / 2.0;
                if half == 0.0 {
                    return self.point(core, centre.value, force.value, Kind::Force);
                }
                self.stretch(core, centre.value - half, centre.value + half, force.value, Kind::Force)
            }
            Action::Moment { at, moment } => self.point(core, at.value, moment.value, Kind::Moment),
            Action::Curvature { from, to, curvature } => {
                let total = curvature.value * (to.value - from.value);
                self.stretch(core, from.value, to.value, total, Kind::Curvature)
            }
        }
    }

    pub fn point(&mut self, core: &Core, at: f64, total: f64, kind: Kind) -> Result<(), StripError> {
        check_inside("load", at, core.length())?;
        finite(total)?;
        let right = core.x.partition_point(|&p| p < at - core.tolerance()).min(core.x.len() - 1);
        if (core.x[right] - at).abs() <= core.tolerance() {
            self.node[right][usize::from(kind == Kind::Moment)] += total;
            self.reached(right, right);
        } else {
            let element = core.element_at(at);
            let start = at - core.x[element];
            self.push(core, Piece { element, start, end: start, total, kind });
        }
        Ok(())
    }

    pub fn stretch(&mut self, core: &Core, from: f64, to: f64, total: f64, kind: Kind) -> Result<(), StripError> {
        check_inside("load", from, core.length())?;
        check_inside("load", to, core.length())?;
        finite(total)?;
        if to < from {
            return Err(StripError::Load { what: "it ends before it begins" });
        }
        let whole = to - from;
        if whole == 0.0 {
            return Ok(());
        }
        // Elements wholly under it, and what reaches into the elements beside them. A miss by rounding at an end of the
        // strip goes to the outermost element, so that no force is lost.
        let last = core.elements.len() - 1;
        let first = core.x.partition_point(|x| *x < from);
        let end = core.x.partition_point(|x| *x <= to).saturating_sub(1);
        let mut part = |element: usize, a: f64, b: f64| {
            let (x, h) = (core.x[element], core.elements[element].h);
            let (start, end) = ((a - x).clamp(0.0, h), (b - x).clamp(0.0, h));
            self.push(core, Piece { element, start, end, total: total * ((b - a) / whole), kind });
        };
        if first > end {
            part(end.min(last), from, to);
            return Ok(());
        }
        if first > 0 && from < core.x[first] {
            part(first - 1, from, if first > last { to } else { core.x[first] });
        }
        if end <= last && to > core.x[end] {
            part(end, if end == 0 { from } else { core.x[end] }, to);
        }
        self.all_over(core, first..end, total / whole, kind);
        Ok(())
    }

    fn all_over(&mut self, core: &Core, covered: Range<usize>, intensity: f64, kind: Kind) {
        if covered.is_empty() {
            return;
        }
        self.reached(covered.start, covered.end);
        let bends = kind == Kind::Curvature;
        let elements = core.elements[covered.clone()].iter();
        let own = self.element[covered.clone()].iter_mut().zip(&mut self.even[covered]);
        for (e, (sum, even)) in elements.zip(own) {
            let unit = if bends { State::curved(e.h) } else { e.pressed };
            *sum = sum.plus(unit.times(intensity));
            even[usize::from(bends)] += intensity;
        }
    }

    fn push(&mut self, core: &Core, piece: Piece) {
        let e = &core.elements[piece.element];
        let sum = &mut self.element[piece.element];
        *sum = sum.plus(piece.effect(e, e.h, true));
        self.reached(piece.element, piece.element + 1);
        self.pieces.push(piece);
    }
}

fn finite(total: f64) -> Result<(), StripError> {
    if total.is_finite() { Ok(()) } else { Err(StripError::Load { what: "its size is not a number" }) }
}

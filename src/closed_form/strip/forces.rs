use super::{
    Action, Strip, StripError,
    core::Core,
    loads::{Loads, Piece, State},
    si,
    solve::{Node, Work},
};
use crate::units::{Angle, ForcePerWidth, Length, MomentPerWidth};

/// Forces and displacements at a station. Left and right differ where a point load, a moment or a support acts.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Station {
    /// Where.
    pub at: Length,
    /// Moment just left of it.
    pub moment_left: MomentPerWidth,
    /// Moment just right of it.
    pub moment_right: MomentPerWidth,
    /// Shear just left of it.
    pub shear_left: ForcePerWidth,
    /// Shear just right of it.
    pub shear_right: ForcePerWidth,
    /// Deflection, down positive.
    pub deflection: Length,
    /// Rotation of the section.
    pub rotation: Angle,
}

/// What a support does to the strip.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Reaction {
    /// Where it stands.
    pub at: Length,
    /// Force per width on the strip, up positive; negative where it holds the strip down.
    pub force: ForcePerWidth,
    /// Moment per width on the strip, as an applied moment; 0 unless clamped.
    pub moment: MomentPerWidth,
}

/// A largest value and its place.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Peak<T> {
    /// Where.
    pub at: Length,
    /// The value, with its sign.
    pub value: T,
}

/// Forces and displacements of a strip under a set of actions.
#[derive(Clone, Debug)]
pub struct StripForces<'s> {
    pub(super) core: &'s Core,
    pub(super) loads: Loads,
    pub(super) nodes: Vec<Node>,
}

impl Strip {
    /// Forces, deflections and reactions under `actions` together.
    ///
    /// ```text
    /// support moments:  F X = r   (three-moment equations with shear, F tridiagonal)
    /// single bay:       f00 = L/(3D) + 1/(S L)      f01 = L/(6D) − 1/(S L)
    /// ```
    ///
    /// | symbol | meaning |
    /// |---|---|
    /// | `X` | moments over the supports |
    /// | `F`, `r` | rotations of the bay ends per unit support moment, and from the loads |
    /// | `L`, `D`, `S` | bay, flexural rigidity and shear stiffness per width |
    ///
    /// # Validity
    /// As [`Strip::new`]. Exact for these loads apart from rounding.
    ///
    /// # Errors
    /// [`StripError::Outside`] if a load reaches beyond the strip, [`StripError::Load`] if it ends before it begins or
    /// is not a number.
    ///
    /// # Source
    /// [`DERIVED`](crate::source::DERIVED). The two-span form appears in European practice for sandwich cladding with
    /// `k = 3D/(S L²)` (from memory).
    ///
    /// # Examples
    /// Two equal bays under pressure: `M = −(q L²/8)/(1 + 3φ)`, `φ = D/(S L²)`. With `q` = 800 Pa, `L` = 1 m and
    /// `φ` = 1/3 this is −50 N·m/m, half of the 100 N·m/m without shear.
    /// ```
    /// use skinspan::closed_form::strip::{Action, Segment, Strip, Support};
    /// use skinspan::units::{ArealMassDensity, Force, Length, Pressure, per_width};
    /// use uom::si::{force::newton, length::meter, pressure::pascal};
    /// let m = Length::new::<meter>;
    /// let section = Segment {
    ///     length: m(2.0),
    ///     rigidity: per_width(Force::new::<newton>(1000.0) * m(1.0)),
    ///     shear: per_width(Force::new::<newton>(3000.0) / m(1.0)),
    ///     mass: ArealMassDensity::default(),
    /// };
    /// let pipes = [0.0, 1.0, 2.0].map(|x| Support::pipe(m(x)));
    /// let strip = Strip::new(&[section], &pipes, &[], 1)?;
    /// let forces = strip.solve(&[Action::uniform_all(&strip, Pressure::new::<pascal>(800.0))])?;
    /// assert!((forces.at(m(1.0))?.moment_left.value + 50.0).abs() < 1e-12);
    /// # Ok::<(), skinspan::closed_form::strip::StripError>(())
    /// ```
    pub fn solve(&self, actions: &[Action]) -> Result<StripForces<'_>, StripError> {
        let mut loads = Loads::new(&self.core);
        for action in actions {
            loads.add(&self.core, action)?;
        }
        let mut work = Work::new(&self.core);
        self.core.solve(&loads, &mut work);
        Ok(StripForces { core: &self.core, loads, nodes: work.nodes })
    }
}

impl StripForces<'_> {
    /// Results at every station of the strip, ascending.
    #[must_use]
    pub fn stations(&self) -> impl ExactSizeIterator<Item = Station> + '_ {
        self.nodes.iter().zip(&self.core.x).map(|(n, &x)| station(x, n))
    }

    /// Reactions, in the order of [`Strip::supports`].
    #[must_use]
    pub fn reactions(&self) -> impl ExactSizeIterator<Item = Reaction> + '_ {
        self.core.supports.iter().map(|s| {
            let (n, [f, m]) = (&self.nodes[s.node], self.loads.node[s.node]);
            let moment = if s.clamped { n.m[1] - n.m[0] - m } else { 0.0 };
            Reaction { at: si(self.core.x[s.node]), force: si(n.v[1] - n.v[0] + f), moment: si(moment) }
        })
    }

    /// Results at any place, inside elements and under loads too.
    ///
    /// # Errors
    /// [`StripError::Outside`] if `x` is not on the strip.
    pub fn at(&self, x: Length) -> Result<Station, StripError> {
        let x = self.core.position(x.value)?;
        let e = self.core.element_at(x);
        let s = x - self.core.x[e];
        let tolerance = self.core.tolerance();
        for node in [e, e + 1] {
            if (x - self.core.x[node]).abs() <= tolerance {
                return Ok(station(self.core.x[node], &self.nodes[node]));
            }
        }
        let (left, right) = (self.inside(e, s, false), self.inside(e, s, true));
        let node = Node { w: right.w, psi: right.psi, m: [left.m, right.m], v: [left.v, right.v] };
        Ok(station(x, &node))
    }

    /// State at `s` from the left end of element `e`, before or after point loads that stand there.
    pub(super) fn inside(&self, e: usize, s: f64, after: bool) -> State {
        let n = &self.nodes[e];
        let element = &self.core.elements[e];
        let start = State { w: n.w, psi: n.psi, m: n.m[1], v: n.v[1] };
        let [pressure, curvature] = self.loads.even[e];
        let pressed = State::pressed(s, &element.section()).times(pressure);
        let mut state = start.over_part(element, s).plus(pressed).plus(State::curved(s).times(curvature));
        for p in self.pieces(e) {
            state = state.plus(p.effect(element, s, after));
        }
        state
    }

    pub(super) fn pieces(&self, e: usize) -> impl Iterator<Item = &Piece> + Clone {
        self.loads.pieces.iter().filter(move |p| p.element == e)
    }
}

fn station(x: f64, n: &Node) -> Station {
    Station {
        at: si(x),
        moment_left: si(n.m[0]),
        moment_right: si(n.m[1]),
        shear_left: si(n.v[0]),
        shear_right: si(n.v[1]),
        deflection: si(n.w),
        rotation: si(n.psi),
    }
}

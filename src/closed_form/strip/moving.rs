use std::ops::Range;

use super::{
    Strip, StripError,
    core::{Core, check_inside},
    extremes::{Extreme, Extremes},
    loads::{Kind, Loads},
    si,
    solve::{Results, Work},
    tail::Tails,
};
use crate::units::{ForcePerWidth, Length, MomentPerWidth};

/// One place of a load that moves. The four forces may differ, since a wide strip carries a deflection, a narrow one a
/// shear: each scales its own result.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct MovingPatch {
    /// Middle of the patch; moved inwards where the patch would reach beyond the strip.
    pub centre: Length,
    /// Whole force per width for sagging moments.
    pub sagging: ForcePerWidth,
    /// Whole force per width for hogging moments.
    pub hogging: ForcePerWidth,
    /// Whole force per width for shear and reactions.
    pub shear: ForcePerWidth,
    /// Whole force per width for deflections.
    pub deflection: ForcePerWidth,
}

impl MovingPatch {
    /// The same force for every result.
    #[must_use]
    pub const fn even(centre: Length, force: ForcePerWidth) -> Self {
        Self { centre, sagging: force, hogging: force, shear: force, deflection: force }
    }
}

/// Extremes at every station while a load moves over the strip.
#[derive(Clone, Debug)]
pub struct Envelope {
    at: Vec<Length>,
    station: Vec<Extremes<4>>,
    reaction: Vec<Extremes<1>>,
}

/// Results of a station in an [`Envelope`].
const MOMENT: usize = 0;
const SHEAR_LEFT: usize = 1;
const SHEAR_RIGHT: usize = 2;
const DEFLECTION: usize = 3;

impl Strip {
    /// Extremes at every station for a patch of the given length that stands at each of `positions` in turn.
    ///
    /// ```text
    /// max_k F_k·(result at the station for a unit force at position k),  and the same for min
    /// ```
    ///
    /// | symbol | meaning |
    /// |---|---|
    /// | `F_k` | the force that goes with the result, see [`MovingPatch`] |
    ///
    /// # Validity
    /// As [`Strip::new`]. Exact at stations; the peak under the patch lies within half a patch of one, so stations
    /// should be no farther apart than the patch is long. For the exact peak of one position use
    /// [`solve`](Self::solve) with that position. Forces must not be negative, as an uplift is another load.
    ///
    /// # Errors
    /// [`StripError::Outside`] if a position is not on the strip; [`StripError::Load`] if the patch is longer than the
    /// strip or a force is negative.
    ///
    /// # Source
    /// [`DERIVED`](crate::source::DERIVED).
    ///
    /// # Examples
    /// A line load of 100 N/m on a bay of 1 m: at mid-span `F L/4` = 25 N·m/m, caused by the middle position.
    /// ```
    /// use skinspan::closed_form::strip::{MovingPatch, Segment, Strip, Support};
    /// use skinspan::units::{ArealMassDensity, Force, Length, per_width};
    /// use uom::si::{force::newton, length::meter};
    /// let m = Length::new::<meter>;
    /// let section = Segment {
    ///     length: m(1.0),
    ///     rigidity: per_width(Force::new::<newton>(1000.0) * m(1.0)),
    ///     shear: per_width(Force::new::<newton>(125e3) / m(1.0)),
    ///     mass: ArealMassDensity::default(),
    /// };
    /// let strip = Strip::new(&[section], &[Support::pipe(m(0.0)), Support::pipe(m(1.0))], &[], 8)?;
    /// let force = per_width(Force::new::<newton>(100.0) / m(1.0));
    /// let positions: Vec<_> = strip.stations().map(|x| MovingPatch::even(x, force)).collect();
    /// let envelope = strip.envelope(m(0.0), &positions)?;
    /// let middle = envelope.moments().nth(4).unwrap();
    /// assert!((middle.max.value - 25.0).abs() < 1e-12 && middle.max_from == 4);
    /// # Ok::<(), skinspan::closed_form::strip::StripError>(())
    /// ```
    pub fn envelope(&self, length: Length, positions: &[MovingPatch]) -> Result<Envelope, StripError> {
        let core = &self.core;
        let (whole, patch) = (core.length(), length.value);
        if !(patch >= 0.0 && patch <= whole) {
            return Err(StripError::Load { what: "the patch is longer than the strip" });
        }
        for p in positions {
            check_inside("load", p.centre.value, whole)?;
            let negative = |f: ForcePerWidth| f.value.is_nan() || f.value < 0.0;
            if [p.sagging, p.hogging, p.shear, p.deflection].into_iter().any(negative) {
                return Err(StripError::Load { what: "the force of a moving patch is negative" });
            }
        }
        let mut e = Envelope {
            at: self.stations().collect(),
            station: vec![Extremes::NOTHING; core.x.len()],
            reaction: vec![Extremes::NOTHING; core.supports.len()],
        };
        let (mut loads, mut work) = (Loads::new(core), Work::new(core));
        let beyond = [core.left_tails(), core.right_tails()];
        let mut turns = Turns::new(core);
        for (k, p) in (0_u64..).zip(positions) {
            loads.clear();
            let centre = p.centre.value.clamp(patch / 2.0, whole - patch / 2.0);
            if patch > 0.0 {
                loads.stretch(core, centre - patch / 2.0, centre + patch / 2.0, 1.0, Kind::Force)?;
            } else {
                loads.point(core, centre, 1.0, Kind::Force)?;
            }
            let spans = core.loaded_spans(&loads);
            core.solve_spans(&loads, spans.clone(), &mut work);
            turns.see(core, &beyond, spans.clone(), &mut work, p, k);
            e.see(core, &loads, spans, &work, p, k);
        }
        e.see_tails(core, &beyond, turns);
        Ok(e)
    }
}

/// Turns of the strip over the supports that bound the loads, which bend all that lies beyond; each with the forces for
/// hogging, sagging, shear and deflection.
struct Turns {
    /// To the left of each support.
    left: Vec<Extremes<4>>,
    /// To the right of each support.
    right: Vec<Extremes<4>>,
}

/// What of [`Turns`] goes with each result of a station, below 0 and above.
const BY_TURN: [[usize; 2]; 4] = [[0, 1], [2, 2], [2, 2], [3, 3]];
/// The same for a reaction.
const REACTION_BY_TURN: [usize; 2] = [2, 2];

impl Turns {
    fn new(core: &Core) -> Self {
        let nothing = vec![Extremes::NOTHING; core.supports.len()];
        Self { left: nothing.clone(), right: nothing }
    }

    /// Takes one place of the load in, and puts the far sides of the supports that bound it into the solution.
    fn see(
        &mut self,
        core: &Core,
        [left, right]: &[Tails; 2],
        spans: Range<usize>,
        work: &mut Work,
        p: &MovingPatch,
        k: u64,
    ) {
        let forces = [p.hogging, p.sagging, p.shear, p.deflection].map(|force| force.value);
        if spans.is_empty() {
            return;
        }
        if let Some(support) = spans.start.checked_sub(1) {
            let held = core.supports[support];
            let node = &mut work.nodes[held.node];
            node.v[0] = node.psi * left.tails[support].shear;
            node.m[0] = if held.clamped { 0.0 } else { node.m[1] };
            self.left[support].see([node.psi; 4], forces, forces, k);
        }
        if let Some(held) = core.supports.get(spans.end - 1) {
            let node = &mut work.nodes[held.node];
            node.v[1] = node.psi * right.tails[spans.end - 1].shear;
            node.m[1] = if held.clamped { 0.0 } else { node.m[0] };
            self.right[spans.end - 1].see([node.psi; 4], forces, forces, k);
        }
    }
}

impl Envelope {
    fn see(&mut self, core: &Core, loads: &Loads, spans: Range<usize>, work: &Work, p: &MovingPatch, k: u64) {
        let (shear, sink) = (p.shear.value, p.deflection.value);
        let low = [p.hogging.value, shear, shear, sink];
        let high = [p.sagging.value, shear, shear, sink];
        if spans.is_empty() {
            // Over a support, which bears all of it.
            for (r, s) in self.reaction.iter_mut().zip(&core.supports) {
                r.see([loads.node[s.node][0]], [shear], [shear], k);
            }
            return;
        }
        let nodes = core.span(spans.start)[0]..=core.span(spans.end - 1)[1];
        for (n, station) in work.nodes[nodes.clone()].iter().zip(&mut self.station[nodes]) {
            station.see(n.results(), low, high, k);
        }
        let supports = spans.start.saturating_sub(1)..spans.end.min(core.supports.len());
        for (r, s) in self.reaction[supports.clone()].iter_mut().zip(&core.supports[supports]) {
            let n = &work.nodes[s.node];
            // Moments jump only at clamps, where the other side counts too.
            if s.clamped {
                self.station[s.node].see([n.m[1], n.v[0], n.v[1], n.w], low, high, k);
            }
            r.see([n.v[1] - n.v[0] + loads.node[s.node][0]], [shear], [shear], k);
        }
    }

    /// What the loads do beyond the supports that bound them.
    fn see_tails(&mut self, core: &Core, [left, right]: &[Tails; 2], mut turns: Turns) {
        let last = core.supports.len() - 1;
        for support in 0..=last {
            let turn = turns.right[support];
            let [from, to] = core.span(support + 1);
            self.see_tail(from + 1..to + 1, &right.shape, &turn);
            if let Some(next) = turns.right.get_mut(support + 1) {
                (0..4).for_each(|i| next.take(i, right.tails[support].turn, &turn, [i; 2]));
                self.reaction[support + 1].take(0, jump(right.shape[to]), &turn, REACTION_BY_TURN);
            }
        }
        for support in (0..=last).rev() {
            let turn = turns.left[support];
            let [from, to] = core.span(support);
            self.see_tail(from..to, &left.shape, &turn);
            if let Some(next) = support.checked_sub(1) {
                (0..4).for_each(|i| turns.left[next].take(i, left.tails[support].turn, &turn, [i; 2]));
                self.reaction[next].take(0, jump(left.shape[from]), &turn, REACTION_BY_TURN);
            }
        }
    }

    fn see_tail(&mut self, nodes: Range<usize>, shape: &[Results], turn: &Extremes<4>) {
        if turn.is_nothing() {
            return;
        }
        for (results, station) in shape[nodes.clone()].iter().zip(&mut self.station[nodes]) {
            for (i, by_turn) in BY_TURN.into_iter().enumerate() {
                station.take(i, results[i], turn, by_turn);
            }
        }
    }

    /// The stations, as in [`Strip::stations`]; the other lists follow them.
    #[must_use]
    pub fn stations(&self) -> impl ExactSizeIterator<Item = Length> + '_ {
        self.at.iter().copied()
    }

    /// Moments, of both sides of a clamp together.
    #[must_use]
    pub fn moments(&self) -> impl ExactSizeIterator<Item = Extreme<MomentPerWidth>> + '_ {
        self.station.iter().map(|s| s.of(MOMENT, si))
    }

    /// Shears just left of the stations.
    #[must_use]
    pub fn shears_left(&self) -> impl ExactSizeIterator<Item = Extreme<ForcePerWidth>> + '_ {
        self.station.iter().map(|s| s.of(SHEAR_LEFT, si))
    }

    /// Shears just right of the stations.
    #[must_use]
    pub fn shears_right(&self) -> impl ExactSizeIterator<Item = Extreme<ForcePerWidth>> + '_ {
        self.station.iter().map(|s| s.of(SHEAR_RIGHT, si))
    }

    /// Deflections, down positive.
    #[must_use]
    pub fn deflections(&self) -> impl ExactSizeIterator<Item = Extreme<Length>> + '_ {
        self.station.iter().map(|s| s.of(DEFLECTION, si))
    }

    /// Reactions, in the order of [`Strip::supports`].
    #[must_use]
    pub fn reactions(&self) -> impl ExactSizeIterator<Item = Extreme<ForcePerWidth>> + '_ {
        self.reaction.iter().map(|r| r.of(0, si))
    }
}

/// The reaction of a support: what the shear rises by over it.
fn jump([_, left, right, _]: Results) -> f64 {
    right - left
}

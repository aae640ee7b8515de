use super::{
    Strip, StripError,
    core::{Core, check_inside},
    loads::{Kind, Loads},
    si,
    solve::Work,
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

/// A smallest and a largest value, and which position of the load causes each. Never on the far side of 0: a load that
/// is not there causes 0, and then the position is the first.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Extreme<T> {
    /// Smallest value, at most 0.
    pub min: T,
    /// Largest value, at least 0.
    pub max: T,
    /// Position that causes the smallest, as an index into the positions given.
    pub min_from: usize,
    /// Position that causes the largest.
    pub max_from: usize,
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

/// [`Extreme`]s of several results in SI base units, side by side so that they are seen together.
#[derive(Clone, Copy, Debug)]
struct Extremes<const N: usize> {
    min: [f64; N],
    max: [f64; N],
    min_from: [u64; N],
    max_from: [u64; N],
}

impl<const N: usize> Extremes<N> {
    const NOTHING: Self = Self { min: [0.0; N], max: [0.0; N], min_from: [0; N], max_from: [0; N] };

    /// Takes the values of a unit force in, with the forces that go with what lies below and above 0.
    #[inline]
    fn see(&mut self, values: [f64; N], low: [f64; N], high: [f64; N], from: u64) {
        for i in 0..N {
            let (l, h) = (values[i] * low[i], values[i] * high[i]);
            // Selections, not branches: while the load comes nearer most values set a new record, and no one can foretell which.
            self.min_from[i] = if l < self.min[i] { from } else { self.min_from[i] };
            self.min[i] = if l < self.min[i] { l } else { self.min[i] };
            self.max_from[i] = if h > self.max[i] { from } else { self.max_from[i] };
            self.max[i] = if h > self.max[i] { h } else { self.max[i] };
        }
    }

    fn of<T>(&self, result: usize, quantity: impl Fn(f64) -> T) -> Extreme<T> {
        let place = |from: u64| usize::try_from(from).unwrap_or(usize::MAX);
        Extreme {
            min: quantity(self.min[result]),
            max: quantity(self.max[result]),
            min_from: place(self.min_from[result]),
            max_from: place(self.max_from[result]),
        }
    }
}

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
        for (k, p) in (0_u64..).zip(positions) {
            loads.clear();
            let centre = p.centre.value.clamp(patch / 2.0, whole - patch / 2.0);
            if patch > 0.0 {
                loads.stretch(core, centre - patch / 2.0, centre + patch / 2.0, 1.0, Kind::Force)?;
            } else {
                loads.point(core, centre, 1.0, Kind::Force)?;
            }
            core.solve(&loads, &mut work);
            e.see(core, &loads, &work, p, k);
        }
        Ok(e)
    }
}

impl Envelope {
    fn see(&mut self, core: &Core, loads: &Loads, work: &Work, p: &MovingPatch, k: u64) {
        let (shear, sink) = (p.shear.value, p.deflection.value);
        let low = [p.hogging.value, shear, shear, sink];
        let high = [p.sagging.value, shear, shear, sink];
        for (n, station) in work.nodes.iter().zip(&mut self.station) {
            station.see([n.m[0], n.v[0], n.v[1], n.w], low, high, k);
        }
        for (r, s) in self.reaction.iter_mut().zip(&core.supports) {
            let n = &work.nodes[s.node];
            // Moments jump only at clamps, where the other side counts too.
            if s.clamped {
                self.station[s.node].see([n.m[1], n.v[0], n.v[1], n.w], low, high, k);
            }
            r.see([n.v[1] - n.v[0] + loads.node[s.node][0]], [shear], [shear], k);
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

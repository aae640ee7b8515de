//! Holes of two mounts that meet.

use super::{Held, each_in_place};
use crate::{
    analysis::{Analysis, Mount, MountOn, mounts},
    check::{Check, Finding, Outcomes, Part, Place, Subject},
    fastening::pitch_needed,
    geometry::Point,
    material::Basis,
    source::{Citation, FPL_1824, Mark},
    top::{Fixing, Hold, Top},
    units::{Length, Ratio},
};

/// Beyond so many times what it needs a hole is no neighbour.
const NEAR: f64 = 4.0;

pub(in crate::check) struct FixingNearOther;

impl Check for FixingNearOther {
    fn id(&self) -> &'static str {
        "fixing-near-other"
    }

    fn title(&self) -> &'static str {
        "fixings of two mounts"
    }

    fn subject(&self) -> Subject {
        Subject::Fixings
    }

    fn what(&self) -> &'static str {
        "a hole runs into that of another mount, or the skin tears between the two, or their washers meet"
    }

    fn formula(&self) -> &'static str {
        "c ≤ s,  s to the nearest fixing of another mount; in one skin c = max(2.5 (d + d'), (w + w')/2), d and d' the diameters \
         in the skin, w and w' those of washer, flange or base; from opposite sides c = (h + h')/2 + n max(h, h') of holes h \
         and h'"
    }

    fn limits(&self) -> &'static str {
        "in plan: short fixings from opposite sides are counted as if they met; glass laminate, loads from any side"
    }

    fn citation(&self) -> Citation {
        Citation {
            work: FPL_1824,
            locator: "summary: 2.5 diameters from a side, which is midway between two holes; room for a drill that wanders \
                      assumed",
            mark: Mark::Quoted,
        }
    }

    fn evaluate(&self, analysis: &Analysis<'_>, outcomes: &mut Outcomes<'_>) {
        let boxes: Vec<[Point; 2]> = analysis.mounts.iter().map(bounds).collect();
        each_in_place(analysis, |held| {
            for (other, [low, high]) in
                analysis.mounts.iter().zip(&boxes).filter(|(other, _)| other.on != held.mount.on)
            {
                let Some(need) = needed(held.top, held.mount, other) else { continue };
                // Rows of pipes lie far apart: most pairs are settled by this.
                let (at, reach) = (held.around().at, need * NEAR);
                let inside = |at: Length, low: Length, high: Length| at > low - reach && at < high + reach;
                if inside(at.x, low.x, high.x) && inside(at.y, low.y, high.y) {
                    compare(held, other, need, outcomes);
                }
            }
        });
    }
}

fn compare(held: Held<'_>, other: &Mount<'_>, need: Length, outcomes: &mut Outcomes<'_>) {
    let apart = other.places.iter().map(|place| place.at.distance(held.around().at)).enumerate();
    let nearest = apart.reduce(|a, b| if b.1 < a.1 { b } else { a });
    let Some((nearest, apart)) = nearest.filter(|(_, apart)| *apart < need * NEAR) else { return };
    outcomes.compare(None, need / apart, || {
        let finding = Finding::compare(need, apart, Ratio::from(1.0), Basis::Typical);
        let both = [(held.mount.on, held.number), (other.on, nearest)];
        (Place::of(Part::Fixings(both), Some(held.around().at)), finding.term("c", need).term("s", apart))
    });
}

/// Two mounts of which a fixing of one stands too near to a fixing of the other.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TooNear {
    /// The mounts, each with the number of its fixing in its own list: of all pairs the one that lacks most.
    pub fixings: [(MountOn, usize); 2],
    /// How far apart their middles stand.
    pub apart: Length,
    /// How far apart they have to stand.
    pub needed: Length,
}

/// All mounts whose fixings stand too near to those of another, pair by pair.
#[must_use]
pub fn mounts_too_near(top: &Top) -> Vec<TooNear> {
    let all = mounts(top);
    let pairs = all.iter().enumerate().flat_map(|(index, one)| all[index + 1..].iter().map(move |other| (one, other)));
    pairs
        .filter_map(|(one, other)| {
            let needed = needed(top, one, other)?;
            let each = |mount: &Mount<'_>| mount.places.iter().map(|place| place.at).enumerate().collect::<Vec<_>>();
            let others = each(other);
            let pairs = each(one).into_iter().flat_map(|own| others.iter().map(move |&beside| (own, beside)));
            let all = pairs.map(|((own, at), (beside, there))| (at.distance(there), own, beside));
            let (apart, own, beside) = all.reduce(|a, b| if b.0 < a.0 { b } else { a })?;
            (apart < needed).then_some(TooNear { fixings: [(one.on, own), (other.on, beside)], apart, needed })
        })
        .collect()
}

/// How far apart the middles of two fixings have to be; none where neither has anything that the other could meet.
fn needed(top: &Top, one: &Mount<'_>, other: &Mount<'_>) -> Option<Length> {
    let fixings = [&one.fastened.fixing, &other.fastened.fixing];
    let through = |fixing: &Fixing| matches!(fixing.hold, Hold::ThroughBolt { .. });
    if one.near == other.near || fixings.iter().any(|fixing| through(fixing)) {
        let in_skin = fixings.map(|fixing| fixing.hole().map_or_else(Length::default, |_| fixing.diameter()));
        let on_skin = fixings.map(|fixing| fixing.footprint().unwrap_or_default());
        let tears = (pitch_needed(in_skin[0]) + pitch_needed(in_skin[1])) / 2.0;
        return Some(tears.max((on_skin[0] + on_skin[1]) / 2.0));
    }
    let [Some(one), Some(other)] = fixings.map(|fixing| fixing.hole()) else { return None };
    Some((one + other) / 2.0 + one.max(other) * top.criteria.conduit_clearance.value)
}

/// The least and the most of where the fixings of a mount stand.
fn bounds(mount: &Mount<'_>) -> [Point; 2] {
    let places = || mount.places.iter().map(|place| place.at);
    let low = places().reduce(|a, b| Point { x: a.x.min(b.x), y: a.y.min(b.y) });
    let high = places().reduce(|a, b| Point { x: a.x.max(b.x), y: a.y.max(b.y) });
    let none = Point { x: Length::default(), y: Length::default() };
    [low.unwrap_or(none), high.unwrap_or(none)]
}

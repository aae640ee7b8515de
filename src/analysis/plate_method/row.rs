//! What lifts the fixings of what the top stands on.

use uom::si::length::micrometer;

use crate::{
    analysis::mount::held_stretches,
    finite_element::Push,
    geometry::Point,
    top::{Carrier, Support},
    units::{Force, Length},
};

/// The fixings of a stretch of support: which share of the bed at each node hangs on which of them.
pub(super) struct Row {
    fixings: usize,
    /// Node, fixing, share of the node.
    shares: Vec<(usize, usize, f64)>,
}

impl Row {
    pub(super) fn new(support: &Support, pushes: &[Push]) -> Self {
        match support.carrier {
            Carrier::Pad(_) => Self::on_pad(support, pushes),
            Carrier::Pipe(_) | Carrier::Wall(_) => Self::along(support, pushes),
        }
    }

    /// Each node of a pad's bed hangs on the nearest fixing, on those that are as near in even shares.
    fn on_pad(pad: &Support, pushes: &[Push]) -> Self {
        let places = pad.fixing_places();
        let mut shares = Vec::new();
        for (node, push) in pushes.iter().enumerate() {
            let off = |place: &Point| place.distance(push.place);
            let Some(nearest) = places.iter().map(off).reduce(Length::min) else { continue };
            let hair = Length::new::<micrometer>(1.0);
            let near: Vec<usize> = (0..places.len()).filter(|k| off(&places[*k]) - nearest < hair).collect();
            let share = 1.0 / f64::from(u32::try_from(near.len()).unwrap_or(u32::MAX));
            shares.extend(near.into_iter().map(|fixing| (node, fixing, share)));
        }
        Self { fixings: places.len(), shares }
    }

    fn along(pipe: &Support, pushes: &[Push]) -> Self {
        let none = Self { fixings: 0, shares: Vec::new() };
        let (Some(fastened), Some(first), Some(last)) = (&pipe.fastened, pushes.first(), pushes.last()) else {
            return none;
        };
        let held = held_stretches(&pipe.along, &fastened.laid.along(&pipe.along));
        // A hole cuts a pipe into stretches, which count from their own starts.
        let [start, end] = [first, last].map(|push| pipe.along.place(push.place).along);
        let sign = if end < start { -1.0 } else { 1.0 };
        let mut shares = Vec::new();
        let mut before = Length::default();
        for (node, push) in pushes.iter().enumerate() {
            let [one, other] = [before, before + push.length].map(|along| start + along * sign);
            let (from, to) = (one.min(other), one.max(other));
            for (fixing, (low, high)) in held.iter().enumerate() {
                let common = to.min(*high) - from.max(*low);
                if common > Length::default() {
                    shares.push((node, fixing, (common / push.length).value));
                }
            }
            before += push.length;
        }
        Self { fixings: held.len(), shares }
    }

    /// Adds the pulls: what presses beside what lifts relieves no fixing, since it presses on the pipe itself.
    pub(super) fn add_pulls(&self, force: &dyn Fn(usize) -> Force, pulls: &mut Vec<Force>) {
        pulls.resize(self.fixings, Force::default());
        for &(node, fixing, share) in &self.shares {
            pulls[fixing] += (-force(node)).max(Force::default()) * share;
        }
    }
}

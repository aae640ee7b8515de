//! Against what sags are judged.

use super::layout::{Net, in_hull, middle};
use crate::{
    finite_element::{Judged, Sampler},
    geometry::Point,
    top::Top,
    units::Length,
};

/// Groups of sags: between pipes and of what hangs over, each against what does not move and against the pipes.
const BETWEEN: usize = 0;
const TIP: usize = 2;

impl Net {
    /// How the sag of each sample is judged: against what does not move, and against the pipes, which may sag themselves.
    pub(super) fn judged(&self, top: &Top, sampler: &Sampler) -> Vec<Vec<Judged>> {
        let held = self.held(top);
        let pipes: Vec<Point> = top.bed_lines().iter().flat_map(|(_, line)| line.along.points().to_vec()).collect();
        let clear = self.clear(top, &held);
        let judged = sampler.places().map(|(place, _)| {
            let near = self.to_support(top, place);
            let (group, over) = if in_hull(&held, place) {
                // Nearer to a support than the panel is deep a sag is the give of the bed below.
                let least = near.max(self.disc * 2.0);
                // The largest come first.
                let circle = clear.iter().find(|(middle, radius)| middle.distance(place) <= *radius);
                (BETWEEN, circle.map_or(least, |(_, radius)| least.max(*radius)) * 2.0)
            } else {
                (TIP, near.max(self.shortest_tip(top)))
            };
            let mut all = vec![Judged { group, against: [(0, 0.0); 2], over }];
            all.extend(self.against_pipes(top, place, !in_hull(&pipes, place), sampler));
            all
        });
        judged.collect()
    }

    /// Circles with nothing below them that bears, the largest first: the span at a place is as wide as the largest that
    /// holds it. Twice the way to the nearest support alone would shrink to nothing beside it, where the top still slopes.
    fn clear(&self, top: &Top, held: &[Point]) -> Vec<(Point, Length)> {
        let middles = self.mesh.triangles().iter().map(|corners| middle(&self.mesh, corners));
        let within = self.mesh.nodes().iter().copied().chain(middles).filter(|place| in_hull(held, *place));
        let mut clear: Vec<(Point, Length)> = within.map(|place| (place, self.to_support(top, place))).collect();
        clear.sort_by(|(_, a), (_, b)| b.value.total_cmp(&a.value));
        clear
    }

    /// The length up to which a tip is judged by millimetres, as its check does; no less than the depth of the panel.
    fn shortest_tip(&self, top: &Top) -> Length {
        let criteria = &top.criteria;
        let by_millimetres: Length = criteria.underfoot_sag_limit.value / criteria.tip_sag_limit.value;
        by_millimetres.max(self.disc * 2.0)
    }

    /// Against the nearest pipe for a tip; between two pipes, against the line that joins their nearest places.
    fn against_pipes(&self, top: &Top, place: Point, tip: bool, sampler: &Sampler) -> Option<Judged> {
        let mut near: Vec<(Length, usize)> = Vec::with_capacity(top.supports.len());
        for (number, pipe) in top.supports.iter().enumerate() {
            let stretches = self.stretches.iter().filter(|stretch| stretch.pipe == number);
            let corners = stretches.flat_map(|stretch| &stretch.corners);
            let off = |corner: &usize| self.mesh.nodes()[*corner].distance(place);
            let corner = corners.min_by(|a, b| off(a).value.total_cmp(&off(b).value))?;
            near.push((pipe.distance(place), sampler.at_corner(*corner)?));
        }
        near.sort_by(|(a, _), (b, _)| a.value.total_cmp(&b.value));
        let &(first, nearest) = near.first()?;
        // Beside a pipe a sag is the give of the bed below, not a slope.
        if first < self.disc {
            return None;
        }
        let judged = match near.get(1).filter(|_| !tip) {
            Some(&(second, other)) => {
                let over = first + second;
                let share = (second / over).value;
                Judged { group: BETWEEN + 1, against: [(nearest, share), (other, 1.0 - share)], over }
            }
            None => {
                let group = if tip { TIP + 1 } else { BETWEEN + 1 };
                let over = if tip { first.max(self.shortest_tip(top)) } else { first * 2.0 };
                Judged { group, against: [(nearest, 1.0), (0, 0.0)], over }
            }
        };
        Some(judged)
    }
}

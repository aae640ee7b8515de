//! Against what sags are judged.

use super::layout::{Net, hangs_over};
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
        let judged = sampler.places().map(|(place, _)| {
            let tip = hangs_over(top, place);
            let near = self.to_support(top, place);
            let over = if tip { near } else { near * 2.0 };
            let group = if tip { TIP } else { BETWEEN };
            let still = Judged { group, against: [(0, 0.0); 2], over, by_share: false };
            let mut all = vec![still];
            all.extend(self.against_pipes(top, place, tip, sampler));
            all
        });
        judged.collect()
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
                Judged { group: BETWEEN + 1, against: [(nearest, share), (other, 1.0 - share)], over, by_share: true }
            }
            None => {
                let group = if tip { TIP + 1 } else { BETWEEN + 1 };
                let over = if tip { first } else { first * 2.0 };
                Judged { group, against: [(nearest, 1.0), (0, 0.0)], over, by_share: true }
            }
        };
        Some(judged)
    }
}

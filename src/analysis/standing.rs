//! Where on a strip somebody can stand.

use super::hand::Ready;
use crate::{geometry::Point, units::Length};

/// Halvings of the way from a station that one can stand on to one that one cannot.
const HALVINGS: usize = 10;

impl Ready<'_> {
    /// Stations that somebody can stand on and, where the outline or a hole cuts the strip, how far one can get from them
    /// towards the next. All of them where there is none: a strip beside the top stands for the rim.
    pub(super) fn stood_on(&self, side: Length) -> Vec<Length> {
        let stations = &self.laid.stations;
        let can: Vec<bool> = stations.iter().map(|&at| self.can_stand(at, side)).collect();
        if !can.contains(&true) {
            return stations.clone();
        }
        let mut places = Vec::with_capacity(stations.len() + 2);
        for (k, &at) in stations.iter().enumerate() {
            if can[k] {
                places.push(at);
            }
            if let Some(&next) = stations.get(k + 1)
                && can[k] != can[k + 1]
            {
                let (mut on, mut off) = if can[k] { (at, next) } else { (next, at) };
                for _ in 0..HALVINGS {
                    let middle = (on + off) / 2.0;
                    if self.can_stand(middle, side) { on = middle } else { off = middle }
                }
                places.push(on);
            }
        }
        places
    }

    /// Whether the top lies below the middle of somebody's footprint; beside an end or a side of the rectangle round the top,
    /// and at the ends of the strip, that lies half of its side inside.
    pub(super) fn can_stand(&self, at: Length, side: Length) -> bool {
        let (line, outline, length) = (self.laid.line, &self.laid.top.outline, self.strip.length());
        let inside = |at: Length, size: Length| {
            let half = side.min(size) / 2.0;
            at.max(half).min(size - half)
        };
        let place = line.place(inside(at, length));
        let place = Point { x: inside(place.x, outline.length()), y: inside(place.y, outline.width()) };
        outline.within_by(place) > side * 0.25
    }
}

//! Which triangle holds a place: squares that list the triangles over them.

use super::plane::{Spot, turn};

/// A place farther outside a triangle than this share of its height is not held.
const ROUNDING: f64 = 1e-9;

/// Squares over a mesh, row by row.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Grid {
    corner: Spot,
    side: f64,
    counts: [usize; 2],
    over: Vec<Vec<usize>>,
}

impl Grid {
    /// About as many squares as triangles.
    pub(super) fn new(triangles: &[[Spot; 3]]) -> Self {
        let corners = || triangles.iter().flatten();
        let low = [0, 1].map(|i| corners().map(|spot| spot[i]).fold(f64::INFINITY, f64::min));
        let high = [0, 1].map(|i| corners().map(|spot| spot[i]).fold(f64::NEG_INFINITY, f64::max));
        let extent = [high[0] - low[0], high[1] - low[1]];
        #[expect(clippy::cast_precision_loss, reason = "a count of triangles")]
        let side = (extent[0] * extent[1] / triangles.len() as f64).sqrt();
        let mut grid = Self { corner: low, side, counts: [1, 1], over: Vec::new() };
        grid.counts = grid.square(high).map(|last| last + 1);
        grid.over = vec![Vec::new(); grid.counts[0] * grid.counts[1]];
        for (index, triangle) in triangles.iter().enumerate() {
            let first = grid.square([0, 1].map(|i| triangle.iter().map(|spot| spot[i]).fold(f64::INFINITY, f64::min)));
            let last =
                grid.square([0, 1].map(|i| triangle.iter().map(|spot| spot[i]).fold(f64::NEG_INFINITY, f64::max)));
            for row in first[1]..=last[1] {
                for column in first[0]..=last[0] {
                    grid.over[row * grid.counts[0] + column].push(index);
                }
            }
        }
        grid
    }

    /// Column and row; the nearest for a place off the grid.
    fn square(&self, spot: Spot) -> [usize; 2] {
        [0, 1].map(|i| {
            let steps = ((spot[i] - self.corner[i]) / self.side).floor().max(0.0);
            #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "whole, not below zero")]
            let steps = steps as usize;
            steps
        })
    }

    /// The triangle in which a place lies deepest; of two as good the first.
    pub(super) fn holding(&self, spot: Spot, corners: impl Fn(usize) -> [Spot; 3]) -> Option<usize> {
        if spot.iter().any(|x| x.is_nan()) {
            return None;
        }
        let [column, row] = self.square(spot);
        let column = column.min(self.counts[0] - 1);
        let row = row.min(self.counts[1] - 1);
        let mut found: Option<(f64, usize)> = None;
        for index in &self.over[row * self.counts[0] + column] {
            let [a, b, c] = corners(*index);
            let whole = turn([a, b, c]);
            let depth = [[a, b, spot], [b, c, spot], [c, a, spot]].map(turn).into_iter().fold(f64::INFINITY, f64::min);
            let depth = depth / whole;
            if depth >= -ROUNDING && found.is_none_or(|(deepest, _)| depth > deepest) {
                found = Some((depth, *index));
            }
        }
        found.map(|(_, index)| index)
    }
}

//! Places of several things about one middle.

use std::f64::consts::TAU;

use super::Point;
use crate::units::Length;

/// Places evenly on a circle, the first on the x axis.
#[must_use]
pub fn circle(count: usize, diameter: Length) -> Vec<Point> {
    let radius: Length = diameter / 2.0;
    (0..count)
        .map(|index| {
            #[allow(clippy::cast_precision_loss, reason = "a count of fixings")]
            let (sin, cos) = (TAU * index as f64 / count as f64).sin_cos();
            Point { x: radius * cos, y: radius * sin }
        })
        .collect()
}

/// Places on a grid about its middle, row by row.
#[must_use]
pub fn grid(count: [usize; 2], pitch: [Length; 2]) -> Vec<Point> {
    #[allow(clippy::cast_precision_loss, reason = "a count of fixings")]
    let at = |index: usize, axis: usize| pitch[axis] * (index as f64 - (count[axis] as f64 - 1.0) / 2.0);
    (0..count[1]).flat_map(|row| (0..count[0]).map(move |column| Point { x: at(column, 0), y: at(row, 1) })).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use uom::si::length::{meter, millimeter};

    #[test]
    fn four_on_a_circle_stand_on_the_axes() {
        let at = circle(4, Length::new::<meter>(0.2));
        let xy: Vec<(f64, f64)> = at.iter().map(|p| (p.x.get::<millimeter>(), p.y.get::<millimeter>())).collect();
        for ((x, y), (a, b)) in xy.into_iter().zip([(100.0, 0.0), (0.0, 100.0), (-100.0, 0.0), (0.0, -100.0)]) {
            assert!((x - a).abs() < 1e-9 && (y - b).abs() < 1e-9);
        }
    }

    #[test]
    fn a_grid_lies_about_its_middle() {
        let pitch = [Length::new::<millimeter>(60.0), Length::new::<millimeter>(80.0)];
        let at = grid([3, 2], pitch);
        assert_eq!(at.len(), 6);
        assert!((at[0].x.get::<millimeter>() + 60.0).abs() < 1e-9 && (at[0].y.get::<millimeter>() + 40.0).abs() < 1e-9);
        let sum: Length = at.iter().map(|place| place.x + place.y).sum();
        assert!(sum.get::<millimeter>().abs() < 1e-9);
    }
}

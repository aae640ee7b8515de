//! What a footing presses on, in plan.

use std::f64::consts::PI;

use super::Point;
use crate::units::{Area, Length};

/// Places that stand for the border of a footing, at even angles from its middle: at 45 degrees a corner.
const ALONG_BORDER: u32 = 64;

/// The shape of a footing in plan, about its middle.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Foot {
    /// A rectangle square to the top.
    Rectangle {
        /// Along the length of the top.
        length: Length,
        /// Along its width.
        width: Length,
    },
    /// A disc.
    Disc {
        /// Its diameter.
        diameter: Length,
    },
}

impl Foot {
    /// Area in plan.
    ///
    /// ```
    /// use skinspan::{geometry::Foot, units::Length};
    /// use uom::si::{area::square_meter, length::meter};
    /// let disc = Foot::Disc { diameter: Length::new::<meter>(0.2) };
    /// assert!((disc.area().get::<square_meter>() - 0.031_416).abs() < 1e-6); // π 0.2²/4
    /// ```
    #[must_use]
    pub fn area(&self) -> Area {
        match *self {
            Self::Rectangle { length, width } => length * width,
            Self::Disc { diameter } => PI / 4.0 * diameter * diameter,
        }
    }

    /// Length round it.
    #[must_use]
    pub fn perimeter(&self) -> Length {
        match *self {
            Self::Rectangle { length, width } => 2.0 * (length + width),
            Self::Disc { diameter } => PI * diameter,
        }
    }

    /// Size along the length and along the width of the top.
    #[must_use]
    pub const fn sizes(&self) -> [Length; 2] {
        match *self {
            Self::Rectangle { length, width } => [length, width],
            Self::Disc { diameter } => [diameter, diameter],
        }
    }

    /// Places all along its border, from its middle, the corners among them.
    #[must_use]
    pub fn border(&self) -> Vec<Point> {
        let all = (0..ALONG_BORDER).map(|k| 2.0 * PI * f64::from(k) / f64::from(ALONG_BORDER));
        let [length, width] = self.sizes();
        let places = all.map(|angle| {
            let (sin, cos) = angle.sin_cos();
            let out = match self {
                Self::Rectangle { .. } => sin.abs().max(cos.abs()),
                Self::Disc { .. } => 1.0,
            };
            Point { x: length * (0.5 * cos / out), y: width * (0.5 * sin / out) }
        });
        places.collect()
    }

    /// How far a place, from the middle, lies within it, to the nearest of its edges; below zero beside it.
    ///
    /// ```
    /// use skinspan::{geometry::{Foot, Point}, units::Length};
    /// use uom::si::length::millimeter;
    /// let mm = Length::new::<millimeter>;
    /// let place = Point { x: mm(30.0), y: mm(-40.0) };
    /// let within = |foot: Foot| foot.within_by(place).get::<millimeter>();
    /// // 50 mm from the middle; 70 mm from the end and 5 mm from the side.
    /// assert!((within(Foot::Disc { diameter: mm(120.0) }) - 10.0).abs() < 1e-9);
    /// assert!((within(Foot::Rectangle { length: mm(200.0), width: mm(90.0) }) - 5.0).abs() < 1e-9);
    /// ```
    #[must_use]
    pub fn within_by(&self, place: Point) -> Length {
        match *self {
            Self::Rectangle { length, width } => {
                let (end, side): (Length, Length) = (length / 2.0 - place.x.abs(), width / 2.0 - place.y.abs());
                end.min(side)
            }
            Self::Disc { diameter } => {
                let from_middle: Length = place.x.hypot(place.y);
                diameter / 2.0 - from_middle
            }
        }
    }

    /// Whether a place, from the middle, lies on it, with some of it on every side.
    #[must_use]
    pub fn holds(&self, place: Point) -> bool {
        self.within_by(place) > Length::default()
    }
}

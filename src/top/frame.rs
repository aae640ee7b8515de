//! What the top stands on: pipes, walls and pads.

use super::Fastened;
use crate::{
    geometry::{Axis, Foot, Point, Polyline},
    units::Length,
};

/// One support of the top.
#[derive(Clone, Debug, PartialEq)]
pub struct Support {
    /// Name in the report.
    pub name: String,
    /// Its line in plan; of a pad, through its middle, along its longer side.
    pub along: Polyline,
    /// Width across that line of the bearing between what carries and the inner skin: a flat tab or seat, not the diameter.
    pub seat: Length,
    /// What carries.
    pub carrier: Carrier,
    /// What holds the top on it, where the file says it.
    pub fastened: Option<Fastened>,
}

/// What carries the top.
#[derive(Clone, Debug, PartialEq)]
pub enum Carrier {
    /// A pipe of the frame.
    Pipe(Pipe),
    /// A wall, on whose edge the top is seated: a bulkhead, a coaming, the side of a house. It does not give.
    Wall(WallEdge),
    /// A short seat at one place, which does not give.
    Pad(Pad),
}

/// A pipe on its posts. The hand method takes it as rigid, and so does the plate method where wall, alloy or posts are not
/// given.
#[derive(Clone, Debug, PartialEq)]
pub struct Pipe {
    /// Outside diameter.
    pub outside: Length,
    /// Wall thickness, where given.
    pub wall: Option<Length>,
    /// Alloy, where given.
    pub alloy: Option<crate::material::Alloy>,
    /// Stations along the pipe where a post stands.
    pub posts: Vec<Length>,
}

/// How the top is held at the edge of a wall.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum WallEdge {
    /// It turns about the edge.
    Hinged,
    /// It does not turn there: bonded down, or between flanges.
    Clamped,
}

/// The bearing of a pad.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pad {
    /// Its middle.
    pub at: Point,
    /// Its shape.
    pub foot: Foot,
}

/// A line on which the top is bedded.
#[derive(Clone, Debug, PartialEq)]
pub struct BedLine {
    /// The line.
    pub along: Polyline,
    /// Width of the bearing across it.
    pub seat: Length,
}

impl Pipe {
    /// Least distance of its first post from its last, in its diameters, so that it counts as a beam: one is longer than
    /// thick.
    pub const POSTS_APART: f64 = 4.0;

    /// Whether its posts hold it as a beam: two that stand apart. Posts that stand together hold it like one.
    #[must_use]
    pub fn posts_hold(&self) -> bool {
        let first = self.posts.iter().copied().reduce(Length::min).unwrap_or_default();
        let last = self.posts.iter().copied().fold(Length::default(), Length::max);
        self.posts.len() >= 2 && last - first >= self.outside * Self::POSTS_APART
    }
}

impl Pad {
    /// Places all along its border, in plan.
    #[must_use]
    pub fn border(&self) -> Vec<Point> {
        let place = |from: Point| Point { x: self.at.x + from.x, y: self.at.y + from.y };
        self.foot.border().into_iter().map(place).collect()
    }

    /// Lines along its longer side and across, through its middle. Each is as long as the pad, and as wide as makes its
    /// area.
    ///
    /// # Errors
    ///
    /// The points of a line that has no length.
    fn lines(&self) -> Result<[BedLine; 2], Vec<Point>> {
        let [length, width] = self.foot.sizes();
        let line = |dx: Length, dy: Length, side: Length| {
            let [from, to] = [-0.5, 0.5].map(|end| Point { x: self.at.x + dx * end, y: self.at.y + dy * end });
            Polyline::new(vec![from, to]).map(|along| BedLine { along, seat: self.foot.area() / side })
        };
        let none = Length::default();
        let (lengthwise, across) = (line(length, none, length)?, line(none, width, width)?);
        Ok(if width > length { [across, lengthwise] } else { [lengthwise, across] })
    }
}

impl Support {
    /// A pad.
    ///
    /// # Errors
    ///
    /// The points of its line, where it has no length.
    pub fn pad(name: String, pad: Pad, fastened: Option<Fastened>) -> Result<Self, Vec<Point>> {
        let [BedLine { along, seat }, _] = pad.lines()?;
        Ok(Self { name, along, seat, carrier: Carrier::Pad(pad), fastened })
    }

    /// The pipe, where it is one.
    #[must_use]
    pub const fn pipe(&self) -> Option<&Pipe> {
        match &self.carrier {
            Carrier::Pipe(pipe) => Some(pipe),
            Carrier::Wall(_) | Carrier::Pad(_) => None,
        }
    }

    /// The same, to change it.
    pub const fn pipe_mut(&mut self) -> Option<&mut Pipe> {
        match &mut self.carrier {
            Carrier::Pipe(pipe) => Some(pipe),
            Carrier::Wall(_) | Carrier::Pad(_) => None,
        }
    }

    /// Stations where a post stands.
    #[must_use]
    pub fn posts(&self) -> &[Length] {
        self.pipe().map_or(&[], |pipe| &pipe.posts)
    }

    /// Whether it is a pad.
    #[must_use]
    pub const fn is_pad(&self) -> bool {
        matches!(self.carrier, Carrier::Pad(_))
    }

    /// Whether the top cannot turn on it, bonded down or between flanges.
    #[must_use]
    pub const fn clamps(&self) -> bool {
        matches!(self.carrier, Carrier::Wall(WallEdge::Clamped))
    }

    /// One word for what carries.
    #[must_use]
    pub const fn word(&self) -> &'static str {
        match self.carrier {
            Carrier::Pipe(_) => "pipe",
            Carrier::Wall(_) => "wall",
            Carrier::Pad(_) => "pad",
        }
    }

    /// How far it reaches across its line: a pipe's diameter, a seat's width.
    #[must_use]
    pub fn thickness(&self) -> Length {
        self.pipe().map_or(self.seat, |pipe| pipe.outside)
    }

    /// Lines on which the top is bedded: one, two that cross on a pad.
    #[must_use]
    pub fn bed_lines(&self) -> Vec<BedLine> {
        let one = || vec![BedLine { along: self.along.clone(), seat: self.seat }];
        match &self.carrier {
            Carrier::Pipe(_) | Carrier::Wall(_) => one(),
            Carrier::Pad(pad) => pad.lines().map_or_else(|_| one(), Vec::from),
        }
    }

    /// Width of the bearing along an axis, on a pad; elsewhere across its line.
    #[must_use]
    pub fn seat_along(&self, axis: Axis) -> Length {
        let Carrier::Pad(pad) = &self.carrier else { return self.seat };
        let [length, width] = pad.foot.sizes();
        match axis {
            Axis::X => pad.foot.area() / width,
            Axis::Y => pad.foot.area() / length,
        }
    }

    /// Distance of a place from the nearest of those lines.
    #[must_use]
    pub fn distance(&self, place: Point) -> Length {
        let own = self.along.distance(place);
        if self.is_pad() { self.bed_lines().iter().map(|line| line.along.distance(place)).fold(own, Length::min) } else { own }
    }

    /// Places of the fixings that hold the top on it.
    #[must_use]
    pub fn fixing_places(&self) -> Vec<Point> {
        let Some(fastened) = &self.fastened else { return Vec::new() };
        match &self.carrier {
            Carrier::Pad(pad) => fastened.laid.round(pad.at),
            Carrier::Pipe(_) | Carrier::Wall(_) => fastened.laid.along(&self.along),
        }
    }
}

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
#[expect(clippy::large_enum_variant, reason = "a handful of supports")]
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
    /// Width of the bearing across it that it stands for.
    pub seat: Length,
}

impl Pipe {
    /// Least distance of its first post from its last, in its diameters, so that it counts as a beam: one is longer than
    /// thick.
    pub const POSTS_APART: f64 = 4.0;

    /// Whether its posts hold it as a beam.
    #[must_use]
    pub fn posts_hold(&self) -> bool {
        self.is_held_at(&self.posts)
    }

    /// Whether places along it hold it as a beam: two that are apart. Those that are close together hold it like one.
    #[must_use]
    pub fn is_held_at(&self, places: &[Length]) -> bool {
        let first = places.iter().copied().reduce(Length::min).unwrap_or_default();
        let last = places.iter().copied().fold(Length::default(), Length::max);
        places.len() >= 2 && last - first >= self.outside * Self::POSTS_APART
    }

    /// What the file would have to give so that it bends on its posts; nothing where it does.
    #[must_use]
    pub fn missing(&self) -> Vec<&'static str> {
        let apart = self.posts_hold();
        let posts = if self.posts.len() < 2 { "two `posts` or more" } else { "two `posts` that stand well apart" };
        let all = [("`wall`", self.wall.is_some()), ("`alloy`", self.alloy.is_some()), (posts, apart)];
        all.into_iter().filter(|(_, given)| !given).map(|(key, _)| key).collect()
    }
}

impl Pad {
    /// Places all along its border, in plan.
    #[must_use]
    pub fn border(&self) -> Vec<Point> {
        let place = |from: Point| Point { x: self.at.x + from.x, y: self.at.y + from.y };
        self.foot.border().into_iter().map(place).collect()
    }

    /// Sides of the rectangle that it presses as, along the length of the top and across: a disc as the square of its area.
    fn sides(&self) -> [Length; 2] {
        match self.foot {
            Foot::Rectangle { .. } => self.foot.sizes(),
            Foot::Disc { .. } => [self.foot.area().sqrt(); 2],
        }
    }

    /// The line through its middle along its longer side, so far to the left of it; and the other side.
    fn line(&self, share_off: f64) -> Result<(Polyline, Length), Vec<Point>> {
        let [length, width] = self.sides();
        let end = |share: f64| {
            let (x, y) = if width > length { (-share_off, share) } else { (share, share_off) };
            Point { x: self.at.x + length * x, y: self.at.y + width * y }
        };
        Ok((Polyline::new(vec![end(-0.5), end(0.5)])?, length.min(width)))
    }
}

/// Where two points across a pad stand for all of its width, from its middle, in widths: both bed and turn as it does (Gauss).
const TWO_POINTS: f64 = 0.288_675_134_594_812_9;

impl Support {
    /// A pad.
    ///
    /// # Errors
    ///
    /// The points of its line, where it has no length.
    pub fn pad(name: String, pad: Pad, fastened: Option<Fastened>) -> Result<Self, Vec<Point>> {
        let (along, seat) = pad.line(0.0)?;
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

    /// Lines on which the top is bedded: one; on a pad two side by side, which bed and turn as all of it does.
    #[must_use]
    pub fn bed_lines(&self) -> Vec<BedLine> {
        let one = BedLine { along: self.along.clone(), seat: self.seat };
        let Carrier::Pad(pad) = &self.carrier else { return vec![one] };
        let sides = [-TWO_POINTS, TWO_POINTS].into_iter().flat_map(|off| pad.line(off));
        sides.map(|(along, seat)| BedLine { along, seat: seat / 2.0 }).collect()
    }

    /// Width of the bearing along an axis, on a pad; elsewhere across its line.
    #[must_use]
    pub fn seat_along(&self, axis: Axis) -> Length {
        match &self.carrier {
            Carrier::Pad(pad) => pad.sides()[axis.index()],
            Carrier::Pipe(_) | Carrier::Wall(_) => self.seat,
        }
    }

    /// Distance of a place from the nearest of those lines.
    #[must_use]
    pub fn distance(&self, place: Point) -> Length {
        let to_lines = || self.bed_lines().into_iter().map(|line| line.along.distance(place)).reduce(Length::min);
        let of_pad = if self.is_pad() { to_lines() } else { None };
        of_pad.unwrap_or_else(|| self.along.distance(place))
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

//! From which side one looks at the plan, and where on the paper a place of it lies.

use uom::si::length::millimeter;

use crate::{geometry::Point, section::Skin, units::Angle};

/// The face of the top that one looks at.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Face {
    /// The outer skin, from the sky down.
    Above,
    /// The inner skin, from below: the drawing turned over.
    Below,
}

/// One end of the length, or one side of the width.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum End {
    /// Where places are counted from.
    Start,
    /// The other.
    Far,
}

/// How one looks at a plan.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct View {
    /// The face that lies towards one.
    pub face: Face,
    /// The end of the length where the bow is, where known.
    pub bow: Option<End>,
    /// The side of the width that is to port, where known.
    pub port: Option<End>,
}

impl Face {
    /// The skin that one looks at.
    pub(super) const fn skin(self) -> Skin {
        match self {
            Self::Above => Skin::Outer,
            Self::Below => Skin::Inner,
        }
    }

    pub(super) const fn words(self) -> &'static str {
        match self {
            Self::Above => "seen from above, the outer skin towards you",
            Self::Below => "seen from below, the inner skin towards you",
        }
    }
}

impl End {
    /// As the command line has it.
    pub(super) const fn key(self) -> &'static str {
        match self {
            Self::Start => "start",
            Self::Far => "end",
        }
    }

    /// Which side of the paper an end of the length is on.
    pub(super) const fn on_paper(self) -> &'static str {
        match self {
            Self::Start => "left",
            Self::Far => "right",
        }
    }

    pub(super) const fn opposite(self) -> Self {
        match self {
            Self::Start => Self::Far,
            Self::Far => Self::Start,
        }
    }
}

/// A place on the paper, from the datum to the right and upwards.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct OnPaper {
    pub(super) u: f64,
    pub(super) v: f64,
}

impl View {
    /// Whether the places of the file, *x* to the right and *y* upwards, show the top from above: with the bow to the right
    /// port lies up. Where not both are said, it counts as such, as plans are drawn.
    const fn file_is_from_above(self) -> bool {
        match (self.bow, self.port) {
            (Some(bow), Some(port)) => matches!((bow, port), (End::Start, End::Start) | (End::Far, End::Far)),
            _ => true,
        }
    }

    /// Whether the width runs down the paper.
    pub(super) const fn turned_over(self) -> bool {
        self.file_is_from_above() != matches!(self.face, Face::Above)
    }

    /// Where the bow is, said or following from where port is.
    pub(super) const fn bow_end(self) -> Option<End> {
        match (self.bow, self.port) {
            (Some(bow), _) => Some(bow),
            (None, port) => port,
        }
    }

    /// The side that is to port, said or following from where the bow is.
    pub(super) const fn port_side(self) -> Option<End> {
        match (self.port, self.bow) {
            (Some(port), _) => Some(port),
            (None, bow) => bow,
        }
    }

    /// Which side of the paper is to port, where known.
    pub(super) fn port_on_paper(self) -> Option<&'static str> {
        let up = (self.port_side()? == End::Far) != self.turned_over();
        Some(if up { "upper" } else { "lower" })
    }

    /// How the drawing lies, in words.
    pub(super) fn words(self) -> String {
        let y = if self.turned_over() { "downwards" } else { "upwards" };
        let axes = format!("{}: x to the right along the length, y {y} across.", self.face.words());
        match (self.bow_end(), self.port_on_paper()) {
            (Some(bow), Some(port)) => format!("{axes} Bow on the {}, port on the {port} side.", bow.on_paper()),
            _ => format!(
                "{axes} The file does not say where the bow is; its places count as seen from above with x to the right and y \
                 upwards. `--bow` and `--port` say otherwise."
            ),
        }
    }

    pub(super) fn place(self, at: Point) -> OnPaper {
        let (u, v) = (at.x.get::<millimeter>(), at.y.get::<millimeter>());
        OnPaper { u, v: if self.turned_over() { -v } else { v } }
    }

    /// Degrees anticlockwise on the paper.
    pub(super) fn degrees(self, angle: Angle) -> f64 {
        let degrees = angle.get::<uom::si::angle::degree>();
        let turned = if self.turned_over() { -degrees } else { degrees };
        // Straight down reads like straight up.
        if (turned + 90.0).abs() < 1e-6 { 90.0 } else { turned }
    }

    /// The bulge of an arc as it turns on the paper.
    pub(super) fn bulge(self, bulge: crate::units::Ratio) -> f64 {
        let bulge = bulge.get::<uom::si::ratio::ratio>();
        if self.turned_over() { -bulge } else { bulge }
    }
}

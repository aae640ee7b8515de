//! From which side one looks at the plan, and where on the paper a place of it lies.

use uom::si::length::millimeter;

use crate::{geometry::Point, section::Skin, top::Forward, units::Angle};

/// The face of the top that one looks at.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Face {
    /// The outer skin, from the sky down.
    Above,
    /// The inner skin, from below: the drawing turned over.
    Below,
}

/// How one looks at a plan.
#[derive(Clone, Copy, Debug)]
pub(super) struct View {
    /// The face that lies towards one.
    pub(super) face: Face,
    /// Where the bow lies.
    pub(super) bow: Forward,
    /// Whether the file says where the bow lies.
    pub(super) said: bool,
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

/// A place on the paper, from the datum to the right and upwards.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct OnPaper {
    pub(super) u: f64,
    pub(super) v: f64,
}

impl OnPaper {
    /// The same as a pair.
    pub(super) const fn pair(self) -> [f64; 2] {
        [self.u, self.v]
    }
}

impl View {
    /// Whether the width runs down the paper.
    pub(super) const fn turned_over(self) -> bool {
        matches!(self.face, Face::Below)
    }

    /// Which side of the paper is to port: with the bow to the right the upper one, as seen from above.
    const fn port_on_paper(self) -> &'static str {
        let upper = matches!(self.bow, Forward::Right) != self.turned_over();
        if upper { "upper" } else { "lower" }
    }

    /// How the drawing lies, in words.
    pub(super) fn words(self) -> String {
        let y = if self.turned_over() { "downwards" } else { "upwards" };
        let taken = if self.said { "" } else { " (taken so: the file says no `forward`)" };
        format!(
            "{}: x to the right along the length, y {y} across. Bow on the {}, port on the {} side{taken}.",
            self.face.words(),
            self.bow.word(),
            self.port_on_paper()
        )
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

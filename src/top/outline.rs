//! The outline of the top, its holes and its edge.

use uom::si::length::millimeter;

use crate::{
    geometry::{Axis, Contour, InvalidContour, Point, Polyline},
    units::{Area, Length, Volume},
};

/// A hole through the top.
#[derive(Clone, Debug, PartialEq)]
pub struct Hole {
    /// Name for messages and the report.
    pub name: String,
    /// Its rim.
    pub contour: Contour,
}

/// Why holes do not fit a top; places as they were given.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum InvalidHole {
    /// It reaches over the rim of the top, or lies beside it.
    Beyond {
        /// Which, from zero.
        hole: usize,
        /// A place where it does.
        at: Point,
    },
    /// It meets another, or one lies in the other.
    Meets {
        /// Which, from zero.
        hole: usize,
        /// The other, before it.
        other: usize,
        /// A place where it does.
        at: Point,
    },
}

/// The outline of a top in plan, with its holes. The rectangle round it begins at the origin.
#[derive(Clone, Debug, PartialEq)]
pub struct Outline {
    contour: Contour,
    holes: Vec<Hole>,
    length: Length,
    width: Length,
    corner_radii: Option<[Length; 4]>,
}

impl Outline {
    /// An outline with holes, all moved so that the rectangle round it begins at the origin.
    ///
    /// # Errors
    ///
    /// [`InvalidHole`] where a hole does not lie in the top by itself.
    pub fn new(contour: &Contour, holes: Vec<Hole>) -> Result<Self, InvalidHole> {
        for (index, hole) in holes.iter().enumerate() {
            let first = hole.contour.vertices()[0].at;
            let outside = || (!contour.holds(first)).then_some(first);
            if let Some(at) = contour.meets(&hole.contour).or_else(outside) {
                return Err(InvalidHole::Beyond { hole: index, at });
            }
            for (other, before) in holes[..index].iter().enumerate() {
                let inside = || before.contour.holds(first).then_some(first);
                let around = before.contour.vertices()[0].at;
                let outside = || hole.contour.holds(around).then_some(around);
                if let Some(at) = hole.contour.meets(&before.contour).or_else(inside).or_else(outside) {
                    return Err(InvalidHole::Meets { hole: index, other, at });
                }
            }
        }
        let [low, high] = contour.bounds();
        let by = Point { x: -low.x, y: -low.y };
        let contour = contour.moved(by);
        let (length, width) = (high.x - low.x, high.y - low.y);
        let corner_radii = corner_radii(&contour, length, width);
        let holes = holes.into_iter().map(|hole| Hole { contour: hole.contour.moved(by), ..hole }).collect();
        Ok(Self { contour, holes, length, width, corner_radii })
    }

    /// A rectangle with rounded corners: at the origin first, then anticlockwise.
    ///
    /// ```
    /// use skinspan::{top::Outline, units::Length};
    /// use uom::si::{area::square_meter, length::meter};
    /// let m = Length::new::<meter>;
    /// let outline = Outline::rectangle(m(3.0), m(2.0), [m(0.5); 4])?;
    /// // 6 − (4 − π) · 0.25 = 5.7854 m²
    /// assert!((outline.area().get::<square_meter>() - 5.7854).abs() < 1e-4);
    /// # Ok::<(), skinspan::geometry::InvalidContour>(())
    /// ```
    ///
    /// # Errors
    ///
    /// As [`Contour::polygon`].
    pub fn rectangle(length: Length, width: Length, radii: [Length; 4]) -> Result<Self, InvalidContour> {
        let contour = Contour::rectangle(length, width, radii)?;
        Ok(Self { contour, holes: Vec::new(), length, width, corner_radii: Some(radii) })
    }

    /// The line round it.
    #[must_use]
    pub const fn contour(&self) -> &Contour {
        &self.contour
    }

    /// Its holes.
    #[must_use]
    pub fn holes(&self) -> &[Hole] {
        &self.holes
    }

    /// Fore and aft, over all.
    #[must_use]
    pub const fn length(&self) -> Length {
        self.length
    }

    /// Across the boat, over all.
    #[must_use]
    pub const fn width(&self) -> Length {
        self.width
    }

    /// The size in a direction, over all.
    #[must_use]
    pub const fn size(&self, axis: Axis) -> Length {
        match axis {
            Axis::X => self.length,
            Axis::Y => self.width,
        }
    }

    /// The radii of its corners, at the origin first, then anticlockwise, where it is a rectangle with rounded corners to
    /// a millimetre, however it was described.
    #[must_use]
    pub const fn corner_radii(&self) -> Option<[Length; 4]> {
        self.corner_radii
    }

    /// Area in plan, less its holes.
    #[must_use]
    pub fn area(&self) -> Area {
        self.holes.iter().fold(self.contour.area(), |area, hole| area - hole.contour.area())
    }

    /// The centre of that area.
    #[must_use]
    pub fn centre(&self) -> Point {
        let moment = |axis: Axis| -> Volume {
            let of = |contour: &Contour| -> Volume { contour.area() * contour.centre().along(axis) };
            self.holes.iter().fold(of(&self.contour), |sum, hole| sum - of(&hole.contour))
        };
        let area = self.area();
        Point { x: moment(Axis::X) / area, y: moment(Axis::Y) / area }
    }

    /// Length of the rim, that of the holes with it.
    #[must_use]
    pub fn perimeter(&self) -> Length {
        self.holes.iter().fold(self.contour.perimeter(), |length, hole| length + hole.contour.perimeter())
    }

    /// The centre of the rim, as of a border of even weight.
    #[must_use]
    pub fn rim_centre(&self) -> Point {
        let moment = |axis: Axis| -> Area {
            let of = |contour: &Contour| -> Area { contour.perimeter() * contour.line_centre().along(axis) };
            self.holes.iter().fold(of(&self.contour), |sum, hole| sum + of(&hole.contour))
        };
        let length = self.perimeter();
        Point { x: moment(Axis::X) / length, y: moment(Axis::Y) / length }
    }

    /// Whether a place lies within the line round the top or on it; the holes are not asked.
    #[must_use]
    pub fn holds(&self, place: Point) -> bool {
        self.contour.holds(place)
    }

    /// A place where a line leaves the top; the holes are not asked.
    #[must_use]
    pub fn left_by(&self, line: &Polyline) -> Option<Point> {
        self.contour.left_by(line)
    }

    /// The first of its holes that a line enters, and a place of the line in it.
    #[must_use]
    pub fn hole_on(&self, line: &Polyline) -> Option<(&Hole, Point)> {
        self.holes.iter().find_map(|hole| hole.contour.entered_by(line).map(|place| (hole, place)))
    }

    /// The hole that a place lies in.
    #[must_use]
    pub fn hole_at(&self, place: Point) -> Option<&Hole> {
        self.holes.iter().find(|hole| hole.contour.within_by(place) > Length::default())
    }

    /// How far a place lies within the panel, to the nearest point of a rim, that of a hole too; below zero outside and in
    /// a hole.
    ///
    /// ```
    /// use skinspan::{geometry::{Contour, Point}, top::{Hole, Outline}, units::Length};
    /// use uom::si::length::meter;
    /// let m = Length::new::<meter>;
    /// let point = |x: f64, y: f64| Point { x: m(x), y: m(y) };
    /// let rectangle = Contour::rectangle(m(3.0), m(2.0), [m(0.5); 4]).expect("corners that fit");
    /// let rim = Contour::circle(point(2.0, 1.0), m(0.6)).expect("a circle");
    /// let hole = Hole { name: "hatch".to_owned(), contour: rim };
    /// let outline = Outline::new(&rectangle, vec![hole]).expect("a hole in the top");
    /// // 0.7 m from the rim of the top, 0.4 m from that of the hole; 0.1 m deep in the hole.
    /// assert!((outline.within_by(point(2.0, 0.3)).get::<meter>() - 0.3).abs() < 1e-12);
    /// assert!((outline.within_by(point(1.3, 1.0)).get::<meter>() - 0.4).abs() < 1e-12);
    /// assert!((outline.within_by(point(2.2, 1.0)).get::<meter>() + 0.1).abs() < 1e-12);
    /// ```
    #[must_use]
    pub fn within_by(&self, place: Point) -> Length {
        let holes = self.holes.iter().map(|hole| -hole.contour.within_by(place));
        holes.fold(self.contour.within_by(place), Length::min)
    }

    /// The outline with a strip taken off at both ends of a direction; none where it is no rounded rectangle, or where a
    /// corner or a hole does not fit any more.
    #[must_use]
    pub fn trimmed(&self, axis: Axis, near: Length, far: Length) -> Option<Self> {
        let (mut size, mut by) = ([self.length, self.width], [Length::default(); 2]);
        size[axis.index()] -= near + far;
        by[axis.index()] -= near;
        let contour = Contour::rectangle(size[0], size[1], self.corner_radii?).ok()?;
        let by = Point { x: by[0], y: by[1] };
        let holes = self.holes.iter().map(|hole| Hole { name: hole.name.clone(), contour: hole.contour.moved(by) });
        Self::new(&contour, holes.collect()).ok()
    }
}

/// The radii of the corners of a rectangle from the origin that a contour is, to a millimetre.
fn corner_radii(contour: &Contour, length: Length, width: Length) -> Option<[Length; 4]> {
    let zero = Length::default();
    let near = Length::new::<millimeter>(1.0);
    // A corner lies outside its arc by (√2 − 1) r.
    let radius = |(x, y): (Length, Length)| {
        let radius = -contour.within_by(Point { x, y }) / (std::f64::consts::SQRT_2 - 1.0);
        if radius < near { zero } else { radius.min(0.5 * length.min(width)) }
    };
    let radii = [(zero, zero), (length, zero), (length, width), (zero, width)].map(radius);
    let rectangle = Contour::rectangle(length, width, radii).ok()?;
    let along = |one: &Contour, other: &Contour| {
        one.flattened(near).into_iter().all(|place| other.within_by(place).abs() <= near)
    };
    (along(contour, &rectangle) && along(&rectangle, contour)).then_some(radii)
}

/// The border where the core is cut back and filled.
#[derive(Clone, Debug, PartialEq)]
pub struct Edge {
    /// How far the core is cut back.
    pub setback: Length,
    /// What fills it.
    pub fill: crate::material::Filler,
}

//! A top drawn in plan: shapes by layer in their true places and sizes, and the fixings one by one. No paper, no scale, no
//! text but names: whoever prints it decides those.
//!
//! Places are those of the design file: along the length, across the width, from the corner of the rectangle round the
//! outline where both are zero.

mod around;
mod cut;
mod frame;
mod gear;
mod inlay;
mod mark;
mod measure;
mod panel;
mod shape;

pub use cut::{Crossed, Cut, Filled, Run};
pub use mark::{FixingMark, InBand};
pub use shape::{Dimension, Item, Label, Line, LineKind, Shape};

use crate::{analysis::mounts, top::Top, units::Length};

/// What one layer shows.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum LayerKind {
    /// The line to which the panel is laid up, with what is trimmed off.
    Moulded,
    /// The finished rim.
    Outline,
    /// Rims of holes through the top.
    Openings,
    /// Where the core ends and its filling begins.
    CoreEdge,
    /// The middle of the top, along and across.
    Middle,
    /// Solid boards in the core.
    Backings,
    /// Tubes in the core.
    Conduits,
    /// Bands beside conduits in which no hole has its middle.
    NoDrill,
    /// Pipes below: middle, sides and seat.
    Pipes,
    /// Posts of the pipes.
    Posts,
    /// Walls and pads below: middle and seat.
    Seats,
    /// What gear stands on.
    Footings,
    /// Where fixings are drilled.
    Fixings,
    /// Sizes over all.
    Dimensions,
}

impl LayerKind {
    /// Every layer, the lowest first.
    pub const ALL: [Self; 14] = [
        Self::NoDrill,
        Self::Backings,
        Self::Conduits,
        Self::Seats,
        Self::Pipes,
        Self::Posts,
        Self::CoreEdge,
        Self::Middle,
        Self::Moulded,
        Self::Outline,
        Self::Openings,
        Self::Footings,
        Self::Fixings,
        Self::Dimensions,
    ];

    /// Its name in files: small letters and hyphens.
    #[must_use]
    pub const fn id(self) -> &'static str {
        match self {
            Self::Moulded => "moulded",
            Self::Outline => "outline",
            Self::Openings => "openings",
            Self::CoreEdge => "core-edge",
            Self::Middle => "middle",
            Self::Backings => "backings",
            Self::Conduits => "conduits",
            Self::NoDrill => "no-drill",
            Self::Pipes => "pipes",
            Self::Posts => "posts",
            Self::Seats => "seats",
            Self::Footings => "footings",
            Self::Fixings => "fixings",
            Self::Dimensions => "dimensions",
        }
    }

    /// What it shows, in words.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::Moulded => "laid-up edge, before trimming",
            Self::Outline => "finished outline",
            Self::Openings => "holes through the top",
            Self::CoreEdge => "end of the core",
            Self::Middle => "middle of the top",
            Self::Backings => "backing in the core",
            Self::Conduits => "conduits in the core",
            Self::NoDrill => "no middle of a hole in here",
            Self::Pipes => "pipes below, with their seats",
            Self::Posts => "posts below",
            Self::Seats => "walls and pads below",
            Self::Footings => "footings of gear",
            Self::Fixings => "holes of fixings",
            Self::Dimensions => "sizes over all",
        }
    }
}

/// One layer with what is drawn on it, in the order of the design file.
#[derive(Clone, Debug, PartialEq)]
pub struct Layer {
    /// What it shows.
    pub kind: LayerKind,
    /// What is drawn.
    pub items: Vec<Item>,
}

/// A top in plan.
#[derive(Clone, Debug, PartialEq)]
pub struct Plan {
    /// The finished size along the length.
    pub length: Length,
    /// The finished size across.
    pub width: Length,
    /// Layers that have something to show, in the order of [`LayerKind::ALL`].
    pub layers: Vec<Layer>,
    /// Every fixing, numbered from one, in the order of the mounts.
    pub fixings: Vec<FixingMark>,
    /// The hole that the bands beside conduits are drawn for.
    pub no_drill_hole: Length,
}

impl Plan {
    /// Draws a top.
    ///
    /// ```text
    /// w = D + (1 + 2 n) h,  h = max(h₀, h_i)
    /// ```
    ///
    /// | symbol | meaning |
    /// |---|---|
    /// | *w*, *D* | width of the band in which no hole has its middle; diameter of the conduit |
    /// | *n* | `conduit-clearance`: what stays between, in diameters of the hole |
    /// | *h₀*, `h_i` | `no-drill-hole`; the holes of the file |
    ///
    /// # Validity
    ///
    /// Plan: a top with crown is longer along its surface than it is drawn.
    ///
    /// # Source
    ///
    /// [`DERIVED`](crate::source::DERIVED): the limit of the check `fixing-near-conduit`, solved for the place.
    ///
    /// # Examples
    ///
    /// ```
    /// use skinspan::{input::{NamedText, read_design, read_tables}, plan::{LayerKind, Plan, Shape}};
    /// use uom::si::length::inch;
    /// # let text = std::fs::read_to_string(concat!(env!("CARGO_MANIFEST_DIR"), "/examples/survey-launch.toml")).unwrap();
    /// # let text = NamedText { name: String::new(), text };
    /// let top = read_design(&text, &read_tables(&[]).unwrap(), None).unwrap();
    /// let plan = Plan::of(&top);
    /// assert!((plan.length.get::<inch>() - 110.0).abs() < 1e-9);
    /// // Six bolts on a circle of 8 in about (37, 52) in: the first at 41 in.
    /// assert_eq!(plan.fixings.len(), 6);
    /// assert!((plan.fixings[0].at.x.get::<inch>() - 41.0).abs() < 1e-9);
    /// let backings = plan.layer(LayerKind::Backings).expect("a layer");
    /// assert_eq!(backings.items[3].name, "radar pad");
    /// assert!(matches!(&backings.items[3].shapes[0], Shape::Line(border) if border.closed));
    /// ```
    #[must_use]
    pub fn of(top: &Top) -> Self {
        let mounts = mounts(top);
        let mut fixings = mark::marks(top, &mounts);
        let least = top.criteria.no_drill_hole.value;
        let no_drill_hole = fixings.iter().filter_map(FixingMark::widest).fold(least, Length::max);
        let bands = inlay::bands(top, no_drill_hole);
        for fixing in &mut fixings {
            fixing.in_band = inlay::in_band(top, fixing, &bands);
        }
        let items = |kind| match kind {
            LayerKind::Moulded => panel::moulded(top),
            LayerKind::Outline => panel::outline(top),
            LayerKind::Openings => panel::openings(top),
            LayerKind::CoreEdge => panel::core_edge(top),
            LayerKind::Middle => panel::middle(top),
            LayerKind::Backings => inlay::backings(top),
            LayerKind::Conduits => inlay::conduits(top),
            LayerKind::NoDrill => inlay::no_drill(top, &bands),
            LayerKind::Pipes => frame::pipes(top),
            LayerKind::Posts => frame::posts(top),
            LayerKind::Seats => frame::seats(top),
            LayerKind::Footings => gear::footings(top),
            LayerKind::Fixings => mark::items(&fixings),
            LayerKind::Dimensions => measure::over_all(top),
        };
        let layers = LayerKind::ALL.into_iter().map(|kind| Layer { kind, items: items(kind) });
        let layers = layers.filter(|layer| !layer.items.is_empty()).collect();
        let (length, width) = (top.outline.length(), top.outline.width());
        Self { length, width, layers, fixings, no_drill_hole }
    }

    /// One of its layers, where it has something to show.
    #[must_use]
    pub fn layer(&self, kind: LayerKind) -> Option<&Layer> {
        self.layers.iter().find(|layer| layer.kind == kind)
    }

    /// The corners of the rectangle round all that is drawn, dimensions and labels left out, that has the smallest and that
    /// has the largest coordinates.
    #[must_use]
    pub fn bounds(&self) -> [crate::geometry::Point; 2] {
        around::bounds(self.layers.iter().flat_map(|layer| &layer.items).flat_map(|item| &item.shapes))
    }
}

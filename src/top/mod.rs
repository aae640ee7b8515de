//! The model: a top on what carries it, valid by construction.

mod fastened;
mod fixing;
mod forward;
mod frame;
mod gear;
mod inlay;
mod joint;
mod outline;
mod schedule;
mod weight;

pub use fastened::{Fastened, Laid, MOST_ALONG};
pub use fixing::{Bolt, Fixing, Hold, Sleeve, Washer};
pub use forward::Forward;
pub use frame::{BedLine, Carrier, Pad, Pipe, Support, WallEdge};
pub use gear::{Gear, GivenForce};
pub use inlay::{Backing, Conduit};
pub use joint::Joint;
pub use outline::{Edge, Hole, InvalidHole, Outline};
pub use schedule::{Bought, RoundFixing, Schedule, SkinLayer};
pub use weight::{Weight, WeightItem};

use std::sync::Arc;

use crate::{
    criteria::Criteria,
    material::{Core, CoreFamily, Resin},
    section::Skin,
    service::Service,
    units::{Length, Ratio, System},
};

/// The core: its family, so that another density can be tried, and the sheet that is laid.
#[derive(Clone, Debug, PartialEq)]
pub struct CoreSheet {
    /// The family over its densities.
    pub family: CoreFamily,
    /// The core at its density.
    pub material: Core,
    /// Thickness of the sheet.
    pub thickness: Length,
}

/// How much of a top a design file describes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Scope {
    /// All of it, on its pipes, walls and pads.
    Whole,
    /// A piece of panel round a mount: only what the mount does to it can be looked at.
    Patch,
}

/// A hardtop with its frame, its gear, its service and the criteria it is judged by.
#[derive(Clone, Debug, PartialEq)]
pub struct Top {
    /// Whether it is a whole top.
    pub scope: Scope,
    /// Title of the report.
    pub title: String,
    /// System of units of the report.
    pub report: System,
    /// Outline in plan, with its holes.
    pub outline: Outline,
    /// Where the bow lies, where the file says it; see [`Top::bow`].
    pub forward: Option<Forward>,
    /// Rise of the middle over the edges. The hand method takes the top as flat and says so.
    pub crown: Length,
    /// Outer skin.
    pub outer: Schedule,
    /// Inner skin.
    pub inner: Schedule,
    /// Resin of the skins.
    pub resin: Resin,
    /// Core.
    pub core: CoreSheet,
    /// Border of the core.
    pub edge: Option<Edge>,
    /// Backing in the core.
    pub backings: Vec<Backing>,
    /// Conduits in the core.
    pub conduits: Vec<Conduit>,
    /// Pipes, walls and pads below.
    pub supports: Vec<Support>,
    /// Gear above.
    pub gear: Vec<Gear>,
    /// Names of the kinds of fixings in the file that hold nothing.
    pub idle_fixings: Vec<String>,
    /// What it must live through.
    pub service: Service,
    /// Factors, knock-downs and limits.
    pub criteria: Arc<Criteria>,
}

impl Top {
    /// One of its skins.
    #[must_use]
    pub const fn skin(&self, skin: Skin) -> &Schedule {
        match skin {
            Skin::Outer => &self.outer,
            Skin::Inner => &self.inner,
        }
    }

    /// How much longer than its width, seen from above, a top with crown is across: that of a shallow parabola.
    ///
    /// ```text
    /// s/w = 1 + 8/3 (f/w)²
    /// ```
    ///
    /// | symbol | meaning |
    /// |---|---|
    /// | *s*, *w* | length along the surface, width in plan |
    /// | *f* | rise of the crown |
    ///
    /// # Validity
    ///
    /// Shallow crowns: at a rise of a tenth of the width it is 0.04 % of *s* too much.
    ///
    /// # Source
    ///
    /// [`DERIVED`](crate::source::DERIVED): the first terms of the length of a parabola.
    #[must_use]
    pub fn along_crown(&self) -> Ratio {
        let rise: Ratio = self.crown / self.outline.width();
        Ratio::from(1.0) + rise * rise * (8.0 / 3.0)
    }

    /// Skins and core together.
    #[must_use]
    pub fn thickness(&self) -> Length {
        self.outer.laminate().thickness() + self.core.thickness + self.inner.laminate().thickness()
    }
}

//! What the shop buys for a top, what the finished top weighs, and how it is lifted.

mod core;
mod fabric;
mod filling;
mod lift_check;
mod lifted;
mod lifting;
mod moments;
mod pieces;
mod putty;
mod resin;

pub use self::{
    core::{CorePiece, CorePlan, NoPlan, Rule, Seam, SheetPlace},
    fabric::{FabricLine, fabrics},
    filling::{Filling, FillingUse},
    lift_check::{LiftCheck, LiftOn, LiftOutcome},
    lifting::{Lifting, Sling},
    moments::Moments,
    pieces::{BackingPiece, BoardLine, ConduitLine, FixingLine, FixingPart},
    putty::Putty,
    resin::{CoatLine, Hardener, Mix, ResinLine, Resins},
};

use crate::{
    check::Standing,
    top::{Top, Weight},
    units::{Area, Mass},
};

/// Everything that is bought for a top, and what it weighs.
#[derive(Clone, Debug)]
pub struct Order {
    /// Fabrics, each kind once.
    pub fabrics: Vec<FabricLine>,
    /// Resin by layer, and with what it is cured.
    pub resins: Resins,
    /// Coats, each kind once.
    pub coats: Vec<CoatLine>,
    /// How the core is cut, or why that could not be planned.
    pub core: Result<CorePlan, NoPlan>,
    /// Pieces of backing.
    pub backings: Vec<BackingPiece>,
    /// Boards that they are cut from, each kind once.
    pub boards: Vec<BoardLine>,
    /// Putty of the edge; none where the core runs to the rim.
    pub putty: Option<Putty>,
    /// What joints, grooves and bores are filled with, each kind once.
    pub fillings: Vec<Filling>,
    /// Conduits, each kind once.
    pub conduits: Vec<ConduitLine>,
    /// Fixings, each kind and length once.
    pub fixings: Vec<FixingLine>,
    /// What the finished top weighs.
    pub weight: Weight,
    /// Area in plan, holes left out.
    pub area: Area,
    /// Moments of its weight.
    pub moments: Moments,
    /// What the checks say of it by the hand method alone, or why they could not look at it.
    pub standing: Result<Standing, String>,
    /// How it is lifted; none where no four places for slings were found.
    pub lifting: Option<Lifting>,
}

/// Works out the order of a top.
///
/// # Source
///
/// [`DERIVED`](crate::source::DERIVED): adding up; shares of waste, sizes of rolls and sheets are criteria.
#[must_use]
pub fn order(top: &Top) -> Order {
    let weight = top.weight();
    let fabrics = fabric::fabrics(top);
    let (backings, boards) = pieces::backings(top);
    let core = core::plan(top);
    Order {
        resins: resin::resins(top),
        coats: resin::coats(top),
        fillings: filling::fillings(top, &core),
        core,
        backings,
        boards,
        putty: putty::putty(top),
        conduits: pieces::conduits(top),
        fixings: pieces::fixings(top),
        area: top.outline.area(),
        standing: Standing::by_hand(top),
        moments: moments::moments(top, &weight),
        lifting: lifting::lifting(top, &weight),
        weight,
        fabrics,
    }
}

impl Order {
    /// Mass of what is bought and stays in the top: that of the bare top.
    ///
    /// ```text
    /// m = Σ (fibre + resin + coats) + ρ_c c (A − s P − Σ w l) − Σ bores + ρ_f s c P + ρ_b c Σ w l + tubes
    /// ```
    ///
    /// | symbol | meaning |
    /// |---|---|
    /// | *A*, *P* | area in plan and length of all rims |
    /// | *c*, *s* | thickness of the core; how far it is cut back |
    /// | *w*, *l* | width and length of a backing |
    /// | `ρ_c`, `ρ_f`, `ρ_b` | densities of core, edge filling and board |
    #[must_use]
    pub fn in_top(&self, top: &Top) -> Mass {
        let fibre: Mass = self.fabrics.iter().map(|line| line.in_top).sum();
        let coats: Mass = self.coats.iter().map(|line| line.in_top).sum();
        let boards: Mass = self.boards.iter().map(|line| line.in_top).sum();
        let putty = self.putty.as_ref().map_or_else(Mass::default, |putty| putty.in_top);
        let tubes: Mass = self.conduits.iter().filter_map(|line| line.mass).sum();
        fibre + self.resins.in_top() + coats + boards + putty + tubes + pieces::core_in_top(top)
    }
}

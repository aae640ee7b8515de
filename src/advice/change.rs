//! Single changes to a top, each kind in steps from small to large.

use std::sync::Arc;

use uom::si::length::{inch, millimeter};

use super::{fixing_change as fixing, pipe_row::PipeRow};
use crate::{
    analysis::MountOn,
    top::{CoreSheet, Hold, Laid, Schedule, Top},
    units::{Length, MassDensity, System, Torque},
};

/// One change to a top.
#[derive(Clone, Debug, PartialEq)]
pub enum Change {
    /// Another thickness of core.
    CoreThickness(Length),
    /// Another density of core, of the same family.
    CoreDensity(MassDensity),
    /// More layers in the outer skin.
    OuterPlies {
        /// The layer that is laid again, as the design file writes it.
        layer: String,
        /// Its place in the skin.
        index: usize,
        /// How many more of it.
        more: usize,
    },
    /// More layers in the inner skin.
    InnerPlies {
        /// The layer that is laid again, as the design file writes it.
        layer: String,
        /// Its place in the skin.
        index: usize,
        /// How many more of it.
        more: usize,
    },
    /// Another number of pipes, evenly spaced between the outer two.
    PipeCount {
        /// How many pipes there are then.
        pipes: usize,
        /// How far apart.
        spacing: Length,
    },
    /// The outer pipes moved, and those between them with them.
    PipesMoved {
        /// How far each outer pipe goes; outwards positive.
        outwards: Length,
        /// How far apart neighbours are then.
        spacing: Length,
    },
    /// Pipes made longer at both ends.
    PipesLonger(Length),
    /// The overhang beyond the outer pipes trimmed off the top on both sides.
    OverhangTrimmed(Length),
    /// A backing of another width.
    BackingWidth {
        /// The backing, as its place in the list.
        backing: usize,
        /// Its width then.
        width: Length,
    },
    /// A backing that is longer at both ends.
    BackingLength {
        /// The backing, as its place in the list.
        backing: usize,
        /// How much longer at each end.
        by: Length,
    },
    /// A backing of another board of the same family.
    BackingBoard {
        /// The backing, as its place in the list.
        backing: usize,
        /// The board, by its row.
        board: String,
        /// Its density.
        density: MassDensity,
    },
    /// A backing of another kind of board.
    BackingKind {
        /// The backing, as its place in the list.
        backing: usize,
        /// The board, by its row.
        board: String,
    },
    /// Another number of fixings in the same pattern.
    FixingCount {
        /// What they hold.
        on: MountOn,
        /// How many there are then.
        count: usize,
        /// Their pattern.
        laid: Laid,
    },
    /// A larger size of the same fixing.
    Size {
        /// What the fixings hold.
        on: MountOn,
        /// The size, as its place among the larger ones.
        size: usize,
    },
    /// Less torque.
    Torque {
        /// What the fixings hold.
        on: MountOn,
        /// The torque then.
        torque: Torque,
    },
    /// A larger washer.
    Washer {
        /// What the fixings hold.
        on: MountOn,
        /// Its outside diameter then.
        outside: Length,
    },
}

/// Most steps that are tried of one kind.
const STEPS: u32 = 12;

/// All changes worth trying on a top: by kind, each from small to large.
#[must_use]
pub fn changes(top: &Top) -> Vec<Vec<Change>> {
    let mut kinds = vec![
        above(&top.core.material.sold_thicknesses.values, top.core.thickness).map(Change::CoreThickness).collect(),
        above(&top.core.family.sold_densities.values, top.core.material.density).map(Change::CoreDensity).collect(),
        repeats(&top.outer, |layer, index, more| Change::OuterPlies { layer, index, more }),
        repeats(&top.inner, |layer, index, more| Change::InnerPlies { layer, index, more }),
    ];
    kinds.extend(fixing::changes(top));
    if let Some(row) = PipeRow::of(top) {
        kinds.push(row.more_pipes());
        let moved = |sign: f64| {
            move |step: Length| Change::PipesMoved { outwards: step * sign, spacing: row.spacing(step * sign) }
        };
        kinds.push(steps(top).map(moved(1.0)).collect());
        kinds.push(steps(top).map(moved(-1.0)).collect());
        kinds.push(steps(top).map(Change::PipesLonger).collect());
        kinds.push(steps(top).map(Change::OverhangTrimmed).collect());
    }
    kinds.into_iter().map(|kind: Vec<Change>| kind.into_iter().take(STEPS as usize).collect()).collect()
}

/// The top with a change made; none where the change cannot be made.
#[must_use]
pub fn changed(top: &Top, change: &Change) -> Option<Top> {
    let mut other = top.clone();
    match change {
        Change::CoreThickness(thickness) => other.core.thickness = *thickness,
        Change::CoreDensity(density) => {
            other.core = CoreSheet { material: top.core.family.at(*density).ok()?, ..top.core.clone() };
        }
        Change::OuterPlies { index, more, .. } => other.outer = repeated(&top.outer, *index, *more)?,
        Change::InnerPlies { index, more, .. } => other.inner = repeated(&top.inner, *index, *more)?,
        Change::PipeCount { pipes, .. } => PipeRow::of(top)?.fill(&mut other, *pipes)?,
        Change::PipesMoved { outwards, .. } => PipeRow::of(top)?.shift(&mut other, *outwards)?,
        Change::PipesLonger(by) => PipeRow::of(top)?.lengthen(&mut other, *by)?,
        Change::OverhangTrimmed(by) => PipeRow::of(top)?.trim(&mut other, *by)?,
        Change::BackingWidth { backing, width } => {
            let backing = other.backings.get_mut(*backing)?;
            let wide = std::mem::replace(&mut backing.width, *width);
            // One that was drawn beyond the rim may still grow narrower.
            if *width > wide && !fixing::lies_within(backing, &top.outline) {
                return None;
            }
        }
        Change::BackingLength { backing, by } => {
            let backing = other.backings.get_mut(*backing)?;
            backing.along = fixing::lengthened(&backing.along, *by)?;
            if !fixing::lies_within(backing, &top.outline) {
                return None;
            }
        }
        Change::BackingBoard { backing, board, .. } | Change::BackingKind { backing, board } => {
            let backing = other.backings.get_mut(*backing)?;
            backing.board = backing.boards.iter().find(|sold| sold.id == *board)?.clone();
        }
        Change::FixingCount { on, laid, .. } => fixing::fastened(&mut other, *on)?.laid = laid.clone(),
        Change::Size { on, size } => {
            let fixing = Arc::make_mut(&mut fixing::fastened(&mut other, *on)?.fixing);
            fixing.hold = fixing.larger.get(*size)?.clone();
        }
        Change::Torque { on, torque } => {
            let fastened = fixing::fastened(&mut other, *on)?;
            Arc::make_mut(&mut fastened.fixing).torque = Some(*torque);
        }
        Change::Washer { on, outside } => {
            let fastened = fixing::fastened(&mut other, *on)?;
            if let Hold::ThroughBolt { washer, .. } = &mut Arc::make_mut(&mut fastened.fixing).hold {
                washer.outside = *outside;
            }
        }
    }
    let moves = matches!(
        change,
        Change::PipeCount { .. }
            | Change::PipesMoved { .. }
            | Change::PipesLonger(_)
            | Change::OverhangTrimmed(_)
            | Change::BackingLength { .. }
    );
    (!moves || lies_in_outline(&other)).then_some(other)
}

/// Whether pipes end on the top, and backing lies in it and in no hole.
fn lies_in_outline(top: &Top) -> bool {
    let pipes = top.supports.iter().map(|support| &support.along);
    let backings = || top.backings.iter().map(|backing| &backing.along);
    pipes.chain(backings()).all(|line| top.outline.left_by(line).is_none())
        && backings().all(|line| top.outline.hole_on(line).is_none())
}

/// What is sold above a value, smallest first.
fn above<Q: Copy + PartialOrd>(sold: &[Q], now: Q) -> impl Iterator<Item = Q> + '_ {
    sold.iter().copied().filter(move |&value| value > now)
}

/// The heaviest layer laid once more, twice more, three times more.
fn repeats(skin: &Schedule, change: impl Fn(String, usize, usize) -> Change) -> Vec<Change> {
    let carrying = skin.layers().iter().enumerate().filter(|(_, layer)| layer.carries());
    let heaviest = carrying.max_by(|a, b| a.1.fibre.value.total_cmp(&b.1.fibre.value));
    heaviest
        .map_or_else(Vec::new, |(index, layer)| (1..=3).map(|more| change(layer.text.clone(), index, more)).collect())
}

fn repeated(skin: &Schedule, index: usize, more: usize) -> Option<Schedule> {
    (0..more).try_fold(skin.clone(), |skin, _| skin.with_repeated(index).ok())
}

/// Steps of an inch, or of 25 mm.
pub(super) fn steps(top: &Top) -> impl Iterator<Item = Length> {
    let step = match top.report {
        System::Us => Length::new::<inch>(1.0),
        System::Si => Length::new::<millimeter>(25.0),
    };
    (1..=STEPS).map(move |count| step * f64::from(count))
}

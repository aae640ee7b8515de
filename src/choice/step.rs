//! One step more or less of every input: what it makes of the first margin.

use rayon::prelude::*;

use super::{both::Both, found::used_by_hand, space::Space};
use crate::{
    advice::{Change, changed, changes},
    top::{CoreSheet, Schedule, Top},
    units::{Mass, Ratio},
};

/// A step from a top to one beside it.
#[derive(Clone, Debug, PartialEq)]
pub struct Step {
    /// The step.
    pub to: Beside,
    /// How far the top is used then; infinite where a check could not be made.
    pub utilisation: Ratio,
    /// What governs then, as its place in [`CHECKS`](crate::check::CHECKS).
    pub governs: usize,
    /// Mass that it adds.
    pub added: Mass,
    /// Whether both methods judged it; else the hand method alone.
    pub by_both: bool,
}

/// What differs by one step.
#[derive(Clone, Debug, PartialEq)]
pub enum Beside {
    /// A change as advice offers them.
    Change(Change),
    /// One layer fewer in the outer skin, as the design file writes it.
    OuterLess(String),
    /// One layer fewer in the inner skin.
    InnerLess(String),
}

impl Step {
    /// All steps from a top: its core within a space, its skins by a layer, and one of each other kind, with what it leads
    /// to; none where somebody stopped it.
    pub(super) fn all(top: &Top, both: &Both<'_>) -> Option<Vec<(Self, Top)>> {
        let mut beside: Vec<(Beside, Top)> = Vec::new();
        for change in cores(top, both.space).into_iter().chain(changes(top).into_iter().filter_map(first)) {
            if let Some(other) = changed(top, &change) {
                beside.push((Beside::Change(change), other));
            }
        }
        for (text, outer) in fewer(&top.outer) {
            beside.push((Beside::OuterLess(text), Top { outer, ..top.clone() }));
        }
        for (text, inner) in fewer(&top.inner) {
            beside.push((Beside::InnerLess(text), Top { inner, ..top.clone() }));
        }
        let bare = top.weight().bare;
        let step = |(to, other): (Beside, Top)| {
            let (utilisation, governs) = used_by_hand(&other, both.aside)?;
            let added = other.weight().bare - bare;
            Some((Self { to, utilisation, governs, added, by_both: false }, other))
        };
        let going_on = |beside| (!both.watch.stops()).then(|| step(beside));
        let steps = beside.into_par_iter().map(going_on).collect::<Option<Vec<Option<(Self, Top)>>>>()?;
        Some(steps.into_iter().flatten().collect())
    }
}

/// The first of a kind of change; those of the core have steps of their own.
fn first(kind: Vec<Change>) -> Option<Change> {
    let first = kind.into_iter().next()?;
    (!matches!(first, Change::CoreThickness(_) | Change::CoreDensity(_))).then_some(first)
}

/// The next density and thickness, up and down.
fn cores(top: &Top, space: &Space) -> Vec<Change> {
    let own = |core: &&CoreSheet| core.family.id == top.core.family.id;
    let thick = space.cores.iter().filter(own).filter(|core| core.material.density == top.core.material.density);
    let dense = space.cores.iter().filter(own).filter(|core| core.thickness == top.core.thickness);
    let mut steps: Vec<Change> = around(thick.map(|core| core.thickness), top.core.thickness, Change::CoreThickness);
    steps.extend(around(dense.map(|core| core.material.density), top.core.material.density, Change::CoreDensity));
    steps
}

fn around<Q: Copy + PartialOrd>(all: impl Iterator<Item = Q>, now: Q, change: fn(Q) -> Change) -> Vec<Change> {
    let (mut below, mut above): (Option<Q>, Option<Q>) = (None, None);
    for value in all {
        if value < now && below.is_none_or(|known| value > known) {
            below = Some(value);
        }
        if value > now && above.is_none_or(|known| value < known) {
            above = Some(value);
        }
    }
    [below, above].into_iter().flatten().map(change).collect()
}

/// A skin without one of its layers, each kind once.
fn fewer(skin: &Schedule) -> Vec<(String, Schedule)> {
    let mut known: Vec<&str> = Vec::new();
    let mut all = Vec::new();
    for (place, layer) in skin.layers().iter().enumerate().filter(|(_, layer)| layer.carries()) {
        if known.contains(&layer.text.as_str()) {
            continue;
        }
        known.push(&layer.text);
        let mut layers = skin.layers().to_vec();
        layers.remove(place);
        all.extend(Schedule::new(layers).ok().map(|less| (layer.text.clone(), less)));
    }
    all
}

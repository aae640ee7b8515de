//! The space of a choice: pipes and backing, cores with their thicknesses, outer skins, inner skins.

use super::{
    arrangement::Arrangement,
    frame::frame_mass,
    price::{Money, Prices},
};
use crate::{
    material::CoreFamily,
    top::{CoreSheet, Hold, Schedule, SkinLayer, Top},
    units::{Length, Mass, MassDensity},
};

/// What the answers are ordered by.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default)]
pub enum Order {
    /// The lightest first.
    #[default]
    Weight,
    /// The thinnest first.
    Thickness,
    /// The one that sags least first.
    Sag,
    /// The cheapest first.
    Cost,
}

/// In what those that are shown do not beat one another.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Measures {
    /// Weight, thickness and, where there are prices, cost.
    Sizes,
    /// How far they sag, too.
    SizesAndSag,
}

impl Order {
    /// In what none of those that are shown may be beaten: what comes first is among them.
    #[must_use]
    pub const fn measures(self) -> Measures {
        match self {
            Self::Weight | Self::Thickness | Self::Cost => Measures::Sizes,
            Self::Sag => Measures::SizesAndSag,
        }
    }
}

/// What an answer may not exceed.
#[derive(Clone, Copy, Debug, PartialEq, Default)]
pub struct Limits {
    /// Skins and core together.
    pub thickness: Option<Length>,
    /// The bare top, without its pipes.
    pub mass: Option<Mass>,
    /// Its materials.
    pub cost: Option<Money>,
}

/// One of a space: places in its lists.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub struct Candidate {
    /// What it stands on and what lies in its core.
    pub arrangement: usize,
    /// The core with its thickness.
    pub core: usize,
    /// The outer skin.
    pub outer: usize,
    /// The inner skin.
    pub inner: usize,
}

/// All that one could lay up.
#[derive(Clone, Debug, PartialEq)]
pub struct Space {
    /// Pipes and backing, the file's own first.
    pub arrangements: Vec<Arrangement>,
    /// Cores, each in one density and thickness: family by family, density by density.
    pub cores: Vec<CoreSheet>,
    /// Outer skins.
    pub outer: Vec<Schedule>,
    /// Inner skins.
    pub inner: Vec<Schedule>,
    /// What materials cost, where the file says so.
    pub prices: Option<Prices>,
    /// What an answer may not exceed.
    pub limits: Limits,
    /// What comes first.
    pub order: Order,
}

/// More than a machine looks at while one waits.
pub const MOST_CANDIDATES: usize = 5_000_000;

/// A layer is laid so many times more than the design file has it, where that says nothing else. Our choice.
const MORE_LAYERS: usize = 2;

impl Space {
    /// Sheets of families at the densities and thicknesses that are sold, and as the top has it.
    #[must_use]
    pub fn sheets<'a>(
        top: &Top,
        families: impl IntoIterator<Item = &'a CoreFamily>,
        thicknesses: Option<&[Length]>,
        densities: Option<&[MassDensity]>,
    ) -> Vec<CoreSheet> {
        let mut all = Vec::new();
        for family in families {
            let own = family.id == top.core.family.id;
            let mut of_family =
                densities.map_or_else(|| family.sold_densities.values.to_vec(), <[MassDensity]>::to_vec);
            let mut thick = thicknesses.map_or_else(|| family.sold_thicknesses.values.to_vec(), <[Length]>::to_vec);
            if own && densities.is_none() {
                with(&mut of_family, top.core.material.density);
            }
            if thicknesses.is_none() {
                with(&mut thick, top.core.thickness);
            }
            // Of a density that a family does not come in there is no sheet.
            for material in of_family.into_iter().filter_map(|density| family.at(density).ok()) {
                all.extend(thick.iter().map(|&thickness| CoreSheet {
                    family: family.clone(),
                    material: material.clone(),
                    thickness,
                }));
            }
        }
        all
    }

    /// A skin in all ways that lay each of its fabrics fewer or more times, the one with the most fibre at least once.
    #[must_use]
    pub fn skins(skin: &Schedule) -> Vec<Schedule> {
        let kinds = kinds(skin);
        let mut counts: Vec<Vec<usize>> = vec![Vec::new()];
        for kind in &kinds {
            let longer = |known: &Vec<usize>| {
                let known = known.clone();
                kind.counts().map(move |count| [&known[..], &[count]].concat())
            };
            counts = counts.iter().flat_map(longer).collect();
        }
        counts.iter().filter_map(|counts| laid(skin, &kinds, counts)).collect()
    }

    /// How many ways [`Space::skins`] knows to lay a skin, without laying one of them.
    #[must_use]
    pub fn ways(skin: &Schedule) -> usize {
        kinds(skin).iter().map(|kind| kind.counts().count()).fold(1, usize::saturating_mul)
    }

    /// How many there are.
    #[must_use]
    pub fn len(&self) -> usize {
        let laid = self.cores.len().saturating_mul(self.outer.len()).saturating_mul(self.inner.len());
        self.arrangements.len().saturating_mul(laid)
    }

    /// Whether there is none.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.len() == 0
    }

    /// Whether there is a choice of pipes.
    #[must_use]
    pub fn pipes_differ(&self) -> bool {
        let mut all = self.arrangements.iter().map(|known| &known.top.supports);
        let first = all.next();
        all.any(|other| Some(other) != first)
    }

    /// What the pipes of each arrangement weigh, where there is a choice of pipes and all of them are known: what weighs more stands
    /// on more.
    #[must_use]
    pub fn frames(&self) -> Option<Vec<Mass>> {
        if !self.pipes_differ() {
            return None;
        }
        self.arrangements.iter().map(|known| frame_mass(&known.top)).collect()
    }

    /// The candidate of a number.
    #[must_use]
    pub fn candidate(&self, number: usize) -> Candidate {
        let (inner, outer, core) = (self.inner.len(), self.outer.len(), self.cores.len());
        Candidate {
            arrangement: number / (inner * outer * core),
            core: number / (inner * outer) % core,
            outer: number / inner % outer,
            inner: number % inner,
        }
    }

    /// A candidate as a top.
    #[must_use]
    pub fn top(&self, candidate: Candidate) -> Top {
        Top {
            core: self.cores[candidate.core].clone(),
            outer: self.outer[candidate.outer].clone(),
            inner: self.inner[candidate.inner].clone(),
            ..self.arrangements[candidate.arrangement].top.clone()
        }
    }

    /// The candidate that a top as the file arranges it is laid up as, where it is one of the space.
    #[must_use]
    pub fn place_of(&self, top: &Top) -> Option<Candidate> {
        Some(Candidate {
            arrangement: self.arrangements.iter().position(|known| known.changes.is_empty())?,
            core: self.cores.iter().position(|core| *core == top.core)?,
            outer: self.outer.iter().position(|skin| *skin == top.outer)?,
            inner: self.inner.iter().position(|skin| *skin == top.inner)?,
        })
    }
}

/// Layers of a skin that read alike.
struct Alike<'a> {
    layer: &'a SkinLayer,
    /// How many there are.
    times: usize,
    /// How many there are at least in a skin that one may choose.
    least: usize,
}

impl Alike<'_> {
    /// How many there may be.
    fn counts(&self) -> std::ops::RangeInclusive<usize> {
        self.least..=self.times + MORE_LAYERS
    }
}

/// The layers of a skin that carry, by kind.
fn kinds(skin: &Schedule) -> Vec<Alike<'_>> {
    let carrying = || skin.layers().iter().filter(|layer| layer.carries());
    let heaviest = carrying().max_by(|a, b| a.fibre.value.total_cmp(&b.fibre.value));
    let mut kinds: Vec<Alike<'_>> = Vec::new();
    for layer in carrying() {
        match kinds.iter_mut().find(|known| known.layer.text == layer.text) {
            Some(known) => known.times += 1,
            None => {
                let least = usize::from(heaviest.is_some_and(|heaviest| heaviest.text == layer.text));
                kinds.push(Alike { layer, times: 1, least });
            }
        }
    }
    kinds
}

/// A skin with each kind of layer so many times, where the first of its kind lay.
fn laid(skin: &Schedule, kinds: &[Alike<'_>], counts: &[usize]) -> Option<Schedule> {
    let mut layers: Vec<SkinLayer> = Vec::new();
    let mut left: Vec<usize> = counts.to_vec();
    let mut laid: Vec<usize> = vec![0; kinds.len()];
    for layer in skin.layers() {
        let Some(kind) = kinds.iter().position(|known| layer.carries() && known.layer.text == layer.text) else {
            layers.push(layer.clone());
            continue;
        };
        laid[kind] += 1;
        // The last place of a kind takes all that is left of it.
        let here = if laid[kind] == kinds[kind].times { left[kind] } else { left[kind].min(1) };
        left[kind] -= here;
        layers.extend(std::iter::repeat_n(layer, here).cloned());
    }
    Schedule::new(layers).ok()
}

fn with<Q: Copy + PartialOrd>(sold: &mut Vec<Q>, own: Q) {
    if !sold.contains(&own) {
        let place = sold.iter().position(|known| *known > own).unwrap_or(sold.len());
        sold.insert(place, own);
    }
}

/// Why something that a top has does not go into a core and a panel of these thicknesses.
pub(super) fn misfit(top: &Top, core: Length, panel: Length) -> Option<&'static str> {
    if top.conduits.iter().any(|conduit| conduit.diameter >= core) {
        return Some("a conduit is as thick as the core");
    }
    let deep = |hold: &Hold| match hold {
        Hold::TappedScrew { depth, .. } | Hold::Screw { depth, .. } | Hold::PottedInsert { depth, .. } => {
            *depth > panel
        }
        Hold::ThroughBolt { .. } | Hold::BlindInsert { .. } | Hold::BlindRivet { .. } | Hold::BondedStud { .. } => {
            false
        }
    };
    let fastened = top.gear.iter().map(|gear| &gear.fastened).chain(top.supports.iter().map(|on| &on.fastened));
    fastened.flatten().any(|fastened| deep(&fastened.fixing.hold)).then_some("a fixing goes deeper than the panel")
}

//! What candidates weigh and how thick they are, without laying each of them up.

use super::space::{Candidate, Space};
use crate::{
    top::Top,
    units::{Length, Mass},
};

impl Space {
    /// The least that a candidate weighs, bare, and the least that one is thick.
    #[must_use]
    pub fn least(&self, top: &Top) -> (Mass, Length) {
        let sizes = Sizes::of(top, self);
        let parts = [&sizes.cores, &sizes.skins[0], &sizes.skins[1]];
        let mass = parts.iter().filter_map(|part| part.iter().map(|size| size.0).reduce(Mass::min)).sum();
        let thickness = parts.iter().filter_map(|part| part.iter().map(|size| size.1).reduce(Length::min)).sum();
        (mass, thickness)
    }
}

/// Weights and thicknesses: each part adds its own.
pub(super) struct Sizes {
    cores: Vec<(Mass, Length)>,
    skins: [Vec<(Mass, Length)>; 2],
}

impl Sizes {
    pub(super) fn of(top: &Top, space: &Space) -> Self {
        let bare = |top: &Top| (top.weight().bare, top.thickness());
        let without = bare(top);
        let over = |(mass, thickness): (Mass, Length)| (mass - without.0, thickness - without.1);
        let cores = space.cores.iter().map(|core| bare(&Top { core: core.clone(), ..top.clone() }));
        let outer = space.outer.iter().map(|outer| over(bare(&Top { outer: outer.clone(), ..top.clone() })));
        let inner = space.inner.iter().map(|inner| over(bare(&Top { inner: inner.clone(), ..top.clone() })));
        Self { cores: cores.collect(), skins: [outer.collect(), inner.collect()] }
    }

    pub(super) fn mass(&self, of: Candidate) -> Mass {
        self.cores[of.core].0 + self.skins[0][of.outer].0 + self.skins[1][of.inner].0
    }

    pub(super) fn thickness(&self, of: Candidate) -> Length {
        self.cores[of.core].1 + self.skins[0][of.outer].1 + self.skins[1][of.inner].1
    }
}

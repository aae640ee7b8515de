//! Numbers that say which simple formula may stand for the exact one.

use super::{Axis, Section, Skin, Width};
use crate::units::{Length, Ratio, plain};

/// How thin the skins and how weak the core are.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SkinCheck {
    /// Lever over the thickness of the thicker skin; above 5.77 the skins' own bending is below 1 %.
    pub lever_to_skin: Ratio,
    /// Rigidity of the skins as membranes over that of the core; above 100 the core's own bending is below 1 %.
    pub skins_to_core: Ratio,
}

impl Section {
    /// How thin the skins and how weak the core are in bending along `axis`.
    #[must_use]
    pub fn skin_check(&self, axis: Axis, width: Width) -> SkinCheck {
        let bending = self.bending(axis, width);
        let thicker = Skin::BOTH.map(|s| self.skin(s).thickness()).into_iter().fold(Length::default(), Length::max);
        SkinCheck { lever_to_skin: bending.lever / thicker, skins_to_core: bending.skin_membranes / bending.core_alone }
    }

    /// How freely the skins may bend on their own over a span.
    #[must_use]
    pub fn theta(&self, axis: Axis, width: Width, span: Length) -> Ratio {
        let b = self.bending(axis, width);
        let ratio =
            plain(self.shear_stiffness(axis)) * plain(b.rigidity) / (plain(b.skin_membranes) * plain(b.skins_alone));
        span / 2.0 * ratio.sqrt()
    }
}

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
    ///
    /// ```text
    /// d/t                        skins' own bending below 1 % above 5.77, since 3 (d/t)² > 100
    /// D0/Dc = 6 Ef t d²/(Ec c³)  core's own bending below 1 % above 100
    /// ```
    ///
    /// | symbol | meaning |
    /// |---|---|
    /// | `d` | distance between the centroids of the skins |
    /// | `t` | thickness of the thicker skin |
    /// | `D0`, `Dc` | parts of the rigidity, [`Section::bending`]; the second form is for equal skins |
    /// | `Ef`, `Ec`, `c` | moduli of skin and core, core thickness |
    ///
    /// # Validity
    /// A remark on simple formulas; the rigidity itself is exact.
    ///
    /// # Source
    /// [`ALLEN_1969`](crate::source::ALLEN_1969), ch. 2, from memory; derived.
    ///
    /// # Examples
    /// ```
    #[doc = sample!()]
    /// near(section.skin_check(Axis::X, Width::Narrow).lever_to_skin.value, 11.0);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn skin_check(&self, axis: Axis, width: Width) -> SkinCheck {
        let bending = self.bending(axis, width);
        let thicker = Skin::BOTH.map(|s| self.skin(s).thickness()).into_iter().fold(Length::default(), Length::max);
        SkinCheck { lever_to_skin: bending.lever / thicker, skins_to_core: bending.skin_membranes / bending.core_alone }
    }

    /// How freely the skins may bend on their own over a span.
    ///
    /// ```text
    /// theta = (L/2) √(S D/(D0 Df))
    /// ```
    ///
    /// | symbol | meaning |
    /// |---|---|
    /// | `L` | span |
    /// | `S`, `D` | shear stiffness and flexural rigidity |
    /// | `D0`, `Df` | parts of `D`: skins as membranes, skins alone |
    ///
    /// # Validity
    /// Below 20 the shear deflection under a point load is more than 5 % smaller than `P L/(4 S)`; infinite for membrane skins.
    ///
    /// # Source
    /// [`ALLEN_1969`](crate::source::ALLEN_1969), ch. 2, from memory; derived.
    ///
    /// # Examples
    /// ```
    #[doc = sample!()]
    /// let theta = section.theta(Axis::X, Width::Narrow, Length::new::<meter>(1.0));
    /// let (d0, df): (f64, f64) = (4840.0, 40.0 / 3.0);
    /// near(theta.value, 0.5 * (726e3 * (d0 + df) / (d0 * df)).sqrt()); // 117
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn theta(&self, axis: Axis, width: Width, span: Length) -> Ratio {
        let b = self.bending(axis, width);
        let ratio =
            plain(self.shear_stiffness(axis)) * plain(b.rigidity) / (plain(b.skin_membranes) * plain(b.skins_alone));
        span / 2.0 * ratio.sqrt()
    }
}

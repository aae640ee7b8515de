//! Resin, what cures it, and coats.

use super::fabric::{laid_over_kept, layers};
use crate::{
    section::Skin,
    top::{SkinLayer, Top},
    units::{Area, ArealMassDensity, Mass, Ratio},
};

/// Family of coats that are cured as the resin is.
const GELCOAT: &str = "gelcoat";

/// What cures a resin.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Hardener {
    /// A little of it, on top of the resin.
    Catalyst,
    /// A part of the mixture.
    Hardener,
}

/// A resin with what cures it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Mix {
    /// The resin alone.
    pub resin: Mass,
    /// What cures it.
    pub hardener: Mass,
    /// Of which kind that is.
    pub kind: Hardener,
}

/// Resin of one layer, as often as it is laid.
#[derive(Clone, Debug, PartialEq)]
pub struct ResinLine {
    /// The skin; none for what goes on the core.
    pub skin: Option<Skin>,
    /// The layer as the file writes it, or what else it is.
    pub layer: String,
    /// How often it is laid; of the core both faces.
    pub times: usize,
    /// Mixed resin that one of these takes, over its area.
    pub per_area: ArealMassDensity,
    /// Mixed resin that stays in the top.
    pub in_top: Mass,
    /// Mixed resin that is bought.
    pub bought: Mass,
}

/// All resin of the top.
#[derive(Clone, Debug, PartialEq)]
pub struct Resins {
    /// Its name.
    pub name: String,
    /// Layer by layer, from the sky down, the core between the skins.
    pub lines: Vec<ResinLine>,
    /// All that is bought, by what it is mixed of.
    pub mix: Mix,
}

/// Coats of one kind.
#[derive(Clone, Debug, PartialEq)]
pub struct CoatLine {
    /// Row of the coat.
    pub id: String,
    /// Its name.
    pub name: String,
    /// Area that is coated, all coats together.
    pub area: Area,
    /// What stays on the top.
    pub in_top: Mass,
    /// What is bought.
    pub bought: Mass,
    /// Catalyst for it; none where it is no gelcoat.
    pub catalyst: Option<Mass>,
}

impl Resins {
    /// Mixed resin that stays in the top.
    #[must_use]
    pub fn in_top(&self) -> Mass {
        self.lines.iter().map(|line| line.in_top).sum()
    }

    /// Mixed resin that is bought.
    #[must_use]
    pub fn bought(&self) -> Mass {
        self.lines.iter().map(|line| line.bought).sum()
    }
}

/// Resin by layer, from the fibre content that the process leaves.
///
/// ```text
/// m = (w_c − w_f) A,  m_b = m (1 + q) A_l/A;  on the core 2 u A and 2 u A (1 + q) s/w
/// ```
///
/// | symbol | meaning |
/// |---|---|
/// | `w_c`, `w_f` | mass per area of the layer as cured, and of its fibre |
/// | *A*, `A_l` | area in plan; with the edge lap, holes laid across |
/// | *q*, *s/w* | share of waste; what a crown adds, [`Top::along_crown`] |
/// | *u* | resin that one face of the core takes up, with the bond |
pub(super) fn resins(top: &Top) -> Resins {
    let criteria = &top.criteria;
    let area = top.outline.area();
    let waste = Ratio::from(1.0) + criteria.order_resin_waste.value;
    let laid = laid_over_kept(top);
    let mut lines: Vec<ResinLine> = Vec::new();
    for skin in [Skin::Outer, Skin::Inner] {
        if skin == Skin::Inner {
            let per_area = top.core.material.resin_uptake.value;
            let in_top: Mass = per_area * 2.0 * area;
            let (layer, bought) = ("on both faces of the core".to_owned(), in_top * top.along_crown() * waste);
            lines.push(ResinLine { skin: None, layer, times: 2, per_area, in_top, bought });
        }
        for layer in top.skin(skin).layers().iter().filter(|layer| layer.carries()) {
            let per_area = layer.mass - layer.fibre;
            let in_top: Mass = per_area * area;
            let bought = in_top * laid * waste;
            match lines.last_mut().filter(|last| last.skin == Some(skin) && last.layer == layer.text) {
                Some(last) => {
                    last.times += 1;
                    last.in_top += in_top;
                    last.bought += bought;
                }
                None => {
                    let layer = layer.text.clone();
                    lines.push(ResinLine { skin: Some(skin), layer, times: 1, per_area, in_top, bought });
                }
            }
        }
    }
    let bought: Mass = lines.iter().map(|line| line.bought).sum();
    let mix = if top.resin.family == "epoxy" {
        // What is bought is the mixture: resin and hardener together.
        let share = criteria.order_hardener_share.value;
        let resin = bought / (Ratio::from(1.0) + share);
        Mix { resin, hardener: resin * share, kind: Hardener::Hardener }
    } else {
        Mix { resin: bought, hardener: bought * criteria.order_catalyst_share.value, kind: Hardener::Catalyst }
    };
    Resins { name: top.resin.name.clone(), lines, mix }
}

/// Coats of both skins, each kind once.
pub(super) fn coats(top: &Top) -> Vec<CoatLine> {
    let criteria = &top.criteria;
    let area = top.outline.area();
    let waste = Ratio::from(1.0) + criteria.order_resin_waste.value;
    let mut lines: Vec<CoatLine> = Vec::new();
    for SkinLayer { bought, mass, .. } in layers(top).filter(|layer| !layer.carries()) {
        let in_top: Mass = *mass * area;
        let own = in_top * top.along_crown() * waste;
        let catalyst = (bought.family == GELCOAT).then(|| own * criteria.order_catalyst_share.value);
        match lines.iter_mut().find(|line| line.id == bought.id) {
            Some(line) => {
                line.area += area;
                line.in_top += in_top;
                line.bought += own;
                line.catalyst = line.catalyst.zip(catalyst).map(|(known, own)| known + own);
            }
            None => lines.push(CoatLine {
                id: bought.id.clone(),
                name: bought.name.clone(),
                area,
                in_top,
                bought: own,
                catalyst,
            }),
        }
    }
    lines
}

//! Fabrics as they are sold, and the sub-layers that they are made of.

use super::{Banded, FabricRow, Property, UnknownName, schema::Layer};
use crate::units::{Angle, Ratio};

/// How the fibre lies in a ply.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum PlyForm {
    /// Chopped strands in all directions of the plane.
    Mat,
    /// Woven, alike in both directions.
    Woven,
    /// Straight, in one direction.
    Unidirectional,
}

impl PlyForm {
    /// The word in the table.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Mat => "mat",
            Self::Woven => "woven",
            Self::Unidirectional => "unidirectional",
        }
    }

    /// Form of a sub-layer of a fabric of this form.
    fn of_fabric(word: &str) -> Option<Self> {
        match word {
            "mat" => Some(Self::Mat),
            "woven" => Some(Self::Woven),
            "stitched" => Some(Self::Unidirectional),
            _ => None,
        }
    }
}

/// A part of a fabric that has its own mass per area and its own fibre content.
#[derive(Clone, Debug, PartialEq)]
pub struct Part {
    /// Row that it comes from.
    pub fabric: String,
    /// Whether a design must say at which angle it lies.
    pub needs_angle: bool,
    /// How the fibre lies.
    pub form: PlyForm,
    /// Row of its fibre.
    pub fibre: String,
    /// Sub-layers; angles against the roll direction.
    pub layers: Vec<Layer>,
    /// Fraction of the straight fibre's modulus that the waviness of stitching leaves.
    pub waviness: Option<Property<Ratio>>,
    /// Fibre mass fraction, laid by hand.
    pub fibre_fraction_hand: Option<Banded<Ratio>>,
    /// Fibre mass fraction, under a vacuum bag.
    pub fibre_fraction_bag: Option<Banded<Ratio>>,
    /// Fibre mass fraction, infused.
    pub fibre_fraction_infusion: Option<Banded<Ratio>>,
}

/// What is sold on the roll.
#[derive(Clone, Debug, PartialEq)]
pub struct Fabric {
    /// Name in design files.
    pub id: String,
    /// Name for people.
    pub name: String,
    /// Class that it belongs to.
    pub family: String,
    /// Caution that belongs beside every result.
    pub note: Option<String>,
    /// Whether a design must say at which angle it lies: `biaxial` alone is ambiguous by a factor of two in stiffness.
    pub needs_angle: bool,
    /// One part, or several in a combined fabric; a design gives one mass per area for each.
    pub parts: Vec<Part>,
}

impl Fabric {
    /// Assembles a fabric from its row and, if combined, from the rows of its parts.
    ///
    /// `None` if a part is at fault: its own row says so.
    pub(crate) fn assemble(row: &FabricRow, all: &[FabricRow]) -> Result<Option<Self>, String> {
        let parts = match (&row.parts, row.form.as_str()) {
            (Some(ids), "combined") if !ids.is_empty() => {
                let mut parts = Vec::new();
                for id in ids {
                    let found = all.iter().find(|other| other.id == *id && other.form != "combined");
                    let unknown = || UnknownName::new("fabric", id, all.iter().map(|other| other.id.as_str()));
                    let found = found.ok_or_else(|| format!("part of `{}`: {}", row.id, unknown()))?;
                    let Ok(part) = single(found) else { return Ok(None) };
                    parts.push(part);
                }
                parts
            }
            (None, "mat" | "woven" | "stitched") => vec![single(row)?],
            (_, "combined") => return Err(format!("combined fabric `{}` needs `parts`", row.id)),
            (Some(_), _) => return Err(format!("only a combined fabric has `parts`, not `{}`", row.id)),
            (_, form) => {
                return Err(format!("form `{form}` of `{}` is none of mat, woven, stitched, combined", row.id));
            }
        };
        let directed = parts.iter().any(|part| part.form != PlyForm::Mat);
        if directed && !row.needs_angle {
            return Err(format!("fabric `{}` has a direction: `needs_angle` must be true", row.id));
        }
        Ok(Some(Self {
            id: row.id.clone(),
            name: row.name.clone(),
            family: row.family.clone(),
            note: row.note.clone(),
            needs_angle: row.needs_angle,
            parts,
        }))
    }
}

/// Rounding of shares that are written with two or three digits.
const SHARE_ROUNDING: f64 = 2e-3;

fn single(row: &FabricRow) -> Result<Part, String> {
    let id = &row.id;
    let form = PlyForm::of_fabric(&row.form).ok_or_else(|| format!("fabric `{id}` cannot be a part"))?;
    let fibre = row.fibre.clone().ok_or_else(|| format!("fabric `{id}` needs `fibre`"))?;
    let layers = match (&row.layers, form) {
        (None, PlyForm::Mat) => vec![Layer { angle: Angle::default(), share: Ratio::from(1.0) }],
        (Some(layers), PlyForm::Woven | PlyForm::Unidirectional) => layers.clone(),
        (Some(_), PlyForm::Mat) => return Err(format!("mat `{id}` has no direction, so no `layers`")),
        (None, _) => return Err(format!("fabric `{id}` needs `layers`")),
    };
    let total: f64 = layers.iter().map(|layer| layer.share.value).sum();
    if (total - 1.0).abs() > SHARE_ROUNDING {
        return Err(format!("shares of `{id}` add up to {total}, not to 1"));
    }
    Ok(Part {
        fabric: id.clone(),
        needs_angle: row.needs_angle,
        form,
        fibre,
        layers,
        waviness: row.waviness.clone(),
        fibre_fraction_hand: row.fibre_fraction_hand.clone(),
        fibre_fraction_bag: row.fibre_fraction_bag.clone(),
        fibre_fraction_infusion: row.fibre_fraction_infusion.clone(),
    })
}

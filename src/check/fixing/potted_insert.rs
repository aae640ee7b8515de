//! The core, or the board, round a plug of potting.

use super::{
    Held,
    backing_kind::{BackingKind, backing},
    each,
};
use crate::{
    analysis::{Analysis, Region, core_shear_factor},
    check::{Check, Finding, Outcomes, Subject},
    fastening::{full_depth_pull, partly_potted_pull},
    geometry::Axis,
    material::{Basis, PottedInsert as Row, Property},
    section::Width,
    source::{Citation, DERIVED, Mark},
    strength::SkinBending,
    top::Hold,
    units::{Force, Length, Pressure, Ratio},
};

pub(in crate::check) struct PottedInsert;

impl Check for PottedInsert {
    fn id(&self) -> &'static str {
        "potted-insert"
    }

    fn title(&self) -> &'static str {
        "core round potting"
    }

    fn subject(&self) -> Subject {
        Subject::Fixings
    }

    fn what(&self) -> &'static str {
        "the core shears off round a plug of potting, and tears below one that ends in it"
    }

    fn formula(&self) -> &'static str {
        "T q · factor ≤ P;  plug from skin to skin: P with k t_u = P C/(2π d) [1/r − K1(r/a)/(b K1(b/a))] at its peak;  plug that \
         ends in the core: P = n (2π b h k t_u + π b² k_t s_u)"
    }

    fn limits(&self) -> &'static str {
        "core wide round the plug, b the radius of its bore, no neighbour and no rim within a few diameters; what the skin \
         carries round the mouth of a short plug is left out; a plug does not bear a moment: use two"
    }

    fn citation(&self) -> Citation {
        Citation {
            work: DERIVED,
            locator: "plate equations of a disc fast to both skins; equilibrium of a short plug",
            mark: Mark::Derived,
        }
    }

    fn evaluate(&self, analysis: &Analysis<'_>, outcomes: &mut Outcomes<'_>) {
        each(analysis, outcomes, |held, outcomes| {
            if let Hold::PottedInsert { insert, depth, .. } = &held.fixing().hold {
                match PlugHold::of(&held, analysis, insert, *depth) {
                    Ok(hold) => compare(held, hold, outcomes),
                    Err(reason) => outcomes.cannot(None, held.place().part, reason),
                }
            }
        });
    }
}

/// What lies round a plug, in the state of a case.
#[derive(Clone, Copy)]
struct Round<'a> {
    shear: &'a Property<Pressure>,
    tension: Option<&'a Property<Pressure>>,
    shear_left: Ratio,
    tension_left: Ratio,
    factor: Ratio,
    panel: SkinBending,
    skin_distance: Length,
}

impl<'a> Round<'a> {
    fn plug(held: &Held<'a>, analysis: &Analysis<'_>) -> Result<Self, String> {
        let (region, criteria) = (held.around().region, &held.top.criteria);
        if let Region::Conduit(index) = region {
            let conduit = &held.top.conduits[index].name;
            return Err(format!("{} stands on {conduit}: move one of them", held.fixing().name));
        }
        let section = analysis.sections.of(region);
        let bending = section.section.bending(Axis::X, Width::Wide);
        let panel = |stiffness: Ratio| SkinBending {
            flanges: bending.skin_membranes,
            skins: bending.skins_alone,
            shear: section.shear_stiffness(Axis::X, stiffness),
        };
        let skin_distance = bending.lever;
        if let Some(backing) = backing(held) {
            let (board, kind) = (&backing.board, BackingKind::of(&backing.board));
            let (shear, tension) = (&board.shear_strength, &board.flatwise_tension);
            return Ok(Self {
                shear,
                tension: Some(tension),
                shear_left: kind.left(held, shear.basis),
                tension_left: kind.left(held, tension.basis),
                factor: criteria.core_shear_brittle_factor.value,
                panel: panel(Ratio::from(1.0)),
                skin_distance,
            });
        }
        let core = &held.top.core.material;
        let across = core.shear_strength_w.as_ref().filter(|across| across.value < core.shear_strength.value);
        let (shear, tension) = (across.unwrap_or(&core.shear_strength), core.tensile_strength.as_ref());
        let left = |basis: Basis| held.knockdowns.core_strength(basis).product();
        Ok(Self {
            shear,
            tension,
            shear_left: left(shear.basis),
            tension_left: tension.map_or_else(|| Ratio::from(1.0), |tension| left(tension.basis)),
            factor: core_shear_factor(criteria, core).value,
            panel: panel(held.knockdowns.core_stiffness()),
            skin_distance,
        })
    }
}

/// Pull that draws a plug out of what lies round it.
#[derive(Clone, Copy)]
pub(super) struct PlugHold<'a> {
    /// The pull, knock-downs taken off.
    pub(super) bearable: Force,
    /// Factor on it.
    pub(super) factor: Ratio,
    /// Basis of the weakest value in it.
    pub(super) basis: Basis,
    radius: Length,
    round: Round<'a>,
    /// Its depth in the core, and the tension below it; none where it goes from skin to skin.
    ends: Option<(Length, &'a Property<Pressure>)>,
}

impl<'a> PlugHold<'a> {
    pub(super) fn of(held: &Held<'a>, analysis: &Analysis<'_>, insert: &Row, depth: Length) -> Result<Self, String> {
        let round = Round::plug(held, analysis)?;
        let (radius, factor): (Length, _) = (insert.bore.value / 2.0, held.factor(round.factor));
        let shear: Pressure = round.shear.value * round.shear_left;
        let in_core = depth_in_core(held, depth);
        if in_core >= held.top.core.thickness {
            let bearable = full_depth_pull(radius, shear, &round.panel, round.skin_distance);
            return Ok(Self { bearable, factor, basis: round.shear.basis, radius, round, ends: None });
        }
        let Some(tension) = round.tension else {
            let core = &held.top.core.material.name;
            return Err(format!(
                "{core} has no `tensile_strength` in the table: pot {} from skin to skin",
                held.fixing().name
            ));
        };
        let together = held.top.criteria.potting_together.value;
        let bearable = partly_potted_pull(radius, in_core, shear, tension.value * round.tension_left, together);
        let basis = round.shear.basis.max(tension.basis);
        Ok(Self { bearable, factor, basis, radius, round, ends: Some((in_core, tension)) })
    }
}

/// How deep a plug goes in the core.
pub(super) fn depth_in_core(held: &Held<'_>, depth: Length) -> Length {
    let (in_core, core): (Length, _) = (depth - held.near_skin().laminate().thickness(), held.top.core.thickness);
    // A plug cut to the face of the far skin by a drill is through, whatever the last digit says.
    if in_core >= core * (1.0 - 1e-6) { core } else { in_core.max(Length::default()) }
}

fn compare(held: Held<'_>, hold: PlugHold<'_>, outcomes: &mut Outcomes<'_>) {
    let PlugHold { bearable, factor, basis, radius, round, ends } = hold;
    let demand = held.pull();
    outcomes.compare(Some(held.case), demand / bearable * factor, || {
        let finding = held.pulled(Finding::compare(demand, bearable, factor, basis));
        let finding = match ends {
            None => {
                let finding = finding.term("b", radius).term("d", round.skin_distance);
                finding.term("C", round.panel.core_share()).term("a", round.panel.decay_length())
            }
            Some((depth, tension)) => {
                let finding = finding.term("n", held.top.criteria.potting_together.value).term("b", radius);
                finding.term("h", depth).term("s_u", tension.value).term("k_t", round.tension_left)
            }
        };
        (held.place(), finding.term("t_u", round.shear.value).term("k", round.shear_left))
    });
}

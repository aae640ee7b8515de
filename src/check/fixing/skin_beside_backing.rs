//! The skins bent where the stiff backing, footing or washer ends and the soft core begins.

use uom::si::{force::newton, length::meter};

use super::{
    Held,
    edge_load::{EdgeLoad, each_edge},
    skin_alone::{Bendable, bendable, rigidity},
};
use crate::{
    analysis::Analysis,
    check::{Check, Finding, Outcomes, Subject},
    geometry::Axis,
    load_case::State,
    section::{Skin, Width},
    source::{Citation, DERIVED, Mark},
    strength::{SkinBending, skin_moment_at_edge},
    units::{FlexuralRigidity, Force, ForcePerWidth, Length, Ratio, per_width},
};

pub(in crate::check) struct SkinBesideBacking;

impl Check for SkinBesideBacking {
    fn id(&self) -> &'static str {
        "skin-beside-backing"
    }

    fn title(&self) -> &'static str {
        "skin beside backing"
    }

    fn subject(&self) -> Subject {
        Subject::Fixings
    }

    fn what(&self) -> &'static str {
        "the skin breaks in a sharp bend right beside the backing, the footing or the washer that a mount works on"
    }

    fn formula(&self) -> &'static str {
        "q · factor ≤ k m_u D_s/(a C D_f), a the length over which the bend dies away;  q = P/(2 L) + M/(v L), \
         v = min(w, L/3), beside a strip of width w, L the length over which the load leaves it;  q = [P/(2 (L + w)) + \
         M/(L w + min(L, w)²/3)]/e round a plug or a footing L by w;  q = P/(π w) + 4 M/(π w²) round a disc of width w;  of one \
         fixing P = p T, p by prying"
    }

    fn limits(&self) -> &'static str {
        "skin fast to core and backing, straight edge; a backing takes part no farther than 45 degrees from the footing; m_u at the first ply that fails, bent alone; the bending of the whole \
         panel adds to it (first ply failure); that a skin peels off the edge is not counted: fill and round the edge"
    }

    fn citation(&self) -> Citation {
        Citation {
            work: DERIVED,
            locator: "plate equations of a sandwich that is clamped at an edge",
            mark: Mark::Derived,
        }
    }

    fn evaluate(&self, analysis: &Analysis<'_>, outcomes: &mut Outcomes<'_>) {
        if analysis.mount_forces.is_empty() {
            return;
        }
        let skins = [Skin::Outer, Skin::Inner].map(|skin| {
            let laminate = analysis.sections.field.section.skin(skin);
            Axis::BOTH.map(|axis| {
                bendable(laminate, axis, analysis.top).map(|bears| OfSkin { rigidity: rigidity(laminate, axis), bears })
            })
        });
        let mut known: Option<(State, [Panel; 2])> = None;
        each_edge(analysis, outcomes, |held, load, outcomes| {
            let state = analysis.cases[held.case].state;
            let panels = match known {
                Some((of, panels)) if of == state => panels,
                _ => Axis::BOTH.map(|axis| Panel::of(analysis, &held, axis)),
            };
            known = Some((state, panels));
            for (skin, ways) in [Skin::Outer, Skin::Inner].into_iter().zip(&skins) {
                for (way, panel) in ways.iter().zip(&panels) {
                    match way {
                        Some(way) => compare(held, &load, (skin, *way), *panel, outcomes),
                        None => {
                            let reason = "a ply of the skin has no strength in the table: add it";
                            outcomes.cannot(None, load.place.part, reason);
                        }
                    }
                }
            }
        });
    }
}

/// A skin bent along one axis.
#[derive(Clone, Copy)]
struct OfSkin {
    rigidity: FlexuralRigidity,
    bears: Bendable,
}

/// The panel bent along one axis, in the state of a case.
#[derive(Clone, Copy)]
struct Panel(SkinBending);

impl Panel {
    fn of(analysis: &Analysis<'_>, held: &Held<'_>, axis: Axis) -> Self {
        let field = &analysis.sections.field;
        let bending = field.section.bending(axis, Width::Wide);
        Self(SkinBending {
            flanges: bending.skin_membranes,
            skins: bending.skins_alone,
            shear: field.shear_stiffness(axis, held.knockdowns.core_stiffness()),
        })
    }
}

fn unit() -> ForcePerWidth {
    per_width(Force::new::<newton>(1.0) / Length::new::<meter>(1.0))
}

fn compare(
    held: Held<'_>,
    load: &EdgeLoad,
    (skin, of): (Skin, OfSkin),
    Panel(panel): Panel,
    outcomes: &mut Outcomes<'_>,
) {
    let basis = held.skin(skin).basis();
    let left = held.knockdowns.skin_strength(skin, basis).product();
    let factor = held.factor(of.bears.factor);
    // The moment grows with the shear: what the skin bears of the one says what it bears of the other.
    let moment = skin_moment_at_edge(load.line, &panel, of.rigidity);
    let used: Ratio = moment / (of.bears.moment * left.value) * factor;
    outcomes.compare(Some(held.case), used, || {
        let one = skin_moment_at_edge(unit(), &panel, of.rigidity);
        let bearable = unit() * (of.bears.moment / one * left).value;
        let finding = load.terms(&held, Finding::compare(load.line, bearable, factor, basis));
        let finding = finding.term("a", panel.decay_length()).term("C", panel.core_share());
        let finding = finding.term("D_f", of.rigidity).term("D_s", panel.skins);
        (load.place.in_skin(skin), finding.term("m_u", of.bears.moment).term("k", left))
    });
}

//! The bond by which a backing hangs on the far skin.

use super::{
    Held,
    backing_kind::BackingKind,
    patch::{Patch, each_patch},
};
use crate::{
    analysis::Analysis,
    check::{Check, Finding, Outcomes, Subject},
    fastening::bond_tension,
    source::{Citation, DERIVED, Mark},
    units::{Force, Pressure},
};

pub(in crate::check) struct BackingBond;

impl Check for BackingBond {
    fn id(&self) -> &'static str {
        "backing-bond"
    }

    fn title(&self) -> &'static str {
        "bond of backing"
    }

    fn subject(&self) -> Subject {
        Subject::Fixings
    }

    fn what(&self) -> &'static str {
        "pulled by fixings that end in it, the backing comes off the far skin"
    }

    fn formula(&self) -> &'static str {
        "s · factor ≤ k s_u,  s = n [P/(w L) + 6 M/(w L min(w, L))],  n the share of the far skin, w and L what of the \
         backing takes part;  of one fixing P = q T"
    }

    fn limits(&self) -> &'static str {
        "both skins whole and glued; the load spreads at 45 degrees from the footing, or from the fixing where it holds a \
         pipe; even over the bond, so that peel at its edges is not counted: fill the gaps round the backing and round its \
         edges; prying pulls and presses within the footing and is left out there"
    }

    fn citation(&self) -> Citation {
        Citation { work: DERIVED, locator: "equilibrium; the share by symmetry of the skins", mark: Mark::Derived }
    }

    fn evaluate(&self, analysis: &Analysis<'_>, outcomes: &mut Outcomes<'_>) {
        each_patch(analysis, outcomes, |held, patch, outcomes| {
            if held.fixing().needs_backing() {
                compare(held, &patch, outcomes);
            }
        });
    }
}

/// Why nothing can be said of the bond of a board that nothing sticks to.
pub(super) fn does_not_bond(patch: &Patch<'_>) -> String {
    format!(
        "resin and glue do not hold on {}: {} is held by capture alone; bolt through both skins, or take another board",
        patch.backing.board.name, patch.backing.name
    )
}

fn compare(held: Held<'_>, patch: &Patch<'_>, outcomes: &mut Outcomes<'_>) {
    let board = &patch.backing.board;
    if !board.bondable {
        return outcomes.cannot(None, patch.place.part, does_not_bond(patch));
    }
    let [length, width] = patch.spread(held.top.core.thickness);
    let share = held.top.criteria.backing_far_share.value;
    // Even tension of this pull is what the pull and the moment together do at the worst edge.
    let tilting: Force = 6.0 * (patch.load.moment / length.min(width));
    let stress = bond_tension(patch.load.lift + tilting, share, width, length);
    let strength = &board.flatwise_tension;
    let left = BackingKind::of(board).left(&held, strength.basis);
    let (bearable, factor): (Pressure, _) = (strength.value * left, held.bond_factor(strength.basis));
    outcomes.compare(Some(held.case), stress / bearable * factor, || {
        let finding = Finding::compare(stress, bearable, factor, strength.basis).term("n", share);
        let finding = if patch.alone { held.pulled(finding) } else { finding };
        let finding = finding.term("P", patch.load.lift).term("M", patch.load.moment).term("w", width);
        (patch.place, finding.term("L", length).term("s_u", strength.value).term("k", left))
    });
}

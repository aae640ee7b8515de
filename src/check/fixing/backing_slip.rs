//! The bond between backing and near skin in shear.

use super::{
    Held,
    backing_bond::does_not_bond,
    backing_kind::BackingKind,
    patch::{Patch, each_patch},
};
use crate::{
    analysis::Analysis,
    check::{Check, Finding, Outcomes, Subject},
    fastening::BondLine,
    laminate::Component,
    source::{Citation, Mark, VOLKERSEN_1938},
    units::{Force, Length, Pressure, per_width},
};

pub(in crate::check) struct BackingSlip;

impl Check for BackingSlip {
    fn id(&self) -> &'static str {
        "backing-slip"
    }

    fn title(&self) -> &'static str {
        "slip of backing"
    }

    fn subject(&self) -> Subject {
        Subject::Fixings
    }

    fn what(&self) -> &'static str {
        "pushed sideways or twisted by fixings that end in it, the backing shears off the near skin"
    }

    fn formula(&self) -> &'static str {
        "t · factor ≤ k t_u,  t = V/(2 b L_e) + 6 M_z/(w L √(w² + L²)),  b L_e the worse of w and what counts of L/2, L and \
         what counts of w/2;  of a length l counts L_e = L_t tanh x/(a + (1 − a)/cosh x), x = l/L_t, with 1/L_t² = (3 G/c) \
         (1/A_1 + 1/A_2) of skin and board and a = 1/(1 + A_less/A_more);  t_u the less of the board in shear and its bond in \
         tension"
    }

    fn limits(&self) -> &'static str {
        "as if the board took all of the load and the near skin had none of it; one of the two bonds; the load spreads at 45 \
         degrees, and the stretch of skin and board and the shear of a third of the board's depth say how much of the bond \
         counts; a bond bears no less in shear than in tension"
    }

    fn citation(&self) -> Citation {
        Citation { work: VOLKERSEN_1938, locator: "shear lag; the twist by equilibrium", mark: Mark::Memory }
    }

    fn evaluate(&self, analysis: &Analysis<'_>, outcomes: &mut Outcomes<'_>) {
        each_patch(analysis, outcomes, |held, patch, outcomes| {
            if held.fixing().needs_backing() {
                compare(held, &patch, outcomes);
            }
        });
    }
}

fn compare(held: Held<'_>, patch: &Patch<'_>, outcomes: &mut Outcomes<'_>) {
    let board = &patch.backing.board;
    if !board.bondable {
        return outcomes.cannot(None, patch.place.part, does_not_bond(patch));
    }
    let depth = held.top.core.thickness;
    let [length, width] = patch.spread(depth);
    let skin = held.near_skin().laminate().stiffness();
    let [x, y] = [Component::X, Component::Y].map(|way| skin.a(way, way));
    let bond = BondLine {
        first: if x < y { x } else { y },
        second: per_width(board.modulus.value * depth),
        // The board shears between the bond and its free face, the most at the bond: a third of its depth at full shear.
        glue_thickness: depth / 3.0,
        glue_shear_modulus: board.shear_modulus.value,
    };
    let half: Force = patch.load.side / 2.0;
    let pushed = [(width, length), (length, width)].map(|(b, along)| bond.peak_shear(half, b, along / 2.0));
    let twisted: Pressure = 6.0 * (patch.load.twist / (width * length * length.hypot(width)));
    let stress = pushed[0].max(pushed[1]) + twisted;
    let (shear, tension) = (&board.shear_strength, &board.flatwise_tension);
    let strength = if shear.value < tension.value { shear } else { tension };
    let left = BackingKind::of(board).left(&held, strength.basis);
    let (bearable, factor): (Pressure, _) = (strength.value * left, held.bond_factor(strength.basis));
    outcomes.compare(Some(held.case), stress / bearable * factor, || {
        let along = pushed[0] >= pushed[1];
        let (b, run): (Length, Length) = if along { (width, length) } else { (length, width) };
        let finding = Finding::compare(stress, bearable, factor, strength.basis).term("V", patch.load.side);
        let finding = if patch.alone { held.raised(finding) } else { finding };
        let finding = finding.term("b", b).term("L_e", bond.effective_length(run / 2.0));
        let finding = finding.term("A_1", bond.first).term("A_2", bond.second).term("G", bond.glue_shear_modulus);
        let finding = finding.term("c", depth);
        let finding = finding.term("M_z", patch.load.twist).term("w", width).term("L", length);
        (patch.place, finding.term("t_u", strength.value).term("k", left))
    });
}

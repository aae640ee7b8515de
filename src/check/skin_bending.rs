//! Skin bending: a skin bent by itself over a pipe's seat, under a foot, beside a footing or a backing.

mod hand;
mod places;
mod plate;
mod skins;

use self::skins::Skins;
use super::{Check, Method, Outcomes};
use crate::{
    analysis::Analysis,
    source::{Citation, DERIVED, Mark},
};

pub(super) struct LocalSkinBending;

impl Check for LocalSkinBending {
    fn id(&self) -> &'static str {
        "skin-bending"
    }

    fn title(&self) -> &'static str {
        "skin bending"
    }

    fn what(&self) -> &'static str {
        "a skin breaks where it is bent by itself: over a pipe's seat, under a foot, beside a footing or a backing"
    }

    fn formula(&self) -> &'static str {
        "s · factor ≤ k s_u,  s = s_u (g + m/m_u), g the share M/M_1 of ply failure, s_u and m_u stress and moment of the first \
         ply that fails in the skin alone; C share of the core, a and b the lengths over which shear and dent die \
         away, D_f and D_r of the skin and of both towards each other, R_1, V_1, p_1 what presses them towards each other;  \
         over a pipe's seat of width w, of which h is hard:  m = (1 − h) m_e + h m_h,  even:  m_e = (R/w) C² (D_f/S) (1 − \
         e^(−w/2a)) + R_1 b/4 · B(w/b),  on hard edges:  m_h = V a C D_f/D_s + V_1 b/4, V = the smaller of R and the panel's \
         shear;  under a sole, which presses evenly:  m = (1 + ν)/2 · p C² (D_f/S) (1 − y K1 y) + p_1 l² max((1 + ν)/2 · \
         x kei′ x, 1/6);  beside a rigid footing with sides f:  m_h with V = P/(4 f e);  beside a backing:  \
         m = V a C (D_f/D_s) |1 − √(S/S_b)|"
    }

    fn formula_on_plate(&self) -> Option<&'static str> {
        Some(
            "s · factor ≤ k s_u,  s = s_u (g + m/m_u), g the share (1 + ε)/R of ply failure at the worst state of the region, m as \
             by hand with the plate's push and shear, each times (1 + ε)",
        )
    }

    fn limits(&self) -> &'static str {
        "shares are added, whichever way each bends; the worst state of the region counts at each of its pipes and edges; core \
         that carries no stress along the panel, straight edges, skins fast to core and backing; a round pipe without a tab has a seat of \
         no width; the rims of fastened footings and of what their fixings hold in are skin beside backing; beside \
         conduits and joints of the core it is not looked at"
    }

    fn citation(&self) -> Citation {
        Citation {
            work: DERIVED,
            locator: "two skins on a core that shears and gives way across; held against layered solids",
            mark: Mark::Derived,
        }
    }

    fn evaluate(&self, analysis: &Analysis<'_>, outcomes: &mut Outcomes<'_>) {
        let skins = Skins::new(analysis);
        hand::evaluate(&skins, outcomes);
        outcomes.by(Method::Plate);
        plate::evaluate(&skins, outcomes);
    }
}

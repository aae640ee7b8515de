//! Skin bending: a skin bent by itself over a seat, under a foot, beside a footing or a backing.

mod hand;
mod places;
mod plate;
mod skins;

use self::skins::Skins;
use super::{Check, Method, OnPlate, Outcomes, on_plate::limits_on_plate};
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
        "a skin breaks where it is bent by itself: over a seat, under a foot, beside a footing or a backing"
    }

    fn formula(&self) -> &'static str {
        "factor / T ≤ k,  T the number of times by which all ply stresses may grow, those by the panel's moment M, in full or \
         not at all, and those by the skin's own moment m, until the first ply fails; shown as its largest stress s against k T s, \
         s_g the part of the panel;  over a pipe's seat of width w, h of it hard:  m = (1 − h) m_e + h m_h,  pressed evenly:  \
         m_e = (R/w) C² (D_f/S) (1 − e^(−w/2a)) + R_1 b/4 · B(w/b),  on a hard flat edge:  m_h = V a C D_f/D_s · e^(−t/2a) + V_1 b/4 · \
         |e^(−x) (cos x − sin x)|, x = t/2b, V the smaller of R and the panel's shear;  under a sole, which presses evenly:  \
         m = (1 + ν)/2 · p C² (D_f/S) (1 − y K1 y) + p_1 l² max((1 + ν)/2 · x kei′ x, 1/6);  beside a loose footing, rigid, sides f: \
         m_h with V = [P/(4 f) + 4 M/(π f²)]/e;  beside a backing, which holds both skins:  m = n V a C (D_f/D_s) |1 − √(S/S_b)| e^(−t/2a);  a, b the \
         lengths over which bends with the panel and dents die away, C the core's share of shear, 1 for what dents: the \
         share of the far skin's rigidity in both"
    }

    fn on_plate(&self) -> Option<OnPlate> {
        Some(OnPlate {
            formula: "factor / T ≤ k as by hand, M and N the worst states of the region under a seat or a foot, or a state at the edge of the \
             backing with its own shear V; M and N times (1 + ε) of the region, R and V shown with the error of the shear in them",
            limits: limits_on_plate!(
                "beside pipes, feet and the edges of backings; the skin bends on the core as a plate on a bed, see the check by hand"
            ),
            citation: Citation {
                locator: "two skins on a core that shears and gives way across, forces by elements; held against layered solids",
                ..self.citation()
            },
        })
    }

    fn limits(&self) -> &'static str {
        "a round pipe or a seat on sealant or a pad does not clamp the skin: it presses evenly over its width, next to none for a \
         bare round pipe; h (seat-edge-share) is for bare hard seats; half the thickness t off an edge, nearer a skin is no plate; core that carries \
         no stress along the panel; a person stands where the panel sags; by hand the largest M and V at an edge count together; the rims of \
         fastened footings and of what their fixings hold in are skin beside backing; not beside conduits and joints of the core"
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

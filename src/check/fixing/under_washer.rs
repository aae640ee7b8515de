//! The far skin and what lies below it, under the washer of a through-bolt.

use super::{
    Held,
    backing_kind::{BackingKind, backing},
};
use crate::{
    analysis::Analysis,
    fastening::force_at_crush,
    laminate::Component,
    material::{Basis, Property},
    section::Skin,
    strength::{DeepCore, Denting, SkinOnCore, bonded_core_modulus, foundation_modulus},
    top::Washer,
    units::{Force, Pressure, Ratio},
};

/// Clamping force at which what lies below the skin crushes under a washer.
pub(super) fn crush(held: &Held<'_>, analysis: &Analysis<'_>, washer: Washer) -> (Force, Basis) {
    let (modulus, poisson, strength) = below(held);
    let section = analysis.sections.of(held.around().region);
    let far = if held.mount.near == Skin::Outer { Skin::Inner } else { Skin::Outer };
    let skin = section.section.skin(far);
    let stiffness = skin.stiffness();
    let rigidity = |direction| stiffness.bending_free(direction, direction);
    let (x, y) = (rigidity(Component::X), rigidity(Component::Y));
    // The weaker direction of the skin, as for every dent.
    let skin_rigidity = if x < y { x } else { y };
    let springs = SkinOnCore {
        skin_rigidity,
        poisson: skin.in_plane_constants().nuxy,
        foundation: foundation_modulus(modulus, held.top.core.thickness, Denting::BothSkins),
    };
    let deep = DeepCore { skin_rigidity, core_modulus: bonded_core_modulus(modulus, poisson) };
    let left = match backing(held) {
        Some(backing) => BackingKind::of(&backing.board).left(held, strength.basis),
        None => held.knockdowns.core_strength(strength.basis).product(),
    };
    (force_at_crush(washer.outside / 2.0, &springs, &deep, strength.value * left), strength.basis)
}

fn below<'a>(held: &Held<'a>) -> (Pressure, Ratio, &'a Property<Pressure>) {
    match backing(held) {
        Some(backing) => {
            // As in its section: no table has a Poisson's ratio of boards.
            (backing.board.compressive_modulus.value, Ratio::from(0.3), &backing.board.compressive_strength)
        }
        None => {
            let core = &held.top.core.material;
            (core.compressive_modulus.value, core.in_plane_poisson.value, &core.compressive_strength)
        }
    }
}

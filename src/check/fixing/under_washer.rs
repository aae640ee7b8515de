//! The far skin and what lies below it, under the washer of a through-bolt.

use uom::si::force::newton;

use super::{Held, between::Between, skin_alone::softer_rigidity};
use crate::{
    material::Basis,
    strength::{DeepCore, Denting, DiscLoad, SkinOnCore, bonded_core_modulus, foundation_modulus},
    top::{Bolt, Top, Washer},
    units::{Area, Force, Length, Pressure},
};

/// Diameter on which a washer presses: it reaches only so far beyond the nut before it bends up.
pub(super) fn pressing_diameter(top: &Top, bolt: &Bolt, washer: &Washer) -> Length {
    let reach: Length = washer.thickness * top.criteria.washer_reach.value;
    washer.outside.min(bolt.thread.head_bearing.value + 2.0 * reach)
}

/// What one newton on a washer does to what lies below the skin.
#[derive(Clone, Copy)]
pub(super) struct Pressed {
    pub(super) radius: Length,
    /// As on springs.
    pub(super) springs: Pressure,
    /// As on an elastic body.
    pub(super) deep: Pressure,
    /// Lengths over which the skin spreads it, on springs and on an elastic body.
    pub(super) spread: [Length; 2],
}

impl Pressed {
    pub(super) fn under(held: &Held<'_>, bolt: &Bolt, washer: &Washer) -> Self {
        let skin = held.skin(held.far()).laminate();
        let (below, skin_rigidity) = (Between::at(held), softer_rigidity(skin));
        let modulus = below.modulus(held);
        let springs = SkinOnCore {
            skin_rigidity,
            poisson: skin.in_plane_constants().nuxy,
            foundation: foundation_modulus(modulus, held.top.core.thickness, Denting::BothSkins),
        };
        let deep = DeepCore { skin_rigidity, core_modulus: bonded_core_modulus(modulus, below.poisson(held.top)) };
        let radius: Length = pressing_diameter(held.top, bolt, washer) / 2.0;
        let load = DiscLoad { force: Force::new::<newton>(1.0), radius };
        Self {
            radius,
            springs: springs.core_pressure(load),
            deep: deep.pressure_under_disc(load),
            spread: [springs.spread_length(), deep.spread_length()],
        }
    }

    /// The area that a force seems to press on, by its greatest pressure.
    pub(super) fn area(&self) -> Area {
        Force::new::<newton>(1.0) / self.springs.max(self.deep)
    }
}

/// Clamping force at which what lies below the skin crushes under a washer.
pub(super) fn crush(held: &Held<'_>, bolt: &Bolt, washer: &Washer) -> (Force, Basis) {
    let below = Between::at(held);
    let strength = below.compressive_strength();
    let bearable: Pressure = strength.value * below.left(held, strength.basis);
    (bearable * Pressed::under(held, bolt, washer).area(), strength.basis)
}

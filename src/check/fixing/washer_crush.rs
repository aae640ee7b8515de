//! The core or the backing crushed under the washer of a bolt.

use uom::si::force::newton;

use super::{Held, between::Between, each, skin_alone::softer_rigidity, washer::pressing_diameter};
use crate::{
    analysis::Analysis,
    check::{Check, Finding, Outcomes, Subject},
    load_case::State,
    source::{Citation, Mark, TIMOSHENKO_1959},
    strength::{DeepCore, Denting, DiscLoad, SkinOnCore, bonded_core_modulus, foundation_modulus},
    top::Hold,
    units::{Area, Force, Length, Pressure},
};

pub(in crate::check) struct WasherCrush;

impl Check for WasherCrush {
    fn id(&self) -> &'static str {
        "washer-crush"
    }

    fn title(&self) -> &'static str {
        "crush under washer"
    }

    fn subject(&self) -> Subject {
        Subject::Fixings
    }

    fn what(&self) -> &'static str {
        "the washer of a through-bolt without a sleeve presses the skin into the core or the backing"
    }

    fn formula(&self) -> &'static str {
        "s · factor ≤ k s_c,  s = max(s_springs, s_deep),  s_springs = T q/(π b²) [1 + x ker′ x], x = b/l, \
         l = (D_f/K)^(1/4), K = 2 E_c/c,  s_deep = T q/(π b²) y ∫ J₁(y t)/(1 + t³) dt, y = b/l_0, l_0 = (2 D_f/E)^(1/3), \
         E = 4 (1 − ν) E_c/((1 + ν)(3 − 4 ν))"
    }

    fn limits(&self) -> &'static str {
        "pull alone; tightening adds to it and is limited by its torque; washer that presses evenly within its reach beyond \
         the nut; the hole is left out; with a sleeve the washer stands on that"
    }

    fn citation(&self) -> Citation {
        Citation { work: TIMOSHENKO_1959, locator: "plates on an elastic foundation", mark: Mark::Derived }
    }

    fn evaluate(&self, analysis: &Analysis<'_>, outcomes: &mut Outcomes<'_>) {
        // The pressure grows with the pull, and the bolts of a mount are alike: one answer serves them all.
        let mut known: Option<(Key, Pressed)> = None;
        each(analysis, |held| {
            let Hold::ThroughBolt { bolt, washer, sleeve: None } = &held.fixing().hold else { return };
            let backing = held.around().backing.filter(|around| around.holds(held.top)).map(|around| around.backing);
            let key = (held.forces.mount, analysis.cases[held.case].state, backing);
            let pressed = match known {
                Some((of, pressed)) if of == key => pressed,
                _ => Pressed::under(&held, pressing_diameter(held.top, bolt, washer) / 2.0),
            };
            known = Some((key, pressed));
            compare(held, pressed, outcomes);
        });
    }
}

/// Mount, state, and the backing that the bolt stands in.
type Key = (usize, State, Option<usize>);

/// What one newton on the washer does.
#[derive(Clone, Copy)]
struct Pressed {
    radius: Length,
    springs: Pressure,
    deep: Pressure,
    spread: [Length; 2],
}

impl Pressed {
    fn under(held: &Held<'_>, radius: Length) -> Self {
        let skin = held.skin(held.far()).laminate();
        let below = Between::at(held);
        let modulus = below.modulus(held);
        let skin_rigidity = softer_rigidity(skin);
        let springs = SkinOnCore {
            skin_rigidity,
            poisson: skin.in_plane_constants().nuxy,
            foundation: foundation_modulus(modulus, held.top.core.thickness, Denting::BothSkins),
        };
        let deep = DeepCore { skin_rigidity, core_modulus: bonded_core_modulus(modulus, below.poisson()) };
        let load = DiscLoad { force: Force::new::<newton>(1.0), radius };
        Self {
            radius,
            springs: springs.core_pressure(load),
            deep: deep.pressure_under_disc(load),
            spread: [springs.spread_length(), deep.spread_length()],
        }
    }
}

fn compare(held: Held<'_>, pressed: Pressed, outcomes: &mut Outcomes<'_>) {
    let below = Between::at(&held);
    let strength = below.compressive_strength();
    let left = below.left(&held, strength.basis);
    let factor = held.factor(held.top.criteria.core_crush_factor.value);
    let one: Area = Force::new::<newton>(1.0) / pressed.springs.max(pressed.deep);
    let (demand, bearable): (Pressure, Pressure) = (held.pull() / one, strength.value * left);
    outcomes.compare(Some(held.case), demand / bearable * factor, || {
        let times = held.pull() / Force::new::<newton>(1.0);
        let finding = held.pulled(Finding::compare(demand, bearable, factor, strength.basis));
        let finding = finding.term("b", pressed.radius).term("s_springs", pressed.springs * times);
        let finding = finding.term("s_deep", pressed.deep * times).term("l", pressed.spread[0]);
        let finding = finding.term("l_0", pressed.spread[1]).term("c", held.top.core.thickness);
        let finding = finding.term("E_c", below.modulus(&held)).term("s_c", strength.value).term("k", left);
        (held.place().in_skin(held.far()), finding)
    });
}

//! The core or the backing crushed under the washer of a bolt.

use uom::si::force::newton;

use super::{Held, between::Between, each, under_washer::Pressed};
use crate::{
    analysis::Analysis,
    check::{Check, Finding, Outcomes, Subject},
    load_case::State,
    source::{Citation, Mark, TIMOSHENKO_1959},
    top::Hold,
    units::{Force, Pressure},
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
        "the washer of a through-bolt is pulled into the skin and the core or the backing below it"
    }

    fn formula(&self) -> &'static str {
        "s · factor ≤ k s_c,  s = max(s_springs, s_deep),  s_springs = T q/(π b²) [1 + x ker′ x], x = b/l, \
         l = (D_f/K)^(1/4), K = 2 E_c/c,  s_deep = T q/(π b²) y ∫ J₁(y t)/(1 + t³) dt, y = b/l_0, l_0 = (2 D_f/E)^(1/3), \
         E = 4 (1 − ν) E_c/((1 + ν)(3 − 4 ν))"
    }

    fn limits(&self) -> &'static str {
        "pull alone; tightening adds to it and is limited by its torque; washer that presses evenly within its reach beyond \
         the nut; the hole is left out; a sleeve takes the preload, not the pull"
    }

    fn citation(&self) -> Citation {
        Citation { work: TIMOSHENKO_1959, locator: "plates on an elastic foundation", mark: Mark::Derived }
    }

    fn evaluate(&self, analysis: &Analysis<'_>, outcomes: &mut Outcomes<'_>) {
        // The pressure grows with the pull, and the bolts of a mount are alike: one answer serves them all.
        let mut known: Option<(Key, Pressed)> = None;
        each(analysis, outcomes, |held, outcomes| {
            let Hold::ThroughBolt { bolt, washer, .. } = &held.fixing().hold else { return };
            let backing = held.around().backing.filter(|around| around.holds(held.top)).map(|around| around.backing);
            let key = (held.forces.mount, analysis.cases[held.case].state, backing);
            let pressed = match known {
                Some((of, pressed)) if of == key => pressed,
                _ => Pressed::under(&held, bolt, washer),
            };
            known = Some((key, pressed));
            compare(held, pressed, outcomes);
        });
    }
}

/// Mount, state, and the backing that the bolt stands in.
type Key = (usize, State, Option<usize>);

fn compare(held: Held<'_>, pressed: Pressed, outcomes: &mut Outcomes<'_>) {
    let below = Between::at(&held);
    let strength = below.compressive_strength();
    let left = below.left(&held, strength.basis);
    let factor = held.factor(held.top.criteria.core_crush_factor.value);
    let (demand, bearable): (Pressure, Pressure) = (held.pull() / pressed.area(), strength.value * left);
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

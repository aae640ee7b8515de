//! Skin indentation: a foot or a footing dents the skin into the core for good.

use super::{Check, Finding, Outcomes, Part, Place};
use crate::{
    analysis::{Analysis, GearAction, Region},
    geometry::Point,
    source::{Citation, Mark, TIMOSHENKO_1959},
    strength::{DeepCore, DiscLoad, bonded_core_modulus},
    units::{Force, Length, Pressure},
};

pub(super) struct SkinIndentation;

impl Check for SkinIndentation {
    fn id(&self) -> &'static str {
        "skin-indentation"
    }

    fn title(&self) -> &'static str {
        "skin indentation"
    }

    fn what(&self) -> &'static str {
        "a foot or a footing presses a lasting dent into the outer skin"
    }

    fn formula(&self) -> &'static str {
        "s · factor ≤ k s_c,  s = max(s_springs, s_deep),  s_springs = P/(π b²) [1 + x ker′ x], x = b/l, \
         l = (D_f/K)^(1/4), K = 2 E_c/c,  s_deep = P/(π b²) y ∫ J₁(y t)/(1 + t³) dt, y = b/l_0, l_0 = (2 D_f/E)^(1/3), \
         E = 4 (1 − ν) E_c/((1 + ν)(3 − 4 ν))"
    }

    fn limits(&self) -> &'static str {
        "the skin as a plate under an even disc of the area of the foot, on a bed of springs that do not hold to one \
         another, as under a large foot, and on an elastic core without a bottom, as under a small one; core elastic, with one \
         modulus in all directions"
    }

    fn citation(&self) -> Citation {
        Citation { work: TIMOSHENKO_1959, locator: "plates on an elastic foundation", mark: Mark::Derived }
    }

    fn evaluate(&self, analysis: &Analysis<'_>, outcomes: &mut Outcomes<'_>) {
        let top = analysis.top;
        let strength = &top.core.material.compressive_strength;
        for (number, case) in analysis.cases.iter().enumerate() {
            let mut feet: Vec<(Part, Force, Length, Option<Point>)> = Vec::new();
            if let Some(people) = case.people {
                feet.push((Part::Foot, people.each, top.criteria.standing_footprint.value, None));
            }
            if case.with_gear {
                // A footing over a backing stands on the backing: nothing is there to be dented.
                let on_core = |index: usize| !matches!(analysis.below_gear[index], Region::Backing(_));
                feet.extend(top.gear.iter().enumerate().filter(|(index, _)| on_core(*index)).map(|(index, gear)| {
                    let force: Force = -GearAction::of(top, gear, case).up;
                    (Part::Gear(index), force.max(Force::default()), gear.footing(), Some(gear.at))
                }));
            }
            for (part, force, side, at) in feet {
                let skin = analysis.skin_on_core(number);
                let radius: Length = side / std::f64::consts::PI.sqrt();
                let load = DiscLoad { force, radius };
                let (springs, deep) = (skin.core_pressure(load), deep_core(analysis, number).pressure_under_disc(load));
                let pressure = springs.max(deep);
                let left = analysis.knockdowns(case.state).core_strength(strength.basis).product();
                let bearable: Pressure = strength.value * left;
                let factor = top.criteria.indentation_factor.value;
                outcomes.compare(Some(number), pressure / bearable * factor, || {
                    let finding = Finding::compare(pressure, bearable, factor, strength.basis)
                        .term("P", force)
                        .term("b", radius)
                        .term("s_springs", springs)
                        .term("s_deep", deep)
                        .term("l", skin.spread_length())
                        .term("l_0", deep_core(analysis, number).spread_length())
                        .term("s_c", strength.value)
                        .term("k", left);
                    (Place::of(part, at), finding)
                });
            }
        }
    }
}

/// The outer skin on a core that is deep against the foot.
fn deep_core(analysis: &Analysis<'_>, case: usize) -> DeepCore {
    let core = &analysis.top.core.material;
    let modulus = core.compressive_modulus.value * analysis.core_left(case);
    DeepCore {
        skin_rigidity: analysis.skin_on_core(case).skin_rigidity,
        core_modulus: bonded_core_modulus(modulus, core.in_plane_poisson.value),
    }
}

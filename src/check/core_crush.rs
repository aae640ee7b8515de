//! Core crush: the core gives way under a pipe, a foot or a footing.

use super::{Check, Finding, Method, OnPlate, Outcomes, Part, Place, on_plate::limits_on_plate};
use crate::{
    analysis::{Analysis, GearAction, Region, below_footing},
    geometry::Point,
    material::Property,
    source::{Citation, DERIVED, Mark},
    strength::{Pad, line_pressure, pad_pressure, tipped_pad_pressure},
    units::{Force, ForcePerWidth, Length, Pressure, Ratio, Torque, per_width, plain},
};

pub(super) struct CoreCrush;

impl Check for CoreCrush {
    fn id(&self) -> &'static str {
        "core-crush"
    }

    fn title(&self) -> &'static str {
        "core crush"
    }

    fn what(&self) -> &'static str {
        "the core, or the backing in its place, is crushed under a pipe, a wall, a pad, a foot or a footing"
    }

    fn formula(&self) -> &'static str {
        "s · factor ≤ k s_c,  s = R/(w + 2t) on the seat of a pipe or a wall, of width w, P/(a + 2t)² under a square of side a, \
         6 M/(a + 2t)³ more at the rim of a footing that is not fastened"
    }

    fn on_plate(&self) -> Option<OnPlate> {
        Some(OnPlate {
            formula: "s (1 + ε) · factor ≤ k s_c,  s = R/(w + 2t) on a seat of width w, R the mean push over the depth of the panel, on a pad on the more heavily pressed half of its width",
            limits: limits_on_plate!(
                "a seat that presses evenly; the load spreads at 45 degrees through the skin alone, common practice without a source; \
                 the pull of wind on fixings is not in it"
            ),
            citation: Citation {
                work: DERIVED,
                locator: "finite elements on a bed of core; spread through the skin by common practice",
                mark: Mark::Practice,
            },
        })
    }

    fn limits(&self) -> &'static str {
        "a seat that presses evenly; the load spreads at 45 degrees through the skin alone, common practice without a \
         source; the pull of wind on fixings is not in it; a footing that is not fastened stays in touch all over, as a \
         square tipped along a side; one that is fastened: pressure of footing"
    }

    fn citation(&self) -> Citation {
        Citation {
            work: DERIVED,
            locator: "equilibrium; spread through the skin by common practice",
            mark: Mark::Practice,
        }
    }

    fn evaluate(&self, analysis: &Analysis<'_>, outcomes: &mut Outcomes<'_>) {
        at_pipes(analysis, outcomes);
        under_feet(analysis, outcomes);
        outcomes.by(Method::Plate);
        on_plate(analysis, outcomes);
    }
}

/// The push on each pipe by the plate method, its mean over the depth of the panel.
fn on_plate(analysis: &Analysis<'_>, outcomes: &mut Outcomes<'_>) {
    let skin = analysis.top.inner.laminate().thickness();
    for forces in analysis.fields() {
        for pipe in &forces.pipes {
            let seat = analysis.top.supports[pipe.pipe].seat;
            let error = Ratio::from(1.0) + pipe.along_error[0];
            let pressure = line_pressure(per_width(plain(pipe.push) * error), seat, skin);
            for region in analysis.under_pipe(pipe.pipe) {
                let place = Place::of(Part::Support(pipe.pipe), Some(pipe.push_at)).under(pipe.push_under);
                compare(analysis, outcomes, forces.case, (pressure, region), place, |finding| {
                    finding.term("R", pipe.push).term("ε", pipe.along_error[0]).term("w", seat).term("t", skin)
                });
            }
        }
    }
}

fn at_pipes(analysis: &Analysis<'_>, outcomes: &mut Outcomes<'_>) {
    let skin = analysis.top.inner.laminate().thickness();
    for forces in &analysis.strips {
        let line = &analysis.lines[forces.line];
        for (seat, own) in line.seats.iter().zip(&forces.seats) {
            let Some(pipe) = seat.pipe else { continue };
            let region = line.region_at(seat.at);
            let push: ForcePerWidth = per_width(plain(own.push.value) * analysis.rim_twist(line, seat));
            let pressure = line_pressure(push, seat.width, skin);
            let place = Place::of(Part::Support(pipe), Some(line.place(seat.at)))
                .under(own.push.load_at.map(|at| line.place(at)));
            compare(analysis, outcomes, forces.case, (pressure, region), place, |finding| {
                finding.term("R", push).term("w", seat.width).term("t", skin)
            });
        }
    }
    for load in &analysis.pipe_loads {
        let seat = analysis.top.supports[load.pipe].seat;
        let pressure = line_pressure(load.push, seat, skin);
        for region in analysis.under_pipe(load.pipe) {
            let place = Place::of(Part::Support(load.pipe), Some(load.at));
            compare(analysis, outcomes, load.case, (pressure, region), place, |finding| {
                finding.term("R", load.push).term("w", seat).term("t", skin)
            });
        }
    }
}

/// What presses on a square of the outer skin.
struct Foot {
    part: Part,
    force: Force,
    moment: Torque,
    side: Length,
    at: Option<Point>,
}

fn under_feet(analysis: &Analysis<'_>, outcomes: &mut Outcomes<'_>) {
    let top = analysis.top;
    let skin = top.outer.laminate().thickness();
    for (number, case) in analysis.cases.iter().enumerate() {
        let mut feet: Vec<Foot> = Vec::new();
        if let Some(people) = case.people {
            let side = top.criteria.standing_footprint.value;
            feet.push(Foot { part: Part::Foot, force: people.each, moment: Torque::default(), side, at: None });
        }
        if case.with_gear {
            feet.extend(top.gear.iter().enumerate().map(|(index, gear)| {
                let action = GearAction::of(top, gear, case);
                let force = (-action.up).max(Force::default());
                // What is fastened is pressed down by its fixings too: pressure of footing.
                let moment = if gear.fastened.is_none() { action.moment.abs() } else { Torque::default() };
                Foot { part: Part::Gear(index), force, moment, side: gear.footing(), at: Some(gear.at) }
            }));
        }
        for Foot { part, force, moment, side, at } in feet {
            let pressure: Pressure =
                pad_pressure(force, Pad { length: side, width: side }, skin) + tipped_pad_pressure(moment, side, skin);
            // A backing under the gear helps; a foot stands anywhere.
            let below =
                if let Part::Gear(index) = part { below_footing(top, &top.gear[index]) } else { vec![Region::Field] };
            for region in below {
                compare(analysis, outcomes, number, (pressure, region), Place::of(part, at), |finding| {
                    let finding = finding.term("P", force).term("a", side).term("t", skin);
                    if moment == Torque::default() { finding } else { finding.term("M", moment) }
                });
            }
        }
    }
}

fn compare(
    analysis: &Analysis<'_>,
    outcomes: &mut Outcomes<'_>,
    case: usize,
    (pressure, region): (Pressure, Region),
    place: Place,
    terms: impl FnOnce(Finding) -> Finding,
) {
    let knockdowns = analysis.knockdowns(analysis.cases[case].state);
    let (strength, left): (&Property<Pressure>, Ratio) = match region {
        Region::Backing(index) => {
            let strength = &analysis.top.backings[index].board.compressive_strength;
            (strength, knockdowns.board_strength(strength.basis).product())
        }
        Region::Field | Region::Conduit(_) => {
            let strength = &analysis.top.core.material.compressive_strength;
            (strength, knockdowns.core_strength(strength.basis).product())
        }
    };
    let factor = analysis.top.criteria.core_crush_factor.value;
    let bearable: Pressure = strength.value * left;
    outcomes.compare(Some(case), pressure / bearable * factor, || {
        let finding = Finding::compare(pressure, bearable, factor, strength.basis);
        (place, terms(finding).term("s_c", strength.value).term("k", left))
    });
}

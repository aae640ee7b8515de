//! First natural frequency.

use super::{Check, Finding, Method, OnPlate, Outcomes, Part, Place};
use crate::{
    analysis::{Analysis, Line, Role, bay_frequency, swinging_strip},
    closed_form::strip::Swing,
    material::Basis,
    source::{Citation, DERIVED, Mark},
    units::{Frequency, Length, LinearMassDensity, Ratio},
};

pub(super) struct FirstFrequency;

impl Check for FirstFrequency {
    fn id(&self) -> &'static str {
        "frequency"
    }

    fn title(&self) -> &'static str {
        "natural frequency"
    }

    fn what(&self) -> &'static str {
        "the top swings with the engine or the road, rattles and loosens its fixings"
    }

    fn formula(&self) -> &'static str {
        "f_min ≤ f_1,  f_1 of the slowest strip with its gear by exact elements, of the plate by its series, or of the whole top \
         as a plate"
    }

    fn on_plate(&self) -> Option<OnPlate> {
        Some(OnPlate {
            formula: "f ≥ f_min,  f the lowest swing of the whole top on its pipes, its gear with it",
            limits: "the top a shell that yields to shear, on its own outline, held down all along its pipes, which it does not leave when it swings a little; gear rides on its footing and does not rock; pipes weigh nothing, and those without wall, alloy or two posts are rigid",
            citation: Citation {
                work: DERIVED,
                locator: "finite elements with distributed mass; the limit is that of floors",
                mark: Mark::Derived,
            },
        })
    }

    fn limits(&self) -> &'static str {
        "strips and bays on rigid pipes: a limber frame lowers f_1, which the whole top on its pipes has in it; an engine's own \
         orders have to be compared with f_1 by hand"
    }

    fn citation(&self) -> Citation {
        Citation {
            work: DERIVED,
            locator: "strip with distributed mass; the limit is that of floors",
            mark: Mark::Derived,
        }
    }

    fn evaluate(&self, analysis: &Analysis<'_>, outcomes: &mut Outcomes<'_>) {
        let top = analysis.top;
        let left = analysis.swinging_stiffness();
        let mut swings: Vec<(Swing, Place)> = Vec::new();
        let mut looked_at: Vec<&Line> = Vec::new();
        // The heaviest first: a strip beside an overhang swings slower than the same strip without one.
        let mut lines: Vec<&Line> = analysis.lines.iter().filter(|line| line.swings()).collect();
        lines.sort_by_key(|line| line.carries.is_none());
        for line in lines {
            if looked_at.iter().any(|known| known.swings_no_faster_than(line)) {
                continue;
            }
            looked_at.push(line);
            let gear: Vec<_> = line
                .gear
                .iter()
                .map(|on_line| {
                    // Gear moves with a strip as wide as half its widest bay: what a plate would give for the mass.
                    let width = line.widest_bay() / 2.0;
                    let mass: LinearMassDensity = top.gear[on_line.gear].mass / width;
                    (on_line.at, mass)
                })
                .collect();
            match swinging_strip(top, &analysis.sections, line, left).and_then(|strip| strip.swing(&gear)) {
                Ok(swing) => {
                    let part = if line.role == Role::EndOverhang { Part::Tip } else { Part::Bay };
                    let along = if part == Part::Tip { Length::default() } else { line.length() / 2.0 };
                    swings.push((swing, Place::of(part, Some(line.place(along)))));
                }
                Err(error) => outcomes.cannot(None, Part::Whole, error.to_string()),
            }
        }
        let mut seen = slowest(swings);
        for bay in &analysis.bays {
            match bay_frequency(top, &analysis.sections, bay, left) {
                Ok(frequency) => seen.push((frequency, Place::of(Part::Bay, Some(bay.middle())))),
                Err(error) => outcomes.cannot(None, Part::Bay, error.to_string()),
            }
        }
        let wanted = top.criteria.first_frequency_limit.value;
        let compare = |outcomes: &mut Outcomes<'_>, frequency: Frequency, place: Place| {
            outcomes.compare(None, wanted / frequency, || {
                let finding = Finding::compare(wanted, frequency, Ratio::from(1.0), Basis::Typical)
                    .term("m", top.field_mass())
                    .term("k of the core's modulus", left);
                (place, finding)
            });
        };
        for (frequency, place) in seen {
            compare(outcomes, frequency, place);
        }
        outcomes.by(Method::Plate);
        if let Some(Ok(method)) = &analysis.whole {
            match &method.frequency {
                Some(Ok(frequency)) => compare(outcomes, *frequency, Place::of(Part::Whole, None)),
                Some(Err(error)) => outcomes.cannot(None, Part::Whole, error.to_string()),
                None => outcomes.cannot(None, Part::Whole, "not sought on a rough plate".to_owned()),
            }
        }
    }
}

/// The strips that may swing slowest, with their frequencies: one whose lower bound lies above a known frequency is not.
fn slowest(mut swings: Vec<(Swing, Place)>) -> Vec<(Frequency, Place)> {
    swings.sort_by(|(a, _), (b, _)| a.at_least().value.total_cmp(&b.at_least().value));
    let mut seen: Vec<(Frequency, Place)> = Vec::with_capacity(swings.len());
    for (swing, place) in swings {
        if seen.iter().any(|(known, _)| *known <= swing.at_least()) {
            break;
        }
        seen.push((swing.first_frequency(), place));
    }
    seen
}

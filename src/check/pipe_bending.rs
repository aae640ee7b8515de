//! Pipe bending: a pipe of the frame bends for good between its posts, or beside a weld.

use super::{Check, Finding, Method, OnPlate, Outcomes, Part, Place, on_plate::limits_on_plate};
use crate::{
    analysis::{Analysis, PipeModel, PipeMoment},
    material::{Alloy, Property},
    source::{Citation, EN_1999_1_1, Mark},
    strength::Tube,
    top::{Support, Top},
    units::{Pressure, Ratio, System, show},
};

pub(super) struct PipeBending;

impl Check for PipeBending {
    fn id(&self) -> &'static str {
        "pipe-bending"
    }

    fn title(&self) -> &'static str {
        "pipe bending"
    }

    fn what(&self) -> &'static str {
        "a pipe of the frame bends for good between its posts, or in the metal that a weld has softened"
    }

    fn formula(&self) -> &'static str {
        "M/Z · factor ≤ f,  Z = π (D⁴ − (D − 2t)⁴)/(32 D) of a tube of diameter D and wall t; f the proof strength of the \
         alloy, beside a weld that of the softened zone"
    }

    fn on_plate(&self) -> Option<OnPlate> {
        Some(OnPlate {
            formula: "M (1 + ε)/Z · factor ≤ f,  Z = π (D⁴ − (D − 2t)⁴)/(32 D) of a tube of diameter D and wall t; f the proof strength \
             of the alloy, beside a weld that of the softened zone",
            limits: limits_on_plate!(
                "pipes alone, walls and pads do not bend; up and down bending by the top alone, hinged on posts that do not sink; posts welded all round, pipes that cross or touch welded there and joined by a hinge, nothing else welded on between them; a bend of 20° or more taken as a hinge, so that nothing passes it by twist"
            ),
            citation: Citation { locator: "6.2.5, elastic moment; M by finite elements, derived", ..self.citation() },
        })
    }

    fn plate_alone(&self) -> bool {
        true
    }

    fn limits(&self) -> &'static str {
        "pipes alone, walls and pads do not bend; up and down bending by the top alone, hinged on posts that do not sink; posts welded all round, pipes \
         that cross or touch welded there and joined by a hinge, nothing else welded on between them; the standard counts the higher tensile strength of a short softened zone, this does not; the \
         weight and the sideways bending of the pipe, the wall where a post stands on it, and fatigue of the welds are not in it"
    }

    fn citation(&self) -> Citation {
        Citation {
            work: EN_1999_1_1,
            locator: "6.2.5, elastic moment; strengths of Table 3.2b; zone of 6.1.6",
            mark: Mark::Memory,
        }
    }

    fn evaluate(&self, analysis: &Analysis<'_>, outcomes: &mut Outcomes<'_>) {
        // The hand method takes pipes as rigid: it knows nothing of their bending.
        let Some(whole) = &analysis.whole else { return };
        outcomes.by(Method::Plate);
        let method = match whole {
            Ok(method) => method,
            Err(reason) => {
                outcomes.cannot(
                    None,
                    Part::Whole,
                    format!("there is no plate solution, so no moment of pipes: {reason}"),
                );
                return;
            }
        };
        for (number, (pipe, model)) in analysis.top.supports.iter().zip(&method.pipes).enumerate() {
            // A wall or a pad does not bend.
            if pipe.pipe().is_none() {
                continue;
            }
            match Bent::of(analysis.top, pipe, *model) {
                Ok(bent) => look(analysis, number, &bent, outcomes),
                Err(reason) => {
                    let reason = carried(analysis.top, number).unwrap_or(reason);
                    outcomes.cannot(None, Part::Support(number), reason);
                }
            }
        }
    }
}

/// A pipe whose bending is known.
struct Bent<'a> {
    tube: Tube,
    parent: &'a Property<Pressure>,
    weld: &'a Property<Pressure>,
}

impl<'a> Bent<'a> {
    fn of(top: &Top, support: &'a Support, model: PipeModel) -> Result<Self, String> {
        let name = &support.name;
        let Some(pipe) = support.pipe() else { return Err(unknown(support)) };
        let (Some(wall), Some(alloy), PipeModel::Beam) = (pipe.wall, &pipe.alloy, model) else {
            return Err(unknown(support));
        };
        let Some(weld) = &alloy.weld_yield_strength else {
            return Err(format!("{name}: {} has no strength beside welds in the table", alloy.name));
        };
        let tube = Tube { outside: pipe.outside, wall };
        let most = most_slender(top, alloy);
        if tube.slenderness() > most {
            let least = pipe.outside * 9.0 / (most * most).value;
            return Err(format!(
                "{name}: a wall of {} may buckle before it yields: from {} on this is known",
                show(wall, top.report),
                show(least, top.report)
            ));
        }
        Ok(Self { tube, parent: &alloy.yield_strength, weld })
    }
}

/// Why nothing is known of a pipe that is taken as rigid.
fn unknown(support: &Support) -> String {
    let Some(pipe) = support.pipe() else { return format!("{} is no pipe", support.name) };
    format!(
        "{}: its bending is not known, since it is taken as rigid: give {}",
        support.name,
        pipe.missing().join(" and ")
    )
}

/// Why nothing is known of a pipe that others would carry which are not known themselves, and of what these bear for it.
fn carried(top: &Top, number: usize) -> Option<String> {
    let support = &top.supports[number];
    let pipe = support.pipe()?;
    if pipe.posts_hold() || pipe.wall.is_none() || pipe.alloy.is_none() {
        return None;
    }
    let joints = top.joints();
    let own = joints.iter().filter(|joint| joint.pipes.contains(&number));
    let carriers: Vec<&str> = own
        .flat_map(|joint| joint.pipes)
        .filter(|pipe| *pipe != number)
        .map(|pipe| top.supports[pipe].name.as_str())
        .collect();
    (!carriers.is_empty()).then(|| {
        format!(
            "{}: its bending is not known. Two pipes that bend themselves would carry it, or posts: of what it is joined to \
             ({}) too little is known. It is taken as rigid and as standing by itself, and what it hands on is in nothing. Give \
             `wall`, `alloy` and what holds them for all of these, or check the top without it",
            support.name,
            carriers.join(" and ")
        )
    })
}

/// Most slenderness of the wall: the softer the alloy, the more.
fn most_slender(top: &Top, alloy: &Alloy) -> Ratio {
    let of = Pressure::new::<uom::si::pressure::megapascal>(250.0) / alloy.yield_strength.value;
    top.criteria.pipe_wall_slenderness.value * of.value.sqrt()
}

fn look(analysis: &Analysis<'_>, number: usize, bent: &Bent<'_>, outcomes: &mut Outcomes<'_>) {
    for forces in analysis.fields() {
        for pipe in forces.pipes.iter().filter(|pipe| pipe.pipe == number) {
            let sides =
                [(pipe.bent, Part::Support(number), bent.parent), (pipe.bent_at_weld, Part::Weld(number), bent.weld)];
            for (most, part, strength) in sides {
                compare(analysis, outcomes, forces.case, (bent.tube, most), (part, strength));
            }
        }
    }
}

fn compare(
    analysis: &Analysis<'_>,
    outcomes: &mut Outcomes<'_>,
    case: usize,
    (tube, most): (Tube, PipeMoment),
    (part, strength): (Part, &Property<Pressure>),
) {
    let factor = analysis.top.criteria.pipe_bending_factor.value;
    let stress = tube.bending_stress(most.moment * (1.0 + most.error.value));
    outcomes.compare(Some(case), stress / strength.value * factor, || {
        let finding = Finding::compare(stress, strength.value, factor, strength.basis)
            .term("M", most.moment)
            .term("ε", most.error)
            .term("D", tube.outside)
            .term("t", tube.wall)
            .term("f", strength.value);
        (Place::of(part, Some(most.at)).under(most.under), finding)
    });
}

/// What would let a pipe bear a moment of which it bears too little: a thicker wall, a larger diameter, posts closer.
#[must_use]
pub fn stronger_pipe(support: &Support, used: Ratio, system: System) -> Option<String> {
    let pipe = support.pipe()?;
    let tube = Tube { outside: pipe.outside, wall: pipe.wall? };
    let wanted = tube.section_modulus() * used;
    let step = match system {
        System::Us => crate::units::Length::new::<uom::si::length::inch>(0.25),
        System::Si => crate::units::Length::new::<uom::si::length::millimeter>(5.0),
    };
    let outside = (1..=20)
        .map(|steps| tube.outside + step * f64::from(steps))
        .find(|&outside| Tube { outside, ..tube }.section_modulus() >= wanted);
    let wall = tube.wall_for(wanted).map(|wall| format!("a wall of {}", show(wall, system)));
    let outside = outside.map(|outside| format!("{} outside with the wall it has", show(outside, system)));
    let ways: Vec<String> = wall.into_iter().chain(outside).collect();
    let ways = if ways.is_empty() { String::new() } else { format!("{}, or ", ways.join(", or ")) };
    Some(format!(
        "{}: {ways}posts closer together by a share of {:.0} %, for the moment that it has now; a stiffer pipe draws a little \
         more",
        support.name,
        (1.0 - 1.0 / used.value) * 100.0
    ))
}

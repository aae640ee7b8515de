//! Cautions: short, and about what this result shows.

use super::{Answer, Report, without_fixings};
use crate::{
    analysis::{Analysis, HeldDown, Layout, PipeModel, below_footing},
    check::Verdict,
    load_case::Repeats,
    material::Basis,
    service::{Sun, Walking},
    top::{Carrier, Gear, Scope, Support, Top},
    units::{Length, show},
};

/// What is to be said about fixings.
fn fixings(report: &Report<'_>) -> Vec<String> {
    let top = report.top;
    let mut cautions = Vec::new();
    if top.scope == Scope::Patch {
        cautions.push(
            "A patch: whether the top round it carries the mount was not looked at. Check the whole top with it."
                .to_owned(),
        );
    }
    cautions.extend(silent(report));
    let past = |gear: &&Gear| gear.fastened.is_some() && below_footing(top, gear).len() > 1;
    let past: Vec<&str> = top.gear.iter().filter(past).map(|gear| gear.name.as_str()).collect();
    if !past.is_empty() {
        cautions.push(format!(
            "The footing reaches past the backing below it: {}. It is taken as bedded on the backing alone, and core beside \
             that is held against all of its pressure: lay a wider backing.",
            past.join(", ")
        ));
    }
    if !top.idle_fixings.is_empty() {
        cautions.push(format!(
            "These fixings hold nothing, since no gear, pipe, wall or pad asks for them in its `fixings`: {}.",
            top.idle_fixings.join(", ")
        ));
    }
    if let Ok(analysis) = &report.analysis
        && !analysis.mounts.is_empty()
    {
        let repeats = |what| analysis.cases.iter().any(|case| case.repeats == Some(what));
        let counted = match (repeats(Repeats::Landings), repeats(Repeats::Rolls)) {
            (true, _) => None,
            (false, true) => Some("the fatigue of fixings was looked at under rolling alone"),
            (false, false) => Some("nothing repeats that could tire the fixings, and their fatigue was not looked at"),
        };
        cautions.extend(counted.map(|counted| format!("The file rules landings out (`slam = \"none\"`): {counted}.")));
    }
    if report.fittings.iter().any(|fitting| fitting.test.is_some()) {
        cautions.push(
            "Blind fixings let go without warning, and their hold is known from tests alone: pull samples before people \
             stand below."
                .to_owned(),
        );
    }
    cautions
}

/// Whose fixings the file does not give; of pipes, what that makes of them as a plate.
fn silent(report: &Report<'_>) -> Option<String> {
    let silent = without_fixings(report.top);
    if silent.is_empty() {
        return None;
    }
    let tied = match &report.analysis {
        Ok(Analysis { whole: Some(Ok(method)), .. }) if method.holds.contains(&HeldDown::AllAlong) => {
            " The plate method takes the top as held down all along these pipes."
        }
        _ => "",
    };
    Some(format!(
        "The file does not say how these are fixed, so their fixings were not checked: {}.{tied}",
        silent.join(", ")
    ))
}

/// What the plate method was not told and does not see, or that it was not asked.
fn plate(report: &Report<'_>, analysis: &Analysis<'_>) -> Vec<String> {
    let mut cautions = Vec::new();
    match &analysis.whole {
        None if report.top.scope == Scope::Whole => cautions.push(
            "Hand method alone: pipes are rigid in it, and nothing was looked at as a plate. Check without --hand before \
             you build."
                .to_owned(),
        ),
        Some(Ok(method)) => {
            let models = method.pipes.iter().zip(&report.top.supports);
            let rigid = models.filter(|(model, _)| **model == PipeModel::Rigid);
            let rigid: Vec<String> = rigid
                .filter_map(|(_, support)| Some((support, support.pipe()?)))
                .map(|(support, pipe)| format!("{} (give {})", support.name, pipe.missing().join(", ")))
                .collect();
            if !rigid.is_empty() {
                cautions.push(format!(
                    "Taken as rigid: {}. Sag and frequency are then on the unsafe side.",
                    rigid.join("; ")
                ));
            }
            let over = report.top.gear.iter().filter(|gear| gear.hangs_over(&report.top.outline));
            let over: Vec<&str> = over.map(|gear| gear.name.as_str()).collect();
            if !over.is_empty() {
                cautions.push(format!(
                    "The footing reaches over the rim or a hole: {}. The plate method puts all of its load on the part that \
                     lies on the top.",
                    over.join(", ")
                ));
            }
        }
        None | Some(Err(_)) => {}
    }
    cautions.extend(walls_and_pads(report.top));
    if analysis.whole.is_some() {
        let bends = |support: &&Support| support.pipe().is_some_and(|pipe| pipe.wall.is_some() && pipe.alloy.is_some());
        for pipe in report.top.supports.iter().filter(bends) {
            let Some((hole, _)) = report.top.outline.hole_on(&pipe.along) else { continue };
            cautions.push(format!(
                "{} goes on below {}: the plate method takes it as ending at the hole, each part held by its own posts, or by \
                 the panel where it has none. It is stiffer than that, and bears more itself.",
                pipe.name, hole.name
            ));
        }
    }
    cautions
}

/// What walls and pads are taken for.
fn walls_and_pads(top: &Top) -> Vec<String> {
    let names = |which: &dyn Fn(&Support) -> bool| -> Vec<&str> {
        top.supports.iter().filter(|support| which(support)).map(|support| support.name.as_str()).collect()
    };
    let mut cautions = Vec::new();
    let walls = names(&|support| matches!(support.carrier, Carrier::Wall(_)));
    if !walls.is_empty() {
        cautions.push(format!(
            "Walls are taken as rigid and were not checked themselves, nor was what they stand on: {}.",
            walls.join(", ")
        ));
    }
    let clamped = names(&Support::clamps);
    if !clamped.is_empty() {
        cautions.push(format!(
            "Clamped in the plate method: {}. That takes for granted that neither wall nor joint turns at all, which few do, \
             and that the joint bears the moment, which was not checked and is in no fixing's pull. Sag and frequency are on \
             the unsafe side where it turns; so are stresses away from the wall. Try it hinged as well. By hand it is hinged.",
            clamped.join(", ")
        ));
    }
    let pads = names(&Support::is_pad);
    if !pads.is_empty() {
        cautions.push(format!(
            "Pads are rigid seats in the plate method, on which the top hardly turns, and nothing to the hand method, whose \
             forces leave them out: {}. A soft pad that presses evenly lets the top turn and sag more.",
            pads.join(", ")
        ));
    }
    cautions
}

/// What is to be said about an outline that the hand method does not see as it is.
fn outline(report: &Report<'_>) -> Vec<String> {
    let (top, outline) = (report.top, &report.top.outline);
    let mut cautions = Vec::new();
    if top.scope == Scope::Patch {
        return cautions;
    }
    if outline.corner_radii() != Some([Length::default(); 4]) {
        cautions.push(format!(
            "The hand method takes the outline's bounding rectangle, {} by {}, for strips, bays and wind. Weight, people on \
             strips, places and distances to the rim go by the outline itself.",
            show(outline.length(), top.report),
            show(outline.width(), top.report)
        ));
    }
    let holes: Vec<&str> = outline.holes().iter().map(|hole| hole.name.as_str()).collect();
    if !holes.is_empty() {
        cautions.push(format!(
            "The hand method runs its strips across holes as if panel were there: {}. What the panel loses beside a hole is \
             not checked by it; weight and distances to the rim count it.",
            holes.join(", ")
        ));
    }
    cautions
}

/// The cautions that belong beside a report.
#[must_use]
pub fn cautions(report: &Report<'_>) -> Vec<String> {
    let top = report.top;
    let mut cautions = vec![
        "Not a certification: for comparison and preliminary design. Local codes, class rules and a qualified engineer \
         prevail; people get hurt when tops fail."
            .to_owned(),
    ];
    let governing = report.checks.first().and_then(|outcome| match &outcome.verdict {
        Verdict::Compared(finding) => Some(finding.basis),
        Verdict::NotEvaluated(_) => None,
    });
    match governing {
        Some(Basis::Estimate) => cautions.push(
            "The governing margin rests on an estimate: make a coupon and test it before people stand below."
                .to_owned(),
        ),
        Some(Basis::Typical) => cautions.push(
            "The governing margin rests on typical values: coupons of your own laminate and core would settle it."
                .to_owned(),
        ),
        _ => {}
    }
    if report.answer() == Answer::Open {
        cautions.push("A check that could not be made is not a pass.".to_owned());
    }
    cautions.push(
        "Not checked here: the welds of the frame, its posts and how it stands sideways, the bond of skin to core, voids and \
         dry spots, and bare hard seats unless `seat-edge-share` says so."
            .to_owned(),
    );
    cautions.extend(fixings(report));
    cautions.extend(outline(report));
    if top.crown > Length::default() {
        let plate = match &report.analysis {
            Ok(Analysis { whole: Some(Ok(_)), .. }) => {
                "; the plate method has it across the boat, and it can raise stresses as well as lower them"
            }
            _ => "",
        };
        cautions.push(format!(
            "The hand method takes the top as flat: its crown of {} is not counted{plate}.",
            show(top.crown, top.report)
        ));
    }
    if let Ok(analysis) = &report.analysis {
        cautions.extend(plate(report, analysis));
        if let Layout::Strips(strips) = &analysis.layout {
            let unused: Vec<&str> = (0..top.supports.len())
                .filter(|support| !strips.pipes.contains(support) && !top.supports[*support].is_pad())
                .map(|pipe| top.supports[pipe].name.as_str())
                .collect();
            if !unused.is_empty() {
                cautions.push(format!("The hand method does not count on {}.", unused.join(", ")));
            }
        }
        let bare = analysis.lines.iter().any(|line| line.role == crate::analysis::Role::EndOverhang);
        if bare {
            cautions.push(
                "In the hand method overhangs beyond the ends of pipes are taken as strips that hand their load to the strip beside them; the \
                 peak at the end of a pipe is not in it."
                    .to_owned(),
            );
        }
    }
    if top.service.people == 0 && top.service.walking == Walking::NoWalk {
        cautions.push("Nobody may stand on this top: put a placard on it.".to_owned());
    } else if top.service.walking == Walking::NoWalk {
        cautions.push(format!(
            "Placard: {} on the top at once.",
            match top.service.people {
                1 => "one person".to_owned(),
                people => format!("{people} people"),
            }
        ));
    }
    if top.service.sun == Sun::Dark {
        cautions.push(
            "Dark paint: temperatures are assumed. Measure one like it in the sun before you rely on them.".to_owned(),
        );
    }
    cautions
}

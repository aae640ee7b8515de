//! Load cases, and what the frame must take.

use uom::si::ratio::ratio;

use super::super::{
    AlongPipe, Largest, Report, frame_loads,
    page::{Page, left, right},
    said::{counted, counted_supports},
    words,
};
use crate::{
    analysis::{Analysis, Layout, SagBounds},
    check::Method,
    geometry::Axis,
    load_case::LoadCase,
    top::Scope,
    units::{ForcePerWidth, System, show},
};

pub(super) fn cases(page: &mut Page, report: &Report<'_>, analysis: &Analysis<'_>, full: bool) {
    page.heading("Load cases (pressures down positive, so that a negative one lifts)");
    let system = report.top.report;
    for case in &analysis.cases {
        let parts = actions(case, system);
        page.paragraph(
            &format!("  {} ", left(case.id, 13)),
            &format!("{}: {} ({})", case.title, parts.join(", "), words::state(case.state)),
        );
        if let Some(doubt) = &case.doubt {
            page.paragraph("                ", &format!("caution: {doubt}"));
        }
    }
    for (case, reason) in &analysis.open_cases {
        page.paragraph(&format!("  {} ", left(case.id, 13)), &format!("{}: OPEN, {reason}", case.title));
    }
    let ruled_out = ruled_out(analysis);
    if !ruled_out.is_empty() {
        page.paragraph("  ruled out by the file: ", &ruled_out.join("; "));
    }
    if full {
        page.paragraph("  ", &layout_words(analysis));
        if let Some(bounds) = analysis.sag_bounds() {
            page.paragraph("  ", &bounds_words(report, analysis, bounds));
        }
    }
}

/// What acts in a case.
pub(in crate::report) fn actions(case: &LoadCase, system: System) -> Vec<String> {
    let mut parts = vec![format!("weight × {:.1}", case.gravity.get::<ratio>())];
    let zero = crate::units::Pressure::default();
    let load = |pressure| match system {
        System::Us => crate::units::show_in(pressure, "psf", 1),
        System::Si => crate::units::show_in(pressure, "kPa", 2),
    };
    if case.wind.interior != zero {
        parts.push(format!(
            "wind {} / {} / {} in the field, at edges, at corners",
            load(case.wind.interior),
            load(case.wind.edge),
            load(case.wind.corner)
        ));
    }
    if case.pressure != zero {
        parts.push(load(case.pressure));
    }
    if let Some(people) = case.people {
        parts.push(format!("{} × {}", people.count, show(people.each, system)));
    }
    if let Some(hand) = case.hand {
        parts.push(show(hand, system));
    }
    if let Some(rise) = &case.temperatures {
        parts.push(format!(
            "outer skin {}, inner {} warmer than built",
            show(rise.outer, system),
            show(rise.inner, system)
        ));
    }
    parts
}

/// What the file rules out, each with why.
pub(in crate::report) fn ruled_out(analysis: &Analysis<'_>) -> Vec<String> {
    analysis.ruled_out.iter().map(|ruled_out| format!("{} ({})", ruled_out.title, ruled_out.because)).collect()
}

pub(in crate::report) fn layout_words(analysis: &Analysis<'_>) -> String {
    match &analysis.layout {
        Layout::Patch => "A patch of panel round a mount: no strips.".to_owned(),
        Layout::Strips(strips) => format!(
            "Hand method: strips run {} over {}; {} were looked at.",
            match strips.axis {
                Axis::X => "along the length",
                Axis::Y => "across the width",
            },
            counted_supports(strips.pipes.iter().map(|&support| &analysis.top.supports[support])),
            counted(analysis.lines.len(), "strip")
        ),
        Layout::FourSides { .. } => format!(
            "Hand method: {} held on four sides as simply supported plates, clamped for what is under them; overhangs as \
             strips.",
            counted(analysis.bays.len(), "bay")
        ),
    }
}

pub(in crate::report) fn bounds_words(report: &Report<'_>, analysis: &Analysis<'_>, bounds: SagBounds) -> String {
    let system = report.top.report;
    format!(
        "Pressure alone makes the bay about {} sag by {} with edges that turn freely, which is what is checked; with clamped \
         edges it would be {}, and the truth lies between ({}).",
        words::point(analysis.bays[bounds.bay].middle(), system),
        show(bounds.supported, system),
        show(bounds.clamped, system),
        analysis.cases[bounds.case].title,
    )
}

pub(super) fn frame(page: &mut Page, report: &Report<'_>, analysis: &Analysis<'_>) {
    if report.top.scope == Scope::Patch {
        return;
    }
    page.heading("What the frame and its fixings must take (loads as they act, without factors)");
    let system = report.top.report;
    let with = |words: String, case: Option<usize>| {
        case.map_or_else(|| "nothing".to_owned(), |case| format!("{words} ({})", analysis.cases[case].id))
    };
    for load in frame_loads(report) {
        let name = left(&report.top.supports[load.pipe].name, 18);
        if !load.known() {
            let word = report.top.supports[load.pipe].word();
            page.paragraph(&format!("  {name} "), &format!("not known: the hand method does not count on this {word}"));
            continue;
        }
        let line = |(larger, by): (Largest<ForcePerWidth>, Method),
                    of: &dyn Fn(&AlongPipe) -> Largest<ForcePerWidth>| {
            let other = match by {
                Method::Hand => &load.plate,
                Method::Plate => &load.hand,
            };
            let other = other.as_ref().filter(|_| larger.case.is_some()).map_or_else(String::new, |other| {
                let methods = if by == Method::Hand { ["hand", "plate"] } else { ["plate", "hand"] };
                format!(" by {}, by {} {}", methods[0], methods[1], show(of(other).value, system))
            });
            format!("{}{other}", with(show(larger.value, system), larger.case))
        };
        let (push, pull) = (line(load.push(), &|along| along.push), line(load.pull(), &|along| along.pull));
        page.paragraph(&format!("  {name} "), &format!("push {push}; pull at fixings {pull}"));
        if let Some(moment) = load.moment {
            page.paragraph(&right("bends by ", 21), &with(show(moment.value, system), moment.case));
        }
        for post in &load.posts {
            let (push, pull) = (&post.push, &post.pull);
            let words = format!(
                "{}: push {}, pull {}",
                show(post.along, system),
                with(show(push.value, system), push.case),
                with(show(pull.value, system), pull.case)
            );
            page.paragraph(&right("post at ", 21), &words);
        }
    }
    page.paragraph(&format!("  {} ", left("all of it", 18)), &pushed_sideways(report, analysis));
    if analysis.fields().next().is_some() {
        page.paragraph(
            "  ",
            "By hand a person's load stays on one narrow strip, which makes the most of it; as a plate it spreads along the \
             pipe, and gathers at ends of pipes and over posts: the larger counts. Moments and posts are of the plate method, \
             without the weight of the pipes themselves; the rows of fixings take the pull of each method, check by check.",
        );
    }
}

/// What pushes the frame sideways.
pub(in crate::report) fn pushed_sideways(report: &Report<'_>, analysis: &Analysis<'_>) -> String {
    let system = report.top.report;
    let Some((force, case)) = analysis.sideways() else {
        return "nothing pushes it sideways but wind, which is not counted".to_owned();
    };
    format!(
        "sideways {} ({}), from any side, {} above the lower face of the top; without wind, and not checked",
        show(force, system),
        analysis.cases[case].id,
        show(report.top.weight().height, system)
    )
}

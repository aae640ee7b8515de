//! Load cases.

use uom::si::ratio::ratio;

use super::super::{
    Report,
    page::{Page, left},
    said::{counted, counted_supports},
    words,
};
use crate::{
    analysis::{Analysis, Layout, SagBounds},
    geometry::Axis,
    load_case::LoadCase,
    units::{System, show},
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
    if case.works_on_gear() && case.gear_gravity != case.gravity {
        parts.push(format!("of gear × {:.1}", case.gear_gravity.get::<ratio>()));
    }
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

//! The report as text that is a pleasure to read at 80 columns.

use uom::si::ratio::ratio;

use super::{
    Answer, Report, cautions, fixings, frame_loads,
    page::{Page, Tone, left, right},
    words,
};
use crate::{
    advice::{Advice, Change},
    analysis::{Analysis, Layout, SagBounds},
    check::{CHECKS, Outcome, Verdict},
    geometry::Axis,
    material::{Core, Origin},
    top::Scope,
    units::{Length, Mass, Ratio, System, both, show},
};

/// The report in words and tables, with terminal styles; `full` shows every case, every value and every criterion.
#[must_use]
pub fn to_text(report: &Report<'_>, full: bool, width: usize) -> String {
    let mut page = Page::new(width.clamp(60, 120));
    head(&mut page, report);
    match &report.analysis {
        Err(reason) => page.paragraph("  ", &format!("Nothing could be checked: {reason}.")),
        Ok(analysis) => {
            answer(&mut page, report, analysis);
            advice(&mut page, report);
            table(&mut page, report, analysis);
            working(&mut page, report, analysis, full);
            if full {
                envelope(&mut page, report, analysis);
            }
            fixings::fixings(&mut page, report, analysis);
            cases(&mut page, report, analysis, full);
            frame(&mut page, report, analysis);
            materials(&mut page, report, analysis, full);
            criteria(&mut page, report, full);
        }
    }
    page.heading("Cautions");
    for caution in cautions(report) {
        page.paragraph("  - ", &caution);
    }
    page.done()
}

fn head(page: &mut Page, report: &Report<'_>) {
    let top = report.top;
    let system = top.report;
    page.line(&Tone::Strong.paint(&top.title));
    if top.scope == Scope::Patch {
        page.paragraph(
            "  ",
            &format!(
                "a mount alone, on a panel {} thick: core {} of {}, {}",
                both(top.thickness(), system),
                show(top.core.thickness, system),
                words::within(&top.core.material.name),
                show(top.core.material.density, system),
            ),
        );
        page.blank();
        return;
    }
    let weight = top.weight();
    page.paragraph(
        "  ",
        &format!(
            "{} by {}; core {} of {}, {}; {}; {} bare, {} with gear, centre of gravity at {}",
            show(top.outline.length, system),
            show(top.outline.width, system),
            both(top.core.thickness, system),
            words::within(&top.core.material.name),
            show(top.core.material.density, system),
            counted(top.pipes.len(), "pipe"),
            both(weight.bare, system),
            show(weight.total, system),
            words::point(weight.centre, system),
        ),
    );
    page.blank();
}

fn answer(page: &mut Page, report: &Report<'_>, analysis: &Analysis<'_>) {
    let (tone, words) = match report.answer() {
        Answer::Holds => (Tone::Good, "HOLDS"),
        Answer::DoesNotHold => (Tone::Bad, "DOES NOT HOLD"),
        Answer::Open => (Tone::Open, "NOT SHOWN TO HOLD"),
    };
    page.line(&tone.paint(words));
    if let Some(first) = report.checks.first() {
        page.paragraph("  ", &sentence(report, analysis, first));
    }
}

/// A number of things.
fn counted(number: usize, thing: &str) -> String {
    if number == 1 { format!("1 {thing}") } else { format!("{number} {thing}s") }
}

/// The governing check in one sentence.
fn sentence(report: &Report<'_>, analysis: &Analysis<'_>, outcome: &Outcome) -> String {
    let check = CHECKS[outcome.check];
    match &outcome.verdict {
        Verdict::NotEvaluated(reason) => format!("{} could not be checked: {reason}.", capital(check.title())),
        Verdict::Compared(finding) => format!(
            "{} governs: {} used, margin {}; {}; {}.",
            capital(check.title()),
            words::used(outcome),
            words::margin(finding.margin().get::<ratio>()),
            words::case(analysis, outcome),
            words::place(analysis, &outcome.place, report.top.report),
        ),
    }
}

fn capital(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}

fn advice(page: &mut Page, report: &Report<'_>) {
    if report.advice.is_empty() {
        return;
    }
    page.heading("What would pass, the smallest single change of each kind");
    for item in &report.advice {
        let whole = format!("the {}", words::whole(report.top));
        let title = item.check.map_or(whole.as_str(), |check| CHECKS[check].title());
        if item.remedies.is_empty() {
            let nearest = item.nearest.as_ref().map_or_else(String::new, |nearest| {
                format!(
                    "; nearest is {}, which leaves {} at {}",
                    change(&nearest.change, report),
                    CHECKS[nearest.governs].title(),
                    words::percent(nearest.utilisation.get::<ratio>())
                )
            });
            page.paragraph(&format!("  {} ", left(title, 20)), &format!("no single change that was tried{nearest}"));
            continue;
        }
        remedies(page, report, item, title);
    }
}

fn remedies(page: &mut Page, report: &Report<'_>, item: &Advice, title: &str) {
    for (index, remedy) in item.remedies.iter().enumerate() {
        let title = if index == 0 { title } else { "" };
        let then = if item.check.is_none() {
            format!(
                "; then {} governs, {} used",
                CHECKS[remedy.governs].title(),
                words::percent(remedy.utilisation.get::<ratio>())
            )
        } else {
            remedy.breaks.map_or_else(String::new, |check| format!(", but then {} fails", CHECKS[check].title()))
        };
        page.paragraph(
            &format!("  {} ", left(title, 20)),
            &format!("{} ({}){then}", change(&remedy.change, report), added(remedy.added, report.top.report)),
        );
    }
}

fn added(mass: Mass, system: System) -> String {
    if mass.abs() < Mass::new::<uom::si::mass::kilogram>(0.005) {
        "same weight".to_owned()
    } else if mass > Mass::default() {
        format!("+{}", show(mass, system))
    } else {
        format!("−{}", show(-mass, system))
    }
}

/// A change in the words of the shop.
pub(super) fn change(change: &Change, report: &Report<'_>) -> String {
    let system = report.top.report;
    match change {
        Change::CoreThickness(thickness) => format!("core {} thick", both(*thickness, system)),
        Change::CoreDensity(density) => format!("core of {}", both(*density, system)),
        Change::OuterPlies { layer, more, .. } => format!("{more} more of \"{layer}\" in the outer skin"),
        Change::InnerPlies { layer, more, .. } => format!("{more} more of \"{layer}\" in the inner skin"),
        Change::MorePipes { pipes, spacing } => format!("{pipes} pipes, {} apart", show(*spacing, system)),
        Change::PipesMoved { outwards, spacing } => {
            let way = if *outwards > Length::default() { "out" } else { "in" };
            format!("outer pipes {} farther {way}, {} apart", show(outwards.abs(), system), show(*spacing, system))
        }
        Change::PipesLonger(by) => format!("pipes {} longer at both ends", show(*by, system)),
        Change::OverhangTrimmed(by) => format!("overhang trimmed by {} on both sides", show(*by, system)),
        Change::BackingWidth { backing, width } => {
            format!("{} {} wide", report.top.backings[*backing].name, both(*width, system))
        }
        Change::BackingLength { backing, by } => {
            format!("{} {} longer at both ends", report.top.backings[*backing].name, both(*by, system))
        }
        Change::BackingBoard { backing, density, .. } => {
            format!("{} of board of {}", report.top.backings[*backing].name, both(*density, system))
        }
        Change::FixingCount { on, count, .. } => format!("{count} fixings for {}", words::held(report.top, *on)),
        Change::Torque { on, torque } => {
            format!("a torque of {} for {}", both(*torque, system), words::held(report.top, *on))
        }
        Change::Washer { on, outside } => {
            format!("washers of {} for {}", both(*outside, system), words::held(report.top, *on))
        }
    }
}

fn table(page: &mut Page, report: &Report<'_>, analysis: &Analysis<'_>) {
    let system = report.top.report;
    page.heading("Checks, worst first (used = demand × factor / allowable; passes up to 100 %)");
    page.line(&Tone::Quiet.paint(&row(["", "", "demand", "allowable", "factor", "used", "margin", "basis"])));
    for outcome in &report.checks {
        let check = CHECKS[outcome.check];
        let (word, tone) = match (&outcome.verdict, outcome.passes()) {
            (Verdict::NotEvaluated(_), _) => ("OPEN", Tone::Open),
            (_, true) => ("pass", Tone::Good),
            (_, false) => ("FAIL", Tone::Bad),
        };
        let line = match &outcome.verdict {
            Verdict::Compared(finding) => row([
                word,
                check.title(),
                &words::measure(finding.demand, system),
                &words::measure(finding.allowable, system),
                &format!("{:.2}", finding.factor.get::<ratio>()),
                &words::used(outcome),
                &words::margin(finding.margin().get::<ratio>()),
                words::short_basis(finding.basis),
            ]),
            Verdict::NotEvaluated(_) => row([word, check.title(), "", "", "", "—", "—", ""]),
        };
        page.line(&line.replacen(word, &tone.paint(word), 1));
        match &outcome.verdict {
            Verdict::Compared(_) => page.paragraph(
                "      ",
                &format!("{}; {}", words::case(analysis, outcome), words::place(analysis, &outcome.place, system)),
            ),
            Verdict::NotEvaluated(reason) => page.paragraph("      ", reason),
        }
    }
    if report.top.scope == Scope::Patch {
        let error =
            analysis.mount_forces.iter().map(|forces| forces.numerical_error).fold(Ratio::default(), Ratio::max);
        page.paragraph(
            "  ",
            &format!(
                "Numerical error: the forces below each footing balance what acts on it to {:.0e}; sides between the sixteen \
                 that are looked at are covered by 2 % on all of them.",
                error.get::<ratio>().max(1e-15)
            ),
        );
        return;
    }
    page.paragraph(
        "  ",
        &format!(
            "Numerical error: dividing every strip twice as finely changes no utilisation by more than {:.1} %.",
            (report.numerical_error.get::<ratio>() * 100.0).max(0.1)
        ),
    );
}

fn row(cells: [&str; 8]) -> String {
    let [word, title, demand, allowable, factor, used, margin, basis] = cells;
    format!(
        "{} {}{}{}{}{}{} {basis}",
        left(word, 4),
        left(title, 19),
        right(demand, 13),
        right(allowable, 13),
        right(factor, 7),
        right(used, 7),
        right(margin, 7),
    )
}

/// The governing check and all that fail, or all of them, so that a reader can redo them by hand.
fn working(page: &mut Page, report: &Report<'_>, analysis: &Analysis<'_>, full: bool) {
    page.heading(if full { "Every check by hand" } else { "The governing check by hand (--full shows all)" });
    let shown = report.checks.iter().enumerate().filter(|(index, outcome)| full || *index == 0 || !outcome.passes());
    for (index, (_, outcome)) in shown.enumerate() {
        if index > 0 {
            page.blank();
        }
        by_hand(page, report, analysis, outcome);
    }
}

fn by_hand(page: &mut Page, report: &Report<'_>, analysis: &Analysis<'_>, outcome: &Outcome) {
    let check = CHECKS[outcome.check];
    let system = report.top.report;
    page.paragraph("  ", &format!("{}: {}", check.title(), check.what()));
    page.paragraph("    formula   ", check.formula());
    match &outcome.verdict {
        Verdict::NotEvaluated(reason) => page.paragraph("    open      ", reason),
        Verdict::Compared(finding) => {
            page.paragraph("    case      ", &words::case(analysis, outcome));
            page.paragraph("    place     ", &words::place(analysis, &outcome.place, system));
            let terms: Vec<String> = finding
                .terms
                .iter()
                .map(|term| format!("{} = {}", term.symbol, words::measure(term.value, system)))
                .collect();
            if !terms.is_empty() {
                page.paragraph("    values    ", &terms.join(";  "));
            }
            page.paragraph(
                "    result    ",
                &format!(
                    "{} × {:.2} / {} = {}, margin {}",
                    words::measure(finding.demand, system),
                    finding.factor.get::<ratio>(),
                    words::measure(finding.allowable, system),
                    words::used(outcome),
                    words::margin(finding.margin().get::<ratio>()),
                ),
            );
        }
    }
    page.paragraph("    holds for ", check.limits());
    page.paragraph("    source    ", &citation(report, outcome.check));
}

/// Where a check's formula is published, with the text of the source.
pub(super) fn citation(report: &Report<'_>, check: usize) -> String {
    let citation = CHECKS[check].citation();
    let text = report.table.source(citation.work.0).map_or(citation.work.0, |source| source.text.as_str());
    format!("{text}; {} ({})", citation.locator, citation.mark.words())
}

fn envelope(page: &mut Page, report: &Report<'_>, analysis: &Analysis<'_>) {
    page.heading("Every check under every case");
    for (number, check) in CHECKS.iter().enumerate() {
        let own: Vec<&Outcome> = report.envelope.iter().filter(|outcome| outcome.check == number).collect();
        if own.is_empty() {
            continue;
        }
        page.line(&format!("  {}", check.title()));
        for outcome in own {
            let case = words::case(analysis, outcome);
            page.line(&format!("    {} {}", right(&words::used(outcome), 7), case));
        }
    }
}

fn cases(page: &mut Page, report: &Report<'_>, analysis: &Analysis<'_>, full: bool) {
    page.heading("Load cases (pressures down positive, so that a negative one lifts)");
    let system = report.top.report;
    for case in &analysis.cases {
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
    let ruled_out: Vec<String> =
        analysis.ruled_out.iter().map(|ruled_out| format!("{} ({})", ruled_out.title, ruled_out.because)).collect();
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

fn layout_words(analysis: &Analysis<'_>) -> String {
    match &analysis.layout {
        Layout::Patch => "A patch of panel round a mount: no strips.".to_owned(),
        Layout::Strips(strips) => format!(
            "Hand method: strips run {} over {}; {} were looked at.",
            match strips.axis {
                Axis::X => "along the length",
                Axis::Y => "across the width",
            },
            counted(strips.pipes.len(), "pipe"),
            counted(analysis.lines.len(), "strip")
        ),
        Layout::FourSides { .. } => format!(
            "Hand method: {} held on four sides as simply supported plates, clamped for what the pipes see; overhangs as \
             strips.",
            counted(analysis.bays.len(), "bay")
        ),
    }
}

fn bounds_words(report: &Report<'_>, analysis: &Analysis<'_>, bounds: SagBounds) -> String {
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

fn frame(page: &mut Page, report: &Report<'_>, analysis: &Analysis<'_>) {
    if report.top.scope == Scope::Patch {
        return;
    }
    page.heading("What the frame and its fixings must take (loads as they act, without factors)");
    let system = report.top.report;
    for load in frame_loads(report) {
        let with = |(force, case): (crate::units::ForcePerWidth, Option<usize>)| {
            case.map_or_else(
                || "nothing".to_owned(),
                |case| format!("{} ({})", show(force, system), analysis.cases[case].id),
            )
        };
        let words = if load.known {
            format!("push {}, pull at fixings {}", with(load.push), with(load.pull))
        } else {
            "not known: the hand method does not count on this pipe".to_owned()
        };
        page.paragraph(&format!("  {} ", left(&report.top.pipes[load.pipe].name, 18)), &words);
    }
}

fn materials(page: &mut Page, report: &Report<'_>, analysis: &Analysis<'_>, full: bool) {
    let (top, system) = (report.top, report.top.report);
    page.heading("Materials");
    for (name, skin) in [("outer skin", &top.outer), ("inner skin", &top.inner)] {
        page.paragraph(
            &format!("  {} ", left(name, 12)),
            &format!(
                "{} thick, {}, from the outside:",
                show(skin.laminate().thickness(), system),
                show(skin.mass(), system)
            ),
        );
        for layer in skin.layers() {
            let detail = layer.fibre_fraction.map_or_else(
                || format!("{}, no strength counted", show(layer.mass, system)),
                |fraction| {
                    format!(
                        "{} thick, {:.0} % fibre by mass, strengths {}",
                        show(layer.thickness(), system),
                        fraction.get::<ratio>() * 100.0,
                        words::basis(layer.basis)
                    )
                },
            );
            page.paragraph(&format!("               {} ", left(&layer.text, 26)), &detail);
        }
    }
    let core = &top.core.material;
    page.paragraph("  core         ", &format!("{} at {}", words::within(&core.name), both(core.density, system)));
    for property in [
        ("shear strength", &core.shear_strength),
        ("shear modulus", &core.shear_modulus),
        ("compressive strength", &core.compressive_strength),
        ("compressive modulus", &core.compressive_modulus),
    ] {
        value(
            page,
            report,
            property.0,
            &show(property.1.value, system),
            words::basis(property.1.basis),
            &property.1.origin,
            full,
        );
    }
    shares(page, analysis, core);
    if full {
        for (name, skin) in [("outer skin", &top.outer), ("inner skin", &top.inner)] {
            page.line(&format!("  values of the {name}"));
            let mut seen: Vec<&Origin> = Vec::new();
            for origin in skin.layers().iter().flat_map(|layer| &layer.origins) {
                if !seen.contains(&&**origin) {
                    seen.push(origin);
                    page.paragraph("    ", &origin_words(report, origin));
                }
            }
        }
        for backing in &top.backings {
            page.line(&format!("  {}: {}", backing.name, backing.board.name));
            for property in [&backing.board.compressive_strength, &backing.board.shear_strength] {
                page.paragraph("    ", &origin_words(report, &property.origin));
            }
        }
    }
}

/// What is counted of the strength of the core, state by state.
fn shares(page: &mut Page, analysis: &Analysis<'_>, core: &Core) {
    let cells = |words: &str, cells: [String; 5]| {
        format!("    {}{}", left(words, 40), cells.iter().map(|cell| right(cell, 7)).collect::<String>())
    };
    let head = ["basis", "heat", "wet", "time", "all"].map(str::to_owned);
    page.line(&Tone::Quiet.paint(&cells("counted of the core's shear strength", head)));
    for (state, knockdowns) in &analysis.knockdowns {
        let shares = knockdowns.core_strength(core.shear_strength.basis);
        let each = [shares.basis, shares.hot, shares.wet, shares.time, shares.product()];
        page.line(&cells(&words::state(*state), each.map(|share| format!("{:.2}", share.get::<ratio>()))));
    }
}

fn value(page: &mut Page, report: &Report<'_>, name: &str, shown: &str, basis: &str, origin: &Origin, full: bool) {
    let source = if full { format!("; {}", origin_words(report, origin)) } else { String::new() };
    page.paragraph(&format!("               {} ", left(name, 21)), &format!("{shown}, {basis}{source}"));
}

/// Where a value comes from, in one line.
fn origin_words(report: &Report<'_>, origin: &Origin) -> String {
    let text = report.table.source(&origin.source).map_or(origin.source.as_str(), |source| source.text.as_str());
    let table = format!("table {}", origin.table);
    let parts = [text, &origin.locator, origin.mark.words(), &table];
    let known: Vec<&str> = parts.into_iter().filter(|part| !part.is_empty()).collect();
    format!("{} {}: {} [{}]", origin.row, origin.property, origin.as_written, known.join("; "))
}

fn criteria(page: &mut Page, report: &Report<'_>, full: bool) {
    let records = report.top.criteria.records();
    let changed: Vec<_> = records.iter().filter(|record| record.changed_by_user).collect();
    if full {
        page.heading("Factors, knock-downs, limits and assumed loads");
        let mut group = "";
        for record in &records {
            if record.group != group {
                group = &record.group;
                page.line(&format!("  {group}"));
            }
            let changed =
                if record.changed_by_user { format!(", changed from {}", record.built_in) } else { String::new() };
            page.paragraph(
                &format!("    {} ", left(&record.id, 28)),
                &format!(
                    "{}{changed}: {} [{}, {}; {}]",
                    record.as_written,
                    record.title,
                    record.source,
                    record.locator,
                    record.mark.words()
                ),
            );
        }
    } else {
        page.heading("Factors and assumptions");
        page.paragraph(
            "  ",
            &format!(
                "{} named inputs with their sources stand behind these numbers: --full lists them.",
                records.len()
            ),
        );
        for record in changed {
            page.paragraph(
                "  changed: ",
                &format!("{} is {} instead of {}", record.id, record.as_written, record.built_in),
            );
        }
    }
}

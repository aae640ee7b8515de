//! Materials, factors and assumptions.

use uom::si::ratio::ratio;

use super::super::{
    Report,
    page::{Page, Tone, left, named, right},
    words,
};
use crate::{
    analysis::{Analysis, Knockdowns, Shares},
    material::{Core, Origin, Property},
    section::Skin,
    top::{Schedule, Top},
    units::{Pressure, both, show, show_as},
};

/// What a layer has beside it wants so many columns; where fewer are left it follows the layer.
const DETAIL: usize = 24;

pub(super) fn materials(page: &mut Page, report: &Report<'_>, analysis: &Analysis<'_>, full: bool) {
    let (top, system) = (report.top, report.top.report);
    page.heading("Materials");
    // Skins and what lies in them in one unit, that of the lightest.
    let skins = [&top.outer, &top.inner];
    let masses = skins.into_iter().flat_map(|skin| skin.layers().iter().map(|layer| layer.mass).chain([skin.mass()]));
    let lightest = masses.reduce(|one, other| if other < one { other } else { one }).unwrap_or_default();
    for (name, skin) in [("outer skin", &top.outer), ("inner skin", &top.inner)] {
        page.paragraph(
            &format!("  {} ", left(name, 12)),
            &format!(
                "{} thick, {}, from the outside:",
                show(skin.laminate().thickness(), system),
                show_as(skin.mass(), lightest, system)
            ),
        );
        for layer in skin.layers() {
            let detail = layer.fibre_fraction.map_or_else(
                || format!("{}, no strength counted", show_as(layer.mass, lightest, system)),
                |fraction| {
                    format!(
                        "{} thick, {:.0} % fibre by mass, strengths {}",
                        show(layer.thickness(), system),
                        fraction.get::<ratio>() * 100.0,
                        words::basis(layer.basis)
                    )
                },
            );
            let lead = format!("{:15}{} ", "", left(&layer.text, 26));
            if lead.chars().count() + DETAIL > page.width() {
                page.paragraph(&" ".repeat(15), &format!("{}: {detail}", layer.text));
            } else {
                page.paragraph(&lead, &detail);
            }
        }
    }
    let core = &top.core.material;
    page.paragraph("  core         ", &format!("{} at {}", words::within(&core.name), both(core.density, system)));
    for property in core_values(core) {
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
            for origin in skin_origins(skin) {
                page.paragraph("    ", &origin_words(report, origin));
            }
        }
        for (name, values) in other_values(top) {
            page.line(&format!("  {name}"));
            for property in values {
                page.paragraph("    ", &origin_words(report, &property.origin));
            }
        }
    }
}

/// Values of the core that count, by name.
pub(in crate::report) const fn core_values(core: &Core) -> [(&'static str, &Property<Pressure>); 4] {
    [
        ("shear strength", &core.shear_strength),
        ("shear modulus", &core.shear_modulus),
        ("compressive strength", &core.compressive_strength),
        ("compressive modulus", &core.compressive_modulus),
    ]
}

/// Values of pipes and backing, each under what it is of.
pub(in crate::report) fn other_values(top: &Top) -> Vec<(String, Vec<&Property<Pressure>>)> {
    let mut all: Vec<(String, Vec<&Property<Pressure>>)> = Vec::new();
    for alloy in top.supports.iter().filter_map(|support| support.pipe()?.alloy.as_ref()) {
        let name = format!("pipes: {}", alloy.name);
        if all.iter().all(|(known, _)| *known != name) {
            all.push((name, std::iter::once(&alloy.yield_strength).chain(&alloy.weld_yield_strength).collect()));
        }
    }
    all.extend(top.backings.iter().map(|backing| {
        let values = vec![&backing.board.compressive_strength, &backing.board.shear_strength];
        (format!("{}: {}", backing.name, backing.board.name), values)
    }));
    all
}

/// Where the values of a skin come from, each once.
pub(in crate::report) fn skin_origins(skin: &Schedule) -> Vec<&Origin> {
    let mut seen: Vec<&Origin> = Vec::new();
    for origin in skin.layers().iter().flat_map(|layer| &layer.origins) {
        if !seen.contains(&&**origin) {
            seen.push(origin);
        }
    }
    seen
}

/// What is counted of the strength of the core and of the moduli of the skins, state by state.
fn shares(page: &mut Page, analysis: &Analysis<'_>, core: &Core) {
    let names = 40.min(page.width().saturating_sub(39));
    let cells = |words: &str, cells: [String; 5]| {
        named("    ", words, names, &cells.iter().map(|cell| right(cell, 7)).collect::<String>())
    };
    let head = ["basis", "heat", "wet", "time", "all"].map(str::to_owned);
    let mut table = |of: &str, shares: &dyn Fn(&Knockdowns<'_>) -> Shares| {
        page.line(&Tone::Quiet.paint(&cells(of, head.clone())));
        for (state, knockdowns) in &analysis.knockdowns {
            let shares = shares(knockdowns);
            let each = [shares.basis, shares.hot, shares.wet, shares.time, shares.product()];
            page.line(&cells(&words::state(*state), each.map(|share| format!("{:.2}", share.get::<ratio>()))));
        }
    };
    table("counted of the core's shear strength", &|knockdowns| knockdowns.core_strength(core.shear_strength.basis));
    let top = analysis.top;
    table("of the outer skin's modulus, wrinkling", &|knockdowns| {
        knockdowns.skin_modulus(Skin::Outer, top.outer.stiffness_basis())
    });
    table("of the inner skin's modulus, wrinkling", &|knockdowns| {
        knockdowns.skin_modulus(Skin::Inner, top.inner.stiffness_basis())
    });
    table("of the stiffness of both, buckling", &|knockdowns| knockdowns.rigidity(top));
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

pub(super) fn criteria(page: &mut Page, report: &Report<'_>, full: bool) {
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
                    "{}{changed}: {} [{}{}; {}]",
                    record.shown(report.top.report),
                    record.title,
                    record.source,
                    if record.locator.is_empty() { String::new() } else { format!(", {}", record.locator) },
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

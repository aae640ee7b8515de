//! All that was assumed: material values and criteria, each with its source and mark.

use maud::{Markup, html};

use super::sources::Sources;
use crate::{
    analysis::{Analysis, Knockdowns, Shares},
    criteria::Record,
    material::{Origin, Property},
    report::{
        Report,
        text::{core_values, other_values, skin_origins},
        words,
    },
    section::Skin,
    source::Mark,
    units::{Pressure, both, show},
};

pub(super) fn assumptions(report: &Report<'_>, analysis: Option<&Analysis<'_>>) -> Markup {
    let top = report.top;
    // What buying, slings, drawings and the proof test take for granted is in none of these numbers.
    let elsewhere = |record: &&Record| ["order", "slings", "drawing", "proof"].contains(&record.group.as_str());
    let records: Vec<&Record> = top.criteria.records().into_iter().filter(|record| !elsewhere(record)).collect();
    let core_origins = core_values(&top.core.material).map(|(_, property)| &*property.origin);
    let others = other_values(top);
    let origins: Vec<&Origin> = core_origins
        .into_iter()
        .chain([&top.outer, &top.inner].into_iter().flat_map(skin_origins))
        .chain(others.iter().flat_map(|(_, values)| values).map(|property| &*property.origin))
        .collect();
    let keys: Vec<&str> = records.iter().map(|record| record.source.as_str()).collect();
    let sources = Sources::of(report, &origins, &keys);
    html! {
        p class="note" {
            "Each value has its source, by number in the list at the end of this part, and a mark: how it came into the table. “Read” and “quoted” "
            "stand in a source; “derived” was worked out; “from memory”, “common practice” and “our assumption” have no source that was seen."
        }
        h3 { "Material values" }
        div class="two" {
            (core(report, &sources))
            (skins(report, &sources))
            (other(report, &others, &sources))
        }
        @if let Some(analysis) = analysis { (shares(report, analysis)) }
        h3 { "Factors, knock-downs, limits and assumed loads" }
        div class="two" { (criteria(&records, &sources)) }
        (sources.list())
    }
}

fn heads(first: &str, second: &str) -> Markup {
    html! { thead { tr { th scope="col" { (first) } th scope="col" { (second) } th scope="col" { "Source and mark" } } } }
}

fn core(report: &Report<'_>, sources: &Sources<'_>) -> Markup {
    let (core, system) = (&report.top.core.material, report.top.report);
    html! {
        table class="values" {
            caption { "Core: " (words::within(&core.name)) " at " (both(core.density, system)) }
            (heads("Value", "As used"))
            tbody {
                @for (name, property) in core_values(core) {
                    tr {
                        th scope="row" { (name) }
                        td { (show(property.value, system)) span class="under" { (words::basis(property.basis)) } }
                        (origin(sources, &property.origin))
                    }
                }
            }
        }
    }
}

fn skins(report: &Report<'_>, sources: &Sources<'_>) -> Markup {
    html! {
        @for (name, skin) in [("Outer skin", &report.top.outer), ("Inner skin", &report.top.inner)] {
            table class="values" {
                caption { (name) ": strengths count as " (words::basis(skin.basis())) }
                (heads("Value", "As written"))
                tbody {
                    @for from in skin_origins(skin) {
                        tr {
                            th scope="row" { (from.row) span class="under" { (from.property.replace('_', " ")) } }
                            td { (from.as_written) }
                            (origin(sources, from))
                        }
                    }
                }
            }
        }
    }
}

fn other(report: &Report<'_>, others: &[(String, Vec<&Property<Pressure>>)], sources: &Sources<'_>) -> Markup {
    let system = report.top.report;
    html! {
        @for (name, values) in others {
            table class="values" {
                caption { (words::capital(name)) }
                (heads("Value", "As used"))
                tbody {
                    @for property in values {
                        tr {
                            th scope="row" { (property.origin.property.replace('_', " ")) }
                            td { (show(property.value, system)) span class="under" { (words::basis(property.basis)) } }
                            (origin(sources, &property.origin))
                        }
                    }
                }
            }
        }
    }
}

/// A table that is not the built-in one is named.
fn origin(sources: &Sources<'_>, origin: &Origin) -> Markup {
    let own = if origin.table.starts_with("built-in") { String::new() } else { format!("table {}", origin.table) };
    let known = [&origin.locator, origin.condition.as_deref().unwrap_or_default(), &own];
    html! {
        td class="source" {
            (sources.cite(&origin.source)) " "
            (known.into_iter().filter(|part| !part.is_empty()).collect::<Vec<_>>().join("; "))
            " " (mark(origin.mark))
        }
    }
}

fn mark(mark: Mark) -> Markup {
    html! { span class="tag" { (mark.words()) } }
}

/// What is counted of the core's shear strength and of the moduli of the skins, state by state.
fn shares(report: &Report<'_>, analysis: &Analysis<'_>) -> Markup {
    let (top, core) = (report.top, report.top.core.material.shear_strength.basis);
    html! {
        (shares_of(analysis, "the core’s shear strength", &|knockdowns| knockdowns.core_strength(core)))
        (shares_of(analysis, "the outer skin’s modulus against wrinkling and dimpling", &|knockdowns| {
            knockdowns.skin_modulus(Skin::Outer, top.outer.stiffness_basis())
        }))
        (shares_of(analysis, "the inner skin’s modulus against wrinkling and dimpling", &|knockdowns| {
            knockdowns.skin_modulus(Skin::Inner, top.inner.stiffness_basis())
        }))
        (shares_of(analysis, "the skins’ stiffness against buckling, where water is in the factor", &|knockdowns| {
            knockdowns.rigidity(top)
        }))
    }
}

fn shares_of(analysis: &Analysis<'_>, of: &str, shares: &dyn Fn(&Knockdowns<'_>) -> Shares) -> Markup {
    let cell = |share: crate::units::Ratio| format!("{:.2}", share.get::<uom::si::ratio::ratio>());
    html! {
        table class="narrow" {
            caption { "Counted of " (of) ": shares for its basis, heat, wet and time, and their product k" }
            thead {
                tr {
                    th scope="col" { "Load of" }
                    @for head in ["basis", "heat", "wet", "time", "k"] { th scope="col" class="n" { (head) } }
                }
            }
            tbody {
                @for (state, knockdowns) in &analysis.knockdowns {
                    @let shares = shares(knockdowns);
                    tr {
                        th scope="row" { (words::state(*state)) }
                        @for share in [shares.basis, shares.hot, shares.wet, shares.time, shares.product()] {
                            td class="n" { (cell(share)) }
                        }
                    }
                }
            }
        }
    }
}

fn criteria(records: &[&Record], sources: &Sources<'_>) -> Markup {
    let mut groups: Vec<&str> = Vec::new();
    for record in records {
        if !groups.contains(&record.group.as_str()) {
            groups.push(&record.group);
        }
    }
    html! {
        @for group in groups {
            table class="values" {
                caption { (words::capital(group)) }
                (heads("Name", "Value"))
                tbody {
                    @for record in records.iter().filter(|record| record.group == group) {
                        tr {
                            th scope="row" { (record.id) span class="under" { (record.title) } }
                            td {
                                (record.as_written)
                                @if record.changed_by_user { span class="under" { "changed from " (record.built_in) } }
                            }
                            td class="source" {
                                (sources.cite(&record.source)) " " (record.locator) " " (mark(record.mark))
                            }
                        }
                    }
                }
            }
        }
    }
}

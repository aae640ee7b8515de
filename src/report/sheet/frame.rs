//! What the frame, the feet of gear and the fixings must take, and how fixings are set.

use maud::{Markup, html};

use crate::{
    advice::Fitting,
    analysis::{Analysis, MountForces, MountOn},
    report::{
        FrameLoad, Report,
        fixings::{held_by, largest, lines},
        frame_loads,
        text::{incomplete, pushed_sideways},
        words,
    },
    top::Scope,
    units::{Dimensioned, show},
};

pub(super) fn frame(report: &Report<'_>, analysis: &Analysis<'_>) -> Markup {
    let mounted = |mount: usize| matches!(analysis.mounts[mount].on, MountOn::Gear(_));
    let feet = (0..analysis.mounts.len()).filter(|mount| mounted(*mount)).collect::<Vec<_>>();
    html! {
        @if report.top.scope == Scope::Whole { (supports(report, analysis)) }
        @if !feet.is_empty() { (footings(report, analysis, &feet)) }
        div class="two" { @for fitting in &report.fittings { (fixings(report, analysis, fitting)) } }
    }
}

fn fixings(report: &Report<'_>, analysis: &Analysis<'_>, fitting: &Fitting) -> Markup {
    let mount = &analysis.mounts[fitting.mount];
    html! {
        article class="check" {
            h3 { "Fixings of " (words::held(report.top, mount.on)) }
            p { (words::capital(&held_by(mount, report.top.report))) "." }
            dl class="rows" { @for (name, text) in lines(report, analysis, fitting) { dt { (name) } dd { (text) } } }
        }
    }
}

/// A value with its case below it; a dash where nothing acts.
fn cell<Q: Dimensioned>(report: &Report<'_>, analysis: &Analysis<'_>, found: Option<(Q, usize)>) -> Markup {
    html! {
        td class="n" {
            @match found {
                Some((value, case)) => { (show(value, report.top.report)) span class="under" { (analysis.cases[case].id) } },
                None => "–",
            }
        }
    }
}

fn supports(report: &Report<'_>, analysis: &Analysis<'_>) -> Markup {
    let system = report.top.report;
    let loads = frame_loads(report);
    html! {
        @if let Some(incomplete) = incomplete(analysis) { p class="note" { strong { (incomplete) } } }
        table {
            caption { "Loads as they act, without factors, each with its case: the larger of both methods along a support; moments and posts by the plate method, without the weight of the frame itself." }
            thead { tr { th scope="col" { "On" } th scope="col" class="n" { "Down" } th scope="col" class="n" { "Up" } th scope="col" class="n" { "Bends by" } } }
            @for load in &loads {
                tbody class="one" {
                    tr {
                        th scope="row" { (report.top.supports[load.pipe].name) span class="under" { "all along, for each length" } }
                        @if load.known() {
                            (along(report, analysis, load))
                        } @else {
                            td colspan="3" { "not known: the hand method does not count on it" }
                        }
                    }
                    @for (what, all) in [("post", &load.posts), ("joint", &load.joints)] {
                        @for one in all {
                            tr {
                                th scope="row" class="part" { "its " (what) " at " (show(one.along, system)) }
                                (cell(report, analysis, one.push.case.map(|case| (one.push.value, case))))
                                (cell(report, analysis, one.pull.case.map(|case| (one.pull.value, case))))
                                td class="n" { "–" }
                            }
                        }
                    }
                }
            }
        }
        p class="note" { "All of the frame: " (pushed_sideways(report, analysis)) "." }
    }
}

fn along(report: &Report<'_>, analysis: &Analysis<'_>, load: &FrameLoad) -> Markup {
    let (push, pull) = (load.push().0, load.pull().0);
    html! {
        (cell(report, analysis, push.case.map(|case| (push.value, case))))
        (cell(report, analysis, pull.case.map(|case| (pull.value, case))))
        (cell(report, analysis, load.moment.and_then(|moment| Some((moment.value, moment.case?)))))
    }
}

/// What acts on each footing of gear as a whole.
fn footings(report: &Report<'_>, analysis: &Analysis<'_>, feet: &[usize]) -> Markup {
    html! {
        table {
            caption { "Footings of gear as a whole, at the skin: what acts at the most, from any side, without factors." }
            thead {
                tr {
                    th scope="col" { "Of" }
                    @for head in ["Down", "Up", "Sideways", "Overturned by"] { th scope="col" class="n" { (head) } }
                }
            }
            tbody {
                @for &foot in feet {
                    @let own = || analysis.mount_forces.iter().filter(move |forces| forces.mount == foot);
                    tr {
                        th scope="row" { (words::held(report.top, analysis.mounts[foot].on)) }
                        (cell(report, analysis, largest(own(), |forces: &MountForces| forces.whole.push)))
                        (cell(report, analysis, largest(own(), |forces: &MountForces| forces.whole.lift)))
                        (cell(report, analysis, largest(own(), |forces: &MountForces| forces.whole.side)))
                        (cell(report, analysis, largest(own(), |forces: &MountForces| forces.whole.moment)))
                    }
                }
            }
        }
    }
}

//! What would pass, in words.

use uom::si::ratio::ratio;

use super::super::{
    Report,
    page::{Page, left},
    words,
};
use crate::{
    advice::{Advice, Change},
    analysis::MountOn,
    check::{CHECKS, Method, Outcome, Part, TooNear, mounts_too_near, stronger_pipe},
    top::{Fastened, Hold, Scope, Top},
    units::{Length, Mass, System, both, both_at_most, show},
};

pub(super) fn advice(page: &mut Page, report: &Report<'_>) {
    let Offers { remarks, offers } = offers(report);
    if remarks.is_empty() && offers.is_empty() {
        return;
    }
    page.heading(OFFERS);
    for remark in remarks {
        page.paragraph("  ", &remark);
    }
    for (title, changes) in offers {
        for (index, change) in changes.iter().enumerate() {
            let title = if index == 0 { title } else { "" };
            page.paragraph(&format!("  {} ", left(title, 20)), change);
        }
    }
}

/// Heading of what is offered.
pub(in crate::report) const OFFERS: &str = "What would pass, the smallest single change of each kind";

/// What would pass, in words.
pub(in crate::report) struct Offers {
    /// What no change was tried on, and how they were tried.
    pub(in crate::report) remarks: Vec<String>,
    /// For each check that fails, or for all of it: changes, or that there are none.
    pub(in crate::report) offers: Vec<(&'static str, Vec<String>)>,
}

pub(in crate::report) fn offers(report: &Report<'_>) -> Offers {
    let mut remarks = Vec::new();
    let by_plate_alone = by_plate_alone(report);
    if !by_plate_alone.is_empty() {
        remarks.push(format!(
            "Only the plate method finds fault with {}: no change was tried on that. See where it gives way, change that, and \
             check again.",
            by_plate_alone.join(", ")
        ));
    }
    if !by_plate_alone.is_empty() || !report.advice.is_empty() {
        remarks.extend(weak_pipes(report));
    }
    remarks.extend(mounts_too_near(report.top).iter().map(|pair| apart(report.top, pair)));
    if !report.advice.is_empty() && report.analysis.as_ref().is_ok_and(|analysis| analysis.whole.is_some()) {
        remarks.push(
            "Tried by the hand method: make the change and check again, so that the plate method sees it too."
                .to_owned(),
        );
    }
    let offers = report.advice.iter().map(|item| {
        let title = item.check.map_or(of_whole(report.top), |check| CHECKS[check].title());
        let changes = if item.remedies.is_empty() { vec![nothing(report, item)] } else { remedies(report, item) };
        (title, changes)
    });
    Offers { remarks, offers: offers.collect() }
}

const fn of_whole(top: &Top) -> &'static str {
    match top.scope {
        Scope::Whole => "the whole top",
        Scope::Patch => "the whole patch",
    }
}

/// That no change helps, and how far the nearest comes.
fn nothing(report: &Report<'_>, item: &Advice) -> String {
    let nearest = item.nearest.as_ref().map_or_else(String::new, |nearest| {
        format!(
            "; nearest is {}, which leaves {} at {}",
            change(&nearest.change, report.top),
            CHECKS[nearest.governs].title(),
            words::percent(nearest.utilisation.get::<ratio>())
        )
    });
    format!("no single change that was tried{nearest}")
}

/// Checks that fail by the plate method and by no other.
fn by_plate_alone(report: &Report<'_>) -> Vec<&'static str> {
    let fails = |check: usize, method: Method| {
        let of_check = |outcome: &&Outcome| outcome.check == check && outcome.method == method;
        report.envelope.iter().filter(of_check).any(|outcome| !outcome.passes())
    };
    let checks = CHECKS.iter().enumerate();
    let alone = checks.filter(|(check, _)| fails(*check, Method::Plate) && !fails(*check, Method::Hand));
    alone.map(|(_, check)| check.title()).collect()
}

/// For each pipe that bends for good, what would make it strong enough.
fn weak_pipes(report: &Report<'_>) -> Vec<String> {
    let mut named: Vec<usize> = Vec::new();
    let failing = report.envelope.iter().filter(|outcome| !outcome.passes());
    let bent = failing.filter(|outcome| CHECKS[outcome.check].id() == "pipe-bending");
    bent.filter_map(|outcome| match outcome.place.part {
        Part::Support(pipe) | Part::Weld(pipe) if !named.contains(&pipe) => {
            named.push(pipe);
            stronger_pipe(&report.top.supports[pipe], outcome.utilisation()?, report.top.report)
        }
        _ => None,
    })
    .collect()
}

/// Which of two mounts to move, and how far: no change of a kind that is tried moves one.
fn apart(top: &Top, pair: &TooNear) -> String {
    let system = top.report;
    let [one, other] = pair.fixings.map(|(on, _)| words::held(top, on));
    let [own, beside] = pair.fixings.map(|(_, number)| number + 1);
    let gear = |on| matches!(on, MountOn::Gear(_));
    let which = match pair.fixings.map(|(on, _)| gear(on)) {
        [true, false] => one,
        [false, true] => other,
        _ => "one of them",
    };
    format!(
        "Move {which}: fixing {own} of {one} and fixing {beside} of {other} stand {} apart and need {}, so {} farther apart at the \
         least, or turn or space its fixings so that they pass the others. Its backing goes with it; check again.",
        show(pair.apart, system),
        show(pair.needed, system),
        show(pair.needed - pair.apart, system)
    )
}

fn remedies(report: &Report<'_>, item: &Advice) -> Vec<String> {
    let each = item.remedies.iter().map(|remedy| {
        let then = if item.check.is_none() {
            format!(
                "; then {} governs, {} used",
                CHECKS[remedy.governs].title(),
                words::percent(remedy.utilisation.get::<ratio>())
            )
        } else {
            remedy.breaks.map_or_else(String::new, |check| format!(", but then {} fails", CHECKS[check].title()))
        };
        format!("{} ({}){then}", change(&remedy.change, report.top), added(remedy.added, report.top.report))
    });
    each.collect()
}

pub(in crate::report) fn added(mass: Mass, system: System) -> String {
    if mass.abs() < Mass::new::<uom::si::mass::kilogram>(0.005) {
        "same weight".to_owned()
    } else if mass > Mass::default() {
        format!("+{}", show(mass, system))
    } else {
        format!("−{}", show(-mass, system))
    }
}

fn fastened(top: &Top, on: MountOn) -> Option<&Fastened> {
    match on {
        MountOn::Gear(index) => top.gear.get(index)?.fastened.as_ref(),
        MountOn::Support(index) => top.supports.get(index)?.fastened.as_ref(),
    }
}

/// A change in the words of the shop.
pub(in crate::report) fn change(change: &Change, top: &Top) -> String {
    let system = top.report;
    match change {
        Change::CoreThickness(thickness) => {
            // What fills the core is as thick as the core.
            let filling: Vec<&str> = top.backings.iter().map(|backing| backing.name.as_str()).collect();
            let filling =
                if filling.is_empty() { String::new() } else { format!(", and {} with it", filling.join(", ")) };
            format!("core {} thick{filling}", both(*thickness, system))
        }
        Change::CoreDensity(density) => format!("core of {}", both(*density, system)),
        Change::OuterPlies { layer, more, .. } => format!("{more} more of \"{layer}\" in the outer skin"),
        Change::InnerPlies { layer, more, .. } => format!("{more} more of \"{layer}\" in the inner skin"),
        Change::PipeCount { pipes, spacing } => {
            format!("{pipes} pipes, {} apart, those between like the first", show(*spacing, system))
        }
        Change::PipesMoved { outwards, spacing } => {
            let way = if *outwards > Length::default() { "out" } else { "in" };
            format!("outer pipes {} farther {way}, {} apart", show(outwards.abs(), system), show(*spacing, system))
        }
        Change::PipesLonger(by) => format!("pipes {} longer at both ends", show(*by, system)),
        Change::OverhangTrimmed(by) => format!("overhang trimmed by {} on both sides", show(*by, system)),
        Change::BackingWidth { backing, width } => {
            format!("{} {} wide", top.backings[*backing].name, both(*width, system))
        }
        Change::BackingLength { backing, by } => {
            format!("{} {} longer at both ends", top.backings[*backing].name, both(*by, system))
        }
        Change::BackingBoard { backing, density, .. } => {
            format!("{} of board of {}", top.backings[*backing].name, both(*density, system))
        }
        Change::BackingKind { backing, board } => {
            let backing = &top.backings[*backing];
            let name = backing.boards.iter().find(|known| known.id == *board).map_or("", |known| known.name.as_str());
            format!("{} of {}", backing.name, words::within(name))
        }
        Change::Size { on, size } => {
            let name = fastened(top, *on).and_then(|held| held.fixing.larger.get(*size)).map_or("", Hold::size);
            format!("{} for {}", words::within(name), words::held(top, *on))
        }
        Change::FixingCount { on, count, .. } => format!("{count} fixings for {}", words::held(top, *on)),
        Change::Torque { on, torque } => {
            format!("a torque of {} for {}", both_at_most(*torque, system), words::held(top, *on))
        }
        Change::Washer { on, outside } => {
            format!("washers of {} for {}", both(*outside, system), words::held(top, *on))
        }
    }
}

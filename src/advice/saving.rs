//! What could be smaller with all still holding that holds.

use uom::si::ratio::ratio;

use super::{Change, Remedy, Used, by_hand, fixing_change, try_change};
use crate::{
    analysis::{Analysis, MountOn},
    check::Outcome,
    top::Top,
    units::{Force, Ratio},
};

/// The most that can be saved of a kind without breaking what holds: the narrowest backing, the lightest board, the
/// fewest fixings. Each is tried alone, by the hand method.
#[must_use]
pub fn savings(top: &Top, outcomes: &[Outcome]) -> Vec<Remedy> {
    let before = Used::of(&by_hand(outcomes), top);
    fixing_change::savings(top)
        .into_iter()
        .filter_map(|kind| {
            let mut last = None;
            for change in kind {
                let Some(used) = try_change(top, &change) else { break };
                if used.broken_since(&before).is_some() {
                    break;
                }
                last = Some(saving(change, &used, &before));
            }
            last
        })
        .collect()
}

/// What the plate method leaves of savings that were tried by hand: nothing is offered on rows whose fixings it found to
/// be pulled harder, nor on what these hold in.
#[must_use]
pub fn left_by_plate(analysis: &Analysis<'_>, mut all: Vec<Remedy>) -> Vec<Remedy> {
    if analysis.whole.as_ref().is_some_and(Result::is_ok) {
        all.retain(|saving| !touches_row_on_plate(analysis, &saving.change));
    }
    all
}

fn saving(change: Change, used: &Used, before: &Used) -> Remedy {
    let (governs, utilisation) = used.worst();
    let utilisation = Ratio::new::<ratio>(utilisation);
    Remedy { change, governs, utilisation, added: used.mass - before.mass, breaks: None }
}

/// Whether a change makes less of a row that the plate method pulls harder than the hand method, or of its backing.
fn touches_row_on_plate(analysis: &Analysis<'_>, change: &Change) -> bool {
    let on_plate = || {
        let rows = analysis.mounts.iter().enumerate();
        rows.filter(|(number, mount)| matches!(mount.on, MountOn::Support(_)) && harder_on_plate(analysis, *number))
    };
    match change {
        Change::FixingCount { on, .. } => on_plate().any(|(_, mount)| mount.on == *on),
        Change::BackingWidth { backing, .. } | Change::BackingBoard { backing, .. } => on_plate().any(|(_, mount)| {
            let stands_in = mount.places.iter().filter_map(|place| place.backing);
            stands_in.filter(|stands| stands.holds(analysis.top)).any(|stands| stands.backing == *backing)
        }),
        _ => false,
    }
}

/// Whether under any case the plate method pulls a fixing of a mount harder than the hand method pulls any.
fn harder_on_plate(analysis: &Analysis<'_>, mount: usize) -> bool {
    (0..analysis.cases.len()).any(|case| {
        let most = |on_plate: bool| {
            let own = analysis.mount_forces.iter().filter(|own| own.mount == mount && own.case == case);
            let pulls = own.filter(|own| own.on_plate == on_plate).flat_map(|own| &own.pulls);
            pulls.copied().fold(Force::default(), Force::max)
        };
        most(true) > most(false)
    })
}

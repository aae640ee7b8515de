//! A fixing in its backing: wholly inside, away from its sides and ends.

use super::{Held, each_in_place};
use crate::{
    analysis::{Analysis, InBacking},
    check::{Check, Finding, Outcomes, Subject},
    material::Basis,
    source::{ASSUMPTION, Citation, Mark},
    units::{Length, Ratio},
};

pub(in crate::check) struct FixingInBacking;

impl Check for FixingInBacking {
    fn id(&self) -> &'static str {
        "fixing-in-backing"
    }

    fn title(&self) -> &'static str {
        "fixing in backing"
    }

    fn subject(&self) -> Subject {
        Subject::Fixings
    }

    fn what(&self) -> &'static str {
        "a fixing stands beside its backing, or so near to its side or end that the board splits out"
    }

    fn formula(&self) -> &'static str {
        "a d ≤ w/2 − y across the backing, b d ≤ L/2 − x along it, x and y from its middle; outside it y + a d ≤ w/2, x + b d ≤ L/2"
    }

    fn limits(&self) -> &'static str {
        "fixings that hold in the backing; one that goes through both skins, or holds in one skin, needs none"
    }

    fn citation(&self) -> Citation {
        Citation {
            work: ASSUMPTION,
            locator: "distances from side and end in board, in diameters",
            mark: Mark::Assumed,
        }
    }

    fn evaluate(&self, analysis: &Analysis<'_>, outcomes: &mut Outcomes<'_>) {
        each_in_place(analysis, |held| {
            if !held.fixing().needs_backing() {
                return;
            }
            match held.around().backing {
                Some(backing) => compare(held, backing, outcomes),
                None => outcomes.cannot(
                    None,
                    held.place().part,
                    format!("{}: what holds in backing has none in this top", held.fixing().name),
                ),
            }
        });
    }
}

fn compare(held: Held<'_>, around: InBacking, outcomes: &mut Outcomes<'_>) {
    let criteria = &held.top.criteria;
    let diameter = held.fixing().diameter();
    let half_width: Length = held.top.backings[around.backing].width / 2.0;
    for (from_middle, diameters, half, symbol) in [
        (around.across, criteria.backing_side_distance.value, half_width, "y"),
        (around.along, criteria.backing_end_distance.value, around.half_length, "x"),
    ] {
        let (needed, left): (Length, Length) = (diameter * diameters, half - from_middle);
        // One that stands outside has nothing left to compare with: then all of it is counted from the middle.
        let (demand, there) = if left > Length::default() { (needed, left) } else { (from_middle + needed, half) };
        outcomes.compare(None, demand / there, || {
            let finding = Finding::compare(demand, there, Ratio::from(1.0), Basis::Typical);
            let (times, of) = if symbol == "y" { ("a", "w") } else { ("b", "L") };
            let finding = finding.term(symbol, from_middle).term("d", diameter).term(times, diameters);
            (held.place(), finding.term(of, half * 2.0))
        });
    }
}

//! A backing that ends too near to the footing on it.

use super::{
    each_in_place,
    patch::{foot_on, gear_on_backing},
};
use crate::{
    analysis::Analysis,
    check::{Check, Finding, Outcomes, Part, Place, Subject},
    material::Basis,
    source::{ASSUMPTION, Citation, Mark},
    units::{Length, Ratio},
};

pub(in crate::check) struct BackingEnd;

impl Check for BackingEnd {
    fn id(&self) -> &'static str {
        "backing-end"
    }

    fn title(&self) -> &'static str {
        "end of backing"
    }

    fn subject(&self) -> Subject {
        Subject::Fixings
    }

    fn what(&self) -> &'static str {
        "a footing stands so near to the end of its backing that the end takes the load alone"
    }

    fn formula(&self) -> &'static str {
        "x + l/2 + n c ≤ L/2,  x from the middle of the backing to that of the footing, along it"
    }

    fn limits(&self) -> &'static str {
        "footing of gear over a backing; what a near end costs is in the core round backing too; a backing that ends in a \
         taper, or at a pipe, may end nearer"
    }

    fn citation(&self) -> Citation {
        Citation { work: ASSUMPTION, locator: "room for a load that spreads at 45 degrees", mark: Mark::Practice }
    }

    fn evaluate(&self, analysis: &Analysis<'_>, outcomes: &mut Outcomes<'_>) {
        each_in_place(analysis, |held| {
            if held.number > 0 {
                return;
            }
            let Some((gear, around)) = gear_on_backing(&held) else { return };
            let [foot, _] = foot_on(gear, &held.top.backings[around.backing]);
            let (thickness, beyond) = (held.top.core.thickness, held.top.criteria.backing_beyond_foot.value);
            let demand: Length = around.along + foot / 2.0 + thickness * beyond;
            outcomes.compare(None, demand / around.half_length, || {
                let finding = Finding::compare(demand, around.half_length, Ratio::from(1.0), Basis::Typical);
                let finding = finding.term("x", around.along).term("l", foot).term("n", beyond).term("c", thickness);
                let place = Place::of(Part::Mount(held.mount.on), Some(gear.at));
                (place, finding.term("L", around.half_length * 2.0))
            });
        });
    }
}

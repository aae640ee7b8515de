//! Larger sizes of a fixing that the table has, so that they can be tried.

use std::sync::Arc;

use crate::{
    material::{MaterialTable, Thread},
    top::{Bolt, Hold, Washer},
    units::Length,
};

/// The same hold in each larger size of its family, the smallest first.
pub(super) fn larger(hold: &Hold, table: &MaterialTable) -> Arc<[Hold]> {
    let mut sizes: Vec<(Length, Hold)> = match hold {
        Hold::ThroughBolt { bolt, washer, sleeve } => threads(table, bolt)
            .filter(|thread| {
                let inside = sleeve.as_ref().map(|sleeve| sleeve.outside - sleeve.wall * 2.0);
                inside.is_none_or(|inside: Length| inside >= thread.major.value)
            })
            .map(|thread| {
                let washer = if *washer == Washer::large_of(&bolt.thread) {
                    Washer::large_of(thread)
                } else {
                    let outside = washer.outside.max(thread.large_washer_outside.value);
                    Washer { outside, ..*washer }
                };
                let hold = Hold::ThroughBolt { bolt: cut(bolt, thread), washer, sleeve: sleeve.clone() };
                (thread.major.value, hold)
            })
            .collect(),
        Hold::TappedScrew { bolt, depth } => threads(table, bolt)
            .map(|thread| (thread.major.value, Hold::TappedScrew { bolt: cut(bolt, thread), depth: *depth }))
            .collect(),
        Hold::Screw { screw, grade, depth } => {
            let others = table.screws().iter().filter(|other| other.family == screw.family);
            let size = |other: &crate::material::Screw| {
                let hold = Hold::Screw { screw: other.clone(), grade: grade.clone(), depth: *depth };
                (other.major.value, hold)
            };
            others.filter(|other| other.major.value > screw.major.value).map(size).collect()
        }
        Hold::BlindInsert { bolt, insert } => {
            let others = table.inserts().iter().filter(|other| other.family == insert.family);
            let size = |other: &crate::material::Insert| {
                let thread = table.thread(&other.thread).ok()?;
                let hold = Hold::BlindInsert { bolt: cut(bolt, thread), insert: other.clone() };
                Some((other.hole.value, hold))
            };
            others.filter(|other| other.hole.value > insert.hole.value).filter_map(size).collect()
        }
        Hold::PottedInsert { bolt, insert, potting, depth } => {
            let others = table.potted_inserts().iter().filter(|other| other.family == insert.family);
            let size = |other: &crate::material::PottedInsert| {
                let bolt = cut(bolt, table.thread(&other.thread).ok()?);
                let (insert, potting) = (other.clone(), potting.clone());
                Some((other.bore.value, Hold::PottedInsert { bolt, insert, potting, depth: *depth }))
            };
            others.filter(|other| other.bore.value > insert.bore.value).filter_map(size).collect()
        }
        Hold::BlindRivet { rivet } => {
            let others = table.rivets().iter().filter(|other| other.family == rivet.family);
            let size = |other: &crate::material::Rivet| (other.hole.value, Hold::BlindRivet { rivet: other.clone() });
            others.filter(|other| other.hole.value > rivet.hole.value).map(size).collect()
        }
        Hold::BondedStud { bolt, stud, adhesive } => {
            let others = table.studs().iter().filter(|other| other.family == stud.family);
            let size = |other: &crate::material::Stud| {
                let thread = table.thread(&other.thread).ok()?;
                let (stud, adhesive) = (other.clone(), adhesive.clone());
                Some((thread.major.value, Hold::BondedStud { bolt: cut(bolt, thread), stud, adhesive }))
            };
            others.filter_map(size).filter(|(major, _)| *major > bolt.thread.major.value).collect()
        }
    };
    sizes.sort_by(|a, b| a.0.value.total_cmp(&b.0.value));
    sizes.into_iter().map(|(_, hold)| hold).collect()
}

/// Larger threads of the same family.
fn threads<'t>(table: &'t MaterialTable, bolt: &Bolt) -> impl Iterator<Item = &'t Thread> {
    let (family, major) = (bolt.thread.family.clone(), bolt.thread.major.value);
    table.threads().iter().filter(move |other| other.family == family && other.major.value > major)
}

fn cut(bolt: &Bolt, thread: &Thread) -> Bolt {
    Bolt { thread: thread.clone(), ..bolt.clone() }
}

//! `[proof]`: how the shop tests, in short; each key is one of the criteria.

use super::{
    order::{change, too_much},
    reader::Room,
};
use crate::{
    criteria::Criteria,
    units::{Length, Mass, Ratio, Sign, Time},
};

/// Keys that are lengths, with their criteria.
const LENGTHS: [(&str, &str); 5] = [
    ("bag_length", "proof-bag-length"),
    ("bag_width", "proof-bag-width"),
    ("gauge", "proof-gauge-noise"),
    ("settling", "proof-settling"),
    ("fall", "proof-fall"),
];

/// Keys that are shares, with their criteria.
const SHARES: [(&str, &str); 3] =
    [("residual", "proof-residual"), ("straightness", "proof-straightness"), ("most_used", "proof-most-used")];

/// Puts what the file says into the criteria.
pub(super) fn read_proof(root: &Room<'_>, criteria: &mut Criteria) {
    let Some(room) = root.room("proof") else { return };
    if let Some(given) = room.quantity::<Mass>("bag", Sign::Positive) {
        change(&room, criteria, ("bag", "proof-bag"), &given);
    }
    for (key, id) in LENGTHS {
        if let Some(given) = room.quantity::<Length>(key, Sign::Positive) {
            change(&room, criteria, (key, id), &given);
        }
    }
    for (key, id) in SHARES {
        match room.quantity::<Ratio>(key, Sign::Positive) {
            Some(given) if given.value > Ratio::from(1.0) => room.report(too_much(key, &given)),
            Some(given) => change(&room, criteria, (key, id), &given),
            None => {}
        }
    }
    if let Some(given) = room.quantity::<Time>("wait", Sign::NotNegative) {
        change(&room, criteria, ("wait", "proof-wait"), &given);
    }
    room.close();
}

//! What readings say is wrong with supports, with one gauge, or with how they were written down.

use super::{Card, words};
use crate::proof::{Compared, GaugeAt, GaugeCompared, Slip};

/// A gauge with what it reads and what it should read.
fn beside(card: Card<'_>, one: &GaugeCompared) -> String {
    let gauge = &card.proof.gauges[one.gauge];
    let (expected, band) = (gauge.reading.expected, gauge.reading.band);
    format!(
        "{} reads {}, expected were {} ± {}",
        gauge.name,
        words::gauged(one.read, card),
        words::reading(expected, card.system()),
        words::reading(band, card.system())
    )
}

/// Supports that go down too far.
pub(super) fn gives_way(card: Card<'_>, compared: &Compared) -> Option<String> {
    let own: Vec<String> = compared
        .gauges
        .iter()
        .filter(|one| compared.give_way.contains(&one.gauge))
        .map(|one| format!("{} ({})", beside(card, one), words::at(card.top, card.proof.gauges[one.gauge].on)))
        .collect();
    let settling = words::gauged(card.top.criteria.proof_settling.value, card);
    (!own.is_empty()).then(|| {
        format!(
            "STOP, WHAT THE TOP STANDS ON GIVES WAY: {}; beyond ± a support may settle by {settling}. Mend posts, feet and what is below \
             them, then test anew.",
            own.join("; ")
        )
    })
}

/// The gauge that alone is out.
pub(super) fn suspected(card: Card<'_>, compared: &Compared) -> Option<String> {
    let one = compared.gauges.iter().find(|one| Some(one.gauge) == compared.suspect)?;
    let stays = if matches!(card.proof.gauges[one.gauge].on, GaugeAt::Support(_)) {
        "The top did not go down with it, as the others say. If it reads so again, that support goes away from below the top"
    } else {
        "If it reads so again, the top is another there"
    };
    Some(format!(
        "LOOK AT GAUGE {} FIRST, which alone is out: {}; all others are as they should be. See to its foot, its head and its unit, and \
         read it anew. {stays}.",
        card.proof.gauges[one.gauge].name,
        beside(card, one)
    ))
}

/// Readings that look as if they had been written down otherwise, alike ones together.
pub(super) fn slips(card: Card<'_>, compared: &Compared) -> Vec<String> {
    let mut kinds: Vec<(Slip, Vec<&str>)> = Vec::new();
    for (gauge, slip) in &compared.slips {
        let name = card.proof.gauges[*gauge].name.as_str();
        match kinds.iter_mut().find(|(known, _)| known == slip) {
            Some((_, names)) => names.push(name),
            None => kinds.push((*slip, vec![name])),
        }
    }
    let said = |(slip, names): &(Slip, Vec<&str>)| {
        let many = names.len() > 1;
        let names = format!("{} {}", if many { "Gauges" } else { "Gauge" }, names.join(", "));
        match slip {
            Slip::Turned => format!(
                "{names}: what was read is of the size that was expected, but goes the other way: the sign {} turned (down is positive).",
                if many { "looks" } else { "of the gauge looks" }
            ),
            Slip::Unit(unit) => {
                let (read, head) = words::units_slipped(*unit);
                format!(
                    "{names}: about {} times what was expected, as if {read} stood below a head of {head}: write the unit that was read into \
                     the head.",
                    words::times(unit.times())
                )
            }
        }
    };
    kinds.iter().map(said).collect()
}

/// What is wrong with each gauge, those with the same faults together.
pub(super) fn each(card: Card<'_>, compared: &Compared) -> Vec<String> {
    let mut kinds: Vec<(Vec<&str>, Vec<&str>)> = Vec::new();
    for one in &compared.gauges {
        let said = compared.suspect == Some(one.gauge) || compared.give_way.contains(&one.gauge);
        let mut faults = Vec::new();
        if !one.in_band && !said {
            faults.push("out of its band");
        }
        match one.straight {
            Some(true) => {}
            Some(false) => faults.push("not straight"),
            None => faults.push("read at less than three loads, which says nothing of straightness"),
        }
        match one.springs_back {
            Some(true) => {}
            Some(false) => faults.push("not back where it was"),
            None => faults.push("not read after unloading"),
        }
        if faults.is_empty() {
            continue;
        }
        let name = card.proof.gauges[one.gauge].name.as_str();
        match kinds.iter_mut().find(|(known, _)| *known == faults) {
            Some((_, names)) => names.push(name),
            None => kinds.push((faults, vec![name])),
        }
    }
    let said = |(faults, names): &(Vec<&str>, Vec<&str>)| {
        let noun = if names.len() > 1 { "Gauges" } else { "Gauge" };
        format!("{noun} {}: {}.", names.join(", "), faults.join(", "))
    };
    kinds.iter().map(said).collect()
}

//! The card: one page for the wall.

use super::{Card, heading, words};
use crate::{
    proof::{Gauge, Heap, Kind, Reading},
    report::{
        page::{Page, left, right},
        said::counted,
        words as shared,
    },
    units::{Length, Ratio, show},
};

/// Width of what stands before the columns of gauges.
const STEP: usize = 14;
/// Width of the columns of all gauges where the page has room, and the most and the least of one.
const GAUGES: usize = 66;
const GAUGE: usize = 13;
const TO_WRITE_ON: &str = "________";

pub(super) fn card(page: &mut Page, card: Card<'_>) {
    page.paragraph("", &format!("PROOF TEST: {}, without gear", card.top.title));
    for sentence in words::sentences(card) {
        page.paragraph("  ", &sentence);
    }
    bags(page, card);
    steps(page, card);
    rules(page, card);
    page.blank();
    page.paragraph("", "Date ____________ Temperature ______ Tested by ____________ Passed: yes / no");
}

fn bags(page: &mut Page, card: Card<'_>) {
    let (proof, system) = (card.proof, card.system());
    heading(page, "Bags, in the order in which they are laid (middle of each)");
    let place = |heap: &Heap| shared::point(heap.at, system);
    match proof.governs.kind {
        Kind::Place { .. } if proof.heaps.len() == 1 => {
            for heap in &proof.heaps {
                page.paragraph("  ", &format!("{} upon each other at {}", counted(heap.bags, "bag"), place(heap)));
            }
        }
        Kind::Place { .. } | Kind::Even { .. } => {
            let each = proof.heaps.first().map_or(0, |heap| heap.bags);
            let all: Vec<String> = proof.heaps.iter().map(place).collect();
            let words =
                format!("{each} at each place, one more in each step, from the rim inwards: {}", all.join("; "));
            page.paragraph("  ", &words);
        }
    }
    let [length, width] = proof.bag_size.map(|size| show(size, system));
    page.paragraph(
        "  ",
        &format!(
            "A bag lies {length} along the top by {width} across. Lay them crosswise where they stand upon each \
         other. Weigh some of them."
        ),
    );
}

fn steps(page: &mut Page, card: Card<'_>) {
    let (proof, system) = (card.proof, card.system());
    let criteria = &card.top.criteria;
    heading(
        page,
        &format!(
            "Gauges below the top, down is positive, zero without bags; expected readings, {}",
            words::unit(system)
        ),
    );
    for gauge in &proof.gauges {
        let Reading { core, skin, method, .. } = gauge.reading;
        let [core, skin, method] = [core, skin, method].map(|part| words::reading(part, system));
        let parts = format!("{}; C {core}, S {skin}, E {method}", words::gauge(card, gauge));
        page.paragraph(&format!("  {} ", gauge.name), &parts);
    }
    columns(page, card);
    let [between, tip] = proof.by_hand;
    let hand = [("between supports", between), ("at a tip", tip)];
    let hand = hand.into_iter().filter_map(|(name, sag)| Some(format!("{} {name}", words::length(sag?, card))));
    let hand: Vec<String> = hand.collect();
    if !hand.is_empty() {
        page.paragraph("  ", &format!("By the hand method under all bags, at the most: {}.", hand.join(", ")));
    }
    let [core, skins] = crate::proof::bases(card.top).map(shared::basis);
    let [of_core, of_skins] = crate::proof::scatters(card.top).map(|share| share.value);
    let noise = words::gauged(criteria.proof_gauge_noise.value, card);
    page.paragraph(
        "  ",
        &format!(
            "± is √(({of_core} C)² + ({of_skins} S)² + E²) by the share of the bags, and {noise} for the gauge: C and S, by how much \
             more it reads where core and skins give twice as much, of which those shares may scatter (the shear modulus of the core is \
             {core}, skins {skins}); E, the error of the plate method. ± holds after what the supports move beyond their own \
             expected reading, as a plane, is taken off."
        ),
    );
}

/// Expected readings step by step with room to write beside them, a column for each gauge; in as many tables as a narrow page
/// takes.
fn columns(page: &mut Page, card: Card<'_>) {
    let (proof, system) = (card.proof, card.system());
    let noise = card.top.criteria.proof_gauge_noise.value;
    let expected = |gauge: &Gauge, share: Ratio| {
        let expected: Length = gauge.reading.expected * share;
        let band: Length = (gauge.reading.band - noise) * share + noise;
        format!("{} ±{}", words::reading(expected, system), words::reading(band, system))
    };
    let all = || proof.gauges.iter().flat_map(|gauge| proof.steps.iter().map(|step| expected(gauge, step.share)));
    let longest = all().map(|cell| cell.chars().count()).max().unwrap_or(0).max(TO_WRITE_ON.len()) + 1;
    let room = page.width().saturating_sub(STEP);
    let fit = (room / longest).max(1);
    let tables = proof.gauges.len().div_ceil(fit).max(1);
    let each = proof.gauges.len().div_ceil(tables).max(1);
    let wide = (GAUGES.min(room) / each).min(GAUGE).max(longest);
    for (number, gauges) in proof.gauges.chunks(each).enumerate() {
        if number > 0 {
            page.blank();
        }
        let mut row = |name: &str, cell: &dyn Fn(&Gauge) -> String| {
            let cells: String = gauges.iter().map(|gauge| right(&cell(gauge), wide)).collect();
            page.line(&format!("  {}{cells}", left(name, STEP - 2)));
        };
        row("bags", &|gauge| gauge.name.clone());
        for step in &proof.steps {
            let name = format!("{} of {}", step.bags, proof.steps.last().map_or(0, |last| last.bags));
            row(&name, &|gauge| expected(gauge, step.share));
            row("  read", &|_| TO_WRITE_ON.to_owned());
        }
        row("0, after", &|_| TO_WRITE_ON.to_owned());
    }
}

fn rules(page: &mut Page, card: Card<'_>) {
    let (criteria, system) = (&card.top.criteria, card.system());
    let percent = |share: Ratio| shared::percent(share.value);
    let wait = show(criteria.proof_wait.value, system);
    heading(page, "Rules");
    for rule in [
        format!(
            "Nobody under the top or on it. Blocks below, so that it falls {} at the most; bags are handed on from outside, from \
             the rim inwards, and taken off from inside outwards.",
            words::length(criteria.proof_fall.value, card)
        ),
        "Read the gauges from beside the top: long stems, a mirror or a camera. On a wall or a pipe set the gauge on its upper \
         face."
            .to_owned(),
        "Load by half and unload once, set gauges to zero, then begin.".to_owned(),
        format!("Wait {wait} after each step, read, and go on only if all is quiet and within ±."),
        format!(
            "STOP and unload: cracking noises; a gauge that creeps on; a reading beyond ±, on a support by more than {} beyond it; a \
             reading off the straight line by more than {}.",
            words::length(criteria.proof_settling.value, card),
            percent(criteria.proof_straightness.value)
        ),
        format!(
            "PASS: all readings within ±, on a straight line to {}, and {wait} after unloading no more than {} of the reading \
             under all bags is left (or {}, the error of a gauge).",
            percent(criteria.proof_straightness.value),
            percent(criteria.proof_residual.value),
            words::gauged(criteria.proof_gauge_noise.value, card)
        ),
        "Heaps bend the top between supports more, and its overhangs less, than what lies evenly; a bag presses on more than a foot \
         or a hand does, and lies farther in."
            .to_owned(),
        "Not proved by bags: what a foot does to the core right below it, uplift, fixings, heat, water, time. Shares and \
         limits here are our assumptions (`proof-…` in `skinspan check --full`)."
            .to_owned(),
    ] {
        page.paragraph("  - ", &rule);
    }
}

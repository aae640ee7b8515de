//! The card: one page for the wall.

use super::{Card, heading, words};
use crate::{
    proof::{Heap, Kind},
    report::{
        page::{Page, left, right},
        said::counted,
        words as shared,
    },
    units::{Length, show},
};

/// Width of the columns of all gauges, and the most of one.
const GAUGES: usize = 66;
const GAUGE: usize = 13;

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
        page.paragraph(&format!("  {} ", gauge.name), &words::gauge(card, gauge));
    }
    let wide = (GAUGES.min(page.width().saturating_sub(14)) / proof.gauges.len().max(1)).min(GAUGE);
    let row = |name: &str, cells: &[String]| {
        format!("  {}{}", left(name, 12), cells.iter().map(|cell| right(cell, wide)).collect::<String>())
    };
    let cells = |of: &dyn Fn(&crate::proof::Gauge) -> String| -> Vec<String> { proof.gauges.iter().map(of).collect() };
    page.line(&row("bags", &cells(&|gauge| gauge.name.clone())));
    for step in &proof.steps {
        let own = cells(&|gauge| {
            let (reading, noise) = (gauge.reading, criteria.proof_gauge_noise.value);
            let expected: Length = reading.expected * step.share;
            let band: Length = (reading.band - noise) * step.share + noise;
            format!("{} ±{}", words::reading(expected, system), words::reading(band, system))
        });
        let name = format!("{} of {}", step.bags, proof.steps.last().map_or(0, |last| last.bags));
        page.line(&row(&name, &own));
        page.line(&row("  read", &cells(&|_| "________".to_owned())));
    }
    page.line(&row("0, after", &cells(&|_| "________".to_owned())));
    let [between, tip] = proof.by_hand;
    let hand = [("between supports", between), ("at a tip", tip)];
    let hand = hand.into_iter().filter_map(|(name, sag)| Some(format!("{} {name}", words::length(sag?, card))));
    let hand: Vec<String> = hand.collect();
    if !hand.is_empty() {
        page.paragraph("  ", &format!("By the hand method under all bags, at the most: {}.", hand.join(", ")));
    }
    let [core, skins] = crate::proof::bases(card.top).map(shared::basis);
    page.paragraph(
        "  ",
        &format!(
            "± is what core (its shear modulus is {core}) and skins ({skins}) may scatter, the error of the plate method, and \
             that of a gauge ({}). ± holds after what the supports move beyond their own expected reading, as a plane, is taken off.",
            words::length(criteria.proof_gauge_noise.value, card)
        ),
    );
}

fn rules(page: &mut Page, card: Card<'_>) {
    let (criteria, system) = (&card.top.criteria, card.system());
    let percent = |share: crate::units::Ratio| shared::percent(share.value);
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
            words::length(criteria.proof_gauge_noise.value, card)
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

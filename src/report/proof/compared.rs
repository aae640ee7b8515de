//! Readings against the card.

use super::{Card, faults, heading, words};
use crate::{
    proof::{Causes, Compared, Found, GaugeAt, GaugeCompared},
    report::{
        page::{Page, left, right},
        words as shared,
    },
    units::Length,
};

pub(super) fn compared(page: &mut Page, card: Card<'_>, compared: &Compared) {
    page.paragraph("", &format!("PROOF TEST: {}, readings", card.top.title));
    page.blank();
    for sentence in sentences(card, compared) {
        page.paragraph("  ", &sentence);
    }
    table(page, card, compared);
    causes(page, card, compared);
}

/// The answer in sentences.
pub(super) fn sentences(card: Card<'_>, compared: &Compared) -> Vec<String> {
    let proof = card.proof;
    let all = proof.steps.last().map_or(0, |last| last.bags);
    let mut sentences = Vec::new();
    if compared.passes(proof) {
        // What these bags do not stand for may fail all the same.
        sentences.extend(words::does_not_hold(card));
        sentences.push("PASSES: all gauges within their bands, straight, and back where they were.".to_owned());
    } else {
        sentences.push("DOES NOT PASS:".to_owned());
        sentences.extend(faults::gives_way(card, compared));
        sentences.extend(faults::suspected(card, compared));
        sentences.extend(faults::slips(card, compared));
        if proof.lowered {
            sentences.push("The bags are fewer than the case asks: the checks did not allow all of it.".to_owned());
        }
        sentences.extend(words::does_not_hold(card));
        sentences.extend(words::not_made(card));
        if compared.most_bags < all {
            sentences.push(format!("{} of {all} bags were laid.", compared.most_bags));
        }
        let names: Vec<&str> = proof
            .gauges
            .iter()
            .enumerate()
            .filter(|(at, _)| !compared.gauges.iter().any(|one| one.gauge == *at))
            .map(|(_, gauge)| gauge.name.as_str())
            .collect();
        if !names.is_empty() {
            sentences.push(format!("Not read, or at one load alone: {}.", names.join(", ")));
        }
        sentences.extend(faults::each(card, compared));
    }
    sentences.extend(moved(card, compared));
    sentences.push(explained(card, compared));
    sentences
}

/// What the supports moved, and what that takes off other gauges.
fn moved(card: Card<'_>, compared: &Compared) -> Vec<String> {
    let noise = card.top.criteria.proof_gauge_noise.value;
    let Some(moved) = compared.moved.as_ref().filter(|_| compared.slips.is_empty()) else { return Vec::new() };
    let gauge = |one: &GaugeCompared| &card.proof.gauges[one.gauge];
    let asked = || compared.gauges.iter().filter(|one| Some(one.gauge) != compared.suspect);
    let is_support = |one: &&GaugeCompared| matches!(gauge(one).on, GaugeAt::Support(_));
    let more = |one: &GaugeCompared| one.read - gauge(one).reading.expected;
    let named = |(one, by)| format!("{} {}", gauge(one).name, words::gauged(by, card));
    let own: Vec<String> = asked().filter(is_support).map(|one| (one, more(one))).map(named).collect();
    let most = asked().filter(is_support).map(|one| more(one).abs()).fold(Length::default(), Length::max);
    if most <= noise {
        return Vec::new();
    }
    let others: Vec<String> = asked().filter(|one| !is_support(one)).map(|one| (one, one.moved)).map(named).collect();
    let mut all = vec![format!(
        "The supports went down by more than expected: {}. A top that stays straight follows them; taken off the others: {}. Supports \
         without a gauge are taken to have moved in line with these.",
        own.join(", "),
        others.join(", ")
    )];
    if moved.bends > noise {
        all.push(format!(
            "They did NOT move as a straight top does: {} of that bends it and counts against the bands of the others. Wedge the \
             supports and test anew.",
            words::gauged(moved.bends, card)
        ));
    }
    all
}

/// What explains the readings, in a sentence.
fn explained(card: Card<'_>, compared: &Compared) -> String {
    let causes = match &compared.causes {
        Ok(causes) => causes,
        Err(reason) => return format!("What explains the readings could not be said: {reason}."),
    };
    let error = card.top.criteria.proof_gauge_noise.value;
    let noise = words::gauged(error, card);
    let off = |one: &GaugeCompared| (one.read - card.proof.gauges[one.gauge].reading.expected).abs();
    let mut asked = compared.gauges.iter().filter(|one| Some(one.gauge) != compared.suspect);
    if asked.all(|one| off(one) <= error) {
        let all = if compared.suspect.is_some() { "All other readings" } else { "All readings" };
        return format!("{all} are as expected to within the error of a gauge ({noise}): nothing is to be explained.");
    }
    if let Some(likely) = causes.likely
        && let Some((_, found)) = causes.alone.iter().find(|(cause, _)| *cause == likely)
    {
        if !found.plausible() {
            return format!(
                "One cause alone would explain the readings, but no {} is so far off: check gauges, their heads and the card.",
                words::cause(likely)
            );
        }
        return format!(
            "One cause alone explains the readings to within the error of a gauge ({noise}): {}.",
            amount(card, likely, found)
        );
    }
    match (&causes.together, causes.told_apart) {
        (Some(found), true) if !found.plausible() => {
            "Core and skins would have to be what none is: check gauges, their heads and the card.".to_owned()
        }
        (Some(found), true) => format!(
            "Together: shear modulus of the core {}, moduli of the skins {}, supports down by {}.",
            words::change(found.core.value),
            words::change(found.skins.value),
            words::gauged(found.supports, card)
        ),
        _ => "These gauges cannot tell core, skins and supports apart: the table below says what each alone would have to be."
            .to_owned(),
    }
}

fn amount(card: Card<'_>, cause: crate::proof::Cause, found: &Found) -> String {
    use crate::proof::Cause;
    let much = match cause {
        Cause::Core | Cause::Skins if !found.plausible() => "further off than any is".to_owned(),
        Cause::Core => words::change(found.core.value),
        Cause::Skins => words::change(found.skins.value),
        Cause::Supports => format!("by {}", words::gauged(found.supports, card)),
    };
    format!("{} {much}", words::cause(cause))
}

/// Width of the name of a gauge and of its columns; what all of that takes; the columns of a narrower page.
const NAME: usize = 12;
const WIDE: [usize; 7] = [10, 9, 9, 8, 9, 9, 7];
const ROW: usize = 75;
const NARROW: [usize; 7] = [9, 7, 8, 8, 9, 8, 7];

fn table(page: &mut Page, card: Card<'_>, compared: &Compared) {
    let (proof, system) = (card.proof, card.system());
    heading(
        page,
        &format!("Under all bags, from the slope of the straight line through all steps, {}", words::unit(system)),
    );
    // On a narrow page the name of a gauge has a line to itself.
    let narrow = page.width() < ROW;
    let mut row = |name: &str, cells: [&str; 7]| {
        let wide = if narrow { NARROW } else { WIDE };
        let cells: String = cells.iter().zip(wide).map(|(cell, wide)| right(cell, wide)).collect();
        match (narrow, name) {
            (false, _) => page.line(&format!("  {}{cells}", left(name, NAME))),
            (true, "") => page.line(&format!("    {cells}")),
            (true, _) => page.line(&format!("  {name}\n    {cells}")),
        }
    };
    row("", ["expected", "±", "read", "of it", "off line", "left", "loop"]);
    for one in &compared.gauges {
        let gauge = &proof.gauges[one.gauge];
        let name = format!("{} {}", gauge.name, words::short(gauge.on));
        let cells = [
            &words::reading(gauge.reading.expected, system),
            &words::reading(gauge.reading.band, system),
            &words::reading(one.read, system),
            &shared::percent(one.over_expected.value),
            &one.off_line.map_or_else(|| "—".to_owned(), |off| shared::percent(off.value)),
            &one.residual.map_or_else(|| "—".to_owned(), |residual| words::reading(residual, system)),
            &one.hysteresis.map_or_else(|| "—".to_owned(), |loop_| shared::percent(loop_.value)),
        ];
        row(&name, cells.map(String::as_str));
    }
}

fn causes(page: &mut Page, card: Card<'_>, compared: &Compared) {
    let Ok(Causes { alone, together, off, told_apart, .. }) = &compared.causes else { return };
    heading(page, "What would explain it (least squares over all gauges; what each leaves: root of the mean square)");
    for (cause, found) in alone {
        let text = format!("{}; leaves {}", amount(card, *cause, found), words::gauged(found.left, card));
        page.paragraph("  alone ", &text);
    }
    match together {
        Some(found) if !found.plausible() => {
            page.paragraph("  all   ", "core or skins would be further off than any is");
        }
        Some(found) => {
            let text = format!(
                "core {}, skins {}, supports down by {}; leaves {}",
                words::change(found.core.value),
                words::change(found.skins.value),
                words::gauged(found.supports, card),
                words::gauged(found.left, card)
            );
            page.paragraph("  all   ", &text);
        }
        None => page.paragraph("  all   ", "cannot be told: too few gauges, or they move alike under two of the three"),
    }
    if let Some((core, skins, supports)) = off {
        let apart = if *told_apart { "that tells them apart" } else { "that does NOT tell them apart" };
        page.paragraph(
            "        ",
            &format!(
                "for gauges off by their error: core ±{}, skins ±{}, supports ±{}; {apart}",
                shared::percent(core.value),
                shared::percent(skins.value),
                words::gauged(*supports, card)
            ),
        );
    }
}

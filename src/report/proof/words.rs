//! Words that all forms of the card share.

use super::Card;
use crate::{
    check::CHECKS,
    proof::{Cause, Gauge, GaugeAt, Kind, NoProof, UnitSlip},
    report::{not_for_building, said::counted, words},
    top::Top,
    units::{Length, Ratio, System, both, show, show_in},
};

/// Errors of a gauge below which a reading says little. Our choice: a tenth of it is then error.
const SMALL: f64 = 10.0;

/// What a gauge stands at.
pub(super) fn at(top: &Top, on: GaugeAt) -> String {
    match on {
        GaugeAt::MidSpan => "mid-span".to_owned(),
        GaugeAt::Quarter => "quarter".to_owned(),
        GaugeAt::Tip => "tip".to_owned(),
        GaugeAt::Support(number) => top.supports[number].name.clone(),
    }
}

/// A reading: hundredths of a millimetre, tenths of a thousandth of an inch.
pub(super) fn reading(length: Length, system: System) -> String {
    let shown = match system {
        System::Us => show_in(length, "mil", 1),
        System::Si => show_in(length, "mm", 2),
    };
    shown.split(' ').next().unwrap_or_default().to_owned()
}

pub(super) const fn unit(system: System) -> &'static str {
    match system {
        System::Us => "mil (thousandths of an inch)",
        System::Si => "mm",
    }
}

/// The same with its unit: one for all, so that they can be set against each other.
pub(super) fn gauged(length: Length, card: Card<'_>) -> String {
    let unit = match card.system() {
        System::Us => "mil",
        System::Si => "mm",
    };
    format!("{} {unit}", reading(length, card.system()))
}

/// The unit that was read and that of the head, where these were taken for each other.
pub(super) const fn units_slipped(slip: UnitSlip) -> (&'static str, &'static str) {
    match slip {
        UnitSlip::MillimetresAsInches => ("millimetres", "inches"),
        UnitSlip::InchesAsMillimetres => ("inches", "millimetres"),
        UnitSlip::ThousandthsAsInches => ("thousandths of an inch", "inches"),
        UnitSlip::ThousandthsAsMillimetres => ("thousandths of an inch", "millimetres"),
        UnitSlip::MillimetresAsThousandths => ("millimetres", "thousandths of an inch"),
        UnitSlip::InchesAsThousandths => ("inches", "thousandths of an inch"),
    }
}

/// How many times, to two or three digits.
pub(super) fn times(times: f64) -> String {
    if times < 1.0 { format!("1/{:.0}", 1.0 / times) } else { format!("{times:.0}") }
}

/// What a gauge stands at, in the width of a column.
pub(super) const fn short(on: GaugeAt) -> &'static str {
    match on {
        GaugeAt::MidSpan => "mid-span",
        GaugeAt::Quarter => "quarter",
        GaugeAt::Tip => "tip",
        GaugeAt::Support(_) => "support",
    }
}

/// What a cause is.
pub(super) const fn cause(cause: Cause) -> &'static str {
    match cause {
        Cause::Core => "shear modulus of the core",
        Cause::Skins => "moduli of the skins",
        Cause::Supports => "supports going down",
    }
}

/// A change in per cent with its sign.
pub(super) fn change(ratio: f64) -> String {
    format!("{:+.1} %", ratio * 100.0).replace('-', "−")
}

/// Where a gauge stands, with its place.
pub(super) fn gauge(card: Card<'_>, gauge: &Gauge) -> String {
    format!("{}, {}", at(card.top, gauge.on), words::point(gauge.at, card.system()))
}

/// The answer in sentences.
pub(super) fn sentences(card: Card<'_>) -> Vec<String> {
    let (proof, system) = (card.proof, card.system());
    let load = &proof.governs;
    let how = match load.kind {
        Kind::Even { pressure } => {
            format!("{} all over the top, here in {}", both(pressure, system), counted(proof.heaps.len(), "heap"))
        }
        Kind::Place { at } => format!("{} at {}", both(load.force, system), words::point(at, system)),
    };
    let bags = proof.steps.last().map_or(0, |last| last.bags);
    let mut all: Vec<String> = does_not_hold(card).into_iter().collect();
    all.push(format!(
        "Stands for: {} ({} used in {}): {how}. {} of {} make {}, {} of its force.",
        words::within(&load.case),
        words::percent(load.used.value),
        CHECKS[load.check].title(),
        counted(bags, "bag"),
        both(proof.bag, system),
        both(proof.weight, system),
        words::percent(proof.of_case.value)
    ));
    if let Some(own) = proof.checks.iter().find(|own| own.check == load.check) {
        all.push(format!(
            "Of {} the bags use {}, dry and not hot, where the case uses {} with all that takes strength off: what lies between is \
             not proved.",
            CHECKS[load.check].title(),
            words::percent(own.used.value),
            words::percent(load.used.value)
        ));
    }
    if proof.lowered {
        all.push("LOWERED: the checks of the top at the test do not allow all of it.".to_owned());
    }
    if let Some(worst) = proof.checks.first() {
        all.push(format!(
            "Under all bags, dry and not hot, {} is used most: {}, allowed are {}.",
            CHECKS[worst.check].title(),
            words::percent(worst.used.value),
            words::percent(card.top.criteria.proof_most_used.value.value)
        ));
    }
    let noise = card.top.criteria.proof_gauge_noise.value;
    let most = proof.gauges.iter().map(|gauge| gauge.reading.expected.abs()).fold(Length::default(), Length::max);
    if most < noise * SMALL {
        all.push(format!(
            "The largest reading, {}, is small beside the error of a gauge: this proves that the top bears the load, and says \
             little of its stiffness (`--load even` or `place` may say more).",
            both(most, system)
        ));
    }
    all.extend(not_made(card));
    all
}

/// That the top fails anyhow, and whether in the case of the test.
pub(super) fn does_not_hold(card: Card<'_>) -> Option<String> {
    let against = not_for_building(&Ok(card.proof.standing.clone()))?;
    let this =
        if card.proof.governs.used > Ratio::from(1.0) { "The top does not hold this case either: no" } else { "No" };
    Some(format!("{against} {this} test makes up for that."))
}

/// Checks that could not be made.
pub(super) fn not_made(card: Card<'_>) -> Option<String> {
    let open = &card.proof.open;
    let names: Vec<&str> = open.iter().map(|(check, _)| CHECKS[*check].title()).collect();
    (!names.is_empty()).then(|| format!("NOT MADE, which is no pass: {}.", names.join(", ")))
}

/// Why there is no test, in words that end a sentence.
#[must_use]
pub fn why_no_proof(none: &NoProof) -> String {
    match none {
        NoProof::Patch => "a patch has no top to load: describe the whole top in `[top]`".to_owned(),
        NoProof::NotAnalysed(reason) => format!("the top could not be analysed: {reason}"),
        NoProof::NothingToLoad => {
            "no load case of the file presses downwards in a way that bags can make: nothing stands for a test"
                .to_owned()
        }
        NoProof::NotOneBag { check: Some(check) } => format!(
            "not one bag is allowed: {} fails under it; mend the top first (`skinspan check` says how)",
            CHECKS[*check].title()
        ),
        NoProof::NotOneBag { check: None } => {
            "no bag finds a place that lies on the top: is `proof-bag-length` right?".to_owned()
        }
    }
}

/// A length with its unit.
pub(super) fn length(length: Length, card: Card<'_>) -> String {
    show(length, card.system())
}

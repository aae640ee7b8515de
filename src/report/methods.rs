//! The hand method and the plate method side by side.

use uom::si::ratio::ratio;

use super::Report;
use crate::{
    analysis::{Analysis, PipeModel, PlateMethod},
    check::{CHECKS, Method, Outcome},
    units::{Length, Ratio},
};

/// How far the two may differ without a word on why.
const WITHOUT_REASON: f64 = 0.1;

/// A check by both methods.
#[derive(Clone, Debug, PartialEq)]
pub struct Beside<'a> {
    /// The check, as its place in [`CHECKS`].
    pub check: usize,
    /// Its worst by each method.
    pub hand: &'a Outcome,
    /// By the plate method.
    pub plate: &'a Outcome,
    /// Why they differ, where they do by more than a tenth.
    pub reason: Option<String>,
}

/// The checks that both methods looked at.
#[must_use]
pub fn beside<'a>(report: &'a Report<'_>) -> Vec<Beside<'a>> {
    let Ok(analysis) = &report.analysis else { return Vec::new() };
    let Some(Ok(plate_method)) = &analysis.whole else { return Vec::new() };
    let worst = |check: usize, method: Method| {
        report
            .envelope
            .iter()
            .find(|outcome| outcome.check == check && outcome.method == method && outcome.utilisation().is_some())
    };
    (0..CHECKS.len())
        .filter_map(|check| {
            let (hand, plate) = (worst(check, Method::Hand)?, worst(check, Method::Plate)?);
            let reason = reason(analysis, plate_method, check, (hand.utilisation()?, plate.utilisation()?));
            Some(Beside { check, hand, plate, reason })
        })
        .collect()
}

fn reason(
    analysis: &Analysis<'_>,
    method: &PlateMethod,
    check: usize,
    (hand, plate): (Ratio, Ratio),
) -> Option<String> {
    let (hand, plate) = (hand.get::<ratio>(), plate.get::<ratio>());
    if (hand - plate).abs() <= WITHOUT_REASON * hand.max(plate) {
        return None;
    }
    let mut reasons: Vec<&str> = Vec::new();
    match CHECKS[check].id() {
        "core-shear" | "core-crush" if plate < hand => {
            reasons
                .push("the hand method keeps a load on a narrow strip, and punches it out of the core beside the foot");
        }
        "core-shear" | "core-crush" => {
            reasons.push("the shear gathers at ends of pipes and corners of backing, which a strip does not have");
        }
        "ply-failure" | "wrinkling" if plate < hand => reasons.push("the plate carries a load both ways"),
        "ply-failure" | "wrinkling" => reasons.push("the plate bends along the pipes too"),
        _ => {}
    }
    if plate > hand && method.pipes.contains(&PipeModel::OnPosts) {
        reasons.push("pipes bend between their posts, and the hand method takes them as rigid");
    }
    if plate < hand && analysis.top.crown > Length::default() {
        reasons.push("the crown stiffens the top, and the hand method takes it as flat");
    }
    Some(if reasons.is_empty() { "a plate is not a row of strips".to_owned() } else { reasons.join("; ") })
}

//! What to change in the file where something fails whatever is laid up.

use rayon::prelude::*;

use super::Always;
use crate::{
    advice::{Change, Remedy, changed, changes},
    analysis::{Analysis, DIVISIONS},
    check::{Method, Outcome, run},
    top::Top,
    units::Ratio,
};

impl Always {
    /// Changes that make what fails pass in a top by the hand method, each tried alone.
    pub(in crate::choice) fn find_remedies(all: &mut [Self], from: &Top) {
        // What only a plate finds is not seen to get better by hand.
        let by_hand: Vec<usize> = (0..all.len()).filter(|own| all[*own].least.method == Method::Hand).collect();
        let Ok(mut analysis) = Analysis::new(from, DIVISIONS) else { return };
        let failing = failing(&run(&analysis));
        let now: Vec<f64> = by_hand.iter().map(|own| used(&all[*own], &mut analysis)).collect();
        let bare = from.weight().bare;
        let tried: Vec<Vec<(usize, Remedy)>> = changes(from)
            .into_par_iter()
            .filter(|kind| kind.first().is_some_and(|first| !is_laid_up(first)))
            .map(|kind| {
                let mut wanted: Vec<usize> = (0..by_hand.len()).collect();
                let mut found: Vec<(usize, Remedy)> = Vec::new();
                for change in kind {
                    if wanted.is_empty() {
                        break;
                    }
                    let Some(other) = changed(from, &change) else { continue };
                    let Ok(mut analysis) = Analysis::new(&other, DIVISIONS) else { continue };
                    wanted.retain(|&place| {
                        let own = &all[by_hand[place]];
                        let utilisation = used(own, &mut analysis);
                        let holds = utilisation <= 1.0;
                        // What leaves it as it was is not near.
                        if holds || utilisation < now[place] * (1.0 - LEAST_GAIN) {
                            let others = self::failing(&run(&analysis));
                            found.push((
                                place,
                                Remedy {
                                    change: change.clone(),
                                    governs: own.check,
                                    utilisation: Ratio::from(utilisation),
                                    added: other.weight().bare - bare,
                                    breaks: others.into_iter().find(|check| !failing.contains(check)),
                                },
                            ));
                        }
                        !holds
                    });
                }
                found
            })
            .collect();
        for (place, remedy) in tried.into_iter().flatten() {
            let own = &mut all[by_hand[place]];
            if remedy.utilisation <= Ratio::from(1.0) {
                own.remedies.push(remedy);
            } else if own.nearest.as_ref().is_none_or(|nearest| remedy.utilisation < nearest.utilisation) {
                own.nearest = Some(remedy);
            }
        }
        for own in all {
            if !own.remedies.is_empty() {
                own.nearest = None;
            }
            own.remedies.sort_by(|a, b| a.added.value.total_cmp(&b.added.value));
        }
    }
}

/// What a change has to gain to be worth a word where nothing helps. Our choice.
const LEAST_GAIN: f64 = 0.005;

/// Whether it changes what candidates differ in anyhow.
const fn is_laid_up(change: &Change) -> bool {
    matches!(
        change,
        Change::CoreThickness(_) | Change::CoreDensity(_) | Change::OuterPlies { .. } | Change::InnerPlies { .. }
    )
}

/// How far it is used by the hand method; infinite where there is nothing left that it looks at.
fn used(own: &Always, analysis: &mut Analysis<'_>) -> f64 {
    let outcomes = own.outcomes(analysis);
    let used = outcomes.iter().filter_map(Outcome::utilisation).map(|used| used.value);
    used.reduce(f64::max).unwrap_or(f64::INFINITY)
}

/// Checks that fail.
fn failing(outcomes: &[Outcome]) -> Vec<usize> {
    let failing = outcomes.iter().filter(|outcome| outcome.utilisation().is_some() && !outcome.passes());
    failing.map(|outcome| outcome.check).collect()
}

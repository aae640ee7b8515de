//! First frequency of a whole top by the plate method.

use skinspan::{
    analysis::{Analysis, DIVISIONS},
    top::Top,
};

use crate::tops::example;

/// Shares of the core's stiffness left, least first, with the frequencies.
fn frequencies(top: &Top) -> Vec<(f64, f64)> {
    let mut analysis = Analysis::new(top, DIVISIONS).unwrap();
    // Who walks on it takes most of the time, and does not swing with it.
    for case in &mut analysis.cases {
        (case.people, case.hand) = (None, None);
    }
    let method = analysis.with_plate_method().whole.unwrap().unwrap();
    let mut all: Vec<(f64, f64)> =
        method.frequencies.iter().map(|(left, frequency)| (left.value, frequency.unwrap().value)).collect();
    all.sort_by(|a, b| a.0.total_cmp(&b.0));
    all
}

/// What a change adds to `1/f²`, as a share, in each state of the core.
fn slower(own: &[(f64, f64)], top: &Top) -> Vec<f64> {
    own.iter().zip(frequencies(top)).map(|((_, f), (_, changed))| (f / changed).powi(2) - 1.0).collect()
}

#[test]
fn heat_gear_and_a_filled_edge_slow_a_top() {
    let top = example("pilot-skiff");
    let own = frequencies(&top);
    assert!(own.len() > 1 && own.windows(2).all(|pair| pair[0].1 < pair[1].1), "{own:?}");
    // Gear, and the edge, weigh less than the skins and core do.
    let mut heavier = top.clone();
    heavier.gear[0].mass *= 1.1;
    let more = slower(&own, &heavier);
    assert!(more.iter().all(|more| *more > 1e-5 && *more < 0.1), "{more:?}");
    let mut unfilled = top.clone();
    unfilled.edge = None;
    let less = slower(&own, &unfilled);
    eprintln!("{more:?} {less:?} {own:?}");
    assert!(less.iter().all(|less| *less < -1e-5 && *less > -0.5), "{less:?}");
}

//! First frequency of a whole top by the plate method.

use skinspan::{
    analysis::{Analysis, DIVISIONS},
    load_case::{Held, LoadCase},
    top::Top,
};

use crate::tops::example;

/// In the state with the stiffest core (0) or the softest (1), after the share of its stiffness that is left.
fn frequency(top: &Top, state: usize) -> (f64, f64) {
    let mut analysis = Analysis::new(top, DIVISIONS).unwrap();
    let mut cases: Vec<_> = analysis.cases.iter().filter(|case| case.held == Held::OnFrame).cloned().collect();
    cases.sort_by(|a, b| {
        let left = |case: &LoadCase| analysis.knockdowns(case.state).core_stiffness().value;
        left(b).total_cmp(&left(a))
    });
    let mut case = cases[if state == 0 { 0 } else { cases.len() - 1 }].clone();
    // Who walks on it takes most of the time, and does not swing with it.
    (case.people, case.hand) = (None, None);
    analysis.cases = vec![case];
    let method = analysis.with_plate_method().whole.unwrap().unwrap();
    let (left, frequency) = method.frequencies[0];
    (left.value, frequency.unwrap().value)
}

#[test]
fn heat_gear_and_a_filled_edge_slow_a_top() {
    let top = example("pilot-skiff");
    let (cool, alone) = frequency(&top, 0);
    let (hot, softer) = frequency(&top, 1);
    assert!(hot < cool && softer < alone, "{hot} {softer}, {cool} {alone}");
    let slower = |top: &Top| (alone / frequency(top, 0).1).powi(2) - 1.0;
    let mut heavier = top.clone();
    heavier.gear[0].mass *= 1.1;
    let more = slower(&heavier);
    assert!(more > 1e-5 && more < 0.1, "{more:e}");
    let mut unfilled = top.clone();
    unfilled.edge = None;
    let less = slower(&unfilled);
    assert!(less < -0.01 && less > -0.5, "{less:e}");
}

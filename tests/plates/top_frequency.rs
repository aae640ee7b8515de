//! First frequency of a whole top by the plate method.

use skinspan::{
    analysis::{Analysis, DIVISIONS},
    service::Sun,
    top::Top,
};

use crate::tops::example;

fn frequency(top: &Top) -> f64 {
    let mut analysis = Analysis::new(top, DIVISIONS).unwrap();
    // Loads do not swing with it.
    analysis.cases.truncate(1);
    analysis.with_plate_method().whole.unwrap().unwrap().frequency.unwrap().unwrap().value
}

#[test]
fn heat_gear_and_a_filled_edge_slow_a_top() {
    let top = example("pilot-skiff");
    let mut cool = top.clone();
    cool.service.sun = Sun::None;
    let alone = frequency(&top);
    assert!(alone < frequency(&cool));
    let slower = |top: &Top| (alone / frequency(top)).powi(2) - 1.0;
    let mut heavier = top.clone();
    heavier.gear[0].mass *= 1.1;
    let more = slower(&heavier);
    assert!(more > 1e-5 && more < 0.1, "{more:e}");
    let mut unfilled = top.clone();
    unfilled.edge = None;
    let less = slower(&unfilled);
    assert!(less < -0.01 && less > -0.5, "{less:e}");
}

//! One gauge that is out beside others that are not: what is told of it, and of no other.

use skinspan::{
    proof::{Compared, Head, Proof, Slip, UnitSlip, Wanted, compare, proof},
    top::Top,
    units::{Length, Ratio},
};

use crate::kit::{example, mm, on_support, read_by, readings, usual};

fn compared(top: &Top, proof: &Proof, full: &[Length]) -> Compared {
    compare(top, proof, &readings(proof, full))
}

/// The first gauge on the top, and the first on a support.
fn one_of_each(proof: &Proof) -> [usize; 2] {
    [false, true].map(|wanted| (0..proof.gauges.len()).find(|at| on_support(proof, *at) == wanted).expect("a gauge"))
}

/// What a gauge on a support reads is its own affair, but where it alone is out how it was written down is the first guess.
#[test]
fn the_one_that_is_out_is_told_wherever_it_stands() {
    let (top, mut proof) = usual();
    let full = read_by(&top, &proof);
    let [_, support] = one_of_each(&proof);
    proof.gauges[support].reading.expected = mm(2.0);
    let mut read = full.clone();
    read[support] = mm(2.0 * 25.4);
    let compared = compared(&top, &proof, &read);
    assert_eq!(compared.suspect, Some(support), "{compared:?}");
    assert_eq!(compared.slips, [(support, Slip::Unit(UnitSlip::MillimetresAsInches))]);
    assert!(compared.give_way.is_empty(), "{compared:?}");
}

/// One that ought to read four times what a gauge may be off by speaks against one wrong unit in all columns; one that ought to read twice
/// that says nothing.
#[test]
fn what_is_large_enough_speaks_against_one_wrong_unit_in_all_columns() {
    let top = example("survey-launch");
    let proof = proof(&top, Wanted::Even).expect("a test");
    let noise = top.criteria.proof_gauge_noise.value;
    let mut read: Vec<Length> = read_by(&top, &proof).into_iter().map(|one| one * 1000.0 / 25.4 * 0.75).collect();
    let [own, _] = one_of_each(&proof);
    for (times, speaks) in [(2.0, false), (2.9, false), (3.1, true), (4.0, true)] {
        let mut little = proof.clone();
        little.gauges[own].reading.expected = noise * Ratio::from(times);
        read[own] = noise * Ratio::from(times);
        let mut readings = readings(&little, &read);
        readings.heads = vec![Some(Head::Millimetres); read.len()];
        let compared = compare(&top, &little, &readings);
        // All columns in one wrong unit: of the supports nothing is said.
        assert_eq!(compared.moved.is_some(), speaks, "{times}: {compared:?}");
    }
}

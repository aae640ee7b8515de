//! One gauge that is out beside others that are not: what is told of it, and of no other.

use skinspan::{
    proof::{Compared, Head, Proof, Slip, UnitSlip, Wanted, compare, proof},
    top::Top,
    units::{Length, Ratio},
};

use crate::kit::{SNOW, example, mm, on_support, read, read_by, readings, text, usual};

fn compared(top: &Top, proof: &Proof, full: &[Length]) -> Compared {
    compare(top, proof, &readings(proof, full))
}

/// The first gauge on the top, and the first on a support.
fn one_of_each(proof: &Proof) -> [usize; 2] {
    [false, true].map(|wanted| (0..proof.gauges.len()).find(|at| on_support(proof, *at) == wanted).expect("a gauge"))
}

/// A band may be so wide that a reading with its sign turned lies in it: beside a gauge that alone is out nothing is told of that.
#[test]
fn beside_the_one_that_is_out_no_other_is_told() {
    let (top, proof) = usual();
    let full = read_by(&top, &proof);
    let [other, _] = one_of_each(&proof);
    let out = (0..full.len()).rev().find(|at| !on_support(&proof, *at) && *at != other).expect("another");
    let mut wide = proof.clone();
    wide.gauges[other].reading.expected = mm(0.5);
    wide.gauges[other].reading.band = mm(2.0);
    let mut read = full.clone();
    read[other] = mm(-0.5);
    read[out] += mm(10.0);
    let compared = compared(&top, &wide, &read);
    assert!(compared.gauges.iter().all(|one| one.in_band == (one.gauge != out)), "{compared:?}");
    assert_eq!((compared.suspect, &compared.slips[..]), (Some(out), &[][..]), "{compared:?}");
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

/// Of three supports the middle one goes up by three times what it ought to go down; as a plane they go up by once that, so that it
/// reads its size the other way beside it. That is how a support moves, and no turned sign.
#[test]
fn a_support_that_reads_the_other_way_is_no_turned_sign() {
    let third = "[[wall]]\nname = \"middle\"\nseat = \"30 mm\"\nalong = [[\"1000 mm\", \"0 mm\"], [\"1000 mm\", \"700 mm\"]]\n\
                 [criteria]\nproof-bag = \"10 kg\"\n";
    let top = read(&text(SNOW, third));
    let mut proof = proof(&top, Wanted::Even).expect("a test");
    let mut full = read_by(&top, &proof);
    let supports: Vec<usize> = (0..full.len()).filter(|at| on_support(&proof, *at)).collect();
    assert_eq!(supports.len(), 3, "{:?}", proof.gauges);
    let away = |at: &usize| (proof.gauges[*at].at.x - mm(1000.0)).abs();
    let middle = *supports.iter().min_by(|a, b| away(a).value.total_cmp(&away(b).value)).expect("three");
    proof.gauges[middle].reading.expected = mm(0.6);
    full[middle] = mm(0.6 - 1.8);
    // Of the top more than one is out, by what is no slip.
    for at in (0..full.len()).filter(|at| !supports.contains(at)) {
        proof.gauges[at].reading.expected = mm(2.0);
        full[at] = mm(12.0);
    }
    let compared = compared(&top, &proof, &full);
    let own = compared.gauges.iter().find(|one| one.gauge == middle).expect("it was read");
    assert!((own.read - own.moved + mm(0.6)).abs() < mm(0.02), "{own:?}");
    assert!(compared.suspect.is_none() && compared.slips.is_empty(), "{compared:?}");
    assert_eq!(compared.give_way, [middle], "{compared:?}");
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

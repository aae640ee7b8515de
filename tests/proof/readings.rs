//! Readings: what made-up ones are taken for, pass and stop, and what is said of bad files.

use skinspan::{
    geometry::Point,
    input::{NamedText, read_readings},
    proof::{Cause, Compared, GaugeAt, Head, Proof, Row, Slip, UnitSlip, Wanted, compare, proof},
    report::proof_to_text,
    top::{Schedule, SkinLayer, Top},
    units::Length,
};
use uom::si::length::{meter, millimeter};

use crate::kit::{SNOW, card_of, mm, on_support, read, read_by, readings, text, usual};

/// To what a cause is found again: the step of a tenth that its slope is taken over.
const FOUND: f64 = 0.02;

fn causes(compared: &Compared) -> &skinspan::proof::Causes {
    compared.causes.as_ref().unwrap_or_else(|reason| panic!("{reason}"))
}

fn alone(compared: &Compared, wanted: Cause) -> skinspan::proof::Found {
    causes(compared).alone.iter().find(|(cause, _)| *cause == wanted).expect("a cause").1
}

fn softer_skins(top: &Top, left: f64) -> Top {
    let of = |skin: &Schedule| {
        let layers = skin.layers().iter().map(|layer| {
            let mut layer: SkinLayer = layer.clone();
            for ply in &mut layer.plies {
                ply.elastic.e1 *= left;
                ply.elastic.e2 *= left;
                ply.elastic.g12 *= left;
            }
            layer
        });
        Schedule::new(layers.collect()).expect("a skin")
    };
    Top { outer: of(&top.outer), inner: of(&top.inner), ..top.clone() }
}

#[test]
fn what_was_expected_passes() {
    let (top, proof) = usual();
    let compared = compare(&top, &proof, &readings(&proof, &read_by(&top, &proof)));
    assert!(compared.passes(&proof), "{compared:?}");
    for one in &compared.gauges {
        assert!((one.zero - mm(0.3)).abs() < mm(1e-9), "{one:?}");
        assert!((one.read - proof.gauges[one.gauge].reading.expected).abs() < mm(1e-6), "{one:?}");
        assert!(
            one.off_line.expect("enough loads").value < 1e-6 && one.hysteresis.expect("unloaded").value < 1e-6,
            "{one:?}"
        );
        assert!(one.residual.expect("read").abs() < mm(1e-9), "{one:?}");
    }
    let found = causes(&compared).together.expect("all three");
    assert!(
        found.core.value.abs() < 1e-3 && found.skins.value.abs() < 1e-3 && found.supports.abs() < mm(1e-3),
        "{found:?}"
    );
}

#[test]
fn a_softer_core_is_found() {
    let (top, proof) = usual();
    let mut truth = top.clone();
    truth.core.material.shear_modulus.value *= 0.8;
    let compared = compare(&top, &proof, &readings(&proof, &read_by(&truth, &proof)));
    assert!((alone(&compared, Cause::Core).core.value + 0.2).abs() < FOUND, "{compared:?}");
    assert!(alone(&compared, Cause::Core).left < mm(1e-3), "{compared:?}");
    let together = causes(&compared).together.expect("all three");
    assert!((together.core.value + 0.2).abs() < FOUND, "{together:?}");
    assert!(together.skins.value.abs() < FOUND && together.supports.abs() < mm(0.01), "{together:?}");
}

#[test]
fn softer_skins_are_found() {
    let (top, proof) = usual();
    let compared = compare(&top, &proof, &readings(&proof, &read_by(&softer_skins(&top, 0.85), &proof)));
    assert!((alone(&compared, Cause::Skins).skins.value + 0.15).abs() < FOUND, "{compared:?}");
    let together = causes(&compared).together.expect("all three");
    assert!((together.skins.value + 0.15).abs() < FOUND && together.core.value.abs() < FOUND, "{together:?}");
}

#[test]
fn supports_that_go_down_are_found() {
    let (top, proof) = usual();
    let sunk = |by: f64| -> Vec<Length> { read_by(&top, &proof).into_iter().map(|reading| reading + mm(by)).collect() };
    // That is no fault of the top: it is taken off.
    let (settled, text) = said(&top, &proof, &sunk(0.9));
    assert!(settled.passes(&proof) && settled.give_way.is_empty(), "{settled:?}");
    assert!(text.contains("PASSES"), "{text}");
    // A frame that gives way does not pass, whatever the top does on it: a millimetre beyond ± is what one may settle.
    let (compared, text) = said(&top, &proof, &sunk(1.5));
    let supports: Vec<usize> = (0..proof.gauges.len()).filter(|at| on_support(&proof, *at)).collect();
    assert!(!compared.passes(&proof) && compared.give_way == supports && compared.suspect.is_none(), "{compared:?}");
    assert!(compared.gauges.iter().all(|one| one.in_band != on_support(&proof, one.gauge)), "{compared:?}");
    assert!(text.contains("readings DOES NOT PASS: STOP, WHAT THE TOP STANDS ON GIVES WAY: D reads"), "{text}");
    assert!(!text.contains("PASSES"), "{text}");
    assert!((compared.moved.as_ref().expect("gauges on supports").mean - mm(1.5)).abs() < mm(0.01));
    assert!((alone(&compared, Cause::Supports).supports - mm(1.5)).abs() < mm(0.01), "{compared:?}");
    // Gauges on the supports tell it from all else.
    assert_eq!(causes(&compared).likely, Some(Cause::Supports));
}

/// On two walls a stiff top follows them as a plane, exactly: a wall that goes down takes the middle down by half as much, and lifts
/// the tip beyond the other.
#[test]
fn a_support_that_goes_down_alone_is_taken_off_place_by_place() {
    let (top, proof) = usual();
    let expected = read_by(&top, &proof);
    for fore in [4.0, -4.0] {
        // By so much at x = 0.1 m, by nothing at 1.9 m.
        let by = |at: Point| mm(fore * (1.9 - at.x.get::<meter>()) / 1.8);
        let full: Vec<Length> =
            expected.iter().zip(&proof.gauges).map(|(reading, gauge)| *reading + by(gauge.at)).collect();
        let compared = compare(&top, &proof, &readings(&proof, &full));
        // The top is as it should be on a wall that goes down by more than a millimetre.
        assert!(compared.suspect.is_none() && compared.give_way.len() == 1, "{compared:?}");
        let gives_way = |gauge: usize| compared.give_way.contains(&gauge);
        assert!(compared.gauges.iter().all(|one| one.in_band != gives_way(one.gauge)), "{compared:?}");
        for one in &compared.gauges {
            let off = one.moved - by(proof.gauges[one.gauge].at);
            assert!(off.abs() < mm(0.01), "{:?}: {one:?}", proof.gauges[one.gauge].at);
        }
        assert!(compared.moved.as_ref().expect("gauges on supports").bends < mm(1e-6));
        // Level, it is the mean that supports went down by, and nothing is wrong with core or skins.
        let together = causes(&compared).together.expect("all three");
        assert!((together.supports - mm(fore / 2.0)).abs() < mm(0.01), "{together:?}");
        assert!(together.core.value.abs() < 1e-3 && together.skins.value.abs() < 1e-3, "{together:?}");
        let text = said(&top, &proof, &full).1;
        assert!(text.contains("The supports went down by more than expected"), "{text}");
        // The mean alone would have let such a tip pass.
        let tip = proof.gauges.iter().position(|gauge| gauge.on == GaugeAt::Tip).expect("a tip");
        let mut bad = full.clone();
        bad[tip] = expected[tip] + mm(fore / 2.0);
        assert!((full[tip] - bad[tip]).abs() > proof.gauges[tip].reading.band, "{:?}", proof.gauges[tip]);
        assert!(!compare(&top, &proof, &readings(&proof, &bad)).gauges[tip].in_band);
    }
}

/// Three supports that move as no plane does bend the top: what the plane leaves counts against the bands.
#[test]
fn supports_that_bend_the_top_leave_less_of_the_bands() {
    let third = "[[wall]]\nname = \"middle\"\nseat = \"30 mm\"\nalong = [[\"1000 mm\", \"0 mm\"], [\"1000 mm\", \"700 mm\"]]\n\
                 [criteria]\nproof-bag = \"10 kg\"\n";
    let top = read(&text(SNOW, third));
    let proof = proof(&top, Wanted::Even).expect("a test");
    let supports: Vec<usize> =
        (0..proof.gauges.len()).filter(|at| matches!(proof.gauges[*at].on, GaugeAt::Support(_))).collect();
    assert_eq!(supports.len(), 3, "{:?}", proof.gauges);
    let middle = *supports.iter().find(|at| (proof.gauges[**at].at.x.get::<meter>() - 1.0).abs() < 0.01).expect("it");
    let mut full = read_by(&top, &proof);
    // The middle wall goes down and takes the top with it, but not by so much.
    full[middle] += mm(9.0);
    for at in (0..full.len()).filter(|at| !supports.contains(at)) {
        full[at] += mm(3.0);
    }
    let (compared, text) = said(&top, &proof, &full);
    let moved = compared.moved.clone().expect("gauges on supports");
    // By hand, along the line of 0.1, 1.0 and 1.9 m: 3 mm on the mean, without a slope, 6 mm left.
    assert!((moved.mean - mm(3.0)).abs() < mm(0.02) && (moved.bends - mm(6.0)).abs() < mm(0.1), "{moved:?}");
    assert!(!compared.passes(&proof) && text.contains("They did NOT move as a straight top does"), "{text}");
    let of_top = compared.gauges.iter().filter(|one| !supports.contains(&one.gauge));
    assert!(of_top.into_iter().all(|one| !one.in_band), "{compared:?}");
}

#[test]
fn coarse_gauges_tell_less_apart() {
    let of = |noise: &str| {
        let top = read(&text(SNOW, &format!("[criteria]\nproof-bag = \"10 kg\"\nproof-gauge-noise = \"{noise}\"\n")));
        let proof = proof(&top, Wanted::Even).expect("a test");
        let compared = compare(&top, &proof, &readings(&proof, &read_by(&top, &proof)));
        let causes = causes(&compared).clone();
        (causes.off.expect("three causes, more gauges"), causes.told_apart, causes.likely)
    };
    let ((core, skins, supports), fine, _) = of("0.0001 mm");
    let ((coarse_core, ..), coarse, likely) = of("1 mm");
    assert!(fine && !coarse, "{core:?} {skins:?} {supports:?}");
    // Ten thousand times as coarse; a tip that moves less than that has no gauge then.
    assert!((coarse_core / core).value > 1e3, "{coarse_core:?} {core:?}");
    // Any cause leaves less than so coarse a gauge is off.
    assert_eq!(likely, None);
}

#[test]
fn what_stays_down_or_bends_does_not_pass() {
    let (top, proof) = usual();
    let full = read_by(&top, &proof);
    let good = readings(&proof, &full);
    let middle = full[0];
    let changed = |change: &dyn Fn(&mut Vec<Row>)| {
        let mut readings = good.clone();
        change(&mut readings.rows);
        compare(&top, &proof, &readings)
    };
    // A tenth of the reading is left.
    let left = changed(&|rows| {
        let last = rows.last_mut().expect("rows");
        last.readings[0] = last.readings[0].map(|reading| reading + middle * 0.1);
    });
    assert_eq!(left.gauges[0].springs_back, Some(false), "{:?}", left.gauges[0]);
    assert!((left.gauges[0].residual.expect("read") - middle * 0.1).abs() < mm(1e-9));
    assert!((left.gauges[0].hysteresis.expect("unloaded").value - 0.1).abs() < 0.02, "{:?}", left.gauges[0]);
    // The last step reads a fifth more than the line.
    let bent = changed(&|rows| {
        let most = proof.steps.last().expect("steps").bags;
        for row in rows.iter_mut().filter(|row| row.bags == most) {
            row.readings[0] = row.readings[0].map(|reading| reading + middle * 0.2);
        }
    });
    assert!(bent.gauges[0].straight == Some(false) && !bent.passes(&proof), "{:?}", bent.gauges[0]);
    // Not unloaded, or not all bags: no pass.
    let up = changed(&|rows| rows.truncate(proof.steps.len() + 1));
    assert!(up.gauges.iter().all(|one| one.springs_back.is_none()) && !up.passes(&proof));
    let most = proof.steps.last().expect("steps").bags;
    let light = changed(&|rows| rows.retain(|row| row.bags < most));
    assert!(light.most_bags < most && !light.passes(&proof));
}

fn said(top: &Top, proof: &Proof, full: &[Length]) -> (Compared, String) {
    let compared = compare(top, proof, &readings(proof, full));
    let text = proof_to_text(proof, Some(&compared), top, 100);
    (compared, text.split_whitespace().collect::<Vec<_>>().join(" "))
}

#[test]
fn a_turned_sign_and_another_unit_are_told_and_not_explained() {
    let (top, proof) = usual();
    let full = read_by(&top, &proof);
    let (clean, _) = said(&top, &proof, &full);
    assert!(clean.slips.is_empty(), "{:?}", clean.slips);
    // The first gauge the other way.
    let turned: Vec<Length> = full.iter().enumerate().map(|(k, one)| if k == 0 { -*one } else { *one }).collect();
    let (compared, text) = said(&top, &proof, &turned);
    assert_eq!(compared.slips, [(0, Slip::Turned)]);
    assert!(compared.causes.is_err() && !compared.passes(&proof));
    assert!(text.contains("Gauge A: what was read is of the size that was expected, but goes the other way: the sign of the gauge looks turned"), "{text}");
    assert!(!text.contains("shear modulus of the core +") && !text.contains("What would explain it"), "{text}");
    for (unit, times, words) in [
        (UnitSlip::MillimetresAsInches, 25.4, "as if millimetres stood below a head of inches"),
        (UnitSlip::InchesAsMillimetres, 1.0 / 25.4, "as if inches stood below a head of millimetres"),
        (UnitSlip::ThousandthsAsInches, 1000.0, "as if thousandths of an inch stood below a head of inches"),
        (UnitSlip::ThousandthsAsMillimetres, 39.4, "as if thousandths of an inch stood below a head of millimetres"),
        (UnitSlip::InchesAsThousandths, 0.001, "as if inches stood below a head of thousandths of an inch"),
    ] {
        // A top that gives a fifth more than expected all the same.
        let slipped: Vec<Length> = full.iter().map(|one| *one * times * 1.2).collect();
        let (compared, text) = said(&top, &proof, &slipped);
        let wanted = Slip::Unit(unit);
        assert!(
            !compared.slips.is_empty() && compared.slips.iter().all(|(_, slip)| *slip == wanted),
            "{times}: {:?}",
            compared.slips
        );
        assert!(text.contains(words) && !text.contains("−90"), "{text}");
    }
}

#[test]
fn all_columns_in_another_unit_are_told_by_their_heads_and_supports_are_no_excuse() {
    let card = card_of("survey-launch", Wanted::Even);
    let (top, proof) = (&card.0, card.1.as_ref().expect("a test"));
    let full = read_by(top, proof);
    let noise = top.criteria.proof_gauge_noise.value;
    let large: Vec<usize> = (0..full.len()).filter(|at| full[*at].abs() > noise * 3.0).collect();
    assert!(large.iter().any(|at| on_support(proof, *at)) && large.len() > 2, "{full:?}");
    // By the ratio alone 29.5 times looks like 25.4: a stiffer top, thousandths below a head of millimetres.
    let read: Vec<Length> = full.iter().map(|one| *one * 1000.0 / 25.4 * 0.75).collect();
    let mut readings = readings(proof, &read);
    readings.heads = vec![Some(Head::Millimetres); full.len()];
    let compared = compare(top, proof, &readings);
    let wanted: Vec<(usize, Slip)> =
        large.iter().map(|at| (*at, Slip::Unit(UnitSlip::ThousandthsAsMillimetres))).collect();
    assert_eq!(compared.slips, wanted);
    assert!(compared.moved.is_none() && compared.give_way.is_empty() && !compared.passes(proof), "{compared:?}");
    let text = proof_to_text(proof, Some(&compared), top, 100);
    assert!(text.contains("as if thousandths of an inch stood below"), "{text}");
    // A gauge that ought to read next to nothing says nothing against that.
    let mut little = proof.clone();
    little.gauges[large[0]].reading.expected = noise * 2.0;
    let compared = compare(top, &little, &readings);
    assert_eq!(compared.slips, wanted[1..]);
}

#[test]
fn one_gauge_that_is_out_alone_is_named_and_blames_no_other() {
    let (top, proof) = usual();
    let full = read_by(&top, &proof);
    for out in 0..full.len() {
        let mut bad = full.clone();
        bad[out] += mm(10.0);
        let (compared, text) = said(&top, &proof, &bad);
        assert_eq!(compared.suspect, Some(out), "{compared:?}");
        assert!(!compared.passes(&proof) && compared.give_way.is_empty() && compared.slips.is_empty(), "{compared:?}");
        assert!(compared.gauges.iter().all(|one| one.in_band == (one.gauge != out)), "{compared:?}");
        let name = &proof.gauges[out].name;
        assert!(
            text.contains(&format!("DOES NOT PASS: LOOK AT GAUGE {name} FIRST, which alone is out: {name} reads")),
            "{text}"
        );
        assert!(!text.contains("out of its band") && text.contains("All other readings are as expected"), "{text}");
        let goes_away = text.contains("that support goes away from below the top");
        assert_eq!(goes_away, on_support(&proof, out), "{text}");
        // What it says explains nothing.
        let together = causes(&compared).together.expect("all three");
        assert!(together.core.value.abs() < FOUND && together.supports.abs() < mm(0.01), "{together:?}");
    }
    // Two that are out are no single fault, nor is what a top may do.
    for change in [[10.0, 10.0], [1.5, 0.0]] {
        let mut bad = full.clone();
        bad[0] += mm(change[0]);
        bad[1] += mm(change[1]);
        let (compared, _) = said(&top, &proof, &bad);
        assert!(compared.suspect.is_none() && !compared.gauges[0].in_band, "{:?} {compared:?}", proof.gauges[0]);
    }
}

#[test]
fn one_load_says_nothing_of_straightness() {
    let (top, proof) = usual();
    let mut readings = readings(&proof, &read_by(&top, &proof));
    let most = proof.steps.last().expect("steps").bags;
    readings.rows.retain(|row| row.bags == 0 || row.bags == most);
    let compared = compare(&top, &proof, &readings);
    assert!(compared.gauges.iter().all(|one| one.straight.is_none() && one.off_line.is_none()), "{compared:?}");
    assert!(!compared.passes(&proof));
    let text = proof_to_text(&proof, Some(&compared), &top, 100);
    assert!(text.contains("read at less than three loads") && !text.contains("PASSES"), "{text}");
}

#[test]
fn what_is_next_to_nothing_stands_on_a_support_or_is_of_another_size_is_no_slip() {
    let with_noise = |noise: f64| {
        let rest = format!("[criteria]\nproof-bag = \"10 kg\"\nproof-gauge-noise = \"{noise} mm\"\n");
        let top = read(&text(SNOW, &rest));
        let proof = proof(&top, Wanted::Even).expect("a test");
        let full = read_by(&top, &proof);
        (top, proof, full)
    };
    let slips = |(top, proof, full): &(Top, Proof, Vec<Length>), gauge: usize, times: f64| {
        let mut full = full.clone();
        full[gauge] *= times;
        compare(top, proof, &readings(proof, &full)).slips
    };
    let on_top = |at: usize, proof: &Proof| !matches!(proof.gauges[at].on, GaugeAt::Support(_));
    let fine = with_noise(0.0001);
    let least = (0..fine.2.len())
        .filter(|at| on_top(*at, &fine.1))
        .min_by(|a, b| fine.2[*a].abs().value.total_cmp(&fine.2[*b].abs().value))
        .expect("a gauge");
    assert_eq!(slips(&fine, least, -1.0), [(least, Slip::Turned)]);
    // Six times as much the other way is no turned sign.
    assert_eq!(slips(&fine, least, -6.0), []);
    // A support may go down by anything: 25.4 times its own few micrometres too.
    let support = (0..fine.2.len()).find(|at| !on_top(*at, &fine.1)).expect("a gauge on a support");
    assert!(fine.1.gauges[support].reading.expected.abs() > mm(0.0003), "{:?}", fine.1.gauges[support]);
    assert_eq!(slips(&fine, support, 25.4), []);
    // Of half of a reading that gauges are off by anyhow nothing is said.
    let coarse = with_noise(fine.2[least].abs().get::<millimeter>() / 2.0);
    assert_eq!(coarse.1.gauges[least].at, fine.1.gauges[least].at);
    assert_eq!(slips(&coarse, least, -1.0), []);
}

#[test]
fn a_core_that_is_none_is_not_printed_as_a_finding() {
    let (top, proof) = usual();
    // Six times as much: no slip of units, and no core either.
    let full: Vec<Length> = read_by(&top, &proof).into_iter().map(|one| one * 6.0).collect();
    let (compared, text) = said(&top, &proof, &full);
    assert!(compared.slips.is_empty() && !alone(&compared, Cause::Core).plausible(), "{compared:?}");
    assert!(text.contains("shear modulus of the core further off than any is"), "{text}");
    // One unit for all lengths.
    assert!(!text.contains(" in;") && !text.contains(" in."), "{text}");
}

#[test]
fn the_room_of_the_file_says_how_the_shop_tests() {
    // Each key another value, so that none stands for another.
    let rest = "[proof]\nbag = \"12 kg\"\nbag_length = \"500 mm\"\nbag_width = \"310 mm\"\ngauge = \"0.1 mm\"\nsettling = \"3 mm\"\nfall = \"70 mm\"\n\
                wait = \"5 min\"\nresidual = \"8 %\"\nstraightness = \"9 %\"\nmost_used = \"85 %\"\n";
    let top = read(&text(SNOW, rest));
    let criteria = &top.criteria;
    for (length, wanted) in [
        (criteria.proof_bag_length.value, 500.0),
        (criteria.proof_bag_width.value, 310.0),
        (criteria.proof_gauge_noise.value, 0.1),
        (criteria.proof_settling.value, 3.0),
        (criteria.proof_fall.value, 70.0),
    ] {
        assert!((length - mm(wanted)).abs() < mm(1e-9), "{length:?} {wanted}");
    }
    for (number, wanted) in [
        (criteria.proof_bag.value.value, 12.0),
        (criteria.proof_wait.value.value, 300.0),
        (criteria.proof_residual.value.value, 0.08),
        (criteria.proof_straightness.value.value, 0.09),
        (criteria.proof_most_used.value.value, 0.85),
    ] {
        assert!((number - wanted).abs() < 1e-9, "{number} {wanted}");
    }
    let table = skinspan::input::read_tables(&[]).expect("the table");
    for (rest, message, help) in [
        ("residual = \"8\"", "more than all", "did you mean `\"8 %\"`?"),
        ("resdiual = \"8 %\"", "`resdiual` is not a key of `proof`", "did you mean `residual`?"),
        ("wait = \"-5 min\"", "`wait`", ""),
        ("bag = \"0 kg\"", "`bag`", ""),
        ("fall = \"70 kg\"", "`kg` is a unit of mass", "mm"),
    ] {
        let file = text(SNOW, &format!("[proof]\n{rest}\n"));
        let problems = skinspan::input::read_design(&file, &table, None).expect_err(rest);
        let said: String = problems.iter().map(|file| file.render(false)).collect();
        assert!(said.contains(message) && said.contains(help), "{rest}:\n{said}");
    }
}

#[test]
fn a_file_of_readings_is_read() {
    let (_, proof) = usual();
    let most = proof.steps.last().expect("steps").bags;
    let text = format!("# of a Tuesday\n\nbags, B (in), A (mm)\n0, 0, 0.1\n{most}, 0.5,\n0, 0.01, 0.12\n");
    let readings = read_readings(&NamedText { name: "readings.csv".to_owned(), text }, &proof).expect("readings");
    assert_eq!(readings.heads[..3], [Some(Head::Millimetres), Some(Head::Inches), None]);
    let rows = readings.rows;
    assert_eq!(rows.iter().map(|row| row.bags).collect::<Vec<_>>(), [0, most, 0]);
    assert_eq!((rows[0].readings[0], rows[1].readings[0], rows[0].readings[2]), (Some(mm(0.1)), None, None));
    assert!((rows[1].readings[1].expect("read") - mm(12.7)).abs() < mm(1e-9));
}

#[test]
fn every_mistake_in_readings_is_named_with_a_way_out() {
    let (_, proof) = usual();
    let most = proof.steps.last().expect("steps").bags;
    for (text, message, help) in [
        (String::new(), "there are no readings in it", "bags, A (mm), B (mm)"),
        ("bags, A\n0, 0\n".to_owned(), "gauge A does not say in which unit", "`A (mm)` or `A (in)`"),
        ("bags, A (psi)\n0, 0\n".to_owned(), "`psi` is no unit of length", "`A (mm)` or `A (in)`"),
        ("bags, Z (mm)\n0, 0\n".to_owned(), "there is no gauge `Z` on the card", "columns are bags, A, B"),
        ("bag, A (mm)\n0, 0\n".to_owned(), "there is no gauge `bag` on the card", "did you mean `bags`?"),
        ("bags, A (mm), A (mm)\n0, 0, 0\n".to_owned(), "gauge A has two columns", "leave out one"),
        ("bags\n0\n".to_owned(), "no column has readings", "columns are bags, A"),
        ("A (mm)\n0\n".to_owned(), "no column says how many `bags`", "bags, A (mm)"),
        ("bags, A (mm)\n0, 0,5\n".to_owned(), "this line has 3 cells, the first line 2", "decimals have a point"),
        ("bags; A (mm)\n0; 0,1\n".to_owned(), "a semicolon stands between columns", "parted by commas"),
        ("bags, A (mm)\n0, none\n".to_owned(), "`none` is not a number", "write for example `1.25`"),
        ("bags, A (mm)\nhalf, 1\n".to_owned(), "`bags` is a whole number", "from 0 to"),
        (format!("bags, A (mm)\n{}, 1\n", most + 1), "bags are more than the test has", "the card has"),
        ("bags, A (mm)\n0, 1\n0, 1\n".to_owned(), "readings at one load", "without bags (`0`)"),
    ] {
        let file = NamedText { name: "readings.csv".to_owned(), text: text.clone() };
        let problems = read_readings(&file, &proof).expect_err(&text).render(false);
        assert!(problems.contains(message), "{message}\n{problems}");
        assert!(problems.contains(help), "{help}\n{problems}");
        assert!(problems.contains("readings.csv"), "{problems}");
    }
}

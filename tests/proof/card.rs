//! The card: its load, its steps, and what gauges should read.

use skinspan::{
    analysis::{Analysis, DIVISIONS},
    check::{CHECKS, run},
    geometry::Axis,
    proof::{GaugeAt, Kind, NoProof, Proof, Wanted, proof},
    report::proof_to_text,
    section::Width,
    units::plain,
};
use uom::si::{force::newton, length::millimeter};

use crate::kit::{SNOW, bags, card_of, count, example, read, text, under_bags};

fn card(rest: &str) -> Proof {
    proof(&read(&text(SNOW, rest)), Wanted::Even).unwrap_or_else(|none| panic!("{none:?}"))
}

#[test]
fn readings_are_the_sags_of_the_analysis() {
    let top = read(&text(SNOW, ""));
    let proof = proof(&top, Wanted::Even).expect("a test");
    let loaded = under_bags(&top, &proof);
    let analysis = Analysis::by_plate_alone(&loaded, vec![bags()]).expect("an analysis");
    let forces = analysis.fields().next().expect("forces");
    for (on, sags) in [(GaugeAt::MidSpan, &forces.between), (GaugeAt::Tip, &forces.tip)] {
        let gauge = proof.gauges.iter().find(|gauge| gauge.on == on).expect("a gauge");
        let sag = sags.iter().find(|sag| sag.at == gauge.at).expect("the sag at its place").sag;
        // A tip may be judged against the wall beside it, whose bed gives.
        let off = (gauge.reading.expected - sag).abs();
        assert!(off.get::<millimeter>() < 0.005, "{on:?}: {:?} {sag:?}", gauge.reading);
        assert!(sag.abs().get::<millimeter>() > 1.0, "{sag:?}");
    }
    // Supports that do not give: their beds give by micrometres.
    for gauge in proof.gauges.iter().filter(|gauge| matches!(gauge.on, GaugeAt::Support(_))) {
        assert!(gauge.reading.expected.get::<millimeter>().abs() < 0.05, "{gauge:?}");
    }
}

/// A plate for a beam, and the largest sag for that in the middle.
const AS_A_BEAM: f64 = 0.06;

#[test]
fn the_middle_sags_as_a_beam_by_hand() {
    // On walls at 0.1 m and 1.9 m, 0.7 m wide.
    let top = read(&text(SNOW, "[criteria]\nproof-bag = \"5 kg\"\n"));
    let proof = proof(&top, Wanted::Even).expect("a test");
    let loaded = under_bags(&top, &proof);
    let analysis = Analysis::without_forces(&loaded, vec![bags()]).expect("sections");
    let field = &analysis.sections.field;
    let bending = field.section.bending(Axis::X, Width::Wide);
    let d = bending.skin_membranes.value + bending.skins_alone.value;
    let s = plain(field.shear_stiffness(Axis::X, analysis.core_left(0))).value;
    let span: f64 = 1.8;
    let of_heap = |bags: usize, x: f64| {
        let p = count(bags) * 5.0 * 9.80665 / 0.7;
        let over = (0.1 - x).max(x - 1.9);
        if over > 0.0 {
            return -p * over * span * span / (16.0 * d);
        }
        let near = (x - 0.1).min(1.9 - x);
        p * near * (3.0 * span * span - 4.0 * near * near) / (48.0 * d) + p * near / (2.0 * s)
    };
    let sag: f64 = proof.heaps.iter().map(|heap| of_heap(heap.bags, heap.at.x.value)).sum();
    let gauge = proof.gauges.iter().find(|gauge| gauge.on == GaugeAt::MidSpan).expect("a gauge");
    let found = gauge.reading.expected.value;
    assert!((found / sag - 1.0).abs() < AS_A_BEAM, "{found} {sag}");
    // All over the top: as many on either side of the middle.
    let mean =
        |pick: fn(&skinspan::proof::Heap) -> f64| proof.heaps.iter().map(pick).sum::<f64>() / count(proof.heaps.len());
    assert!((mean(|heap| heap.at.x.value) - 1.2).abs() < 1e-9 && (mean(|heap| heap.at.y.value) - 0.35).abs() < 1e-9);
}

#[test]
fn an_even_load_is_spread_by_equal_steps() {
    let proof = card("");
    let Kind::Even { pressure } = proof.governs.kind else { panic!("{:?}", proof.governs) };
    assert!((pressure.value - 1000.0).abs() < 1e-9);
    // 1 kPa on 1.68 m²: 1680 N are 8.57 bags of 20 kg; in two places four each.
    assert_eq!(proof.heaps.iter().map(|heap| heap.bags).collect::<Vec<_>>(), [4, 4]);
    assert_eq!(proof.steps.iter().map(|step| step.bags).collect::<Vec<_>>(), [2, 4, 6, 8]);
    assert!((proof.weight.get::<newton>() - 8.0 * 20.0 * 9.80665).abs() < 1e-9);
    assert!((proof.of_case.value - 8.0 * 20.0 * 9.80665 / 1680.0).abs() < 1e-12);
    assert!(!proof.lowered);
}

#[test]
fn a_person_is_a_heap_at_the_worst_place() {
    let proof = proof(&example("galley-roof"), Wanted::Place).expect("a test");
    let Kind::Place { at } = proof.governs.kind else { panic!("{:?}", proof.governs) };
    let [heap, other] = &proof.heaps[..] else { panic!("{:?}", proof.heaps) };
    // 1.5 times 100 kg, for stepping: seven bags and a half of 20 kg, two heaps of four.
    assert!((proof.governs.force.get::<newton>() - 1.5 * 100.0 * 9.80665).abs() < 1e-9, "{:?}", proof.governs.force);
    assert_eq!((heap.bags, other.bags, proof.steps.last().expect("steps").bags), (4, 4, 8));
    // Side by side: no two bags lie in one another.
    assert!((heap.at.distance(other.at) / proof.bag_size[1]).value > 1.0 - 1e-9, "{other:?}");
    // As near to it as a bag lies on the top.
    let reach = proof.bag_size[0].hypot(proof.bag_size[1]);
    assert!(heap.at.distance(at) <= reach, "{heap:?} {at:?}");
}

#[test]
fn no_test_fails_a_check() {
    for name in ["survey-launch", "ferry-tender", "seine-tender", "galley-roof"] {
        for wanted in [Wanted::Any, Wanted::Even] {
            let card = card_of(name, wanted);
            let (top, proof) = match &*card {
                (top, Ok(proof)) => (top, proof),
                (_, Err(NoProof::NothingToLoad)) => continue,
                (_, Err(none)) => panic!("{name}: {none:?}"),
            };
            assert!(!proof.checks.is_empty(), "{name}");
            assert!(proof.checks.iter().all(|check| check.used.value <= 0.95), "{name}: {:?}", proof.checks);
            // Whole layers may be a tenth more.
            assert!(proof.of_case.value <= 1.1 + 1e-9, "{name}");
            for heap in &proof.heaps {
                assert!(top.outline.within_by(heap.at) > skinspan::units::Length::default(), "{name}: {heap:?}");
            }
            // The checks are those of the top under the bags, dry.
            let loaded = under_bags(top, proof);
            let case = skinspan::load_case::LoadCase { gravity: 1.0.into(), ..bags() };
            let analysis =
                Analysis::under_cases(&loaded, DIVISIONS, vec![case]).expect("an analysis").with_plate_method();
            let outcomes = run(&analysis);
            let worst = outcomes
                .iter()
                .filter(|outcome| outcome.case.is_some())
                .filter_map(skinspan::check::Outcome::utilisation);
            let worst = worst.map(|used| used.value).fold(0.0, f64::max);
            assert!((proof.checks[0].used.value - worst).abs() < 1e-9, "{name}: {worst} {:?}", proof.checks[0]);
        }
    }
}

#[test]
fn a_load_that_a_check_does_not_allow_is_lowered() {
    let usual = card("");
    let factor = |factor: f64| {
        let rest = format!("[criteria]\ncore-shear-factor = \"{factor}\"\n");
        proof(&read(&text(SNOW, &rest)), Wanted::Even)
    };
    let shear = CHECKS.iter().position(|check| check.id() == "core-shear").expect("a check");
    let used = usual.checks.iter().find(|check| check.check == shear).expect("core shear").used.value;
    // So hard a factor that three quarters of the bags would pass.
    let lowered = factor(2.5 * 0.95 / used / 0.75).expect("a test");
    assert!(lowered.lowered && lowered.weight < usual.weight, "{:?}", lowered.weight);
    assert!(lowered.checks[0].used.value <= 0.95);
    assert_eq!(lowered.checks[0].check, shear);
    let none = factor(1e6).expect_err("no bag");
    assert_eq!(none, NoProof::NotOneBag { check: Some(shear) });
}

#[test]
fn nothing_to_load_and_patches_are_refused() {
    assert_eq!(proof(&read(&text("people = 0", "")), Wanted::Even).expect_err("nothing"), NoProof::NothingToLoad);
    assert_eq!(proof(&example("radar-pad"), Wanted::Any).expect_err("a patch"), NoProof::Patch);
}

#[test]
fn a_band_is_made_of_scatter_method_and_gauge() {
    let wide = card("[criteria]\nproof-scatter-typical = \"0.3\"\nproof-scatter-estimate = \"0.3\"\n");
    let none = "[criteria]\nproof-scatter-typical = \"0\"\nproof-scatter-estimate = \"0\"\nproof-scatter-minimum = \"0\"\n\
                proof-gauge-noise = \"0.5 mm\"\n";
    let narrow = card(none);
    let middle =
        |proof: &Proof| proof.gauges.iter().find(|gauge| gauge.on == GaugeAt::MidSpan).expect("a gauge").reading;
    let (wide, narrow) = (middle(&wide), middle(&narrow));
    // 30 % of both, at right angles.
    let spread = 0.3 * wide.core.hypot(wide.skin);
    let [band, noise] = [wide.band, narrow.band].map(|band| band.get::<millimeter>());
    assert!(band > spread.get::<millimeter>() && band < spread.get::<millimeter>() * 1.01 + 0.03, "{band} {spread:?}");
    assert!((0.5..0.52).contains(&noise), "{noise}");
    // All that the top gives comes from core and skins: together they are the reading.
    let all = (wide.core + wide.skin) / wide.expected;
    assert!((all.value - 1.0).abs() < 0.03, "{all:?}");
}

/// What is printed of a gauge makes its band, to the digits that are printed: by step the root counts by its share.
#[test]
fn a_band_can_be_redone_from_its_card() {
    let card = card_of("ferry-tender", Wanted::Even);
    let (top, proof) = (&card.0, card.1.as_ref().expect("a test"));
    let page = proof_to_text(proof, None, top, 100);
    let words = page.split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(
        words.contains("± is √((0.15 C)² + (0.3 S)² + E²) by the share of the bags, and 0.8 mil for the gauge"),
        "{page}"
    );
    let number = |text: &str| text.trim_end_matches([',', ';']).parse::<f64>().expect("a number");
    // "  A bag lies …" begins as a gauge's row does.
    let row = |start: &str, has: &str| {
        let mut own = page.lines().filter(|line| line.contains(has));
        own.find_map(|line| line.strip_prefix(start)).expect("a row")
    };
    let last = proof.steps.last().expect("steps").bags;
    for (at, gauge) in proof.gauges.iter().enumerate() {
        let parts = row(&format!("  {} ", gauge.name), "; C ").rsplit("; ").next().expect("parts");
        let parts: Vec<f64> = parts.split(", ").map(|part| number(&part[2..])).collect();
        let root = (0.15 * parts[0]).hypot(0.3 * parts[1]).hypot(parts[2]);
        for step in &proof.steps {
            let cells: Vec<&str> = row(&format!("  {} of {last} ", step.bags), "±").split('±').skip(1).collect();
            let band = number(cells[at].split_whitespace().next().expect("a band"));
            let share = count(step.bags) / count(last);
            assert!((band - (root * share + 0.787)).abs() < 0.1, "{}: {band} of {root} × {share}\n{page}", gauge.name);
        }
    }
}

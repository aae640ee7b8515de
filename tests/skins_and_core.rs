//! What checks of skins and core take for the loads at feet, footings, seats and the edges of backings.
#![allow(clippy::unwrap_used, reason = "a test that cannot go on has failed")]

use std::{f64::consts::PI, sync::Arc};

use approx::assert_relative_eq;
use skinspan::{
    analysis::{Analysis, DIVISIONS},
    check::{CHECKS, Finding, Measure, Method, Outcome, Part, Verdict, run},
    geometry::{Foot, Point, Polyline},
    input::{NamedText, read_design, read_tables},
    load_case::{Duration, State, hot_top},
    report::{Report, frame_loads},
    section::Skin,
    strength::{DiscLoad, SkinBending, even_punching_peak},
    top::Top,
    units::{Area, Force, Length, Ratio, parse, per_width},
};
use uom::si::{area::square_meter, force::newton, length::meter};

const ROUNDING: f64 = 1e-9;

fn example(name: &str) -> Top {
    let path = format!("{}/examples/{name}.toml", env!("CARGO_MANIFEST_DIR"));
    let text = NamedText { name: name.to_owned(), text: std::fs::read_to_string(path).unwrap() };
    read_design(&text, &read_tables(&[]).unwrap(), None).unwrap()
}

/// Findings of a check at some kind of place, with their outcomes.
fn findings(outcomes: &[Outcome], id: &str, at: fn(&Part) -> bool) -> Vec<(Outcome, Finding)> {
    let of = outcomes.iter().filter(|outcome| CHECKS[outcome.check].id() == id && at(&outcome.place.part));
    let compared = of.filter_map(|outcome| match &outcome.verdict {
        Verdict::Compared(finding) => Some((outcome.clone(), finding.clone())),
        Verdict::NotEvaluated(_) => None,
    });
    compared.collect()
}

fn term(finding: &Finding, symbol: &str) -> Option<f64> {
    let term = finding.terms.iter().find(|term| term.symbol == symbol)?;
    Some(value(&term.value))
}

fn value(measure: &Measure) -> f64 {
    match measure {
        Measure::Pressure(own) => own.value,
        Measure::Length(own) => own.value,
        Measure::Force(own) => own.value,
        Measure::Torque(own) => own.value,
        Measure::ForcePerWidth(own) => own.value,
        Measure::Ratio(own) => own.value,
        Measure::Rigidity(own) => own.value,
        other => panic!("{other:?}"),
    }
}

/// So small that nothing else presses the core more.
fn small_foot() -> Foot {
    Foot::Rectangle { length: Length::new::<meter>(0.06), width: Length::new::<meter>(0.06) }
}

/// The skiff with a tall aerial that nothing fastens.
fn tall_aerial() -> Top {
    let mut top = example("pilot-skiff");
    let gear = &mut top.gear[0];
    (gear.cg_height, gear.wind_height) = (Length::new::<meter>(2.5), Length::new::<meter>(2.5));
    gear.foot = small_foot();
    gear.wind_area = Area::new::<square_meter>(0.5);
    top
}

#[test]
fn gear_that_is_not_fastened_tips_onto_the_core() {
    let top = tall_aerial();
    let outcomes = run(&Analysis::new(&top, DIVISIONS).unwrap());
    let own = findings(&outcomes, "core-crush", |part| matches!(part, Part::Gear(_)));
    assert!(!own.is_empty());
    for (_, finding) in own {
        let [p, m, a, t] = ["P", "M", "a", "t"].map(|symbol| term(&finding, symbol).unwrap());
        assert!(m > 0.0);
        let side = a + 2.0 * t;
        let pressure = p / side.powi(2) + 6.0 * m / side.powi(3);
        assert_relative_eq!(value(&finding.demand), pressure, max_relative = ROUNDING);
    }
}

#[test]
fn gear_that_is_fastened_presses_the_core_by_its_weight_here() {
    let mut top = example("survey-launch");
    top.gear[0].foot = small_foot();
    top.gear[0].mass = parse("300 kg").unwrap();
    let outcomes = run(&Analysis::new(&top, DIVISIONS).unwrap());
    let own = findings(&outcomes, "core-crush", |part| matches!(part, Part::Gear(_)));
    assert!(!own.is_empty());
    for (_, finding) in own {
        let [p, a, t] = ["P", "a", "t"].map(|symbol| term(&finding, symbol).unwrap());
        assert!(term(&finding, "M").is_none());
        assert_relative_eq!(value(&finding.demand), p / (a + 2.0 * t).powi(2), max_relative = ROUNDING);
    }
}

#[test]
fn gear_that_is_not_fastened_bends_the_skin_at_its_rim_by_tipping_too() {
    let top = tall_aerial();
    let evenness = top.criteria.plug_evenness.value.value;
    let outcomes = run(&Analysis::new(&top, DIVISIONS).unwrap());
    let own = findings(&outcomes, "skin-bending", |part| matches!(part, Part::Gear(_)));
    let mut tipped = false;
    for (_, finding) in own {
        let [p, m, f, v] = ["P", "M", "f", "V"].map(|symbol| term(&finding, symbol).unwrap());
        tipped |= m > 0.0;
        assert_relative_eq!(v, (p / (4.0 * f) + 4.0 * m / (PI * f * f)) / evenness, max_relative = ROUNDING);
    }
    assert!(tipped);
}

#[test]
fn a_sole_punches_the_core_as_it_presses_evenly() {
    let top = example("survey-launch");
    let mut analysis = Analysis::new(&top, DIVISIONS).unwrap();
    // Strips on which somebody stands shear more: only feet are left to look at.
    analysis.strips.clear();
    let outcomes = run(&analysis);
    let own = findings(&outcomes, "core-shear", |part| matches!(part, Part::Foot));
    assert!(!own.is_empty());
    for (_, finding) in own {
        let [p, b, r, d, c, decay, net] =
            ["P", "b", "r", "d", "C", "1/a", "n"].map(|symbol| term(&finding, symbol).unwrap());
        // A panel of that share and that length.
        let one = |value: f64| per_width(Force::new::<newton>(value) * Length::new::<meter>(1.0));
        let shear = c * (1.0 - c) / decay / decay;
        let panel = SkinBending {
            flanges: one(c),
            skins: one(1.0 - c),
            shear: per_width(Force::new::<newton>(shear) / Length::new::<meter>(1.0)),
        };
        let load = DiscLoad { force: Force::new::<newton>(p), radius: Length::new::<meter>(b) };
        assert!(r > b && r < 1.05 * b, "{r} {b}");
        let peak = even_punching_peak(load, Length::new::<meter>(d), &panel);
        assert_relative_eq!(value(&finding.demand), peak.stress.value * net, max_relative = ROUNDING);
        assert_relative_eq!(r, peak.radius.value, max_relative = ROUNDING);
    }
}

#[test]
fn what_presses_a_seat_is_as_sure_as_the_push_along_its_pipe() {
    let top = example("pilot-skiff");
    let analysis = Analysis::new(&top, DIVISIONS).unwrap().with_plate_method();
    let outcomes = run(&analysis);
    let own = findings(&outcomes, "skin-bending", |part| matches!(part, Part::Support(_)));
    let on_plate: Vec<_> = own.iter().filter(|(outcome, _)| outcome.method == Method::Plate).collect();
    assert!(!on_plate.is_empty());
    for (outcome, finding) in on_plate {
        let Part::Support(number) = outcome.place.part else { panic!("{outcome:?}") };
        let forces = analysis.fields().filter(|forces| Some(forces.case) == outcome.case);
        let pipes = forces.flat_map(|forces| &forces.pipes).filter(|pipe| pipe.pipe == number);
        let pushes: Vec<f64> = pipes.map(|pipe| pipe.push.value * (1.0 + pipe.along_error[0].value)).collect();
        let pressed = term(finding, "R").unwrap();
        assert!(pushes.iter().any(|push| (push / pressed - 1.0).abs() < ROUNDING), "{pressed} {pushes:?}");
    }
}

#[test]
fn forces_on_posts_have_the_error_of_their_pipe_added() {
    let top = example("pilot-skiff");
    let table = read_tables(&[]).unwrap();
    let report = Report::new(&top, &table);
    let analysis = report.analysis.as_ref().unwrap();
    let mut posts = 0;
    for load in frame_loads(&report) {
        for post in &load.posts {
            let at = top.supports[load.pipe].along.at(post.along);
            let pipes = analysis.fields().flat_map(|forces| &forces.pipes).filter(|pipe| pipe.pipe == load.pipe);
            let (mut push, mut pull, mut sure) = (0.0_f64, 0.0_f64, 0.0_f64);
            for pipe in pipes {
                let own = pipe.posts.iter().find(|own| own.at.distance(at).value < 1e-6).unwrap();
                push = push.max(own.push.value * (1.0 + pipe.along_error[0].value));
                pull = pull.max(own.pull.value * (1.0 + pipe.along_error[1].value));
                sure = sure.max(own.push.value);
            }
            assert_relative_eq!(post.push.value.value, push, max_relative = ROUNDING);
            assert_relative_eq!(post.pull.value.value, pull, max_relative = ROUNDING);
            assert!(push > sure, "the error adds something");
            posts += 1;
        }
    }
    assert_eq!(posts, 9);
}

#[test]
fn the_edge_of_a_pad_below_gear_keeps_its_shear() {
    let top = example("pilot-skiff");
    let analysis = Analysis::new(&top, DIVISIONS).unwrap().with_plate_method();
    let mut seen = 0;
    for forces in analysis.fields() {
        assert_eq!(forces.edges.len(), 1);
        // The aerial tips, pulls and presses in every case in which it is there.
        assert!(forces.edges[0].shears().all(|peak| peak.state.shear_size().value > 0.0));
        assert_eq!(forces.edges[0].shears().count(), 1, "{}", analysis.cases[forces.case].id);
        seen += 1;
    }
    assert!(seen > 5);
}

#[test]
fn beside_a_pad_too_small_for_a_peak_each_state_has_its_own_shear() {
    let mut top = example("pilot-skiff");
    // All of its edge lies within two discs of its corners; away from the rails.
    let place = |x: &str| Point { x: parse(x).unwrap(), y: parse("500 mm").unwrap() };
    top.backings[0].along = Polyline::new(vec![place("1975 mm"), place("2025 mm")]).unwrap();
    top.backings[0].width = parse("50 mm").unwrap();
    let analysis = Analysis::new(&top, DIVISIONS).unwrap().with_plate_method();
    assert!(analysis.fields().all(|forces| forces.edges.iter().all(|edge| edge.shears().count() == 0)));
    // So much of it that the edge governs.
    Arc::make_mut(&mut top.criteria).backing_edge_share.value = Ratio::from(50.0);
    let analysis = Analysis::new(&top, DIVISIONS).unwrap().with_plate_method();
    let own = findings(&run(&analysis), "skin-bending", |part| matches!(part, Part::Region(_)));
    let on_plate = own.iter().filter(|(outcome, _)| outcome.method == Method::Plate);
    let most = on_plate.filter_map(|(_, finding)| term(finding, "V")).fold(0.0, f64::max);
    assert!(most > 0.0);
}

/// The launch with other criteria, by the hand method.
fn launch(criteria: &str) -> Top {
    let path = format!("{}/examples/survey-launch.toml", env!("CARGO_MANIFEST_DIR"));
    let text = format!("{}\n[criteria]\n{criteria}\n", std::fs::read_to_string(path).unwrap());
    read_design(&NamedText { name: "launch".to_owned(), text }, &read_tables(&[]).unwrap(), None).unwrap()
}

/// The worst finding of a check by the hand method, with its state.
fn worst_by_hand(top: &Top, id: &str) -> (State, Outcome, Finding) {
    let analysis = Analysis::new(top, DIVISIONS).unwrap();
    let found = findings(&run(&analysis), id, |_| true);
    let (outcome, finding) =
        found.into_iter().max_by(|a, b| a.1.utilisation.value.total_cmp(&b.1.utilisation.value)).unwrap();
    (analysis.cases[outcome.case.unwrap()].state, outcome, finding)
}

/// What is left of a skin's modulus in the sun: basis, heat of its own skin, water, time, each looked up on its own.
fn left_of_skin(top: &Top, skin: Skin, state: State) -> [f64; 4] {
    let criteria = &top.criteria;
    let hot = hot_top(top.service.sun, criteria).unwrap();
    let at = if skin == Skin::Outer { hot.outer } else { hot.inner };
    let heat = if state.hot { top.resin.hot_retention.at(at).unwrap().value.value } else { 1.0 };
    let time = match state.duration {
        Duration::Instant => criteria.laminate_modulus_instant.value,
        Duration::Short => criteria.laminate_modulus_short.value,
        Duration::Long => criteria.laminate_modulus_long.value,
        Duration::Permanent => criteria.laminate_modulus_permanent.value,
    };
    [criteria.basis_share(top.skin(skin).stiffness_basis()).value.value, heat, 0.83, time.value]
}

/// Skins that must not wrinkle or dimple have what basis, heat, water and time leave of their modulus.
#[test]
fn skins_wrinkle_and_dimple_by_what_is_left_of_their_modulus() {
    let top = launch("");
    let (state, outcome, finding) = worst_by_hand(&top, "wrinkling");
    let skin = outcome.place.skin.unwrap();
    let left = left_of_skin(&top, skin, state);
    assert!(state.hot && left[0] < 0.95 && left[1] < 0.95, "nothing to see: {left:?}");
    let of = |symbol: &str| term(&finding, symbol).unwrap();
    assert_relative_eq!(of("k_f"), left.iter().product::<f64>(), max_relative = ROUNDING);
    // The working, as a reader redoes it.
    let by_hand = 0.5 * (of("k_f") * of("E_f") * of("k_c") * of("E_c") * of("k_c") * of("G_c")).cbrt();
    assert_relative_eq!(of("s_w along"), by_hand, max_relative = ROUNDING);
    assert!(finding.basis >= top.skin(skin).stiffness_basis());
    // A cube root of water for wrinkling, all of it for dimpling.
    let soaked = launch("wet-laminate = \"0.5\"");
    let softer = |id: &str| {
        let [dry, wet] = [&top, &soaked].map(|top| worst_by_hand(top, id).2.utilisation.value);
        wet / dry
    };
    assert_relative_eq!(softer("wrinkling"), (0.83_f64 / 0.5).cbrt(), max_relative = ROUNDING);
    assert_relative_eq!(softer("dimpling"), 0.83 / 0.5, max_relative = ROUNDING);
    let (state, outcome, finding) = worst_by_hand(&top, "dimpling");
    let left = left_of_skin(&top, outcome.place.skin.unwrap(), state);
    assert_relative_eq!(term(&finding, "k").unwrap(), left.iter().product::<f64>(), max_relative = ROUNDING);
}

/// Against buckling the skins have what basis, heat and time leave of their stiffness; water is in the factor.
#[test]
fn a_top_buckles_by_what_is_left_of_its_stiffness() {
    let top = launch("");
    let (state, _, finding) = worst_by_hand(&top, "panel-buckling");
    let of = |symbol: &str| term(&finding, symbol).unwrap();
    let left = [Skin::Outer, Skin::Inner].map(|skin| {
        let [basis, heat, _, time] = left_of_skin(&top, skin, state);
        basis * heat * time
    });
    assert!(left[0] < left[1], "the outer skin is the hotter: {left:?}");
    assert_relative_eq!(of("k_D"), left[0], max_relative = ROUNDING);
    let euler = PI * PI * of("k_D") * of("D") / of("L").powi(2);
    assert_relative_eq!(value(&finding.allowable), euler / (1.0 + euler / of("S")), max_relative = ROUNDING);
    let soaked = launch("wet-laminate = \"0.5\"");
    assert_relative_eq!(value(&worst_by_hand(&soaked, "panel-buckling").2.allowable), value(&finding.allowable));
}

/// As a plate the push that buckles the whole top falls by no more than the softest of what holds it, be it skins or core.
#[test]
fn the_whole_top_buckles_by_the_softest_of_what_holds_it() {
    for (criteria, by_core) in [("", false), ("basis-estimate = \"1.0\"\nbasis-typical = \"0.5\"", true)] {
        let top = launch(criteria);
        let analysis = Analysis::new(&top, DIVISIONS).unwrap().with_plate_method();
        let found = findings(&run(&analysis), "panel-buckling", |part| *part == Part::Whole);
        assert!(!found.is_empty());
        for (outcome, finding) in found {
            let state = analysis.cases[outcome.case.unwrap()].state;
            let skins = [Skin::Outer, Skin::Inner].map(|skin| {
                let [basis, heat, _, time] = left_of_skin(&top, skin, state);
                basis * heat * time
            });
            let skins = skins[0].min(skins[1]);
            let core = top.criteria.basis_share(top.core.material.shear_modulus.basis).value.value;
            assert_eq!(core < skins, by_core);
            assert_relative_eq!(term(&finding, "k_D").unwrap(), skins.min(core), max_relative = ROUNDING);
            let bearable = term(&finding, "N_cr").unwrap() * skins.min(core);
            assert_relative_eq!(value(&finding.allowable), bearable, max_relative = ROUNDING);
        }
    }
}

//! The list of checks: names, documents, and that nothing passes in silence.

use std::{collections::BTreeSet, fs, path::Path};

use skinspan::{
    analysis::{Analysis, DIVISIONS, Region, RegionPeaks, Role, ply_factor},
    check::{CHECKS, Finding, Measure, Method, Part, Verdict, run},
    criteria::Criteria,
    input::{NamedText, read_design, read_tables},
    laminate::{Elastic, Ply, PlyStress, Strength, TsaiWu},
    material::Basis,
    report::{Answer, Report, cautions, frame_loads, to_text},
    top::Top,
    units::{Angle, Length, Pressure, Ratio, TemperatureCoefficient},
};
use uom::si::{length::meter, pressure::megapascal, ratio::ratio};

fn read(name: &str) -> String {
    fs::read_to_string(Path::new(env!("CARGO_MANIFEST_DIR")).join(name)).expect("a file of the project")
}

/// The tender without posts, with square corners: pipes may be put anywhere.
fn square_tender() -> String {
    let text = read("examples/ferry-tender.toml").replace("posts   = [\"6 in\", \"70 in\"]\n", "");
    text.replace(", corner_radius = \"10 in\"", "")
}

fn top(text: &str) -> Top {
    let table = read_tables(&[]).expect("the built-in table");
    let file = NamedText { name: "top.toml".to_owned(), text: text.to_owned() };
    read_design(&file, &table, None).unwrap_or_else(|problems| panic!("{}", problems[0].render(false)))
}

/// Utilisation of a check, the worst over all cases; none where it was not made or asked for.
fn used(top: &Top, id: &str) -> Option<f64> {
    let analysis = Analysis::new(top, DIVISIONS).expect("a layout");
    run(&analysis)
        .iter()
        .filter(|outcome| CHECKS[outcome.check].id() == id)
        .filter_map(|outcome| outcome.utilisation().map(|used| used.get::<ratio>()))
        .reduce(f64::max)
}

#[test]
fn more_stress_across_the_fibres_never_asks_for_less() {
    let criteria = Criteria::built_in().expect("the built-in criteria");
    let mpa = Pressure::new::<megapascal>;
    let strength = Strength { xt: mpa(480.0), xc: mpa(320.0), yt: mpa(30.0), yc: mpa(105.0), s: mpa(50.0) };
    let directed = |e2: f64| {
        let none = TemperatureCoefficient::default();
        let (e1, e2, g12, nu12) = (mpa(40e3), mpa(e2), mpa(4e3), Ratio::from(0.3));
        let elastic = Elastic { e1, e2, g12, nu12, alpha1: none, alpha2: none };
        Ply { elastic, strength: Some(strength), thickness: Length::new::<meter>(1e-3), angle: Angle::default() }
    };
    let looked = |ply: &Ply, s2: f64, s12: f64| {
        let stress = PlyStress { s1: mpa(0.0), s2: mpa(s2), s12: mpa(s12) };
        let reserve = TsaiWu::new(&strength).reserve(&stress, &PlyStress::default());
        let factor = ply_factor(&criteria, ply, &reserve).value;
        (factor, factor / reserve.factor.value)
    };
    let ply = directed(10e3);
    let mut before = 0.0;
    for tenth in 0..300 {
        let (factor, used) = looked(&ply, 0.1 * f64::from(tenth), 30.0);
        assert!((1.6..=2.6).contains(&factor) && used >= before, "{tenth}: {factor} {used} {before}");
        before = used;
    }
    assert!((looked(&ply, 10.0, 0.0).0 - 1.6).abs() < 1e-12 && (looked(&ply, 0.0, 10.0).0 - 2.6).abs() < 1e-12);
    // What has no one direction does not crack between fibres.
    assert!((looked(&directed(40e3), 10.0, 0.0).0 - 2.6).abs() < 1e-12);
}

#[test]
fn names_are_unique_and_plain_and_stand_in_the_readme() {
    let readme = read("README.md");
    let mut seen = BTreeSet::new();
    for check in CHECKS {
        let id = check.id();
        assert!(seen.insert(id), "{id} twice");
        assert!(id.chars().all(|letter| letter.is_ascii_lowercase() || letter == '-'), "{id}");
        assert!(readme.contains(&format!("`{id}`")), "README does not name {id}");
        for text in [check.title(), check.what(), check.formula(), check.limits(), check.citation().locator] {
            assert!(!text.trim().is_empty(), "{id} leaves something unsaid");
        }
        if let Some(on_plate) = check.on_plate() {
            assert!(on_plate.limits.starts_with("the top a shell that yields to shear"), "{id}");
            for (own, by_hand) in [
                (on_plate.formula, check.formula()),
                (on_plate.limits, check.limits()),
                (on_plate.citation.locator, check.citation().locator),
            ] {
                assert!(own != by_hand, "{id}: {own}");
            }
        }
    }
}

#[test]
fn a_utilisation_that_is_no_number_does_not_pass() {
    let metre = Length::new::<meter>(1.0);
    let nothing = Length::new::<meter>(0.0);
    let one = Ratio::new::<ratio>(1.0);
    assert!(Finding::compare(metre, metre, one, Basis::Typical).passes());
    assert!(!Finding::compare(nothing, nothing, one, Basis::Typical).passes(), "0/0");
    assert!(!Finding::compare(metre, nothing, one, Basis::Typical).passes(), "1/0");
}

#[test]
fn more_people_never_load_the_top_less() {
    let text = read("examples/survey-launch.toml");
    let with = |people: usize| top(&text.replace("people    = 1", &format!("people    = {people}")));
    let tops: Vec<Top> = (1..=4).map(with).collect();
    for id in ["ply-failure", "core-shear", "wrinkling", "tip-sag", "sag", "underfoot"] {
        let used: Vec<f64> = tops.iter().map(|top| used(top, id).expect("made")).collect();
        for pair in used.windows(2) {
            assert!(pair[1] >= pair[0] * (1.0 - 1e-12), "{id}: {used:?}");
        }
    }
}

#[test]
fn the_same_top_turned_by_a_quarter_bears_the_same() {
    let across = r#"
[top]
outline = { length = "2 m", width = "3 m" }
process = "hand"
resin = "polyester"
outer = ["mat 450 g/m2"]
core = { material = "pvc-foam", density = "80 kg/m3", thickness = "25 mm" }
inner = ["mat 450 g/m2"]
[[pipe]]
name = "one"
outside = "50 mm"
along = [["0.3 m", "0.2 m"], ["0.3 m", "2.8 m"]]
[[pipe]]
name = "two"
outside = "50 mm"
along = [["1.7 m", "0.2 m"], ["1.7 m", "2.8 m"]]
[service]
speed = "20 kn"
storm = "40 m/s"
trailer = "none"
slam = "2 g"
people = 1
walking = "no-walk"
underside = "open"
sun = "light"
"#;
    let along = across
        .replace("length = \"2 m\", width = \"3 m\"", "length = \"3 m\", width = \"2 m\"")
        .replace("[[\"0.3 m\", \"0.2 m\"], [\"0.3 m\", \"2.8 m\"]]", "[[\"0.2 m\", \"0.3 m\"], [\"2.8 m\", \"0.3 m\"]]")
        .replace(
            "[[\"1.7 m\", \"0.2 m\"], [\"1.7 m\", \"2.8 m\"]]",
            "[[\"0.2 m\", \"1.7 m\"], [\"2.8 m\", \"1.7 m\"]]",
        );
    assert_ne!(across, along);
    let (across, along) = (top(across), top(&along));
    for check in CHECKS {
        let (one, other) = (used(&across, check.id()), used(&along, check.id()));
        match (one, other) {
            (Some(one), Some(other)) => assert!((one - other).abs() <= 1e-9 * one, "{}: {one} {other}", check.id()),
            _ => assert_eq!(one, other, "{}", check.id()),
        }
    }
}

#[test]
fn thicker_core_and_denser_core_never_use_the_core_more_in_shear() {
    let text = read("examples/ferry-tender.toml");
    let used = |from: &str, values: [&str; 3]| -> Vec<f64> {
        let value = |value: &str| used(&top(&text.replace(from, value)), "core-shear").expect("made");
        values.into_iter().map(value).collect()
    };
    let thinner_first = ["thickness = \"1 in\"", "thickness = \"1.5 in\"", "thickness = \"2 in\""];
    let lighter_first = ["density = \"4 lb/ft3\"", "density = \"5 lb/ft3\"", "density = \"8 lb/ft3\""];
    for used in [used(thinner_first[1], thinner_first), used(lighter_first[1], lighter_first)] {
        assert!(used[0] > used[1] && used[1] > used[2], "{used:?}");
    }
}

#[test]
fn dark_paint_over_a_core_that_cannot_bear_it_is_no_pass() {
    let text = read("examples/night-watch.toml")
        .replace("pet-foam\", density = \"9.4 lb/ft3", "pvc-linear-foam\", density = \"5 lb/ft3");
    let top = top(&text);
    let table = read_tables(&[]).expect("the built-in table");
    let report = Report::new(&top, &table);
    assert_eq!(report.answer(), Answer::DoesNotHold);
    let hot = report.envelope.iter().filter(|outcome| CHECKS[outcome.check].id() == "hot-core");
    let reasons: Vec<&str> = hot
        .filter_map(|outcome| match &outcome.verdict {
            Verdict::NotEvaluated(reason) => Some(reason.as_str()),
            Verdict::Compared(_) => None,
        })
        .collect();
    assert!(reasons.iter().any(|reason| reason.contains("dark paint")), "{reasons:?}");
}

#[test]
fn a_landing_reckoned_outside_the_tests_of_its_formula_is_no_pass() {
    let text = read("examples/pilot-skiff.toml").replace("deadrise = \"20 deg\"", "deadrise = \"2 deg\"");
    let top = top(&text);
    let table = read_tables(&[]).expect("the built-in table");
    assert_ne!(Report::new(&top, &table).answer(), Answer::Holds);
}

#[test]
fn a_single_pipe_is_refused_in_words() {
    let mut top = top(&read("examples/ferry-tender.toml"));
    top.supports.truncate(1);
    let reason = Analysis::new(&top, DIVISIONS).expect_err("nothing to stand on");
    assert!(reason.contains("nowhere do two pipes run side by side"), "{reason}");
    let table = read_tables(&[]).expect("the built-in table");
    assert_eq!(Report::new(&top, &table).answer(), Answer::Open);
}

#[test]
fn an_overhang_beyond_the_pipes_hands_its_load_to_the_strip_beside_it() {
    let text = square_tender();
    // Push on a pipe by the strip beside the free end, at rest and under a person.
    let push = |end: &str| -> [f64; 2] {
        let text = text.replace("[\"3 in\", \"8 in\"]", &format!("[\"{end}\", \"8 in\"]"));
        let top = top(&text.replace("[\"3 in\", \"52 in\"]", &format!("[\"{end}\", \"52 in\"]")));
        let analysis = Analysis::new(&top, DIVISIONS).expect("a layout");
        ["own-weight", "people"].map(|id| {
            let case = analysis.cases.iter().position(|case| case.id == id).expect("a case");
            let beside = |line: usize| {
                let line = &analysis.lines[line];
                line.role == Role::Edge && line.station < Length::new::<meter>(0.5)
            };
            let strips = analysis.strips.iter().filter(|forces| forces.case == case && beside(forces.line));
            strips.flat_map(|forces| &forces.seats).map(|seat| seat.push.value.value).fold(0.0, f64::max)
        })
    };
    let (flush, short, long) = (push("0 in"), push("4 in"), push("12 in"));
    for case in 0..2 {
        assert!(flush[case] < short[case] && short[case] < long[case], "{flush:?} {short:?} {long:?}");
    }
    // A person at the tip of 12 in with a bay of 44 in behind presses 12/44 harder than one on the strip.
    assert!((long[1] - long[0]) / (flush[1] - flush[0]) > 1.2, "{flush:?} {long:?}");
}

#[test]
fn gear_loads_the_strip_that_it_stands_on() {
    let text = read("examples/survey-launch.toml");
    let at_rest = |mass: &str| {
        let top = top(&text.replace("mass        = \"22 lb\"", &format!("mass = \"{mass}\"")));
        let analysis = Analysis::new(&top, DIVISIONS).expect("a layout");
        let case = analysis.cases.iter().position(|case| case.id == "own-weight").expect("a case");
        let forces = analysis.strips.iter().filter(|forces| forces.case == case);
        forces
            .filter(|forces| !analysis.lines[forces.line].gear.is_empty())
            .flat_map(|forces| &forces.seats)
            .map(|seat| seat.push.value.value)
            .fold(0.0, f64::max)
    };
    let (light, heavy, heavier) = (at_rest("22 lb"), at_rest("122 lb"), at_rest("222 lb"));
    assert!(heavy > 1.1 * light, "{light} {heavy}");
    // Linear in the mass of the gear.
    assert!(((heavier - heavy) / (heavy - light) - 1.0).abs() < 0.05, "{light} {heavy} {heavier}");
}

#[test]
fn a_pipe_at_an_angle_takes_less_per_length_than_the_strip_per_width() {
    let text = square_tender();
    let oblique =
        text.replace("[[\"3 in\", \"8 in\"], [\"81 in\", \"8 in\"]]", "[[\"3 in\", \"2 in\"], [\"81 in\", \"20 in\"]]");
    assert_ne!(oblique, text);
    let top = top(&oblique);
    let table = read_tables(&[]).expect("the built-in table");
    let report = Report::new(&top, &table);
    let analysis = report.analysis.as_ref().expect("a layout");
    let per_width = analysis
        .strips
        .iter()
        .flat_map(|forces| analysis.lines[forces.line].seats.iter().zip(&forces.seats))
        .filter(|(seat, _)| seat.pipe == Some(0))
        .map(|(_, forces)| forces.push.value.value)
        .fold(0.0, f64::max);
    let load = frame_loads(&report)[0].hand.expect("a strip").push.value.value;
    // 18 in across in 78 in along: a strip rests on √(1 + (18/78)²) of its width.
    assert!((per_width / load - 1.0_f64.hypot(18.0 / 78.0)).abs() < 1e-9, "{per_width} {load}");
}

/// The worst finding of skin bending by the hand method at a kind of place.
fn bent_alone(top: &Top, at: fn(&Part) -> bool) -> Finding {
    let analysis = Analysis::new(top, DIVISIONS).expect("a layout");
    let number = CHECKS.iter().position(|check| check.id() == "skin-bending").expect("the check");
    let worst = run(&analysis).into_iter().filter(|outcome| outcome.check == number && at(&outcome.place.part));
    let findings = worst.filter_map(|outcome| match outcome.verdict {
        Verdict::Compared(finding) => Some(finding),
        Verdict::NotEvaluated(_) => None,
    });
    findings.max_by(|a, b| a.utilisation.value.total_cmp(&b.utilisation.value)).expect("a finding")
}

/// The tender on seats of a width, without backings, in service without people.
fn tender_on_seats(width: &str, criteria: &str) -> Top {
    let text = square_tender().replace("seat    = \"1.25 in\"", &format!("seat    = \"{width}\""));
    let (head, rest) = text.split_once("[[backing]]").expect("backings");
    let (_, rest) = rest.split_once("[[pipe]]").expect("pipes");
    top(&format!("{head}[[pipe]]{rest}\n[criteria]\n{criteria}").replace("people    = 1", "people    = 0"))
}

fn own_moment(finding: &Finding) -> f64 {
    let own = finding.terms.iter().find(|term| term.symbol == "m").expect("its moment");
    let Measure::MomentPerWidth(moment) = own.value else { panic!("a moment") };
    moment.value
}

#[test]
fn a_wide_seat_bends_the_skin_less_and_a_hard_one_as_its_edge_says() {
    let pipe = |part: &Part| matches!(part, Part::Support(_));
    let wide = bent_alone(&tender_on_seats("1.25 in", ""), pipe);
    let line = bent_alone(&tender_on_seats("0.01 in", ""), pipe);
    assert!(line.utilisation > wide.utilisation, "{:?} {:?}", line.utilisation, wide.utilisation);
    let half = bent_alone(&tender_on_seats("1.25 in", "seat-edge-share = \"0.5\""), pipe);
    let hard = bent_alone(&tender_on_seats("1.25 in", "seat-edge-share = \"1\""), pipe);
    let moment = own_moment;
    assert!(moment(&hard) > moment(&wide));
    // Nothing of a hard seat presses evenly: its width says nothing.
    let narrow = bent_alone(&tender_on_seats("0.01 in", "seat-edge-share = \"1\""), pipe);
    approx::assert_relative_eq!(moment(&narrow), moment(&hard), max_relative = 1e-9);
    assert!(wide.utilisation < half.utilisation && half.utilisation < hard.utilisation);
}

#[test]
fn a_skin_uses_no_more_beside_a_backing_than_its_two_parts() {
    let tender = top(&square_tender());
    let own = bent_alone(&tender, |part| matches!(part, Part::Region(_)));
    assert!(own.utilisation.value > 0.0);
    let less = bent_alone(&top(&format!("{}\n[criteria]\nbacking-edge-share = \"0\"", square_tender())), |_| true);
    assert!(less.utilisation < own.utilisation);
}

#[test]
fn forces_at_the_edge_of_a_backing_are_those_of_both_sides() {
    let tender = top(&square_tender());
    let analysis = Analysis::new(&tender, DIVISIONS).expect("a layout");
    let mut edges = 0;
    for forces in &analysis.strips {
        for edge in &forces.edges {
            edges += 1;
            for side in [Region::Field, Region::Backing(edge.backing)] {
                let side = forces.regions.iter().find(|of| of.region == side).expect("a side");
                assert!(edge.shear.value <= side.shear.value * (1.0 + 1e-9));
                assert!(edge.sagging.value <= side.sagging.value * (1.0 + 1e-9));
                assert!(edge.hogging.value <= side.hogging.value * (1.0 + 1e-9));
            }
        }
        // Away from both sides nothing larger may be had at the edges alone: some shear is there under every load.
        assert!(forces.edges.is_empty() || forces.edges.iter().any(|edge| edge.shear.value.value > 0.0));
    }
    assert!(edges > 0);
}

#[test]
fn the_plate_sees_the_skins_bent_alone_at_its_own_edges() {
    let table = read_tables(&[]).expect("the built-in table");
    let tender = top(&square_tender());
    let report = Report::new(&tender, &table);
    let number = CHECKS.iter().position(|check| check.id() == "skin-bending").expect("the check");
    let method =
        report.analysis.as_ref().expect("an analysis").whole.as_ref().expect("a plate").as_ref().expect("a solution");
    for forces in &method.cases {
        for edge in &forces.edges {
            let field = forces.regions.iter().find(|of| of.region == Region::Field).expect("a field");
            let most = |of: &RegionPeaks| of.shears().map(|peak| peak.state.shear_size().value).fold(0.0, f64::max);
            // Under people an edge keeps shear that for the field is punching.
            let people = report.analysis.as_ref().expect("an analysis").cases[forces.case].people.is_some();
            assert!(most(edge) > 0.0 && (people || most(edge) <= most(field) * (1.0 + 1e-9)));
        }
        assert_eq!(forces.edges.len(), 2);
    }
    assert!(report.envelope.iter().any(|outcome| outcome.check == number && outcome.method == Method::Plate));
}

#[test]
fn load_cases_of_which_nothing_is_known_are_said_before_anything_else() {
    let table = read_tables(&[]).expect("the built-in table");
    let text = read("examples/survey-launch.toml");
    let said = |sun: &str| {
        let top = top(&text.replace("sun       = \"light\"", &format!("sun       = \"{sun}\"")));
        let report = Report::by_hand(&top, &table);
        let open = report.analysis.as_ref().expect("an analysis").open_cases.len();
        (to_text(&report, false, 80), open)
    };
    let (light, none) = said("light");
    assert!(none == 0 && !light.contains("could not be looked at") && !light.contains("NOT ALL OF IT"), "{light}");
    let (dark, open) = said("dark");
    assert!(open > 0);
    let words = dark.split_whitespace().collect::<Vec<_>>().join(" ");
    let at = |what: &str| words.find(what).unwrap_or_else(|| panic!("{what}: {words}"));
    assert!(at(&format!("{open} load cases could not be looked at")) < at("Checks, worst first"));
    assert!(at("NOT ALL OF IT") > at("What the frame and its fixings must take"));
    assert!(words.contains("one person anywhere"), "{words}");
}

#[test]
fn parts_that_do_each_other_harm_are_named() {
    let table = read_tables(&[]).expect("the built-in table");
    let said = |text: &str| cautions(&Report::by_hand(&top(text), &table)).join("\n");
    let text = read("examples/survey-launch.toml");
    let plain = said(&text);
    assert!(
        !plain.contains("carbon") && !plain.contains("lie on one another") && !plain.contains("Seats far wider"),
        "{plain}"
    );
    let (from, to) = (text.find("resin").expect("a resin"), text.find("edge").expect("an edge"));
    let inner = "resin = \"epoxy-post-cured\"\nouter = [\"paint\", \"3 x biaxial 300 g/m2 @ 0 deg\"]\n\
        core = { material = \"pvc-foam\", density = \"7 lb/ft3\", thickness = \"2 in\" }\n\
        inner = [\"2 x carbon-woven 200 g/m2 @ 0 deg, fibre 60 %\"]\n";
    let carbon = said(&format!("{}{inner}{}", &text[..from], &text[to..]));
    assert!(carbon.contains("Aluminium against a carbon skin (port rail, middle rail, starboard rail)"), "{carbon}");
    let from = text.find("[[backing]]").expect("a backing");
    let to = from + text[from..].find("\n[[").expect("what follows") + 1;
    let twin = text[from..to].replacen("name     = \"", "name     = \"second ", 1);
    let doubled = said(&format!("{}{twin}{}", &text[..to], &text[to..]));
    assert!(doubled.contains("Backings lie on one another: port strip and second port strip."), "{doubled}");
    // Across the wiring of 0.84 in, in a core of 2 in.
    let lamp = "[[conduit]]\nname = \"lamp\"\ndiameter = \"0.5 in\"\nalong = [[\"20 in\", \"20 in\"], [\"20 in\", \"30 in\"]]\n\n[[pipe]]";
    let crossed = said(&text.replacen("[[pipe]]", lamp, 1));
    let words = "Conduits cross or meet: wiring and lamp at x 20.0 in, y 24.0 in, 0.660 in of the core left there";
    assert!(crossed.contains(words) && !plain.contains("Conduits cross"), "{crossed}");
    let wide = said(&text.replacen("seat    = \"1.5 in\"", "seat    = \"9 in\"", 1));
    assert!(wide.contains("Seats far wider than their pipes: port rail (9.00 in)."), "{wide}");
}

/// Nobody holds on to the rectangle round an angled top where the top itself has ended.
#[test]
fn hands_hold_on_where_the_top_ends() {
    let outline = "points = [[\"0 in\", \"0 in\"], [\"108 in\", \"0 in\"], [\"108 in\", \"72 in\"], [\"54 in\", \"72 in\"], \
                   [\"54 in\", \"48 in\"], [\"0 in\", \"48 in\"]]";
    let rail =
        |y: &str| format!("[[pipe]]\noutside = \"2 in\"\nalong = [[\"3 in\", \"{y}\"], [\"105 in\", \"{y}\"]]\n");
    let text = format!(
        "[top]\noutline = {{ {outline} }}\nprocess = \"hand\"\nresin = \"polyester\"\n\
         outer = [\"2 x biaxial 24 oz/yd2 @ 0 deg\"]\ninner = [\"2 x biaxial 24 oz/yd2 @ 0 deg\"]\n\
         core = {{ material = \"pvc-foam\", density = \"5 lb/ft3\", thickness = \"1.5 in\" }}\n{}{}\
         [service]\nspeed = \"none\"\nstorm = \"none\"\ntrailer = \"none\"\nslam = \"none\"\npeople = 0\nwalking = \"no-walk\"\n\
         underside = \"open\"\nsun = \"none\"\n",
        rail("9 in"),
        rail("40 in")
    );
    let top = top(&text);
    let analysis = Analysis::new(&top, DIVISIONS).expect("a layout");
    let hair = Length::new::<meter>(1e-6);
    let outcomes = run(&analysis);
    let by_hands =
        outcomes.iter().filter(|outcome| outcome.case.is_some_and(|case| analysis.cases[case].hand.is_some()));
    let places: Vec<_> = by_hands.filter_map(|outcome| outcome.place.load_at).collect();
    assert!(places.iter().all(|at| top.outline.within_by(*at) > -hair), "{places:?}");
    // 8 in of top hang over the rail beside the notch, 9 in on the other side, which a corner does not end.
    assert!(places.iter().any(|at| at.x.value < 1.3 && at.y.value > 1.15), "{places:?}");
}

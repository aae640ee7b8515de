//! What `choose` answers, on searches made up by hand: what it says, that it keeps within a page, and that text, JSON and
//! table have the same numbers.

use std::fs;

use serde_json::Value;
use skinspan::{
    advice::{Change, Remedy},
    check::{CHECKS, Finding, Method, Outcome, Part, Place, Verdict},
    choice::{
        Always, Arrangement, Beside, Candidate, Cell, Chosen, Fate, Found, Grid, LeftOut, Limits, Open, Order, Space,
        Step, Tally,
    },
    input::{NamedText, read_design, read_tables},
    material::{Basis, MaterialTable},
    report::{Report, cautions, choice_to_csv, choice_to_json, choice_to_text},
    top::Top,
    units::{Dimensioned, Length, Mass, MassDensity, Ratio, System, parse},
};

fn table() -> MaterialTable {
    read_tables(&[]).expect("the built-in table")
}

fn top(name: &str) -> Top {
    let path = format!("{}/examples/{name}.toml", env!("CARGO_MANIFEST_DIR"));
    let text = fs::read_to_string(path).expect("an example");
    read_design(&NamedText { name: name.to_owned(), text }, &table(), None)
        .unwrap_or_else(|problems| panic!("{}", problems[0].render(false)))
}

fn of<Q: Dimensioned>(text: &str) -> Q {
    parse(text).unwrap_or_else(|error| panic!("{text}: {error}"))
}

fn check(id: &str) -> usize {
    CHECKS.iter().position(|check| check.id() == id).expect("a check")
}

fn worst(id: &str, method: Method, used: f64) -> Outcome {
    let finding = Finding::compare(Ratio::from(used), Ratio::from(1.0), Ratio::from(1.0), Basis::Typical);
    let place = Place::of(Part::Whole, None);
    Outcome { check: check(id), case: None, method, place, verdict: Verdict::Compared(finding) }
}

fn space(top: &Top) -> Space {
    let table = table();
    let thick: Vec<Length> = ["3/4 in", "1.5 in", "2 in"].map(of).to_vec();
    let dense: Vec<MassDensity> = ["5 lb/ft3", "7 lb/ft3"].map(of).to_vec();
    let families = [&top.core.family, table.core("san-foam").expect("SAN foam")];
    Space {
        arrangements: vec![Arrangement::own(top)],
        prices: None,
        cores: Space::sheets(top, families, Some(&thick), Some(&dense)),
        outer: vec![top.outer.clone()],
        inner: Space::skins(&top.inner),
        limits: Limits { thickness: Some(of("3 in")), ..Limits::default() },
        order: Order::Weight,
    }
}

fn found(candidate: Option<Candidate>, mass: &str, thickness: &str, sag: &str, governs: Outcome) -> Found {
    Found {
        candidate,
        mass: of(mass),
        frame: None,
        thickness: of(thickness),
        cost: None,
        holds: governs.passes(),
        fails: Vec::new(),
        open: Vec::new(),
        by_hand: governs.utilisation().map(|used| used * 0.75),
        by_plate: governs.utilisation(),
        governs: Some(governs),
        case: Some("One person anywhere".to_owned()),
        sag: Some(of(sag)),
    }
}

/// Two found, the first of another family with another inner skin.
fn chosen(top: &Top, space: &Space) -> Chosen {
    let san = space.cores.iter().position(|core| core.family.id == "san-foam").expect("SAN foam") + 1;
    let own = space.place_of(top).expect("the file's own is one of them");
    let first = Candidate { arrangement: 0, core: san, outer: 0, inner: 0 };
    let second = Candidate { core: san + 3, ..first };
    let grid = |family: &str| {
        let cell = |used: f64, id: &str| {
            Some(Cell { utilisation: Ratio::from(used), governs: check(id), by_both: used < 0.6 })
        };
        Grid {
            family: family.to_owned(),
            densities: ["5 lb/ft3", "7 lb/ft3"].map(of).to_vec(),
            thicknesses: ["3/4 in", "1.5 in", "2 in"].map(of).to_vec(),
            cells: vec![
                vec![None, cell(12.0, "core-shear"), cell(1.004, "hot-core")],
                vec![None, cell(f64::INFINITY, "core-shear"), cell(0.5, "hold-combined")],
            ],
        }
    };
    let step = |to: Beside, used: f64, added: Mass| Step {
        to,
        utilisation: Ratio::from(used),
        governs: check("core-shear"),
        added,
        by_both: (1.0..2.0).contains(&used),
    };
    let fails = |at_a_glance: bool| Fate::Fails { check: check("core-shear"), method: Method::Hand, at_a_glance };
    let tally = [
        (Fate::Beaten, 40),
        (fails(true), 30),
        (fails(false), 12),
        (Fate::Misfit("a conduit is as thick as the core"), 9),
        (Fate::Open(Some(check("ply-failure"))), 4),
        (Fate::OverLimit, 3),
        (Fate::Shown, 2),
    ];
    Chosen {
        of: 100,
        found: vec![
            found(Some(first), "190.5 lb", "1.7 in", "0.25 in", worst("core-shear", Method::Plate, 0.8)),
            found(Some(second), "201.25 lb", "1.2 in", "0.125 in", worst("sag", Method::Hand, 0.92)),
        ],
        own: found(Some(own), "215 lb", "2.2 in", "0.5 in", worst("core-shear", Method::Hand, 1.25)),
        tally: tally.map(|(fate, count)| Tally { fate, count }).to_vec(),
        grids: vec![grid("pvc-foam"), grid("san-foam")],
        steps: vec![
            step(Beside::Change(Change::CoreThickness(of("2.5 in"))), 0.5, of("12.5 lb")),
            step(Beside::InnerLess("biaxial 24 oz/yd2 @ 0 deg".to_owned()), 1.6, -of::<Mass>("14.5 lb")),
            step(Beside::Change(Change::CoreDensity(of("8 lb/ft3"))), f64::INFINITY, Mass::default()),
        ],
        stopped: false,
        left_out: Vec::new(),
        cannot: Vec::new(),
        always: Vec::new(),
        none_holds: false,
    }
}

/// As [`chosen`], in all ways that an answer may turn out.
fn all_ways(top: &Top) -> Vec<(Chosen, Space)> {
    let space = space(top);
    let usual = chosen(top, &space);
    let nothing = Chosen { found: Vec::new(), ..usual.clone() };
    let mut stopped = Chosen { stopped: true, ..usual.clone() };
    stopped.tally.push(Tally { fate: Fate::NotLookedAt, count: 60 });
    let mut own = usual.clone();
    own.own = found(space.place_of(top), "215 lb", "2.2 in", "0.5 in", worst("core-shear", Method::Hand, 0.5));
    own.found = vec![own.own.clone()];
    let mut blind = nothing.clone();
    blind.own =
        Found { governs: None, case: None, by_hand: None, by_plate: None, sag: None, candidate: None, ..blind.own };
    (blind.grids, blind.steps, blind.tally) = (Vec::new(), Vec::new(), Vec::new());
    let joint =
        || Open::Check { check: check("clamped-joint"), reason: "wall: the joint must take 300 N m/m".to_owned() };
    let mut clamped = usual.clone();
    clamped.cannot = vec![joint()];
    for found in clamped.found.iter_mut().chain([&mut clamped.own]) {
        (found.holds, found.open) = (false, vec![joint()]);
    }
    let cut = Chosen { left_out: vec![LeftOut::ByBoth], ..usual.clone() };
    stopped.left_out = vec![LeftOut::Grids, LeftOut::Steps];
    let ordered = |order: Order| (usual.clone(), Space { order, ..space.clone() });
    let mut ways: Vec<(Chosen, Space)> = [Order::Weight, Order::Thickness, Order::Sag].map(ordered).to_vec();
    ways.extend([nothing, stopped, own, blind, clamped, cut].map(|chosen| (chosen, space.clone())));
    ways
}

#[test]
fn the_answer_reads_so() {
    let top = top("survey-launch");
    let space = space(&top);
    let text = choice_to_text(&chosen(&top, &space), &space, &top, 80);
    let said = text.split("\nWhat counts").next().unwrap_or_default();
    assert_eq!(said, include_str!("choice_report.txt"), "{said}");
}

#[test]
fn no_line_is_wider_than_its_page_and_none_has_a_style() {
    for system in [System::Us, System::Si] {
        let top = Top { report: system, ..top("survey-launch") };
        for (chosen, space) in all_ways(&top) {
            for (asked, width) in [(1, 60), (60, 60), (80, 80), (97, 97), (120, 120), (500, 120)] {
                let text = choice_to_text(&chosen, &space, &top, asked);
                for line in text.lines() {
                    assert!(line.chars().count() <= width, "{asked}: {line}");
                    assert!(!line.contains('\u{1b}') && !line.contains("NaN") && !line.contains("inf"), "{line}");
                    assert_eq!(line, line.trim_end());
                }
            }
        }
    }
}

#[test]
fn the_same_search_gives_the_same_bytes() {
    let top = top("survey-launch");
    for (chosen, space) in all_ways(&top) {
        let all = || {
            let json = choice_to_json(&chosen, &space, &top).to_string();
            (choice_to_text(&chosen, &space, &top, 80), json, choice_to_csv(&chosen, &space, &top))
        };
        assert_eq!(all(), all());
    }
}

#[test]
fn the_answer_fits_what_was_found() {
    let top = top("survey-launch");
    let said: Vec<String> = all_ways(&top)
        .iter()
        .map(|(chosen, space)| {
            let json = choice_to_json(chosen, space, &top);
            let sentences = json["answer"].as_array().expect("sentences").iter().filter_map(Value::as_str);
            sentences.collect::<Vec<_>>().join(" ")
        })
        .collect();
    let [weight, thickness, sag, nothing, stopped, own, blind, clamped, cut] = &said[..] else {
        panic!("{} answers", said.len())
    };
    assert!(
        weight.starts_with("Of 100 combinations the lightest that holds by both methods is SAN foam of 5.00 lb/ft³")
    );
    assert!(weight.contains("That is 24.5 lb lighter and 0.500 in thinner than the file's own, which does not hold"));
    assert!(weight.contains("It holds but for its fixings: not checked for port rail, middle rail, starboard rail"));
    assert!(thickness.contains("the thinnest that holds"));
    assert!(
        sag.starts_with("Of 100 combinations the one that sags least of those that hold by both methods is SAN foam")
    );
    assert!(nothing.starts_with(
        "None of 100 combinations holds by both methods. Most are lost for this: ruled out by core shear, hand method (42 of \
         100). The file's own does not hold (215 lb bare"
    ));
    assert!(stopped.starts_with("STOPPED: 40 of 100 combinations were looked at"), "{stopped}");
    assert!(stopped.contains(
        "Not worked out, since it was stopped: the table of density and thickness, the steps from the first of those shown."
    ));
    assert!(
        cut.starts_with("Not worked out, since it was stopped: what both methods say of the borders of the tables")
    );
    assert!(clamped.starts_with(
        "NOTHING CAN PASS FULLY: the clamped joint cannot be judged here, whatever is laid up; what follows is by all else. Of 100 \
         combinations the lightest that holds by both methods is SAN foam"
    ));
    // The file's own fails by what can be judged.
    assert!(clamped.contains("the file's own, which does not hold"), "{clamped}");
    assert!(stopped.contains("Of the 40 combinations that were looked at the lightest"));
    assert!(own.contains("is what the file has."));
    assert!(own.ends_with("So nothing that holds beats the file's own in weight and thickness."));
    assert!(blind.starts_with("None of 100 combinations holds by both methods. The file's own is not shown to hold"));
    assert!(blind.ends_with("nothing could be checked."));
}

/// The cells of lines as RFC 4180 has them.
fn cells(text: &str) -> Vec<Vec<String>> {
    let (mut lines, mut line, mut cell, mut quoted) = (Vec::new(), Vec::new(), String::new(), false);
    let mut letters = text.chars().peekable();
    while let Some(letter) = letters.next() {
        match letter {
            '"' if quoted && letters.peek() == Some(&'"') => cell.extend(letters.next()),
            '"' => quoted = !quoted,
            ',' if !quoted => line.push(std::mem::take(&mut cell)),
            '\r' if !quoted => assert_eq!(letters.peek(), Some(&'\n')),
            '\n' if !quoted => {
                line.push(std::mem::take(&mut cell));
                lines.push(std::mem::take(&mut line));
            }
            other => cell.push(other),
        }
    }
    assert!(cell.is_empty() && line.is_empty() && !quoted);
    lines
}

fn near(a: f64, b: f64) -> bool {
    (a - b).abs() <= 1e-8 * b.abs()
}

#[test]
fn text_and_json_and_table_have_the_same_numbers() {
    let top = top("survey-launch");
    let space = space(&top);
    let chosen = chosen(&top, &space);
    let json = choice_to_json(&chosen, &space, &top);
    let lines = cells(&choice_to_csv(&chosen, &space, &top));
    let text = choice_to_text(&chosen, &space, &top, 120);
    assert_eq!(lines.len(), 1 + chosen.found.len());
    assert!(lines.iter().all(|line| line.len() == 22));
    let column = |head: &str| lines[0].iter().position(|cell| cell == head).unwrap_or_else(|| panic!("{head}"));
    let rows: Vec<&str> = text.lines().filter(|line| line.starts_with("  1  ") || line.starts_with("  2  ")).collect();
    for (number, found) in chosen.found.iter().enumerate() {
        let (one, row) = (&json["found"][number], &lines[number + 1]);
        let printed: Vec<&str> = rows[number].split_whitespace().collect();
        let of = |head: &str| row[column(head)].parse::<f64>().unwrap_or_else(|_| panic!("{head}"));
        for (key, head, place, decimals) in [
            ("mass", "weight (lb)", 1, 2),
            ("mass_per_area", "weight per area (lb/ft2)", 2, 2),
            ("thickness", "thickness (in)", 3, 3),
            ("sag", "sag (in)", 4, 3),
        ] {
            let value = one[key]["value"].as_f64().expect("a number");
            assert!(
                head.ends_with(&format!("({})", one[key]["unit"].as_str().unwrap_or("").replace('²', "2"))),
                "{head}"
            );
            assert!(near(of(head), value), "{head}");
            assert_eq!(printed[place], format!("{value:.decimals$}"), "{head}");
        }
        let used = one["utilisation"].as_f64().expect("a number");
        assert!(near(used, found.governs.as_ref().and_then(Outcome::utilisation).expect("used").value));
        assert!(near(of("used (%)"), used * 100.0));
        assert_eq!(printed[5], format!("{:.0}", used * 100.0));
        assert!(
            near(of("margin"), 1.0 / used - 1.0) && near(one["margin"].as_f64().expect("a number"), 1.0 / used - 1.0)
        );
        assert!(near(of("used by hand (%)"), one["utilisation_hand"].as_f64().expect("a number") * 100.0));
        assert!(near(of("core thickness (in)"), one["core_thickness"]["value"].as_f64().expect("a number")));
        let layers = one["outer"].as_array().expect("layers");
        assert_eq!(layers.len(), 3);
        assert!(
            layers.iter().all(|layer| row[column("outer skin")].contains(layer["layer"].as_str().expect("a text")))
        );
        assert_eq!((layers[2]["times"].as_u64(), one["family"].as_str()), (Some(2), Some("san-foam")));
    }
    assert!(near(json["found"][0]["added_mass"]["value"].as_f64().expect("a number"), -24.5));
    let (tried, tally) = (json["steps"]["tried"].as_array(), json["tally"].as_array());
    let added: Vec<Option<f64>> =
        tried.expect("steps").iter().map(|step| step["added_mass"]["value"].as_f64()).collect();
    assert_eq!(added, [Some(-14.5), Some(0.0), Some(12.5)]);
    assert!(near(json["steps"]["utilisation"].as_f64().expect("a number"), 0.6));
    let counted: u64 = tally.expect("a tally").iter().filter_map(|one| one["count"].as_u64()).sum();
    assert_eq!(counted, 100);
    assert!(json["grids"][1]["cells"][0][0].is_null() && json["grids"][1]["cells"][1][1]["utilisation"].is_null());
    assert_eq!(json["grids"][1]["cells"][0][2]["holds"], Value::Bool(false));
}

#[test]
fn every_key_is_described() {
    let top = top("survey-launch");
    let (mut chosen, space) = all_ways(&top).remove(0);
    chosen.cannot = vec![Open::Case { id: "storm", title: "Storm".to_owned(), reason: "not known".to_owned() }];
    let remedy = Remedy {
        change: Change::CoreDensity(of("8 lb/ft3")),
        governs: check("washer-crush"),
        utilisation: Ratio::from(0.97),
        added: Mass::default(),
        breaks: None,
    };
    chosen.always = vec![Always { remedies: vec![remedy], ..crushed_under_washers() }];
    chosen.found[0].fails = vec![chosen.always[0].least.clone()];
    let json = choice_to_json(&chosen, &space, &top);
    let described = include_str!("../src/report/choice/json.rs").split("#[must_use]").next().unwrap_or_default();
    let all = [
        &json,
        &json["found"][0],
        &json["grids"][0],
        &json["grids"][0]["cells"][1][2],
        &json["steps"],
        &json["steps"]["tried"][0],
        &json["tally"][0],
        &json["cannot"][0],
    ];
    for key in all.iter().flat_map(|part| part.as_object().expect("an object").keys()) {
        assert!(described.contains(&format!("`{key}`")), "{key}");
    }
    // Others have keys of the same names: these must stand in the row, or after the name, of their own.
    let row = described.lines().find(|line| line.starts_with("/// | `always`")).expect("a row");
    let fails =
        described.split("`fails` (").nth(1).and_then(|after| after.split(')').next()).expect("what `fails` has");
    for (part, own) in
        [(&json["always"][0], row), (&json["always"][0]["remedies"][0], row), (&json["found"][0]["fails"][0], fails)]
    {
        for key in part.as_object().expect("an object").keys() {
            assert!(own.contains(&format!("`{key}`")), "{key} in {own}");
        }
    }
}

/// The cautions of the file's own are those of `check`, word for word.
#[test]
fn cautions_are_those_of_check() {
    let (table, launch) = (table(), all_ways(&top("survey-launch")).remove(0));
    for name in ["survey-launch", "galley-roof", "night-watch", "bow-wing"] {
        let top = top(name);
        let report = Report::new(&top, &table);
        let space = Space { cores: Vec::new(), outer: Vec::new(), inner: Vec::new(), ..launch.1.clone() };
        let mut chosen = Chosen { found: Vec::new(), ..launch.0.clone() };
        chosen.own = Found { candidate: None, governs: report.checks.first().cloned(), ..chosen.own };
        chosen.tally.clear();
        let json = choice_to_json(&chosen, &space, &top);
        let said: Vec<&str> = json["cautions"].as_array().expect("texts").iter().filter_map(Value::as_str).collect();
        assert_eq!(said, cautions(&report), "{name}");
    }
}

/// What cannot be judged stands beside each of them, in words and for machines; what pipes weigh only where it counts.
#[test]
fn what_is_open_and_what_pipes_weigh_is_said_of_each() {
    let top = top("survey-launch");
    let (mut chosen, mut space) = all_ways(&top).remove(7);
    let text = |chosen: &Chosen, space: &Space| choice_to_text(chosen, space, &top, 120);
    let said = text(&chosen, &space);
    assert!(said.contains("Pass by both methods all that can be judged, none beaten"), "{said}");
    assert_eq!(said.matches("      open   clamped joint: wall: the joint must take 300 N m/m").count(), 3, "{said}");
    let json = choice_to_json(&chosen, &space, &top);
    assert_eq!(json["found"][0]["open"][0]["check"], "clamped-joint");
    assert_eq!(
        (&json["cannot"][0]["check"], &json["found"][0]["holds"]),
        (&Value::from("clamped-joint"), &Value::Bool(false))
    );
    // One pipe fewer: the weights of both are known.
    let mut other = Arrangement::own(&top);
    other.top.supports.pop();
    other.left_out = vec![1];
    space.arrangements.push(other);
    let frames = space.frames().expect("the pipes of the example have wall and alloy");
    for found in chosen.found.iter_mut().chain([&mut chosen.own]) {
        let of = found.candidate.as_ref().map_or(0, |candidate| candidate.arrangement);
        found.frame = Some(frames[of]);
    }
    let two = chosen.found[1].candidate.as_mut().expect("one of the space");
    two.arrangement = 1;
    chosen.found[1].frame = Some(frames[1]);
    let said = text(&chosen, &space);
    let pipes = |mass: Mass| format!("      pipes  {}, which count", skinspan::units::show(mass, System::Us));
    assert!(said.contains(&pipes(frames[0])) && said.contains(&pipes(frames[1])), "{said}");
    assert!(said.contains("without middle strip, which lay along a pipe that is gone"), "{said}");
    let whole = skinspan::units::both(chosen.found[0].mass + frames[0], System::Us);
    assert!(said.replace("\n  ", " ").contains(&format!("bare, {whole} with its pipes, and is")), "{said}");
    let lines = cells(&choice_to_csv(&chosen, &space, &top));
    assert_eq!(lines[0][19], "pipes (lb)");
    assert_eq!((&*lines[0][20], &*lines[1][20]), ("not judged", "the clamped joint"));
    assert!(near(lines[2][19].parse().expect("a number"), frames[1].value / 0.45359237), "{:?}", lines[2]);
}

/// What fails in all that were judged, made up.
fn crushed_under_washers() -> Always {
    Always {
        check: check("washer-crush"),
        of: Some("radar".to_owned()),
        judged: 18,
        least: worst("washer-crush", Method::Hand, 1.37),
        case: Some("A person holding on to gear".to_owned()),
        remedies: Vec::new(),
        nearest: None,
    }
}

/// What fails whatever is laid up comes first: of how many judged, what to change; and no more is called proven than is.
#[test]
fn what_fails_whatever_is_laid_up_comes_first() {
    let top = top("survey-launch");
    let (mut chosen, space) = all_ways(&top).remove(0);
    let always = crushed_under_washers();
    let least = always.least.clone();
    chosen.always = vec![always];
    chosen.none_holds = true;
    chosen.tally.push(Tally { fate: Fate::OverLimit, count: 4321 });
    for found in chosen.found.iter_mut().chain([&mut chosen.own]) {
        (found.holds, found.fails) = (false, vec![least.clone()]);
    }
    let plain = |chosen: &Chosen| {
        let text = choice_to_text(chosen, &space, &top, 80);
        text.split_whitespace().collect::<Vec<_>>().join(" ")
    };
    let said = plain(&chosen);
    let over: usize = chosen.tally.iter().filter(|tally| tally.fate == Fate::OverLimit).map(|tally| tally.count).sum();
    assert!(
        over >= 4321 && said.contains(&format!("was looked at, but for {over} that are over the limits")),
        "{said}"
    );
    assert!(said.contains("Crush under washer of radar: 137 % used at the least, in all 18 that were judged for it"));
    assert!(said.contains("No single change of fixings, backing or pipes that was tried makes it pass."), "{said}");
    assert!(said.contains("Pass by both methods all but what fails whatever is laid up, none beaten"), "{said}");
    assert!(!said.contains("some may pass it all the same"));
    let json = choice_to_json(&chosen, &space, &top);
    assert_eq!((&json["always"][0]["of"], &json["always"][0]["judged"]), (&Value::from("radar"), &Value::from(18)));
    assert_eq!(
        (&json["none_holds"], &json["found"][0]["fails"][0]["check"]),
        (&Value::Bool(true), &json["always"][0]["check"])
    );
    // What was not looked at may hold.
    chosen.none_holds = false;
    let said = plain(&chosen);
    assert!(said.contains("NOTHING WAS FOUND TO HOLD.") && said.contains("some may pass it all the same"), "{said}");
    assert!(!said.contains("NOTHING HOLDS"));
}

//! A foot that bends pulls its bolts harder: by how much, from where they stand in it.

use super::{
    close,
    fastener::{GIVEN, rivet, through},
    finding, patch, read, term,
    whole::example,
};
use skinspan::{
    advice::fittings,
    analysis::{Analysis, DIVISIONS},
    check::{CHECKS, prying, run},
};

/// Two bolts 30 mm to either side of the middle of the patch's disc of 100 mm.
fn factor(foot: &str) -> f64 {
    let text = patch("", &through("")).replace(
        "points = [[\"0 mm\", \"0 mm\"]], clamped = \"6 mm\"",
        &format!("points = [[\"30 mm\", \"0 mm\"], [\"-30 mm\", \"0 mm\"]], clamped = \"6 mm\"{foot}"),
    );
    let top = read(&text);
    let own = term(&finding(&top, "fastener-tension", GIVEN), "q");
    let analysis = Analysis::new(&top, DIVISIONS).expect("a patch");
    let bolts = [0, 1].map(|number| prying(&top, &analysis.mounts[0], number).factor.value);
    assert!(bolts.iter().all(|bolt| (bolt - own).abs() < 1e-12), "{bolts:?} {own}");
    own
}

#[test]
fn measures_of_the_foot_say_how_hard_it_pries() {
    // 30 mm from the middle, 20 mm from the edge: 1 + 3 × 900/(40 × 110).
    close(factor(""), 1.613_64);
    close(factor(", to_body = \"24 mm\""), 1.0 + 3.0 * 576.0 / (40.0 * 92.0));
    close(factor(", to_edge = \"12 mm\""), 1.0 + 3.0 * 900.0 / (24.0 * 102.0));
    // 1.26 worked out is less than a foot that bends is taken to have at least.
    close(factor(", to_body = \"15 mm\""), 1.3);
    close(factor(", stiff = true"), 1.0);
}

#[test]
fn the_nearest_edge_of_a_rectangle_counts() {
    let text = patch("", &through(""))
        .replace("points = [[\"0 mm\", \"0 mm\"]]", "points = [[\"40 mm\", \"30 mm\"], [\"-40 mm\", \"-30 mm\"]]");
    let text =
        text.replace("footing = { diameter = \"100 mm\" }", "footing = { length = \"200 mm\", width = \"110 mm\" }");
    // 50 mm from the middle, 60 mm from the end, 25 mm from the side.
    close(term(&finding(&read(&text), "fastener-tension", GIVEN), "q"), 1.0 + 3.0 * 2500.0 / (50.0 * 175.0));
}

#[test]
fn a_tab_of_a_pipe_that_nobody_measured_pries_hard() {
    let q = |foot: &str| {
        let top = example("rail-row", &[(", to_body = \"5/8 in\", to_edge = \"5/8 in\"", foot)]);
        let analysis = Analysis::new(&top, DIVISIONS).expect("a layout");
        let all = run(&analysis);
        let own = all.iter().find(|outcome| CHECKS[outcome.check].id() == "insert-pull-out").expect("an outcome");
        let skinspan::check::Verdict::Compared(finding) = &own.verdict else { panic!("{own:?}") };
        term(finding, "q")
    };
    // An edge half as far as the body: 1 + 3/3.5.
    close(q(""), 1.86);
    close(q(", to_body = \"20 mm\""), 1.86);
    close(q(", to_body = \"20 mm\", to_edge = \"10 mm\""), 1.0 + 3.0 * 400.0 / (20.0 * 70.0));
    close(q(", to_body = \"20 mm\", to_edge = \"10 mm\", stiff = true"), 1.0);
}

/// A test on scrap has to show what the fixing is pulled by, prying and all.
#[test]
fn the_pull_that_a_test_has_to_show_has_prying_in_it() {
    let pull = |foot: &str| {
        let text = patch("", &rivet()).replace(
            "points = [[\"0 mm\", \"0 mm\"]], clamped = \"6 mm\"",
            &format!("points = [[\"30 mm\", \"0 mm\"], [\"-30 mm\", \"0 mm\"]]{foot}"),
        );
        let top = read(&text);
        let analysis = Analysis::new(&top, DIVISIONS).expect("a patch");
        fittings(&analysis)[0].test.expect("a rivet is tested").pull.value
    };
    close(pull("") / pull(", stiff = true"), 1.613_64);
}

/// A measured value of the table is a characteristic one: that of the sample has to reach what is asked for, not its mean.
#[test]
fn a_test_is_judged_by_the_characteristic_value_of_its_sample() {
    let table = skinspan::input::read_tables(&[]).expect("the table");
    let of = |samples: &str| {
        let top = read(&format!("{}\n[criteria]\npull-test-samples = \"{samples}\"\n", patch("", &rivet())));
        let analysis = Analysis::new(&top, DIVISIONS).expect("a patch");
        let test = fittings(&analysis)[0].test.expect("a rivet is tested");
        close((test.characteristic / test.pull).value, (test.factor / test.left).value);
        let report = skinspan::report::Report::by_hand(&top, &table);
        let text = skinspan::report::to_text(&report, false, 120).split_whitespace().collect::<Vec<_>>().join(" ");
        (test.below_mean.map(|factor| factor.value), text)
    };
    let (six, text) = of("6");
    assert_eq!(six, Some(2.18));
    assert!(
        text.contains(
            "their characteristic value, mean − 2.18 × standard deviation (EN 1990 table D1, from memory), has to reach"
        ),
        "{text}"
    );
    assert!(!text.contains("their mean has to reach"), "{text}");
    let (two, text) = of("2");
    assert_eq!(two, None);
    assert!(text.contains("for which three are the least"), "{text}");
}

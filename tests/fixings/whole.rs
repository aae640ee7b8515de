//! Mounts as a whole: what a review found to go wrong must not come back.

use skinspan::{
    analysis::{Analysis, DIVISIONS, MountOn},
    check::{CHECKS, Outcome, run},
    input::{NamedText, read_design, read_tables},
    top::Top,
    units::Force,
};
use uom::si::force::newton;

fn example(name: &str, changes: &[(&str, &str)]) -> Top {
    let path = format!("{}/examples/{name}.toml", env!("CARGO_MANIFEST_DIR"));
    let mut text = std::fs::read_to_string(path).expect("an example");
    for (from, to) in changes {
        assert!(text.contains(from), "{from}");
        text = text.replace(from, to);
    }
    let table = read_tables(&[]).expect("the built-in table");
    read_design(&NamedText { name: name.to_owned(), text }, &table, None)
        .unwrap_or_else(|all| panic!("{}", all[0].render(false)))
}

fn used(top: &Top, check: &str, case: Option<&str>) -> f64 {
    let analysis = Analysis::new(top, DIVISIONS).expect("a layout");
    let number = CHECKS.iter().position(|known| known.id() == check).expect("a check");
    let all = run(&analysis);
    let own = all.iter().filter(|outcome| outcome.check == number);
    let own =
        own.filter(|outcome| case.is_none_or(|id| outcome.case.is_some_and(|case| analysis.cases[case].id == id)));
    own.filter_map(Outcome::utilisation).map(|used| used.value).fold(0.0, f64::max)
}

/// A strip that ends near a footing has less of it; a few millimetres more must not turn the answer round.
#[test]
fn a_longer_strip_changes_little_by_little() {
    let at = |end: i32| {
        let along = format!("[[\"50 mm\", \"300 mm\"], [\"{end} mm\", \"300 mm\"]]");
        let wide = ("length = \"800 mm\"", "length = \"2400 mm\"");
        let middle = i32::midpoint(end, 50);
        let gear = format!("at        = [\"{middle} mm\", \"300 mm\"]");
        example(
            "whip-rail-mended",
            &[
                wide,
                ("[[\"50 mm\", \"300 mm\"], [\"750 mm\", \"300 mm\"]]", &along),
                ("at        = [\"400 mm\", \"300 mm\"]", &gear),
            ],
        )
    };
    let all: Vec<f64> = (0..16).map(|step| used(&at(600 + 80 * step), "skin-beside-backing", None)).collect();
    for pair in all.windows(2) {
        assert!((pair[1] / pair[0] - 1.0).abs() < 0.35, "{all:?}");
    }
}

/// Two forces that the file gives act one at a time: one must not take the other away.
#[test]
fn given_forces_do_not_cancel() {
    let force = |up: &str| format!("given = [{{ up = \"{up}\" }}]\ngrab_height = \"10 in\"");
    let both = "given = [{ up = \"2000 lbf\" }, { up = \"-2000 lbf\" }]\ngrab_height = \"10 in\"";
    let one = example("radar-pad", &[("grab_height = \"10 in\"", &force("2000 lbf"))]);
    let two = example("radar-pad", &[("grab_height = \"10 in\"", both)]);
    let (one, two) = (used(&one, "pull-through", Some("given-1")), used(&two, "pull-through", Some("given-1")));
    assert!(one > 0.9 && (one - two).abs() < 1e-12, "{one} {two}");
}

/// A boat that rolls throws its top sideways, gear or not.
#[test]
fn a_top_without_gear_shears_its_fixings() {
    let top = example("rail-row", &[]);
    let analysis = Analysis::new(&top, DIVISIONS).expect("a layout");
    let rolling = analysis.cases.iter().position(|case| case.id == "rolling").expect("a case");
    let fixings: u32 = analysis.mounts.iter().map(|mount| u32::try_from(mount.places.len()).expect("a few")).sum();
    let forces = analysis.mount_forces.iter().find(|forces| forces.case == rolling).expect("forces");
    // sin 25° + 25° (2π/4 s)² 2.5 m / g = 0.697, shared evenly by all of them.
    let even = top.weight().bare.value * 9.806_65 * 0.697_06 / f64::from(fixings);
    assert!(
        (forces.shears[0].get::<newton>() / even - 1.0).abs() < 1e-3,
        "{} {even}",
        forces.shears[0].get::<newton>()
    );
}

/// A foot that reaches beyond its backing presses on the backing alone: its bolts are pulled harder.
#[test]
fn a_foot_beyond_its_backing_pulls_harder() {
    let pull = |width: &str| {
        let top = example("radar-pad", &[("width    = \"16 in\"", &format!("width    = \"{width}\""))]);
        let analysis = Analysis::new(&top, DIVISIONS).expect("a patch");
        let grab = analysis.cases.iter().position(|case| case.id == "grab").expect("a case");
        let own = analysis.mount_forces.iter().find(|forces| forces.case == grab).expect("forces");
        assert_eq!(analysis.mounts[own.mount].on, MountOn::Gear(0));
        own.pulls.iter().map(Force::get::<newton>).fold(0.0, f64::max)
    };
    let (whole, narrow) = (pull("16 in"), pull("8.4 in"));
    assert!(narrow > 1.03 * whole && narrow < 1.4 * whole, "{whole} {narrow}");
}

//! Mounts as a whole: what a review found to go wrong must not come back.

use skinspan::{
    advice::{Change, changed, changes},
    analysis::{Analysis, DIVISIONS, MountOn},
    check::{CHECKS, Outcome, Part, Subject, most_torque, run, worst_by_mount},
    input::{NamedText, read_design, read_tables},
    top::Top,
    units::Force,
};
use uom::si::{force::newton, length::millimeter, torque::newton_meter};

pub(crate) fn example(name: &str, changes: &[(&str, &str)]) -> Top {
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

const RAIL_NUTS: &str = "[[fixing]]\nname        = \"rail nuts\"";
/// From opposite sides holes may come nearer than in one skin, but not into each other.
#[test]
fn holes_from_both_sides_keep_clear_of_each_other() {
    let lamp = |x: &str| {
        let gear = format!(
            "[[gear]]\nname = \"lamp\"\nmass = \"1 kg\"\ncg_height = \"50 mm\"\nat = [\"{x}\", \"16 in\"]\n\
             footing = {{ diameter = \"60 mm\" }}\nwind_area = \"0.01 m2\"\ndrag = 1.0\nfixings = {{ fixing = \"foot nuts\", \
             points = [[\"0 mm\", \"0 mm\"]], clamped = \"3 mm\" }}\n\n[service]"
        );
        let nuts = "[[fixing]]\nname = \"foot nuts\"\nhold = \"blind-insert\"\ninsert = \"m8-stainless\"\ngrade = \"a4-70\"\n\
            lubrication = \"lubricated-stainless\"\n\n[[fixing]]\nname        = \"rail nuts\"";
        example("rail-row", &[(RAIL_NUTS, nuts), ("[service]", &gear)])
    };
    let top = lamp("30 in");
    let hole = top.gear[0].fastened.as_ref().and_then(|fastened| fastened.fixing.hole()).expect("a hole");
    let analysis = Analysis::new(&top, DIVISIONS).expect("a layout");
    let rows = analysis.mounts.iter().filter(|mount| mount.on != MountOn::Gear(0));
    let at = top.gear[0].at;
    let apart = rows.flat_map(|row| &row.places).map(|place| place.at.distance(at).value).fold(f64::INFINITY, f64::min);
    // Two halves of a hole, and one whole for a drill that wanders.
    let by_hand = hole.value * 2.0 / apart;
    assert!((used(&top, "fixing-near-other", None) / by_hand - 1.0).abs() < 1e-9, "{by_hand}");
}

/// Each row has its own worst check, also where its twin's is as bad.
#[test]
fn twins_are_used_alike() {
    let top = example("rail-row", &[]);
    let analysis = Analysis::new(&top, DIVISIONS).expect("a layout").with_plate_method();
    let worst = worst_by_mount(&analysis);
    let used: Vec<f64> =
        worst.iter().map(|worst| worst.as_ref().and_then(Outcome::utilisation).expect("a check").value).collect();
    assert!(used.len() == 2 && used[0] > 0.5 && (used[0] / used[1] - 1.0).abs() < 0.05, "{used:?}");
    let named = |worst: &Option<Outcome>| worst.as_ref().map(|worst| worst.place.part);
    for (number, worst) in worst.iter().enumerate() {
        let Some(Part::Fixing { on, .. } | Part::Mount(on)) = named(worst) else { panic!("{worst:?}") };
        assert_eq!(on, MountOn::Support(number));
    }
    // The worst of all is that of one of them.
    let all = run(&analysis);
    let of_fixings = |outcome: &&Outcome| CHECKS[outcome.check].subject() == Subject::Fixings;
    let most =
        all.iter().filter(of_fixings).filter_map(Outcome::utilisation).map(|used| used.value).fold(0.0, f64::max);
    assert!((used.iter().copied().fold(0.0, f64::max) - most).abs() < 1e-12, "{used:?} {most}");
}

/// Where a bolt comes out below there has to be room for its washer.
#[test]
fn a_bolt_keeps_clear_of_the_rail_below() {
    let radar = |y: &str| {
        example("survey-launch", &[("at          = [\"37 in\", \"52 in\"]", &format!("at = [\"37 in\", \"{y}\"]"))])
    };
    // Seat and pipe are 2 in wide, the washer 40 mm: 1.787 in.
    let need = f64::midpoint(2.0, 40.0 / 25.4);
    for y in ["40 in", "42.6 in", "43.5 in"] {
        let top = radar(y);
        let analysis = Analysis::new(&top, DIVISIONS).expect("a layout");
        let off = analysis.mounts[0].places.iter().map(|place| (place.at.y.value / 0.0254 - 38.0).abs());
        let off = off.fold(f64::INFINITY, f64::min);
        let found = used(&top, "fixing-over-support", None);
        assert!((found / (need / off) - 1.0).abs() < 1e-6, "{y}: {found} {}", need / off);
    }
    assert!(used(&radar("52 in"), "fixing-over-support", None) < f64::MIN_POSITIVE);
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
    let fixings: f64 = analysis.mounts.iter().flat_map(|mount| &mount.places).map(|_| 1.0).sum();
    let forces = analysis.mount_forces.iter().find(|forces| forces.case == rolling).expect("forces");
    // sin 25° + 25° (2π/4 s)² 2.5 m / g = 0.697, shared evenly by all of them.
    let even = top.weight().bare.value * 9.806_65 * 0.697_06 / fixings;
    assert!(
        (forces.shears[0].get::<newton>() / even - 1.0).abs() < 1e-3,
        "{} {even}",
        forces.shears[0].get::<newton>()
    );
}

/// Wind blows on the edge of the top and on gear, and pushes the frame where it acts.
#[test]
fn a_storm_pushes_edge_and_gear() {
    let gear = "[[gear]]\nname = \"board\"\nmass = \"2 kg\"\ncg_height = \"0 mm\"\nat = [\"45 in\", \"32 in\"]\n\
                footing = \"8 in\"\nwind_area = \"0.5 m2\"\nwind_height = \"400 mm\"\ndrag = 1.1\n[service]";
    let top =
        example("rail-row", &[("forward = \"left\"", "forward = \"left\"\ncrown = \"30 mm\""), ("[service]", gear)]);
    let analysis = Analysis::new(&top, DIVISIONS).expect("a layout");
    let push = analysis.sideways().expect("a push");
    let case = &analysis.cases[push.case];
    assert!(case.id.starts_with("storm"), "{}", case.id);
    let q = case.gear_wind.value;
    assert!(q > 500.0, "{q}");
    // 90 in long, as high as the top is thick and crowned.
    let thick = top.thickness().value;
    let (edge, board) = (q * 1.2 * 2.286 * (thick + 0.03), q * 1.1 * 0.5);
    let close = |found: f64, by_hand: f64| assert!((found / by_hand - 1.0).abs() < 1e-9, "{found} {by_hand}");
    close(push.force.value, edge + board);
    close(push.wind.value, edge + board);
    close(push.height.value, (edge * (thick + 0.03) / 2.0 + board * (thick + 0.4)) / (edge + board));
}

/// Of hands that pull at gear, one at a time, the hardest counts; what else acts on gear counts all together.
#[test]
fn one_hand_at_a_time_pushes_the_frame() {
    let gear = |name: &str, y: &str| {
        format!(
            "[[gear]]\nname = \"{name}\"\nmass = \"1 kg\"\ncg_height = \"100 mm\"\nat = [\"45 in\", \"{y}\"]\nfooting = \"8 in\"\n\
             grab_height = \"300 mm\"\ngiven = [{{ side = \"2000 N\", height = \"200 mm\" }}]\n"
        )
    };
    let two = format!("{}{}[service]", gear("one", "20 in"), gear("other", "44 in"));
    let top = example("rail-row", &[("[service]", &two), ("hand_load = \"0 lbf\"", "hand_load = \"9 kN\"")]);
    let analysis = Analysis::new(&top, DIVISIONS).expect("a layout");
    let push = analysis.sideways().expect("a push");
    assert_eq!((analysis.cases[push.case].id, push.wind.value), ("grab", 0.0));
    assert!((push.force.value - 9_000.0).abs() < 1e-6, "{push:?}");
    assert!(((push.height - top.thickness()).get::<millimeter>() - 300.0).abs() < 1e-6, "{push:?}");
    // Without a hand it is what the file gives, for both of them.
    let top = example("rail-row", &[("[service]", &two)]);
    let analysis = Analysis::new(&top, DIVISIONS).expect("a layout");
    let push = analysis.sideways().expect("a push");
    assert_eq!(analysis.cases[push.case].id, "given-1");
    assert!((push.force.value - 4_000.0).abs() < 1e-6, "{push:?}");
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

/// What the gear is thrown with goes through the fixings of the pipes as well.
#[test]
fn gear_that_rolls_shears_the_fixings_of_the_pipes() {
    let gear = "[[gear]]\nname = \"box\"\nmass = \"20 kg\"\ncg_height = \"0 mm\"\nat = [\"45 in\", \"32 in\"]\n\
                footing = \"8 in\"\n[service]";
    let all = |top: &Top| {
        let analysis = Analysis::new(top, DIVISIONS).expect("a layout");
        let rolling = analysis.cases.iter().position(|case| case.id == "rolling").expect("a case");
        let forces = analysis.mount_forces.iter().filter(|forces| forces.case == rolling);
        forces.flat_map(|forces| forces.shears.iter()).map(Force::get::<newton>).sum::<f64>()
    };
    let added = all(&example("rail-row", &[("[service]", gear)])) - all(&example("rail-row", &[]));
    // 20 kg at the 0.697 g of the bare top.
    assert!((added / (20.0 * 9.806_65 * 0.697_06) - 1.0).abs() < 1e-3, "{added}");
}

/// A hand beyond two pipes pulls the near one by its moment about the far one.
#[test]
fn a_hand_at_the_edge_pulls_by_its_lever() {
    // The starboard edge reaches 2 in farther out than the other.
    let wider = ("width = \"5 ft 4 in\"", "width = \"5 ft 6 in\"");
    let top = example("rail-row", &[("hand_load = \"0 lbf\"", "hand_load = \"100 N\""), wider]);
    let analysis = Analysis::new(&top, DIVISIONS).expect("a layout");
    let case = analysis.cases.iter().position(|case| case.id == "hand-up").expect("a case");
    let most = analysis.most_pull_by_hand(0, case).expect("nothing else lifts it").get::<newton>();
    // 18 in beyond pipes that lie 32 in apart, by a strip that carries 4 in beyond their ends.
    assert!((most / (100.0 * 1.5625 * 1.125) - 1.0).abs() < 1e-9, "{most}");
}

/// The most torque is the one at which the check of it is just used up.
#[test]
fn the_most_torque_uses_tightening_up() {
    for (name, torque) in [("radar-pad", 2.0), ("whip-rail-mended", 1.0), ("rail-row", 1.0)] {
        let given = format!("torque = \"{torque} N.m\"\nlubrication");
        let top = if name == "radar-pad" { example(name, &[]) } else { example(name, &[("lubrication", &given)]) };
        let analysis = Analysis::new(&top, DIVISIONS).expect("a layout");
        let most = most_torque(&analysis, 0).expect("a bolt").torque.get::<newton_meter>();
        let used = used(&top, "tightening", None);
        assert!((used * most / torque - 1.0).abs() < 1e-9, "{name}: {used} {most}");
    }
}

/// More fixings stand in the length that there was.
#[test]
fn more_fixings_reach_no_farther() {
    for laid in ["row = 3, pitch = \"100 mm\"", "grid = [2, 2], pitch = [\"300 mm\", \"120 mm\"]"] {
        let top = example("whip-rail-mended", &[("grid = [2, 2], pitch = [\"300 mm\", \"120 mm\"]", laid)]);
        let ends = |top: &Top| {
            let at = top.gear[0].fastened.as_ref().expect("fixings").laid.about_middle();
            let along = at.iter().map(|place| place.x.get::<millimeter>());
            (at.len(), along.fold(0.0, f64::max))
        };
        let before = ends(&top);
        let mut tried = 0;
        for change in changes(&top).into_iter().flatten() {
            let Change::FixingCount { count, .. } = change else { continue };
            let after = ends(&changed(&top, &change).expect("a change"));
            assert!(after.0 == count && count > before.0 && (after.1 - before.1).abs() < 1e-9, "{before:?} {after:?}");
            tried += 1;
        }
        assert!(tried > 0);
    }
}

/// A strip grows at both ends, and no farther than the panel.
#[test]
fn a_longer_strip_grows_at_both_ends() {
    let top = example("whip-rail-mended", &[]);
    let longer: Vec<_> = changes(&top)
        .into_iter()
        .flatten()
        .filter(|change| matches!(change, Change::BackingLength { .. }))
        .map(|change| {
            let along = changed(&top, &change)?.backings[0].along.clone();
            let ends = [along.points().first()?, along.points().last()?];
            Some(ends.map(|end| end.x.get::<millimeter>().round()))
        })
        .collect();
    // From 50 and 750 mm on a panel of 800 mm.
    assert_eq!(longer[..3], [Some([25.0, 775.0]), Some([0.0, 800.0]), None]);
}

/// Wind comes from any side: a row of bolts along the top and one across it are pulled alike.
#[test]
fn wind_on_gear_comes_from_its_worst_side() {
    let pull = |turned: &str| {
        let row = format!("row = 2, pitch = \"8 in\", turned = \"{turned}\"");
        let top = example(
            "radar-pad",
            &[
                ("circle = 6, diameter = \"8 in\"", &row),
                ("[[\"8 in\", \"18 in\"], [\"28 in\", \"18 in\"]]", "[[\"10 in\", \"18 in\"], [\"26 in\", \"18 in\"]]"),
            ],
        );
        let analysis = Analysis::new(&top, DIVISIONS).expect("a patch");
        let storm = analysis.cases.iter().position(|case| case.id == "storm-up").expect("a case");
        let own = analysis.mount_forces.iter().find(|forces| forces.case == storm).expect("forces");
        own.pulls.iter().map(Force::get::<newton>).fold(0.0, f64::max)
    };
    let [along, across] = ["0 deg", "90 deg"].map(pull);
    assert!(along > 50.0 && (along / across - 1.0).abs() < 1e-6, "{along} {across}");
}

/// Two bolts beside the middle of their footing: a force along them twists them, one across does not, and both are looked
/// at. 200 N at a lever of 25 mm on bolts 30 mm apart: 100 N each along, and 5 N·m/30 mm = 166.7 N across with it.
#[test]
fn bolts_beside_the_middle_are_twisted_from_some_sides() {
    let shear = |points: &str| {
        let top = example(
            "radar-pad",
            &[
                ("circle = 6, diameter = \"8 in\"", &format!("points = {points}")),
                ("grab_height = \"10 in\"", "given = [{ side = \"200 N\", height = \"0 mm\" }]"),
            ],
        );
        let analysis = Analysis::new(&top, DIVISIONS).expect("a patch");
        let given = analysis.cases.iter().position(|case| case.id == "given-1").expect("a case");
        let own = analysis.mount_forces.iter().find(|forces| forces.case == given).expect("forces");
        own.shears.iter().map(Force::get::<newton>).fold(0.0, f64::max)
    };
    let up = shear("[[\"0 mm\", \"10 mm\"], [\"0 mm\", \"40 mm\"]]");
    let along = shear("[[\"10 mm\", \"0 mm\"], [\"40 mm\", \"0 mm\"]]");
    assert!((up / along - 1.0).abs() < 1e-9 && up > 240.0, "{up} {along}");
}

/// A footing whose bolts stand beside its backing is no pass, whatever its numbers.
#[test]
fn bolts_beside_the_backing_of_their_footing_are_no_pass() {
    let top = example("radar-pad", &[("width    = \"16 in\"", "width    = \"6 in\"")]);
    let analysis = Analysis::new(&top, DIVISIONS).expect("a patch");
    assert_eq!(analysis.open_mounts.len(), 1);
    assert!(run(&analysis).iter().any(|outcome| outcome.utilisation().is_none()));
    assert!(Analysis::new(&example("radar-pad", &[]), DIVISIONS).expect("a patch").open_mounts.is_empty());
}

/// Hands at the edge push the frame and shear what holds the top on it, with nothing else about.
#[test]
fn hands_at_the_edge_push_the_frame() {
    let top = example("rail-row", &[("hand_load = \"0 lbf\"", "hand_load = \"9 kN\"")]);
    let analysis = Analysis::new(&top, DIVISIONS).expect("a layout");
    let push = analysis.sideways().expect("a push");
    assert!(analysis.cases[push.case].id.starts_with("hand"), "{}", analysis.cases[push.case].id);
    assert!((push.force.value - 9_000.0).abs() < 1e-6, "{push:?}");
    assert!((push.height / top.thickness()).value - 0.5 < 1e-9 && push.wind == Force::default(), "{push:?}");
    let fixings: f64 = analysis.mounts.iter().flat_map(|mount| &mount.places).map(|_| 1.0).sum();
    let forces = analysis.mount_forces.iter().find(|forces| forces.case == push.case).expect("forces");
    assert!((forces.shears[0].get::<newton>() / (9_000.0 / fixings) - 1.0).abs() < 1e-9, "{:?}", forces.shears);
}

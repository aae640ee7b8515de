//! A top drawn in plan: places and sizes against numbers worked out by hand from the design files.

use std::path::Path;

use skinspan::{
    analysis::{Analysis, DIVISIONS},
    geometry::{Axis, Point},
    input::{Design, NamedText, read_design, read_tables},
    plan::{Cut, Filled, Item, LayerKind, Line, LineKind, Plan, Shape},
    top::Top,
    units::Length,
};
use uom::si::length::{inch, millimeter};

/// Rounding.
const EXACT: f64 = 1e-9;

fn example(name: &str) -> String {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("examples").join(name);
    std::fs::read_to_string(path).expect("an example")
}

fn read(text: &str) -> Top {
    let table = read_tables(&[]).expect("the built-in table");
    let file = NamedText { name: "top.toml".to_owned(), text: text.to_owned() };
    read_design(Design::from(&file), &table, None).unwrap_or_else(|problems| panic!("{}", problems[0].render(false)))
}

fn items(plan: &Plan, kind: LayerKind) -> &[Item] {
    plan.layer(kind).map_or(&[], |layer| &layer.items)
}

fn line(item: &Item, kind: LineKind) -> &Line {
    let mut lines = item.shapes.iter().filter_map(|shape| match shape {
        Shape::Line(line) if line.kind == kind => Some(line),
        _ => None,
    });
    lines.next().expect("a line of that kind")
}

fn inches(at: Point) -> (f64, f64) {
    (at.x.get::<inch>(), at.y.get::<inch>())
}

fn is(found: f64, expected: f64) {
    assert!((found - expected).abs() < EXACT, "{found} is not {expected}");
}

/// Its corners in inches, with the bulges of the pieces.
fn corners(line: &Line) -> Vec<(f64, f64, f64)> {
    line.vertices
        .iter()
        .map(|vertex| (vertex.at.x.get::<inch>(), vertex.at.y.get::<inch>(), vertex.bulge.value))
        .collect()
}

#[test]
fn the_rims_of_a_rounded_rectangle_keep_their_arcs() {
    let mut top = read(&example("survey-launch.toml"));
    std::sync::Arc::make_mut(&mut top.criteria).with_override("trim-allowance", "1 in").expect("a length");
    let plan = Plan::of(&top);
    let quarter = (std::f64::consts::PI / 8.0).tan();
    // 110 in by 76 in with corners of 14 in; 1 in beyond it laid up, the core 2 in within.
    for (kind, off) in [(LayerKind::Outline, 0.0), (LayerKind::Moulded, 1.0), (LayerKind::CoreEdge, -2.0)] {
        let rim = line(&items(&plan, kind)[0], LineKind::Edge);
        let mut found = corners(rim);
        let mut expected = Vec::new();
        for (x, y, dx, dy) in
            [(0.0, 0.0, 1.0, 1.0), (110.0, 0.0, -1.0, 1.0), (110.0, 76.0, -1.0, -1.0), (0.0, 76.0, 1.0, -1.0)]
        {
            expected.extend([(x + dx * 14.0, y - dy * off), (x - dx * off, y + dy * 14.0)]);
        }
        let order = |a: &(f64, f64), b: &(f64, f64)| a.0.total_cmp(&b.0).then(a.1.total_cmp(&b.1));
        expected.sort_by(order);
        assert_eq!(found.iter().filter(|(_, _, bulge)| (bulge - quarter).abs() < EXACT).count(), 4, "{kind:?}");
        assert_eq!(found.iter().filter(|(_, _, bulge)| bulge.abs() < EXACT).count(), 4, "{kind:?}");
        found.sort_by(|a, b| {
            order(
                &((a.0 * 1e6).round() / 1e6, (a.1 * 1e6).round() / 1e6),
                &((b.0 * 1e6).round() / 1e6, (b.1 * 1e6).round() / 1e6),
            )
        });
        assert_eq!(found.len(), expected.len());
        for (found, expected) in found.iter().zip(&expected) {
            assert!(
                (found.0 - expected.0).abs() < 1e-6 && (found.1 - expected.1).abs() < 1e-6,
                "{kind:?}: {found:?} {expected:?}"
            );
        }
    }
    assert_eq!(
        plan.bounds().map(|corner| ((corner.x.get::<inch>() * 1e6).round(), (corner.y.get::<inch>() * 1e6).round())),
        [(-1e6, -1e6), (111e6, 77e6)]
    );
}

#[test]
fn pipes_have_sides_and_a_narrower_seat_and_their_posts() {
    let plan = Plan::of(&read(&example("survey-launch.toml")));
    let pipes = items(&plan, LayerKind::Pipes);
    assert_eq!(pipes.len(), 3);
    // 2 in wide on a line at 9 in, its seat 1.5 in.
    for (kind, half) in [(LineKind::Edge, 1.0), (LineKind::Inner, 0.75)] {
        let side = line(&pipes[0], kind);
        is(side.vertices[0].at.y.get::<inch>(), 9.0 + half);
        is(side.vertices[1].at.x.get::<inch>(), 107.0);
    }
    let posts = items(&plan, LayerKind::Posts);
    assert_eq!(posts.len(), 6);
    assert_eq!(posts[1].name, "port rail, post 2");
    // Posts stand at 8 in and 96 in along a pipe that begins at 3 in.
    let Shape::Circle { centre, diameter } = posts[1].shapes[0] else { panic!("a circle") };
    is(inches(centre).0, 99.0);
    is(diameter.get::<inch>(), 2.0);
}

#[test]
fn the_band_beside_a_conduit_is_that_of_the_widest_hole() {
    let text = example("survey-launch.toml");
    let width = |plan: &Plan| {
        let band = line(&items(plan, LayerKind::NoDrill)[0], LineKind::Edge);
        (band.vertices[0].at.y - band.vertices[3].at.y).get::<millimeter>()
    };
    // Of a tube of 0.84 in, 21.336 mm: 10 mm of the criterion beat the 9 mm of an M8, so 21.336 + 3 · 10.
    let plan = Plan::of(&read(&text));
    is(width(&plan), 51.336);
    // An M12 takes 13.5 mm.
    let plan = Plan::of(&read(&text.replace("\"m8\"", "\"m12\"").replace("\"40 mm\"", "\"45 mm\"")));
    is(plan.no_drill_hole.get::<millimeter>(), 13.5);
    is(width(&plan), 21.336 + 3.0 * 13.5);
}

#[test]
fn every_fixing_is_marked_once_and_drilled_as_check_says() {
    for (name, count) in
        [("survey-launch.toml", 6), ("radar-pad.toml", 6), ("whip-rail.toml", 4), ("galley-roof.toml", 0)]
    {
        let top = read(&example(name));
        let plan = Plan::of(&top);
        assert_eq!(plan.fixings.len(), count, "{name}");
        assert_eq!(items(&plan, LayerKind::Fixings).len(), count, "{name}");
        assert!(plan.fixings.iter().enumerate().all(|(index, mark)| mark.number == index + 1));
        let analysis = Analysis::new(&top, DIVISIONS).expect("an analysis");
        let fittings = skinspan::advice::fittings(&analysis);
        for mark in &plan.fixings {
            let mount = analysis.mounts.iter().position(|mount| mount.on == mark.on).expect("its mount");
            assert_eq!(mark.drills, fittings[mount].drills, "{name}");
            assert!(mark.drills.iter().all(|drill| mark.widest() >= Some(drill.diameter)));
        }
    }
    let kelp = read(&example("kelp-harvester.toml"));
    let all: usize =
        Analysis::new(&kelp, DIVISIONS).expect("an analysis").mounts.iter().map(|mount| mount.places.len()).sum();
    assert_eq!(Plan::of(&kelp).fixings.len(), all);
}

#[test]
fn a_hole_in_the_band_is_named_with_what_is_left() {
    // The wiring moved to 46 in: the bolt at (35, 48.536) in is 2.536 in off, the first of the circle 6 in.
    let text = example("survey-launch.toml")
        .replace("\"24 in\"], [\"104 in\", \"24 in\"", "\"47.75 in\"], [\"104 in\", \"47.75 in\"");
    let plan = Plan::of(&read(&text));
    let near: Vec<usize> = plan.fixings.iter().filter(|mark| mark.in_band.is_some()).map(|mark| mark.number).collect();
    // Of six at 60 degrees from 0 on, those at 240 and 300 degrees stand 4 sin 60° = 3.464 in below 52 in.
    assert_eq!(near, [5, 6]);
    let found = plan.fixings[4].in_band.as_ref().expect("in the band");
    // 48.535 898 − 47.75 in = 19.961 82 mm; less half of 21.336 and of 9 mm.
    assert!((found.wall.get::<millimeter>() - 4.793_82).abs() < 1e-4, "{}", found.wall.get::<millimeter>());
    is(found.needed.get::<millimeter>(), 9.0);
    assert_eq!(found.conduit, "wiring");
}

#[test]
fn a_patch_is_not_trimmed_and_a_top_without_frame_draws_no_pipes() {
    let patch = Plan::of(&read(&example("radar-pad.toml")));
    assert!(patch.layer(LayerKind::Moulded).is_none() && patch.layer(LayerKind::CoreEdge).is_none());
    let roof = Plan::of(&read(&example("galley-roof.toml")));
    assert!(roof.layer(LayerKind::Pipes).is_none());
    // A wall of 30 mm about x = 50 mm.
    let wall = line(&items(&roof, LayerKind::Seats)[0], LineKind::Edge);
    let across = wall.vertices.iter().map(|vertex| vertex.at.x).fold(Length::default(), Length::max);
    is(across.get::<millimeter>(), 65.0);
}

#[test]
fn footings_stand_about_their_gear_and_names_can_be_read() {
    // 340 mm by 160 mm about (400, 300) mm.
    let plan = Plan::of(&read(&example("whip-rail.toml")));
    let foot = line(&items(&plan, LayerKind::Footings)[0], LineKind::Edge);
    let corners: Vec<(f64, f64)> =
        foot.vertices.iter().map(|vertex| (vertex.at.x.get::<millimeter>(), vertex.at.y.get::<millimeter>())).collect();
    for (found, expected) in corners.iter().zip([(230.0, 220.0), (570.0, 220.0), (570.0, 380.0), (230.0, 380.0)]) {
        is(found.0, expected.0);
        is(found.1, expected.1);
    }
    // 300 mm by 120 mm of M6 beside a board of 100 mm: over core, each bored and then drilled.
    let sizes: Vec<f64> = plan.fixings[0].drills.iter().map(|drill| drill.diameter.get::<millimeter>()).collect();
    assert_eq!(sizes.iter().map(|size| (size * 10.0).round()).collect::<Vec<_>>(), [180.0, 66.0]);
    // A strip that is drawn from right to left is labelled from left to right all the same, one from above upwards.
    for (along, degrees) in [
        (r#"[["700 mm", "300 mm"], ["100 mm", "300 mm"]]"#, 0.0),
        (r#"[["400 mm", "500 mm"], ["400 mm", "100 mm"]]"#, 90.0),
        (r#"[["200 mm", "100 mm"], ["400 mm", "300 mm"]]"#, 45.0),
    ] {
        let text = example("whip-rail.toml").replace(r#"[["50 mm", "300 mm"], ["750 mm", "300 mm"]]"#, along);
        let plan = Plan::of(&read(&text));
        let strip = &items(&plan, LayerKind::Backings)[0];
        let label = strip.shapes.iter().find_map(|shape| match shape {
            Shape::Label(label) => Some(label),
            _ => None,
        });
        is(label.expect("a name").along.get::<uom::si::angle::degree>(), degrees);
    }
}

#[test]
fn a_hole_through_the_top_is_an_arc_and_so_is_the_core_round_it() {
    let plan = Plan::of(&read(&example("bow-wing.toml")));
    let hatch = line(&items(&plan, LayerKind::Openings)[0], LineKind::Edge);
    // 16 in about (70, 22) in; the core 1.5 in away.
    assert_eq!(corners(hatch), [(62.0, 22.0, 1.0), (78.0, 22.0, 1.0)]);
    let core = items(&plan, LayerKind::CoreEdge).last().expect("round the hatch");
    assert_eq!(core.name, "end of the core round hatch");
    for vertex in &line(core, LineKind::Edge).vertices {
        is((inches(vertex.at).0 - 70.0).hypot(inches(vertex.at).1 - 22.0), 9.5);
        is(vertex.bulge.value, 1.0);
    }
}

#[test]
fn layers_stand_in_their_order() {
    for name in ["survey-launch.toml", "bow-wing.toml", "galley-roof.toml", "kelp-harvester.toml"] {
        let top = read(&example(name));
        let kinds: Vec<LayerKind> = Plan::of(&top).layers.iter().map(|layer| layer.kind).collect();
        let expected: Vec<LayerKind> = LayerKind::ALL.into_iter().filter(|kind| kinds.contains(kind)).collect();
        assert_eq!(kinds, expected);
        assert_eq!(Plan::of(&top), Plan::of(&top));
    }
}

fn ends(cut: &Cut) -> Vec<(Filled, f64, f64)> {
    cut.runs.iter().map(|run| (run.filled, run.from.get::<inch>(), run.to.get::<inch>())).collect()
}

/// Halvings stop within a micrometre.
const CUT: f64 = 1e-3;

fn cut_is(cut: &Cut, expected: &[(Filled, f64, f64)]) {
    let found = ends(cut);
    assert_eq!(found.len(), expected.len(), "{found:?}");
    for (one, other) in found.iter().zip(expected) {
        assert!(
            one.0 == other.0 && (one.1 - other.1).abs() < CUT && (one.2 - other.2).abs() < CUT,
            "{one:?} {other:?}"
        );
    }
}

#[test]
fn a_cut_meets_what_lies_on_its_line() {
    use Filled::{Backing, Core, Edge, Nothing};
    let top = read(&example("bow-wing.toml"));
    let at = |axis, inches: f64| Cut::at(&top, &[], axis, Length::new::<inch>(inches));
    // Through the middle of the hatch, 16 in about 22 in, and along it to the rim, the edge 1.5 in wide.
    let across = at(Axis::Y, 34.0);
    cut_is(
        &across,
        &[
            (Edge, 0.0, 1.5),
            (Core, 1.5, 9.0),
            (Backing(0), 9.0, 13.0),
            (Core, 13.0, 55.0),
            (Backing(1), 55.0, 59.0),
            (Core, 59.0, 66.5),
            (Edge, 66.5, 68.0),
        ],
    );
    let along = at(Axis::X, 22.0);
    let hatch: Vec<_> = ends(&along).into_iter().filter(|(filled, ..)| *filled == Nothing).collect();
    assert!(matches!(hatch[..], [(_, from, to)] if (from - 62.0).abs() < CUT && (to - 78.0).abs() < CUT), "{hatch:?}");
    // The core ends 1.5 in before the hatch too.
    let before = ends(&along).into_iter().find(|(_, _, to)| (to - 62.0).abs() < CUT).expect("a run");
    assert!(before.0 == Edge && (before.1 - 60.5).abs() < CUT, "{before:?}");
    // What it crosses: three pipes square, none along its own way.
    let places: Vec<f64> = across.supports.iter().map(|crossed| crossed.at.get::<inch>()).collect();
    assert_eq!(places, [11.0, 34.0, 57.0]);
    assert!(along.supports.is_empty());
}

#[test]
fn a_cut_shows_what_runs_aslant_wider_and_a_hole_where_it_meets_one() {
    let text = example("whip-rail.toml")
        .replace(r#"[["50 mm", "100 mm"], ["750 mm", "100 mm"]]"#, r#"[["100 mm", "50 mm"], ["300 mm", "250 mm"]]"#);
    let top = read(&text);
    let plan = Plan::of(&top);
    let mm = Length::new::<millimeter>;
    let cut = Cut::at(&top, &plan.fixings, Axis::Y, mm(200.0));
    assert_eq!(cut.conduits.len(), 1);
    is(cut.conduits[0].at.get::<millimeter>(), 150.0);
    is(cut.conduits[0].wider.value, 2f64.sqrt());
    // Through the middle of a fixing, beside it, and past the rim of its hole.
    let mark = &plan.fixings[0];
    let half = mark.widest().expect("a hole") / 2.0;
    let met = |off: Length| {
        let cut = Cut::at(&top, &plan.fixings, Axis::Y, mark.at.x + off);
        cut.fixings.iter().find(|(index, _)| *index == 0).map(|(_, off)| off.get::<millimeter>())
    };
    is(met(mm(0.0)).expect("met"), 0.0);
    is(met(half * 0.9).expect("met"), half.get::<millimeter>() * 0.9);
    assert_eq!(met(half * 1.01), None);
    assert!(!Cut::telling(&top, &plan.fixings).fixings.is_empty(), "the line that shows most meets a fixing");
}

#[test]
fn the_line_that_shows_most_meets_pad_conduit_and_rails_of_the_launch() {
    let top = read(&example("survey-launch.toml"));
    let plan = Plan::of(&top);
    let cut = Cut::telling(&top, &plan.fixings);
    assert_eq!(cut.axis, Axis::Y);
    assert!(cut.runs.iter().any(|run| run.filled == Filled::Backing(3)) && !cut.conduits.is_empty());
    assert!(cut.supports.len() == 3 && !cut.fixings.is_empty(), "{cut:?}");
    assert_eq!(cut, Cut::telling(&top, &plan.fixings));
}

#[test]
fn a_cut_ends_a_backing_where_it_ends_and_meets_a_pad_over_its_length() {
    // The strips of the launch run from x = 3 in on: before that there is core beside the edge of 2 in.
    let top = read(&example("survey-launch.toml"));
    let strips = |inches: f64| {
        let cut = Cut::at(&top, &[], Axis::Y, Length::new::<inch>(inches));
        cut.runs.iter().filter(|run| matches!(run.filled, Filled::Backing(_))).count()
    };
    let along = &top.backings[0].along;
    let begins = along.ends()[0].x.min(along.ends()[1].x).get::<inch>();
    assert!(begins > 2.0 && top.backings[..3].iter().all(|strip| strip.along.ends()[0].x == along.ends()[0].x));
    assert_eq!((strips(begins - 0.1), strips(begins + 0.1)), (0, 3));
    // A pad of 200 mm by 120 mm about (700, 650) mm is met to 60 mm on either side of its middle.
    let pad = "[[pad]]\nname = \"stool\"\nat = [\"700 mm\", \"650 mm\"]\nsize = { length = \"200 mm\", width = \"120 mm\" }\n\n[service]";
    let top = read(&example("galley-roof.toml").replace("[service]", pad));
    let number = top.supports.iter().position(|support| support.name == "stool").expect("the pad");
    let met = |mm: f64| {
        let cut = Cut::at(&top, &[], Axis::X, Length::new::<millimeter>(mm));
        cut.supports.iter().find(|crossed| crossed.index == number).map(|crossed| crossed.at.get::<millimeter>())
    };
    is(met(709.0).expect("met"), 700.0);
    assert_eq!((met(711.0), met(589.0)), (None, None));
}

#[test]
fn of_lines_that_show_as_much_the_one_across_the_middle_is_taken() {
    // Nothing but walls: every line across and every one along meets two.
    let gear = "[[gear]]\nname = \"lamp\"\nmass = \"1 kg\"\ncg_height = \"0 mm\"\nat = [\"300 mm\", \"400 mm\"]\nfooting = \"80 mm\"\n\n[service]";
    let top = read(&example("galley-roof.toml").replace("[service]", gear));
    let cut = Cut::telling(&top, &[]);
    assert_eq!(cut.axis, Axis::Y);
    is(cut.station.get::<millimeter>(), 750.0);
    assert_eq!(cut.supports.len(), 2);
}

//! Tops on walls: against series for four sides, and by hand as on rigid pipes.

use skinspan::{
    analysis::{Analysis, DIVISIONS, HeldDown, PipeModel},
    check::{CHECKS, Method, Part, Verdict, run},
    closed_form::plate::{Plate, PlateLoad, clamped_plate_uniform},
    geometry::Axis,
    input::{NamedText, read_design, read_tables},
    load::weight::gravity,
    report::{Answer, Report},
    top::{Carrier, Pipe, Support, Top},
    units::{Length, Pressure, Ratio, plain},
};

use crate::tops::example;

/// The bed yields by a half of the core under the seats; the mesh's nearest sample does not lie in the middle.
const CLAMPED: f64 = 2e-3;
/// A wall that only keeps the top from sinking lets it twist along the edge, over some 30 mm here; the series does not. So
/// much more sag for a square of 1 m, half of it for one of 2 m.
const TWIST: [f64; 2] = [0.05, 0.07];
const HALVES: f64 = 0.15;
/// The middle of a plate may lie between two places that are looked at: by how much its sag is then missed.
const BETWEEN_PLACES: f64 = 0.012;

/// A mat on both sides of a thin, dense core, as good as the same in all directions, on `below`.
pub fn thin(size: [&str; 2], below: &str) -> Top {
    thin_in("none", size, below)
}

/// The same in a storm.
pub fn thin_in(storm: &str, size: [&str; 2], below: &str) -> Top {
    let text = format!(
        "[top]\noutline = {{ length = \"{}\", width = \"{}\" }}\nprocess = \"hand\"\nresin = \"polyester\"\n\
         outer = [\"mat 600 g/m2\"]\ncore = {{ material = \"pvc-foam\", density = \"200 kg/m3\", thickness = \"10 mm\" }}\n\
         inner = [\"mat 600 g/m2\"]\n{below}[service]\nspeed = \"none\"\nstorm = \"{storm}\"\ntrailer = \"none\"\n\
         slam = \"none\"\npeople = 0\nhand_load = \"0 N\"\nwalking = \"no-walk\"\nunderside = \"open\"\nsun = \"none\"\n",
        size[0], size[1]
    );
    let file = NamedText { name: "thin.toml".to_owned(), text };
    read_design(&file, &read_tables(&[]).unwrap(), None)
        .unwrap_or_else(|problems| panic!("{}", problems[0].render(false)))
}

pub fn wall(name: &str, [from, to]: [[f64; 2]; 2], edge: &str) -> String {
    format!(
        "[[wall]]\nname = \"{name}\"\nseat = \"10 mm\"\nedge = \"{edge}\"\n\
         along = [[\"{} mm\", \"{} mm\"], [\"{} mm\", \"{} mm\"]]\n",
        from[0], from[1], to[0], to[1]
    )
}

fn on_four_walls([a, b]: [f64; 2], edge: &str) -> Top {
    let corners = [[0.0, 0.0], [a, 0.0], [a, b], [0.0, b]];
    let walls: String = (0..4)
        .map(|k| wall(["port", "aft", "starboard", "fore"][k], [corners[k], corners[(k + 1) % 4]], edge))
        .collect();
    thin([&format!("{a} mm"), &format!("{b} mm")], &walls)
}

/// Largest sag under its own weight, and the most hogging moment per length along x.
fn at_rest(analysis: &Analysis<'_>) -> (Length, f64) {
    let forces = analysis.fields().find(|forces| analysis.cases[forces.case].id == "own-weight").unwrap();
    let sag = forces.between.iter().map(|sag| sag.sag).fold(Length::default(), Length::max);
    let moments =
        forces.regions.iter().flat_map(|region| &region.peaks).map(|peak| peak.state.resultants.moment.x.value);
    (sag, moments.fold(0.0, f64::min))
}

/// Sag of a top on walls over that of a series; for clamped walls the moment at the edge as well.
fn over_series([a, b]: [f64; 2], edge: &str) -> [f64; 2] {
    let top = on_four_walls([a, b], edge);
    let [a, b] = [a, b].map(Length::new::<uom::si::length::millimeter>);
    let pressure: Pressure = top.field_mass() * gravity();
    let analysis = Analysis::new(&top, DIVISIONS).unwrap().with_plate_method();
    let method = analysis.whole.as_ref().unwrap().as_ref().unwrap();
    assert_eq!(method.pipes, [PipeModel::Rigid; 4]);
    assert_eq!(method.holds, [HeldDown::AllAlong; 4]);
    let left = analysis.core_left(analysis.cases.iter().position(|case| case.id == "own-weight").unwrap());
    let plate = Plate::new(a, b, analysis.sections.field.plate_stiffness(Axis::X, left)).unwrap();
    let (sag, hogging) = at_rest(&analysis);
    if edge == "clamped" {
        let due = clamped_plate_uniform(&plate, pressure).unwrap();
        return [(sag / due.deflection).value, hogging / plain(due.edge_x).value];
    }
    let middle = plate.at(&PlateLoad::Uniform(pressure), [a / 2.0, b / 2.0], Ratio::from(1e-4)).unwrap();
    [(sag / middle.deflection).value, 1.0]
}

#[test]
fn on_four_clamped_walls_it_is_a_clamped_plate() {
    for sides in [[1000.0, 1000.0], [1400.0, 1000.0]] {
        let [sag, hogging] = over_series(sides, "clamped");
        assert!((sag - 1.0 + BETWEEN_PLACES / 2.0).abs() < CLAMPED + BETWEEN_PLACES / 2.0, "{sag}");
        assert!((hogging - 1.0).abs() < CLAMPED, "{hogging}");
    }
}

/// Rows of fixings on both walls below, as the rails of an example have them.
fn with_fixings(walls: [String; 2]) -> String {
    let rails = include_str!("../../examples/rail-row.toml");
    let table = &rails[rails.find("[[fixing]]").unwrap()..];
    let table = &table[..table[2..].find("[[").unwrap() + 2];
    let row = "fixings = { fixing = \"rail nuts\", spacing = \"3.5 in\", end = \"2 in\", clamped = \"3 mm\", to_body = \"5/8 in\", \
               to_edge = \"5/8 in\" }\n";
    walls.into_iter().fold(table.to_owned(), |all, wall| all + &wall + row)
}

/// Wind lifts a hinged edge off between its fixings; a clamped one stays shut, fixings or not.
#[test]
fn a_hinged_edge_hangs_on_its_fixings_and_a_clamped_one_stays_shut() {
    let lifted = |edge: &str, fixed: bool| {
        let walls = [("port", 0.0), ("starboard", 800.0)].map(|(name, y)| wall(name, [[0.0, y], [1000.0, y]], edge));
        let below = if fixed { with_fixings(walls) } else { walls.concat() };
        let top = thin_in("120 mph", ["1000 mm", "800 mm"], &below);
        let analysis = Analysis::new(&top, DIVISIONS).unwrap().with_plate_method();
        let method = analysis.whole.as_ref().unwrap().as_ref().unwrap();
        let up = method.cases.iter().find(|forces| analysis.cases[forces.case].id == "storm-up").unwrap();
        let sag = up.between.iter().map(|sag| sag.sag.value.abs()).fold(0.0, f64::max);
        (method.holds.clone(), sag)
    };
    let [hinged, clamped] = ["hinged", "clamped"].map(|edge| [false, true].map(|fixed| lifted(edge, fixed)));
    let shut = || vec![HeldDown::AllAlong; 2];
    assert_eq!(hinged.each_ref().map(|(holds, _)| holds.clone()), [shut(), vec![HeldDown::ByFixings; 2]]);
    assert_eq!(clamped.each_ref().map(|(holds, _)| holds.clone()), [shut(), shut()]);
    // The walls part from the edges by some tenths of a millimetre of 33.
    assert!(hinged[1].1 / hinged[0].1 > 1.005, "{hinged:?}");
    assert!((clamped[1].1 / clamped[0].1 - 1.0).abs() < 1e-12 && clamped[0].1 < hinged[0].1, "{clamped:?} {hinged:?}");
}

#[test]
fn on_four_hinged_walls_it_is_a_simply_supported_plate_that_may_twist_along_its_edges() {
    let [small, large] = [1000.0, 2000.0].map(|side| over_series([side, side], "hinged")[0] - 1.0);
    assert!(small > TWIST[0] && small < TWIST[1], "{small}");
    assert!((small / large / 2.0 - 1.0).abs() < HALVES, "{small} {large}");
}

/// The same top on pipes of whose wall nothing is said.
fn on_pipes(top: &Top) -> Top {
    let mut top = top.clone();
    for support in &mut top.supports {
        let outside = support.seat;
        support.carrier = Carrier::Pipe(Pipe { outside, wall: None, alloy: None, posts: Vec::new() });
    }
    top
}

#[test]
fn by_hand_a_wall_is_a_rigid_pipe_hinged_or_clamped() {
    let walls = example("galley-roof");
    let of = |top: &Top| {
        let analysis = Analysis::new(top, DIVISIONS).unwrap();
        let outcomes = run(&analysis);
        assert!(outcomes.len() > 20, "{}", outcomes.len());
        format!("{outcomes:?} {:?}", analysis.pipe_loads)
    };
    let hinged = of(&walls);
    assert_eq!(hinged, of(&on_pipes(&walls)));
    let mut clamped = walls.clone();
    let clamp = |support: &mut Support| support.carrier = Carrier::Wall(skinspan::top::WallEdge::Clamped);
    clamped.supports.iter_mut().for_each(clamp);
    assert_eq!(hinged, of(&clamped));
    // As a plate a hinged wall is a rigid pipe too; but a pipe of which nothing is known is open in its bending.
    let piped = on_pipes(&walls);
    let [walls, pipes] = [&walls, &piped].map(|top| Analysis::new(top, DIVISIONS).unwrap().with_plate_method());
    assert_eq!(format!("{:?}", walls.whole), format!("{:?}", pipes.whole));
    let open = |analysis: &Analysis<'_>| {
        let outcomes = run(analysis);
        let open = outcomes.iter().filter(|outcome| matches!(outcome.verdict, Verdict::NotEvaluated(_)));
        open.filter(|outcome| matches!(outcome.place.part, Part::Support(_))).count()
    };
    assert_eq!([open(&walls), open(&pipes)], [0, 4]);
}

#[test]
fn a_top_that_is_clamped_at_one_wall_does_not_tip_but_has_no_strips() {
    let top = thin(["1000 mm", "500 mm"], &wall("side", [[0.0, 0.0], [1000.0, 0.0]], "clamped"));
    let reason = Analysis::new(&top, DIVISIONS).unwrap_err();
    assert!(reason.contains("nowhere do two pipes run side by side") && reason.contains("a pad does not"), "{reason}");
}

/// Edge moment of a square plate, clamped all round, under even pressure, over the pressure and the square of its side
/// (Timoshenko and Woinowsky-Krieger, table of clamped rectangular plates, from memory).
const CLAMPED_SQUARE: f64 = 0.0513;
/// Table of four digits; the core yields a little to shear, which eases the edge; the mean over the depth.
const THIN_ENOUGH: f64 = 0.02;

#[test]
fn a_clamped_joint_must_take_the_edge_moment_and_never_passes() {
    let side = 2000.0;
    let top = on_four_walls([side; 2], "clamped");
    let analysis = Analysis::new(&top, DIVISIONS).unwrap().with_plate_method();
    let forces = analysis.fields().find(|forces| analysis.cases[forces.case].id == "own-weight").unwrap();
    let pressure = top.weight().bare.value * 9.806_65 / (side * side * 1e-6);
    let exact = CLAMPED_SQUARE * pressure * (side * side * 1e-6);
    for pipe in &forces.pipes {
        let clamp = pipe.clamp.unwrap();
        assert!((clamp.moment.value / exact - 1.0).abs() < THIN_ENOUGH, "{clamp:?} {exact}");
        // In the middle of its side.
        let off = [clamp.at.x.value, clamp.at.y.value].map(|at| (at - side * 5e-4).abs());
        assert!(off[0].min(off[1]) < 0.1, "{clamp:?}");
    }
    let outcomes = run(&analysis);
    let joints: Vec<_> = outcomes.iter().filter(|outcome| CHECKS[outcome.check].id() == "clamped-joint").collect();
    assert_eq!(joints.len(), 4);
    for outcome in &joints {
        let Verdict::NotEvaluated(reason) = &outcome.verdict else { panic!("{outcome:?}") };
        assert!(outcome.method == Method::Plate && reason.contains("the joint must take "), "{reason}");
        assert!(reason.contains("not evaluated: hold it against a test"), "{reason}");
    }
    let table = read_tables(&[]).unwrap();
    let small = |edge: &str| on_four_walls([600.0; 2], edge);
    assert_eq!(Report::new(&small("hinged"), &table).answer(), Answer::Holds);
    assert_eq!(Report::new(&small("clamped"), &table).answer(), Answer::Open);
    let hinged = on_four_walls([side; 2], "hinged");
    let analysis = Analysis::new(&hinged, DIVISIONS).unwrap().with_plate_method();
    assert!(analysis.fields().flat_map(|forces| &forces.pipes).all(|pipe| pipe.clamp.is_none()));
    assert!(run(&analysis).iter().all(|outcome| CHECKS[outcome.check].id() != "clamped-joint"));
}

/// Between two halves of a top a wall takes what they do not hand on to each other: of halves alike under their weight
/// nothing. Each half leans on a hinged wall at its end: `p l²/8`.
#[test]
fn between_two_halves_a_clamped_wall_takes_the_difference() {
    let across = |x: f64, edge: &str| wall(&format!("at {x}"), [[x, 0.0], [x, 1000.0]], edge);
    let most = |x: f64| {
        let walls = across(0.0, "hinged") + &across(x, "clamped") + &across(2000.0, "hinged");
        let top = thin(["2000 mm", "1000 mm"], &walls);
        let analysis = Analysis::new(&top, DIVISIONS).unwrap().with_plate_method();
        let forces = analysis.fields().find(|forces| analysis.cases[forces.case].id == "own-weight").unwrap();
        let pressure = top.weight().bare.value * 9.806_65 / 2.0;
        (forces.pipes[1].clamp.unwrap().moment.value, pressure)
    };
    let (even, pressure) = most(1000.0);
    assert!(even < 0.02 * pressure / 8.0, "{even}");
    let (odd, pressure) = most(500.0);
    // On the mean over the width so much: the largest is as much or more.
    let exact = pressure * (1.5 * 1.5 - 0.5 * 0.5) / 8.0;
    assert!(odd > 0.98 * exact && odd < 1.4 * exact, "{odd} {exact}");
}

//! Whole tops by the plate method: balance, symmetry, and what must not depend on the number of threads.

use skinspan::{
    analysis::{Analysis, DIVISIONS, NoPlate, PipeModel, PlateMethod},
    check::{CHECKS, Method, run},
    geometry::{Contour, Point},
    input::{NamedText, read_design, read_tables},
    load_case::ZonePressure,
    top::{Hole, Outline, Support, Top},
    units::parse,
};

/// The mesh is not its own mirror image: what it makes of one side and the other differs by less than this.
const MIRROR: f64 = 1e-2;

pub fn example(name: &str) -> Top {
    let path = format!("{}/examples/{name}.toml", env!("CARGO_MANIFEST_DIR"));
    let text = NamedText { name: name.to_owned(), text: std::fs::read_to_string(path).unwrap() };
    read_design(&text, &read_tables(&[]).unwrap(), None).unwrap()
}

/// The same on pipes of which no wall is given.
pub fn on_rigid_pipes(name: &str) -> Top {
    let mut top = example(name);
    top.supports.iter_mut().filter_map(Support::pipe_mut).for_each(|pipe| pipe.wall = None);
    top
}

#[test]
fn the_plate_stands_beside_the_hand_method_and_says_its_error() {
    let top = on_rigid_pipes("night-watch");
    let analysis = Analysis::new(&top, DIVISIONS).unwrap().with_plate_method();
    let method = analysis.whole.as_ref().unwrap().as_ref().unwrap();
    assert!(method.pipes.iter().all(|pipe| *pipe == PipeModel::Rigid), "no wall is given");
    // Moments and sags under loads that lie still are smooth: degree 3 finds them too.
    for forces in &method.cases {
        let case = &analysis.cases[forces.case];
        if case.people.is_none() && case.hand.is_none() {
            assert!(forces.error.moment.value < 0.02, "{}: {:?}", case.id, forces.error);
            assert!(forces.error.sag.value < 0.005, "{}: {:?}", case.id, forces.error);
        }
    }
    let outcomes = run(&analysis);
    for id in ["ply-failure", "wrinkling", "core-shear", "core-crush", "sag", "tip-sag"] {
        let check = CHECKS.iter().position(|check| check.id() == id).unwrap();
        for method in Method::ALL {
            assert!(
                outcomes.iter().any(|outcome| outcome.check == check && outcome.method == method),
                "{id} {method:?}"
            );
        }
    }
}

#[test]
fn loads_of_up_and_down_mirror_each_other() {
    // Two rails alike on a top alike fore and aft: the push on either rail under its own weight is the same.
    let top = example("night-watch");
    let analysis = Analysis::new(&top, DIVISIONS).unwrap().with_plate_method();
    let still = analysis.fields().find(|forces| analysis.cases[forces.case].id == "own-weight").unwrap();
    let [port, starboard] = [0, 1].map(|pipe| still.pipes[pipe].push.value);
    assert!((port / starboard - 1.0).abs() < MIRROR, "{port} {starboard}");
}

#[test]
fn a_top_that_hangs_on_one_line_is_explained() {
    let mut top = example("ferry-tender");
    top.supports.truncate(1);
    // The hand method refuses it with words of its own.
    assert!(Analysis::new(&top, DIVISIONS).is_err());
}

#[test]
fn threads_do_not_change_a_byte() {
    let top = example("galley-roof");
    let analysis = Analysis::new(&top, DIVISIONS).unwrap();
    let once = format!("{:?}", analysis.clone().with_plate_method().whole);
    let alone = rayon_alone(|| format!("{:?}", analysis.with_plate_method().whole));
    assert_eq!(once, alone);
}

fn rayon_alone<T: Send>(work: impl FnOnce() -> T + Send) -> T {
    rayon::ThreadPoolBuilder::new().num_threads(1).build().unwrap().install(work)
}

/// Two rails on two posts each, 6 ft apart, with a hole of 12 in over each of those asked for, half way along.
fn rails_below_holes(holes: &[&str], posts: [&str; 2]) -> Result<PlateMethod, NoPlate> {
    let mut top = example("rail-row");
    top.backings.clear();
    let hole = |y: &&str| {
        let at = Point { x: parse("45 in").unwrap(), y: parse(y).unwrap() };
        Hole { name: "hatch".to_owned(), contour: Contour::circle(at, parse("12 in").unwrap()).unwrap() }
    };
    top.outline = Outline::new(&top.outline.contour().clone(), holes.iter().map(hole).collect()).unwrap();
    for pipe in &mut top.supports {
        pipe.pipe_mut().unwrap().posts = posts.map(|post| parse(post).unwrap()).to_vec();
        pipe.fastened = None;
    }
    Analysis::new(&top, DIVISIONS).unwrap().with_plate_method().whole.unwrap()
}

#[test]
fn a_pipe_that_goes_on_below_a_hole_is_no_stiffer_for_it() {
    let sag = |holes: &[&str], posts| {
        let method = rails_below_holes(holes, posts).unwrap();
        assert_eq!(method.pipes, [PipeModel::Beam; 2]);
        let sags = method.cases.iter().flat_map(|forces| forces.between.iter().chain(&forces.tip));
        sags.map(|sag| sag.sag.value.abs()).fold(0.0, f64::max)
    };
    let ends = ["6 in", "76 in"];
    let whole = sag(&[], ends);
    assert!(sag(&["16 in"], ends) > whole, "one post on either side of the hole");
    // All posts of the rails stand before the holes: what lies behind them hangs on the panel.
    assert!(sag(&["16 in", "48 in"], ["6 in", "20 in"]) > 2.0 * whole);
    // With the posts below the holes nothing holds the panel.
    let loose = rails_below_holes(&["16 in", "48 in"], ["36 in", "46 in"]).unwrap_err();
    assert!(matches!(loose, NoPlate::Mechanism(_)), "{loose}");
}

/// Membrane forces as they are buckle a crowned top later than their largest, taken as even all over and from all sides: what
/// they lack of it is pushed by nothing. Sought only where the largest says too little.
#[test]
fn what_presses_a_crown_buckles_it_no_sooner_than_if_it_were_even() {
    let top = example("survey-launch");
    let factor = top.criteria.buckling_factor.value.value;
    // All that acts so many times as hard, in the gust that presses most.
    let pressed = |times: f64| {
        let mut analysis = Analysis::new(&top, DIVISIONS).unwrap();
        analysis.cases.retain(|case| case.id == "storm-up");
        let case = &mut analysis.cases[0];
        (case.gravity, case.gear_gravity) = (case.gravity * times, case.gear_gravity * times);
        (case.pressure, case.wind) = (case.pressure * times, wind_times(case.wind, times));
        let method = analysis.with_plate_method().whole.unwrap().unwrap();
        (method.pressed[0], method.even_push.unwrap().bears.unwrap())
    };
    let (calm, bears) = pressed(0.6);
    assert!((calm.most / bears).value * factor < 0.45 && calm.buckles_at.is_none());
    // What holds the top keeps two thirds of its stiffness in the sun, so that it is looked for sooner.
    let full = pressed(1.0).0;
    assert!((full.most / bears).value * factor < 0.7 && full.buckles_at.is_some());
    assert!((calm.as_even(bears) / calm.most).value - 1.0 < 1e-12);
    let [twice, thrice] = [2.0, 3.0].map(|times| pressed(times).0);
    for pressed in [twice, thrice] {
        let even = pressed.as_even(bears);
        assert!(even < pressed.most && even > pressed.most * 0.01, "{pressed:?}");
        assert!((pressed.most / calm.most).value > 1.5 && pressed.error.value < 0.011, "{pressed:?}");
    }
    let times = [twice, thrice].map(|pressed| pressed.buckles_at.unwrap().value);
    assert!((times[0] / times[1] / 1.5 - 1.0).abs() < 5e-3, "{times:?}");
}

fn wind_times(wind: ZonePressure, times: f64) -> ZonePressure {
    ZonePressure { interior: wind.interior * times, edge: wind.edge * times, corner: wind.corner * times }
}

/// Under the middle of a foot the top sags into a bend that falls off within the foot: it is looked at there, wherever the
/// triangles lie.
#[test]
fn what_moves_is_looked_at_in_its_middle() {
    let top = example("survey-launch");
    let analysis = Analysis::new(&top, DIVISIONS).unwrap().with_plate_method();
    let people = analysis.fields().find(|forces| analysis.cases[forces.case].people.is_some()).unwrap();
    let peaks = people.regions.iter().flat_map(|region| &region.peaks);
    assert!(peaks.filter(|peak| peak.load_at == Some(peak.at)).count() > 1);
}

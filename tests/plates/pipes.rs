//! Pipes that bend on their posts, against beams by hand: a top so limber that the pipes carry all of it.

use skinspan::{
    advice::{Change, changed},
    analysis::{Analysis, DIVISIONS, PipeForces},
    check::{CHECKS, Measure, Method, Outcome, Part, Verdict, run},
    geometry::Polyline,
    input::{NamedText, read_design, read_tables},
    report::{Report, cautions, frame_loads},
    top::Top,
    units::{Force, Length},
};

use uom::si::length::inch;

use crate::tops::{example, on_rigid_pipes};

/// The top carries this share of a moment, and a little less than half of its weight hangs on each of two rails alike.
const SHARED: f64 = 1e-2;
/// Over the middle of three posts: the bed yields, and the top helps most where the pipe turns fastest.
const OVER_A_POST: f64 = 3e-2;

/// A strip of 2 m by 0.5 m on two tubes of 60 mm by 5 mm, some 300 times as stiff as the strip.
fn limber(posts: &str, wall: &str) -> Top {
    limber_with(posts, wall, "")
}

/// The same with more on it.
fn limber_with(posts: &str, wall: &str, more: &str) -> Top {
    let rail = |name: &str, y: &str| {
        format!(
            "[[pipe]]\nname = \"{name}\"\noutside = \"60 mm\"\n{wall}\nalloy = \"6061-t6\"\nposts = {posts}\n\
             along = [[\"0 mm\", \"{y}\"], [\"2000 mm\", \"{y}\"]]\n"
        )
    };
    let text = format!(
        "[top]\noutline = {{ length = \"2 m\", width = \"0.5 m\" }}\nprocess = \"hand\"\nresin = \"polyester\"\n\
         outer = [\"mat 300 g/m2\"]\ncore = {{ material = \"pvc-foam\", density = \"80 kg/m3\", thickness = \"10 mm\" }}\n\
         inner = [\"mat 300 g/m2\"]\n{}{}{more}[service]\nspeed = \"none\"\nstorm = \"none\"\ntrailer = \"none\"\nslam = \"none\"\n\
         people = 0\nhand_load = \"0 N\"\nwalking = \"no-walk\"\nunderside = \"open\"\nsun = \"none\"\n",
        rail("port", "50 mm"),
        rail("starboard", "450 mm")
    );
    let file = NamedText { name: "limber.toml".to_owned(), text };
    read_design(&file, &read_tables(&[]).unwrap(), None)
        .unwrap_or_else(|problems| panic!("{}", problems[0].render(false)))
}

/// Both rails, of which the mesh makes one a little worse.
fn at_rest(analysis: &Analysis<'_>) -> Vec<PipeForces> {
    let case = analysis.cases.iter().position(|case| case.id == "own-weight").unwrap();
    analysis.fields().find(|forces| forces.case == case).unwrap().pipes.clone()
}

fn bending(analysis: &Analysis<'_>) -> Vec<Outcome> {
    let of = |outcome: &Outcome| CHECKS[outcome.check].id() == "pipe-bending";
    run(analysis).into_iter().filter(of).collect()
}

#[test]
fn a_pipe_on_two_posts_is_a_beam_on_two_supports() {
    let top = limber("[\"0 mm\", \"2000 mm\"]", "wall = \"5 mm\"");
    let analysis = Analysis::new(&top, DIVISIONS).unwrap().with_plate_method();
    let outcomes = bending(&analysis);
    let own = outcomes
        .iter()
        .find(|outcome| outcome.case.is_some_and(|case| analysis.cases[case].id == "own-weight"))
        .unwrap();
    let Part::Support(number) = own.place.part else { panic!("{own:?}") };
    let pipe = &at_rest(&analysis)[number];
    // Half of the weight W on each: w L²/8 = (W/2) L/8 in the middle, W/4 on each post, nearly nothing beside a weld.
    let weight = top.weight().bare.value * 9.806_65;
    let moment = weight * 2.0 / 16.0;
    assert!((pipe.moment.value / moment - 1.0).abs() < SHARED, "{} {moment}", pipe.moment.value);
    assert_eq!(pipe.moment, pipe.bent.moment);
    assert!((pipe.bent.at.x.value - 1.0).abs() < 0.1, "{:?}", pipe.bent.at);
    assert_eq!(pipe.posts.len(), 2);
    for post in &pipe.posts {
        assert!((post.push.value / (weight / 4.0) - 1.0).abs() < SHARED, "{post:?} {weight}");
        assert_eq!(post.pull, Force::default());
    }
    assert!(pipe.bent_at_weld.moment.value < 0.2 * moment, "{:?}", pipe.bent_at_weld);
    // Z = π (60⁴ − 50⁴)/(32 × 60) = 10 979 mm³; 240 MPa between the posts, factor 1.65.
    let Verdict::Compared(finding) = &own.verdict else { panic!("{own:?}") };
    let stress = pipe.moment.value * (1.0 + pipe.bent.error.value) / 10.979e-6;
    let Measure::Pressure(demand) = finding.demand else { panic!("{finding:?}") };
    assert_eq!(own.method, Method::Plate);
    assert!((demand.value / stress - 1.0).abs() < 1e-3, "{demand:?} {stress}");
    assert!((finding.utilisation.value / (stress * 1.65 / 240e6) - 1.0).abs() < 1e-3, "{finding:?}");
}

#[test]
fn over_a_post_in_the_middle_the_weld_counts() {
    let top = limber("[\"0 mm\", \"1000 mm\", \"2000 mm\"]", "wall = \"5 mm\"");
    let analysis = Analysis::new(&top, DIVISIONS).unwrap().with_plate_method();
    let worst = &bending(&analysis)[0];
    let Part::Weld(number) = worst.place.part else { panic!("{worst:?}") };
    let pipe = &at_rest(&analysis)[number];
    // Two spans l of 1 m: w l²/8 over the middle post, which bears 10/8 w l, the others 3/8 w l.
    let load = top.weight().bare.value * 9.806_65 / 4.0;
    let moment = load / 8.0;
    assert_eq!(pipe.bent, pipe.bent_at_weld);
    assert!((pipe.moment.value / moment - 1.0).abs() < OVER_A_POST, "{} {moment}", pipe.moment.value);
    assert!((pipe.bent.at.x.value - 1.0).abs() < 1e-6);
    for post in &pipe.posts {
        let share = if (post.at.x.value - 1.0).abs() < 1e-6 { 10.0 / 8.0 } else { 3.0 / 8.0 };
        assert!((post.push.value / (share * load) - 1.0).abs() < OVER_A_POST, "{post:?} {load}");
    }
    // 115 MPa in softened metal.
    let stress = pipe.moment.value * (1.0 + pipe.bent.error.value) / 10.979e-6;
    assert!((worst.utilisation().unwrap().value / (stress * 1.65 / 115e6) - 1.0).abs() < 1e-3);
}

#[test]
fn what_is_not_known_of_a_pipe_is_open_and_says_what_to_give() {
    for (posts, wall, words) in [
        ("[\"0 mm\", \"2000 mm\"]", "", "give `wall`"),
        ("[\"0 mm\"]", "wall = \"5 mm\"", "two `posts` or more"),
        ("[\"0 mm\", \"2000 mm\"]", "wall = \"1 mm\"", "may buckle before it yields"),
    ] {
        let top = limber(posts, wall);
        let by_hand = Analysis::new(&top, DIVISIONS).unwrap();
        assert!(bending(&by_hand).is_empty(), "the hand method knows nothing of it");
        let outcomes = bending(&by_hand.with_plate_method());
        assert_eq!(outcomes.len(), 2, "{outcomes:?}");
        for outcome in &outcomes {
            let Verdict::NotEvaluated(reason) = &outcome.verdict else { panic!("{outcome:?}") };
            assert!(reason.contains(words), "{reason}");
        }
    }
    // 15 √(250/240) allows D/t = 26.04: 2.304 mm.
    let least = |wall: &str| {
        let top = limber("[\"0 mm\", \"2000 mm\"]", wall);
        let analysis = Analysis::new(&top, DIVISIONS).unwrap().with_plate_method();
        bending(&analysis).iter().all(|outcome| outcome.utilisation().is_some())
    };
    assert!(least("wall = \"2.31 mm\"") && !least("wall = \"2.30 mm\""));
}

#[test]
fn a_top_that_is_pushed_buckles_as_a_strip_over_its_pipes() {
    // Rigid pipes 560 mm apart below a panel of 1 m by 0.6 m: the same from all sides as across, but for its rims.
    let text = "[top]\noutline = { length = \"1 m\", width = \"0.6 m\" }\nprocess = \"hand\"\nresin = \"polyester\"\n\
        outer = [\"mat 450 g/m2\"]\ncore = { material = \"pvc-foam\", density = \"80 kg/m3\", thickness = \"10 mm\" }\n\
        inner = [\"mat 450 g/m2\"]\n\
        [[pipe]]\noutside = \"40 mm\"\nalong = [[\"0 m\", \"20 mm\"], [\"1 m\", \"20 mm\"]]\n\
        [[pipe]]\noutside = \"40 mm\"\nalong = [[\"0 m\", \"580 mm\"], [\"1 m\", \"580 mm\"]]\n\
        [service]\nspeed = \"none\"\nstorm = \"none\"\ntrailer = \"none\"\nslam = \"none\"\npeople = 0\n\
        hand_load = \"300 N\"\nwalking = \"no-walk\"\nunderside = \"open\"\nsun = \"none\"\n";
    let file = NamedText { name: "strip.toml".to_owned(), text: text.to_owned() };
    let top = read_design(&file, &read_tables(&[]).unwrap(), None).unwrap();
    let analysis = Analysis::new(&top, DIVISIONS).unwrap().with_plate_method();
    let method = analysis.whole.as_ref().unwrap().as_ref().unwrap();
    assert!(method.pressed.is_empty(), "a flat top is not pressed by what lies on it");
    let outcomes = run(&analysis);
    let allowable = |method: Method| {
        let hand = |outcome: &&Outcome| {
            CHECKS[outcome.check].id() == "panel-buckling"
                && outcome.method == method
                && outcome.case.is_some_and(|case| analysis.cases[case].id == "hand-down")
        };
        let Verdict::Compared(finding) = &outcomes.iter().find(hand).unwrap().verdict else { panic!("open") };
        let Measure::ForcePerWidth(allowable) = finding.allowable else { panic!("{finding:?}") };
        (allowable.value, finding.utilisation.value)
    };
    let ((hand, by_hand), (plate, on_plate)) = (allowable(Method::Hand), allowable(Method::Plate));
    // Its free ends and the rims that hang over are pushed too, which makes it buckle earlier; never later.
    assert!(plate < hand && plate > hand * 0.7, "{plate} {hand}");
    let error = method.even_push.unwrap().error.value;
    assert!(error < 0.02, "{error}");
    assert!((on_plate / by_hand / ((1.0 + error) * hand / plate) - 1.0).abs() < 1e-6, "{on_plate} {by_hand}");
}

#[test]
fn softness_is_felt_beside_the_pipes_not_with_them() {
    let softest = |name: &str, rigid: bool| {
        let top = if rigid { on_rigid_pipes(name) } else { example(name) };
        let analysis = Analysis::new(&top, DIVISIONS).unwrap().with_plate_method();
        let outcomes = run(&analysis);
        let used = |method: Method| {
            let of = |outcome: &&Outcome| CHECKS[outcome.check].id() == "underfoot" && outcome.method == method;
            outcomes.iter().find(of).unwrap().utilisation().unwrap().value
        };
        let tip: Length =
            analysis.fields().filter_map(|forces| Some(forces.tip.first()?.sag.abs())).reduce(Length::max).unwrap();
        (used(Method::Hand), used(Method::Plate), tip.value)
    };
    let (_, limber, sinks) = softest("ferry-tender-mended", false);
    let (_, rigid, stays) = softest("ferry-tender-mended", true);
    assert!(sinks > 1.5 * stays, "{sinks} {stays}");
    assert!((limber / rigid - 1.0).abs() < 0.25, "{limber} {rigid}");
    // A bay on four rigid sides: a series by hand against the plate, which also hangs over its pipes.
    let (hand, plate, _) = softest("galley-roof", true);
    assert!((plate / hand - 1.0).abs() < 0.2, "{plate} {hand}");
}

#[test]
fn posts_stay_where_they_stand_when_pipes_grow() {
    let mut top = example("ferry-tender-mended");
    // One rail is drawn from its far end.
    let turned = top.supports[1].along.points().iter().rev().copied().collect();
    top.supports[1].along = Polyline::new(turned).unwrap();
    let longer = changed(&top, &Change::PipesLonger(Length::new::<inch>(1.0))).unwrap();
    for (before, after) in top.supports.iter().zip(&longer.supports) {
        assert!(after.along.length() > before.along.length());
        for (then, now) in before.posts().iter().zip(after.posts()) {
            let moved = before.along.at(*then).distance(after.along.at(*now));
            assert!(moved.get::<inch>() < 1e-9, "{moved:?}");
        }
    }
}

#[test]
fn beyond_its_last_post_a_pipe_hangs_over() {
    let top = limber("[\"500 mm\", \"1500 mm\"]", "wall = \"5 mm\"");
    let analysis = Analysis::new(&top, DIVISIONS).unwrap().with_plate_method();
    let own = analysis.cases.iter().position(|case| case.id == "own-weight").unwrap();
    let forces = analysis.fields().find(|forces| forces.case == own).unwrap();
    // Against what does not move: between the posts, in the circle through four of them, its middle on a place of the mesh,
    // which may leave a tenth of it out; the ends as tips.
    let (between, tip) = (forces.between[0], forces.tip[0]);
    assert!(between.at.x.value > 0.499 && between.at.x.value < 1.501, "{between:?}");
    assert!((between.over.value / 1.0_f64.hypot(0.4) - 0.95).abs() < 0.05 + 1e-9, "{between:?}");
    // Between the rails, but not between their posts.
    assert!(tip.at.x.value < 0.501 || tip.at.x.value > 1.499, "{tip:?}");
    assert!(tip.at.y.value > 0.05 && tip.at.y.value < 0.45, "{tip:?}");
}

#[test]
fn short_tips_are_ranked_as_they_are_judged() {
    let top = limber("[\"0 mm\", \"2000 mm\"]", "wall = \"5 mm\"");
    let analysis = Analysis::new(&top, DIVISIONS).unwrap().with_plate_method();
    // 4 mm over 0.02: no tip of 50 mm beside a rail counts by less than 200 mm.
    for sag in analysis.fields().flat_map(|forces| &forces.tip) {
        assert!(sag.over.value > 0.2 - 1e-9, "{sag:?}");
    }
}

/// Between a limber rail and a stiffer one the top lies aslant, which is no sag of its own: against the line between them
/// it sags as it does between rigid ones.
#[test]
fn what_lies_aslant_between_two_pipes_does_not_sag_by_it() {
    let sag = |walls: [Option<f64>; 2]| {
        let mut top = limber("[\"0 mm\", \"2000 mm\"]", "wall = \"5 mm\"");
        for (support, share) in top.supports.iter_mut().zip(walls) {
            let pipe = support.pipe_mut().unwrap();
            pipe.wall = share.map(|share| pipe.outside * share);
        }
        let analysis = Analysis::new(&top, DIVISIONS).unwrap().with_plate_method();
        let case = analysis.cases.iter().position(|case| case.id == "own-weight").unwrap();
        let forces = analysis.fields().find(|forces| forces.case == case).unwrap();
        forces.between[1].sag.value.abs()
    };
    let (limber, rigid) = (sag([Some(0.05), Some(0.4)]), sag([None, None]));
    assert!((limber / rigid - 1.0).abs() < 0.1, "{limber:e} {rigid:e}");
}

/// A cross pipe in the middle of both rails, which lie at 50 and 450 mm.
fn crossed(posts: &str) -> Top {
    crossed_with(["50 mm", "450 mm"], posts, "wall = \"5 mm\"")
}

fn crossed_with([from, to]: [&str; 2], posts: &str, wall: &str) -> Top {
    let bar = format!(
        "[[pipe]]\nname = \"bar\"\noutside = \"60 mm\"\nwall = \"5 mm\"\nalloy = \"6061-t6\"\n{posts}\n\
         along = [[\"1000 mm\", \"{from}\"], [\"1000 mm\", \"{to}\"]]\n"
    );
    limber_with("[\"0 mm\", \"2000 mm\"]", wall, &bar)
}

#[test]
fn where_pipes_meet_both_count_as_softened_and_it_is_said() {
    let top = crossed("posts = [\"20 mm\", \"380 mm\"]");
    let joints = top.joints();
    assert_eq!(joints.iter().map(|joint| joint.pipes).collect::<Vec<_>>(), [[0, 2], [1, 2]]);
    assert!((joints[0].at.x.value - 1.0).abs() < 1e-9 && (joints[1].at.y.value - 0.45).abs() < 1e-9);
    let analysis = Analysis::new(&top, DIVISIONS).unwrap().with_plate_method();
    for rail in &at_rest(&analysis)[..2] {
        // Beside its posts a rail hardly bends; beside the bar, which the panel ties it to, it does.
        assert!((rail.bent_at_weld.at.x.value - 1.0).abs() < 0.1, "{:?}", rail.bent_at_weld);
        assert!(rail.bent_at_weld.moment.value > 0.3 * rail.bent.moment.value, "{rail:?}");
    }
    let table = read_tables(&[]).unwrap();
    let report = Report::new(&top, &table);
    let said = cautions(&report).into_iter().find(|caution| caution.starts_with("Pipes cross or touch: ")).unwrap();
    assert!(said.contains("port and bar at x 1000 mm") || said.contains("port and bar at x 39.37 in"), "{said}");
    assert!(said.contains("starboard and bar at x "), "{said}");
}

#[test]
fn a_bar_hands_its_load_to_the_pipes_that_carry_it() {
    // Cut to the middles of the rails, or to their sides: 30 mm short of them.
    let all: Vec<[f64; 4]> = [["50 mm", "450 mm"], ["80 mm", "420 mm"]]
        .into_iter()
        .map(|ends| {
            let top = crossed_with(ends, "", "wall = \"5 mm\"");
            assert_eq!(top.beams(), [true; 3]);
            let analysis = Analysis::new(&top, DIVISIONS).unwrap().with_plate_method();
            let pipes = at_rest(&analysis);
            let posts: f64 = pipes.iter().flat_map(|pipe| &pipe.posts).map(|post| post.push.value).sum();
            let weight = top.weight().bare.value * 9.806_65;
            assert!((posts / weight - 1.0).abs() < 1e-6, "{posts} {weight}");
            let [port, bar] = [&pipes[0], &pipes[2]];
            assert!(bar.posts.is_empty() && bar.joints.len() == 2, "{bar:?}");
            for joint in &bar.joints {
                assert!(joint.push.value > 0.0 && joint.pull == Force::default(), "{joint:?}");
            }
            // The other way round for the rail, but for the larger of two degrees: it is handed down to it.
            assert!((port.joints[0].pull.value / bar.joints[0].push.value - 1.0).abs() < 1e-3, "{port:?} {bar:?}");
            // The bar is bent no more than by all of it in its middle.
            let handed = bar.joints[0].push.value + bar.joints[1].push.value;
            assert!(bar.moment.value > 0.0 && bar.moment.value < handed * 0.4 / 4.0, "{bar:?}");
            // No reason not to judge it.
            let outcomes = bending(&analysis);
            assert!(!outcomes.is_empty() && outcomes.iter().all(|outcome| outcome.utilisation().is_some()));
            [port.moment.value, bar.moment.value, handed, pipes[1].moment.value]
        })
        .collect();
    for (middle, side) in all[0].iter().zip(all[1]) {
        assert!((side / middle - 1.0).abs() < 0.02, "{all:?}");
    }
}

#[test]
fn a_bar_on_pipes_of_which_too_little_is_known_is_no_pass() {
    let top = crossed_with(["50 mm", "450 mm"], "", "");
    assert_eq!(top.beams(), [false; 3]);
    let analysis = Analysis::new(&top, DIVISIONS).unwrap().with_plate_method();
    let open = bending(&analysis).into_iter().find(|outcome| outcome.place.part == Part::Support(2)).unwrap();
    let Verdict::NotEvaluated(reason) = &open.verdict else { panic!("{open:?}") };
    assert!(reason.starts_with("bar: its bending is not known. "), "{reason}");
    assert!(reason.contains("(port and starboard) too little is known"), "{reason}");
}

#[test]
fn what_a_joint_must_take_stands_with_the_pipe_that_is_carried() {
    let table = read_tables(&[]).unwrap();
    let top = crossed("");
    let loads = frame_loads(&Report::new(&top, &table));
    let joints: Vec<usize> = loads.iter().map(|load| load.joints.len()).collect();
    assert_eq!(joints, [0, 0, 2]);
    assert!(loads[2].moment.is_some() && loads[2].posts.is_empty());
    assert!(loads[2].joints.iter().all(|joint| joint.push.value > Force::default()));
}

#[test]
fn pipes_touch_that_end_nearer_than_both_are_thick() {
    let bar = |from: &str| {
        format!(
            "[[pipe]]\nname = \"bar\"\noutside = \"60 mm\"\nalong = [[\"1000 mm\", \"{from}\"], [\"1000 mm\", \"450 mm\"]]\n"
        )
    };
    let joints = |from: &str| limber_with("[]", "", &bar(from)).joints();
    assert_eq!(joints("109 mm").len(), 2);
    let one = joints("111 mm");
    assert_eq!(one.iter().map(|joint| joint.pipes).collect::<Vec<_>>(), [[1, 2]]);
    assert!(limber("[]", "").joints().is_empty());
}

//! Whole tops in the sun by the plate method.

use skinspan::{
    analysis::{Analysis, Asked, DIVISIONS, Fineness, PlateForces, PlateMethod},
    check::{CHECKS, Method, Outcome, run},
    load_case::LoadCase,
    top::Top,
    units::{Force, Length},
};

use crate::tops::{example, on_rigid_pipes};

/// Of each post the worse of two degrees, whose places of opening differ by a node.
const WORSE_OF_TWO: f64 = 2e-3;
const ROUNDING: f64 = 1e-9;
/// What conjugate gradients leave of the few loads of a state.
const SETTLED: f64 = 1e-6;

/// By the plate method, the case of the sun changed.
fn solved(top: &Top, change: impl Fn(&mut LoadCase)) -> (PlateMethod, usize) {
    let analysis = Analysis::new(top, DIVISIONS).unwrap();
    let mut cases = analysis.cases.clone();
    cases.retain(|case| ["own-weight", "sun", "storm-up"].contains(&case.id));
    let sun = cases.iter().position(|case| case.id == "sun").unwrap();
    change(&mut cases[sun]);
    let of_states = (&cases[..], &analysis.knockdowns[..]);
    let swinging = analysis.swinging_stiffness();
    let asked = Asked { cases: None, swinging: Some(swinging), buckling: true };
    (PlateMethod::new(top, &analysis.sections, of_states, asked, Fineness::usual()).unwrap(), sun)
}

fn of_case(method: &PlateMethod, case: usize) -> &PlateForces {
    method.cases.iter().find(|forces| forces.case == case).unwrap()
}

fn bows(method: &PlateMethod, case: usize) -> Vec<f64> {
    of_case(method, case).bow.iter().map(|bow| bow.sag.value).collect()
}

#[test]
fn the_sun_bends_a_top_and_no_other_case_knows_of_it() {
    let top = example("galley-roof");
    let ((hot, sun), (cold, _)) = (solved(&top, |_| ()), solved(&top, |case| case.temperatures = None));
    for (hot, cold) in hot.cases.iter().zip(&cold.cases) {
        assert_eq!(format!("{hot:?}") == format!("{cold:?}"), hot.case != sun, "{}", hot.case);
        assert_eq!(hot.bow.is_empty(), hot.case != sun);
    }
    // Four walls hold it down: they press where they only bore its weight, and its middle rises.
    let pushed = |method| of_case(method, sun).pipes.iter().map(|pipe| pipe.push.value).fold(0.0, f64::max);
    assert!(pushed(&hot) > 5.0 * pushed(&cold), "{} {}", pushed(&hot), pushed(&cold));
    let middle = |method| of_case(method, sun).between.iter().map(|sag| sag.sag).fold(Length::default(), Length::min);
    assert!(middle(&hot) < Length::default() && middle(&cold) == Length::default());
}

#[test]
fn weight_has_no_part_in_the_bow_and_counts_beside_it() {
    // One on fixings, from which the top may lift off, the other held down all along.
    for name in ["rail-row", "night-watch"] {
        let top = example(name);
        let ((once, sun), (twice, _)) = (solved(&top, |_| ()), solved(&top, |case| case.gravity *= 2.0));
        assert!(!bows(&once, sun).is_empty());
        for (once, twice) in bows(&once, sun).iter().zip(bows(&twice, sun)) {
            assert!((twice / once - 1.0).abs() < SETTLED, "{once} {twice}");
        }
        let (cold, _) = solved(&top, |case| case.temperatures = None);
        // Heat weighs nothing: it presses some posts down and pulls at others.
        let posts = |method: &PlateMethod| -> Vec<f64> {
            let posts = of_case(method, sun).pipes.iter().flat_map(|pipe| pipe.posts.clone());
            posts.map(|post| (post.push - post.pull).value).collect()
        };
        let (hot, cold) = (posts(&once), posts(&cold));
        let size: f64 = hot.iter().map(|post| post.abs()).sum();
        let off = hot.iter().sum::<f64>() - cold.iter().sum::<f64>();
        assert!(off.abs() < WORSE_OF_TWO * size, "{name}: {hot:?} {cold:?}");
    }
}

#[test]
fn fixings_hold_down_what_would_bow_along_the_rail() {
    let top = example("rail-row");
    let most = |change: fn(&mut LoadCase)| {
        let (method, sun) = solved(&top, change);
        of_case(&method, sun).pipes.iter().flat_map(|pipe| pipe.fixings.clone()).fold(Force::default(), Force::max)
    };
    assert_eq!(most(|case| case.temperatures = None), Force::default(), "by its weight it lies on the rails");
    assert!(most(|_| ()) > Force::default());
}

#[test]
fn where_it_lifts_off_it_bows_more() {
    let bow = |top: &Top| {
        let (method, sun) = solved(top, |_| ());
        bows(&method, sun).into_iter().map(f64::abs).fold(0.0, f64::max)
    };
    let mut top = example("rail-row");
    let by_fixings = bow(&top);
    top.supports.iter_mut().for_each(|support| support.fastened = None);
    assert!(by_fixings > bow(&top) * 1.001, "{by_fixings} {}", bow(&top));
}

#[test]
fn the_bow_in_the_sun_is_judged_by_both_methods() {
    let top = on_rigid_pipes("night-watch");
    let analysis = Analysis::new(&top, DIVISIONS).unwrap().with_plate_method();
    let outcomes = run(&analysis);
    let of = |method: Method| -> &Outcome {
        let own = |outcome: &&Outcome| CHECKS[outcome.check].id() == "thermal-bow" && outcome.method == method;
        outcomes.iter().find(own).unwrap()
    };
    let [hand, plate] = Method::ALL.map(|method| of(method).utilisation().unwrap().value);
    // On two rigid pipes as by hand, but for what holding it straight along them adds half way between.
    assert!((plate / hand - 1.0).abs() < 0.1, "{hand} {plate}");
    let limit = top.criteria.bow_limit.value;
    for forces in analysis.fields().filter(|forces| !forces.bow.is_empty()) {
        let worst = forces.bow.iter().map(|bow| (bow.sag.abs() / (bow.over * limit)).value).fold(0.0, f64::max);
        assert!((plate / (worst * (1.0 + forces.error.bow.value)) - 1.0).abs() < ROUNDING, "{worst} {plate}");
        assert!(forces.error.bow.value > 0.0 && forces.error.bow.value < 1e-3, "{:?}", forces.error);
    }
}

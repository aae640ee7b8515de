//! What maps are drawn from has the numbers of the checks.

use skinspan::{
    analysis::{Analysis, LookedAt, Region},
    check::{CHECKS, Finding, Method, Outcome, PliesUsed, Verdict, core_shear_used},
    finite_element::State,
    geometry::Point,
    report::Report,
    units::{Length, Ratio},
};
use uom::si::{length::meter, ratio::ratio};

use crate::{table, top};

fn by_plate<'r>(report: &'r Report<'_>, check: &str) -> &'r Outcome {
    let own = |outcome: &&Outcome| CHECKS[outcome.check].id() == check && outcome.method == Method::Plate;
    report.envelope.iter().find(own).expect("an outcome by the plate method")
}

fn finding(outcome: &Outcome) -> &Finding {
    match &outcome.verdict {
        Verdict::Compared(finding) => finding,
        Verdict::NotEvaluated(reason) => panic!("{reason}"),
    }
}

/// The map of a check has, where the check found its worst, what the check found there. The check joins states before it asks how
/// much they use, the map after; where triangles meet that differs by what the solution is off by.
const JOINED: f64 = 0.02;

fn at_its_worst(name: &str) {
    let (top, table) = (top(name), table());
    let report = Report::new(&top, &table);
    let analysis = report.analysis.as_ref().expect("an analysis");
    let outcome = by_plate(&report, "ply-failure");
    let (case, at) = (outcome.case.expect("a case"), outcome.place.at.expect("a place"));
    let plies = PliesUsed::new(analysis);
    let used = |region: Region, state: &State| plies.most(case, region, state).expect("a strength");
    let looked = LookedAt { case, load_at: outcome.place.load_at, at, at_rest: false };
    let found = found(analysis, looked, &used);
    let error = 1.0 + outcome.numerical_error().expect("an error").get::<ratio>();
    let wanted = finding(outcome).utilisation.get::<ratio>() / error;
    assert!((found / wanted - 1.0).abs() < JOINED, "{name}: {found} on the map, {wanted} in the check");
}

/// What maps are tinted by is the formula of the checks: at the states that these look at it gives what they found.
#[test]
fn what_is_used_at_a_state_is_what_the_checks_say() {
    let (top, table) = (top("bow-wing"), table());
    let report = Report::new(&top, &table);
    let analysis = report.analysis.as_ref().expect("an analysis");
    let plies = PliesUsed::new(analysis);
    let mut looked_at = 0;
    for forces in analysis.fields() {
        let (mut shear, mut ply) = (0.0_f64, 0.0_f64);
        for region in &forces.regions {
            let with = |error: Ratio| 1.0 + error.get::<ratio>();
            for peak in region.shears() {
                let used = core_shear_used(analysis, forces.case, region.region, &peak.state).expect("a strength");
                shear = shear.max(used.value * with(region.error.shear));
            }
            for peak in &region.peaks {
                let used = plies.most(forces.case, region.region, &peak.state).expect("a strength");
                ply = ply.max(used.value * with(region.error.moment));
            }
        }
        for (check, found) in [("core-shear", shear), ("ply-failure", ply)] {
            let own = |outcome: &&Outcome| {
                CHECKS[outcome.check].id() == check
                    && outcome.method == Method::Plate
                    && outcome.case == Some(forces.case)
            };
            let wanted = report.envelope.iter().find(own).and_then(Outcome::utilisation).expect("an outcome").value;
            // Of two that are as bad as makes no difference a check keeps the first.
            assert!((found / wanted - 1.0).abs() < 1e-6, "{check}, {}: {found}, {wanted}", forces.case);
            looked_at += 1;
        }
    }
    assert!(looked_at > 10, "{looked_at}");
}

/// What a map has at the place that it was asked for.
fn found(analysis: &Analysis<'_>, looked: LookedAt, of: &dyn Fn(Region, &State) -> Ratio) -> f64 {
    let all = analysis.all_over(looked, of).expect("a solution");
    let spread = all.spread(|spot| of(spot.region, &spot.state));
    let near = |a: &(&Point, &Ratio), b: &(&Point, &Ratio)| {
        a.0.distance(looked.at).value.total_cmp(&b.0.distance(looked.at).value)
    };
    let (place, found) = spread.places.iter().zip(&spread.values).min_by(near).expect("places");
    assert!(place.distance(looked.at) < Length::new::<meter>(1e-6), "the worst place is no place of the map");
    found.value
}

/// Every largest sag against what does not move, person by person, is that of its map to rounding: triangles share deflections.
#[test]
fn the_map_of_sag_has_the_sags_of_the_analysis() {
    let mut people = 0;
    for name in ["galley-roof", "rail-row"] {
        let (top, table) = (top(name), table());
        let report = Report::new(&top, &table);
        let analysis = report.analysis.as_ref().expect("an analysis");
        let size = |_: Region, state: &State| Ratio::from(state.deflection.get::<meter>().abs());
        for forces in analysis.fields() {
            let Some(sag) = forces.between.first() else { continue };
            let looked = LookedAt { case: forces.case, load_at: sag.load_at, at: sag.at, at_rest: true };
            let on_map = found(analysis, looked, &size);
            let wanted = sag.sag.get::<meter>().abs();
            assert!(
                (on_map / wanted - 1.0).abs() < 1e-6,
                "{name}, {}: {on_map}, {wanted}",
                analysis.cases[forces.case].id
            );
            people += usize::from(sag.load_at.is_some());
        }
    }
    assert!(people > 1, "{people}");
}

#[test]
fn the_map_of_plies_has_what_the_check_has() {
    at_its_worst("galley-roof");
    at_its_worst("rail-row");
}

#[test]
fn the_map_covers_the_top_once() {
    let (top, table) = (top("bow-wing"), table());
    let report = Report::new(&top, &table);
    let analysis: &Analysis<'_> = report.analysis.as_ref().expect("an analysis");
    let outcome = by_plate(&report, "sag");
    let looked =
        LookedAt { case: outcome.case.expect("a case"), load_at: None, at: top.outline.centre(), at_rest: false };
    let all = analysis.all_over(looked, &|_, state| Ratio::from(state.deflection.value.abs())).expect("a solution");
    let spread = all.spread(|spot| spot.state.deflection);
    let area: f64 = spread
        .triangles
        .iter()
        .map(|corners| {
            let [a, b, c] = corners.map(|corner| [spread.places[corner].x.value, spread.places[corner].y.value]);
            let own = 0.5 * ((b[0] - a[0]) * (c[1] - a[1]) - (c[0] - a[0]) * (b[1] - a[1]));
            assert!(own > 0.0, "a triangle stands on its head");
            own
        })
        .sum();
    // The rim is cut into straight sides, which leave it by a four-hundredth of the smaller side at most.
    let exact = top.outline.area().value;
    assert!((area / exact - 1.0).abs() < 0.005, "{area} of {exact}");
}

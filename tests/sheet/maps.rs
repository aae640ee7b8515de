//! What maps are drawn from has the numbers of the checks.

use skinspan::{
    analysis::{Analysis, Region, Spread},
    check::{CHECKS, Finding, Method, Outcome, PliesUsed, Verdict, core_shear_used},
    finite_element::{State, Worst},
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

/// The check joins states before it asks how much they use, the map after; where triangles meet that differs by what the
/// solution is off by. Beside it the map is a degree lower, which the numerical error says.
const JOINED: f64 = 0.02;
/// Beside a palm at the rim moments die away within a hand's breadth: degree 3, by which maps are solved, makes that much less
/// of them than degree 4.
const BY_A_PALM: f64 = 0.1;

/// Under the middle of a foot the analysis looks, the map beside it.
const BETWEEN_FEET: f64 = 0.06;

fn at_its_worst(name: &str) {
    let (top, table) = (top(name), table());
    let report = Report::new(&top, &table);
    let analysis = report.analysis.as_ref().expect("an analysis");
    let outcome = by_plate(&report, "ply-failure");
    let plies = PliesUsed::new(analysis);
    let used = |case: usize, region: Region, state: &State| plies.most(case, region, state).expect("a strength");
    let map = analysis.all_over().expect("a solution").spread(&used);
    let error = outcome.numerical_error().expect("an error").get::<ratio>();
    let wanted = finding(outcome).utilisation.get::<ratio>() / (1.0 + error);
    let largest = map.largest().map(|place| (place, map.values[place])).expect("a place");
    let on_map = at(&map, outcome.place.at.expect("a place"));
    let off = on_map.map_or(BETWEEN_FEET, |_| JOINED) + error;
    let (place, found) = on_map.unwrap_or(largest);
    assert!((found / wanted - 1.0).abs() < off, "{name}: {found} on the map, {wanted} in the check");
    assert_eq!(Some(map.cases[place]), outcome.case, "{name}");
    // Nothing on the map is worse than what the check found.
    assert!(largest.1 / wanted - 1.0 < JOINED + error, "{name}: {} on the map, {wanted} in the check", largest.1);
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

/// What a map has at a place; it has fewer of them than the analysis looks at.
fn at(map: &Spread, at: Point) -> Option<(usize, f64)> {
    let near = |a: &usize, b: &usize| map.places[*a].distance(at).value.total_cmp(&map.places[*b].distance(at).value);
    let nearest = (0..map.places.len()).min_by(near).expect("places");
    let hair = Length::new::<meter>(1e-6);
    if map.places[nearest].distance(at) > hair {
        return None;
    }
    // As the field and as the backing see it.
    let here = (0..map.places.len()).filter(|place| map.places[*place].distance(at) < hair);
    here.map(|place| (place, map.values[place])).reduce(|a, b| if b.1 > a.1 { b } else { a })
}

/// The error that is said of sag is that of the largest of a case; another's may be a little larger.
const ELSEWHERE: f64 = 1e-3;

/// The map is on the finest triangles; a case that does not govern may have been solved on the usual ones.
const ON_OTHER_TRIANGLES: f64 = 5e-3;

/// No sag of any case, person by person, is larger than the map has it there, and where the largest of all is the map has that.
#[test]
fn the_map_of_sag_has_the_sags_of_the_analysis() {
    let (mut people, mut looked_at) = (0, 0);
    for name in ["galley-roof", "rail-row", "kelp-harvester"] {
        let (top, table) = (top(name), table());
        let report = Report::new(&top, &table);
        let analysis = report.analysis.as_ref().expect("an analysis");
        let map = analysis.all_over().expect("a solution").sag();
        let plate = analysis.whole.as_ref().and_then(|whole| whole.as_ref().ok()).expect("a solution");
        let mut largest = (0.0, 0.0, 0, top.outline.centre());
        for forces in analysis.fields() {
            let as_the_map = plate.is_finer(forces.case) == plate.finest().is_finer();
            let elsewhere = if as_the_map { ELSEWHERE } else { ON_OTHER_TRIANGLES };
            let error = forces.error.sag.get::<ratio>() + elsewhere;
            for sag in forces.between.first().iter().chain(&forces.tip.first()) {
                let wanted = sag.sag.get::<meter>().abs();
                if let Some((_, on_map)) = at(&map, sag.at) {
                    assert!(on_map / wanted > 1.0 - error, "{name}, {}: {on_map}, {wanted}", forces.case);
                    people += usize::from(sag.load_at.is_some());
                }
                if wanted > largest.0 {
                    largest = (wanted, error, forces.case, sag.at);
                }
            }
        }
        // Where the largest of all is, no case makes a larger one.
        let (wanted, error, case, place) = largest;
        if let Some((number, on_map)) = at(&map, place) {
            assert!((on_map / wanted - 1.0).abs() <= error, "{name}: {on_map} {wanted}");
            assert_eq!(map.cases[number], case, "{name}");
            looked_at += 1;
        }
    }
    assert!(people > 0 && looked_at > 0, "{people} {looked_at}");
}

#[test]
fn the_map_of_plies_has_what_the_check_has() {
    at_its_worst("galley-roof");
    at_its_worst("rail-row");
}

/// At every worst state of the analysis the map of strain has no less than that state strains the faces of the skins by.
#[test]
fn the_map_of_strain_has_the_states_of_the_analysis() {
    let (top, table) = (top("bow-wing"), table());
    let report = Report::new(&top, &table);
    let analysis = report.analysis.as_ref().expect("an analysis");
    let strain =
        |region: Region, state: &State| analysis.sections.of(region).section.face_strains().largest(&state.resultants);
    let map = analysis.all_over().expect("a solution").spread(&|_, region, state| strain(region, state));
    let (mut largest, mut looked_at) = (0.0_f64, 0);
    for forces in analysis.fields() {
        for region in &forces.regions {
            // A conduit has a section of its own only for what lies right above it.
            if matches!(region.region, Region::Conduit(_)) {
                continue;
            }
            for peak in region.peaks.iter().filter(|peak| peak.worst != Worst::Shear) {
                let wanted = strain(region.region, &peak.state).value;
                let Some((_, found)) = at(&map, peak.at) else { continue };
                let by_a_palm = analysis.cases[forces.case].hand.map_or(0.0, |_| BY_A_PALM);
                let off = JOINED + by_a_palm + region.error.moment.value;
                assert!(found > wanted * (1.0 - off), "{:?} {:?}: {found} {wanted}", region.region, peak.worst);
                (largest, looked_at) = (largest.max(wanted), looked_at + 1);
            }
        }
    }
    assert!(looked_at > 30, "{looked_at}");
    let found = map.values[map.largest().expect("a place")];
    assert!((found / largest - 1.0).abs() < 0.1, "{found} {largest}");
}

#[test]
fn the_map_covers_the_top_once() {
    let (top, table) = (top("bow-wing"), table());
    let report = Report::new(&top, &table);
    let analysis: &Analysis<'_> = report.analysis.as_ref().expect("an analysis");
    let spread = analysis.all_over().expect("a solution").sag();
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

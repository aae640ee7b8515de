//! Rows of fixings, pipes and posts below whole tops: balance, and that the worse method counts.

use skinspan::{
    analysis::{Analysis, DIVISIONS, MountOn, PlateForces},
    check::{CHECKS, Method, Subject},
    input::{NamedText, read_design, read_tables},
    report::{Answer, Report, frame_loads, to_json, to_text},
    top::Top,
    units::Force,
};

use crate::tops::{example, on_rigid_pipes};

fn edited(name: &str, edits: &[(&str, &str)]) -> Top {
    let path = format!("{}/examples/{name}.toml", env!("CARGO_MANIFEST_DIR"));
    let text = edits.iter().fold(std::fs::read_to_string(path).unwrap(), |text, (from, to)| {
        assert!(text.contains(from), "{from}");
        text.replace(from, to)
    });
    read_design(&NamedText { name: name.to_owned(), text }, &read_tables(&[]).unwrap(), None).unwrap()
}

#[test]
fn fixings_and_posts_hold_what_the_wind_lifts() {
    let top = example("rail-row");
    let analysis = Analysis::new(&top, DIVISIONS).unwrap().with_plate_method();
    let storm = analysis.cases.iter().position(|case| case.id == "storm-up").unwrap();
    let forces = analysis.fields().find(|forces| forces.case == storm).unwrap();
    for pipe in &forces.pipes {
        // The wind lifts both rails all along: every post is pulled, and what the fixings hold goes down by the posts.
        let posts: f64 = pipe.posts.iter().map(|post| post.pull.value).sum();
        let fixings: f64 = pipe.fixings.iter().map(|pull| pull.value).sum();
        assert!(pipe.posts.iter().all(|post| post.push == Force::default()), "{:?}", pipe.posts);
        // Of each fixing the larger of two degrees, whose places of opening differ by a node.
        assert!(fixings > posts * (1.0 - 1e-9) && fixings < posts * 1.06, "{fixings} {posts}");
        let rows: Vec<_> = analysis
            .mount_forces
            .iter()
            .filter(|own| {
                own.on_plate && own.case == storm && analysis.mounts[own.mount].on == MountOn::Support(pipe.pipe)
            })
            .collect();
        assert_eq!(rows.len(), 1);
        let raised: f64 = rows[0].pulls.iter().map(|pull| pull.value).sum();
        assert!((raised / (fixings * (1.0 + pipe.fixings_error.value)) - 1.0).abs() < 1e-12);
    }
    // Both rails carry the wind less the weight of the top: zones against the sum of the posts.
    let case = &analysis.cases[storm];
    let all: f64 = forces.pipes.iter().flat_map(|pipe| &pipe.posts).map(|post| post.pull.value).sum();
    let weight = top.weight().bare.value * 9.806_65 * case.gravity.value;
    let area = top.outline.area().value;
    let (least, most) = (-case.wind.interior.value * area - weight, -case.wind.corner.value * area - weight);
    assert!(all > least && all < most, "{least} {all} {most}");
}

#[test]
fn a_row_that_only_the_plate_finds_too_weak_does_not_hold() {
    let wide = ("spacing = \"3.5 in\", end = \"2 in\"", "spacing = \"6 in\", end = \"3 in\"");
    let top = edited("rail-row", &[wide]);
    let table = read_tables(&[]).unwrap();
    assert_eq!(Report::by_hand(&top, &table).answer(), Answer::Holds);
    let report = Report::new(&top, &table);
    assert_eq!(report.answer(), Answer::DoesNotHold);
    let failing: Vec<_> = report.envelope.iter().filter(|outcome| !outcome.passes()).collect();
    assert!(
        failing
            .iter()
            .all(|outcome| outcome.method == Method::Plate && CHECKS[outcome.check].subject() == Subject::Fixings)
    );
    assert!(report.advice.is_empty(), "no change is tried on what only the plate method finds");
}

#[test]
fn the_frame_takes_the_larger_of_both_methods() {
    let top = example("rail-row");
    let table = read_tables(&[]).unwrap();
    let report = Report::new(&top, &table);
    let json = to_json(&report);
    for (number, load) in frame_loads(&report).iter().enumerate() {
        let (hand, plate) = (load.hand.unwrap(), load.plate.unwrap());
        assert!(plate.pull.value > hand.pull.value, "what lifts gathers over the posts of a limber pipe");
        assert_eq!(load.pull(), (plate.pull, Method::Plate));
        assert!(load.moment.unwrap().value.value > 0.0);
        assert_eq!(load.posts.len(), 2);
        assert!(load.posts[0].along < load.posts[1].along);
        let frame = &json["frame"][number];
        assert_eq!(frame["pull_method"], "plate");
        assert_eq!(frame["pull"], frame["plate"]["pull"]);
        assert_ne!(frame["pull"], frame["hand"]["pull"]);
        assert_eq!(frame["posts"][0]["pull_case"], "storm-up");
        assert!((frame["posts"][0]["along"]["value"].as_f64().unwrap() - 6.0).abs() < 0.1);
    }
    // A rigid pipe says nothing of posts.
    let rigid = on_rigid_pipes("night-watch");
    let report = Report::new(&rigid, &table);
    assert!(frame_loads(&report).iter().all(|load| load.posts.is_empty() && load.moment.is_none()));
}

/// A row whose worst pull the two degrees see differently is looked at on finer triangles, and where it is settled not. Cases
/// that do not govern stay as they were found.
#[test]
fn what_governs_by_the_plate_is_cut_finer() {
    let (top, table) = (example("rail-row"), read_tables(&[]).unwrap());
    let plate = |analysis: Analysis<'_>| analysis.whole.unwrap().unwrap();
    let usual = plate(Analysis::new(&top, DIVISIONS).unwrap().with_plate_method());
    let throughout = plate(Analysis::new(&top, DIVISIONS).unwrap().with_finer_plate());
    assert!(usual.finer.is_none() && throughout.finer.is_none());
    let report = Report::new(&top, &table);
    let analysis = report.analysis.as_ref().unwrap();
    let found = analysis.whole.as_ref().unwrap().as_ref().unwrap();
    let (cut, anew) = found.finer.as_ref().unwrap();
    assert_eq!((found.cut, *cut), (usual.cut, throughout.cut));
    assert!(cut.triangles > usual.cut.triangles * 3 / 2 && cut.is_finer() && !found.cut.is_finer());
    let governs = report.envelope.first().unwrap();
    assert!(anew.contains(&governs.case.unwrap()) && anew.len() < found.cases.len(), "{anew:?}");
    for ((own, usual), finer) in found.cases.iter().zip(&usual.cases).zip(&throughout.cases) {
        assert_eq!((own.case, own.case), (usual.case, finer.case));
        assert_eq!(anew.contains(&own.case), found.is_finer(own.case));
        if anew.contains(&own.case) {
            let pull = |forces: &PlateForces| forces.pipes.iter().map(|pipe| pipe.pull.value).fold(0.0, f64::max);
            assert!((pull(own) / pull(finer) - 1.0).abs() < 1e-3 && own != usual);
        } else {
            assert_eq!(own, usual);
        }
    }
    let json = to_json(&report);
    assert_eq!(json["plate"]["finer"]["triangles"], cut.triangles);
    let text = to_text(&report, true, 100);
    let said = text.split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(
        said.contains(&format!("Cut finer since what governs was not settled: {} triangles", cut.triangles)),
        "{said}"
    );

    let settled = example("galley-roof");
    let report = Report::new(&settled, &table);
    let found = report.analysis.as_ref().unwrap().whole.as_ref().unwrap().as_ref().unwrap();
    assert!(found.finer.is_none() && !found.cut.is_finer());
    assert!(to_json(&report)["plate"]["finer"].is_null());
}

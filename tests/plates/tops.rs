//! Whole tops by the plate method beside the hand method.

use skinspan::{
    analysis::{Analysis, DIVISIONS},
    input::{NamedText, read_design, read_tables},
    top::Top,
};

pub fn example(name: &str) -> Top {
    let path = format!("{}/examples/{name}.toml", env!("CARGO_MANIFEST_DIR"));
    let text = NamedText { name: name.to_owned(), text: std::fs::read_to_string(path).unwrap() };
    read_design(&text, &read_tables(&[]).unwrap(), None).unwrap()
}

#[test]
fn look() {
    for name in ["survey-launch", "galley-roof", "pilot-skiff", "ferry-tender", "night-watch"] {
        let top = example(name);
        let start = std::time::Instant::now();
        let hand = Analysis::new(&top, DIVISIONS).unwrap();
        let by_hand = start.elapsed();
        let analysis = hand.with_plate_method();
        eprintln!("== {name}: hand {by_hand:?}, plate {:?}", start.elapsed() - by_hand);
        let method = match analysis.whole.as_ref().unwrap() {
            Ok(method) => method,
            Err(error) => {
                eprintln!("{error}");
                continue;
            }
        };
        eprintln!(
            "triangles {} unknowns {} disc {:?} pipes {:?}",
            method.triangles, method.unknowns, method.disc, method.pipes
        );
        for forces in &method.cases {
            let shear = forces
                .regions
                .iter()
                .flat_map(|r| r.peaks.iter().map(move |p| (p.state.shear_size().value, r.region, p.at, p.load_at)))
                .max_by(|a, b| a.0.total_cmp(&b.0))
                .unwrap();
            let moment = forces
                .regions
                .iter()
                .flat_map(|r| {
                    r.peaks.iter().map(move |p| {
                        (
                            p.state.resultants.moment.x.value.abs().max(p.state.resultants.moment.y.value.abs()),
                            r.region,
                            p.at,
                        )
                    })
                })
                .max_by(|a, b| a.0.total_cmp(&b.0))
                .unwrap();
            let hand = analysis.strips.iter().filter(|s| s.case == forces.case);
            let (q, m) = hand.fold((0.0_f64, 0.0_f64), |(q, m), s| {
                s.regions.iter().fold((q, m), |(q, m), r| {
                    (q.max(r.shear.value.value), m.max(r.sagging.value.value).max(r.hogging.value.value))
                })
            });
            let push = forces.pipes.iter().map(|p| p.push.value).fold(0.0, f64::max);
            let pull = forces.pipes.iter().map(|p| p.pull.value).fold(0.0, f64::max);
            eprintln!(
                "{:14} {:.3}/{:.3}/{:.4} Q {:8.0} hand {:8.0} in {:?} at ({:.3},{:.3}) load {:?} | M {:7.0} hand {:7.0} {:?} ({:.2},{:.2}) | sag {:.2} tip {:.2} mm | push {:.0} pull {:.0} moment {:.0}",
                analysis.cases[forces.case].id,
                forces.error.shear.value,
                forces.error.moment.value,
                forces.error.sag.value,
                shear.0,
                q,
                shear.1,
                shear.2.x.value,
                shear.2.y.value,
                shear.3.map(|p| (p.x.value, p.y.value)),
                moment.0,
                m,
                moment.1,
                moment.2.x.value,
                moment.2.y.value,
                forces.between.map_or(0.0, |s| s.sag.value * 1e3),
                forces.tip.map_or(0.0, |s| s.sag.value * 1e3),
                push,
                pull,
                forces.pipes.iter().map(|p| p.moment.value).fold(0.0, f64::max)
            );
        }
    }
}

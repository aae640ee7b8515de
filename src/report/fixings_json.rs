//! The fixings of each mount, for machines.

use serde_json::{Value, json};
use uom::si::ratio::ratio;

use super::{
    Report,
    fixings::{largest, most},
    json::{method, number, quantity},
    prying::hardest,
    words,
};
use crate::{
    advice::Fitting,
    analysis::Analysis,
    check::{CHECKS, Method},
};

/// The fixings for machines.
pub(super) fn to_json(report: &Report<'_>) -> Vec<Value> {
    let Ok(analysis) = &report.analysis else { return Vec::new() };
    report.fittings.iter().map(|fitting| one_json(report, analysis, fitting)).collect()
}

fn one_json(report: &Report<'_>, analysis: &Analysis<'_>, fitting: &Fitting) -> Value {
    let system = report.top.report;
    let mount = &analysis.mounts[fitting.mount];
    let own = || analysis.mount_forces.iter().filter(|forces| forces.mount == fitting.mount);
    let case = |case: usize| analysis.cases[case].id;
    let places: Vec<Value> = mount
        .places
        .iter()
        .map(|place| {
            let backing = place.backing.filter(|backing| backing.holds(report.top));
            json!({
                "x": quantity(place.at.x, system),
                "y": quantity(place.at.y, system),
                "backing": backing.map(|backing| report.top.backings[backing.backing].name.clone()),
            })
        })
        .collect();
    let drills: Vec<Value> = fitting
        .drills
        .iter()
        .map(|drill| {
            json!({
                "what": drill.what,
                "diameter": quantity(drill.diameter, system),
                "depth": drill.depth.map(|depth| quantity(depth, system)),
            })
        })
        .collect();
    let pull = largest(own(), |forces| most(&forces.pulls));
    let on_plate = largest(own().filter(|forces| forces.on_plate), |forces| most(&forces.pulls));
    let pull_by = if pull.is_some() && on_plate == pull { Method::Plate } else { Method::Hand };
    let shear = largest(own(), |forces| most(&forces.shears));
    let pressure = largest(own(), |forces| forces.pressure);
    let moment = largest(own(), |forces| forces.whole.moment);
    json!({
        "holds": words::held(report.top, mount.on),
        "fixing": mount.fastened.fixing.name,
        "hold": mount.fastened.fixing.words(),
        "count": mount.places.len(),
        "places": places,
        "governs": fitting.governs.as_ref().map(|outcome| CHECKS[outcome.check].id()),
        "pull": pull.map(|(pull, _)| quantity(pull, system)),
        "pull_case": pull.map(|(_, at)| case(at)),
        "pull_method": pull.map(|_| method(pull_by)),
        "prying": hardest(report.top, mount).map(|hardest| number(hardest.factor.get::<ratio>())),
        "shear": shear.map(|(shear, _)| quantity(shear, system)),
        "shear_case": shear.map(|(_, at)| case(at)),
        "pressure": pressure.map(|(pressure, _)| quantity(pressure, system)),
        "pressure_case": pressure.map(|(_, at)| case(at)),
        "moment": moment.map(|(moment, _)| quantity(moment, system)),
        "moment_case": moment.map(|(_, at)| case(at)),
        "drills": drills,
        "torque": fitting.torque.map(|most| {
            json!({
                "most": quantity(most.torque, system),
                "gives": most.gives.words(),
                "preload_least": quantity(most.preload.least, system),
                "preload_greatest": quantity(most.preload.greatest, system),
            })
        }),
        "grip": quantity(fitting.grip, system),
        "foot_counted": fitting.foot_counted,
        "shortest": fitting.shortest.map(|shortest| quantity(shortest, system)),
        "test": fitting.test.map(|test| {
            json!({
                "samples": number(test.samples.get::<ratio>()),
                "below_mean": test.below_mean.map(|factor| number(factor.get::<ratio>())),
                "characteristic": quantity(test.characteristic, system),
                "pull": quantity(test.pull, system),
                "factor": number(test.factor.get::<ratio>()),
                "left": number(test.left.get::<ratio>()),
                "case": case(test.case),
            })
        }),
    })
}

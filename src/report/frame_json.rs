//! What the frame must take, for machines.

use serde_json::{Value, json};

use super::{
    AlongPipe, PostLoad, Report, frame_loads,
    json::{method, quantity},
};

/// The loads on the frame for machines.
pub(super) fn to_json(report: &Report<'_>) -> Vec<Value> {
    let Ok(analysis) = &report.analysis else { return Vec::new() };
    let system = report.top.report;
    let id = |case: Option<usize>| case.map(|case| analysis.cases[case].id);
    let along = |along: &AlongPipe| {
        json!({
            "push": quantity(along.push.value, system),
            "push_case": id(along.push.case),
            "pull": quantity(along.pull.value, system),
            "pull_case": id(along.pull.case),
        })
    };
    frame_loads(report)
        .into_iter()
        .map(|load| {
            let ((push, push_by), (pull, pull_by)) = (load.push(), load.pull());
            let borne = |all: &[PostLoad]| -> Vec<Value> {
                let one = |post: &PostLoad| {
                    json!({
                        "along": quantity(post.along, system),
                        "push": quantity(post.push.value, system),
                        "push_case": id(post.push.case),
                        "pull": quantity(post.pull.value, system),
                        "pull_case": id(post.pull.case),
                    })
                };
                all.iter().map(one).collect()
            };
            json!({
                "support": report.top.supports[load.pipe].name,
                "kind": report.top.supports[load.pipe].word(),
                "known": load.known(),
                "push": quantity(push.value, system),
                "push_case": id(push.case),
                "push_method": method(push_by),
                "pull": quantity(pull.value, system),
                "pull_case": id(pull.case),
                "pull_method": method(pull_by),
                "hand": load.hand.as_ref().map(along),
                "plate": load.plate.as_ref().map(along),
                "moment": load.moment.map(|moment| quantity(moment.value, system)),
                "moment_case": load.moment.and_then(|moment| id(moment.case)),
                "clamp_moment": load.clamp.map(|clamp| quantity(clamp.value, system)),
                "clamp_moment_case": load.clamp.and_then(|clamp| id(clamp.case)),
                "posts": borne(&load.posts),
                "joints": borne(&load.joints),
            })
        })
        .collect()
}

/// What pushes all of the frame sideways.
pub(super) fn sideways(report: &Report<'_>) -> Value {
    let system = report.top.report;
    let known = report.analysis.as_ref().ok().and_then(|analysis| Some((analysis, analysis.sideways()?)));
    known.map_or(Value::Null, |(analysis, push)| {
        json!({
            "force": quantity(push.force, system),
            "wind": quantity(push.wind, system),
            "height": quantity(push.height, system),
            "case": analysis.cases[push.case].id,
        })
    })
}

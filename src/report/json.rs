//! The report for machines: the same content as the text, each quantity with its unit. What `choose` answers has a format of
//! its own, described at [`choice_to_json`](super::choice_to_json).
//!
//! # Format, version 1
//!
//! Within a version keys are only added; what a key means never changes. A quantity is
//! `{"value": 12.3, "unit": "N/mm2"}`, in the units of the report's system; a pure number is a number. Top level:
//!
//! | key | content |
//! |---|---|
//! | `format` | `{"name": "skinspan-check", "version": 1}` |
//! | `title`, `units` | title of the design; `"us"` or `"si"` |
//! | `scope` | `"top"`, or `"patch"` where the file describes a mount alone |
//! | `forward` | where the bow lies, seen from above with *x* to the right and *y* upwards: `"right"` or `"left"` |
//! | `answer` | `"holds"`, `"does not hold"` or `"open"` (a check could not be made) |
//! | `reason` | why nothing could be checked; null otherwise |
//! | `weight` | `items` (`name`, `mass`, `x`, `y`), `bare`, `total`, `x`, `y` of the centre of gravity |
//! | `checks` | the worst outcome of each check, the governing one first |
//! | `envelope` | every check under every case, worst first |
//! | `advice` | `check` (null for the whole top), `remedies` (`change`, `added_mass`, `governs`, `utilisation`, `breaks`), `nearest` |
//! | `savings` | as remedies: what could be smaller in backing and fixings, one at a time, tried by the hand method alone |
//! | `fixings` | per mount: `holds`, `fixing`, `hold`, `count`, `places` (`x`, `y`, `backing`), `governs`, `pull`, `shear`, `pressure`, `moment` (each with its `…_case`; `pull_method`), `drills` (`what`, `diameter`, `depth`), `torque` (`most`, `gives`, `preload_least`, `preload_greatest`; null where none is given), `grip`, `foot_counted`, `shortest`, `test` (`samples`, `below_mean`: how many standard deviations the characteristic value lies below the mean, null where they are too few, `characteristic`: what that value has to reach, `pull`, `factor`, `left`, `case`; null where no test is needed) |
//! | `cases` | `id`, `title`, `state`, actions |
//! | `open_cases` | cases that could not be looked at: `id`, `title`, `reason` |
//! | `ruled_out` | what the design file rules out: `title`, `because` |
//! | `frame` | per support: `support`, `kind` (`pipe`, `wall`, `pad`), `known` (false: nothing is known of what it carries), `push`, `push_case`, `pull`, `pull_case`: of the method that gives more, `push_method`, `pull_method`; `hand` and `plate` with the same keys of either method; `moment`, `moment_case` of the plate method (null of what is rigid); `clamp_moment`, `clamp_moment_case` per length of the joint of a clamped wall, which no check compares (null of anything else); `posts` (`along`, `push`, `push_case`, `pull`, `pull_case`), `joints` with the same keys: what it hands to a pipe that carries it |
//! | `sideways` | what pushes the frame sideways at the most: `force`, `wind` (on the edge of the top and on gear, of that), `height` above the lower face of the top, `case`; null where nothing does |
//! | `sag_bounds` | of the bay on four sides that sags most by pressure alone: `x`, `y` of its middle, `case`, `supported` (checked), `clamped`; null without such bays |
//! | `criteria` | every factor, knock-down, limit and assumed load, with source and mark |
//! | `numerical_error`, `numerical_error_check` | largest relative change of a utilisation of the hand method at twice the division, added to no demand, and the check that it is of (null: of the series of bays on four sides, or nothing) |
//! | `without_fixings` | gear and pipes whose fixings were not checked, since the file gives none |
//! | `not_made` | checks that were not made, since the plate method alone knows them and was not asked |
//! | `plate` | the plate method: `triangles`, `sides` of these over the usual, `unknowns`, `finer` (the same of finer triangles, with the `cases` solved anew on them, since what governs was not settled; null where none were), `supports` (`support`, `kind`, `rigid`, `lifts` off between its fixings), `beside` (`check`, `hand` and `plate` utilisation, `hand_case`, `plate_case`, `error` of the plate's, `reason` of a difference); `reason` alone where there is no solution, that of the whole report where nothing could be looked at; null where it was not asked for |
//! | `cautions` | the cautions, as texts |
//!
//! An outcome has `check`, `title`, `passes`, `method` (`hand` or `plate`), `case` (id or null), `place` (words), `x`, `y`, and either `not_evaluated`
//! (the reason) or `demand`, `allowable`, `factor`, `utilisation`, `margin` (null when nothing acts), `basis`, `terms`
//! (`symbol`, `value`), `formula`, `limits`, `source`: those of the plate method where the outcome is by it.

use serde_json::{Value, json};
use uom::si::ratio::ratio;

use super::{
    Answer, Report, beside, cautions, explain::criterion_json, fixings_json, frame_json, redone::citation, text,
    without_fixings, words,
};
use crate::{
    advice::Remedy,
    analysis::{HeldDown, PipeModel},
    check::{CHECKS, Measure, Method, Outcome, Verdict},
    top::Scope,
    units::{Dimensioned, System, usual_unit},
};

/// The report as one JSON value.
#[must_use]
pub fn to_json(report: &Report<'_>) -> Value {
    let (top, system) = (report.top, report.top.report);
    let weight = top.weight();
    let items: Vec<Value> = weight
        .items
        .iter()
        .map(|item| {
            json!({
                "name": item.name,
                "mass": quantity(item.mass, system),
                "x": quantity(item.at.x, system),
                "y": quantity(item.at.y, system),
            })
        })
        .collect();
    let outcomes =
        |list: &[Outcome]| -> Vec<Value> { list.iter().map(|outcome| outcome_json(report, outcome)).collect() };
    let criteria: Vec<Value> = top.criteria.records().iter().map(|record| criterion_json(record)).collect();
    json!({
        "format": { "name": "skinspan-check", "version": 1 },
        "title": top.title,
        "scope": match top.scope { Scope::Whole => "top", Scope::Patch => "patch" },
        "forward": top.bow().word(),
        "units": match system { System::Us => "us", System::Si => "si" },
        "answer": match report.answer() {
            Answer::Holds => "holds",
            Answer::DoesNotHold => "does not hold",
            Answer::Open => "open",
        },
        "reason": report.analysis.as_ref().err(),
        "weight": {
            "items": items,
            "bare": quantity(weight.bare, system),
            "total": quantity(weight.total, system),
            "x": quantity(weight.centre.x, system),
            "y": quantity(weight.centre.y, system),
        },
        "checks": outcomes(&report.checks),
        "envelope": outcomes(&report.envelope),
        "advice": advice(report),
        "savings": report.savings.iter().map(|saving| remedy(report, saving)).collect::<Vec<_>>(),
        "fixings": fixings_json::to_json(report),
        "cases": cases(report),
        "open_cases": open_cases(report),
        "ruled_out": ruled_out(report),
        "frame": frame_json::to_json(report),
        "sideways": frame_json::sideways(report),
        "sag_bounds": sag_bounds(report),
        "criteria": criteria,
        "numerical_error": number(report.hand_error.largest().0.get::<ratio>()),
        "numerical_error_check": report.hand_error.largest().1.map(|check| CHECKS[check].id()),
        "without_fixings": without_fixings(top),
        "not_made": report.not_made().into_iter().map(|check| CHECKS[check].id()).collect::<Vec<_>>(),
        "plate": plate(report),
        "cautions": cautions(report),
    })
}

/// The plate solution, and both methods side by side.
fn plate(report: &Report<'_>) -> Value {
    let analysis = match &report.analysis {
        Ok(analysis) => analysis,
        Err(reason) => return json!({ "reason": reason }),
    };
    match &analysis.whole {
        None => Value::Null,
        Some(Err(reason)) => json!({ "reason": reason.to_string() }),
        Some(Ok(method)) => {
            let models = method.pipes.iter().zip(&method.holds);
            let supports = models.zip(&report.top.supports).map(|((model, held), support)| {
                json!({
                    "support": support.name,
                    "kind": support.word(),
                    "rigid": *model == PipeModel::Rigid,
                    "lifts": *held == HeldDown::ByFixings,
                })
            });
            let beside = beside(report).into_iter().map(|both| {
                let used = |outcome: &Outcome| outcome.utilisation().map(|used| number(used.get::<ratio>()));
                json!({
                    "check": CHECKS[both.check].id(),
                    "hand": used(both.hand),
                    "hand_case": both.hand.case.map(|case| analysis.cases[case].id),
                    "plate": used(both.plate),
                    "plate_case": both.plate.case.map(|case| analysis.cases[case].id),
                    "error": both.error.map(|error| number(error.get::<ratio>())),
                    "reason": both.reason,
                })
            });
            json!({
                "triangles": method.cut.triangles,
                "sides": number(method.cut.sides.get::<ratio>()),
                "unknowns": method.cut.unknowns,
                "finer": method.finer.as_ref().map(|(cut, cases)| json!({
                    "triangles": cut.triangles,
                    "sides": number(cut.sides.get::<ratio>()),
                    "unknowns": cut.unknowns,
                    "cases": cases.iter().map(|case| analysis.cases[*case].id).collect::<Vec<_>>(),
                })),
                "supports": supports.collect::<Vec<_>>(),
                "beside": beside.collect::<Vec<_>>(),
            })
        }
    }
}

fn outcome_json(report: &Report<'_>, outcome: &Outcome) -> Value {
    let (check, on_plate) = (CHECKS[outcome.check], outcome.on_plate());
    let system = report.top.report;
    let Ok(analysis) = &report.analysis else { return Value::Null };
    let coordinate = |value: Option<crate::units::Length>| value.map(|value| quantity(value, system));
    let mut value = json!({
        "check": check.id(),
        "title": check.title(),
        "passes": outcome.passes(),
        "case": outcome.case.map(|case| analysis.cases[case].id),
        "place": words::place(analysis, &outcome.place, system),
        "x": coordinate(outcome.place.at.map(|at| at.x)),
        "y": coordinate(outcome.place.at.map(|at| at.y)),
        "method": method(outcome.method),
        "formula": words::one_line(on_plate.map_or_else(|| check.formula(), |on_plate| on_plate.formula)),
        "limits": on_plate.map_or_else(|| check.limits(), |on_plate| on_plate.limits),
        "source": citation(report, outcome),
    });
    let more = match &outcome.verdict {
        Verdict::NotEvaluated(reason) => json!({ "not_evaluated": reason }),
        Verdict::Compared(finding) => {
            let terms: Vec<Value> = finding
                .terms
                .iter()
                .map(|term| json!({ "symbol": term.symbol, "value": measure(term.value, system) }))
                .collect();
            json!({
                "demand": measure(finding.demand, system),
                "allowable": measure(finding.allowable, system),
                "factor": number(finding.factor.get::<ratio>()),
                "utilisation": number(finding.utilisation.get::<ratio>()),
                "margin": number(finding.margin().get::<ratio>()),
                "basis": words::basis(finding.basis),
                "terms": terms,
            })
        }
    };
    if let (Value::Object(value), Value::Object(more)) = (&mut value, more) {
        value.extend(more);
    }
    value
}

fn remedy(report: &Report<'_>, remedy: &Remedy) -> Value {
    json!({
        "change": text::change(&remedy.change, report.top),
        "added_mass": quantity(remedy.added, report.top.report),
        "governs": CHECKS[remedy.governs].id(),
        "utilisation": number(remedy.utilisation.get::<ratio>()),
        "breaks": remedy.breaks.map(|check| CHECKS[check].id()),
    })
}

fn advice(report: &Report<'_>) -> Vec<Value> {
    let remedy = |own: &Remedy| remedy(report, own);
    report
        .advice
        .iter()
        .map(|advice| {
            json!({
                "check": advice.check.map(|check| CHECKS[check].id()),
                "remedies": advice.remedies.iter().map(remedy).collect::<Vec<_>>(),
                "nearest": advice.nearest.as_ref().map(remedy),
            })
        })
        .collect()
}

fn cases(report: &Report<'_>) -> Vec<Value> {
    let Ok(analysis) = &report.analysis else { return Vec::new() };
    let system = report.top.report;
    analysis
        .cases
        .iter()
        .map(|case| {
            json!({
                "id": case.id,
                "title": case.title,
                "state": words::state(case.state),
                "gravity": number(case.gravity.get::<ratio>()),
                "gear_gravity": number(case.gear_gravity.get::<ratio>()),
                "wind": {
                    "interior": quantity(case.wind.interior, system),
                    "edge": quantity(case.wind.edge, system),
                    "corner": quantity(case.wind.corner, system),
                    "zone": quantity(case.zone, system),
                },
                "pressure": quantity(case.pressure, system),
                "people": case.people.map(|people| json!({ "count": people.count, "each": quantity(people.each, system) })),
                "hand": case.hand.map(|hand| quantity(hand, system)),
                "in_plane": number(case.in_plane.get::<ratio>()),
                "warmer": case.temperatures.map(|rise| json!({
                    "outer": quantity(rise.outer, system),
                    "inner": quantity(rise.inner, system),
                })),
                "doubt": case.doubt,
            })
        })
        .collect()
}

fn open_cases(report: &Report<'_>) -> Vec<Value> {
    let Ok(analysis) = &report.analysis else { return Vec::new() };
    let open = analysis.open_cases.iter();
    open.map(|(case, reason)| json!({ "id": case.id, "title": case.title, "reason": reason })).collect()
}

fn ruled_out(report: &Report<'_>) -> Vec<Value> {
    let Ok(analysis) = &report.analysis else { return Vec::new() };
    analysis.ruled_out.iter().map(|out| json!({ "title": out.title, "because": out.because })).collect()
}

/// A method's word.
pub(super) const fn method(method: Method) -> &'static str {
    match method {
        Method::Hand => "hand",
        Method::Plate => "plate",
    }
}

fn sag_bounds(report: &Report<'_>) -> Option<Value> {
    let analysis = report.analysis.as_ref().ok()?;
    let (bounds, system) = (analysis.sag_bounds()?, report.top.report);
    let middle = analysis.bays[bounds.bay].middle();
    Some(json!({
        "x": quantity(middle.x, system),
        "y": quantity(middle.y, system),
        "case": analysis.cases[bounds.case].id,
        "supported": quantity(bounds.supported, system),
        "clamped": quantity(bounds.clamped, system),
    }))
}

pub(super) fn measure(value: Measure, system: System) -> Value {
    match value {
        Measure::Pressure(q) => quantity(q, system),
        Measure::Length(q) => quantity(q, system),
        Measure::Area(q) => quantity(q, system),
        Measure::Force(q) => quantity(q, system),
        Measure::Torque(q) => quantity(q, system),
        Measure::ForcePerWidth(q) => quantity(q, system),
        Measure::MomentPerWidth(q) => quantity(q, system),
        Measure::Rigidity(q) => quantity(q, system),
        Measure::Curvature(q) => quantity(q, system),
        Measure::Frequency(q) => quantity(q, system),
        Measure::Warmth(q) => quantity(q, system),
        Measure::ArealMass(q) => quantity(q, system),
        Measure::Ratio(q) => number(q.get::<ratio>()),
    }
}

/// A quantity with its unit, to nine digits: what lies behind them is rounding, and differs between machines.
pub(super) fn quantity<Q: Dimensioned>(value: Q, system: System) -> Value {
    usual_unit(value, system)
        .map_or(Value::Null, |unit| json!({ "value": number(unit.of_si(value.si())), "unit": unit.symbol }))
}

/// A number to nine digits; null where there is none, since JSON has no infinity.
pub(super) fn number(value: f64) -> Value {
    if !value.is_finite() {
        return Value::Null;
    }
    format!("{value:.8e}").parse::<f64>().map_or(Value::Null, Value::from)
}

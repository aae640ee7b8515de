//! Checks of fixings on small patches, each utilisation worked out again by hand.

mod advice;
mod fastener;
mod panel;
mod prying;
mod together;
mod whole;

use skinspan::{
    analysis::{Analysis, DIVISIONS},
    check::{CHECKS, Finding, Measure, Outcome, Verdict, run},
    input::{NamedText, read_design, read_tables},
    top::Top,
};
use uom::si::ratio::ratio;

/// A patch of one metre with a fixing in its middle, pulled by 494.116 N (500 N less 0.6 of the weight of 1 kg) and pushed
/// sideways by 200 N from any side.
const PATCH: &str = r#"
title = "patch"
[patch]
outline = { length = "1 m", width = "1 m" }
process = "hand"
resin = "polyester"
outer = ["2 x mat 450 g/m2"]
core = { material = "pvc-foam", density = "80 kg/m3", thickness = "25 mm" }
inner = ["2 x mat 450 g/m2"]
[[backing]]
name = "pad"
material = "BOARD"
width = "0.4 m"
along = [["0.3 m", "0.5 m"], ["0.7 m", "0.5 m"]]
[[fixing]]
name = "bolt"
FIXING
[[gear]]
name = "gear"
mass = "1 kg"
cg_height = "0 mm"
at = ["0.5 m", "0.5 m"]
footing = { diameter = "100 mm" }
wind_area = "0.01 m2"
drag = 1.0
fixings = { fixing = "bolt", points = [["0 mm", "0 mm"]], clamped = "6 mm" }
[[gear.given]]
name = "hook"
up = "500 N"
side = "200 N"
height = "0 mm"
[service]
speed = "none"
storm = "none"
trailer = "none"
slam = "none"
people = 0
walking = "no-walk"
underside = "open"
sun = "none"
"#;

/// The patch with what stands in it; a board of no name is none.
fn patch(board: &str, fixing: &str) -> String {
    let text = PATCH.replace("FIXING", fixing).replace("BOARD", board);
    if !board.is_empty() {
        return text;
    }
    let (from, to) = (text.find("[[backing]]").expect("a backing"), text.find("[[fixing]]").expect("a fixing"));
    format!("{}{}", &text[..from], &text[to..])
}

fn read(text: &str) -> Top {
    let table = read_tables(&[]).expect("the built-in table");
    let file = NamedText { name: "patch.toml".to_owned(), text: text.to_owned() };
    read_design(&file, &table, None).unwrap_or_else(|problems| panic!("{}", problems[0].render(false)))
}

/// All that a check says under a case; the case of no load has no name.
fn outcomes(top: &Top, id: &str, case: Option<&str>) -> Vec<Outcome> {
    let analysis = Analysis::new(top, DIVISIONS).expect("a patch");
    let named = |number: Option<usize>| number.map(|number| analysis.cases[number].id);
    run(&analysis)
        .into_iter()
        .filter(|outcome| CHECKS[outcome.check].id() == id && named(outcome.case) == case)
        .collect()
}

fn finding(top: &Top, id: &str, case: Option<&str>) -> Finding {
    match outcomes(top, id, case).into_iter().next().map(|outcome| outcome.verdict) {
        Some(Verdict::Compared(finding)) => finding,
        other => panic!("{id}: {other:?}"),
    }
}

fn used(top: &Top, id: &str, case: Option<&str>) -> f64 {
    finding(top, id, case).utilisation.get::<ratio>()
}

/// Why a check could not be made.
fn open(top: &Top, id: &str) -> String {
    let reason = outcomes(top, id, None).into_iter().find_map(|outcome| match outcome.verdict {
        Verdict::NotEvaluated(reason) => Some(reason),
        Verdict::Compared(_) => None,
    });
    reason.unwrap_or_else(|| panic!("{id} was made"))
}

/// A term of a finding in SI.
fn term(finding: &Finding, symbol: &str) -> f64 {
    let found = finding.terms.iter().find(|term| term.symbol == symbol);
    match found.unwrap_or_else(|| panic!("no {symbol} in {:?}", finding.terms)).value {
        Measure::Ratio(value) => value.value,
        Measure::Length(value) => value.value,
        Measure::Force(value) => value.value,
        Measure::Pressure(value) => value.value,
        Measure::Torque(value) => value.value,
        Measure::ForcePerWidth(value) => value.value,
        ref other => panic!("{other:?}"),
    }
}

fn close(value: f64, by_hand: f64) {
    assert!((value / by_hand - 1.0).abs() < 2e-4, "{value}, by hand {by_hand}");
}

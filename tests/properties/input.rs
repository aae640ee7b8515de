//! Whatever a file holds, the program reads it or says what is wrong with it, at a place that is in the file.

#![allow(clippy::unwrap_used)] // a test may panic

use std::sync::LazyLock;

use proptest::prelude::*;
use skinspan::{
    analysis::Analysis,
    check::{Outcome, Verdict, run},
    criteria::Criteria,
    input::{Design, FileProblems, NamedText, drawing_named_in, read_design, read_tables, tables_named_in},
    material::MaterialTable,
    top::Top,
};

const EXAMPLE: &str = include_str!("../../examples/survey-launch.toml");
const CORNERS: &str = include_str!("../../examples/bow-wing.toml");
const FORMS: &str = include_str!("../input/drawings/forms.dxf");
const SVG: &str = r#"<svg width="3000mm" height="2000mm" viewBox="0 0 3000 2000"><g transform="rotate(3) scale(1, 1)">
<path id="top" d="M 0 0 H 2000 V 900 Q 1800 1000 1600 1000 T 1200 1000 C 900 1100 700 900 500 1000 S 100 1000 0 900 Z
m 200 200 a 100 90 0 1 0 1 0 z"/></g></svg>"#;
const LAYERS: [&str; 15] = [
    "LIGHT",
    "HEAVY",
    "BELOW",
    "PIECES",
    "ROUND",
    "OVAL",
    "HALF OVAL",
    "WAVE",
    "DROP",
    "QUARTER",
    "GAP",
    "CROSSED",
    "FORK",
    "TWO",
    "PART",
];
const TABLE: &str = include_str!("../../materials/core.toml");
/// Coarse: a value that is not a number is one at any division.
const DIVISIONS: usize = 4;

static BUILT_IN: LazyLock<MaterialTable> = LazyLock::new(|| read_tables(&[]).unwrap());

/// Values that a typing error, a wrong unit or a spreadsheet can leave behind.
const VALUES: [&str; 30] = [
    "\"\"",
    "\" \"",
    "0",
    "-1",
    "nan",
    "inf",
    "true",
    "[]",
    "{}",
    "1979-05-27",
    "\"nan in\"",
    "\"-3 in\"",
    "\"0 in\"",
    "\"1e300 m\"",
    "\"1e-300 m\"",
    "\"1e9 m\"",
    "\"1 mm\"",
    "\"500 ft\"",
    "\"1e12 lb\"",
    "\"1e-9 kg\"",
    "\"1e6 kn\"",
    "\"1e-6 kn\"",
    "\"none\"",
    "\"epoxy\"",
    "\"hand\"",
    "\"1e9 psf\"",
    "\"mat\"",
    "\"biaxial 1e-9 g/m2 @ 45 deg\"",
    "\"mat 1e9 kg/m2\"",
    "\"½ in\"",
];

fn named(text: &str) -> NamedText {
    NamedText { name: "top.toml".to_owned(), text: text.to_owned() }
}

/// Every caret and every correction stands inside the text, and can be shown.
fn well_placed(files: &[FileProblems]) {
    assert!(!files.is_empty() && files.iter().all(|file| !file.problems.is_empty()), "refused without a word");
    for file in files {
        for problem in &file.problems {
            let patch = problem.patch.iter().map(|(range, _)| range);
            for range in patch.chain([&problem.range]) {
                assert!(file.text.get(range.clone()).is_some(), "{range:?} of {problem:?}");
            }
            assert!(!problem.message.is_empty());
        }
        assert!(file.render(false).starts_with("error: "));
    }
}

fn reads(text: &str) -> Option<Top> {
    if let Err(problems) = tables_named_in(&named(text)) {
        well_placed(&[problems]);
    }
    if let Err(problems) = drawing_named_in(&named(text)) {
        well_placed(&[problems]);
    }
    read_design(&named(text), &BUILT_IN, None).map_err(|files| well_placed(&files)).ok()
}

/// A drawing is an outline, or it is said what is wrong with it or with what the design file says of it.
fn reads_drawing(name: &str, outline: &str, text: &str) {
    let design = named(&EXAMPLE.replacen(
        "outline = { length = \"9 ft 2 in\", width = \"6 ft 4 in\", corner_radius = \"14 in\" }",
        &format!("outline = {{ drawing = {name:?}, {outline} }}"),
        1,
    ));
    assert!(design.text.contains(name));
    let drawing = NamedText { name: name.to_owned(), text: text.to_owned() };
    if let Err(files) = read_design(Design { file: &design, drawing: Some(&drawing) }, &BUILT_IN, None) {
        well_placed(&files);
    }
}

/// A top that was read gives checks with numbers, or says why it does not.
fn has_numbers(top: &Top) {
    let Ok(analysis) = Analysis::new(top, DIVISIONS) else { return };
    let outcomes = run(&analysis);
    assert!(!outcomes.is_empty());
    for outcome in outcomes {
        let nan = outcome.utilisation().is_some_and(skinspan::units::Ratio::is_nan);
        assert!(!nan, "not a number: {}", described(&outcome));
    }
}

fn described(outcome: &Outcome) -> String {
    match &outcome.verdict {
        Verdict::Compared(finding) => format!("check {} {:?} {finding:?}", outcome.check, outcome.case),
        Verdict::NotEvaluated(reason) => reason.clone(),
    }
}

/// One slip of hand in a file.
#[derive(Clone, Debug)]
enum Slip {
    DropLine(usize),
    RepeatLine(usize),
    SwapLines(usize, usize),
    DropByte(usize),
    RepeatByte(usize),
    Byte(usize, char),
    Value(usize, &'static str),
    SwapValues(usize, usize),
    Cut(usize),
}

fn slip() -> impl Strategy<Value = Slip> {
    let at = any::<usize>;
    prop_oneof![
        at().prop_map(Slip::DropLine),
        at().prop_map(Slip::RepeatLine),
        (at(), at()).prop_map(|(one, other)| Slip::SwapLines(one, other)),
        at().prop_map(Slip::DropByte),
        at().prop_map(Slip::RepeatByte),
        (at(), any::<char>()).prop_map(|(place, c)| Slip::Byte(place, c)),
        (at(), "[0-9a-z\"\\[{=.,@x+-]").prop_map(|(place, c)| Slip::Byte(place, c.chars().next().unwrap())),
        (at(), prop::sample::select(&VALUES[..])).prop_map(|(place, value)| Slip::Value(place, value)),
        (at(), prop::sample::select(&VALUES[..])).prop_map(|(place, value)| Slip::Value(place, value)),
        (at(), at()).prop_map(|(one, other)| Slip::SwapValues(one, other)),
        at().prop_map(Slip::Cut),
    ]
}

/// One slip in the lines of a drawing: dropped, repeated, or another value in place of one.
#[derive(Clone, Debug)]
enum LineSlip {
    Drop(usize),
    Repeat(usize),
    Value(usize, &'static str),
}

fn line_slip() -> impl Strategy<Value = LineSlip> {
    // Most of a drawing is its head; what is drawn stands in the last part.
    let at = || 0..1200_usize;
    let values =
        ["", "0", "-1", "1e300", "nan", "inf", "1e-300", "1", "LINE", "SPLINE", "LWPOLYLINE", "ENDSEC", "EOF", "3.5"];
    prop_oneof![
        at().prop_map(LineSlip::Drop),
        at().prop_map(LineSlip::Repeat),
        (at(), prop::sample::select(values.to_vec())).prop_map(|(at, value)| LineSlip::Value(at, value)),
        (at(), prop::sample::select(values.to_vec())).prop_map(|(at, value)| LineSlip::Value(at, value)),
    ]
}

fn slipped_lines(text: &str, slip: &LineSlip) -> String {
    let drawn = text.find("ENTITIES").unwrap_or(0);
    let (head, body) = text.split_at(drawn);
    let mut lines: Vec<&str> = body.lines().collect();
    if lines.is_empty() {
        return text.to_owned();
    }
    let count = lines.len();
    match slip {
        LineSlip::Drop(at) => {
            lines.remove(at % count);
        }
        LineSlip::Repeat(at) => lines.insert(at % count, lines[at % count]),
        LineSlip::Value(at, value) => lines[at % count] = value,
    }
    format!("{head}{}\n", lines.join("\n"))
}

/// Places of the texts in quotation marks, and of the numbers that stand without.
fn values(text: &str) -> Vec<std::ops::Range<usize>> {
    let mut found = Vec::new();
    let mut from = 0;
    for line in text.split_inclusive('\n') {
        let body = if line.starts_with('#') { "" } else { line };
        let marks: Vec<usize> = body.match_indices('"').map(|(at, _)| from + at).collect();
        found.extend(marks.chunks_exact(2).map(|pair| pair[0]..pair[1] + 1));
        if let (0, Some(equals)) = (marks.len(), body.find("= ")) {
            found.push(from + equals + 2..from + body.trim_end().len());
        }
        from += line.len();
    }
    found.retain(|range| range.start <= range.end);
    found
}

fn slipped(text: &str, slip: &Slip) -> String {
    let mut lines: Vec<&str> = text.split_inclusive('\n').collect();
    let mut chars: Vec<char> = text.chars().collect();
    let places = values(text);
    if text.is_empty() || places.is_empty() {
        return text.to_owned();
    }
    let (line_count, char_count) = (lines.len(), chars.len());
    let (line, c) = (|at: &usize| at % line_count, |at: &usize| at % char_count);
    let value = |at: &usize| places[at % places.len()].clone();
    match slip {
        Slip::DropLine(at) => {
            lines.remove(line(at));
            lines.concat()
        }
        Slip::RepeatLine(at) => {
            lines.insert(line(at), lines[line(at)]);
            lines.concat()
        }
        Slip::SwapLines(one, other) => {
            lines.swap(line(one), line(other));
            lines.concat()
        }
        Slip::DropByte(at) => {
            chars.remove(c(at));
            chars.into_iter().collect()
        }
        Slip::RepeatByte(at) => {
            chars.insert(c(at), chars[c(at)]);
            chars.into_iter().collect()
        }
        Slip::Byte(at, new) => {
            let at = c(at);
            chars[at] = *new;
            chars.into_iter().collect()
        }
        Slip::Value(at, new) => {
            let mut text = text.to_owned();
            text.replace_range(value(at), new);
            text
        }
        Slip::SwapValues(one, other) => {
            let (one, other) = (value(one), value(other));
            let (first, second) = if one.start <= other.start { (one, other) } else { (other, one) };
            if first.end > second.start {
                return text.to_owned();
            }
            let (a, b) = (&text[first.clone()], &text[second.clone()]);
            [&text[..first.start], b, &text[first.end..second.start], a, &text[second.end..]].concat()
        }
        Slip::Cut(at) => chars[..c(at)].iter().collect(),
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    #[test]
    fn any_bytes_are_a_design_or_have_a_place_at_fault(bytes in prop::collection::vec(any::<u8>(), 0..400)) {
        reads(&String::from_utf8_lossy(&bytes));
    }

    #[test]
    fn any_text_is_a_design_or_has_a_place_at_fault(text in "(\\PC|\n|[\\[\\]{}\"'=,.#]){0,200}") {
        reads(&text);
    }

    #[test]
    fn any_text_in_place_of_a_value_is_read_or_has_a_place_at_fault(at in any::<usize>(), text in "\\PC{0,30}") {
        let places = values(EXAMPLE);
        let mut design = EXAMPLE.to_owned();
        design.replace_range(places[at % places.len()].clone(), &format!("{text:?}"));
        reads(&design);
    }

    #[test]
    fn corners_with_slips_are_read_or_have_a_place_at_fault(slips in prop::collection::vec(slip(), 1..4)) {
        reads(&slips.iter().fold(CORNERS.to_owned(), |text, slip| slipped(&text, slip)));
    }

    #[test]
    fn any_bytes_are_a_drawing_or_have_a_place_at_fault(bytes in prop::collection::vec(any::<u8>(), 0..400)) {
        let text = String::from_utf8_lossy(&bytes);
        reads_drawing("a.dxf", "layer = \"0\"", &text);
        reads_drawing("a.svg", "path = \"top\"", &text);
        reads_drawing("a.svg", "path = \"top\", units = \"mm\"", &format!("<svg><path id='top' d={text:?}/></svg>"));
    }

    #[test]
    fn a_drawing_with_slips_is_read_or_has_a_place_at_fault(
        layer in prop::sample::select(&LAYERS[..]),
        slips in prop::collection::vec(line_slip(), 1..6),
        marks in prop::collection::vec((any::<usize>(), "[0-9a-zMLAHVCSQTZ .,<>\"=()-]"), 1..6),
    ) {
        let text = slips.iter().fold(FORMS.to_owned(), |text, slip| slipped_lines(&text, slip));
        reads_drawing("a.dxf", &format!("layer = {layer:?}"), &text);
        let mut svg: Vec<char> = SVG.chars().collect();
        for (at, mark) in marks {
            let at = at % svg.len();
            svg[at] = mark.chars().next().unwrap();
        }
        reads_drawing("a.svg", "path = \"top\"", &svg.into_iter().collect::<String>());
    }

    #[test]
    fn any_text_is_a_table_or_has_a_place_at_fault(text in "(\\PC|\n|[\\[\\]{}\"'=,.#]){0,200}") {
        if let Err(files) = read_tables(&[named(&text)]) {
            well_placed(&files);
        }
    }

    #[test]
    fn a_table_with_slips_is_read_or_has_a_place_at_fault(slips in prop::collection::vec(slip(), 1..4)) {
        let text = slips.iter().fold(TABLE.to_owned(), |text, slip| slipped(&text, slip));
        if let Err(files) = read_tables(&[named(&text)]) {
            well_placed(&files);
        }
    }

    #[test]
    fn any_override_is_taken_or_refused(
        id in prop::sample::select(
            Criteria::built_in().unwrap().records().iter().map(|record| record.id.clone()).collect::<Vec<_>>()
        ),
        text in "\\PC{0,20}|-?[0-9]{1,3}(\\.[0-9]{1,3})?(e-?[0-9]{1,3})?( ?(%|in|mm|psf|kPa|kg|lb|mph|deg|Hz|°F|1/K))?",
        key in "\\PC{0,20}",
    ) {
        for (id, text) in [(id.as_str(), text.as_str()), (key.as_str(), text.as_str())] {
            let design = EXAMPLE.replace("[top]", &format!("[criteria]\n{id:?} = {text:?}\n\n[top]"));
            reads(&design);
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(12))]

    #[test]
    fn an_example_with_slips_is_checked_with_numbers_or_refused(slips in prop::collection::vec(slip(), 1..4)) {
        let text = slips.iter().fold(EXAMPLE.to_owned(), |text, slip| slipped(&text, slip));
        if let Some(top) = reads(&text) {
            has_numbers(&top);
        }
    }

    #[test]
    fn an_example_with_an_override_is_checked_with_numbers_or_refused(
        at in any::<usize>(),
        text in "[0-9]{1,3}(\\.[0-9]{1,3})?(e-?[0-9]{1,2})?",
    ) {
        let criteria = Criteria::built_in().unwrap();
        let records = criteria.records();
        let record = records[at % records.len()];
        let unit = record.built_in.find(char::is_alphabetic).map_or("", |unit| &record.built_in[unit..]);
        let design = EXAMPLE.replace("[top]", &format!("[criteria]\n{} = \"{text} {unit}\"\n\n[top]", record.id));
        if let Some(top) = reads(&design) {
            has_numbers(&top);
        }
    }
}

//! Every example runs, and says what its header says: its answer, its governing check, and that the offered change mends
//! it.

use std::{fs, path::PathBuf};

use skinspan::{
    advice::changed,
    check::CHECKS,
    choice::{Watch, choose},
    input::{NamedText, read_choice, read_design, read_tables},
    material::MaterialTable,
    report::{Answer, Report, to_json, to_text},
    top::Top,
};

/// File, answer, governing check.
const EXAMPLES: &[(&str, Answer, &str)] = &[
    ("bow-wing", Answer::Holds, "core-shear"),
    ("ferry-tender", Answer::DoesNotHold, "core-shear"),
    ("ferry-tender-mended", Answer::Holds, "skin-bending"),
    ("galley-roof", Answer::Holds, "skin-bending"),
    ("kelp-harvester", Answer::Holds, "skin-bending"),
    ("night-watch", Answer::Holds, "thermal-bow"),
    ("pilot-skiff", Answer::Holds, "core-crush"),
    ("radar-pad", Answer::Holds, "pull-through"),
    ("rail-row", Answer::Holds, "hold-combined"),
    ("seine-tender", Answer::DoesNotHold, "core-crush"),
    ("starter", Answer::Holds, "core-shear"),
    ("survey-launch", Answer::Holds, "core-shear"),
    ("whip-rail", Answer::DoesNotHold, "washer-crush"),
    ("whip-rail-mended", Answer::Holds, "skin-beside-backing"),
];

fn folder() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("examples")
}

fn table() -> MaterialTable {
    read_tables(&[]).expect("the built-in table")
}

fn top(name: &str) -> Top {
    let text = fs::read_to_string(folder().join(format!("{name}.toml"))).expect("an example");
    let file = NamedText { name: name.to_owned(), text };
    read_design(&file, &table(), None).unwrap_or_else(|problems| panic!("{}", problems[0].render(false)))
}

#[test]
fn each_example_gives_its_answer_and_its_governing_check() {
    let table = table();
    for (name, answer, governing) in EXAMPLES {
        let top = top(name);
        let report = Report::new(&top, &table);
        assert_eq!(report.answer(), *answer, "{name}");
        assert_eq!(CHECKS[report.checks[0].check].id(), *governing, "{name}");
        assert!(!to_text(&report, true, 80).contains("NaN"), "{name}");
        assert!(!to_json(&report).to_string().contains("NaN"), "{name}");
    }
}

#[test]
fn every_file_of_the_folder_is_an_example_that_is_looked_at() {
    let mut files: Vec<String> = fs::read_dir(folder())
        .expect("the folder")
        .map(|entry| entry.expect("an entry").path())
        .filter(|path| path.extension().is_some_and(|extension| extension == "toml"))
        .map(|path| path.file_stem().expect("a name").to_string_lossy().into_owned())
        .collect();
    files.sort();
    let listed: Vec<&str> = EXAMPLES.iter().map(|(name, ..)| *name).collect();
    assert_eq!(files, listed);
}

#[test]
fn every_change_that_is_offered_for_the_whole_top_makes_it_hold() {
    let table = table();
    let top = top("ferry-tender");
    let report = Report::new(&top, &table);
    let whole = report.advice.iter().find(|advice| advice.check.is_none()).expect("advice for the whole top");
    assert!(!whole.remedies.is_empty(), "the tender can be mended");
    for remedy in &whole.remedies {
        let mended = changed(&top, &remedy.change).expect("a change that can be made");
        assert_eq!(Report::new(&mended, &table).answer(), Answer::Holds, "{:?}", remedy.change);
    }
}

#[test]
fn lines_fit_eighty_columns() {
    let table = table();
    for (name, ..) in EXAMPLES {
        let top = top(name);
        let text = to_text(&Report::new(&top, &table), false, 80);
        let plain = anstream::adapter::strip_str(&text).to_string();
        for line in plain.lines() {
            assert!(line.chars().count() <= 80, "{name}: {line}");
        }
    }
}

struct Nobody;

impl Watch for Nobody {
    fn at(&self, _: usize, _: usize, _: usize) {}
    fn stops(&self) -> bool {
        false
    }
}

#[test]
fn what_is_chosen_for_an_example_holds() {
    let table = table();
    let text = fs::read_to_string(folder().join("seine-tender.toml")).expect("an example");
    let file = NamedText { name: "seine-tender".to_owned(), text };
    let (top, space) = read_choice(&file, &table, None).unwrap_or_else(|files| panic!("{}", files[0].render(false)));
    let chosen = choose(&top, &space, &Nobody);
    assert_eq!(chosen.of, 288);
    assert!(!chosen.own.holds && !chosen.found.is_empty());
    for found in &chosen.found {
        let other = space.top(found.candidate.expect("one of the space"));
        assert_eq!(Report::new(&other, &table).answer(), Answer::Holds, "{found:?}");
        assert!(Some(other.thickness()) <= space.limits.thickness);
    }
}

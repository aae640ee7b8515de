//! Text and JSON say the same, on a page, and the program writes them.

use std::{fmt::Write as _, fs, process::Command};

use serde_json::Value;
use skinspan::{
    proof::{Readings, Row, Wanted, compare},
    report::{no_proof_to_json, no_proof_to_text, proof_to_json, proof_to_text},
    top::Top,
    units::{Length, System},
};

use crate::kit::{card_of, read_by};

/// Lines of a sheet of paper.
const PAGE: usize = 72;

fn run(arguments: &[&str]) -> (i32, String, String) {
    let output = Command::new(env!("CARGO_BIN_EXE_skinspan"))
        .args(arguments)
        .current_dir(env!("CARGO_MANIFEST_DIR"))
        .output()
        .expect("the program runs");
    let text = |bytes: Vec<u8>| String::from_utf8(bytes).expect("UTF-8");
    (output.status.code().expect("a code"), text(output.stdout), text(output.stderr))
}

#[test]
fn a_card_is_one_page_and_says_what_its_json_says() {
    for name in ["survey-launch", "galley-roof", "seine-tender"] {
        for wanted in [Wanted::Any, Wanted::Even] {
            let card = card_of(name, wanted);
            let (top, Ok(proof)) = &*card else { continue };
            let text = proof_to_text(proof, None, top, 80);
            let json = proof_to_json(proof, None, top);
            assert!(text.lines().all(|line| line.chars().count() <= 80), "{name}:\n{text}");
            assert!(text.lines().count() <= PAGE, "{name}: {}\n{text}", text.lines().count());
            assert!(!text.contains("NaN"), "{name}");
            assert_eq!(json["format"]["name"], "skinspan-proof");
            let joined = text.split_whitespace().collect::<Vec<_>>().join(" ");
            for sentence in json["answer"].as_array().expect("sentences") {
                assert!(joined.contains(sentence.as_str().expect("a sentence")), "{name}: {sentence}");
            }
            assert_eq!(json["gauges"].as_array().expect("gauges").len(), proof.gauges.len());
            assert_eq!(json["readings"], Value::Null);
        }
    }
}

/// On a narrow page gauges stand in several tables, each with all steps; readings that were taken have their names above them.
#[test]
fn a_card_and_its_readings_fit_sixty_columns() {
    let mut folded = 0;
    for (name, wanted) in [
        ("bow-wing", Wanted::Any),
        ("ferry-tender", Wanted::Even),
        ("seine-tender", Wanted::Any),
        ("rail-row", Wanted::Any),
    ] {
        let card = card_of(name, wanted);
        let proof = card.1.as_ref().expect("a test");
        let last = proof.steps.last().expect("steps").bags;
        let readings = Readings {
            rows: [0, last]
                .map(|bags| Row {
                    bags,
                    readings: proof
                        .gauges
                        .iter()
                        .map(|gauge| Some(if bags > 0 { gauge.reading.expected } else { Length::default() }))
                        .collect(),
                })
                .to_vec(),
            heads: vec![None; proof.gauges.len()],
        };
        let compared = compare(&card.0, proof, &readings);
        for system in [System::Us, System::Si] {
            let top = Top { report: system, ..card.0.clone() };
            let cells = |page: &str, step: &str| -> Vec<String> {
                let own = page.lines().filter_map(|line| line.strip_prefix(step));
                own.flat_map(|line| line.split("  ").flat_map(|cell| cell.split(" ±")))
                    .flat_map(str::split_whitespace)
                    .map(str::to_owned)
                    .collect()
            };
            let [narrow, wide] = [60, 100].map(|width| {
                let page = proof_to_text(proof, None, &top, width);
                assert!(page.lines().all(|line| line.chars().count() <= width), "{name}, {width}:\n{page}");
                page
            });
            for step in
                proof.steps.iter().map(|step| format!("  {} of {last} ", step.bags)).chain(["  bags ".to_owned()])
            {
                assert_eq!(cells(&narrow, &step), cells(&wide, &step), "{name}: {step}\n{narrow}");
            }
            assert!(cells(&narrow, "  bags ").len() == proof.gauges.len(), "{narrow}");
            assert_eq!(wide.matches("\n  bags ").count(), 1, "{wide}");
            folded += narrow.matches("\n  bags ").count() - 1;
            let [narrow, wide] = [60, 80].map(|width| {
                let page = proof_to_text(proof, Some(&compared), &top, width);
                assert!(page.lines().all(|line| line.chars().count() <= width), "{name}, {width}:\n{page}");
                page.split_whitespace().map(str::to_owned).collect::<Vec<_>>()
            });
            assert_eq!(narrow, wide, "{name}");
        }
    }
    assert!(folded > 3, "{folded}");
}

/// That no load case is one for bags is said in lines as short as the rest.
#[test]
fn why_there_is_no_test_fits_sixty_columns() {
    let card = card_of("rail-row", Wanted::Place);
    let text = no_proof_to_text(card.1.as_ref().expect_err("nobody stands on it"), 60);
    assert!(text.starts_with("NO TEST: no load case of the file") && text.lines().count() == 2, "{text}");
    assert!(text.lines().all(|line| line.chars().count() <= 60), "{text}");
}

/// For machines too, and where it goes to a file it is said as well: a file alone would be taken for a card.
#[test]
fn that_there_is_no_test_is_said_in_every_form() {
    let run = |more: &[&str]| {
        let file = concat!(env!("CARGO_MANIFEST_DIR"), "/examples/rail-row.toml");
        let mut command = Command::new(env!("CARGO_BIN_EXE_skinspan"));
        let done = command.args(["proof", file, "--load", "place"]).args(more).output().expect("the program");
        assert_eq!(done.status.code(), Some(1));
        [done.stdout, done.stderr].map(|text| String::from_utf8(text).expect("text"))
    };
    let [json, said] = run(&["--json"]);
    let json: Value = serde_json::from_str(&json).expect("JSON");
    let card = card_of("rail-row", Wanted::Place);
    assert_eq!(json, no_proof_to_json(card.1.as_ref().expect_err("nobody stands on it"), &card.0));
    assert!(json["no_test"].as_str().is_some_and(|why| why.contains("no load case")) && said.is_empty(), "{json}");
    let file = std::env::temp_dir().join(format!("skinspan-no-test-{}.json", std::process::id()));
    let [nothing, said] = run(&["--json", "-o", &file.display().to_string()]);
    let written = fs::read_to_string(&file).expect("a file");
    fs::remove_file(&file).expect("removed");
    assert!(nothing.is_empty() && said.starts_with("NO TEST: ") && said.contains("wrote "), "{said}");
    assert_eq!(serde_json::from_str::<Value>(&written).expect("JSON"), json);
    let card = card_of("rail-row", Wanted::Any);
    assert_eq!(proof_to_json(card.1.as_ref().expect("a test"), None, &card.0)["no_test"], Value::Null);
}

#[test]
fn readings_in_words_and_for_machines() {
    let card = card_of("galley-roof", Wanted::Any);
    let (top, proof) = (&card.0, card.1.as_ref().expect("a test"));
    let full = read_by(top, proof);
    let mut text = String::from("bags");
    for gauge in &proof.gauges {
        write!(text, ", {} (mm)", gauge.name).expect("a text");
    }
    let most = proof.steps.last().expect("steps").bags;
    for (bags, share) in [(0, 0.0), (most / 2, 0.5), (most, 1.0), (0, 0.0)] {
        write!(text, "\n{bags}").expect("a text");
        for reading in &full {
            write!(text, ", {:.6}", reading.value * 1000.0 * share).expect("a text");
        }
    }
    let file = skinspan::input::NamedText { name: "r.csv".to_owned(), text: text.clone() };
    let readings = skinspan::input::read_readings(&file, proof).expect("readings");
    let compared = compare(top, proof, &readings);
    let page = proof_to_text(proof, Some(&compared), top, 80);
    assert!(page.contains("PASSES: all gauges") && page.lines().all(|line| line.chars().count() <= 80), "{page}");
    let folder = std::env::temp_dir().join(format!("skinspan-proof-{}", std::process::id()));
    fs::create_dir_all(&folder).expect("a folder");
    let path = folder.join("r.csv");
    fs::write(&path, text).expect("a file");
    let path = path.to_str().expect("a path");
    let (code, json, errors) = run(&["proof", "examples/galley-roof.toml", "--readings", path, "--json"]);
    let json: Value = serde_json::from_str(&json).unwrap_or_else(|error| panic!("{error}: {errors}"));
    assert_eq!((code, &json["readings"]["passes"]), (0, &Value::Bool(true)));
    fs::write(path, "bags, A\n0, 0\n").expect("a file");
    let (code, out, errors) = run(&["proof", "examples/galley-roof.toml", "--readings", path]);
    assert_eq!((code, out.as_str()), (2, ""));
    assert!(errors.contains("does not say in which unit"), "{errors}");
    fs::remove_dir_all(&folder).expect("it is ours");
    let (code, out, errors) = run(&["proof", "examples/radar-pad.toml"]);
    assert_eq!((code, out.as_str()), (2, ""));
    assert!(errors.contains("a patch has no top to load"), "{errors}");
    let (code, _, errors) = run(&["proof", "examples/galley-roof.toml", "--readings", "nowhere.csv"]);
    assert_eq!(code, 2);
    assert!(errors.contains("cannot read nowhere.csv"), "{errors}");
}

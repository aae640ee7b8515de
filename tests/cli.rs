//! The program as a user runs it: what it prints where, which files it leaves, and its exit code.

#![allow(clippy::unwrap_used)] // a test may panic

use std::{
    fs,
    io::{Read as _, Write as _},
    path::{Path, PathBuf},
    process::{Command, Output, Stdio},
};

use assert_cmd::cargo::cargo_bin;
use serde_json::Value;
use skinspan::{
    check::CHECKS,
    choice::{Watch, choose},
    criteria::Criteria,
    input::{NamedText, read_choice, read_tables},
};

/// A small top that is held on its whole rim, and lives through little: it holds.
const HOLDS: &str = include_str!("cli/holds.toml");

/// A folder of this test alone, empty at its start.
fn folder(name: &str) -> PathBuf {
    let folder = Path::new(env!("CARGO_TARGET_TMPDIR")).join(format!("cli-{name}"));
    let _ = fs::remove_dir_all(&folder);
    fs::create_dir_all(&folder).unwrap();
    folder
}

fn skinspan(folder: &Path) -> Command {
    let mut command = Command::new(cargo_bin("skinspan"));
    command.current_dir(folder).env_remove("NO_COLOR").env_remove("CLICOLOR_FORCE").env_remove("CLICOLOR");
    command
}

fn run(folder: &Path, arguments: &[&str]) -> Output {
    skinspan(folder).args(arguments).output().unwrap()
}

fn out(output: &Output) -> &str {
    std::str::from_utf8(&output.stdout).unwrap()
}

fn err(output: &Output) -> &str {
    std::str::from_utf8(&output.stderr).unwrap()
}

fn json(output: &Output) -> Value {
    serde_json::from_slice(&output.stdout).unwrap()
}

/// The command ends with a code, and prints to one stream only: results to stdout, all else to stderr.
fn done(folder: &Path, arguments: &[&str], code: i32) -> Output {
    let output = run(folder, arguments);
    assert_eq!(output.status.code(), Some(code), "{arguments:?}\n{}", err(&output));
    assert!(!out(&output).contains('\u{1b}') && !err(&output).contains('\u{1b}'), "{arguments:?} colours a pipe");
    if code == 2 {
        assert_eq!(out(&output), "", "{arguments:?}");
        assert!(err(&output).starts_with("error: "), "{arguments:?}: {}", err(&output));
    }
    output
}

/// A folder with a top that holds, and the same with a core too weak for its people.
fn tops(name: &str) -> PathBuf {
    let folder = folder(name);
    fs::write(folder.join("holds.toml"), HOLDS).unwrap();
    let weak = HOLDS.replace("people    = 0", "people    = 4").replace("5 lb/ft3", "3.5 lb/ft3");
    assert_ne!(weak, HOLDS);
    fs::write(folder.join("fails.toml"), weak).unwrap();
    folder
}

#[test]
fn the_exit_code_is_the_answer() {
    let folder = tops("exit");
    let holds = done(&folder, &["check", "holds.toml"], 0);
    assert!(out(&holds).contains("HOLDS") && !out(&holds).contains("DOES NOT"), "{}", out(&holds));
    assert_eq!(err(&holds), "");
    let fails = done(&folder, &["check", "fails.toml"], 1);
    assert!(out(&fails).contains("DOES NOT HOLD"));
    assert_eq!(err(&fails), "");
    fs::write(folder.join("no.toml"), HOLDS.replace("thickness", "thicknes")).unwrap();
    let cannot = done(&folder, &["check", "no.toml"], 2);
    assert!(err(&cannot).ends_with("1 problem; nothing was checked\n"), "{}", err(&cannot));
    let one_pipe = HOLDS.split("[[pipe]]").take(2).collect::<Vec<_>>().join("[[pipe]]");
    let service = &HOLDS[HOLDS.find("[service]").unwrap()..];
    fs::write(folder.join("open.toml"), format!("{one_pipe}\n{service}")).unwrap();
    let open = run(&folder, &["check", "open.toml"]);
    assert_ne!(open.status.code(), Some(0), "one pipe holds no top\n{}", out(&open));
}

#[test]
fn files_that_cannot_be_read_are_named_with_the_cause() {
    let folder = folder("unreadable");
    fs::write(folder.join("latin.toml"), b"title = \"x\"\nname = \"gr\xFCn\"\n").unwrap();
    fs::write(folder.join("empty.toml"), "").unwrap();
    let message = |file: &str| err(&done(&folder, &["check", file], 2)).to_owned();
    assert_eq!(
        message("none.toml"),
        "error: cannot read none.toml: there is no such file or folder\n\
         help: `skinspan new none.toml` writes a file to start from\n"
    );
    #[cfg(unix)]
    assert_eq!(
        message("."),
        "error: cannot read .: it is a folder\nhelp: a folder is no design file; in it lie ./empty.toml, ./latin.toml\n"
    );
    assert_eq!(
        message("latin.toml"),
        "error: latin.toml is not a text file: line 2 (byte 23) is not UTF-8\nhelp: save it as UTF-8 text\n"
    );
    // Others take this for what is piped in.
    let piped = message("-");
    assert!(piped.starts_with("error: cannot read -: a design file is read by its name"), "{piped}");
    assert!(
        piped.contains("\nhelp: write what is piped in to a file first") && !piped.contains("skinspan new"),
        "{piped}"
    );
    assert!(message("empty.toml").ends_with("3 problems; nothing was checked\n"));
    let table = done(&folder, &["check", "empty.toml", "--table", "none.toml"], 2);
    assert_eq!(err(&table), "error: cannot read none.toml: there is no such file or folder\n");
    done(&folder, &["materials", "--table", "none.toml"], 2);
    done(&folder, &["explain", "pvc-foam", "--table", "none.toml"], 2);
}

#[test]
fn the_report_for_machines_has_its_keys() {
    let folder = tops("json");
    for (file, code, answer) in [("holds.toml", 0, "holds"), ("fails.toml", 1, "does not hold")] {
        let output = done(&folder, &["check", file, "--json"], code);
        assert_eq!(err(&output), "");
        let report = json(&output);
        assert_eq!(report["answer"], answer);
        assert_eq!(report["format"], serde_json::json!({ "name": "skinspan-check", "version": 1 }));
        let keys: Vec<&str> = report.as_object().unwrap().keys().map(String::as_str).collect();
        let mut due = [
            "format",
            "title",
            "units",
            "forward",
            "answer",
            "reason",
            "weight",
            "checks",
            "envelope",
            "advice",
            "cases",
            "ruled_out",
            "frame",
            "sag_bounds",
            "criteria",
            "numerical_error",
            "numerical_error_check",
            "without_fixings",
            "not_made",
            "savings",
            "cautions",
        ];
        due.sort_unstable();
        for key in due {
            assert!(keys.contains(&key), "{key}");
        }
        for key in ["items", "bare", "total", "x", "y"] {
            assert!(!report["weight"][key].is_null(), "weight {key}");
        }
        let checks = report["checks"].as_array().unwrap();
        assert_eq!(checks.iter().all(|check| check["passes"] == true), code == 0);
        for check in checks {
            let due: &[&str] = if check.get("not_evaluated").is_some() {
                &["check", "title", "passes", "case", "place", "x", "y"]
            } else {
                &[
                    "check",
                    "title",
                    "passes",
                    "case",
                    "place",
                    "x",
                    "y",
                    "demand",
                    "allowable",
                    "factor",
                    "utilisation",
                    "margin",
                    "basis",
                    "terms",
                    "formula",
                    "source",
                ]
            };
            for key in due {
                assert!(check.get(key).is_some(), "{key} in {check}");
            }
        }
        // The worst check governs, and the text says the same.
        let text = done(&folder, &["check", file], code);
        assert!(out(&text).contains(checks[0]["title"].as_str().unwrap()));
    }
}

#[test]
fn text_and_machine_report_exclude_each_other() {
    let folder = tops("conflict");
    done(&folder, &["check", "holds.toml", "--json", "--full"], 2);
}

#[test]
fn the_same_input_gives_the_same_bytes() {
    let folder = tops("same");
    for arguments in [&["check", "fails.toml", "--full"][..], &["check", "fails.toml", "--json"], &["materials"]] {
        assert_eq!(run(&folder, arguments).stdout, run(&folder, arguments).stdout, "{arguments:?}");
    }
}

#[test]
fn a_report_in_a_file_is_the_one_that_would_be_printed() {
    let folder = tops("output");
    let printed = done(&folder, &["check", "fails.toml"], 1);
    fs::write(folder.join("report.txt"), "what stood here before, longer or shorter").unwrap();
    for _ in 0..2 {
        let written = done(&folder, &["check", "fails.toml", "--output", "report.txt"], 1);
        assert_eq!((out(&written), err(&written)), ("", "wrote report.txt\n"));
        assert_eq!(fs::read(folder.join("report.txt")).unwrap(), printed.stdout);
    }
    let colours = skinspan(&folder)
        .env("CLICOLOR_FORCE", "1")
        .args(["check", "fails.toml", "-o", "report.txt"])
        .output()
        .unwrap();
    assert_eq!(colours.status.code(), Some(1));
    assert_eq!(fs::read(folder.join("report.txt")).unwrap(), printed.stdout, "a file has no colours");
    let names: Vec<_> = fs::read_dir(&folder).unwrap().map(|entry| entry.unwrap().file_name()).collect();
    assert_eq!(names.len(), 3, "something is left beside the report: {names:?}");
}

#[test]
fn a_report_that_cannot_be_written_is_an_error() {
    let folder = tops("unwritable");
    let output = done(&folder, &["check", "holds.toml", "-o", "none/report.txt"], 2);
    assert_eq!(
        err(&output),
        "error: cannot write none/report.txt: there is no such file or folder\nhelp: make the folder first, or name another\n"
    );
    let output = done(&folder, &["check", "holds.toml", "-o", "holds.toml/report.txt"], 2);
    assert!(err(&output).starts_with("error: cannot write holds.toml/report.txt: "));
    #[cfg(unix)]
    assert_eq!(
        err(&done(&folder, &["check", "holds.toml", "-o", "."], 2)),
        "error: cannot write .: it is a folder\nhelp: name a file that lies in it\n"
    );
    done(&folder, &["check", "holds.toml", "-o", ""], 2);
}

#[test]
fn a_report_does_not_replace_its_design_file() {
    let folder = tops("replace");
    let output = done(&folder, &["check", "holds.toml", "-o", "./holds.toml"], 2);
    assert!(err(&output).contains("would replace the design file"));
    assert_eq!(fs::read_to_string(folder.join("holds.toml")).unwrap(), HOLDS);
}

#[cfg(unix)]
#[test]
fn a_report_goes_through_links_and_into_devices() {
    use std::os::unix::fs::FileTypeExt as _;

    let folder = tops("link");
    fs::write(folder.join("report.txt"), "old").unwrap();
    std::os::unix::fs::symlink("report.txt", folder.join("link.txt")).unwrap();
    done(&folder, &["check", "holds.toml", "-o", "link.txt"], 0);
    assert!(fs::symlink_metadata(folder.join("link.txt")).unwrap().is_symlink());
    assert_ne!(fs::read_to_string(folder.join("report.txt")).unwrap(), "old");
    done(&folder, &["check", "holds.toml", "-o", "/dev/null"], 0);
    assert!(fs::metadata("/dev/null").unwrap().file_type().is_char_device());
}

#[test]
fn a_new_file_can_be_checked_and_is_not_overwritten() {
    let folder = folder("new");
    let output = done(&folder, &["new", "top.toml"], 0);
    assert_eq!((out(&output), err(&output)), ("", "wrote top.toml\nnow change it and run: skinspan check top.toml\n"));
    let checked = run(&folder, &["check", "top.toml", "--hand"]);
    assert!(matches!(checked.status.code(), Some(0 | 1)), "{}", err(&checked));
    fs::write(folder.join("top.toml"), "mine").unwrap();
    let output = done(&folder, &["new", "top.toml"], 2);
    assert_eq!(err(&output), "error: top.toml is there already and is not overwritten\nhelp: choose another name\n");
    assert_eq!(fs::read_to_string(folder.join("top.toml")).unwrap(), "mine");
    done(&folder, &["new", "none/top.toml"], 2);
    done(&folder, &["new", "."], 2);
}

#[test]
fn materials_are_chosen_by_text_and_kind() {
    let folder = folder("materials");
    let all = json(&done(&folder, &["materials", "--json"], 0));
    let rows = all.as_array().unwrap();
    let kinds = [
        "core",
        "fabric",
        "ply",
        "fibre",
        "resin",
        "coat",
        "board",
        "filler",
        "conduit",
        "alloy",
        "fastener",
        "thread",
        "screw",
        "insert",
        "potted-insert",
        "rivet",
        "stud",
        "adhesive",
        "lubrication",
        "body",
        "galvanic",
    ];
    let mut sum = 0;
    for kind in kinds {
        let some = json(&done(&folder, &["materials", "--kind", kind, "--json"], 0));
        let some = some.as_array().unwrap();
        assert!(some.iter().all(|row| row["kind"] == kind));
        sum += some.len();
    }
    assert_eq!(sum, rows.len());
    let foams = json(&done(&folder, &["materials", "PVC", "--kind", "core", "--json"], 0));
    assert!(foams.as_array().unwrap().iter().any(|row| row["id"] == "pvc-foam"));
    assert!(foams.as_array().unwrap().len() < rows.len());
    let row = done(&folder, &["materials", "pvc-foam"], 0);
    assert!(out(&row).contains("shear strength") && out(&row).contains("table: built-in core.toml"), "{}", out(&row));
    let list = done(&folder, &["materials", "PVC foam"], 0);
    assert!(out(&list).contains("lb/ft³"), "{}", out(&list));
    let list = done(&folder, &["materials", "PVC foam", "--units", "si"], 0);
    assert!(out(&list).contains("48.0 kg/m³ to 250 kg/m³"), "{}", out(&list));
    // Every value in the units that were asked for: 0.55 MPa at 48 kg/m³, 4.5 MPa at 250.
    let flat = |output: &Output| out(output).split_whitespace().collect::<Vec<_>>().join(" ");
    let us = flat(&done(&folder, &["materials", "PVC foam"], 0));
    assert!(us.contains("shear strength 79.77 psi at 3.00 lb/ft³ (from memory) to 652.7 psi at 15.61 lb/ft³"), "{us}");
    assert!(!us.contains("MPa") && !us.contains("kg/m"), "{us}");
    let si = flat(&done(&folder, &["materials", "PVC foam", "--units", "si"], 0));
    assert!(si.contains("shear strength 0.550 MPa at 48.0 kg/m³ (from memory) to 4.50 MPa"), "{si}");
    assert!(out(&list).lines().all(|line| line.chars().count() <= 80));
    for arguments in [&["materials", "unobtainium"][..], &["materials", "unobtainium", "--json"]] {
        assert_eq!(
            err(&done(&folder, arguments, 2)),
            "error: the material table has nothing that matches `unobtainium`\n\
             help: `skinspan materials` lists all of it\n"
        );
    }
    assert!(err(&done(&folder, &["materials", "--kind", "rope"], 2)).contains("`core`, `fabric`"));
}

#[test]
fn everything_that_has_a_name_is_explained() {
    let folder = folder("explain");
    let all = json(&done(&folder, &["materials", "--json"], 0));
    let mut names: Vec<String> =
        all.as_array().unwrap().iter().map(|row| row["id"].as_str().unwrap().to_owned()).collect();
    names.extend(CHECKS.iter().map(|check| check.id().to_owned()));
    names.extend(Criteria::built_in().unwrap().records().iter().map(|record| record.id.clone()));
    let count = names.len();
    for name in &names {
        let text = done(&folder, &["explain", name], 0);
        assert_eq!(err(&text), "");
        assert!(out(&text).lines().next().unwrap().contains(name.as_str()), "{name}: {}", out(&text));
        let explained = json(&done(&folder, &["explain", name, "--json"], 0));
        assert_eq!(explained.as_array().unwrap().len(), 1, "{name}");
    }
    names.sort_unstable();
    names.dedup();
    assert_eq!(names.len(), count, "a name stands for two things");
}

/// A check is known by the title that the report gives it too.
#[test]
fn a_title_is_explained() {
    let folder = folder("title");
    let by_name = done(&folder, &["explain", "pipe-bending"], 0);
    assert_eq!(out(&done(&folder, &["explain", "pipe bending"], 0)), out(&by_name));
}

#[test]
fn a_property_is_explained_alone() {
    let folder = folder("property");
    for name in ["shear-strength", "shear_strength"] {
        let text = done(&folder, &["explain", "pvc-foam", name], 0);
        assert!(out(&text).contains("shear strength") && !out(&text).contains("compressive strength"));
    }
    for (arguments, message) in [
        (
            &["explain", "pvc-fom"][..],
            "error: there is no check, material or factor `pvc-fom`\nhelp: did you mean `skinspan explain pvc-foam`?\n",
        ),
        (
            &["explain", "core-sheer"],
            "error: there is no check, material or factor `core-sheer`\n\
             help: did you mean `skinspan explain core-shear`?\n",
        ),
        (
            &["explain", "Core-Shear-Factr"],
            "error: there is no check, material or factor `Core-Shear-Factr`\n\
             help: did you mean `skinspan explain core-shear-factor`?\n",
        ),
        (
            &["explain", "qqq"],
            "error: there is no check, material or factor `qqq`\n\
             help: `skinspan check` names its checks, `skinspan materials` its materials\n",
        ),
        (
            &["explain", "pvc-foam", "sheer-strength"],
            "error: `pvc-foam` has no property `sheer-strength`\n\
             help: did you mean `skinspan explain pvc-foam shear-strength`?\n",
        ),
        (
            &["explain", "pvc-foam", "qqq"],
            "error: `pvc-foam` has no property `qqq`\nhelp: `skinspan explain pvc-foam` shows all that is known of it\n",
        ),
        (
            &["explain", "core-shear", "density"],
            "error: `core-shear` has no property `density`\nhelp: did you mean `skinspan explain core-shear`?\n",
        ),
    ] {
        assert_eq!(err(&done(&folder, arguments, 2)), message);
    }
}

#[test]
fn units_can_be_chosen() {
    let folder = tops("units");
    let us = done(&folder, &["check", "holds.toml", "--units", "us", "--json"], 0);
    let si = done(&folder, &["check", "holds.toml", "--units", "si", "--json"], 0);
    let (us, si) = (json(&us), json(&si));
    assert_eq!((&us["units"], &si["units"]), (&"us".into(), &"si".into()));
    assert_eq!(us["weight"]["bare"]["unit"], "lb");
    assert_eq!(si["weight"]["bare"]["unit"], "kg");
    let mass = |report: &Value| report["weight"]["bare"]["value"].as_f64().unwrap();
    // Nine digits are printed.
    assert!((mass(&us) * 0.45359237 / mass(&si) - 1.0).abs() < 1e-8);
    let utilisation = |report: &Value| report["checks"][0]["utilisation"].as_f64().unwrap();
    assert!((utilisation(&us) / utilisation(&si) - 1.0).abs() < 1e-12, "units change no result");
    assert!(out(&done(&folder, &["check", "holds.toml", "--units", "si"], 0)).contains("kg"));
    done(&folder, &["check", "holds.toml", "--units", "metric"], 2);
}

/// The core of the top with a shear strength of nearly nothing.
const WEAK: &str = r#"
[[source]]
key  = "own-tests"
text = "Shear tests of our own, batch 7"
seen = "read"

[[core]]
id             = "pvc-foam"
shear_strength = { points = [["48 kg/m3", "0.01 MPa"], ["250 kg/m3", "0.02 MPa"]], basis = "measured", source = "own-tests", mark = "read" }
"#;

#[test]
fn a_table_of_the_user_overrides_and_is_named() {
    let folder = tops("table");
    fs::write(folder.join("weak.toml"), WEAK).unwrap();
    let shown = done(&folder, &["explain", "pvc-foam", "shear-strength", "--table", "weak.toml"], 0);
    assert!(out(&shown).contains("table: weak.toml") && out(&shown).contains("batch 7"), "{}", out(&shown));
    let built_in = json(&done(&folder, &["check", "holds.toml", "--json"], 0));
    let over = json(&done(&folder, &["check", "holds.toml", "--json", "--table", "weak.toml"], 1));
    let shear = |report: &Value| {
        let checks = report["checks"].as_array().unwrap();
        checks.iter().find(|check| check["check"] == "core-shear").unwrap()["utilisation"].as_f64().unwrap()
    };
    assert!(shear(&over) > 10.0 * shear(&built_in));
    let full = done(&folder, &["check", "holds.toml", "--full", "--table", "weak.toml"], 1);
    assert!(out(&full).contains("batch 7"), "the report does not say where the value comes from");
    // Named in the design file, from where that stands.
    fs::create_dir(folder.join("inner")).unwrap();
    fs::write(folder.join("inner/top.toml"), format!("{HOLDS}\n[tables]\nfiles = [\"../weak.toml\"]\n")).unwrap();
    let named = json(&done(&folder, &["check", "inner/top.toml", "--json"], 1));
    assert_eq!(shear(&named).to_bits(), shear(&over).to_bits());
    fs::write(folder.join("inner/top.toml"), format!("{HOLDS}\n[tables]\nfiles = [\"weak.toml\"]\n")).unwrap();
    let missing = done(&folder, &["check", "inner/top.toml"], 2);
    assert!(
        err(&missing).contains("cannot read inner/weak.toml: there is no such file or folder"),
        "{}",
        err(&missing)
    );
    fs::write(folder.join("faulty.toml"), WEAK.replace("0.01 MPa", "0.01 kg")).unwrap();
    let faulty = done(&folder, &["check", "holds.toml", "--table", "faulty.toml"], 2);
    assert!(err(&faulty).contains("--> faulty.toml:9:"), "{}", err(&faulty));
}

#[test]
fn a_drawing_is_looked_for_beside_the_design_file() {
    let folder = folder("drawing");
    fs::create_dir(folder.join("inner")).unwrap();
    let design = include_str!("../examples/bow-wing.toml");
    let (from, to) = (design.find("outline = { points").unwrap(), design.find("process").unwrap());
    let drawn = "outline = { drawing = \"lines.dxf\", layer = \"OUTLINE\" }\n";
    fs::write(folder.join("inner/top.toml"), format!("{}{drawn}{}", &design[..from], &design[to..])).unwrap();
    let missing = done(&folder, &["check", "inner/top.toml"], 2);
    let said = err(&missing);
    assert!(said.contains("cannot read inner/lines.dxf: there is no such file or folder"), "{said}");
    assert!(said.contains("--> inner/top.toml:8:23"), "{said}");
    assert!(said.contains("a drawing is looked for beside the design file that names it"), "{said}");

    fs::write(folder.join("inner/lines.dxf"), include_str!("../examples/bow-wing.dxf")).unwrap();
    let drawn = json(&done(&folder, &["check", "inner/top.toml", "--hand", "--json"], 0));
    fs::write(folder.join("written.toml"), design).unwrap();
    let written = json(&done(&folder, &["check", "written.toml", "--hand", "--json"], 0));
    let total = |report: &Value| report["weight"]["total"]["value"].as_f64().unwrap();
    assert!((total(&drawn) - total(&written)).abs() < 1e-6 * total(&written));
    let cautions = written["cautions"].to_string();
    assert!(cautions.contains("takes the outline's bounding rectangle, 98.0 in by 68.0 in"), "{cautions}");
    assert!(cautions.contains("across holes as if panel were there: hatch."), "{cautions}");

    // A note in another alphabet is no obstacle; what is no drawing at all is.
    let mut old = include_bytes!("../examples/bow-wing.dxf").to_vec();
    old.splice(0..0, b"999\nT\xfcr\n".iter().copied());
    fs::write(folder.join("inner/lines.dxf"), &old).unwrap();
    done(&folder, &["check", "inner/top.toml", "--hand"], 0);
    fs::write(folder.join("inner/lines.dxf"), [0xff, 0x00, 0x80]).unwrap();
    let binary = done(&folder, &["check", "inner/top.toml"], 2);
    assert!(err(&binary).contains("save it as DXF in text form, not binary"), "{}", err(&binary));
}

#[test]
fn colours_are_for_terminals_and_for_those_who_force_them() {
    let folder = tops("colour");
    let coloured = skinspan(&folder).env("CLICOLOR_FORCE", "1").args(["check", "fails.toml"]).output().unwrap();
    assert!(out(&coloured).contains('\u{1b}'), "the test would not see colours");
    let plain = skinspan(&folder).env("NO_COLOR", "1").args(["check", "fails.toml"]).output().unwrap();
    assert!(!out(&plain).contains('\u{1b}'));
    // With the colours taken out both are the same.
    assert_eq!(anstream::adapter::strip_str(out(&coloured)).to_string(), out(&plain));
}

#[test]
fn a_reader_that_has_seen_enough_is_no_failure() {
    let folder = tops("broken-pipe");
    for arguments in [&["check", "fails.toml", "--full"][..], &["materials", "--json"], &["--help"]] {
        let mut child =
            skinspan(&folder).args(arguments).stdout(Stdio::piped()).stderr(Stdio::piped()).spawn().unwrap();
        drop(child.stdout.take());
        let mut message = String::new();
        child.stderr.take().unwrap().read_to_string(&mut message).unwrap();
        assert_eq!(message, "", "{arguments:?}");
        assert!(matches!(child.wait().unwrap().code(), Some(0 | 1)), "{arguments:?}");
    }
}

#[cfg(target_os = "linux")]
#[test]
fn a_report_that_does_not_fit_on_the_disk_is_an_error() {
    let folder = tops("full");
    let full = fs::OpenOptions::new().write(true).open("/dev/full").unwrap();
    let output = skinspan(&folder).args(["check", "holds.toml"]).stdout(full).output().unwrap();
    assert_eq!(output.status.code(), Some(2));
    assert!(err(&output).starts_with("error: cannot write the report: "), "{}", err(&output));
    let output = done(&folder, &["check", "holds.toml", "-o", "/dev/full"], 2);
    assert!(err(&output).starts_with("error: cannot write /dev/full: "));
}

#[test]
fn help_says_how_to_start() {
    let folder = folder("help");
    let version = done(&folder, &["--version"], 0);
    assert_eq!(out(&version), concat!("skinspan ", env!("CARGO_PKG_VERSION"), "\n"));
    let help = done(&folder, &["--help"], 0);
    for part in ["Exit codes: 0", "skinspan new top.toml", "skinspan check top.toml", "materials", "explain"] {
        assert!(out(&help).contains(part), "{part}");
    }
    for command in ["check", "choose", "materials", "explain", "new"] {
        let help = done(&folder, &[command, "--help"], 0);
        assert!(out(&help).contains("Usage: skinspan"), "{}", out(&help));
    }
    let bare = run(&folder, &[]);
    assert_eq!(bare.status.code(), Some(2));
    assert!(err(&bare).contains("skinspan new top.toml"));
    assert!(err(&done(&folder, &["chek"], 2)).contains("did you mean `check`?"));
}

#[test]
fn problems_with_windows_line_ends_and_a_byte_order_mark_stand_at_their_place() {
    let folder = folder("windows");
    let text = HOLDS.replace("thickness", "thicknes");
    let mut file = fs::File::create(folder.join("plain.toml")).unwrap();
    file.write_all(text.as_bytes()).unwrap();
    fs::write(folder.join("windows.toml"), text.replace('\n', "\r\n")).unwrap();
    let place = |file: &str| {
        let output = done(&folder, &["check", file], 2);
        let line = err(&output).lines().find(|line| line.contains("-->")).unwrap().to_owned();
        line.rsplit_once(".toml").unwrap().1.to_owned()
    };
    assert_eq!(place("plain.toml"), place("windows.toml"));
    fs::write(folder.join("marked.toml"), format!("\u{feff}{HOLDS}")).unwrap();
    done(&folder, &["check", "marked.toml"], 0);
}

/// What an answer leaves out stands beside it.
#[test]
fn the_answer_says_what_was_not_looked_at() {
    let folder = tops("left-out");
    let flat = |output: &Output| out(output).split_whitespace().collect::<Vec<_>>().join(" ");
    let whole = flat(&done(&folder, &["check", "holds.toml"], 0));
    let but = "but for its fixings: not checked for port rail, starboard rail";
    assert!(whole.contains(&format!("HOLDS, {but}")) && !whole.contains("OPEN pipe bending"), "{whole}");
    let hand = flat(&done(&folder, &["check", "holds.toml", "--hand"], 0));
    assert!(hand.contains(&format!("HOLDS BY THE HAND METHOD ALONE, {but}")), "{hand}");
    assert!(hand.contains("OPEN pipe bending — — not made: the plate method alone knows it"), "{hand}");
    let report = json(&done(&folder, &["check", "holds.toml", "--hand", "--json"], 0));
    assert_eq!(report["not_made"], serde_json::json!(["pipe-bending"]));
    assert_eq!(report["without_fixings"][0], "port rail");
    let example = Path::new(env!("CARGO_MANIFEST_DIR")).join("examples/survey-launch.toml");
    let close = flat(&done(&folder, &["check", example.to_str().unwrap(), "--hand"], 0));
    assert!(close.contains("The margin lies within the numerical error of the hand method, 5."), "{close}");
    assert!(close.contains("; core shear, which governs, by 5."), "{close}");
}

#[test]
fn a_fixing_that_holds_nothing_is_named() {
    let folder = tops("idle");
    let kind =
        |name: &str| format!("[[fixing]]\nname = \"{name}\"\nhold = \"blind-rivet\"\nrivet = \"rivet-al-4-8\"\n");
    fs::write(folder.join("idle.toml"), format!("{HOLDS}\n{}{}", kind("trim rivets"), kind("spare rivets"))).unwrap();
    let text = done(&folder, &["check", "idle.toml"], 0);
    let flat = out(&text).split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(flat.contains("hold nothing") && flat.contains("`fixings`: trim rivets, spare rivets."), "{flat}");
    let report = json(&done(&folder, &["check", "idle.toml", "--json"], 0));
    let named = |caution: &Value| caution.as_str().unwrap().contains("trim rivets, spare rivets");
    assert_eq!(report["cautions"].as_array().unwrap().iter().filter(|caution| named(caution)).count(), 1);
    let clean = json(&done(&folder, &["check", "holds.toml", "--json"], 0));
    let hold_nothing = |caution: &Value| caution.as_str().unwrap().contains("hold nothing");
    assert!(!clean["cautions"].as_array().unwrap().iter().any(hold_nothing));
}

/// What a torque may be at most is printed below it, never above, in three digits: up to one in a hundred less.
#[test]
fn the_most_torque_is_rounded_down() {
    let folder = folder("torque");
    let example = fs::read_to_string(Path::new(env!("CARGO_MANIFEST_DIR")).join("examples/radar-pad.toml")).unwrap();
    let mut lost = 0;
    for washer in 30..46 {
        let text = example.replace("outside = \"40 mm\"", &format!("outside = \"{washer} mm\""));
        fs::write(folder.join("pad.toml"), &text).unwrap();
        let text = run(&folder, &["check", "pad.toml"]);
        let flat = out(&text).split_whitespace().collect::<Vec<_>>().join(" ");
        let printed: f64 = flat.split("torque at most ").nth(1).unwrap().split(' ').next().unwrap().parse().unwrap();
        let report = json(&run(&folder, &["check", "pad.toml", "--json"]));
        let most = report["fixings"][0]["torque"]["most"]["value"].as_f64().unwrap();
        assert!(printed <= most * (1.0 + 1e-8) && printed > most * 0.99, "{printed} {most}");
        let nearest: f64 = skinspan::units::show(
            skinspan::units::parse::<skinspan::units::Torque>(&format!("{most} lbf.in")).unwrap(),
            skinspan::units::System::Us,
        )
        .split(' ')
        .next()
        .unwrap()
        .parse()
        .unwrap();
        lost += i32::from(printed < nearest);
    }
    assert!(lost > 2, "rounding to the nearest would have done as well");
}

#[test]
fn a_footing_that_hangs_over_is_named() {
    let folder = folder("hangs-over");
    let gear = |y: &str| {
        format!(
            "[[gear]]\nname = \"horn\"\nmass = \"5 lb\"\ncg_height = \"3 in\"\nat = [\"30 in\", \"{y}\"]\n\
             footing = {{ length = \"6 in\", width = \"4 in\" }}\n"
        )
    };
    for (y, said) in [("1.9 in", true), ("2.1 in", false)] {
        fs::write(folder.join("top.toml"), format!("{HOLDS}\n{}", gear(y))).unwrap();
        let report = json(&run(&folder, &["check", "top.toml", "--json"]));
        let cautions = report["cautions"].to_string();
        assert_eq!(cautions.contains("The footing reaches over the rim or a hole: horn."), said, "{cautions}");
    }
}

#[test]
fn a_pipe_below_a_hole_is_named() {
    let folder = folder("below-hole");
    for (y, said) in [("4 in", true), ("20 in", false)] {
        let hole =
            format!("[[hole]]\nname = \"hatch\"\ncircle = {{ at = [\"30 in\", \"{y}\"], diameter = \"5 in\" }}\n");
        fs::write(folder.join("top.toml"), format!("{HOLDS}\n{hole}")).unwrap();
        let report = json(&run(&folder, &["check", "top.toml", "--json"]));
        assert!(report["plate"]["supports"].as_array().unwrap().iter().all(|pipe| pipe["rigid"] == false), "{report}");
        let cautions = report["cautions"].to_string();
        assert_eq!(cautions.contains("port rail goes on below hatch"), said, "{cautions}");
    }
}

#[test]
fn what_the_plate_finds_stands_by_the_formula_limits_and_source_of_the_plate() {
    let folder = tops("on-plate");
    let report = json(&run(&folder, &["check", "fails.toml", "--json"]));
    let by_plate: Vec<&Value> =
        report["envelope"].as_array().unwrap().iter().filter(|outcome| outcome["method"] == "plate").collect();
    assert!(by_plate.len() > 6);
    for outcome in by_plate {
        let check = CHECKS.iter().find(|check| check.id() == outcome["check"]).unwrap();
        let own = check.on_plate().unwrap();
        let one_line = |text: &str| text.split_whitespace().collect::<Vec<_>>().join(" ");
        assert_eq!(outcome["formula"], one_line(own.formula));
        assert_eq!(outcome["limits"], own.limits);
        assert!(outcome["source"].as_str().unwrap().contains(own.citation.locator), "{outcome}");
        let explained = json(&done(&folder, &["explain", check.id(), "--json"], 0));
        assert_eq!(explained[0]["limits_on_plate"], own.limits);
        assert_eq!(explained[0]["locator_on_plate"], own.citation.locator);
    }
    let one_line = |text: &str| text.split_whitespace().collect::<Vec<_>>().join(" ");
    let explained = one_line(out(&done(&folder, &["explain", "sag"], 0)));
    let full = one_line(out(&run(&folder, &["check", "fails.toml", "--full"])));
    let own = CHECKS.iter().find(|check| check.id() == "sag").unwrap().on_plate().unwrap();
    let plate_in_full = report["checks"]
        .as_array()
        .unwrap()
        .iter()
        .any(|outcome| outcome["check"] == "sag" && outcome["method"] == "plate");
    assert!(
        explained.contains(&format!("on plate {}", one_line(own.formula))) && explained.contains(own.limits),
        "{explained}"
    );
    assert_eq!(full.contains(own.limits), plate_in_full, "{full}");
}

#[test]
fn a_top_that_is_refused_has_no_plate_and_says_why() {
    let folder = folder("no-plate");
    let corner = HOLDS
        .replace("posts   = [\"4 in\", \"40 in\"]", "posts   = [\"4 in\", \"20 in\"]")
        .replace("[[\"2 in\", \"36 in\"], [\"58 in\", \"36 in\"]]", "[[\"58 in\", \"10 in\"], [\"58 in\", \"36 in\"]]");
    fs::write(folder.join("top.toml"), corner).unwrap();
    let report = json(&run(&folder, &["check", "top.toml", "--json"]));
    let reason = report["plate"]["reason"].as_str().unwrap();
    assert!(reason.contains("add a pipe that runs beside another along the same part of the top"), "{reason}");
    assert_eq!(report["reason"], reason);
    assert_eq!(report["checks"], Value::Array(Vec::new()));
}

#[test]
fn a_command_line_that_asks_for_nothing_there_is_says_what_was_meant() {
    let folder = folder("refused");
    let option = "help: `skinspan check --help` tells what there is";
    for (arguments, said) in [
        (
            ["chek", "top.toml"].as_slice(),
            "error: there is no command `chek`\nhelp: did you mean `check`? `skinspan --help` tells what there is\n",
        ),
        (&["xyzzy"], "error: there is no command `xyzzy`\nhelp: `skinspan --help` tells what there is\n"),
        (
            &["check", "--hnd", "top.toml"],
            "error: there is no option `--hnd` here\nhelp: did you mean `--hand`? `skinspan check --help` tells what there is\n",
        ),
        (&["check"], &format!("error: `<FILE>` is missing\n{option}\n")),
        (&["check", "one.toml", "two.toml"], &format!("error: `two.toml` is one word too many\n{option}\n")),
        (
            &["check", "--units", "metric", "top.toml"],
            &format!("error: --units <UNITS> takes one of `us`, `si`, not `metric`\n{option}\n"),
        ),
        (
            &["check", "top.toml", "--units"],
            &format!("error: --units <UNITS> says nothing: it takes one of `us`, `si`\n{option}\n"),
        ),
        (
            &["check", "--json", "--full", "top.toml"],
            &format!("error: --json and --full do not go together: leave one of them out\n{option}\n"),
        ),
        (
            &["choose", "--json", "--csv", "top.toml"],
            "error: --json and --csv do not go together: leave one of them out\nhelp: `skinspan choose --help` tells what there is\n",
        ),
        (&["check", "--json", "--json", "top.toml"], &format!("error: --json stands there twice\n{option}\n")),
        (
            &["check", "."],
            "error: cannot read .: it is a folder\nhelp: a design file is meant, and none lies in that folder\n",
        ),
        (
            &["new", "nowhere/top.toml"],
            "error: cannot write nowhere/top.toml: there is no such file or folder\nhelp: make the folder first, or name another\n",
        ),
    ] {
        assert_eq!(err(&done(&folder, arguments, 2)), said, "{arguments:?}");
    }
}

/// A dozen or two to choose from.
const ROOM: &str = "
[choose]
cores = [\"pvc-foam\"]
densities = [\"5 lb/ft3\", \"100 kg/m3\"]
thicknesses = [\"3/4 in\", \"1 in\"]
outer = [[\"gelcoat\", \"mat 1.5 oz/ft2\", \"biaxial 18 oz/yd2 @ 45 deg\"]]
inner = [[\"biaxial 18 oz/yd2 @ 45 deg\", \"mat 1.5 oz/ft2\"]]
";

struct Nobody;

impl Watch for Nobody {
    fn at(&self, _: usize, _: usize, _: usize) {}
    fn stops(&self) -> bool {
        false
    }
}

/// A folder with a top to choose for, and how many are shown of it.
fn to_choose(name: &str) -> (PathBuf, usize) {
    let folder = tops(name);
    let text = format!("{HOLDS}{ROOM}");
    fs::write(folder.join("choose.toml"), &text).unwrap();
    let file = NamedText { name: "choose.toml".to_owned(), text };
    let (top, space) = read_choice(&file, &read_tables(&[]).unwrap(), None).unwrap();
    assert_eq!(space.len(), 16);
    (folder, choose(&top, &space, &Nobody).found.len())
}

#[test]
fn a_choice_is_shown_as_text_for_machines_and_for_spreadsheets() {
    let (folder, shown) = to_choose("choose");
    assert!(shown > 0);
    let text = done(&folder, &["choose", "choose.toml"], 0);
    assert!(out(&text).contains("PVC foam"), "{}", out(&text));
    // Where nobody looks on, a line at the start and one at the end.
    let lines: Vec<&str> = err(&text).lines().collect();
    assert_eq!(lines.len(), 2, "{lines:?}");
    assert_eq!(lines[0], "looking at 16");
    assert!(
        lines[1].starts_with("looked at 16 of 16 in ") && lines[1].ends_with(&format!("; {shown} shown")),
        "{lines:?}"
    );
    assert!(!err(&text).contains('\r'));
    let machines = json(&done(&folder, &["choose", "choose.toml", "--json"], 0));
    assert!(machines["format"]["name"].is_string(), "{machines}");
    let sheet = done(&folder, &["choose", "choose.toml", "--csv"], 0);
    assert_eq!(out(&sheet).lines().count(), 1 + shown, "{}", out(&sheet));
    assert_eq!(
        run(&folder, &["choose", "choose.toml", "--csv"]).stdout,
        sheet.stdout,
        "the same input, the same bytes"
    );
    // A file is there whole, with nothing beside it.
    let names = || fs::read_dir(&folder).unwrap().count();
    let before = names();
    let written = done(&folder, &["choose", "choose.toml", "--csv", "-o", "chosen.csv"], 0);
    assert!(out(&written).is_empty() && err(&written).ends_with("wrote chosen.csv\n"), "{}", err(&written));
    assert_eq!(fs::read(folder.join("chosen.csv")).unwrap(), sheet.stdout);
    assert_eq!(names(), before + 1);
    // What cannot be written is said before the search, not after it.
    fs::create_dir(folder.join("a-folder")).unwrap();
    for (output, reason) in
        [("no-such/chosen.csv", "make the folder first"), ("a-folder", "name a file that lies in it")]
    {
        let no = done(&folder, &["choose", "choose.toml", "-o", output], 2);
        assert!(err(&no).starts_with(&format!("error: cannot write {output}")), "{}", err(&no));
        assert!(err(&no).contains(reason) && !err(&no).contains("looking at"), "{}", err(&no));
    }
    let over = done(&folder, &["choose", "choose.toml", "-o", "choose.toml"], 2);
    assert!(err(&over).contains("the report would replace the design file choose.toml"), "{}", err(&over));
}

#[test]
fn where_nothing_holds_the_exit_code_says_so() {
    let folder = tops("choose-nothing");
    let weak = fs::read_to_string(folder.join("fails.toml")).unwrap();
    let room = "\n[choose]\ncores = [\"pvc-foam\"]\ndensities = [\"3.5 lb/ft3\"]\nthicknesses = [\"1/2 in\"]\nouter = [[\"mat 1.5 oz/ft2\"]]\ninner = [[\"mat 1.5 oz/ft2\"]]\n";
    fs::write(folder.join("nothing.toml"), format!("{weak}{room}")).unwrap();
    let nothing = done(&folder, &["choose", "nothing.toml", "--csv"], 1);
    assert_eq!(out(&nothing).lines().count(), 1, "a line of heads alone: {}", out(&nothing));
    fs::write(folder.join("no.toml"), format!("{HOLDS}{}", ROOM.replace("pvc-foam", "pvc-faom"))).unwrap();
    for command in ["choose", "check"] {
        let no = done(&folder, &[command, "no.toml"], 2);
        assert!(err(&no).contains("no core is called `pvc-faom`"), "{}", err(&no));
        assert!(
            err(&no).ends_with("1 problem; nothing was checked\n") && !err(&no).contains("looking"),
            "{}",
            err(&no)
        );
    }
}

#[cfg(unix)]
#[test]
fn an_interrupted_choice_shows_what_it_has() {
    use std::io::{BufRead as _, BufReader};

    let folder = tops("choose-interrupted");
    fs::write(folder.join("many.toml"), format!("{HOLDS}\n[choose]\ncores = [\"pvc-foam\"]\n")).unwrap();
    let mut child = skinspan(&folder)
        .args(["choose", "many.toml", "--json"])
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .unwrap();
    let mut lines = BufReader::new(child.stderr.take().unwrap()).lines();
    assert!(lines.next().unwrap().unwrap().starts_with("looking at "));
    assert!(Command::new("kill").args(["-INT", &child.id().to_string()]).status().unwrap().success());
    let last = lines.next().unwrap().unwrap();
    let ended = child.wait_with_output().unwrap();
    assert!(matches!(ended.status.code(), Some(0 | 1)), "{:?}", ended.status);
    assert!(json(&ended)["format"]["name"].is_string());
    let numbers: Vec<usize> = last.split_whitespace().filter_map(|word| word.parse().ok()).collect();
    assert!(last.starts_with("looked at ") && numbers[0] < numbers[1], "{last}");
}

/// Numbers that are read against each other stand in one unit, and supports that bear alike in one row.
#[test]
fn tables_have_one_unit_and_one_row_for_what_is_alike() {
    let folder = tops("units");
    let flat = |output: &Output| out(output).split_whitespace().collect::<Vec<_>>().join(" ");
    let example = Path::new(env!("CARGO_MANIFEST_DIR")).join("examples/survey-launch.toml");
    let us = flat(&done(&folder, &["check", example.to_str().unwrap(), "--full"], 0));
    // Criteria in the units of the report, with what their writer wrote; loads of the file's own units stand as they are.
    for words in [
        "headwind 28.77 mph (25 kn): ",
        "trailer-gust 25 mph: ",
        "underfoot-sag-limit 0.157 in (4 mm): ",
        "order-lap 2 in: ",
        "core-shear-factor 2.5: ",
        "hand-force 337.2 lbf (1.5 kN): ",
        "outer skin 0.096 in thick, 148.5 oz/yd², from the outside: paint 8.85 oz/yd², no strength counted",
        "inner skin 0.076 in thick, 101.5 oz/yd², from the outside:",
        "2 pipes alike, the larger of their numbers: port rail, starboard rail push ",
        "posts at 8.00 in, 96.0 in: 4 posts alike, push ",
        "middle rail push ",
    ] {
        assert!(us.contains(words), "{words}: {us}");
    }
    let rows: Vec<Vec<&str>> = us.split(" pass ").map(|row| row.split(' ').collect()).collect();
    let bending = rows.iter().find(|row| row.starts_with(&["pipe", "bending"])).unwrap();
    assert_eq!([bending[3], bending[5]], ["ksi", "ksi"], "{bending:?}");
    let si = flat(&done(&folder, &["check", example.to_str().unwrap(), "--full", "--hand", "--units", "si"], 0));
    for words in ["headwind 12.86 m/s (25 kn): ", "order-lap 50.8 mm (2 in): ", "underfoot-sag-limit 4 mm: "] {
        assert!(si.contains(words), "{words}: {si}");
    }
}

/// A folder in place of a design file: that is said, with the files in it that could be meant.
#[test]
fn a_folder_is_no_design_file() {
    let folder = folder("folder");
    fs::create_dir_all(folder.join("empty")).unwrap();
    fs::write(folder.join("top.toml"), "title = \"x\"\n").unwrap();
    for command in ["check", "sheet", "order", "template", "proof", "choose"] {
        let run = |named: &str| {
            let done =
                Command::new(cargo_bin("skinspan")).current_dir(&folder).args([command, named]).output().unwrap();
            (done.status.code(), String::from_utf8(done.stderr).unwrap())
        };
        let (code, said) = run(".");
        assert_eq!(code, Some(2), "{command}");
        assert!(said.starts_with("error: cannot read .: it is a folder\n"), "{command}: {said}");
        assert!(said.contains("a folder is no design file; in it lie ./top.toml"), "{command}: {said}");
        let (_, said) = run("empty");
        assert!(said.contains("none lies in that folder"), "{command}: {said}");
    }
}

/// On a wide terminal the answer has the top cut along a line: each letter that is drawn is explained, port on the left.
#[test]
fn a_wide_report_has_a_section() {
    use skinspan::{
        input::{NamedText, read_design, read_tables},
        report::{Report, to_text},
    };
    let text = include_str!("../examples/survey-launch.toml").to_owned();
    let table = read_tables(&[]).unwrap();
    let top = read_design(&NamedText { name: "top.toml".to_owned(), text }, &table, None).unwrap();
    let report = Report::by_hand(&top, &table);
    assert!(!to_text(&report, false, 80).contains("Section across"));
    let text = anstream::adapter::strip_str(&to_text(&report, false, 110)).to_string();
    let lines: Vec<&str> = text.lines().skip_while(|line| !line.starts_with("Section across at x")).collect();
    assert!(lines[1].trim_start().starts_with("port") && lines[1].ends_with("starboard"), "{}", lines[1]);
    let cut: Vec<char> = lines[3].chars().collect();
    assert_eq!(cut.len(), 108);
    // Edges 2 in of 76, strips 4 in about 9, 38 and 67 in, the conduit at 24 in, counted from port.
    let at = |inches: usize| cut[2 + (inches * 105 + 38) / 76];
    assert_eq!([1, 5, 9, 24, 30, 38, 67, 75].map(at), ['▒', '·', '█', 'o', '·', '█', '█', '▒'], "{}", lines[3]);
    assert_eq!(lines[5].matches('◯').count(), 3, "{}", lines[5]);
    assert!(
        lines[6].contains("█ backing") && lines[6].contains("◯ pipe below") && !lines[6].contains("wall or pad"),
        "{}",
        lines[6]
    );
    assert!(lines.iter().take(7).all(|line| line.chars().count() <= 110));
    // The cut meets fixings of the radar, and says so.
    assert!(lines[3].contains('│') && lines[6].contains("│ fixing"), "{}\n{}", lines[3], lines[6]);
}

/// On a narrow terminal the tables keep what one decides by, in lines that are no longer than it is wide.
#[test]
fn a_narrow_report_has_no_longer_lines() {
    use skinspan::{
        input::{NamedText, read_design, read_tables},
        order::order,
        report::{Report, order_to_text, to_text},
    };
    let text = include_str!("../examples/survey-launch.toml").to_owned();
    let table = read_tables(&[]).unwrap();
    let top = read_design(&NamedText { name: "top.toml".to_owned(), text }, &table, None).unwrap();
    let report = Report::by_hand(&top, &table);
    let plain = |text: String| anstream::adapter::strip_str(&text).to_string();
    for (what, text) in
        [("check", plain(to_text(&report, false, 60))), ("order", plain(order_to_text(&order(&top), &top, 60)))]
    {
        let long: Vec<&str> = text.lines().filter(|line| line.chars().count() > 60).collect();
        assert!(long.is_empty(), "{what}: {long:#?}");
    }
    // A layer with a long name has what is to say of it below, in lines of several words.
    let text = include_str!("../examples/ferry-tender.toml").to_owned();
    let tender = read_design(&NamedText { name: "top.toml".to_owned(), text }, &table, None).unwrap();
    let tender = plain(to_text(&Report::by_hand(&tender, &table), false, 60));
    assert!(tender.lines().all(|line| line.chars().count() <= 60), "{tender}");
    assert!(tender.lines().any(|line| line.trim_start().starts_with("0.050 in thick, ")), "{tender}");
    let narrow = plain(to_text(&report, false, 60));
    let wide = plain(to_text(&report, false, 80));
    for outcome in &report.checks {
        let title = skinspan::check::CHECKS[outcome.check].title();
        let of = |page: &str| {
            page.lines().find(|line| line.starts_with("pass ") && line[5..].starts_with(title)).unwrap().to_owned()
        };
        // Verdict, demand and allowable stand in the same columns, and then how much is used.
        let (narrow, wide) = (of(&narrow), of(&wide));
        let cells = |line: &str| line.split_whitespace().map(str::to_owned).collect::<Vec<_>>();
        assert!(cells(&narrow).iter().all(|cell| cells(&wide).contains(cell)), "{narrow}\n{wide}");
        assert!(narrow.trim_end().ends_with('%'), "{narrow}");
    }
}

/// Beside the table of checks stands a bar for each, as long as it is used; in a pipe and in a file there is none.
#[test]
fn a_wide_report_has_bars() {
    use skinspan::{
        check::CHECKS,
        input::{NamedText, read_design, read_tables},
        report::{Report, to_text},
    };
    let text = include_str!("../examples/survey-launch.toml").to_owned();
    let table = read_tables(&[]).unwrap();
    let top = read_design(&NamedText { name: "top.toml".to_owned(), text }, &table, None).unwrap();
    let report = Report::by_hand(&top, &table);
    let plain = |width| anstream::adapter::strip_str(&to_text(&report, false, width)).to_string();
    assert!(!plain(80).contains('█') && !plain(96).contains("██"));
    let wide = plain(113);
    let mut seen = 0;
    for outcome in &report.checks {
        let Some(used) = outcome.utilisation().map(|used| used.value).filter(|used| (0.04..0.99).contains(used)) else {
            continue;
        };
        let row = format!("pass {} ", CHECKS[outcome.check].title());
        let line = wide.lines().find(|line| line.starts_with(&row)).unwrap_or_else(|| panic!("{row}: {wide}"));
        // 32 columns, all of it used at 25 of them.
        #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)]
        let long = (used * 25.0).round() as usize;
        assert_eq!(line.matches('█').count(), long, "{line}");
        assert_eq!(line.chars().position(|letter| letter == '│'), Some(81 + 25), "{line}");
        seen += 1;
    }
    assert!(seen > 8, "{seen}");
}

/// Along the top stern and bow are named, walls below are no pipes, and where a hole is nothing is drawn.
#[test]
fn a_section_along_the_top_knows_bow_walls_and_holes() {
    use skinspan::{
        input::{NamedText, read_design, read_tables},
        report::{Report, to_text},
    };
    let of = |forward: &str| {
        let text = format!(
            "title = \"strip\"\nreport = \"si\"\n\
             [top]\noutline = {{ length = \"2400 mm\", width = \"700 mm\" }}\nforward = \"{forward}\"\nprocess = \"hand\"\n\
             resin = \"vinylester\"\nouter = [\"3 x biaxial 600 g/m2 @ 0 deg, fibre 50 %\"]\n\
             core = {{ material = \"pvc-foam\", density = \"80 kg/m3\", thickness = \"38.1 mm\" }}\n\
             inner = [\"3 x biaxial 600 g/m2 @ 0 deg, fibre 50 %\"]\n\
             [[hole]]\nname = \"hatch\"\ncircle = {{ at = [\"1200 mm\", \"350 mm\"], diameter = \"400 mm\" }}\n\
             [[wall]]\nname = \"one\"\nseat = \"30 mm\"\nalong = [[\"300 mm\", \"0 mm\"], [\"300 mm\", \"700 mm\"]]\n\
             [[wall]]\nname = \"other\"\nseat = \"30 mm\"\nalong = [[\"1900 mm\", \"0 mm\"], [\"1900 mm\", \"700 mm\"]]\n\
             [service]\nspeed = \"none\"\nstorm = \"none\"\ntrailer = \"none\"\nslam = \"none\"\npeople = 1\n\
             walking = \"no-walk\"\nunderside = \"blocked\"\nsun = \"none\"\n"
        );
        let table = read_tables(&[]).unwrap();
        let top = read_design(&NamedText { name: "strip.toml".to_owned(), text }, &table, None)
            .unwrap_or_else(|problems| panic!("{}", problems[0].render(false)));
        let report = to_text(&Report::by_hand(&top, &table), false, 110);
        let report = anstream::adapter::strip_str(&report).to_string();
        let lines = report.lines().skip_while(|line| !line.starts_with("Section along at y 350 mm"));
        lines.take(7).map(str::to_owned).collect::<Vec<_>>()
    };
    for (forward, first, last) in [("right", "stern", "bow"), ("left", "bow", "stern")] {
        let lines = of(forward);
        assert!(lines[1].trim_start().starts_with(first) && lines[1].ends_with(last), "{forward}: {}", lines[1]);
        // x runs to the right whichever way the bow lies: 105 columns for 2400 mm.
        let at = |row: &str, mm: usize| row.chars().nth(2 + (mm * 105 + 1200) / 2400).unwrap_or(' ');
        assert_eq!([100, 900, 1050, 1200, 1350, 1500].map(|mm| at(&lines[3], mm)), ['·', '·', ' ', ' ', ' ', '·']);
        assert_eq!([900, 1200].map(|mm| at(&lines[2], mm)), ['━', ' '], "{}", lines[2]);
        assert_eq!([300, 1900].map(|mm| at(&lines[5], mm)), ['▔', '▔'], "{}", lines[5]);
        assert_eq!(lines[5].matches('▔').count(), 2);
        assert!(lines[6].contains("▔ wall or pad below") && !lines[6].contains("pipe below"), "{}", lines[6]);
    }
}

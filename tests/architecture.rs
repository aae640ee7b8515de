//! Which module may import which, lowest first. A row that has to grow is a design decision, and shows in the diff.

use std::{
    collections::BTreeSet,
    fs,
    path::{Path, PathBuf},
};

/// Module, and the modules that it may import.
const LAYERS: &[(&str, &[&str])] = &[
    ("units", &[]),
    ("source", &[]),
    ("geometry", &["units"]),
    ("mesh", &["units", "geometry"]),
    ("finite_element", &["units", "source", "geometry", "laminate"]),
    ("laminate", &["units", "source"]),
    ("section", &["units", "source", "geometry", "laminate"]),
    ("closed_form", &["units", "source", "geometry"]),
    ("strength", &["units", "source"]),
    ("fastening", &["units", "source", "geometry", "section", "strength"]),
    ("load", &["units", "source"]),
    ("material", &["units", "source", "laminate"]),
    ("criteria", &["units", "source", "load", "material"]),
    ("service", &["units", "load"]),
    ("top", &["units", "source", "geometry", "laminate", "section", "material", "criteria", "service"]),
    ("load_case", &["units", "section", "load", "criteria", "service"]),
    (
        "analysis",
        &[
            "units",
            "source",
            "geometry",
            "laminate",
            "section",
            "closed_form",
            "strength",
            "fastening",
            "load",
            "material",
            "criteria",
            "top",
            "load_case",
            "mesh",
            "finite_element",
        ],
    ),
    (
        "check",
        &[
            "units",
            "source",
            "geometry",
            "laminate",
            "section",
            "closed_form",
            "strength",
            "fastening",
            "load",
            "material",
            "service",
            "top",
            "load_case",
            "analysis",
            "finite_element",
        ],
    ),
    ("advice", &["units", "geometry", "fastening", "material", "top", "analysis", "check"]),
    ("choice", &["units", "material", "top", "analysis", "check", "advice"]),
    ("plan", &["units", "geometry", "section", "analysis", "advice", "top"]),
    ("order", &["units", "geometry", "section", "load", "load_case", "material", "top", "analysis", "check", "advice"]),
    (
        "proof",
        &["units", "source", "geometry", "laminate", "load", "load_case", "material", "top", "analysis", "check"],
    ),
    (
        "input",
        &[
            "units",
            "geometry",
            "laminate",
            "load",
            "material",
            "criteria",
            "service",
            "top",
            "load_case",
            "choice",
            "proof",
        ],
    ),
    (
        "report",
        &[
            "units",
            "source",
            "geometry",
            "laminate",
            "section",
            "material",
            "criteria",
            "service",
            "top",
            "load_case",
            "analysis",
            "finite_element",
            "check",
            "advice",
            "choice",
            "plan",
            "order",
            "proof",
            "input",
        ],
    ),
    ("command", &["units", "material", "top", "criteria", "choice", "order", "proof", "input", "report"]),
];

fn files_below(path: &Path, files: &mut Vec<PathBuf>) {
    if path.is_file() {
        files.push(path.to_owned());
        return;
    }
    for entry in fs::read_dir(path).expect("a folder of the sources") {
        files_below(&entry.expect("an entry").path(), files);
    }
}

/// Modules of the crate that a text names, tests and doc comments left out: they may look at anything.
fn imports(text: &str) -> BTreeSet<String> {
    let code: Vec<&str> = text
        .split("#[cfg(test)]")
        .next()
        .unwrap_or_default()
        .lines()
        .filter(|line| !line.trim_start().starts_with("//"))
        .collect();
    let code = code.join("\n");
    let mut found = BTreeSet::new();
    for (at, _) in code.match_indices("crate::") {
        let rest = &code[at + "crate::".len()..];
        if let Some(group) = rest.strip_prefix('{') {
            let (mut depth, mut word) = (0, String::new());
            for letter in group.chars() {
                match letter {
                    '{' => depth += 1,
                    '}' if depth == 0 => break,
                    '}' => depth -= 1,
                    _ => {}
                }
                if depth == 0 && (letter.is_alphanumeric() || letter == '_') {
                    word.push(letter);
                } else if depth == 0 && letter == ':' {
                    if !word.is_empty() {
                        found.insert(std::mem::take(&mut word));
                    }
                } else if letter == ',' && depth == 0 {
                    word.clear();
                }
            }
        } else {
            found.insert(rest.chars().take_while(|letter| letter.is_alphanumeric() || *letter == '_').collect());
        }
    }
    found
}

#[test]
fn modules_import_only_what_lies_below_them() {
    let source = Path::new(env!("CARGO_MANIFEST_DIR")).join("src");
    let mut faults = Vec::new();
    for (module, allowed) in LAYERS {
        let folder = source.join(module);
        let place = if folder.is_dir() { folder } else { source.join(format!("{module}.rs")) };
        let mut files = Vec::new();
        files_below(&place, &mut files);
        // A file of tests alone is one of them.
        files.retain(|file| !file.ends_with("tests.rs"));
        for file in files {
            let text = fs::read_to_string(&file).expect("a source file");
            for import in imports(&text) {
                let known = LAYERS.iter().any(|(name, _)| *name == import);
                if known && import != *module && !allowed.contains(&import.as_str()) {
                    faults.push(format!("{} imports {import}", file.display()));
                }
            }
        }
    }
    assert!(faults.is_empty(), "{}", faults.join("\n"));
}

#[test]
fn every_module_has_its_place() {
    let library = fs::read_to_string(Path::new(env!("CARGO_MANIFEST_DIR")).join("src/lib.rs")).expect("the library");
    let modules: BTreeSet<&str> =
        library.lines().filter_map(|line| line.trim().strip_prefix("pub mod ")?.strip_suffix(';')).collect();
    let placed: BTreeSet<&str> = LAYERS.iter().map(|(module, _)| *module).collect();
    assert_eq!(modules, placed);
}

#[test]
fn imports_are_found_in_both_forms() {
    let text = "use crate::{\n    load::{a, b},\n    units::Length,\n};\nlet x = crate::check::CHECKS; // crate::top\n";
    let found: Vec<String> = imports(text).into_iter().collect();
    assert_eq!(found, ["check", "load", "top", "units"]);
}

//! One cause, one message: what follows from a mistake is not reported as another.

use crate::{BASE, changed, said_of};

/// That something is said once, with these words in it.
#[track_caller]
fn once(text: &str, words: &[&str]) {
    let said = said_of(text);
    assert_eq!(said.matches("error: ").count(), 1, "{said}");
    for word in words {
        assert!(said.contains(word), "{word}: {said}");
    }
}

#[test]
fn lists_of_bare_numbers_and_of_no_places() {
    let line = "along = [[\"6 in\", \"12 in\"], [\"102 in\", \"12 in\"]]";
    once(&changed(line, "along = [[6, 12], [102, 12]]"), &["a length needs a unit", "`\"6 mm\"` or `\"6 in\"`"]);
    once(&changed(line, "along = [\"6 in\", \"12 in\"]"), &["a place is due here, not a text"]);
    once(&changed("posts = [\"8 in\", \"90 in\"]", "posts = [8, 90]"), &["a length needs a unit", "`\"8 in\"`"]);
    let corners = "outline = { points = [[0, 0], [108, 0], [108, 72], [0, 72]] }";
    let outline = "outline = { length = \"9 ft\", width = \"6 ft\", corner_radius = \"12 in\" }";
    once(&changed(outline, corners), &["a length needs a unit"]);
    // Two slips that are none of that kind are two.
    let said = said_of(&changed("posts = [\"8 in\", \"90 in\"]", "posts = [\"8 im\", \"90 im\"]"));
    assert_eq!(said.matches("error: ").count(), 2, "{said}");
}

#[test]
fn keys_that_are_missing_together_or_beside_a_stranger() {
    once(
        &changed("slam = \"3 g\"", "slam = { waterline = \"20 ft\", beam = \"7 ft\" }"),
        &[
            "`deadrise`, `mass`, `speed`, `trim`, `waves` and `ahead` are missing in `slam`",
            "help: write for example `deadrise = \"20 deg\"`, `mass = \"7000 lb\"`",
        ],
    );
    once(
        &changed("mass = \"22 lb\"", "weight = \"22 lb\""),
        &[
            "`weight` is not a key of `[[gear]]`, and `mass` is missing",
            "help: write for example `mass = \"10 kg\"`; its keys are name, mass, cg_height",
        ],
    );
    // Another hold than the one that its keys belong to.
    let fixing = "[[fixing]]\nname = \"bolts\"\nhold = \"screw\"\ninsert = \"m8-stainless\"\ngrade = \"a4-70\"\n\
                  lubrication = \"lubricated-stainless\"\n\n[[gear]]";
    once(
        &changed("[[gear]]", fixing),
        &["`insert` and `lubrication` are no keys of `[[fixing]]`, and `screw` and `depth` are missing"],
    );
    // A stranger where nothing is missing, and another, are two.
    let said = said_of(&changed("sun = \"light\"", "sun = \"light\"\nmoon = 1\ntide = 2"));
    assert_eq!(said.matches("error: ").count(), 2, "{said}");
}

#[test]
fn fixings_that_nobody_knows_are_asked_for_once() {
    let row = "fixings = { fixing = \"rail bolts\", spacing = \"8 in\" }";
    let asked = |text: &str| {
        text.replacen("name = \"port rail\"", &format!("name = \"port rail\"\n{row}"), 1).replacen(
            "name = \"starboard rail\"",
            &format!("name = \"starboard rail\"\n{row}"),
            1,
        )
    };
    once(&asked(BASE), &["no `[[fixing]]` is called `rail bolts`"]);
    let known = "name = \"rail bolts\"\nhold = \"through-bolt\"\nthread = \"m8\"\ngrade = \"a4-70\"\n\
                 lubrication = \"lubricated-stainless\"\n\n[[gear]]";
    let with = |header: &str| asked(&changed("[[gear]]", &format!("{header}\n{known}")));
    assert_eq!(said_of(&with("[[fixing]]")), "");
    once(&with("[[fixings]]"), &["`fixings` is not a key of the file", "did you mean `fixing`?"]);
    once(
        &with("[[fixing]]").replacen("spacing = \"8 in\"", "spacing = \"800 in\"", 1),
        &["`spacing` is 800 in (20320 mm), more than the spacing of a row of fixings ever is", "`800 mm`"],
    );
}

#[test]
fn a_file_that_is_no_toml() {
    // The header of a list with one pair of brackets stands before three of its own kind.
    let strip = "[[backing]]\nname = \"a\"\n\n";
    let twice =
        BASE.replacen("[[backing]]", &format!("[backing]\nname = \"b\"\n\n{strip}{strip}{strip}[[backing]]"), 1);
    once(&twice, &["duplicate key"]);
    once(&changed("inner = [", "inner = [inner = ["), &["this is not TOML"]);
    // A quantity without its quotation marks, as it would be written on paper.
    let crown = changed("title = \"Top\"", "title = \"Top\"\nreport = us # inches");
    once(&crown, &["stands in quotation marks: `report = \"us\"`"]);
    once(&changed("drag = 0.6", "drag = 1-1/2 in"), &["stands in quotation marks: `drag = \"1-1/2 in\"`"]);
    // Two values that are none are two mistakes.
    let two = changed("people = 1", "people = one").replacen("drag = 0.6", "drag = some", 1);
    assert_eq!(said_of(&two).matches("error: ").count(), 2, "{}", said_of(&two));
}

#[test]
fn two_of_one_name_are_told_apart_by_none() {
    let second = |table: &str, rest: &str| format!("{BASE}\n[[{table}]]\n{rest}\n");
    let line = "along = [[\"6 in\", \"50 in\"], [\"102 in\", \"50 in\"]]";
    for (table, rest) in [
        ("backing", format!("name = \"strip\"\nmaterial = \"plywood-fir\"\nwidth = \"4 in\"\n{line}")),
        ("conduit", format!("name = \"wiring\"\nmaterial = \"pvc-1-2-sch40\"\n{line}")),
        (
            "gear",
            "name = \"radar\"\nmass = \"2 lb\"\ncg_height = \"6 in\"\nat = [\"80 in\", \"30 in\"]\nfooting = \"9 in\""
                .into(),
        ),
    ] {
        let name = rest.split('"').nth(1).unwrap_or_default();
        once(&second(table, &rest), &[&format!("there are two `[[{table}]]` called {name}"), "another `name`"]);
        let other = rest.replacen(&format!("name = \"{name}\"\n"), "", 1);
        assert_eq!(said_of(&second(table, &other)), "", "{table}");
    }
    let hole = |y: &str| {
        format!("[[hole]]\nname = \"hatch\"\ncircle = {{ at = [\"60 in\", \"{y}\"], diameter = \"4 in\" }}\n")
    };
    once(&format!("{BASE}\n{}\n{}", hole("30 in"), hole("50 in")), &["there are two `[[hole]]` called hatch"]);
}

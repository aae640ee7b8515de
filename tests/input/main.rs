//! What the program says of a design file that is wrong: the place, the cause, a way out, each mistake once.

#![allow(clippy::unwrap_used)] // a test may panic
#![allow(clippy::too_many_lines)] // lists of mistakes with the words for each

mod choice;
mod criteria;
mod drawings;
mod file;
mod fixings;
mod keys;
mod layers;
mod lines;
mod names;
mod one_cause;
mod outlines;
mod panel;
mod quantities;
mod service;
mod several;
mod sizes;
mod standing;
mod tables;
mod usual;

use std::sync::LazyLock;

use skinspan::{
    input::{FileProblems, NamedText, read_design, read_tables, tables_named_in},
    material::MaterialTable,
};

/// A design without a fault.
const BASE: &str = r#"title = "Top"

[top]
outline = { length = "9 ft", width = "6 ft", corner_radius = "12 in" }
crown = "2 in"
process = "hand"
resin = "vinylester"
outer = [
    "gelcoat",
    "mat 1.5 oz/ft2",
    "biaxial-mat 17 oz/yd2 + 0.75 oz/ft2 @ 45 deg",
    "biaxial 18 oz/yd2 @ 0 deg",
]
core = { material = "pvc-foam", density = "5 lb/ft3", thickness = "1 in" }
inner = ["biaxial 600 g/m2 @ 45 deg, fibre 50 %"]
edge = { setback = "1.5 in", fill = "putty-glass-bubble" }

[[backing]]
name = "strip"
material = "plywood-fir"
width = "4 in"
along = [["6 in", "12 in"], ["102 in", "12 in"]]

[[conduit]]
name = "wiring"
material = "pvc-1-2-sch40"
along = [["6 in", "20 in"], ["102 in", "20 in"]]

[[pipe]]
name = "port rail"
outside = "2 in"
wall = "0.125 in"
alloy = "6061-t6"
along = [["6 in", "12 in"], ["102 in", "12 in"]]
posts = ["8 in", "90 in"]

[[pipe]]
name = "starboard rail"
outside = "2 in"
along = [["6 in", "60 in"], ["102 in", "60 in"]]

[[gear]]
name = "radar"
mass = "22 lb"
cg_height = "6 in"
at = ["37 in", "52 in"]
footing = "9 in"
wind_area = "1.4 ft2"
drag = 0.6

[service]
speed = "32 kn"
storm = "90 mph"
trailer = "60 mph"
slam = "3 g"
people = 1
walking = "no-walk"
underside = "open"
sun = "light"
"#;

static TABLE: LazyLock<MaterialTable> = LazyLock::new(|| read_tables(&[]).unwrap());

fn named(name: &str, text: &str) -> NamedText {
    NamedText { name: name.to_owned(), text: text.to_owned() }
}

fn rendered(files: &[FileProblems]) -> String {
    files.iter().map(|file| file.render(false)).collect()
}

/// All that is said of a design file; nothing where it is read.
fn said_of(text: &str) -> String {
    let file = named("top.toml", text);
    if let Err(problems) = tables_named_in(&file) {
        return rendered(&[problems]);
    }
    read_design(&file, &TABLE, None).map_or_else(|files| rendered(&files), |_| String::new())
}

/// The base design with the first `from` turned into `to`.
fn changed(from: &str, to: &str) -> String {
    assert!(BASE.contains(from), "{from}");
    BASE.replacen(from, to, 1)
}

/// A change of the base design and all that is said of it.
#[track_caller]
fn says(from: &str, to: &str, expected: &str) {
    assert_eq!(said_of(&changed(from, to)).trim_end(), expected.trim(), "{from} -> {to}");
}

#[test]
fn the_base_design_is_without_fault() {
    assert_eq!(said_of(BASE), "");
}

//! Outlines out of drawings.
//!
//! `drawings/forms.dxf` and `examples/bow-wing.dxf` are written by an independent writer: `drawings/make.py`.

use std::f64::consts::PI;

use skinspan::{
    geometry::Point,
    input::{Design, read_design},
    top::{Outline, Top},
    units::Length,
};
use uom::si::{area::square_millimeter, length::millimeter};

use crate::{TABLE, named, rendered};

const FORMS: &str = include_str!("drawings/forms.dxf");
const BOW_WING: &str = include_str!("../../examples/bow-wing.toml");
const BOW_WING_DRAWN: &str = include_str!("../../examples/bow-wing.dxf");

/// Chords lie within 5 µm of a curve that is no circle: that much along a line of 6 m, in mm².
const CHORDS: f64 = 0.005 * 6000.0;

/// A top whose pipes fit into every outline of the drawings.
const DESIGN: &str = r#"[top]
outline = { drawing = "forms.dxf", layer = "LIGHT" }
process = "hand"
resin = "vinylester"
outer = ["biaxial 600 g/m2 @ 45 deg, fibre 50 %"]
core = { material = "pvc-foam", density = "5 lb/ft3", thickness = "1 in" }
inner = ["biaxial 600 g/m2 @ 45 deg, fibre 50 %"]

[[pipe]]
outside = "2 in"
along = [["400 mm", "300 mm"], ["600 mm", "300 mm"]]

[[pipe]]
outside = "2 in"
along = [["400 mm", "450 mm"], ["600 mm", "450 mm"]]

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

fn read(outline: &str, name: &str, drawing: &str) -> Result<Top, String> {
    let text = DESIGN.replace(r#"outline = { drawing = "forms.dxf", layer = "LIGHT" }"#, outline);
    let (file, drawing) = (named("top.toml", &text), named(name, drawing));
    let design = Design { file: &file, drawing: Some(&drawing) };
    read_design(design, &TABLE, None).map_err(|files| rendered(&files))
}

fn layer(layer: &str) -> Result<Outline, String> {
    let outline = format!("outline = {{ drawing = \"forms.dxf\", layer = \"{layer}\" }}");
    read(&outline, "forms.dxf", FORMS).map(|top| top.outline)
}

fn svg(outline: &str, drawing: &str) -> Result<Outline, String> {
    read(&format!("outline = {{ drawing = \"top.svg\", {outline} }}"), "top.svg", drawing).map(|top| top.outline)
}

fn is(found: f64, expected: f64, tolerance: f64) {
    assert!((found - expected).abs() <= tolerance, "{found} is not {expected}");
}

#[test]
fn every_kind_of_line_is_the_outline_that_it_draws() {
    let slot = 1_000_000.0 + PI * 500.0 * 500.0;
    for (name, length, width, area, tolerance) in [
        ("LIGHT", 2000.0, 1000.0, slot, 1e-3),
        ("HEAVY", 2000.0, 1000.0, slot, 1e-3),
        ("BELOW", 2000.0, 1000.0, slot, 1e-3),
        ("PIECES", 2000.0, 1000.0, slot, 1e-3),
        ("pieces", 2000.0, 1000.0, slot, 1e-3),
        ("ROUND", 1200.0, 1200.0, PI * 600.0 * 600.0, 1e-3),
        // Half axes a² = 900² + 300², b = 0.6 a, turned by atan(1/3): the half sizes are √(a² cos² + b² sin²) and so on.
        (
            "OVAL",
            2.0 * (900.0_f64 * 900.0 + 0.36 * 300.0 * 300.0).sqrt(),
            2.0 * (300.0_f64 * 300.0 + 0.36 * 900.0 * 900.0).sqrt(),
            PI * 0.6 * 900_000.0,
            CHORDS,
        ),
        ("HALF OVAL", 3200.0, 800.0, PI * 1600.0 * 800.0 / 2.0, CHORDS),
        ("QUARTER", 1000.0, 1000.0, PI * 1e6 / 4.0, CHORDS),
    ] {
        let outline = layer(name).unwrap_or_else(|said| panic!("{name}: {said}"));
        is(outline.length().get::<millimeter>(), length, 0.011);
        is(outline.width().get::<millimeter>(), width, 0.011);
        is(outline.area().get::<square_millimeter>(), area, tolerance);
    }
    // By the formulas that `make.py` prints, of 6000 places and of places within 1 µm.
    for (name, area) in [("WAVE", 1494499.7325), ("DROP", 1465123.0760)] {
        let outline = layer(name).unwrap_or_else(|said| panic!("{name}: {said}"));
        is(outline.area().get::<square_millimeter>(), area, CHORDS);
    }
}

#[test]
fn a_half_oval_seen_from_below_lies_on_the_right_side() {
    let outline = layer("HALF OVAL").unwrap();
    let mm = Length::new::<millimeter>;
    // Its diameter lies above: near the lower corners is nothing.
    assert!(!outline.holds(Point { x: mm(100.0), y: mm(100.0) }));
    assert!(outline.holds(Point { x: mm(100.0), y: mm(780.0) }));
}

/// The text of the example with its outline and its hatch out of the drawing.
fn bow_wing_drawn() -> String {
    let (from, to) = (BOW_WING.find("outline = { points").unwrap(), BOW_WING.find("process").unwrap());
    let drawn = "outline = { drawing = \"bow-wing.dxf\", layer = \"OUTLINE\" }\n";
    let text = format!("{}{drawn}{}", &BOW_WING[..from], &BOW_WING[to..]);
    let line = text.lines().find(|line| line.starts_with("circle")).unwrap().to_owned();
    text.replace(&line, "layer = \"HATCH\"")
}

#[test]
fn the_same_outline_by_corners_and_drawn_is_the_same_within_a_micrometre() {
    let top = |text: &str| {
        let (file, drawing) = (named("bow-wing.toml", text), named("bow-wing.dxf", BOW_WING_DRAWN));
        let design = Design { file: &file, drawing: Some(&drawing) };
        read_design(design, &TABLE, None).unwrap_or_else(|files| panic!("{}", rendered(&files)))
    };
    let (written, drawn) = (top(BOW_WING), top(&bow_wing_drawn()));
    let micrometre = Length::new::<millimeter>(1e-3);
    assert_eq!(written.outline.corner_radii(), None);
    let rings = |top: &Top| {
        let holes = top.outline.holes().iter().map(|hole| hole.contour.clone());
        std::iter::once(top.outline.contour().clone()).chain(holes).collect::<Vec<_>>()
    };
    let (written, drawn) = (rings(&written), rings(&drawn));
    assert_eq!((written.len(), drawn.len()), (2, 2));
    for (one, other) in written.iter().zip(&drawn) {
        for (from, to) in [(one, other), (other, one)] {
            let chords = from.flattened(Length::new::<millimeter>(0.01));
            assert!(chords.len() > 100);
            assert!(chords.iter().all(|place| to.within_by(*place).abs() < micrometre));
        }
    }
}

#[test]
fn what_is_wrong_with_a_layer_is_said_with_its_place() {
    for (name, said) in [
        (
            "GAP",
            "not closed: from the end at x 3, y 4 of the drawing to the nearest, at x 0, y 0 of the drawing, are 5.00 mm",
        ),
        ("CROSSED", "the layer \"CROSSED\" crosses or touches itself at x 500, y 500 of the drawing"),
        ("FORK", "more than two ends of the layer \"FORK\" meet at x 0, y 0 of the drawing"),
        ("TWO", "has 2 closed lines: 1200 by 1200 from x -600, y -600 of the drawing; 1200 by 1200 from x 900, y -600"),
        ("TINY", "no top measures 3.15 in (80.0 mm)"),
        ("OUTLINE", "nothing is drawn on a layer \"OUTLINE\""),
        ("PAPER", "nothing is drawn on a layer \"PAPER\""),
        ("PIECE", "did you mean \"PIECES\"?"),
    ] {
        let found = layer(name).expect_err(name);
        assert!(found.contains(said), "{name}: {found}");
        assert!(found.contains("--> top.toml:2:"), "{name}: {found}");
        assert!(found.contains("help: "), "{name}: {found}");
        assert_eq!(found.matches("error: ").count(), 1, "{name}: {found}");
    }
    for (name, said) in [("PART", "a line of INSERT cannot be read"), ("TILTED", "this CIRCLE is not drawn in plan")] {
        let found = layer(name).expect_err(name);
        assert!(found.contains(said) && found.contains("--> forms.dxf:"), "{name}: {found}");
        assert_eq!(found.matches("error: ").count(), 1, "{name}: {found}");
    }
}

#[test]
fn layers_and_units_that_are_missing_are_asked_for() {
    let said = |outline: &str, drawing: &str| read(outline, "forms.dxf", drawing).expect_err(outline);
    let no_layer = said("outline = { drawing = \"forms.dxf\" }", FORMS);
    assert!(no_layer.contains("`layer` is missing in `outline`"), "{no_layer}");
    assert!(no_layer.contains("`layer = \"LIGHT\"` or `layer = \"HEAVY\"`"), "{no_layer}");
    let misspelt = said("outline = { drawing = \"forms.dxf\", layr = \"LIGHT\" }", FORMS);
    assert!(misspelt.contains("did you mean `layer`?") && misspelt.matches("error: ").count() == 1, "{misspelt}");

    let unit = "  9\n$INSUNITS\n 70\n4\n";
    assert!(FORMS.contains(unit));
    let drawn = "outline = { drawing = \"forms.dxf\", layer = \"LIGHT\" }";
    let none = said(drawn, &FORMS.replace(unit, "  9\n$INSUNITS\n 70\n0\n"));
    assert!(none.contains("does not say how long its unit is: its $INSUNITS is absent or zero"), "{none}");
    assert!(none.contains("write `units = \"mm\"` beside `drawing`"), "{none}");
    let miles = said(drawn, &FORMS.replace(unit, "  9\n$INSUNITS\n 70\n3\n"));
    assert!(miles.contains("no top is drawn in units of $INSUNITS 3") && miles.contains("--> forms.dxf:"), "{miles}");
    let two = said("outline = { drawing = \"forms.dxf\", layer = \"LIGHT\", units = \"in\" }", FORMS);
    assert!(two.contains("the drawing says itself that its unit is 1.00 mm"), "{two}");

    let beside = "outline = { drawing = \"forms.dxf\", layer = \"LIGHT\", units = \"mm\" }";
    for text in [FORMS.to_owned(), FORMS.replace(unit, ""), FORMS.replace(unit, "  9\n$INSUNITS\n 70\n3\n")] {
        let outline = read(beside, "forms.dxf", &text).unwrap_or_else(|said| panic!("{said}")).outline;
        is(outline.length().get::<millimeter>(), 2000.0, 1e-9);
    }
    let inches = read(drawn, "forms.dxf", &FORMS.replace(unit, "  9\n$INSUNITS\n 70\n1\n"));
    assert!(inches.expect_err("2000 in").contains("no top measures 2000 in"));
}

#[test]
fn what_is_no_drawing_is_shown_where_it_ends() {
    let said = |name: &str, drawing: &str| {
        read(&format!("outline = {{ drawing = \"{name}\", layer = \"0\" }}"), name, drawing).expect_err(name)
    };
    let none = said("a.dxf", "[top]\n");
    assert!(none.contains("this is no DXF drawing") && none.contains("--> a.dxf:1:1"), "{none}");
    let binary = said("a.dxf", "x\0y");
    assert!(binary.contains("save it as DXF in text form, not binary"), "{binary}");
    let cut = said("a.dxf", "  0\nSECTION\n  2\nENTITIES\n  0");
    assert!(cut.contains("the drawing ends within a group") && cut.contains("--> a.dxf:5:3"), "{cut}");
    let empty = said("a.dxf", "  0\nEOF\n");
    assert!(empty.contains("does not say how long its unit is"), "{empty}");
    let other = said("a.dwg", "x");
    assert!(other.contains("a drawing is a `.dxf` or an `.svg` file") && other.contains("--> top.toml:2:"), "{other}");
    let number = FORMS.replacen("\n500.0\n", "\n500,0\n", 1);
    let number = read("outline = { drawing = \"a.dxf\", layer = \"LIGHT\" }", "a.dxf", &number).expect_err("a comma");
    assert!(number.contains("is a number") && number.contains("500,0"), "{number}");
    let lost = read_design(&named("top.toml", DESIGN), &TABLE, None).map_err(|files| rendered(&files));
    assert!(lost.expect_err("no drawing").contains("the drawing \"forms.dxf\" did not come with the design"));
}

/// A slot of 2000 by 1000 in a page of 3000 mm, half the size in the units of the page, turned round and mirrored.
const PAGE: &str = r#"<?xml version="1.0"?>
<svg xmlns="http://www.w3.org/2000/svg" width="3000mm" height="2000mm" viewBox="0 0 1500 1000">
  <g transform="translate(1400, 900) scale(-1)">
    <path id="outline" transform="rotate(180 500 250)"
          d="M 250 0 h 500 a 250 250 0 0 1 0 500 h -500 a 250 250 0 0 1 0 -500 z"/>
    <path id="hatch" d="M 400,200 h 200 v 100 h -200 z"/>
    <rect id="frame" width="5" height="5"/>
    <path id="two" d="M 0 0 h 500 v 500 h -500 z M 700 0 h 500 v 500 h -500 z"/>
    <path id="open" d="M 0 0 h 500 v 500"/>
    <path id="bad" d="M 0 0 hello"/>
  </g>
  <defs><path id="elsewhere" d="M 0 0 h 500 v 500 z"/></defs>
</svg>
"#;

#[test]
fn a_path_of_an_svg_is_the_outline_in_the_size_of_its_page() {
    let outline = svg("path = \"outline\"", PAGE).unwrap_or_else(|said| panic!("{said}"));
    // An arc of a path becomes a cubic within 0.03 % of its radius: 0.15 mm along half a circle at both ends.
    is(outline.length().get::<millimeter>(), 2000.0, 0.3);
    is(outline.width().get::<millimeter>(), 1000.0, 0.3);
    is(outline.area().get::<square_millimeter>(), 1e6 + PI * 500.0 * 500.0, 0.15 * PI * 1000.0);
    // To a millimetre it is a rectangle with half circles for corners.
    let radii = outline.corner_radii().expect("a rounded rectangle");
    assert!(radii.iter().all(|radius| (radius.get::<millimeter>() - 500.0).abs() < 1.0));
}

#[test]
fn y_runs_up_in_an_svg_too() {
    // A triangle whose right angle lies at the lower left on the page.
    let page = r#"<svg><path id="top" d="M 100 100 V 1600 H 1600 Z"/></svg>"#;
    let outline = svg("path = \"top\", units = \"mm\"", page).unwrap_or_else(|said| panic!("{said}"));
    let mm = Length::new::<millimeter>;
    assert!(outline.holds(Point { x: mm(10.0), y: mm(10.0) }));
    assert!(!outline.holds(Point { x: mm(1490.0), y: mm(1490.0) }));
    is(outline.area().get::<square_millimeter>(), 1_125_000.0, 1e-6);
}

#[test]
fn what_is_wrong_with_a_path_is_said_with_its_place() {
    for (path, said, file) in [
        ("two", "has 2 closed lines: 500 by 500 from x ", "top.toml:2"),
        ("open", "the path \"open\" is not closed", "top.toml:2"),
        ("outlin", "did you mean \"outline\"?", "top.toml:2"),
        ("frame", "this is a `rect`, not a path", "top.svg:7"),
        ("bad", "this path cannot be read", "top.svg:10"),
        ("elsewhere", "the path stands in a `defs`", "top.svg:12"),
    ] {
        let found = svg(&format!("path = \"{path}\""), PAGE).expect_err(path);
        assert!(found.contains(said) && found.contains(&format!("--> {file}:")), "{path}: {found}");
        assert_eq!(found.matches("error: ").count(), 1, "{path}: {found}");
    }
    let missing = read("outline = { drawing = \"top.svg\" }", "top.svg", PAGE).expect_err("no path");
    assert!(missing.contains("`path` is missing") && missing.contains("`path = \"outline\"`"), "{missing}");
    let unit = svg("path = \"outline\"", &PAGE.replace("width=\"3000mm\"", "width=\"3000\"")).expect_err("no unit");
    assert!(unit.contains("it has no width in mm with a `viewBox`"), "{unit}");
    let stretched = svg("path = \"outline\"", &PAGE.replace("2000mm", "2500mm")).expect_err("stretched");
    assert!(stretched.contains("by different amounts") && stretched.contains("--> top.svg:2:"), "{stretched}");
    let broken = svg("path = \"outline\"", &PAGE.replace("</g>", "</h>")).expect_err("no XML");
    assert!(broken.contains("this is no SVG drawing") && broken.contains("--> top.svg:11:"), "{broken}");
}

#[test]
fn holes_of_a_drawing_lie_where_they_are_drawn() {
    let holes = |hole: &str, path: &str| {
        let outline = format!("outline = {{ drawing = \"top.svg\", path = \"{path}\" }}");
        let text = DESIGN.replace(r#"outline = { drawing = "forms.dxf", layer = "LIGHT" }"#, &outline);
        let (file, drawing) = (named("top.toml", &format!("{text}\n[[hole]]\n{hole}\n")), named("top.svg", PAGE));
        let design = Design { file: &file, drawing: Some(&drawing) };
        read_design(design, &TABLE, None).map(|top| top.outline).map_err(|files| rendered(&files))
    };
    // 400 by 200 mm in the middle of the slot, drawn and written.
    let drawn = holes("path = \"hatch\"", "outline").unwrap_or_else(|said| panic!("{said}"));
    let written = "rectangle = { at = [\"1 m\", \"500 mm\"], length = \"400 mm\", width = \"200 mm\" }";
    let written = holes(written, "outline").unwrap_or_else(|said| panic!("{said}"));
    let [one, other] = [&drawn, &written].map(|outline| &outline.holes()[0].contour);
    is(one.area().get::<square_millimeter>(), 80_000.0, 1e-6);
    for (corner, place) in one.bounds().into_iter().zip(other.bounds()) {
        is(corner.distance(place).get::<millimeter>(), 0.0, 0.3);
    }
    let beyond = holes("path = \"two\"", "outline").expect_err("it is larger");
    assert!(beyond.contains("hole 1 1 does not lie within the top, at x "), "{beyond}");
}

//! Outlines by corners, and holes.

use skinspan::{geometry::Point, input::read_design, top::Outline, units::Length};
use uom::si::{
    area::square_inch,
    length::{inch, millimeter},
};

use crate::{BASE, TABLE, changed, named, rendered, said_of, says};

const RECTANGLE: &str = "outline = { length = \"9 ft\", width = \"6 ft\", corner_radius = \"12 in\" }";

fn outline(text: &str) -> Outline {
    let top = read_design(&named("top.toml", text), &TABLE, None);
    top.unwrap_or_else(|files| panic!("{}", rendered(&files))).outline
}

fn with_hole(hole: &str) -> String {
    format!("{BASE}\n[[hole]]\nname = \"hatch\"\n{hole}\n")
}

fn square_inches(outline: &Outline) -> f64 {
    outline.area().get::<square_inch>()
}

/// Units are converted.
const ROUNDING: f64 = 1e-9;

#[test]
fn four_corners_with_a_radius_each() {
    let four =
        "outline = { length = \"9 ft\", width = \"6 ft\", corner_radius = [\"8 in\", \"9 in\", \"10 in\", \"12 in\"] }";
    let outline = outline(&changed(RECTANGLE, four));
    let radii = outline.corner_radii().expect("a rounded rectangle").map(|radius| radius.get::<inch>());
    for (found, expected) in radii.into_iter().zip([8.0, 9.0, 10.0, 12.0]) {
        assert!((found - expected).abs() < ROUNDING, "{found}");
    }
    // Each corner takes (1 − π/4) r²: 64 + 81 + 100 + 144.
    let expected = 108.0 * 72.0 - (1.0 - std::f64::consts::FRAC_PI_4) * 389.0;
    assert!((square_inches(&outline) - expected).abs() < 1e-6);
    // The corner at the origin is the first: its arc lies 8 (√2 − 1) in from it.
    let corner = outline.within_by(Point { x: Length::default(), y: Length::default() }).get::<inch>();
    assert!((corner + 8.0 * (2.0_f64.sqrt() - 1.0)).abs() < ROUNDING);
}

#[test]
fn corners_that_make_a_rectangle_are_one() {
    let corners = "outline = { points = [[\"0 in\", \"0 in\"], [\"9 ft\", \"0 in\"], [\"9 ft\", \"6 ft\"], [\"0 in\", \"6 ft\", { radius = \"9 in\" }]], corner_radius = \"12 in\" }";
    let outline = outline(&changed(RECTANGLE, corners));
    let radii = outline.corner_radii().expect("a rounded rectangle").map(|radius| radius.get::<inch>());
    for (found, expected) in radii.into_iter().zip([12.0, 12.0, 12.0, 9.0]) {
        assert!((found - expected).abs() < 1e-6, "{found}");
    }
}

#[test]
fn a_slanted_side_counts_in_area_weight_and_places() {
    let taper = "outline = { points = [[\"0 in\", \"0 in\"], [\"108 in\", \"8 in\"], [\"108 in\", \"72 in\"], [\"0 in\", \"72 in\"]] }";
    let text = changed(RECTANGLE, taper);
    let slanted = outline(&text);
    assert!((square_inches(&slanted) - (108.0 * 72.0 - 0.5 * 108.0 * 8.0)).abs() < 1e-6);
    assert_eq!(slanted.corner_radii(), None);
    assert!((slanted.length().get::<inch>() - 108.0).abs() < ROUNDING);
    // The centre of the triangle that is missing lies at (72, 8/3): the centre goes the other way.
    let centre = slanted.centre();
    let (whole, gone) = (108.0 * 72.0, 432.0);
    assert!((centre.x.get::<inch>() - (whole * 54.0 - gone * 72.0) / (whole - gone)).abs() < 1e-9);
    assert!((centre.y.get::<inch>() - (whole * 36.0 - gone * 8.0 / 3.0) / (whole - gone)).abs() < 1e-9);
    // A place in the rectangle round it and not on the top.
    let said = said_of(&text.replace("[\"102 in\", \"12 in\"]]\nposts", "[\"102 in\", \"4 in\"]]\nposts"));
    assert!(said.contains("the place 102 in (2591 mm), 4.00 in (101.6 mm) lies outside the top"), "{said}");
    assert!(said.contains("help: it misses the outline by 3.54"), "{said}");
}

#[test]
fn outlines_by_corners_that_are_none() {
    let corners = |points: &str| format!("outline = {{ points = [{points}] }}");
    for (points, said, help) in [
        (
            "[\"0 in\", \"0 in\"], [\"108 in\", \"72 in\"], [\"108 in\", \"0 in\"], [\"0 in\", \"72 in\"]",
            "the line crosses or touches itself at 54.0 in (1372 mm), 36.0 in (914.4 mm)",
            "write the corners in the order in which one walks round",
        ),
        ("[\"0 in\", \"0 in\"], [\"108 in\", \"72 in\"]", "2 corners enclose nothing", "write three or more"),
        (
            "[\"0 in\", \"0 in\"], [\"108 in\", \"0 in\"], [\"108 in\", \"0 in\"], [\"0 in\", \"72 in\"]",
            "this corner stands where the one before it does",
            "the last corner is joined to the first by itself",
        ),
        (
            "[\"0 in\", \"0 in\", { radius = \"50 in\" }], [\"108 in\", \"0 in\"], [\"108 in\", \"72 in\"], [\"0 in\", \"72 in\", { radius = \"30 in\" }]",
            "the rounding of this corner does not fit beside its neighbours",
            "its radius is at most 42.0 in (1067 mm)",
        ),
        (
            "[\"5 in\", \"-2 in\"], [\"113 in\", \"-2 in\"], [\"113 in\", \"70 in\"], [\"5 in\", \"70 in\"]",
            "the outline begins at 5.00 in (127 mm), -2.00 in (-50.8 mm), not at 0, 0",
            "take 5.00 in (127 mm) off every x, add 2.00 in (50.8 mm) to every y",
        ),
        (
            "[\"0 in\", \"0 in\"], [\"9 in\", \"0 in\"], [\"9 in\", \"72 in\"], [\"0 in\", \"72 in\"]",
            "no top measures 9.00 in (228.6 mm)",
            "is the unit right?",
        ),
        (
            "[\"0 in\", \"0 in\"], [\"108 in\", \"0 in\", \"9 in\"], [\"108 in\", \"72 in\"]",
            "the rounding of a corner is a table, not a text",
            "{ radius = \"9 in\" }",
        ),
        (
            "[\"0 in\", \"0 in\"], \"108 in\", [\"108 in\", \"72 in\"]",
            "a corner is due here, not a text",
            "write [\"98 in\"",
        ),
        (
            "[\"0 in\", \"0 in\"], [\"108 in\", \"0 in\", { radios = \"9 in\" }], [\"108 in\", \"72 in\"]",
            "`radios` is not a key of a corner",
            "did you mean `radius`?",
        ),
        (
            "[\"0 in\", \"0 in\"], [\"1e9 m\", \"0 in\"], [\"108 in\", \"72 in\"]",
            "a corner is too far away to be one of a top",
            "is the unit right?",
        ),
    ] {
        let found = said_of(&changed(RECTANGLE, &corners(points)));
        assert!(found.contains(said) && found.contains(help), "{points}: {found}");
        assert!(found.contains("--> top.toml:4:"), "{found}");
        assert_eq!(found.matches("error: ").count(), 1, "{points}: {found}");
    }
}

#[test]
fn a_corner_that_does_not_fit_is_shown() {
    says(
        "corner_radius = \"12 in\"",
        "corner_radius = [\"12 in\", \"12 in\", \"65 in\", \"12 in\"]",
        r#"
error: the rounding of this corner does not fit beside its neighbours
 --> top.toml:4:81
  |
4 | outline = { length = "9 ft", width = "6 ft", corner_radius = ["12 in", "12 in", "65 in", "12 in"] }
  |                                                                                 ^^^^^^^
  |
help: its radius is at most 60.0 in (1524 mm)
"#,
    );
    says(
        "corner_radius = \"12 in\"",
        "corner_radius = [\"12 in\", \"12 in\"]",
        r#"
error: a rectangle has four corners, not 2
 --> top.toml:4:62
  |
4 | outline = { length = "9 ft", width = "6 ft", corner_radius = ["12 in", "12 in"] }
  |                                                              ^^^^^^^^^^^^^^^^^^
  |
help: write one radius for all, or four: the corner at 0, 0 first, then anticlockwise
"#,
    );
    says(
        "width = \"6 ft\"",
        "width = \"6 ft\", drawing = \"top.dxf\"",
        r#"
error: `outline` is one of a rectangle, a list of corners and a drawing, not two of them
 --> top.toml:4:1
  |
4 | outline = { length = "9 ft", width = "6 ft", drawing = "top.dxf", corner_radius = "12 in" }
  | ^^^^^^^
  |
help: write `length` and `width`, or `points`, or `drawing` with its `layer` or `path`
"#,
    );
}

#[test]
fn a_hole_takes_area_and_weight_and_has_a_rim() {
    use std::f64::consts::PI;
    let whole = outline(BASE);
    let circle = outline(&with_hole("circle = { at = [\"60 in\", \"36 in\"], diameter = \"20 in\" }"));
    assert!((square_inches(&whole) - square_inches(&circle) - PI * 100.0).abs() < 1e-6);
    let rectangle =
        "rectangle = { at = [\"60 in\", \"36 in\"], length = \"20 in\", width = \"16 in\", corner_radius = \"2 in\" }";
    let rectangle = outline(&with_hole(rectangle));
    assert!((square_inches(&whole) - square_inches(&rectangle) - (320.0 - (4.0 - PI) * 4.0)).abs() < 1e-6);
    let points = "points = [[\"50 in\", \"28 in\"], [\"70 in\", \"28 in\"], [\"60 in\", \"44 in\"]]";
    let points = outline(&with_hole(points));
    assert!((square_inches(&whole) - square_inches(&points) - 160.0).abs() < 1e-6);
    // 4 in from the rim of the hatch.
    let place = Point { x: Length::new::<inch>(74.0), y: Length::new::<inch>(36.0) };
    assert!((circle.within_by(place).get::<inch>() - 4.0).abs() < ROUNDING);
    assert!((circle.perimeter() - whole.perimeter()).get::<inch>() - 20.0 * PI < 1e-6);

    let weight = |text: &str| read_design(&named("top.toml", text), &TABLE, None).unwrap().weight();
    let text = with_hole("circle = { at = [\"60 in\", \"36 in\"], diameter = \"20 in\" }");
    let (before, after) = (weight(BASE), weight(&text));
    let share = |index: usize| (after.items[index].mass / before.items[index].mass).value;
    for index in 0..4 {
        assert!((share(index) - square_inches(&circle) / square_inches(&whole)).abs() < 1e-12, "{index}");
        assert!(after.items[index].at.x < before.items[index].at.x - Length::new::<millimeter>(1.0), "{index}");
    }
}

#[test]
fn holes_that_do_not_fit() {
    for (hole, said, help) in [
        (
            "circle = { at = [\"100 in\", \"36 in\"], diameter = \"20 in\" }",
            "hatch does not lie within the top, at 108 in (2743 mm), ",
            "the outline runs from 0 to 108 in",
        ),
        (
            "circle = { at = [\"200 in\", \"36 in\"], diameter = \"20 in\" }",
            "hatch does not lie within the top",
            "the outline",
        ),
        ("", "`[[hole]]` does not say what its rim is", "write `circle = {"),
        ("layer = \"HOLES\"", "`layer` is one of a drawing, and the outline is not drawn", "write `circle`"),
        (
            "points = [[\"60 in\", \"30 in\"], [\"70 in\", \"30 in\"]]\ncircle = { at = [\"60 in\", \"36 in\"], diameter = \"2 in\" }",
            "`[[hole]]` has more than one rim",
            "write `circle = {",
        ),
        ("circle = { at = [\"60 in\", \"36 in\"] }", "`diameter` is missing in `circle`", "`diameter = \"8 in\"`"),
        (
            "circle = { at = [\"37 in\", \"52 in\"], diameter = \"10 in\" }",
            "radar stands in hatch",
            "it lies in hatch, 5.00 in (127 mm) from its rim",
        ),
        (
            "circle = { at = [\"60 in\", \"20 in\"], diameter = \"6 in\" }",
            "the line runs through hatch at 60.0 in (1524 mm), 20.0 in (508 mm)",
            "end it before the hole, or lead it round",
        ),
        (
            "circle = { at = [\"60 in\", \"36 in\"], diameter = \"8 in\" }\n[[hole]]\ncircle = { at = [\"66 in\", \"36 in\"], diameter = \"8 in\" }",
            "hole 2 meets hatch at ",
            "leave panel between them",
        ),
        (
            "circle = { at = [\"60 in\", \"36 in\"], diameter = \"4 in\" }\n[[hole]]\ncircle = { at = [\"60 in\", \"36 in\"], diameter = \"8 in\" }",
            "hole 2 meets hatch at ",
            "make them one hole",
        ),
    ] {
        let found = said_of(&with_hole(hole));
        assert!(found.contains(said) && found.contains(help), "{hole}: {found}");
        assert_eq!(found.matches("error: ").count(), 1, "{hole}: {found}");
    }
}

#[test]
fn a_line_that_leaves_a_hollow_outline_between_its_ends() {
    let hollow = "outline = { points = [[\"0 in\", \"0 in\"], [\"40 in\", \"0 in\"], [\"54 in\", \"16 in\"], [\"68 in\", \"0 in\"], [\"108 in\", \"0 in\"], [\"108 in\", \"72 in\"], [\"0 in\", \"72 in\"]] }";
    let said = said_of(&changed(RECTANGLE, hollow));
    assert!(said.contains("the line leaves the top at 54.0 in (1372 mm), 12.0 in (304.8 mm)"), "{said}");
    // The backing and the pipe over it.
    assert_eq!(said.matches("error: ").count(), 2, "{said}");
}

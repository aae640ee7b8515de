//! What a top stands on, its crown, what lies beside its holes; and in which units that is said.

use crate::{BASE, changed, said_of};

/// One mistake, its cause and its way out.
#[track_caller]
fn one(text: &str, cause: &str, help: &str) {
    let found = said_of(text);
    assert!(found.contains(cause) && found.contains(help), "{found}");
    assert_eq!(found.matches("error: ").count(), 1, "{found}");
}

const STARBOARD: &str = "[[pipe]]\nname = \"starboard rail\"\noutside = \"2 in\"\nalong = [[\"6 in\", \"60 in\"], [\"102 in\", \"60 in\"]]\n";

#[test]
fn no_top_stands_on_one_line() {
    let alone = changed(STARBOARD, "");
    one(&alone, "the top stands on port rail alone, which is straight: it tips over it", "add a `[[pipe]]` beside it");
    // End to end on one line, or bent by less than its thickness.
    let behind = changed(
        "along = [[\"6 in\", \"60 in\"], [\"102 in\", \"60 in\"]]",
        "along = [[\"103 in\", \"12 in\"], [\"106 in\", \"13 in\"]]",
    );
    one(&behind, "all pipes lie on one straight line: the top tips over it", "as far off as the top allows");
    // One that is led round holds a top.
    let round = alone.replace(
        "[\"102 in\", \"12 in\"]]\nposts",
        "[\"102 in\", \"12 in\"], [\"102 in\", \"60 in\"], [\"6 in\", \"60 in\"]]\nposts",
    );
    assert_eq!(said_of(&round), "");
    // The one that cannot be read may be the one that holds it.
    one(
        &changed(
            "outside = \"2 in\"\nalong = [[\"6 in\", \"60 in\"]",
            "outside = \"2 kg\"\nalong = [[\"6 in\", \"60 in\"]",
        ),
        "\"2 kg\"",
        "",
    );
}

#[test]
fn no_pipe_lies_on_another() {
    let copy = changed(
        "along = [[\"6 in\", \"60 in\"], [\"102 in\", \"60 in\"]]",
        "along = [[\"50 in\", \"13.9 in\"], [\"106 in\", \"13.9 in\"]]",
    );
    one(
        &copy,
        "starboard rail lies on port rail at 76.0 in (1930 mm), 12.0 in (304.8 mm)",
        "is one a copy of the other?",
    );
    let third = |along: &str| format!("{BASE}\n[[pipe]]\nname = \"third\"\noutside = \"2 in\"\nalong = {along}\n");
    for fits in [
        "[[\"6 in\", \"14.1 in\"], [\"102 in\", \"14.1 in\"]]", // beside it
        "[[\"6 in\", \"12 in\"], [\"6 in\", \"60 in\"]]",       // joined to both, square to them
        "[[\"101 in\", \"12 in\"], [\"107 in\", \"12 in\"]]",   // goes on where one ends
    ] {
        assert_eq!(said_of(&third(fits)), "", "{fits}");
    }
}

#[test]
fn two_pipes_have_two_names() {
    let twins = changed("name = \"starboard rail\"", "name = \"port rail\"");
    one(&twins, "two pipes are called port rail", "give this one another `name`");
}

#[test]
fn a_conduit_is_a_tube_or_a_size() {
    let tube = "material = \"pvc-1-2-sch40\"\n";
    one(
        &changed(tube, &format!("{tube}diameter = \"0.5 in\"\n")),
        "wiring has a `material` and a `diameter`",
        "`pvc-1-2-sch40` has its own diameter: leave out one of the two",
    );
}

#[test]
fn posts_that_stand_together_are_no_two() {
    let near = changed("posts = [\"8 in\", \"90 in\"]", "posts = [\"50 in\", \"57.9 in\"]");
    one(
        &near,
        "two posts of port rail stand 7.90 in (200.7 mm) apart and hold it like one",
        "neighbours stand 8.00 in (203.2 mm) apart or more, 4 times the diameter",
    );
    // Each pair of neighbours, in whatever order they are written.
    for posts in ["[\"8 in\", \"9 in\", \"90 in\"]", "[\"90 in\", \"8 in\", \"89 in\"]"] {
        one(
            &changed("posts = [\"8 in\", \"90 in\"]", &format!("posts = {posts}")),
            "two posts of port rail stand 1.00 in (25.4 mm) apart and hold it like one",
            "neighbours stand 8.00 in",
        );
    }
    for posts in ["[\"50 in\", \"58 in\"]", "[\"50 in\"]", "[]", "[\"8 in\", \"16 in\", \"90 in\"]"] {
        assert_eq!(said_of(&changed("posts = [\"8 in\", \"90 in\"]", &format!("posts = {posts}"))), "", "{posts}");
    }
}

#[test]
fn a_crown_is_shallow() {
    one(
        &changed("crown = \"2 in\"", "crown = \"7.3 in\""),
        "so high a crown is no shallow one",
        "of a top 72.0 in (1829 mm) wide it rises by 7.20 in (182.9 mm) at the most",
    );
    assert_eq!(said_of(&changed("crown = \"2 in\"", "crown = \"7.2 in\"")), "");
    let wider = changed("crown = \"2 in\"", "crown = \"7.3 in\"") + "\n[criteria]\nshallow-crown = 0.2\n";
    assert_eq!(said_of(&wider), "");
}

#[test]
fn holes_stand_clear_of_conduits_and_pipes() {
    let with_hole = |at: &str| {
        format!("{BASE}\n[[hole]]\nname = \"hatch\"\ncircle = {{ at = [\"60 in\", \"{at}\"], diameter = \"20 in\" }}\n")
    };
    // The conduit is 0.84 in thick, its middle at 20 in.
    one(
        &with_hole("30.3 in"),
        "wiring reaches 0.120 in (3.05 mm) into hatch",
        "its middle passes the rim of a hole by 0.420 in (10.67 mm) or more",
    );
    assert_eq!(said_of(&with_hole("30.43 in")), "");
    one(&with_hole("29 in"), "the line runs through hatch", "end it before the hole, or lead it round");
    // A hole over pipe and backing is in the wrong place itself.
    let over = with_hole("12 in").replace("20 in\" }", "6 in\" }");
    one(&over, "the line runs through hatch", "hatch lies over port rail as well: move it off the pipe");
}

#[test]
fn a_file_in_si_is_answered_in_si() {
    let si = |text: String| text.replace("title = \"Top\"", "title = \"Top\"\nreport = \"si\"");
    one(
        &si(changed("at = [\"37 in\", \"52 in\"]", "at = [\"3 m\", \"52 in\"]")),
        "the place 3000 mm (118.1 in), 1321 mm (52.0 in) lies outside the top",
        "the outline runs from 0 to 2743 mm (108 in) along the length and from 0 to 1829 mm (72.0 in) across",
    );
    one(&si(changed("width = \"6 ft\"", "width = \"30 m\"")), "no top measures 30000 mm (1181 in)", "");
    one(
        &si(changed("corner_radius = \"12 in\"", "corner_radius = \"2 m\"")),
        "the corners are rounder than the top is wide",
        "at most 914.4 mm (36.0 in)",
    );
    one(&si(changed("crown = \"2 in\"", "crown = \"1 m\"")), "so high a crown", "of a top 1829 mm (72.0 in) wide");
    one(&si(changed("density = \"5 lb/ft3\"", "density = \"500 lb/ft3\"")), " at 8009 kg/m³ (500 lb/ft³)", "kg/m³");
}

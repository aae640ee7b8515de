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

const PORT: &str = "[[pipe]]\nname = \"port rail\"\noutside = \"2 in\"\nwall = \"0.125 in\"\nalloy = \"6061-t6\"\nalong = [[\"6 in\", \"12 in\"], [\"102 in\", \"12 in\"]]\nposts = [\"8 in\", \"90 in\"]\n";

/// The starboard rail replaced by something else.
fn on(other: &str) -> String {
    changed(STARBOARD, other)
}

fn wall(along: &str) -> String {
    format!("[[wall]]\nname = \"house side\"\nseat = \"1 in\"\nalong = {along}\n")
}

fn pad(at: &str, size: &str) -> String {
    format!("[[pad]]\nname = \"mast step\"\nat = {at}\nsize = {size}\n")
}

#[test]
fn walls_and_pads_hold_a_top() {
    for fits in [
        wall("[[\"6 in\", \"60 in\"], [\"102 in\", \"60 in\"]]"),
        wall("[[\"6 in\", \"60 in\"], [\"102 in\", \"60 in\"]]\nedge = \"clamped\""),
        pad("[\"54 in\", \"60 in\"]", "{ diameter = \"4 in\" }"),
        pad("[\"54 in\", \"60 in\"]", "{ length = \"4 in\", width = \"2 in\" }"),
        pad("[\"54 in\", \"60 in\"]", "\"4 in\""),
    ] {
        assert_eq!(said_of(&on(&fits)), "", "{fits}");
    }
}

#[test]
fn walls_and_pads_that_do_not_fit() {
    let square = "[[\"6 in\", \"60 in\"], [\"102 in\", \"60 in\"]]";
    one(&on(&wall(square).replace("seat = \"1 in\"\n", "")), "`seat` is missing in `[[wall]]`", "seat = \"30 mm\"");
    one(&on(&wall(square).replace("seat", "saet")), "`saet` is not a key of `[[wall]]`", "did you mean `seat`?");
    let misspelt = on(&wall(square)).replace(PORT, "").replace("[[wall]]", "[[wal]]");
    one(&misspelt, "`wal` is not a key of the file", "did you mean `wall`?");
    one(
        &on(&(wall(square) + "edge = \"clampd\"\n")),
        "`edge` is one of \"hinged\", \"clamped\", not \"clampd\"",
        "did you mean",
    );
    one(
        &on(&wall("[[\"6 in\", \"60 in\"], [\"112 in\", \"60 in\"]]")),
        "the place 112 in (2845 mm), 60.0 in (1524 mm) lies outside the top",
        "the outline runs from 0",
    );
}

#[test]
fn pads_lie_on_the_top_and_off_its_holes() {
    let disc = "{ diameter = \"4 in\" }";
    one(&on(&pad("[\"54 in\", \"73 in\"]", disc)), "lies outside the top", "the outline runs from 0");
    one(&on(&pad("[\"54 in\", \"71 in\"]", disc)), "the pad reaches over the rim at", "the outline runs from 0");
    one(&on(&pad("[\"54 in\", \"60 in\"]", "\"0 in\"")), "", "");
    one(
        &on("[[pad]]\nname = \"mast step\"\nat = [\"54 in\", \"60 in\"]\n"),
        "`size` is missing in `[[pad]]`",
        "size = \"8 in\"",
    );
    one(
        &on(&pad("[\"54 in\", \"60 in\"]", "{ diamter = \"4 in\" }")),
        "`diamter` is not a key of `size`",
        "did you mean `diameter`?",
    );
    let hatch = |at: &str| {
        let hole = "[[hole]]\nname = \"hatch\"\ncircle = { at = [\"54 in\", \"50 in\"], diameter = \"20 in\" }\n";
        format!("{}\n{hole}", on(&pad(at, disc)).replace("at = [\"37 in\", \"52 in\"]", "at = [\"20 in\", \"52 in\"]"))
    };
    one(&hatch("[\"54 in\", \"45 in\"]"), "lies outside the top", "it lies in hatch");
    one(&hatch("[\"54 in\", \"61.5 in\"]"), "the pad reaches over the rim at", "it lies in hatch");
    assert_eq!(said_of(&hatch("[\"54 in\", \"64 in\"]")), "");
    // A hole that lies all in the pad.
    let inside =
        hatch("[\"54 in\", \"56 in\"]").replace("\"20 in\" }", "\"1 in\" }").replace("\"50 in\"]", "\"57.2 in\"]");
    one(&inside, "the pad reaches into hatch", "move it off the hole");
    let beside =
        pad("[\"54 in\", \"60 in\"]", disc) + "fixings = { fixing = \"nuts\", points = [[\"3 in\", \"0 in\"]] }\n";
    let nuts = "[[fixing]]\nname = \"nuts\"\nhold = \"blind-insert\"\ninsert = \"m8-stainless\"\ngrade = \"a4-70\"\n\
                lubrication = \"lubricated-stainless\"\n";
    one(&on(&format!("{nuts}{beside}")), "a fixing stands beside the footing that it holds", "");
}

#[test]
fn walls_and_pads_lie_on_nothing_else() {
    let help = "Each place of the top is carried once";
    one(
        &on(&wall("[[\"6 in\", \"12.5 in\"], [\"102 in\", \"12.5 in\"]]")),
        "house side lies on port rail at 54.0 in (1372 mm), 12.0 in (304.8 mm)",
        help,
    );
    one(&on(&pad("[\"54 in\", \"14 in\"]", "\"4 in\"")), "mast step lies on port rail at", help);
    one(
        &on(&(pad("[\"54 in\", \"60 in\"]", "\"4 in\"")
            + &pad("[\"56 in\", \"60 in\"]", "\"4 in\"").replace("mast step", "boom step"))),
        "boom step lies on mast step at",
        help,
    );
    // On one line, or one pad alone.
    let alone = on(&pad("[\"54 in\", \"36 in\"]", "\"4 in\"")).replace(PORT, "");
    one(&alone, "the top stands on mast step alone: it tips over it", "");
    let far = on(&pad("[\"104.5 in\", \"12 in\"]", "\"1 in\""));
    one(&far, "all that the top stands on lies on one straight line: it tips over it", "");
    // A clamped edge holds a top by itself.
    let clamped = wall("[[\"6 in\", \"12 in\"], [\"102 in\", \"12 in\"]]") + "edge = \"clamped\"\n";
    assert_eq!(said_of(&on(&clamped).replace(PORT, "")), "");
    one(
        &on(&clamped.replace("clamped", "hinged")).replace(PORT, ""),
        "the top stands on house side alone, which is straight",
        "",
    );
}

#[test]
fn two_pipes_have_two_names() {
    let twins = changed("name = \"starboard rail\"", "name = \"port rail\"");
    one(&twins, "two supports are called port rail", "give this one another `name`");
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
fn forward_is_left_or_right() {
    let forward = |word: &str| changed("crown = \"2 in\"", &format!("crown = \"2 in\"\nforward = \"{word}\""));
    for word in ["left", "right"] {
        assert_eq!(said_of(&forward(word)), "");
    }
    one(
        &forward("up"),
        "the length of a top runs fore and aft",
        "turn the places so that the length, x, runs along the boat",
    );
    one(&forward("rihgt"), "`forward` is one of \"right\", \"left\", not \"rihgt\"", "did you mean \"right\"?");
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

/// Conduits that run along one another would be one slot, of which the checks see each half alone.
#[test]
fn no_conduit_lies_on_another() {
    let two = |points: &str| {
        let lights = format!("[[conduit]]\nname = \"lights\"\ndiameter = \"0.8 in\"\nalong = {points}\n\n[[gear]]");
        changed("[[gear]]", &lights)
    };
    // Half of 0.84 in and of 0.8 in.
    one(
        &two("[[\"40 in\", \"20.5 in\"], [\"100 in\", \"20.5 in\"]]"),
        "lights lies on wiring at 70.0 in (1778 mm), 20.0 in (508 mm)",
        "side by side lie 0.820 in (20.83 mm) apart or more",
    );
    // Side by side, end to end, across one another, and where one branches off.
    for apart in [
        "[[\"40 in\", \"20.83 in\"], [\"100 in\", \"20.83 in\"]]",
        "[[\"102 in\", \"20 in\"], [\"104 in\", \"20 in\"]]",
        "[[\"70 in\", \"16 in\"], [\"70 in\", \"50 in\"]]",
        "[[\"70 in\", \"20 in\"], [\"70 in\", \"50 in\"]]",
    ] {
        assert_eq!(said_of(&two(apart)), "", "{apart}");
    }
}

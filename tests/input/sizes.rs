//! Nothing where there must be something, and lengths that only a slip in a unit makes so large: each with a way out.

use super::{changed, said_of};

/// That a change of the base design is one mistake, with these words in it.
#[track_caller]
fn one_mistake(from: &str, to: &str, words: &[&str]) {
    let said = said_of(&changed(from, to));
    assert_eq!(said.matches("error:").count(), 1, "{from} -> {to}: {said}");
    for word in words {
        assert!(said.contains(word), "{from} -> {to}: {word}: {said}");
    }
}

#[test]
fn what_is_zero_says_what_to_write_instead() {
    one_mistake("\"32 kn\"", "\"0 kn\"", &["write more than zero, or `speed = \"none\"` if that will never happen"]);
    one_mistake("wall = \"0.125 in\"", "wall = \"0 in\"", &["help: write more than zero, or leave `wall` out"]);
    one_mistake("length = \"9 ft\"", "length = \"0 ft\"", &["`length` cannot be zero", "help: write more than zero\n"]);
    one_mistake(
        "footing = \"9 in\"",
        "footing = \"0 in\"",
        &["`footing` cannot be zero", "help: write more than zero\n"],
    );
    one_mistake("posts = [\"8 in\"", "posts = [\"-8 in\"", &["did you mean `8 in`?"]);
}

#[test]
fn what_the_reports_do_not_print_is_said_as_it_was_written() {
    one_mistake(
        "\"32 kn\"",
        "\"3200 kn\"",
        &["`speed` is 3200.0 kn, 3682 mph (1646 m/s), more than", "it is from 1.0 kn to 116.6 kn here"],
    );
}

#[test]
fn snow_and_water_may_be_ruled_out_in_words() {
    let with = |line: &str| changed("people = 1", &format!("people = 1\n{line}"));
    assert_eq!(said_of(&with("snow = \"none\"\nponding = \"none\"")), "");
    let said = said_of(&with("snow = \"0 psf\""));
    assert!(said.contains("or `snow = \"none\"`"), "{said}");
}

#[test]
fn what_is_larger_than_the_panel_is_a_slip_in_its_unit() {
    let panel = "the panel is 108 in (2743 mm) by 72.0 in (1829 mm): is the unit right?";
    for (from, to) in [
        ("width = \"4 in\"", "width = \"10 ft\""),
        ("footing = \"9 in\"", "footing = \"10 ft\""),
        // Across the top a footing has less room than along it.
        ("footing = \"9 in\"", "footing = { length = \"9 in\", width = \"80 in\" }"),
    ] {
        one_mistake(from, to, &["this is larger than the panel", panel]);
    }
    // No seat of a top is so wide, however large the top.
    let wall = "[[wall]]\nseat = \"10 ft\"\nalong = [[\"6 in\", \"30 in\"], [\"102 in\", \"30 in\"]]\n\n[[gear]]";
    one_mistake("[[gear]]", wall, &["`seat` is 120 in (3048 mm), more than the seat of a top ever is"]);
    // As large as the panel fits.
    let fits = said_of(&changed("footing = \"9 in\"", "footing = { length = \"108 in\", width = \"72 in\" }"));
    assert_eq!(fits, "");
}

#[test]
fn angles_of_a_hull_are_below_a_right_angle() {
    let boat = |deadrise: &str, trim: &str| {
        format!(
            "{{ waterline = \"23 ft\", beam = \"7 ft\", deadrise = \"{deadrise}\", mass = \"7000 lb\", speed = \"28 kn\", \
             trim = \"{trim}\", waves = \"2 ft\", ahead = \"2 ft\" }}"
        )
    };
    assert_eq!(said_of(&changed("\"3 g\"", &boat("20 deg", "4 deg"))), "");
    one_mistake(
        "\"3 g\"",
        &boat("20 rad", "4 deg"),
        &["`deadrise` of a boat is below 90 degrees", "is the unit right?"],
    );
    one_mistake("\"3 g\"", &boat("20 deg", "90 deg"), &["`trim` of a boat is below 90 degrees", "is the unit right?"]);
}

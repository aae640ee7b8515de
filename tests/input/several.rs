//! Several mistakes in one file: all of them are reported in one run, in the order of the file, and nothing else.

use crate::{BASE, changed, said_of};

/// First lines of the messages with their places.
fn heads(text: &str) -> Vec<String> {
    let said = said_of(text);
    let mut heads = Vec::new();
    let mut message = "";
    for line in said.lines() {
        if let Some(rest) = line.strip_prefix("error: ") {
            message = rest;
        }
        if let Some(place) = line.trim_start().strip_prefix("--> ") {
            heads.push(format!("{place} {message}"));
        }
    }
    heads
}

#[test]
fn all_mistakes_are_reported_in_the_order_of_the_file() {
    let text = [
        ("width = \"6 ft\"", "widht = \"6 ft\""),
        ("process = \"hand\"", "process = \"by hand\""),
        ("resin = \"vinylester\"", "resin = \"vinylister\""),
        ("mat 1.5 oz/ft2", "mat 1.5 oz"),
        ("18 oz/yd2 @ 0 deg", "18 oz/yd2"),
        ("thickness = \"1 in\"", "thickness = 1"),
        ("600 g/m2 @", "600 g @"),
        ("\"plywood-fir\"", "\"oak\""),
        ("wall = \"0.125 in\"", "wall = \"2 in\""),
        ("mass = \"22 lb\"", "mass = \"22\""),
        ("slam = \"3 g\"\n", ""),
        ("sun = \"light\"", "sun = \"yes\""),
    ]
    .iter()
    .fold(BASE.to_owned(), |text, (from, to)| {
        assert!(text.contains(from), "{from}");
        text.replacen(from, to, 1)
    });
    assert_eq!(
        heads(&text),
        [
            "top.toml:4:30 `widht` is not a key of `outline`",
            "top.toml:6:11 `process` is one of \"hand\", \"bag\", \"infusion\", not \"by hand\"",
            "top.toml:7:9 no resin is called `vinylister`",
            "top.toml:10:14 `oz` alone can mean two masses per area: mat is sold in oz/ft2, cloth in oz/yd2",
            "top.toml:12:6 `biaxial` needs an angle: at 0 and at 45 degrees it is two different materials",
            "top.toml:14:67 a length needs a unit",
            "top.toml:15:23 `g` is a unit of mass, but a mass per area is needed here",
            "top.toml:20:12 no board is called `oak`",
            "top.toml:32:8 the wall is thicker than half the pipe",
            "top.toml:44:9 a mass needs a unit",
            "top.toml:51:2 `slam` is missing in `service`",
            "top.toml:58:7 `sun` is one of \"none\", \"light\", \"dark\", not \"yes\"",
        ]
    );
}

#[test]
fn a_fault_in_the_core_hides_no_pipe_beside_the_top() {
    let text = changed("\"pvc-foam\"", "\"cork\"").replacen("[\"102 in\", \"60 in\"]", "[\"120 in\", \"60 in\"]", 1);
    assert_eq!(
        heads(&text),
        [
            "top.toml:14:21 no core is called `cork`",
            "top.toml:40:29 the place 120 in (3048 mm), 60.0 in (1524 mm) lies outside the top",
        ]
    );
}

#[test]
fn what_the_file_lacks_as_a_whole_has_no_caret() {
    let expected = r#"
error: there is no `[service]`: nothing says what the top must live through
--> top.toml
 |
help: add `[service]` with `speed`, `storm`, `trailer`, `slam`, `people`, `walking`, `underside` and `sun`; write "none" for what will never happen

error: there is no `[top]`: nothing says what the top is made of
--> top.toml
 |
help: add `[top]` with `outline`, `process`, `resin`, `outer`, `core` and `inner`

error: the top stands on nothing: there is no `[[pipe]]`, `[[wall]]` or `[[pad]]`
--> top.toml
 |
help: add two pipes or more, each with `name`, `outside` and `along = [["12 in", "20 in"], ["98 in", "20 in"]]`
"#;
    assert_eq!(said_of("").trim_end(), expected.trim());
    assert_eq!(said_of("# nothing yet\n").trim_end(), expected.trim());
}

#[test]
fn an_unknown_room_is_named_with_those_there_are() {
    let expected = "
error: `galley` is not a key of the file
  --> top.toml:61:2
   |
61 | [galley]
   |  ^^^^^^
   |
help: its keys are title, report, tables, criteria, service, top, patch, hole, order, proof, choose, fixing, pipe, wall, pad, backing, conduit, gear
";
    assert_eq!(said_of(&format!("{BASE}\n[galley]\nsink = 1\n")).trim_end(), expected.trim());
}

#[test]
fn a_list_that_is_one_table_is_one_mistake() {
    let pipes = BASE.find("[[pipe]]").unwrap();
    let one = format!("{}[pipe]\nname = \"rail\"\n", &BASE[..pipes]);
    let service = &BASE[BASE.find("[service]").unwrap()..];
    assert_eq!(
        heads(&format!("{one}\n{service}")),
        ["top.toml:29:1 `pipe` is a list of tables, but a table stands here"]
    );
}

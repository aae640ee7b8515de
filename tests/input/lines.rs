//! Pipes, conduits and gear on the top.

use crate::says;

#[test]
fn lines_and_places_that_do_not_fit() {
    says(
        "[\"102 in\", \"12 in\"]]\nposts",
        "[\"117 in\", \"12 in\"]]\nposts",
        r#"
error: the place 117 in (2972 mm), 12.0 in (304.8 mm) lies outside the top
  --> top.toml:34:29
   |
34 | along = [["6 in", "12 in"], ["117 in", "12 in"]]
   |                             ^^^^^^^^^^^^^^^^^^^
   |
help: the outline runs from 0 to 108 in (2743 mm) along the length and from 0 to 72.0 in (1829 mm) across
"#,
    );
    says(
        "along = [[\"6 in\", \"12 in\"], [\"102 in\", \"12 in\"]]\nposts",
        "along = [[\"6 in\", \"12 in\"]]\nposts",
        r#"
error: a line runs from one place to another: it needs two or more
  --> top.toml:34:9
   |
34 | along = [["6 in", "12 in"]]
   |         ^^^^^^^^^^^^^^^^^^^
   |
help: write along = [["12 in", "20 in"], ["98 in", "20 in"]]
"#,
    );
    says(
        "[\"102 in\", \"60 in\"]",
        "[\"6 in\", \"60 in\"]",
        r#"
error: this place is the one before it: the line does not get on
  --> top.toml:40:29
   |
40 | along = [["6 in", "60 in"], ["6 in", "60 in"]]
   |                             ^^^^^^^^^^^^^^^^^
"#,
    );
    says(
        "[\"102 in\", \"60 in\"]",
        "[\"102 in\"]",
        r#"
error: a place has two coordinates, not 1
  --> top.toml:40:29
   |
40 | along = [["6 in", "60 in"], ["102 in"]]
   |                             ^^^^^^^^^^
   |
help: write ["30 in", "38 in"]: along the length, along the width
"#,
    );
    says(
        "[\"102 in\", \"60 in\"]",
        "\"102 in\"",
        r#"
error: a place is due here, not a text
  --> top.toml:40:29
   |
40 | along = [["6 in", "60 in"], "102 in"]
   |                             ^^^^^^^^
   |
help: write a place as ["30 in", "38 in"]: along the length, along the width
"#,
    );
    says(
        "\"90 in\"]",
        "\"100 in\"]",
        r#"
error: a post stands beyond the end of its pipe
  --> top.toml:35:18
   |
35 | posts = ["8 in", "100 in"]
   |                  ^^^^^^^^
   |
help: the pipe is 96.0 in (2438 mm) long, and places of posts are measured along it from its first point
"#,
    );
    says(
        "wall = \"0.125 in\"",
        "wall = \"1.5 in\"",
        r#"
error: the wall is thicker than half the pipe
  --> top.toml:32:8
   |
32 | wall = "1.5 in"
   |        ^^^^^^^^
   |
help: the pipe is 2 in outside
"#,
    );
    says(
        "material = \"pvc-1-2-sch40\"",
        "diameter = \"1 in\"",
        r#"
error: wiring is 1.00 in (25.4 mm) and does not fit into the core
  --> top.toml:26:12
   |
26 | diameter = "1 in"
   |            ^^^^^^
   |
help: the core is 1.00 in (25.4 mm) thick
"#,
    );
    says(
        "thickness = \"1 in\"",
        "thickness = \"0.5 in\"",
        r#"
error: wiring is 0.840 in (21.34 mm) and does not fit into the core
  --> top.toml:26:12
   |
26 | material = "pvc-1-2-sch40"
   |            ^^^^^^^^^^^^^^^
   |
help: the core is 0.500 in (12.7 mm) thick
"#,
    );
    says(
        "at = [\"37 in\", \"52 in\"]",
        "at = [\"37 in\", \"152 in\"]",
        r#"
error: the place 37.0 in (939.8 mm), 152 in (3861 mm) lies outside the top
  --> top.toml:46:6
   |
46 | at = ["37 in", "152 in"]
   |      ^^^^^^^^^^^^^^^^^^^
   |
help: the outline runs from 0 to 108 in (2743 mm) along the length and from 0 to 72.0 in (1829 mm) across
"#,
    );
    says(
        "at = [\"37 in\", \"52 in\"]",
        "at = \"middle\"",
        r#"
error: `at` is a list, but a text stands here
  --> top.toml:46:6
   |
46 | at = "middle"
   |      ^^^^^^^^
   |
help: write it in square brackets
"#,
    );
    says(
        "[[conduit]]",
        "[conduit]",
        r"
error: `conduit` is a list of tables, but a table stands here
  --> top.toml:24:1
   |
24 | [conduit]
   | ^^^^^^^^^
   |
help: write a header `[[conduit]]` with two pairs of brackets for each
",
    );
}

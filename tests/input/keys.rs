//! Keys that nobody knows, and keys that are not there.

use crate::says;

#[test]
fn a_misspelt_key_is_one_mistake() {
    says(
        "title =",
        "titel =",
        r#"
error: `titel` is not a key of the file
 --> top.toml:1:1
  |
1 | titel = "Top"
  | ^^^^^
  |
help: did you mean `title`?
  |
1 - titel = "Top"
1 + title = "Top"
  |
"#,
    );
    says(
        "[service]",
        "[servce]",
        r"
error: `servce` is not a key of the file
  --> top.toml:51:2
   |
51 | [servce]
   |  ^^^^^^
   |
help: did you mean `service`?
   |
51 | [service]
   |      +
",
    );
    says(
        "[[gear]]",
        "[[gears]]",
        r"
error: `gears` is not a key of the file
  --> top.toml:42:3
   |
42 | [[gears]]
   |   ^^^^^
   |
help: did you mean `gear`?
   |
42 - [[gears]]
42 + [[gear]]
   |
",
    );
    says(
        "crown =",
        "crwon =",
        r#"
error: `crwon` is not a key of `top`
 --> top.toml:5:1
  |
5 | crwon = "2 in"
  | ^^^^^
  |
help: did you mean `crown`?
  |
5 - crwon = "2 in"
5 + crown = "2 in"
  |
"#,
    );
    says(
        "corner_radius",
        "corner_radios",
        r#"
error: `corner_radios` is not a key of `outline`
 --> top.toml:4:46
  |
4 | outline = { length = "9 ft", width = "6 ft", corner_radios = "12 in" }
  |                                              ^^^^^^^^^^^^^
  |
help: did you mean `corner_radius`?
  |
4 - outline = { length = "9 ft", width = "6 ft", corner_radios = "12 in" }
4 + outline = { length = "9 ft", width = "6 ft", corner_radius = "12 in" }
  |
"#,
    );
    says(
        "width = \"6 ft\"",
        "widht = \"6 ft\"",
        r#"
error: `widht` is not a key of `outline`
 --> top.toml:4:30
  |
4 | outline = { length = "9 ft", widht = "6 ft", corner_radius = "12 in" }
  |                              ^^^^^
  |
help: did you mean `width`?
  |
4 - outline = { length = "9 ft", widht = "6 ft", corner_radius = "12 in" }
4 + outline = { length = "9 ft", width = "6 ft", corner_radius = "12 in" }
  |
"#,
    );
    says(
        "density =",
        "densty =",
        r#"
error: `densty` is not a key of `core`
  --> top.toml:14:33
   |
14 | core = { material = "pvc-foam", densty = "5 lb/ft3", thickness = "1 in" }
   |                                 ^^^^^^
   |
help: did you mean `density`?
   |
14 | core = { material = "pvc-foam", density = "5 lb/ft3", thickness = "1 in" }
   |                                     +
"#,
    );
    says(
        "setback",
        "set_back",
        r#"
error: `set_back` is not a key of `edge`
  --> top.toml:16:10
   |
16 | edge = { set_back = "1.5 in", fill = "putty-glass-bubble" }
   |          ^^^^^^^^
   |
help: did you mean `setback`?
   |
16 - edge = { set_back = "1.5 in", fill = "putty-glass-bubble" }
16 + edge = { setback = "1.5 in", fill = "putty-glass-bubble" }
   |
"#,
    );
    says(
        "name = \"strip\"",
        "nane = \"strip\"",
        r#"
error: `nane` is not a key of `[[backing]]`
  --> top.toml:19:1
   |
19 | nane = "strip"
   | ^^^^
   |
help: did you mean `name`?
   |
19 - nane = "strip"
19 + name = "strip"
   |
"#,
    );
    says(
        "material = \"pvc-1",
        "materiel = \"pvc-1",
        r#"
error: `materiel` is not a key of `[[conduit]]`
  --> top.toml:26:1
   |
26 | materiel = "pvc-1-2-sch40"
   | ^^^^^^^^
   |
help: did you mean `material`?
   |
26 - materiel = "pvc-1-2-sch40"
26 + material = "pvc-1-2-sch40"
   |
"#,
    );
    says(
        "posts",
        "post",
        r#"
error: `post` is not a key of `[[pipe]]`
  --> top.toml:35:1
   |
35 | post = ["8 in", "90 in"]
   | ^^^^
   |
help: did you mean `posts`?
   |
35 | posts = ["8 in", "90 in"]
   |     +
"#,
    );
    says(
        "cg_height",
        "cg_hight",
        r#"
error: `cg_hight` is not a key of `[[gear]]`
  --> top.toml:45:1
   |
45 | cg_hight = "6 in"
   | ^^^^^^^^
   |
help: did you mean `cg_height`?
   |
45 | cg_height = "6 in"
   |     +
"#,
    );
    says(
        "storm",
        "strom",
        r#"
error: `strom` is not a key of `service`
  --> top.toml:53:1
   |
53 | strom = "90 mph"
   | ^^^^^
   |
help: did you mean `storm`?
   |
53 - strom = "90 mph"
53 + storm = "90 mph"
   |
"#,
    );
    says(
        "[top]\n",
        "[tables]\nfile = []\n\n[top]\n",
        r"
error: `file` is not a key of `tables`
 --> top.toml:4:1
  |
4 | file = []
  | ^^^^
  |
help: did you mean `files`?
  |
4 | files = []
  |     +
",
    );
    says(
        "crown = \"2 in\"",
        "crown = \"2 in\"\nprocess2 = \"bag\"",
        r#"
error: `process2` is not a key of `top`
 --> top.toml:6:1
  |
6 | process2 = "bag"
  | ^^^^^^^^
  |
help: its keys are outline, forward, crown, process, resin, fibre, outer, inner, core, edge
"#,
    );
}

#[test]
fn what_has_to_be_there_and_is_not() {
    says(
        "core = {",
        "# core = {",
        r#"
error: `core` is missing in `top`
 --> top.toml:3:2
  |
3 | [top]
  |  ^^^
  |
help: write for example `core = { material = "pvc-foam", density = "5 lb/ft3", thickness = "1 in" }`
"#,
    );
    says(
        "process = \"hand\"\n",
        "",
        r#"
error: `process` is missing in `top`
 --> top.toml:3:2
  |
3 | [top]
  |  ^^^
  |
help: write for example `process = "hand"`, or `"bag"` or `"infusion"`
"#,
    );
    says(
        "resin = \"vinylester\"\n",
        "",
        r#"
error: `resin` is missing in `top`
 --> top.toml:3:2
  |
3 | [top]
  |  ^^^
  |
help: write for example `resin = "polyester"`, or `"vinylester"` or `"epoxy"`
"#,
    );
    says(
        "slam = \"3 g\"\n",
        "",
        r#"
error: `slam` is missing in `service`
  --> top.toml:51:2
   |
51 | [service]
   |  ^^^^^^^
   |
help: write for example `slam = "3 g"`, or `slam = "none"` if the boat never leaves flat water
"#,
    );
    says(
        "trailer = \"60 mph\"\n",
        "",
        r#"
error: `trailer` is missing in `service`
  --> top.toml:51:2
   |
51 | [service]
   |  ^^^^^^^
   |
help: write for example `trailer = "70 mph"`, or `trailer = "none"` if that will never happen
"#,
    );
    says(
        "people = 1\n",
        "",
        r"
error: `people` is missing in `service`
  --> top.toml:51:2
   |
51 | [service]
   |  ^^^^^^^
   |
help: write for example `people = 1`
",
    );
    says(
        "walking = \"no-walk\"\n",
        "",
        r#"
error: `walking` is missing in `service`
  --> top.toml:51:2
   |
51 | [service]
   |  ^^^^^^^
   |
help: write for example `walking = "no-walk"`
"#,
    );
    says(
        "outline = { length = \"9 ft\", ",
        "outline = { ",
        r#"
error: `length` is missing in `outline`
 --> top.toml:4:1
  |
4 | outline = { width = "6 ft", corner_radius = "12 in" }
  | ^^^^^^^
  |
help: write for example `length = "9 ft 2 in"`
"#,
    );
    says(
        "material = \"pvc-1-2-sch40\"\n",
        "",
        r#"
error: `[[conduit]]` has neither `material` nor `diameter`
  --> top.toml:24:1
   |
24 | [[conduit]]
   | ^^^^^^^^^^^
   |
help: write for example `material = "pvc-1-2-sch40"` or `diameter = "0.84 in"`
"#,
    );
    says(
        "at = [\"37 in\", \"52 in\"]\n",
        "",
        r#"
error: `at` is missing in `[[gear]]`
  --> top.toml:42:1
   |
42 | [[gear]]
   | ^^^^^^^^
   |
help: write for example `at = ["30 in", "38 in"]`
"#,
    );
    says(
        "drag = 0.6\n",
        "",
        r#"
error: `[[gear]]` has a `wind_area` and does not say how it stands in the wind
  --> top.toml:42:1
   |
42 | [[gear]]
   | ^^^^^^^^
   |
help: write `body = "dome"` for a shape of the material table, or `drag = 1.2`
"#,
    );
    says(
        "wind_area = \"1.4 ft2\"\n",
        "",
        r#"
error: `wind_area` is missing in `[[gear]]`
  --> top.toml:42:1
   |
42 | [[gear]]
   | ^^^^^^^^
   |
help: write for example `wind_area = "1.5 ft2"`
"#,
    );
}

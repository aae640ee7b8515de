//! Skins, core, outline and edge.

use crate::says;

#[test]
fn skins_and_cores_that_cannot_be() {
    says(
        "inner = [\"biaxial 600 g/m2 @ 45 deg, fibre 50 %\"]",
        "inner = []",
        r#"
error: the inner skin is empty
  --> top.toml:15:9
   |
15 | inner = []
   |         ^^
   |
help: add a fabric such as "biaxial 600 g/m2 @ 45 deg"
"#,
    );
    says(
        "inner = [\"biaxial 600 g/m2 @ 45 deg, fibre 50 %\"]",
        "inner = [\"gelcoat\", \"paint\"]",
        r#"
error: the inner skin is of coats alone, and a coat carries nothing
  --> top.toml:15:9
   |
15 | inner = ["gelcoat", "paint"]
   |         ^^^^^^^^^^^^^^^^^^^^
   |
help: add a fabric such as "biaxial 600 g/m2 @ 45 deg"
"#,
    );
    says(
        "inner = [\"biaxial 600 g/m2 @ 45 deg, fibre 50 %\"]",
        "inner = \"mat 1.5 oz/ft2\"",
        r#"
error: `inner` is a list, but a text stands here
  --> top.toml:15:9
   |
15 | inner = "mat 1.5 oz/ft2"
   |         ^^^^^^^^^^^^^^^^
   |
help: write it in square brackets
"#,
    );
    says(
        "process = \"hand\"",
        "process = \"vacuum\"",
        r#"
error: `process` is one of "hand", "bag", "infusion", not "vacuum"
 --> top.toml:6:11
  |
6 | process = "vacuum"
  |           ^^^^^^^^
"#,
    );
    says(
        "process = \"hand\"",
        "process = \"infused\"",
        r#"
error: `process` is one of "hand", "bag", "infusion", not "infused"
 --> top.toml:6:11
  |
6 | process = "infused"
  |           ^^^^^^^^^
  |
help: did you mean "infusion"?
  |
6 - process = "infused"
6 + process = "infusion"
  |
"#,
    );
    says(
        "resin = \"vinylester\"",
        "resin = \"vinylester\"\nfibre = 55",
        r"
error: the fibre content is a fraction of the mass: more than nothing, less than all
 --> top.toml:8:9
  |
8 | fibre = 55
  |         ^^
  |
help: did you mean `55 %`?
",
    );
    says(
        "\"5 lb/ft3\"",
        "\"40 lb/ft3\"",
        r#"
error: the material table does not know `pvc-foam` at 40.0 lb/ft³ (640.7 kg/m³)
  --> top.toml:14:43
   |
14 | core = { material = "pvc-foam", density = "40 lb/ft3", thickness = "1 in" }
   |                                           ^^^^^^^^^^^
   |
help: it knows its shear modulus from 3.00 lb/ft³ (48.0 kg/m³) to 15.61 lb/ft³ (250 kg/m³): choose a density between, or another core
"#,
    );
    says(
        "corner_radius = \"12 in\"",
        "corner_radius = \"44 in\"",
        r#"
error: the corners are rounder than the top is wide
 --> top.toml:4:62
  |
4 | outline = { length = "9 ft", width = "6 ft", corner_radius = "44 in" }
  |                                                              ^^^^^^^
  |
help: at most 36.0 in (914.4 mm)
"#,
    );
    says(
        "\"9 ft\"",
        "\"9 in\"",
        r#"
error: no top measures 9.00 in (228.6 mm)
 --> top.toml:4:22
  |
4 | outline = { length = "9 in", width = "6 ft", corner_radius = "12 in" }
  |                      ^^^^^^
  |
help: a top is 0.5 m to 20 m long and wide: is the unit right?
"#,
    );
    says(
        "setback = \"1.5 in\"",
        "setback = \"2 ft\"",
        r#"
error: the edge would take more than half of the top
  --> top.toml:16:20
   |
16 | edge = { setback = "2 ft", fill = "putty-glass-bubble" }
   |                    ^^^^^^
   |
help: the core is usually cut back by about its own thickness
"#,
    );
}

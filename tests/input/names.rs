//! Names that the material table does not have.

use crate::says;

#[test]
fn names_that_the_material_table_does_not_have() {
    says(
        "\"pvc-foam\"",
        "\"pvc-faom\"",
        r#"
error: no core is called `pvc-faom`
  --> top.toml:14:21
   |
14 | core = { material = "pvc-faom", density = "5 lb/ft3", thickness = "1 in" }
   |                     ^^^^^^^^^^
   |
help: did you mean "pvc-foam"?
   |
14 - core = { material = "pvc-faom", density = "5 lb/ft3", thickness = "1 in" }
14 + core = { material = "pvc-foam", density = "5 lb/ft3", thickness = "1 in" }
   |
"#,
    );
    says(
        "\"pvc-foam\"",
        "\"kryptonite\"",
        r#"
error: no core is called `kryptonite`
  --> top.toml:14:21
   |
14 | core = { material = "kryptonite", density = "5 lb/ft3", thickness = "1 in" }
   |                     ^^^^^^^^^^^^
   |
help: the names are aramid-honeycomb, balsa, pet-foam, plywood, pmi-foam, pp-honeycomb, pu-foam, pvc-foam, pvc-linear-foam, san-foam
"#,
    );
    says(
        "\"vinylester\"",
        "\"vinyl-ester\"",
        r#"
error: no resin is called `vinyl-ester`
 --> top.toml:7:9
  |
7 | resin = "vinyl-ester"
  |         ^^^^^^^^^^^^^
  |
help: did you mean "vinylester"?
  |
7 - resin = "vinyl-ester"
7 + resin = "vinylester"
  |
"#,
    );
    says(
        "\"mat 1.5",
        "\"matt 1.5",
        r#"
error: no fabric or coat is called `matt`
  --> top.toml:10:6
   |
10 |     "matt 1.5 oz/ft2",
   |      ^^^^
   |
help: did you mean `mat`?
   |
10 -     "matt 1.5 oz/ft2",
10 +     "mat 1.5 oz/ft2",
   |
"#,
    );
    says(
        "biaxial 18",
        "biaxail 18",
        r#"
error: no fabric or coat is called `biaxail`
  --> top.toml:12:6
   |
12 |     "biaxail 18 oz/yd2 @ 0 deg",
   |      ^^^^^^^
   |
help: did you mean `biaxial`?
   |
12 -     "biaxail 18 oz/yd2 @ 0 deg",
12 +     "biaxial 18 oz/yd2 @ 0 deg",
   |
"#,
    );
    says(
        "\"gelcoat\"",
        "\"jelcoat\"",
        r#"
error: no fabric or coat is called `jelcoat`
 --> top.toml:9:6
  |
9 |     "jelcoat",
  |      ^^^^^^^
  |
help: did you mean `gelcoat`?
  |
9 -     "jelcoat",
9 +     "gelcoat",
  |
"#,
    );
    says(
        "\"putty-glass-bubble\"",
        "\"putty-glass-buble\"",
        r#"
error: no filler is called `putty-glass-buble`
  --> top.toml:16:37
   |
16 | edge = { setback = "1.5 in", fill = "putty-glass-buble" }
   |                                     ^^^^^^^^^^^^^^^^^^^
   |
help: did you mean "putty-glass-bubble"?
   |
16 | edge = { setback = "1.5 in", fill = "putty-glass-bubble" }
   |                                                     +
"#,
    );
    says(
        "\"plywood-fir\"",
        "\"plywood-marine\"",
        r#"
error: no board is called `plywood-marine`
  --> top.toml:20:12
   |
20 | material = "plywood-marine"
   |            ^^^^^^^^^^^^^^^^
   |
help: did you mean one of "plywood-fir", "plywood-okoume"?
"#,
    );
    says(
        "\"pvc-1-2-sch40\"",
        "\"pvc-1/2-sch40\"",
        r#"
error: no conduit is called `pvc-1/2-sch40`
  --> top.toml:26:12
   |
26 | material = "pvc-1/2-sch40"
   |            ^^^^^^^^^^^^^^^
   |
help: did you mean "pvc-1-2-sch40"?
   |
26 - material = "pvc-1/2-sch40"
26 + material = "pvc-1-2-sch40"
   |
"#,
    );
    says(
        "\"6061-t6\"",
        "\"6061T6\"",
        r#"
error: no alloy is called `6061T6`
  --> top.toml:33:9
   |
33 | alloy = "6061T6"
   |         ^^^^^^^^
   |
help: did you mean "6061-t6"?
   |
33 - alloy = "6061T6"
33 + alloy = "6061-t6"
   |
"#,
    );
}

//! Texts that are not the quantity that is due.

use crate::says;

#[test]
fn texts_that_are_no_quantity() {
    says(
        "thickness = \"1 in\"",
        "thickness = 1.5",
        r#"
error: a length needs a unit
  --> top.toml:14:67
   |
14 | core = { material = "pvc-foam", density = "5 lb/ft3", thickness = 1.5 }
   |                                                                   ^^^
   |
help: did you mean `"1.5 mm"` or `"1.5 in"`?
"#,
    );
    says(
        "wall = \"0.125 in\"",
        "wall = \"1/8\"",
        r#"
error: a length needs a unit
  --> top.toml:32:9
   |
32 | wall = "1/8"
   |         ^^^
   |
help: did you mean `1/8 mm` or `1/8 in`?
"#,
    );
    says(
        "density = \"5 lb/ft3\"",
        "density = \"5 psi\"",
        r#"
error: `psi` is a unit of pressure, but a density is needed here
  --> top.toml:14:46
   |
14 | core = { material = "pvc-foam", density = "5 psi", thickness = "1 in" }
   |                                              ^^^
   |
help: units of density: lb/ft3, lb/in3, kg/m3, g/cm3
"#,
    );
    says(
        "wall = \"0.125 in\"",
        "wall = \"3/4 inn\"",
        r#"
error: unknown unit of length: `inn`
  --> top.toml:32:13
   |
32 | wall = "3/4 inn"
   |             ^^^
   |
help: did you mean `3/4 in`?
   |
32 - wall = "3/4 inn"
32 + wall = "3/4 in"
   |
"#,
    );
    says(
        "thickness = \"1 in\"",
        "thickness = \"1,5 in\"",
        r#"
error: a number is written without commas, with a decimal point
  --> top.toml:14:69
   |
14 | core = { material = "pvc-foam", density = "5 lb/ft3", thickness = "1,5 in" }
   |                                                                     ^
   |
help: did you mean `1.5 in`?
   |
14 - core = { material = "pvc-foam", density = "5 lb/ft3", thickness = "1,5 in" }
14 + core = { material = "pvc-foam", density = "5 lb/ft3", thickness = "1.5 in" }
   |
"#,
    );
    says(
        "thickness = \"1 in\"",
        "thickness = \"-1 in\"",
        r#"
error: `thickness` cannot be negative
  --> top.toml:14:68
   |
14 | core = { material = "pvc-foam", density = "5 lb/ft3", thickness = "-1 in" }
   |                                                                    ^^^^^
   |
help: did you mean `1 in`?
   |
14 - core = { material = "pvc-foam", density = "5 lb/ft3", thickness = "-1 in" }
14 + core = { material = "pvc-foam", density = "5 lb/ft3", thickness = "1 in" }
   |
"#,
    );
    says(
        "thickness = \"1 in\"",
        "thickness = \"0 in\"",
        r#"
error: `thickness` cannot be zero
  --> top.toml:14:68
   |
14 | core = { material = "pvc-foam", density = "5 lb/ft3", thickness = "0 in" }
   |                                                                    ^^^^
   |
help: write more than zero
"#,
    );
    says(
        "thickness = \"1 in\"",
        "thickness = \"nan in\"",
        r#"
error: a length must be a finite number
  --> top.toml:14:68
   |
14 | core = { material = "pvc-foam", density = "5 lb/ft3", thickness = "nan in" }
   |                                                                    ^^^
   |
help: write a number and a unit, for example `12 mm` or `12 in`
"#,
    );
    says(
        "thickness = \"1 in\"",
        "thickness = inf",
        r#"
error: a length must be a finite number
  --> top.toml:14:67
   |
14 | core = { material = "pvc-foam", density = "5 lb/ft3", thickness = inf }
   |                                                                   ^^^
   |
help: write a number and a unit, for example `"12 mm"` or `"12 in"`
"#,
    );
    says(
        "thickness = \"1 in\"",
        "thickness = true",
        r#"
error: `thickness` is a length in quotation marks, but true or false stands here
  --> top.toml:14:67
   |
14 | core = { material = "pvc-foam", density = "5 lb/ft3", thickness = true }
   |                                                                   ^^^^
   |
help: write a number and a unit, for example `"12 mm"` or `"12 in"`
"#,
    );
    says(
        "drag = 0.6",
        "drag = -0.6",
        r#"
error: `drag` cannot be negative
  --> top.toml:49:8
   |
49 | drag = -0.6
   |        ^^^^
   |
help: did you mean `"0.6"`?
   |
49 - drag = -0.6
49 + drag = "0.6"
   |
"#,
    );
    says(
        "mass = \"22 lb\"",
        "mass = \"22 lbf\"",
        r#"
error: `lbf` is a unit of force, but a mass is needed here
  --> top.toml:44:12
   |
44 | mass = "22 lbf"
   |            ^^^
   |
help: did you mean `22 lb`?
   |
44 - mass = "22 lbf"
44 + mass = "22 lb"
   |
"#,
    );
    says(
        "thickness = \"1 in\"",
        "thickness = '1½ inn'",
        r#"
error: unknown unit of length: `inn`
  --> top.toml:14:71
   |
14 | core = { material = "pvc-foam", density = "5 lb/ft3", thickness = '1½ inn' }
   |                                                                       ^^^
   |
help: did you mean `1½ in`?
   |
14 - core = { material = "pvc-foam", density = "5 lb/ft3", thickness = '1½ inn' }
14 + core = { material = "pvc-foam", density = "5 lb/ft3", thickness = "1½ in" }
   |
"#,
    );
    says(
        "thickness = \"1 in\"",
        "thickness = \"1\\u0020inn\"",
        r#"
error: unknown unit of length: `inn`
  --> top.toml:14:67
   |
14 | core = { material = "pvc-foam", density = "5 lb/ft3", thickness = "1\u0020inn" }
   |                                                                   ^^^^^^^^^^^^
   |
help: did you mean `1 in`?
   |
14 - core = { material = "pvc-foam", density = "5 lb/ft3", thickness = "1\u0020inn" }
14 + core = { material = "pvc-foam", density = "5 lb/ft3", thickness = "1 in" }
   |
"#,
    );
}

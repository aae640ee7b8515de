//! Lines of a schedule.

use crate::says;

#[test]
fn layers_that_cannot_be_laid() {
    says(
        "mat 1.5 oz/ft2",
        "mat 1.5 oz",
        r#"
error: `oz` alone can mean two masses per area: mat is sold in oz/ft2, cloth in oz/yd2
  --> top.toml:10:14
   |
10 |     "mat 1.5 oz",
   |              ^^
   |
help: write `1.5 oz/ft2` for mat or `1.5 oz/yd2` for cloth
"#,
    );
    says(
        "mat 1.5 oz/ft2",
        "mat 1.5",
        r#"
error: a mass per area needs a unit
  --> top.toml:10:10
   |
10 |     "mat 1.5",
   |          ^^^
   |
help: did you mean `1.5 g/m2` or `1.5 oz/yd2`?
"#,
    );
    says(
        "mat 1.5 oz/ft2",
        "mat",
        r#"
error: `mat` takes one mass per area
  --> top.toml:10:6
   |
10 |     "mat",
   |      ^^^
   |
help: write for example `mat 600 g/m2`
"#,
    );
    says(
        "mat 1.5 oz/ft2",
        "mat 1,5 oz/ft2",
        r#"
error: a number is written without commas, with a decimal point
  --> top.toml:10:11
   |
10 |     "mat 1,5 oz/ft2",
   |           ^
   |
help: write a point
   |
10 -     "mat 1,5 oz/ft2",
10 +     "mat 1.5 oz/ft2",
   |
"#,
    );
    says(
        "mat 1.5 oz/ft2",
        "mat -1.5 oz/ft2",
        r#"
error: a fabric has a positive mass per area
  --> top.toml:10:10
   |
10 |     "mat -1.5 oz/ft2",
   |          ^^^^^^^^^^^
   |
help: write for example `mat 600 g/m2`
"#,
    );
    says(
        "mat 1.5 oz/ft2",
        "mat 0 oz/ft2",
        r#"
error: a fabric has a positive mass per area
  --> top.toml:10:10
   |
10 |     "mat 0 oz/ft2",
   |          ^^^^^^^^
   |
help: write for example `mat 600 g/m2`
"#,
    );
    says(
        "mat 1.5 oz/ft2",
        "mat 1.5 oz/ft2 twice",
        r#"
error: this does not belong to an amount
  --> top.toml:10:21
   |
10 |     "mat 1.5 oz/ft2 twice",
   |                     ^^^^^
   |
help: write for example `mat 600 g/m2`
"#,
    );
    says(
        "mat 1.5 oz/ft2",
        "mat 1.5 oz/ft2 +",
        r#"
error: an amount is due behind the `+`
  --> top.toml:10:21
   |
10 |     "mat 1.5 oz/ft2 +",
   |                     ^
   |
help: write for example `mat 600 g/m2`
"#,
    );
    says(
        "mat 1.5 oz/ft2",
        "2x mat 1.5 oz/ft2",
        r#"
error: a layer starts with the name of a fabric or coat, or with how often it is laid
  --> top.toml:10:6
   |
10 |     "2x mat 1.5 oz/ft2",
   |      ^^
   |
help: write for example `2 x mat 1.5 oz/ft2`, with spaces around the `x`
"#,
    );
    says(
        "mat 1.5 oz/ft2",
        "0 x mat 1.5 oz/ft2",
        r#"
error: a layer is laid 1 to 20 times
  --> top.toml:10:6
   |
10 |     "0 x mat 1.5 oz/ft2",
   |      ^^^^^^^^^^^^^^^^^^
   |
help: write for example `2 x mat 1.5 oz/ft2`
"#,
    );
    says(
        "mat 1.5 oz/ft2",
        "",
        r#"
error: this layer is empty
  --> top.toml:10:6
   |
10 |     "",
   |      ^
   |
help: write for example `biaxial 600 g/m2 @ 45 deg`
"#,
    );
    says(
        "biaxial 18 oz/yd2 @ 0 deg",
        "biaxial 18 oz/yd2",
        r#"
error: `biaxial` needs an angle: at 0 and at 45 degrees it is two different materials
  --> top.toml:12:6
   |
12 |     "biaxial 18 oz/yd2",
   |      ^^^^^^^
   |
help: write `biaxial 18 oz/yd2 @ 45 deg` or `biaxial 18 oz/yd2 @ 0 deg`
"#,
    );
    says(
        "biaxial 18 oz/yd2 @ 0 deg",
        "biaxial 18 oz/yd2 @ 45",
        r#"
error: an angle needs a unit
  --> top.toml:12:26
   |
12 |     "biaxial 18 oz/yd2 @ 45",
   |                          ^^
   |
help: did you mean `45 deg` or `45 rad`?
"#,
    );
    says(
        "biaxial 18 oz/yd2 @ 0 deg",
        "biaxial 18 oz/yd2 @ 45 deg twice",
        r#"
error: this does not belong to the angle
  --> top.toml:12:33
   |
12 |     "biaxial 18 oz/yd2 @ 45 deg twice",
   |                                 ^^^^^
"#,
    );
    says(
        "biaxial 600 g/m2 @ 45 deg, fibre 50 %",
        "biaxial 600 g/m2, fibre 50 %",
        r#"
error: `biaxial` needs an angle: at 0 and at 45 degrees it is two different materials
  --> top.toml:15:11
   |
15 | inner = ["biaxial 600 g/m2, fibre 50 %"]
   |           ^^^^^^^
   |
help: write `biaxial 600 g/m2 @ 45 deg, fibre 50 %` or `biaxial 600 g/m2 @ 0 deg, fibre 50 %`
"#,
    );
    says(
        "biaxial 600 g/m2 @ 45 deg, fibre 50 %",
        "biaxial 600 g/m2, fibre 50 % @ 45 deg",
        r#"
error: the angle stands before the comma
  --> top.toml:15:35
   |
15 | inner = ["biaxial 600 g/m2, fibre 50 % @ 45 deg"]
   |                                   ^^^^^^^^^^^^^
   |
help: write for example `biaxial 600 g/m2 @ 45 deg, fibre 50 %`
"#,
    );
    says(
        ", fibre 50 %",
        ", fibre 50",
        r#"
error: the fibre content is a fraction of the mass: more than nothing, less than all
  --> top.toml:15:44
   |
15 | inner = ["biaxial 600 g/m2 @ 45 deg, fibre 50"]
   |                                            ^^
   |
help: did you mean `50 %`?
"#,
    );
    says(
        ", fibre 50 %",
        ", fiber 50 %",
        r#"
error: the word is `fibre` here
  --> top.toml:15:38
   |
15 | inner = ["biaxial 600 g/m2 @ 45 deg, fiber 50 %"]
   |                                      ^^^^^
   |
help: did you mean `fibre`?
   |
15 - inner = ["biaxial 600 g/m2 @ 45 deg, fiber 50 %"]
15 + inner = ["biaxial 600 g/m2 @ 45 deg, fibre 50 %"]
   |
"#,
    );
    says(
        ", fibre 50 %",
        ", 50 %",
        r#"
error: behind the comma stands the fibre content
  --> top.toml:15:38
   |
15 | inner = ["biaxial 600 g/m2 @ 45 deg, 50 %"]
   |                                      ^^^^
   |
help: write `…, fibre 50 %`
"#,
    );
    says(
        "17 oz/yd2 + 0.75 oz/ft2",
        "17 oz/yd2",
        r#"
error: `biaxial-mat` takes 2 masses per area, one for each of its parts
  --> top.toml:11:18
   |
11 |     "biaxial-mat 17 oz/yd2 @ 45 deg",
   |                  ^^^^^^^^^
   |
help: write for example `biaxial-mat 17 oz/yd2 + 0.75 oz/ft2 @ 45 deg`
"#,
    );
    says(
        "17 oz/yd2 + 0.75 oz/ft2",
        "17 oz/yd2 + 0.75 oz/ft2 + 1 oz/ft2",
        r#"
error: `biaxial-mat` takes 2 masses per area, one for each of its parts
  --> top.toml:11:18
   |
11 |     "biaxial-mat 17 oz/yd2 + 0.75 oz/ft2 + 1 oz/ft2 @ 45 deg",
   |                  ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
   |
help: write for example `biaxial-mat 17 oz/yd2 + 0.75 oz/ft2 @ 45 deg`
"#,
    );
    says(
        "\"gelcoat\"",
        "\"gelcoat -0.5 mm\"",
        r#"
error: the thickness of a coat cannot be negative
 --> top.toml:9:14
  |
9 |     "gelcoat -0.5 mm",
  |              ^^^^^^^
  |
help: did you mean `0.5 mm`?
  |
9 -     "gelcoat -0.5 mm",
9 +     "gelcoat 0.5 mm",
  |
"#,
    );
    says(
        "\"gelcoat\"",
        "\"gelcoat @ 45 deg\"",
        r#"
error: `gelcoat` is a coat: it has no fibre, and no angle
 --> top.toml:9:6
  |
9 |     "gelcoat @ 45 deg",
  |      ^^^^^^^
  |
help: write `gelcoat`, and behind it how much if it is not the usual amount
"#,
    );
    says(
        "\"gelcoat\"",
        "\"gelcoat 0.5\"",
        r#"
error: a length needs a unit
 --> top.toml:9:14
  |
9 |     "gelcoat 0.5",
  |              ^^^
  |
help: did you mean `0.5 mm` or `0.5 in`?
"#,
    );
    says(
        "\"gelcoat\"",
        "\"paint 3 mm\"",
        r#"
error: `paint` takes a mass per area
 --> top.toml:9:12
  |
9 |     "paint 3 mm",
  |            ^^^^
  |
help: write for example `paint 0.3 kg/m2`, or nothing for the usual amount
"#,
    );
    says(
        "\"gelcoat\"",
        "5",
        r"
error: a text is due here, not a bare number
 --> top.toml:9:5
  |
9 |     5,
  |     ^
  |
help: put it in quotation marks
",
    );
    says(
        "\"mat 1.5 oz/ft2\"",
        "\"mat\\t1.5 oz\"",
        r#"
error: `oz` alone can mean two masses per area: mat is sold in oz/ft2, cloth in oz/yd2
  --> top.toml:10:5
   |
10 |     "mat\t1.5 oz",
   |     ^^^^^^^^^^^^^
   |
help: write `1.5 oz/ft2` for mat or `1.5 oz/yd2` for cloth
"#,
    );
    says(
        "\"mat 1.5 oz/ft2\"",
        "\"\"\"\nmatt 1.5 oz/ft2\"\"\"",
        r#"
error: no fabric or coat is called `matt`
  --> top.toml:10:5
   |
10 | /     """
11 | | matt 1.5 oz/ft2""",
   | |__________________^
   |
help: did you mean `mat`?
"#,
    );
}

/// Mat goes by the square foot: by the square yard it would be a ninth.
#[test]
fn a_mat_by_the_square_yard_is_questioned() {
    says(
        "mat 1.5 oz/ft2",
        "mat 1.5 oz/yd2",
        r#"
error: no mat is so light: 1.5 oz/yd2 is 1.50 oz/yd² (50.9 g/m²), and mat is sold by the square foot
  --> top.toml:10:10
   |
10 |     "mat 1.5 oz/yd2",
   |          ^^^^^^^^^^
   |
help: did you mean `1.5 oz/ft2`? a tissue so light is written in g/m2
   |
10 -     "mat 1.5 oz/yd2",
10 +     "mat 1.5 oz/ft2",
   |
"#,
    );
}

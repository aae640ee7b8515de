//! Values that the user judges with.

use crate::says;

#[test]
fn criteria_that_cannot_be() {
    says(
        "[top]\n",
        "[criteria]\ncore-sheer-factor = 3\n\n[top]\n",
        r"
error: there is no criterion `core-sheer-factor`
 --> top.toml:4:1
  |
4 | core-sheer-factor = 3
  | ^^^^^^^^^^^^^^^^^
  |
help: did you mean `core-shear-factor`?
  |
4 - core-sheer-factor = 3
4 + core-shear-factor = 3
  |
",
    );
    says(
        "[top]\n",
        "[criteria]\nperson-mass = \"9000 lb\"\n\n[top]\n",
        r#"
error: that is more than thirty times the usual value, or less than a thirtieth: is the unit right?
 --> top.toml:4:15
  |
4 | person-mass = "9000 lb"
  |               ^^^^^^^^^
  |
help: it is "100 kg" where the file does not say otherwise
"#,
    );
    says(
        "[top]\n",
        "[criteria]\nzzz = 1\n\n[top]\n",
        r"
error: there is no criterion `zzz`
 --> top.toml:4:1
  |
4 | zzz = 1
  | ^^^
  |
help: `skinspan check --full` lists them all, each with its value
",
    );
    says(
        "[top]\n",
        "[criteria]\ncore-shear-factor = \"3 psi\"\n\n[top]\n",
        r#"
error: `psi` is a unit of pressure, but a ratio is needed here
 --> top.toml:4:24
  |
4 | core-shear-factor = "3 psi"
  |                        ^^^
  |
help: a ratio is a bare number or a percentage
"#,
    );
    says(
        "[top]\n",
        "[criteria]\ncore-shear-factor = 0.5\n\n[top]\n",
        r#"
error: a factor below 1 would make a material stronger than it is
 --> top.toml:4:21
  |
4 | core-shear-factor = 0.5
  |                     ^^^
  |
help: it is "2.5" where the file does not say otherwise
"#,
    );
    says(
        "[top]\n",
        "[criteria]\ncore-shear-factor = [1]\n\n[top]\n",
        r#"
error: `core-shear-factor` takes a number or a quantity
 --> top.toml:4:21
  |
4 | core-shear-factor = [1]
  |                     ^^^
  |
help: it is "2.5" where the file does not say otherwise
"#,
    );
    says(
        "[top]\n",
        "[criteria]\ncore-shear-factor = nan\n\n[top]\n",
        r#"
error: a ratio must be a finite number
 --> top.toml:4:21
  |
4 | core-shear-factor = nan
  |                     ^^^
  |
help: write a number, for example `"0.35"` or `"35 %"`
"#,
    );
    says(
        "[top]\n",
        "[criteria]\npeople-spacing = 18\n\n[top]\n",
        r#"
error: a length needs a unit
 --> top.toml:4:18
  |
4 | people-spacing = 18
  |                  ^^
  |
help: did you mean `"18 mm"` or `"18 in"`?
"#,
    );
    says(
        "[top]\n",
        "[criteria]\npeople-spacing = \"18 inn\"\n\n[top]\n",
        r#"
error: unknown unit of length: `inn`
 --> top.toml:4:22
  |
4 | people-spacing = "18 inn"
  |                      ^^^
  |
help: did you mean `18 in`?
  |
4 - people-spacing = "18 inn"
4 + people-spacing = "18 in"
  |
"#,
    );
    says(
        "[top]\n",
        "[criteria]\nbasis-measured = \"120 %\"\n\n[top]\n",
        r#"
error: a share of a strength lies above 0 and at or below 1
 --> top.toml:4:18
  |
4 | basis-measured = "120 %"
  |                  ^^^^^^^
  |
help: it is "1.0" where the file does not say otherwise
"#,
    );
    says(
        "[top]\n",
        "[criteria]\npeople-spacing = \"-18 in\"\n\n[top]\n",
        r#"
error: the sign is the wrong one
 --> top.toml:4:18
  |
4 | people-spacing = "-18 in"
  |                  ^^^^^^^^
  |
help: it is "450 mm" where the file does not say otherwise
"#,
    );
    says(
        "[top]\n",
        "[criteria]\nsag-limit = 0\n\n[top]\n",
        r"
error: there is no criterion `sag-limit`
 --> top.toml:4:1
  |
4 | sag-limit = 0
  | ^^^^^^^^^
  |
help: did you mean one of `tip-sag-limit`, `bow-limit`, `sag-walked-limit`, `sag-unwalked-limit`?
",
    );
}

//! What the top must live through.

use crate::says;

#[test]
fn answers_that_are_none() {
    says(
        "\"no-walk\"",
        "\"nowalk\"",
        r#"
error: `walking` is one of "no-walk", "walk-on", "coachroof", not "nowalk"
  --> top.toml:57:11
   |
57 | walking = "nowalk"
   |           ^^^^^^^^
   |
help: did you mean "no-walk"?
   |
57 | walking = "no-walk"
   |              +
"#,
    );
    says(
        "\"light\"",
        "\"yes\"",
        r#"
error: `sun` is one of "none", "light", "dark", not "yes"
  --> top.toml:59:7
   |
59 | sun = "yes"
   |       ^^^^^
"#,
    );
    says(
        "people = 1",
        "people = 1.5",
        r"
error: `people` is a whole number from 0 to 4
  --> top.toml:56:10
   |
56 | people = 1.5
   |          ^^^
   |
help: write for example `people = 1`
",
    );
    says(
        "people = 1",
        "people = \"1\"",
        r#"
error: `people` is a whole number from 0 to 4
  --> top.toml:56:10
   |
56 | people = "1"
   |          ^^^
   |
help: a number stands without quotation marks
   |
56 - people = "1"
56 + people = 1
   |
"#,
    );
    says(
        "people = 1",
        "people = \"none\"",
        r#"
error: `people` is a whole number from 0 to 4
  --> top.toml:56:10
   |
56 | people = "none"
   |          ^^^^^^
   |
help: did you mean `0`?
   |
56 - people = "none"
56 + people = 0
   |
"#,
    );
    says(
        "people = 1",
        "people = 12",
        r"
error: `people` is a whole number from 0 to 4
  --> top.toml:56:10
   |
56 | people = 12
   |          ^^
   |
help: it is 4 at the most
",
    );
    says(
        "slam = \"3 g\"",
        "slam = 3",
        r#"
error: an acceleration needs a unit
  --> top.toml:55:8
   |
55 | slam = 3
   |        ^
   |
help: did you mean `"3 m/s2"` or `"3 g"`?
"#,
    );
    says(
        "slam = \"3 g\"",
        "slam = { waterline = \"23 ft\", beam = \"7 ft\", deadrise = \"20 deg\", mass = \"7000 lb\", speed = \"28 kn\", waves = \"2 ft\", ahead = \"0 ft\" }",
        r#"
error: `trim` is missing in `slam`
  --> top.toml:55:1
   |
55 | slam = { waterline = "23 ft", beam = "7 ft", deadrise = "20 deg", mass = "7000 lb", speed = "28 kn", waves = "2 ft", ahead = "0 ft" }
   | ^^^^
   |
help: write for example `trim = "4 deg"`
"#,
    );
    says(
        "storm = \"90 mph\"",
        "storm = \"never\"",
        r#"
error: a speed starts with a number
  --> top.toml:53:10
   |
53 | storm = "never"
   |          ^^^^^
   |
help: write a number and a unit, for example `12 kn` or `12 mph`
"#,
    );
    says(
        "storm = \"90 mph\"",
        "storm = \"90 kN\"",
        r#"
error: `kN` is a unit of force, but a speed is needed here
  --> top.toml:53:13
   |
53 | storm = "90 kN"
   |             ^^
   |
help: did you mean `90 kn`?
   |
53 - storm = "90 kN"
53 + storm = "90 kn"
   |
"#,
    );
    says(
        "underside = \"open\"",
        "underside = true",
        r"
error: `underside` is a text, but true or false stands here
  --> top.toml:58:13
   |
58 | underside = true
   |             ^^^^
   |
help: put it in quotation marks
",
    );
}

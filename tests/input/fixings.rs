//! Fixings, what they hold, forces that the file gives, and patches.

use crate::said_of;

/// A mount without a fault.
const MOUNT: &str = r#"[patch]
outline = { length = "900 mm", width = "600 mm" }
process = "infusion"
resin = "vinylester"
outer = ["biaxial 600 g/m2 @ 45 deg"]
core = { material = "pvc-foam", density = "80 kg/m3", thickness = "25 mm" }
inner = ["biaxial 600 g/m2 @ 45 deg"]

[[fixing]]
name = "bolts"
hold = "through-bolt"
thread = "m8"
grade = "a4-70"
lubrication = "lubricated-stainless"
washer = { outside = "40 mm", thickness = "4 mm" }

[[gear]]
name = "radar"
mass = "10 kg"
cg_height = "150 mm"
at = ["450 mm", "300 mm"]
footing = { diameter = "250 mm" }
fixings = { fixing = "bolts", circle = 4, diameter = "200 mm" }
given = [{ side = "200 N", height = "300 mm" }]

[service]
speed = "30 kn"
storm = "45 m/s"
trailer = "none"
slam = "3 g"
people = 0
walking = "no-walk"
underside = "open"
sun = "light"
"#;

/// A change of the mount and all that is said of it.
#[track_caller]
fn says(from: &str, to: &str, expected: &str) {
    assert!(MOUNT.contains(from), "{from}");
    assert_eq!(said_of(&MOUNT.replacen(from, to, 1)).trim_end(), expected.trim(), "{from} -> {to}");
}

#[test]
fn the_mount_is_without_fault() {
    assert_eq!(said_of(MOUNT), "");
}

#[test]
fn a_hold_that_cannot_be_read_leaves_its_keys_alone() {
    says(
        r#""through-bolt""#,
        r#""thru-bolt""#,
        r#"
error: `hold` is one of "through-bolt", "tapped-screw", "screw", "blind-insert", "potted-insert", "blind-rivet", "bonded-stud", not "thru-bolt"
  --> top.toml:11:8
   |
11 | hold = "thru-bolt"
   |        ^^^^^^^^^^^
   |
help: did you mean "through-bolt"?
   |
11 - hold = "thru-bolt"
11 + hold = "through-bolt"
   |
"#,
    );
    says(
        r#""through-bolt""#,
        r#""""#,
        r#"
error: `hold` is one of "through-bolt", "tapped-screw", "screw", "blind-insert", "potted-insert", "blind-rivet", "bonded-stud", not ""
  --> top.toml:11:8
   |
11 | hold = ""
   |        ^^
"#,
    );
    says(
        "hold = \"through-bolt\"\n",
        "",
        r#"
error: `hold` is missing in `[[fixing]]`
 --> top.toml:9:1
  |
9 | [[fixing]]
  | ^^^^^^^^^^
  |
help: write for example `hold = "through-bolt"`, or "tapped-screw", "screw", "blind-insert", "potted-insert", "blind-rivet", "bonded-stud"
"#,
    );
    says(
        "hold =",
        "hlod =",
        r#"
error: `hlod` is not a key of `[[fixing]]`
  --> top.toml:11:1
   |
11 | hlod = "through-bolt"
   | ^^^^
   |
help: did you mean `hold`?
   |
11 - hlod = "through-bolt"
11 + hold = "through-bolt"
   |
"#,
    );
}

#[test]
fn a_key_that_another_hold_asks_for_does_nothing_here() {
    says(
        "hold = \"through-bolt\"\nthread = \"m8\"\ngrade = \"a4-70\"\nlubrication = \"lubricated-stainless\"\nwasher = { outside = \"40 mm\", thickness = \"4 mm\" }\n",
        "hold = \"blind-rivet\"\nrivet = \"rivet-al-4-8\"\nthread = \"m8\"\n",
        r#"
error: `thread` is not a key of `[[fixing]]`
  --> top.toml:13:1
   |
13 | thread = "m8"
   | ^^^^^^
   |
help: its keys are name, hold, rivet, torque
"#,
    );
    says(
        "hold = \"through-bolt\"\nthread = \"m8\"\ngrade = \"a4-70\"\nlubrication = \"lubricated-stainless\"\nwasher = { outside = \"40 mm\", thickness = \"4 mm\" }\n",
        "hold = \"blind-insert\"\ninsert = \"m6-stainless\"\nthread = \"m6\"\ngrade = \"a4-70\"\nlubrication = \"anti-seize\"\n",
        r#"
error: `thread` is not a key of `[[fixing]]`
  --> top.toml:13:1
   |
13 | thread = "m6"
   | ^^^^^^
   |
help: its keys are name, hold, insert, grade, lubrication, torque
"#,
    );
    says(
        "hold = \"through-bolt\"\n",
        "hold = \"through-bolt\"\ndepth = \"20 mm\"\n",
        r#"
error: `depth` is not a key of `[[fixing]]`
  --> top.toml:12:1
   |
12 | depth = "20 mm"
   | ^^^^^
   |
help: its keys are name, hold, thread, grade, lubrication, washer, sleeve, torque
"#,
    );
}

#[test]
fn what_a_hold_needs() {
    says(
        "grade = \"a4-70\"\n",
        "",
        r#"
error: `grade` is missing in `[[fixing]]`
 --> top.toml:9:1
  |
9 | [[fixing]]
  | ^^^^^^^^^^
  |
help: write for example `grade = "a4-70"`
"#,
    );
    says(
        "thread =",
        "thred =",
        r#"
error: `thred` is not a key of `[[fixing]]`
  --> top.toml:12:1
   |
12 | thred = "m8"
   | ^^^^^
   |
help: did you mean `thread`?
   |
12 | thread = "m8"
   |     +
"#,
    );
    says(
        r#""m8""#,
        r#""m7""#,
        r#"
error: no thread is called `m7`
  --> top.toml:12:10
   |
12 | thread = "m7"
   |          ^^^^
   |
help: did you mean one of "m4", "m5", "m6", "m8"?
"#,
    );
    says(
        r#""a4-70""#,
        r#""""#,
        r#"
error: no fastener is called ``
  --> top.toml:13:9
   |
13 | grade = ""
   |         ^^
   |
help: the names are a2-50, a2-70, a2-80, a4-50, a4-70, a4-80, aluminium-2024-t4, sae-2, sae-5, sae-8, stainless-18-8, steel-8-8
"#,
    );
    says(
        r#"{ outside = "40 mm", thickness"#,
        r#"{ diameter = "40 mm", thickness"#,
        r#"
error: `diameter` is not a key of `washer`, and `outside` is missing
  --> top.toml:15:12
   |
15 | washer = { diameter = "40 mm", thickness = "4 mm" }
   |            ^^^^^^^^
   |
help: write for example `outside = "24 mm"`; its keys are outside, thickness
"#,
    );
    says(
        r#""40 mm""#,
        r#""8 mm""#,
        r#"
error: the washer falls through the hole of its bolt
  --> top.toml:15:22
   |
15 | washer = { outside = "8 mm", thickness = "4 mm" }
   |                      ^^^^^^
   |
help: the hole is 9.00 mm (0.354 in)
"#,
    );
    says(
        "hold = \"through-bolt\"\n",
        "hold = \"through-bolt\"\nsleeve = { outside = \"10 mm\", wall = \"2 mm\", alloy = \"6061-t6\" }\n",
        r#"
error: the bolt does not go through the sleeve
  --> top.toml:12:22
   |
12 | sleeve = { outside = "10 mm", wall = "2 mm", alloy = "6061-t6" }
   |                      ^^^^^^^
   |
help: the sleeve is 6.00 mm (0.236 in) inside, the bolt 8.00 mm (0.315 in)
"#,
    );
    says(
        "hold = \"through-bolt\"\nthread = \"m8\"\ngrade = \"a4-70\"\nlubrication = \"lubricated-stainless\"\nwasher = { outside = \"40 mm\", thickness = \"4 mm\" }\n",
        "hold = \"screw\"\nscrew = \"wood-10\"\ngrade = \"a4-50\"\ndepth = \"40 mm\"\n",
        r#"
error: the fixing goes deeper than the panel is thick
  --> top.toml:14:9
   |
14 | depth = "40 mm"
   |         ^^^^^^^
   |
help: the panel is 1.025 in (26.04 mm) thick: go through it with `hold = "through-bolt"`
"#,
    );
    says(
        "hold = \"through-bolt\"\nthread = \"m8\"\ngrade = \"a4-70\"\nlubrication = \"lubricated-stainless\"\nwasher = { outside = \"40 mm\", thickness = \"4 mm\" }\n",
        "hold = \"screw\"\nscrew = \"wood-10\"\ngrade = \"a4-50\"\ndepth = nan\n",
        r#"
error: a length must be a finite number
  --> top.toml:14:9
   |
14 | depth = nan
   |         ^^^
   |
help: write a number and a unit, for example `"12 mm"` or `"12 in"`
"#,
    );
    says(
        "hold = \"through-bolt\"\n",
        "hold = \"through-bolt\"\ntorque = \"4 N\"\n",
        r#"
error: `N` is a unit of force, but a torque is needed here
  --> top.toml:12:13
   |
12 | torque = "4 N"
   |             ^
   |
help: units of torque: lbf ft, lbf in, N m, kN m, N mm
"#,
    );
}

#[test]
fn names_of_fixings() {
    says(
        r#"name = "bolts""#,
        r#"name = """#,
        r#"
error: a fixing has a name, and this is an empty text
  --> top.toml:10:8
   |
10 | name = ""
   |        ^^
   |
help: write for example `name = "radar bolts"`
"#,
    );
    says(
        "name = \"bolts\"\n",
        "",
        r#"
error: `name` is missing in `[[fixing]]`
 --> top.toml:9:1
  |
9 | [[fixing]]
  | ^^^^^^^^^^
  |
help: write for example `name = "radar bolts"`
"#,
    );
    says(
        "[[fixing]]",
        "[fixing]",
        r"
error: `fixing` is a list of tables, but a table stands here
 --> top.toml:9:1
  |
9 | [fixing]
  | ^^^^^^^^
  |
help: write a header `[[fixing]]` with two pairs of brackets for each
",
    );
    says(
        "[[fixing]]",
        "[[fixing]]\nname = \"bolts\"\nhold = \"blind-rivet\"\nrivet = \"rivet-al-4-8\"\n\n[[fixing]]",
        r#"
error: there are two fixings called `bolts`
  --> top.toml:15:8
   |
15 | name = "bolts"
   |        ^^^^^^^
"#,
    );
    says(
        r#"fixing = "bolts""#,
        r#"fixing = "bolt""#,
        r#"
error: no `[[fixing]]` is called `bolt`
  --> top.toml:23:22
   |
23 | fixings = { fixing = "bolt", circle = 4, diameter = "200 mm" }
   |                      ^^^^^^
   |
help: did you mean "bolts"?
   |
23 | fixings = { fixing = "bolts", circle = 4, diameter = "200 mm" }
   |                           +
"#,
    );
}

#[test]
fn how_many_and_where() {
    says(
        r#"circle = 4, diameter = "200 mm""#,
        "",
        r#"
error: `fixings` does not say where its fixings are
  --> top.toml:23:1
   |
23 | fixings = { fixing = "bolts",  }
   | ^^^^^^^
   |
help: write `circle = 4` with `diameter`, `row = 3` with `pitch`, `grid = [2, 3]` with `pitch = ["3 in", "4 in"]`, or `points = [["-2 in", "0 in"], ["2 in", "0 in"]]`
"#,
    );
    says(
        "circle = 4",
        "circle = 0",
        r#"
error: `circle` is a whole number from 1 to 400
  --> top.toml:23:40
   |
23 | fixings = { fixing = "bolts", circle = 0, diameter = "200 mm" }
   |                                        ^
   |
help: it is 1 at the least
"#,
    );
    says(
        "circle = 4",
        r#"circle = "4""#,
        r#"
error: `circle` is a whole number from 1 to 400
  --> top.toml:23:40
   |
23 | fixings = { fixing = "bolts", circle = "4", diameter = "200 mm" }
   |                                        ^^^
   |
help: a number stands without quotation marks
   |
23 - fixings = { fixing = "bolts", circle = "4", diameter = "200 mm" }
23 + fixings = { fixing = "bolts", circle = 4, diameter = "200 mm" }
   |
"#,
    );
    says(
        "circle = 4",
        r#"circle = "none""#,
        r#"
error: `circle` is a whole number from 1 to 400
  --> top.toml:23:40
   |
23 | fixings = { fixing = "bolts", circle = "none", diameter = "200 mm" }
   |                                        ^^^^^^
   |
help: write for example `circle = 1`
"#,
    );
    says(
        "circle = 4",
        "circle = 401",
        r#"
error: `circle` is a whole number from 1 to 400
  --> top.toml:23:40
   |
23 | fixings = { fixing = "bolts", circle = 401, diameter = "200 mm" }
   |                                        ^^^
   |
help: it is 400 at the most
"#,
    );
    says(
        r#"circle = 4, diameter = "200 mm""#,
        r#"circle = 4, row = 2, diameter = "200 mm""#,
        r#"
error: `row` stands beside `circle`: the fixings stand in one pattern
  --> top.toml:23:49
   |
23 | fixings = { fixing = "bolts", circle = 4, row = 2, diameter = "200 mm" }
   |                                                 ^
   |
help: leave out one of the two, or give all places as `points`
"#,
    );
    says(
        r#"circle = 4, diameter = "200 mm""#,
        r#"row = 0, pitch = "50 mm""#,
        r#"
error: `row` is a whole number from 1 to 400
  --> top.toml:23:37
   |
23 | fixings = { fixing = "bolts", row = 0, pitch = "50 mm" }
   |                                     ^
   |
help: it is 1 at the least
"#,
    );
    says(
        r#"circle = 4, diameter = "200 mm""#,
        r#"grid = [400, 400], pitch = ["1 mm", "1 mm"]"#,
        r#"
error: that makes 160000 fixings in one grid
  --> top.toml:23:38
   |
23 | fixings = { fixing = "bolts", grid = [400, 400], pitch = ["1 mm", "1 mm"] }
   |                                      ^^^^^^^^^^
   |
help: at most 400
"#,
    );
    says(
        r#"circle = 4, diameter = "200 mm""#,
        r#"grid = [2, 2], pitch = ["1 mm"]"#,
        r#"
error: `fixings` has a grid, whose pitch is two lengths
  --> top.toml:23:1
   |
23 | fixings = { fixing = "bolts", grid = [2, 2], pitch = ["1 mm"] }
   | ^^^^^^^
   |
help: write pitch = ["3 in", "4 in"]: along the length, along the width
"#,
    );
    says(
        r#"circle = 4, diameter = "200 mm""#,
        "points = []",
        r#"
error: `points` is a list of 1 to 400 places, not 0
  --> top.toml:23:40
   |
23 | fixings = { fixing = "bolts", points = [] }
   |                                        ^^
   |
help: write for example `points = [["-2 in", "0 in"], ["2 in", "0 in"]]`
"#,
    );
    says(
        r#"circle = 4, diameter = "200 mm""#,
        r#"points = [["0 mm", "1 in"], ["0 mm", "25.4 mm"]]"#,
        r#"
error: two fixings stand in one place
  --> top.toml:23:59
   |
23 | fixings = { fixing = "bolts", points = [["0 mm", "1 in"], ["0 mm", "25.4 mm"]] }
   |                                                           ^^^^^^^^^^^^^^^^^^^
"#,
    );
    says(
        r#"circle = 4, diameter = "200 mm""#,
        r#"points = [["0 mm", "50 mm"], ["0 mm", "-50 mm"]], turned = "30 deg""#,
        r#"
error: `turned` is not a key of `fixings`
  --> top.toml:23:81
   |
23 | fixings = { fixing = "bolts", points = [["0 mm", "50 mm"], ["0 mm", "-50 mm"]], turned = "30 deg" }
   |                                                                                 ^^^^^^
   |
help: its keys are fixing, circle, row, grid, points, clamped, stiff, to_body, to_edge
"#,
    );
    says(
        r#""200 mm" }"#,
        r#""300 mm" }"#,
        r#"
error: a fixing stands beside the footing that it holds
  --> top.toml:23:11
   |
23 | fixings = { fixing = "bolts", circle = 4, diameter = "300 mm" }
   |           ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
   |
help: the footing measures 9.843 in (250 mm) along the length and 9.843 in (250 mm) across: make it as large as the foot really is
"#,
    );
    says(
        r#"at = ["450 mm""#,
        r#"at = ["870 mm""#,
        r#"
error: the fixing at 38.19 in (970 mm), 11.81 in (300 mm) does not lie within the panel
  --> top.toml:23:11
   |
23 | fixings = { fixing = "bolts", circle = 4, diameter = "200 mm" }
   |           ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
   |
help: the outline runs from 0 to 35.43 in (900 mm) along the length and from 0 to 23.62 in (600 mm) across
"#,
    );
    says(
        r#"fixings = { fixing = "bolts", circle = 4, diameter = "200 mm" }"#,
        r#"fixings = "bolts""#,
        r#"
error: `fixings` is a table, but a text stands here
  --> top.toml:23:11
   |
23 | fixings = "bolts"
   |           ^^^^^^^
   |
help: write `fixings = { … }`
"#,
    );
}

#[test]
fn a_foot_is_a_disc_or_a_rectangle() {
    says(
        r#"{ diameter = "250 mm" }"#,
        "{}",
        r#"
error: `footing` is a disc or a rectangle
  --> top.toml:22:1
   |
22 | footing = {}
   | ^^^^^^^
   |
help: write `{ diameter = "9 in" }` or `{ length = "9 in", width = "4 in" }`
"#,
    );
    says(
        r#"{ diameter = "250 mm" }"#,
        r#"{ diamter = "250 mm" }"#,
        r#"
error: `diamter` is not a key of `footing`
  --> top.toml:22:13
   |
22 | footing = { diamter = "250 mm" }
   |             ^^^^^^^
   |
help: did you mean `diameter`?
   |
22 | footing = { diameter = "250 mm" }
   |                 +
"#,
    );
    says(
        r#"{ diameter = "250 mm" }"#,
        r#"{ diameter = "250" }"#,
        r#"
error: a length needs a unit
  --> top.toml:22:25
   |
22 | footing = { diameter = "250" }
   |                         ^^^
   |
help: did you mean `250 mm` or `250 in`?
"#,
    );
    says(
        r#"{ diameter = "250 mm" }"#,
        r#"{ length = "250 mm" }"#,
        r#"
error: `width` is missing in `footing`
  --> top.toml:22:1
   |
22 | footing = { length = "250 mm" }
   | ^^^^^^^
   |
help: write for example `width = "4 in"`
"#,
    );
    says(
        r#"{ diameter = "250 mm" }"#,
        r#"{ length = "250 mm", widht = "250 mm" }"#,
        r#"
error: `widht` is not a key of `footing`
  --> top.toml:22:32
   |
22 | footing = { length = "250 mm", widht = "250 mm" }
   |                                ^^^^^
   |
help: did you mean `width`?
   |
22 - footing = { length = "250 mm", widht = "250 mm" }
22 + footing = { length = "250 mm", width = "250 mm" }
   |
"#,
    );
    says(
        r#"{ diameter = "250 mm" }"#,
        r#"{ diameter = "250 mm", width = "250 mm" }"#,
        r#"
error: `footing` is a disc or a rectangle
  --> top.toml:22:1
   |
22 | footing = { diameter = "250 mm", width = "250 mm" }
   | ^^^^^^^
   |
help: write `{ diameter = "9 in" }` or `{ length = "9 in", width = "4 in" }`
"#,
    );
}

#[test]
fn given_forces() {
    says(
        r#"{ side = "200 N", height = "300 mm" }"#,
        "{}",
        r"
error: `[[given]]` does not say what acts
  --> top.toml:24:10
   |
24 | given = [{}]
   |          ^^
   |
help: write `up`, `side` with `height`, or `twist`
",
    );
    says(
        r#"{ side = "200 N", height = "300 mm" }"#,
        r#"{ side = "200 N" }"#,
        r#"
error: `height` is missing in `[[given]]`
  --> top.toml:24:10
   |
24 | given = [{ side = "200 N" }]
   |          ^^^^^^^^^^^^^^^^^^
   |
help: write for example `height = "12 in"`
"#,
    );
    says(
        r#"{ side = "200 N", height = "300 mm" }"#,
        r#"{ up = "200 N", height = "300 mm" }"#,
        r#"
error: `height` is where `side` acts, and there is no `side`
  --> top.toml:24:35
   |
24 | given = [{ up = "200 N", height = "300 mm" }]
   |                                   ^^^^^^^^
   |
help: write `side` as well, or leave `height` out
"#,
    );
    says(
        r#""200 N""#,
        r#""-200 N""#,
        r#"
error: `side` cannot be negative
  --> top.toml:24:20
   |
24 | given = [{ side = "-200 N", height = "300 mm" }]
   |                    ^^^^^^
   |
help: did you mean `200 N`?
   |
24 - given = [{ side = "-200 N", height = "300 mm" }]
24 + given = [{ side = "200 N", height = "300 mm" }]
   |
"#,
    );
    says(
        r#""200 N""#,
        r#""200 kg""#,
        r#"
error: `kg` is a unit of mass, but a force is needed here
  --> top.toml:24:24
   |
24 | given = [{ side = "200 kg", height = "300 mm" }]
   |                        ^^
   |
help: did you mean `200 kgf`?
   |
24 | given = [{ side = "200 kgf", height = "300 mm" }]
   |                          +
"#,
    );
    says(
        r#"[{ side = "200 N", height = "300 mm" }]"#,
        r#"{ up = "200 N" }"#,
        r#"
error: `given` is a list of tables, but a table stands here
  --> top.toml:24:9
   |
24 | given = { up = "200 N" }
   |         ^^^^^^^^^^^^^^^^
   |
help: write `given = [{ … }]`
"#,
    );
}

#[test]
fn a_patch_is_a_mount_alone() {
    says(
        "[patch]",
        "[pach]",
        r"
error: `pach` is not a key of the file
 --> top.toml:1:2
  |
1 | [pach]
  |  ^^^^
  |
help: did you mean `patch`?
  |
1 | [patch]
  |    +
",
    );
    says(
        "[patch]",
        "[top]\noutline = { length = \"900 mm\", width = \"600 mm\" }\nprocess = \"infusion\"\nresin = \"vinylester\"\nouter = [\"biaxial 600 g/m2 @ 45 deg\"]\ncore = { material = \"pvc-foam\", density = \"80 kg/m3\", thickness = \"25 mm\" }\ninner = [\"biaxial 600 g/m2 @ 45 deg\"]\n\n[patch]",
        r"
error: a file has a `[top]` or a `[patch]`, not both
 --> top.toml:9:1
  |
9 | [patch]
  | ^^^^^^^
  |
help: `[patch]` is for a mount alone, with nothing known of the top round it
",
    );
    says(
        "fixings = { fixing = \"bolts\", circle = 4, diameter = \"200 mm\" }\n",
        "",
        r#"
error: a patch has nothing to look at: no `[[gear]]` says its `fixings`
--> top.toml
 |
help: write `fixings = { fixing = "radar bolts", circle = 4, diameter = "7 in" }` in its `[[gear]]`
"#,
    );
    says(
        "[[gear]]",
        "[[pipe]]\nname = \"rail\"\noutside = \"50 mm\"\nalong = [[\"0 mm\", \"100 mm\"], [\"900 mm\", \"100 mm\"]]\n\n[[gear]]",
        r"
error: `[[pipe]]` stands in a file about a patch
  --> top.toml:17:1
   |
17 | [[pipe]]
   | ^^^^^^^^
   |
help: a patch knows of no frame: describe the whole top with `[top]`
",
    );
    says(
        r#""900 mm""#,
        r#""90 mm""#,
        r#"
error: no patch measures 3.543 in (90.0 mm)
 --> top.toml:2:22
  |
2 | outline = { length = "90 mm", width = "600 mm" }
  |                      ^^^^^^^
  |
help: a patch is 0.1 m to 20 m long and wide: is the unit right?
"#,
    );
}

#[test]
fn sizes_that_no_shop_has_and_keys_that_a_patch_has_not() {
    says(
        "thickness = \"4 mm\"",
        "thickness = \"4 in\"",
        r#"
error: the washer is thicker than a quarter of its width
  --> top.toml:15:43
   |
15 | washer = { outside = "40 mm", thickness = "4 in" }
   |                                           ^^^^^^
   |
help: is the unit right?
"#,
    );
    says(
        "diameter = \"200 mm\" }",
        "diameter = \"200 mm\", clamped = \"8 ft\" }",
        r#"
error: no foot is as thick as that
  --> top.toml:23:74
   |
23 | fixings = { fixing = "bolts", circle = 4, diameter = "200 mm", clamped = "8 ft" }
   |                                                                          ^^^^^^
   |
help: `clamped` is the thickness of what a head or a nut presses on the panel, 100 mm at the most
"#,
    );
    says(
        "hold = \"through-bolt\"\nthread = \"m8\"\ngrade = \"a4-70\"\nlubrication = \"lubricated-stainless\"\nwasher = { outside = \"40 mm\", thickness = \"4 mm\" }\n",
        "hold = \"screw\"\nscrew = \"wood-12\"\ngrade = \"a4-50\"\ndepth = \"20 mm\"\ntorque = \"3 N.m\"\n",
        r#"
error: a screw is turned home by hand: no table says what pull its torque makes
  --> top.toml:15:10
   |
15 | torque = "3 N.m"
   |          ^^^^^^^
   |
help: leave `torque` out
"#,
    );
    let crowned = MOUNT.replacen("process", "crown = \"20 mm\"\nprocess", 1);
    assert!(said_of(&crowned).contains("`crown` is not a key of `patch`"), "{}", said_of(&crowned));
}

#[test]
fn a_misspelt_pattern_is_one_mistake() {
    says(
        "circle = 4",
        "circel = 4",
        r#"
error: `circel` is not a key of `fixings`
  --> top.toml:23:31
   |
23 | fixings = { fixing = "bolts", circel = 4, diameter = "200 mm" }
   |                               ^^^^^^
   |
help: did you mean `circle`?
   |
23 - fixings = { fixing = "bolts", circel = 4, diameter = "200 mm" }
23 + fixings = { fixing = "bolts", circle = 4, diameter = "200 mm" }
   |
"#,
    );
}

//! `[choose]`: what one may lay up.

use skinspan::{
    choice::{Order, Space},
    input::read_choice,
    top::Top,
    units::{Length, Mass, parse},
};

use uom::si::length::inch;

use crate::{BASE, TABLE, changed, named, rendered, said_of};

/// What is said of the base design with a room to choose from; it begins in line 61.
#[track_caller]
fn says(room: &str, expected: &str) {
    assert_eq!(said_of(&with(room)).trim_end(), expected.trim(), "{room}");
}

fn with(room: &str) -> String {
    format!("{BASE}\n[choose]\n{room}\n")
}

fn space(text: &str) -> (Top, Space) {
    read_choice(&named("top.toml", text), &TABLE, None).unwrap_or_else(|files| panic!("{}", rendered(&files)))
}

fn refused(text: &str) -> String {
    read_choice(&named("top.toml", text), &TABLE, None).map_or_else(|files| rendered(&files), |_| String::new())
}

#[test]
fn names_and_densities_that_there_are_not() {
    // What the densities are held against is not known: that is one mistake, not two.
    says(
        "cores = [\"pvc-faom\", \"san-foam\"]\ndensities = [\"900 lb/ft3\"]",
        r#"
error: no core is called `pvc-faom`
  --> top.toml:62:10
   |
62 | cores = ["pvc-faom", "san-foam"]
   |          ^^^^^^^^^^
   |
help: did you mean "pvc-foam"?
   |
62 - cores = ["pvc-faom", "san-foam"]
62 + cores = ["pvc-foam", "san-foam"]
   |
"#,
    );
    says(
        "cores = [\"pvc-foam\", \"san-foam\"]\ndensities = [\"80 kg/m3\", \"40 lb/ft3\"]",
        r#"
error: no core that may be chosen comes in 40.0 lb/ft³ (640.7 kg/m³)
  --> top.toml:63:26
   |
63 | densities = ["80 kg/m3", "40 lb/ft3"]
   |                          ^^^^^^^^^^^
   |
help: the material table knows pvc-foam from 3.00 lb/ft³ (48.0 kg/m³) to 15.61 lb/ft³ (250 kg/m³), san-foam from 4.25 lb/ft³ (68.0 kg/m³) to 12.49 lb/ft³ (200 kg/m³)
"#,
    );
    // One of them is enough.
    says("cores = [\"pvc-foam\", \"san-foam\"]\ndensities = [\"3 lb/ft3\"]", "");
}

#[test]
fn lists_that_are_empty() {
    says(
        "cores = []\ndensities = []\nthicknesses = []",
        r#"
error: `cores` is empty: there is nothing to choose from
  --> top.toml:62:9
   |
62 | cores = []
   |         ^^
   |
help: name one, `cores = ["pvc-foam"]`, or leave `cores` out for all that the table has

error: `densities` is empty: there is nothing to choose from
  --> top.toml:63:13
   |
63 | densities = []
   |             ^^
   |
help: write for example `densities = ["5 lb/ft3", "80 kg/m3"]`, or leave `densities` out for what is sold

error: `thicknesses` is empty: there is nothing to choose from
  --> top.toml:64:15
   |
64 | thicknesses = []
   |               ^^
   |
help: write for example `thicknesses = ["3/4 in", "1 in"]`, or leave `thicknesses` out for what is sold
"#,
    );
    says(
        "outer = []\ninner = [[]]",
        r#"
error: `outer` is empty: there is nothing to choose from
  --> top.toml:62:9
   |
62 | outer = []
   |         ^^
   |
help: write for example `outer = [["mat 1.5 oz/ft2", "biaxial 600 g/m2 @ 45 deg"], ["biaxial 900 g/m2 @ 45 deg"]]`, or leave `outer` out for the outer skin of `[top]` with fewer and more layers

error: the inner skin is empty
  --> top.toml:63:10
   |
63 | inner = [[]]
   |          ^^
   |
help: add a fabric such as "biaxial 600 g/m2 @ 45 deg"
"#,
    );
}

#[test]
fn skins_that_cannot_be_read() {
    says(
        "outer = [\"mat 1.5 oz/ft2\", \"biaxial 600 g/m2 @ 45 deg\"]",
        r#"
error: `outer` is a list of lists, but a text stands here
  --> top.toml:62:10
   |
62 | outer = ["mat 1.5 oz/ft2", "biaxial 600 g/m2 @ 45 deg"]
   |          ^^^^^^^^^^^^^^^^
   |
help: write `outer = [["mat 1.5 oz/ft2", "biaxial 600 g/m2 @ 45 deg"], ["biaxial 900 g/m2 @ 45 deg"]]`
"#,
    );
    says(
        "inner = [[\"gelcoat\"], [\"biaxail 18 oz/yd2 @ 0 deg\"], [3]]",
        r#"
error: the inner skin is of coats alone, and a coat carries nothing
  --> top.toml:62:10
   |
62 | inner = [["gelcoat"], ["biaxail 18 oz/yd2 @ 0 deg"], [3]]
   |          ^^^^^^^^^^^
   |
help: add a fabric such as "biaxial 600 g/m2 @ 45 deg"

error: no fabric or coat is called `biaxail`
  --> top.toml:62:25
   |
62 | inner = [["gelcoat"], ["biaxail 18 oz/yd2 @ 0 deg"], [3]]
   |                         ^^^^^^^
   |
help: did you mean `biaxial`?
   |
62 - inner = [["gelcoat"], ["biaxail 18 oz/yd2 @ 0 deg"], [3]]
62 + inner = [["gelcoat"], ["biaxial 18 oz/yd2 @ 0 deg"], [3]]
   |

error: a text is due here, not a bare number
  --> top.toml:62:55
   |
62 | inner = [["gelcoat"], ["biaxail 18 oz/yd2 @ 0 deg"], [3]]
   |                                                       ^
   |
help: put it in quotation marks
"#,
    );
}

#[test]
fn sizes_words_and_keys_that_cannot_be() {
    says(
        "thicknesses = [\"1 in\", \"25 ft\", \"0 in\"]",
        r#"
error: `thicknesses` is 300 in (7620 mm), more than the core of a top ever is
  --> top.toml:62:24
   |
62 | thicknesses = ["1 in", "25 ft", "0 in"]
   |                        ^^^^^^^
   |
help: it is from 0.079 in (2.00 mm) to 5.906 in (150 mm) here; did you mean `25 mm`?
   |
62 - thicknesses = ["1 in", "25 ft", "0 in"]
62 + thicknesses = ["1 in", "25 mm", "0 in"]
   |

error: `thicknesses` cannot be zero
  --> top.toml:62:34
   |
62 | thicknesses = ["1 in", "25 ft", "0 in"]
   |                                  ^^^^
   |
help: write more than zero
"#,
    );
    says(
        "order = \"wieght\"\nmost-thickness = \"2 in\"\nbudget = 1",
        r#"
error: `order` is one of "weight", "thickness", "sag", "cost", not "wieght"
  --> top.toml:62:9
   |
62 | order = "wieght"
   |         ^^^^^^^^
   |
help: did you mean "weight"?
   |
62 - order = "wieght"
62 + order = "weight"
   |

error: `most-thickness` is not a key of `choose`
  --> top.toml:63:1
   |
63 | most-thickness = "2 in"
   | ^^^^^^^^^^^^^^
   |
help: did you mean `most_thickness`?
   |
63 - most-thickness = "2 in"
63 + most_thickness = "2 in"
   |

error: `budget` is not a key of `choose`
  --> top.toml:64:1
   |
64 | budget = 1
   | ^^^^^^
   |
help: its keys are cores, densities, thicknesses, outer, inner, backing, pipes, overhangs, prices, order, most_cost, most_thickness, most_weight
"#,
    );
    assert_eq!(
        said_of(&format!("choose = 3\n{BASE}")).trim_end(),
        r"
error: `choose` is a table, but a bare number stands here
 --> top.toml:1:10
  |
1 | choose = 3
  |          ^
  |
help: write `choose = { … }` or a header `[choose]`
"
        .trim()
    );
}

#[test]
fn limits_that_nothing_keeps() {
    says(
        "most_thickness = \"1/4 in\"\nmost_weight = \"20 lb\"\nthicknesses = [\"1/2 in\"]",
        r#"
error: nothing that may be chosen is as thin as 0.250 in (6.35 mm)
  --> top.toml:62:18
   |
62 | most_thickness = "1/4 in"
   |                  ^^^^^^^^
   |
help: the thinnest of all is 0.582 in (14.79 mm): allow more, or offer a thinner core and skins

error: nothing that may be chosen is as light as 20.0 lb (9.07 kg)
  --> top.toml:63:15
   |
63 | most_weight = "20 lb"
   |               ^^^^^^^
   |
help: the lightest of all is 63.59 lb (28.85 kg): allow more, or offer a lighter core and skins
"#,
    );
    // What one of all keeps is a limit that can be kept.
    says("most_thickness = \"0.583 in\"\nmost_weight = \"63.6 lb\"\nthicknesses = [\"1/2 in\"]", "");
}

/// The thinnest and the lightest are those of all candidates, looked at one by one.
#[test]
fn the_least_is_that_of_all() {
    let room =
        "cores = [\"pvc-foam\", \"balsa\"]\nthicknesses = [\"1 in\", \"1/2 in\"]\nouter = [[\"mat 1.5 oz/ft2\"]]";
    let (_, space) = space(&with(room));
    let all = (0..space.len()).map(|number| space.top(space.candidate(number)));
    let sizes: Vec<(Mass, Length)> = all.map(|top| (top.weight().bare, top.thickness())).collect();
    let (mass, thickness, cost) = space.least();
    assert!(cost.is_none());
    let lightest = sizes.iter().map(|size| size.0.value).fold(f64::INFINITY, f64::min);
    let thinnest = sizes.iter().map(|size| size.1.value).fold(f64::INFINITY, f64::min);
    assert!((mass.value - lightest).abs() < 1e-9 * lightest, "{} {lightest}", mass.value);
    assert!((thickness.value - thinnest).abs() < 1e-9 * thinnest, "{} {thinnest}", thickness.value);
}

#[test]
fn pipes_and_backing_in_other_ways() {
    let room = "pipes = [2, 3]\noverhangs = [\"10 in\", \"12 in\"]\ncores = [\"pvc-foam\"]\nthicknesses = [\"1 in\"]\n\
                [[choose.backing]]\nname = \"strip\"\nwidths = [\"3 in\", \"4 in\"]\nboards = [\"pu-board-glass-320\"]";
    let (top, space) = space(&with(room));
    // 2 pipes, 12 in and 4 in are the file's own: 3 pipes, 10 in, 3 in, another board, each with each other.
    assert_eq!(space.arrangements.len(), 16);
    assert!(space.arrangements[0].changes.is_empty() && space.arrangements[0].top == top);
    let most = space.arrangements.iter().max_by_key(|known| known.changes.len()).unwrap();
    assert_eq!(most.changes.len(), 4);
    let places = most.top.supports.iter().map(|pipe| pipe.along.points()[0].y.get::<inch>());
    assert!(places.zip([10.0, 36.0, 62.0]).all(|(place, due)| (place - due).abs() < 1e-9));
    assert_eq!(most.top.supports.len(), 3);
    assert_eq!(most.top.backings[0].board.id, "pu-board-glass-320");
    assert!((most.top.backings[0].width.get::<inch>() - 3.0).abs() < 1e-9);
    assert_eq!(space.len(), 16 * space.cores.len() * space.outer.len() * space.inner.len());
    // Every number is a candidate of its own.
    let all: std::collections::BTreeSet<_> = (0..space.len()).map(|number| space.candidate(number)).collect();
    assert_eq!(all.len(), space.len());
}

#[test]
fn pipes_and_backing_that_cannot_be() {
    says(
        "pipes = [1]",
        r"
error: a number of pipes is a whole number from 2 to 20
  --> top.toml:62:10
   |
62 | pipes = [1]
   |          ^
   |
help: write for example `pipes = [3, 4]`: they are spaced evenly between the outer two
",
    );
    let said = refused(&with("overhangs = [\"50 in\"]"));
    assert!(
        said.contains("the outer pipes cannot stand there: they would be off the top, or nearer than 50 mm"),
        "{said}"
    );
    assert!(said.contains("--> top.toml:62:14"), "{said}");
    let said = refused(&with("[[choose.backing]]\nname = \"stripe\"\nwidths = [\"3 in\"]"));
    assert!(said.contains("no backing is called `stripe`") && said.contains("did you mean `strip`?"), "{said}");
    let said = refused(&with("[[choose.backing]]\nname = \"strip\"\nwidths = [\"30 in\"]"));
    assert!(said.contains("the backing cannot be 30.0 in (762 mm) wide: it would reach beyond the outline"), "{said}");
    let said = refused(&with("[[choose.backing]]\nname = \"strip\"\nboards = [\"plywood-fur\"]"));
    assert!(said.contains("no board is called `plywood-fur`"), "{said}");
}

#[test]
fn prices_of_all_that_may_be_chosen() {
    let prices = "[choose.prices]\ncurrency = \"USD\"\nresin = \"2 / kg\"\nfabric = \"3 per kg\"\n\
                  cores = { pvc-foam = \"1000 / m3\" }\nboards = { plywood-fir = \"1500 / m3\" }";
    let room = format!("cores = [\"pvc-foam\"]\nthicknesses = [\"1 in\"]\norder = \"cost\"\nmost_cost = 800\n{prices}");
    let (top, space) = space(&with(&room));
    let (_, _, cost) = space.least();
    let cheapest = (0..space.len())
        .map(|number| space.prices.as_ref().unwrap().cost(&space.top(space.candidate(number))).unwrap().amount())
        .fold(f64::INFINITY, f64::min);
    assert!((cost.unwrap().amount() / cheapest - 1.0).abs() < 1e-9, "{cost:?} {cheapest}");
    let dear = said_of(&with(&room.replace("most_cost = 800", "most_cost = 8")));
    assert!(dear.contains("error: nothing that may be chosen costs as little as 8 USD"), "{dear}");
    assert!(dear.contains(&format!("the cheapest of all costs {cheapest:.2} USD: allow more")), "{dear}");
    let known = space.prices.unwrap();
    let fibre: f64 =
        [&top.outer, &top.inner].iter().flat_map(|skin| skin.layers()).map(|layer| layer.fibre.value).sum();
    let layers: f64 = [&top.outer, &top.inner].iter().map(|skin| skin.mass().value).sum();
    let uptake = 2.0 * top.core.material.resin_uptake.value.value;
    // 9 ft by 6 ft with four corners of 1 ft radius; a strip of 4 in by 8 ft.
    let (ft, thick) = (0.3048, 0.0254);
    let (area, strip) = ((54.0 - (4.0 - std::f64::consts::PI)) * ft * ft, 4.0 * thick * 8.0 * ft);
    // A set-back of 1.5 in along the rim: two times 7 ft and 4 ft, and a whole circle of 1 ft radius.
    let edge = 1.5 * thick * (22.0 + std::f64::consts::TAU) * ft;
    let by_hand = area * (3.0 * fibre + 2.0 * (layers - fibre + uptake))
        + thick * (1000.0 * (area - edge - strip) + 1500.0 * strip);
    assert!((known.cost(&top).unwrap().amount() / by_hand - 1.0).abs() < 1e-9);
    // Pipes by their length, where they have a price: two of 8 ft.
    let pipes = self::space(&with(&format!("{room}\npipe = \"30 / m\""))).1.prices.unwrap();
    let length: f64 = top.supports.iter().map(|pipe| pipe.along.length().value).sum();
    assert!((pipes.cost(&top).unwrap().amount() - by_hand - 30.0 * length).abs() < 1e-9 && length > 2.0, "{length}");
    says(
        &format!("{room}\npipe = \"30 / m2\""),
        r#"
error: the price of `pipe` is a number of the currency for so much of it
  --> top.toml:72:8
   |
72 | pipe = "30 / m2"
   |        ^^^^^^^^^
   |
help: write for example "30 / m" or "9.00 / ft"
"#,
    );
    says(
        &room.replace("boards", "board").replace("2 / kg", "2 / km"),
        r#"
error: the price of `resin` is a number of the currency for so much of it
  --> top.toml:68:9
   |
68 | resin = "2 / km"
   |         ^^^^^^^^
   |
help: write for example "4.20 / kg" or "1.90 / lb"

error: `board` is not a key of `prices`
  --> top.toml:71:1
   |
71 | board = { plywood-fir = "1500 / m3" }
   | ^^^^^
   |
help: did you mean `boards`?
   |
71 | boards = { plywood-fir = "1500 / m3" }
   |      +
"#,
    );
    let without = refused(&with(&room.replace("cores = [\"pvc-foam\"]\n", "cores = [\"san-foam\"]\n")));
    assert!(without.contains("there is no price of `san-foam`, which may be chosen"), "{without}");
    let unpriced = refused(&with("order = \"cost\""));
    assert!(unpriced.contains("what a top costs is not known: the file has no prices"), "{unpriced}");
}

#[test]
fn no_number_of_pipes_is_none_to_choose_from() {
    let none = said_of(&with("pipes = []"));
    assert!(none.contains("error: no number of pipes is given") && none.contains("leave `pipes` out"), "{none}");
}

#[test]
fn a_patch_has_nothing_to_choose() {
    let patch = include_str!("../../examples/radar-pad.toml");
    let cause =
        "error: a patch has nothing to choose: the top round it, which core and skins carry, is not in the file\n";
    let help =
        "help: describe the whole top in `[top]`, with what it stands on; `skinspan check` looks at a patch as it is";
    assert_eq!(said_of(patch), "");
    let bare = refused(patch);
    assert!(bare.starts_with(cause) && bare.contains(help) && bare.contains("--> top.toml\n"), "{bare}");
    // Its keys are not what is wrong with it.
    for said in [said_of, refused].map(|said| said(&format!("{patch}\n[choose]\ncore = 3\n"))) {
        assert!(said.starts_with(cause) && said.matches("error").count() == 1, "{said}");
        assert!(said.contains("| [choose]\n") && said.contains(help), "{said}");
    }
}

#[test]
fn more_than_one_can_wait_for_is_refused_where_somebody_would() {
    let layers = |from: u32, count: u32| -> String {
        let layer = |index| format!("\"biaxial {} g/m2 @ 0 deg\"", from + 10 * index);
        (0..count).map(layer).collect::<Vec<_>>().join(", ")
    };
    let many = changed("\"biaxial 18 oz/yd2 @ 0 deg\",", &format!("{},", layers(400, 11)));
    assert_eq!(said_of(&many), "", "who checks has nothing to wait for");
    let said = refused(&many);
    assert!(said.contains(" combinations to choose from: at most 5000000 are looked at\n"), "{said}");
    assert!(
        said.contains("--> top.toml\n") && said.contains("add `[choose]` and name fewer in it: `cores ="),
        "{said}"
    );
    let here =
        format!("{many}\n[choose]\ncores = [\"pvc-foam\"]\ndensities = [\"5 lb/ft3\"]\nthicknesses = [\"1 in\"]\n");
    for said in [said_of(&here), refused(&here)] {
        // Thirteen kinds of layers, each laid none to three times, the heaviest once at least; and one kind.
        let [outer, inner] = [3 * 4_u64.pow(12), 3];
        assert!(said.contains(&format!("there are {} combinations", outer * inner)), "{said}");
        let help = format!(
            "help: they are 1 cores in their densities and thicknesses × {outer} outer skins × {inner} inner skins; name fewer in \
             `[choose]`: "
        );
        assert!(said.contains("| [choose]\n") && said.contains(&help), "{said}");
    }
    let (_, space) = space(&format!("{here}outer = [[{}]]\n", layers(400, 2)));
    assert_eq!(space.len(), 2 * 3);
}

#[test]
fn what_is_not_said_is_all_that_is_sold() {
    for text in [BASE.to_owned(), with("")] {
        let (top, space) = space(&text);
        assert_eq!(space.cores, Space::sheets(&top, TABLE.cores(), None, None));
        assert_eq!((space.outer.len(), space.inner.len()), (Space::ways(&top.outer), Space::ways(&top.inner)));
        assert_eq!(space.outer, Space::skins(&top.outer));
        assert!(space.place_of(&top).is_some(), "the file's own is one of them");
        assert_eq!((space.order, space.limits), (Order::Weight, skinspan::choice::Limits::default()));
    }
}

#[test]
fn what_is_said_is_what_there_is() {
    let (top, space) = space(&with(
        "cores = [\"balsa\", \"pvc-foam\", \"balsa\"]\ndensities = [\"100 kg/m3\", \"150 kg/m3\", \"0.1 g/cm3\"]\n\
         thicknesses = [\"25.4 mm\", \"1 in\", \"1/2 in\"]\n\
         inner = [[\"biaxial 600 g/m2 @ 45 deg, fibre 50 %\"], [\"mat 1.5 oz/ft2\"], [\"mat 1.5 oz/ft2\"]]\n\
         order = \"sag\"\nmost_thickness = \"2 in\"\nmost_weight = \"300 lb\"",
    ));
    let sheets: Vec<(&str, i64, i64)> = space
        .cores
        .iter()
        .map(|core| {
            let [density, micrometres] = [core.material.density.value, core.thickness.value * 1e6].map(f64::round);
            #[allow(clippy::cast_possible_truncation)] // whole, and small
            (core.family.id.as_str(), density as i64, micrometres as i64)
        })
        .collect();
    let of = |family| [(family, 100, 25400), (family, 100, 12700), (family, 150, 25400), (family, 150, 12700)];
    assert_eq!(sheets, [of("balsa"), of("pvc-foam")].concat(), "what is written twice counts once");
    // A skin that reads as that of the file is that of the file: process, resin and fibre are the same.
    assert_eq!(space.inner.len(), 2);
    assert_eq!(space.inner[0], top.inner);
    assert_eq!(space.order, Order::Sag);
    assert_eq!(space.limits.thickness, Some(parse("2 in").unwrap()));
    assert_eq!(space.limits.mass, Some(parse("300 lb").unwrap()));
    let (top, space) = self::space(&with("inner = [[\"mat 1.5 oz/ft2\"]]\norder = \"thickness\""));
    assert_eq!(space.inner.iter().position(|skin| *skin == top.inner), Some(0), "that of the file is among them");
    assert_eq!((space.inner.len(), space.order), (2, Order::Thickness));
}

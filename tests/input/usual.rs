//! Values that nothing ever has: a slip in the unit or the digits, with the unit that may have been meant.

use crate::{BASE, changed, said_of, says};

#[test]
fn a_slip_in_the_unit_is_offered_the_units_that_fit() {
    says(
        "thickness = \"1 in\"",
        "thickness = \"20 in\"",
        r#"
error: `thickness` is 20.0 in (508 mm), more than the core of a top ever is
  --> top.toml:14:67
   |
14 | core = { material = "pvc-foam", density = "5 lb/ft3", thickness = "20 in" }
   |                                                                   ^^^^^^^
   |
help: it is from 0.079 in (2.00 mm) to 5.906 in (150 mm) here; did you mean `20 mm`?
   |
14 - core = { material = "pvc-foam", density = "5 lb/ft3", thickness = "20 in" }
14 + core = { material = "pvc-foam", density = "5 lb/ft3", thickness = "20 mm" }
   |
"#,
    );
    says(
        "storm = \"90 mph\"",
        "storm = \"5000 mph\"",
        r#"
error: `storm` is 5000 mph (2235 m/s), more than a gust ever is
  --> top.toml:53:9
   |
53 | storm = "5000 mph"
   |         ^^^^^^^^^^
   |
help: it is from 4.47 mph (2.00 m/s) to 268.4 mph (120 m/s) here: is the unit right?
"#,
    );
    says(
        "drag = 0.6",
        "drag = 60",
        r#"
error: `drag` is 60.0, more than a coefficient of wind ever is
  --> top.toml:49:8
   |
49 | drag = 60
   |        ^^
   |
help: it is 5.00 at the most here; did you mean `60 %`?
   |
49 - drag = 60
49 + drag = "60 %"
   |
"#,
    );
}

/// First line of what is said, and that nothing else is.
fn only_message(from: &str, to: &str) -> String {
    let said = said_of(&changed(from, to));
    assert_eq!(said.matches("error: ").count(), 1, "{from} -> {to}:\n{said}");
    said.lines().next().unwrap_or_default().to_owned()
}

#[test]
fn every_key_has_an_end_on_each_side() {
    let boat = "slam = { waterline = \"23 ft\", beam = \"7 ft\", deadrise = \"20 deg\", mass = \"7000 lb\", \
                speed = \"28 kn\", trim = \"4 deg\", waves = \"2 ft\", ahead = \"0 ft\", water = \"1025 kg/m3\" }";
    let cases = [
        ("speed = \"32 kn\"", "speed", ["0.3 kn", "500 kn"]),
        ("storm = \"90 mph\"", "storm", ["1 mph", "300 mph"]),
        ("trailer = \"60 mph\"", "trailer", ["1 mph", "200 mph"]),
        ("slam = \"3 g\"", "slam", ["0.001 g", "30 g"]),
        ("sun = \"light\"", "headwind", ["", "300 mph"]),
        ("sun = \"light\"", "person", ["22 lb", "1000 kg"]),
        ("sun = \"light\"", "hand_load", ["", "20 kN"]),
        ("sun = \"light\"", "ponding", ["0.1 mm", "2 ft"]),
        ("sun = \"light\"", "snow", ["0.1 psf", "20 psi"]),
        ("mass = \"22 lb\"", "mass", ["0.1 oz", "90000 lb"]),
        ("cg_height = \"6 in\"", "cg_height", ["", "60 ft"]),
        ("drag = 0.6", "drag", ["", "6"]),
        ("drag = 0.6", "lift", ["", "6"]),
        ("drag = 0.6", "wind_height", ["", "60 ft"]),
        ("drag = 0.6", "grab_height", ["", "60 ft"]),
        ("wind_area = \"1.4 ft2\"", "wind_area", ["", "300 ft2"]),
        ("footing = \"9 in\"", "footing", ["1 mm", "90 ft"]),
        ("outside = \"2 in\"\nwall", "outside", ["2 mm", "20 in"]),
        ("wall = \"0.125 in\"", "wall", ["0.1 mm", "10 in"]),
        ("alloy = \"6061-t6\"", "seat", ["0.05 mm", "50 in"]),
        ("thickness = \"1 in\"", "thickness", ["1 mm", "9 in"]),
        ("setback = \"1.5 in\"", "setback", ["0.5 mm", "1000 in"]),
        ("width = \"4 in\"", "width", ["2 mm", "4000 in"]),
        ("material = \"pvc-1-2-sch40\"", "diameter", ["0.5 mm", "20 in"]),
    ];
    for (from, key, [low, high]) in cases {
        for (text, side) in [(low, "less"), (high, "more")].into_iter().filter(|(text, _)| !text.is_empty()) {
            let own = from.starts_with(key);
            let to = match (own, from.contains("material = \"pvc-1")) {
                (true, _) if from.contains('\n') => format!("{key} = \"{text}\"\nwall"),
                (true, _) | (false, true) => format!("{key} = \"{text}\""),
                (false, false) => format!("{from}\n{key} = \"{text}\""),
            };
            let said = only_message(from, &to);
            assert!(said.contains(&format!("`{key}` is ")) && said.contains(side), "{from} -> {to}: {said}");
        }
    }
    for (key, low, high) in [
        ("waterline = \"23 ft\"", "1 ft", "230 ft"),
        ("beam = \"7 ft\"", "0.7 ft", "700 ft"),
        ("mass = \"7000 lb\"", "7 lb", "7000000 lb"),
        ("speed = \"28 kn\"", "0.28 kn", "280 kn"),
        ("waves = \"2 ft\"", "2 mm", "200 ft"),
        ("ahead = \"0 ft\"", "-2000 ft", "2000 ft"),
        ("water = \"1025 kg/m3\"", "1 kg/m3", "1025 lb/ft3"),
    ] {
        let name = key.split(' ').next().unwrap_or_default();
        for (text, side) in [(low, "less"), (high, "more")] {
            let to = boat.replacen(key, &format!("{name} = \"{text}\""), 1);
            assert_ne!(to, boat, "{key}");
            let said = only_message("slam = \"3 g\"", &to);
            assert!(said.contains(&format!("`{name}` is ")) && said.contains(side), "{to}: {said}");
        }
    }
    assert_eq!(said_of(&changed("slam = \"3 g\"", boat)), "");
}

#[test]
fn given_forces_layers_and_fixings_have_an_end() {
    for (given, key) in [
        ("up = \"300 kN\"", "up"),
        ("up = \"-300 kN\"", "up"),
        ("side = \"300 kN\", height = \"1 ft\"", "side"),
        ("side = \"300 N\", height = \"100 ft\"", "height"),
        ("twist = \"300 kN m\"", "twist"),
    ] {
        let said = only_message("drag = 0.6", &format!("drag = 0.6\ngiven = [{{ {given} }}]"));
        assert!(said.contains(&format!("`{key}` is ")), "{given}: {said}");
    }
    for (from, to) in [
        ("mat 1.5 oz/ft2", "mat 1500 oz/ft2"),
        ("\"gelcoat\"", "\"gelcoat 2 in\""),
        ("\"gelcoat\"", "\"gelcoat 0.001 g/m2\""),
    ] {
        let said = only_message(from, to);
        assert!(said.contains("in one layer"), "{from} -> {to}: {said}");
    }
    let fixed = |hold: &str, foot: &str| {
        let fixing = format!(
            "[[fixing]]\nname = \"bolts\"\nhold = \"through-bolt\"\nthread = \"m8\"\ngrade = \"a4-70\"\n\
             lubrication = \"lubricated-stainless\"\n{hold}\n\n[[gear]]"
        );
        let text = BASE.replacen("[[gear]]", &fixing, 1).replacen(
            "drag = 0.6",
            &format!("drag = 0.6\nfixings = {{ fixing = \"bolts\", circle = 4, diameter = \"6 in\"{foot} }}"),
            1,
        );
        said_of(&text)
    };
    assert_eq!(fixed("", ""), "");
    for (hold, foot, key) in [
        ("torque = \"5000 N m\"", "", "torque"),
        ("washer = { outside = \"40 in\", thickness = \"2 mm\" }", "", "outside"),
        ("sleeve = { outside = \"14 in\", wall = \"1 mm\", alloy = \"6061-t6\" }", "", "outside"),
        ("", ", to_body = \"60 in\"", "to_body"),
        ("", ", to_edge = \"60 in\"", "to_edge"),
    ] {
        let said = fixed(hold, foot);
        assert_eq!(said.matches("error: ").count(), 1, "{said}");
        assert!(said.contains(&format!("`{key}` is ")), "{said}");
    }
}

//! Text, JSON and table say the same, on a page of its width, and the program writes them.

use std::process::Command;

use serde_json::Value;
use skinspan::report::{order_to_csv, order_to_json, order_to_text};

use crate::kit::{ORDERED, kg, m};

fn run(arguments: &[&str]) -> (i32, String, String) {
    let output = Command::new(env!("CARGO_BIN_EXE_skinspan"))
        .args(arguments)
        .current_dir(env!("CARGO_MANIFEST_DIR"))
        .output()
        .expect("the program runs");
    let text = |bytes: Vec<u8>| String::from_utf8(bytes).expect("UTF-8");
    (output.status.code().expect("a code"), text(output.stdout), text(output.stderr))
}

#[test]
fn all_forms_say_the_same() {
    for (name, top, order) in &*ORDERED {
        let (text, csv, json) = (order_to_text(order, top, 80), order_to_csv(order, top), order_to_json(order, top));
        assert!(text.lines().all(|line| line.chars().count() <= 80), "{name}:\n{text}");
        assert!(csv.is_ascii(), "{name}: {:?}", csv.lines().find(|line| !line.is_ascii()));
        assert!(!text.contains("NaN") && !json.to_string().contains("NaN"), "{name}");
        assert_eq!(json["format"]["name"], "skinspan-order");
        // What is bought: one line each, everywhere.
        let bought = json["buy"].as_array().expect("a list");
        assert_eq!(csv.lines().filter(|line| line.starts_with("buy,")).count(), bought.len(), "{name}");
        for row in bought {
            let first = row["item"].as_str().and_then(|item| item.split_whitespace().next()).expect("a name");
            assert!(text.contains(first), "{name}: {first}");
        }
        let sentence = json["answer"][0].as_str().expect("a sentence");
        let joined = text.split_whitespace().collect::<Vec<_>>().join(" ");
        assert!(joined.contains(sentence), "{name}: {sentence}");
        // Lift checks, moments and what is taken for granted stand in the table too.
        let lists = |list: &str| csv.lines().filter(|line| line.starts_with(&format!("{list},"))).count();
        assert_eq!(lists("moment"), 6, "{name}");
        assert_eq!(lists("assumption"), json["criteria"].as_array().expect("a list").len(), "{name}");
        let lifting = &json["lifting"];
        let checks = |key: &str| lifting[key].as_array().map_or(0, Vec::len);
        assert_eq!(lists("lift check").max(1), (checks("checks") + checks("open")).max(1), "{name}");
        for row in lifting["checks"].as_array().into_iter().flatten() {
            let used = row["utilisation"].as_f64().expect("a number");
            let found = csv.lines().filter(|line| line.starts_with("lift check,")).filter_map(|line| {
                let cells: Vec<&str> = line.trim_end().split(',').collect();
                cells[cells.len() - 2].parse::<f64>().ok()
            });
            assert!(found.into_iter().any(|found| (found - used).abs() < 1e-5 * used.max(1e-3)), "{name}: {row}");
        }
        // No name pushes a column aside: masses end where the head of their column ends.
        let layers: Vec<&str> = text
            .lines()
            .skip_while(|line| !line.starts_with("Mixed resin by layer"))
            .take_while(|line| !line.is_empty())
            .collect();
        let wide = layers[1].chars().count();
        assert!(layers[2..].iter().all(|line| line.chars().count() <= wide.max(76)), "{name}: {layers:#?}");
        let plan = order.core.as_ref().expect("a plan");
        let pieces = json["core"]["pieces"].as_array().expect("pieces");
        assert_eq!(
            (pieces.len(), csv.matches("\ncore piece,").count()),
            (plan.pieces.len(), plan.pieces.len()),
            "{name}"
        );
        let unit = |value: &Value, si: f64| {
            let factor = match value["unit"].as_str().expect("a unit") {
                "in" => 0.0254,
                "kg" => 1.0,
                "mm" | "g" => 0.001,
                "lb" => 0.45359237,
                "oz" => 0.028349523125,
                other => panic!("{other}"),
            };
            let found = value["value"].as_f64().expect("a number") * factor;
            assert!((found - si).abs() < 1e-7 * si.abs().max(1.0), "{name}: {value} {si}");
        };
        unit(&json["weight"]["bare"]["mass"], kg(order.weight.bare));
        for (piece, shown) in plan.pieces.iter().zip(pieces) {
            unit(&shown["x"], m(piece.at.x));
            unit(&shown["width"], m(piece.width));
        }
    }
}

#[test]
fn the_program_writes_all_forms() {
    let file = "examples/galley-roof.toml";
    let (code, text, errors) = run(&["order", file]);
    assert_eq!((code, errors.as_str()), (0, ""), "{text}");
    assert!(text.starts_with("Galley roof of the harbour launch\n"), "{text}");
    let (code, json, _) = run(&["order", file, "--json"]);
    assert_eq!(code, 0);
    let json: Value = serde_json::from_str(&json).expect("JSON");
    assert_eq!(json["lifting"]["passes"], true);
    let (code, csv, _) = run(&["order", file, "--csv"]);
    assert_eq!((code, csv.split(',').next()), (0, Some("list")));
    assert_eq!(run(&["order", file, "--csv"]).1, csv, "same input, same bytes");
    let (code, out, errors) = run(&["order", "examples/radar-pad.toml"]);
    assert_eq!((code, out.as_str()), (2, ""));
    assert!(errors.contains("describes a patch") && errors.contains("help: describe the whole top"), "{errors}");
    assert_eq!(run(&["order", file, "--json", "--csv"]).0, 2);
    // The bare weight is that of `check`.
    let (_, check, _) = run(&["check", file, "--hand", "--json"]);
    let check: Value = serde_json::from_str(&check).expect("JSON");
    assert_eq!(check["weight"]["bare"], json["weight"]["bare"]["mass"]);
}

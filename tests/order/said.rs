//! What papers say of a top that does not hold, of cloths that are laid more than once, and of what goes with a fixing.

use std::{fs, process::Command};

use serde_json::Value;
use skinspan::{
    check::Standing,
    input::read_tables,
    report::{Report, not_for_building, order_to_csv, order_to_json, order_to_text, to_sheet, to_text},
    units::{Length, System, show},
};

use uom::si::length::millimeter;

use crate::kit::{EDGE, Made, ORDERED, kg};

/// Numbers of a report have nine digits.
#[track_caller]
fn close(found: f64, expected: f64) {
    assert!((found - expected).abs() <= 1e-8 * expected.abs(), "{found} is not {expected}");
}

const TWICE: &str =
    "[\"gelcoat 0.6 kg/m2\", \"2 x biaxial 600 g/m2 @ 0 deg, fibre 50 %\", \"mat 300 g/m2, fibre 30 %\"]";

#[test]
fn a_cloth_that_is_laid_twice_is_named_without_its_count() {
    let (top, order) = Made { outer: TWICE, ..Made::default() }.order();
    let text = order_to_text(&order, &top, 100);
    // The count stands once.
    assert!(text.contains("outer: 2 × biaxial 600 g/m2 @ 0 deg, fibre 50 %"), "{text}");
    assert!(!text.contains("2 x biaxial"), "{text}");
    let layers: Vec<(&str, usize)> = order.resins.lines.iter().map(|line| (line.layer.as_str(), line.times)).collect();
    assert_eq!(layers[0], ("biaxial 600 g/m2 @ 0 deg, fibre 50 %", 2));
    let table = read_tables(&[]).expect("the table");
    let report = Report::by_hand(&top, &table);
    let check = to_text(&report, true, 100);
    assert!(!check.contains("2 x biaxial"), "{check}");
    assert_eq!(check.matches("               biaxial 600 g/m2").count(), 3, "{check}");
    let sheet = to_sheet(&report);
    let outer = sheet.split("Outer skin, from the sky down").nth(1).and_then(|rest| rest.split("</table>").next());
    let outer = outer.expect("a list of plies");
    // Two cloths of two plies each, each named once beside both of its plies.
    assert_eq!(outer.matches("rowspan=\"2\">biaxial 600 g/m2 @ 0 deg").count(), 2, "{outer}");
    assert_eq!(outer.matches("one cloth, its 2 plies of fibre").count(), 2, "{outer}");
    assert_eq!(outer.matches("biaxial").count(), 2, "{outer}");
    for number in 1..=5 {
        assert!(outer.contains(&format!("<td>{number}</td>")), "{number}: {outer}");
    }
}

#[test]
fn what_goes_with_a_bolt_is_named_sized_and_counted() {
    let rest = "[[fixing]]\nname = \"bolts\"\nhold = \"through-bolt\"\nthread = \"m8\"\ngrade = \"a4-70\"\n\
                lubrication = \"lubricated-stainless\"\nwasher = { outside = \"40 mm\", thickness = \"4 mm\" }\n\
                [[gear]]\nname = \"light\"\nmass = \"2 kg\"\ncg_height = \"100 mm\"\nat = [\"700 mm\", \"500 mm\"]\n\
                footing = \"80 mm\"\nbody = \"dome\"\nwind_area = \"0.02 m2\"\n\
                fixings = { fixing = \"bolts\", circle = 4, diameter = \"60 mm\", clamped = \"6 mm\" }\n\
                [order]\nspares = \"30 %\"\n";
    let (top, order) = Made { rest, ..Made::default() }.order();
    let (text, csv, json) = (order_to_text(&order, &top, 100), order_to_csv(&order, &top), order_to_json(&order, &top));
    let text = text.split_whitespace().collect::<Vec<_>>().join(" ");
    // Four and two spares, of bolts, nuts and washers alike.
    let size = |of: f64| show(Length::new::<millimeter>(of), System::Si);
    let thread = top.gear[0].fastened.as_ref().expect("fixings").fixing.hold.size();
    let all = [
        format!("bolts: through-bolt, {thread}, Stainless A4-70"),
        format!("bolts: nut, {thread}, Stainless A4-70"),
        format!("bolts: washer for {thread}, {} across, {} thick, stainless steel", size(40.0), size(4.0)),
    ];
    let bought = json["buy"].as_array().expect("a list");
    for item in &all {
        let first: String = item.split_whitespace().take(3).collect::<Vec<_>>().join(" ");
        assert!(text.contains(&first), "{first}: {text}");
        let row =
            bought.iter().find(|row| row["item"] == item.as_str()).unwrap_or_else(|| panic!("{item}: {bought:?}"));
        assert_eq!(row["count"], 6, "{item}");
        assert!(csv.contains(&format!("buy,fixing,\"{item}\",6,")), "{csv}");
    }
    let fixing = &json["fixings"][0];
    assert_eq!(fixing["grade"], "Stainless A4-70");
    assert_eq!((&fixing["parts"][0]["count"], &fixing["parts"][1]["count"]), (&Value::from(6), &Value::from(6)));
    assert_eq!(fixing["parts"].as_array().map(Vec::len), Some(2));
}

#[test]
fn polyester_putty_is_one_line_with_its_catalyst() {
    let edge = EDGE.replace("putty-glass-bubble", "putty-polyester-bonding");
    let rest = "[[backing]]\nname = \"strip\"\nmaterial = \"plywood-fir\"\nwidth = \"100 mm\"\n\
                along = [[\"300 mm\", \"200 mm\"], [\"1200 mm\", \"200 mm\"]]\n\
                [[conduit]]\nname = \"wires\"\nmaterial = \"pvc-1-2-sch40\"\nalong = [[\"200 mm\", \"800 mm\"], [\"1700 mm\", \"800 mm\"]]\n";
    let (top, order) = Made { edge: &edge, rest, ..Made::default() }.order();
    let json = order_to_json(&order, &top);
    let bought = json["buy"].as_array().expect("a list");
    let own: Vec<&Value> = bought.iter().filter(|row| row["item"] == "Polyester bonding putty").collect();
    let [row] = own[..] else { panic!("{bought:?}") };
    let fillings = order.fillings.iter().filter_map(|own| own.mass).map(kg);
    let all = kg(order.putty.as_ref().expect("an edge").mass) + fillings.sum::<f64>();
    assert_eq!(order.fillings.len(), 2);
    // Light things are shown in grams.
    let mass = |row: &Value| {
        let value = row["mass"]["value"].as_f64().expect("a mass");
        if row["mass"]["unit"] == "g" { value / 1000.0 } else { value }
    };
    close(mass(row), all);
    let note = row["note"].as_str().expect("a note");
    assert!(["deep along", "joints round backing", "beside tubes"].iter().all(|use_| note.contains(use_)), "{note}");
    let at = bought.iter().position(|other| other == row).expect("it");
    assert_eq!(bought[at + 1]["item"], "Catalyst for it");
    close(mass(&bought[at + 1]), all * top.criteria.order_catalyst_share.value.value);
    // Epoxy with bubbles is sold with what cures it.
    let (top, order) = Made { rest, ..Made::default() }.order();
    let json = order_to_json(&order, &top);
    let catalysts = json["buy"].as_array().expect("a list").iter().filter(|row| row["item"] == "Catalyst for it");
    assert!(catalysts.into_iter().all(|row| row["kind"] == "resin" || row["kind"] == "coat"), "{json}");
}

/// With a factor that no core bears, and without.
fn under(rest: &str) -> (skinspan::top::Top, skinspan::order::Order, String) {
    let mut file = Made::default().text();
    file.text.push_str(rest);
    let table = read_tables(&[]).expect("the table");
    let top = skinspan::input::read_design(&file, &table, None)
        .unwrap_or_else(|problems| panic!("{}", problems[0].render(false)));
    let order = skinspan::order::order(&top);
    (top, order, file.text)
}

#[test]
fn papers_of_a_top_that_does_not_hold_say_so_first() {
    let (top, order, file) = under("[criteria]\ncore-shear-factor = \"300\"\n");
    let standing = order.standing.as_ref().expect("an analysis");
    let (check, used) = standing.fails[0];
    assert!(used.value > 1.0 && !standing.by_plate, "{standing:?}");
    let said = not_for_building(&order.standing).expect("it does not hold");
    let title = skinspan::check::CHECKS[check].title();
    assert!(
        said.starts_with(&format!("NOT FOR BUILDING: the check says that this top does not hold ({title}, ")),
        "{said}"
    );
    assert!(said.contains("by the hand method alone"), "{said}");
    let text = order_to_text(&order, &top, 100);
    let joined = text.split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(joined.starts_with(&format!("made {said}")), "{text}");
    let json = order_to_json(&order, &top);
    assert_eq!(
        (json["not_for_building"].as_str(), json["answer"][0].as_str()),
        (Some(said.as_str()), Some(said.as_str()))
    );
    assert!(order_to_csv(&order, &top).lines().nth(1).is_some_and(|line| line.starts_with("warning,check,")));
    // The program says it on the other stream too, and makes its paper.
    let folder = std::env::temp_dir().join(format!("skinspan-order-{}", std::process::id()));
    fs::create_dir_all(&folder).expect("a folder");
    let path = folder.join("made.toml");
    fs::write(&path, file).expect("a file");
    for command in ["order", "template"] {
        let output = Command::new(env!("CARGO_BIN_EXE_skinspan"))
            .args([command, path.to_str().expect("a path")])
            .current_dir(&folder)
            .output()
            .expect("the program runs");
        let errors = String::from_utf8_lossy(&output.stderr);
        assert!(errors.starts_with(&said), "{command}: {errors}");
        assert_ne!(output.status.code(), Some(2), "{command}: {errors}");
    }
    fs::remove_dir_all(&folder).expect("it is ours");
    // Of those that hold nothing is said.
    let mut held = 0;
    for (name, _, order) in &*ORDERED {
        let standing = &order.standing;
        if standing.as_ref().is_ok_and(|standing| standing.fails.is_empty() && standing.open_cases.is_empty()) {
            assert_eq!(not_for_building(standing), None, "{name}");
            held += 1;
        }
    }
    assert!(held > 0);
    let (_, mut order) = Made::default().order();
    order.standing = Ok(Standing { fails: Vec::new(), open_cases: Vec::new(), by_plate: false });
    assert_eq!(order_to_json(&order, &top)["not_for_building"], Value::Null);
    assert!(!order_to_text(&order, &top, 100).contains("NOT FOR BUILDING"));
    assert!(!order_to_csv(&order, &top).contains("warning,"));
}

#[test]
fn cases_and_tops_that_could_not_be_looked_at_are_no_leave_to_build() {
    let open = Standing {
        fails: Vec::new(),
        open_cases: vec![("wind".to_owned(), "it has no speed".to_owned())],
        by_plate: true,
    };
    assert_eq!(
        not_for_building(&Ok(open)).as_deref(),
        Some("NOT FOR BUILDING: 1 load case could not be looked at (wind): it has no speed. See `skinspan check`.")
    );
    let none = not_for_building(&Err("nothing bears it".to_owned())).expect("no answer");
    assert!(none.starts_with("NOT FOR BUILDING") && none.contains("nothing bears it"), "{none}");
    let holds = Standing { fails: Vec::new(), open_cases: Vec::new(), by_plate: false };
    assert_eq!(not_for_building(&Ok(holds)), None);
}

#[test]
fn where_no_slings_find_a_place_the_reason_and_a_way_out_are_said() {
    let (top, order) = Made { rest: "[criteria]\nsling-pad = \"990 mm\"\n", ..Made::default() }.order();
    assert!(order.lifting.is_none());
    for text in [order_to_text(&order, &top, 100), order_to_csv(&order, &top)] {
        let text = text.split_whitespace().collect::<Vec<_>>().join(" ");
        assert!(text.contains("a square of 990 mm has to lie on the top at each"), "{text}");
        assert!(text.contains("Carry it on two boards or a frame right below it"), "{text}");
    }
}

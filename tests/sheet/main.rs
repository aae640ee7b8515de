//! The calculation sheet: well-formed, whole, with the numbers of the JSON report, the same each time, nothing fetched; and what its
//! maps are drawn from.

mod drawn;
mod leaders;
mod maps;

use std::{collections::BTreeSet, fs, path::Path, process::Command, sync::OnceLock};

use roxmltree::{Document, Node, ParsingOptions};
use serde_json::Value;
use skinspan::{
    input::{NamedText, read_design, read_tables},
    material::MaterialTable,
    report::{Report, to_json, to_sheet},
    top::Top,
};

/// A mount alone, one that fails, one on walls and one with a hatch and corners in a drawing's own units.
const LOOKED_AT: [&str; 4] = ["radar-pad", "ferry-tender", "galley-roof", "bow-wing"];

struct Made {
    name: &'static str,
    sheet: String,
    json: Value,
}

fn table() -> MaterialTable {
    read_tables(&[]).expect("the built-in table")
}

fn top(name: &str) -> Top {
    let path = format!("{}/examples/{name}.toml", env!("CARGO_MANIFEST_DIR"));
    let text = fs::read_to_string(path).expect("an example");
    read_design(&NamedText { name: name.to_owned(), text }, &table(), None)
        .unwrap_or_else(|problems| panic!("{}", problems[0].render(false)))
}

/// Each example once: the plate takes its time.
fn made() -> &'static [Made] {
    static MADE: OnceLock<Vec<Made>> = OnceLock::new();
    MADE.get_or_init(|| {
        let each = LOOKED_AT.into_iter().map(|name| {
            let (top, table) = (top(name), table());
            let report = Report::new(&top, &table);
            Made { name, sheet: to_sheet(&report), json: to_json(&report) }
        });
        each.collect()
    })
}

fn document(sheet: &str) -> Document<'_> {
    let options = ParsingOptions { allow_dtd: true, ..ParsingOptions::default() };
    Document::parse_with_options(sheet, options).unwrap_or_else(|error| panic!("{error}"))
}

fn text(node: Node<'_, '_>) -> String {
    let all: Vec<&str> = node.descendants().filter_map(|node| node.text().filter(|_| node.is_text())).collect();
    all.join(" ").split_whitespace().collect::<Vec<_>>().join(" ")
}

fn by_id<'d>(document: &'d Document<'_>, id: &str) -> Node<'d, 'd> {
    document.descendants().find(|node| node.attribute("id") == Some(id)).unwrap_or_else(|| panic!("no element {id}"))
}

/// What a check says under a name.
fn row(check: Node<'_, '_>, name: &str) -> String {
    let term = check
        .descendants()
        .find(|node| node.has_tag_name(("http://www.w3.org/1999/xhtml", "dt")) && text(*node) == name);
    let term = term.unwrap_or_else(|| panic!("no row {name}"));
    text(term.next_sibling_element().expect("what it says"))
}

/// Whether a text such as `66.9 psi` is a quantity of the JSON report, rounded as far as it is written.
fn is_rounded(shown: &str, exact: &Value) -> bool {
    let (number, unit) = shown.split_once(' ').unwrap_or((shown, ""));
    let (value, own) = match exact {
        Value::Object(quantity) => (quantity["value"].as_f64(), quantity["unit"].as_str().unwrap_or_default()),
        plain => (plain.as_f64(), ""),
    };
    let Some(value) = value else { return shown.starts_with('—') };
    let (mantissa, exponent) = number.split_once('e').unwrap_or((number, "0"));
    let decimals = mantissa.split_once('.').map_or(0, |(_, decimals)| decimals.len());
    let last = 10f64.powi(exponent.parse::<i32>().expect("an exponent") - i32::try_from(decimals).expect("few"));
    let shown: f64 = number.replace('−', "-").parse().unwrap_or_else(|_| panic!("{number} is no number"));
    unit == own && (shown - value).abs() <= last * 0.501
}

#[test]
fn a_sheet_is_well_formed_and_fetches_nothing() {
    for Made { name, sheet, .. } in made() {
        let document = document(sheet);
        let ids: Vec<&str> = document.descendants().filter_map(|node| node.attribute("id")).collect();
        assert_eq!(ids.len(), ids.iter().collect::<BTreeSet<_>>().len(), "{name}: an id twice");
        for node in document.descendants().filter(Node::is_element) {
            assert!(
                !["script", "link", "img", "iframe", "object", "image", "use"].contains(&node.tag_name().name()),
                "{name}"
            );
            for attribute in node.attributes() {
                assert!(
                    !["src", "srcset", "data", "onload", "onclick"].contains(&attribute.name()),
                    "{name}: {}",
                    attribute.name()
                );
                if attribute.name() == "href" {
                    let to =
                        attribute.value().strip_prefix('#').unwrap_or_else(|| panic!("{name}: {}", attribute.value()));
                    assert!(ids.contains(&to), "{name}: nothing at {to}");
                }
            }
        }
        assert!(!sheet.contains("url(") && !sheet.contains("@import"), "{name}");
        // The only address is the name of the language itself.
        assert_eq!(sheet.matches("://").count(), 1, "{name}");
        assert!(!sheet.contains("NaN") && !sheet.contains(">inf"), "{name}");
    }
}

#[test]
fn a_sheet_says_that_nothing_could_be_checked() {
    let (mut top, table) = (top("galley-roof"), table());
    top.supports.clear();
    let report = Report::new(&top, &table);
    assert!(report.analysis.is_err());
    let sheet = to_sheet(&report);
    let document = document(&sheet);
    assert!(text(by_id(&document, "answer")).contains("NOT SHOWN TO HOLD . Nothing could be checked"), "{sheet}");
    for link in document.descendants().filter_map(|node| node.attribute("href")) {
        by_id(&document, &link[1..]);
    }
}

#[test]
fn the_parts_stand_in_their_order() {
    for Made { name, sheet, .. } in made() {
        let document = document(sheet);
        let numbers: Vec<String> =
            document.descendants().filter(|node| node.attribute("class") == Some("number")).map(text).collect();
        assert_eq!(numbers, (1..=12).map(|number| number.to_string()).collect::<Vec<_>>(), "{name}");
    }
}

#[test]
fn every_check_is_there_with_the_numbers_of_the_json_report() {
    let mut terms = 0;
    for Made { name, sheet, json } in made() {
        let document = document(sheet);
        let checks = json["checks"].as_array().expect("checks");
        assert!(!checks.is_empty());
        for check in checks {
            let id = check["check"].as_str().expect("an id");
            let here = by_id(&document, &format!("check-{id}"));
            assert_eq!(row(here, "formula"), check["formula"].as_str().expect("a formula"), "{name}, {id}");
            assert_eq!(row(here, "holds for"), check["limits"].as_str().expect("limits"), "{name}, {id}");
            assert_eq!(row(here, "source"), check["source"].as_str().expect("a source"), "{name}, {id}");
            let place = check["place"].as_str().expect("a place");
            assert_eq!(row(here, "place"), place.split_whitespace().collect::<Vec<_>>().join(" "), "{name}, {id}");
            let result = row(here, "result");
            let (demand, rest) = result.split_once(" × ").expect("a product");
            let (factor, rest) = rest.split_once(" / ").expect("a quotient");
            let (allowable, _) = rest.split_once(" = ").expect("what is used");
            for (shown, key) in [(demand, "demand"), (factor, "factor"), (allowable, "allowable")] {
                assert!(is_rounded(shown, &check[key]), "{name}, {id}: {shown} is not {}", check[key]);
            }
            let listed = check["terms"].as_array().expect("terms");
            if listed.is_empty() {
                continue;
            }
            let values = row(here, "values");
            for term in listed {
                let symbol = term["symbol"].as_str().expect("a symbol");
                let written = format!(" {values}");
                let after = written
                    .split_once(&format!(" {symbol} = "))
                    .unwrap_or_else(|| panic!("{name}, {id}: no {symbol}"))
                    .1;
                let unit = term["value"]["unit"].as_str().unwrap_or_default();
                let number = after.split(' ').next().expect("a number");
                let shown = if unit.is_empty() { number.to_owned() } else { format!("{number} {unit}") };
                assert!(after.starts_with(&shown), "{name}, {id}: {symbol} = {after}");
                assert!(is_rounded(&shown, &term["value"]), "{name}, {id}: {symbol} is {shown}, not {}", term["value"]);
                terms += 1;
            }
        }
    }
    assert!(terms > 200, "{terms}");
}

#[test]
fn bars_say_what_the_json_report_says() {
    for Made { name, sheet, json } in made() {
        let document = document(sheet);
        let bars: Vec<Node<'_, '_>> = document
            .descendants()
            .filter(|node| node.attribute("class") == Some("bar"))
            .filter_map(|bar| bar.first_element_child())
            .collect();
        let checks = json["checks"].as_array().expect("checks");
        assert_eq!(bars.len(), checks.len(), "{name}");
        let long = |bar: &Node<'_, '_>| -> f64 {
            let used = bar
                .children()
                .filter(|node| node.has_tag_name(("http://www.w3.org/1999/xhtml", "rect")))
                .nth(1)
                .expect("a bar");
            used.attribute("width").and_then(|width| width.parse().ok()).expect("a width")
        };
        let used = |check: &Value| check["utilisation"].as_f64().expect("a number");
        for (bar, check) in bars.iter().zip(checks) {
            let hundred =
                bar.children().find(|node| node.attribute("class") == Some("bar-full")).expect("the stroke at 100 %");
            let full: f64 = hundred.attribute("x1").and_then(|x| x.parse().ok()).expect("a place");
            if used(check) < 4.0 && used(check) * full > 1.0 {
                assert!(
                    (long(bar) / full - used(check)).abs() < 0.002,
                    "{name}, {}: {} of {full}",
                    check["check"],
                    long(bar)
                );
            }
            let over = bar.children().any(|node| node.attribute("class") == Some("bar-over"));
            assert_eq!(over, used(check) > 1.0, "{name}, {}", check["check"]);
        }
    }
}

/// What a path of straight pieces and arcs encloses, run through against the clock as one sees it.
fn enclosed(path: &str) -> f64 {
    let spaced = path.replace('M', " M ").replace('L', " L ").replace('A', " A ").replace('Z', " ");
    let mut words = spaced.split_whitespace();
    let mut places: Vec<[f64; 2]> = Vec::new();
    let mut beside = 0.0;
    while let Some(command) = words.next() {
        let mut number = || words.next().and_then(|word| word.parse::<f64>().ok()).expect("a number");
        if command == "A" {
            let [radius, _, _, large, clockwise] = [number(), number(), number(), number(), number()];
            assert!(large == 0.0, "no arc of more than half a circle here");
            let (from, to) = (places[places.len() - 1], [number(), number()]);
            let half = ((to[0] - from[0]).hypot(to[1] - from[1]) / 2.0 / radius).min(1.0).asin();
            let segment = radius * radius * (half - half.sin() * half.cos());
            beside += if clockwise == 0.0 { segment } else { -segment };
            places.push(to);
        } else {
            places.push([number(), number()]);
        }
    }
    let next = places.iter().cycle().skip(1);
    // The paper counts downwards.
    beside - places.iter().zip(next).map(|([x0, y0], [x1, y1])| 0.5 * (x0 * y1 - x1 * y0)).sum::<f64>()
}

#[test]
fn the_plan_is_to_its_scale_with_its_arcs() {
    for (name, scale) in [("ferry-tender", 15.0), ("bow-wing", 20.0), ("galley-roof", 12.5)] {
        let made = made().iter().find(|made| made.name == name).expect("a sheet");
        let document = document(&made.sheet);
        let figure = by_id(&document, "plan-figure");
        assert!(text(figure).contains(&format!("Scale 1:{scale},")), "{name}: {}", text(figure));
        let layer = figure.descendants().find(|node| node.attribute("class") == Some("l-outline")).expect("an outline");
        let path = layer.first_element_child().and_then(|path| path.attribute("d")).expect("a path");
        let outline = top(name).outline;
        let exact = outline.contour().area().get::<uom::si::area::square_millimeter>() / (scale * scale);
        assert!((enclosed(path) / exact - 1.0).abs() < 5e-4, "{name}: {} of {exact}", enclosed(path));
    }
}

#[test]
fn every_criterion_and_caution_is_there() {
    for Made { name, sheet, json } in made() {
        let document = document(sheet);
        let (assumed, cautions) = (text(by_id(&document, "assumptions")), text(by_id(&document, "cautions")));
        // What buying, slings, drawings and the proof test take for granted is in no number of the sheet.
        let top = top(name);
        let records = top.criteria.records();
        let elsewhere = |id: &str| {
            let own = records.iter().find(|record| record.id == id).expect("a criterion");
            ["order", "slings", "drawing", "proof"].contains(&own.group.as_str())
        };
        for criterion in json["criteria"].as_array().expect("criteria") {
            let id = criterion["criterion"].as_str().expect("a name");
            if elsewhere(id) {
                assert!(!assumed.contains(&format!("{id} ")), "{name}: {id}");
                continue;
            }
            for key in ["criterion", "title", "value", "mark"] {
                let words = criterion[key].as_str().expect("words");
                assert!(assumed.contains(&words.split_whitespace().collect::<Vec<_>>().join(" ")), "{name}: {words}");
            }
        }
        for caution in json["cautions"].as_array().expect("cautions") {
            let words = caution.as_str().expect("words");
            assert!(cautions.contains(&words.split_whitespace().collect::<Vec<_>>().join(" ")), "{name}: {words}");
        }
        let cases = text(by_id(&document, "cases"));
        for case in json["cases"].as_array().expect("cases") {
            assert!(cases.contains(case["id"].as_str().expect("an id")), "{name}: {case}");
        }
    }
}

/// Every post, footing and pipe has what the JSON report says it must take, every row of fixings its torque and its grip.
#[test]
fn what_frame_and_fixings_must_take_is_that_of_the_json_report() {
    let (mut posts, mut torques) = (0, 0);
    for Made { name, sheet, json } in made() {
        let document = document(sheet);
        let part = by_id(&document, "frame");
        let cells: Vec<String> = part
            .descendants()
            .filter(|node| node.tag_name().name() == "td")
            .map(|cell| text(cell).split_whitespace().take(2).collect::<Vec<_>>().join(" "))
            .filter(|cell| cell.starts_with(|letter: char| letter.is_ascii_digit() || letter == '−'))
            .collect();
        let shown = |quantity: &Value| cells.iter().any(|cell| is_rounded(cell, quantity));
        for support in json["frame"].as_array().expect("supports") {
            for post in support["posts"].as_array().expect("posts") {
                for key in ["push", "pull"] {
                    assert!(post[key]["value"] == 0.0 || shown(&post[key]), "{name}: {post}");
                }
                posts += 1;
            }
            assert!(support["moment"].is_null() || shown(&support["moment"]), "{name}: {support}");
        }
        for fixings in json["fixings"].as_array().expect("fixings") {
            let own = part
                .descendants()
                .find(|node| {
                    node.tag_name().name() == "article"
                        && text(*node)
                            .starts_with(&format!("Fixings of {}", fixings["holds"].as_str().expect("a name")))
                })
                .expect("its article");
            assert!(shown(&fixings["moment"]), "{name}: {}", fixings["moment"]);
            let torque = row(own, "torque");
            let most = torque
                .strip_prefix("at most ")
                .expect("a torque")
                .split([' ', '('])
                .take(2)
                .collect::<Vec<_>>()
                .join(" ");
            let (said, exact) = (
                most.split(' ').next().expect("a number").parse::<f64>().expect("a number"),
                &fixings["torque"]["most"]["value"],
            );
            let exact = exact.as_f64().expect("a number");
            assert!(said <= exact && said > exact * 0.98, "{name}: {torque} {exact}");
            let grip = row(own, "grip").split(' ').take(2).collect::<Vec<_>>().join(" ");
            assert!(is_rounded(&grip, &fixings["grip"]), "{name}: {grip} {}", fixings["grip"]);
            torques += 1;
        }
    }
    assert!(posts > 5 && torques > 0, "{posts} {torques}");
}

/// The cut is one line: its stretches lie side by side, each as wide as it is or broken; letters stand on none of it.
#[test]
fn the_cut_is_to_scale_and_its_letters_stand_beside_it() {
    for name in ["ferry-tender", "bow-wing", "galley-roof"] {
        let made = made().iter().find(|made| made.name == name).expect("a sheet");
        let document = document(&made.sheet);
        let figure = by_id(&document, "section-figure");
        let words = text(figure);
        let scale: f64 = words
            .split("Scale 1:")
            .nth(1)
            .map_or(1.0, |rest| rest.split(' ').next().expect("a number").parse().expect("a scale"));
        let number = |node: Node<'_, '_>, key: &str| {
            node.attribute(key).and_then(|value| value.parse::<f64>().ok()).expect("a number")
        };
        let top = top(name);
        let core = top.core.thickness.get::<uom::si::length::millimeter>() / scale;
        let of = |class: &'static str| {
            figure
                .descendants()
                .filter(move |node| node.tag_name().name() == "rect" && node.attribute("class") == Some(class))
        };
        for piece in of("core") {
            assert!((number(piece, "height") - core).abs() < 0.011, "{name}");
        }
        if let Some(edge) = &top.edge {
            let wide = edge.setback.get::<uom::si::length::millimeter>() / scale;
            assert!(of("fill").all(|piece| (number(piece, "width") - wide).abs() < 0.011), "{name}");
        }
        let skins: Vec<(f64, f64)> =
            of("skin").map(|skin| (number(skin, "y"), number(skin, "y") + number(skin, "height"))).collect();
        let (sky, under) = skins.iter().fold((f64::INFINITY, 0.0f64), |(a, b), skin| (a.min(skin.0), b.max(skin.1)));
        let letters: Vec<Node<'_, '_>> = figure
            .descendants()
            .filter(|node| node.attribute("class") == Some("t mid") && text(*node).len() == 1)
            .collect();
        assert!(letters.len() >= 3, "{name}");
        for letter in &letters {
            let y = number(*letter, "y");
            assert!(y < sky - 0.5 || y - 2.4 > under, "{name}: {} stands on the cut", text(*letter));
        }
        // Each has its words below.
        let keys = document.descendants().find(|node| node.attribute("class") == Some("rows key")).expect("a key");
        let terms = keys.children().filter(|node| node.tag_name().name() == "dt").count();
        assert_eq!(terms, letters.len(), "{name}");
    }
}

/// What a test would settle is worked out from the shares of the criteria: a typical strength counts 0.8, a measured one all.
#[test]
fn a_measured_value_gives_back_its_share() {
    let ferry = made().iter().find(|made| made.name == "ferry-tender").expect("the tender");
    let share = |id: &str| -> f64 {
        let criteria = ferry.json["criteria"].as_array().expect("criteria");
        let own = criteria.iter().find(|criterion| criterion["criterion"] == id).expect("a criterion");
        own["value"].as_str().and_then(|value| value.parse().ok()).expect("a share")
    };
    let check =
        ferry.json["checks"].as_array().and_then(|checks| checks.iter().find(|check| check["check"] == "core-shear"));
    let check = check.expect("core shear");
    assert_eq!(check["basis"], "typical");
    let used = check["utilisation"].as_f64().expect("a number") * share("basis-typical") / share("basis-measured");
    let settle = text(by_id(&document(&ferry.sheet), "settle"));
    let wanted = format!(
        "core shear typical {:.0} % {:.0} %",
        check["utilisation"].as_f64().expect("a number") * 100.0,
        used * 100.0
    );
    assert!(settle.contains(&wanted), "{wanted}: {settle}");
}

#[test]
fn the_same_top_gives_the_same_bytes() {
    for name in ["radar-pad", "galley-roof"] {
        let (top, table) = (top(name), table());
        let known = made().iter().find(|made| made.name == name).expect("a sheet");
        assert!(to_sheet(&Report::new(&top, &table)) == known.sheet, "{name}");
    }
}

/// `BLESS=1 cargo test --test sheet` writes it anew.
#[test]
fn the_sheet_of_a_mount_is_as_committed() {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/sheet/radar-pad.html");
    let sheet = &made()[0].sheet;
    if std::env::var_os("BLESS").is_some() {
        fs::write(&path, sheet).expect("a place to write it");
    }
    let committed = fs::read_to_string(&path).expect("the committed sheet");
    let differs = committed.lines().zip(sheet.lines()).find(|(one, other)| one != other);
    assert!(&committed == sheet, "{differs:?}");
}

#[test]
fn drawings_have_names_and_maps_their_lines_values() {
    for Made { name, sheet, .. } in made() {
        let document = document(sheet);
        let drawings = document.descendants().filter(|node| node.tag_name().name() == "svg");
        for drawing in drawings {
            assert_eq!(drawing.attribute("role"), Some("img"), "{name}");
            assert!(
                drawing.children().any(|node| node.tag_name().name() == "title" && !text(node).is_empty()),
                "{name}"
            );
        }
        if *name == "radar-pad" {
            continue;
        }
        for map in ["map-sag", "map-core-shear", "map-ply-failure"] {
            let map = by_id(&document, map);
            let of_class =
                |class: &str| map.descendants().filter(|node| node.attribute("class") == Some(class)).count();
            assert!(of_class("level") + of_class("level-up") >= 3, "{name}: few lines");
            assert!(of_class("on") >= 1, "{name}: no values");
            let values: BTreeSet<String> =
                map.descendants().filter(|node| node.attribute("class") == Some("on")).map(text).collect();
            let legend: BTreeSet<String> =
                map.descendants().filter(|node| node.attribute("class") == Some("t")).map(text).collect();
            assert!(values.intersection(&legend).count() >= 1, "{name}: {values:?} are none of {legend:?}");
        }
    }
}

#[test]
fn the_command_writes_beside_and_says_where() {
    let folder = std::env::temp_dir().join(format!("skinspan-sheet-{}", std::process::id()));
    fs::create_dir_all(&folder).expect("a folder");
    let design = Path::new(env!("CARGO_MANIFEST_DIR")).join("examples/whip-rail.toml");
    let run = |arguments: &[&str]| {
        Command::new(env!("CARGO_BIN_EXE_skinspan"))
            .arg("sheet")
            .args(arguments)
            .current_dir(&folder)
            .output()
            .expect("the program")
    };
    let said = run(&[design.to_str().expect("a path")]);
    assert_eq!(said.status.code(), Some(1), "it does not hold");
    assert_eq!(
        String::from_utf8_lossy(&said.stdout),
        "wrote whip-rail.html: does not hold; open it in a browser, and print it from there\n"
    );
    let written = fs::read_to_string(folder.join("whip-rail.html")).expect("the sheet");
    document(&written);
    assert!(written.contains("DOES NOT HOLD"));
    let said = run(&[design.to_str().expect("a path"), "-o", "nowhere/sheet.html"]);
    assert_eq!((said.status.code(), said.stdout.len()), (Some(2), 0));
    assert!(String::from_utf8_lossy(&said.stderr).contains("make the folder first"));
    fs::copy(&design, folder.join("own.toml")).expect("a copy");
    let said = run(&["own.toml", "-o", "own.toml"]);
    assert_eq!(said.status.code(), Some(2));
    assert!(String::from_utf8_lossy(&said.stderr).contains("would replace the design file"));
    assert_eq!(fs::read_dir(&folder).expect("the folder").count(), 2, "nothing half-written is left");
    fs::remove_dir_all(&folder).expect("removed");
}

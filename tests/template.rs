//! The template: what its files hold is read again and set against the design, and the program is run as a user runs it.

#![allow(clippy::unwrap_used)] // a test may panic

use std::{
    fs,
    path::{Path, PathBuf},
    process::{Command, Output},
    sync::Arc,
};

use assert_cmd::cargo::cargo_bin;
use roxmltree::{Document, Node};
use skinspan::{
    geometry::Contour,
    input::{Design, NamedText, read_design, read_tables},
    plan::Plan,
    report::{Face, Paper, Template},
    top::Top,
};
use uom::si::length::millimeter;

/// A micrometre, in millimetres: what the files are written to.
const MICROMETRE: f64 = 1e-3;

const ABOVE: Face = Face::Above;
const BELOW: Face = Face::Below;

fn example(name: &str) -> String {
    fs::read_to_string(Path::new(env!("CARGO_MANIFEST_DIR")).join("examples").join(name)).unwrap()
}

fn read(text: &str, drawing: Option<&NamedText>) -> Top {
    let file = NamedText { name: "top.toml".to_owned(), text: text.to_owned() };
    read_design(Design { file: &file, drawing }, &read_tables(&[]).unwrap(), None)
        .unwrap_or_else(|problems| panic!("{}", problems[0].render(false)))
}

fn top(name: &str) -> Top {
    read(&example(name), None)
}

fn near(found: f64, expected: f64) {
    assert!((found - expected).abs() < MICROMETRE, "{found} is not {expected}");
}

fn by_id<'d>(document: &'d Document<'_>, id: &str) -> Node<'d, 'd> {
    document.descendants().find(|node| node.attribute("id") == Some(id)).unwrap_or_else(|| panic!("no {id}"))
}

fn value(node: Node<'_, '_>, key: &str) -> f64 {
    let text = node.attribute(key).unwrap_or_else(|| panic!("no {key}"));
    text.trim_end_matches("mm").parse().unwrap()
}

/// Where a path goes, and the radius of each piece, zero where straight.
fn pieces(data: &str) -> Vec<([f64; 2], f64)> {
    let mut found = Vec::new();
    let spaced = data.replace('Z', "").replace(['M', 'L'], " L ").replace('A', " A ");
    let mut words = spaced.split_whitespace();
    while let Some(word) = words.next() {
        let mut next = || words.next().unwrap().parse::<f64>().unwrap();
        match word {
            "L" => found.push(([next(), next()], 0.0)),
            "A" => {
                let radius = next();
                assert!((next() - radius).abs() < 1e-12, "an ellipse");
                let _flags = [next(), next(), next()];
                found.push(([next(), next()], radius));
            }
            other => panic!("{other} in {data}"),
        }
    }
    found
}

/// The datum of a drawing on one sheet: the centre of its ring.
fn datum(document: &Document<'_>) -> [f64; 2] {
    let ring = by_id(document, "datum").descendants().find(|node| node.tag_name().name() == "circle").unwrap();
    [value(ring, "cx"), value(ring, "cy")]
}

#[test]
fn the_sheet_is_in_millimetres_and_its_outline_is_that_of_the_design() {
    let top = top("survey-launch.toml");
    let text = Template::new(&top, ABOVE).to_svg();
    let document = Document::parse(&text).unwrap();
    let root = document.root_element();
    let view: Vec<f64> = root.attribute("viewBox").unwrap().split(' ').map(|word| word.parse().unwrap()).collect();
    assert_eq!((view[2], view[3]), (value(root, "width"), value(root, "height")));
    let [x0, y0] = datum(&document);
    // 110 in by 76 in, corners of 14 in; upwards on paper is downwards in the file's numbers.
    let (length, width, round) = (2794.0, 1930.4, 355.6);
    let found = pieces(by_id(&document, "outline").attribute("d").unwrap());
    let arcs: Vec<_> = found.iter().filter(|(_, radius)| *radius > 0.0).collect();
    assert_eq!(arcs.len(), 4);
    let mut ends: Vec<[f64; 2]> = arcs.iter().map(|(to, _)| [to[0] - x0, y0 - to[1]]).collect();
    ends.sort_by(|a, b| a[0].total_cmp(&b[0]));
    for ((end, expected), (_, radius)) in
        ends.iter().zip([[0.0, width - round], [round, 0.0], [length - round, width], [length, round]]).zip(&arcs)
    {
        near(end[0], expected[0]);
        near(end[1], expected[1]);
        near(*radius, round);
    }
}

#[test]
fn the_outline_of_the_dxf_reads_back_to_a_micrometre() {
    for (name, holes) in [("survey-launch.toml", false), ("bow-wing.toml", true), ("kelp-harvester.toml", false)] {
        let own = top(name);
        let drawing = NamedText { name: "template.dxf".to_owned(), text: Template::new(&own, ABOVE).to_dxf() };
        // A patch stands on nothing.
        let hole = if holes { "[[hole]]\nname = \"h\"\nlayer = \"OPENINGS\"\n" } else { "" };
        let text = example("radar-pad.toml")
            .replace(r#"{ length = "36 in", width = "36 in" }"#, r#"{ drawing = "template.dxf", layer = "OUTLINE" }"#)
            .replace("[service]", &format!("{hole}[service]"));
        let back = read(&text, Some(&drawing));
        same(own.outline.contour(), back.outline.contour());
        assert_eq!(own.outline.holes().len(), back.outline.holes().len());
        for (one, other) in own.outline.holes().iter().zip(back.outline.holes()) {
            same(&one.contour, &other.contour);
        }
    }
}

/// The same line, wherever it begins.
fn same(one: &Contour, other: &Contour) {
    assert_eq!(one.vertices().len(), other.vertices().len());
    for vertex in one.vertices() {
        let twin = other
            .vertices()
            .iter()
            .find(|twin| twin.at.distance(vertex.at).get::<millimeter>() < MICROMETRE)
            .unwrap_or_else(|| panic!("nothing at {vertex:?}"));
        assert!((twin.bulge - vertex.bulge).value.abs() < 1e-9, "{vertex:?} {twin:?}");
    }
}

#[test]
fn every_fixing_has_its_cross_and_its_drills_in_place() {
    for name in ["survey-launch.toml", "rail-row.toml", "whip-rail.toml", "kelp-harvester.toml"] {
        let top = top(name);
        let plan = Plan::of(&top);
        for (view, up) in [(ABOVE, -1.0), (BELOW, 1.0)] {
            let text = Template::new(&top, view).to_svg();
            let document = Document::parse(&text).unwrap();
            let [x0, y0] = datum(&document);
            let groups: Vec<_> =
                by_id(&document, "layer-fixings").children().filter(|node| node.tag_name().name() == "g").collect();
            assert_eq!(groups.len(), plan.fixings.len(), "{name}");
            for (group, mark) in groups.iter().zip(&plan.fixings) {
                let circles: Vec<_> = group.children().filter(|node| node.tag_name().name() == "circle").collect();
                assert!(!circles.is_empty());
                for circle in circles {
                    near(value(circle, "cx") - x0, mark.at.x.get::<millimeter>());
                    near((value(circle, "cy") - y0) * up, mark.at.y.get::<millimeter>());
                    let drilled = |drill: &skinspan::advice::Drill| {
                        (drill.diameter.get::<millimeter>() / 2.0 - value(circle, "r")).abs() < MICROMETRE
                    };
                    assert!(mark.drills.iter().any(drilled), "{name} {}", mark.number);
                }
            }
            // Turned over, not mirrored: no text stands in a mirror.
            assert!(!text.contains("scale(") && !text.contains("matrix("));
            assert!(text.contains(&format!("{}: drill ", plan.fixings[0].number)));
        }
    }
}

#[test]
fn bars_measure_what_they_say() {
    let template = top("radar-pad.toml");
    let text = Template::new(&template, ABOVE).to_svg();
    let document = Document::parse(&text).unwrap();
    let bars = document.descendants().find(|node| node.attribute("class") == Some("scale-bars")).unwrap();
    let lines: Vec<f64> = bars
        .children()
        .filter_map(|node| node.attribute("d"))
        .filter_map(|data| data.strip_prefix('M')?.split_once(" H").map(|(from, to)| (from.to_owned(), to.to_owned())))
        .map(|(from, to)| to.parse::<f64>().unwrap() - from.split(' ').next().unwrap().parse::<f64>().unwrap())
        .collect();
    assert_eq!(lines.len(), 2);
    near(lines[0], 100.0);
    near(lines[1], 101.6);
}

/// What is printed of the drawing on each page: its left and upper edge on the paper of the drawing, its size.
fn windows(html: &str) -> Vec<[f64; 4]> {
    let number = |text: &str, from: &str| -> Vec<f64> {
        let rest = text.split_once(from).unwrap().1;
        let words = rest.split([')', '"']).next().unwrap().split([' ', ',']);
        words.map(|word| word.parse().unwrap()).collect()
    };
    html.split("<section class=\"tile\"")
        .skip(1)
        .map(|page| {
            let [moved, rect] = [
                number(page, "translate("),
                ["x=\"", "y=\"", "width=\"", "height=\""]
                    .map(|key| number(page.split_once("<rect").unwrap().1, key)[0])
                    .to_vec(),
            ];
            // The paper of the sheet is its view box.
            let sheet = page.split_once("viewBox=\"0 0 ").unwrap().1.split('"').next().unwrap().to_owned();
            let size: Vec<f64> = sheet.split(' ').map(|word| word.parse().unwrap()).collect();
            assert!(page.contains(&format!("width=\"{}mm\" height=\"{}mm\"", size[0], size[1])), "not at its size");
            assert!(page.contains("scale-bars"));
            [rect[0] - moved[0], rect[1] - moved[1], rect[2], rect[3]]
        })
        .collect()
}

fn shown(windows: &[[f64; 4]], at: [f64; 2]) -> usize {
    let holds = |window: &&[f64; 4]| (0..2).all(|k| at[k] >= window[k] && at[k] <= window[k] + window[k + 2]);
    windows.iter().filter(holds).count()
}

#[test]
fn tiles_show_the_whole_outline_and_leave_out_what_is_empty() {
    for (name, view, paper) in [
        ("survey-launch.toml", ABOVE, Paper::Letter),
        ("bow-wing.toml", BELOW, Paper::A4),
        ("galley-roof.toml", ABOVE, Paper::A4),
    ] {
        let top = top(name);
        let template = Template::new(&top, view);
        let html = template.to_tiles(paper, false);
        let windows = windows(&html);
        assert_eq!(windows.len(), template.tile_count(paper, false));
        let up = if view == ABOVE { -1.0 } else { 1.0 };
        let laid_up = top.outline.contour().beside(top.criteria.trim_allowance.value);
        let rims = top.outline.holes().iter().map(|hole| &hole.contour).chain([top.outline.contour()]).chain(&laid_up);
        for at in rims.flat_map(|rim| rim.flattened(skinspan::units::Length::new::<millimeter>(0.05))) {
            let at = [at.x.get::<millimeter>(), up * at.y.get::<millimeter>()];
            assert!(shown(&windows, at) >= 1, "{name}: {at:?} is on no page");
        }
        let of = html.split_once(" tiles are printed").unwrap().0.rsplit(' ').next().unwrap().parse::<usize>().unwrap();
        assert!(windows.len() <= of);
        assert_eq!(html.contains("struck through"), windows.len() < of);
    }
    // A top with nothing but its rim in the field has empty pages within.
    let roof = top("galley-roof.toml");
    let template = Template::new(&roof, ABOVE);
    assert!(template.to_tiles(Paper::A4, false).contains("struck through"));
}

#[test]
fn crosses_that_join_pages_stand_where_they_say() {
    let top = top("survey-launch.toml");
    for (view, up) in [(ABOVE, -1.0), (BELOW, 1.0)] {
        let html = Template::new(&top, view).to_tiles(Paper::A4, false);
        let mut known: Vec<[f64; 2]> = Vec::new();
        for page in html.split("<section class=\"tile\"").skip(1) {
            let numbers = |text: &str| -> Vec<f64> { text.split(' ').map(|word| word.parse().unwrap()).collect() };
            let moved = numbers(page.split_once("translate(").unwrap().1.split(')').next().unwrap());
            for cross in page.split("<path d=\"M").skip(1).filter(|rest| rest.contains(" h8 M")).take(4) {
                let at = numbers(cross.split(" h8").next().unwrap());
                // Four to the right of where its stroke begins; then as it says in words.
                let drawn = [at[0] + 4.0 - moved[0], up * (at[1] - moved[1])];
                let said = cross.split_once(">x ").unwrap().1.split(" mm").next().unwrap().replace(", y", "");
                let said = numbers(&said);
                for k in 0..2 {
                    assert!((drawn[k] - said[k]).abs() <= 0.051, "{drawn:?} {said:?}");
                }
                known.push([drawn[0], drawn[1]]);
            }
        }
        // Neighbours have the same cross, but for the outermost.
        let twins = |at: &[f64; 2]| {
            known.iter().filter(|other| (other[0] - at[0]).hypot(other[1] - at[1]) < MICROMETRE).count()
        };
        let shared = known.iter().filter(|at| twins(at) > 1).count();
        assert!(shared * 10 > known.len() * 9, "{shared} of {}", known.len());
    }
}

/// Who drills by the crosses of holes must not meet one that joins pages beside them.
#[test]
fn crosses_that_join_pages_stand_clear_of_holes() {
    for name in ["rail-row.toml", "kelp-harvester.toml"] {
        let top = top(name);
        let template = Template::new(&top, ABOVE);
        // Half of what neighbours share.
        let corners =
            windows(&template.to_tiles(Paper::A4, false)).into_iter().flat_map(|[left, above, wide, high]| {
                let ends = [above + 5.0, above + high - 5.0];
                [left + 5.0, left + wide - 5.0].into_iter().flat_map(move |x| ends.map(|y| [x, y]))
            });
        let corners: Vec<[f64; 2]> = corners.collect();
        for mark in &template.plan().fixings {
            let [x, y] = [mark.at.x.get::<millimeter>(), -mark.at.y.get::<millimeter>()];
            let off = corners.iter().map(|corner| (corner[0] - x).hypot(corner[1] - y)).fold(f64::INFINITY, f64::min);
            assert!(off >= 15.0 - 1e-6, "{name}: a cross stands {off} mm off hole {}", mark.number);
        }
    }
}

#[test]
fn pages_with_holes_alone_have_each_hole() {
    for name in ["survey-launch.toml", "rail-row.toml"] {
        let top = top(name);
        let template = Template::new(&top, ABOVE);
        let windows = windows(&template.to_tiles(Paper::Letter, true));
        assert!(windows.len() < template.tile_count(Paper::Letter, false) / 3);
        for mark in &template.plan().fixings {
            // With half of the overlap round it, since it is on the page that keeps it.
            for (right, down) in [(-4.9, -4.9), (4.9, -4.9), (4.9, 4.9), (-4.9, 4.9)] {
                let at = [mark.at.x.get::<millimeter>() + right, -mark.at.y.get::<millimeter>() + down];
                assert!(shown(&windows, at) >= 1, "{name}: hole {} is on no page", mark.number);
            }
        }
    }
}

#[test]
fn the_drawing_is_turned_over_by_its_face_alone_and_the_arrow_points_to_the_bow() {
    let wing = example("bow-wing.toml");
    for (face, forward, upwards, port) in [
        (ABOVE, "right", true, "upper"),
        (BELOW, "right", false, "lower"),
        (ABOVE, "left", true, "lower"),
        (BELOW, "left", false, "upper"),
    ] {
        let top = read(&wing.replace("forward = \"right\"", &format!("forward = \"{forward}\"")), None);
        let text = Template::new(&top, face).to_svg();
        let document = Document::parse(&text).unwrap();
        let [x0, y0] = datum(&document);
        // The hatch lies 22 in from the datum.
        let rim = pieces(by_id(&document, "openings-1").attribute("d").unwrap());
        let (x, y) = (rim[0].0[0] - x0, rim[0].0[1] - y0);
        near((x - 70.0 * 25.4).abs(), 8.0 * 25.4);
        near(y, if upwards { -558.8 } else { 558.8 });
        // The arrow stands beyond the end that it points to, its tip the outermost.
        let arrow = by_id(&document, "bow").descendants().find(|node| node.tag_name().name() == "path").unwrap();
        let corners = pieces(arrow.attribute("d").unwrap());
        let (foot, tip) = (corners[0].0[0] - x0, corners[1].0[0] - x0);
        if forward == "right" {
            assert!(foot > 98.0 * 25.4 && tip > foot);
        } else {
            assert!(foot < 0.0 && tip < foot);
        }
        assert!(text.contains(&format!("Bow on the {forward}, port on the {port} side.")));
    }
}

#[test]
fn names_that_contradict_where_the_bow_lies_are_told() {
    let said = |text: &str| {
        let words = Template::new(&read(text, None), ABOVE).to_text(&[], 120);
        words.split_whitespace().collect::<Vec<_>>().join(" ")
    };
    let wing = example("bow-wing.toml");
    assert!(!said(&wing).contains("By its name") && !said(&wing).contains("taken so"));
    let turned = said(&wing.replace("forward = \"right\"", "forward = \"left\""));
    assert!(turned.contains(
        "By its name starboard rail lies on the other side of the boat than it does with the bow to the left, as the file says \
         (`forward`). Either the name is wrong, or write `forward = \"right\"`."
    ));
    let unsaid = said(&wing.replace("forward = \"right\"\n", ""));
    assert!(unsaid.contains("Bow on the right, port on the upper side (taken so: the file says no `forward`)."));
    assert!(!unsaid.contains("By its name"));
    // Measured from below: fore and port lie as they cannot.
    let roof = example("galley-roof.toml");
    assert!(!said(&roof).contains("By their names"));
    let mirrored = said(
        &roof
            .replace("\"port side", "\"x side")
            .replace("\"starboard", "\"port")
            .replace("\"x side", "\"starboard side"),
    );
    assert!(mirrored.contains("By their names starboard side and fore bulkhead do not go together"), "{mirrored}");
}

/// Where a row of holes is wider than the page, what is drilled stands below the place.
#[test]
fn the_list_of_holes_fits_sixty_columns() {
    for name in ["whip-rail", "rail-row", "survey-launch", "radar-pad"] {
        let top = top(&format!("{name}.toml"));
        let template = Template::new(&top, ABOVE);
        let [narrow, wide] = [60, 120].map(|width| template.to_text(&[], width));
        let long: Vec<&str> = narrow.lines().filter(|line| line.chars().count() > 60).collect();
        assert!(long.is_empty(), "{name}: {long:#?}");
        let words =
            |page: &str| page.replace([';', ','], " ").split_whitespace().map(str::to_owned).collect::<Vec<_>>();
        assert_eq!(words(&narrow), words(&wide), "{name}");
    }
    let narrow = Template::new(&top("whip-rail.toml"), ABOVE).to_text(&[], 60);
    assert!(narrow.contains("\n          18.0 mm, then 6.6 mm; through; none\n"), "{narrow}");
}

#[test]
fn a_hole_near_a_conduit_is_told_with_its_place_and_every_caution_stands_in_every_form() {
    let text = example("survey-launch.toml")
        .replace("\"24 in\"], [\"104 in\", \"24 in\"", "\"47.75 in\"], [\"104 in\", \"47.75 in\"");
    let near = read(&text, None);
    let template = Template::new(&near, ABOVE);
    assert!(!template.clear_of_conduits());
    let words = template.to_text(&[], 120).replace("\n    ", " ");
    assert!(
        words.contains("Hole 5 (radar), x 35.00 in, y 48.54 in, stands in the band beside wiring: only 4.8 mm stay")
    );
    assert_eq!(words.matches("  NEAR A CONDUIT").count(), 2);
    assert!(
        template.to_svg().contains("NEAR A CONDUIT")
            && template.to_tiles(Paper::A4, true).contains("stands in the band")
    );
    let clear = top("survey-launch.toml");
    assert!(Template::new(&clear, ABOVE).clear_of_conduits());
    // Crown of 2 in over 76 in: 8 · 4 / (3 · 76) = 0.1404 in.
    assert!(words.contains("is about 3.6 mm (0.14 in) longer than drawn"));
    // Holes from below are told to one who looks from above, and drawn with dashes.
    let row = top("rail-row.toml");
    let words = Template::new(&row, ABOVE).to_text(&[], 80).replace("\n    ", " ");
    assert!(words.contains("Drilled from below") && words.contains("1 to 48"));
    assert!(!Template::new(&row, BELOW).to_text(&[], 80).contains("Drilled from"));
    assert!(words.contains("set a stop on the drill"));
}

#[test]
fn same_input_same_bytes() {
    let mut wing = top("bow-wing.toml");
    wing.title = "A & B <top> ⌀ × \u{7}".to_owned();
    Arc::make_mut(&mut wing.criteria).with_override("trim-allowance", "0 mm").unwrap();
    let files = |template: &Template<'_>| [template.to_svg(), template.to_dxf(), template.to_tiles(Paper::A4, false)];
    let (one, other) = (Template::new(&wing, ABOVE), Template::new(&wing, ABOVE));
    assert_eq!(files(&one), files(&other));
    assert!(!one.to_svg().contains("layer-moulded"));
    assert!(
        Document::parse(&one.to_svg())
            .is_ok_and(|document| document.root_element().has_tag_name(("http://www.w3.org/2000/svg", "svg")))
    );
    assert!(one.to_dxf().is_ascii());
}

#[test]
fn running_sizes_stand_at_their_places() {
    for (name, face, up) in
        [("rail-row.toml", ABOVE, -1.0), ("rail-row.toml", BELOW, 1.0), ("survey-launch.toml", ABOVE, -1.0)]
    {
        let top = top(name);
        let text = Template::new(&top, face).to_svg();
        let document = Document::parse(&text).unwrap();
        let [x0, y0] = datum(&document);
        let running = by_id(&document, "running");
        let (mut along, mut across) = (Vec::new(), Vec::new());
        for path in running.children().filter(|node| node.tag_name().name() == "path") {
            let data = path.attribute("d").unwrap().replace('M', "");
            let at: Vec<f64> = data.split(' ').take(2).map(|word| word.parse().unwrap()).collect();
            if data.contains(" v2 ") { along.push(at[0] - x0) } else { across.push((at[1] - y0) * up) }
        }
        let words: Vec<String> = running
            .children()
            .filter(|node| node.tag_name().name() == "text")
            .map(|node| node.text().unwrap().to_owned())
            .collect();
        assert_eq!(words.len(), along.len() + across.len());
        let said = |words: &String| words.trim_end_matches(" in").parse::<f64>().unwrap() * 25.4;
        for (at, words) in along.iter().chain(&across).zip(&words) {
            assert!((at - said(words)).abs() < 0.13, "{name}: {at} {words}");
        }
        // Every fixing and every pipe that runs along has its station.
        let has = |all: &[f64], wanted: f64| all.iter().any(|at| (at - wanted).abs() < 0.051);
        for mark in &Plan::of(&top).fixings {
            assert!(
                has(&along, mark.at.x.get::<millimeter>()) && has(&across, mark.at.y.get::<millimeter>()),
                "{name}"
            );
        }
        for support in &top.supports {
            assert!(has(&across, support.along.ends()[0].y.get::<millimeter>()), "{name}: {}", support.name);
            for post in support.posts() {
                assert!(has(&along, support.along.at(*post).x.get::<millimeter>()), "{name}: {}", support.name);
            }
        }
        // The line from each station ends at its words.
        let ends = |node: &Node<'_, '_>| {
            let data = node.attribute("d").unwrap();
            let end: Vec<f64> = data.split(" L").nth(1).unwrap().split(' ').map(|word| word.parse().unwrap()).collect();
            [end[0], end[1]]
        };
        let lines = running.children().filter(|node| node.tag_name().name() == "path");
        let texts = running.children().filter(|node| node.tag_name().name() == "text");
        for (line, text) in lines.zip(texts) {
            let ([x, y], at) = (ends(&line), [value(text, "x"), value(text, "y")]);
            if line.attribute("d").unwrap().contains(" v2 ") { near(x, at[0]) } else { near(y + 1.1, at[1]) }
        }
    }
}

#[test]
fn the_list_of_holes_has_each_drill_once() {
    for name in ["survey-launch.toml", "rail-row.toml", "whip-rail.toml"] {
        let top = top(name);
        let (plan, template) = (Plan::of(&top), Template::new(&top, ABOVE));
        let (csv, json) = (template.to_csv(), template.to_json());
        let drills: usize = plan.fixings.iter().map(|mark| mark.drills.len().max(1)).sum();
        assert_eq!(csv.lines().count(), drills + 1, "{name}");
        let holes = json["holes"].as_array().unwrap();
        assert_eq!(holes.len(), plan.fixings.len());
        let factor = if json["units"] == "us" { 25.4 } else { 1.0 };
        let mm = |value: &serde_json::Value| value["value"].as_f64().unwrap() * factor;
        for (hole, mark) in holes.iter().zip(&plan.fixings) {
            near(mm(&hole["x"]), mark.at.x.get::<millimeter>());
            near(mm(&hole["y"]), mark.at.y.get::<millimeter>());
            let drills = hole["drills"].as_array().unwrap();
            assert_eq!(drills.len(), mark.drills.len());
            for (drill, own) in drills.iter().zip(&mark.drills) {
                near(mm(&drill["diameter"]), own.diameter.get::<millimeter>());
                assert_eq!(drill["depth"].is_null(), own.depth.is_none());
            }
            let row = csv.lines().find(|line| line.starts_with(&format!("{},", mark.number))).unwrap();
            assert!(row.contains(&mark.held), "{row}");
        }
    }
}

/// The cells of a line, those in quotes without them.
fn cells(line: &str) -> Vec<String> {
    let (mut all, mut quoted) = (vec![String::new()], false);
    for letter in line.chars() {
        match letter {
            '"' => quoted = !quoted,
            ',' if !quoted => all.push(String::new()),
            _ => all.last_mut().unwrap().push(letter),
        }
    }
    all
}

#[test]
fn table_and_json_of_holes_say_what_the_plan_has() {
    let wired = example("survey-launch.toml")
        .replace("\"24 in\"], [\"104 in\", \"24 in\"", "\"47.75 in\"], [\"104 in\", \"47.75 in\"");
    let tapped = example("radar-pad.toml")
        .replace("\"through-bolt\"", "\"tapped-screw\"")
        .replace("washer      = { outside = \"40 mm\", thickness = \"4 mm\" }", "depth = \"30 mm\"");
    let (mut taps, mut depths, mut near_conduits, mut below) = (0, 0, 0, 0);
    for text in [wired, tapped, example("rail-row.toml"), example("whip-rail.toml")] {
        let top = read(&text, None);
        let (plan, template) = (Plan::of(&top), Template::new(&top, ABOVE));
        let (csv, json) = (template.to_csv(), template.to_json());
        let unit = if json["units"] == "us" { 25.4 } else { 1.0 };
        assert_eq!(json["forward"], top.bow().word());
        let mut lines = csv.lines();
        let heads = cells(lines.next().unwrap());
        let short = if json["units"] == "us" { "in" } else { "mm" };
        assert_eq!(heads[4], format!("x ({short})"));
        let holes = json["holes"].as_array().unwrap();
        for (mark, hole) in plan.fixings.iter().zip(holes) {
            let from = if mark.near == skinspan::section::Skin::Outer { "above" } else { "below" };
            let conduit = mark.in_band.as_ref().map(|near| near.conduit.clone());
            assert_eq!(hole["from"], from);
            assert_eq!(hole["tap"].as_str(), mark.tap.as_deref());
            assert_eq!(hole["near_conduit"].as_str(), conduit.as_deref());
            for (step, (drill, own)) in (1..).zip(mark.drills.iter().zip(hole["drills"].as_array().unwrap())) {
                let row = cells(lines.next().unwrap());
                let said = |head: &str| row[heads.iter().position(|own| own.starts_with(head)).unwrap()].clone();
                let mm = |head: &str| said(head).parse::<f64>().unwrap() * unit;
                assert_eq!((said("hole"), said("holds")), (mark.number.to_string(), mark.held.clone()));
                near(mm("x ("), mark.at.x.get::<millimeter>());
                near(mm("y ("), mark.at.y.get::<millimeter>());
                near(mm("diameter"), drill.diameter.get::<millimeter>());
                let depth = drill.depth.map(|depth| depth.get::<millimeter>());
                assert_eq!(said("depth").is_empty(), depth.is_none());
                let of_json = own["depth"]["value"].as_f64();
                assert_eq!(of_json.is_none(), depth.is_none());
                if let (Some(depth), Some(of_json)) = (depth, of_json) {
                    near(mm("depth"), depth);
                    near(of_json * unit, depth);
                    depths += 1;
                }
                assert_eq!(said("step"), step.to_string());
                assert_eq!((said("from").as_str(), said("through")), (from, drill.what.clone()));
                assert_eq!(said("tap"), mark.tap.clone().unwrap_or_default());
                assert_eq!(said("near conduit"), conduit.clone().unwrap_or_default());
                // Both call the drill by the same name, which is its size: a number of millimetres, or one of the shop's.
                assert_eq!(own["drill"], said("drill"));
                if let Some(size) = said("drill").strip_suffix(" mm") {
                    assert!((size.parse::<f64>().unwrap() - drill.diameter.get::<millimeter>()).abs() < 0.051);
                }
                taps += usize::from(mark.tap.is_some());
                near_conduits += usize::from(conduit.is_some());
                below += usize::from(from == "below");
            }
        }
        assert_eq!(lines.next(), None);
    }
    assert!(taps > 0 && depths > taps && near_conduits == 2 && below > 0, "{taps} {depths} {near_conduits} {below}");
}

#[test]
fn crosses_are_in_inches_too_where_the_shop_is() {
    let us = Template::new(&top("survey-launch.toml"), ABOVE).to_tiles(Paper::Letter, false);
    let cross = us.split(">x ").find(|rest| rest.split('<').next().unwrap().ends_with(" mm")).unwrap();
    let mm: f64 = cross.split(',').next().unwrap().parse().unwrap();
    assert!(us.contains(&format!(">x {:.2}, y ", mm / 25.4)) && us.contains(" in</text>"));
    let si = Template::new(&top("kelp-harvester.toml"), ABOVE).to_tiles(Paper::A4, false);
    assert!(si.split(">x ").skip(1).all(|rest| rest.split('<').next().unwrap().ends_with(" mm")));
}

fn folder(name: &str) -> PathBuf {
    let folder = Path::new(env!("CARGO_TARGET_TMPDIR")).join(format!("template-{name}"));
    let _ = fs::remove_dir_all(&folder);
    fs::create_dir_all(&folder).unwrap();
    folder
}

fn run(folder: &Path, arguments: &[&str]) -> Output {
    Command::new(cargo_bin("skinspan")).current_dir(folder).arg("template").args(arguments).output().unwrap()
}

#[test]
fn the_program_writes_one_of_each_form_and_says_so() {
    let here = folder("forms");
    fs::write(here.join("pad.toml"), example("radar-pad.toml")).unwrap();
    let done = run(&here, &["pad.toml"]);
    let words = String::from_utf8(done.stdout).unwrap();
    assert_eq!(done.status.code(), Some(0), "{}", String::from_utf8_lossy(&done.stderr));
    for end in ["svg", "dxf", "html"] {
        let name = format!("pad-template.{end}");
        assert!(words.contains(&format!("wrote {name}")), "{words}");
        assert!(fs::metadata(here.join(&name)).unwrap().len() > 1000);
    }
    assert!(words.lines().all(|line| line.chars().count() <= 80), "{words}");
    assert!(words.contains("4    14.00 in    18.00 in  9.0 mm"), "{words}");
    // Lists of holes where they are asked for.
    let done = run(&here, &["pad.toml", "-o", "holes.csv", "-o", "holes.json"]);
    assert_eq!(done.status.code(), Some(0), "{}", String::from_utf8_lossy(&done.stderr));
    assert!(
        fs::read_to_string(here.join("holes.csv"))
            .unwrap()
            .starts_with("hole,holds,fixing,from,x (in),y (in),step,drill")
    );
    let json: serde_json::Value = serde_json::from_str(&fs::read_to_string(here.join("holes.json")).unwrap()).unwrap();
    assert_eq!(json["holes"].as_array().unwrap().len(), 6);
    // What is of pages alone is not passed over where there are none.
    let done = run(&here, &["pad.toml", "--tiles", "a4", "-o", "pad.svg"]);
    let said = String::from_utf8(done.stderr).unwrap();
    assert_eq!(done.status.code(), Some(2));
    assert!(said.contains("`--tiles` is of the pages for a printer") && said.contains("add `-o pad.html`"), "{said}");
    let near = example("survey-launch.toml").replace("\"24 in\"", "\"52 in\"");
    fs::write(here.join("near.toml"), near).unwrap();
    let done = run(&here, &["near.toml", "-o", "near.svg"]);
    assert_eq!(done.status.code(), Some(1));
    assert!(here.join("near.svg").exists() && !here.join("near-template.dxf").exists());
}

#[test]
fn pages_of_holes_alone_take_a_hole() {
    let here = folder("no-holes");
    fs::write(here.join("roof.toml"), example("galley-roof.toml")).unwrap();
    let done = run(&here, &["roof.toml", "--holes-only", "-o", "roof.html"]);
    let said = String::from_utf8(done.stderr).unwrap();
    assert_eq!((done.status.code(), said.contains("there are no holes to print")), (Some(2), true), "{said}");
    assert!(!here.join("roof.html").exists());
}

#[test]
fn what_cannot_be_written_is_refused_before_anything_is() {
    let here = folder("refused");
    fs::write(here.join("wing.dxf"), example("bow-wing.dxf")).unwrap();
    let drawn = example("bow-wing.toml");
    let points = drawn.split_once("\noutline = {").unwrap();
    let behind = points.1.split_once("] }\n").unwrap().1;
    let text = format!("{}\noutline = {{ drawing = \"wing.dxf\", layer = \"OUTLINE\" }}\n{behind}", points.0);
    fs::write(here.join("wing.toml"), text).unwrap();
    for (arguments, cause, way) in [
        (vec!["wing.toml", "-o", "wing.pdf"], "says no form", "`.svg`"),
        (vec!["wing.toml", "-o", "plan"], "says no form", "`.html`"),
        (vec!["wing.toml", "-o", "a.svg", "-o", "wing.dxf"], "would replace wing.dxf", "choose another name"),
        (vec!["wing.toml", "-o", "a.svg", "-o", "a.svg"], "written twice", "once"),
        (vec!["wing.toml", "-o", "none/a.svg"], "cannot write none/a.svg", "make the folder"),
        (vec!["absent.toml"], "cannot read absent.toml", "skinspan new"),
    ] {
        let done = run(&here, &arguments);
        let said = String::from_utf8(done.stderr).unwrap();
        assert_eq!(done.status.code(), Some(2), "{arguments:?}");
        assert!(said.contains(cause) && said.contains(way), "{arguments:?}: {said}");
        assert!(done.stdout.is_empty() && !here.join("a.svg").exists());
    }
    assert_eq!(fs::read_to_string(here.join("wing.dxf")).unwrap(), example("bow-wing.dxf"));
    // By its own drawing it is drawn all the same.
    assert_eq!(run(&here, &["wing.toml", "-o", "b.dxf"]).status.code(), Some(0));
}

#[test]
fn a_template_of_a_top_that_does_not_hold_says_so_on_every_paper() {
    let fails = read(&format!("{}\n[criteria]\ncore-shear-factor = \"300\"\n", example("survey-launch.toml")), None);
    let template = Template::new(&fails, ABOVE);
    let said = template.not_for_building().unwrap();
    assert!(said.starts_with("NOT FOR BUILDING: the check says that this top does not hold ("), "{said}");
    assert!(said.contains("by the hand method alone"), "{said}");
    let svg = template.to_svg();
    let document = Document::parse(&svg).unwrap();
    assert!(by_id(&document, "not-for-building").text().unwrap().starts_with("NOT FOR BUILDING"));
    // A note says why.
    let notes = by_id(&document, "notes");
    let mut notes = notes.descendants().filter(|node| node.has_tag_name("text")).filter_map(|node| node.text());
    assert!(notes.any(|note| note.contains("NOT FOR BUILDING: the check says")), "{svg}");
    let tiles = template.to_tiles(Paper::A4, false);
    let pages = template.tile_count(Paper::A4, false);
    assert!(tiles.matches("NOT FOR BUILDING").count() > pages, "{pages}");
    assert_eq!(template.to_json()["not_for_building"], said);
    // In the drawing for a cutter it stands on a layer of its own, and the reason with it.
    let dxf = template.to_dxf().replace("\r\n", "\n");
    assert!(dxf.contains("LAYER\n  2\nNOT-FOR-BUILDING\n"), "the layer is not in the table of layers");
    let warned = |words: &str| {
        let texts = dxf.split("\n  0\n").filter(|entity| entity.starts_with("TEXT\n  8\nNOT-FOR-BUILDING\n"));
        texts.filter(|entity| entity.contains(&format!("\n  1\n{words}"))).count()
    };
    assert_eq!([warned("NOT FOR BUILDING\n"), warned("NOT FOR BUILDING: the check says")], [1, 1], "{dxf}");
    // A list is sorted and cut up: each of its lines says it.
    let csv = template.to_csv();
    let mut lines = csv.lines();
    assert!(lines.next().unwrap().ends_with(",not for building"), "{csv}");
    assert!(csv.lines().count() > 1 && lines.all(|line| line.contains("NOT FOR BUILDING: the check says")), "{csv}");
    assert!(joined(&template.to_text(&[], 100)).contains(said));
    let holds = top("survey-launch.toml");
    let template = Template::new(&holds, ABOVE);
    assert_eq!(template.not_for_building(), None);
    let papers =
        [template.to_svg(), template.to_tiles(Paper::A4, false), template.to_text(&[], 100), template.to_csv()];
    for text in papers.into_iter().chain([template.to_dxf()]) {
        assert!(!text.contains("NOT FOR BUILDING") && !text.contains("NOT-FOR-BUILDING"));
    }
}

fn joined(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

//! What is drawn and printed, against the plan and the analysis that it is drawn from.

use roxmltree::Node;
use skinspan::{
    analysis::Spread,
    check::{CHECKS, Method, Outcome, PliesUsed, core_shear_used},
    geometry::Axis,
    plan::{Cut, Filled, Plan},
    report::{Report, frame_loads, to_json, to_sheet, to_text},
    top::{Forward, Top},
    units::{Dimensioned, Length, show, usual_unit},
};

use crate::{by_id, document, is_rounded, made, row, table, text, top};

fn is(node: &Node<'_, '_>, name: &str, class: &str) -> bool {
    node.tag_name().name() == name && node.attribute("class") == Some(class)
}

fn number(node: Node<'_, '_>, key: &str) -> f64 {
    node.attribute(key).and_then(|value| value.parse().ok()).unwrap_or_else(|| panic!("no {key}"))
}

/// Numbers of a path, in their order.
fn numbers(node: Node<'_, '_>) -> Vec<f64> {
    let data = node.attribute("d").expect("a path");
    let spaced: String = data.chars().map(|letter| if letter.is_ascii_alphabetic() { ' ' } else { letter }).collect();
    spaced.split_whitespace().map(|word| word.parse().expect("a number")).collect()
}

/// A hundredth of a millimetre, to which drawings are written.
const WRITTEN: f64 = 0.011;

#[test]
fn the_arrow_points_to_the_bow_and_the_caption_says_where_that_is() {
    for made in made() {
        let document = document(&made.sheet);
        let figure = by_id(&document, "plan-figure");
        let (bow, name) = (top(made.name).bow(), made.name);
        let arrow = figure.descendants().find(|node| is(node, "g", "bow")).expect("an arrow");
        let line = arrow.first_element_child().expect("its line");
        // From M to H, then the head.
        let data = line.attribute("d").expect("a path").replace('M', "").replace('H', " ");
        let places: Vec<f64> = data
            .split('m')
            .next()
            .unwrap_or_default()
            .split_whitespace()
            .map(|word| word.parse().expect("a number"))
            .collect();
        let way = places[2] - places[0];
        assert!(if bow == Forward::Right { way > 1.0 } else { way < -1.0 }, "{name}: {data}");
        // The word stands beyond the tip.
        let word = arrow.descendants().find(|node| node.tag_name().name() == "text").expect("a word");
        assert!((number(word, "x") - places[2]) * way > 0.0, "{name}");
        assert!(text(figure).contains(&format!("The bow lies to the {}", bow.word())), "{name}");
    }
}

/// Letters of the cut with their places, and what they stand for.
fn letters(figure: Node<'_, '_>, keys: Node<'_, '_>) -> Vec<(f64, f64, String)> {
    let words: Vec<(String, String)> = keys
        .children()
        .filter(|node| node.tag_name().name() == "dt")
        .map(|term| (text(term), text(term.next_sibling_element().expect("its words"))))
        .collect();
    let own = figure.descendants().filter(|node| is(node, "text", "t mid"));
    let named = own.filter_map(|node| {
        let (_, words) = words.iter().find(|(letter, _)| *letter == text(node))?;
        Some((number(node, "x"), number(node, "y"), words.clone()))
    });
    named.collect()
}

#[test]
fn a_cut_has_port_on_the_left_and_its_parts_where_they_lie() {
    let launch = {
        let (top, table) = (top("survey-launch"), table());
        to_sheet(&Report::by_hand(&top, &table))
    };
    let sheets = made().iter().map(|made| (made.name, made.sheet.as_str())).chain([("survey-launch", launch.as_str())]);
    let mut pipes = 0;
    for (name, sheet) in sheets.filter(|(name, _)| ["ferry-tender", "bow-wing", "survey-launch"].contains(name)) {
        let (top, document) = (top(name), document(sheet));
        let figure = by_id(&document, "section-figure");
        let keys = document.descendants().find(|node| is(node, "dl", "rows key")).expect("a key");
        let sides: Vec<(f64, String)> = figure
            .descendants()
            .filter(|node| node.attribute("class").is_some_and(|class| class.starts_with("t-soft")))
            .filter(|node| ["port", "starboard"].contains(&text(*node).as_str()))
            .map(|node| (number(node, "x"), text(node)))
            .collect();
        let [(left, first), (right, second)] = &sides[..] else { panic!("{name}: {sides:?}") };
        assert!(left < right && first == "port" && second == "starboard", "{name}: {sides:?}");
        let letters = letters(figure, keys);
        let at = |begins: &str| {
            let own = letters.iter().find(|(_, _, words)| words.starts_with(begins));
            own.unwrap_or_else(|| panic!("{name}: no {begins} in {letters:?}"))
        };
        assert!(at("Port rail").0 < at("Starboard rail").0, "{name}: {letters:?}");
        // A to Z from the left, above and below together, where what they name lies.
        let scale: f64 = text(figure)
            .split("Scale 1:")
            .nth(1)
            .map_or(1.0, |rest| rest.split(' ').next().expect("a number").parse().expect("a scale"));
        let skins: Vec<Node<'_, '_>> = figure.descendants().filter(|node| is(node, "rect", "skin")).collect();
        let under = skins.iter().map(|skin| number(*skin, "y") + number(*skin, "height")).fold(0.0, f64::max);
        let thin: Vec<Vec<f64>> = figure.descendants().filter(|node| is(node, "path", "thin")).map(numbers).collect();
        // What the letters lead to lies on the sides that the names say.
        let leads_to = |letter: f64| {
            let line = thin.iter().find(|line| line.len() == 4 && (line[0] - letter).abs() < WRITTEN);
            line.unwrap_or_else(|| panic!("{name}: no line from {letter}"))[2]
        };
        assert!(leads_to(at("Port rail").0) + 5.0 < leads_to(at("Starboard rail").0), "{name}");
        for pipe in figure.descendants().filter(|node| is(node, "ellipse", "line")) {
            let (x, y, high) = (number(pipe, "cx"), number(pipe, "cy"), number(pipe, "ry"));
            let wanted = top.supports.iter().find_map(|support| support.pipe()).expect("a pipe").outside;
            let wanted = wanted.get::<uom::si::length::millimeter>() / 2.0 / scale;
            assert!(
                (high - wanted).abs() < WRITTEN && (y - high - under).abs() < 2.0 * WRITTEN,
                "{name}: {high} {wanted}"
            );
            // Its letter's line ends above its middle, and the letter stands below it.
            assert!(
                thin.iter().any(|line| line.len() == 4 && (line[2] - x).abs() < WRITTEN && line[3] > y),
                "{name}: nothing leads to the pipe at {x}"
            );
            assert!(letters.iter().any(|(_, at, _)| at - 2.4 > y + high), "{name}");
            pipes += 1;
        }
        // Each stretch ends at a stroke.
        let strokes: Vec<f64> =
            thin.iter().filter(|line| line.len() == 6).flat_map(|line| [line[0], line[3]]).collect();
        let boards: Vec<f64> = figure
            .descendants()
            .filter(|node| is(node, "rect", "fill"))
            .flat_map(|board| [number(board, "x"), number(board, "x") + number(board, "width")])
            .collect();
        for end in boards {
            assert!(strokes.iter().any(|stroke| (stroke - end).abs() < 2.0 * WRITTEN), "{name}: {end} of {strokes:?}");
        }
        // And so does the conduit, between its neighbours on the line.
        let plan = Plan::of(&top);
        let cut = Cut::telling(&top, &plan.fixings);
        assert_eq!(cut.axis, Axis::Y);
        let edges = cut.runs.iter().filter(|run| run.filled == Filled::Edge).count();
        let drawn = figure.descendants().filter(|node| is(node, "rect", "fill")).count();
        assert!(drawn >= edges, "{name}");
    }
    assert!(pipes >= 7, "{pipes}");
}

/// On a narrow screen letters are as high as that, in millimetres of the drawing.
const NARROW: f64 = 3.8;

#[test]
fn numbers_of_plies_and_the_words_of_the_bar_stand_clear_on_a_narrow_screen_too() {
    let mut numbered = 0;
    for made in made() {
        let document = document(&made.sheet);
        let numbers = |x: f64| -> Vec<f64> {
            let own = by_id(&document, "plies-figure").descendants().filter(|node| is(node, "text", "t-soft mid"));
            own.filter(|node| (number(*node, "x") - x).abs() < WRITTEN).map(|node| number(node, "y")).collect()
        };
        for column in [9.0, 85.0].map(numbers) {
            assert!(column.windows(2).all(|pair| pair[1] - pair[0] >= NARROW), "{}: {column:?}", made.name);
            numbered += column.len();
        }
        let figure = by_id(&document, "section-figure");
        let words: Vec<(f64, String)> = figure
            .descendants()
            .filter(|node| is(node, "text", "t mid"))
            .map(|node| (number(node, "y"), text(node)))
            .collect();
        let bar = words.iter().find(|(_, words)| words.ends_with(" in") || words.ends_with(" mm")).expect("a bar").0;
        let letters = words.iter().filter(|(_, words)| words.len() == 1).map(|(y, _)| *y);
        assert!(letters.into_iter().all(|letter| letter < bar - NARROW), "{}: {words:?}", made.name);
    }
    assert!(numbered >= 10, "{numbered}");
}

/// A strip on two walls: everything that is worth a cut lies along it.
fn strip(forward: &str) -> Top {
    let text = format!(
        "title = \"strip\"\nreport = \"si\"\n\
         [top]\noutline = {{ length = \"2400 mm\", width = \"700 mm\" }}\nforward = \"{forward}\"\nprocess = \"hand\"\n\
         resin = \"vinylester\"\nouter = [\"3 x biaxial 600 g/m2 @ 0 deg, fibre 50 %\"]\n\
         core = {{ material = \"pvc-foam\", density = \"80 kg/m3\", thickness = \"38.1 mm\" }}\n\
         inner = [\"3 x biaxial 600 g/m2 @ 0 deg, fibre 50 %\"]\n\
         [[wall]]\nname = \"one\"\nseat = \"30 mm\"\nalong = [[\"300 mm\", \"0 mm\"], [\"300 mm\", \"700 mm\"]]\n\
         [[wall]]\nname = \"other\"\nseat = \"30 mm\"\nalong = [[\"1900 mm\", \"0 mm\"], [\"1900 mm\", \"700 mm\"]]\n\
         [service]\nspeed = \"none\"\nstorm = \"none\"\ntrailer = \"none\"\nslam = \"none\"\npeople = 1\n\
         walking = \"no-walk\"\nunderside = \"blocked\"\nsun = \"none\"\n"
    );
    let file = skinspan::input::NamedText { name: "strip.toml".to_owned(), text };
    skinspan::input::read_design(&file, &table(), None)
        .unwrap_or_else(|problems| panic!("{}", problems[0].render(false)))
}

#[test]
fn a_cut_along_the_top_has_the_bow_where_it_lies() {
    for (forward, first, last) in [("right", "stern", "bow"), ("left", "bow", "stern")] {
        let (top, table) = (strip(forward), table());
        let sheet = to_sheet(&Report::by_hand(&top, &table));
        let document = document(&sheet);
        let figure = by_id(&document, "section-figure");
        assert!(text(figure).contains("along at y 350 mm"), "{}", text(figure));
        let sides: Vec<String> = figure
            .descendants()
            .filter(|node| node.attribute("class").is_some_and(|class| class.starts_with("t-soft")))
            .map(text)
            .filter(|words| ["bow", "stern"].contains(&words.as_str()))
            .collect();
        assert_eq!(sides, [first, last], "{forward}");
        // The walls stand in the order of the file, from the left.
        let keys = document.descendants().find(|node| is(node, "dl", "rows key")).expect("a key");
        let letters = letters(figure, keys);
        let at = |begins: &str| letters.iter().find(|(_, _, words)| words.starts_with(begins)).expect("a wall").0;
        assert!(at("One") < at("Other"), "{letters:?}");
    }
}

#[test]
fn holes_from_below_begin_at_the_inner_skin() {
    let (top, table) = (top("rail-row"), table());
    let sheet = to_sheet(&Report::by_hand(&top, &table));
    let document = document(&sheet);
    let figure = by_id(&document, "section-figure");
    let skins: Vec<Node<'_, '_>> = figure.descendants().filter(|node| is(node, "rect", "skin")).collect();
    let under = skins.iter().map(|skin| number(*skin, "y") + number(*skin, "height")).fold(0.0, f64::max);
    let sky = skins.iter().map(|skin| number(*skin, "y")).fold(f64::INFINITY, f64::min);
    let holes: Vec<Node<'_, '_>> = figure.descendants().filter(|node| is(node, "rect", "hole")).collect();
    assert!(!holes.is_empty());
    for hole in holes {
        let ends = [number(hole, "y"), number(hole, "y") + number(hole, "height")];
        assert!((ends[1] - under).abs() < 2.0 * WRITTEN && ends[0] > sky + 1.0, "{ends:?} {sky} {under}");
    }
}

/// What is said of a map below its drawing, and the values of its lines.
struct Said {
    caption: String,
    /// On the lines, then beside the tints from above.
    lines: Vec<f64>,
    tints: Vec<f64>,
    largest: f64,
}

fn said(sheet: &str, id: &str) -> Said {
    let document = document(sheet);
    let figure = by_id(&document, id);
    let caption = text(figure.descendants().find(|node| node.tag_name().name() == "figcaption").expect("a caption"));
    let words = text(figure.descendants().find(|node| node.tag_name().name() == "desc").expect("a description"));
    let largest = words.split(" up to ").last().expect("a largest").split(' ').next().expect("a number");
    let values = |class: &str| -> Vec<(f64, f64)> {
        let own = figure.descendants().filter(|node| is(node, "text", class));
        own.filter_map(|node| Some((number(node, "y"), text(node).parse().ok()?))).collect()
    };
    let mut tints = values("t");
    tints.sort_by(|a, b| a.0.total_cmp(&b.0));
    Said {
        caption,
        lines: values("on").into_iter().map(|(_, value)| value).collect(),
        tints: tints.into_iter().map(|(_, value)| value).collect(),
        largest: largest.parse().unwrap_or_else(|_| panic!("{words}")),
    }
}

fn most(spread: &Spread) -> (f64, usize) {
    let peak = spread.largest().expect("places");
    (spread.values[peak], spread.cases[peak])
}

/// Each map has the largest of what all loads do, the case that makes it, and the error of its check.
#[test]
fn maps_print_what_they_are_drawn_from() {
    for name in ["galley-roof", "ferry-tender"] {
        let (top, table) = (top(name), table());
        let report = Report::new(&top, &table);
        let analysis = report.analysis.as_ref().expect("an analysis");
        let sheet = &made().iter().find(|made| made.name == name).expect("a sheet").sheet;
        let all = analysis.all_over().expect("a solution");
        let by_plate = |check: &str| {
            let own = |outcome: &&Outcome| CHECKS[outcome.check].id() == check && outcome.method == Method::Plate;
            report.envelope.iter().find(own).expect("an outcome")
        };
        // As many decimals as are printed.
        let rounded = |said: &Said, exact: f64| {
            let step = (said.tints[0] - said.tints[1]).abs();
            assert!((said.largest - exact).abs() <= step / 2.0, "{name}: {} {exact}", said.largest);
        };
        let ordered = |said: &Said| {
            assert!(said.tints.windows(2).all(|pair| pair[0] > pair[1]), "{name}: {:?}", said.tints);
            let known = |value: &&f64| said.tints.iter().any(|tint| (tint - **value).abs() < 1e-9);
            let others: Vec<&f64> = said.lines.iter().filter(|value| !known(value)).collect();
            // The largest value alone is no line.
            assert!(others.len() <= 1, "{name}: {others:?} {:?}", said.tints);
        };
        let sag = said(sheet, "map-sag");
        let (largest, case) = most(&all.sag());
        let unit = usual_unit(Length::from_si(largest), top.report).expect("a unit");
        rounded(&sag, unit.of_si(largest));
        ordered(&sag);
        assert!(
            sag.caption.contains(&format!("The largest is that of {}.", analysis.cases[case].title)),
            "{}",
            sag.caption
        );
        let error = analysis.fields().find(|forces| forces.case == case).expect("forces").error.sag.value;
        assert!(sag.caption.contains(&format!("Numerical error {:.1} %.", error * 100.0)), "{}", sag.caption);
        let faces: Vec<_> = PliesUsed::new(analysis)
            .regions()
            .map(|region| (region, analysis.sections.of(region).section.face_strains()))
            .collect();
        let strains = all.spread(&|_, region, state| {
            let (_, faces) = faces.iter().find(|(own, _)| *own == region).expect("its faces");
            faces.largest(&state.resultants)
        });
        let strain = said(sheet, "map-strain");
        rounded(&strain, most(&strains).0 * 100.0);
        ordered(&strain);
        let title = &analysis.cases[most(&strains).1].title;
        assert!(strain.caption.contains(&format!("The largest is that of {title}.")), "{}", strain.caption);
        let plies = PliesUsed::new(analysis);
        let used = all.spread(&|case, region, state| plies.most(case, region, state).unwrap_or_default());
        let ply = said(sheet, "map-ply-failure");
        rounded(&ply, most(&used).0 * 100.0);
        ordered(&ply);
        let shears =
            all.spread(&|case, region, state| core_shear_used(analysis, case, region, state).unwrap_or_default());
        let shear = said(sheet, "map-core-shear");
        rounded(&shear, most(&shears.smoothed()).0 * 100.0);
        ordered(&shear);
        for (check, said) in [("ply-failure", &ply), ("core-shear", &shear)] {
            let error = by_plate(check).numerical_error().expect("an error").value;
            assert!(said.caption.contains(&format!("Numerical error {:.1} %.", error * 100.0)), "{}", said.caption);
        }
        // The topmost line lies within what the check counts, which leaves peaks and the error out.
        let outcome = by_plate("core-shear");
        let error = outcome.numerical_error().expect("an error").value;
        let counted = outcome.utilisation().expect("a number").value / (1.0 + error) * 100.0;
        let step = shear.tints[0] - shear.tints[1];
        assert!(
            shear.tints[0] < counted && shear.tints[0] + step > counted.min(shear.largest) * 0.998,
            "{counted} {:?}",
            shear.tints
        );
    }
}

/// Pushes and pulls of supports and posts are the largest of the analysis with its error, each in its own column.
#[test]
fn frame_loads_are_those_of_the_analysis() {
    let (top, table) = (top("survey-launch"), table());
    let report = Report::new(&top, &table);
    let analysis = report.analysis.as_ref().expect("an analysis");
    let (json, sheet) = (to_json(&report), to_sheet(&report));
    let document = document(&sheet);
    let part = by_id(&document, "frame");
    let cells = |head: &str| -> Vec<String> {
        let row = part.descendants().find(|node| {
            node.tag_name().name() == "tr"
                && node.first_element_child().is_some_and(|head_cell| text(head_cell).starts_with(head))
        });
        let row = row.unwrap_or_else(|| panic!("no row {head}"));
        row.children()
            .filter(|node| node.tag_name().name() == "td")
            .map(|cell| text(cell).split_whitespace().take(2).collect::<Vec<_>>().join(" "))
            .collect()
    };
    let close = |found: f64, wanted: f64| assert!((found - wanted).abs() <= 1e-9 * wanted.abs(), "{found} {wanted}");
    let (mut posts, mut with_error) = (0, 0);
    for load in frame_loads(&report) {
        let own = || analysis.fields().filter_map(|forces| forces.pipes.iter().find(|pipe| pipe.pipe == load.pipe));
        let largest = |of: &dyn Fn(&skinspan::analysis::PipeForces) -> f64| own().map(of).fold(0.0, f64::max);
        let plate = load.plate.expect("a plate");
        close(plate.push.value.value, largest(&|pipe| pipe.push.value * (1.0 + pipe.along_error[0].value)));
        close(plate.pull.value.value, largest(&|pipe| pipe.pull.value * (1.0 + pipe.along_error[1].value)));
        let moment = load.moment.expect("a pipe that bends");
        close(moment.value.value, largest(&|pipe| pipe.bent.moment.value * (1.0 + pipe.bent.error.value)));
        let hand = load.hand.expect("by hand");
        close(load.push().0.value.value, hand.push.value.value.max(plate.push.value.value));
        close(load.pull().0.value.value, hand.pull.value.value.max(plate.pull.value.value));
        for (number, post) in load.posts.iter().enumerate() {
            let of = |pick: &dyn Fn(&skinspan::analysis::PostForces) -> f64, error: usize| {
                largest(&|pipe| {
                    let here = pipe.posts.iter().find(|own| {
                        let along = top.supports[load.pipe].along.place(own.at).along;
                        (along - post.along).abs().value < 1e-9
                    });
                    here.map_or(0.0, pick) * (1.0 + pipe.along_error[error].value)
                })
            };
            close(post.push.value.value, of(&|own| own.push.value, 0));
            close(post.pull.value.value, of(&|own| own.pull.value, 1));
            posts += number.min(1);
        }
        with_error += usize::from(own().any(|pipe| pipe.along_error[0].value > 1e-3 && pipe.bent.error.value > 1e-3));
    }
    assert!(posts > 0 && with_error > 0, "{posts} {with_error}");
    for support in json["frame"].as_array().expect("supports") {
        let shown = cells(support["support"].as_str().expect("a name"));
        for (cell, key) in shown.iter().zip(["push", "pull", "moment"]) {
            assert!(is_rounded(cell, &support[key]), "{}: {key} {cell}", support["support"]);
        }
    }
    // A table has the first post of each pipe under its pipe.
    let post = &json["frame"][0]["posts"][0];
    let shown = cells("its post at");
    assert!(is_rounded(&shown[0], &post["push"]) && is_rounded(&shown[1], &post["pull"]), "{shown:?} {post}");
    // Footings, column by column.
    let foot = analysis
        .mounts
        .iter()
        .position(|mount| matches!(mount.on, skinspan::analysis::MountOn::Gear(_)))
        .expect("gear");
    let whole = |of: &dyn Fn(&skinspan::analysis::MountForces) -> f64| {
        analysis.mount_forces.iter().filter(|forces| forces.mount == foot).map(of).fold(0.0, f64::max)
    };
    let force = |value: f64| show(skinspan::units::Force::from_si(value), top.report);
    let wanted =
        [whole(&|own| own.whole.push.value), whole(&|own| own.whole.lift.value), whole(&|own| own.whole.side.value)];
    assert_eq!(cells("radar")[..3], wanted.map(force), "{wanted:?}");
    // What pushes it sideways, in all forms.
    let push = analysis.sideways().expect("it is pushed");
    let wind = if push.wind.value > 0.0 {
        format!(", {} of it wind on the edge of the top and on gear", show(push.wind, top.report))
    } else {
        String::new()
    };
    let words = format!(
        "sideways {} ({}){wind}, from any side, {} above the lower face",
        show(push.force, top.report),
        analysis.cases[push.case].id,
        show(push.height, top.report)
    );
    assert!(text(part).contains(&words), "{words}: {}", text(part));
    let report_text = anstream::adapter::strip_str(&to_text(&report, false, 120)).to_string();
    assert!(report_text.split_whitespace().collect::<Vec<_>>().join(" ").contains(&words), "{words}");
    assert_eq!(json["sideways"]["case"], analysis.cases[push.case].id);
    // How each row of fixings is set.
    let fixings = &json["fixings"][0];
    let own = part.descendants().find(|node| node.tag_name().name() == "article").expect("an article");
    let grip = row(own, "grip");
    let shortest = grip.split("shortest under the head ").nth(1).expect("a length");
    let first = |words: &str| words.split(' ').take(2).collect::<Vec<_>>().join(" ");
    assert!(is_rounded(&first(shortest), &fixings["shortest"]), "{grip}");
    let torque = row(own, "torque");
    let range = torque.split("it makes ").nth(1).and_then(|rest| rest.split(" in the bolt").next()).expect("a range");
    let (least, most) = range.split_once(" to ").expect("from and to");
    assert!(is_rounded(least, &fixings["torque"]["preload_least"]), "{torque}");
    assert!(is_rounded(most, &fixings["torque"]["preload_greatest"]), "{torque}");
}

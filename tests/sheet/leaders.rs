//! Lines from names and letters to what they name.

use roxmltree::Node;

use crate::{by_id, document, made, text};

/// Half of a letter's width and height in millimetres of the paper, somewhat less than names are set with.
const LETTER: [f64; 2] = [0.9, 1.8];

fn class<'a>(figure: Node<'a, 'a>, name: &str) -> impl Iterator<Item = Node<'a, 'a>> {
    figure.descendants().filter(move |node| node.attribute("class") == Some(name))
}

fn number(node: Node<'_, '_>, key: &str) -> f64 {
    node.attribute(key).and_then(|value| value.parse().ok()).unwrap_or_else(|| panic!("no {key}"))
}

/// Numbers of a path or of where a text stands, in their order.
fn numbers(node: Node<'_, '_>, key: &str) -> Vec<f64> {
    let data = node.attribute(key).unwrap_or_else(|| panic!("no {key}"));
    let spaced: String =
        data.chars().map(|one| if one.is_ascii_digit() || "-.".contains(one) { one } else { ' ' }).collect();
    spaced.split_whitespace().map(|word| word.parse().expect("a number")).collect()
}

/// What is left out at a break shows nothing: a line that ended there would name nothing.
#[test]
fn a_letter_above_the_cut_leads_to_what_is_drawn() {
    let mut led = 0;
    for made in made() {
        let document = document(&made.sheet);
        let figure = by_id(&document, "section-figure");
        let drawn: Vec<[f64; 2]> =
            class(figure, "skin").map(|skin| [number(skin, "x"), number(skin, "x") + number(skin, "width")]).collect();
        for line in class(figure, "thin").filter(|node| node.tag_name().name() == "path") {
            // From the letter, to the place, down into it.
            let [_, _, to, _, _] = numbers(line, "d")[..] else { continue };
            assert!(
                drawn.iter().any(|[from, end]| (from + 0.3..end - 0.3).contains(&to)),
                "{}: {to} {drawn:?}",
                made.name
            );
            led += 1;
        }
    }
    assert!(led >= 8, "{led}");
}

/// A small thing has its name beside it before what runs past it takes the room.
#[test]
fn no_line_on_the_plan_runs_through_a_name() {
    for made in made() {
        let document = document(&made.sheet);
        let figure = by_id(&document, "plan-figure");
        let names: Vec<(String, [f64; 3])> = class(figure, "on-plan")
            .map(|name| {
                let [x, y, turned] = numbers(name, "transform")[..] else { panic!("a place") };
                (text(name), [x, y, turned])
            })
            .collect();
        assert!(names.iter().any(|(name, _)| name.contains(' ')), "{}: {names:?}", made.name);
        for line in class(figure, "thin") {
            let [x0, y0, x1, y1] = numbers(line, "d")[..] else { continue };
            for step in 1..40 {
                let share = f64::from(step) / 40.0;
                let [x, y] = [x0 + (x1 - x0) * share, y0 + (y1 - y0) * share];
                for (name, [at_x, at_y, turned]) in &names {
                    let (sin, cos) = turned.to_radians().sin_cos();
                    let (dx, dy) = (x - at_x, y - at_y);
                    let [along, across] = [dx * cos + dy * sin, dy * cos - dx * sin].map(f64::abs);
                    let long = f64::from(u32::try_from(name.chars().count()).expect("a short name")) * LETTER[0];
                    assert!(along > long || across > LETTER[1], "{}: a line through {name}", made.name);
                }
            }
        }
    }
}

/// Width of a letter of the legend on a narrow screen, in millimetres of the drawing.
const OF_LEGEND: f64 = 2.1;

#[test]
fn words_of_the_legend_end_before_the_next_column() {
    let mut rows = 0;
    for made in made() {
        let document = document(&made.sheet);
        let words: Vec<(f64, f64, String)> = class(by_id(&document, "plan-figure"), "t-plan")
            .map(|node| (number(node, "x"), number(node, "y"), text(node)))
            .collect();
        for (x, y, left) in &words {
            let Some((next, ..)) = words.iter().find(|(other, at, _)| other > x && (at - y).abs() < 0.01) else {
                continue;
            };
            let long = f64::from(u32::try_from(left.chars().count()).expect("short words")) * OF_LEGEND;
            // Its line begins ten before its words.
            assert!(x + long <= next - 10.0, "{}: {left} to {}", made.name, x + long);
            rows += 1;
        }
    }
    assert!(rows >= 8, "{rows}");
}

//! SVG: one `path` by its id.

use kurbo::{Affine, BezPath, PathEl, Point};
use roxmltree::{Document, Node};

use super::{super::problem::Problem, path::Path};

/// Elements whose content is not drawn where it stands.
const ELSEWHERE: [&str; 7] = ["svg", "symbol", "defs", "clipPath", "mask", "marker", "pattern"];

/// Reads the file structure.
pub(super) fn read(text: &str) -> Result<Document<'_>, Problem> {
    let document = Document::parse(text).map_err(|error| {
        let at = error.pos();
        let lines = text.split_inclusive('\n').take(at.row.saturating_sub(1) as usize);
        let start: usize = lines.map(str::len).sum();
        let column: usize = text[start..].chars().take(at.col.saturating_sub(1) as usize).map(char::len_utf8).sum();
        Problem::at(start + column..start + column, format!("this is no SVG drawing: {error}"))
            .help("save the drawing once more as plain SVG")
    })?;
    let root = document.root_element();
    if root.tag_name().name() != "svg" {
        return Err(Problem::at(name_of(root), format!("this is no SVG drawing but a `{}`", root.tag_name().name()))
            .help("save the drawing as plain SVG"));
    }
    Ok(document)
}

/// Place of the name in the start of an element.
fn name_of(node: Node<'_, '_>) -> std::ops::Range<usize> {
    let start = node.range().start + 1;
    start..start + node.tag_name().name().len()
}

/// Metres in a user unit, where the drawing says so: a width with a unit, and a `viewBox`.
pub(super) fn metres(document: &Document<'_>) -> Result<Option<f64>, Problem> {
    let root = document.root_element();
    let sides = |key: &str| root.attribute(key).and_then(length);
    let Some((width, view)) = sides("width").zip(root.attribute("viewBox").and_then(numbers)) else { return Ok(None) };
    let &[_, _, across, along] = view.as_slice() else { return Ok(None) };
    let unit = width / across;
    if !(unit.is_finite() && unit > 0.0) {
        return Ok(None);
    }
    if let Some(height) = sides("height")
        && (height - along * unit).abs() > 1e-3 * height
    {
        return Err(Problem::at(name_of(root), "width and height stretch the `viewBox` by different amounts")
            .help("give both by the same measure, or write `units` beside `drawing`"));
    }
    Ok(Some(unit))
}

/// A length with a unit that has a size of its own.
fn length(text: &str) -> Option<f64> {
    let text = text.trim();
    let units = [("mm", 1e-3), ("cm", 1e-2), ("in", 0.0254)];
    units.into_iter().find_map(|(unit, metres)| Some(text.strip_suffix(unit)?.trim().parse::<f64>().ok()? * metres))
}

fn numbers(text: &str) -> Option<Vec<f64>> {
    let words = text.split(|letter: char| letter == ',' || letter.is_whitespace()).filter(|word| !word.is_empty());
    let numbers: Vec<f64> = words.map(str::parse).collect::<Result<_, _>>().ok()?;
    numbers.iter().all(|number| number.is_finite()).then_some(numbers)
}

/// The ids of all paths.
pub(super) fn names<'a>(document: &'a Document<'_>) -> Vec<&'a str> {
    document
        .descendants()
        .filter(|node| node.has_tag_name("path") || node.tag_name().name() == "path")
        .filter_map(|node| node.attribute("id"))
        .collect()
}

/// The element of an id.
pub(super) fn element<'a, 'input>(document: &'a Document<'input>, id: &str) -> Option<Node<'a, 'input>> {
    document.descendants().find(|node| node.attribute("id") == Some(id))
}

/// The lines of a path, in the user units of the drawing as a whole, *y* up; curves become chords within `tolerance`.
///
/// Arcs become cubics that lie within 0.03 % of their radius.
pub(super) fn paths(node: Node<'_, '_>, tolerance: f64) -> Result<Vec<Path>, Problem> {
    if node.tag_name().name() != "path" {
        return Err(Problem::at(name_of(node), format!("this is a `{}`, not a path", node.tag_name().name()))
            .help("convert the object to a path"));
    }
    let Some(data) = node.attribute_node("d") else {
        return Err(Problem::at(name_of(node), "this path has no `d`").help("draw it once more"));
    };
    let path = BezPath::from_svg(data.value()).map_err(|error| {
        Problem::at(data.range_value(), format!("this path cannot be read: {error}"))
            .help("save the drawing once more as plain SVG")
    })?;
    let path = Affine::FLIP_Y * placed(node)? * path;
    let size = path.control_box();
    // Beyond this a place has no micrometres left, whatever its unit.
    if !(size.is_finite() && [size.x0, size.y0, size.x1, size.y1].iter().all(|end| end.abs() <= 1e9)) {
        return Err(Problem::at(data.range_value(), "this path is too large for a drawing of a top"));
    }
    let mut paths: Vec<Path> = Vec::new();
    let mut start = Point::ORIGIN;
    let tolerance = tolerance.max(1e-6 * size.width().hypot(size.height()));
    kurbo::flatten(path, tolerance, |element| match (element, paths.last_mut()) {
        (PathEl::MoveTo(at), _) => {
            start = at;
            paths.push(Path { pieces: Vec::new(), end: Some(at) });
        }
        (PathEl::LineTo(at), Some(path)) => match path.end.replace(at) {
            Some(before) => path.pieces.push((before, 0.0)),
            // A line after the closing begins where the closed one did.
            None => {
                path.end = None;
                paths.push(Path { pieces: vec![(start, 0.0)], end: Some(at) });
            }
        },
        (PathEl::ClosePath, Some(path)) => {
            path.pieces.extend(path.end.take().map(|end| (end, 0.0)));
        }
        _ => {}
    });
    paths.retain(|path| !path.pieces.is_empty());
    Ok(paths)
}

/// What moves a path to its place in the drawing.
fn placed(node: Node<'_, '_>) -> Result<Affine, Problem> {
    let mut whole = Affine::IDENTITY;
    for around in node.ancestors().filter(Node::is_element) {
        let name = around.tag_name().name();
        if ELSEWHERE.contains(&name) && around != node.document().root_element() {
            return Err(Problem::at(name_of(around), format!("the path stands in a `{name}` and is not drawn there"))
                .help("ungroup it, so that it stands in the drawing itself"));
        }
        if around.attribute("style").is_some_and(|style| style.contains("transform")) {
            return Err(
                Problem::at(name_of(around), "the path is moved by a style").help("write a `transform` instead")
            );
        }
        if let Some(transform) = around.attribute_node("transform") {
            let Some(one) = affine(transform.value()) else {
                return Err(Problem::at(transform.range_value(), "this `transform` cannot be read")
                    .help("ungroup the path, so that it stands where it is drawn"));
            };
            whole = one * whole;
        }
    }
    Ok(whole)
}

/// A list of `translate`, `scale`, `rotate`, `skewX`, `skewY` and `matrix`.
fn affine(text: &str) -> Option<Affine> {
    let mut whole = Affine::IDENTITY;
    let mut rest = text.trim_matches(|letter: char| letter == ',' || letter.is_whitespace());
    while !rest.is_empty() {
        let (name, behind) = rest.split_once('(')?;
        let (list, behind) = behind.split_once(')')?;
        let one = match (name.trim(), numbers(list)?.as_slice()) {
            ("translate", &[x]) => Affine::translate((x, 0.0)),
            ("translate", &[x, y]) => Affine::translate((x, y)),
            ("scale", &[both]) => Affine::scale(both),
            ("scale", &[x, y]) => Affine::scale_non_uniform(x, y),
            ("rotate", &[angle]) => Affine::rotate(angle.to_radians()),
            ("rotate", &[angle, x, y]) => Affine::rotate_about(angle.to_radians(), Point::new(x, y)),
            ("skewX", &[angle]) => Affine::skew(angle.to_radians().tan(), 0.0),
            ("skewY", &[angle]) => Affine::skew(0.0, angle.to_radians().tan()),
            ("matrix", &[a, b, c, d, e, f]) => Affine::new([a, b, c, d, e, f]),
            _ => return None,
        };
        whole *= one;
        rest = behind.trim_start_matches(|letter: char| letter == ',' || letter.is_whitespace());
    }
    Some(whole)
}

//! The closed lines of a layer or a path, as contours.

use kurbo::Point;
use uom::si::{length::meter, ratio::ratio};

use super::{
    super::{
        problem::{Problem, offer},
        reader::Room,
    },
    Kind, Sheet,
    dxf::Dxf,
    entity,
    path::{Loose, Path, closed},
    svg,
};
use crate::{
    geometry::{self, Contour, InvalidContour, Vertex},
    units::{Length, Ratio, System, both},
};

/// Pieces that a layer or a path may have.
const MOST: usize = 10_000;
/// Curves that are no circles become chords that are no farther from them, or a millionth of their size.
const CHORDS_WITHIN: f64 = 5e-6;
/// Ends of lines that are no farther apart are joined: less than anyone cuts.
const JOIN: f64 = 1e-4;

impl Sheet<'_> {
    /// A place of the drawing in words, by its own coordinates.
    pub(in super::super) fn words(&self, at: geometry::Point) -> String {
        let y = if matches!(self.kind, Kind::Svg(_)) { -at.y } else { at.y };
        format!(
            "x {}, y {} of the drawing",
            plain(at.x.get::<meter>() / self.unit),
            plain(y.get::<meter>() / self.unit)
        )
    }

    /// The one closed line of the layer or path that a room names.
    pub(in super::super) fn only_contour(&self, room: &Room<'_>) -> Option<Contour> {
        let mut contours = self.contours(room)?;
        if contours.len() > 1 {
            let lines: Vec<String> = contours.iter().map(|contour| self.described(contour)).collect();
            let (range, name) = self.place(room)?;
            room.report(
                Problem::at(range, format!("{name} has {} closed lines: {}", lines.len(), lines.join("; ")))
                    .help(match self.kind {
                        Kind::Dxf(_) => "leave the outline alone on its layer; holes have a layer of their own, which a `[[hole]]` names",
                        Kind::Svg(_) => "leave the outline alone in its path; holes have paths of their own, which a `[[hole]]` names",
                    }),
            );
            return None;
        }
        contours.pop()
    }

    fn described(&self, contour: &Contour) -> String {
        let [low, high] = contour.bounds();
        let size = |length: Length| plain(length.get::<meter>() / self.unit);
        format!("{} by {} from {}", size(high.x - low.x), size(high.y - low.y), self.words(low))
    }

    /// Key, place and name of what a room asks for.
    fn place(&self, room: &Room<'_>) -> Option<(std::ops::Range<usize>, String)> {
        let key = match self.kind {
            Kind::Dxf(_) => "layer",
            Kind::Svg(_) => "path",
        };
        let given = room.text(key)?;
        Some((given.range, format!("the {key} \"{}\"", given.value)))
    }

    /// The closed lines of the layer or path that a room names, in the order of the drawing.
    pub(in super::super) fn contours(&self, room: &Room<'_>) -> Option<Vec<Contour>> {
        let tolerance = CHORDS_WITHIN / self.unit;
        let paths = match &self.kind {
            Kind::Dxf(drawing) => self.layer(room, drawing, tolerance)?,
            Kind::Svg(document) => self.path(room, document, tolerance)?,
        };
        let (range, name) = self.place(room)?;
        let report = |message: String, help: &str| -> Option<Vec<Contour>> {
            room.report(Problem::at(range.clone(), message).help(help));
            None
        };
        if paths.iter().map(|path| path.pieces.len()).sum::<usize>() > MOST {
            return report(format!("{name} has more than {MOST} pieces"), "draw the outline with lines and arcs");
        }
        let rings = match closed(paths, JOIN / self.unit) {
            Ok(rings) => rings,
            Err(Loose::Open { from, to }) => {
                let gap = both(self.scaled(from).distance(self.scaled(to)), System::Si);
                let [from, to] = [from, to].map(|end| self.words(self.scaled(end)));
                return report(
                    format!("{name} is not closed: from the end at {from} to the nearest, at {to}, are {gap}"),
                    "join the ends in the drawing",
                );
            }
            Err(Loose::Branch { at }) => {
                let at = self.words(self.scaled(at));
                return report(
                    format!("more than two ends of {name} meet at {at}"),
                    "is a line drawn twice, or a helping line left over?",
                );
            }
        };
        if rings.is_empty() {
            return report(format!("{name} has no line"), "draw a closed line on it");
        }
        let contours = rings.into_iter().map(|ring| {
            let vertex = |(at, bulge): (Point, f64)| Vertex { at: self.scaled(at), bulge: Ratio::new::<ratio>(bulge) };
            match Contour::new(ring.into_iter().map(vertex).collect()) {
                Ok(contour) => Some(contour),
                Err(InvalidContour::Crosses { at }) => {
                    let at = self.words(at);
                    report(format!("{name} crosses or touches itself at {at}"), "draw it as one line round the panel");
                    None
                }
                Err(InvalidContour::OutOfReach) => {
                    report(format!("{name} is too far away to be one of a top"), "is the unit of the drawing right?");
                    None
                }
                Err(_) => {
                    report(format!("{name} encloses nothing"), "draw a closed line");
                    None
                }
            }
        });
        contours.collect()
    }

    fn scaled(&self, at: Point) -> geometry::Point {
        let length = |value: f64| Length::new::<meter>(value * self.unit);
        geometry::Point { x: length(at.x), y: length(at.y) }
    }

    fn layer(&self, room: &Room<'_>, drawing: &Dxf<'_>, tolerance: f64) -> Option<Vec<Path>> {
        let mut layers: Vec<&str> = Vec::new();
        for entity in &drawing.entities {
            if !layers.iter().any(|known| known.eq_ignore_ascii_case(entity.layer())) {
                layers.push(entity.layer());
            }
        }
        let quoted: Vec<String> = layers.iter().map(|layer| format!("`layer = \"{layer}\"`")).collect();
        let choose = match quoted.as_slice() {
            [] => "nothing is drawn in it: is the outline on paper or in a block only?".to_owned(),
            some => format!("write {}", some.join(" or ")),
        };
        if room.value("layer").is_none() {
            room.absent("layer", room.without("layer").help(choose));
            return None;
        }
        let given = room.text("layer")?;
        let on: Vec<_> =
            drawing.entities.iter().filter(|entity| entity.layer().eq_ignore_ascii_case(&given.value)).collect();
        if on.is_empty() {
            let problem = Problem::at(given.range.clone(), format!("nothing is drawn on a layer \"{}\"", given.value));
            room.report(if layers.is_empty() {
                problem.help(choose)
            } else {
                offer(problem, &given.value, &layers, Some(given.range), "\"")
            });
            return None;
        }
        let mut paths = Vec::with_capacity(on.len());
        let mut whole = true;
        for entity in on {
            match entity::path(entity, tolerance) {
                Ok(path) => paths.extend(path),
                Err(problem) => {
                    self.sink.report(problem);
                    whole = false;
                }
            }
        }
        whole.then_some(paths)
    }

    fn path(&self, room: &Room<'_>, document: &roxmltree::Document<'_>, tolerance: f64) -> Option<Vec<Path>> {
        let names = svg::names(document);
        if room.value("path").is_none() {
            let quoted: Vec<String> = names.iter().map(|name| format!("`path = \"{name}\"`")).collect();
            let choose = match quoted.as_slice() {
                [] => "no path of the drawing has an `id`: give one to the outline".to_owned(),
                some => format!("write {}", some.join(" or ")),
            };
            room.absent("path", room.without("path").help(choose));
            return None;
        }
        let given = room.text("path")?;
        let Some(element) = svg::element(document, &given.value) else {
            let problem =
                Problem::at(given.range.clone(), format!("nothing in the drawing has the id \"{}\"", given.value));
            room.report(if names.is_empty() {
                problem.help("no path of the drawing has an `id`: give one to the outline")
            } else {
                offer(problem, &given.value, &names, Some(given.range), "\"")
            });
            return None;
        };
        match svg::paths(element, tolerance) {
            Ok(paths) => Some(paths),
            Err(problem) => {
                self.sink.report(problem);
                None
            }
        }
    }
}

/// A number of a drawing to a thousandth, without zeros at its end.
fn plain(value: f64) -> String {
    let text = format!("{value:.3}");
    let text = text.trim_end_matches('0').trim_end_matches('.');
    if text == "-0" { "0".to_owned() } else { text.to_owned() }
}

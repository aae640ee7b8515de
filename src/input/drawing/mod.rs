//! Outlines out of drawings: DXF by layer, SVG by the id of a path. Text comes in as a value.

mod dxf;
mod entity;
mod path;
mod spline;
mod svg;

use kurbo::Point;
use uom::si::{length::meter, ratio::ratio};

use self::{
    dxf::Dxf,
    path::{Loose, Path, closed},
};
use super::{
    NamedText,
    problem::{FileProblems, Problem, Sink, offer},
    reader::{Given, Room},
};
use crate::{
    geometry::{self, Contour, InvalidContour, Vertex},
    units::{Length, Ratio, System, both},
};

/// Ends of lines that are no farther apart are joined: less than anyone cuts.
const JOIN: f64 = 1e-4;
/// Curves that are no circles become chords that are no farther from them, or a millionth of their size.
const CHORDS_WITHIN: f64 = 5e-6;
/// Pieces that a layer or a path may have.
const MOST: usize = 20_000;

/// Units that may stand beside `drawing`, in metres.
const UNITS: [(&str, f64); 5] = [("mm", 1e-3), ("cm", 1e-2), ("m", 1.0), ("in", 0.0254), ("ft", 0.3048)];

/// The drawing that a design file names, with what is wrong in it.
pub(super) struct Drawn<'a> {
    file: Option<&'a NamedText>,
    sink: Sink,
}

/// A drawing that was read, with its unit.
pub(super) struct Sheet<'d> {
    sink: &'d Sink,
    kind: Kind<'d>,
    /// Metres in a unit of the drawing.
    unit: f64,
}

enum Kind<'d> {
    Dxf(Dxf<'d>),
    Svg(roxmltree::Document<'d>),
}

impl<'a> Drawn<'a> {
    pub(super) fn new(file: Option<&'a NamedText>) -> Self {
        Self { file, sink: Sink::default() }
    }

    /// What is wrong with the drawing itself.
    pub(super) fn into_problems(self) -> Option<FileProblems> {
        let problems = self.sink.into_sorted();
        let file = self.file.filter(|_| !problems.is_empty())?;
        Some(FileProblems { file: file.name.clone(), text: file.text.clone(), problems })
    }

    /// Reads the `drawing` of an outline and its unit.
    pub(super) fn open<'d>(&'d self, room: &Room<'_>) -> Option<Sheet<'d>> {
        room.trust_keys(&["units"]);
        let given = room.text("drawing")?;
        let Some(file) = self.file else {
            room.report(
                Problem::at(given.range, format!("the drawing \"{}\" did not come with the design", given.value))
                    .help("write its name in quotation marks, as it stands beside the design file"),
            );
            return None;
        };
        let is = |end: &str| given.value.to_lowercase().ends_with(end);
        let read = if is(".dxf") {
            dxf::read(&file.text).map(Kind::Dxf)
        } else if is(".svg") {
            svg::read(&file.text).map(Kind::Svg)
        } else {
            room.trust_keys(&["layer", "path"]);
            room.report(
                Problem::at(given.range, "a drawing is a `.dxf` or an `.svg` file")
                    .help("save the drawing as DXF in text form"),
            );
            return None;
        };
        match read {
            Ok(kind) => {
                let unit = self.unit(room, &given, &kind)?;
                Some(Sheet { sink: &self.sink, kind, unit })
            }
            Err(problem) => {
                room.trust_keys(&["layer", "path"]);
                self.sink.report(problem);
                None
            }
        }
    }

    /// Metres in a unit of the drawing, as it says itself, or as the design file says.
    fn unit(&self, room: &Room<'_>, drawing: &Given<String>, kind: &Kind<'_>) -> Option<f64> {
        room.trust_keys(&["layer", "path"]);
        let written = room.value("units").is_some();
        let units = room.choice("units", &UNITS);
        if written && units.is_none() {
            return None;
        }
        let own = match kind {
            Kind::Dxf(drawing) => drawing.units.as_ref().map_or(Ok(None), |group| {
                let code = group.whole()?;
                match dxf::metres(code) {
                    None if code != 0 && units.is_none() => {
                        Err(Problem::at(group.range.clone(), format!("no top is drawn in units of $INSUNITS {code}"))
                            .help("write `units = \"mm\"` beside `drawing`, or set the units of the drawing"))
                    }
                    metres => Ok(metres),
                }
            }),
            Kind::Svg(document) => {
                if units.is_some() {
                    // Where the page is stretched, whoever writes the unit knows better.
                    Ok(svg::metres(document).ok().flatten())
                } else {
                    svg::metres(document)
                }
            }
        };
        let own = match own {
            Ok(own) => own,
            Err(problem) => {
                self.sink.report(problem);
                return None;
            }
        };
        match (own, units) {
            (Some(own), Some(units)) if (own - units.value).abs() > 1e-3 * own => {
                let own = both(Length::new::<meter>(own), System::Si);
                room.report(
                    Problem::at(units.range, format!("the drawing says itself that its unit is {own}"))
                        .help("leave `units` out, or set the units of the drawing right"),
                );
                None
            }
            (Some(own), _) => Some(own),
            (None, Some(units)) => Some(units.value),
            (None, None) => {
                let (lacks, or) = match kind {
                    Kind::Dxf(_) => ("its $INSUNITS is absent or zero", "set the units of the drawing"),
                    Kind::Svg(_) => {
                        ("it has no width in mm with a `viewBox`", "give the drawing a width in mm and a `viewBox`")
                    }
                };
                room.report(
                    Problem::at(
                        drawing.range.clone(),
                        format!("the drawing does not say how long its unit is: {lacks}"),
                    )
                    .help(format!("write `units = \"mm\"` beside `drawing`, or {or}")),
                );
                None
            }
        }
    }
}

impl Sheet<'_> {
    /// A place of the drawing in words, by its own coordinates.
    pub(super) fn words(&self, at: geometry::Point) -> String {
        let y = if matches!(self.kind, Kind::Svg(_)) { -at.y } else { at.y };
        format!(
            "x {}, y {} of the drawing",
            plain(at.x.get::<meter>() / self.unit),
            plain(y.get::<meter>() / self.unit)
        )
    }

    /// The one closed line of the layer or path that a room names.
    pub(super) fn only_contour(&self, room: &Room<'_>) -> Option<Contour> {
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
    pub(super) fn contours(&self, room: &Room<'_>) -> Option<Vec<Contour>> {
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

/// The drawing that a design file names, and where.
pub(super) fn named(root: &Room<'_>) -> Option<Given<String>> {
    let panel = ["top", "patch"].into_iter().find_map(|key| root.room_or_text(key))?;
    panel.room_or_text("outline")?.text("drawing")
}

//! Outlines out of drawings: DXF by layer, SVG by the id of a path. Text comes in as a value.

mod dxf;
mod entity;
mod path;
mod sheet;
mod spline;
mod svg;

use uom::si::length::meter;

use self::dxf::Dxf;
use super::{
    NamedText,
    problem::{FileProblems, Problem, Sink},
    reader::{Given, Room},
};
use crate::units::{Length, System, both};

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
        Self { file, sink: Sink::new(System::Si) }
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

/// The drawing that a design file names, and where.
pub(super) fn named(root: &Room<'_>) -> Option<Given<String>> {
    let panel = ["top", "patch"].into_iter().find_map(|key| root.room_or_text(key))?;
    panel.room_or_text("outline")?.text("drawing")
}

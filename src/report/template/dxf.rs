//! The drawing as DXF in text form, its oldest version with layers: polylines with bulges, circles, points, text.
//!
//! Group codes from memory of the format's public reference; read by an independent reader in the tests.

use std::fmt::Write as _;

use uom::si::length::millimeter;

use super::{
    Template,
    labels::Placed,
    running::{Station, stations},
    style,
    view::{OnPaper, View},
};
use crate::{
    geometry::Axis,
    plan::{Layer, LayerKind, Line, LineKind, Shape},
};

/// Line types with their dashes: above zero drawn, below not.
const LINE_TYPES: [(&str, &[f64]); 7] = [
    ("CONTINUOUS", &[]),
    ("DASHED", &[8.0, -4.0]),
    ("HIDDEN", &[4.0, -2.0]),
    ("CENTER", &[14.0, -2.0, 2.0, -2.0]),
    ("DASHDOT", &[6.0, -1.5, 0.5, -1.5]),
    ("DIVIDE", &[9.0, -2.0, 2.0, -2.0, 2.0, -2.0]),
    ("DOT", &[0.5, -1.5]),
];

/// A layer that is there only where the top is not to be built.
const WARNING: &str = "NOT-FOR-BUILDING";

/// The file as it grows.
struct File(String);

impl File {
    fn group(&mut self, code: i32, value: &str) {
        let _ = write!(self.0, "{code:>3}\r\n{value}\r\n");
    }

    fn number(&mut self, code: i32, value: f64) {
        // Enough digits for a millionth of a millimetre; a bulge is no length and takes more.
        let text = if code == 42 { format!("{value:.12}") } else { format!("{value:.6}") };
        self.group(code, &text);
    }

    fn place(&mut self, at: OnPaper) {
        self.number(10, at.u);
        self.number(20, at.v);
        self.number(30, 0.0);
    }

    fn begin(&mut self, kind: &str, layer: &str) {
        self.group(0, kind);
        self.group(8, layer);
    }

    fn line(&mut self, layer: &str, from: OnPaper, to: OnPaper) {
        self.begin("LINE", layer);
        self.place(from);
        self.number(11, to.u);
        self.number(21, to.v);
        self.number(31, 0.0);
    }

    fn polyline(&mut self, layer: &str, line: &Line, view: View) {
        self.begin("POLYLINE", layer);
        self.group(66, "1");
        self.place(OnPaper { u: 0.0, v: 0.0 });
        self.group(70, if line.closed { "1" } else { "0" });
        for vertex in &line.vertices {
            self.begin("VERTEX", layer);
            self.place(view.place(vertex.at));
            self.number(42, view.bulge(vertex.bulge));
        }
        self.begin("SEQEND", layer);
    }

    fn text(&mut self, layer: &str, label: &Placed, (row, line): (f64, &str)) {
        let (sin, cos) = label.degrees.to_radians().sin_cos();
        let at = OnPaper { u: label.at.u + row * sin, v: label.at.v - row * cos };
        self.begin("TEXT", layer);
        self.place(at);
        self.number(40, label.size);
        self.group(1, &ascii(line));
        self.number(50, label.degrees);
        // Set by its middle, which stands in the second place.
        self.group(72, "1");
        self.number(11, at.u);
        self.number(21, at.v);
        self.number(31, 0.0);
        self.group(73, "2");
    }
}

/// What lies on a layer of its own beside its edges.
fn layer_of(kind: LayerKind, line: LineKind) -> String {
    let name = kind.id().to_uppercase();
    match line {
        LineKind::Edge => name,
        LineKind::Inner => format!("{name}-SEAT"),
        LineKind::Centre if kind == LayerKind::Middle => name,
        LineKind::Centre => format!("{name}-CENTRE"),
    }
}

pub(super) fn dxf(template: &Template<'_>) -> String {
    let shown: Vec<&Layer> = template.plan.layers.iter().filter(|layer| layer.kind != LayerKind::Dimensions).collect();
    let mut file = File(String::new());
    header(&mut file);
    tables(&mut file, &shown, template.not_for_building().is_some());
    file.group(0, "SECTION");
    file.group(2, "ENTITIES");
    for layer in shown {
        entities(&mut file, template.view, layer);
    }
    for label in template.labels() {
        #[allow(clippy::cast_precision_loss, reason = "lines of a label")]
        let lines = label.lines.len() as f64;
        for (line, row) in label.lines.iter().zip(0_u8..) {
            let down = (f64::from(row) - (lines - 1.0) / 2.0) * super::labels::LEADING * label.size;
            file.text("LABELS", &label, (down, line));
        }
    }
    sizes(&mut file, template);
    datum(&mut file, template);
    if let Some(warning) = template.not_for_building() {
        not_for_building(&mut file, template, warning);
    }
    file.group(0, "ENDSEC");
    file.group(0, "EOF");
    file.0
}

fn header(file: &mut File) {
    file.group(0, "SECTION");
    file.group(2, "HEADER");
    for (variable, code, value) in [("$ACADVER", 1, "AC1009"), ("$INSUNITS", 70, "4"), ("$MEASUREMENT", 70, "1")] {
        file.group(9, variable);
        file.group(code, value);
    }
    file.group(0, "ENDSEC");
}

fn tables(file: &mut File, shown: &[&Layer], warned: bool) {
    file.group(0, "SECTION");
    file.group(2, "TABLES");
    begin_table(file, "LTYPE", LINE_TYPES.len());
    for (name, dashes) in LINE_TYPES {
        file.group(0, "LTYPE");
        file.group(2, name);
        file.group(70, "0");
        file.group(3, "");
        file.group(72, "65");
        file.group(73, &dashes.len().to_string());
        file.number(40, dashes.iter().map(|dash| dash.abs()).sum());
        for dash in dashes {
            file.number(49, *dash);
        }
    }
    file.group(0, "ENDTAB");
    let mut layers: Vec<(String, &str)> =
        ["LABELS", "RUNNING", "DATUM"].map(|name| (name.to_owned(), "CONTINUOUS")).to_vec();
    if warned {
        layers.push((WARNING.to_owned(), "CONTINUOUS"));
    }
    for layer in shown {
        for line in [LineKind::Edge, LineKind::Inner, LineKind::Centre] {
            let name = layer_of(layer.kind, line);
            if !layers.iter().any(|(known, _)| *known == name) && has(layer, line) {
                layers.push((name, style::of(layer.kind, line).line_type));
            }
        }
    }
    begin_table(file, "LAYER", layers.len() + 1);
    for (name, line_type) in std::iter::once(("0".to_owned(), "CONTINUOUS")).chain(layers) {
        file.group(0, "LAYER");
        file.group(2, &name);
        file.group(70, "0");
        file.group(62, "7");
        file.group(6, line_type);
    }
    file.group(0, "ENDTAB");
    begin_table(file, "STYLE", 1);
    file.group(0, "STYLE");
    for (code, value) in
        [(2, "STANDARD"), (70, "0"), (40, "0.0"), (41, "1.0"), (50, "0.0"), (71, "0"), (42, "3.0"), (3, "txt"), (4, "")]
    {
        file.group(code, value);
    }
    file.group(0, "ENDTAB");
    file.group(0, "ENDSEC");
}

fn begin_table(file: &mut File, name: &str, count: usize) {
    file.group(0, "TABLE");
    file.group(2, name);
    file.group(70, &count.to_string());
}

/// Whether a layer has such lines; crosses are centres, circles edges.
fn has(layer: &Layer, kind: LineKind) -> bool {
    layer.items.iter().flat_map(|item| &item.shapes).any(|shape| match shape {
        Shape::Line(line) => line.kind == kind,
        Shape::Circle { .. } => kind == LineKind::Edge,
        Shape::Cross { .. } => kind == LineKind::Centre,
        Shape::Label(_) | Shape::Dimension(_) => false,
    })
}

fn entities(file: &mut File, view: View, layer: &Layer) {
    let (edges, centres) = (layer_of(layer.kind, LineKind::Edge), layer_of(layer.kind, LineKind::Centre));
    for shape in layer.items.iter().flat_map(|item| &item.shapes) {
        match shape {
            Shape::Line(line) => file.polyline(&layer_of(layer.kind, line.kind), line, view),
            Shape::Circle { centre, diameter } => {
                file.begin("CIRCLE", &edges);
                file.place(view.place(*centre));
                file.number(40, diameter.get::<millimeter>() / 2.0);
            }
            Shape::Cross { at } => {
                let (at, half) = (view.place(*at), style::cross(layer.kind));
                for (right, up) in [(half, 0.0), (0.0, half)] {
                    let end = |way: f64| OnPaper { u: at.u + way * right, v: at.v + way * up };
                    file.line(&centres, end(-1.0), end(1.0));
                }
                // What a machine drills at.
                if layer.kind == LayerKind::Fixings {
                    file.begin("POINT", &centres);
                    file.place(at);
                }
            }
            Shape::Label(_) | Shape::Dimension(_) => {}
        }
    }
}

/// Running sizes along the lower and the left side.
fn sizes(file: &mut File, template: &Template<'_>) {
    let [low, high] = template.plan.bounds().map(|corner| template.view.place(corner));
    let (left, bottom) = (low.u.min(high.u), low.v.min(high.v));
    for Station { axis, at, words_at, words } in stations(template) {
        let place = |across: f64, along: f64| match axis {
            Axis::X => OnPaper { u: along, v: bottom - across },
            Axis::Y => OnPaper { u: left - across, v: along },
        };
        file.line("RUNNING", place(2.0, at), place(4.0, at));
        file.line("RUNNING", place(4.0, at), place(8.0, words_at));
        let degrees = if axis == Axis::X { 90.0 } else { 0.0 };
        let at = place(0.0, words_at);
        let mut note = Placed { layer: LayerKind::Dimensions, lines: vec![words], at, degrees, size: 3.2 };
        // Their middle, so that they begin where the line ends.
        note.at = place(9.0 + note.half()[0], words_at);
        file.text("RUNNING", &note, (0.0, &note.lines[0]));
    }
}

/// The origin with its axes, and a bar of 100 mm.
fn datum(file: &mut File, template: &Template<'_>) {
    const ARM: f64 = 30.0;
    let view = template.view;
    let up = if view.turned_over() { -1.0 } else { 1.0 };
    let at = |u: f64, v: f64| OnPaper { u, v };
    file.line("DATUM", at(0.0, 0.0), at(ARM, 0.0));
    file.line("DATUM", at(0.0, 0.0), at(0.0, up * ARM));
    let low = template.plan.bounds().map(|corner| view.place(corner).v);
    let below = low[0].min(low[1]) - 30.0;
    file.line("DATUM", at(0.0, below), at(100.0, below));
    for end in [0.0, 100.0] {
        file.line("DATUM", at(end, below - 2.0), at(end, below + 2.0));
    }
    let note =
        |lines: Vec<String>, at: OnPaper| Placed { layer: LayerKind::Dimensions, lines, at, degrees: 0.0, size: 3.0 };
    for (words, place) in [
        ("x".to_owned(), at(ARM + 4.0, 0.0)),
        ("y".to_owned(), at(0.0, up * (ARM + 4.0))),
        ("0, 0".to_owned(), at(-6.0, -up * 6.0)),
        ("100 mm".to_owned(), at(50.0, below + 4.0)),
        (template.view.words(), at(200.0, below - 8.0)),
        ("measure the bar before you cut or drill".to_owned(), at(200.0, below)),
    ] {
        file.text("DATUM", &note(vec![words.clone()], place), (0.0, &words));
    }
}

/// That the top is not to be built, above the plan in letters that nobody who opens the file overlooks.
fn not_for_building(file: &mut File, template: &Template<'_>, warning: &str) {
    let [low, high] = template.plan.bounds().map(|corner| template.view.place(corner));
    let (middle, above) = (f64::midpoint(low.u, high.u), low.v.max(high.v));
    for (words, size, up) in [("NOT FOR BUILDING", 40.0, 80.0), (warning, 10.0, 40.0)] {
        let at = OnPaper { u: middle, v: above + up };
        let note = Placed { layer: LayerKind::Dimensions, lines: vec![words.to_owned()], at, degrees: 0.0, size };
        file.text(WARNING, &note, (0.0, words));
    }
}

/// Letters beyond the oldest alphabet by their number.
fn ascii(text: &str) -> String {
    let mut plain = String::with_capacity(text.len());
    for letter in text.chars() {
        match letter {
            '×' => plain.push('x'),
            ' '..='~' => plain.push(letter),
            letter if letter.is_control() => plain.push(' '),
            letter => {
                let _ = write!(plain, "\\U+{:04X}", u32::from(letter));
            }
        }
    }
    plain
}

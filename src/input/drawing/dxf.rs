//! DXF in its text form: pairs of lines, a group code and its value.
//!
//! Group codes and entities from memory of the format's public reference; read against files of an independent writer in
//! the tests.

use std::ops::Range;

use super::super::problem::Problem;

/// A value with its group code.
#[derive(Clone, Debug)]
pub(super) struct Group<'a> {
    pub(super) code: i32,
    pub(super) value: &'a str,
    pub(super) range: Range<usize>,
}

/// One thing that is drawn.
#[derive(Clone, Debug)]
pub(super) struct Entity<'a> {
    pub(super) kind: &'a str,
    pub(super) range: Range<usize>,
    pub(super) groups: Vec<Group<'a>>,
    /// The vertices of a `POLYLINE`, which stand behind it.
    pub(super) vertices: Vec<Entity<'a>>,
}

/// What of a drawing can be an outline.
pub(super) struct Dxf<'a> {
    /// `$INSUNITS`.
    pub(super) units: Option<Group<'a>>,
    /// What is drawn in the model.
    pub(super) entities: Vec<Entity<'a>>,
}

impl<'a> Entity<'a> {
    /// The first value of a group code.
    pub(super) fn group(&self, code: i32) -> Option<&Group<'a>> {
        self.groups.iter().find(|group| group.code == code)
    }

    pub(super) fn layer(&self) -> &'a str {
        self.group(8).map_or("0", |group| group.value)
    }

    /// A number that has to be there.
    pub(super) fn number(&self, code: i32) -> Result<f64, Problem> {
        self.group(code).map_or_else(
            || Err(Problem::at(self.range.clone(), format!("this {} lacks its group {code}", self.kind))),
            Group::number,
        )
    }

    pub(super) fn number_or(&self, code: i32, usual: f64) -> Result<f64, Problem> {
        self.group(code).map_or(Ok(usual), Group::number)
    }

    /// Bits of a whole number; none where it is absent.
    pub(super) fn flags(&self, code: i32) -> Result<i64, Problem> {
        self.group(code).map_or(Ok(0), Group::whole)
    }
}

impl Group<'_> {
    pub(super) fn number(&self) -> Result<f64, Problem> {
        // Beyond this a place has no micrometres left, whatever its unit.
        const MOST: f64 = 1e9;
        match self.value.parse::<f64>() {
            Ok(value) if value.abs() <= MOST => Ok(value),
            Ok(_) => Err(Problem::at(self.range.clone(), "this number is too large for a drawing of a top")),
            Err(_) => Err(Problem::at(self.range.clone(), format!("group {} is a number", self.code))),
        }
    }

    pub(super) fn whole(&self) -> Result<i64, Problem> {
        self.value
            .parse()
            .map_err(|_| Problem::at(self.range.clone(), format!("group {} is a whole number", self.code)))
    }
}

/// Lines of a text with their places.
fn lines(text: &str) -> impl Iterator<Item = (&str, Range<usize>)> {
    let mut from = 0;
    text.split_inclusive('\n').map(move |line| {
        let start = from + line.len() - line.trim_start().len();
        let value = line.trim();
        from += line.len();
        (value, start..start + value.len())
    })
}

fn groups(text: &str) -> Result<Vec<Group<'_>>, Problem> {
    if text.contains('\0') {
        return Err(Problem::at(0..0, "the drawing is not a text").help("save it as DXF in text form, not binary"));
    }
    let mut lines = lines(text);
    let mut groups = Vec::new();
    while let Some((word, range)) = lines.next() {
        let Ok(code) = word.parse::<i32>() else {
            let message = if groups.is_empty() { "this is no DXF drawing: " } else { "" };
            return Err(Problem::at(range, format!("{message}the whole number of a group code is due here"))
                .help("save the drawing once more as DXF in text form"));
        };
        let Some((value, place)) = lines.next() else {
            return Err(Problem::at(range, "the drawing ends within a group")
                .help("it was cut off: save the drawing once more"));
        };
        let last = code == 0 && value == "EOF";
        groups.push(Group { code, value, range: place });
        if last {
            break;
        }
    }
    Ok(groups)
}

/// Reads a drawing as far as outlines go.
pub(super) fn read(text: &str) -> Result<Dxf<'_>, Problem> {
    let (mut units, mut entities) = (None, Vec::<Entity<'_>>::new());
    let (mut section, mut variable) = ("", "");
    let mut before = "";
    for group in groups(text)? {
        match (group.code, section) {
            (0, _) => {
                if group.value == "ENDSEC" || group.value == "SECTION" {
                    section = "";
                } else if section == "ENTITIES" {
                    let entity =
                        Entity { kind: group.value, range: group.range, groups: Vec::new(), vertices: Vec::new() };
                    match entities.last_mut() {
                        Some(line) if entity.kind == "VERTEX" && line.kind == "POLYLINE" => line.vertices.push(entity),
                        _ => entities.push(entity),
                    }
                }
                before = group.value;
            }
            (2, "") if before == "SECTION" => section = group.value,
            (9, "HEADER") => variable = group.value,
            (70, "HEADER") if variable == "$INSUNITS" => units = Some(group),
            (_, "ENTITIES") => {
                if let Some(entity) = entities.last_mut() {
                    match entity.vertices.last_mut() {
                        Some(vertex) => vertex.groups.push(group),
                        None => entity.groups.push(group),
                    }
                }
            }
            _ => {}
        }
    }
    // What is drawn on paper only is no part of the model; an end of vertices draws nothing.
    entities.retain(|entity| entity.kind != "SEQEND" && entity.group(67).is_none_or(|paper| paper.value != "1"));
    Ok(Dxf { units, entities })
}

/// Metres in a unit by the code of `$INSUNITS`.
pub(super) fn metres(code: i64) -> Option<f64> {
    Some(match code {
        1 => 0.0254,
        2 => 0.3048,
        4 => 1e-3,
        5 => 1e-2,
        6 => 1.0,
        10 => 0.9144,
        14 => 0.1,
        _ => return None,
    })
}

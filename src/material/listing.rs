//! The table for readers: each row, and each value of it with what the reader needs to dispute it.

use super::{
    Basis, Kind, MaterialTable, Origin, SourceText,
    curve::Shape,
    row::Row,
    schema::{Cell, Datum, Field, Form},
};
use crate::{
    material::measured::Dimension,
    units::{Dimensioned, MassDensity, System, show},
};

/// A row for listings.
#[derive(Clone, Copy, Debug)]
pub struct RowView<'a> {
    row: &'a Row,
    table: &'a MaterialTable,
}

/// A value for listings.
#[derive(Clone, Copy, Debug)]
pub struct PropertyView<'a> {
    /// Key in the table, `shear_strength`.
    pub name: &'static str,
    /// What it means.
    pub meaning: &'static str,
    /// How good it is.
    pub basis: Basis,
    /// The value as written, its place in the source, mark, condition and table.
    pub origin: &'a Origin,
    /// The source in full.
    pub source: Option<&'a SourceText>,
}

impl MaterialTable {
    /// All rows, by kind and id.
    pub fn rows(&self) -> impl Iterator<Item = RowView<'_>> {
        self.rows.iter().map(|row| RowView { row, table: self })
    }

    /// All sources, by key.
    #[must_use]
    pub fn sources(&self) -> &[SourceText] {
        &self.sources
    }

    /// A source by its key.
    #[must_use]
    pub fn source(&self, key: &str) -> Option<&SourceText> {
        self.sources.iter().find(|source| source.key == key)
    }
}

impl<'a> RowView<'a> {
    /// Kind of row.
    #[must_use]
    pub fn kind(self) -> Kind {
        self.row.kind
    }

    /// Name in design files.
    #[must_use]
    pub fn id(self) -> &'a str {
        &self.row.id
    }

    /// Name for people.
    #[must_use]
    pub fn name(self) -> &'a str {
        &self.row.name
    }

    /// Class of material.
    #[must_use]
    pub fn family(self) -> &'a str {
        &self.row.family
    }

    /// Caution or explanation.
    #[must_use]
    pub fn note(self) -> Option<&'a str> {
        self.row.note.as_deref()
    }

    /// Lowest and highest density of the row, if it has any.
    #[must_use]
    pub fn density_range(self) -> Option<(MassDensity, MassDensity)> {
        let mut range: Option<(f64, f64)> = None;
        for (field, datum) in self.data() {
            let ends = match field.form {
                Form::Curve { argument: Dimension::MassDensity, .. } => datum.shape.range(),
                Form::Value(Dimension::MassDensity) => Some((datum.shape.at(0.0), datum.shape.at(0.0))),
                Form::Band(Dimension::MassDensity) => datum.between,
                _ => None,
            };
            if let Some((low, high)) = ends {
                range = Some(range.map_or((low, high), |(a, b)| (a.max(low), b.min(high))));
            }
        }
        range.map(|(low, high)| (MassDensity::from_si(low), MassDensity::from_si(high)))
    }

    /// Key values in one line, in the units of a system: the first and the last of each. What has no unit stands as written.
    #[must_use]
    pub fn summary(self, system: System) -> String {
        let keys: &[&str] = match self.row.kind {
            Kind::Core => &["shear_strength", "shear_modulus", "compressive_strength"],
            Kind::Fabric => &["fibre_fraction_hand", "fibre_fraction_infusion"],
            Kind::Ply => &["tension1", "compression1", "shear"],
            Kind::Fibre => &["e1", "density"],
            Kind::Resin => &["modulus", "heat_distortion"],
            Kind::Coat => &["areal_mass"],
            Kind::Board => &["compressive_strength", "shear_strength", "flatwise_tension"],
            Kind::Filler => &["compressive_strength", "tensile_strength"],
            Kind::Conduit => &["outside", "wall", "softening"],
            Kind::Alloy => &["yield_strength", "weld_yield_strength"],
            Kind::Fastener => &["proof_stress", "ultimate_stress"],
            Kind::Thread => &["major", "pitch", "clearance_hole", "large_washer_outside"],
            Kind::Screw => &["major", "root", "pitch"],
            Kind::Insert => &["thread_proof", "turning_torque"],
            Kind::PottedInsert => &["outside", "height"],
            Kind::Rivet => &["tension", "shear"],
            Kind::Stud => &["base"],
            Kind::Adhesive => &["lap_shear", "flatwise_tension"],
            Kind::Lubrication => &["nut_factor"],
            Kind::Body => &["drag", "lift"],
            Kind::Galvanic => &["steps"],
        };
        let parts = keys.iter().filter_map(|key| self.data().find(|(field, _)| field.name == *key));
        let part = |(field, datum): (&Field, &Datum)| {
            format!("{} {}", field.name.replace('_', " "), in_short(field.form, datum, system))
        };
        parts.map(part).collect::<Vec<_>>().join(", ")
    }

    /// What the row says beside values: the fibre of a fabric, its sub-layers, whether a board can be bonded.
    pub fn facts(self) -> impl Iterator<Item = (&'static str, String)> {
        self.row.kind.fields().iter().filter_map(move |field| {
            let text = match self.row.cell(field.name)? {
                Cell::Flag(true) => "yes".to_owned(),
                Cell::Flag(false) => "no".to_owned(),
                Cell::Text(text) => text.clone(),
                Cell::Texts(texts) => texts.join(", "),
                Cell::Layers(layers) => {
                    let layer =
                        |l: &super::Layer| format!("{:.0} % at {}", 100.0 * l.share.value, show(l.angle, System::Si));
                    layers.iter().map(layer).collect::<Vec<_>>().join(", ")
                }
                Cell::Property(_) => return None,
            };
            Some((field.name, text))
        })
    }

    /// All values of the row, in the order of its documentation.
    pub fn properties(self) -> impl Iterator<Item = PropertyView<'a>> {
        self.data().map(move |(field, datum)| PropertyView {
            name: field.name,
            meaning: field.meaning,
            basis: datum.basis,
            origin: &datum.origin,
            source: self.table.source(&datum.origin.source),
        })
    }

    fn data(self) -> impl Iterator<Item = (&'static Field, &'a Datum)> {
        self.row.kind.fields().iter().filter_map(move |field| match self.row.cell(field.name)? {
            Cell::Property(datum) => Some((field, datum)),
            _ => None,
        })
    }
}

/// A value in the units of a system; of points the first and the last, each with its own mark where that is weaker.
fn in_short(form: Form, datum: &Datum, system: System) -> String {
    let written = || {
        let all = &datum.origin.as_written;
        let ends = all.split_once("; ").zip(all.rsplit_once("; "));
        ends.map_or(all.clone(), |((first, _), (_, last))| format!("{first} to {last}"))
    };
    match (form, &datum.shape) {
        (Form::Value(of) | Form::Band(of) | Form::Curve { value: of, .. }, Shape::Constant(value))
            if of != Dimension::Ratio =>
        {
            of.show(*value, system)
        }
        (Form::Curve { argument, value }, Shape::Points(points)) => {
            let end = |number: usize| {
                let (x, y) = points.get(number)?;
                let weaker = datum.weaker.get(number).and_then(Option::as_ref);
                let mark = weaker.map_or_else(String::new, |origin| format!(" ({})", origin.mark.words()));
                Some(format!("{} at {}{mark}", value.show(*y, system), argument.show(*x, system)))
            };
            let ends = end(0).zip(points.len().checked_sub(1).and_then(end));
            ends.map_or_else(written, |(first, last)| format!("{first} to {last}"))
        }
        _ => written(),
    }
}

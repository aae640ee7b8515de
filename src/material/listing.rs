//! The table for readers: each row, and each value of it with what the reader needs to dispute it.

use super::{
    Basis, Kind, MaterialTable, Origin, SourceText,
    row::Row,
    schema::{Cell, Form},
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

    /// Key values in one line: the first and the last of each.
    #[must_use]
    pub fn summary(self) -> String {
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
        let parts = keys.iter().filter_map(|key| self.properties().find(|property| property.name == *key));
        let part = |property: PropertyView<'_>| {
            let written = &property.origin.as_written;
            let ends = written.split_once("; ").zip(written.rsplit_once("; "));
            let value = ends.map_or(written.clone(), |((first, _), (_, last))| format!("{first} to {last}"));
            format!("{} {value}", property.name.replace('_', " "))
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

    fn data(self) -> impl Iterator<Item = (&'static super::schema::Field, &'a super::schema::Datum)> {
        self.row.kind.fields().iter().filter_map(move |field| match self.row.cell(field.name)? {
            Cell::Property(datum) => Some((field, datum)),
            _ => None,
        })
    }
}

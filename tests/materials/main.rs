//! The material table: what loads, what does not and why not, and whether the values are possible.
#![allow(clippy::unwrap_used, reason = "a test that cannot go on has failed")]

mod built_in_table;
mod curves;
mod fabrics;
mod faults;
mod fixings;
mod layers;
mod published;

use std::{collections::BTreeSet, sync::LazyLock};

use proptest::prelude::*;
use skinspan::{
    criteria::Criteria,
    laminate::micromechanics::{Constituent, unidirectional},
    material::{Basis, Curve, Kind, MaterialTable, NoPly, Part, PlyForm, Seen, TableProblem, TableText},
    source::{Mark, WORKS},
    units::{Angle, MassDensity, Pressure, Ratio, System, ThermodynamicTemperature},
};
use uom::si::{
    angle::degree,
    mass_density::kilogram_per_cubic_meter as kg_m3,
    pressure::{gigapascal, megapascal},
    thermodynamic_temperature::degree_celsius,
};

fn built_in() -> &'static MaterialTable {
    static TABLE: LazyLock<MaterialTable> =
        LazyLock::new(|| MaterialTable::built_in().unwrap_or_else(|problems| panic!("{problems:#?}")));
    &TABLE
}

fn layered(text: &str) -> Result<MaterialTable, Vec<TableProblem>> {
    MaterialTable::layered(&[TableText { name: "shop.toml", text }])
}

/// The only problem in a text, and the words of the text that it points at.
fn problem(text: &str) -> (TableProblem, &str) {
    let problems = layered(text).expect_err("the text is faulty");
    assert_eq!(problems.len(), 1, "{problems:?}");
    let problem = problems[0].clone();
    assert_eq!(problem.file, "shop.toml");
    let range = problem.range.clone();
    (problem, &text[range])
}

fn near(value: f64, expected: f64, tolerance: f64) {
    assert!((value - expected).abs() <= tolerance, "{value} against {expected}");
}

fn mpa(pressure: Pressure) -> f64 {
    pressure.get::<megapascal>()
}

fn density(value: f64) -> MassDensity {
    MassDensity::new::<kg_m3>(value)
}

//! Plates beside the independent solutions of `tests/reference/plates`.
//!
//! There `z`, deflections and pressures are positive upwards, here downwards: deflections, moments and shears change
//! their signs, forces in the plane do not, and a second slope of the mid-plane does.

mod data;
mod model;
mod solved;

use std::{collections::BTreeSet, path::PathBuf};

use data::{Named, Problem, Quantity};
use solved::Solved;

/// Largest difference from a deflection, a reaction or an energy, and from a moment or a shear, as a share; or
/// [`TIMES_ERROR`] the stated error, whichever is more.
const DEFLECTION: f64 = 1e-3;
const FORCES: f64 = 5e-3;
const TIMES_ERROR: f64 = 5.0;

/// Six lines stand for a pad. Between two of them, s = 19 mm apart at its middle, the plate dips by up to p s²/(8 S):
/// 0.8 % of the pad's deflection p/k.
const BETWEEN_LINES: f64 = 8e-3;

/// Frequencies and buckling loads: not compared here.
const EIGENVALUES: [&str; 12] = [
    "a8_hard_sandwich",
    "a8_hard_thin",
    "a8_hard_very_soft",
    "a8_lines",
    "a8_lines_sandwich",
    "a8_lines_thin",
    "a8_lines_very_soft",
    "a8_soft_sandwich",
    "a8_soft_thin",
    "a8_soft_very_soft",
    "a9_both_ways",
    "a9_one_way",
];

const COMPARED: [&str; 13] = [
    "a10_crown",
    "a10_crown_stiff",
    "a10_diaphragms",
    "a11_heat",
    "a1_orthotropic",
    "a1_square",
    "a2_lines",
    "a3_corner_patch",
    "a4_bands",
    "a5_pads",
    "a5_pads_patch",
    "a6_beams",
    "a7_turned",
];

fn folder() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("tests/reference/plates")
}

/// Largest difference, as a share.
fn allowed(problem: &Problem, quantity: &Quantity) -> f64 {
    match quantity {
        Quantity::Mean { .. } | Quantity::BeamMoment { .. } => FORCES,
        Quantity::Deflection { x, y } if problem.support.iter().any(|own| own.is_pad() && own.area.holds([*x, *y])) => {
            BETWEEN_LINES
        }
        _ => DEFLECTION,
    }
}

fn compare(name: &str) {
    let solved = Solved::new(name);
    let mut wrong = Vec::new();
    for Named { name, quantity, value, error } in &solved.problem.result {
        let found = solved.value(quantity);
        if (found - value).abs() > (allowed(&solved.problem, quantity) * value.abs()).max(TIMES_ERROR * error) {
            wrong.push(format!("{name}: {found}, of the reference {value} ± {error}"));
        }
    }
    assert!(!solved.problem.result.is_empty() && wrong.is_empty(), "{}", wrong.join("\n"));
}

#[test]
fn every_file_is_compared_or_named() {
    let files = std::fs::read_dir(folder()).unwrap().map(|entry| entry.unwrap().file_name().into_string().unwrap());
    let files: BTreeSet<String> = files.map(|name| name.trim_end_matches(".toml").to_owned()).collect();
    let known: BTreeSet<String> = COMPARED.iter().chain(&EIGENVALUES).map(|&name| name.to_owned()).collect();
    assert_eq!(files, known);
}

macro_rules! compared {
    ($($name:ident),+) => { $(
        #[test]
        fn $name() {
            assert!(COMPARED.contains(&stringify!($name)));
            compare(stringify!($name));
        }
    )+ };
}

compared!(
    a10_crown,
    a10_crown_stiff,
    a10_diaphragms,
    a11_heat,
    a1_orthotropic,
    a1_square,
    a2_lines,
    a3_corner_patch,
    a4_bands,
    a5_pads,
    a5_pads_patch,
    a6_beams,
    a7_turned
);

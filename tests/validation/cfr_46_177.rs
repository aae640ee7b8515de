//! 46 CFR 177.900, deck rails of small passenger vessels: loads printed in both systems.

use skinspan::units::{LinearMassDensity, Mass, parse};
use uom::si::{linear_mass_density::kilogram_per_meter, mass::kilogram};

/// The regulation prints whole kilograms.
const WHOLE: f64 = 0.5;

#[test]
fn point_and_line_load_cfr_46_177_900_b() {
    let point = parse::<Mass>("200 lb").map(|mass| mass.get::<kilogram>());
    assert!(point.as_ref().is_ok_and(|mass| (mass - 91.0).abs() < WHOLE), "{point:?}");
    let line = parse::<LinearMassDensity>("50 lb/ft").map(|mass| mass.get::<kilogram_per_meter>());
    assert!(line.as_ref().is_ok_and(|mass| (mass - 74.0).abs() < WHOLE), "{line:?}");
}

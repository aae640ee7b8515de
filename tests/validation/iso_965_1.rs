//! ISO 965-1: limits of size of classes 6H and 6g from the formulas of the tolerances, which are remembered. The
//! limits of bolts M4 to M6 and the pitch diameters of nuts were read in catalogues that reprint them.
#![allow(clippy::unwrap_used, reason = "a test that cannot go on has failed")]

use skinspan::material::{MaterialTable, Property};
use skinspan::units::Length;
use uom::si::length::millimeter;

/// Tolerances are rounded to preferred numbers about 6 % apart (R 40), those of the nut twice: up to 5 %, which is at
/// most 0.017 mm here.
const PREFERRED: f64 = 0.05;
/// Basic diameters are printed to 0.001 mm, and the allowance is rounded to 0.001 mm.
const ROUNDING: f64 = 0.0016;

/// Thread, and the ends of the range of diameters that the standard takes together, mm.
const THREADS: [(&str, f64, f64); 6] =
    [("m4", 2.8, 5.6), ("m5", 2.8, 5.6), ("m6", 5.6, 11.2), ("m8", 5.6, 11.2), ("m10", 5.6, 11.2), ("m12", 11.2, 22.4)];

/// Tolerance grade 6, mm: pitch diameter of the bolt `90·p^0.4·d^0.1`, of the nut 1.32 times that; major diameter of the
/// bolt `180·∛p² − 3.15/√p`; minor diameter of the nut `433·p − 190·p^1.22` below 1 mm, else `230·p^0.7`; position g of
/// the bolt `15 + 11·p`; all in µm.
#[test]
fn limits_of_classes_6h_and_6g_iso_965_1() {
    let table = MaterialTable::built_in().unwrap();
    for (id, low, high) in THREADS {
        let thread = table.thread(id).unwrap();
        let (d, p) = (mm(&thread.major), mm(&thread.pitch));
        let pitch_diameter = d - 3.0 / 8.0 * 3.0_f64.sqrt() * p;
        let minor = d - 5.0 / 8.0 * 3.0_f64.sqrt() * p;
        let position = (15.0 + 11.0 * p) / 1e3;
        let bolt = 0.090 * p.powf(0.4) * (low * high).sqrt().powf(0.1);
        let major = 0.180 * p.powi(2).cbrt() - 0.00315 / p.sqrt();
        let minor_tolerance = if p < 1.0 { 0.433 * p - 0.190 * p.powf(1.22) } else { 0.230 * p.powf(0.7) };
        for (limit, from, tolerance) in [
            (&thread.pitch_diameter_max_internal, pitch_diameter, 1.32 * bolt),
            (&thread.minor_max_internal, minor, minor_tolerance),
            (&thread.pitch_diameter_min_external, pitch_diameter - position, -bolt),
            (&thread.major_min_external, d - position, -major),
        ] {
            let (limit, expected) = (mm(limit), from + tolerance);
            let allowed = PREFERRED * tolerance.abs() + ROUNDING;
            assert!((limit - expected).abs() <= allowed, "{id}: {limit} is not {expected} within {allowed}");
        }
    }
}

/// Bolts of class 6g: smallest major and pitch diameter, as printed.
#[test]
fn bolts_m4_to_m6_class_6g_iso_965_2() {
    let table = MaterialTable::built_in().unwrap();
    for (id, major, pitch) in [("m4", 3.838, 3.433), ("m5", 4.826, 4.361), ("m6", 5.794, 5.212)] {
        let thread = table.thread(id).unwrap();
        assert!((mm(&thread.major_min_external) - major).abs() < 1e-12, "{id}");
        assert!((mm(&thread.pitch_diameter_min_external) - pitch).abs() < 1e-12, "{id}");
    }
}

fn mm(length: &Property<Length>) -> f64 {
    length.value.get::<millimeter>()
}

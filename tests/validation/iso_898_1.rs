//! ISO 898-1, minimum ultimate tensile loads and proof loads of coarse metric threads. The tables were read in three
//! transcriptions. One of them has 91 130 N for M4 of class 10.9, a misprint for 9130; it is not used.

use approx::assert_relative_eq;
use skinspan::{
    fastening::{ScrewThread, ThreadForm, round_area, tensile_capacity},
    units::{Length, Pressure, Ratio},
};
use uom::si::{area::square_millimeter, length::millimeter, pressure::megapascal};

/// Areas are printed with three digits, the coarsest of them 115: half a unit of the last.
const THREE_DIGITS: f64 = 0.0044;
/// Loads are the product with the printed area, cut to three digits: both roundings.
const THREE_DIGITS_TWICE: f64 = 0.0066;

/// Diameter, pitch, stress area in mm²; then in N: ultimate of 8.8 and of 10.9, proof of 8.8.
const TABLE: [[f64; 6]; 8] = [
    [4.0, 0.7, 8.78, 7020.0, 9130.0, 5100.0],
    [5.0, 0.8, 14.2, 11_350.0, 14_800.0, 8230.0],
    [6.0, 1.0, 20.1, 16_100.0, 20_900.0, 11_600.0],
    [8.0, 1.25, 36.6, 29_200.0, 38_100.0, 21_200.0],
    [10.0, 1.5, 58.0, 46_400.0, 60_300.0, 33_700.0],
    [12.0, 1.75, 84.3, 67_400.0, 87_700.0, 48_900.0],
    [14.0, 2.0, 115.0, 92_000.0, 120_000.0, 66_700.0],
    [16.0, 2.0, 157.0, 125_000.0, 163_000.0, 91_000.0],
];

fn metric(major: f64, pitch: f64) -> ScrewThread {
    let mm = Length::new::<millimeter>;
    ScrewThread { major: mm(major), pitch: mm(pitch), form: ThreadForm::Metric }
}

#[test]
fn stress_areas_of_coarse_threads() {
    for [d, p, area, ..] in TABLE {
        assert_relative_eq!(metric(d, p).stress_area().get::<square_millimeter>(), area, max_relative = THREE_DIGITS);
    }
}

#[test]
fn ultimate_and_proof_loads() {
    let load = |stress: f64, [d, p, ..]: [f64; 6]| {
        let area = metric(d, p).stress_area();
        tensile_capacity(Pressure::new::<megapascal>(stress), area, Ratio::from(1.0)).value
    };
    for row in TABLE {
        assert_relative_eq!(load(800.0, row), row[3], max_relative = THREE_DIGITS_TWICE);
        assert_relative_eq!(load(1040.0, row), row[4], max_relative = THREE_DIGITS_TWICE);
        assert_relative_eq!(load(580.0, row), row[5], max_relative = THREE_DIGITS_TWICE);
    }
}

#[test]
fn stress_area_is_the_formula_of_clause_9_1_6_1() {
    // A = (π/4)((d₂ + d₃)/2)² with d₃ = d₁ − H/6: (π/4)(d − 13√3/24 p)², 13√3/24 = 0.9382.
    for [d, p, ..] in TABLE {
        let exact = std::f64::consts::FRAC_PI_4 * (d - 13.0 * 3f64.sqrt() / 24.0 * p).powi(2);
        assert_relative_eq!(metric(d, p).stress_area().get::<square_millimeter>(), exact, max_relative = 1e-14);
    }
}

#[test]
fn diameters_iso_724_m6_and_m10() {
    // ISO 724 (from memory), to a thousandth: d₂ 5.350 and 9.026, D₁ 4.917 and 8.376; d₃ 4.773 and 8.160.
    for (d, p, pitch_diameter, minor, root) in [(6.0, 1.0, 5.350, 4.917, 4.773), (10.0, 1.5, 9.026, 8.376, 8.160)] {
        let thread = metric(d, p);
        let off = |length: Length, printed: f64| (length.get::<millimeter>() - printed).abs();
        assert!(off(thread.pitch_diameter(), pitch_diameter) < 0.0006);
        assert!(off(thread.minor_diameter(), minor) < 0.0006);
        assert!(off(thread.root_diameter(), root) < 0.0006);
        assert_relative_eq!(
            round_area(thread.stress_diameter()).value,
            thread.stress_area().value,
            max_relative = 1e-15
        );
    }
}

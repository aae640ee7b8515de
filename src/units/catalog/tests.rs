use std::collections::HashMap;

use super::{Dimensioned, Length, Mass, Pressure, QUANTITIES, System, Torque, Unit};

fn unit(quantity: &str, name: &str) -> &'static Unit {
    let entry = QUANTITIES.iter().find(|entry| entry.name == quantity);
    let found = entry.and_then(|entry| entry.unit(name));
    found.unwrap_or_else(|| unreachable!("no unit {name} of {quantity}"))
}

#[test]
fn names_are_unique_within_a_quantity_and_quantities_within_the_catalog() {
    let mut seen = HashMap::new();
    for entry in QUANTITIES {
        assert!(seen.insert(("", entry.name), "").is_none(), "{}", entry.name);
        for unit in entry.units {
            for name in unit.names {
                let before = seen.insert((entry.name, *name), unit.symbol);
                assert!(before.is_none(), "{name} of {} is {before:?} and {}", entry.name, unit.symbol);
            }
        }
    }
}

#[test]
fn every_printed_and_offered_unit_exists_in_its_system() {
    for entry in QUANTITIES {
        for (system, steps) in [(System::Us, entry.us), (System::Si, entry.si)] {
            assert_eq!(steps.first().map(|step| step.from), Some(0.0), "{}", entry.name);
            assert!(steps.is_sorted_by(|a, b| a.from < b.from), "{}", entry.name);
            for step in steps {
                let found = entry.unit(step.unit);
                assert!(
                    found.is_some_and(|unit| unit.system.is_none_or(|own| own == system)),
                    "{} of {}",
                    step.unit,
                    entry.name
                );
            }
        }
        assert!(entry.base().is_some(), "{} has no base unit", entry.name);
        assert!(entry.article.ends_with(entry.name));
    }
}

#[test]
fn a_step_starts_at_a_round_number_of_its_unit() {
    // The thresholds are written in SI; what they mean is a round number of some unit: 1 ft², 10 ksi, 10 lbf·ft.
    for (quantity, step, threshold) in [
        ("area", "ft2", 1.0),
        ("volume", "ft3", 1.0),
        ("mass", "lb", 1.0),
        ("pressure", "ksi", 10.0),
        ("pressure", "Msi", 1.0),
        ("torque", "lbf·ft", 10.0),
        ("time", "year", 2.0),
    ] {
        let entry = QUANTITIES.iter().find(|entry| entry.name == quantity);
        let from = entry.and_then(|entry| entry.us.iter().find(|s| s.unit == step)).map_or(f64::NAN, |s| s.from);
        // Ten digits are written.
        assert!((unit(quantity, step).of_si(from) / threshold - 1.0).abs() < 1e-9, "{step}");
    }
}

#[test]
fn definitions_of_1959_and_1901_are_met_to_the_last_bit() {
    for (quantity, name, exact) in [
        ("length", "in", 0.0254),
        ("length", "ft", 0.3048),
        ("length", "yd", 0.9144),
        ("length", "mil", 2.54e-5),
        ("length", "mm", 0.001),
        ("area", "in2", 6.4516e-4),
        ("area", "ft2", 0.09290304),
        ("volume", "in3", 1.6387064e-5),
        ("volume", "ft3", 0.028316846592),
        ("volume", "gal", 3.785411784e-3),
        ("mass", "lb", 0.45359237),
        ("mass", "oz", 0.028349523125),
        ("force", "lbf", 4.4482216152605),
        ("force", "kgf", 9.80665),
        ("acceleration", "g", 9.80665),
        ("speed", "mph", 0.44704),
        ("speed", "kn", 1852.0 / 3600.0),
        ("torque", "lbf·ft", 1.3558179483314004),
        ("torque", "lbf·in", 0.1129848290276167),
        ("temperature difference", "°F", 5.0 / 9.0),
        ("foundation modulus", "N/mm3", 1e9),
        ("time", "year", 31_557_600.0),
        ("frequency", "rpm", 1.0 / 60.0),
        ("angle", "deg", std::f64::consts::PI / 180.0),
        ("length", "cm", 0.01),
        ("length", "µm", 1e-6),
        ("area", "mm2", 1e-6),
        ("area", "cm2", 1e-4),
        ("area", "yd2", 0.83612736),
        ("volume", "mm3", 1e-9),
        ("volume", "cm3", 1e-6),
        ("volume", "L", 1e-3),
        ("mass", "g", 1e-3),
        ("mass", "t", 1e3),
        ("density", "g/cm3", 1e3),
        ("mass per area", "g/m2", 1e-3),
        ("mass per length", "g/m", 1e-3),
        ("force", "kN", 1e3),
        ("pressure", "kPa", 1e3),
        ("pressure", "MPa", 1e6),
        ("pressure", "GPa", 1e9),
        ("pressure", "bar", 1e5),
        ("pressure", "kgf/cm2", 98_066.5),
        ("torque", "kN·m", 1e3),
        ("torque", "N·mm", 1e-3),
        ("time", "min", 60.0),
        ("time", "h", 3_600.0),
        ("time", "day", 86_400.0),
        ("frequency", "kHz", 1e3),
        ("speed", "ft/s", 0.3048),
        ("speed", "km/h", 1.0 / 3.6),
        ("acceleration", "ft/s2", 0.3048),
        ("thermal expansion", "ppm/K", 1e-6),
        ("thermal expansion", "ppm/°F", 1.8e-6),
        ("ratio", "%", 0.01),
        ("force per width", "N/mm", 1e3),
        ("force per width", "kN/m", 1e3),
        ("moment per width", "lbf·in/in", 4.4482216152605),
        ("moment per width", "lbf·ft/ft", 4.4482216152605),
        ("moment per width", "kN·m/m", 1e3),
        ("flexural rigidity", "lbf·in2/in", 0.1129848290276167),
        ("flexural rigidity", "kN·m", 1e3),
        ("flexural rigidity", "N·mm", 1e-3),
        ("curvature", "1/mm", 1e3),
        ("curvature", "1/in", 5_000.0 / 127.0),
        ("curvature", "1/ft", 1_250.0 / 381.0),
        ("foundation modulus", "kN/m3", 1e3),
        ("foundation modulus", "MN/m3", 1e6),
    ] {
        assert_eq!(unit(quantity, name).to_si(1.0).to_bits(), exact.to_bits(), "{name}");
    }
}

/// [`NIST_SP_811`](crate::source::NIST_SP_811), appendix B.8, prints seven digits: half a unit of the last one is at most 5e-7 of the value.
const NIST_SP_811_DIGITS: f64 = 5e-7;

#[test]
fn derived_factors_nist_sp_811_b8() {
    // The figures are from memory; each is also the exact quotient of the definitions above to the digits printed.
    for (quantity, name, printed) in [
        ("pressure", "psi", 6.894757e3),
        ("pressure", "ksi", 6.894757e6),
        ("pressure", "psf", 4.788026e1),
        ("density", "lb/ft3", 1.601846e1),
        ("density", "lb/in3", 2.767990e4),
        ("mass per area", "oz/yd2", 3.390575e-2),
        ("mass per area", "oz/ft2", 3.051517e-1),
        ("mass per area", "lb/ft2", 4.882428),
        ("mass per length", "lb/ft", 1.488164),
        ("pressure", "Msi", 6.894757e9),
        ("force", "kip", 4.448222e3),
        ("mass per length", "lb/in", 1.785797e1),
        ("foundation modulus", "psi/in", 2.714471e5),
        ("force per width", "lbf/in", 1.751268e2),
        ("force per width", "lbf/ft", 1.459390e1),
        ("torque", "lbf·ft", 1.355818),
        ("speed", "kn", 5.144444e-1),
        ("thermal expansion", "1/°F", 1.8),
    ] {
        let ours = unit(quantity, name).to_si(1.0);
        assert!((ours / printed - 1.0).abs() < NIST_SP_811_DIGITS, "{name}: {ours}");
    }
}

#[test]
fn fixed_points_of_the_temperature_scales() {
    let (f, c) = (unit("temperature", "°F"), unit("temperature", "°C"));
    assert_eq!(f.to_si(32.0).to_bits(), 273.15_f64.to_bits());
    // 459.67 has no exact binary form, and the sum rounds: a few parts in 10¹⁶ of 400 K.
    assert!((f.to_si(212.0) - c.to_si(100.0)).abs() < 1e-12);
    assert!((f.to_si(-40.0) - c.to_si(-40.0)).abs() < 1e-12);
}

#[test]
fn decimals_of_an_inch_do_not_pick_up_noise() {
    assert_eq!(unit("length", "in").to_si(1.5).to_bits(), 0.0381_f64.to_bits());
    assert_eq!(unit("length", "in").of_si(0.0381).to_bits(), 1.5_f64.to_bits());
}

#[test]
fn quantities_carry_their_names() {
    assert_eq!((Length::NAME, Mass::ARTICLE), ("length", "a mass"));
    assert_eq!((Pressure::UNITS.len(), Torque::NAME), (10, "torque"));
}

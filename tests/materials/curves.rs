//! Properties as functions: exact at the points, monotone between them, silent nowhere outside.

use super::*;

/// Points of the table, typed again from the data sheet.
const SHEAR_STRENGTH: [(f64, f64); 5] = [(60.0, 0.76), (80.0, 1.15), (100.0, 1.6), (130.0, 2.2), (200.0, 3.5)];

#[test]
fn exact_at_the_points_and_half_way_between_them() {
    let table = built_in();
    let curve = &table.core("pvc-foam").unwrap().shear_strength;
    let at = |x: f64| mpa(curve.at(density(x)).unwrap().value);
    for (x, y) in SHEAR_STRENGTH {
        near(at(x), y, 1e-12);
    }
    for [(x0, y0), (x1, y1)] in SHEAR_STRENGTH.array_windows::<2>() {
        near(at(f64::midpoint(*x0, *x1)), f64::midpoint(*y0, *y1), 1e-12);
    }
}

#[test]
fn a_value_that_rests_on_a_remembered_point_says_so() {
    let table = built_in();
    let curve = &table.core("pvc-foam").unwrap().shear_strength;
    let mark = |x: f64| curve.at(density(x)).unwrap().origin.mark;
    assert_eq!(mark(48.0), Mark::Memory);
    assert_eq!(mark(54.0), Mark::Memory);
    assert_eq!(mark(60.0), Mark::Read);
    assert_eq!(mark(120.0), Mark::Read);
    assert_eq!(mark(225.0), Mark::Memory);
}

#[test]
fn outside_the_range_is_an_error_that_names_it() {
    let table = built_in();
    let error = table.core("pvc-foam").unwrap().at(density(300.0)).unwrap_err();
    assert_eq!((error.low, error.high), (density(48.0), density(250.0)));
    let text = error.to_string();
    assert!(text.contains("48.0 kg/m³") && text.contains("250 kg/m³") && text.contains("300 kg/m³"), "{text}");
    assert!(table.core("pvc-foam").unwrap().at(density(f64::NAN)).is_err());
}

/// 12.5 lb/ft³ is 200.23 kg/m³: the nominal 200 of a family that ends there.
#[test]
fn a_nominal_density_in_the_other_system_is_still_in_range() {
    let table = built_in();
    let pet = table.core("pet-foam").unwrap();
    let rounded = pet.at(density(200.23)).unwrap();
    assert_eq!(rounded.shear_strength.value, pet.at(density(200.0)).unwrap().shear_strength.value);
    assert!(pet.at(density(201.1)).is_err());
}

proptest! {
    #[test]
    fn between_the_points_it_is_monotone(a in 48.0..250.0_f64, b in 48.0..250.0_f64) {
        let table = built_in();
        let core = table.core("pvc-foam").unwrap();
        let curves: [&Curve<MassDensity, Pressure>; 3] =
            [&core.shear_strength, &core.compressive_modulus, &core.in_plane_modulus];
        for curve in curves {
            let at = |x: f64| curve.at(density(x)).unwrap().value;
            prop_assert_eq!(a <= b, at(a) <= at(b) || (a - b).abs() < 1e-9);
        }
    }
}

/// Past the last temperature of a curve nothing is said, be it by half a degree: there the core goes soft.
#[test]
fn a_temperature_past_the_end_has_no_value() {
    let table = built_in();
    let core = table.core("pvc-foam").unwrap().at(density(80.0)).unwrap();
    let (_, end) = core.hot_retention.range().unwrap();
    assert!(core.hot_retention.at(end).is_ok());
    for beyond in [0.01, 0.5, 1.5] {
        let past = skinspan::units::Dimensioned::from_si(skinspan::units::Dimensioned::si(end) + beyond);
        assert!(core.hot_retention.at(past).is_err(), "{beyond} K past the end");
    }
}

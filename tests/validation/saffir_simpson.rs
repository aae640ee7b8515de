//! Saffir-Simpson hurricane wind scale, table of the National Hurricane Center.

use skinspan::load::wind::Storm;
use uom::si::{f64::Velocity, velocity::meter_per_second};

/// The knots of the table are rounded by class, not from the miles an hour beside them.
const ROUNDED_BY_CLASS: f64 = 1.0;

/// First and last wind of each category, in miles an hour and in knots as printed.
const TABLE: [(u8, [f64; 2], [f64; 2]); 4] = [
    (1, [74.0, 95.0], [64.0, 82.0]),
    (2, [96.0, 110.0], [83.0, 95.0]),
    (3, [111.0, 129.0], [96.0, 112.0]),
    (4, [130.0, 156.0], [113.0, 136.0]),
];

fn mph(v: f64) -> Velocity {
    Velocity::new::<meter_per_second>(0.44704 * v)
}

#[test]
fn storm_class_saffir_simpson_table() {
    for (category, bounds, _) in TABLE {
        for bound in bounds {
            assert_eq!(Storm::of(mph(bound)), Storm::Hurricane(category), "{bound} mph");
        }
    }
    assert_eq!(Storm::of(mph(157.0)), Storm::Hurricane(5));
    assert_eq!(Storm::of(mph(73.0)), Storm::Tropical);
    assert_eq!(Storm::of(mph(39.0)), Storm::Tropical);
    assert_eq!(Storm::of(mph(38.0)), Storm::Below);
}

#[test]
fn storm_bounds_saffir_simpson_mph_and_knots_agree() {
    for (_, in_mph, in_knots) in TABLE {
        for (m, k) in in_mph.into_iter().zip(in_knots) {
            let knots = mph(m).get::<meter_per_second>() * 3600.0 / 1852.0;
            assert!((knots - k).abs() < ROUNDED_BY_CLASS, "{m} mph is {knots} kn, printed {k}");
        }
    }
}

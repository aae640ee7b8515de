//! Loads: scaling, symmetry, limits, equilibrium.

use std::num::NonZeroU32;

use proptest::prelude::*;
use skinspan::load::{
    slam::{HeadSea, PlaningBoat, at_station, mean_acceleration, peak_mean},
    temperature::{HeatLayer, difference, outer_bond},
    wind::{Zone, net_pressure, velocity_pressure, zone_width},
};
use uom::si::{
    angle::degree,
    f64::{Angle, Length, Mass, MassDensity, Pressure, Ratio, ThermalConductivity, ThermodynamicTemperature, Velocity},
    length::meter,
    mass::kilogram,
    mass_density::kilogram_per_cubic_meter,
    pressure::pascal,
    ratio::ratio,
    temperature_interval,
    thermal_conductivity::watt_per_meter_kelvin,
    thermodynamic_temperature::kelvin,
    velocity::meter_per_second,
};

/// Rounding of a handful of operations.
const ROUNDING: f64 = 1e-12;

fn r(x: f64) -> Ratio {
    Ratio::new::<ratio>(x)
}

fn m(x: f64) -> Length {
    Length::new::<meter>(x)
}

fn k(x: f64) -> ThermodynamicTemperature {
    ThermodynamicTemperature::new::<kelvin>(x)
}

fn close(a: f64, b: f64) -> bool {
    (a - b).abs() <= ROUNDING * a.abs().max(b.abs()).max(1.0)
}

proptest! {
    #[test]
    fn wind_reversed_presses_the_same(v in 0.0..100.0_f64, rho in 0.9..1.5_f64) {
        let rho = MassDensity::new::<kilogram_per_cubic_meter>(rho);
        let q = |v| velocity_pressure(Velocity::new::<meter_per_second>(v), rho);
        prop_assert_eq!(q(v), q(-v));
        prop_assert!(q(v).get::<pascal>() >= 0.0);
    }

    #[test]
    fn net_pressure_keeps_the_sign_of_its_coefficient(q in 0.0..5000.0_f64, g in 0.5..1.5_f64, c in -4.0..4.0_f64) {
        let p = net_pressure(Pressure::new::<pascal>(q), r(g), r(c)).get::<pascal>();
        prop_assert!(p * c >= 0.0);
        prop_assert!(close(p, -net_pressure(Pressure::new::<pascal>(q), r(g), r(-c)).get::<pascal>()));
    }

    #[test]
    fn zones_do_not_depend_on_the_order_of_edges(a in 0.0..3.0_f64, b in 0.0..3.0_f64, w in 0.0..1.0_f64) {
        prop_assert_eq!(Zone::of(m(a), m(b), m(w)), Zone::of(m(b), m(a), m(w)));
    }

    #[test]
    fn zones_only_get_milder_inwards(a in 0.0..3.0_f64, b in 0.0..3.0_f64, w in 0.0..1.0_f64, step in 0.0..1.0_f64) {
        prop_assert!(Zone::of(m(a + step), m(b), m(w)) <= Zone::of(m(a), m(b), m(w)));
    }

    #[test]
    fn zone_width_is_never_below_its_minimum(b in 0.1..10.0_f64, f in 0.0..0.5_f64, least in 0.0..1.0_f64) {
        let a = zone_width(m(b), r(f), m(least));
        prop_assert!(a >= m(least) && a >= m(b) * r(f));
    }

    /// Froude: a boat twice as large in a sea twice as high, at √2 times the speed, feels the same accelerations.
    #[test]
    fn slam_obeys_froude(
        l in 5.0..20.0_f64, slenderness in 2.5..5.0_f64, deadrise in 10.0..30.0_f64, load in 0.1..1.0_f64,
        v in 5.0..25.0_f64, trim in 2.0..8.0_f64, wave in 0.05..1.0_f64, scale in 0.3..4.0_f64,
    ) {
        let density = MassDensity::new::<kilogram_per_cubic_meter>(1025.0);
        let at = |s: f64| {
            let beam = l / slenderness * s;
            let boat = PlaningBoat {
                length: m(l * s),
                beam: m(beam),
                deadrise: Angle::new::<degree>(deadrise),
                displacement: Mass::new::<kilogram>(load * 1025.0 * beam.powi(3)),
                speed: Velocity::new::<meter_per_second>(v * s.sqrt()),
                trim: Angle::new::<degree>(trim),
            };
            mean_acceleration(&boat, &HeadSea { significant_height: m(wave * beam), density })
        };
        let (model, full) = (at(1.0), at(scale));
        prop_assert!(close(model.at_cg.get::<ratio>(), full.at_cg.get::<ratio>()));
        prop_assert!(close(model.at_bow.get::<ratio>(), full.at_bow.get::<ratio>()));
    }

    #[test]
    fn rarer_peaks_are_higher(n in 0.01..5.0_f64, a in 1_u32..1000, b in 1_u32..1000) {
        let peak = |one_in| NonZeroU32::new(one_in).map(|one_in| peak_mean(r(n), one_in));
        prop_assert_eq!(a < b, peak(a) < peak(b));
    }

    #[test]
    fn stations_meet_both_ends(cg in 0.0..5.0_f64, bow in 0.0..9.0_f64, x in 0.5..8.0_f64) {
        prop_assert!(close(at_station(r(cg), r(bow), m(0.0), m(x)).get::<ratio>(), cg));
        prop_assert!(close(at_station(r(cg), r(bow), m(x), m(x)).get::<ratio>(), bow));
        prop_assert!(close(at_station(r(cg), r(bow), m(-x), m(x)).get::<ratio>(), cg));
    }

    #[test]
    fn a_bond_lies_between_the_surfaces(outer in 250.0..370.0_f64, inner in 250.0..370.0_f64, t in 0.0005..0.01_f64,
                                        c in 0.005..0.05_f64) {
        let layer = |t, k| HeatLayer {
            thickness: m(t),
            conductivity: ThermalConductivity::new::<watt_per_meter_kelvin>(k),
        };
        let bond = outer_bond(k(outer), k(inner), layer(t, 0.25), layer(c, 0.035), layer(t, 0.25)).get::<kelvin>();
        let (low, high) = (outer.min(inner), outer.max(inner));
        prop_assert!(low - 1e-9 <= bond && bond <= high + 1e-9);
        // Seen from the other side, the inner bond mirrors it: no heat is lost on the way.
        let other = outer_bond(k(inner), k(outer), layer(t, 0.25), layer(c, 0.035), layer(t, 0.25)).get::<kelvin>();
        prop_assert!((bond + other - outer - inner).abs() < 1e-9);
    }

    #[test]
    fn temperatures_differ_as_they_are_added(a in 230.0..380.0_f64, b in 230.0..380.0_f64) {
        prop_assert!((difference(k(a), k(b)).get::<temperature_interval::kelvin>() - (a - b)).abs() < 1e-9);
    }
}

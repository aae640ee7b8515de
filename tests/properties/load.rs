//! Loads: scaling, symmetry, limits, equilibrium.

use std::num::NonZeroU32;

use proptest::prelude::*;
use skinspan::load::{
    lifting::{sling, sling_inset},
    people::{Footprint, side_by_side},
    slam::{HeadSea, PlaningBoat, at_station, mean_acceleration, peak_mean},
    temperature::{HeatLayer, difference, free_curvature, outer_bond},
    trailer::RoadAccelerations,
    wind::{Zone, net_pressure, velocity_pressure, zone_width},
};
use uom::si::{
    angle::degree,
    f64::{
        Angle, Force, Length, Mass, MassDensity, Pressure, Ratio, TemperatureCoefficient, TemperatureInterval,
        ThermalConductivity, ThermodynamicTemperature, Velocity,
    },
    force::newton,
    length::meter,
    mass::kilogram,
    mass_density::kilogram_per_cubic_meter,
    pressure::pascal,
    ratio::ratio,
    temperature_coefficient::per_kelvin,
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
    fn a_group_stands_about_its_middle(n in 1_u32..8, spacing in 0.2..1.0_f64) {
        let places = side_by_side(n, m(spacing));
        prop_assert_eq!(places.len(), n as usize);
        prop_assert!(places.iter().copied().sum::<Length>().get::<meter>().abs() < ROUNDING);
        for pair in places.windows(2) {
            prop_assert!(close((pair[1] - pair[0]).get::<meter>(), spacing));
        }
    }

    #[test]
    fn a_disc_presses_harder_than_its_square(d in 0.01..0.3_f64, f in 1.0..3000.0_f64) {
        let force = Force::new::<newton>(f);
        let disc = Footprint::Disc { diameter: m(d) };
        let square = Footprint::Square { side: m(d) };
        let quotient = (disc.pressure(force) / square.pressure(force)).get::<ratio>();
        prop_assert!(close(quotient, 4.0 / std::f64::consts::PI));
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
    fn equal_skins_equally_warm_stay_flat(alpha in 1e-6..3e-5_f64, warming in -50.0..80.0_f64, d in 0.005..0.06_f64) {
        let expansion = TemperatureCoefficient::new::<per_kelvin>(alpha);
        let warming = TemperatureInterval::new::<temperature_interval::kelvin>(warming);
        prop_assert!(free_curvature(expansion, warming, expansion, warming, m(d)).value.abs() < f64::EPSILON);
    }

    #[test]
    fn temperatures_differ_as_they_are_added(a in 230.0..380.0_f64, b in 230.0..380.0_f64) {
        prop_assert!((difference(k(a), k(b)).get::<temperature_interval::kelvin>() - (a - b)).abs() < 1e-9);
    }

    #[test]
    fn slings_carry_the_top(mass in 5.0..500.0_f64, jerk in 1.0..2.0_f64, n in 1_u32..6, angle in 0.0..60.0_f64) {
        let Some(carrying) = NonZeroU32::new(n) else { return Ok(()) };
        let s = sling(Mass::new::<kilogram>(mass), r(jerk), carrying, Angle::new::<degree>(angle));
        prop_assert!(close(s.upward.get::<newton>() * f64::from(n), mass * 9.80665 * jerk));
        let (up, inward, pull) = (s.upward.get::<newton>(), s.inward.get::<newton>(), s.tension.get::<newton>());
        prop_assert!(close(pull.powi(2), up.powi(2) + inward.powi(2)));
    }

    #[test]
    fn sling_inset_evens_the_moments(l in 0.5..5.0_f64) {
        let a = sling_inset(m(l)).get::<meter>();
        let over_sling = a * a / 2.0;
        let at_middle = l * l / 8.0 - l * a / 2.0;
        prop_assert!(close(over_sling, at_middle));
        prop_assert!(close(over_sling, l * l * (3.0 - 2.0 * std::f64::consts::SQRT_2) / 8.0));
    }

    #[test]
    fn the_road_pushes_one_way_at_a_time(f in 0.1..2.0_f64, b in 0.1..2.0_f64, s in 0.1..2.0_f64, d in 1.0..4.0_f64) {
        let road = RoadAccelerations { forward: r(f), rearward: r(b), sideways: r(s), down: r(d) };
        let events = road.events();
        let sum = |part: fn(&skinspan::load::trailer::BodyLoad) -> Ratio| {
            events.iter().map(|event| part(event).get::<ratio>()).sum::<f64>()
        };
        prop_assert!(close(sum(|e| e.forward), f - b));
        prop_assert!(close(sum(|e| e.port), 0.0));
        prop_assert!(close(sum(|e| e.down), 4.0 + d));
        prop_assert!(events.iter().all(|e| (e.forward * e.port).get::<ratio>() == 0.0));
    }
}

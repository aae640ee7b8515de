//! What must hold of the strength formulas for every top.

use proptest::prelude::*;
use skinspan::{
    strength::{
        Branch, DESIGN_FACTOR, DeepCore, Denting, DiscLoad, EqualSkins, HOFF_MAUTNER_FACTOR, IsotropicPlate, Pad,
        RoundFoot, SkinBending, SkinExpansion, SkinOnCore, StripLoad, WrinklingModuli, bending_modulus,
        cell_dimpling_stress, core_shear_at_centre, core_shear_at_skin, core_shear_beside_conduit, core_shear_stress,
        core_shear_with_crush, crimping_load, disbond_size, disbond_stress, euler_load, foundation_modulus, free_bow,
        free_curvature, hoff_mautner_wrinkle, line_pressure, local_stiffness, pad_pressure, plate_buckling,
        plate_modulus, punching_peak, punching_shear_at, punching_stress, resultant_core_shear, round_pad_pressure,
        skin_moment_at_edge, skin_moment_at_round_edge, strip_edge_shear_at, void_stress_across, void_stress_along,
        wide_column_load, wrinkling_stress, wrinkling_under_biaxial_compression, wrinkling_under_compression_and_shear,
    },
    units::{
        Force, ForcePerWidth, Length, Pressure, Ratio, TemperatureCoefficient, TemperatureInterval, per_width, plain,
    },
};
use uom::si::{
    force::newton, length::millimeter, pressure::megapascal, ratio::ratio, temperature_coefficient::per_kelvin,
    temperature_interval::kelvin,
};

fn mpa(value: f64) -> Pressure {
    Pressure::new::<megapascal>(value)
}

fn mm(value: f64) -> Length {
    Length::new::<millimeter>(value)
}

fn newtons(value: f64) -> Force {
    Force::new::<newton>(value)
}

fn r(value: f64) -> Ratio {
    Ratio::new::<ratio>(value)
}

/// N/mm.
fn line(value: f64) -> ForcePerWidth {
    per_width(newtons(value) / mm(1.0))
}

fn close(a: f64, b: f64) -> bool {
    (a - b).abs() <= 1e-10 * a.abs().max(b.abs())
}

prop_compose! {
    fn moduli()(skin in 4e3..40e3, core in 20.0..400.0, core_shear in 8.0..150.0) -> WrinklingModuli {
        WrinklingModuli { skin: mpa(skin), core: mpa(core), core_shear: mpa(core_shear) }
    }
}

prop_compose! {
    fn panel()(skin in 4e3..40e3, g in 8.0..150.0, t in 0.5..4.0, c in 8.0..60.0) -> (SkinBending, Length) {
        (SkinBending::of_equal_skins(mpa(skin), mpa(g), mm(t), mm(c)), mm(t + c))
    }
}

prop_compose! {
    fn skin_on_core()(e in 4e3..40e3, nu in 0.05..0.4, t in 0.5..4.0, core in 20.0..400.0, c in 8.0..60.0)
        -> (SkinOnCore, DeepCore)
    {
        let skin_rigidity = per_width(plate_modulus(mpa(e), r(nu)) * mm(t) * mm(t) * mm(t) / 12.0);
        let foundation = foundation_modulus(mpa(core), mm(c), Denting::FarSkinHeld);
        (SkinOnCore { skin_rigidity, poisson: r(nu), foundation }, DeepCore { skin_rigidity, core_modulus: mpa(core) })
    }
}

proptest! {
    #[test]
    fn wrinkling_grows_with_each_modulus_and_scales(m in moduli(), k in 1.01f64..3.0) {
        let stress = wrinkling_stress(DESIGN_FACTOR, m);
        for more in [
            WrinklingModuli { skin: m.skin * k, ..m },
            WrinklingModuli { core: m.core * k, ..m },
            WrinklingModuli { core_shear: m.core_shear * k, ..m },
        ] {
            prop_assert!(close((wrinkling_stress(DESIGN_FACTOR, more) / stress).value, k.cbrt()));
        }
    }

    #[test]
    fn thicker_skin_never_lowers_the_wrinkling_load(m in moduli(), t in 0.5..4.0, c in 3.0..60.0, k in 1.01..2.0) {
        let load = |t: f64| hoff_mautner_wrinkle(m, mm(t), mm(c)).stress * mm(t);
        prop_assert!(load(t * k) > load(t));
    }

    #[test]
    fn thin_core_is_never_below_the_cube_root(m in moduli(), t in 0.5..4.0, c in 1.0..60.0) {
        let wrinkle = hoff_mautner_wrinkle(m, mm(t), mm(c));
        let cube_root = wrinkling_stress(HOFF_MAUTNER_FACTOR, m);
        prop_assert!(wrinkle.stress >= cube_root * (1.0 - 1e-12));
        prop_assert!(wrinkle.zone <= mm(c) / 2.0);
        prop_assert_eq!(wrinkle.branch == Branch::ThinCore, wrinkle.stress > cube_root * (1.0 + 1e-12));
    }

    #[test]
    fn wrinkling_branches_meet(m in moduli(), t in 0.5..4.0) {
        let zone = hoff_mautner_wrinkle(m, mm(t), mm(1e4)).zone;
        let a = hoff_mautner_wrinkle(m, mm(t), zone * 2.0 * (1.0 - 1e-9));
        let b = hoff_mautner_wrinkle(m, mm(t), zone * 2.0 * (1.0 + 1e-9));
        prop_assert!(a.branch == Branch::ThinCore && b.branch == Branch::ThickCore);
        prop_assert!(close(a.stress.value, b.stress.value));
    }

    #[test]
    fn wrinkling_utilisation_scales_with_the_load(x in 0.0..2.0, y in -1.0..2.0, s in -2.0..2.0, k in 0.01..100.0) {
        let biaxial = |k: f64| wrinkling_under_biaxial_compression(r(k * x), r(k * y)).value;
        let sheared = |k: f64| wrinkling_under_compression_and_shear(r(k * x), r(k * s)).value;
        prop_assert!(close(biaxial(k), k * biaxial(1.0)));
        prop_assert!(close(sheared(k), k * sheared(1.0)));
    }

    #[test]
    fn wrinkling_utilisation_satisfies_its_equation(x in 0.0f64..2.0, y in 0.0f64..2.0, s in -2.0f64..2.0) {
        prop_assume!(x.max(y) > 1e-3);
        let u = wrinkling_under_biaxial_compression(r(x), r(y)).value;
        prop_assert!(close((x.max(y) / u).powi(3) + x.min(y) / u, 1.0));
        let u = wrinkling_under_compression_and_shear(r(x), r(s)).value;
        prop_assert!(close(x / u + (s / u).powi(2), 1.0));
    }

    #[test]
    fn wrinkling_utilisation_is_never_below_one_stress_alone(x in 0.0f64..2.0, y in 0.0f64..2.0, more in 0.0..1.0) {
        let u = |x, y| wrinkling_under_biaxial_compression(r(x), r(y)).value;
        prop_assert!(u(x, y) >= x.max(y) * (1.0 - 1e-12) && u(x, y) <= x + y + 1e-12);
        prop_assert!(close(u(x, y), u(y, x)));
        prop_assert!(u(x + more, y) >= u(x, y) * (1.0 - 1e-12));
        let u = |x, s| wrinkling_under_compression_and_shear(r(x), r(s)).value;
        prop_assert!(u(x, y) >= x.max(y) * (1.0 - 1e-12) && u(x, y) <= x + y + 1e-12);
        prop_assert!(u(x, y + more) >= u(x, y) * (1.0 - 1e-12));
    }

    #[test]
    fn column_is_below_euler_and_below_crimping((p, _) in panel(), l in 100.0..3000.0, k in 1.01..2.0) {
        let load = wide_column_load(p.rigidity(), p.shear, mm(l));
        prop_assert!(load < euler_load(p.rigidity(), mm(l)) && load < crimping_load(p.shear));
        prop_assert!(wide_column_load(p.rigidity(), p.shear, mm(l * k)) < load);
    }

    #[test]
    fn plate_buckles_in_the_easiest_wave((p, _) in panel(), a in 100.0..4000.0, b in 100.0..2000.0) {
        let plate = IsotropicPlate { rigidity: p.rigidity(), shear: p.shear, length: mm(a), width: mm(b) };
        let buckling = plate_buckling(&plate);
        prop_assert!(buckling.load > wide_column_load(p.rigidity(), p.shear, mm(a)) * (1.0 - 1e-12));
        for m in 1..40 {
            // A strip of one half wave cannot be easier than the plate that chose its own.
            let cell = IsotropicPlate { length: mm(a / f64::from(m)), ..plate };
            let (x, g) = ((f64::from(m) * b / a).powi(2), std::f64::consts::PI.powi(2) / (b * b * 1e-6));
            let dg = p.rigidity().value * g * (1.0 + x);
            let single = dg * (1.0 + x) / x / (1.0 + dg / p.shear.value);
            prop_assert!(buckling.load.value <= single * (1.0 + 1e-12));
            prop_assert!(buckling.load <= plate_buckling(&cell).load * (1.0 + 1e-12));
        }
    }

    #[test]
    fn exact_core_shear_grows_towards_the_centre(
        e in 4e3..40e3, core in 0.0..400.0, t in 0.5f64..4.0, c in 8.0f64..60.0, v in 0.1..20.0,
    ) {
        let section = EqualSkins {
            skin_modulus: mpa(e),
            core_modulus: mpa(core),
            skin_thickness: mm(t),
            core_thickness: mm(c),
        };
        let (centre, skin) = (core_shear_at_centre(line(v), &section), core_shear_at_skin(line(v), &section));
        prop_assert!(skin <= centre && skin < core_shear_stress(line(v), mm(t + c)));
        // The stress is a parabola in the core and one in each skin; together they carry the force.
        let carried = skin * mm(c) + (centre - skin) * mm(c) * 2.0 / 3.0;
        let in_skins = v * 1e3 - carried.value;
        let rigidity = 1e-3 * (e * (t * (t + c).powi(2) / 2.0 + t.powi(3) / 6.0) + core * c.powi(3) / 12.0);
        // ∫ over one skin of (V/D) E (z_o² − z²)/2
        let (zo, zi) = ((c / 2.0 + t) * 1e-3, c / 2.0 * 1e-3);
        let one = v * 1e3 / rigidity * e * 1e6 / 2.0 * (zo * zo * (zo - zi) - (zo.powi(3) - zi.powi(3)) / 3.0);
        prop_assert!((in_skins - 2.0 * one).abs() < 1e-9 * v * 1e3);
    }

    #[test]
    fn core_shear_components_and_interaction_scale(x in -2.0f64..2.0, y in -2.0f64..2.0, k in 0.01..100.0) {
        let tau = |k: f64| resultant_core_shear(mpa(k * x), mpa(k * y)).value;
        prop_assert!(close(tau(k), k * tau(1.0)) && tau(1.0) >= x.abs().max(y.abs()) * 1e6 * (1.0 - 1e-12));
        let u = |k: f64| core_shear_with_crush(r(k * x), r(k * y)).value;
        prop_assert!(close(u(k), k * u(1.0)) && u(1.0) >= x.abs().max(y.abs()) * (1.0 - 1e-12));
    }

    #[test]
    fn conduit_raises_core_shear_and_a_full_one_is_refused(c in 8.0..60.0, part in 0.0..0.99, more in 1.0..3.0) {
        let net = core_shear_beside_conduit(mpa(0.2), mm(c), mm(part * c)).expect("there is core left");
        prop_assert!(close((net * mm(c - part * c)).value, (mpa(0.2) * mm(c)).value));
        prop_assert!(core_shear_beside_conduit(mpa(0.2), mm(c), mm(more * c)).is_err());
    }

    #[test]
    fn pads_spread_and_balance(p in 10.0..5000.0, l in 5.0..300.0, w in 5.0..300.0, t in 0.0..4.0) {
        let pad = Pad { length: mm(l), width: mm(w) };
        let area = mm(l + 2.0 * t) * mm(w + 2.0 * t);
        prop_assert!(close((pad_pressure(newtons(p), pad, mm(t)) * area).value, p));
        let a = mm(l) + mm(t);
        prop_assert!(close((round_pad_pressure(newtons(p), mm(l), mm(t)) * a * a).value * std::f64::consts::PI, p));
        prop_assert!(close((line_pressure(line(p), mm(w), mm(t)) * mm(w + 2.0 * t)).value, line(p).value));
    }

    #[test]
    fn dents_are_linear_and_bounded((skin, deep) in skin_on_core(), f in 10.0..5000.0, a in 0.1..60.0, k in 1.01..2.0) {
        let load = |f: f64, a: f64| DiscLoad { force: newtons(f), radius: mm(a) };
        let (l, l0) = (skin.spread_length(), deep.spread_length());
        let spread = newtons(f) / (std::f64::consts::PI * mm(a) * mm(a));
        let sigma = skin.core_pressure(load(f, a));
        prop_assert!(close(skin.core_pressure(load(k * f, a)).value, k * sigma.value));
        prop_assert!(close(skin.skin_moment(load(k * f, a)).value, k * skin.skin_moment(load(f, a)).value));
        prop_assert!(sigma <= newtons(f) / (8.0 * l * l) && sigma < 1.15 * spread);
        prop_assert!(close((skin.dent(load(f, a)) * skin.foundation).value, sigma.value));
        prop_assert!(skin.core_pressure(load(f, a * k)) < sigma);
        let sigma = deep.pressure_under_disc(load(f, a));
        prop_assert!(sigma <= newtons(f) / (27f64.sqrt() * l0 * l0) * (1.0 + 1e-9) && sigma < 1.1 * spread);
        prop_assert!(deep.pressure_under_disc(load(f, a * k)) < sigma);
    }

    #[test]
    fn strips_are_linear_and_bounded((skin, deep) in skin_on_core(), p in 0.1..50.0, s in 0.0..100.0, k in 1.01..2.0) {
        let load = |p: f64, s: f64| StripLoad { force: line(p), seat_width: mm(s) };
        let sigma = load(p, s).core_pressure(&skin);
        prop_assert!(close(load(k * p, s).core_pressure(&skin).value, k * sigma.value));
        prop_assert!(sigma <= load(p, 0.0).core_pressure(&skin));
        prop_assert!(load(p, s).skin_moment(&skin) <= load(p, 0.0).skin_moment(&skin));
        prop_assert!((sigma * mm(s)).value < 1.1 * line(p).value);
        let sigma = deep.pressure_under_strip(load(p, s));
        prop_assert!(sigma <= deep.pressure_under_strip(load(p, 0.0)) * (1.0 + 1e-9));
        prop_assert!((sigma * mm(s)).value < 1.1 * line(p).value);
    }

    #[test]
    fn both_skins_denting_is_a_core_of_half_the_depth(core in 20.0..400.0, c in 8.0..60.0) {
        let both = foundation_modulus(mpa(core), mm(c), Denting::BothSkins);
        let half = foundation_modulus(mpa(core), mm(c / 2.0), Denting::FarSkinHeld);
        prop_assert!(close(both.value, half.value));
    }

    #[test]
    fn punching_peak_is_the_peak((p, d) in panel(), b in 2.0..100.0, f in 10.0..5000.0) {
        let foot = RoundFoot { force: newtons(f), radius: mm(b), skin_distance: d };
        let peak = punching_peak(&foot, &p);
        let rim = punching_stress(newtons(f), 2.0 * std::f64::consts::PI * mm(b), d);
        prop_assert!(peak.stress < rim && peak.radius > mm(b));
        for i in 0..60 {
            let place = mm(b) + p.decay_length() * (0.2 * f64::from(i));
            prop_assert!(punching_shear_at(place, &foot, &p) <= peak.stress * (1.0 + 1e-12));
        }
    }

    #[test]
    fn wide_disc_is_a_straight_edge((p, d) in panel(), x in 0.1..5.0) {
        let radius = p.decay_length() * 1e6;
        let v = line(1.0);
        let force = newtons((plain(v) * 2.0 * std::f64::consts::PI * radius).value);
        let foot = RoundFoot { force, radius, skin_distance: d };
        let round = punching_shear_at(radius + p.decay_length() * x, &foot, &p);
        let straight = strip_edge_shear_at(p.decay_length() * x, v, d, &p);
        prop_assert!((round / straight - r(1.0)).value.abs() < 1e-5);
        let round = skin_moment_at_round_edge(v, radius, &p, p.skins);
        prop_assert!((round / skin_moment_at_edge(v, &p, p.skins) - r(1.0)).value.abs() < 1e-6);
    }

    #[test]
    fn strip_edge_shear_and_skin_moment_are_in_equilibrium((p, d) in panel(), v in 0.1..50.0) {
        // What the core does not yet carry near the edge, the skins do: the integral of the difference is the moment.
        let far = core_shear_stress(line(v), d) * p.core_share();
        let step = p.decay_length() / 200.0;
        let missing = (0..8000)
            .map(|i| (far - strip_edge_shear_at(step * (f64::from(i) + 0.5), line(v), d, &p)) * d * step)
            .map(|m| m.value)
            .sum::<f64>();
        prop_assert!((missing / skin_moment_at_edge(line(v), &p, p.skins).value - 1.0).abs() < 1e-4);
    }

    #[test]
    fn bending_modulus_of_an_isotropic_skin_is_its_plate_modulus(e in 4e3..40e3, nu in 0.05..0.4, t in 0.5..4.0) {
        let plate = plate_modulus(mpa(e), r(nu));
        let rigidity = per_width(plate * mm(t) * mm(t) * mm(t) / 12.0);
        prop_assert!(plate > mpa(e) && close(bending_modulus(rigidity, mm(t)).value, plate.value));
    }

    #[test]
    fn voids_and_disbonds(e in 4e3..40e3, t in 0.5..4.0, s in 5.0..200.0, k in 1.01..3.0) {
        let (across, along) = (void_stress_across(mpa(e), mm(t), mm(s)), void_stress_along(mpa(e), mm(t), mm(s)));
        let loose = disbond_stress(mpa(e), mm(t), mm(s));
        let cell = cell_dimpling_stress(mpa(e), mm(t), mm(s));
        prop_assert!(across < cell && cell < along);
        prop_assert!(close(cell_dimpling_stress(mpa(e), mm(t * k), mm(s)).value, k * k * cell.value));
        prop_assert!(close(void_stress_across(mpa(e), mm(t * k), mm(s * k)).value, across.value));
        // Clamped at both ends is a free column of half the length.
        prop_assert!(close(void_stress_across(mpa(e), mm(t), mm(s / 2.0)).value, loose.value));
        prop_assert!(close(disbond_size(mpa(e), mm(t), loose).value, mm(s).value));
    }

    #[test]
    fn equal_strains_do_not_bow(
        a in 1e-6..40e-6, ta in -40.0..80.0, b in 1e-6..40e-6, tb in -40.0..80.0, d in 5.0..60.0,
    ) {
        let skin = |coefficient, rise| SkinExpansion {
            coefficient: TemperatureCoefficient::new::<per_kelvin>(coefficient),
            rise: TemperatureInterval::new::<kelvin>(rise),
        };
        let (outer, inner) = (skin(a, ta), skin(b, tb));
        let kappa = free_curvature(outer, inner, mm(d));
        prop_assert!(close(kappa.value, -free_curvature(inner, outer, mm(d)).value));
        prop_assert!(free_curvature(outer, skin(2.0 * a, ta / 2.0), mm(d)).value.abs() < 1e-12);
        prop_assert!(close(free_bow(kappa, mm(2000.0)).value, 4.0 * free_bow(kappa, mm(1000.0)).value));
        // A flat arc of that curvature over 10 mm rises by (1 − cos(κL/2))/κ.
        prop_assume!(kappa.value.abs() > 1e-3);
        let rise = 2.0 * (kappa.value * 0.01 / 4.0).sin().powi(2) / kappa.value;
        prop_assert!((free_bow(kappa, mm(10.0)).value / rise - 1.0).abs() < 1e-4);
    }

    #[test]
    fn softness_adds(f in 10.0..2000.0, panel in 0.1..20.0, dent in 0.0..2.0) {
        let k = local_stiffness(newtons(f), mm(panel), mm(dent));
        prop_assert!(k <= local_stiffness(newtons(f), mm(panel), mm(0.0)));
        prop_assert!(close((newtons(f) / k).value, mm(panel + dent).value));
    }
}

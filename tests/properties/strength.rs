//! What must hold of the strength formulas for every top.

use proptest::prelude::*;
use skinspan::{
    closed_form::{
        columns::{engesser, euler},
        plate::{Plate, PlateStiffness},
    },
    strength::{
        Branch, DESIGN_FACTOR, DeepCore, Denting, DiscLoad, HOFF_MAUTNER_FACTOR, Pad, RoundFoot, SkinBending,
        SkinOnCore, StripLoad, WrinklingModuli, bending_modulus, cell_dimpling_stress, core_shear_beside_conduit,
        crimping_load, disbond_size, disbond_stress, even_punching_peak, even_punching_shear_at, foundation_modulus,
        free_bow, hoff_mautner_wrinkle, line_pressure, pad_pressure, plate_modulus, punching_peak, punching_shear_at,
        punching_stress, round_pad_pressure, skin_moment_at_edge, skin_moment_at_round_edge, void_stress_across,
        void_stress_along, wrinkling_stress, wrinkling_under_biaxial_compression,
        wrinkling_under_compression_and_shear,
    },
    units::{Curvature, ForcePerWidth, Length, per_width, plain},
};

use crate::kit::{close, mm, mpa, newtons, r};

/// Differences over steps of some hundredths of the length over which skins and core share.
const OF_DIFFERENCES: f64 = 1e-3;

/// N/mm.
fn line(value: f64) -> ForcePerWidth {
    per_width(newtons(value) / mm(1.0))
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
    fn even_punching_peak_is_the_peak((p, d) in panel(), b in 0.5..100.0, f in 10.0..5000.0) {
        let load = DiscLoad { force: newtons(f), radius: mm(b) };
        let peak = even_punching_peak(load, d, &p);
        let rim = punching_stress(newtons(f), 2.0 * std::f64::consts::PI * mm(b), d);
        // The skins that nothing holds keep less from the core.
        prop_assert!(peak.stress < rim * p.core_share());
        let hard = RoundFoot { force: newtons(f), radius: mm(b), skin_distance: d };
        prop_assert!(peak.stress > punching_peak(&hard, &p).stress);
        prop_assert!(peak.radius > mm(b));
        for i in 0..80 {
            for place in [mm(b) * (f64::from(i) / 80.0), mm(b) + p.decay_length() * (0.1 * f64::from(i))] {
                prop_assert!(even_punching_shear_at(place, load, d, &p) <= peak.stress * (1.0 + 1e-12));
            }
        }
    }

    #[test]
    fn even_punching_is_what_differences_find((p, d) in panel(), reach in 0.3..20.0) {
        // q″ + q′/x − q/x² − q = −Q for lengths times α, q and Q over their rim's; three diagonals, from the middle outwards.
        let (steps, far) = (8000_u32, reach + 20.0);
        let step = far / f64::from(steps);
        let panel_shear = |x: f64| if x < reach { x / reach } else { reach / x };
        let (mut above, mut right) = (vec![0.0], vec![0.0]);
        for k in 1..steps {
            let x = f64::from(k) * step;
            let (below, over) = (1.0 / step / step - 0.5 / step / x, 1.0 / step / step + 0.5 / step / x);
            let pivot = -2.0 / step / step - 1.0 / x / x - 1.0 - below * above[above.len() - 1];
            right.push((-panel_shear(x) - below * right[right.len() - 1]) / pivot);
            above.push(over / pivot);
        }
        let mut core = panel_shear(far);
        let load = DiscLoad { force: newtons(1000.0), radius: p.decay_length() * reach };
        let whole = punching_stress(load.force, 2.0 * std::f64::consts::PI * load.radius, d) * p.core_share();
        for (k, (right, above)) in (0..steps).zip(right.iter().zip(&above)).skip(1).rev() {
            core = right - above * core;
            let at = p.decay_length() * (step * f64::from(k));
            let share = (even_punching_shear_at(at, load, d, &p) / whole).value;
            prop_assert!((share - core).abs() < OF_DIFFERENCES, "{} {} {}", k, share, core);
        }
    }

    #[test]
    fn wide_disc_is_a_straight_edge((p, d) in panel(), x in 0.1..5.0f64) {
        let radius = p.decay_length() * 1e6;
        let v = line(1.0);
        let force = newtons((plain(v) * 2.0 * std::f64::consts::PI * radius).value);
        let foot = RoundFoot { force, radius, skin_distance: d };
        let round = punching_shear_at(radius + p.decay_length() * x, &foot, &p);
        // Beside a straight side the skins' share fades as e^(−αx).
        let straight = plain(v) / d * p.core_share() * -(-x).exp_m1();
        prop_assert!((round / straight - r(1.0)).value.abs() < 1e-5);
        let round = skin_moment_at_round_edge(v, radius, &p, p.skins);
        prop_assert!((round / skin_moment_at_edge(v, &p, p.skins) - r(1.0)).value.abs() < 1e-6);
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
    fn column_is_below_euler_and_below_crimping((p, _) in panel(), l in 100.0..3000.0, k in 1.01..2.0) {
        let load = |l: f64| engesser(euler(p.rigidity(), mm(l)), p.shear);
        prop_assert!(load(l) < euler(p.rigidity(), mm(l)) && load(l) < crimping_load(p.shear));
        prop_assert!(load(l * k) < load(l));
    }

    #[test]
    fn plate_buckles_in_the_easiest_wave((p, _) in panel(), a in 100.0..4000.0f64, b in 100.0..2000.0f64) {
        let load = |a: f64| {
            let stiffness = PlateStiffness::isotropic(p.rigidity(), r(0.3), p.shear);
            Plate::new(mm(a), mm(b), stiffness).map(|plate| plate.buckling_along_x().load)
        };
        let Ok(buckling) = load(a) else { return Err(TestCaseError::fail("a sound plate")) };
        prop_assert!(buckling > engesser(euler(p.rigidity(), mm(a)), p.shear) * (1.0 - 1e-9));
        for m in 1..40 {
            let (x, g) = ((f64::from(m) * b / a).powi(2), std::f64::consts::PI.powi(2) / (b * b * 1e-6));
            let dg = p.rigidity().value * g * (1.0 + x);
            let single = dg * (1.0 + x) / x / (1.0 + dg / p.shear.value);
            prop_assert!(buckling.value <= single * (1.0 + 1e-9));
        }
        // A strip of one half wave cannot be easier than the plate that chose its own.
        prop_assert!(load(a / 3.0).is_ok_and(|cell| buckling <= cell * (1.0 + 1e-9)));
    }

    #[test]
    fn bow_is_a_flat_arc(kappa in prop_oneof![1e-3..0.2, -0.2..-1e-3]) {
        let curvature: Curvature = r(kappa) / mm(1000.0);
        prop_assert!(close(free_bow(curvature, mm(2000.0)).value, 4.0 * free_bow(curvature, mm(1000.0)).value));
        // An arc of that curvature over 10 mm rises by (1 − cos(κL/2))/κ.
        let rise = 2.0 * (kappa * 0.01 / 4.0).sin().powi(2) / kappa;
        prop_assert!((free_bow(curvature, mm(10.0)).value / rise - 1.0).abs() < 1e-4);
    }
}

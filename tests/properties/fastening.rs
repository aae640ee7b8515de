//! What must hold of every fixing.

use proptest::prelude::*;
use skinspan::{
    fastening::{
        BOLT_THREAD_CATEGORY, BoltEnd, HEAD_FACTOR, InsertFlange, Interaction, SHEAR_FACTOR, ScrewThread, TeeStub,
        ThreadForm, ThreadMating, WithdrawalBasis, board_strip_capacity, bolt_bending_stress, bolt_fatigue_range,
        bolt_load, effective_engagement, elastic_prying_factor, engagement_needed, foot_plate_stress,
        insert_bond_capacity, insert_pull_out, insert_push_out, lag_screw_withdrawal, laminate_fatigue_share,
        nut_factor, preload_at_yield, preload_range, round_area, shear_capacity, strip_capacity, stud_bond_shear,
        stud_bond_tension, tensile_capacity, thread_shape_factor, tightening_torque, torque_within,
        wood_screw_withdrawal,
    },
    units::Torque,
};
use uom::si::torque::newton_meter;

use crate::kit::{close, mm, mpa, newtons, r};

const RULES: [Interaction; 6] = [
    Interaction::Linear,
    Interaction::SteelBolt,
    Interaction::Ellipse,
    Interaction::PreloadedBolt,
    Interaction::ShankSheared,
    Interaction::ThreadSheared,
];

prop_compose! {
    fn thread()(d in 3.0..20.0, share in 0.08..0.2, unified in any::<bool>()) -> ScrewThread {
        let form = if unified { ThreadForm::Unified } else { ThreadForm::Metric };
        ScrewThread { major: mm(d), pitch: mm(d * share), form }
    }
}

prop_compose! {
    fn foot()(t in 2.0..12.0, f in 60.0..400.0, l in 20.0..120.0, m in 8.0..60.0, n in 4.0..60.0, b in 500.0..60e3)
        -> TeeStub
    {
        TeeStub {
            thickness: mm(t),
            yield_stress: mpa(f),
            effective_length: mm(l),
            bolt_to_web: mm(m),
            bolt_to_edge: mm(n),
            bolts: newtons(b),
        }
    }
}

proptest! {
    #[test]
    fn diameters_of_a_thread_are_in_order(t in thread()) {
        prop_assert!(t.root_diameter() < t.minor_diameter() && t.minor_diameter() < t.pitch_diameter());
        prop_assert!(t.pitch_diameter() < t.major && t.root_diameter() < t.stress_diameter());
        prop_assert!(t.stress_area() < round_area(t.pitch_diameter()));
        let metric = ScrewThread { form: ThreadForm::Metric, ..t };
        let unified = ScrewThread { form: ThreadForm::Unified, ..t };
        prop_assert!(unified.stress_area() < metric.stress_area());
    }

    #[test]
    fn a_finer_or_larger_thread_bears_more(t in thread(), k in 1.01..2.0) {
        let load = |t: ScrewThread| tensile_capacity(mpa(700.0), t.stress_area(), HEAD_FACTOR);
        let (larger, finer) = (ScrewThread { major: t.major * k, ..t }, ScrewThread { pitch: t.pitch / k, ..t });
        prop_assert!(load(larger) > load(t) && load(finer) > load(t));
        prop_assert!(close(tensile_capacity(mpa(700.0 * k), t.stress_area(), r(1.0)).value, k * load(t).value / 0.9));
        prop_assert!(shear_capacity(mpa(700.0), t.stress_area(), SHEAR_FACTOR) < load(t));
    }

    #[test]
    fn more_engagement_never_holds_less(
        t in thread(), l in 1.0..60.0, k in 1.0..3.0, loose in 0.0..0.6, tau in 1.0..200.0,
    ) {
        let basic = ThreadMating::basic(&t);
        let worn = ThreadMating {
            screw_major: t.major - loose * t.pitch,
            nut_pitch_diameter: basic.nut_pitch_diameter + 0.05 * t.pitch,
            ..basic
        };
        for mating in [basic, worn] {
            prop_assert!(mating.nut_area(mm(l * k)) >= mating.nut_area(mm(l)));
            prop_assert!(mating.screw_area(mm(l * k)) >= mating.screw_area(mm(l)));
            // No more than the whole cylinder.
            prop_assert!(mating.nut_area(mm(l)) <= std::f64::consts::PI * t.major * mm(l));
            prop_assert!(mating.screw_area(mm(l)) <= std::f64::consts::PI * t.major * mm(l));
        }
        prop_assert!(worn.nut_area(mm(l)) < basic.nut_area(mm(l)));
        let f = strip_capacity(mpa(tau), basic.nut_area(mm(l)));
        let needed = engagement_needed(f, mpa(tau), basic.nut_area(mm(1.0)) / mm(1.0));
        prop_assert!(close(needed.value, mm(l).value));
        prop_assert!(close(strip_capacity(mpa(k * tau), basic.nut_area(mm(l))).value, k * f.value));
    }

    #[test]
    fn board_holds_more_with_strength_diameter_length_and_depth_of_thread(
        tau in 0.5..20.0, d in 3.0..8.0, depth in 0.1..0.4, p in 1.0..3.0, l in 5.0..50.0, k in 1.01..2.0,
    ) {
        let hold = |tau: f64, d: f64, l: f64, depth: f64| {
            board_strip_capacity(mpa(tau), mm(d), mm(l), thread_shape_factor(mm(d), mm(d * (1.0 - depth)), mm(p)))
        };
        let base = hold(tau, d, l, depth);
        prop_assert!(close(hold(k * tau, d, l, depth).value, k * base.value));
        prop_assert!(close(hold(tau, d, k * l, depth).value, k * base.value));
        prop_assert!(hold(tau, k * d, l, depth) > base);
        prop_assert!(hold(tau, d, l, depth * k) >= base);
        prop_assert!(base <= std::f64::consts::PI * mm(d) * mm(l) * mpa(tau));
    }

    #[test]
    fn engagement_is_what_is_left(h in 0.0..80.0, a in 0.0..10.0, b in 0.0..10.0, d in 3.0..12.0, c in 1.0..8.0,
        more in 0.0..20.0)
    {
        let l = effective_engagement(mm(h), mm(a), mm(b), mm(d), r(c));
        prop_assert!(l.value >= 0.0 && l <= mm(h) && l <= c * mm(d));
        prop_assert!(effective_engagement(mm(h + more), mm(a), mm(b), mm(d), r(c)) >= l);
        prop_assert!(effective_engagement(mm(h), mm(a + more), mm(b), mm(d), r(c)) <= l);
        prop_assert!(effective_engagement(mm(h), mm(a), mm(b + more), mm(d), r(c)) <= l);
    }

    #[test]
    fn wood_holds_more_with_density_diameter_and_length(g in 0.3..0.8, d in 3.0..12.0, l in 5.0..80.0, k in 1.01f64..2.0) {
        for basis in [WithdrawalBasis::MeanUltimate, WithdrawalBasis::Allowable] {
            let screw = |g: f64, d: f64, l: f64| wood_screw_withdrawal(basis, r(g), mm(d), mm(l)).value;
            let lag = |g: f64, d: f64, l: f64| lag_screw_withdrawal(basis, r(g), mm(d), mm(l)).value;
            prop_assert!(close(screw(k * g, d, l), k * k * screw(g, d, l)));
            prop_assert!(close(screw(g, k * d, k * l), k * k * screw(g, d, l)));
            prop_assert!(close(lag(k * g, d, l), k.powf(1.5) * lag(g, d, l)));
            prop_assert!(close(lag(g, k * d, k * l), k.powf(1.75) * lag(g, d, l)));
        }
    }

    #[test]
    fn interaction_scales_and_lies_between_the_larger_share_and_the_sum(t in 0.0..2.0, s in 0.0..2.0, k in 0.01..50.0,
        more in 0.0..1.0)
    {
        for rule in RULES {
            let u = |t: f64, s: f64| rule.utilisation(r(t), r(s)).value;
            prop_assert!(close(u(k * t, k * s), k * u(t, s)), "{rule:?}");
            prop_assert!(u(t, s) >= t.max(s) * (1.0 - 1e-12) && u(t, s) <= t + s + 1e-12, "{rule:?}");
            prop_assert!(u(t + more, s) >= u(t, s) * (1.0 - 1e-12) && u(t, s + more) >= u(t, s) * (1.0 - 1e-12));
            prop_assert!(close(u(t, 0.0), t) && close(u(0.0, s), s), "{rule:?}");
            prop_assert!(u(-t, -s).to_bits() == u(0.0, s).to_bits());
        }
    }

    #[test]
    fn interaction_satisfies_its_equation(t in 0.01f64..2.0, s in 0.01f64..2.0) {
        for (rule, m, n) in [
            (Interaction::Linear, 1.0, 1.0),
            (Interaction::Ellipse, 2.0, 2.0),
            (Interaction::PreloadedBolt, 2.0, 3.0),
            (Interaction::ShankSheared, 1.5, 2.5),
            (Interaction::ThreadSheared, 2.0, 1.2),
        ] {
            let u = rule.utilisation(r(t), r(s)).value;
            prop_assert!(close((t / u).powf(m) + (s / u).powf(n), 1.0), "{rule:?}");
        }
    }

    #[test]
    fn what_is_no_number_never_passes(s in 0.0..0.5) {
        for rule in RULES {
            let passes = |t: f64, s: f64| rule.utilisation(r(t), r(s)).value <= 1.0;
            prop_assert!(!passes(f64::NAN, s) && !passes(s, f64::NAN), "{rule:?}");
            prop_assert!(!passes(f64::INFINITY, s) && !passes(s, f64::INFINITY), "{rule:?}");
        }
    }

    #[test]
    fn bolt_load_is_never_below_the_pull(f in 0.0..30e3, p in -20e3..60e3f64, c in 0.0..1.0, more in 0.0..10e3) {
        let load = bolt_load(newtons(f), newtons(p), r(c));
        prop_assert!(load >= newtons(p) && load >= newtons(f) + r(c) * newtons(p));
        prop_assert!(load <= newtons(f) + newtons(p.max(0.0)));
        prop_assert!(bolt_load(newtons(f), newtons(p + more), r(c)) >= load);
        prop_assert!(bolt_load(newtons(f + more), newtons(p), r(c)) >= load);
    }

    #[test]
    fn torque_and_preload_agree(t in 0.1..60.0, d in 3.0..12.0, low in 0.08..0.2, more in 0.0..0.2) {
        let torque = Torque::new::<newton_meter>(t);
        let range = preload_range(torque, mm(d), [r(low), r(low + more)]);
        prop_assert_eq!(range, preload_range(torque, mm(d), [r(low + more), r(low)]));
        prop_assert!(range.least <= range.greatest);
        prop_assert!(close(tightening_torque(r(low), mm(d), range.greatest).value, t));
        prop_assert!(close(tightening_torque(r(low + more), mm(d), range.least).value, t));
        prop_assert!(close(torque_within(range.greatest, mm(d), [r(low + more), r(low)]).value, t));
    }

    #[test]
    fn friction_raises_the_torque_and_lowers_the_preload(t in thread(), mu in 0.0..0.3, more in 0.01..0.2, wide in 1.1..2.5) {
        let k = |a: f64, b: f64, wide: f64| nut_factor(&t, r(a), r(b), wide * t.major);
        let base = k(mu, mu, wide);
        prop_assert!(k(mu + more, mu, wide) > base && k(mu, mu + more, wide) > base);
        prop_assert!(k(mu, mu + more, wide * 1.1) > k(mu, mu + more, wide));
        let f = |mu: f64| preload_at_yield(&t, mpa(450.0), r(0.9), r(mu));
        prop_assert!(f(mu + more) < f(mu));
        prop_assert!(f(0.0) < tensile_capacity(mpa(450.0), t.stress_area(), r(0.9)));
    }

    #[test]
    fn prying_grows_with_the_lever_and_falls_with_the_edge(m in 5.0..80.0, n in 3.0..80.0, k in 1.01..3.0) {
        let factor = |m: f64, n: f64| elastic_prying_factor(mm(m), mm(n)).value;
        prop_assert!(factor(m, n) > 1.0);
        prop_assert!(factor(k * m, n) > factor(m, n) && factor(m, k * n) < factor(m, n));
        prop_assert!(close(factor(k * m, k * n), factor(m, n)));
    }

    #[test]
    fn foot_bears_more_with_thickness_strength_width_and_bolts(f in foot(), k in 1.01..2.0) {
        let base = f.capacity().force;
        prop_assert!(base <= f.bolts && base.value > 0.0);
        for better in [
            TeeStub { thickness: f.thickness * k, ..f },
            TeeStub { yield_stress: f.yield_stress * k, ..f },
            TeeStub { effective_length: f.effective_length * k, ..f },
            TeeStub { bolt_to_web: f.bolt_to_web / k, bolt_to_edge: f.bolt_to_edge / k, ..f },
            TeeStub { bolt_to_edge: f.bolt_to_edge * k, ..f },
            TeeStub { bolts: f.bolts * k, ..f },
        ] {
            prop_assert!(better.capacity().force >= base * (1.0 - 1e-12));
        }
    }

    #[test]
    fn stresses_of_feet_and_bolts_scale(v in 10.0..2000.0, g in 0.1..20.0, d in 3.0..12.0, k in 1.01f64..3.0) {
        let sigma = |v: f64, g: f64, d: f64| bolt_bending_stress(newtons(v), mm(g), mm(d), BoltEnd::Free).value;
        prop_assert!(close(sigma(k * v, g, d), k * sigma(v, g, d)) && close(sigma(v, k * g, d), k * sigma(v, g, d)));
        prop_assert!(close(sigma(v, g, k * d), sigma(v, g, d) / k.powi(3)));
        let guided = bolt_bending_stress(newtons(v), mm(g), mm(d), BoltEnd::Guided).value;
        prop_assert!(close(2.0 * guided, sigma(v, g, d)));
        let plate = |a: f64, t: f64| foot_plate_stress(mpa(0.3), mm(a), mm(t)).value;
        prop_assert!(close(plate(k * g, k * d), plate(g, d)) && plate(k * g, d) > plate(g, d));
    }

    #[test]
    fn inserts_bear_more_with_thickness_and_strength(
        proof in 1e3..30e3, b in 5.0..20.0, t in 0.5..6.0, tau in 20.0..150.0, k in 1.01..2.0, wide in 1.01..2.0,
    ) {
        let pull = |proof: f64, b: f64, t: f64, tau: f64| {
            insert_pull_out(newtons(proof), mm(b), mm(t), mpa(tau), r(0.5))
        };
        let base = pull(proof, b, t, tau);
        prop_assert!(base <= newtons(proof));
        prop_assert!(pull(k * proof, b, t, tau) >= base && pull(proof, k * b, t, tau) >= base);
        prop_assert!(pull(proof, b, k * t, tau) >= base && pull(proof, b, t, k * tau) >= base);
        let push = |wide: f64, c: f64, t: f64| {
            insert_push_out(InsertFlange { diameter: mm(b * wide), hole: mm(b) }, mpa(c), mm(t), mpa(tau))
        };
        prop_assert!(push(wide, 100.0, t) <= push(wide * k, 100.0, t) && push(wide, 100.0, t) <= push(wide, 100.0, k * t));
        prop_assert!(push(wide, 100.0, t) <= push(wide, k * 100.0, t) && push(0.9, 100.0, t).value == 0.0);
        prop_assert!(close(insert_bond_capacity(mm(b), mm(k * t), mpa(tau)).value,
            k * insert_bond_capacity(mm(b), mm(t), mpa(tau)).value));
    }

    #[test]
    fn stud_pulled_off_its_middle_is_worse(p in 10.0..2000.0, e in 0.0..30.0, d in 15.0..60.0, k in 1.01..2.0) {
        let moment = |e: f64| Torque::new::<newton_meter>(p * e / 1000.0);
        let sigma = |e: f64, d: f64| stud_bond_tension(newtons(p), moment(e), mm(d));
        prop_assert!(close((sigma(e, d) / sigma(0.0, d)).value, 1.0 + 8.0 * e / d));
        prop_assert!(sigma(e, k * d) < sigma(e, d));
        prop_assert!(close(sigma(0.0, d).value, stud_bond_shear(newtons(p), mm(d)).value));
    }

    #[test]
    fn more_cycles_never_leave_more(n in 0u32..2_000_000_000, more in 0u32..1_000_000_000, b in 0.0..0.2) {
        let left = laminate_fatigue_share(n, r(b));
        prop_assert!(left.value >= 0.0 && left <= r(1.0) && laminate_fatigue_share(n + more, r(b)) <= left);
        prop_assert!(laminate_fatigue_share(n, r(b + 0.01)) <= left);
        prop_assert_eq!(laminate_fatigue_share(0, r(b)), r(1.0));
        let range = |n: u32| bolt_fatigue_range(n, BOLT_THREAD_CATEGORY);
        prop_assert!(range(n + more) <= range(n) && range(n) >= 0.4 * BOLT_THREAD_CATEGORY);
    }
}

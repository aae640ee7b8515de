//! What must hold of the panel round every fixing.

use proptest::prelude::*;
use skinspan::{
    fastening::{
        BackingLoad, BondLine, Dowel, HingeRule, Neighbour, PlateGrip, Sleeve, SlenderHole, Stub, backing_bearing,
        bearing_capacity, block_capacity, bond_length_under_foot, bond_tension, core_shear_beside_free_edge,
        core_shear_round_plug, core_shear_with_neighbour, effective_length_near_end, end_distance_needed,
        force_at_crush, full_depth_pull, net_section_capacity, partly_potted_pull, pitch_needed, plastic_moment,
        pull_through_laminate, pull_through_metal, shear_out_capacity, side_distance_needed, skin_stress_at_backing,
        skins_share_beside_sleeve, thermal_force, thermal_slip, torsion_capacity, washer_pressure,
    },
    strength::{
        DeepCore, Denting, DiscLoad, Pad, RoundFoot, SkinBending, SkinOnCore, foundation_modulus, plate_modulus,
        punching_peak,
    },
    units::{Length, TemperatureCoefficient, TemperatureInterval, Torque, per_width},
};
use uom::si::{temperature_coefficient::per_kelvin, temperature_interval::kelvin, torque::newton_meter};

use crate::kit::{close, mm, mpa, newtons, r};

prop_compose! {
    fn panel()(skin in 4e3..40e3, g in 8.0..150.0, t in 0.5..4.0, c in 8.0..60.0) -> (SkinBending, Length) {
        (SkinBending::of_equal_skins(mpa(skin), mpa(g), mm(t), mm(c)), mm(t + c))
    }
}

prop_compose! {
    fn under_skin()(e in 4e3..40e3, t in 0.5..4.0, core in 20.0..400.0, c in 8.0..60.0) -> (SkinOnCore, DeepCore) {
        let skin_rigidity = per_width(plate_modulus(mpa(e), r(0.3)) * mm(t) * mm(t) * mm(t) / 12.0);
        let foundation = foundation_modulus(mpa(core), mm(c), Denting::BothSkins);
        (SkinOnCore { skin_rigidity, poisson: r(0.3), foundation }, DeepCore { skin_rigidity, core_modulus: mpa(core) })
    }
}

prop_compose! {
    fn dowel()(d in 3.0..12.0, t in 5.0..80.0, f in 2.0..40.0, y in 200.0..900.0) -> Dowel {
        Dowel { diameter: mm(d), depth: mm(t), embedding: mpa(f), plastic_moment: plastic_moment(mpa(y), mm(d)) }
    }
}

proptest! {
    #[test]
    fn larger_washer_never_presses_harder((springs, deep) in under_skin(), a in 2.0..40.0, k in 1.01..3.0, f in 1.0..9e3) {
        let pressure = |a: f64| washer_pressure(DiscLoad { force: newtons(f), radius: mm(a) }, &springs, &deep);
        prop_assert!(pressure(a * k) < pressure(a));
        let clamp = |a: f64| force_at_crush(mm(a), &springs, &deep, mpa(1.2));
        prop_assert!(clamp(a * k) > clamp(a));
        prop_assert!(close((clamp(a) * pressure(a)).value, (newtons(f) * mpa(1.2)).value));
        // Held far skin: the softer bed spreads the load further.
        let held = SkinOnCore { foundation: springs.foundation / 2.0, ..springs };
        let load = DiscLoad { force: newtons(f), radius: mm(a) };
        prop_assert!(washer_pressure(load, &held, &deep) <= pressure(a) * 1.15);
    }

    #[test]
    fn punching_grows_with_head_and_thickness(d in 5.0..60.0, t in 0.5..6.0, k in 1.01..3.0) {
        let f = |d: f64, t: f64| pull_through_laminate(mm(d), mm(t), mpa(50.0));
        prop_assert!(close(f(d * k, t).value, k * f(d, t).value) && close(f(d, t * k).value, k * f(d, t).value));
        prop_assert!(close(pull_through_metal(mm(d), mm(t), mpa(50.0)).value, 0.6 * f(d, t).value));
    }

    #[test]
    fn sleeve_and_skins_share_the_preload(
        d in 6.0..20.0, wall in 0.5..4.0, approach in 0.01..2.0, g in -0.5..2.0, more in 0.0..0.5, f in 10.0..2e4
    ) {
        let sleeve = Sleeve { outer: mm(d + 2.0 * wall), inner: mm(d), length: mm(25.0), modulus: mpa(70e3) };
        let thicker = Sleeve { outer: mm(d + 3.0 * wall), ..sleeve };
        prop_assert!(thicker.stress(newtons(f)) < sleeve.stress(newtons(f)));
        let wall_area = std::f64::consts::PI * mm(d + wall) * mm(wall);
        prop_assert!(close((sleeve.stress(newtons(f)) * wall_area).value, f));
        let shortening = sleeve.shortening(newtons(f));
        prop_assert!(close(shortening.value, (mm(25.0) * (sleeve.stress(newtons(f)) / mpa(70e3))).value));
        let share = skins_share_beside_sleeve(mm(approach), shortening, mm(g));
        prop_assert!(share >= r(0.0) && share <= r(1.0));
        prop_assert!(skins_share_beside_sleeve(mm(approach), shortening, mm(g + more)) >= share);
        prop_assert!(skins_share_beside_sleeve(mm(approach), thicker.shortening(newtons(f)), mm(0.0))
            < skins_share_beside_sleeve(mm(approach), shortening, mm(0.0)));
        // Both springs meet: what the skins come together is what the sleeve shortens, and the gap.
        if share > r(0.0) && share < r(1.0) {
            let together = mm(approach) * share;
            prop_assert!((together - shortening * (r(1.0) - share) - mm(g)).abs() < mm(1e-9));
        }
    }

    #[test]
    fn farther_edge_and_wider_pitch_are_never_weaker(e in 0.0..60.0, more in 0.0..30.0, d in 3.0..12.0, t in 0.5..6.0) {
        let out = |e: f64| shear_out_capacity(mm(e), mm(d), mm(t), mpa(60.0));
        prop_assert!(out(e + more) >= out(e) && out(e) >= newtons(0.0));
        let net = |w: f64| net_section_capacity(mm(w), mm(d), mm(t), mpa(150.0), r(2.0));
        prop_assert!(net(e + more) >= net(e) && net(e) >= newtons(0.0));
        for together in [0.0, 0.4, 1.0] {
            let block = block_capacity(out(e), net(e), r(together));
            prop_assert!(block >= out(e).max(net(e)) && block <= (out(e) + net(e)) * (1.0 + 1e-12));
            prop_assert!(block_capacity(out(e + more), net(e + more), r(together)) >= block);
            prop_assert!(close(block.value, block_capacity(net(e), out(e), r(together)).value));
        }
        prop_assert!(close(end_distance_needed(mm(d)).value, mm(4.0 * d).value));
        prop_assert!(close(side_distance_needed(mm(d)).value, mm(2.5 * d).value));
        prop_assert!(close(pitch_needed(mm(d)).value, 2.0 * side_distance_needed(mm(d)).value));
    }

    #[test]
    fn thicker_skin_never_bears_less(d in 3.0..12.0, t in 0.5..6.0, k in 1.01..3.0, left in 0.1..1.0) {
        let slender = SlenderHole { limit: r(4.0), left: r(left) };
        let v = |t: f64| bearing_capacity(mm(d), mm(t), mpa(200.0), slender).value;
        prop_assert!(v(t * k) >= k * v(t) * (1.0 - 1e-12));
        let remains = if d / t > 4.0 { left } else { 1.0 };
        prop_assert!(close(v(t), d * t * 200.0 * remains));
    }

    #[test]
    fn dowels_grow_with_all_they_have(dowel in dowel(), k in 1.01..2.0, rope in 0.0..500.0, limit in 0.0..1.0) {
        for grip in [PlateGrip::Thin, PlateGrip::Thick] {
            let bare = HingeRule { factor: r(1.0), rope: newtons(0.0), rope_limit: r(0.0) };
            let force = |dowel: &Dowel| backing_bearing(dowel, grip, bare).force;
            let whole = force(&dowel);
            prop_assert!(whole <= dowel.embedding * (dowel.depth * dowel.diameter));
            for more in [
                Dowel { depth: dowel.depth * k, ..dowel },
                Dowel { embedding: dowel.embedding * k, ..dowel },
                Dowel { plastic_moment: dowel.plastic_moment * k, ..dowel },
            ] {
                prop_assert!(force(&more) >= whole * (1.0 - 1e-12));
            }
            let roped = HingeRule { rope: newtons(rope), rope_limit: r(limit), ..bare };
            let roped = backing_bearing(&dowel, grip, roped).force;
            prop_assert!(roped >= whole && roped <= whole + newtons(rope) && roped <= whole * (1.0 + limit) * (1.0 + 1e-12));
        }
        let bare = HingeRule { factor: r(1.0), rope: newtons(0.0), rope_limit: r(0.0) };
        let [thin, thick] = [PlateGrip::Thin, PlateGrip::Thick].map(|grip| backing_bearing(&dowel, grip, bare).force);
        prop_assert!(thick > thin);
    }

    #[test]
    fn bonds_never_peak_below_the_mean(
        a in 1e3..100e3, b in 1e3..1e6, l in 0.1..500.0, more in 1.0..3.0, eta in 0.1..3.0, g in 10.0..2e3
    ) {
        let bond = BondLine {
            first: per_width(mpa(a) * mm(1.0)),
            second: per_width(mpa(b) * mm(1.0)),
            glue_thickness: mm(eta),
            glue_shear_modulus: mpa(g),
        };
        let swapped = BondLine { first: bond.second, second: bond.first, ..bond };
        let length = bond.effective_length(mm(l));
        prop_assert!(close(length.value, swapped.effective_length(mm(l)).value));
        prop_assert!(length <= mm(l) * (1.0 + 1e-12) && length <= 2.0 * bond.transfer_length() * (1.0 + 1e-12));
        prop_assert!(bond.peak_shear(newtons(100.0), mm(50.0), mm(l)) >= newtons(100.0) / (mm(50.0) * mm(l)) * (1.0 - 1e-12));
        let rigid = BondLine { second: per_width(mpa(f64::INFINITY) * mm(1.0)), ..bond };
        prop_assert!(rigid.effective_length(mm(l * more)) >= rigid.effective_length(mm(l)));
        prop_assert!(rigid.effective_length(mm(l)) <= rigid.transfer_length());
    }

    #[test]
    fn bond_tension_balances(t in 1.0..5e3, s in 0.1..1.0, w in 20.0..200.0, foot in 10.0..200.0, h in 5.0..50.0, l in 20.0..900.0) {
        let length = bond_length_under_foot(mm(foot), mm(h), mm(l));
        prop_assert!(length <= mm(l) && length <= mm(foot + 2.0 * h) * (1.0 + 1e-12) && (length == mm(l) || close(length.value, mm(foot + 2.0 * h).value)));
        let sigma = bond_tension(newtons(t), r(s), mm(w), length);
        prop_assert!(close((sigma * (mm(w) * length)).value, s * t));
    }

    #[test]
    fn strip_carries_force_and_moment_on_its_sides(
        (p, d) in panel(), f in -5e3..5e3, m in -100.0..100.0, w in 30.0..300.0, l in 30.0..500.0
    ) {
        let load = |f: f64, m: f64| BackingLoad {
            force: newtons(f),
            moment: Torque::new::<newton_meter>(m),
            width: mm(w),
            length: mm(l),
        };
        let sum = load(f, 0.0).line_shear() + load(0.0, m).line_shear();
        prop_assert!(close(load(f, m).line_shear().value, sum.value));
        prop_assert!(close(load(-f, -m).line_shear().value, sum.value));
        prop_assert!(close(load(f, 0.0).line_shear().value * 2.0 * l * 1e-3, f.abs()));
        prop_assert!(close(load(0.0, m).line_shear().value * l * w * 1e-6, m.abs()));
        let shear = load(f, m).core_shear(&p, d).value;
        prop_assert!(shear < sum.value / d.value && close(shear, sum.value / d.value * p.core_share().value));
        let plug = core_shear_round_plug(newtons(f.abs()), Pad { length: mm(l), width: mm(w) }, r(0.8), &p, d);
        prop_assert!(close(plug.value * 0.8 * 2.0 * (l + w) * 1e-3, load(f, 0.0).core_shear(&p, d).value * 2.0 * l * 1e-3));
    }

    #[test]
    fn end_of_the_strip_never_helps(l in 20.0..500.0, a in 0.0..1e3, more in 0.0..300.0) {
        let length = |a: f64| effective_length_near_end(mm(l), mm(a));
        prop_assert!(length(a) <= mm(l) * (1.0 + 1e-12) && length(a) >= mm(l / 4.0) * (1.0 - 1e-12));
        prop_assert!(length(a + more) >= length(a) * (1.0 - 1e-12));
    }

    #[test]
    fn neighbour_never_helps_and_farther_is_never_worse(
        (p, d) in panel(), b in 3.0..40.0, a in 2.05..30.0, k in 1.01..3.0, f in -4e3..4e3, own in 100.0..4e3
    ) {
        let foot = RoundFoot { force: newtons(own), radius: mm(b), skin_distance: d };
        let peak = |force: f64, distance: f64| {
            core_shear_with_neighbour(&foot, &p, Neighbour { force: newtons(force), distance: mm(distance) })
                .map(|peak| peak.stress)
        };
        let (near, far) = (peak(f, a * b), peak(f, a * b * k));
        let (Ok(near), Ok(far)) = (near, far) else { return Err(TestCaseError::fail("they do not touch")) };
        prop_assert!(far <= near * (1.0 + 1e-4));
        if a > 4.0 {
            prop_assert!(far >= punching_peak(&foot, &p).stress * (1.0 - 1e-12));
        }
        // A couple is worse than two loads the same way, unless their peaks lie beyond the middle.
        let (Ok(alike), Ok(opposite)) = (peak(f.abs(), a * b), peak(-f.abs(), a * b)) else {
            return Err(TestCaseError::fail("they do not touch"));
        };
        prop_assert!(a < 4.0 || opposite >= alike * (1.0 - 1e-3));
        prop_assert!(peak(f, 1.9 * b).is_err() && peak(f, f64::NAN).is_err());
        let (Ok(edge), Ok(farther)) =
            (core_shear_beside_free_edge(&foot, &p, mm(a * b)), core_shear_beside_free_edge(&foot, &p, mm(a * b * k)))
        else {
            return Err(TestCaseError::fail("they do not touch"));
        };
        prop_assert!(farther.stress <= edge.stress);
    }

    #[test]
    fn inserts_grow_with_their_radius((p, d) in panel(), b in 3.0..40.0, k in 1.01..2.0, h in 3.0..30.0, tau in 0.2..2.0) {
        let full = |b: f64| full_depth_pull(mm(b), mpa(tau), &p, d);
        prop_assert!(full(b * k) > full(b) && full(b) > 2.0 * std::f64::consts::PI * mm(b) * d * mpa(tau));
        prop_assert!(close(full_depth_pull(mm(b), mpa(tau * k), &p, d).value, k * full(b).value));
        let partly = |h: f64, side: f64, bottom: f64| partly_potted_pull(mm(b), mm(h), mpa(side), mpa(bottom), r(0.7)).value;
        prop_assert!(partly(h * k, tau, 1.5) > partly(h, tau, 1.5));
        // The side alone turns about the axis with the lever b; the bottom alone has the pressure of a disc.
        prop_assert!(close(partly(h, tau, 0.0) * b * 1e-3, 0.7 * torsion_capacity(mm(b), mm(h), mpa(tau)).value));
        prop_assert!(close(partly(h, 0.0, 1.5), 0.7 * std::f64::consts::PI * b * b * 1.5));
    }

    #[test]
    fn a_stub_is_pushed_over(
        d in 3.0..40.0, h in 1.0..60.0, p in 0.1..40.0, (mouth, end) in (0.0..2e4, 0.0..2e4), e in 0.0..40.0,
        k in 1.01..3.0
    ) {
        let force = |h: f64, p: f64, mouth: f64, end: f64, e: f64| {
            let (mouth, end) = (newtons(mouth), newtons(end));
            Stub { diameter: mm(d), depth: mm(h), bed: mpa(p), mouth, end, lever: mm(e) }.force().value
        };
        let own = force(h, p, mouth, end, e);
        let slack = 1.0 + 1e-9;
        prop_assert!(own >= 0.0 && force(h * k, p, mouth, end, e) * slack >= own);
        prop_assert!(force(h, p * k, mouth, end, e) * slack >= own && force(h, p, mouth * k, end, e) * slack >= own);
        prop_assert!(force(h, p, mouth, end * k, e) * slack >= own && force(h, p, mouth, end, e + k) <= own * slack);
        prop_assert!(close(force(h, p * k, mouth * k, end * k, e), k * own));
        // Without a lever the mouth adds all that it holds to what a straight dowel bears.
        prop_assert!(close(force(h, p, mouth, 0.0, 0.0), mouth + (2f64.sqrt() - 1.0) * p * d * h));
        // What turns about a mouth that holds anything has all of its bed on one side.
        let e = e + 0.5;
        prop_assert!(close(force(h, p, 1e9, end, e), (p * d * h * h / 2.0 + end * h) / e));
        // Every force within what holds balances at most: the best of many places about which it could turn.
        let q = p * d;
        let best = (0..=4000).map(|i| h * f64::from(i) / 4000.0).map(|x| {
            let bed = [q * (2.0 * x - h), q * (h * h / 2.0 - x * x)];
            // The end at its limit, or less of it where the mouth does not need that much.
            let full = ((bed[1] + end * h) / e).min(mouth + bed[0] - end);
            let part = ((mouth + bed[0]) * h + bed[1]) / (h + e);
            let held = (part * e - bed[1]) / h;
            if (-end..=end).contains(&held) { part.max(full) } else { full }
        });
        let best = best.fold(0.0, f64::max);
        let own = force(h, p, mouth, end, e);
        prop_assert!((own - best).abs() <= 2e-3 * own.max(q * h), "{own} {best}");
    }

    #[test]
    fn skin_stress_takes_both_signs(s in -200.0..200.0, m in -100.0..100.0, t in 0.5..4.0) {
        let sigma = |s: f64, m: f64| skin_stress_at_backing(mpa(s), per_width(newtons(m)), mm(t)).value;
        prop_assert!(close(sigma(s, m), sigma(-s, -m)) && close(sigma(s, m), sigma(-s, m)));
        prop_assert!(close(sigma(s, m), sigma(s, 0.0) + sigma(0.0, m)) && close(sigma(s, 0.0), s.abs() * 1e6));
        prop_assert!(close(sigma(0.0, m), 6.0 * m.abs() / (t * t) * 1e6));
    }

    #[test]
    fn heat_and_cold_slip_alike(alpha in -3e-5..3e-5, dt in -80.0..80.0, l in 50.0..3e3, a in 0.1..50.0, b in 0.1..50.0) {
        let (alpha, dt) = (TemperatureCoefficient::new::<per_kelvin>(alpha), TemperatureInterval::new::<kelvin>(dt));
        let slip = thermal_slip(alpha, dt, mm(l));
        prop_assert!(slip >= mm(0.0) && close(slip.value, thermal_slip(-alpha, dt, mm(l)).value));
        // The held force stretches both by what would have slipped.
        let (a, b) = (newtons(a * 1e6), newtons(b * 1e6));
        let force = thermal_force(alpha, dt, a, b);
        prop_assert!(close((mm(l) * (force / a) + mm(l) * (force / b)).value, slip.value));
        prop_assert!(thermal_force(alpha, dt, a * 2.0, b) >= force);
    }
}

//! Sections of any skins and core.

#![allow(clippy::unwrap_used)] // a test may panic

use approx::assert_relative_eq;
use proptest::prelude::*;
use skinspan::laminate::{
    Component::{X, Y},
    Criterion, Deformation, Elastic, Laminate, Ply, PlyStress, Resultants,
};
use skinspan::section::{Axis, CoreLayer, Section, Skin, SkinShear, Temperatures, Width};
use skinspan::units::{
    Angle, ForcePerWidth, Length, MomentPerWidth, Pressure, Ratio, TemperatureCoefficient, TemperatureInterval,
};
use uom::ConstZero;
use uom::si::{
    angle::degree, length::millimeter, pressure::gigapascal, pressure::megapascal, temperature_coefficient::per_kelvin,
    temperature_interval::kelvin,
};

use crate::laminate::plies;

/// Rounding of the inversions.
const ROUNDING: f64 = 1e-9;

fn core() -> impl Strategy<Value = CoreLayer> {
    (5.0..50.0, 1.0..400.0, 0.5..2.0, 0.0..0.4, 5.0..200.0, 0.5..2.0, 0.0..8e-5).prop_map(
        |(c, e, ratio, nu, g, other, alpha)| CoreLayer {
            thickness: Length::new::<millimeter>(c),
            e_x: Pressure::new::<megapascal>(e),
            e_y: Pressure::new::<megapascal>(e * ratio),
            nu: Ratio::from(nu),
            g_xz: Pressure::new::<megapascal>(g),
            g_yz: Pressure::new::<megapascal>(g * other),
            alpha: TemperatureCoefficient::new::<per_kelvin>(alpha),
        },
    )
}

fn section() -> impl Strategy<Value = Section> {
    (plies(), core(), plies()).prop_map(|(outer, core, inner)| {
        Section::new(Laminate::new(&outer).unwrap(), core, Laminate::new(&inner).unwrap()).unwrap()
    })
}

fn temperatures() -> impl Strategy<Value = Temperatures> {
    (-50.0..70.0, -50.0..70.0).prop_map(|(outer, inner)| Temperatures {
        outer: TemperatureInterval::new::<kelvin>(outer),
        inner: TemperatureInterval::new::<kelvin>(inner),
    })
}

fn axis() -> impl Strategy<Value = Axis> {
    prop_oneof![Just(Axis::X), Just(Axis::Y)]
}

fn width() -> impl Strategy<Value = Width> {
    prop_oneof![Just(Width::Narrow), Just(Width::Wide)]
}

fn moment(value: f64) -> MomentPerWidth {
    MomentPerWidth { value, ..MomentPerWidth::default() }
}

fn force(value: f64) -> ForcePerWidth {
    ForcePerWidth { value, ..ForcePerWidth::default() }
}

/// Equal skins without Poisson's ratio: `e`, `t`, `ec`, `c` in GPa and mm.
fn plain(e: f64, t: f64, ec: f64, c: f64) -> Section {
    let elastic = Elastic::isotropic(
        Pressure::new::<gigapascal>(e),
        Ratio::ZERO,
        TemperatureCoefficient::new::<per_kelvin>(2e-5),
    );
    let ply = Ply { elastic, strength: None, thickness: Length::new::<millimeter>(t), angle: Angle::ZERO };
    let skin = Laminate::new(&[ply]).unwrap();
    let core = CoreLayer::isotropic(
        Length::new::<millimeter>(c),
        Pressure::new::<gigapascal>(ec),
        Ratio::ZERO,
        Pressure::new::<gigapascal>(0.03),
        TemperatureCoefficient::ZERO,
    );
    Section::new(skin.clone(), core, skin).unwrap()
}

proptest! {
    #[test]
    fn equal_skins_follow_the_textbook(e in 1.0..80.0, t in 0.3..6.0, ec in 0.0..10.0, c in 3.0..60.0) {
        let section = plain(e, t, ec, c);
        let d = c + t;
        let textbook = e * t * d * d / 2.0 + e * t.powi(3) / 6.0 + ec * c.powi(3) / 12.0; // N·m
        for axis in Axis::BOTH {
            for width in [Width::Narrow, Width::Wide] {
                let bending = section.bending(axis, width);
                assert_relative_eq!(bending.rigidity.value, textbook, max_relative = 1e-12);
                let parts = bending.skin_membranes + bending.skins_alone + bending.core_alone;
                assert_relative_eq!(parts.value, textbook, max_relative = 1e-12);
                assert_relative_eq!(bending.neutral_plane.value, section.thickness().value / 2.0, max_relative = 1e-12);
            }
        }
    }

    #[test]
    fn dissimilar_thin_skins_follow_the_textbook(e in 1.0..80.0, other in 0.2..5.0, c in 20.0..60.0) {
        let t = 0.01;
        let skin = |e: f64| {
            let elastic =
                Elastic::isotropic(Pressure::new::<gigapascal>(e), Ratio::ZERO, TemperatureCoefficient::ZERO);
            Laminate::new(&[Ply {
                elastic, strength: None, thickness: Length::new::<millimeter>(t), angle: Angle::ZERO,
            }])
            .unwrap()
        };
        let core = CoreLayer { e_x: Pressure::ZERO, e_y: Pressure::ZERO, ..*plain(1.0, 1.0, 0.0, c).core() };
        let section = Section::new(skin(e), core, skin(e * other)).unwrap();
        let (ea, eb, d) = (e * t, e * other * t, c + t);
        let bending = section.bending(Axis::X, Width::Narrow);
        // the skins' own bending is below (t/d)², 3e-7
        assert_relative_eq!(bending.rigidity.value, ea * eb * d * d / (ea + eb), max_relative = 1e-6);
        // the neutral plane divides the lever as the stiffness of the skins
        let neutral = t / 2.0 + d * eb / (ea + eb);
        assert_relative_eq!(bending.neutral_plane.get::<millimeter>(), neutral, max_relative = ROUNDING);
    }

    #[test]
    fn parts_add_up_for_any_skins_without_poisson(
        e in prop::array::uniform4(1.0..80.0), t in prop::array::uniform4(0.2..4.0), c in 3.0..60.0,
        axis in axis(), width in width(),
    ) {
        // unlike plies put the centroid of a skin off its middle, and the lever has to follow
        let ply = |k: usize| Ply {
            elastic: Elastic::isotropic(
                Pressure::new::<gigapascal>(e[k]), Ratio::ZERO, TemperatureCoefficient::ZERO,
            ),
            strength: None,
            thickness: Length::new::<millimeter>(t[k]),
            angle: Angle::ZERO,
        };
        let skin = |i, j| Laminate::new(&[ply(i), ply(j)]).unwrap();
        let section = Section::new(skin(0, 1), *plain(1.0, 1.0, 0.0, c).core(), skin(2, 3)).unwrap();
        let bending = section.bending(axis, width);
        let parts = bending.skin_membranes + bending.skins_alone;
        assert_relative_eq!(parts.value, bending.rigidity.value, max_relative = ROUNDING);
    }

    #[test]
    fn shear_along_fibres_and_across_have_their_own_modulus(
        plies in plies(), core in core(), g13 in 1.0..5.0, g23 in 1.0..5.0,
    ) {
        let straight: Vec<Ply> = plies.iter().map(|&p| Ply { angle: Angle::ZERO, ..p }).collect();
        let skin = Laminate::new(&straight).unwrap();
        let section = Section::new(skin.clone(), core, skin).unwrap();
        let energy = |axis, along: f64, across: f64| {
            let g = |x: f64| Pressure::new::<gigapascal>(x);
            let skins = SkinShear::Moduli { g13: g(along), g23: g(across) };
            section.shear_flow(axis, Width::Narrow, skins).energy_stiffness().value
        };
        assert_relative_eq!(energy(Axis::X, g13, g23), energy(Axis::X, g13, 9.0), max_relative = 1e-12);
        assert_relative_eq!(energy(Axis::Y, g13, g23), energy(Axis::Y, 9.0, g23), max_relative = 1e-12);
    }

    #[test]
    fn a_solid_plate_bows_with_its_gradient(e in 1.0..80.0, c in 5.0..60.0, outer in -40.0..60.0, inner in -40.0..60.0) {
        // next to no skins: curvature alpha (Ti − To)/c, strain alpha (To + Ti)/2, and no stress
        let plain = plain(e, 1e-6, e, c);
        let alpha = TemperatureCoefficient::new::<per_kelvin>(2e-5);
        let skin = || plain.skin(Skin::Outer).clone();
        let section = Section::new(skin(), CoreLayer { alpha, ..*plain.core() }, skin()).unwrap();
        let rise = Temperatures {
            outer: TemperatureInterval::new::<kelvin>(outer),
            inner: TemperatureInterval::new::<kelvin>(inner),
        };
        let free = section.thermal_free(&rise);
        let expected = 2e-5 * (inner - outer) / (c * 1e-3);
        // the skins are 1e-6 of a mm
        assert_relative_eq!(free.curvature.x.value, expected, epsilon = 1e-7, max_relative = 1e-5);
        assert_relative_eq!(free.strain.y.value, 1e-5 * (inner + outer), epsilon = 1e-9, max_relative = 1e-5);
    }

    #[test]
    fn one_material_all_through_is_a_plate(e in 1.0..80.0, nu in 0.0..0.4, t in 1.0..5.0, c in 2.0..20.0) {
        let modulus = Pressure::new::<gigapascal>(e);
        let elastic = Elastic::isotropic(modulus, Ratio::from(nu), TemperatureCoefficient::ZERO);
        let ply = Ply { elastic, strength: None, thickness: Length::new::<millimeter>(t), angle: Angle::ZERO };
        let g = elastic.g12;
        let core = CoreLayer::isotropic(
            Length::new::<millimeter>(c), modulus, Ratio::from(nu), g, TemperatureCoefficient::ZERO,
        );
        let skin = Laminate::new(&[ply]).unwrap();
        let section = Section::new(skin.clone(), core, skin).unwrap();
        let h = section.thickness();
        let cube = modulus.value * h.value.powi(3) / 12.0;
        let rigidity = |width| section.bending(Axis::Y, width).rigidity.value;
        assert_relative_eq!(rigidity(Width::Narrow), cube, max_relative = 1e-12);
        assert_relative_eq!(rigidity(Width::Wide), cube / (1.0 - nu * nu), max_relative = 1e-12);
        // parabola of shear: 3/2 in the middle, 5/6 of G h by energy
        let flow = section.shear_flow(Axis::X, Width::Wide, SkinShear::Moduli { g13: g, g23: g });
        let v = force(1e3);
        assert_relative_eq!(flow.stress(v, h / 2.0).value, 1.5e3 / h.value, max_relative = 1e-12);
        assert_relative_eq!(flow.max_between(v, [Length::ZERO, h]).value, 1.5e3 / h.value, max_relative = 1e-12);
        assert_relative_eq!(flow.energy_stiffness().value, 5.0 / 6.0 * g.value * h.value, max_relative = 1e-12);
    }

    #[test]
    fn neighbours_stiffen_a_strip(section in section(), axis in axis()) {
        let rigidity = |width| section.bending(axis, width).rigidity.value;
        prop_assert!(rigidity(Width::Wide) >= rigidity(Width::Narrow) * (1.0 - ROUNDING));
    }

    #[test]
    fn upside_down_bends_alike(outer in plies(), core in core(), inner in plies(), axis in axis(), width in width()) {
        let skin = |plies: &[Ply]| Laminate::new(plies).unwrap();
        let mirrored = |plies: &[Ply]| Laminate::new(&plies.iter().rev().copied().collect::<Vec<_>>()).unwrap();
        let one = Section::new(skin(&outer), core, skin(&inner)).unwrap();
        let two = Section::new(mirrored(&inner), core, mirrored(&outer)).unwrap();
        let (a, b) = (one.bending(axis, width), two.bending(axis, width));
        assert_relative_eq!(a.rigidity.value, b.rigidity.value, max_relative = ROUNDING);
        assert_relative_eq!(a.lever.value, b.lever.value, max_relative = ROUNDING);
        assert_relative_eq!((a.neutral_plane + b.neutral_plane).value, one.thickness().value, max_relative = 1e-7);
    }

    #[test]
    fn quarter_turn_swaps_the_axes(outer in plies(), core in core(), inner in plies(), width in width()) {
        let turned = |plies: &[Ply]| {
            let quarter = Angle::new::<degree>(90.0);
            Laminate::new(&plies.iter().map(|&p| Ply { angle: p.angle + quarter, ..p }).collect::<Vec<_>>()).unwrap()
        };
        let one = Section::new(Laminate::new(&outer).unwrap(), core, Laminate::new(&inner).unwrap()).unwrap();
        let swapped = CoreLayer {
            e_x: core.e_y,
            e_y: core.e_x,
            nu: core.nu * (core.e_y / core.e_x),
            g_xz: core.g_yz,
            g_yz: core.g_xz,
            ..core
        };
        let two = Section::new(turned(&outer), swapped, turned(&inner)).unwrap();
        let close = |a: f64, b: f64| assert_relative_eq!(a, b, max_relative = 1e-7);
        close(one.bending(Axis::X, width).rigidity.value, two.bending(Axis::Y, width).rigidity.value);
        close(one.shear_stiffness(Axis::X).value, two.shear_stiffness(Axis::Y).value);
        let energy = |s: &Section, axis| s.shear_flow(axis, width, SkinShear::Rigid).energy_stiffness().value;
        close(energy(&one, Axis::X), energy(&two, Axis::Y));
    }

    #[test]
    fn a_moment_bends_as_its_rigidity_says(section in section(), axis in axis(), width in width(), m in -1e3..1e3) {
        let bent = section.deformation(&section.bent(axis, width, moment(m)));
        let bending = section.bending(axis, width);
        let (along, across) = match axis {
            Axis::X => (bent.curvature.x.value, bent.curvature.y.value),
            Axis::Y => (bent.curvature.y.value, bent.curvature.x.value),
        };
        prop_assert!((along - m / bending.rigidity.value).abs() < ROUNDING * along.abs());
        if width == Width::Wide {
            prop_assert!(across.abs() < ROUNDING * along.abs());
            prop_assert!(bent.curvature.xy.value.abs() < ROUNDING * along.abs());
        }
        // the neutral plane keeps its length
        let strain = match axis {
            Axis::X => bent.strain.x.value,
            Axis::Y => bent.strain.y.value,
        };
        let z = (bending.neutral_plane - section.thickness() / 2.0).value;
        prop_assert!((strain + z * along).abs() < ROUNDING * section.thickness().value * along.abs());
    }

    #[test]
    fn quick_way_and_long_way_meet(section in section(), n in prop::array::uniform6(-1e4..1e4)) {
        let mut load = Resultants::default();
        (load.force.x.value, load.force.y.value, load.force.xy.value) = (n[0], n[1], n[2]);
        (load.moment.x.value, load.moment.y.value, load.moment.xy.value) = (n[3] / 50.0, n[4] / 50.0, n[5] / 50.0);
        let long: Vec<_> = section.ply_stresses(section.deformation(&load), Temperatures::default()).collect();
        let quick: Vec<_> = section.unit_response().stresses(&load).collect();
        prop_assert_eq!(long.len(), quick.len());
        let scale = long.iter().map(|(_, s)| s.s1.value.abs() + s.s2.value.abs()).fold(0.0, f64::max);
        for ((place, a), (same, b)) in long.iter().zip(&quick) {
            prop_assert_eq!(place, same);
            for (x, y) in [(a.s1, b.s1), (a.s2, b.s2), (a.s12, b.s12)] {
                prop_assert!((x - y).value.abs() < ROUNDING * scale);
            }
        }
    }

    #[test]
    fn first_ply_is_the_least_reserve(section in section(), m in 10.0..1e3, rise in temperatures()) {
        use skinspan::laminate::{TsaiWu, max_stress};
        let load = section.bent(Axis::X, Width::Wide, moment(m));
        let deformation = section.thermal_free(&rise);
        let residual = section.residual(deformation, rise);
        let response = section.unit_response();
        let all = || {
            section
                .ply_stresses(section.deformation(&load), Temperatures::default())
                .zip(section.ply_stresses(deformation, rise))
                .map(|((place, mechanical), (_, kept))| {
                    let ply = section.skin(place.skin).plies().nth(place.ply).unwrap();
                    (mechanical, kept, ply.strength.unwrap())
                })
        };
        let wu = all().map(|(m, r, s)| TsaiWu::new(&s).reserve(&m, &r).factor.value).fold(f64::INFINITY, f64::min);
        let max = all().map(|(m, r, s)| max_stress(&m, &r, &s).factor.value).fold(f64::INFINITY, f64::min);
        let first = |criterion| response.first_ply(criterion, &load, Some(&residual)).unwrap().1.factor.value;
        prop_assert!((first(Criterion::TsaiWu) - wu).abs() <= 1e-6 * wu);
        prop_assert!((first(Criterion::MaxStress) - max).abs() <= 1e-6 * max);
    }

    #[test]
    fn skins_without_core_stiffness_balance(
        outer in plies(), core in core(), inner in plies(), axis in axis(), width in width(), rise in temperatures(),
    ) {
        let core = CoreLayer { e_x: Pressure::ZERO, e_y: Pressure::ZERO, ..core };
        let section = Section::new(Laminate::new(&outer).unwrap(), core, Laminate::new(&inner).unwrap()).unwrap();
        let sum = |deformation: &Deformation, rise: &Temperatures| {
            let [a, b] = Skin::BOTH.map(|s| section.skin_force(s, deformation, rise));
            let scale = [a.x, a.y, b.x, b.y].map(|f| f.value.abs()).into_iter().fold(1e-6, f64::max);
            [a.x + b.x, a.y + b.y, a.xy + b.xy].map(|f| f.value.abs() / scale).into_iter().fold(0.0, f64::max)
        };
        let bent = section.deformation(&section.bent(axis, width, moment(100.0)));
        prop_assert!(sum(&bent, &Temperatures::default()) < ROUNDING);
        // heat alone: free of force, bent or held flat; forces are counted against those of full restraint
        let restraint = 1e-7 * section.stiffness().a(X, X).value * 1e-3;
        for deformation in [section.thermal_free(&rise), section.thermal_flat(&rise).deformation] {
            let [a, b] = Skin::BOTH.map(|s| section.skin_force(s, &deformation, &rise));
            prop_assert!((a.x + b.x).value.abs() < restraint && (a.xy + b.xy).value.abs() < restraint);
        }
    }

    #[test]
    fn holding_flat_undoes_the_free_bow(section in section(), rise in temperatures()) {
        // the edge moment bends the free panel back
        let flat = section.thermal_flat(&rise);
        let edge = Resultants { moment: flat.moment, ..Resultants::default() };
        let back = section.thermal_free(&rise) + section.deformation(&edge);
        let free = section.thermal_free(&rise).curvature;
        let scale = 1e-9 + free.x.value.abs() + free.y.value.abs() + free.xy.value.abs();
        for curvature in [back.curvature.x, back.curvature.y, back.curvature.xy] {
            prop_assert!(curvature.value.abs() < 1e-7 * scale);
        }
        assert_relative_eq!(back.strain.x.value, flat.deformation.strain.x.value, epsilon = 1e-10);
    }

    #[test]
    fn thin_equal_skins_bow_as_the_textbook(e in 1.0..80.0, c in 20.0..60.0, outer in -40.0..60.0) {
        let section = plain(e, 0.01, 0.0, c);
        let rise =
            Temperatures { outer: TemperatureInterval::new::<kelvin>(outer), inner: TemperatureInterval::ZERO };
        let expected = -2e-5 * outer / ((c + 0.01) * 1e-3);
        assert_relative_eq!(section.thermal_free(&rise).curvature.x.value, expected, max_relative = 1e-6);
    }

    #[test]
    fn even_heat_on_one_expansion_is_free_of_stress(
        e in 1.0..80.0, t in 0.3..6.0, ec in 0.01..10.0, c in 3.0..60.0, rise in -50.0..60.0,
    ) {
        let plain = plain(e, t, ec, c);
        let alpha = TemperatureCoefficient::new::<per_kelvin>(2e-5);
        let skin = || plain.skin(Skin::Outer).clone();
        let section = Section::new(skin(), CoreLayer { alpha, ..*plain.core() }, skin()).unwrap();
        let even = TemperatureInterval::new::<kelvin>(rise);
        let rise = Temperatures { outer: even, inner: even };
        let free = section.thermal_free(&rise);
        assert_relative_eq!(free.strain.x.value, 2e-5 * even.value, max_relative = ROUNDING);
        for (_, PlyStress { s1, .. }) in section.ply_stresses(free, rise) {
            prop_assert!(s1.value.abs() < 1e-6 * e * 1e9 * 2e-5 * (1.0 + even.value.abs()));
        }
    }

    #[test]
    fn shear_stress_adds_up_to_the_shear_force(section in section(), axis in axis(), width in width()) {
        let flow = section.shear_flow(axis, width, SkinShear::Rigid);
        let v = force(1e3);
        let mut border = Length::ZERO;
        let mut sum = 0.0;
        let thicknesses = section
            .skin(Skin::Outer)
            .plies()
            .map(|p| p.thickness)
            .chain([section.core().thickness])
            .chain(section.skin(Skin::Inner).plies().map(|p| p.thickness));
        for t in thicknesses {
            // a parabola within each layer: Simpson's rule is exact; points kept clear of the borders
            let eps = t * 1e-12;
            let [a, b, c] = [border + eps, border + t / 2.0, border + t - eps].map(|z| flow.stress(v, z).value);
            sum += (a + 4.0 * b + c) * t.value / 6.0;
            border += t;
        }
        prop_assert!((sum - 1e3).abs() < 1e-6 * 1e3, "{}", sum);
        // free surfaces
        let core = flow.stress(v, section.core_faces()[0]).value.abs();
        prop_assert!(flow.stress(v, Length::ZERO).value.abs() < 1e-9 * core);
        prop_assert!(flow.stress(v, section.thickness() * (1.0 - 1e-14)).value.abs() < 1e-6 * core);
    }

    #[test]
    fn energy_and_simple_shear_stiffness_meet_for_thin_skins(c in 20.0..60.0, e in 1.0..80.0) {
        let section = plain(e, 0.01, 0.0, c);
        let energy = section.shear_flow(Axis::X, Width::Narrow, SkinShear::Rigid).energy_stiffness().value;
        assert_relative_eq!(energy, section.shear_stiffness(Axis::X).value, max_relative = 1e-6);
        let v = force(500.0);
        let flow = section.shear_flow(Axis::X, Width::Narrow, SkinShear::Rigid);
        let exact = flow.max_between(v, section.core_faces()).value;
        assert_relative_eq!(section.core_shear_stress(Axis::X, v).value, exact, max_relative = 1e-6);
    }

    #[test]
    fn a_conduit_takes_its_share(core in core(), r in 0.1..1.0) {
        let cut = core.with_remaining(Ratio::from(r));
        let share = |a: Pressure, b: Pressure| assert_relative_eq!((a / b).value, r, max_relative = 1e-12);
        share(cut.g_xz, core.g_xz);
        share(cut.g_yz, core.g_yz);
        share(cut.e_x, core.e_x);
        share(cut.e_y, core.e_y);
        prop_assert_eq!(cut.thickness, core.thickness);
    }

    #[test]
    fn validity_numbers_say_what_they_bound(e in 1.0..80.0, t in 0.3..6.0, ec in 0.001..1.0, c in 3.0..60.0) {
        let section = plain(e, t, ec, c);
        let check = section.skin_check(Axis::X, Width::Narrow);
        let d = c + t;
        assert_relative_eq!(check.lever_to_skin.value, d / t, max_relative = ROUNDING);
        let formula = 6.0 * e * t * d * d / (ec * c.powi(3));
        assert_relative_eq!(check.skins_to_core.value, formula, max_relative = ROUNDING);
        let bending = section.bending(Axis::X, Width::Narrow);
        if check.lever_to_skin.value > 5.78 {
            prop_assert!(bending.skins_alone.value < 0.01 * bending.skin_membranes.value);
        }
        // theta² = (L/2)² S D/(D0 Df)
        let span = Length::new::<millimeter>(800.0);
        let theta = section.theta(Axis::X, Width::Narrow, span).value;
        let squared = 0.16 * section.shear_stiffness(Axis::X).value * bending.rigidity.value
            / (bending.skin_membranes.value * bending.skins_alone.value);
        assert_relative_eq!(theta * theta, squared, max_relative = ROUNDING);
    }

    #[test]
    fn scaling_all_lengths(outer in plies(), core in core(), inner in plies(), k in 0.5..2.0) {
        let scaled = |plies: &[Ply], k: f64| {
            Laminate::new(&plies.iter().map(|&p| Ply { thickness: p.thickness * k, ..p }).collect::<Vec<_>>()).unwrap()
        };
        let of = |k: f64| {
            let core = CoreLayer { thickness: core.thickness * k, ..core };
            Section::new(scaled(&outer, k), core, scaled(&inner, k)).unwrap()
        };
        let (one, two) = (of(1.0), of(k));
        for axis in Axis::BOTH {
            let d = |s: &Section| s.bending(axis, Width::Wide).rigidity.value;
            assert_relative_eq!(d(&two), d(&one) * k.powi(3), max_relative = ROUNDING);
            let s = |s: &Section| s.shear_stiffness(axis).value;
            assert_relative_eq!(s(&two), s(&one) * k, max_relative = ROUNDING);
        }
        assert_relative_eq!(two.stiffness().a(Y, Y).value, one.stiffness().a(Y, Y).value * k, max_relative = ROUNDING);
    }
}

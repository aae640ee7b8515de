//! Laminates of any plies.

#![allow(clippy::unwrap_used)] // a test may panic

use approx::assert_relative_eq;
use proptest::prelude::*;
use skinspan::laminate::{
    Component::{self, X, Xy, Y},
    Deformation, Elastic, Laminate, Mode, Ply, PlyStress, Resultants, Stiffness, Strength, TsaiWu,
    fibre_content::{Densities, resin_mass, rule_ply_thickness},
    max_stress,
    micromechanics::{Constituent, Lay, krenchel_modulus, unidirectional},
};
use skinspan::units::{
    Angle, ArealMassDensity, Length, MassDensity, Pressure, Ratio, TemperatureCoefficient, TemperatureInterval,
};
use uom::si::{
    angle::degree, areal_mass_density::kilogram_per_square_meter, length::millimeter,
    mass_density::kilogram_per_cubic_meter, pressure::gigapascal, pressure::megapascal,
    temperature_coefficient::per_kelvin, temperature_interval::kelvin,
};

const INDEX: [Component; 3] = [X, Y, Xy];
/// Rounding of a few dozen operations.
const ROUNDING: f64 = 1e-11;

pub fn elastic() -> impl Strategy<Value = Elastic> {
    (5.0..150.0, 0.05..1.0, 0.3..1.0, -0.2..0.45, -1e-6..4e-5, 1e-6..6e-5).prop_map(
        |(e1, ratio, shear, nu, alpha1, alpha2)| Elastic {
            e1: Pressure::new::<gigapascal>(e1),
            e2: Pressure::new::<gigapascal>(e1 * ratio),
            g12: Pressure::new::<gigapascal>(e1 * ratio * shear / 2.0),
            nu12: Ratio::from(nu),
            alpha1: TemperatureCoefficient::new::<per_kelvin>(alpha1),
            alpha2: TemperatureCoefficient::new::<per_kelvin>(alpha2),
        },
    )
}

pub fn strength() -> impl Strategy<Value = Strength> {
    let mpa = |x: f64| Pressure::new::<megapascal>(x);
    (200.0..2000.0, 0.3..1.2, 20.0..80.0, 1.0..5.0, 20.0..100.0).prop_map(move |(xt, c, yt, d, s)| Strength {
        xt: mpa(xt),
        xc: mpa(xt * c),
        yt: mpa(yt),
        yc: mpa(yt * d),
        s: mpa(s),
    })
}

pub fn ply() -> impl Strategy<Value = Ply> {
    (elastic(), strength(), 0.1..2.0, -180.0..180.0).prop_map(|(elastic, strength, t, angle)| Ply {
        elastic,
        strength: Some(strength),
        thickness: Length::new::<millimeter>(t),
        angle: Angle::new::<degree>(angle),
    })
}

pub fn plies() -> impl Strategy<Value = Vec<Ply>> {
    prop::collection::vec(ply(), 1..6)
}

fn stress() -> impl Strategy<Value = PlyStress> {
    let mpa = |x: f64| Pressure::new::<megapascal>(x);
    (-500.0..500.0, -60.0..60.0, -60.0..60.0).prop_map(move |(a, b, c)| PlyStress {
        s1: mpa(a),
        s2: mpa(b),
        s12: mpa(c),
    })
}

fn loads() -> impl Strategy<Value = Resultants> {
    prop::array::uniform6(-1e3..1e3).prop_map(|[a, b, c, d, e, f]| {
        let mut load = Resultants::default();
        (load.force.x.value, load.force.y.value, load.force.xy.value) = (a, b, c);
        (load.moment.x.value, load.moment.y.value, load.moment.xy.value) = (d, e, f);
        load
    })
}

fn turned(plies: &[Ply], by: f64) -> Laminate {
    let plies: Vec<Ply> = plies.iter().map(|&ply| Ply { angle: ply.angle + Angle::new::<degree>(by), ..ply }).collect();
    Laminate::new(&plies).unwrap()
}

fn same(one: &Stiffness, two: &Stiffness, thickness: Length) -> Result<(), TestCaseError> {
    let (a, t) = (one.a(X, X).value + one.a(Y, Y).value, thickness.value);
    for i in INDEX {
        for j in INDEX {
            prop_assert!((one.a(i, j) - two.a(i, j)).value.abs() < ROUNDING * a);
            prop_assert!((one.b(i, j) - two.b(i, j)).value.abs() < ROUNDING * a * t);
            prop_assert!((one.d(i, j) - two.d(i, j)).value.abs() < ROUNDING * a * t * t);
        }
    }
    Ok(())
}

proptest! {
    #[test]
    fn mirrored_laminate_has_no_coupling(plies in plies()) {
        let mut all = plies.clone();
        all.extend(plies.iter().rev());
        let laminate = Laminate::new(&all).unwrap();
        let scale = (laminate.stiffness().a(X, X) + laminate.stiffness().a(Y, Y)).value * laminate.thickness().value;
        for i in INDEX {
            for j in INDEX {
                prop_assert!(laminate.stiffness().b(i, j).value.abs() < ROUNDING * scale);
            }
        }
    }

    #[test]
    fn half_a_turn_changes_nothing(plies in plies()) {
        let laminate = Laminate::new(&plies).unwrap();
        same(laminate.stiffness(), turned(&plies, 180.0).stiffness(), laminate.thickness())?;
    }

    #[test]
    fn invariants_survive_any_turn(plies in plies(), by in -90.0..90.0) {
        let (one, two) = (Laminate::new(&plies).unwrap(), turned(&plies, by));
        let sum = |s: &Stiffness| (s.a(X, X) + s.a(Y, Y) + s.a(X, Y) * 2.0).value;
        let difference = |s: &Stiffness| (s.a(Xy, Xy) - s.a(X, Y)).value;
        let scale = sum(one.stiffness()).abs();
        prop_assert!((sum(one.stiffness()) - sum(two.stiffness())).abs() < ROUNDING * scale);
        prop_assert!((difference(one.stiffness()) - difference(two.stiffness())).abs() < ROUNDING * scale);
    }

    #[test]
    fn quarter_turn_swaps_x_and_y(plies in plies()) {
        let (one, two) = (Laminate::new(&plies).unwrap(), turned(&plies, 90.0));
        assert_relative_eq!(one.stiffness().d(X, X).value, two.stiffness().d(Y, Y).value, max_relative = 1e-9);
        assert_relative_eq!(one.stiffness().a(Y, Y).value, two.stiffness().a(X, X).value, max_relative = 1e-9);
    }

    #[test]
    fn quasi_isotropic_membrane_is_isotropic(elastic in elastic(), number in 3_u8..7, from in 0.0..90.0) {
        let plies: Vec<Ply> = (0..number)
            .map(|k| Ply {
                elastic,
                strength: None,
                thickness: Length::new::<millimeter>(0.5),
                angle: Angle::new::<degree>(from + 180.0 * f64::from(k) / f64::from(number)),
            })
            .collect();
        let s = *Laminate::new(&plies).unwrap().stiffness();
        let scale = s.a(X, X).value;
        prop_assert!((s.a(X, X) - s.a(Y, Y)).value.abs() < ROUNDING * scale);
        prop_assert!(s.a(X, Xy).value.abs() < ROUNDING * scale);
        prop_assert!(s.a(Y, Xy).value.abs() < ROUNDING * scale);
        prop_assert!((s.a(Xy, Xy) * 2.0 - s.a(X, X) + s.a(X, Y)).value.abs() < ROUNDING * scale);
    }

    #[test]
    fn thicker_plies_scale_as_the_cube(plies in plies(), k in 0.2..5.0) {
        let thick: Vec<Ply> = plies.iter().map(|&p| Ply { thickness: p.thickness * k, ..p }).collect();
        let (one, two) = (Laminate::new(&plies).unwrap(), Laminate::new(&thick).unwrap());
        assert_relative_eq!(two.stiffness().a(X, X).value, one.stiffness().a(X, X).value * k, max_relative = ROUNDING);
        let cube = one.stiffness().d(X, X).value * k * k * k;
        assert_relative_eq!(two.stiffness().d(X, X).value, cube, max_relative = ROUNDING);
        let (flexural, same) = (one.flexural_constants(), two.flexural_constants());
        assert_relative_eq!(flexural.ex.value, same.ex.value, max_relative = 1e-8);
    }

    #[test]
    fn split_ply_is_the_same_ply(ply in ply(), share in 0.1..0.9) {
        let parts = [share, 1.0 - share].map(|s| Ply { thickness: ply.thickness * s, ..ply });
        let (one, two) = (Laminate::new(&[ply]).unwrap(), Laminate::new(&parts).unwrap());
        same(one.stiffness(), two.stiffness(), ply.thickness)?;
    }

    #[test]
    fn shift_equals_another_reference(plies in plies(), shift in -5.0..5.0) {
        let shift = Length::new::<millimeter>(shift);
        let laminate = Laminate::new(&plies).unwrap();
        let middle = laminate.thickness() / 2.0;
        let direct = Stiffness::of_stack(plies.iter().copied(), middle + shift);
        let reach = laminate.thickness() + shift.abs();
        same(&direct, &laminate.stiffness().shifted(shift), reach)?;
    }

    #[test]
    fn bending_with_free_membrane_knows_no_reference(plies in plies(), shift in -3.0..3.0) {
        let laminate = Laminate::new(&plies).unwrap();
        let moved = laminate.stiffness().shifted(Length::new::<millimeter>(shift));
        let (one, two) = (laminate.stiffness().bending_free(X, X), moved.bending_free(X, X));
        // the reference may lie many thicknesses away, and digits go with the square of that
        assert_relative_eq!(one.value, two.value, max_relative = 1e-7);
    }

    #[test]
    fn loads_come_back(plies in plies(), load in loads()) {
        let laminate = Laminate::new(&plies).unwrap();
        let back = laminate.stiffness().resultants(&laminate.deformation(&load));
        let t = laminate.thickness().value;
        let force = 1e3 + 1e3 / t;
        prop_assert!((back.force.x - load.force.x).value.abs() < 1e-9 * force);
        prop_assert!((back.force.xy - load.force.xy).value.abs() < 1e-9 * force);
        prop_assert!((back.moment.y - load.moment.y).value.abs() < 1e-9 * force * t);
    }

    #[test]
    fn ply_stresses_carry_the_load(plies in plies(), load in loads()) {
        // stress is straight within a ply: its mean times the thickness, turned back, is the force
        let laminate = Laminate::new(&plies).unwrap();
        let deformation = laminate.deformation(&load);
        let sides: Vec<PlyStress> =
            laminate.ply_stresses(deformation, TemperatureInterval::new::<kelvin>(0.0)).map(|(_, _, s)| s).collect();
        let mut force = 0.0;
        let mut shear = 0.0;
        for (ply, pair) in plies.iter().zip(sides.chunks(2)) {
            let mean = (pair[0] + pair[1]) * 0.5;
            let (s, c) = ply.angle.value.sin_cos();
            let (s1, s2, s12, t) = (mean.s1.value, mean.s2.value, mean.s12.value, ply.thickness.value);
            force += t * (c * c * s1 + s * s * s2 - 2.0 * s * c * s12);
            shear += t * (s * c * (s1 - s2) + (c * c - s * s) * s12);
        }
        let scale = 1e3 + 1e3 / laminate.thickness().value;
        prop_assert!((force - load.force.x.value).abs() < 1e-9 * scale);
        prop_assert!((shear - load.force.xy.value).abs() < 1e-9 * scale);
    }

    #[test]
    fn free_expansion_of_one_material_is_free_of_stress(ply in ply(), rise in -80.0..80.0) {
        let laminate = Laminate::new(&[Ply { angle: Angle::new::<degree>(0.0), ..ply }]).unwrap();
        let rise = TemperatureInterval::new::<kelvin>(rise);
        let mut grown = Deformation::default();
        grown.strain.x.value = ply.elastic.alpha1.value * rise.value;
        grown.strain.y.value = ply.elastic.alpha2.value * rise.value;
        for (_, _, stress) in laminate.ply_stresses(grown, rise) {
            prop_assert!(stress.s1.value.abs() < 1e-3 && stress.s2.value.abs() < 1e-3);
        }
    }

    #[test]
    fn tsai_wu_reserve_leads_to_failure(m in stress(), r in stress(), strength in strength()) {
        let criterion = TsaiWu::new(&strength);
        let r = r * 0.05;
        prop_assume!(criterion.index(&r).value < 0.9);
        let factor = criterion.reserve(&m, &r).factor.value;
        prop_assert!(factor > 0.0);
        let index = criterion.index(&(m * factor + r)).value;
        prop_assert!((index - 1.0).abs() < 1e-9, "{index}");
    }

    #[test]
    fn reserve_falls_as_the_load_grows(m in stress(), strength in strength(), k in 0.01..100.0) {
        let none = PlyStress::default();
        let criterion = TsaiWu::new(&strength);
        let (one, many) = (criterion.reserve(&m, &none), criterion.reserve(&(m * k), &none));
        assert_relative_eq!(many.factor.value * k, one.factor.value, max_relative = 1e-9);
        prop_assert_eq!(one.mode, many.mode);
        let (one, many) = (max_stress(&m, &none, &strength), max_stress(&(m * k), &none, &strength));
        assert_relative_eq!(many.factor.value * k, one.factor.value, max_relative = ROUNDING);
        assert_relative_eq!(one.utilisation().value * one.factor.value, 1.0, max_relative = ROUNDING);
    }

    #[test]
    fn uniaxial_failure_is_the_strength(strength in strength(), share in 0.01..3.0) {
        let none = PlyStress::default();
        let Strength { xt, xc, yt, yc, s } = strength;
        for (stress, mode) in [
            (PlyStress { s1: xt, ..none }, Mode::FibreTension),
            (PlyStress { s1: -xc, ..none }, Mode::FibreCompression),
            (PlyStress { s2: yt, ..none }, Mode::TransverseTension),
            (PlyStress { s2: -yc, ..none }, Mode::TransverseCompression),
            (PlyStress { s12: s, ..none }, Mode::Shear),
            (PlyStress { s12: -s, ..none }, Mode::Shear),
        ] {
            let wu = TsaiWu::new(&strength).reserve(&(stress * share), &none);
            let max = max_stress(&(stress * share), &none, &strength);
            assert_relative_eq!(wu.factor.value, 1.0 / share, max_relative = 1e-9);
            assert_relative_eq!(max.factor.value, 1.0 / share, max_relative = ROUNDING);
            prop_assert_eq!((wu.mode, max.mode), (mode, mode));
        }
    }

    #[test]
    fn max_stress_leaves_room_for_what_is_locked_in(strength in strength(), locked in -0.9..0.9, m in 1.0..50.0) {
        let mechanical = PlyStress { s12: Pressure::new::<megapascal>(m), ..PlyStress::default() };
        let residual = PlyStress { s12: strength.s * locked, ..PlyStress::default() };
        let factor = max_stress(&mechanical, &residual, &strength).factor;
        let at_failure = mechanical.s12 * factor + residual.s12;
        assert_relative_eq!(at_failure.value, strength.s.value, max_relative = ROUNDING);
    }

    #[test]
    fn rule_thickness_is_the_density_rule(w in 0.1..3.0, psi in 0.2..0.8) {
        let glass_polyester = Densities {
            fibre: MassDensity::new::<kilogram_per_cubic_meter>(2560.0),
            resin: MassDensity::new::<kilogram_per_cubic_meter>(1200.0),
        };
        let (w, psi) = (ArealMassDensity::new::<kilogram_per_square_meter>(w), Ratio::from(psi));
        let t = glass_polyester.ply_thickness(w, psi);
        assert_relative_eq!(t.value, rule_ply_thickness(w, psi).value, max_relative = 1e-12);
        // weight: density times thickness is fibre plus resin
        let mass = glass_polyester.density(psi) * t;
        assert_relative_eq!(mass.value, (w + resin_mass(w, psi)).value, max_relative = 1e-12);
        // the fibre fills its share of the thickness
        let fibre = w / glass_polyester.fibre;
        assert_relative_eq!((fibre / t).value, glass_polyester.fibre_volume_fraction(psi).value, max_relative = 1e-12);
        assert_relative_eq!(glass_polyester.fibre_mass_fraction(w, t).value, psi.value, max_relative = 1e-12);
    }

    #[test]
    fn fibre_like_the_resin_changes_nothing(vf in 0.0..0.75, e in 1.0..80.0, nu in 0.1..0.4) {
        let one = Constituent {
            modulus: Pressure::new::<gigapascal>(e),
            nu: Ratio::from(nu),
            alpha: TemperatureCoefficient::new::<per_kelvin>(2e-5),
        };
        let ply = unidirectional(&one, &one, Ratio::from(vf));
        let expected = Elastic::isotropic(one.modulus, one.nu, one.alpha);
        assert_relative_eq!(ply.e1.value, expected.e1.value, max_relative = ROUNDING);
        assert_relative_eq!(ply.e2.value, expected.e2.value, max_relative = ROUNDING);
        assert_relative_eq!(ply.g12.value, expected.g12.value, max_relative = ROUNDING);
        assert_relative_eq!(ply.alpha1.value, 2e-5, max_relative = ROUNDING);
        assert_relative_eq!(ply.alpha2.value, 2e-5, max_relative = ROUNDING);
        let along = krenchel_modulus(Lay::Unidirectional, one.modulus, one.modulus, Ratio::from(vf));
        assert_relative_eq!(along.value, one.modulus.value, max_relative = ROUNDING);
    }
}

#[test]
fn efficiency_is_the_mean_of_the_fourth_power_of_the_cosine() {
    let mean = |angles: &[f64]| {
        #[allow(clippy::cast_precision_loss)] // a few hundred angles
        let number = angles.len() as f64;
        angles.iter().map(|a| a.to_radians().cos().powi(4)).sum::<f64>() / number
    };
    let all: Vec<f64> = (0..360).map(f64::from).collect();
    assert_relative_eq!(Lay::Unidirectional.efficiency().value, mean(&[0.0]), max_relative = ROUNDING);
    assert_relative_eq!(Lay::Balanced.efficiency().value, mean(&[0.0, 90.0]), max_relative = ROUNDING);
    assert_relative_eq!(Lay::Diagonal.efficiency().value, mean(&[45.0, -45.0]), max_relative = ROUNDING);
    assert_relative_eq!(Lay::Random.efficiency().value, mean(&all), max_relative = ROUNDING);
}

#[test]
fn no_load_is_infinite_reserve_and_too_much_locked_in_is_none() {
    let mpa = |x: f64| Pressure::new::<megapascal>(x);
    let strength = Strength { xt: mpa(800.0), xc: mpa(400.0), yt: mpa(40.0), yc: mpa(160.0), s: mpa(50.0) };
    let none = PlyStress::default();
    let broken = PlyStress { s2: mpa(41.0), ..none };
    let pull = PlyStress { s1: mpa(1.0), ..none };
    for reserve in [TsaiWu::new(&strength).reserve(&none, &none), max_stress(&none, &none, &strength)] {
        assert!(reserve.factor.value == f64::INFINITY && reserve.utilisation().value == 0.0);
    }
    for reserve in [TsaiWu::new(&strength).reserve(&pull, &broken), max_stress(&pull, &broken, &strength)] {
        assert!(reserve.factor.value == 0.0);
    }
}

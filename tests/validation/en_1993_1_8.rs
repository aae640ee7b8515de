//! EN 1993-1-8, Table 3.4, bolts, and Table 6.2, feet with prying. Resistances of bolts were read in two published tables
//! of them; the T-stub in a published calculation of an end plate with M20 bolts of class 8.8.

use std::f64::consts::PI;

use approx::assert_relative_eq;
use skinspan::{
    fastening::{
        HEAD_FACTOR, HEAD_FACTOR_COUNTERSUNK, Interaction, SHEAR_FACTOR, SHEAR_FACTOR_HARD_THREAD, TeeStub,
        TeeStubMode, shear_capacity, tensile_capacity,
    },
    units::{Area, Force, Length, Pressure, Ratio},
};
use uom::si::{area::square_millimeter, force::kilonewton, length::millimeter, pressure::megapascal, pressure::pascal};

/// Three digits printed, the least of them 16.2.
const THREE_DIGITS: f64 = 0.0035;
/// Four digits printed, after a plastic moment with its own rounding of the width.
const FOUR_DIGITS: f64 = 0.001;
const PARTIAL: f64 = 1.25;

fn mm(x: f64) -> Length {
    Length::new::<millimeter>(x)
}

fn mpa(x: f64) -> Pressure {
    Pressure::new::<megapascal>(x)
}

fn area(x: f64) -> Area {
    Area::new::<square_millimeter>(x)
}

fn kn(force: Force) -> f64 {
    force.get::<kilonewton>()
}

#[test]
fn table_3_4_class_4_6() {
    // Stress area; tension and shear in kN.
    for (a, tension, shear) in
        [(84.3, 24.3, 16.2), (157.0, 45.2, 30.1), (245.0, 70.6, 47.0), (353.0, 102.0, 67.8), (561.0, 162.0, 108.0)]
    {
        let pull = tensile_capacity(mpa(400.0), area(a), HEAD_FACTOR) / PARTIAL;
        assert_relative_eq!(kn(pull), tension, max_relative = THREE_DIGITS);
        let across = shear_capacity(mpa(400.0), area(a), SHEAR_FACTOR) / PARTIAL;
        assert_relative_eq!(kn(across), shear, max_relative = THREE_DIGITS);
    }
}

#[test]
fn table_3_4_shear_of_8_8_and_10_9() {
    for (a, class_8_8, class_10_9) in
        [(84.3, 32.4, 33.7), (157.0, 60.3, 62.8), (245.0, 94.1, 98.0), (353.0, 135.6, 141.2)]
    {
        let tough = shear_capacity(mpa(800.0), area(a), SHEAR_FACTOR) / PARTIAL;
        assert_relative_eq!(kn(tough), class_8_8, max_relative = THREE_DIGITS);
        let hard = shear_capacity(mpa(1000.0), area(a), SHEAR_FACTOR_HARD_THREAD) / PARTIAL;
        assert_relative_eq!(kn(hard), class_10_9, max_relative = THREE_DIGITS);
    }
}

#[test]
fn table_3_4_countersunk_heads() {
    // 0.63 against 0.9: seven tenths.
    let pull = |head| tensile_capacity(mpa(800.0), area(20.1), head).value;
    assert_relative_eq!(pull(HEAD_FACTOR_COUNTERSUNK) / pull(HEAD_FACTOR), 0.7, max_relative = 1e-14);
}

#[test]
fn table_3_4_combined() {
    // F_v/F_v,Rd + F_t/(1.4 F_t,Rd) ≤ 1 and F_t ≤ F_t,Rd: with all of the pull, 2/7 of the shear is left.
    let used = |t: f64, v: f64| Interaction::SteelBolt.utilisation(Ratio::from(t), Ratio::from(v)).value;
    assert_relative_eq!(used(1.0, 2.0 / 7.0), 1.0, max_relative = 1e-14);
    assert_relative_eq!(used(0.7, 0.5), 1.0, max_relative = 1e-14);
    assert_relative_eq!(used(1.0, 0.1), 1.0, max_relative = 1e-14);
    assert_relative_eq!(used(0.0, 1.0), 1.0, max_relative = 1e-14);
}

/// Bolt row of the end plate. Thickness and yield stress are not printed; 20 mm and 355 MPa give its plastic moments. Its
/// circular pattern 2π*m* = 149.1 mm gives *m*.
fn end_plate(effective_length: f64, bolts: f64) -> TeeStub {
    let m = 149.1 / (2.0 * PI);
    TeeStub {
        thickness: mm(20.0),
        yield_stress: mpa(355.0),
        effective_length: mm(effective_length),
        bolt_to_web: mm(m),
        bolt_to_edge: mm(2.0 * m),
        bolts: Force::new::<kilonewton>(bolts),
    }
}

#[test]
fn table_6_2_end_plate() {
    // Bolts: 2 × 0.9 × 800 × 245/1.25 = 282.24 kN. Printed: modes 1, 2, 3 of row 1 (94.2 mm) 564.1, 282.2, 282.2 kN; of row
    // 2 (117.5 mm) 703, 313.0, 282.2 kN.
    let bolts = kn(2.0 * tensile_capacity(mpa(800.0), area(245.0), HEAD_FACTOR) / PARTIAL);
    let first = end_plate(94.2, bolts).capacity();
    assert_relative_eq!(kn(first.force), 282.2, max_relative = FOUR_DIGITS);
    assert_eq!(first.mode, TeeStubMode::FlangeAndBolts);
    let second = end_plate(117.5, bolts).capacity();
    assert_relative_eq!(kn(second.force), 282.2, max_relative = FOUR_DIGITS);
    assert_eq!(second.mode, TeeStubMode::Bolts);
    // Mode 1 shows when the bolts are strong.
    for (length, printed) in [(94.2, 564.1), (117.5, 703.0)] {
        let strong = end_plate(length, 1e4).capacity();
        assert_relative_eq!(kn(strong.force), printed, max_relative = FOUR_DIGITS);
        assert_eq!(strong.mode, TeeStubMode::FlangeYields);
    }
}

#[test]
fn table_6_2_is_the_lower_bound_of_plastic_theory() {
    // One side: pull F/2 on the web at m from the bolt, prying Q on the edge at n: bolt F/2 + Q ≤ B/2, |Q n| ≤ M and
    // |F m/2 − Q n| ≤ M. The best Q gives the largest F.
    let (m, n) = (20e-3f64, 18e-3f64);
    for bolts in [2e3, 8e3, 12e3, 16e3, 20e3, 40e3, 90e3] {
        let foot = TeeStub {
            thickness: mm(6.0),
            yield_stress: mpa(240.0),
            effective_length: mm(80.0),
            bolt_to_web: mm(20.0),
            bolt_to_edge: mm(18.0),
            bolts: Force::new::<uom::si::force::newton>(bolts),
        };
        let plastic = 80e-3 * 36e-6 / 4.0 * foot.yield_stress.get::<pascal>();
        let best = (0..=200_000)
            .map(|i| f64::from(i) / 200_000.0 * plastic / n)
            .map(|q| (bolts / 2.0 - q).min((plastic + q * n) / m) * 2.0)
            .fold(0.0, f64::max);
        assert_relative_eq!(foot.capacity().force.value, best, max_relative = 1e-4); // step of Q
    }
}

#[test]
fn table_6_2_edge_counts_to_one_and_a_quarter() {
    let (near, far) = (end_plate(94.2, 282.24), end_plate(94.2, 282.24));
    let near = TeeStub { bolt_to_edge: 1.25 * near.bolt_to_web, ..near };
    assert_eq!(near.capacity(), far.capacity());
}

//! Wrinkling of a perfect skin. Hoff and Mautner, *The Buckling of Sandwich-Type Panels*, 1945: the coefficients 0.91
//! and, for a thin core, 0.817 and 0.166 (from memory). They are checked against the minimum of the energy
//! expression.

use approx::assert_relative_eq;
use skinspan::{
    strength::{Branch, HOFF_MAUTNER_FACTOR, PLANTEMA_FACTOR, WrinklingModuli, hoff_mautner_wrinkle, wrinkling_stress},
    units::{Length, Pressure},
};
use uom::si::{length::millimeter, pressure::megapascal};

/// 0.91: two digits, of 0.9086.
const TWO_DIGITS: f64 = 0.005;
/// A parabola through a minimum is flat: the search is good to the square of its step.
const SEARCH: f64 = 1e-7;

const E_F: f64 = 12_000.0;
const E_C: f64 = 90.0;
const G_C: f64 = 27.0;
const T: f64 = 1.5;

fn moduli() -> WrinklingModuli {
    let mpa = Pressure::new::<megapascal>;
    WrinklingModuli { skin: mpa(E_F), core: mpa(E_C), core_shear: mpa(G_C) }
}

fn mm(value: f64) -> Length {
    Length::new::<millimeter>(value)
}

/// Stress at which waves of wave number √p hold themselves, core disturbed to the depth w.
fn energy(p: f64, w: f64) -> f64 {
    E_F * T * T / 12.0 * p + E_C / (w * T * p) + G_C * w / (3.0 * T)
}

fn minimum(f: impl Fn(f64) -> f64, low: f64, high: f64) -> (f64, f64) {
    let (mut low, mut high) = (low.ln(), high.ln());
    for _ in 0..80 {
        let (a, b) = (low + (high - low) / 3.0, high - (high - low) / 3.0);
        if f(a.exp()) < f(b.exp()) { high = b } else { low = a }
    }
    let x = (0.5 * (low + high)).exp();
    (x, f(x))
}

#[test]
fn wrinkling_factor_hoff_mautner_1945_thick_core() {
    assert_relative_eq!(HOFF_MAUTNER_FACTOR.value, 0.91, max_relative = TWO_DIGITS);
    let wrinkle = hoff_mautner_wrinkle(moduli(), mm(T), mm(100.0));
    assert_eq!(wrinkle.branch, Branch::ThickCore);
    let cube_root = wrinkling_stress(HOFF_MAUTNER_FACTOR, moduli());
    assert_relative_eq!(wrinkle.stress.value, cube_root.value, max_relative = 1e-14);
}

#[test]
fn wrinkling_stress_hoff_mautner_1945_thin_core() {
    let c = 20.0;
    let wrinkle = hoff_mautner_wrinkle(moduli(), mm(T), mm(c));
    assert_eq!(wrinkle.branch, Branch::ThinCore);
    let printed = 0.817 * (E_F * E_C * T / c).sqrt() + 0.166 * G_C * c / T;
    assert_relative_eq!(wrinkle.stress.get::<megapascal>(), printed, max_relative = TWO_DIGITS);
}

#[test]
fn wrinkle_is_the_minimum_of_the_energy() {
    for c in [5.0, 20.0, 31.0, 32.0, 100.0] {
        let wrinkle = hoff_mautner_wrinkle(moduli(), mm(T), mm(c));
        let over_p = |w: f64| minimum(|p| energy(p, w), 1e-5, 10.0).1;
        let (w, stress) = minimum(over_p, 1e-3, c / 2.0);
        assert_relative_eq!(wrinkle.stress.get::<megapascal>(), stress, max_relative = SEARCH);
        assert_relative_eq!(wrinkle.zone.get::<millimeter>(), w, max_relative = 1e-3);
        let (p, _) = minimum(|p| energy(p, wrinkle.zone.get::<millimeter>()), 1e-5, 10.0);
        assert_relative_eq!(
            wrinkle.half_wave.get::<millimeter>(),
            std::f64::consts::PI / p.sqrt(),
            max_relative = 1e-5
        );
    }
}

#[test]
fn wrinkling_factor_plantema_is_the_minimum_for_exponential_decay() {
    // w e^(−z/W): the core stores E_c/(2W) and G_c W p/2 where the linear decay stores E_c/W and G_c W p/3.
    let energy = |p: f64, w: f64| E_F * T * T / 12.0 * p + E_C / (2.0 * w * T * p) + G_C * w / (2.0 * T);
    let (_, stress) = minimum(|w| minimum(|p| energy(p, w), 1e-5, 10.0).1, 1e-2, 1e3);
    let plantema = wrinkling_stress(PLANTEMA_FACTOR, moduli()).get::<megapascal>();
    assert_relative_eq!(plantema, stress, max_relative = SEARCH);
}

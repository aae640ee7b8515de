//! Plates on a bed of springs and on an elastic body. Timoshenko and Woinowsky-Krieger, *Theory of Plates and
//! Shells*, 2nd ed., chapter 8 (from memory): 0.125 *P*ℓ²/*D* and 0.192 *P*/ℓ₀² under a point load. Every other test
//! here compares with the transform integral, evaluated by brute force.

use std::f64::consts::PI;

use approx::assert_relative_eq;
use skinspan::{
    fastening::{force_at_crush, washer_pressure},
    strength::{DeepCore, DiscLoad, SkinOnCore, StripLoad, bonded_core_modulus},
    units::{Force, Length, Pressure, Ratio, per_width},
};
use uom::si::{
    force::newton,
    length::{meter, millimeter},
    pressure::{megapascal, pascal},
};

/// 0.192: three digits, of 1/(3√3) = 0.19245.
const THREE_DIGITS: f64 = 0.003;
/// The brute-force sum stops at a finite wave number and has a finite step.
const BRUTE_FORCE: f64 = 5e-4;

// Skin of 1.6 mm and 14 GPa, *ν* = 0.3, on foam of 75 MPa.
const RIGIDITY: f64 = 14e9 * 1.6e-3 * 1.6e-3 * 1.6e-3 / (12.0 * 0.91);
const CORE: f64 = 75e6;

fn springs(depth: f64) -> SkinOnCore {
    let m = Length::new::<meter>(1.0);
    SkinOnCore {
        skin_rigidity: per_width(Pressure::new::<pascal>(RIGIDITY) * m * m * m),
        poisson: Ratio::from(0.3),
        foundation: Pressure::new::<pascal>(CORE) / Length::new::<meter>(depth),
    }
}

fn deep() -> DeepCore {
    DeepCore { skin_rigidity: springs(1.0).skin_rigidity, core_modulus: Pressure::new::<pascal>(CORE) }
}

fn disc(radius: f64) -> DiscLoad {
    DiscLoad { force: Force::new::<newton>(1000.0), radius: Length::new::<meter>(radius) }
}

fn strip(width: f64) -> StripLoad {
    StripLoad {
        force: per_width(Force::new::<newton>(10e3) / Length::new::<meter>(1.0)),
        seat_width: Length::new::<meter>(width),
    }
}

fn j1(x: f64) -> f64 {
    const N: u32 = 256;
    (0..N).map(|i| PI * (f64::from(i) + 0.5) / f64::from(N)).map(|t| (t - x * t.sin()).cos()).sum::<f64>()
        / f64::from(N)
}

/// Pressure on the core from its stiffness *K*(α) for waves of wave number α: the share *K*/(*D*α⁴ + *K*) of every
/// wave of the load.
fn by_transform(wave_of_load: impl Fn(f64) -> f64, stiffness: impl Fn(f64) -> f64) -> f64 {
    const STEP: f64 = 4.0;
    (0..4000)
        .map(|i| STEP * (f64::from(i) + 0.5))
        .map(|a| wave_of_load(a) * stiffness(a) / (RIGIDITY * a.powi(4) + stiffness(a)))
        .sum::<f64>()
        * STEP
}

fn disc_waves(radius: f64) -> impl Fn(f64) -> f64 {
    move |a| 1000.0 / (PI * radius) * j1(a * radius)
}

fn strip_waves(width: f64) -> impl Fn(f64) -> f64 {
    move |a| 10e3 / PI * (a * width / 2.0).sin() / (a * width / 2.0)
}

#[test]
fn dent_timoshenko_1959_section_57_point_load() {
    let skin = springs(0.019);
    let l = skin.spread_length().value;
    let dent = skin.dent(disc(1e-7)).value;
    assert_relative_eq!(dent, 0.125 * 1000.0 * l * l / RIGIDITY, max_relative = 1e-8); // the disc is 10⁻⁵ of ℓ
}

#[test]
fn deep_core_pressure_timoshenko_1959_section_61_point_load() {
    let l = deep().spread_length().value;
    let peak = deep().pressure_under_disc(disc(1e-8)).value;
    assert_relative_eq!(peak, 0.192 * 1000.0 / (l * l), max_relative = THREE_DIGITS);
    assert_relative_eq!(peak, 1000.0 / (27f64.sqrt() * l * l), max_relative = 2e-6); // the disc is 2 × 10⁻⁶ of ℓ₀
}

#[test]
fn disc_on_springs_equals_its_transform() {
    for depth in [0.0095, 0.019, 0.038] {
        for radius in [0.003, 0.006, 0.0125, 0.02, 0.03] {
            let exact = by_transform(disc_waves(radius), |_| CORE / depth);
            let pressure = springs(depth).core_pressure(disc(radius)).value;
            assert_relative_eq!(pressure, exact, max_relative = BRUTE_FORCE);
        }
    }
}

#[test]
fn disc_on_deep_core_equals_its_transform() {
    for radius in [0.001, 0.003, 0.006, 0.0125, 0.02, 0.03] {
        let exact = by_transform(disc_waves(radius), |a| CORE * a / 2.0);
        assert_relative_eq!(deep().pressure_under_disc(disc(radius)).value, exact, max_relative = BRUTE_FORCE);
    }
}

#[test]
fn skin_moment_under_a_strip_equals_its_transform() {
    for width in [0.001, 0.006, 0.02, 0.05] {
        // *D*α² times the deflection of every wave
        let exact = by_transform(|a| strip_waves(width)(a) * RIGIDITY * a * a / (CORE / 0.019), |_| CORE / 0.019);
        assert_relative_eq!(strip(width).skin_moment(&springs(0.019)).value, exact, max_relative = 2.0 * BRUTE_FORCE);
    }
}

#[test]
fn deep_core_series_and_contour_meet() {
    // Either side of *a* = ℓ₀/100 and *s* = ℓ₀/500, where the evaluation changes; the pressure itself changes by 10⁻⁹
    // and less.
    let l = deep().spread_length().value;
    let (below, above) = (1.0 - 1e-9, 1.0 + 1e-9);
    let sigma = |k: f64| deep().pressure_under_disc(disc(0.01 * l * k)).value;
    assert_relative_eq!(sigma(below), sigma(above), max_relative = 1e-6);
    let sigma = |k: f64| deep().pressure_under_strip(strip(0.002 * l * k)).value;
    assert_relative_eq!(sigma(below), sigma(above), max_relative = 1e-5);
}

#[test]
fn strip_on_springs_and_on_deep_core_equals_its_transform() {
    for width in [0.001, 0.006, 0.02, 0.05] {
        let exact = by_transform(strip_waves(width), |_| CORE / 0.019);
        assert_relative_eq!(strip(width).core_pressure(&springs(0.019)).value, exact, max_relative = BRUTE_FORCE);
        let exact = by_transform(strip_waves(width), |a| CORE * a / 2.0);
        assert_relative_eq!(deep().pressure_under_strip(strip(width)).value, exact, max_relative = BRUTE_FORCE);
    }
}

#[test]
fn greater_of_springs_and_deep_core_is_near_a_core_of_finite_depth() {
    // An elastic layer without friction on a hard base: K = (E α/2)(sinh 2h + 2h)/(cosh 2h − 1), h = α c.
    for depth in [0.0095f64, 0.019, 0.038] {
        for radius in [0.003, 0.006, 0.009, 0.0125, 0.02] {
            let layer = by_transform(disc_waves(radius), |a| {
                let h = (a * depth).min(20.0);
                CORE * a / 2.0 * ((2.0 * h).sinh() + 2.0 * h) / ((2.0 * h).cosh() - 1.0)
            });
            let springs = springs(depth).core_pressure(disc(radius)).value;
            let deep = deep().pressure_under_disc(disc(radius)).value;
            let ratio = springs.max(deep) / layer;
            assert!((0.92..1.05).contains(&ratio), "depth {depth}, radius {radius}: {ratio}");
        }
    }
    // What the bed of springs alone would say of a washer of 12 mm on 19 mm of foam, in MPa per kN.
    let alone = springs(0.019).core_pressure(disc(0.006)).get::<megapascal>();
    let deep = deep().pressure_under_disc(disc(0.006)).get::<megapascal>();
    assert!(alone < 0.75 * deep, "{alone} {deep}");
}

#[test]
fn washer_pressure_limits_and_core_of_finite_depth() {
    // Washers of a through-bolt: both skins squeeze 19 mm of foam, each its half.
    let (both, deep) = (springs(0.0095), deep());
    for radius in [0.006, 0.009, 0.0125, 0.02] {
        let layer = by_transform(disc_waves(radius), |a| {
            let h = (a * 0.0095f64).min(20.0);
            CORE * a / 2.0 * ((2.0 * h).sinh() + 2.0 * h) / ((2.0 * h).cosh() - 1.0)
        });
        let pressure = washer_pressure(disc(radius), &both, &deep);
        assert!((0.92..1.05).contains(&(pressure.value / layer)), "{radius}");
        let force = force_at_crush(disc(radius).radius, &both, &deep, Pressure::new::<megapascal>(1.2));
        assert_relative_eq!(force.value * pressure.value, 1.2e6 * 1000.0, max_relative = 1e-12);
    }
    // A point on springs F/(8ℓ²), on a deep core F/(3√3 ℓ₀²), the greater; wide discs F/(πa²).
    let (l, l0) = (both.spread_length().value, deep.spread_length().value);
    let point = (1000.0 / (8.0 * l * l)).max(1000.0 / (27f64.sqrt() * l0 * l0));
    assert_relative_eq!(washer_pressure(disc(1e-8), &both, &deep).value, point, max_relative = 2e-5);
    // On a bed of 1 mm the springs are the greater.
    let thin = springs(0.001);
    let l = thin.spread_length().value;
    assert_relative_eq!(washer_pressure(disc(1e-8), &thin, &deep).value, 1000.0 / (8.0 * l * l), max_relative = 1e-7);
    assert_relative_eq!(washer_pressure(disc(1.0), &both, &deep).value, 1000.0 / PI, max_relative = 1e-5);
}

#[test]
fn bonded_core_modulus_allen_1969_b1() {
    // σ_w = B₁ E_f^(1/3) E_c^(2/3), B₁ = 3 [12 (3 − ν)² (1 + ν)²]^(−1/3): 0.630 at ν = 0 and 0.575 at 0.25 (from memory), for
    // a core under plane stress. On a core of modulus E the least stress of any wave is (3E)^(2/3) E_f^(1/3)/4.
    for (plane_stress, b1) in [(0.0f64, 0.630), (0.25, 0.575)] {
        let nu = plane_stress / (1.0 + plane_stress); // the same core under plane strain
        let e = bonded_core_modulus(Pressure::new::<pascal>(1.0 - nu * nu), Ratio::from(nu)).value;
        assert_relative_eq!((3.0 * e).powf(2.0 / 3.0) / 4.0, b1, max_relative = THREE_DIGITS);
        let formula = 3.0 / (12.0 * ((3.0 - plane_stress) * (1.0 + plane_stress)).powi(2)).cbrt();
        assert_relative_eq!((3.0 * e).powf(2.0 / 3.0) / 4.0, formula, max_relative = 1e-14);
    }
}

#[test]
fn spread_lengths_by_hand() {
    // (5251/(75/19))^(1/4) = 6.04 mm and (2 × 5251/75)^(1/3) = 5.19 mm
    assert_relative_eq!(springs(0.019).spread_length().get::<millimeter>(), 6.04, max_relative = 1e-3);
    assert_relative_eq!(deep().spread_length().get::<millimeter>(), 5.19, max_relative = 1e-3);
}

//! Budynas and Nisbett, *Shigley's Mechanical Engineering Design*, 9th ed.: example 8-3 (the page with the problem, its
//! part (a) and Tables 8-14 and 8-15 was read; the torques of (b) and (c) are from memory), the bolts of example 8-6
//! (quoted at second hand), root areas of Table 8-2 (from memory).

use approx::assert_relative_eq;
use skinspan::{
    fastening::{
        SHEAR_FACTOR_YIELD, ScrewThread, ThreadForm, bolt_load, nut_factor, round_area, separation_load,
        shear_capacity, tightening_torque,
    },
    units::{Area, Force, Length, Pressure, Ratio, parse},
};
use uom::si::length::meter;

/// Four digits printed.
const FOUR_DIGITS: f64 = 0.0006;
/// Three digits printed.
const THREE_DIGITS: f64 = 0.002;
/// Our nut factor leaves out the product of lead and friction and takes the flank angle once: 0.25 % here.
const LINEAR_IN_FRICTION: f64 = 0.003;

fn inches(x: f64) -> Length {
    parse::<Length>(&format!("{x} in")).expect("a length")
}

fn kip(x: f64) -> Force {
    parse::<Force>("1000 lbf").expect("a force") * x
}

fn ksi(x: f64) -> Pressure {
    parse::<Pressure>("1 ksi").expect("a stress") * x
}

fn unf_3_4() -> ScrewThread {
    ScrewThread { major: inches(0.75), pitch: inches(1.0 / 16.0), form: ThreadForm::Unified }
}

#[test]
fn example_8_3_stresses() {
    let area = unf_3_4().stress_area();
    assert_relative_eq!((kip(25.0) / area / ksi(1.0)).value, 67.02, max_relative = FOUR_DIGITS);
    let share = Ratio::from(6.5 / (6.5 + 13.8));
    assert_relative_eq!(share.value, 0.320, max_relative = THREE_DIGITS);
    let service = bolt_load(kip(25.0), kip(6.0), share);
    assert_relative_eq!((service / area / ksi(1.0)).value, 72.17, max_relative = FOUR_DIGITS);
}

#[test]
fn example_8_3_torques() {
    let thread = unf_3_4();
    let pound_inches = |factor: Ratio| {
        tightening_torque(factor, thread.major, kip(25.0)).value / (kip(0.001).value * inches(1.0).get::<meter>())
    };
    assert_relative_eq!(pound_inches(Ratio::from(0.2)), 3750.0, max_relative = 1e-12);
    // The collar's mean diameter is (1 + 1.5) d/2.
    let f = Ratio::from(0.15);
    let factor = nut_factor(&thread, f, f, 1.25 * thread.major);
    assert_relative_eq!(pound_inches(factor), 3551.0, max_relative = LINEAR_IN_FRICTION);
}

#[test]
fn nut_factor_is_the_power_screw_for_little_friction() {
    // (d₂/2)(tan λ + f)/(1 − f tan λ) with f = μ/cos 30°, plus the head: equal to first order in μ.
    let thread = unf_3_4();
    let (d, p, d2) = (thread.major.value, thread.pitch.value, thread.pitch_diameter().value);
    let error = |mu: f64| {
        let (lead, f) = (p / (std::f64::consts::PI * d2), mu / (std::f64::consts::PI / 6.0).cos());
        let exact = (d2 / 2.0 * (lead + f) / (1.0 - f * lead) + mu * 1.25 * d / 2.0) / d;
        (nut_factor(&thread, Ratio::from(mu), Ratio::from(mu), 1.25 * thread.major).value - exact).abs()
    };
    assert!(error(0.0) < 1e-15);
    // What is left out is d₂ f λ (λ + f)/2: of first order in μ with the small factor λ².
    let left_out = |mu: f64| {
        let (lead, f) = (p / (std::f64::consts::PI * d2), mu / (std::f64::consts::PI / 6.0).cos());
        d2 / d / 2.0 * f * lead * (lead + f)
    };
    for mu in [0.01, 0.1, 0.3] {
        assert_relative_eq!(error(mu), left_out(mu), max_relative = 0.02);
    }
}

#[test]
fn separation_is_where_the_bolt_carries_all() {
    let (preload, share) = (kip(25.0), Ratio::from(6.5 / 20.3));
    let parting = separation_load(preload, share).expect("the parts share the load");
    assert_relative_eq!(parting.value, (kip(25.0) * 20.3 / 13.8).value, max_relative = 1e-14);
    assert_relative_eq!(bolt_load(preload, parting, share).value, parting.value, max_relative = 1e-14);
    assert_relative_eq!(bolt_load(preload, 2.0 * parting, share).value, 2.0 * parting.value, max_relative = 1e-14);
    assert!(separation_load(preload, Ratio::from(1.0)).is_none());
    assert!(separation_load(preload, Ratio::from(f64::NAN)).is_none());
}

#[test]
fn example_8_6_shear_of_the_bolts() {
    // Four planes of 3/4-16 grade 5 bolts, S_p = 85 ksi, n = 1.5: 57.8 kip through the shanks, 45.9 kip through the threads
    // on their root area of 0.351 in².
    let capacity = |area: Area| 4.0 * shear_capacity(ksi(85.0), area, SHEAR_FACTOR_YIELD) / 1.5;
    let shank = round_area(inches(0.75));
    assert_relative_eq!((capacity(shank) / kip(1.0)).value, 57.8, max_relative = THREE_DIGITS);
    let root = round_area(unf_3_4().root_diameter());
    assert_relative_eq!((capacity(root) / kip(1.0)).value, 45.9, max_relative = THREE_DIGITS);
}

#[test]
fn table_8_2_root_areas() {
    for (d, n, area) in [(0.25, 20.0, 0.0269), (0.375, 16.0, 0.0678), (0.5, 13.0, 0.1257), (0.75, 16.0, 0.351)] {
        let thread = ScrewThread { major: inches(d), pitch: inches(1.0 / n), form: ThreadForm::Unified };
        let square_inches = (round_area(thread.root_diameter()) / (inches(1.0) * inches(1.0))).value;
        assert_relative_eq!(square_inches, area, max_relative = THREE_DIGITS);
    }
}

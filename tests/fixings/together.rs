//! The fastener and its hold under several things at once: pull with side force, tightening, landings that repeat.

use std::f64::consts::PI;

use super::{
    close,
    fastener::{
        BOARD, ESTIMATE, FITTING, GIVEN, M8, PULL, SIDE, TYPICAL, WET_BOARD, WET_LAMINATE, insert, never_worse, on,
        potted, rivet, screw, skin, stud, tapped, through,
    },
    finding, open, outcomes, patch, read, term, used,
};
use skinspan::{laminate::Component, top::Top};

#[test]
fn pull_and_side_force_add_up_in_the_backing() {
    let top = on(BOARD, &tapped("20 mm"));
    let depth = 20.0 - skin(&top);
    let shape = 0.5 + (8.0 - 6.646_83) / (2.0 * 3f64.sqrt() * 1.25);
    let pull = 3.5 * ESTIMATE * WET_BOARD * PI * 8.0 * (depth - 2.5) * shape;
    // As a dowel: turned stiff, or bent in the board; root 8 − 1.226 87 × 1.25 = 6.466 42 mm, yield 450 MPa.
    let bearing = 6.5 * ESTIMATE * WET_BOARD * 8.0;
    let turned = (2f64.sqrt() - 1.0) * bearing * (depth - 1.25);
    let bent = 2f64.sqrt() * (450.0 * 6.466_42_f64.powi(3) / 6.0 * bearing).sqrt();
    let side = turned.min(bent);
    close(used(&top, "hold-combined", GIVEN), (PULL / pull + SIDE / side) * 4.0 * FITTING);
    never_worse("hold-combined", GIVEN, &["15 mm", "20 mm", "26 mm"].map(|depth| on(BOARD, &tapped(depth))));

    let top = on(BOARD, &insert());
    let pull = 0.5 * PI * 12.0 * skin(&top) * 60.0 * ESTIMATE * WET_LAMINATE;
    close(used(&top, "hold-combined", GIVEN), (PULL / pull * 4.0 + SIDE / 3000.0 * 2.0) * FITTING);
}

#[test]
fn pull_and_side_force_add_up_in_potting_and_in_the_panel() {
    let both = |top: &Top, pull: &str, side: &str| used(top, pull, GIVEN) + used(top, side, GIVEN);
    let top = on("", &potted("20 mm", "potting-epoxy"));
    let (potting, panel) = (both(&top, "potted-bond", "potted-side"), both(&top, "potted-insert", "plug-side"));
    assert!(panel > 1.2 * potting, "{potting} {panel}");
    close(used(&top, "hold-combined", GIVEN), panel);
    // Board holds the plug better than potting holds the insert.
    let top = on("laminate", &potted("28 mm", "potting-epoxy"));
    let (potting, panel) = (both(&top, "potted-bond", "potted-side"), both(&top, "potted-insert", "plug-side"));
    assert!(potting > 1.2 * panel, "{potting} {panel}");
    close(used(&top, "hold-combined", GIVEN), potting);
    assert!(open(&on("", &potted("25 mm", "putty-glass-bubble")), "hold-combined").contains("shear_strength"));
}

#[test]
fn tightening_names_what_gives_way() {
    // The least nut factor 0.12 makes 3 N·m into 3000/(0.12 × 8) = 3125 N on M8 and 4166.7 N on M6.
    let torque = "torque = \"3 N m\"\n";
    let limit = |top: &Top, symbol: &str, bearable: f64, acting: f64| {
        let finding = finding(top, "tightening", None);
        close(term(&finding, symbol), bearable);
        close(finding.utilisation.value, acting / bearable * 1.5);
    };
    let top = on(BOARD, &(tapped("20 mm") + torque));
    let shape = 0.5 + (8.0 - 6.646_83) / (2.0 * 3f64.sqrt() * 1.25);
    let strips = 3.5 * ESTIMATE * WET_BOARD * PI * 8.0 * (20.0 - skin(&top) - 2.5) * shape;
    limit(&top, "F_t", strips, 3125.0);
    limit(&on("aluminium-plate", &(tapped("20 mm") + torque)), "F_b", 450.0 * M8, 3125.0);
    // 6061-T6 yields at 240 MPa.
    let tube = "sleeve = { outside = \"11 mm\", wall = \"1.2 mm\", alloy = \"6061-t6\" }\n";
    let yields = 240.0 * PI / 4.0 * (11.0 * 11.0 - 8.6 * 8.6);
    limit(&on("", &through(&format!("{tube}{torque}"))), "F_s", yields, 3125.0);
    limit(&on(BOARD, &(insert() + torque)), "M_i", 4.5, 3.0);
    limit(&on(BOARD, &(insert() + "torque = \"1 N m\"\n")), "M_i", 4.5, 1.0);
    let bond = 14.0 * ESTIMATE * PI * 14.3 * 19.1;
    limit(&on("", &(potted("25 mm", "potting-epoxy") + torque)), "F_i", bond, 3000.0 / (0.12 * 6.0));
    let shallow = on("", &(potted("8 mm", "potting-epoxy") + torque));
    let turns = 2.0 * PI * 8.5 * 8.5 * (8.0 - skin(&shallow)) * 1.15 * TYPICAL * WET_BOARD / 1e3;
    limit(&shallow, "M_i", turns, 3.0);
    limit(&on("", &(stud("epoxy-paste") + torque)), "F_b", 450.0 * 20.123, 3000.0 / (0.12 * 6.0));
    let weak = stud("polyester-putty").replace("m6-stud", "m8-stud").replace("lubricated-stainless", "dry-stainless");
    let twisted = on("", &(weak + "torque = \"30 N m\"\n"));
    limit(&twisted, "M_i", PI / 16.0 * 38f64.powi(3) * 4.0 * ESTIMATE / 1e3, 30.0);
    assert!(outcomes(&on(BOARD, &tapped("20 mm")), "tightening", None).is_empty(), "no torque was given");
}

/// Integral of a function from 0 to `end`, by its middles.
fn integral(end: f64, value: impl Fn(f64) -> f64) -> f64 {
    const STEPS: u32 = 40_000;
    let step = end / f64::from(STEPS);
    (0..STEPS).map(|i| value((f64::from(i) + 0.5) * step) * step).sum()
}

/// Peak under a washer on wet foam of 90 MPa when dry, 25 mm thick, over its mean pressure: as springs, and as a deep body.
fn pressure_over_mean(top: &Top, radius: f64) -> f64 {
    let skin = top.inner.laminate().stiffness().bending_free(Component::X, Component::X).value * 1e3;
    // ker′(x) = −Re e^(iπ/4) K₁(x e^(iπ/4)), K₁ by its integral.
    let x = radius / (skin / (2.0 * 90.0 * WET_BOARD / 25.0)).powf(0.25);
    let u = x / 2f64.sqrt();
    let wave = |t: f64| (-u * t.cosh()).exp() * ((u * t.cosh()).cos() + (u * t.cosh()).sin()) * t.cosh();
    let springs = 1.0 - x * integral(12.0, wave) / 2f64.sqrt();
    // A bonded deep body meets the skin with 4 (1 − ν) E/((1 + ν)(3 − 4 ν)), ν = 0.32; J₁ by its integral.
    let modulus = 4.0 * 0.68 * 90.0 * WET_BOARD / (1.32 * 1.72);
    let y = radius / (2.0 * skin / modulus).cbrt();
    let j1 = |z: f64| {
        (0..200).map(|i| (f64::from(i) + 0.5) * PI / 200.0).map(|t| (t - z * t.sin()).cos() / 200.0).sum::<f64>()
    };
    let deep = y * integral(40.0, |s| j1(y * s) / (1.0 + s.powi(3)));
    springs.max(deep)
}

#[test]
fn a_washer_on_foam_bears_a_finger_s_torque() {
    let washer =
        |outside: &str| format!("washer = {{ outside = \"{outside}\", thickness = \"2 mm\" }}\ntorque = \"1 N m\"\n");
    let sizes = ["16 mm", "24 mm", "40 mm"];
    let tops = sizes.map(|outside| on("", &through(&washer(outside))));
    never_worse("tightening", None, &tops);
    let crush = term(&finding(&tops[1], "tightening", None), "F_w");
    // 2 mm of washer press up to 3 × 2 mm beyond the 11.6 mm of the nut.
    close(crush, 1.4 * TYPICAL * WET_BOARD * PI * 11.8 * 11.8 / pressure_over_mean(&tops[1], 11.8));
    close(used(&tops[1], "tightening", None), 1000.0 / (0.12 * 8.0) / crush * 1.5);
}

#[test]
fn landings_tire_the_bolt_and_its_hold() {
    let landing = |board: &str, fixing: &str| {
        read(&patch(board, fixing).replace("slam = \"none\"", "slam = \"3 g\"").replace("\"1 kg\"", "\"40 kg\""))
    };
    let rebound = Some("rebound");
    let bolt = landing("", &through(""));
    let tension = finding(&bolt, "fastener-tension", rebound);
    let pull = term(&tension, "T") * 1.3;
    assert!(pull > 100.0, "{pull}");
    // 50 MPa at two million, a million at slope 3; peaks 0.33 of that of the design.
    close(used(&bolt, "fixing-fatigue", rebound), 0.33 * pull / M8 / (50.0 * 2f64.cbrt()) * 1.5 * FITTING);

    let top = landing(BOARD, &tapped("20 mm"));
    let strip = finding(&top, "thread-strip", rebound);
    let once = strip.utilisation.value / (4.0 * FITTING);
    close(used(&top, "fixing-fatigue", rebound), 0.81 * once / 0.3 * 1.5 * FITTING);
    // Laminate loses a tenth with each tenfold: 0.4 is left of a million.
    let top = landing("laminate", &screw("12 mm"));
    let once = used(&top, "screw-withdrawal", rebound) / (4.0 * FITTING);
    close(used(&top, "fixing-fatigue", rebound), 0.81 * once / 0.4 * 1.5 * FITTING);
    assert!(outcomes(&on(BOARD, &tapped("20 mm")), "fixing-fatigue", GIVEN).is_empty(), "no landing, no fatigue");
    never_worse("fixing-fatigue", rebound, &["15 mm", "20 mm", "26 mm"].map(|depth| landing(BOARD, &tapped(depth))));
    let soft = landing(BOARD, &through("").replace("a4-70", "aluminium-2024-t4"));
    assert!(open(&soft, "fixing-fatigue").contains("stainless"));
}

/// A boat that never lands rolls all the same.
#[test]
fn rolls_tire_the_bolt_and_its_hold() {
    let rolling = |board: &str, fixing: &str, limber: &str| {
        let text = patch(board, fixing).replace("\"1 kg\"", "\"10 kg\"");
        read(&text.replace("cg_height = \"0 mm\"", &format!("cg_height = \"800 mm\"\nlimber = {limber}")))
    };
    let case = Some("rolling");
    let bolt = rolling("", &through(""), "false");
    let pull = term(&finding(&bolt, "fastener-tension", case), "T") * 1.3;
    assert!(pull > 100.0, "{pull}");
    close(used(&bolt, "fixing-fatigue", case), 0.47 * pull / M8 / (50.0 * 2f64.cbrt()) * 1.5 * FITTING);
    let top = rolling(BOARD, &tapped("20 mm"), "false");
    let once = used(&top, "thread-strip", case) / (4.0 * FITTING);
    close(used(&top, "fixing-fatigue", case), 0.69 * once / 0.3 * 1.5 * FITTING);
    // Fewer rolls tire it less, and a whip that swings along tires it more.
    let fewer = "[criteria]\nfatigue-cycles-rolling = 1000\n[[fixing]]";
    let text = patch("", &through("")).replace("\"1 kg\"", "\"10 kg\"");
    let text = text.replace("cg_height = \"0 mm\"", "cg_height = \"800 mm\"").replace("[[fixing]]", fewer);
    close(used(&read(&text), "fixing-fatigue", case) * 10.0, used(&bolt, "fixing-fatigue", case));
    assert!(
        used(&rolling("", &through(""), "true"), "fixing-fatigue", case) > 1.5 * used(&bolt, "fixing-fatigue", case)
    );
}

#[test]
fn shares_of_landings_are_what_they_claim_to_be() {
    let criteria = on(BOARD, &rivet()).criteria;
    let mean = 1.0 / (1.0 + 100f64.ln());
    let share = |slope: u32| mean * (1..=slope).map(f64::from).product::<f64>().powf(1.0 / f64::from(slope));
    let (steel, hold) = (criteria.cyclic_share_steel.value.value, criteria.cyclic_share_hold.value.value);
    assert!((share(3)..share(3) + 0.01).contains(&steel) && (share(10)..share(10) + 0.01).contains(&hold));
    // Rolls: heights by Rayleigh, their moments by integration; the highest hundredth begins at √(2 ln 100).
    let density = |a: f64| a * (-a * a / 2.0).exp();
    let highest = 100.0 * (integral(20.0, |a| a * density(a)) - integral(9.210_34_f64.sqrt(), |a| a * density(a)));
    let share = |slope: i32| integral(20.0, |a| a.powi(slope) * density(a)).powf(1.0 / f64::from(slope)) / highest;
    let (steel, hold) =
        (criteria.cyclic_share_rolling_steel.value.value, criteria.cyclic_share_rolling_hold.value.value);
    assert!((share(3)..share(3) + 0.01).contains(&steel) && (share(10)..share(10) + 0.01).contains(&hold));
}

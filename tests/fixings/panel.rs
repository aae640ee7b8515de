//! What skins, core, backing and bonds bear.

use std::f64::consts::{PI, SQRT_2};

use super::{close, finding, open, outcomes, patch, read, term, used};
use skinspan::{
    analysis::{Analysis, DIVISIONS, MountOn},
    check::{CHECKS, Finding, Part, mounts_too_near, run, worst_by_mount},
    input::read_tables,
    report::{Report, to_text},
    top::Top,
};

const GIVEN: Option<&str> = Some("given-1");
/// What lifts the footing: 500 N − 0.6 × 1 kg × 9.80665 m/s²; the pull of its only fixing with prying.
const LIFT: f64 = 494.116_01;
const PULL: f64 = 1.3 * LIFT;
/// Side force of a fixing: sixteen sides on a polygon about their circle, 200 N/cos(11.25°).
const SIDE: f64 = 203.918;
const FITTING: f64 = 1.15;
/// What is left of a strength: estimate, typical value; soaked foam and board; soaked laminate.
const ESTIMATE: f64 = 0.75;
const TYPICAL: f64 = 0.9;
const WET_BOARD: f64 = 0.91;
const WET_LAMINATE: f64 = 0.83;
/// Mat with 30 % of glass, MPa: modulus, tension, compression, shear; all of them minima.
const MAT: [f64; 4] = [6400.0, 85.0, 117.0, 62.0];
const NU: f64 = 0.3;
/// Board and foam of 80 kg/m³, MPa.
const BOARD: &str = "pu-board-glass-320";
const CORE_SHEAR: f64 = 1.15 * TYPICAL * WET_BOARD;

fn bolt(hold: &str) -> String {
    format!("hold = \"{hold}\"\nthread = \"m8\"\ngrade = \"a4-70\"\nlubrication = \"lubricated-stainless\"\n")
}

fn through(more: &str) -> String {
    bolt("through-bolt") + more
}

fn tapped() -> String {
    bolt("tapped-screw") + "depth = \"20 mm\"\n"
}

fn rivet() -> String {
    "hold = \"blind-rivet\"\nrivet = \"rivet-al-4-8\"\n".to_owned()
}

fn on(board: &str, fixing: &str) -> Top {
    read(&patch(board, fixing))
}

/// The patch with one thing written otherwise.
fn with(board: &str, fixing: &str, changes: &[(&str, &str)]) -> Top {
    let text = changes.iter().fold(patch(board, fixing), |text, (from, to)| {
        assert!(text.contains(from), "{from}");
        text.replace(from, to)
    });
    read(&text)
}

/// Thickness of a skin, mm.
fn skin(top: &Top) -> f64 {
    top.outer.laminate().thickness().value * 1e3
}

fn never_worse(id: &str, case: Option<&str>, tops: &[Top]) {
    let all: Vec<f64> = tops.iter().map(|top| used(top, id, case)).collect();
    assert!(all.windows(2).all(|pair| pair[1] <= pair[0]) && all[0] > all[all.len() - 1], "{id}: {all:?}");
}

fn simpson(from: f64, to: f64, pieces: u32, f: impl Fn(f64) -> f64) -> f64 {
    let h = (to - from) / f64::from(2 * pieces);
    let at = |i: u32| f(from + h * f64::from(i));
    let inner: f64 = (1..2 * pieces).map(|i| if i % 2 == 1 { 4.0 * at(i) } else { 2.0 * at(i) }).sum();
    (at(0) + inner + at(2 * pieces)) * h / 3.0
}

/// Bessel's integral.
fn bessel_j1(x: f64) -> f64 {
    simpson(0.0, PI, 60, |t| (t - x * t.sin()).cos()) / PI
}

/// Pressure right below the middle of an even disc on a plate, over that of the disc, by Hankel's transform; `n` is 4 on
/// springs and 3 on an elastic body.
fn below_disc(radius: f64, n: i32) -> f64 {
    radius * simpson(0.0, 40.0, 4000, |s| bessel_j1(radius * s) / (1.0 + s.powi(n)))
}

/// How many times a stress of mat (along, across, shear) may act, by Tsai and Wu.
fn tsai_wu([s1, s2, s12]: [f64; 3]) -> f64 {
    let [_, t, c, s] = MAT;
    let (f1, f11, f66) = (1.0 / t - 1.0 / c, 1.0 / (t * c), 1.0 / (s * s));
    let a = f11 * (s1 * s1 + s2 * s2 - s1 * s2) + f66 * s12 * s12;
    let b = f1 * (s1 + s2);
    ((b * b + 4.0 * a).sqrt() - b) / (2.0 * a)
}

#[test]
fn a_washer_goes_through_the_far_skin() {
    let top = on(BOARD, &through(""));
    // Large washer of 24 × 2 mm; it reaches 3 × 2 mm beyond the face of 11.6 mm of the nut. Punching shear 60 MPa.
    let bearable = PI * 23.6 * skin(&top) * 60.0 * ESTIMATE * WET_LAMINATE;
    close(used(&top, "pull-through", GIVEN), PULL / bearable * 3.0 * FITTING);
    let small = "washer = { outside = \"16 mm\", thickness = \"2 mm\" }\n";
    let thin = "washer = { outside = \"24 mm\", thickness = \"1 mm\" }\n";
    never_worse("pull-through", GIVEN, &[small, thin, ""].map(|washer| on(BOARD, &through(washer))));
    let thick = with(BOARD, &through(""), &[("inner = [\"2 x", "inner = [\"3 x")]);
    assert!(used(&thick, "pull-through", GIVEN) < used(&top, "pull-through", GIVEN));
}

#[test]
fn a_rivet_is_pulled_through_by_its_tail_and_a_screw_is_not() {
    let top = on("", &rivet());
    let bearable = PI * 1.3 * 4.8 * skin(&top) * 60.0 * ESTIMATE * WET_LAMINATE;
    close(used(&top, "pull-through", GIVEN), PULL / bearable * 3.0 * FITTING);
    assert!(outcomes(&on(BOARD, &tapped()), "pull-through", GIVEN).is_empty());
}

#[test]
fn foam_is_crushed_under_a_washer() {
    let top = on("", &through(""));
    let (t, modulus) = (skin(&top), 90.0 * WET_BOARD);
    let rigidity = MAT[0] * t.powi(3) / 12.0 / (1.0 - NU * NU);
    let (b, nu) = (11.8, 0.32);
    let springs = (rigidity / (2.0 * modulus / 25.0)).powf(0.25);
    let bonded = 4.0 * (1.0 - nu) / ((1.0 + nu) * (3.0 - 4.0 * nu)) * modulus;
    let deep = (2.0 * rigidity / bonded).cbrt();
    let pressure = PULL / (PI * b * b) * below_disc(b / springs, 4).max(below_disc(b / deep, 3));
    close(used(&top, "washer-crush", GIVEN), pressure / (1.4 * TYPICAL * WET_BOARD) * 2.3 * FITTING);
    let washer = |outside: &str| format!("washer = {{ outside = \"{outside}\", thickness = \"4 mm\" }}\n");
    never_worse("washer-crush", GIVEN, &["16 mm", "24 mm", "30 mm"].map(|wide| on("", &through(&washer(wide)))));
    assert!(used(&on(BOARD, &through("")), "washer-crush", GIVEN) < used(&top, "washer-crush", GIVEN));
    let tube = "sleeve = { outside = \"11 mm\", wall = \"1.2 mm\", alloy = \"6061-t6\" }\n";
    // A sleeve takes what the nut is tightened by, not what the gear pulls by.
    close(used(&on("", &through(tube)), "washer-crush", GIVEN), used(&top, "washer-crush", GIVEN));
}

#[test]
fn a_footing_presses_on_its_bed() {
    let pressed = [("up = \"500 N\"", "up = \"-500 N\"")];
    let top = with(BOARD, &tapped(), &pressed);
    // Straight down on a disc of 100 mm, with the weight of 1 kg; compressive strength 6.5 MPa.
    let pressure = (500.0 + 9.806_65) / (PI / 4.0 * 100.0 * 100.0);
    close(used(&top, "footing-pressure", GIVEN), pressure / (6.5 * ESTIMATE * WET_BOARD) * 2.3 * FITTING);
    let soft = with("", &through(""), &pressed);
    close(used(&soft, "footing-pressure", GIVEN), pressure / (1.4 * TYPICAL * WET_BOARD) * 2.3 * FITTING);
    let wide = |d: &str| with(BOARD, &tapped(), &[pressed[0], ("footing = { diameter = \"100 mm\" }", d)]);
    let sizes = ["80 mm", "100 mm", "120 mm"].map(|d| wide(&format!("footing = {{ diameter = \"{d}\" }}")));
    never_worse("footing-pressure", GIVEN, &sizes);
    // A force at a height leans it over.
    let leaning = with(BOARD, &tapped(), &[pressed[0], ("height = \"0 mm\"", "height = \"30 mm\"")]);
    assert!(used(&leaning, "footing-pressure", GIVEN) > used(&top, "footing-pressure", GIVEN));
}

#[test]
fn a_shank_bears_in_the_near_skin() {
    let bears = |top: &Top, d: f64| {
        let left = if d / skin(top) > 4.0 { 0.6 } else { 1.0 };
        let bearable = left * 140.0 * ESTIMATE * WET_LAMINATE * d * skin(top);
        close(used(top, "skin-bearing", GIVEN), SIDE / bearable * 3.0 * FITTING);
        left
    };
    let thin = with(BOARD, &through(""), &[("outer = [\"2 x", "outer = [\"1 x")]);
    let thick = with(BOARD, &through(""), &[("outer = [\"2 x", "outer = [\"4 x")]);
    assert!(bears(&thin, 8.0) < 1.0 && bears(&thick, 8.0) > 0.9);
    let tube = "sleeve = { outside = \"11 mm\", wall = \"1.2 mm\", alloy = \"6061-t6\" }\n";
    bears(&on(BOARD, &through(tube)), 11.0);
    bears(&on("", &rivet()), 5.0);
    // The inner skin is the far one.
    let lined = with(BOARD, &through(""), &[("inner = [\"2 x", "inner = [\"4 x")]);
    close(used(&lined, "skin-bearing", GIVEN), used(&on(BOARD, &through("")), "skin-bearing", GIVEN));
    let stud = "hold = \"bonded-stud\"\nstud = \"m6-stud\"\nadhesive = \"epoxy-paste\"\ngrade = \"a4-70\"\n\
                lubrication = \"lubricated-stainless\"\n";
    assert!(outcomes(&on("", stud), "skin-bearing", GIVEN).is_empty());
}

#[test]
fn a_fixing_near_the_rim_shears_out_and_stands_too_near() {
    let at =
        |x: &str| with("", &through(""), &[("at = [\"0.5 m\", \"0.5 m\"]", &format!("at = [\"{x}\", \"0.5 m\"]"))]);
    let near = at("60 mm");
    // Clearance hole of 9 mm.
    let bearable = 2.0 * (60.0 - 4.5) * skin(&near) * MAT[3] * WET_LAMINATE;
    close(used(&near, "skin-shear-out", GIVEN), SIDE / bearable * 3.0 * FITTING);
    close(used(&near, "fixing-near-rim", None), 4.0 * 8.0 / 60.0);
    for (id, case) in [("skin-shear-out", GIVEN), ("fixing-near-rim", None)] {
        never_worse(id, case, &["40 mm", "60 mm", "0.5 m"].map(at));
    }
    let wide = "washer = { outside = \"80 mm\", thickness = \"12 mm\" }\n";
    close(
        used(&with("", &through(wide), &[("at = [\"0.5 m\"", "at = [\"60 mm\"")]), "fixing-near-rim", None),
        40.0 / 60.0,
    );
}

#[test]
fn a_row_tears_the_skin_and_stands_too_close() {
    let apart = |half: &str| {
        let pair = format!("points = [[\"-{half}\", \"0 mm\"], [\"{half}\", \"0 mm\"]]");
        with(BOARD, &through(""), &[("points = [[\"0 mm\", \"0 mm\"]]", &pair)])
    };
    let top = apart("30 mm");
    // Torn at 45 degrees the mat has half of the stress along, across and in shear; at 0 its tensile strength.
    let strength = tsai_wu([0.5, 0.5, 0.5]).min(MAT[1]);
    let bearable = (60.0 - 9.0) * skin(&top) * strength * WET_LAMINATE / 2.0;
    close(used(&top, "skin-net-section", GIVEN), SIDE / 2.0 / bearable * 3.0 * FITTING);
    close(used(&top, "fixing-spacing", None), 5.0 * 8.0 / 60.0);
    for (id, case) in [("skin-net-section", GIVEN), ("fixing-spacing", None)] {
        never_worse(id, case, &["15 mm", "30 mm", "40 mm"].map(apart));
    }
    // Alone it has the rim on both sides.
    let alone = on(BOARD, &through(""));
    let bearable = (1000.0 - 9.0) * skin(&alone) * strength * WET_LAMINATE / 2.0;
    close(used(&alone, "skin-net-section", GIVEN), SIDE / bearable * 3.0 * FITTING);
    assert!(outcomes(&alone, "fixing-spacing", None).is_empty());
}

/// 9 mm holes 5 mm apart: at the middle between them there is none to be torn, and without a side force 0/0 is no pass and
/// no blank.
#[test]
fn holes_that_run_into_each_other_leave_no_skin() {
    let two = "[[\"-2.5 mm\", \"0 mm\"], [\"2.5 mm\", \"0 mm\"]]";
    let top = with(BOARD, &through(""), &[("[[\"0 mm\", \"0 mm\"]]", two), ("side = \"200 N\"", "side = \"0 N\"")]);
    let used = used(&top, "skin-net-section", GIVEN);
    assert!(used.is_infinite(), "{used}");
}

#[test]
fn a_hole_keeps_clear_of_a_conduit() {
    let beside = |y: &str| {
        let conduit = format!(
            "[[conduit]]\nname = \"way\"\ndiameter = \"12 mm\"\nalong = [[\"0.1 m\", \"{y}\"], [\"0.9 m\", \"{y}\"]]\n[[fixing]]"
        );
        with("", &through(""), &[("[[fixing]]", &conduit)])
    };
    close(used(&beside("530 mm"), "fixing-near-conduit", None), (6.0 + 4.5 + 9.0) / 30.0);
    never_worse("fixing-near-conduit", None, &["510 mm", "530 mm", "0.7 m"].map(beside));
    assert!(outcomes(&on("", &through("")), "fixing-near-conduit", None).is_empty());
}

#[test]
fn holes_of_two_mounts_keep_apart() {
    let beside = |x: &str| {
        let horn = format!(
            "[[gear]]\nname = \"horn\"\nmass = \"1 kg\"\ncg_height = \"0 mm\"\nat = [\"{x}\", \"0.5 m\"]\n\
             footing = {{ diameter = \"40 mm\" }}\nwind_area = \"0.01 m2\"\ndrag = 1.0\n\
             fixings = {{ fixing = \"bolt\", points = [[\"0 mm\", \"0 mm\"]], clamped = \"6 mm\" }}\n[service]"
        );
        with("", &through(""), &[("[service]", &horn)])
    };
    // 2.5 (8 + 8) mm, which is more than the washers of 24 mm.
    close(used(&beside("560 mm"), "fixing-near-other", None), 40.0 / 60.0);
    never_worse("fixing-near-other", None, &["510 mm", "530 mm", "560 mm", "600 mm"].map(beside));
    assert!(used(&beside("500 mm"), "fixing-near-other", None) > 1e3);
    // So far off it is no neighbour, and its own are those of another check.
    assert!(outcomes(&beside("700 mm"), "fixing-near-other", None).is_empty());
    assert!(outcomes(&on("", &through("")), "fixing-near-other", None).is_empty());
    let top = beside("560 mm");
    let outcomes = run(&Analysis::new(&top, DIVISIONS).expect("a patch"));
    let place = outcomes.iter().find(|outcome| CHECKS[outcome.check].id() == "fixing-near-other");
    let Some(Part::Fixings(both)) = place.map(|outcome| outcome.place.part) else { panic!("{place:?}") };
    assert_eq!(both.map(|(on, number)| (on, number)), [(MountOn::Gear(0), 0), (MountOn::Gear(1), 0)]);
    // Those that stand too near, and how far apart they have to: what is advised.
    assert_eq!(mounts_too_near(&top), []);
    let near = mounts_too_near(&beside("525 mm"));
    let [pair] = near[..] else { panic!("{near:?}") };
    assert_eq!(pair.fixings, [(MountOn::Gear(0), 0), (MountOn::Gear(1), 0)]);
    close(pair.apart.value, 0.025);
    close(pair.needed.value, 0.040);
    let table = read_tables(&[]).expect("the built-in table");
    let top = beside("525 mm");
    let said = to_text(&Report::by_hand(&top, &table), false, 120);
    let said = said.split_whitespace().collect::<Vec<_>>().join(" ");
    let words = "Move one of them: fixing 1 of gear and fixing 1 of horn stand 0.984 in apart and need 1.575 in, so 0.591 in farther";
    assert!(said.contains(words), "{said}");
    assert!(!to_text(&Report::by_hand(&beside("560 mm"), &table), false, 120).contains("Move one of them"));
}

#[test]
fn a_screw_turns_over_in_its_backing() {
    let top = on(BOARD, &tapped());
    // Its last pitch of 1.25 mm is no thread. The root of M8 is 8 − 17/12 × 1.25 × sin 60° = 6.466 mm.
    let (d, t) = (8.0, 20.0 - skin(&top) - 1.25);
    let (f, root) = (6.5 * ESTIMATE * WET_BOARD, 8.0 - 17.0 / 12.0 * 1.25 * (PI / 3.0).sin());
    let plastic = 450.0 * root.powi(3) / 6.0;
    let free = ((SQRT_2 - 1.0) * f * t * d).min((2.0 * plastic * f * d).sqrt());
    close(used(&top, "backing-bearing", GIVEN), SIDE / free * 4.0 * FITTING);
    let held = (f * t * d)
        .min(f * t * d * ((2.0 + 4.0 * plastic / (f * d * t * t)).sqrt() - 1.0))
        .min(2.0 * (plastic * f * d).sqrt());
    let stiff = |clamped: &str| with(BOARD, &tapped(), &[("clamped = \"6 mm\"", clamped)]);
    close(used(&stiff("clamped = \"8 mm\", stiff = true"), "backing-bearing", GIVEN), SIDE / held * 4.0 * FITTING);
    // Three quarters of the diameter: half way between.
    let between = f64::midpoint(free, held);
    close(used(&stiff("clamped = \"6 mm\", stiff = true"), "backing-bearing", GIVEN), SIDE / between * 4.0 * FITTING);
    let deep = |depth: &str| on(BOARD, &tapped().replace("20 mm", depth));
    // In solid laminate, 140 MPa in bearing, it bends instead.
    let hard = on("laminate", &tapped().replace("20 mm", "26 mm"));
    let f = 140.0 * ESTIMATE * WET_LAMINATE;
    let bent = (2.0 * plastic * f * d).sqrt();
    assert!(bent < (SQRT_2 - 1.0) * f * (26.0 - skin(&hard) - 1.25) * d);
    close(used(&hard, "backing-bearing", GIVEN), SIDE / bent * 4.0 * FITTING);
    never_worse("backing-bearing", GIVEN, &["15 mm", "20 mm", "26 mm"].map(deep));
    assert!(open(&on("", &tapped()), "backing-bearing").contains("lay backing under it"));
}

#[test]
fn backing_hangs_on_the_far_skin() {
    let top = on(BOARD, &tapped());
    // 100 mm of footing and 25 mm of board on both sides; flatwise tension 3.0 MPa, half of the pull.
    let (side, strength) = (150.0, 3.0 * ESTIMATE * WET_BOARD);
    let even = 0.5 * LIFT / (side * side);
    close(used(&top, "backing-bond", GIVEN), even / strength * 6.5 * FITTING);
    let leaning = with(BOARD, &tapped(), &[("height = \"0 mm\"", "height = \"0.2 m\"")]);
    let tilting = 0.5 * 6.0 * 200.0 * 200.0 / (side * side * side);
    close(used(&leaning, "backing-bond", GIVEN), (even + tilting) / strength * 6.5 * FITTING);
    let wide = |width: &str| with(BOARD, &tapped(), &[("width = \"0.4 m\"", &format!("width = \"{width}\""))]);
    for id in ["backing-bond", "backing-slip", "backing-core-shear", "skin-beside-backing"] {
        let tops = ["60 mm", "0.1 m", "0.13 m"].map(|width| {
            with(
                BOARD,
                &tapped(),
                &[("width = \"0.4 m\"", &format!("width = \"{width}\"")), ("height = \"0 mm\"", "height = \"0.2 m\"")],
            )
        });
        let all: Vec<f64> = tops.iter().map(|top| used(top, id, GIVEN)).collect();
        assert!(all.windows(2).all(|pair| pair[1] <= pair[0] * (1.0 + 1e-12)), "{id}: {all:?}");
    }
    close(used(&wide("0.1 m"), "backing-bond", GIVEN), 0.5 * LIFT / (150.0 * 100.0) / strength * 6.5 * FITTING);
    for id in ["backing-bond", "backing-slip"] {
        assert!(open(&on("hdpe", &tapped()), id).contains("bolt through both skins"), "{id}");
        assert!(outcomes(&on(BOARD, &through("")), id, GIVEN).is_empty(), "{id}");
    }
}

#[test]
fn backing_slips_by_shear_lag_and_by_twist() {
    // One fixing cannot hold a twist.
    let pair = ("points = [[\"0 mm\", \"0 mm\"]]", "points = [[\"-30 mm\", \"0 mm\"], [\"30 mm\", \"0 mm\"]]");
    let top = with(BOARD, &tapped(), &[("side = \"200 N\"", "side = \"200 N\"\ntwist = \"10 N m\""), pair]);
    let skin_stiffness = MAT[0] * skin(&top) / (1.0 - NU * NU);
    let board = 500.0 * 25.0;
    let lag = (25.0 / 3.0 / (96.0 * (1.0 / skin_stiffness + 1.0 / board))).sqrt();
    let a = (1.0 / skin_stiffness).max(1.0 / board) / (1.0 / skin_stiffness + 1.0 / board);
    let x: f64 = 75.0 / lag;
    let counts = lag * x.tanh() / (a + (1.0 - a) / x.cosh());
    let pushed = 200.0 / (2.0 * 150.0 * counts);
    let twisted = 6.0 * 10_000.0 / (150.0 * 150.0 * 150.0 * SQRT_2);
    let strength = 3.0 * ESTIMATE * WET_BOARD;
    close(used(&top, "backing-slip", GIVEN), (pushed + twisted) / strength * 6.5 * FITTING);
    close(used(&on(BOARD, &tapped()), "backing-slip", GIVEN), pushed / strength * 6.5 * FITTING);
}

/// All that enters stands in the working, to the last number.
fn slip_by_its_terms(found: &Finding) -> f64 {
    let of = |symbol| term(found, symbol);
    let give = 1.0 / of("A_1") + 1.0 / of("A_2");
    let lag = (of("c") / (3.0 * of("G") * give)).sqrt();
    let less = of("A_1").min(of("A_2"));
    let a = 1.0 / (1.0 + less / of("A_1").max(of("A_2")));
    let counts = |length: f64| {
        let x = length / lag;
        lag * x.tanh() / (a + (1.0 - a) / x.cosh())
    };
    let (w, l) = (of("w"), of("L"));
    let [along, across] = [w * counts(l / 2.0), l * counts(w / 2.0)];
    assert!((of("b") * of("L_e") / along.min(across) - 1.0).abs() < 1e-9, "{found:?}");
    let stress = of("V") / (2.0 * along.min(across)) + 6.0 * of("M_z") / (w * l * w.hypot(l));
    stress / (of("k") * of("t_u")) * found.factor.value
}

/// Of a footing as a whole the side force enters as it acts; that of a fixing on a backing of its own is the largest of sixteen
/// sides, and what raised it is said.
#[test]
fn slip_of_a_backing_can_be_redone_from_its_working() {
    let whole = finding(&on(BOARD, &tapped()), "backing-slip", GIVEN);
    assert!(whole.terms.iter().all(|term| term.symbol != "r_16"), "{whole:?}");
    close(term(&whole, "V"), 200.0);
    close(slip_by_its_terms(&whole), whole.utilisation.value);
    // The board lies below the fixings alone, off the middle of the footing.
    let aside = [
        ("[[\"0.3 m\", \"0.5 m\"], [\"0.7 m\", \"0.5 m\"]]", "[[\"0.3 m\", \"0.54 m\"], [\"0.7 m\", \"0.54 m\"]]"),
        ("width = \"0.4 m\"", "width = \"60 mm\""),
        ("footing = { diameter = \"100 mm\" }", "footing = { diameter = \"200 mm\" }"),
        ("points = [[\"0 mm\", \"0 mm\"]]", "points = [[\"-30 mm\", \"40 mm\"], [\"30 mm\", \"40 mm\"]]"),
    ];
    let top = with(BOARD, &tapped(), &aside);
    let one = finding(&top, "backing-slip", GIVEN);
    let raised = term(&one, "r_16");
    assert!((raised - 1.0 / (PI / 16.0).cos()).abs() < 1e-12, "{one:?}");
    close(slip_by_its_terms(&one), one.utilisation.value);
    let shear = finding(&top, "fastener-shear", GIVEN);
    close(term(&one, "V"), term(&shear, "V"));
    // What the other checks of that board are handed has it in it too.
    for id in ["backing-core-shear", "skin-beside-backing"] {
        let found = finding(&top, id, GIVEN);
        close(term(&found, "r_16"), raised);
        close(term(&found, "P"), term(&found, "p") * term(&found, "T"));
    }
    let bond = finding(&top, "backing-bond", GIVEN);
    close(term(&bond, "r_16"), raised);
    close(term(&bond, "P"), term(&bond, "q") * term(&bond, "T"));
    // So has what presses below a footing; what hangs on it as a whole has not.
    close(term(&finding(&top, "footing-pressure", GIVEN), "r_16"), raised);
    let whole = on(BOARD, &tapped());
    for id in ["backing-bond", "backing-core-shear", "skin-beside-backing"] {
        assert!(finding(&whole, id, GIVEN).terms.iter().all(|term| term.symbol != "r_16"), "{id}");
    }
}

/// Shear of the core per shear on the rim, and bending of one skin: its capacity per unit, by the plate equations of two
/// equal skins. Lengths in mm.
fn beside(top: &Top) -> [f64; 2] {
    let (t, c) = (skin(top), 25.0);
    let (d, e) = (t + c, MAT[0] / (1.0 - NU * NU));
    let (flanges, skins) = (e * t * d * d / 2.0, e * t.powi(3) / 6.0);
    let shear = 27.0 * WET_BOARD * d * d / c;
    let decay = (flanges * skins / (shear * (flanges + skins))).sqrt();
    let share = flanges / (flanges + skins);
    // Half of the moment for each of two equal skins; the surface of one that is bent has 6 m/t² along and ν of it across.
    let moment = decay * share / 2.0;
    let surface = 6.0 * moment / (t * t);
    let bears = tsai_wu([surface, NU * surface, 0.0]).min(tsai_wu([-surface, -NU * surface, 0.0]));
    [share / d, bears]
}

/// Both checks of the rim, against a shear per length in N/mm.
fn rim(top: &Top, line: f64) {
    let [core, bears] = beside(top);
    close(used(top, "backing-core-shear", GIVEN), line * core / CORE_SHEAR * 2.5 * FITTING);
    close(used(top, "skin-beside-backing", GIVEN), line / (bears * WET_LAMINATE) * 2.6 * FITTING);
}

/// Length over which a load leaves a strip that ends beside it, by the beam on springs.
fn near_end(length: f64, end: f64) -> f64 {
    let x = 2.0 * end / length;
    let under = 1.0 + (-2.0 * x).exp() * (2.0 + (2.0 * x).cos() - (2.0 * x).sin());
    length / under.max(4.0 * (-x).exp() * x.cos())
}

#[test]
fn a_strip_sends_its_load_out_along_its_sides() {
    let top = on(BOARD, &tapped());
    let length = near_end(150.0, 200.0);
    rim(&top, LIFT / (2.0 * length));
    // 40 N·m in any direction: along the strip it is worse than a couple of two sides 400 mm apart.
    let leaning = with(BOARD, &tapped(), &[("height = \"0 mm\"", "height = \"0.2 m\"")]);
    rim(&leaning, LIFT / (2.0 * length) + 3.0 * 40_000.0 / (length * length));
    let narrow = [("height = \"0 mm\"", "height = \"0.2 m\""), ("width = \"0.4 m\"", "width = \"40 mm\"")];
    rim(&with(BOARD, &tapped(), &narrow), LIFT / (2.0 * length) + 40_000.0 / (40.0 * length));
    // 30 mm beside its middle the force turns it too, and near its end it bears less.
    let aside = with(BOARD, &tapped(), &[("at = [\"0.5 m\", \"0.5 m\"]", "at = [\"0.62 m\", \"0.53 m\"]")]);
    let length = near_end(150.0, 80.0);
    rim(&aside, LIFT / (2.0 * length) + 3.0 * LIFT * 30.0 / (length * length));
}

#[test]
fn a_short_backing_is_a_plug_and_a_footing_on_foam_a_disc() {
    let short = [("along = [[\"0.3 m\", \"0.5 m\"], [\"0.7 m\"", "along = [[\"0.4 m\", \"0.5 m\"], [\"0.6 m\"")];
    let leaning = [short[0], ("height = \"0 mm\"", "height = \"0.2 m\""), ("width = \"0.4 m\"", "width = \"0.15 m\"")];
    let plug = with(BOARD, &tapped(), &leaning);
    // Of its 200 mm as much takes part as the footing of 100 mm reaches at 45 degrees through 25 mm of core.
    let tilting = 40_000.0 / (150.0 * 150.0 + 150.0 * 150.0 / 3.0);
    rim(&plug, (LIFT / (2.0 * 300.0) + tilting) / 0.8);
    let leaning = [("height = \"0 mm\"", "height = \"0.2 m\"")];
    rim(&with("", &rivet(), &leaning), LIFT / (PI * 100.0) + 4.0 * 40_000.0 / (PI * 100.0 * 100.0));
    let square =
        [leaning[0], ("footing = { diameter = \"100 mm\" }", "footing = { length = \"0.1 m\", width = \"80 mm\" }")];
    let tilting = 40_000.0 / (100.0 * 80.0 + 80.0 * 80.0 / 3.0);
    rim(&with("", &rivet(), &square), (LIFT / 360.0 + tilting) / 0.8);
    // The washer of a bolt on foam is smaller than any footing.
    rim(&on("", &through("")), PULL / (PI * 23.6));
}

#[test]
fn a_backing_goes_on_beyond_its_footing() {
    let top = on(BOARD, &tapped());
    close(used(&top, "backing-end", None), (50.0 + 25.0) / 200.0);
    let at = |x: &str| with(BOARD, &tapped(), &[("at = [\"0.5 m\"", &format!("at = [\"{x}\""))]);
    let aside = at("0.6 m");
    let finding = finding(&aside, "backing-end", None);
    close(term(&finding, "x"), 0.1);
    close(finding.utilisation.value, (100.0 + 50.0 + 25.0) / 200.0);
    never_worse("backing-end", None, &["0.65 m", "0.6 m", "0.5 m"].map(at));
    // The size of the footing along the backing counts, whichever way that runs.
    let square = ("footing = { diameter = \"100 mm\" }", "footing = { length = \"0.1 m\", width = \"60 mm\" }");
    let across =
        ("[[\"0.3 m\", \"0.5 m\"], [\"0.7 m\", \"0.5 m\"]]", "[[\"0.5 m\", \"0.3 m\"], [\"0.5 m\", \"0.7 m\"]]");
    close(used(&with(BOARD, &tapped(), &[square]), "backing-end", None), (50.0 + 25.0) / 200.0);
    close(used(&with(BOARD, &tapped(), &[square, across]), "backing-end", None), (30.0 + 25.0) / 200.0);
    assert!(outcomes(&on("", &through("")), "backing-end", None).is_empty());
}

/// What could not be said of one mount stands with that one alone.
#[test]
fn what_is_open_of_one_mount_is_not_said_of_another() {
    // One of its bolts stands beside the backing that its footing rests on.
    let horn = "[[gear]]\nname = \"horn\"\nmass = \"1 kg\"\ncg_height = \"0 mm\"\nat = [\"0.5 m\", \"0.68 m\"]\n\
                footing = { diameter = \"100 mm\" }\nwind_area = \"0.01 m2\"\ndrag = 1.0\n\
                fixings = { fixing = \"bolt\", points = [[\"0 mm\", \"40 mm\"], [\"0 mm\", \"-40 mm\"]], clamped = \"6 mm\" }\n[service]";
    let top = with(BOARD, &through(""), &[("[service]", horn)]);
    let analysis = Analysis::new(&top, DIVISIONS).expect("a patch");
    assert!(!analysis.open_mounts.is_empty() && analysis.open_mounts.iter().all(|open| open.mount == 1));
    let worst = worst_by_mount(&analysis);
    for (number, worst) in worst.iter().enumerate() {
        let part = worst.as_ref().map(|worst| worst.place.part);
        let Some(Part::Fixing { on, .. } | Part::Mount(on)) = part else { panic!("{worst:?}") };
        assert_eq!(on, MountOn::Gear(number));
    }
    assert!(worst[0].as_ref().is_some_and(|worst| worst.utilisation().is_some()), "{:?}", worst[0]);
    assert!(worst[1].as_ref().is_some_and(|worst| worst.utilisation().is_none()), "{:?}", worst[1]);
}

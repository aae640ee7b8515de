//! The fastener, and what it holds in.

use std::f64::consts::PI;

use super::{close, finding, open, outcomes, patch, read, term, used};
use skinspan::top::Top;

pub(crate) const GIVEN: Option<&str> = Some("given-1");
/// Pull with prying: 1.3 × (500 N − 0.6 × 1 kg × 9.80665 m/s²).
pub(crate) const PULL: f64 = 1.3 * 494.116_01;
/// Side force: sixteen sides on a polygon about their circle, 200 N/cos(11.25°).
pub(crate) const SIDE: f64 = 203.918;
/// Stress area of M8, π/4 (8 − 0.938 194 × 1.25)², mm².
pub(crate) const M8: f64 = 36.609;
pub(crate) const FITTING: f64 = 1.15;
/// What is left of an estimate, of a typical value, of soaked foam and board, and of soaked laminate.
pub(crate) const ESTIMATE: f64 = 0.75;
pub(crate) const TYPICAL: f64 = 0.9;
pub(crate) const WET_BOARD: f64 = 0.91;
pub(crate) const WET_LAMINATE: f64 = 0.83;

const BOLT: &str = "grade = \"a4-70\"\nlubrication = \"lubricated-stainless\"\n";
pub(crate) const BOARD: &str = "pu-board-glass-320";

pub(crate) fn through(more: &str) -> String {
    format!("hold = \"through-bolt\"\nthread = \"m8\"\n{BOLT}{more}")
}

pub(crate) fn tapped(depth: &str) -> String {
    format!("hold = \"tapped-screw\"\nthread = \"m8\"\ndepth = \"{depth}\"\n{BOLT}")
}

pub(crate) fn screw(depth: &str) -> String {
    format!("hold = \"screw\"\nscrew = \"wood-10\"\ngrade = \"a4-70\"\ndepth = \"{depth}\"\n")
}

pub(crate) fn insert() -> String {
    format!("hold = \"blind-insert\"\ninsert = \"m6-stainless\"\n{BOLT}")
}

pub(crate) fn potted(depth: &str, potting: &str) -> String {
    format!("hold = \"potted-insert\"\ninsert = \"m6-potted\"\npotting = \"{potting}\"\ndepth = \"{depth}\"\n{BOLT}")
}

pub(crate) fn stud(glue: &str) -> String {
    format!("hold = \"bonded-stud\"\nstud = \"m6-stud\"\nadhesive = \"{glue}\"\n{BOLT}")
}

pub(crate) fn rivet() -> String {
    "hold = \"blind-rivet\"\nrivet = \"rivet-al-4-8\"\n".to_owned()
}

pub(crate) fn on(board: &str, fixing: &str) -> Top {
    read(&patch(board, fixing))
}

/// Thickness of a skin, mm.
pub(crate) fn skin(top: &Top) -> f64 {
    top.outer.laminate().thickness().value * 1e3
}

pub(crate) fn never_worse(id: &str, case: Option<&str>, tops: &[Top]) {
    let all: Vec<f64> = tops.iter().map(|top| used(top, id, case)).collect();
    assert!(all.windows(2).all(|pair| pair[1] <= pair[0]) && all[0] > all[all.len() - 1], "{id}: {all:?}");
}

#[test]
fn a_bolt_in_shear_and_in_both() {
    let top = on(BOARD, &through(""));
    let (tension, shear) = (0.9 * 700.0 * M8, 0.6 * 700.0 * M8);
    close(used(&top, "fastener-shear", GIVEN), SIDE / shear * 2.0 * FITTING);
    close(used(&top, "fastener-tension", GIVEN), PULL / tension * 2.0 * FITTING);
    close(used(&top, "fastener-combined", GIVEN), (SIDE / shear + PULL / (1.4 * tension)) * 2.0 * FITTING);
    never_worse("fastener-shear", GIVEN, &["m6", "m8", "m10"].map(|m| on(BOARD, &through("").replace("m8", m))));
    never_worse("fastener-combined", GIVEN, &["m6", "m8", "m10"].map(|m| on(BOARD, &through("").replace("m8", m))));
}

#[test]
fn a_hard_or_cold_worked_thread_bears_less_in_shear() {
    for (grade, share) in [("a4-80", 0.6), ("steel-8-8", 0.6), ("sae-5", 0.6), ("sae-8", 0.5), ("sae-2", 0.5)] {
        let top = on(BOARD, &through("").replace("a4-70", grade));
        close(term(&finding(&top, "fastener-shear", GIVEN), "a_v"), share);
    }
}

#[test]
fn a_rivet_bears_the_loads_of_its_standard() {
    let top = on(BOARD, &rivet());
    close(used(&top, "fastener-shear", GIVEN), SIDE / 1850.0 * 2.0 * FITTING);
    close(used(&top, "fastener-combined", GIVEN), (SIDE / 1850.0 + PULL / 2600.0) * 2.0 * FITTING);
}

#[test]
fn a_tapped_thread_strips() {
    let top = on(BOARD, &tapped("20 mm"));
    // Lead-in and tip take a pitch each; minor diameter 8 − 1.082 53 × 1.25 = 6.646 83 mm.
    let length = 20.0 - skin(&top) - 2.5;
    let shape = 0.5 + (8.0 - 6.646_83) / (2.0 * 3f64.sqrt() * 1.25);
    let bearable = 3.5 * ESTIMATE * WET_BOARD * PI * 8.0 * length * shape;
    close(used(&top, "thread-strip", GIVEN), PULL / bearable * 4.0 * FITTING);
    never_worse("thread-strip", GIVEN, &["15 mm", "20 mm", "26 mm"].map(|depth| on(BOARD, &tapped(depth))));
}

#[test]
fn no_more_than_four_diameters_are_counted() {
    let text = patch(BOARD, &tapped("50 mm")).replace("thickness = \"25 mm\"", "thickness = \"60 mm\"");
    let finding = finding(&read(&text), "thread-strip", GIVEN);
    close(term(&finding, "L"), 0.032);
}

#[test]
fn a_thread_in_metal_strips_by_its_tolerances() {
    let top = on("aluminium-plate", &tapped("10 mm"));
    let length = 10.0 - skin(&top) - 2.5;
    let nut = PI * length * 7.76 * (0.625 + (7.76 - 7.348) / 3f64.sqrt()) / 1.25 * 125.0;
    let bolt = PI * length * 6.912 * (0.625 + (7.042 - 6.912) / 3f64.sqrt()) / 1.25 * 0.6 * 700.0;
    assert!(nut < bolt);
    close(used(&top, "thread-strip", GIVEN), PULL / (ESTIMATE * nut) * 2.0 * FITTING);
}

#[test]
fn laminate_softens_as_the_skins_do() {
    let top = on("laminate", &tapped("20 mm"));
    close(term(&finding(&top, "thread-strip", GIVEN), "k"), ESTIMATE * WET_LAMINATE);
}

#[test]
fn a_screw_is_drawn_out_of_board() {
    let top = on(BOARD, &screw("24 mm"));
    let (major, root, pitch) = (4.826, 3.8608, 25.4 / 13.0);
    // The tip takes a diameter; four diameters at most.
    let length = (24.0 - skin(&top) - pitch - major).min(4.0 * major);
    let shape = 0.5 + (major - root) / (2.0 * 3f64.sqrt() * pitch);
    let bearable = 3.5 * ESTIMATE * WET_BOARD * PI * major * length * shape;
    close(used(&top, "screw-withdrawal", GIVEN), PULL / bearable * 4.0 * FITTING);
    never_worse("screw-withdrawal", GIVEN, &["15 mm", "20 mm", "24 mm"].map(|depth| on(BOARD, &screw(depth))));
}

#[test]
fn a_screw_is_drawn_out_of_plywood() {
    let top = on("plywood-okoume", &screw("24 mm"));
    let lag = on("plywood-okoume", &screw("24 mm").replace("wood-10", "lag-1-4"));
    let pitch = term(&finding(&lag, "screw-withdrawal", GIVEN), "l") * 1e3;
    // 8100 lbf G^1.5 (D/in)^0.75 for each inch.
    let length = (24.0 - skin(&lag) - pitch - 6.35) / 25.4;
    let bearable = 8100.0 * 4.448_222 * 0.45f64.powf(1.5) * 0.25f64.powf(0.75) * length * 0.6 * TYPICAL * WET_BOARD;
    close(used(&lag, "screw-withdrawal", GIVEN), PULL / bearable * 4.0 * FITTING);
    let length = 24.0 - skin(&top) - 25.4 / 13.0 - 4.826;
    let bearable = 108.248 * 0.45 * 0.45 * 4.826 * length * 0.6 * TYPICAL * WET_BOARD;
    close(used(&top, "screw-withdrawal", GIVEN), PULL / bearable * 4.0 * FITTING);
}

#[test]
fn enough_thread() {
    let soft = on(BOARD, &tapped("20 mm"));
    close(used(&soft, "engagement", None), 3.0 * 8.0 / (20.0 - skin(&soft) - 2.5));
    let hard = on("laminate", &tapped("20 mm"));
    close(used(&hard, "engagement", None), 8.0 / (20.0 - skin(&hard) - 2.5));
    // A screw that ends in the skin has no thread in the board at all.
    let short = on(BOARD, &tapped("2 mm"));
    assert!(outcomes(&short, "engagement", None).iter().all(|outcome| !outcome.passes()));
    never_worse("engagement", None, &["15 mm", "20 mm", "26 mm"].map(|depth| on(BOARD, &tapped(depth))));
}

#[test]
fn what_holds_in_backing_is_worth_nothing_in_foam() {
    for (fixing, id) in
        [(tapped("20 mm"), "thread-strip"), (screw("20 mm"), "screw-withdrawal"), (insert(), "insert-pull-out")]
    {
        let top = on("", &fixing);
        for id in [id, "hold-combined"] {
            assert!(open(&top, id).contains("lay backing under it"), "{id}");
        }
        assert!(outcomes(&top, id, GIVEN).is_empty());
    }
}

#[test]
fn a_blind_insert_is_drawn_out_of_the_skin() {
    let top = on(BOARD, &insert());
    // Bulge of 12 mm; punching shear of mat 60 MPa.
    let bearable = 0.5 * PI * 12.0 * skin(&top) * 60.0 * ESTIMATE * WET_LAMINATE;
    close(used(&top, "insert-pull-out", GIVEN), PULL / bearable * 4.0 * FITTING);
    let with =
        |layers: &str| read(&patch(BOARD, &insert()).replace("outer = [\"2 x", &format!("outer = [\"{layers} x")));
    never_worse("insert-pull-out", GIVEN, &["1", "2"].map(with));
    assert!(open(&with("6"), "insert-pull-out").contains("take one with a longer body"));
}

#[test]
fn a_thin_skin_is_packed_by_the_backing() {
    let text = patch(BOARD, &insert()).replace("outer = [\"2 x mat 450 g/m2\"]", "outer = [\"mat 100 g/m2\"]");
    let top = read(&text);
    assert!(skin(&top) < 0.5, "{}", skin(&top));
    let skin_bears = skin(&top) * 60.0 * ESTIMATE * WET_LAMINATE;
    let board_bears = (0.5 - skin(&top)) * 3.5 * ESTIMATE * WET_BOARD;
    let bearable = 0.5 * PI * 12.0 * (skin_bears + board_bears);
    close(used(&top, "insert-pull-out", GIVEN), PULL / bearable * 4.0 * FITTING);
}

#[test]
fn a_short_plug_leaves_the_core() {
    let top = on("", &potted("20 mm", "potting-epoxy"));
    let (shear, tension) = (1.15 * TYPICAL * WET_BOARD, 2.5 * TYPICAL * WET_BOARD);
    let side = 2.0 * PI * 8.5 * (20.0 - skin(&top)) * shear;
    let bearable = 0.7 * (side + PI * 8.5 * 8.5 * tension);
    close(used(&top, "potted-insert", GIVEN), PULL / bearable * 2.5 * FITTING);
    let deeper = ["15 mm", "20 mm", "25 mm"].map(|depth| on("", &potted(depth, "potting-epoxy")));
    never_worse("potted-insert", GIVEN, &deeper);
}

/// Modified Bessel function of the second kind, order 1, by its integral.
fn k1(x: f64) -> f64 {
    let step = 1e-3;
    (0..12_000).map(|i| (f64::from(i) + 0.5) * step).map(|t| (-x * t.cosh()).exp() * t.cosh() * step).sum()
}

#[test]
fn a_plug_from_skin_to_skin_shears_the_core_round_it() {
    let top = on("", &potted("28 mm", "potting-epoxy"));
    let finding = finding(&top, "potted-insert", GIVEN);
    let (radius, lever) = (8.5, 25.0 + skin(&top));
    close(term(&finding, "d") * 1e3, lever);
    // Equal skins: D₀ = E′ t d²/2 and D₂ = E′ t³/6, so that D₀/D = 3 d²/(3 d² + t²).
    let (share, decay) = (term(&finding, "C"), term(&finding, "a") * 1e3);
    close(share, 3.0 * lever * lever / (3.0 * lever * lever + skin(&top) * skin(&top)));
    let stress = |r: f64| 1.0 / r - k1(r / decay) / (radius * k1(radius / decay));
    let peak = (0..4000).map(|i| stress(radius + 0.01 * f64::from(i))).fold(0.0, f64::max);
    let shear = 1.15 * TYPICAL * WET_BOARD;
    let bearable = shear * 2.0 * PI * lever / (share * peak);
    close(used(&top, "potted-insert", GIVEN), PULL / bearable * 2.5 * FITTING);
}

#[test]
fn an_insert_leaves_its_potting() {
    let top = on("", &potted("25 mm", "potting-epoxy"));
    let bearable = 14.0 * ESTIMATE * PI * 14.3 * 19.1;
    close(used(&top, "potted-bond", GIVEN), PULL / bearable * 6.5 * FITTING);
    let shallow = on("", &potted("10 mm", "potting-epoxy"));
    close(used(&shallow, "potted-bond", GIVEN), PULL / (14.0 * ESTIMATE * PI * 14.3 * 10.0) * 6.5 * FITTING);
    assert!(open(&on("", &potted("25 mm", "putty-glass-bubble")), "potted-bond").contains("shear_strength"));
}

/// A stub of so much force per length, so deep, held by `mouth` and `end`, forced at `lever` above it: turned about the
/// depth at which its moments balance, found by halving; about its mouth where that holds all.
pub(crate) fn pushed_over(per_length: f64, depth: f64, (mouth, end): (f64, f64), lever: f64) -> f64 {
    let force = |x: f64| mouth - end + per_length * (2.0 * x - depth);
    let moment = |x: f64| per_length * (depth * depth / 2.0 - x * x) + end * depth;
    if force(0.0) * lever > moment(0.0) {
        return moment(0.0) / lever;
    }
    assert!(force(depth) * lever > moment(depth), "the end is not all needed");
    let (mut low, mut high) = (0.0, depth);
    for _ in 0..80 {
        let x = f64::midpoint(low, high);
        if force(x) * lever > moment(x) { high = x } else { low = x }
    }
    force(low)
}

#[test]
fn an_insert_is_pushed_over_in_its_potting() {
    let top = on("", &potted("25 mm", "potting-epoxy"));
    // The foot of 6 mm pushes at half of its height; the insert is 14.3 mm thick and 19.1 mm long.
    let side = |depth: f64, lever: f64| pushed_over(40.0 * ESTIMATE * 14.3, depth, (0.0, 0.0), lever);
    close(used(&top, "potted-side", GIVEN), SIDE / side(19.1, 3.0) * 6.5 * FITTING);
    let shallow = on("", &potted("10 mm", "potting-epoxy"));
    close(used(&shallow, "potted-side", GIVEN), SIDE / side(10.0, 3.0) * 6.5 * FITTING);
    let foot = |clamped: &str| {
        let text = patch("", &potted("25 mm", "potting-epoxy")).replace(", clamped = \"6 mm\"", clamped);
        used(&read(&text), "potted-side", GIVEN)
    };
    // Of a foot that nobody measured as much as of one as thick as the bolt; a stiff one keeps the bolt upright.
    close(foot(""), foot(", clamped = \"6 mm\""));
    assert!(foot(", clamped = \"3 mm\"") < foot(""));
    close(foot(", clamped = \"6 mm\", stiff = true"), SIDE / side(19.1, 0.0) * 6.5 * FITTING);
    assert!(outcomes(&on(BOARD, &tapped("20 mm")), "potted-side", GIVEN).is_empty());
}

#[test]
fn a_plug_is_pushed_over_in_the_panel() {
    let top = on("", &potted("20 mm", "potting-epoxy"));
    let t = skin(&top);
    // Mat bears 140 MPa, six tenths of it beside a plug of 17 mm; foam 1.4 MPa.
    let bears = 0.6 * 140.0 * ESTIMATE * WET_LAMINATE * 17.0 * t;
    let side = |depth: f64, bed: f64, end: f64| pushed_over(bed * WET_BOARD * 17.0, depth, (bears, end), 3.0 + t);
    let foam = 1.4 * TYPICAL;
    close(used(&top, "plug-side", GIVEN), SIDE / side(20.0 - t, foam, 0.0) * 3.0 * FITTING);
    // A plug to the far skin is not in it.
    let (to, into) = (format!("{} mm", 25.0 + t), "28 mm".to_owned());
    close(
        used(&on("", &potted(&to, "potting-epoxy")), "plug-side", GIVEN),
        SIDE / side(25.0, foam, 0.0) * 3.0 * FITTING,
    );
    let through = on("", &potted(&into, "potting-epoxy"));
    let most =
        ((bears + foam * WET_BOARD * 17.0 * 25.0) * (3.0 + t) + foam * WET_BOARD * 17.0 * 25.0 * 12.5) / (28.0 + t);
    assert!(most < bears, "the far skin is not all needed");
    close(used(&through, "plug-side", GIVEN), SIDE / side(25.0, foam, most * (1.0 - 1e-9)) * 3.0 * FITTING);
    let board = on(BOARD, &potted("20 mm", "potting-epoxy"));
    close(used(&board, "plug-side", GIVEN), SIDE / side(20.0 - t, 6.5 * ESTIMATE, 0.0) * 3.0 * FITTING);
    let deeper = ["8 mm", "15 mm", "25 mm"].map(|depth| on("", &potted(depth, "potting-epoxy")));
    never_worse("plug-side", GIVEN, &deeper);
}

#[test]
fn a_stud_comes_off_with_its_glue() {
    let top = on("", &stud("epoxy-paste"));
    // The side force acts at half of the foot of 6 mm, on a base of 1.5 mm.
    let (diameter, height) = (38.0_f64, 1.5 + 3.0);
    let area = PI * diameter * diameter / 4.0;
    let tension = PULL / area + 32.0 * SIDE * height / (PI * diameter.powi(3));
    let used_up = tension / (8.0 * ESTIMATE) + SIDE / area / (8.0 * ESTIMATE);
    close(used(&top, "stud-bond", GIVEN), used_up * 6.5 * FITTING);
    let wider = ["m5-stud", "m6-stud"].map(|size| on("", &stud("epoxy-paste").replace("m6-stud", size)));
    never_worse("stud-bond", GIVEN, &wider);
    let sealed = on("", &stud("sealant-adhesive"));
    assert!(open(&sealed, "stud-bond").contains("not for a load that lasts"));
}

#[test]
fn a_hot_glue_bears_less() {
    let text = patch("", &stud("epoxy-paste")).replace("sun = \"none\"", "sun = \"light\"");
    let (cool, hot) = (on("", &stud("epoxy-paste")), read(&text));
    // White tops are taken to reach 50 °C: half way between 0.85 at 40 °C and 0.5 at 60 °C.
    let surface = hot.criteria.sun_light_outer.value.value - 273.15;
    let left = 0.85 + (0.5 - 0.85) * (surface - 40.0) / 20.0;
    assert!((40.0..=60.0).contains(&surface), "{surface}");
    close(used(&hot, "stud-bond", GIVEN) / used(&cool, "stud-bond", GIVEN), 1.0 / left);
}

/// What acts sideways is tried from sixteen sides: the working says by how much it is raised, so that it can be redone.
#[test]
fn a_shear_can_be_redone_from_its_working() {
    let found = finding(&read(&patch(BOARD, &through(""))), "fastener-shear", Some("given-1"));
    let raised = term(&found, "r_16");
    assert!((raised - 1.0 / (std::f64::consts::PI / 16.0).cos()).abs() < 1e-12 && (raised - 1.0196).abs() < 1e-4);
    // One bolt takes all of the 200 N.
    assert!((term(&found, "V") - 200.0 * raised).abs() < 1e-9, "{found:?}");
    let pulled = finding(&read(&patch(BOARD, &through(""))), "fastener-tension", Some("given-1"));
    assert!((term(&pulled, "r_16") - raised).abs() < 1e-12);
}

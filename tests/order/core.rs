//! How the core is cut: pieces lie in the core, cover it once, and fit their sheets.

use proptest::prelude::*;
use skinspan::{
    order::{CorePlan, NoPlan, Order, Rule, order},
    top::Top,
};

use crate::kit::{EDGE, Made, ORDERED, OUTER, count, m, m2, near};

/// A micrometre: coordinates are sums.
const NEAR: f64 = 1e-6;

fn plan(order: &Order) -> &CorePlan {
    order.core.as_ref().unwrap_or_else(|none| panic!("{none}"))
}

/// What holds for every plan.
fn sound(name: &str, top: &Top, plan: &CorePlan) {
    let setback = top.edge.as_ref().map_or(0.0, |edge| m(edge.setback));
    let [length, width] = [m(top.outline.length()), m(top.outline.width())];
    let mut boxes: Vec<(usize, [f64; 4])> = Vec::new();
    for piece in &plan.pieces {
        let (x, y, l, w) = (m(piece.at.x), m(piece.at.y), m(piece.length), m(piece.width));
        assert!(x >= setback - NEAR && y >= setback - NEAR, "{name}: {piece:?}");
        assert!(x + l <= length - setback + NEAR && y + w <= width - setback + NEAR, "{name}: {piece:?}");
        assert!(m2(piece.area) > 0.0 && m2(piece.area) <= l * w + NEAR, "{name}: {piece:?}");
        let ([at_x, at_y], [along, across]) = (piece.from.at.map(m), piece.from.size.map(m));
        let mut cut = [along, across];
        let mut laid = [l, w];
        cut.sort_by(f64::total_cmp);
        laid.sort_by(f64::total_cmp);
        assert!((cut[0] - laid[0]).abs() < NEAR && (cut[1] - laid[1]).abs() < NEAR, "{name}: {piece:?}");
        assert!(at_x + along <= m(plan.sheet[0]) + 2.0 * NEAR, "{name}: {piece:?}");
        assert!(at_y + across <= m(plan.sheet[1]) + 2.0 * NEAR, "{name}: {piece:?}");
        assert!((1..=plan.sheets).contains(&piece.from.sheet), "{name}: {piece:?}");
        boxes.push((piece.from.sheet, [at_x, at_x + along, at_y, at_y + across]));
    }
    for (number, (sheet, one)) in boxes.iter().enumerate() {
        for (_, other) in boxes[..number].iter().filter(|(other, _)| other == sheet) {
            let apart = one[1] <= other[0] + NEAR
                || other[1] <= one[0] + NEAR
                || one[3] <= other[2] + NEAR
                || other[3] <= one[2] + NEAR;
            assert!(apart, "{name}: two pieces out of one place of sheet {sheet}");
        }
    }
    // On the top too.
    for (number, one) in plan.pieces.iter().enumerate() {
        for other in &plan.pieces[..number] {
            let apart = |at: f64, size: f64, other_at: f64, other_size: f64| {
                at + size <= other_at + NEAR || other_at + other_size <= at + NEAR
            };
            let clear = apart(m(one.at.x), m(one.length), m(other.at.x), m(other.length))
                || apart(m(one.at.y), m(one.width), m(other.at.y), m(other.width));
            assert!(clear, "{name}: {one:?} {other:?}");
        }
    }
    let used: f64 = plan.pieces.iter().map(|piece| m2(piece.area)).sum();
    near(m2(plan.area), used);
}

#[test]
fn plans_of_all_examples_are_sound() {
    for (name, top, order) in &*ORDERED {
        let plan = plan(order);
        sound(name, top, plan);
        // As the weight counts it, but for corners of the edge and ends of backing in it.
        let edge = top.edge.as_ref().map_or(0.0, |edge| m(edge.setback)) * m(top.outline.perimeter());
        let backing: f64 = top.backings.iter().map(|backing| m(backing.width) * m(backing.along.length())).sum();
        let counted = m2(top.outline.area()) - edge - backing;
        assert!((m2(plan.area) / counted - 1.0).abs() < 0.05, "{name}: {} {counted}", m2(plan.area));
    }
}

#[test]
fn a_rectangle_is_covered_once() {
    let rest = "[[backing]]\nname = \"one\"\nmaterial = \"plywood-fir\"\nwidth = \"100 mm\"\n\
                along = [[\"300 mm\", \"200 mm\"], [\"1200 mm\", \"200 mm\"]]\n\
                [[backing]]\nname = \"across it\"\nmaterial = \"plywood-fir\"\nwidth = \"100 mm\"\n\
                along = [[\"600 mm\", \"100 mm\"], [\"600 mm\", \"500 mm\"]]\n\
                [order]\nsheet = [\"800 mm\", \"500 mm\"]\n";
    let (top, order) = Made { rest, ..Made::default() }.order();
    let plan = plan(&order);
    sound("rectangle", &top, plan);
    // 1.92 m by 0.92 m; two backings of 0.09 m² and 0.04 m², 0.01 m² of them in common.
    near(m2(plan.area), 1.92 * 0.92 - 0.12);
    // 1.6464 m² take five sheets of 0.4 m² at the least.
    assert!(plan.sheets >= 5);
    near(plan.offcut.value, 1.0 - (1.92 * 0.92 - 0.12) / (0.4 * count(plan.sheets)));
}

#[test]
fn round_rims_and_holes_are_left_out() {
    let outline = "{ length = \"2000 mm\", width = \"1000 mm\", corner_radius = \"100 mm\" }";
    let rest = "[[hole]]\nname = \"hatch\"\ncircle = { at = [\"1000 mm\", \"500 mm\"], diameter = \"300 mm\" }\n\
                [order]\nsheet = [\"700 mm\", \"700 mm\"]\n";
    let (top, order) = Made { outline, rest, ..Made::default() }.order();
    let plan = plan(&order);
    sound("rounded", &top, plan);
    // Corners of 60 mm, a hole of 380 mm; chords take less than a ten-thousandth.
    let pi = std::f64::consts::PI;
    let exact = 1.92 * 0.92 - (4.0 - pi) * 0.06 * 0.06 - pi * 0.19 * 0.19;
    assert!((m2(plan.area) / exact - 1.0).abs() < 1e-4, "{} {exact}", m2(plan.area));
    assert!(plan.pieces.iter().any(|piece| piece.cut_out.iter().any(|name| name == "hatch")));
}

#[test]
fn one_sheet_has_no_seam() {
    let (_, order) = Made { rest: "[order]\nsheet = [\"2 m\", \"1 m\"]\n", ..Made::default() }.order();
    let plan = plan(&order);
    assert_eq!((plan.sheets, plan.pieces.len(), plan.seams.len()), (1, 1, 0));
}

#[test]
fn a_seam_is_kept_off_mid_span() {
    // Sheets of 1.1 m by 1 m on 1.92 m: two, whose seam lies between 0.86 m and 1.14 m, the walls at 0.05 m and 1.95 m.
    let sheet = "[order]\nsheet = [\"1100 mm\", \"1 m\"]\n";
    let (_, order) = Made { rest: sheet, ..Made::default() }.order();
    let own = plan(&order);
    assert_eq!((own.sheets, own.seams.len()), (2, 1));
    assert!(own.seams[0].breaks.is_empty(), "{:?}", own.seams);
    // Off the middle by a twentieth of the span of 1.9 m or more.
    assert!((m(own.seams[0].from.x) - 1.0).abs() > 0.095 - NEAR, "{:?}", own.seams);
    // Where all counts as mid-span there is no choice, and it is said.
    let rest = format!("{sheet}[criteria]\norder-seam-off-mid-span = \"1\"\n");
    let (_, order) = Made { rest: &rest, ..Made::default() }.order();
    let own = plan(&order);
    assert_eq!((own.sheets, own.seams.len()), (2, 1));
    let [(Rule::MidSpan, length)] = &own.seams[0].breaks[..] else { panic!("{:?}", own.seams) };
    assert!(own.seams[0].runs_along(*length) && (m(*length) - 0.92).abs() < 0.02, "{:?}", own.seams);
}

#[test]
fn seams_keep_off_conduits_and_ends_of_backing() {
    let of = |clear: &str| {
        let rest = format!(
            "[[backing]]\nname = \"strip\"\nmaterial = \"plywood-fir\"\nwidth = \"100 mm\"\n\
             along = [[\"300 mm\", \"200 mm\"], [\"1100 mm\", \"200 mm\"]]\n\
             [[conduit]]\nname = \"wires\"\ndiameter = \"15 mm\"\nalong = [[\"1200 mm\", \"100 mm\"], [\"1200 mm\", \"900 mm\"]]\n\
             [order]\nsheet = [\"1200 mm\", \"1 m\"]\n[criteria]\norder-seam-clear = \"{clear}\"\norder-seam-off-mid-span = \"0\"\n"
        );
        let (_, order) = Made { rest: &rest, ..Made::default() }.order();
        plan(&order).seams.clone()
    };
    assert!(of("50 mm").iter().all(|seam| seam.breaks.is_empty()), "{:?}", of("50 mm"));
    // Half a metre round both leaves no place for a seam across.
    let broken: Vec<Rule> = of("600 mm").iter().flat_map(|seam| &seam.breaks).map(|(rule, _)| rule.clone()).collect();
    assert!(broken.contains(&Rule::Conduit("wires".to_owned())), "{broken:?}");
    assert!(broken.contains(&Rule::BackingEnd("strip".to_owned())), "{broken:?}");
}

#[test]
fn what_falls_apart_is_not_planned() {
    // Two squares with a neck of 60 mm: cut back by 40 mm nothing is left of the neck.
    let outline = "{ points = [[\"0 mm\", \"0 mm\"], [\"900 mm\", \"0 mm\"], [\"900 mm\", \"470 mm\"], [\"1100 mm\", \"470 mm\"], \
                   [\"1100 mm\", \"0 mm\"], [\"2000 mm\", \"0 mm\"], [\"2000 mm\", \"1000 mm\"], [\"1100 mm\", \"1000 mm\"], \
                   [\"1100 mm\", \"530 mm\"], [\"900 mm\", \"530 mm\"], [\"900 mm\", \"1000 mm\"], [\"0 mm\", \"1000 mm\"]] }";
    let (_, order) = Made { outline, ..Made::default() }.order();
    assert!(matches!(order.core, Err(NoPlan::Parts { .. })), "{:?}", order.core);
    let (_, order) = Made { rest: "[order]\nsheet = [\"20 mm\", \"10 mm\"]\n", ..Made::default() }.order();
    assert!(matches!(order.core, Err(NoPlan::TooManySheets { .. })), "{:?}", order.core);
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(12))]
    #[test]
    fn any_rectangle_is_covered_once(long in 500u32..2400, wide in 400u32..1500, sheet in 300u32..2500, half in 250u32..1300) {
        let outline = format!("{{ length = \"{} mm\", width = \"{} mm\" }}", long + 200, wide + 200);
        let rest = format!("[order]\nsheet = [\"{sheet} mm\", \"{half} mm\"]\n");
        let mut text = Made { outline: &outline, outer: OUTER, edge: EDGE, rest: &rest }.text();
        // Of the walls, not of an outline that happens to be as long.
        let walls = text.text.replace("[\"1950 mm", &format!("[\"{} mm", long + 150));
        text.text = walls.replace("950 mm\"]]", &format!("{} mm\"]]", wide + 150));
        let table = skinspan::input::read_tables(&[]).expect("the table");
        let top = skinspan::input::read_design(&text, &table, None).unwrap_or_else(|problems| panic!("{}", problems[0].render(false)));
        let order = order(&top);
        let plan = plan(&order);
        sound("any", &top, plan);
        let core = f64::from(long + 120) * f64::from(wide + 120) / 1e6;
        near(m2(plan.area), core);
        prop_assert!(count(plan.sheets) * f64::from(sheet) * f64::from(half) / 1e6 >= core - 1e-9);
    }
}

//! Weights, centres and slings.

use skinspan::{
    check::{CHECKS, Measure},
    order::{LiftCheck, LiftOn, LiftOutcome, order},
    report::{order_to_json, order_to_text},
};
use uom::si::{force::newton, torque::newton_meter};

use crate::kit::{Made, ORDERED, kg, m, m2, near};

#[test]
fn what_stays_in_the_top_is_its_weight() {
    for (name, top, order) in &*ORDERED {
        let (found, bare) = (kg(order.in_top(top)), kg(top.weight().bare));
        assert!((found / bare - 1.0).abs() < 1e-12, "{name}: {found} {bare}");
        assert_eq!(order.weight, top.weight(), "{name}");
    }
}

#[test]
fn an_angle_has_its_area_and_centre() {
    // 2 m by 0.8 m, and 0.6 m by 0.5 m on its end.
    let outline = "{ points = [[\"0 mm\", \"0 mm\"], [\"2000 mm\", \"0 mm\"], [\"2000 mm\", \"800 mm\"], [\"600 mm\", \"800 mm\"], \
                   [\"600 mm\", \"1300 mm\"], [\"0 mm\", \"1300 mm\"]] }";
    let rest =
        "[[wall]]\nname = \"middle\"\nseat = \"30 mm\"\nalong = [[\"550 mm\", \"50 mm\"], [\"550 mm\", \"750 mm\"]]\n";
    let mut text = Made { outline, edge: "", rest, ..Made::default() }.text();
    text.text = text.text.replace("[\"1950 mm\", \"950 mm\"]", "[\"1950 mm\", \"750 mm\"]");
    let table = skinspan::input::read_tables(&[]).expect("the table");
    let top = skinspan::input::read_design(&text, &table, None)
        .unwrap_or_else(|problems| panic!("{}", problems[0].render(false)));
    let order = order(&top);
    near(m2(order.area), 1.6 + 0.3);
    near(m(order.weight.bare_centre.x), (1.6 * 1.0 + 0.3 * 0.3) / 1.9);
    near(m(order.weight.bare_centre.y), (1.6 * 0.4 + 0.3 * 1.05) / 1.9);
    near(kg(order.weight.bare), top.field_mass().value * 1.9);
}

#[test]
fn heights_and_moments_with_gear() {
    let rest = "[[gear]]\nname = \"light\"\nmass = \"12 kg\"\ncg_height = \"200 mm\"\nat = [\"400 mm\", \"250 mm\"]\n\
                footing = \"80 mm\"\nbody = \"dome\"\nwind_area = \"0.02 m2\"\n";
    let (top, order) = Made { edge: "", rest, ..Made::default() }.order();
    let [inner, core, outer] =
        [top.inner.laminate().thickness(), top.core.thickness, top.outer.laminate().thickness()].map(m);
    let per_area = |of: skinspan::units::ArealMassDensity| of.value;
    let between = per_area(top.field_mass()) - per_area(top.outer.mass()) - per_area(top.inner.mass());
    let moment = per_area(top.inner.mass()) * inner / 2.0
        + between * (inner + core / 2.0)
        + per_area(top.outer.mass()) * (inner + core + outer / 2.0);
    near(m(order.weight.bare_height), moment / per_area(top.field_mass()));
    let bare = kg(order.weight.bare);
    let high = (moment * 2.0 + 12.0 * (inner + core + outer + 0.2)) / (bare + 12.0);
    near(m(order.weight.height), high);
    // The walls stand about (1, 0.5); gravity is 9.80665 m/s².
    let [empty, loaded] = order.moments.of;
    near(empty.across.get::<newton_meter>(), 0.0);
    near(loaded.across.get::<newton_meter>(), 12.0 * 9.80665 * (0.4 - 1.0));
    near(loaded.along.get::<newton_meter>(), 12.0 * 9.80665 * (0.25 - 0.5));
    near(loaded.sideways.get::<newton_meter>(), (bare + 12.0) * 9.80665 * high);
}

#[test]
fn the_centre_lies_aft_of_the_fore_edge_and_to_the_side_that_forward_says() {
    // Of 2 m by 1 m, with 12 kg at 400, 250 mm.
    let rest = "[[gear]]\nname = \"light\"\nmass = \"12 kg\"\ncg_height = \"200 mm\"\nat = [\"400 mm\", \"250 mm\"]\n\
                footing = \"80 mm\"\nbody = \"dome\"\nwind_area = \"0.02 m2\"\n";
    for (forward, aft, side, other, tips) in
        [("left", 1.0, "port", "starboard", "the bow"), ("right", 1.0, "starboard", "port", "the stern")]
    {
        let edge = format!("forward = \"{forward}\"");
        let (top, order) = Made { edge: &edge, rest, ..Made::default() }.order();
        near(m(top.aft_of_fore_edge(order.weight.bare_centre.x)), aft);
        let loaded = m(order.weight.centre.x);
        near(m(top.aft_of_fore_edge(order.weight.centre.x)), if forward == "left" { loaded } else { 2.0 - loaded });
        let (off, found) = top.off_middle(order.weight.centre.y);
        near(m(off), 0.5 - m(order.weight.centre.y));
        assert_eq!(found, side);
        let text = order_to_text(&order, &top, 120).split_whitespace().collect::<Vec<_>>().join(" ");
        assert!(text.contains("lies 1000 mm aft of the fore edge, in the middle of the width bare"), "{text}");
        assert!(
            text.contains(&format!("to {side} of the middle")) && !text.contains(&format!("to {other} of")),
            "{text}"
        );
        assert!(text.contains(&format!("(tips towards {tips})")), "{text}");
        assert_eq!(order_to_json(&order, &top)["forward"], forward);
    }
}

#[test]
fn slings_stand_about_the_centre_and_share_the_weight() {
    for (name, top, order) in &*ORDERED {
        let lifting = order.lifting.as_ref().unwrap_or_else(|| panic!("{name} can be lifted"));
        let mean = |pick: fn(&skinspan::order::Sling) -> f64| lifting.slings.iter().map(pick).sum::<f64>() / 4.0;
        near(mean(|sling| sling.at.x.value), m(order.weight.bare_centre.x));
        near(mean(|sling| sling.at.y.value), m(order.weight.bare_centre.y));
        for sling in &lifting.slings {
            assert!(top.outline.within_by(sling.at) >= lifting.pad * std::f64::consts::FRAC_1_SQRT_2, "{name}");
        }
        // 1.5 times the weight on two legs at 30°.
        let leg = kg(order.weight.bare) * 9.80665 * 1.5 / (2.0 * 0.75f64.sqrt());
        assert!((lifting.leg.get::<newton>() / leg - 1.0).abs() < 1e-12, "{name}");
        assert!((lifting.inwards.get::<newton>() / (leg / 2.0) - 1.0).abs() < 1e-12, "{name}");
        assert!(lifting.check.passes(), "{name}: {:?}", lifting.check);
    }
}

#[test]
fn a_jerk_that_is_too_hard_does_not_pass() {
    let used = |factor: &str| {
        let rest = format!("[criteria]\nlift-factor = \"{factor}\"\n");
        let (_, order) = Made { rest: &rest, ..Made::default() }.order();
        let check = order.lifting.expect("it can be slung").check;
        let LiftCheck::Made { outcomes, open } = &check else { panic!("{check:?}") };
        assert!(open.is_empty(), "{open:?}");
        // Five that bend and press, two that push.
        assert_eq!(outcomes.len(), 7, "{outcomes:?}");
        (check.passes(), outcomes[0].used.value)
    };
    let ((light, little), (hard, much)) = (used("1"), used("300"));
    assert!(light && !hard, "{little} {much}");
    assert!(little > 0.0 && much > 100.0 * little);
}

fn outcomes(rest: &str) -> (skinspan::top::Top, skinspan::order::Lifting, Vec<LiftOutcome>) {
    let outer = "[\"biaxial 600 g/m2 @ 0 deg, fibre 50 %\"]";
    let (top, order) = Made { outer, edge: "", rest, ..Made::default() }.order();
    let lifting = order.lifting.expect("it can be slung");
    let LiftCheck::Made { outcomes, open } = &lifting.check else { panic!("{:?}", lifting.check) };
    assert!(open.is_empty(), "{open:?}");
    let outcomes = outcomes.clone();
    (top, lifting, outcomes)
}

fn of<'o>(outcomes: &'o [LiftOutcome], check: &str) -> &'o LiftOutcome {
    outcomes.iter().find(|outcome| CHECKS[outcome.check].id() == check).unwrap_or_else(|| panic!("{outcomes:?}"))
}

#[test]
fn upright_slings_push_nothing_and_slanting_ones_push_over_their_pads() {
    let (_, upright, bent) = outcomes("[criteria]\nsling-angle = \"0 deg\"\n");
    assert_eq!((upright.inwards.value, bent.len()), (0.0, 5), "{bent:?}");
    let (top, lifting, slanted) = outcomes("");
    let push = lifting.inwards.value / lifting.pad.value;
    let crimping = of(&slanted, "shear-crimping");
    let Measure::ForcePerWidth(demand) = crimping.demand else { panic!("{crimping:?}") };
    near(demand.value, push);
    let Measure::ForcePerWidth(allowable) = crimping.allowable else { panic!("{crimping:?}") };
    near(crimping.used.value, push * top.criteria.crimping_factor.value.value / allowable.value);
    let Measure::ForcePerWidth(demand) = of(&slanted, "panel-buckling").demand else { panic!("{slanted:?}") };
    // With the error that buckling says of itself.
    assert!(demand.value / push > 1.0 - 1e-9 && demand.value / push < 1.1, "{demand:?} {push}");
    for check in ["ply-failure", "wrinkling"] {
        let (without, with) = (of(&bent, check).used.value, of(&slanted, check).used.value);
        assert!(with > without, "{check}: {without} {with}");
    }
}

/// What is pushed in at the lower face is taken by the inner skin more than by the outer: by hand, of two thin skins a distance d apart,
/// by N (1/2 + t/2d), less what the core between takes.
#[test]
fn a_push_at_the_lower_face_presses_the_inner_skin() {
    // All but flat, so that the push is all there is.
    let (top, lifting, outcomes) = outcomes("[criteria]\nsling-angle = \"89.5 deg\"\n");
    let push = lifting.inwards.value / lifting.pad.value;
    let skin = m(top.inner.laminate().thickness());
    let (all, core) = (m(top.thickness()), m(top.core.thickness));
    let apart = core + skin;
    // The core takes a few hundredths of both.
    let (stiff, soft) = (
        top.inner.laminate().in_plane_constants().ex.value * skin,
        top.core.material.in_plane_modulus.value.value * core,
    );
    let of_push = stiff / (2.0 * stiff + soft);
    let of_moment = stiff * apart / 2.0 / (stiff * apart * apart / 2.0 + soft * core * core / 12.0);
    let by_hand = push * (of_push + all / 2.0 * of_moment) / skin;
    let Measure::Pressure(pressed) = of(&outcomes, "wrinkling").demand else { panic!("{outcomes:?}") };
    // The weight bends it too, by some hundredths.
    assert!(pressed.value / by_hand > 0.999 && pressed.value / by_hand < 1.08, "{pressed:?} {by_hand}");
}

#[test]
fn fewer_legs_than_four_stand_on_a_diagonal_alone() {
    let on_diagonal = |rest: &str| {
        let (_, _, outcomes) = outcomes(rest);
        let diagonal = outcomes.iter().filter(|outcome| outcome.on != LiftOn::All).count();
        (diagonal, of(&outcomes, "ply-failure").used.value)
    };
    let ((two, used_by_two), (four, used_by_four)) = (on_diagonal(""), on_diagonal("[criteria]\nsling-legs = \"4\"\n"));
    assert!(two > 0 && four == 0, "{two} {four}");
    assert!(used_by_two > used_by_four, "{used_by_two} {used_by_four}");
}

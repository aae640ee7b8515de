//! What the finished top weighs, where its centre lies, and the moments about the frame.

use super::{Ordered, heading, words};
use crate::{
    geometry::Axis,
    report::{
        page::{Page, left, named, right},
        words as shared,
    },
    units::{Length, show},
};

pub(super) fn weight(page: &mut Page, ordered: Ordered<'_>) {
    heading(page, "Weight and centre of gravity (z above the lower face of the inner skin, the top taken as flat)");
    let (weight, system) = (&ordered.order.weight, ordered.system());
    let names = 30.min(page.width().saturating_sub(47));
    let row = |name: &str, cells: [&str; 4]| {
        let [mass, cells @ ..] = cells;
        named("  ", name, names, &format!("{}{}", right(mass, 12), cells.map(|cell| right(cell, 11)).concat()))
    };
    page.line(&row("", ["mass", "x", "y", "z"]));
    let mut line = |name: &str, mass, at: [Length; 3]| {
        let [x, y, z] = at.map(|length| show(length, system));
        page.line(&row(name, [&words::mass(mass, system), &x, &y, &z]));
    };
    for item in &weight.items {
        line(&item.name, item.mass, [item.at.x, item.at.y, item.height]);
    }
    line("bare", weight.bare, [weight.bare_centre.x, weight.bare_centre.y, weight.bare_height]);
    if !ordered.top.gear.is_empty() {
        line("with gear", weight.total, [weight.centre.x, weight.centre.y, weight.height]);
    }
    moments(page, ordered);
}

fn moments(page: &mut Page, ordered: Ordered<'_>) {
    let (moments, system, bow) = (&ordered.order.moments, ordered.system(), ordered.top.bow());
    page.paragraph(
        "  ",
        &format!("Moments of the weight about the middle of the frame, {}:", shared::point(moments.about, system)),
    );
    let names = ["bare", "with gear"];
    let shown = if ordered.top.gear.is_empty() { 1 } else { 2 };
    for (name, of) in names.iter().zip(&moments.of).take(shown) {
        page.paragraph(
            &format!("    {} ", left(name, 10)),
            &format!(
                "{} about the axis across (tips towards {}), {} about the axis along (towards {}), {} about the plane of the frame for \
                 each g from the side",
                words::torque(of.across.abs(), system),
                bow.tips(Axis::X, of.across),
                words::torque(of.along.abs(), system),
                bow.tips(Axis::Y, of.along),
                words::torque(of.sideways, system)
            ),
        );
    }
}

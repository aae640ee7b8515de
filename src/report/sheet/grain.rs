//! The plies of a skin: a stack drawn larger than it is, and the list of what lies in it.

use maud::{Markup, html};
use uom::si::{angle::degree, length::millimeter};

use super::figure::mm;
use crate::{
    laminate::Ply,
    report::words,
    top::{Schedule, Top},
    units::{Angle, show},
};

/// How many times larger a stack may be drawn.
const LARGER: [f64; 9] = [2.0, 5.0, 8.0, 10.0, 12.0, 15.0, 20.0, 25.0, 40.0];
/// Room for the two stacks.
const HIGH: f64 = 46.0;
/// Width of a stack.
const WIDE: f64 = 26.0;
/// Numbers stand so far apart that on a narrow screen too none lies on another: of thinner plies some have none.
const APART: f64 = 3.82;

/// The enlargement at which both stacks fit.
pub(super) fn enlargement(top: &Top) -> f64 {
    let thickness = |skin: &Schedule| skin.laminate().thickness().get::<millimeter>();
    let thickest = thickness(&top.outer).max(thickness(&top.inner));
    LARGER.into_iter().rev().find(|times| thickest * times <= HIGH).unwrap_or(1.0)
}

/// A stack with the number and the direction of each ply beside it; its height too.
pub(super) fn stack(skin: &Schedule, first: usize, [x, y]: [f64; 2], times: f64) -> (Markup, f64) {
    let mut below = y;
    let mut last = f64::NEG_INFINITY;
    let mut plies = Vec::new();
    for (number, ply) in plies_of(skin).enumerate() {
        let high = ply.thickness.get::<millimeter>() * times;
        let middle = below + high / 2.0;
        let named = middle - last >= APART;
        if named {
            last = middle;
        }
        plies.push((number, ply, below, high, named));
        below += high;
    }
    let markup = html! {
        @for (number, ply, y, high, named) in plies {
            rect class=(if number % 2 == 0 { "ply" } else { "ply-b" }) x=(mm(x)) y=(mm(y)) width=(mm(WIDE)) height=(mm(high)) {}
            @let middle = y + high / 2.0;
            @if named { text class="t-soft mid" x=(mm(x - 3.0)) y=(mm(middle + 1.0)) { (first + number) } }
            (direction(ply, [x + WIDE + 5.0, middle], (high / 2.0 - 0.3).min(2.4)))
        }
    };
    (markup, below - y)
}

/// How its fibres run as seen from above, the length of the top to the right; three ways where they run any way.
fn direction(ply: &Ply, [x, y]: [f64; 2], reach: f64) -> Markup {
    let ways: Vec<Angle> =
        if is_random(ply) { [0.0, 60.0, 120.0].map(Angle::new::<degree>).to_vec() } else { vec![ply.angle] };
    html! {
        @for way in ways {
            @let (dx, dy) = (reach * way.value.cos(), reach * way.value.sin());
            path class="line" d={ "M" (mm(x - dx)) " " (mm(y + dy)) "L" (mm(x + dx)) " " (mm(y - dy)) } {}
        }
    }
}

/// Alike along and across: a mat.
fn is_random(ply: &Ply) -> bool {
    let elastic = &ply.elastic;
    let isotropic = elastic.e1 / (2.0 * (crate::units::Ratio::from(1.0) + elastic.nu12));
    elastic.e1 == elastic.e2 && (elastic.g12 / isotropic).value > 0.9
}

fn plies_of(skin: &Schedule) -> impl Iterator<Item = &Ply> {
    skin.layers().iter().flat_map(|layer| &layer.plies)
}

/// How many plies a skin has.
pub(super) fn count(skin: &Schedule) -> usize {
    plies_of(skin).count()
}

/// What lies in both skins, from the sky down, numbered as in the stacks.
pub(super) fn list(top: &Top) -> Markup {
    let system = top.report;
    html! {
        @for (name, skin, from) in [("Outer skin", &top.outer, 1), ("Inner skin", &top.inner, 1 + count(&top.outer))] {
            table class="plies" {
                caption {
                    (name) ", from the sky down: " (show(skin.laminate().thickness(), system)) " thick, " (show(skin.mass(), system))
                }
                thead {
                    tr {
                        th scope="col" { "Ply" }
                        th scope="col" { "Layer" }
                        th scope="col" class="n" { "Fibres at" }
                        th scope="col" class="n" { "Thick" }
                    }
                }
                tbody {
                    @let mut number = from;
                    @for layer in skin.layers() {
                        @if layer.plies.is_empty() {
                            tr { td { "–" } th scope="row" { (layer.text) } td colspan="2" class="n" { "not counted" } }
                        }
                        @for (k, ply) in layer.plies.iter().enumerate() {
                            tr {
                                td { (number + k) }
                                @if k == 0 {
                                  th scope="row" rowspan=[(layer.plies.len() > 1).then_some(layer.plies.len())] {
                                    (layer.text)
                                    span class="under" {
                                        @if layer.plies.len() > 1 { "one cloth, its " (layer.plies.len()) " plies of fibre; " }
                                        @if let Some(fraction) = layer.fibre_fraction {
                                            (format!("{:.0} % fibre by mass, ", fraction.get::<uom::si::ratio::percent>()))
                                        }
                                        "strength " (words::basis(layer.basis))
                                    }
                                  }
                                }
                                td class="n" { @if is_random(ply) { "any way" } @else { (format!("{:.0}°", ply.angle.get::<degree>())) } }
                                td class="n" { (show(ply.thickness, system)) }
                            }
                        }
                        @let () = number += layer.plies.len();
                    }
                }
            }
        }
    }
}

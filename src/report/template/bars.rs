//! Scale bars: what shows whether a printer kept the size.

use maud::{Markup, html};

use super::drawing::number;

/// Height that both take.
pub(super) const HEIGHT: f64 = 13.0;

/// A bar of 100 mm and below it one of 4 in, from their upper left.
pub(super) fn bars(x: f64, y: f64) -> Markup {
    html! {
        g class="scale-bars" font-family="sans-serif" font-size="3" {
            (bar((x, y + 4.5), (10, 10.0), "100 mm"))
            (bar((x, y + 11.0), (4, 25.4), "4 in"))
        }
    }
}

/// So many fields of a length, black and white in turn.
fn bar((x, y): (f64, f64), (fields, length): (u8, f64), words: &str) -> Markup {
    let end = x + f64::from(fields) * length;
    html! {
        path d=(format!("M{} {} H{}", number(x), number(y), number(end))) stroke="#000" stroke-width="0.15" {}
        @for field in (0..fields).step_by(2) {
            rect x=(number(x + f64::from(field) * length)) y=(number(y - 2.0)) width=(number(length)) height="2" {}
        }
        path d=(format!("M{0} {1} V{2} M{3} {1} V{2}", number(x), number(y - 3.0), number(y + 1.0), number(end)))
            stroke="#000" stroke-width="0.15" {}
        text x=(number(end + 1.5)) y=(number(y)) { (words) }
    }
}

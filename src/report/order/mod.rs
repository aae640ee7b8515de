//! What `order` answers: the same content as text, as JSON and as a table of values parted by commas.

mod answer;
mod buy;
mod core;
mod csv;
mod json;
mod lifting;
mod notes;
mod weight;
mod words;

pub use csv::order_to_csv;
pub use json::order_to_json;

use super::page::Page;
use crate::{order::Order, top::Top, units::System};

/// The order in words and tables, without styles, on a page of a width between 60 and 120 columns.
#[must_use]
pub fn order_to_text(order: &Order, top: &Top, width: usize) -> String {
    let ordered = Ordered { order, top };
    let mut page = Page::new(width.clamp(60, 120));
    answer::answer(&mut page, ordered);
    buy::buy(&mut page, ordered);
    core::core(&mut page, ordered);
    buy::pieces(&mut page, ordered);
    buy::resin(&mut page, ordered);
    weight::weight(&mut page, ordered);
    lifting::lifting(&mut page, ordered);
    notes::assumptions(&mut page, ordered);
    heading(&mut page, "Cautions");
    for caution in notes::cautions(ordered) {
        page.paragraph("  - ", &caution);
    }
    page.done()
}

/// A heading that no terminal has to know styles for.
fn heading(page: &mut Page, words: &str) {
    page.blank();
    page.paragraph("", words);
}

/// A top and what is bought for it.
#[derive(Clone, Copy)]
struct Ordered<'a> {
    order: &'a Order,
    top: &'a Top,
}

impl Ordered<'_> {
    const fn system(self) -> System {
        self.top.report
    }
}

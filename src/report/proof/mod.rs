//! What `proof` answers: the card, and readings against it, as text and as JSON.

mod card;
mod compared;
mod faults;
mod json;
mod words;

pub use json::{no_proof_to_json, proof_to_json};
pub use words::why_no_proof;

use super::page::Page;
use crate::{
    proof::{Compared, NoProof, Proof},
    top::Top,
    units::System,
};

/// The card in words and tables, without styles, or what readings say beside it, on a page of a width between 60 and 120
/// columns.
#[must_use]
pub fn proof_to_text(proof: &Proof, compared: Option<&Compared>, top: &Top, width: usize) -> String {
    let card = Card { proof, top };
    let mut page = Page::new(width.clamp(60, 120));
    match compared {
        None => card::card(&mut page, card),
        Some(compared) => compared::compared(&mut page, card, compared),
    }
    page.done()
}

/// That there is no test, and why, on a page of such a width.
#[must_use]
pub fn no_proof_to_text(none: &NoProof, width: usize) -> String {
    let mut page = Page::new(width.clamp(60, 120));
    page.paragraph("", &format!("NO TEST: {}.", why_no_proof(none)));
    page.done()
}

/// A heading that no terminal has to know styles for.
fn heading(page: &mut Page, words: &str) {
    page.blank();
    page.paragraph("", words);
}

/// A top and its test.
#[derive(Clone, Copy)]
struct Card<'a> {
    proof: &'a Proof,
    top: &'a Top,
}

impl Card<'_> {
    const fn system(self) -> System {
        self.top.report
    }
}

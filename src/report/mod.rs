//! The report: plain data, and the same content as text for people and as JSON for machines.

mod cautions;
mod choice;
mod crossing;
mod explain;
mod fixings;
mod fixings_json;
mod frame_json;
mod frame_loads;
mod hand_error;
mod hands;
mod json;
mod listing;
mod methods;
mod not_for_building;
mod not_looked_at;
mod order;
mod page;
mod proof;
mod prying;
mod redone;
mod said;
mod sheet;
mod template;
mod text;
mod words;

pub use cautions::cautions;
pub use choice::{choice_to_csv, choice_to_json, choice_to_text};
pub use explain::{NothingToExplain, explain, explain_json};
pub use frame_loads::{AlongPipe, FrameLoad, Largest, PostLoad, frame_loads};
pub use hand_error::HandError;
pub use json::to_json;
pub use listing::{list, list_json};
pub use methods::{Beside, beside};
pub use not_for_building::not_for_building;
pub use not_looked_at::without_fixings;
pub use order::{order_to_csv, order_to_json, order_to_text};
pub use proof::{no_proof_to_json, no_proof_to_text, proof_to_json, proof_to_text, why_no_proof};
pub use sheet::to_sheet;
pub use template::{DXF_VERSION, Face, Paper, Template};
pub use text::to_text;

use hands::hands;

use crate::{
    advice::{Advice, Fitting, Remedy, advise, fittings, left_by_plate, savings},
    analysis::{Analysis, DIVISIONS},
    check::{CHECKS, Outcome, run, settled},
    material::MaterialTable,
    top::Top,
};

/// Whether the top holds.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Answer {
    /// Every check was made and passes.
    Holds,
    /// At least one check fails.
    DoesNotHold,
    /// No check fails, but not all of them could be made.
    Open,
}

/// Everything that is said about a top.
#[derive(Debug)]
pub struct Report<'a> {
    /// The top.
    pub top: &'a Top,
    /// The table that its materials come from, for the texts of sources.
    pub table: &'a MaterialTable,
    /// Its analysis, or why there is none.
    pub analysis: Result<Analysis<'a>, String>,
    /// The worst outcome of each check, the governing one first.
    pub checks: Vec<Outcome>,
    /// The outcome of every check under every case, worst first.
    pub envelope: Vec<Outcome>,
    /// What would pass.
    pub advice: Vec<Advice>,
    /// What could be smaller in backing and fixings with all still holding that holds.
    pub savings: Vec<Remedy>,
    /// How the fixings of each mount are set.
    pub fittings: Vec<Fitting>,
    /// What the hand method's utilisations may be off by.
    pub hand_error: HandError,
}

impl<'a> Report<'a> {
    /// Analyses a top by both methods, runs the checks, and looks for what would pass.
    #[must_use]
    pub fn new(top: &'a Top, table: &'a MaterialTable) -> Self {
        Self::on(top, table, Analysis::new(top, DIVISIONS).map(|analysis| settled(analysis.with_plate_method())))
    }

    /// The same by the hand method alone, which takes a hundredth of the time.
    #[must_use]
    pub fn by_hand(top: &'a Top, table: &'a MaterialTable) -> Self {
        Self::on(top, table, Analysis::new(top, DIVISIONS))
    }

    fn on(top: &'a Top, table: &'a MaterialTable, analysis: Result<Analysis<'a>, String>) -> Self {
        let Ok(done) = &analysis else {
            return Self {
                top,
                table,
                analysis,
                checks: Vec::new(),
                envelope: Vec::new(),
                advice: Vec::new(),
                savings: Vec::new(),
                fittings: Vec::new(),
                hand_error: HandError::none(),
            };
        };
        let envelope = run(done);
        let mut checks: Vec<Outcome> = Vec::with_capacity(CHECKS.len());
        for outcome in &envelope {
            if !checks.iter().any(|known| known.check == outcome.check) {
                checks.push(outcome.clone());
            }
        }
        let advice = advise(top, &envelope);
        let hand_error = HandError::of(top, done, &envelope);
        let fittings = fittings(done);
        let holds = !envelope.is_empty() && envelope.iter().all(Outcome::passes);
        let tried = if holds { savings(top, &envelope) } else { Vec::new() };
        let savings = left_by_plate(done, tried);
        Self { top, table, analysis, checks, envelope, advice, savings, fittings, hand_error }
    }

    /// Whether the top holds.
    #[must_use]
    pub fn answer(&self) -> Answer {
        if self.analysis.is_err() {
            return Answer::Open;
        }
        let fails = |outcome: &Outcome| outcome.utilisation().is_some() && !outcome.passes();
        if self.envelope.iter().any(fails) {
            Answer::DoesNotHold
        } else if !self.envelope.is_empty() && self.envelope.iter().all(Outcome::passes) {
            Answer::Holds
        } else {
            Answer::Open
        }
    }
}

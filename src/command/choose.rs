//! `skinspan choose`.

use std::path::{Path, PathBuf};

use super::{
    Finished, Status, deliver,
    files::{can_be_written, not_written},
    load, page, pretty,
};
use crate::{
    choice::{self, Watch},
    input::read_choice,
    report::{choice_to_csv, choice_to_json, choice_to_text},
    units::System,
};

/// How the answer is written.
#[derive(Clone, Copy)]
pub(super) enum Form {
    Text,
    Json,
    Csv,
}

impl Form {
    pub(super) const fn of(json: bool, csv: bool) -> Self {
        match (json, csv) {
            (true, _) => Self::Json,
            (false, true) => Self::Csv,
            (false, false) => Self::Text,
        }
    }
}

pub(super) fn choose(
    file: &Path,
    (tables, units): (&[PathBuf], Option<System>),
    form: Form,
    output: Option<&Path>,
    (width, watch): (usize, &dyn Watch),
) -> Result<Finished, String> {
    let ((top, space), _) = load(file, tables, output, |design, table| read_choice(design, table, units))?;
    // A search is long: that its answer cannot be written must be known before.
    if let Some(output) = output {
        can_be_written(output).map_err(|error| not_written(output, &error))?;
    }
    let chosen = choice::choose(&top, &space, watch);
    // What passes all but a check that nobody can make here does not hold.
    let status = if chosen.found.iter().any(|found| found.holds) { Status::Holds } else { Status::DoesNotHold };
    let text = match form {
        Form::Text => choice_to_text(&chosen, &space, &top, page(output, width)),
        Form::Json => pretty(&choice_to_json(&chosen, &space, &top)),
        Form::Csv => choice_to_csv(&chosen, &space, &top),
    };
    deliver(text, status, output)
}

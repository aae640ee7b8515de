//! `skinspan choose`.

use std::path::Path;

use super::{
    DesignFile, Finished, Form, Status, deliver,
    files::{can_be_written, not_written},
    load, page, pretty,
};
use crate::{
    choice::{self, Watch},
    input::read_choice,
    report::{choice_to_csv, choice_to_json, choice_to_text},
};

pub(super) fn choose(
    design: &DesignFile,
    form: Form,
    output: Option<&Path>,
    (width, watch): (usize, &dyn Watch),
) -> Result<Finished, String> {
    let ((top, space), _) = load(design, output, |text, table, units| read_choice(text, table, units))?;
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

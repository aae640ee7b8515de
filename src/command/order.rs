//! `skinspan order`.

use std::path::Path;

use super::{DesignFile, Finished, Form, Status, deliver, load, page, pretty};
use crate::{
    input::read_design,
    order,
    report::{not_for_building, order_to_csv, order_to_json, order_to_text},
    top::Scope,
};

pub(super) fn order(design: &DesignFile, form: Form, output: Option<&Path>, width: usize) -> Result<Finished, String> {
    let (top, _) = load(design, output, |text, table, units| read_design(text, table, units))?;
    if top.scope == Scope::Patch {
        return Err(format!(
            "error: {} describes a patch: the top round it, which has to be bought, is not in the file\n\
             help: describe the whole top in `[top]`\n",
            design.file.display()
        ));
    }
    let order = order::order(&top);
    let lifts = order.lifting.as_ref().is_some_and(|lifting| lifting.check.passes());
    let status = if lifts && order.core.is_ok() { Status::Holds } else { Status::DoesNotHold };
    let text = match form {
        Form::Text => order_to_text(&order, &top, page(output, width)),
        Form::Json => pretty(&order_to_json(&order, &top)),
        Form::Csv => order_to_csv(&order, &top),
    };
    deliver(text, status, output).map(|done| done.warned(not_for_building(&order.standing)))
}

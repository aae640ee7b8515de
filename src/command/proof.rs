//! `skinspan proof`.

use std::path::Path;

use super::{DesignFile, Finished, Status, deliver, load, page, pretty, read, rendered, spared};
use crate::{
    input::{read_design, read_readings},
    proof::{NoProof, Wanted, compare, proof},
    report::{no_proof_to_json, no_proof_to_text, not_for_building, proof_to_json, proof_to_text, why_no_proof},
};

pub(super) fn prove(
    design: &DesignFile,
    (wanted, readings, json): (Wanted, Option<&Path>, bool),
    output: Option<&Path>,
    width: usize,
) -> Result<Finished, String> {
    let (top, _) = load(design, output, |text, table, units| read_design(text, table, units))?;
    let proof = match proof(&top, wanted) {
        Ok(proof) => proof,
        Err(NoProof::Patch) => {
            return Err(format!("error: {}: {}\n", design.file.display(), why_no_proof(&NoProof::Patch)));
        }
        // That a top cannot be tested is an answer too.
        Err(none) => {
            let said = no_proof_to_text(&none, page(output, width));
            let text = if json { pretty(&no_proof_to_json(&none, &top)) } else { said.clone() };
            // Who only sees that a file was written would take it for a card.
            let told = output.map(|_| said.trim_end().to_owned());
            return deliver(text, Status::DoesNotHold, output).map(|done| done.warned(told));
        }
    };
    let compared = match readings {
        None => None,
        Some(path) => {
            spared(output, path)?;
            let text = read(path).map_err(|unreadable| unreadable.message(None))?;
            let readings = read_readings(&text, &proof).map_err(|problems| rendered(&[problems]))?;
            Some(compare(&top, &proof, &readings))
        }
    };
    let good = compared.as_ref().map_or_else(|| proof.stands(), |compared| compared.passes(&proof));
    let status = if good { Status::Holds } else { Status::DoesNotHold };
    let text = if json {
        pretty(&proof_to_json(&proof, compared.as_ref(), &top))
    } else {
        proof_to_text(&proof, compared.as_ref(), &top, page(output, width))
    };
    deliver(text, status, output).map(|done| done.warned(not_for_building(&Ok(proof.standing))))
}

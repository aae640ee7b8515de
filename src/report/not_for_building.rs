//! That a top does not hold, on papers by which one could build it.

use super::{said::counted, words};
use crate::check::{CHECKS, Standing};

/// That a top is not to be built as it stands, in a sentence; none where nothing speaks against it. Checks that could not be made
/// say nothing here.
#[must_use]
pub fn not_for_building(standing: &Result<Standing, String>) -> Option<String> {
    let standing = match standing {
        Ok(standing) => standing,
        Err(reason) => return Some(format!("NOT FOR BUILDING: the checks could not look at this top: {reason}.")),
    };
    let how = if standing.by_plate { "" } else { ", by the hand method alone" };
    let mut all = Vec::new();
    if let Some((check, used)) = standing.fails.first() {
        let more = match standing.fails.len() {
            1 => String::new(),
            number => format!(", and {} more", number - 1),
        };
        all.push(format!(
            "the check says that this top does not hold ({}, {} used{more}{how})",
            CHECKS[*check].title(),
            words::percent(used.value)
        ));
    }
    if let Some((_, reason)) = standing.open_cases.first() {
        let titles: Vec<&str> = standing.open_cases.iter().map(|(title, _)| title.as_str()).collect();
        all.push(format!(
            "{} could not be looked at ({}): {reason}",
            counted(titles.len(), "load case"),
            titles.join("; ")
        ));
    }
    (!all.is_empty()).then(|| format!("NOT FOR BUILDING: {}. See `skinspan check`.", all.join("; ")))
}

//! One criterion: its value and all that a reader needs to dispute it.

use std::collections::BTreeMap;

use serde::Deserialize;

use super::CriterionError;
use crate::{
    source::Mark,
    units::{Dimensioned, System, parse, show, usual_unit},
};

/// What is written about a criterion.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Record {
    /// Name in the design file, `core-shear-factor`.
    pub id: String,
    /// Heading of the report it stands under, `factors`.
    pub group: String,
    /// What it is, in words.
    pub title: String,
    /// Value in use, as its writer wrote it.
    pub as_written: String,
    /// The same in the units of either system, with what was written behind it where that has another unit.
    in_units: [String; 2],
    /// Built-in value; differs from `as_written` where the user changed it.
    pub built_in: String,
    /// Key of the source of the built-in value in the list of sources.
    pub source: String,
    /// Page, table or clause in it.
    pub locator: String,
    /// How the built-in value came to us.
    pub mark: Mark,
    /// What else is known; may be empty.
    pub note: String,
    /// Whether the design file gave the value in use.
    pub changed_by_user: bool,
}

impl Record {
    /// The value in use in the units of a system, with what its writer wrote behind it where that has another unit.
    #[must_use]
    pub fn shown(&self, system: System) -> &str {
        &self.in_units[usize::from(system == System::Si)]
    }
}

/// The value in the units of either system; what is in them already stands as it was written.
fn in_units<Q: Dimensioned>(value: Q, written: &str) -> [String; 2] {
    let unit = written.trim().trim_start_matches(|c: char| c.is_ascii_digit() || " .-+/e".contains(c));
    [System::Us, System::Si].map(|system| match usual_unit(value, system) {
        Some(usual) if unit.is_empty() || usual.symbol == unit || usual.names.contains(&unit) => {
            written.trim().to_owned()
        }
        _ => format!("{} ({})", show(value, system), written.trim()),
    })
}

/// A value that the program judges with, and its record.
#[derive(Clone, Debug, PartialEq)]
pub struct Criterion<Q> {
    /// The value in use.
    pub value: Q,
    /// Its name, origin and history.
    pub record: Record,
}

/// Groups whose values divide a strength: below 1 they would add to it.
const AT_LEAST_ONE: [&str; 2] = ["factors", "fixings"];
/// Groups whose values are shares of a strength.
const SHARES: [&str; 1] = ["knock-downs"];
/// How many times the usual value, or what part of it, a quantity never is: an inch for a millimetre is less of a slip.
const SLIP: f64 = 30.0;
/// Groups whose gauges may be as fine, and whose sheets as small, as one likes.
const FINE: [&str; 2] = ["proof", "order"];
/// Groups in which nothing is a limit at all.
const NOT_ZERO: [&str; 3] = ["limits", "people", "walking"];

impl<Q: Dimensioned> Criterion<Q> {
    /// Takes the entry of a criterion out of the file's table.
    pub(super) fn take(entries: &mut BTreeMap<String, Entry>, field: &str) -> Result<Self, CriterionError> {
        let id = id_of(field);
        let entry = entries.remove(&id).ok_or_else(|| CriterionError::value(&id, "the file has no such criterion"))?;
        if entry.quantity != Q::NAME {
            let message = format!("`{}` is written as quantity, and {} is due", entry.quantity, Q::ARTICLE);
            return Err(CriterionError::value(&id, message));
        }
        let value = parse::<Q>(&entry.value).map_err(|error| CriterionError::text(&id, error))?;
        let mark = mark_of(&entry.mark).ok_or_else(|| CriterionError::value(&id, "the mark is not one of the five"))?;
        let record = Record {
            id,
            group: entry.group,
            title: entry.title,
            in_units: in_units(value, &entry.value),
            as_written: entry.value.clone(),
            built_in: entry.value,
            source: entry.source,
            locator: entry.locator,
            mark,
            note: entry.note,
            changed_by_user: false,
        };
        Ok(Self { value, record })
    }

    /// Whether a value with a unit is so far from the built-in one that it is a slip in its unit.
    fn slipped(&self, new: f64) -> bool {
        let usual = parse::<Q>(&self.record.built_in).map_or(0.0, Dimensioned::si);
        let times = (new / usual).abs();
        let has_unit = Q::ENTRY.units.iter().all(|unit| !unit.symbol.is_empty());
        has_unit && usual != 0.0 && new != 0.0 && !(1.0 / SLIP..=SLIP).contains(&times)
    }

    /// Puts the user's value in place of the one in use.
    pub(super) fn change(&mut self, text: &str) -> Result<(), CriterionError> {
        let id = self.record.id.as_str();
        let value = parse::<Q>(text).map_err(|error| CriterionError::text(id, error))?;
        let (new, old) = (value.si(), self.value.si());
        let group = self.record.group.as_str();
        let fault = if AT_LEAST_ONE.contains(&group) && new < 1.0 {
            Some("a factor below 1 would make a material stronger than it is")
        } else if SHARES.contains(&group) && !(new > 0.0 && new <= 1.0) {
            Some("a share of a strength lies above 0 and at or below 1")
        } else if NOT_ZERO.contains(&group) && (new == 0.0 || (new < 0.0 && group == "limits")) {
            Some(if group == "limits" {
                "a limit of nothing can not be met"
            } else {
                "nothing would stand there: leave people out in `[service]`"
            })
        } else if new * old < 0.0 || (old == 0.0 && new < 0.0) {
            Some("the sign is the wrong one")
        } else if !FINE.contains(&group) && self.slipped(new) {
            Some("that is more than thirty times the usual value, or less than a thirtieth: is the unit right?")
        } else {
            None
        };
        if let Some(message) = fault {
            return Err(CriterionError::value(id, message));
        }
        self.value = value;
        text.trim().clone_into(&mut self.record.as_written);
        self.record.in_units = in_units(value, text);
        self.record.changed_by_user = true;
        Ok(())
    }
}

/// One table of the file.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct Entry {
    pub(super) id: String,
    group: String,
    title: String,
    value: String,
    quantity: String,
    source: String,
    locator: String,
    mark: String,
    #[serde(default)]
    note: String,
}

/// A field's name as the files write it.
pub(super) fn id_of(field: &str) -> String {
    field.replace('_', "-")
}

fn mark_of(word: &str) -> Option<Mark> {
    match word {
        "read" => Some(Mark::Read),
        "quoted" => Some(Mark::Quoted),
        "derived" => Some(Mark::Derived),
        "memory" => Some(Mark::Memory),
        "practice" => Some(Mark::Practice),
        "assumed" => Some(Mark::Assumed),
        _ => None,
    }
}

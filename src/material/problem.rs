//! What can be wrong with a table or a question to it, said so that the reader can mend it.

use std::{fmt, ops::Range, sync::Arc};

use super::Origin;
use crate::units::{Dimensioned, System, show};

/// Something wrong in the text of a table.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct TableProblem {
    /// Name of the file as the caller gave it.
    pub file: String,
    /// Bytes of the text that are meant.
    pub range: Range<usize>,
    /// What is wrong.
    pub message: String,
    /// How to mend it.
    pub help: Option<String>,
}

impl fmt::Display for TableProblem {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}, bytes {} to {}: {}", self.file, self.range.start, self.range.end, self.message)?;
        self.help.as_ref().map_or(Ok(()), |help| write!(f, "; {help}"))
    }
}

impl std::error::Error for TableProblem {}

/// A name that no row has.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct UnknownName {
    /// Kind of row that was asked for, `core`.
    pub kind: &'static str,
    /// The name that was given.
    pub name: String,
    /// The name that was probably meant.
    pub near: Option<String>,
    /// All names of that kind.
    pub known: Vec<String>,
}

impl UnknownName {
    pub(crate) fn new<'a>(kind: &'static str, name: &str, known: impl Iterator<Item = &'a str> + Clone) -> Self {
        let near = near(name, known.clone()).map(str::to_owned);
        Self { kind, name: name.to_owned(), near, known: known.map(str::to_owned).collect() }
    }
}

impl fmt::Display for UnknownName {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "no {} is called `{}`", self.kind, self.name)?;
        match &self.near {
            Some(near) => write!(f, "; did you mean `{near}`?"),
            None => write!(f, "; known: {}", self.known.join(", ")),
        }
    }
}

impl std::error::Error for UnknownName {}

/// A question outside the range that a property was given for.
#[derive(Clone, Debug, PartialEq)]
pub struct OutOfRange<X> {
    /// The property that ends there.
    pub origin: Arc<Origin>,
    /// What was asked for.
    pub given: X,
    /// Lowest argument with a value.
    pub low: X,
    /// Highest argument with a value.
    pub high: X,
}

impl<X: Dimensioned> fmt::Display for OutOfRange<X> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let (row, property) = (&self.origin.row, self.origin.property.replace('_', " "));
        let [given, low, high] = [self.given, self.low, self.high].map(|x| show(x, System::Si));
        write!(f, "{row}: {property} is given from {low} to {high} in {}, not at {given}", self.origin.table)
    }
}

impl<X: Dimensioned + fmt::Debug> std::error::Error for OutOfRange<X> {}

/// Longer than any name in the table.
const LONGEST_WORD: usize = 64;

/// The closest of the known words, if one is close enough to have been meant.
pub(crate) fn near<'a>(word: &str, known: impl Iterator<Item = &'a str>) -> Option<&'a str> {
    // Longer words are not words mistyped, and the comparison costs the product of the lengths.
    let known = known.take_while(|_| word.len() <= LONGEST_WORD);
    known
        .map(|candidate| (strsim::jaro_winkler(word, candidate), candidate))
        .filter(|(score, _)| *score > 0.8)
        .max_by(|a, b| a.0.total_cmp(&b.0))
        .map(|(_, candidate)| candidate)
}

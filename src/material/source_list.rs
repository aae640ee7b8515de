//! The list of sources: who wrote a value down, and how much of it was seen.

use std::ops::Range;

use toml::de::DeTable;

use super::{
    reader::{Report, text_of},
    row::Place,
};

/// How much of a source was seen by those who filled the table.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Seen {
    /// The document or the pages that are cited.
    Read,
    /// A part of it, quoted elsewhere.
    Excerpt,
    /// Nothing: it is remembered.
    Memory,
    /// There is no document.
    None,
}

impl Seen {
    const WORDS: [(&'static str, Self); 4] =
        [("read", Self::Read), ("excerpt", Self::Excerpt), ("memory", Self::Memory), ("none", Self::None)];

    /// Words for reports.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::Read => "seen",
            Self::Excerpt => "seen in part",
            Self::Memory => "not seen, remembered",
            Self::None => "no document",
        }
    }
}

/// One entry of the list of sources.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct SourceText {
    /// Key that rows cite.
    pub key: String,
    /// Author, year, title, edition.
    pub text: String,
    /// How much of it was seen.
    pub seen: Seen,
}

#[derive(Debug)]
pub(crate) struct SourceRow {
    pub source: SourceText,
    pub place: Place,
}

const KEYS: [&str; 3] = ["key", "text", "seen"];

pub(crate) fn read_source(table: &DeTable<'_>, range: Range<usize>, report: &mut Report<'_>) -> Option<SourceRow> {
    for key in table.keys().filter(|key| !KEYS.contains(&&**key.get_ref())) {
        report.unknown(key.span(), "key in a source", key.get_ref(), KEYS.into_iter());
    }
    let mut required = |name: &str| {
        let text = text_of(table, name, report);
        if !table.contains_key(name) {
            let help = Some(format!("add `{name} = \"…\"`"));
            report.add(range.clone(), format!("a source has no `{name}`"), help);
        }
        text
    };
    let (key, text, seen_word) = (required("key"), required("text"), required("seen"));
    let seen_word = seen_word?;
    let Some((_, seen)) = Seen::WORDS.into_iter().find(|(word, _)| *word == seen_word) else {
        let place = table.get("seen").map_or(range, toml::Spanned::span);
        report.unknown(place, "word for `seen`", &seen_word, Seen::WORDS.into_iter().map(|(word, _)| word));
        return None;
    };
    Some(SourceRow { source: SourceText { key: key?, text: text?, seen }, place: report.place(range) })
}

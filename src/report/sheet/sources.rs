//! The list of sources that the sheet's assumptions cite by number.

use maud::{Markup, html};

use crate::{material::Origin, report::Report};

/// Sources in the order in which they are first cited.
pub(super) struct Sources<'r> {
    keys: Vec<&'r str>,
    texts: Vec<&'r str>,
}

impl<'r> Sources<'r> {
    /// Of all values, then of all criteria.
    pub(super) fn of(report: &'r Report<'_>, origins: &[&'r Origin], criteria: &[&'r str]) -> Self {
        let mut keys: Vec<&str> = Vec::new();
        for key in origins.iter().map(|origin| origin.source.as_str()).chain(criteria.iter().copied()) {
            if !keys.contains(&key) {
                keys.push(key);
            }
        }
        let texts =
            keys.iter().map(|key| report.table.source(key).map_or(*key, |source| source.text.as_str())).collect();
        Self { keys, texts }
    }

    /// The number of a source, led to the list.
    pub(super) fn cite(&self, key: &str) -> Markup {
        let number = self.keys.iter().position(|known| *known == key).map_or(0, |k| k + 1);
        html! { a href={ "#source-" (number) } { "[" (number) "]" } }
    }

    pub(super) fn list(&self) -> Markup {
        html! {
            h3 { "Sources" }
            ol class="sources" { @for (k, text) in self.texts.iter().enumerate() { li id={ "source-" (k + 1) } { (text) } } }
        }
    }
}

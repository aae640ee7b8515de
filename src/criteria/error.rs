//! Why a criterion could not be read or changed.

use std::{error::Error, fmt};

use crate::units::ParseError;

/// A criterion that does not exist, or a text that can not be its value.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct CriterionError {
    /// The name as it was given.
    pub id: String,
    /// What is wrong.
    pub message: String,
    /// The name that was probably meant.
    pub near: Option<String>,
    /// Place and remedy within the text of the value.
    pub parse: Option<Box<ParseError>>,
}

impl CriterionError {
    pub(super) fn value(id: &str, message: impl Into<String>) -> Self {
        Self { id: id.to_owned(), message: message.into(), near: None, parse: None }
    }

    pub(super) fn text(id: &str, error: ParseError) -> Self {
        Self { id: id.to_owned(), message: error.message.clone(), near: None, parse: Some(Box::new(error)) }
    }

    pub(super) fn unknown<'a>(id: &str, known: impl Iterator<Item = &'a str>) -> Self {
        let near = known
            .map(|name| (strsim::jaro_winkler(id, name), name))
            .filter(|(likeness, _)| *likeness > 0.8)
            .max_by(|(a, _), (b, _)| a.total_cmp(b))
            .map(|(_, name)| name.to_owned());
        Self { id: id.to_owned(), message: format!("there is no criterion `{id}`"), near, parse: None }
    }
}

impl fmt::Display for CriterionError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.message)?;
        if let Some(near) = &self.near {
            write!(f, "; did you mean `{near}`?")?;
        }
        match self.parse.as_ref().and_then(|parse| parse.help.as_ref()) {
            Some(help) => write!(f, "; {help}"),
            None => Ok(()),
        }
    }
}

impl Error for CriterionError {}

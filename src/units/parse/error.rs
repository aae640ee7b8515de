//! What is wrong with a text, where, and what would be right.

use std::{error::Error, fmt, ops::Range};

/// A text that is not the quantity that is due.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ParseError {
    /// Bytes of the text that are at fault, always on character borders.
    pub range: Range<usize>,
    /// The cause.
    pub message: String,
    /// A way out.
    pub help: Option<String>,
    /// The whole text as it was probably meant; absent where there is more than one likely meaning.
    pub replacement: Option<String>,
}

impl ParseError {
    pub(super) fn new(range: Range<usize>, message: impl Into<String>) -> Self {
        Self { range, message: message.into(), help: None, replacement: None }
    }

    pub(super) fn help(mut self, help: impl Into<String>) -> Self {
        self.help = Some(help.into());
        self
    }

    /// Offers `good` in place of `range`, in the words of the offer and as a whole text.
    pub(super) fn offer(self, text: &str, range: Range<usize>, good: &str) -> Self {
        let (before, after) = (text.get(..range.start).unwrap_or(""), text.get(range.end..).unwrap_or(""));
        let whole = format!("{before}{good}{after}").trim().to_owned();
        let mut error = self.help(format!("did you mean `{whole}`?"));
        error.replacement = Some(whole);
        error
    }
}

impl fmt::Display for ParseError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.message)?;
        match &self.help {
            Some(help) => write!(f, "; {help}"),
            None => Ok(()),
        }
    }
}

impl Error for ParseError {}

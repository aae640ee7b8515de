//! A command line that asks for nothing there is, in the words of the program's other errors.

use clap::{
    CommandFactory, Error,
    error::{ContextKind, ContextValue, ErrorKind},
};

use super::Cli;

/// The message for a command line that was refused; none where what was asked for is help or the version.
pub(super) fn words(error: &Error) -> Option<String> {
    let (cause, near) = match error.kind() {
        ErrorKind::InvalidSubcommand => (
            format!("there is no command `{}`", one(error, ContextKind::InvalidSubcommand)?),
            all(error, ContextKind::SuggestedSubcommand),
        ),
        ErrorKind::UnknownArgument => {
            let given = one(error, ContextKind::InvalidArg)?;
            let cause = if given.starts_with('-') {
                format!("there is no option `{given}` here")
            } else {
                format!("`{given}` is one word too many")
            };
            (cause, all(error, ContextKind::SuggestedArg))
        }
        ErrorKind::MissingRequiredArgument => {
            (format!("{} is missing", listed(&all(error, ContextKind::InvalidArg))), Vec::new())
        }
        ErrorKind::InvalidValue => {
            let (option, given) = (one(error, ContextKind::InvalidArg)?, one(error, ContextKind::InvalidValue)?);
            let known = listed(&all(error, ContextKind::ValidValue));
            let cause = match (given.is_empty(), known.is_empty()) {
                (true, true) => format!("{option} says nothing"),
                (true, false) => format!("{option} says nothing: it takes one of {known}"),
                (false, true) => format!("{option} cannot be `{given}`"),
                (false, false) => format!("{option} takes one of {known}, not `{given}`"),
            };
            (cause, all(error, ContextKind::SuggestedValue))
        }
        ErrorKind::ArgumentConflict => {
            let (one, others) = (one(error, ContextKind::InvalidArg)?, all(error, ContextKind::PriorArg));
            if others.is_empty() || others.contains(&one) {
                (format!("{one} stands there twice"), Vec::new())
            } else {
                (format!("{one} and {} do not go together: leave one of them out", others.join(", ")), Vec::new())
            }
        }
        _ => return None,
    };
    let help = format!("`{} --help` tells what there is", asked());
    Some(match near.as_slice() {
        [] => format!("error: {cause}\nhelp: {help}\n"),
        near => format!("error: {cause}\nhelp: did you mean {}? {help}\n", listed(near)),
    })
}

/// The command that was asked for, as far as there is one.
fn asked() -> String {
    let first = std::env::args().nth(1);
    let known = Cli::command();
    let command = first.filter(|first| known.get_subcommands().any(|command| command.get_name() == first));
    command.map_or_else(|| "skinspan".to_owned(), |command| format!("skinspan {command}"))
}

fn one(error: &Error, kind: ContextKind) -> Option<String> {
    all(error, kind).into_iter().next()
}

fn all(error: &Error, kind: ContextKind) -> Vec<String> {
    match error.get(kind) {
        Some(ContextValue::String(text)) => vec![text.clone()],
        Some(ContextValue::Strings(texts)) => texts.clone(),
        _ => Vec::new(),
    }
}

fn listed(words: &[String]) -> String {
    words.iter().map(|word| format!("`{word}`")).collect::<Vec<_>>().join(", ")
}

//! Reads rooms of a TOML file into quantities; collects every problem with its place.

use std::{cell::RefCell, ops::Range};

use toml::{
    Spanned,
    de::{DeArray, DeTable, DeValue},
};

use super::problem::{Problem, Sink, nearest};
use crate::{
    geometry::Point,
    units::{self, Dimensioned, Length, Sign},
};

/// A value with the text and the place it was written at.
#[derive(Clone, Debug)]
pub(crate) struct Given<T> {
    pub(crate) value: T,
    pub(crate) text: String,
    pub(crate) range: Range<usize>,
}

/// One table of the file. Asking for a key makes it known; [`Room::close`] reports those nobody asked for.
pub(crate) struct Room<'a> {
    name: String,
    table: &'a DeTable<'a>,
    range: Range<usize>,
    asked: RefCell<Vec<&'static str>>,
    sink: &'a Sink,
}

impl<'a> Room<'a> {
    pub(crate) fn new(name: &str, table: &'a DeTable<'a>, range: Range<usize>, sink: &'a Sink) -> Self {
        Self { name: name.to_owned(), table, range, asked: RefCell::default(), sink }
    }

    pub(crate) fn range(&self) -> Range<usize> {
        self.range.clone()
    }

    pub(crate) fn report(&self, problem: Problem) {
        self.sink.report(problem);
    }

    pub(crate) fn value(&self, key: &'static str) -> Option<&'a Spanned<DeValue<'a>>> {
        self.asked.borrow_mut().push(key);
        self.table.get(key)
    }

    /// Reports that `key` has to be there; `example` is what one could write.
    pub(crate) fn missing(&self, key: &str, example: &str) {
        self.report(
            Problem::at(self.header(), format!("`{key}` is missing in {}", self.name))
                .help(format!("add a line such as `{key} = {example}`")),
        );
    }

    /// The header line alone: a room may be long, and the caret should stand at one place.
    fn header(&self) -> Range<usize> {
        self.range.start..self.range.start.max(self.range.end.min(self.range.start + 1))
    }

    pub(crate) fn text(&self, key: &'static str) -> Option<Given<String>> {
        let value = self.value(key)?;
        let range = value.span();
        if let DeValue::String(text) = value.get_ref() {
            return Some(Given { value: text.to_string(), text: text.to_string(), range });
        }
        self.report(
            Problem::at(range.clone(), format!("`{key}` is a text, but {} stands here", kind(value.get_ref())))
                .help("put it in quotation marks"),
        );
        None
    }

    pub(crate) fn count(&self, key: &'static str, most: usize) -> Option<usize> {
        let value = self.value(key)?;
        if let DeValue::Integer(digits) = value.get_ref()
            && let Ok(count) = digits.as_str().parse::<usize>()
            && count <= most
        {
            return Some(count);
        }
        self.report(Problem::at(value.span(), format!("`{key}` is a whole number from 0 to {most}")));
        None
    }

    /// One of a closed list of words.
    pub(crate) fn choice<T: Copy>(&self, key: &'static str, words: &[(&str, T)]) -> Option<Given<T>> {
        let given = self.text(key)?;
        if let Some((_, value)) = words.iter().find(|(word, _)| *word == given.value) {
            return Some(Given { value: *value, text: given.text, range: given.range });
        }
        let list = words.iter().map(|(word, _)| format!("\"{word}\"")).collect::<Vec<_>>().join(", ");
        let problem = Problem::at(given.range.clone(), format!("`{key}` is one of {list}"));
        self.report(match nearest(&given.value, words.iter().map(|(word, _)| *word)) {
            Some(word) => problem.help(format!("did you mean \"{word}\"?")).patch(given.range, format!("\"{word}\"")),
            None => problem,
        });
        None
    }

    pub(crate) fn quantity<Q: Dimensioned>(&self, key: &'static str, sign: Sign) -> Option<Given<Q>> {
        quantity(self.value(key)?, key, sign, self.sink)
    }

    pub(crate) fn required<Q: Dimensioned>(&self, key: &'static str, sign: Sign, example: &str) -> Option<Given<Q>> {
        if self.table.get(key).is_none() {
            self.asked.borrow_mut().push(key);
            self.missing(key, example);
            return None;
        }
        self.quantity(key, sign)
    }

    pub(crate) fn room(&self, key: &'static str) -> Option<Room<'a>> {
        let value = self.value(key)?;
        if let DeValue::Table(table) = value.get_ref() {
            return Some(Room::new(&format!("`{key}`"), table, value.span(), self.sink));
        }
        self.report(
            Problem::at(value.span(), format!("`{key}` is a table, but {} stands here", kind(value.get_ref())))
                .help(format!("write `{key} = {{ … }}` or a header `[{key}]`")),
        );
        None
    }

    pub(crate) fn rooms(&self, key: &'static str) -> Vec<Room<'a>> {
        let Some(value) = self.value(key) else { return Vec::new() };
        if let DeValue::Array(items) = value.get_ref() {
            let rooms = items.iter().filter_map(|item| match item.get_ref() {
                DeValue::Table(table) => Some(Room::new(&format!("`[[{key}]]`"), table, item.span(), self.sink)),
                other => {
                    self.report(Problem::at(item.span(), format!("a table is due here, not {}", kind(other))));
                    None
                }
            });
            return rooms.collect();
        }
        self.report(
            Problem::at(value.span(), format!("`{key}` is a list of tables"))
                .help(format!("write a header `[[{key}]]` with two pairs of brackets for each")),
        );
        Vec::new()
    }

    pub(crate) fn list(&self, key: &'static str) -> Option<&'a Spanned<DeValue<'a>>> {
        let value = self.value(key)?;
        if matches!(value.get_ref(), DeValue::Array(_)) {
            return Some(value);
        }
        self.report(
            Problem::at(value.span(), format!("`{key}` is a list, but {} stands here", kind(value.get_ref())))
                .help("write it in square brackets"),
        );
        None
    }

    pub(crate) fn texts(&self, key: &'static str) -> Option<Vec<Given<String>>> {
        let DeValue::Array(items) = self.list(key)?.get_ref() else { return None };
        Some(
            items
                .iter()
                .filter_map(|item| match item.get_ref() {
                    DeValue::String(text) => {
                        Some(Given { value: text.to_string(), text: text.to_string(), range: item.span() })
                    }
                    other => {
                        self.report(
                            Problem::at(item.span(), format!("a text is due here, not {}", kind(other)))
                                .help("put it in quotation marks"),
                        );
                        None
                    }
                })
                .collect(),
        )
    }

    pub(crate) fn quantities<Q: Dimensioned>(&self, key: &'static str, sign: Sign) -> Option<Vec<Given<Q>>> {
        let DeValue::Array(items) = self.list(key)?.get_ref() else { return None };
        Some(items.iter().filter_map(|item| quantity(item, key, sign, self.sink)).collect())
    }

    /// A place on the top, `["30 in", "38 in"]`.
    pub(crate) fn point(&self, key: &'static str) -> Option<Given<Point>> {
        let value = self.list(key)?;
        let DeValue::Array(items) = value.get_ref() else { return None };
        Some(Given { value: point(items, &value.span(), self.sink)?, text: String::new(), range: value.span() })
    }

    /// A line of places, `[["12 in", "20 in"], ["98 in", "20 in"]]`.
    pub(crate) fn points(&self, key: &'static str) -> Option<Given<Vec<Point>>> {
        let value = self.list(key)?;
        let DeValue::Array(items) = value.get_ref() else { return None };
        let points: Vec<_> = items
            .iter()
            .filter_map(|item| match item.get_ref() {
                DeValue::Array(pair) => point(pair, &item.span(), self.sink),
                other => {
                    self.report(
                        Problem::at(item.span(), format!("a place is due here, not {}", kind(other)))
                            .help("write a place as [\"30 in\", \"38 in\"]: along the length, along the width"),
                    );
                    None
                }
            })
            .collect();
        (points.len() == items.len()).then(|| Given { value: points, text: String::new(), range: value.span() })
    }

    /// Every key and value as text, for tables whose keys are names of the user's choice.
    pub(crate) fn entries(&self) -> impl Iterator<Item = (Given<String>, &'a Spanned<DeValue<'a>>)> {
        self.table.iter().map(|(key, value)| {
            (Given { value: key.get_ref().to_string(), text: key.get_ref().to_string(), range: key.span() }, value)
        })
    }

    /// Reports every key that nobody asked for.
    pub(crate) fn close(self) {
        let asked = self.asked.into_inner();
        for key in self.table.keys() {
            let name = key.get_ref().as_ref();
            if asked.contains(&name) {
                continue;
            }
            let problem = Problem::at(key.span(), format!("`{name}` is not a key of {}", self.name));
            self.sink.report(match nearest(name, asked.iter().copied()) {
                Some(known) => problem.help(format!("did you mean `{known}`?")).patch(key.span(), known),
                None => problem.help(format!("its keys are {}", asked.join(", "))),
            });
        }
    }
}

/// Reads one quantity; a bare number is offered with a unit.
pub(crate) fn quantity<Q: Dimensioned>(
    value: &Spanned<DeValue<'_>>,
    key: &str,
    sign: Sign,
    sink: &Sink,
) -> Option<Given<Q>> {
    let range = value.span();
    let text = match value.get_ref() {
        DeValue::String(text) => text.to_string(),
        // The parser of quantities knows what to offer for a number without a unit.
        DeValue::Integer(number) => number.to_string(),
        DeValue::Float(number) => number.to_string(),
        other => {
            sink.report(Problem::at(
                range,
                format!("`{key}` is {} in quotation marks, but {} stands here", Q::ARTICLE, kind(other)),
            ));
            return None;
        }
    };
    let quoted = matches!(value.get_ref(), DeValue::String(_));
    match units::parse_signed::<Q>(&text, sign, &format!("`{key}`")) {
        Ok(value) => Some(Given { value, text, range }),
        Err(error) => {
            // In a plain one-line string the bytes of the value stand one behind the quotation mark.
            let plain = quoted && range.len() == text.len() + 2;
            let place = if plain {
                range.start + 1 + error.range.start..range.start + 1 + error.range.end
            } else {
                range.clone()
            };
            let mut problem = Problem::at(place, error.message);
            problem.help = error.help;
            if let Some(replacement) = error.replacement {
                problem = problem.patch(range, format!("\"{replacement}\""));
            }
            sink.report(problem);
            None
        }
    }
}

fn point(items: &DeArray<'_>, range: &Range<usize>, sink: &Sink) -> Option<Point> {
    if items.len() != 2 {
        sink.report(
            Problem::at(range.clone(), format!("a place has two coordinates, not {}", items.len()))
                .help("write [\"30 in\", \"38 in\"]: along the length, along the width"),
        );
        return None;
    }
    let mut coordinates = items.iter().map(|item| quantity::<Length>(item, "a coordinate", Sign::Any, sink));
    let (x, y) = (coordinates.next().flatten(), coordinates.next().flatten());
    Some(Point { x: x?.value, y: y?.value })
}

const fn kind(value: &DeValue<'_>) -> &'static str {
    match value {
        DeValue::String(_) => "a text",
        DeValue::Integer(_) | DeValue::Float(_) => "a bare number",
        DeValue::Boolean(_) => "true or false",
        DeValue::Datetime(_) => "a date",
        DeValue::Array(_) => "a list",
        DeValue::Table(_) => "a table",
    }
}

//! Reads rooms of a TOML file into quantities; collects every problem with its place.

use std::{
    cell::{Cell, RefCell},
    ops::Range,
};

use toml::{
    Spanned,
    de::{DeArray, DeInteger, DeTable, DeValue},
};

use super::{
    keys::{Closing, Missed},
    problem::{Problem, Sink, nearest},
};
use crate::{
    geometry::{Corner, Point},
    units::{self, Dimensioned, Length, ParseError, Sign, System},
};

/// A value with the text and the place it was written at.
#[derive(Clone, Debug)]
pub(crate) struct Given<T> {
    pub(crate) value: T,
    pub(crate) text: String,
    pub(crate) range: Range<usize>,
}

/// A list of texts, with nothing in place of what is none.
pub(crate) type Texts = Vec<Option<Given<String>>>;

/// Name of the room that is the whole file.
pub(crate) const FILE: &str = "the file";

/// One table of the file. Asking for a key makes it known; [`Room::close`] reports those nobody asked for.
pub(crate) struct Room<'a> {
    name: String,
    table: &'a DeTable<'a>,
    range: Range<usize>,
    asked: RefCell<Vec<&'static str>>,
    missed: RefCell<Vec<Missed>>,
    sink: &'a Sink,
}

impl<'a> Room<'a> {
    pub(crate) fn new(name: &str, table: &'a DeTable<'a>, range: Range<usize>, sink: &'a Sink) -> Self {
        Self { name: name.to_owned(), table, range, asked: RefCell::default(), missed: RefCell::default(), sink }
    }

    pub(crate) fn report(&self, problem: Problem) {
        self.sink.report(problem);
    }

    /// A quantity in the units of the report, with the others behind it.
    pub(crate) fn both<Q: Dimensioned>(&self, quantity: Q) -> String {
        units::both(quantity, self.sink.units())
    }

    /// From here on problems say quantities first in these units.
    pub(crate) fn say_in(&self, units: System) {
        self.sink.say_in(units);
    }

    pub(crate) fn value(&self, key: &'static str) -> Option<&'a Spanned<DeValue<'a>>> {
        self.asked.borrow_mut().push(key);
        self.table.get(key)
    }

    /// Reports that `key` has to be there; `example` is what one could write.
    pub(crate) fn missing(&self, key: &'static str, example: &str) {
        self.missing_or(key, example, "");
    }

    /// As [`Room::missing`], with what else one could write.
    pub(crate) fn missing_or(&self, key: &'static str, example: &str, or: &str) {
        let problem = self.without(key).help(format!("write for example `{key} = {example}`{or}"));
        self.miss(&[key], problem, Some(format!("{key} = {example}")));
    }

    /// That `key` has to be there, without a way out.
    pub(crate) fn without(&self, key: &str) -> Problem {
        Problem::at(self.range.clone(), format!("`{key}` is missing in {}", self.name))
    }

    /// Reports that `key` has to be there, in other words; what is there and wrong has been reported as such. The
    /// report waits for [`Room::close`]: a misspelt key is one mistake, not an unknown key and a missing one.
    pub(crate) fn absent(&self, key: &'static str, problem: Problem) {
        self.absent_all(&[key], problem);
    }

    /// Reports that one of `keys` has to be there.
    pub(crate) fn absent_all(&self, keys: &[&'static str], problem: Problem) {
        self.miss(keys, problem, None);
    }

    fn miss(&self, keys: &[&'static str], problem: Problem, example: Option<String>) {
        let mut missed = self.missed.borrow_mut();
        if keys.iter().all(|key| self.value(key).is_none()) && missed.iter().all(|known| known.problem != problem) {
            missed.push(Missed { keys: keys.to_vec(), problem, example });
        }
    }

    /// Its place.
    pub(crate) fn place(&self) -> Range<usize> {
        self.range.clone()
    }

    /// Name and place, for a problem of the room as a whole.
    pub(crate) fn problem(&self, message: &str) -> Problem {
        Problem::at(self.range.clone(), format!("{} {message}", self.name))
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

    /// Makes keys known without asking for them, where what decides which of them count could not be read.
    pub(crate) fn trust_keys(&self, keys: &[&'static str]) {
        self.asked.borrow_mut().extend_from_slice(keys);
    }

    pub(crate) fn count(&self, key: &'static str, least: usize, most: usize) -> Option<usize> {
        let value = self.value(key)?;
        if let DeValue::Integer(digits) = value.get_ref()
            && let Ok(count) = digits.as_str().parse::<usize>()
            && (least..=most).contains(&count)
        {
            return Some(count);
        }
        let problem = Problem::at(value.span(), format!("`{key}` is a whole number from {least} to {most}"));
        let whole = match value.get_ref() {
            DeValue::Integer(digits) => decimal(digits).parse::<i128>().ok(),
            _ => None,
        };
        self.report(match value.get_ref() {
            DeValue::String(text)
                if text.trim().parse::<usize>().is_ok_and(|count| (least..=most).contains(&count)) =>
            {
                problem.help("a number stands without quotation marks").patch(value.span(), text.trim())
            }
            DeValue::String(text) if text == "none" && least == 0 => {
                problem.help("did you mean `0`?").patch(value.span(), "0")
            }
            _ => problem.help(match whole {
                Some(whole) if whole > 0 => format!("it is {most} at the most"),
                Some(_) if least > 0 => format!("it is {least} at the least"),
                _ => format!("write for example `{key} = {}`", least.max(1)),
            }),
        });
        None
    }

    /// Two whole numbers, one for each direction.
    pub(crate) fn counts(&self, key: &'static str, most: usize) -> Option<[u32; 2]> {
        let value = self.list(key)?;
        let DeValue::Array(items) = value.get_ref() else { return None };
        let counts: Vec<u32> = items
            .iter()
            .filter_map(|item| match item.get_ref() {
                DeValue::Integer(digits) => digits.as_str().parse::<u32>().ok(),
                _ => None,
            })
            .filter(|count| *count > 0 && (*count as usize) <= most)
            .collect();
        if let ([x, y], 2) = (counts.as_slice(), items.len()) {
            return Some([*x, *y]);
        }
        self.report(
            Problem::at(value.span(), format!("`{key}` is two whole numbers from 1 to {most}"))
                .help(format!("write for example `{key} = [2, 3]`: along the length, along the width")),
        );
        None
    }

    /// Yes or no.
    pub(crate) fn flag(&self, key: &'static str) -> Option<bool> {
        let value = self.value(key)?;
        if let DeValue::Boolean(flag) = value.get_ref() {
            return Some(*flag);
        }
        let problem = Problem::at(value.span(), format!("`{key}` is true or false, not {}", kind(value.get_ref())));
        self.report(match value.get_ref() {
            DeValue::String(text) if matches!(text.as_ref(), "true" | "false") => {
                problem.help("it stands without quotation marks").patch(value.span(), text.to_string())
            }
            _ => problem,
        });
        None
    }

    /// One of a closed list of words.
    pub(crate) fn choice<T: Copy>(&self, key: &'static str, words: &[(&str, T)]) -> Option<Given<T>> {
        let given = self.text(key)?;
        if let Some((_, value)) = words.iter().find(|(word, _)| *word == given.value) {
            return Some(Given { value: *value, text: given.text, range: given.range });
        }
        let list = words.iter().map(|(word, _)| format!("\"{word}\"")).collect::<Vec<_>>().join(", ");
        let problem = Problem::at(given.range.clone(), format!("`{key}` is one of {list}, not \"{}\"", given.value));
        self.report(match nearest(&given.value, words.iter().map(|(word, _)| *word)) {
            Some(word) => problem.help(format!("did you mean \"{word}\"?")).patch(given.range, format!("\"{word}\"")),
            None => problem,
        });
        None
    }

    /// What may be left out.
    pub(crate) fn quantity<Q: Dimensioned>(&self, key: &'static str, sign: Sign) -> Option<Given<Q>> {
        self.quantity_or(key, sign, &format!(", or leave `{key}` out"))
    }

    /// As [`Room::quantity`]; `or` says what to do where it is zero and must be more.
    pub(crate) fn quantity_or<Q: Dimensioned>(&self, key: &'static str, sign: Sign, or: &str) -> Option<Given<Q>> {
        quantity(self.value(key)?, key, (sign, or), self.sink)
    }

    pub(crate) fn required<Q: Dimensioned>(&self, key: &'static str, sign: Sign, example: &str) -> Option<Given<Q>> {
        self.missing(key, example);
        self.quantity_or(key, sign, "")
    }

    /// Whether this is the file itself, whose tables have headers of one word.
    fn is_file(&self) -> bool {
        self.name == FILE
    }

    pub(crate) fn room(&self, key: &'static str) -> Option<Room<'a>> {
        let value = self.value(key)?;
        if let DeValue::Table(table) = value.get_ref() {
            // The key is short and stands at the head of its table, be that inline or under a header.
            let head = self.table.get_key_value(key).map_or_else(|| value.span(), |(key, _)| key.span());
            return Some(Room::new(&format!("`{key}`"), table, head, self.sink));
        }
        self.report(
            Problem::at(value.span(), format!("`{key}` is a table, but {} stands here", kind(value.get_ref()))).help(
                if self.is_file() {
                    format!("write `{key} = {{ … }}` or a header `[{key}]`")
                } else {
                    format!("write `{key} = {{ … }}`")
                },
            ),
        );
        None
    }

    /// As [`Room::rooms`], each with its name; one without is called after its kind and its place. Two of one name are
    /// reported: the report and the other tables tell them apart by it.
    pub(crate) fn named_rooms(&self, key: &'static str) -> Vec<(String, Room<'a>)> {
        let mut named: Vec<(String, Room<'a>)> = Vec::new();
        for (index, room) in self.rooms(key).into_iter().enumerate() {
            let given = room.text("name");
            let name = given.as_ref().map_or_else(|| format!("{key} {}", index + 1), |given| given.value.clone());
            if named.iter().any(|(known, _)| *known == name) {
                let range = given.map_or_else(|| room.place(), |given| given.range);
                room.report(
                    Problem::at(range, format!("there are two `[[{key}]]` called {name}"))
                        .help("the report tells them apart by their names: give this one another `name`"),
                );
            }
            named.push((name, room));
        }
        named
    }

    /// A table where one stands, and nothing where something else does that may stand there as well.
    pub(crate) fn room_or_text(&self, key: &'static str) -> Option<Room<'a>> {
        match self.value(key)?.get_ref() {
            DeValue::Table(_) => self.room(key),
            _ => None,
        }
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
            Problem::at(
                value.span(),
                format!("`{key}` is a list of tables, but {} stands here", kind(value.get_ref())),
            )
            .help(if self.is_file() {
                format!("write a header `[[{key}]]` with two pairs of brackets for each")
            } else {
                format!("write `{key} = [{{ … }}]`")
            }),
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

    /// A list of texts, with nothing in place of what is none.
    pub(crate) fn texts(&self, key: &'static str) -> Option<Texts> {
        let DeValue::Array(items) = self.list(key)?.get_ref() else { return None };
        Some(texts(items, self.sink))
    }

    /// A list of lists of texts, each with its place; `example` is what one could write where a list is none.
    pub(crate) fn lists_of_texts(&self, key: &'static str, example: &str) -> Option<Vec<Given<Texts>>> {
        let DeValue::Array(items) = self.list(key)?.get_ref() else { return None };
        let mut lists = Vec::new();
        for item in items {
            let DeValue::Array(list) = item.get_ref() else {
                // A list that was meant as the only one is one mistake.
                self.report(
                    Problem::at(
                        item.span(),
                        format!("`{key}` is a list of lists, but {} stands here", kind(item.get_ref())),
                    )
                    .help(format!("write `{key} = {example}`")),
                );
                return None;
            };
            lists.push(Given { value: texts(list, self.sink), text: String::new(), range: item.span() });
        }
        Some(lists)
    }

    pub(crate) fn quantities<Q: Dimensioned>(&self, key: &'static str, sign: Sign) -> Option<Vec<Given<Q>>> {
        let DeValue::Array(items) = self.list(key)?.get_ref() else { return None };
        let bare = Cell::new(false);
        Some(items.iter().filter_map(|item| one_of(item, key, sign, (&bare, self.sink))).collect())
    }

    /// A place on the top, `["30 in", "38 in"]`.
    pub(crate) fn point(&self, key: &'static str) -> Option<Given<Point>> {
        let value = self.list(key)?;
        let DeValue::Array(items) = value.get_ref() else { return None };
        let at = point(items, &value.span(), (&Cell::new(false), self.sink))?;
        Some(Given { value: at, text: String::new(), range: value.span() })
    }

    /// A line of places, `[["12 in", "20 in"], ["98 in", "20 in"]]`.
    pub(crate) fn points(&self, key: &'static str) -> Option<Given<Vec<Given<Point>>>> {
        let value = self.list(key)?;
        let DeValue::Array(items) = value.get_ref() else { return None };
        if let Some(no_place) = items.iter().find(|item| !matches!(item.get_ref(), DeValue::Array(_))) {
            self.report(
                Problem::at(no_place.span(), format!("a place is due here, not {}", kind(no_place.get_ref())))
                    .help("write a place as [\"30 in\", \"38 in\"]: along the length, along the width"),
            );
            return None;
        }
        let bare = Cell::new(false);
        let points: Vec<_> = items
            .iter()
            .filter_map(|item| match item.get_ref() {
                DeValue::Array(pair) => {
                    let value = point(pair, &item.span(), (&bare, self.sink))?;
                    Some(Given { value, text: String::new(), range: item.span() })
                }
                _ => None,
            })
            .collect();
        (points.len() == items.len()).then(|| Given { value: points, text: String::new(), range: value.span() })
    }

    /// Corners with a rounding each, `[["0 in", "0 in"], ["98 in", "20 in", { radius = "9 in" }]]`; `usual` where a corner
    /// says none.
    pub(crate) fn corners(&self, key: &'static str, usual: Length) -> Option<Given<Vec<Given<Corner>>>> {
        let value = self.list(key)?;
        let DeValue::Array(items) = value.get_ref() else { return None };
        let bare = Cell::new(false);
        let corners: Vec<_> = items.iter().filter_map(|item| corner(item, usual, (&bare, self.sink))).collect();
        (corners.len() == items.len()).then(|| Given { value: corners, text: String::new(), range: value.span() })
    }

    /// Every key and value as text, for tables whose keys are names of the user's choice.
    pub(crate) fn entries(&self) -> impl Iterator<Item = (Given<String>, &'a Spanned<DeValue<'a>>)> {
        self.table.iter().map(|(key, value)| {
            (Given { value: key.get_ref().to_string(), text: key.get_ref().to_string(), range: key.span() }, value)
        })
    }

    /// Reports every key that nobody asked for, and those that had to be there.
    pub(crate) fn close(self) {
        let mut known: Vec<&'static str> = Vec::new();
        for key in self.asked.into_inner() {
            if !known.contains(&key) {
                known.push(key);
            }
        }
        let keys = self.table.keys().map(|key| (key.get_ref().as_ref(), key.span())).collect();
        let (name, place, missed) = (self.name.as_str(), self.range, self.missed.into_inner());
        for problem in (Closing { name, place, known: &known, keys, missed }).problems() {
            self.sink.report(problem);
        }
    }

    /// Whether a key is not there, but one that may have been meant for it.
    pub(crate) fn misspells(&self, key: &str) -> bool {
        let other = |there: &&str| nearest(there, [key]).is_some();
        self.table.get(key).is_none() && self.table.keys().any(|there| other(&there.get_ref().as_ref()))
    }
}

fn texts(items: &DeArray<'_>, sink: &Sink) -> Texts {
    let text = |item: &Spanned<DeValue<'_>>| match item.get_ref() {
        DeValue::String(text) => Some(Given { value: text.to_string(), text: text.to_string(), range: item.span() }),
        other => {
            sink.report(
                Problem::at(item.span(), format!("a text is due here, not {}", kind(other)))
                    .help("put it in quotation marks"),
            );
            None
        }
    };
    items.iter().map(text).collect()
}

/// Reads one quantity; a bare number is offered with a unit.
pub(crate) fn quantity<Q: Dimensioned>(
    value: &Spanned<DeValue<'_>>,
    key: &str,
    (sign, or): (Sign, &str),
    sink: &Sink,
) -> Option<Given<Q>> {
    let range = value.span();
    let text = match value.get_ref() {
        DeValue::String(text) => text.to_string(),
        // The parser of quantities knows what to offer for a number without a unit.
        DeValue::Integer(number) => decimal(number),
        DeValue::Float(number) => number.to_string(),
        other => {
            let due = format!("`{key}` is {} in quotation marks, but {} stands here", Q::ARTICLE, kind(other));
            sink.report(Problem::at(range, due).help(in_quotation_marks(&units::example::<Q>())));
            return None;
        }
    };
    match units::parse_signed::<Q>(&text, sign, &format!("`{key}`")) {
        Ok(value) => Some(Given { value, text, range }),
        Err(mut error) => {
            if units::parse::<Q>(&text).is_ok_and(|written| written.si() == 0.0) {
                error.help = error.help.map(|help| help + or);
            }
            sink.report(fault(value, &text, error));
            None
        }
    }
}

/// One of a list of quantities. Whoever writes a list of bare numbers makes one mistake: `bare` says that it was reported.
fn one_of<Q: Dimensioned>(
    item: &Spanned<DeValue<'_>>,
    key: &str,
    sign: Sign,
    (bare, sink): (&Cell<bool>, &Sink),
) -> Option<Given<Q>> {
    let number = matches!(item.get_ref(), DeValue::Integer(_) | DeValue::Float(_));
    if number && bare.get() {
        return None;
    }
    let given = quantity(item, key, (sign, ""), sink);
    bare.set(bare.get() || number && given.is_none());
    given
}

/// What is wrong with the text of a value, at its place in the file.
pub(crate) fn fault(value: &Spanned<DeValue<'_>>, text: &str, error: ParseError) -> Problem {
    let range = value.span();
    let quoted = matches!(value.get_ref(), DeValue::String(_));
    // In a plain one-line string the bytes of the value stand one behind the quotation mark.
    let plain = quoted && range.len() == text.len() + 2;
    let place =
        if plain { range.start + 1 + error.range.start..range.start + 1 + error.range.end } else { range.clone() };
    let mut problem = Problem::at(place, error.message);
    problem.help = if quoted { error.help } else { error.help.map(|help| in_quotation_marks(&help)) };
    match error.replacement {
        Some(replacement) => problem.patch(range, format!("\"{}\"", escaped(&replacement))),
        None => problem,
    }
}

/// An offer such as `1.5 mm` as it has to stand in the file where no text stands yet.
fn in_quotation_marks(help: &str) -> String {
    help.split('`').enumerate().fold(String::new(), |mut whole, (index, part)| {
        whole.push_str(match (index, index % 2) {
            (0, _) => "",
            (_, 1) => "`\"",
            _ => "\"`",
        });
        whole.push_str(part);
        whole
    })
}

/// A text as it stands between quotation marks of a TOML file.
fn escaped(text: &str) -> String {
    text.replace('\\', "\\\\").replace('"', "\\\"")
}

/// A whole number of the file, of whatever base, in plain digits.
pub(crate) fn decimal(number: &DeInteger<'_>) -> String {
    i128::from_str_radix(number.as_str(), number.radix()).map_or_else(|_| number.to_string(), |value| value.to_string())
}

fn point(items: &DeArray<'_>, range: &Range<usize>, (bare, sink): (&Cell<bool>, &Sink)) -> Option<Point> {
    if items.len() != 2 {
        sink.report(
            Problem::at(range.clone(), format!("a place has two coordinates, not {}", items.len()))
                .help("write [\"30 in\", \"38 in\"]: along the length, along the width"),
        );
        return None;
    }
    let mut coordinates = items.iter().map(|item| one_of::<Length>(item, "a coordinate", Sign::Any, (bare, sink)));
    let (x, y) = (coordinates.next().flatten(), coordinates.next().flatten());
    Some(Point { x: x?.value, y: y?.value })
}

fn corner(item: &Spanned<DeValue<'_>>, usual: Length, (bare, sink): (&Cell<bool>, &Sink)) -> Option<Given<Corner>> {
    let form = "write [\"98 in\", \"20 in\"], or [\"98 in\", \"20 in\", { radius = \"9 in\" }]";
    let due = |found: String| Problem::at(item.span(), format!("a corner is due here, not {found}")).help(form);
    let DeValue::Array(parts) = item.get_ref() else {
        sink.report(due(kind(item.get_ref()).to_owned()));
        return None;
    };
    let mut parts = parts.iter();
    let (Some(x), Some(y), rounding, None) = (parts.next(), parts.next(), parts.next(), parts.next()) else {
        sink.report(due("this list".to_owned()));
        return None;
    };
    let [x, y] = [x, y].map(|item| one_of::<Length>(item, "a coordinate", Sign::Any, (bare, sink)));
    let radius = match rounding.map(|rounding| (rounding, rounding.get_ref())) {
        None => Some(usual),
        Some((place, DeValue::Table(table))) => {
            let room = Room::new("a corner", table, place.span(), sink);
            let radius = room.required::<Length>("radius", Sign::NotNegative, "\"9 in\"");
            room.close();
            radius.map(|given| given.value)
        }
        Some((place, other)) => {
            sink.report(
                Problem::at(place.span(), format!("the rounding of a corner is a table, not {}", kind(other)))
                    .help(form),
            );
            None
        }
    };
    let at = Point { x: x?.value, y: y?.value };
    Some(Given { value: Corner { at, radius: radius? }, text: String::new(), range: item.span() })
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

//! Lines on a page of a given width: wrapping, headings, rows with columns.

use anstyle::{Effects, Style};

/// A page that grows downwards.
pub(super) struct Page {
    text: String,
    width: usize,
}

/// How a word stands out. It never carries the meaning alone: the words say the same.
#[derive(Clone, Copy)]
pub(super) enum Tone {
    Good,
    Bad,
    Open,
    Strong,
    Quiet,
}

impl Tone {
    const fn style(self) -> Style {
        let style = Style::new();
        match self {
            Self::Good => style.fg_color(Some(anstyle::Color::Ansi(anstyle::AnsiColor::Green))).effects(Effects::BOLD),
            Self::Bad => style.fg_color(Some(anstyle::Color::Ansi(anstyle::AnsiColor::Red))).effects(Effects::BOLD),
            Self::Open => style.fg_color(Some(anstyle::Color::Ansi(anstyle::AnsiColor::Yellow))).effects(Effects::BOLD),
            Self::Strong => style.effects(Effects::BOLD),
            Self::Quiet => style.effects(Effects::DIMMED),
        }
    }

    /// The text with its tone.
    pub(super) fn paint(self, text: &str) -> String {
        let style = self.style();
        format!("{style}{text}{style:#}")
    }
}

impl Page {
    pub(super) const fn new(width: usize) -> Self {
        Self { text: String::new(), width }
    }

    pub(super) const fn width(&self) -> usize {
        self.width
    }

    pub(super) fn done(self) -> String {
        self.text
    }

    pub(super) fn blank(&mut self) {
        self.text.push('\n');
    }

    pub(super) fn line(&mut self, line: &str) {
        self.text.push_str(line.trim_end());
        self.text.push('\n');
    }

    pub(super) fn heading(&mut self, heading: &str) {
        self.blank();
        if heading.chars().count() <= self.width {
            self.line(&Tone::Strong.paint(heading));
            return;
        }
        let start = self.text.len();
        self.paragraph("", heading);
        let wrapped: Vec<String> = self.text[start..].lines().map(|line| Tone::Strong.paint(line)).collect();
        self.text.truncate(start);
        for line in wrapped {
            self.line(&line);
        }
    }

    /// A paragraph whose first words stand out, the others below them.
    pub(super) fn painted(&mut self, tone: Tone, words: &str, text: &str) {
        let start = self.text.len();
        self.paragraph("", &format!("{words} {text}"));
        // Wrapping counts letters, which the codes of a style are none of.
        self.text.replace_range(start..start + words.len(), &tone.paint(words));
    }

    /// A paragraph, wrapped; its first line begins with `lead`, the others are indented as far.
    pub(super) fn paragraph(&mut self, lead: &str, text: &str) {
        let indent = lead.chars().count();
        let mut line = lead.to_owned();
        let mut length = indent;
        let mut empty = true;
        for word in text.split_whitespace() {
            let size = word.chars().count();
            if !empty && length + 1 + size > self.width {
                self.line(&line);
                line = " ".repeat(indent);
                length = indent;
                empty = true;
            }
            if !empty {
                line.push(' ');
                length += 1;
            }
            line.push_str(word);
            length += size;
            empty = false;
        }
        self.line(&line);
    }
}

/// A row of a name and cells; a name that is wider than its column has a line to itself.
pub(super) fn named(lead: &str, name: &str, wide: usize, cells: &str) -> String {
    if name.chars().count() > wide {
        format!("{lead}{name}\n{lead}{}{cells}", " ".repeat(wide))
    } else {
        format!("{lead}{}{cells}", left(name, wide))
    }
}

/// A cell that is as wide as its column: to the left for words, to the right for numbers.
pub(super) fn left(text: &str, width: usize) -> String {
    let gap = width.saturating_sub(text.chars().count());
    format!("{text}{}", " ".repeat(gap))
}

pub(super) fn right(text: &str, width: usize) -> String {
    // A number that is too wide moves its line along rather than run into the one before.
    let gap = width.saturating_sub(text.chars().count()).max(1);
    format!("{}{text}", " ".repeat(gap))
}

#[cfg(test)]
mod tests {
    use super::right;

    #[test]
    fn numbers_do_not_run_together() {
        let cells = ["1.00", "100.6 %", "1234.5 %"].map(|cell| right(cell, 7)).concat();
        assert_eq!(cells, "   1.00 100.6 % 1234.5 %");
    }
}

//! Bars of how much is used, beside the table of checks: on a terminal that has room for them, never in a pipe or a file, whose
//! page is narrower.

use uom::si::ratio::ratio;

use super::super::page::left;
use crate::check::Outcome;

/// Width of the table.
const TABLE: usize = 81;
/// Columns of the shortest bar of use, and of the longest.
const SHORTEST: usize = 16;
const LONGEST: usize = 32;

/// A line of the table with the bar of its outcome, where the page is wide enough.
pub(super) fn with_bar(line: &str, outcome: &Outcome, width: usize) -> String {
    let room = width.saturating_sub(TABLE).min(LONGEST);
    match outcome.utilisation() {
        Some(used) if room >= SHORTEST => format!("{}{}", left(line, TABLE), bar(used.get::<ratio>(), room)),
        _ => line.to_owned(),
    }
}

/// All of it is used where the bar reaches the stroke, at four fifths of the room.
fn bar(used: f64, room: usize) -> String {
    let full = room * 4 / 5;
    #[expect(
        clippy::cast_precision_loss,
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "some dozens of columns; a float that is too large for them becomes the largest"
    )]
    let mut long = ((used * full as f64).round().max(0.0) as usize).min(room);
    // Rounding must not make a failure read as a pass, nor the other way.
    if used > 1.0 {
        long = long.max(full + 1);
    } else {
        long = long.min(full);
    }
    let cell = |k: usize| match k {
        _ if k < long => '█',
        _ if k == full => '│',
        _ => ' ',
    };
    (0..room).map(cell).collect::<String>().trim_end().to_owned()
}

#[cfg(test)]
mod tests {
    use super::bar;

    #[test]
    fn a_bar_reaches_its_stroke_only_where_all_is_used() {
        assert_eq!(bar(0.5, 20), "████████        │");
        assert_eq!(bar(1.0, 20), "████████████████│");
        assert_eq!(bar(1.001, 20), "█████████████████");
        assert_eq!(bar(f64::INFINITY, 20), "████████████████████");
        assert_eq!(bar(0.0, 20), "                │");
    }
}

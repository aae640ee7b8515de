//! What a top stands on and what lies in its core, in other ways than the file has it.

use crate::{
    advice::{Change, PipeRow, changed},
    top::{Backing, Top},
    units::{Length, System, both},
};

/// A top with some changes made, before a core and skins are chosen for it.
#[derive(Clone, Debug, PartialEq)]
pub struct Arrangement {
    /// What differs from the file, in the order in which it was changed; nothing for the file's own.
    pub changes: Vec<Change>,
    /// Backings of the file, as their places in its list, that lay along a pipe which is gone, served nothing else, and are left out.
    pub left_out: Vec<usize>,
    /// The top as it is then.
    pub top: Top,
}

/// What is to be tried in place of what the file has; the file's own is always among it.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Arranging {
    /// Numbers of pipes, evenly spaced between the outer two.
    pub pipes: Vec<usize>,
    /// Overhangs beyond the outer pipes, on both sides.
    pub overhangs: Vec<Length>,
    /// Backings by their places in the list.
    pub backings: Vec<BackingOptions>,
}

/// What is to be tried of a backing.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct BackingOptions {
    /// The backing, as its place in the list.
    pub backing: usize,
    /// Its widths.
    pub widths: Vec<Length>,
    /// Boards that it may be of, by their rows.
    pub boards: Vec<String>,
}

/// Why there is no such arrangement.
#[derive(Clone, Debug, PartialEq)]
pub enum NoArrangement {
    /// Pipes do not stand in a row that can be filled up or moved.
    NoRow,
    /// The overhangs beyond the outer pipes differ: by how far each.
    Uneven([Length; 2]),
    /// A change cannot be made, by itself or after others.
    CannotBe(Change),
}

impl NoArrangement {
    /// Cause and way out.
    #[must_use]
    pub fn words(&self, system: System) -> [String; 2] {
        let [cause, help] = match self {
            Self::NoRow => [
                "the pipes cannot be set otherwise: the top does not stand on straight pipes side by side, square to the outline"
                    .to_owned(),
                "draw them so, or leave `pipes` and `overhangs` out and change `[[pipe]]` itself".to_owned(),
            ],
            Self::Uneven([first, last]) => [
                format!(
                    "the top hangs over its outer pipes by {} on one side and {} on the other: no one overhang is meant",
                    both(*first, system),
                    both(*last, system)
                ),
                "set the outer pipes alike in `[[pipe]]`, or leave `overhangs` out".to_owned(),
            ],
            Self::CannotBe(Change::PipesMoved { .. }) => [
                "the outer pipes cannot stand there: they would be off the top, or nearer than 50 mm to one another"
                    .to_owned(),
                "name overhangs between none and half of the top".to_owned(),
            ],
            Self::CannotBe(Change::PipeCount { pipes, .. }) => [
                format!(
                    "the top cannot stand on {pipes} pipes: one of them, or its backing, would lie off the top or in a hole"
                ),
                "name other numbers of pipes".to_owned(),
            ],
            Self::CannotBe(Change::BackingWidth { width, .. }) => [
                format!("the backing cannot be {} wide: it would reach beyond the outline", both(*width, system)),
                "name smaller widths".to_owned(),
            ],
            Self::CannotBe(Change::BackingBoard { board, .. } | Change::BackingKind { board, .. }) => [
                format!("the backing cannot be of `{board}`: that is no board that holds glue"),
                "`skinspan materials` lists the boards".to_owned(),
            ],
            Self::CannotBe(_) => ["that change cannot be made".to_owned(), "leave it out".to_owned()],
        };
        [cause, help]
    }
}

impl Arrangement {
    /// The file's own.
    #[must_use]
    pub fn own(top: &Top) -> Self {
        Self { changes: Vec::new(), left_out: Vec::new(), top: top.clone() }
    }

    /// All ways to arrange a top, its own first, each option with each other.
    ///
    /// # Errors
    ///
    /// [`NoArrangement`], the first of them.
    pub fn all(top: &Top, asked: &Arranging) -> Result<Vec<Self>, NoArrangement> {
        let mut all = vec![Self::own(top)];
        let set = !asked.pipes.is_empty() || !asked.overhangs.is_empty();
        let row = PipeRow::of(top);
        if set && row.is_none() {
            return Err(NoArrangement::NoRow);
        }
        // Backing first: that of a pipe which is put in is like the one over the first pipe.
        for of in &asked.backings {
            let now = |top: &Top| -> Option<Backing> { top.backings.get(of.backing).cloned() };
            all = with(all, &of.widths, |top, &width| {
                (now(top)?.width != width).then_some(Change::BackingWidth { backing: of.backing, width })
            })?;
            all = with(all, &of.boards, |top, board| other_board(&now(top)?, of.backing, board))?;
        }
        if let Some(row) = row {
            all = with(all, &asked.pipes, |_, &pipes| row.with_pipes(pipes))?;
            let [first, last] = row.overhangs();
            if !asked.overhangs.is_empty() && (first - last).abs() > Length::new::<uom::si::length::millimeter>(1.0) {
                return Err(NoArrangement::Uneven([first, last]));
            }
            // How far apart they are then hangs on how many there are.
            all = with(all, &asked.overhangs, |top, &overhang| PipeRow::of(top)?.with_overhang(overhang))?;
        }
        Ok(all)
    }
}

/// Arrangements as they are, and each with each option that changes something.
fn with<O>(
    all: Vec<Arrangement>,
    options: &[O],
    change: impl Fn(&Top, &O) -> Option<Change>,
) -> Result<Vec<Arrangement>, NoArrangement> {
    let mut more = Vec::with_capacity(all.len() * (options.len() + 1));
    for known in all {
        for option in options {
            let Some(change) = change(&known.top, option) else { continue };
            let Some(mut top) = changed(&known.top, &change) else { return Err(NoArrangement::CannotBe(change)) };
            let mut left_out = known.left_out.clone();
            // How many pipes there are changes once, while the list still has all backings of the file in their places.
            if matches!(change, Change::PipeCount { .. }) {
                left_out = left_bare(&known.top, &top);
                let mut place = 0..;
                top.backings.retain(|_| place.next().is_none_or(|place| !left_out.contains(&place)));
            }
            let changes = known.changes.iter().cloned().chain([change]).collect();
            // What is written twice is tried once.
            if !more.iter().any(|known: &Arrangement| known.top == top) {
                more.push(Arrangement { changes, left_out, top });
            }
        }
        more.push(known);
    }
    // Those with fewer changes first, the file's own before all.
    more.sort_by_key(|known| known.changes.len());
    Ok(more)
}

/// Backings that served a pipe alone, with no pipe below them any more.
fn left_bare(before: &Top, now: &Top) -> Vec<usize> {
    let Some((was, is)) = PipeRow::of(before).zip(PipeRow::of(now)) else { return Vec::new() };
    let bare = |backing: &Backing| was.serves_pipe_alone(before, backing) && !is.serves_pipe_alone(now, backing);
    before.backings.iter().enumerate().filter(|(_, backing)| bare(backing)).map(|(place, _)| place).collect()
}

fn other_board(backing: &Backing, place: usize, board: &str) -> Option<Change> {
    if backing.board.id == board {
        return None;
    }
    let same = backing.boards.iter().find(|sold| sold.id == board && sold.family == backing.board.family);
    Some(match same {
        Some(sold) => Change::BackingBoard { backing: place, board: board.to_owned(), density: sold.density.value },
        None => Change::BackingKind { backing: place, board: board.to_owned() },
    })
}

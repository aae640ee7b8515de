//! Density across thickness, as many columns side by side as a page has room for.

use uom::si::ratio::ratio;

use super::{Choice, heading, steps::sign};
use crate::{
    check::CHECKS,
    choice::{Cell, Grid},
    report::{
        page::{Page, left, right},
        words,
    },
    units::{System, show},
};

/// What stands where something does not go in.
const NONE: &str = "–";
/// What stands where it is not known how far a core is used.
const UNKNOWN: &str = "?";

pub(super) fn grids(page: &mut Page, choice: Choice<'_>, width: usize) {
    let own = &choice.top.core.family.id;
    let first = choice.best().map_or(own, |best| &choice.laid(best).core.family.id);
    let of = |family: &str| choice.chosen.grids.iter().find(|grid| grid.family == family);
    let second = (own != first).then(|| of(own)).flatten();
    let shown: Vec<&Grid> = of(first).into_iter().chain(second).collect();
    if shown.is_empty() {
        return;
    }
    heading(
        page,
        "Density across thickness: % used by the hand method alone, in capitals by both, with the skins of the file",
    );
    let short = Short::of(&shown);
    for (number, grid) in shown.iter().enumerate() {
        if number > 0 {
            page.blank();
        }
        let core = choice.space.cores.iter().find(|core| core.family.id == grid.family);
        page.line(&format!("  {}", core.map_or(grid.family.as_str(), |core| core.family.name.as_str())));
        table(page, grid, &short, choice.system(), width);
    }
    page.paragraph("  ", &short.legend(&shown));
}

/// Short names of the checks that govern.
struct Short(Vec<(usize, String)>);

impl Short {
    /// Initials, numbered where they would be the same.
    fn of(grids: &[&Grid]) -> Self {
        let mut checks: Vec<usize> = cells(grids).map(|cell| cell.governs).collect();
        checks.sort_unstable();
        checks.dedup();
        let mut known: Vec<(usize, String)> = Vec::new();
        for check in checks {
            let initials = initials(check);
            let same = known.iter().filter(|(other, _)| self::initials(*other) == initials).count();
            known.push((check, if same == 0 { initials } else { format!("{initials}{}", same + 1) }));
        }
        Self(known)
    }

    fn name(&self, check: usize) -> &str {
        self.0.iter().find(|(known, _)| *known == check).map_or("", |(_, name)| name)
    }

    fn legend(&self, grids: &[&Grid]) -> String {
        let mut parts = vec!["ok holds, no does not hold, in capitals by both methods".to_owned()];
        if cells(grids).any(|cell| !cell.utilisation.is_finite()) {
            parts.push(format!("{UNKNOWN} a check could not be made, or nothing bears what acts"));
        }
        if grids.iter().any(|grid| grid.cells.iter().flatten().any(Option::is_none)) {
            parts.push(format!("{NONE} something does not go in, or nothing could be checked"));
        }
        let names = self.0.iter().map(|(check, name)| format!("{name} {}", CHECKS[*check].title()));
        format!("{}. What governs: {}.", parts.join("; "), names.collect::<Vec<_>>().join(", "))
    }
}

fn initials(check: usize) -> String {
    CHECKS[check].title().split([' ', '-']).filter_map(|word| word.chars().next()).collect()
}

fn cells<'a>(grids: &'a [&Grid]) -> impl Iterator<Item = &'a Cell> {
    grids.iter().flat_map(|grid| grid.cells.iter().flatten().flatten())
}

fn used(cell: &Cell) -> String {
    let used = cell.utilisation.get::<ratio>();
    if !used.is_finite() {
        UNKNOWN.to_owned()
    } else if used > 9.995 {
        ">999".to_owned()
    } else {
        words::percent(used).trim_end_matches(" %").to_owned()
    }
}

fn table(page: &mut Page, grid: &Grid, short: &Short, system: System, width: usize) {
    let sides: Vec<String> = grid.densities.iter().map(|density| show(*density, system)).collect();
    let heads: Vec<String> = grid.thicknesses.iter().map(|thickness| show(*thickness, system)).collect();
    let wide = |texts: &mut dyn Iterator<Item = usize>| texts.max().unwrap_or(0);
    let all = || grid.cells.iter().flatten().flatten();
    let (number, name) = (
        wide(&mut all().map(|cell| used(cell).len())),
        wide(&mut all().map(|cell| short.name(cell.governs).chars().count())),
    );
    let text = |cell: &Option<Cell>| {
        cell.as_ref().map_or_else(
            || NONE.to_owned(),
            |cell| {
                let sign = sign(cell.utilisation, cell.by_both);
                format!("{sign}{} {}", right(&used(cell), number + 1), left(short.name(cell.governs), name))
            },
        )
    };
    let side = wide(&mut sides.iter().map(|side| side.chars().count())) + 4;
    let column = (number + name + 4).max(wide(&mut heads.iter().map(|head| head.chars().count()))) + 2;
    // As many tables as a page needs, all about as wide.
    let room = (width.saturating_sub(side) / column).max(1);
    let at_once = heads.len().div_ceil(heads.len().div_ceil(room).max(1)).max(1);
    for from in (0..heads.len()).step_by(at_once) {
        if from > 0 {
            page.blank();
        }
        let to = (from + at_once).min(heads.len());
        let line = |side_text: &str, cells: Vec<String>| {
            let cells: String = cells.iter().map(|cell| right(cell, column)).collect();
            format!("{}{cells}", left(&format!("    {side_text}"), side))
        };
        page.line(&line("", heads[from..to].to_vec()));
        for (density, row) in sides.iter().zip(&grid.cells) {
            page.line(&line(density, row[from..to].iter().map(text).collect()));
        }
    }
}

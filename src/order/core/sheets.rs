//! Which piece is cut from which sheet.

use super::grid::{Cell, Grid};
use crate::units::Length;

/// Where a piece is cut from.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SheetPlace {
    /// The sheet, from one.
    pub sheet: usize,
    /// From its corner along its length and its width.
    pub at: [Length; 2],
    /// Length and width of the rectangle that is cut, along those of the sheet.
    pub size: [Length; 2],
    /// Whether it is turned by a quarter before it is laid.
    pub turned: bool,
}

/// What is left of a sheet: a rectangle that nothing has been cut from.
#[derive(Clone, Copy, Debug)]
struct Left {
    sheet: usize,
    at: [Length; 2],
    size: [Length; 2],
}

/// Cuts pieces as the rectangles round them, the largest first, from the first offcut that is large enough, else from a new
/// sheet.
pub(super) fn cut(cells: &[Cell], grid: &Grid, may_turn: bool) -> Vec<SheetPlace> {
    let sizes: Vec<[Length; 2]> = cells.iter().map(|cell| cell.size(grid.along)).collect();
    let mut order: Vec<usize> = (0..cells.len()).collect();
    order.sort_by(|&a, &b| {
        let area = |at: usize| sizes[at][0] * sizes[at][1];
        area(b).value.total_cmp(&area(a).value).then(a.cmp(&b))
    });
    let (mut left, mut sheets): (Vec<Left>, usize) = (Vec::new(), 0);
    let mut places: Vec<Option<SheetPlace>> = vec![None; cells.len()];
    for piece in order {
        let [length, width] = sizes[piece];
        let ways: &[bool] = if may_turn { &[false, true] } else { &[false] };
        let of = |turned: bool| if turned { [width, length] } else { [length, width] };
        // Rounding of sums must not take a piece out of the sheet it was drawn on.
        let near = Length::new::<uom::si::length::micrometer>(1.0);
        let fits = |room: &Left, turned: bool| (0..2).all(|side| of(turned)[side] <= room.size[side] + near);
        let found = left
            .iter()
            .enumerate()
            .find_map(|(at, room)| ways.iter().copied().find(|&turned| fits(room, turned)).map(|turned| (at, turned)));
        let (room, turned) = match found {
            Some((at, turned)) => (left.remove(at), turned),
            None => {
                sheets += 1;
                (Left { sheet: sheets, at: [Length::default(); 2], size: grid.sheet }, false)
            }
        };
        let size = of(turned);
        places[piece] = Some(SheetPlace { sheet: room.sheet, at: room.at, size, turned });
        left.extend(offcuts(&room, size));
    }
    places.into_iter().flatten().collect()
}

/// What is left of a rectangle when a corner of it is cut out: first along its longer rest.
fn offcuts(room: &Left, size: [Length; 2]) -> impl Iterator<Item = Left> {
    let rest = [0, 1].map(|side| (room.size[side] - size[side]).max(Length::default()));
    let (beside, above) = if rest[0] > rest[1] {
        ([rest[0], room.size[1]], [size[0], rest[1]])
    } else {
        ([rest[0], size[1]], [room.size[0], rest[1]])
    };
    let of = |at, size| Left { sheet: room.sheet, at, size };
    let both = [of([room.at[0] + size[0], room.at[1]], beside), of([room.at[0], room.at[1] + size[1]], above)];
    both.into_iter().filter(|left| left.size.iter().all(|side| *side > Length::default()))
}

/// Sheets that are cut.
pub(super) fn count(places: &[SheetPlace]) -> usize {
    places.iter().map(|place| place.sheet).max().unwrap_or(0)
}

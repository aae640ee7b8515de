//! Grids of sheets, and what of the core lies in each of their cells.

use uom::si::ratio::ratio;

use super::{CorePiece, SheetPlace, region::Region};
use crate::{
    geometry::{Axis, Point, Ring},
    units::{Area, Length, Ratio},
};

/// Places at which a grid may begin, over a sheet.
const STEPS: u32 = 16;

/// Rows of sheets, side by side.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Grid {
    /// In which direction of the top the length of the sheets lies.
    pub(super) along: Axis,
    /// Length and width of a sheet.
    pub(super) sheet: [Length; 2],
    /// Where a sheet of the first row begins, and where that row does.
    pub(super) begin: [Length; 2],
    /// Whether every other row is moved by half a sheet.
    pub(super) staggered: bool,
}

/// What of the core lies in one sheet of a grid.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Cell {
    /// The sheet, from its smallest coordinates to its largest.
    pub(super) sheet: [Point; 2],
    /// The rectangle round what lies in it.
    pub(super) bounds: [Point; 2],
    area: Area,
}

/// All grids that are tried.
pub(super) fn grids(region: &Region, sheet: [Length; 2], directed: bool) -> Vec<Grid> {
    let axes: &[Axis] = if directed { &[Axis::X] } else { &Axis::BOTH };
    let mut grids = Vec::new();
    for &along in axes {
        for across in begins(region, along.other(), sheet[1]) {
            for lengthwise in begins(region, along, sheet[0]) {
                for staggered in [false, true] {
                    grids.push(Grid { along, sheet, begin: [lengthwise, across], staggered });
                }
            }
        }
    }
    grids
}

/// Where the first sheet may begin along an axis: before the core by less than a sheet.
fn begins(region: &Region, axis: Axis, size: Length) -> Vec<Length> {
    let [low, high] = region.bounds.map(|place| place.along(axis));
    let steps = (0..STEPS).map(|step| low - size * (f64::from(step) / f64::from(STEPS)));
    // A row that begins or ends at the rim, or in the middle of a backing, where no core is.
    let middles = region.backings.iter().flat_map(|(_, rectangles)| rectangles).filter_map(Ring::bounds);
    let middles = middles.map(|[from, to]| 0.5 * (from.along(axis) + to.along(axis)));
    let before = |place: Length| {
        let sheets: Ratio = (place - low) / size;
        place - size * sheets.get::<ratio>().ceil()
    };
    let mut all: Vec<Length> = Vec::new();
    for begin in steps.chain(middles.map(before)).chain([before(high)]) {
        let near = Length::new::<uom::si::length::micrometer>(1.0);
        if !all.iter().any(|known| (*known - begin).abs() < near) {
            all.push(begin);
        }
    }
    all
}

impl Grid {
    fn point(&self, along: Length, across: Length) -> Point {
        match self.along {
            Axis::X => Point { x: along, y: across },
            Axis::Y => Point { x: across, y: along },
        }
    }

    /// What lies in its sheets, row by row.
    pub(super) fn cells(&self, region: &Region) -> Vec<Cell> {
        let [low, high] = region.bounds;
        let (first, last) = (low.along(self.along), high.along(self.along));
        let (mut cells, mut row) = (Vec::new(), self.begin[1]);
        let mut moved = false;
        while row < high.along(self.along.other()) {
            let mut begin = if moved { self.begin[0] - 0.5 * self.sheet[0] } else { self.begin[0] };
            while begin < last {
                let end = begin + self.sheet[0];
                if end > first {
                    let sheet = [self.point(begin, row), self.point(end, row + self.sheet[1])];
                    let found = region.within(&rectangle(sheet));
                    cells.extend(found.map(|(area, bounds)| Cell { sheet, bounds, area }));
                }
                begin = end;
            }
            row += self.sheet[1];
            moved = self.staggered && !moved;
        }
        cells
    }
}

impl Cell {
    /// Along and across the sheets of a grid.
    pub(super) fn size(&self, along: Axis) -> [Length; 2] {
        let [low, high] = self.bounds;
        [along, along.other()].map(|axis| high.along(axis) - low.along(axis))
    }

    pub(super) fn is_narrower(&self, least: Length) -> bool {
        let [low, high] = self.bounds;
        (high.x - low.x).min(high.y - low.y) < least
    }

    pub(super) fn piece(self, region: &Region, from: SheetPlace) -> CorePiece {
        let own = rectangle(self.bounds);
        let near = Area::new::<uom::si::area::square_millimeter>(1.0);
        let holes = region.holes.iter().filter(|(_, hole)| hole.within(&own).area() > near).map(|(name, _)| name);
        let backings = region
            .backings
            .iter()
            .filter(|(_, rectangles)| rectangles.iter().any(|backing| own.within(backing).area() > near));
        let [low, high] = self.bounds;
        CorePiece {
            at: low,
            length: high.x - low.x,
            width: high.y - low.y,
            area: self.area,
            cut_out: holes.chain(backings.map(|(name, _)| name)).cloned().collect(),
            from,
        }
    }
}

/// The rectangle between two corners.
pub(super) fn rectangle([low, high]: [Point; 2]) -> Ring {
    Ring::new(vec![low, Point { x: high.x, ..low }, high, Point { x: low.x, ..high }])
}

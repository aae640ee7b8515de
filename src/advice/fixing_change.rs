//! Changes to fixings and to what they hold in.

use uom::si::length::{millimeter, nanometer};

use super::{Change, change::steps};
use crate::{
    analysis::{InBacking, MountOn, Region, below_footing},
    geometry::{Pattern, Point, Polyline},
    top::{Backing, Fastened, Gear, Hold, Laid, Outline, Top},
    units::{Length, System},
};

/// Changes to backings and fixings: by kind, each from small to large.
pub(super) fn changes(top: &Top) -> Vec<Vec<Change>> {
    let mut kinds = Vec::new();
    for index in backings_of_fixings(top) {
        kinds.push(wider(top, index));
        kinds.push(longer(top, index));
        kinds.push(denser(top, index));
        kinds.push(other_kinds(top, index));
    }
    for on in mounts(top) {
        let Some(fastened) = held(top, on) else { continue };
        kinds.push(more(top, on, fastened));
        kinds.push((0..fastened.fixing.larger.len()).map(|size| Change::Size { on, size }).collect());
        kinds.push(larger_washers(top, on, fastened));
        kinds.push(less_torque(on, fastened));
    }
    kinds
}

/// Changes that save: a narrower backing of lighter board, fewer fixings; each from large to small.
pub(super) fn savings(top: &Top) -> Vec<Vec<Change>> {
    let mut kinds = Vec::new();
    for index in backings_of_fixings(top) {
        kinds.push(narrower(top, index));
        kinds.push(lighter(top, index));
    }
    if !kinds.is_empty() {
        kinds.push(thinner(top));
    }
    for on in mounts(top) {
        if let Some(fastened) = held(top, on) {
            kinds.push(fewer(top, on, fastened));
        }
    }
    kinds
}

/// The backings that fixings stand in, or miss least.
fn backings_of_fixings(top: &Top) -> Vec<usize> {
    let mut found: Vec<usize> = mounts(top)
        .filter_map(|on| held(top, on).map(|fastened| (on, fastened)))
        .flat_map(|(on, fastened)| match on {
            MountOn::Gear(index) => fastened.laid.round(top.gear[index].at),
            MountOn::Support(index) => top.supports[index].fixing_places(),
        })
        .filter_map(|place| InBacking::at(top, place).map(|backing| backing.backing))
        .collect();
    found.sort_unstable();
    found.dedup();
    found
}

fn mounts(top: &Top) -> impl Iterator<Item = MountOn> {
    (0..top.gear.len()).map(MountOn::Gear).chain((0..top.supports.len()).map(MountOn::Support))
}

fn held(top: &Top, on: MountOn) -> Option<&Fastened> {
    match on {
        MountOn::Gear(index) => top.gear[index].fastened.as_ref(),
        MountOn::Support(index) => top.supports[index].fastened.as_ref(),
    }
}

/// The fixings of a mount, to be changed.
pub(super) fn fastened(top: &mut Top, on: MountOn) -> Option<&mut Fastened> {
    match on {
        MountOn::Gear(index) => top.gear.get_mut(index)?.fastened.as_mut(),
        MountOn::Support(index) => top.supports.get_mut(index)?.fastened.as_mut(),
    }
}

fn wider(top: &Top, backing: usize) -> Vec<Change> {
    let now = top.backings[backing].width;
    steps(top).map(|step| Change::BackingWidth { backing, width: now + step }).collect()
}

fn longer(top: &Top, backing: usize) -> Vec<Change> {
    steps(top).map(|by| Change::BackingLength { backing, by }).collect()
}

/// A line drawn out at both ends.
pub(super) fn lengthened(line: &Polyline, by: Length) -> Option<Polyline> {
    let mut points = line.points().to_vec();
    let (first, last) = (line.at(-by), line.at(line.length() + by));
    *points.first_mut()? = first;
    *points.last_mut()? = last;
    Polyline::new(points).ok()
}

/// Whether a backing lies on the top with all of its width, rounded corners of the top cut off.
pub(super) fn lies_within(backing: &Backing, outline: &Outline) -> bool {
    let rim = Length::new::<nanometer>(-1.0);
    backing.along.points().windows(2).all(|pair| {
        let long = pair[0].distance(pair[1]);
        let half: Length = backing.width / 2.0;
        let (x, y) = ((pair[1].x - pair[0].x) / long * half, (pair[1].y - pair[0].y) / long * half);
        let beside = |at: &Point| {
            [Point { x: at.x - y, y: at.y + x }, Point { x: at.x + y, y: at.y - x }]
                .into_iter()
                .all(|corner| outline.within_by(corner) >= rim)
        };
        pair.iter().all(beside)
    })
}

/// A backing fills the core, so that a thinner one comes with a thinner core.
fn thinner(top: &Top) -> Vec<Change> {
    let sold = top.core.family.sold_thicknesses.values.iter().rev().copied();
    let thinner = sold.filter(|thickness| *thickness < top.core.thickness);
    // No thinner than the fixings go deep.
    let deepest = mounts(top).filter_map(|on| held(top, on)?.fixing.depth()).fold(Length::default(), Length::max);
    let skins: Length = top.thickness() - top.core.thickness;
    thinner.take_while(|thickness| *thickness + skins >= deepest).map(Change::CoreThickness).collect()
}

fn narrower(top: &Top, backing: usize) -> Vec<Change> {
    let now = top.backings[backing].width;
    let narrower = steps(top).map(|step| now - step).take_while(|width| *width > now / 4.0);
    let narrower = narrower.take_while(|width| no_footing_past(top, backing, *width));
    narrower.map(|width| Change::BackingWidth { backing, width }).collect()
}

/// Whether no footing reaches past a backing of another width that it stands on.
fn no_footing_past(top: &Top, backing: usize, width: Length) -> bool {
    let mut other = top.clone();
    other.backings[backing].width = width;
    let past = |gear: &Gear| below_footing(&other, gear).len() > 1;
    let stands_on = |gear: &&Gear| below_footing(top, gear).first() == Some(&Region::Backing(backing));
    !top.gear.iter().filter(stands_on).any(past)
}

fn denser(top: &Top, backing: usize) -> Vec<Change> {
    let now = &top.backings[backing];
    let board = |board: &crate::material::Board| Change::BackingBoard {
        backing,
        board: board.id.clone(),
        density: board.density.value,
    };
    let same = now.boards.iter().filter(|sold| sold.family == now.board.family);
    same.filter(|sold| sold.density.value > now.board.density.value).map(board).collect()
}

fn other_kinds(top: &Top, backing: usize) -> Vec<Change> {
    let now = &top.backings[backing];
    let others = now.boards.iter().filter(|sold| sold.family != now.board.family);
    others.map(|sold| Change::BackingKind { backing, board: sold.id.clone() }).collect()
}

fn lighter(top: &Top, backing: usize) -> Vec<Change> {
    let now = &top.backings[backing];
    let board = |board: &crate::material::Board| Change::BackingBoard {
        backing,
        board: board.id.clone(),
        density: board.density.value,
    };
    let same = now.boards.iter().rev().filter(|sold| sold.family == now.board.family);
    same.filter(|sold| sold.density.value < now.board.density.value).map(board).collect()
}

fn more(top: &Top, on: MountOn, fastened: &Fastened) -> Vec<Change> {
    (1..=MORE).filter_map(|by| with_count(top, on, fastened, i64::from(by))).collect()
}

fn fewer(top: &Top, on: MountOn, fastened: &Fastened) -> Vec<Change> {
    (1..=MORE).map_while(|by| with_count(top, on, fastened, -i64::from(by))).collect()
}

/// Most fixings that are added or taken away, grids by whole rows.
const MORE: u32 = 8;

/// The same pattern with more fixings or fewer of them; a row keeps its length, a grid gains or loses a column.
fn with_count(top: &Top, on: MountOn, fastened: &Fastened, by: i64) -> Option<Change> {
    let changed = |count: u32| u32::try_from(i64::from(count) + by).ok().filter(|count| *count >= 2);
    let laid = match &fastened.laid {
        Laid::Points(_) => return None,
        Laid::Pattern { pattern, turned } => {
            let pattern = match *pattern {
                Pattern::Circle { count, diameter, first } => {
                    // Two on a circle hold nothing about their own line.
                    Pattern::Circle { count: changed(count).filter(|count| *count >= 3)?, diameter, first }
                }
                Pattern::Row { count, pitch, direction } => {
                    let more = changed(count)?;
                    let length: Length = pitch * f64::from(count.saturating_sub(1).max(1));
                    Pattern::Row { count: more, pitch: length / f64::from(more - 1), direction }
                }
                Pattern::Grid { along_x, along_y, pitch_x, pitch_y } => {
                    let more = changed(along_x)?;
                    let length: Length = pitch_x * f64::from(along_x.saturating_sub(1).max(1));
                    Pattern::Grid { along_x: more, along_y, pitch_x: length / f64::from(more - 1), pitch_y }
                }
            };
            Laid::Pattern { pattern, turned: *turned }
        }
        Laid::Along { end, .. } => {
            let MountOn::Support(pipe) = on else { return None };
            let along = &top.supports[pipe].along;
            let count = changed(u32::try_from(fastened.laid.along(along).len()).ok()?)?;
            // A hair wider, so that rounding does not make one more of it.
            let spacing: Length = (along.length() - *end * 2.0) / f64::from(count - 1) * (1.0 + 1e-9);
            Laid::Along { end: *end, spacing }
        }
    };
    let count = match on {
        MountOn::Gear(_) => laid.about_middle().len(),
        MountOn::Support(_) if !matches!(laid, Laid::Along { .. }) => laid.about_middle().len(),
        MountOn::Support(pipe) => laid.along(&top.supports[pipe].along).len(),
    };
    Some(Change::FixingCount { on, count, laid })
}

/// In tenths of what the file says.
fn less_torque(on: MountOn, fastened: &Fastened) -> Vec<Change> {
    let Some(torque) = fastened.fixing.torque else { return Vec::new() };
    (1..10).map(|tenths| Change::Torque { on, torque: torque * (1.0 - f64::from(tenths) / 10.0) }).collect()
}

fn larger_washers(top: &Top, on: MountOn, fastened: &Fastened) -> Vec<Change> {
    let Hold::ThroughBolt { washer, .. } = &fastened.fixing.hold else { return Vec::new() };
    let step = match top.report {
        System::Us => Length::new::<uom::si::length::inch>(0.25),
        System::Si => Length::new::<millimeter>(6.0),
    };
    (1..=MORE).map(|by| Change::Washer { on, outside: washer.outside + step * f64::from(by) }).collect()
}

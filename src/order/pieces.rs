//! What is cut and set: backing, conduits, fixings.

use uom::si::ratio::ratio;

use crate::{
    advice::{Fitting, fittings},
    analysis::{Analysis, DIVISIONS, MountOn},
    top::{Bolt, Fixing, Hold, Sleeve, Top, Washer},
    units::{Area, Length, Mass, MassDensity, Ratio},
};

/// One piece of backing.
#[derive(Clone, Debug, PartialEq)]
pub struct BackingPiece {
    /// Its name.
    pub name: String,
    /// The board.
    pub board: String,
    /// Along its line; where that is bent, along all of its pieces.
    pub length: Length,
    /// Straight pieces that the line has: mitred where they meet.
    pub straight: usize,
    /// Across it.
    pub width: Length,
    /// As thick as the core.
    pub thickness: Length,
    /// Its mass.
    pub mass: Mass,
}

/// Board of one kind.
#[derive(Clone, Debug, PartialEq)]
pub struct BoardLine {
    /// Row of the board.
    pub id: String,
    /// Its name.
    pub name: String,
    /// Thickness.
    pub thickness: Length,
    /// Pieces that are cut from it.
    pub pieces: usize,
    /// Area of all pieces.
    pub net: Area,
    /// Area that is bought, with saw cuts and offcuts.
    pub area: Area,
    /// Its mass.
    pub mass: Mass,
    /// Mass of the pieces.
    pub in_top: Mass,
}

/// Conduit of one kind.
#[derive(Clone, Debug, PartialEq)]
pub struct ConduitLine {
    /// Its name; none of a plain bore, into which nothing is laid.
    pub name: Option<String>,
    /// Diameter.
    pub diameter: Length,
    /// Its wall and density; none of a plain bore.
    pub tube: Option<(Length, MassDensity)>,
    /// Runs.
    pub runs: usize,
    /// Length of all runs.
    pub length: Length,
    /// Mass of all runs; none of a plain bore.
    pub mass: Option<Mass>,
}

/// Fixings of one kind and length.
#[derive(Clone, Debug, PartialEq)]
pub struct FixingLine {
    /// Name of the kind in the file.
    pub name: String,
    /// How it holds, and its size.
    pub what: String,
    /// The metal and grade of bolt, screw or stud; none of a rivet.
    pub grade: Option<String>,
    /// What they hold.
    pub holds: Vec<String>,
    /// How many are set.
    pub set: usize,
    /// How many are bought.
    pub bought: usize,
    /// Shortest bolt or screw, under its head; none where that is not known or a table of its maker says.
    pub shortest: Option<Length>,
    /// Whether the foot that they clamp is in that length.
    pub foot_counted: bool,
    /// What goes with each: washers, nuts, sleeves, inserts.
    pub with: Vec<FixingPart>,
}

/// What goes with a fixing, one to each.
#[derive(Clone, Debug, PartialEq)]
pub enum FixingPart {
    /// A nut.
    Nut {
        /// Its thread.
        thread: String,
        /// Its grade: that of the bolt.
        grade: String,
    },
    /// A washer, under the nut.
    Washer {
        /// Its size.
        washer: Washer,
        /// Thread that goes through it.
        thread: String,
        /// Its metal: that of the bolt.
        metal: String,
    },
    /// A sleeve round the bolt.
    Sleeve {
        /// Outside diameter.
        outside: Length,
        /// Wall.
        wall: Length,
        /// What it is made of.
        alloy: String,
    },
    /// An insert or a stud.
    Insert(String),
    /// What it is potted or glued with: that is bought by volume.
    Filling(String),
    /// The length of a rivet, by the table of its maker.
    ByMaker,
}

impl FixingPart {
    /// Whether it is bought by number.
    #[must_use]
    pub const fn counted(&self) -> bool {
        !matches!(self, Self::Filling(_) | Self::ByMaker)
    }
}

/// Backing by piece, and board by kind.
///
/// ```text
/// m = ρ w l c,  bought  A = (1 + q) Σ w l
/// ```
///
/// | symbol | meaning |
/// |---|---|
/// | *ρ* | density of the board |
/// | *w*, *l*, *c* | width, length, thickness of the core |
/// | *A*, *q* | area of board, share of waste |
pub(super) fn backings(top: &Top) -> (Vec<BackingPiece>, Vec<BoardLine>) {
    let thickness = top.core.thickness;
    let (mut pieces, mut boards): (Vec<BackingPiece>, Vec<BoardLine>) = (Vec::new(), Vec::new());
    for backing in &top.backings {
        let length = backing.along.length();
        let area: Area = backing.width * length;
        let mass: Mass = backing.board.density.value * thickness * area;
        pieces.push(BackingPiece {
            name: backing.name.clone(),
            board: backing.board.name.clone(),
            length,
            straight: backing.along.points().len() - 1,
            width: backing.width,
            thickness,
            mass,
        });
        match boards.iter_mut().find(|line| line.id == backing.board.id) {
            Some(line) => {
                line.pieces += 1;
                line.net += area;
                line.in_top += mass;
            }
            None => boards.push(BoardLine {
                id: backing.board.id.clone(),
                name: backing.board.name.clone(),
                thickness,
                pieces: 1,
                net: area,
                area: Area::default(),
                mass: Mass::default(),
                in_top: mass,
            }),
        }
    }
    let waste = Ratio::from(1.0) + top.criteria.order_board_waste.value;
    for line in &mut boards {
        (line.area, line.mass) = (line.net * waste, line.in_top * waste);
    }
    (pieces, boards)
}

/// Core that stays in the top, as its weight counts it.
pub(super) fn core_in_top(top: &Top) -> Mass {
    let setback = top.edge.as_ref().map_or_else(Length::default, |edge| edge.setback);
    let backing: Area = top.backings.iter().map(|backing| backing.width * backing.along.length()).sum();
    let area: Area = top.outline.area() - setback * top.outline.perimeter() - backing;
    let bored: Mass = top.conduits.iter().map(|conduit| top.bored_mass(conduit)).sum();
    top.core.material.density * top.core.thickness * area - bored
}

/// Conduits by kind.
///
/// ```text
/// m = ρ π (d − t) t L
/// ```
///
/// | symbol | meaning |
/// |---|---|
/// | *d*, *t*, *ρ* | diameter, wall and density of a tube |
/// | *L* | length of all runs |
pub(super) fn conduits(top: &Top) -> Vec<ConduitLine> {
    let mut lines: Vec<ConduitLine> = Vec::new();
    for conduit in &top.conduits {
        let name = conduit.tube.as_ref().map(|tube| tube.name.clone());
        let tube = conduit.tube.as_ref().map(|tube| (tube.wall.value, tube.density.value));
        let mass = tube.map(|_| top.tube_mass(conduit));
        let length = conduit.along.length();
        match lines.iter_mut().find(|line| line.name == name && line.diameter == conduit.diameter) {
            Some(line) => {
                line.runs += 1;
                line.length += length;
                line.mass = line.mass.zip(mass).map(|(known, more)| known + more);
            }
            None => lines.push(ConduitLine { name, diameter: conduit.diameter, tube, runs: 1, length, mass }),
        }
    }
    lines
}

/// Fixings by kind and length, with spares.
///
/// How long a bolt has to be is what `check` says of it; where the hand method cannot look at the top, that is left open.
pub(super) fn fixings(top: &Top) -> Vec<FixingLine> {
    let analysis = Analysis::new(top, DIVISIONS).ok();
    let known: Vec<(MountOn, Fitting)> = analysis
        .iter()
        .flat_map(|analysis| fittings(analysis).into_iter().map(|fitting| (analysis.mounts[fitting.mount].on, fitting)))
        .collect();
    let on_gear = top.gear.iter().enumerate().filter_map(|(index, gear)| {
        let fastened = gear.fastened.as_ref()?;
        Some((MountOn::Gear(index), &gear.name, fastened, fastened.laid.about_middle().len()))
    });
    let on_frame = top.supports.iter().enumerate().filter_map(|(index, support)| {
        Some((MountOn::Support(index), &support.name, support.fastened.as_ref()?, support.fixing_places().len()))
    });
    let mut lines: Vec<FixingLine> = Vec::new();
    for (on, holds, fastened, count) in on_gear.chain(on_frame) {
        let fitting = known.iter().find(|(known, _)| *known == on).map(|(_, fitting)| fitting);
        let shortest = fitting.and_then(|fitting| fitting.shortest);
        let fixing = &fastened.fixing;
        let foot_counted = fastened.clamped.is_some();
        let same = |line: &&mut FixingLine| {
            line.name == fixing.name && line.shortest == shortest && line.foot_counted == foot_counted
        };
        match lines.iter_mut().find(same) {
            Some(line) => {
                line.set += count;
                line.holds.push(holds.clone());
            }
            None => lines.push(FixingLine {
                name: fixing.name.clone(),
                what: format!("{}, {}", fixing.words(), fixing.hold.size()),
                grade: grade(fixing),
                holds: vec![holds.clone()],
                set: count,
                bought: 0,
                shortest,
                foot_counted,
                with: with(fixing),
            }),
        }
    }
    for line in &mut lines {
        line.bought = with_spares(line.set, top.criteria.order_spares.value);
    }
    lines
}

/// So many with spares: a share of them, rounded up.
fn with_spares(set: usize, share: Ratio) -> usize {
    #[expect(
        clippy::cast_precision_loss,
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "some hundreds of fixings, and a share from none to all"
    )]
    let spares = (set as f64 * share.get::<ratio>() - 1e-9).ceil().max(0.0) as usize;
    set + spares
}

/// Metal and grade of what is screwed.
fn grade(fixing: &Fixing) -> Option<String> {
    match &fixing.hold {
        Hold::Screw { grade, .. } => Some(grade.name.clone()),
        _ => fixing.bolt().map(|bolt| bolt.grade.name.clone()),
    }
}

/// What goes with each fixing.
fn with(fixing: &Fixing) -> Vec<FixingPart> {
    let nut = |bolt: &Bolt| FixingPart::Nut { thread: bolt.thread.name.clone(), grade: bolt.grade.name.clone() };
    let of_sleeve = |sleeve: &Sleeve| FixingPart::Sleeve {
        outside: sleeve.outside,
        wall: sleeve.wall,
        alloy: sleeve.alloy.name.clone(),
    };
    match &fixing.hold {
        Hold::ThroughBolt { bolt, washer, sleeve } => {
            let metal = bolt.grade.family.clone();
            let washer = FixingPart::Washer { washer: *washer, thread: bolt.thread.name.clone(), metal };
            [nut(bolt), washer].into_iter().chain(sleeve.as_ref().map(of_sleeve)).collect()
        }
        Hold::BlindInsert { insert, .. } => vec![FixingPart::Insert(insert.name.clone())],
        Hold::PottedInsert { insert, potting, .. } => {
            vec![FixingPart::Insert(insert.name.clone()), FixingPart::Filling(potting.name.clone())]
        }
        Hold::BondedStud { bolt, stud, adhesive } => {
            vec![FixingPart::Insert(stud.name.clone()), FixingPart::Filling(adhesive.name.clone()), nut(bolt)]
        }
        Hold::TappedScrew { .. } | Hold::Screw { .. } => Vec::new(),
        Hold::BlindRivet { .. } => vec![FixingPart::ByMaker],
    }
}

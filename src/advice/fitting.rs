//! How to set the fixings of a mount: drill, tap, grip, and the pull that a test has to show.

use crate::{
    analysis::{Analysis, Mount, MountForces, MountOn},
    check::{MostTorque, Outcome, most_torque, prying, worst_by_mount},
    fastening::characteristic_factor,
    material::{Basis, Board},
    top::{Bolt, Hold, Top},
    units::{Force, Length, Ratio},
};

/// One hole or bore.
#[derive(Clone, Debug, PartialEq)]
pub struct Drill {
    /// What it is for.
    pub what: String,
    /// Diameter.
    pub diameter: Length,
    /// How deep, from the face of the near skin; none where it goes through what `what` names.
    pub depth: Option<Length>,
}

/// A pull-out test on scrap of the same build.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PullTest {
    /// How many samples.
    pub samples: Ratio,
    /// How many of their standard deviations their characteristic value lies below their mean; none where they are too few.
    pub below_mean: Option<Ratio>,
    /// Characteristic value that they have to reach: the largest pull with its factors, hot and wet taken off beforehand. A measured
    /// value of the table is one.
    pub characteristic: Force,
    /// The largest pull of one fixing, prying included.
    pub pull: Force,
    /// Factors on it: that on own tests, and that for fittings.
    pub factor: Ratio,
    /// What heat, water and time leave of the strength in the case that governs.
    pub left: Ratio,
    /// That case.
    pub case: usize,
}

/// What the shop needs to set the fixings of one mount.
#[derive(Clone, Debug, PartialEq)]
pub struct Fitting {
    /// The mount, as its place in the analysis.
    pub mount: usize,
    /// What is worst for it among the checks of fixings.
    pub governs: Option<Outcome>,
    /// Holes, in the order of the work.
    pub drills: Vec<Drill>,
    /// What lies between head and nut, or between head and the first thread that holds; the foot not counted where the
    /// file does not say how thick it is.
    pub grip: Length,
    /// Whether the thickness of the foot is in it.
    pub foot_counted: bool,
    /// Shortest bolt or screw, under its head; none where a table of its maker says.
    pub shortest: Option<Length>,
    /// How hard it may be tightened; none where a screw or a rivet is set, or the hold is not known.
    pub torque: Option<MostTorque>,
    /// The test that settles the hold, where only a test knows it.
    pub test: Option<PullTest>,
}

/// How to set the fixings of each mount.
#[must_use]
pub fn fittings(analysis: &Analysis<'_>) -> Vec<Fitting> {
    let worst = worst_by_mount(analysis).into_iter();
    worst.enumerate().map(|(mount, governs)| fitting(analysis, mount, governs)).collect()
}

/// Holes of the fixings of a mount, in the order of the work.
#[must_use]
pub fn drills(top: &Top, mount: &Mount<'_>) -> Vec<Drill> {
    let drill = |what: &str, diameter, depth| Drill { what: what.to_owned(), diameter, depth };
    match &mount.fastened.fixing.hold {
        Hold::ThroughBolt { bolt, sleeve, .. } => {
            let hole = bolt.thread.clearance_hole.value;
            match sleeve {
                Some(sleeve) => {
                    vec![drill("both skins and core, for the sleeve", sleeve.outside, None), drill("foot", hole, None)]
                }
                None => through_panel(top, mount, bolt.thread.major.value * top.criteria.plug_diameters.value, hole),
            }
        }
        Hold::TappedScrew { bolt, depth } => {
            vec![drill("near skin and backing, then tap", bolt.thread.tap_drill.value, Some(*depth))]
        }
        Hold::Screw { screw, depth, .. } => vec![
            drill("near skin", screw.major.value, None),
            drill("pilot in the backing", pilot(screw, mount.board(top)), Some(*depth)),
        ],
        Hold::BlindInsert { insert, .. } => {
            vec![drill("near skin and backing, for the insert", insert.hole.value, Some(insert.length.value))]
        }
        Hold::PottedInsert { insert, depth, .. } => {
            vec![drill("near skin and core, for the potting", insert.bore.value, Some(*depth))]
        }
        Hold::BlindRivet { rivet } => vec![drill("near skin and foot", rivet.hole.value, None)],
        Hold::BondedStud { .. } => Vec::new(),
    }
}

fn fitting(analysis: &Analysis<'_>, number: usize, governs: Option<Outcome>) -> Fitting {
    let (top, mount) = (analysis.top, &analysis.mounts[number]);
    let (grip, shortest) = lengths(top, mount);
    Fitting {
        mount: number,
        governs,
        drills: drills(top, mount),
        grip,
        foot_counted: mount.fastened.clamped.is_some(),
        shortest,
        torque: most_torque(analysis, number),
        test: pull_test(analysis, number),
    }
}

/// Grip, and the shortest bolt or screw.
fn lengths(top: &Top, mount: &Mount<'_>) -> (Length, Option<Length>) {
    let clamped = mount.fastened.clamped.unwrap_or_default();
    let out_of_nut = |bolt: &Bolt| -> Length {
        bolt.thread.nut_height.value + bolt.thread.pitch.value * top.criteria.turns_out_of_nut.value
    };
    match &mount.fastened.fixing.hold {
        Hold::ThroughBolt { bolt, washer, .. } => {
            let grip: Length = top.thickness() + clamped + washer.thickness;
            (grip, Some(grip + out_of_nut(bolt)))
        }
        Hold::TappedScrew { depth, .. } | Hold::Screw { depth, .. } => (clamped, Some(clamped + *depth)),
        Hold::BlindInsert { bolt, .. } | Hold::PottedInsert { bolt, .. } => {
            (clamped, Some(clamped + bolt.thread.major.value))
        }
        Hold::BlindRivet { .. } => (clamped + top.skin(mount.near).laminate().thickness(), None),
        Hold::BondedStud { bolt, .. } => (clamped, Some(clamped + out_of_nut(bolt))),
    }
}

/// Holes of through-bolts without sleeve: over board it is bored through; over core that is first replaced by filling.
fn through_panel(top: &Top, mount: &Mount<'_>, bore: Length, hole: Length) -> Vec<Drill> {
    let boards = mount.places.iter().filter_map(|place| place.backing.filter(|backing| backing.holds(top)));
    let mut boards: Vec<usize> = boards.map(|backing| backing.backing).collect();
    let over_core = mount.places.len() - boards.len();
    boards.dedup();
    let through = |what: String, diameter| Drill { what, diameter, depth: None };
    let mut drills = Vec::with_capacity(3);
    if !boards.is_empty() {
        let names: Vec<&str> = boards.iter().map(|index| top.backings[*index].name.as_str()).collect();
        drills.push(through(format!("through both skins and {}", names.join(", ")), hole));
    }
    if over_core > 0 {
        // The skin below the foot keeps the small hole, in whose edge the bolt bears; the washer covers the other.
        let far = if matches!(mount.on, MountOn::Gear(_)) { "inner" } else { "outer" };
        let some = if boards.is_empty() { String::new() } else { format!(" ({over_core} of them stand over core)") };
        drills.push(through(
            format!("bore through the {far} skin and the core{some}, up to the skin below the foot; fill with thickened resin"),
            bore,
        ));
        drills.push(through("the filling, through both skins".to_owned(), hole));
    }
    drills
}

/// Pilot hole of a screw by what it is cut into.
fn pilot(screw: &crate::material::Screw, board: Option<&Board>) -> Length {
    match board.map(|board| board.family.as_str()) {
        Some("plywood") => screw.pilot_plywood.value,
        Some("laminate") => screw.pilot_laminate.value,
        _ => screw.pilot_board.value,
    }
}

/// Holds that live in board, potting, glue or laminate are settled by pulling them out of scrap.
fn pull_test(analysis: &Analysis<'_>, number: usize) -> Option<PullTest> {
    let mount = &analysis.mounts[number];
    if matches!(mount.fastened.fixing.hold, Hold::ThroughBolt { .. }) {
        return None;
    }
    let criteria = &analysis.top.criteria;
    let pried: Vec<Ratio> = (0..mount.places.len()).map(|fixing| prying(analysis.top, mount, fixing).factor).collect();
    let own = match mount.fastened.fixing.hold {
        Hold::BondedStud { .. } => criteria.bond_measured_factor.value,
        _ => criteria.pull_out_measured_factor.value,
    };
    let factor = own * criteria.fitting_factor.value;
    let samples = criteria.pull_test_samples.value;
    let below_mean = characteristic_factor(samples);
    let of_case = |forces: &MountForces| {
        let pulls = forces.pulls.iter().zip(&pried).map(|(pull, pried)| *pull * *pried);
        let pull = pulls.fold(Force::default(), Force::max);
        let knockdowns = analysis.knockdowns(analysis.cases[forces.case].state);
        let left = match &mount.fastened.fixing.hold {
            Hold::BlindRivet { .. } | Hold::BlindInsert { .. } => knockdowns.skin_strength(mount.near, Basis::Measured),
            Hold::PottedInsert { .. } => knockdowns.core_strength(Basis::Measured),
            Hold::BondedStud { adhesive, .. } => {
                knockdowns.glue_strength(adhesive, mount.near, Basis::Measured).ok()?
            }
            Hold::ThroughBolt { .. } | Hold::TappedScrew { .. } | Hold::Screw { .. } => {
                knockdowns.board_strength(Basis::Measured)
            }
        };
        let left = left.product();
        Some(PullTest {
            samples,
            below_mean,
            characteristic: pull * factor / left,
            pull,
            factor,
            left,
            case: forces.case,
        })
    };
    let own = analysis.mount_forces.iter().filter(|forces| forces.mount == number);
    own.filter_map(of_case)
        .max_by(|a, b| a.characteristic.value.total_cmp(&b.characteristic.value))
        .filter(|test| test.pull > Force::default())
}

impl Mount<'_> {
    /// The board that its fixings stand in, where all of them stand in one.
    fn board<'t>(&self, top: &'t Top) -> Option<&'t Board> {
        let first = self.places.first()?.backing.filter(|backing| backing.holds(top))?;
        let same = |place: &crate::analysis::FixingPlace| {
            place.backing.is_some_and(|backing| backing.holds(top) && backing.backing == first.backing)
        };
        self.places.iter().all(same).then(|| &top.backings[first.backing].board)
    }
}

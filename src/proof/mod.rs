//! The proof test of a finished top: which load bags make, where gauges stand, what they should read, and what readings say
//! of core, skins and supports.

mod cause;
mod compare;
mod gauge;
mod heaps;
mod moved;
mod slip;
mod solved;
mod suspect;
mod test_load;

pub use self::{
    cause::{Cause, Causes, Found},
    compare::{Compared, GaugeCompared, Readings, Row, compare},
    gauge::{Gauge, GaugeAt, Reading, bases, scatters},
    heaps::Heap,
    moved::Moved,
    slip::{Head, Slip, UnitSlip},
    solved::TestCheck,
    test_load::{Kind, TestLoad, Wanted},
};

use crate::{
    analysis::{Analysis, DIVISIONS},
    check::{Standing, run, settled},
    top::{Scope, Top},
    units::{Force, Length, Mass, Ratio},
};

/// One step of the test.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Step {
    /// Bags that lie on the top.
    pub bags: usize,
    /// Over all bags of the test.
    pub share: Ratio,
    /// Their mass.
    pub mass: Mass,
}

/// The card of a proof test.
#[derive(Clone, Debug)]
pub struct Proof {
    /// The load case that governs what bags can make.
    pub governs: TestLoad,
    /// What the checks say of the top in all its load cases.
    pub standing: Standing,
    /// Where bags lie, in the order in which they are laid: from the rim inwards.
    pub heaps: Vec<Heap>,
    /// Mass of a bag.
    pub bag: Mass,
    /// Its length and width.
    pub bag_size: [Length; 2],
    /// Steps, the last with all bags.
    pub steps: Vec<Step>,
    /// Weight of all bags.
    pub weight: Force,
    /// Over the load of the case: below one where a check did not allow more, or bags are too few.
    pub of_case: Ratio,
    /// Whether a check did not allow all of it.
    pub lowered: bool,
    /// What the checks say of the top under all bags, the worst first.
    pub checks: Vec<TestCheck>,
    /// Checks that could not be made, with the reason.
    pub open: Vec<(usize, String)>,
    /// Gauges, and what they should read under all bags.
    pub gauges: Vec<Gauge>,
    /// Largest sag by the hand method between supports and of a tip, under all bags; none where it does not count them.
    pub by_hand: [Option<Length>; 2],
}

impl Proof {
    /// Whether the test stands for the whole of a case that the top holds, and every check could be made in it.
    #[must_use]
    pub fn stands(&self) -> bool {
        !self.lowered && self.open.is_empty() && self.governs.used <= Ratio::from(1.0)
    }
}

/// Why there is no test.
#[derive(Clone, Debug, PartialEq)]
pub enum NoProof {
    /// Nothing is known of the top round a patch.
    Patch,
    /// The top could not be analysed.
    NotAnalysed(String),
    /// No load case presses downwards in a way that bags can make.
    NothingToLoad,
    /// Not one bag passes the checks, or finds a place.
    NotOneBag {
        /// The check that does not allow it, as its place in the list; none where no bag finds a place.
        check: Option<usize>,
    },
}

/// The card of a proof test of a top, without its gear.
///
/// The load is that of the case whose worst check is used most, of all cases that press downwards evenly or at one place, or
/// of one of the two kinds.
/// Where the checks of the top, short, dry and at room temperature, do not allow it, it is lowered until they do.
///
/// # Errors
///
/// [`NoProof`].
pub fn proof(top: &Top, wanted: Wanted) -> Result<Proof, NoProof> {
    if top.scope == Scope::Patch {
        return Err(NoProof::Patch);
    }
    let analysis = Analysis::new(top, DIVISIONS).map_err(NoProof::NotAnalysed)?;
    let analysis = settled(analysis.with_plate_method());
    if let Some(Err(reason)) = &analysis.whole {
        return Err(NoProof::NotAnalysed(reason.to_string()));
    }
    let outcomes = run(&analysis);
    let standing = Standing::of(&analysis, &outcomes);
    let governs = test_load::governing(&analysis, &outcomes, wanted).ok_or(NoProof::NothingToLoad)?;
    let criteria = &top.criteria;
    let bag = criteria.proof_bag.value;
    let one: Force = bag * crate::load::weight::gravity();
    let wanted: Force = governs.force * criteria.proof_share.value;
    let asked = (wanted / one).value;
    let most = match governs.kind {
        // Whole layers of heaps.
        Kind::Place { .. } if asked > heaps::count(heaps::STEPS) => {
            let layers = asked / heaps::count(heaps::STEPS);
            heaps::whole(if layers.ceil() <= layers * criteria.proof_whole_layers.value.value {
                layers.ceil()
            } else {
                layers
            }) * heaps::STEPS
        }
        _ => heaps::whole(asked),
    };
    let most = most.max(1);
    let mut bags = most;
    let mut not_allowed = None;
    // Demand grows no faster than the load, but for weight that is there in any case: a few rounds do.
    while bags > 0 {
        let heaps = heaps::heaps(top, &governs, bags);
        let laid: usize = heaps.iter().map(|heap| heap.bags).sum();
        if laid == 0 {
            break;
        }
        let loaded = solved::loaded(top, &heaps, bag);
        let (checks, open) = solved::checks(&loaded).map_err(NoProof::NotAnalysed)?;
        let used = checks.first().map_or_else(Ratio::default, |worst| worst.used);
        let allowed = criteria.proof_most_used.value;
        if used <= allowed {
            let steps = heaps::steps(laid, bag);
            let weight = one * heaps::count(laid);
            let gauges = gauge::gauges(top, &loaded).map_err(NoProof::NotAnalysed)?;
            return Ok(Proof {
                of_case: weight / governs.force,
                by_hand: solved::by_hand(&loaded),
                bag_size: [criteria.proof_bag_length.value, criteria.proof_bag_width.value],
                lowered: not_allowed.is_some(),
                governs,
                standing,
                heaps,
                bag,
                steps,
                weight,
                checks,
                open,
                gauges,
            });
        }
        not_allowed = checks.first().map(|worst| worst.check);
        let fewer = heaps::whole(heaps::count(laid) * (allowed / used).value.min(1.0));
        bags = fewer.min(laid - 1);
    }
    Err(NoProof::NotOneBag { check: not_allowed })
}

//! Checks: one failure mode in one small file, a registry, and the one way to compare a demand with an allowable.

mod clamped_joint;
mod core_crush;
mod core_shear;
mod dimpling;
mod first_order;
mod fixing;
mod frequency;
mod hot_core;
mod measure;
mod on_plate;
mod outcome;
mod panel_buckling;
mod pipe_bending;
mod place;
mod ply_failure;
mod sag;
mod settled;
mod shear_crimping;
mod skin_bending;
mod skin_indentation;
mod standing;
mod thermal_bow;
mod tip_sag;
mod underfoot;
mod verdict;
mod wrinkling;

pub use core_shear::core_shear_used;
pub use fixing::{Gives, MostTorque, Prying, TooNear, most_torque, mounts_too_near, prying};
pub use measure::Measure;
pub use on_plate::OnPlate;
pub use outcome::{Method, Outcome, Outcomes};
pub use pipe_bending::stronger_pipe;
pub use place::{Part, Place};
pub use ply_failure::PliesUsed;
pub use settled::settled;
pub use standing::Standing;
pub use verdict::{Finding, Term, Verdict};

use crate::{analysis::Analysis, source::Citation, top::Scope};

/// What a check looks at.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Subject {
    /// The top on its pipes.
    Top,
    /// Fixings of gear and pipes, and what they hold in.
    Fixings,
}

/// A failure mode that a top is compared against.
pub trait Check: Sync {
    /// Stable name in reports, in machine output and on the command line.
    fn id(&self) -> &'static str;
    /// Name for people.
    fn title(&self) -> &'static str;
    /// What it looks at.
    fn subject(&self) -> Subject {
        Subject::Top
    }
    /// What goes wrong, in one plain sentence.
    fn what(&self) -> &'static str;
    /// The formula, with the symbols that the findings list.
    fn formula(&self) -> &'static str;
    /// The same on the forces of the plate method, where the check looks at them.
    fn on_plate(&self) -> Option<OnPlate> {
        None
    }
    /// Whether only the plate method knows what it looks at: by hand it is not made.
    fn plate_alone(&self) -> bool {
        false
    }
    /// Whether on the plate it looks at how the top moves by itself, and not only at forces of a case.
    fn rests_on_modes(&self) -> bool {
        false
    }
    /// Where the formula holds, and what it leaves out.
    fn limits(&self) -> &'static str;
    /// Where it is published.
    fn citation(&self) -> Citation;
    /// Compares everything that the analysis has with what it may be.
    fn evaluate(&self, analysis: &Analysis<'_>, outcomes: &mut Outcomes<'_>);
}

/// Every check, in the order of the report.
pub const CHECKS: &[&dyn Check] = &[
    &ply_failure::PlyFailure,
    &skin_bending::LocalSkinBending,
    &wrinkling::Wrinkling,
    &shear_crimping::ShearCrimping,
    &panel_buckling::PanelBuckling,
    &core_shear::CoreShear,
    &core_crush::CoreCrush,
    &skin_indentation::SkinIndentation,
    &dimpling::Dimpling,
    &sag::SagBetweenPipes,
    &tip_sag::TipSag,
    &underfoot::Underfoot,
    &frequency::FirstFrequency,
    &thermal_bow::ThermalBow,
    &hot_core::HotCore,
    &first_order::FirstOrder,
    &pipe_bending::PipeBending,
    &clamped_joint::ClampedJoint,
    &fixing::FastenerTension,
    &fixing::FastenerShear,
    &fixing::FastenerCombined,
    &fixing::ThreadStrip,
    &fixing::ScrewWithdrawal,
    &fixing::InsertPullOut,
    &fixing::PottedInsert,
    &fixing::PottedBond,
    &fixing::PottedSide,
    &fixing::PlugSide,
    &fixing::StudBond,
    &fixing::HoldCombined,
    &fixing::Engagement,
    &fixing::Tightening,
    &fixing::FixingFatigue,
    &fixing::FixingInBacking,
    &fixing::PullThrough,
    &fixing::WasherCrush,
    &fixing::FootingPressure,
    &fixing::SkinBearing,
    &fixing::SkinShearOut,
    &fixing::SkinNetSection,
    &fixing::FixingSpacing,
    &fixing::FixingNearRim,
    &fixing::FixingNearConduit,
    &fixing::FixingNearOther,
    &fixing::FixingOverSupport,
    &fixing::BackingBearing,
    &fixing::BackingBond,
    &fixing::BackingSlip,
    &fixing::BackingCoreShear,
    &fixing::SkinBesideBacking,
    &fixing::BackingEnd,
];

/// Runs every check; the worst outcome of each check under each case, the governing one first.
#[must_use]
pub fn run(analysis: &Analysis<'_>) -> Vec<Outcome> {
    let mut outcomes = Vec::with_capacity(CHECKS.len() * 4);
    for (number, check) in CHECKS.iter().enumerate() {
        // Nothing is known of the top round a patch.
        if analysis.top.scope == Scope::Patch && check.subject() == Subject::Top {
            continue;
        }
        outcomes.extend(run_one(number, analysis));
    }
    worst_first(outcomes)
}

/// Runs one check, by its place in [`CHECKS`]; its worst outcome under each case.
#[must_use]
pub fn run_one(number: usize, analysis: &Analysis<'_>) -> Vec<Outcome> {
    let mut own = Outcomes::new(number, analysis);
    CHECKS[number].evaluate(analysis, &mut own);
    own.into_vec()
}

/// What is worst for each mount among the checks of fixings. A check keeps the worst of all mounts; here each stands by itself.
#[must_use]
pub fn worst_by_mount(analysis: &Analysis<'_>) -> Vec<Option<Outcome>> {
    let mut alone = analysis.clone();
    let of_fixings = |number: &usize| CHECKS[*number].subject() == Subject::Fixings;
    let mounts = analysis.mounts.iter().enumerate();
    let worst = mounts.map(|(mount, held)| {
        alone.mount_forces = analysis.mount_forces.iter().filter(|forces| forces.mount == mount).cloned().collect();
        let all = (0..CHECKS.len()).filter(of_fixings).flat_map(|number| run_one(number, &alone));
        worst_first(all.filter(|outcome| outcome.place.part.is_of(held.on)).collect()).into_iter().next()
    });
    worst.collect()
}

/// Outcomes by how bad they are, then by check and case: failures by their utilisation, what could not be evaluated, what passes.
#[must_use]
pub fn worst_first(outcomes: Vec<Outcome>) -> Vec<Outcome> {
    let key =
        |(place, outcome): (usize, &Outcome)| (outcome.weight(), (outcome.check, outcome.case, outcome.method, place));
    // Keys are sorted, not the outcomes, which are large.
    let mut keys: Vec<_> = outcomes.iter().enumerate().map(key).collect();
    keys.sort_unstable_by(|a, b| b.0.total_cmp(&a.0).then(a.1.cmp(&b.1)));
    let mut outcomes: Vec<Option<Outcome>> = outcomes.into_iter().map(Some).collect();
    keys.into_iter().filter_map(|(_, (.., place))| outcomes[place].take()).collect()
}

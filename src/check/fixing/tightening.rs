//! Tightening: what the shop's torque does to the fixing and its hold.

use std::ops::Div;

use uom::si::force::newton;

use super::{Held, each_in_place, potted_bond::Bond, thread_hold::Engaged, under_washer::crush};
use crate::{
    analysis::{Analysis, Knockdowns, screw_thread},
    check::{Check, Finding, Measure, Outcomes, Part, Subject},
    fastening::{
        PreloadRange, Sleeve, preload_range, stud_bond_torque, tensile_capacity, torque_within, torsion_capacity,
    },
    load_case::{Duration, State},
    material::Basis,
    source::{Citation, Mark, SHIGLEY_9},
    top::{Bolt, Hold},
    units::{Force, Length, Ratio, Torque},
};

pub(in crate::check) struct Tightening;

impl Check for Tightening {
    fn id(&self) -> &'static str {
        "tightening"
    }

    fn title(&self) -> &'static str {
        "tightening"
    }

    fn subject(&self) -> Subject {
        Subject::Fixings
    }

    fn what(&self) -> &'static str {
        "the torque that the file gives strips the thread, crushes the panel, turns the insert or stretches the bolt"
    }

    fn formula(&self) -> &'static str {
        "M/(K d) · factor ≤ F_b proof load of the bolt, F_t thread in the backing, F_w crush under the washer, F_s yield of \
         the sleeve, F_i thread of a blind insert or bond of a \
         potted one;  M · factor ≤ M_i at which insert or stud turns; the listed limit governs"
    }

    fn limits(&self) -> &'static str {
        "lowest nut factor of the lubrication, since it makes the most preload; once, on a cool top; no \
         preload is counted on later: foam, board and laminate creep away under it"
    }

    fn citation(&self) -> Citation {
        Citation {
            work: SHIGLEY_9,
            locator: "eq. 8-27, torque = K d F; what lies under the head derived",
            mark: Mark::Quoted,
        }
    }

    fn evaluate(&self, analysis: &Analysis<'_>, outcomes: &mut Outcomes<'_>) {
        let cool = match cool(analysis) {
            Ok(cool) => cool,
            Err(reason) => return outcomes.cannot(None, Part::Whole, reason),
        };
        each_in_place(analysis, |held| {
            let held = Held { knockdowns: &cool, ..held };
            let Some(torque) = held.fixing().torque else { return };
            let Some(bolt) = held.fixing().bolt() else {
                let reason = format!(
                    "{}: a torque is given, and no table says what pull it makes: leave `torque` out and turn screws home by hand",
                    held.fixing().name
                );
                return outcomes.cannot(None, held.place().part, reason);
            };
            match limits(&held, bolt) {
                Ok(limits) => limits.iter().for_each(|limit| compare(&held, (bolt, torque), limit, outcomes)),
                Err(reason) => outcomes.cannot(None, held.place().part, reason),
            }
        });
    }
}

/// Tightening is done once, on a cool top.
fn cool<'a>(analysis: &Analysis<'a>) -> Result<Knockdowns<'a>, String> {
    Knockdowns::new(analysis.top, State { hot: false, duration: Duration::Instant }, None)
}

/// What gives first when a bolt is tightened.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Gives {
    /// The bolt, at its proof load.
    Bolt,
    /// The thread in the backing.
    Thread,
    /// What lies under the washer.
    UnderWasher,
    /// The sleeve.
    Sleeve,
    /// The thread of a blind insert, or the bond of a potted one.
    Insert,
    /// The insert or the stud turns.
    Turns,
}

impl Gives {
    /// Its symbol in the formula.
    const fn symbol(self) -> &'static str {
        match self {
            Self::Bolt => "F_b",
            Self::Thread => "F_t",
            Self::UnderWasher => "F_w",
            Self::Sleeve => "F_s",
            Self::Insert => "F_i",
            Self::Turns => "M_i",
        }
    }

    /// What it is, for people.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::Bolt => "the bolt stretches",
            Self::Thread => "the thread in the backing strips",
            Self::UnderWasher => "the panel crushes under the washer",
            Self::Sleeve => "the sleeve is squeezed",
            Self::Insert => "the insert lets go",
            Self::Turns => "insert or stud turns",
        }
    }
}

/// How much something bears of tightening.
#[derive(Clone, Copy)]
enum Bears {
    Pull(Force),
    Torque(Torque),
}

#[derive(Clone, Copy)]
struct Limit {
    gives: Gives,
    bears: Bears,
    basis: Basis,
}

/// Everything that tightening may break; the knock-downs of `held` are those of a cool top.
fn limits(held: &Held<'_>, bolt: &Bolt) -> Result<Vec<Limit>, String> {
    let pull = |gives, force, basis| Limit { gives, bears: Bears::Pull(force), basis };
    let turn = |torque, basis| Limit { gives: Gives::Turns, bears: Bears::Torque(torque), basis };
    let proof = &bolt.grade.proof_stress;
    let area = screw_thread(&bolt.thread).stress_area();
    let mut limits = vec![pull(Gives::Bolt, tensile_capacity(proof.value, area, Ratio::from(1.0)), proof.basis)];
    match &held.fixing().hold {
        Hold::ThroughBolt { washer, sleeve: None, .. } => {
            let (bearable, basis) = crush(held, bolt, washer);
            limits.push(pull(Gives::UnderWasher, bearable, basis));
        }
        Hold::ThroughBolt { sleeve: Some(tube), .. } => {
            let sleeve = Sleeve {
                outer: tube.outside,
                inner: tube.outside - tube.wall * 2.0,
                length: held.top.core.thickness,
                modulus: tube.alloy.modulus.value,
            };
            let yielding = &tube.alloy.yield_strength;
            let one = Force::new::<newton>(1.0);
            limits.push(pull(Gives::Sleeve, one * (yielding.value / sleeve.stress(one)), yielding.basis));
        }
        Hold::TappedScrew { .. } => {
            if let Some(engaged) = Engaged::of(held) {
                let hold = engaged?.hold(held)?;
                limits.push(pull(Gives::Thread, hold.bearable, hold.basis));
            }
        }
        Hold::BlindInsert { insert, .. } => {
            // The foot stands on its flange, so that the preload never reaches the sheet round the bulge.
            limits.push(pull(Gives::Insert, insert.thread_proof.value, insert.thread_proof.basis));
            limits.push(turn(insert.turning_torque.value, insert.turning_torque.basis));
        }
        Hold::PottedInsert { insert, potting, depth, .. } => {
            let bond = Bond::of(held, insert, potting, *depth)?;
            limits.push(pull(Gives::Insert, bond.bearable, bond.basis));
            let shear = &held.top.core.material.shear_strength;
            let below: Length = *depth - held.near_skin().laminate().thickness();
            let in_core = below.min(held.top.core.thickness).max(Length::default());
            let radius: Length = insert.bore.value / 2.0;
            let left = held.knockdowns.core_strength(shear.basis).product();
            limits.push(turn(torsion_capacity(radius, in_core, shear.value * left), shear.basis));
        }
        Hold::BondedStud { stud, adhesive, .. } => {
            let shear = &adhesive.lap_shear.typical;
            let left = held.knockdowns.glue_strength(adhesive, held.mount.near, shear.basis)?.product();
            limits.push(turn(stud_bond_torque(shear.value * left, stud.base.value), shear.basis));
        }
        Hold::Screw { .. } | Hold::BlindRivet { .. } => {}
    }
    Ok(limits)
}

fn compare(held: &Held<'_>, (bolt, torque): (&Bolt, Torque), limit: &Limit, outcomes: &mut Outcomes<'_>) {
    match limit.bears {
        Bears::Pull(bearable) => {
            let preload = preload_range(torque, bolt.thread.major.value, nut_factors(bolt)).greatest;
            set_against(held, (bolt, torque), (limit, preload, bearable), outcomes);
        }
        Bears::Torque(bearable) => set_against(held, (bolt, torque), (limit, torque, bearable), outcomes),
    }
}

fn set_against<Q>(
    held: &Held<'_>,
    (bolt, torque): (&Bolt, Torque),
    (limit, demand, bearable): (&Limit, Q, Q),
    outcomes: &mut Outcomes<'_>,
) where
    Q: Copy + Into<Measure> + Div<Output = Ratio>,
{
    let factor = held.top.criteria.tightening_factor.value;
    outcomes.compare(None, demand / bearable * factor, || {
        let nut_factor = &bolt.lubrication.nut_factor;
        let basis = limit.basis.max(nut_factor.typical.basis);
        let finding = Finding::compare(demand, bearable, factor, basis).term("M", torque);
        let finding = finding.term("K", nut_factor.low.min(nut_factor.high));
        (held.place(), finding.term("d", bolt.thread.major.value).term(limit.gives.symbol(), bearable))
    });
}

const fn nut_factors(bolt: &Bolt) -> [Ratio; 2] {
    [bolt.lubrication.nut_factor.low, bolt.lubrication.nut_factor.high]
}

/// The most that the fixings of a mount may be tightened by.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct MostTorque {
    /// The torque.
    pub torque: Torque,
    /// What gives first beyond it.
    pub gives: Gives,
    /// The pull that it makes in the bolt, over the range of the nut factor.
    pub preload: PreloadRange,
}

/// The most that the fixings of a mount may be tightened by, with the factor of the check `tightening`; none where there
/// is no bolt, or where the hold is not known.
#[must_use]
pub fn most_torque(analysis: &Analysis<'_>, mount: usize) -> Option<MostTorque> {
    let cool = cool(analysis).ok()?;
    let factor = analysis.top.criteria.tightening_factor.value;
    let mut most: Option<(Torque, Gives)> = None;
    let (mut bolt_of_mount, mut unknown) = (None, false);
    each_in_place(analysis, |held| {
        let held = Held { knockdowns: &cool, ..held };
        let Some(bolt) = held.fixing().bolt().filter(|_| held.forces.mount == mount) else { return };
        bolt_of_mount = Some(bolt);
        let Ok(limits) = limits(&held, bolt) else {
            unknown = true;
            return;
        };
        for limit in limits {
            let torque = match limit.bears {
                Bears::Pull(force) => torque_within(force / factor, bolt.thread.major.value, nut_factors(bolt)),
                Bears::Torque(torque) => (torque / factor).into(),
            };
            if most.is_none_or(|(known, _)| torque < known) {
                most = Some((torque, limit.gives));
            }
        }
    });
    if unknown {
        return None;
    }
    let (bolt, (torque, gives)) = (bolt_of_mount?, most?);
    let preload = preload_range(torque, bolt.thread.major.value, nut_factors(bolt));
    Some(MostTorque { torque, gives, preload })
}

//! What a thread in the backing bears: the pull of a machine screw or a screw that would draw it out.

use super::{
    Held,
    backing_kind::{BackingKind, backing, no_backing},
};
use crate::{
    analysis::screw_thread,
    check::Finding,
    fastening::{
        SHEAR_FACTOR, ThreadMating, WithdrawalBasis, board_strip_capacity, effective_engagement, lag_screw_withdrawal,
        strip_capacity, thread_shape_factor, wood_screw_withdrawal,
    },
    material::{Basis, Board, Property, Screw},
    top::{Backing, Bolt, Hold},
    units::{Area, Force, Length, Pressure, Ratio},
};

/// Thread of a fixing in its backing.
#[derive(Clone, Copy)]
pub(super) struct Engaged<'a> {
    pub(super) backing: &'a Backing,
    pub(super) kind: BackingKind,
    /// Outside diameter of the thread.
    pub(super) diameter: Length,
    /// How deep the screw goes in the backing.
    pub(super) depth: Length,
    /// Of that, lost at the mouth of the hole.
    pub(super) lead_in: Length,
    /// Of that, lost at the end.
    pub(super) tip: Length,
    thread: Thread<'a>,
}

#[derive(Clone, Copy)]
enum Thread<'a> {
    Machine(&'a Bolt),
    Own(&'a Screw),
}

impl<'a> Engaged<'a> {
    /// None where the fixing does not hold by a thread in the backing; an error where there is no backing.
    pub(super) fn of(held: &Held<'a>) -> Option<Result<Self, String>> {
        let criteria = &held.top.criteria;
        let (thread, diameter, pitch, tip, to) = match &held.fixing().hold {
            Hold::TappedScrew { bolt, depth } => {
                let pitch = bolt.thread.pitch.value;
                let tip: Length = pitch * criteria.thread_tip.value;
                (Thread::Machine(bolt), bolt.thread.major.value, pitch, tip, *depth)
            }
            Hold::Screw { screw, depth, .. } => {
                let major = screw.major.value;
                let tip: Length = major * criteria.screw_tip.value;
                (Thread::Own(screw), major, screw.pitch.value, tip, *depth)
            }
            _ => return None,
        };
        let Some(backing) = backing(held) else { return Some(Err(no_backing(held))) };
        let depth = (to - held.near_skin().laminate().thickness()).min(held.top.core.thickness).max(Length::default());
        let lead_in = pitch * criteria.thread_lead_in.value;
        Some(Ok(Self { backing, kind: BackingKind::of(&backing.board), diameter, depth, lead_in, tip, thread }))
    }

    /// Full thread, all of it.
    pub(super) fn full(&self) -> Length {
        (self.depth - self.lead_in - self.tip).max(Length::default())
    }

    /// Full thread that is counted.
    pub(super) fn counted(&self, held: &Held<'_>) -> Length {
        let credit = held.top.criteria.engagement_credit.value;
        effective_engagement(self.depth, self.lead_in, self.tip, self.diameter, credit)
    }

    /// What it bears.
    pub(super) fn hold(&self, held: &Held<'_>) -> Result<ThreadHold, String> {
        let board = &self.backing.board;
        let length = self.counted(held);
        match (self.kind, self.thread) {
            (BackingKind::Wood, Thread::Own(screw)) => Ok(self.in_wood(held, screw, length)),
            (BackingKind::Metal, Thread::Machine(bolt)) => {
                let shear = thread_shear(board)?;
                let thread = &bolt.thread;
                let mating = ThreadMating {
                    pitch: thread.pitch.value,
                    screw_major: thread.major_min_external.value,
                    screw_pitch_diameter: thread.pitch_diameter_min_external.value,
                    nut_pitch_diameter: thread.pitch_diameter_max_internal.value,
                    nut_minor: thread.minor_max_internal.value,
                };
                let (nut, screw) = (mating.nut_area(length), mating.screw_area(length));
                let screw_shear: Pressure = bolt.grade.ultimate_stress.value * SHEAR_FACTOR;
                let basis = shear.basis.max(bolt.grade.ultimate_stress.basis);
                let left = self.kind.left(held, basis);
                let bearable = strip_capacity(shear.value, nut).min(strip_capacity(screw_shear, screw)) * left;
                let how = How::Metal { shear: shear.value, nut, screw_shear, screw };
                Ok(ThreadHold { length, bearable, left, basis, how })
            }
            (_, thread) => {
                let (minor, pitch) = match thread {
                    Thread::Machine(bolt) => (screw_thread(&bolt.thread).minor_diameter(), bolt.thread.pitch.value),
                    Thread::Own(screw) => (screw.root.value, screw.pitch.value),
                };
                let shear = thread_shear(board)?;
                let shape = thread_shape_factor(self.diameter, minor, pitch);
                let left = self.kind.left(held, shear.basis);
                let bearable = board_strip_capacity(shear.value * left, self.diameter, length, shape);
                let how = How::Board { shear: shear.value, minor, pitch, shape };
                Ok(ThreadHold { length, bearable, left, basis: shear.basis, how })
            }
        }
    }

    fn in_wood(&self, held: &Held<'_>, screw: &Screw, length: Length) -> ThreadHold {
        let (criteria, density) = (&held.top.criteria, &self.backing.board.density);
        // The formula is a mean of tests, however well the density is known.
        let basis = density.basis.max(Basis::Typical);
        let left = self.kind.left(held, basis);
        let share = criteria.plywood_withdrawal.value;
        let gravity: Ratio = density.value / criteria.water_density.value;
        let formula = if screw.form == "lag" { lag_screw_withdrawal } else { wood_screw_withdrawal };
        let bearable = formula(WithdrawalBasis::MeanUltimate, gravity, self.diameter, length) * share * left;
        ThreadHold { length, bearable, left, basis, how: How::Wood { gravity, share } }
    }
}

fn thread_shear(board: &Board) -> Result<&Property<Pressure>, String> {
    board.thread_shear.as_ref().ok_or_else(|| {
        format!("{} has no `thread_shear` in the table: add it to its row, from a pull test of a screw", board.name)
    })
}

/// Pull that draws a thread out of its backing.
#[derive(Clone, Copy)]
pub(super) struct ThreadHold {
    /// Thread that was counted.
    pub(super) length: Length,
    /// The pull, knock-downs taken off.
    pub(super) bearable: Force,
    /// Those knock-downs.
    pub(super) left: Ratio,
    /// Basis of the weakest value in it.
    pub(super) basis: Basis,
    how: How,
}

#[derive(Clone, Copy)]
enum How {
    Board { shear: Pressure, minor: Length, pitch: Length, shape: Ratio },
    Metal { shear: Pressure, nut: Area, screw_shear: Pressure, screw: Area },
    Wood { gravity: Ratio, share: Ratio },
}

impl ThreadHold {
    /// Factor on it: by formula or data sheet, or by the shop's own test; metal does not need that of a board.
    pub(super) fn factor(&self, held: &Held<'_>) -> Ratio {
        match self.how {
            How::Metal { .. } => held.factor(held.top.criteria.fastener_steel_factor.value),
            How::Board { .. } | How::Wood { .. } => held.pull_out_factor(self.basis),
        }
    }

    /// Adds the symbols of its formula.
    pub(super) fn terms(&self, finding: Finding, engaged: &Engaged<'_>, held: &Held<'_>) -> Finding {
        let finding = finding.term("k", self.left).term("L", self.length).term("d", engaged.diameter);
        let finding = match self.how {
            How::Board { shear, minor, pitch, shape } => {
                finding.term("t_u", shear).term("S", shape).term("d_1", minor).term("p", pitch)
            }
            How::Metal { shear, nut, screw_shear, screw } => {
                finding.term("t_n", shear).term("A_n", nut).term("t_b", screw_shear).term("A_b", screw)
            }
            How::Wood { gravity, share } => finding.term("G", gravity).term("w", share),
        };
        let finding = finding.term("h", engaged.depth).term("l", engaged.lead_in).term("e", engaged.tip);
        finding.term("c", held.top.criteria.engagement_credit.value)
    }
}

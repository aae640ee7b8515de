//! Tightening: what the shop's torque does to the fixing and its hold.

use std::ops::Div;

use super::{Held, each_in_place, potted_bond::Bond, thread_hold::Engaged, under_washer::crush};
use crate::{
    analysis::{Analysis, Knockdowns, screw_thread},
    check::{Check, Finding, Measure, Outcomes, Part, Subject},
    fastening::{Sleeve, preload_range, stud_bond_torque, tensile_capacity, torsion_capacity},
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
        // Tightening is done once, on a cool top.
        let cool = State { hot: false, duration: Duration::Instant };
        let cool = match Knockdowns::new(analysis.top, cool, None) {
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
            let range = &bolt.lubrication.nut_factor;
            let preload = preload_range(torque, bolt.thread.major.value, [range.low, range.high]).greatest;
            let turned = Turned { held, bolt, torque, preload };
            turned.bolt(outcomes);
            if let Err(reason) = turned.hold(outcomes) {
                outcomes.cannot(None, held.place().part, reason);
            }
        });
    }
}

/// A fixing that is tightened.
#[derive(Clone, Copy)]
struct Turned<'a> {
    held: Held<'a>,
    bolt: &'a Bolt,
    torque: Torque,
    preload: Force,
}

impl Turned<'_> {
    fn bolt(&self, outcomes: &mut Outcomes<'_>) {
        let proof = &self.bolt.grade.proof_stress;
        let area = screw_thread(&self.bolt.thread).stress_area();
        self.pulled("F_b", tensile_capacity(proof.value, area, Ratio::from(1.0)), proof.basis, outcomes);
    }

    fn hold(&self, outcomes: &mut Outcomes<'_>) -> Result<(), String> {
        let held = &self.held;
        match &held.fixing().hold {
            Hold::ThroughBolt { bolt, washer, sleeve: None } => {
                let (bearable, basis) = crush(held, bolt, washer);
                self.pulled("F_w", bearable, basis, outcomes);
            }
            Hold::ThroughBolt { sleeve: Some(tube), .. } => {
                let sleeve = Sleeve {
                    outer: tube.outside,
                    inner: tube.outside - tube.wall * 2.0,
                    length: held.top.core.thickness,
                    modulus: tube.alloy.modulus.value,
                };
                let yielding = &tube.alloy.yield_strength;
                let bearable = self.preload * (yielding.value / sleeve.stress(self.preload));
                self.pulled("F_s", bearable, yielding.basis, outcomes);
            }
            Hold::TappedScrew { .. } => {
                if let Some(engaged) = Engaged::of(held) {
                    let engaged = engaged?;
                    let hold = engaged.hold(held)?;
                    self.pulled("F_t", hold.bearable, hold.basis, outcomes);
                }
            }
            Hold::BlindInsert { insert, .. } => {
                // The foot stands on its flange, so that the preload never reaches the sheet round the bulge.
                self.pulled("F_i", insert.thread_proof.value, insert.thread_proof.basis, outcomes);
                self.turned("M_i", insert.turning_torque.value, insert.turning_torque.basis, outcomes);
            }
            Hold::PottedInsert { insert, potting, depth, .. } => {
                let bond = Bond::of(held, insert, potting, *depth)?;
                self.pulled("F_i", bond.bearable, bond.basis, outcomes);
                let shear = &held.top.core.material.shear_strength;
                let below: Length = *depth - held.near_skin().laminate().thickness();
                let in_core = below.min(held.top.core.thickness).max(Length::default());
                let radius: Length = insert.bore.value / 2.0;
                let left = held.knockdowns.core_strength(shear.basis).product();
                let bearable = torsion_capacity(radius, in_core, shear.value * left);
                self.turned("M_i", bearable, shear.basis, outcomes);
            }
            Hold::BondedStud { stud, adhesive, .. } => {
                let shear = &adhesive.lap_shear.typical;
                let left = held.knockdowns.glue_strength(adhesive, held.mount.near, shear.basis)?.product();
                let bearable = stud_bond_torque(shear.value * left, stud.base.value);
                self.turned("M_i", bearable, shear.basis, outcomes);
            }
            Hold::Screw { .. } | Hold::BlindRivet { .. } => {}
        }
        Ok(())
    }

    fn pulled(&self, limit: &'static str, bearable: Force, basis: Basis, outcomes: &mut Outcomes<'_>) {
        self.compare(limit, self.preload, bearable, basis, outcomes);
    }

    fn turned(&self, limit: &'static str, bearable: Torque, basis: Basis, outcomes: &mut Outcomes<'_>) {
        self.compare(limit, self.torque, bearable, basis, outcomes);
    }

    fn compare<Q>(&self, limit: &'static str, demand: Q, bearable: Q, basis: Basis, outcomes: &mut Outcomes<'_>)
    where
        Q: Copy + Into<Measure> + Div<Output = Ratio>,
    {
        let factor = self.held.top.criteria.tightening_factor.value;
        outcomes.compare(None, demand / bearable * factor, || {
            let nut_factor = &self.bolt.lubrication.nut_factor;
            let basis = basis.max(nut_factor.typical.basis);
            let finding = Finding::compare(demand, bearable, factor, basis).term("M", self.torque);
            let finding = finding.term("K", nut_factor.low.min(nut_factor.high));
            (self.held.place(), finding.term("d", self.bolt.thread.major.value).term(limit, bearable))
        });
    }
}

//! Forces across the skin: pulls on the fixings, pressure on the bed.

use super::{
    FixingGroup, FootingAction, GroupError,
    foot::Bed,
    sums::{Plane, Sums, dot},
};
use crate::units::{Angle, Area, Force, Length, Pressure, Ratio, si};

/// What may be missing in the balance, as a share of all that acts on the foot.
const BALANCED: f64 = 1e-12;
/// Steps towards the balance. Three to eight are usual; the rest is for stiffnesses that are far apart.
const STEPS: usize = 200;
/// Share of the fall in energy that a step promises which it must keep, if it does not halve what is missing.
const KEPT: f64 = 1e-4;
/// A promised fall below this share of the energy is lost in its rounding; then the step is taken as it is.
const UNSEEN: f64 = 1e-13;
/// A step is shortened at most this often: by then it is lost in rounding.
const SHORTENED: usize = 40;
/// Stiffness lent to each way to move, as a share of the mean, so that a step stays finite where nothing yet holds the
/// foot; and the smaller share that stays to the end. Both leave the balance itself as it is.
const LENT: f64 = 1e-10;
const LENT_TO_THE_END: f64 = 1e-15;

/// What a footing brings on its fixings and its bed.
#[derive(Clone, Debug, PartialEq)]
pub struct FootingForces {
    /// Pull on each fixing, in the order of the fixings; zero where the foot presses.
    pub pulls: Vec<Force>,
    /// The greatest pressure on the bed.
    pub pressure: Pressure,
    /// How much of the foot presses on the bed.
    pub contact: Area,
    /// Lift of the foot at its middle.
    pub lift: Length,
    /// Small turns of the foot about *x* and about *y*. Where it hangs clear on fixings in one line, its turn about them
    /// is any.
    pub turn: [Angle; 2],
    /// Force and moment that miss in the balance, as a share of all that acts on the foot, from above and from below:
    /// what rounding and the last step leave.
    pub residual: Ratio,
}

impl FootingForces {
    /// The greatest pull on a fixing.
    #[must_use]
    pub fn greatest(&self) -> Force {
        self.pulls.iter().fold(Force::default(), |most, pull| most.max(*pull))
    }
}

/// The foot at one place above its bed.
struct State {
    plane: Plane,
    springs: Sums,
    bed: Bed,
    /// Force and moments about the plane's origin that the springs do not yet carry.
    gap: [f64; 3],
    /// How much that is, as a share of all that acts on the foot.
    missing: f64,
    /// Energy of the springs less the work of the action.
    energy: f64,
}

impl FixingGroup {
    /// Pulls on the fixings and pressure on the bed below a rigid foot.
    ///
    /// ```text
    ///   w(x, y) = u + φ_x y − φ_y x            T_i = k ⟨w_i⟩        p = k_b ⟨−w⟩        ⟨ ⟩ what is positive of it
    ///
    ///   P = Σ T_i − ∫ p dA       M_x = Σ T_i y_i − ∫ p y dA       M_y = −Σ T_i x_i + ∫ p x dA
    /// ```
    ///
    /// | symbol                | meaning                                        | argument or field  |
    /// |-----------------------|------------------------------------------------|--------------------|
    /// | *P*                   | pull on the foot                               | `action.pull`      |
    /// | *`M_x`*, *`M_y`*      | moments about *x* and *y*                      | `action.moment`    |
    /// | *`T_i`*               | pull on a fixing                               | `pulls`            |
    /// | *p*                   | pressure on the bed; its peak is given         | `pressure`         |
    /// | *k*                   | stiffness of a fixing                          | `fixing_stiffness` |
    /// | *`k_b`*               | modulus of the bed                             | `bed`              |
    /// | *u*, *`φ_x`*, *`φ_y`* | lift and turns of the foot: the three unknowns |                    |
    ///
    /// The balance is the least of a convex energy. Newton's steps go there from the foot held everywhere, each shortened
    /// until the energy falls; the integrals over the pressed part of the foot are exact.
    ///
    /// # Validity
    ///
    /// A rigid foot, equal fixings without preload, a bed of springs that do not help each other (it underrates the
    /// pressure at the rim of a foot on a deep bed). A foot that bends pries: that needs its own factor. *`k_b` A*, of the
    /// bed below the whole foot, may be 10⁻³ to 10⁶ times *k n*.
    ///
    /// # Errors
    ///
    /// An action that is not a number; a balance that is not found to 10⁻¹² of all that acts on the foot.
    ///
    /// # Source
    ///
    /// [`DERIVED`](crate::source::DERIVED): equilibrium of a rigid plate on springs of one sign.
    ///
    /// # Examples
    ///
    /// Lifted clear off its bed, the group is a row of springs: two fixings 100 mm apart under 1000 N and 20 N·m carry
    /// 1000/2 ± 20/0.1 = 700 and 300 N.
    ///
    /// ```
    /// use skinspan::{closed_form::fixing_group::{FixingGroup, FootingAction}, geometry::{Foot, Point},
    ///     units::{Force, Length, Pressure, Torque}};
    /// use uom::si::{force::newton, length::millimeter, pressure::megapascal, torque::newton_meter};
    /// let mm = Length::new::<millimeter>;
    /// let at = [50.0, -50.0].map(|x| Point { x: mm(x), y: mm(0.0) }).to_vec();
    /// let foot = Foot::Rectangle { length: mm(120.0), width: mm(60.0) };
    /// let stiffness = Force::new::<newton>(10_000.0) / mm(1.0);
    /// let group = FixingGroup::new(at, foot, stiffness, Pressure::new::<megapascal>(8.0) / mm(1.0))?;
    /// let nm = Torque::new::<newton_meter>;
    /// let action = FootingAction {
    ///     pull: Force::new::<newton>(1000.0),
    ///     moment: [nm(0.0), nm(-20.0)],
    ///     ..FootingAction::default()
    /// };
    /// let forces = group.pulls(&action)?;
    /// assert!((forces.pulls[0].get::<newton>() - 700.0).abs() < 1e-9);
    /// assert!((forces.pulls[1].get::<newton>() - 300.0).abs() < 1e-9);
    /// assert_eq!(forces.contact.value, 0.0);
    /// # Ok::<(), skinspan::closed_form::fixing_group::GroupError>(())
    /// ```
    pub fn pulls(&self, action: &FootingAction) -> Result<FootingForces, GroupError> {
        if !action.is_finite() {
            return Err(GroupError::Action);
        }
        let reach = self.reach;
        let load = [action.pull.value, -action.moment[1].value / reach, action.moment[0].value / reach];
        let State { plane, bed, missing, .. } = self.balance(load)?;
        let [_, b, c] = plane.a;
        Ok(FootingForces {
            pulls: self.places().map(|place| si((self.fixing_stiffness.value * plane.lift(place)).max(0.0))).collect(),
            pressure: si(self.bed.value * bed.depth),
            contact: si(bed.sums.moments[0] * reach * reach),
            lift: si(plane.lift([0.0; 2])),
            turn: [si(c / reach), si(-b / reach)],
            residual: si(missing),
        })
    }

    /// The foot at rest.
    fn balance(&self, load: [f64; 3]) -> Result<State, GroupError> {
        let start = Plane { origin: [0.0; 2], a: self.held_everywhere.held(load, 0.0) };
        let mut now = self.state(start, load);
        let mut least = now.missing;
        for _ in 0..STEPS {
            if now.missing <= BALANCED {
                return Ok(now);
            }
            let step = now.springs.held(now.gap, LENT * now.missing + LENT_TO_THE_END);
            let fall = dot(now.gap, step);
            let mut share = 1.0;
            let mut found = None;
            for _ in 0..SHORTENED {
                let there = self.state(now.plane.moved(step, share), load);
                if there.missing <= 0.5 * least
                    || there.energy <= now.energy - KEPT * share * fall
                    || fall <= UNSEEN * now.energy.abs()
                {
                    found = Some(there);
                    break;
                }
                // Where the energy would be least if its slope fell evenly.
                let slope = dot(there.gap, step);
                share *= (fall / (fall - slope)).clamp(0.1, 0.5);
            }
            let Some(there) = found else { break };
            least = least.min(there.missing);
            let [x, y] = there.plane.origin;
            now = match there.springs.centre_aside().filter(|_| there.missing > BALANCED) {
                Some(aside) => self.state(there.plane.seen_from([x + aside[0], y + aside[1]]), load),
                None => there,
            };
        }
        Err(GroupError::Unbalanced { residual: si(least) })
    }

    /// The foot at a place; `load` is about the middle of the foot.
    fn state(&self, plane: Plane, load: [f64; 3]) -> State {
        let [o_x, o_y] = plane.origin;
        let mut fixings = Sums::default();
        for place in self.places() {
            let w = plane.lift(place);
            if w > 0.0 {
                fixings.add_spring([place[0] - o_x, place[1] - o_y], w);
            }
        }
        let bed = self.foot.bed(self.reach, &plane);
        let springs = fixings.scaled(self.fixing_stiffness.value).joined(&bed.sums.scaled(self.bed_stiffness()));
        let load = [load[0], load[1] - o_x * load[0], load[2] - o_y * load[0]];
        let gap = [0, 1, 2].map(|i| load[i] - springs.force[i]);
        let acting =
            extent(load) + self.fixing_stiffness.value * fixings.force[0] - self.bed_stiffness() * bed.sums.force[0];
        let missing = if acting > 0.0 { extent(gap) / acting } else { 0.0 };
        let half = [0, 1, 2].map(|i| 0.5 * springs.force[i] - load[i]);
        State { plane, springs, bed, gap, missing, energy: dot(plane.a, half) }
    }

    /// All fixings pull and all of the bed pushes.
    pub(super) fn sum_everywhere(&self) -> Sums {
        let mut fixings = Sums::default();
        for place in self.places() {
            fixings.add_spring(place, 0.0);
        }
        fixings.scaled(self.fixing_stiffness.value).joined(&self.foot.whole(self.reach).scaled(self.bed_stiffness()))
    }

    /// Stiffness of the bed below the square of the foot's reach.
    fn bed_stiffness(&self) -> f64 {
        self.bed.value * self.reach.powi(2)
    }

    /// Places of the fixings over the reach of the foot.
    fn places(&self) -> impl Iterator<Item = [f64; 2]> {
        let per_reach = 1.0 / self.reach;
        self.at.iter().map(move |place| [place.x.value * per_reach, place.y.value * per_reach])
    }
}

fn extent(load: [f64; 3]) -> f64 {
    load[0].abs() + load[1].abs() + load[2].abs()
}

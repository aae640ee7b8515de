//! Forces across the skin: pulls on the fixings, pressure on the bed.

use super::{
    FixingGroup, FootingAction, GroupError,
    foot::Bed,
    sums::{Sums, dot},
};
use crate::{
    closed_form::quantity::si,
    units::{Area, Force, Pressure, Ratio},
};

/// What of the action may be missing in the balance, as a share of it.
const BALANCED: f64 = 1e-12;
/// Steps towards the balance. Three to eight are usual; the rest is for stiffnesses that are far apart.
const STEPS: usize = 200;
/// Share of the fall in energy that a step promises which it must keep, if it does not halve what is missing.
const KEPT: f64 = 1e-4;
/// A step is shortened at most this often: by then it is lost in rounding.
const SHORTENED: usize = 40;
/// Stiffness lent to each way to move, as a share of the mean, so that a step stays finite where nothing yet holds the
/// foot; and the smaller share that stays to the end. Both leave the balance itself as it is.
const LENT: f64 = 1e-6;
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
    /// Force and moment that miss in the balance, as a share of the action: what rounding and the last step leave.
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
    /// *w* = *a*·(1, *x*, *y*), coordinates over the reach of the foot.
    a: [f64; 3],
    springs: Sums,
    bed: Bed,
    /// Force and moments, over the reach, that the springs do not yet carry.
    gap: [f64; 3],
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
    /// | symbol            | meaning                                               | argument or field   |
    /// |-------------------|-------------------------------------------------------|---------------------|
    /// | *P*               | pull on the foot                                      | `action.pull`       |
    /// | *M_x*, *M_y*      | moments about *x* and *y*                             | `action.moment`     |
    /// | *T_i*             | pull on a fixing                                      | `pulls`             |
    /// | *p*               | pressure on the bed; its peak is given                | `pressure`          |
    /// | *k*               | stiffness of a fixing                                 | `fixing_stiffness`  |
    /// | *k_b*             | modulus of the bed                                    | `bed`               |
    /// | *u*, *φ_x*, *φ_y* | lift and turns of the foot: the three unknowns        |                     |
    ///
    /// The balance is the least of a convex energy. Newton's steps go there from the foot held everywhere, each shortened
    /// until the energy falls; the integrals over the pressed part of the foot are exact.
    ///
    /// # Validity
    ///
    /// A rigid foot, equal fixings without preload, a bed of springs that do not help each other (it underrates the
    /// pressure at the rim of a foot on a deep bed). A foot that bends pries: that needs its own factor. The stiffnesses
    /// *k n* and *k_b A* may lie a factor of 10⁶ apart either way.
    ///
    /// # Errors
    ///
    /// An action that is not a number; a balance that is not found to 10⁻¹² of the action.
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
    /// use skinspan::{closed_form::fixing_group::{FixingGroup, Foot, FootingAction}, geometry::Point,
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
        let reach = self.foot.reach();
        let load = [action.pull.value, -action.moment[1].value / reach, action.moment[0].value / reach];
        let size = extent(load);
        let (a, bed, residual) = if size > 0.0 { self.balance(load, size)? } else { ([0.0; 3], Bed::default(), 0.0) };
        Ok(FootingForces {
            pulls: self.places().map(|place| si((self.fixing_stiffness.value * lift(a, place)).max(0.0))).collect(),
            pressure: si(self.bed.value * bed.depth),
            contact: si(bed.sums.moments[0] * reach * reach),
            residual: si(residual),
        })
    }

    /// Where the foot comes to rest, its bed there, and what is missing, as a share.
    fn balance(&self, load: [f64; 3], size: f64) -> Result<([f64; 3], Bed, f64), GroupError> {
        let mut now = self.state(self.held_everywhere().held(load, 0.0), load);
        let mut least = extent(now.gap) / size;
        for _ in 0..STEPS {
            let missing = extent(now.gap) / size;
            if missing <= BALANCED {
                return Ok((now.a, now.bed, missing));
            }
            let step = now.springs.held(now.gap, LENT * missing + LENT_TO_THE_END);
            let fall = dot(now.gap, step);
            let mut share = 1.0;
            let mut found = None;
            for _ in 0..SHORTENED {
                let a = [now.a[0] + share * step[0], now.a[1] + share * step[1], now.a[2] + share * step[2]];
                let there = self.state(a, load);
                if extent(there.gap) <= 0.5 * least * size || there.energy <= now.energy - KEPT * share * fall {
                    found = Some(there);
                    break;
                }
                // Where the energy would be least if its slope fell evenly.
                let slope = dot(there.gap, step);
                share *= (fall / (fall - slope)).clamp(0.1, 0.5);
            }
            let Some(there) = found else { break };
            now = there;
            least = least.min(extent(now.gap) / size);
        }
        Err(GroupError::Unbalanced { residual: si(least) })
    }

    fn state(&self, a: [f64; 3], load: [f64; 3]) -> State {
        let mut fixings = Sums::default();
        for place in self.places() {
            let w = lift(a, place);
            if w > 0.0 {
                fixings.add_spring(place, w);
            }
        }
        let bed = self.foot.bed(a);
        let springs = fixings.scaled(self.fixing_stiffness.value).joined(&bed.sums.scaled(self.bed_stiffness()));
        let gap = [0, 1, 2].map(|i| load[i] - springs.force[i]);
        let half = [0, 1, 2].map(|i| 0.5 * springs.force[i] - load[i]);
        State { a, springs, bed, gap, energy: dot(a, half) }
    }

    /// All fixings pull and all of the bed pushes.
    fn held_everywhere(&self) -> Sums {
        let mut fixings = Sums::default();
        for place in self.places() {
            fixings.add_spring(place, 0.0);
        }
        fixings.scaled(self.fixing_stiffness.value).joined(&self.foot.whole().scaled(self.bed_stiffness()))
    }

    /// Stiffness of the bed below the square of the foot's reach.
    fn bed_stiffness(&self) -> f64 {
        self.bed.value * self.foot.reach().powi(2)
    }

    /// Places of the fixings over the reach of the foot.
    fn places(&self) -> impl Iterator<Item = [f64; 2]> {
        let reach = self.foot.reach();
        self.at.iter().map(move |place| [place.x.value / reach, place.y.value / reach])
    }
}

fn lift(a: [f64; 3], [x, y]: [f64; 2]) -> f64 {
    a[0] + a[1] * x + a[2] * y
}

fn extent(load: [f64; 3]) -> f64 {
    load[0].abs() + load[1].abs() + load[2].abs()
}

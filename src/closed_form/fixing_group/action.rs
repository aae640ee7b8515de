use std::ops::Add;

use crate::{
    geometry::Point,
    units::{Force, Length, Ratio, Torque, si},
};

/// What acts on a footing, brought to its origin in the plane of the outer skin.
///
/// *x* and *y* lie in the skin, *z* points away from the panel. A moment is positive by the right-hand rule about its
/// axis: `moment[0]`, about *x*, lifts the side of positive *y*; `moment[1]`, about *y*, lifts the side of **negative**
/// *x*; `twist`, about *z*, turns *x* towards *y*.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct FootingAction {
    /// Force along *z*: a pull away from the panel is positive.
    pub pull: Force,
    /// Forces along *x* and along *y*.
    pub side: [Force; 2],
    /// Moments about *x* and about *y*.
    pub moment: [Torque; 2],
    /// Moment about *z*.
    pub twist: Torque,
}

impl FootingAction {
    /// What a force does to the footing when it acts at a place above it.
    ///
    /// ```text
    ///   M_x = y F_z − h F_y        M_y = h F_x − x F_z        M_z = x F_y − y F_x
    /// ```
    ///
    /// | symbol   | meaning                                         | argument |
    /// |----------|-------------------------------------------------|----------|
    /// | *F*      | force along *x*, *y*, *z* (away from the panel) | `force`  |
    /// | *x*, *y* | where it acts, from the footing's origin        | `offset` |
    /// | *h*      | how far above the outer skin                    | `height` |
    ///
    /// # Validity
    ///
    /// A rigid body between the force and the footing.
    ///
    /// # Source
    ///
    /// [`DERIVED`](crate::source::DERIVED): the moment of a force, **r** × **F**.
    ///
    /// # Examples
    ///
    /// 100 N along *x*, 0.3 m up: 30 N·m about *y*.
    ///
    /// ```
    /// use skinspan::{closed_form::fixing_group::FootingAction, geometry::Point, units::{Force, Length}};
    /// use uom::si::{force::newton, length::meter, torque::newton_meter};
    /// let (n, m) = (Force::new::<newton>, Length::new::<meter>);
    /// let middle = Point { x: m(0.0), y: m(0.0) };
    /// let action = FootingAction::of_force_at([n(100.0), n(0.0), n(0.0)], middle, m(0.3));
    /// assert!((action.moment[1].get::<newton_meter>() - 30.0).abs() < 1e-12);
    /// ```
    #[must_use]
    pub fn of_force_at(force: [Force; 3], offset: Point, height: Length) -> Self {
        let [f_x, f_y, f_z] = force;
        let moment = |plus: (Length, Force), minus: (Length, Force)| -> Torque {
            si((plus.0 * plus.1 - minus.0 * minus.1).value)
        };
        Self {
            pull: f_z,
            side: [f_x, f_y],
            moment: [moment((offset.y, f_z), (height, f_y)), moment((height, f_x), (offset.x, f_z))],
            twist: moment((offset.x, f_y), (offset.y, f_x)),
        }
    }

    /// The same action, each part times a share.
    #[must_use]
    pub fn scaled(self, share: Ratio) -> Self {
        Self {
            pull: self.pull * share,
            side: self.side.map(|force| force * share),
            moment: self.moment.map(|moment| moment * share.value),
            twist: self.twist * share.value,
        }
    }

    /// Whether every part is a number.
    pub(super) fn is_finite(&self) -> bool {
        let Self { pull, side, moment, twist } = self;
        [pull, &side[0], &side[1]].iter().all(|force| force.is_finite())
            && [&moment[0], &moment[1], twist].iter().all(|moment| moment.is_finite())
    }
}

impl Add for FootingAction {
    type Output = Self;

    fn add(self, other: Self) -> Self {
        Self {
            pull: self.pull + other.pull,
            side: [self.side[0] + other.side[0], self.side[1] + other.side[1]],
            moment: [self.moment[0] + other.moment[0], self.moment[1] + other.moment[1]],
            twist: self.twist + other.twist,
        }
    }
}

//! Forces on the fixings in the plane of the skin.

use super::{FixingGroup, FootingAction, GroupError};
use crate::units::{Force, si};

/// A twist below this share of what could make one is the rounding of its parts.
const NO_TWIST: f64 = 1e-12;

impl FixingGroup {
    /// Forces along *x* and *y* on each fixing, in the order of the fixings: the force of the foot on the fixing.
    ///
    /// ```text
    ///                T_c
    ///   F_i = V/n + ------- ( −(y_i − y_c), x_i − x_c )      T_c = T − x_c V_y + y_c V_x
    ///                Σ r²
    /// ```
    ///
    /// | symbol           | meaning                                     | argument or field |
    /// |------------------|---------------------------------------------|-------------------|
    /// | *V*              | force in the plane, at the footing's origin | `action.side`     |
    /// | *T*              | twist about the footing's origin            | `action.twist`    |
    /// | *n*              | number of fixings                           | `at`              |
    /// | *`x_c`*, *`y_c`* | their centroid                              | `at`              |
    /// | *r*              | distance of a fixing from the centroid      | `at`              |
    ///
    /// # Validity
    ///
    /// Equal fixings that give elastically, a rigid foot, no friction, holes without clearance. Clearance, or a bed that
    /// does not yield, leaves the first fixing to bear more than its share.
    ///
    /// # Errors
    ///
    /// A twist about a single fixing, or an action that is not a number.
    ///
    /// # Source
    ///
    /// [`DERIVED`](crate::source::DERIVED): equilibrium of a rigid plate on equal springs; the textbooks' elastic or
    /// vector method.
    ///
    /// # Examples
    ///
    /// Four fixings at (±30, ±40) mm, twist 100 N·m: Σ*r*² = 4 × 50² mm², so each carries 100/(4 × 0.05) = 500 N.
    ///
    /// ```
    /// use skinspan::{closed_form::fixing_group::{FixingGroup, FootingAction}, geometry::{Foot, Pattern},
    ///     units::{Force, Length, Pressure, Torque}};
    /// use uom::si::{force::newton, length::millimeter, pressure::megapascal, torque::newton_meter};
    /// let mm = Length::new::<millimeter>;
    /// let at = Pattern::Grid { along_x: 2, along_y: 2, pitch_x: mm(60.0), pitch_y: mm(80.0) }.points();
    /// let foot = Foot::Rectangle { length: mm(100.0), width: mm(120.0) };
    /// let stiffness = Force::new::<newton>(10_000.0) / mm(1.0);
    /// let group = FixingGroup::new(at, foot, stiffness, Pressure::new::<megapascal>(8.0) / mm(1.0))?;
    /// let twist = FootingAction { twist: Torque::new::<newton_meter>(100.0), ..FootingAction::default() };
    /// for [x, y] in group.shears(&twist)? {
    ///     assert!((x.hypot(y).get::<newton>() - 500.0).abs() < 1e-9);
    /// }
    /// # Ok::<(), skinspan::closed_form::fixing_group::GroupError>(())
    /// ```
    pub fn shears(&self, action: &FootingAction) -> Result<Vec<[Force; 2]>, GroupError> {
        if !action.is_finite() {
            return Err(GroupError::Action);
        }
        let (mut n, mut x_c, mut y_c) = (0.0, 0.0, 0.0);
        for place in &self.at {
            n += 1.0;
            x_c += place.x.value;
            y_c += place.y.value;
        }
        (x_c, y_c) = (x_c / n, y_c / n);
        let [v_x, v_y] = action.side.map(|force| force.value);
        let twist = action.twist.value - x_c * v_y + y_c * v_x;
        let arms = || self.at.iter().map(|place| (place.x.value - x_c, place.y.value - y_c));
        let square: f64 = arms().map(|(x, y)| x * x + y * y).sum();
        let per_arm = if self.at.len() > 1 {
            twist / square
        } else if twist.abs() <= NO_TWIST * (action.twist.value.abs() + (x_c * v_y).abs() + (y_c * v_x).abs()) {
            0.0
        } else {
            return Err(GroupError::Twist);
        };
        Ok(arms().map(|(x, y)| [si(v_x / n - per_arm * y), si(v_y / n + per_arm * x)]).collect())
    }
}

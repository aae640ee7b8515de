//! Bodies of gear in the wind.

use super::{Curve, Property, schema::kind};
use crate::units::Ratio;

kind! {
    /// A shape of gear: what the wind does to it, as coefficients of the velocity pressure on an area.
    Body {
        #[doc = "Area that the coefficients refer to."]
        area: String => PLAIN,
        #[doc = "Drag coefficient, by slenderness (length over diameter) where it depends on it."]
        drag: Curve<Ratio, Ratio> => COEFFICIENT,
        #[doc = "Lift coefficient on the same area, either way, where it matters."]
        lift: Option<Property<Ratio>> => COEFFICIENT,
    }
}

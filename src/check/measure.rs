//! A quantity of any kind, for reports that list quantities of many kinds.

use crate::units::{
    Area, ArealMassDensity, Curvature, FlexuralRigidity, Force, ForcePerWidth, Frequency, Length, MomentPerWidth,
    Pressure, Ratio, TemperatureInterval, Torque,
};

/// A quantity of one of the kinds that checks compare or list.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Measure {
    /// Stress, strength, modulus.
    Pressure(Pressure),
    /// Distance, thickness, sag.
    Length(Length),
    /// Cross-section.
    Area(Area),
    /// Load.
    Force(Force),
    /// Overturning, tightening.
    Torque(Torque),
    /// Shear, skin force, reaction along a pipe, shear stiffness.
    ForcePerWidth(ForcePerWidth),
    /// Moment per width.
    MomentPerWidth(MomentPerWidth),
    /// Rigidity per width.
    Rigidity(FlexuralRigidity),
    /// Curvature.
    Curvature(Curvature),
    /// A pure number.
    Ratio(Ratio),
    /// Frequency.
    Frequency(Frequency),
    /// Difference of temperatures.
    Warmth(TemperatureInterval),
    /// Mass per area.
    ArealMass(ArealMassDensity),
}

macro_rules! measures {
    ($($kind:ident($quantity:ty)),* $(,)?) => {
        $(impl From<$quantity> for Measure {
            fn from(quantity: $quantity) -> Self {
                Self::$kind(quantity)
            }
        })*
    };
}

measures! {
    Pressure(Pressure), Length(Length), Area(Area), Force(Force), Torque(Torque), ForcePerWidth(ForcePerWidth), MomentPerWidth(MomentPerWidth),
    Rigidity(FlexuralRigidity), Curvature(Curvature), Ratio(Ratio), Frequency(Frequency), Warmth(TemperatureInterval),
    ArealMass(ArealMassDensity),
}

#[cfg(test)]
mod tests {
    use super::*;
    use uom::si::{f64::Length, length::millimeter, pressure::megapascal};

    #[test]
    fn a_quantity_keeps_its_kind() {
        assert!(matches!(Measure::from(Length::new::<millimeter>(1.0)), Measure::Length(_)));
        assert!(matches!(Measure::from(Pressure::new::<megapascal>(1.0)), Measure::Pressure(_)));
    }
}

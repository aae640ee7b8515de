//! Which quantities a table may hold, and how its text becomes one.

use crate::units::{
    Angle, ArealMassDensity, Dimensioned, Force, Length, MassDensity, ParseError, Pressure, Ratio, System,
    TemperatureCoefficient, ThermodynamicTemperature, Torque, parse, show,
};

/// Kind of quantity in a table cell.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Dimension {
    Pressure,
    MassDensity,
    ArealMassDensity,
    Length,
    Angle,
    Ratio,
    TemperatureCoefficient,
    Temperature,
    Force,
    Torque,
}

impl Dimension {
    /// What the reader calls it, and a unit to offer in place of none.
    pub(crate) const fn words(self) -> (&'static str, &'static str) {
        match self {
            Self::Pressure => ("a stress or modulus", "MPa"),
            Self::MassDensity => ("a density", "kg/m3"),
            Self::ArealMassDensity => ("a mass per area", "kg/m2"),
            Self::Length => ("a length", "mm"),
            Self::Angle => ("an angle", "deg"),
            Self::Ratio => ("a ratio", ""),
            Self::TemperatureCoefficient => ("a thermal expansion", "ppm/K"),
            Self::Temperature => ("a temperature", "°C"),
            Self::Force => ("a force", "N"),
            Self::Torque => ("a torque", "N·m"),
        }
    }

    /// A value in SI base units as text.
    pub(crate) fn show(self, value: f64, system: System) -> String {
        match self {
            Self::Pressure => show(Pressure::from_si(value), system),
            Self::MassDensity => show(MassDensity::from_si(value), system),
            Self::ArealMassDensity => show(ArealMassDensity::from_si(value), system),
            Self::Length => show(Length::from_si(value), system),
            Self::Angle => show(Angle::from_si(value), system),
            Self::Ratio => show(Ratio::from_si(value), system),
            Self::TemperatureCoefficient => show(TemperatureCoefficient::from_si(value), system),
            Self::Temperature => show(ThermodynamicTemperature::from_si(value), system),
            Self::Force => show(Force::from_si(value), system),
            Self::Torque => show(Torque::from_si(value), system),
        }
    }

    /// Value in SI base units.
    pub(crate) fn read(self, text: &str) -> Result<f64, ParseError> {
        match self {
            Self::Pressure => parse::<Pressure>(text).map(Dimensioned::si),
            Self::MassDensity => parse::<MassDensity>(text).map(Dimensioned::si),
            Self::ArealMassDensity => parse::<ArealMassDensity>(text).map(Dimensioned::si),
            Self::Length => parse::<Length>(text).map(Dimensioned::si),
            Self::Angle => parse::<Angle>(text).map(Dimensioned::si),
            Self::Ratio => parse::<Ratio>(text).map(Dimensioned::si),
            Self::TemperatureCoefficient => parse::<TemperatureCoefficient>(text).map(Dimensioned::si),
            Self::Temperature => parse::<ThermodynamicTemperature>(text).map(Dimensioned::si),
            Self::Force => parse::<Force>(text).map(Dimensioned::si),
            Self::Torque => parse::<Torque>(text).map(Dimensioned::si),
        }
    }
}

/// Gives a quantity its place in the schema.
pub(crate) trait Tabled: Dimensioned {
    const DIMENSION: Dimension;
}

macro_rules! tabled {
    ($($quantity:ty = $dimension:ident;)*) => {
        $(impl Tabled for $quantity {
            const DIMENSION: Dimension = Dimension::$dimension;
        })*
    };
}

tabled! {
    Pressure = Pressure;
    MassDensity = MassDensity;
    ArealMassDensity = ArealMassDensity;
    Length = Length;
    Angle = Angle;
    Ratio = Ratio;
    TemperatureCoefficient = TemperatureCoefficient;
    ThermodynamicTemperature = Temperature;
    Force = Force;
    Torque = Torque;
}

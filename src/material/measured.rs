//! Which quantities a table may hold, and how its text becomes one.

use std::marker::PhantomData;

use uom::si::Quantity;

use crate::units::{
    self, Angle, ArealMassDensity, Length, MassDensity, Pressure, Ratio, TemperatureCoefficient,
    ThermodynamicTemperature,
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
            Self::TemperatureCoefficient => ("a thermal expansion", "1/K"),
            Self::Temperature => ("a temperature", "°C"),
        }
    }

    /// Value in SI base units.
    pub(crate) fn read(self, text: &str) -> Result<f64, units::ParseError> {
        Ok(match self {
            Self::Pressure => units::parse::<Pressure>(text)?.value,
            Self::MassDensity => units::parse::<MassDensity>(text)?.value,
            Self::ArealMassDensity => units::parse::<ArealMassDensity>(text)?.value,
            Self::Length => units::parse::<Length>(text)?.value,
            Self::Angle => units::parse::<Angle>(text)?.value,
            Self::Ratio => units::parse::<Ratio>(text)?.value,
            Self::TemperatureCoefficient => units::parse::<TemperatureCoefficient>(text)?.value,
            Self::Temperature => units::parse::<ThermodynamicTemperature>(text)?.value,
        })
    }
}

pub(crate) mod sealed {
    /// The way between a quantity and its number in SI base units; private to the crate.
    pub trait Si: Copy {
        fn from_si(value: f64) -> Self;
        fn si(self) -> f64;
        fn show(self) -> String;
    }
}

/// A quantity that a material table can hold. Sealed: the list of quantities is the schema's.
pub trait Measured: sealed::Si {}

/// Gives a quantity its place in the schema.
pub(crate) trait Dimensioned: Measured {
    const DIMENSION: Dimension;
}

macro_rules! measured {
    ($($quantity:ty = $dimension:ident, $show:expr;)*) => {$(
        impl sealed::Si for $quantity {
            fn from_si(value: f64) -> Self {
                Quantity { dimension: PhantomData, units: PhantomData, value }
            }
            fn si(self) -> f64 {
                self.value
            }
            fn show(self) -> String {
                let show: fn(f64) -> String = $show;
                show(self.value)
            }
        }
        impl Measured for $quantity {}
        impl Dimensioned for $quantity {
            const DIMENSION: Dimension = Dimension::$dimension;
        }
    )*};
}

measured! {
    Pressure = Pressure, |v| format!("{} MPa", digits(v / 1e6));
    MassDensity = MassDensity, |v| format!("{} kg/m3", digits(v));
    ArealMassDensity = ArealMassDensity, |v| format!("{} kg/m2", digits(v));
    Length = Length, |v| format!("{} mm", digits(v * 1e3));
    Angle = Angle, |v| format!("{} deg", digits(v.to_degrees()));
    Ratio = Ratio, digits;
    TemperatureCoefficient = TemperatureCoefficient, |v| format!("{}e-6 1/K", digits(v * 1e6));
    ThermodynamicTemperature = Temperature, |v| format!("{} °C", digits(v - 273.15));
}

/// Four significant digits, no trailing zeros.
fn digits(value: f64) -> String {
    let rounded = format!("{value:.3e}").parse::<f64>().unwrap_or(value);
    format!("{rounded}")
}

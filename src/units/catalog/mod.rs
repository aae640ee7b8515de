//! The closed list of units: which units a quantity has, how each is written, and its exact factor.

mod factor;
mod geometry;
mod mass;
mod mechanics;
mod motion;
mod panel;
mod temperature;

use std::marker::PhantomData;

use uom::si::Quantity;

use self::factor::Factor;
use super::{
    Acceleration, Angle, Area, ArealMassDensity, Curvature, FlexuralRigidity, Force, ForcePerWidth, FoundationModulus,
    Frequency, Length, LinearMassDensity, Mass, MassDensity, MomentPerWidth, Pressure, Ratio, TemperatureCoefficient,
    TemperatureInterval, ThermodynamicTemperature, Time, Torque, Velocity, Volume,
};

/// System of units of a text for people.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum System {
    /// Inch, pound, degree Fahrenheit.
    Us,
    /// The international system.
    Si,
}

impl System {
    /// The other one.
    #[must_use]
    pub const fn other(self) -> Self {
        match self {
            Self::Us => Self::Si,
            Self::Si => Self::Us,
        }
    }
}

/// A unit of one quantity.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Unit {
    /// As it is printed: `lb/ft³`.
    pub symbol: &'static str,
    /// As it may be typed, the usual form first: `lb/ft3`, `pcf`.
    ///
    /// `2` stands for `²` and `^2` as well, `·` for any sign of multiplication or a space.
    pub names: &'static [&'static str],
    /// The system it belongs to; `None` where both use it.
    pub system: Option<System>,
    numerator: f64,
    denominator: f64,
    offset: f64,
}

impl Unit {
    const fn new(symbol: &'static str, names: &'static [&'static str], factor: Factor, system: Option<System>) -> Self {
        let (numerator, denominator) = factor.parts();
        Self { symbol, names, system, numerator, denominator, offset: 0.0 }
    }

    const fn us(symbol: &'static str, names: &'static [&'static str], factor: Factor) -> Self {
        Self::new(symbol, names, factor, Some(System::Us))
    }

    const fn si(symbol: &'static str, names: &'static [&'static str], factor: Factor) -> Self {
        Self::new(symbol, names, factor, Some(System::Si))
    }

    const fn any(symbol: &'static str, names: &'static [&'static str], factor: Factor) -> Self {
        Self::new(symbol, names, factor, None)
    }

    /// A scale that does not start at zero: degree Celsius and Fahrenheit.
    const fn with_offset(mut self, offset: f64) -> Self {
        self.offset = offset;
        self
    }

    /// Value in the SI base unit of `value` in this unit.
    ///
    /// ```text
    ///   s = (v + o) · n/d
    /// ```
    ///
    /// | symbol | meaning |
    /// |--------|---------|
    /// | *s* | value in the SI base unit |
    /// | *v* | value in this unit |
    /// | *o* | zero of the scale above that of the base unit, in this unit; nil but for temperatures |
    /// | *n*/*d* | size of this unit, as a quotient of whole numbers (of π and 180 for the degree) |
    ///
    /// The product comes before the quotient: both parts are whole numbers, so 1.5 in is 381/10000 m and not
    /// 0.038099999999999995 m.
    ///
    /// # Validity
    ///
    /// Rounded once for the sum, the product and the quotient each, so within 2e-16 of the value for each of them.
    ///
    /// # Examples
    ///
    /// 32 °F: (32 + 459.67) · 5/9 = 273.15 K.
    ///
    /// ```
    /// use skinspan::units::{Dimensioned, Length, ThermodynamicTemperature};
    /// let [inch, fahrenheit] = [Length::ENTRY.unit("in"), ThermodynamicTemperature::ENTRY.unit("°F")];
    /// assert_eq!(inch.map(|unit| unit.to_si(1.5)), Some(0.0381));
    /// assert_eq!(fahrenheit.map(|unit| unit.to_si(32.0)), Some(273.15));
    /// ```
    #[must_use]
    pub fn to_si(&self, value: f64) -> f64 {
        if self.offset == 0.0 {
            value * self.numerator / self.denominator
        } else {
            (value + self.offset) * self.numerator / self.denominator
        }
    }

    /// Value in this unit of `si` in the SI base unit: the inverse of [`to_si`](Self::to_si).
    #[must_use]
    pub fn of_si(&self, si: f64) -> f64 {
        let scaled = si * self.denominator / self.numerator;
        // The product may leave the range of f64 where the result does not.
        let scaled = if scaled.is_finite() { scaled } else { si / self.numerator * self.denominator };
        if self.offset == 0.0 { scaled } else { scaled - self.offset }
    }

    /// Whether the scale starts elsewhere than the base unit's.
    #[must_use]
    pub fn has_offset(&self) -> bool {
        self.offset != 0.0
    }

    /// How many of `smaller` make one of this unit.
    pub(super) fn in_terms_of(&self, smaller: &Self) -> f64 {
        self.numerator * smaller.denominator / (self.denominator * smaller.numerator)
    }

    fn is_base(&self) -> bool {
        self.numerator.to_bits() == self.denominator.to_bits() && !self.has_offset()
    }
}

/// From which size on a unit is the one to print.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Step {
    /// A name of the unit.
    pub unit: &'static str,
    /// Smallest absolute value in SI that this step takes.
    pub from: f64,
    /// Decimals beyond which nobody reads.
    pub decimals: usize,
}

impl Step {
    const fn new(unit: &'static str, from: f64, decimals: usize) -> Self {
        Self { unit, from, decimals }
    }
}

/// What the catalog knows of one quantity.
#[derive(Debug)]
pub struct Entry {
    /// `length`.
    pub name: &'static str,
    /// `a length`.
    pub article: &'static str,
    /// Every unit that is accepted.
    pub units: &'static [Unit],
    /// The units that are offered to someone who wrote none, SI first.
    pub usual: [&'static str; 2],
    /// Units to print in the US system, in ascending order of size.
    pub us: &'static [Step],
    /// Units to print in SI, in ascending order of size.
    pub si: &'static [Step],
    /// Whether `5 ft 6 in` is a habit of this quantity.
    pub compound: bool,
    /// Lowest physical value in SI.
    pub lowest: Option<f64>,
}

impl Entry {
    /// The unit that has this name or symbol.
    #[must_use]
    pub fn unit(&self, name: &str) -> Option<&'static Unit> {
        self.units.iter().find(|unit| unit.symbol == name || unit.names.contains(&name))
    }

    /// The SI base unit.
    #[must_use]
    pub fn base(&self) -> Option<&'static Unit> {
        self.units.iter().find(|unit| unit.is_base())
    }

    pub(super) const fn steps(&self, system: System) -> &'static [Step] {
        match system {
            System::Us => self.us,
            System::Si => self.si,
        }
    }
}

/// A quantity that can be read from text and written to it.
pub trait Dimensioned: Copy + PartialOrd {
    /// The quantity's place in the catalog.
    const ENTRY: &'static Entry;
    /// `length`.
    const NAME: &'static str = Self::ENTRY.name;
    /// `a length`.
    const ARTICLE: &'static str = Self::ENTRY.article;
    /// Every unit that is accepted.
    const UNITS: &'static [Unit] = Self::ENTRY.units;

    /// The quantity with this value in the SI base unit.
    fn from_si(value: f64) -> Self;

    /// Value in the SI base unit.
    fn si(self) -> f64;
}

macro_rules! catalog {
    ($($quantity:ty = $entry:path;)*) => {
        $(impl Dimensioned for $quantity {
            const ENTRY: &'static Entry = &$entry;

            fn from_si(value: f64) -> Self {
                Quantity { dimension: PhantomData, units: PhantomData, value }
            }

            fn si(self) -> f64 {
                self.value
            }
        })*

        /// Every quantity. Where two share a unit (`N` is a force, and a moment per width), the first one names it.
        pub const QUANTITIES: &[&Entry] = &[$(&$entry),*];
    };
}

catalog! {
    Length = geometry::LENGTH;
    Area = geometry::AREA;
    Volume = geometry::VOLUME;
    Angle = geometry::ANGLE;
    Mass = mass::MASS;
    MassDensity = mass::DENSITY;
    ArealMassDensity = mass::AREAL;
    LinearMassDensity = mass::LINEAR;
    Force = mechanics::FORCE;
    Pressure = mechanics::PRESSURE;
    Torque = mechanics::TORQUE;
    Time = motion::TIME;
    Frequency = motion::FREQUENCY;
    Velocity = motion::VELOCITY;
    Acceleration = motion::ACCELERATION;
    ThermodynamicTemperature = temperature::TEMPERATURE;
    TemperatureInterval = temperature::INTERVAL;
    TemperatureCoefficient = temperature::COEFFICIENT;
    Ratio = panel::RATIO;
    ForcePerWidth = panel::FORCE_PER_WIDTH;
    MomentPerWidth = panel::MOMENT_PER_WIDTH;
    FlexuralRigidity = panel::RIGIDITY;
    Curvature = panel::CURVATURE;
    FoundationModulus = panel::FOUNDATION;
}

#[cfg(test)]
mod tests;

//! Readings that look as if somebody had written them down otherwise than the card has them.

use uom::si::ratio::ratio;

use super::Gauge;
use crate::units::{Length, Ratio};

/// What a reading looks like.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Slip {
    /// Of about the size that was expected, the other way: the sign of the gauge is turned.
    Turned,
    /// About so many times what was expected as two units differ by.
    Unit(UnitSlip),
}

/// A unit that was read, under the head of another.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum UnitSlip {
    /// Numbers of millimetres as if they were inches.
    MillimetresAsInches,
    /// Numbers of inches as if they were millimetres.
    InchesAsMillimetres,
    /// Thousandths of an inch as if they were inches.
    ThousandthsAsInches,
    /// Thousandths of an inch as if they were millimetres.
    ThousandthsAsMillimetres,
    /// Numbers of millimetres as if they were thousandths of an inch.
    MillimetresAsThousandths,
    /// Inches as if they were thousandths of one.
    InchesAsThousandths,
}

/// The unit in the head of a column of readings.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Head {
    /// Millimetres.
    Millimetres,
    /// Inches.
    Inches,
    /// Thousandths of an inch.
    Thousandths,
}

impl UnitSlip {
    /// All of them.
    pub const ALL: [Self; 6] = [
        Self::MillimetresAsInches,
        Self::InchesAsMillimetres,
        Self::ThousandthsAsInches,
        Self::ThousandthsAsMillimetres,
        Self::MillimetresAsThousandths,
        Self::InchesAsThousandths,
    ];

    /// Whose head the numbers stand below.
    #[must_use]
    pub const fn head(self) -> Head {
        match self {
            Self::MillimetresAsInches | Self::ThousandthsAsInches => Head::Inches,
            Self::InchesAsMillimetres | Self::ThousandthsAsMillimetres => Head::Millimetres,
            Self::MillimetresAsThousandths | Self::InchesAsThousandths => Head::Thousandths,
        }
    }

    /// How many times too large a reading is.
    #[must_use]
    pub const fn times(self) -> f64 {
        match self {
            Self::MillimetresAsInches => 25.4,
            Self::InchesAsMillimetres => 1.0 / 25.4,
            Self::ThousandthsAsInches => 1000.0,
            Self::ThousandthsAsMillimetres => 1000.0 / 25.4,
            Self::MillimetresAsThousandths => 25.4 / 1000.0,
            Self::InchesAsThousandths => 1.0 / 1000.0,
        }
    }
}

/// A top gives so much more or less than expected and no more: within this it may be a slip, beyond it is something else. Our
/// choice: units differ by 25.4 and 39.4 at the least, and bands are of some tenths.
const NEAR: f64 = 1.8;

/// What a reading looks like where it is far from what a top does, by what it reads and the unit of its head, where that is known. Of a
/// reading that ought to be next to nothing nothing is said: `noise` is what a gauge may be off by.
pub(super) fn slip(gauge: &Gauge, (read, head): (Length, Option<Head>), noise: Length) -> Option<Slip> {
    let expected = gauge.reading.expected;
    if expected.abs() <= noise * 3.0 {
        return None;
    }
    let times = (read / expected).get::<ratio>();
    let off = |of: f64| (times.abs() / of).ln().abs();
    if times < 0.0 && off(1.0) < NEAR.ln() {
        return Some(Slip::Turned);
    }
    let of_head = UnitSlip::ALL.into_iter().filter(|slip| head.is_none_or(|head| slip.head() == head));
    let nearest = of_head.min_by(|a, b| off(a.times()).total_cmp(&off(b.times())))?;
    (off(nearest.times()) < NEAR.ln()).then_some(Slip::Unit(nearest))
}

/// Shares of what the table says between which cores and skins lie that are what they are said to be: beyond it is another material,
/// or no reading of this test. Our choice.
pub(super) const PLAUSIBLE: [f64; 2] = [0.25, 4.0];

/// Whether a modulus could be that, as a change over that of the table.
pub(super) fn plausible(change: Ratio) -> bool {
    let [least, most] = PLAUSIBLE;
    (least..=most).contains(&(1.0 + change.get::<ratio>()))
}

#[cfg(test)]
mod tests {
    use super::{UnitSlip, plausible};
    use crate::units::Ratio;

    #[test]
    fn units_differ_by_what_they_differ_by() {
        let times: Vec<f64> = UnitSlip::ALL.map(UnitSlip::times).to_vec();
        assert!((times[0] * times[1] - 1.0).abs() < 1e-15);
        assert!((times[0] * times[3] / times[2] - 1.0).abs() < 1e-15);
        assert!((times[3] * times[4] - 1.0).abs() < 1e-15 && (times[2] * times[5] - 1.0).abs() < 1e-15);
    }

    #[test]
    fn a_core_of_a_tenth_or_of_ten_times_is_none() {
        assert!(plausible(Ratio::from(-0.5)) && plausible(Ratio::from(2.0)));
        assert!(!plausible(Ratio::from(-0.9)) && !plausible(Ratio::from(9.0)));
    }
}

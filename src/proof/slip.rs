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
    use uom::si::length::{inch, micrometer, mil, millimeter};

    use super::{Head, Slip, UnitSlip, plausible, slip};
    use crate::{
        geometry::Point,
        proof::{Gauge, GaugeAt, Reading},
        units::{Length, Ratio},
    };

    fn mm(length: f64) -> Length {
        Length::new::<millimeter>(length)
    }

    /// What a gauge that should read that is taken for, with a gauge off by a hundredth of a millimetre.
    fn taken(expected: Length, read: Length, head: Option<Head>) -> Option<Slip> {
        let zero = Length::default();
        let reading = Reading { expected, band: expected.abs() * 0.3, core: zero, skin: zero, method: zero };
        let gauge = Gauge { name: "A".to_owned(), on: GaugeAt::MidSpan, at: Point { x: zero, y: zero }, reading };
        slip(&gauge, (read, head), mm(0.01))
    }

    /// The number that a gauge shows in one unit, below the head of another.
    #[test]
    fn a_number_below_the_head_of_another_unit_is_told_by_its_head() {
        let expected = mm(2.0);
        let [millimetres, inches, mils] = [expected.get::<millimeter>(), expected.get::<inch>(), expected.get::<mil>()];
        for (head, read, wanted) in [
            (Head::Inches, Length::new::<inch>(millimetres), UnitSlip::MillimetresAsInches),
            (Head::Inches, Length::new::<inch>(mils), UnitSlip::ThousandthsAsInches),
            (Head::Millimetres, mm(inches), UnitSlip::InchesAsMillimetres),
            (Head::Millimetres, mm(mils), UnitSlip::ThousandthsAsMillimetres),
            (Head::Thousandths, Length::new::<mil>(millimetres), UnitSlip::MillimetresAsThousandths),
            (Head::Thousandths, Length::new::<mil>(inches), UnitSlip::InchesAsThousandths),
        ] {
            assert_eq!(wanted.head(), head, "{wanted:?}");
            // A top that gives a half more, or half as much, all the same; downwards or upwards.
            for gives in [1.0, 1.5, 0.6, -1.0] {
                assert_eq!(taken(expected, read * gives, Some(head)), Some(Slip::Unit(wanted)), "{wanted:?} × {gives}");
                assert_eq!(
                    taken(-expected, read * gives, Some(head)),
                    Some(Slip::Unit(wanted)),
                    "{wanted:?} × {gives}"
                );
            }
            // Where the head is not known the ratio tells; of 25.4 and 39.4, which no ratio tells apart for sure, the nearer.
            assert_eq!(taken(expected, read, None), Some(Slip::Unit(wanted)), "{wanted:?}");
            // Another head could not have made that number.
            let others =
                [Head::Millimetres, Head::Inches, Head::Thousandths].into_iter().filter(|other| *other != head);
            assert!(
                others.into_iter().all(|other| taken(expected, read, Some(other)) != Some(Slip::Unit(wanted))),
                "{wanted:?}"
            );
        }
    }

    /// 29.5 times is nearer to 25.4 than to 39.4, but 25.4 could not stand below millimetres.
    #[test]
    fn the_head_goes_before_the_ratio() {
        assert_eq!(taken(mm(1.0), mm(29.5), None), Some(Slip::Unit(UnitSlip::MillimetresAsInches)));
        assert_eq!(
            taken(mm(1.0), mm(29.5), Some(Head::Millimetres)),
            Some(Slip::Unit(UnitSlip::ThousandthsAsMillimetres))
        );
        // Of two below one head the nearer counts.
        assert_eq!(taken(mm(1.0), mm(1000.0), Some(Head::Inches)), Some(Slip::Unit(UnitSlip::ThousandthsAsInches)));
        assert_eq!(taken(mm(1.0), mm(25.4), Some(Head::Inches)), Some(Slip::Unit(UnitSlip::MillimetresAsInches)));
    }

    /// Up to 1.8 times more or less it is the size that was meant; beyond it is something else.
    #[test]
    fn what_is_of_no_such_size_is_no_slip() {
        for head in [None, Some(Head::Millimetres)] {
            for turned in [-1.0, -1.75, -0.58] {
                assert_eq!(taken(mm(1.0), mm(turned), head), Some(Slip::Turned), "{turned}");
                assert_eq!(taken(mm(-1.0), mm(-turned), head), Some(Slip::Turned), "{turned}");
            }
            for nothing in [1.0, 1.75, 0.58, -1.85, -0.54, 3.0, 0.2, -3.0, 0.0] {
                assert_eq!(taken(mm(1.0), mm(nothing), head), None, "{nothing}");
            }
        }
        let times = UnitSlip::InchesAsMillimetres.times();
        for (off, slips) in [(1.75, true), (1.85, false), (1.0 / 1.75, true), (1.0 / 1.85, false)] {
            assert_eq!(taken(mm(1.0), mm(times * off), Some(Head::Millimetres)).is_some(), slips, "{off}");
        }
    }

    /// What is expected to be no more than three times what a gauge may be off by says nothing of signs and units.
    #[test]
    fn next_to_nothing_is_no_slip() {
        let um = Length::new::<micrometer>;
        for expected in [um(30.1), um(-30.1)] {
            assert_eq!(taken(expected, -expected, None), Some(Slip::Turned));
            assert_eq!(taken(expected, expected * 25.4, None), Some(Slip::Unit(UnitSlip::MillimetresAsInches)));
        }
        for expected in [um(29.9), um(-29.9), um(0.0)] {
            assert_eq!(taken(expected, -expected, None), None);
            assert_eq!(taken(expected, expected * 25.4, None), None);
        }
    }

    #[test]
    fn units_differ_by_what_they_differ_by() {
        let times: Vec<f64> = UnitSlip::ALL.map(UnitSlip::times).to_vec();
        assert!((times[0] * times[1] - 1.0).abs() < 1e-15);
        assert!((times[0] * times[3] / times[2] - 1.0).abs() < 1e-15);
        assert!((times[3] * times[4] - 1.0).abs() < 1e-15 && (times[2] * times[5] - 1.0).abs() < 1e-15);
    }

    #[test]
    fn a_core_of_a_tenth_or_of_ten_times_is_none() {
        // A quarter and four times are the last that are.
        for change in [-0.75, -0.5, 0.0, 2.0, 3.0] {
            assert!(plausible(Ratio::from(change)), "{change}");
        }
        for change in [-0.9, -0.76, 3.01, 9.0, f64::NAN] {
            assert!(!plausible(Ratio::from(change)), "{change}");
        }
    }
}

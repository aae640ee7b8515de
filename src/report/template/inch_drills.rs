//! Drills that are sold in inches: by fractions, by numbers and by letters.

use uom::si::length::inch;

use crate::units::Length;

/// Number drills from 1 up, in ten-thousandths of an inch: the standard series for twist drills (ASME B94.11M, from memory).
const NUMBERS: [u16; 60] = [
    2280, 2210, 2130, 2090, 2055, 2040, 2010, 1990, 1960, 1935, 1910, 1890, 1850, 1820, 1800, 1770, 1730, 1695, 1660,
    1610, 1590, 1570, 1540, 1520, 1495, 1470, 1440, 1405, 1360, 1285, 1200, 1160, 1130, 1110, 1100, 1065, 1040, 1015,
    995, 980, 960, 935, 890, 860, 820, 810, 785, 760, 730, 700, 670, 635, 595, 550, 520, 465, 430, 420, 410, 400,
];

/// Letter drills from A to Z, in thousandths of an inch (the same).
const LETTERS: [u16; 26] = [
    234, 238, 242, 246, 250, 257, 261, 266, 272, 277, 281, 290, 295, 302, 316, 323, 332, 339, 348, 358, 368, 377, 386,
    397, 404, 413,
];

/// How far a size may be off the one that is meant: less than drills differ by, and than their diameters are rounded to.
const SAME: f64 = 2e-5;

/// A drill by its name, and its diameter in inches.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct InchDrill {
    pub(super) name: String,
    pub(super) inches: f64,
}

/// All of them up to 1-1/2 in; of two alike the fraction, as E is 1/4 in.
fn all() -> impl Iterator<Item = InchDrill> {
    let fractions = (1..=96_u16).map(|n| InchDrill { name: fraction(n), inches: f64::from(n) / 64.0 });
    let numbers = NUMBERS
        .iter()
        .zip(1_u8..)
        .map(|(size, number)| InchDrill { name: format!("no. {number}"), inches: f64::from(*size) / 1e4 });
    let letters = LETTERS
        .iter()
        .zip('A'..='Z')
        .map(|(size, letter)| InchDrill { name: letter.to_string(), inches: f64::from(*size) / 1e3 });
    fractions.chain(numbers).chain(letters)
}

/// The drill that has a diameter.
pub(super) fn of_size(diameter: Length) -> Option<InchDrill> {
    nearest(diameter).filter(|drill| (drill.inches - diameter.get::<inch>()).abs() < SAME)
}

/// The drill that comes nearest to a diameter, if any does to a thirtieth of it.
pub(super) fn nearest(diameter: Length) -> Option<InchDrill> {
    let wanted = diameter.get::<inch>();
    let off = |drill: &InchDrill| (drill.inches - wanted).abs();
    all().min_by(|a, b| off(a).total_cmp(&off(b))).filter(|drill| off(drill) < wanted / 30.0)
}

/// So many sixty-fourths, cancelled.
fn fraction(sixty_fourths: u16) -> String {
    let (mut over, mut under) = (sixty_fourths, 64);
    while over % 2 == 0 && under > 1 {
        (over, under) = (over / 2, under / 2);
    }
    match (over / under, under) {
        (0, _) => format!("{over}/{under} in"),
        (whole, 1) => format!("{whole} in"),
        (whole, _) => format!("{whole}-{}/{under} in", over % under),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn inches(size: f64) -> Length {
        Length::new::<inch>(size)
    }

    #[test]
    fn drills_go_by_number_letter_and_fraction() {
        let name = |size: f64| of_size(inches(size)).map(|drill| drill.name);
        assert_eq!(name(0.201).as_deref(), Some("no. 7"), "the tap drill of 1/4-20");
        assert_eq!(name(0.257).as_deref(), Some("F"), "the tap drill of 5/16-18");
        assert_eq!(name(0.25).as_deref(), Some("1/4 in"), "E by its other name");
        assert_eq!(name(1.0).as_deref(), Some("1 in"));
        assert_eq!(name(1.25).as_deref(), Some("1-1/4 in"));
        assert_eq!(name(0.3), None);
        assert_eq!(nearest(inches(0.3)).map(|drill| drill.name).as_deref(), Some("N"));
        assert_eq!(nearest(inches(3.0)), None);
        // Just farther than a thirtieth from the largest.
        assert_eq!((nearest(inches(1.56)), nearest(inches(1.55)).map(|drill| drill.inches)), (None, Some(1.5)));
    }

    /// Tap drills that every shop has a table of (from memory): they pin the series where it is used.
    #[test]
    fn tap_drills_are_in_the_series() {
        for (thread, name, size) in [
            ("4-40", "no. 43", 0.089),
            ("6-32", "no. 36", 0.1065),
            ("8-32", "no. 29", 0.136),
            ("10-24", "no. 25", 0.1495),
            ("10-32", "no. 21", 0.159),
            ("1/4-28", "no. 3", 0.213),
            ("5/16-24", "I", 0.272),
            ("3/8-24", "Q", 0.332),
            ("7/16-14", "U", 0.368),
            ("3/8-16", "5/16 in", 0.3125),
            ("1/2-13", "27/64 in", 0.421_875),
        ] {
            assert_eq!(of_size(inches(size)).map(|drill| drill.name).as_deref(), Some(name), "{thread}");
        }
    }

    #[test]
    fn each_series_runs_one_way() {
        assert!(NUMBERS.windows(2).all(|pair| pair[0] > pair[1]));
        assert!(LETTERS.windows(2).all(|pair| pair[0] < pair[1]));
        assert!(f64::from(NUMBERS[0]) / 1e4 < f64::from(LETTERS[0]) / 1e3);
    }
}

//! What a handful of tests is worth.

use crate::units::Ratio;

/// Samples, and how many standard deviations the characteristic value lies below their mean.
const FACTORS: [(f64, f64); 8] =
    [(3.0, 3.37), (4.0, 2.63), (5.0, 2.33), (6.0, 2.18), (8.0, 2.00), (10.0, 1.92), (20.0, 1.76), (30.0, 1.73)];

/// How many standard deviations of a sample its characteristic value lies below its mean: the value that 95 % of all reach, where
/// nothing else is known of the scatter. Between the numbers of the table as of the smaller one; none of fewer than three.
///
/// ```text
///   X_k = m − k s,  k = t √(1 + 1/n)
/// ```
///
/// | symbol | meaning                                                  | argument  |
/// |--------|----------------------------------------------------------|-----------|
/// | `X_k`  | characteristic value                                     |           |
/// | *m*    | mean of the sample                                       |           |
/// | *s*    | its standard deviation, of *n* − 1                       |           |
/// | *n*    | readings                                                 | `samples` |
/// | *t*    | 95 % point of Student's distribution, *n* − 1 degrees    |           |
///
/// # Validity
///
/// Readings that scatter normally, of one batch and build.
///
/// # Source
///
/// [`EN_1990`](crate::source::EN_1990) (from memory): table D1, row of an unknown coefficient of variation.
///
/// # Examples
///
/// Six samples: 2.015 √(7/6) = 2.18.
///
/// ```
/// use skinspan::{fastening::characteristic_factor, units::Ratio};
/// let k = characteristic_factor(Ratio::from(6.0)).expect("enough");
/// assert!((k.value - 2.015 * (7.0f64 / 6.0).sqrt()).abs() < 0.005);
/// assert_eq!(characteristic_factor(Ratio::from(2.0)), None);
/// ```
#[must_use]
pub fn characteristic_factor(samples: Ratio) -> Option<Ratio> {
    let of = FACTORS.iter().rev().find(|(number, _)| samples.value >= number - 1e-9)?;
    Some(Ratio::from(of.1))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The table has two decimals, of which the last is one too low for eight readings and for twenty; the points of Student's
    /// distribution have three.
    const PRINTED: f64 = 0.012;

    #[test]
    fn factors_are_those_of_the_next_reading() {
        let points = [2.920, 2.353, 2.132, 2.015, 1.895, 1.833, 1.729, 1.699];
        for ((number, factor), point) in FACTORS.into_iter().zip(points) {
            let exact = point * (1.0 + 1.0 / number).sqrt();
            assert!((factor - exact).abs() < PRINTED, "{number}: {factor} {exact}");
        }
    }

    #[test]
    fn between_numbers_it_is_that_of_fewer() {
        assert_eq!(characteristic_factor(Ratio::from(7.0)), characteristic_factor(Ratio::from(6.0)));
        assert_eq!(characteristic_factor(Ratio::from(500.0)), Some(Ratio::from(1.73)));
    }
}

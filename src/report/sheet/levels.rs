//! Round levels for contours.

/// About so many bands.
const BANDS: f64 = 9.0;

/// Levels at round steps within what a map shows, nothing itself left out: what lies between two is a band.
pub(super) struct Levels {
    pub(super) step: f64,
    pub(super) up_to: Vec<f64>,
    /// Decimals with which the step is written.
    pub(super) decimals: usize,
}

impl Levels {
    pub(super) fn up_to(most: f64) -> Self {
        let step = round_step(most / BANDS);
        // A level within a thousandth of a step of the end would be a speck.
        let whole = (most / step - 1e-3).floor();
        let up_to = (1..=40).map(f64::from).take_while(|k| *k <= whole).map(|k| k * step).collect();
        #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a handful of decimals")]
        let decimals = (-(step * 1.000_001).log10().floor()).max(0.0) as usize;
        // 2.5 and its like have a digit more.
        let digits = step * 10f64.powi(i32::try_from(decimals).unwrap_or(0));
        let decimals = decimals + usize::from((digits - digits.round()).abs() > 1e-6);
        Self { step, up_to, decimals }
    }

    pub(super) fn words(&self, level: f64) -> String {
        format!("{:.*}", self.decimals, level)
    }
}

/// The next of 1, 2, 2.5, 5 and 10 times a power of ten.
fn round_step(least: f64) -> f64 {
    if !(least > 0.0 && least.is_finite()) {
        return 1.0;
    }
    let power = 10f64.powf(least.log10().floor());
    [1.0, 2.0, 2.5, 5.0, 10.0]
        .map(|digit| digit * power)
        .into_iter()
        .find(|step| *step >= least * 0.999)
        .unwrap_or(least)
}

#[cfg(test)]
mod tests {
    use super::Levels;

    #[test]
    fn levels_are_round_and_within() {
        let levels = Levels::up_to(0.281);
        // 0.281 over nine is 0.031: steps of 0.05.
        assert!((levels.step - 0.05).abs() < 1e-12);
        assert_eq!(
            levels.up_to.iter().map(|level| levels.words(*level)).collect::<Vec<_>>(),
            ["0.05", "0.10", "0.15", "0.20", "0.25"]
        );
        let levels = Levels::up_to(22.0);
        assert_eq!(levels.words(levels.up_to[0]), "2.5");
        assert_eq!(Levels::up_to(7.0).up_to, [1.0, 2.0, 3.0, 4.0, 5.0, 6.0]);
        assert!(Levels::up_to(0.0).up_to.is_empty());
    }
}

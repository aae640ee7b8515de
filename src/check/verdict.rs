//! What a check says: a comparison that a reader can redo, or why there is none.

use std::ops::Div;

use super::Measure;
use crate::{material::Basis, units::Ratio};

/// One symbol of a formula with its value.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Term {
    /// The symbol, as the formula writes it.
    pub symbol: &'static str,
    /// Its value.
    pub value: Measure,
}

/// A demand beside its allowable.
#[derive(Clone, Debug, PartialEq)]
pub struct Finding {
    /// What acts.
    pub demand: Measure,
    /// What may act before the factor is taken.
    pub allowable: Measure,
    /// Factor of safety, never folded into the allowable.
    pub factor: Ratio,
    /// demand × factor / allowable.
    pub utilisation: Ratio,
    /// Basis of the weakest value that went in.
    pub basis: Basis,
    /// The symbols of the formula with their values.
    pub terms: Vec<Term>,
}

impl Finding {
    /// Compares two values of one quantity; a stress against a force does not compile.
    ///
    /// ```text
    /// utilisation = demand × factor / allowable        passes at or below 1
    /// ```
    ///
    /// ```
    /// use skinspan::{check::Finding, material::Basis, units::{Pressure, Ratio}};
    /// use uom::si::{pressure::megapascal, ratio::ratio};
    /// let finding = Finding::compare(
    ///     Pressure::new::<megapascal>(0.3),
    ///     Pressure::new::<megapascal>(1.2),
    ///     Ratio::new::<ratio>(2.0),
    ///     Basis::Typical,
    /// );
    /// assert!((finding.utilisation.get::<ratio>() - 0.5).abs() < 1e-12);
    /// assert!((finding.margin().get::<ratio>() - 1.0).abs() < 1e-12); // 1 / 0.5 − 1
    /// ```
    ///
    /// ```compile_fail,E0308
    /// use skinspan::{check::Finding, material::Basis, units::{Force, Pressure, Ratio}};
    /// fn wrong(stress: Pressure, force: Force, factor: Ratio) -> Finding {
    ///     Finding::compare(stress, force, factor, Basis::Typical)
    /// }
    /// ```
    pub fn compare<Q>(demand: Q, allowable: Q, factor: Ratio, basis: Basis) -> Self
    where
        Q: Copy + Into<Measure> + Div<Output = Ratio>,
    {
        let utilisation = demand / allowable * factor;
        // What is exactly used up holds: rounding must not make a failure of it.
        let one = Ratio::new::<uom::si::ratio::ratio>(1.0);
        let utilisation = if (utilisation - one).abs().value < 1e-12 { one } else { utilisation };
        Self {
            demand: demand.into(),
            allowable: allowable.into(),
            factor,
            utilisation,
            basis,
            terms: Vec::with_capacity(8),
        }
    }

    /// Adds a symbol of the formula.
    #[must_use]
    pub fn term(mut self, symbol: &'static str, value: impl Into<Measure>) -> Self {
        self.terms.push(Term { symbol, value: value.into() });
        self
    }

    /// The trade's margin of safety, 1 / utilisation − 1; infinite where nothing acts.
    #[must_use]
    pub fn margin(&self) -> Ratio {
        1.0 / self.utilisation - Ratio::new::<uom::si::ratio::ratio>(1.0)
    }

    /// Whether the check passes: utilisation at or below one. A utilisation that is not a number does not pass.
    #[must_use]
    pub fn passes(&self) -> bool {
        self.utilisation <= Ratio::new::<uom::si::ratio::ratio>(1.0)
    }
}

/// Outcome of a check. There is no third, silent one.
#[derive(Clone, Debug, PartialEq)]
pub enum Verdict {
    /// A demand was compared with an allowable.
    Compared(Finding),
    /// The comparison could not be made; this counts as not passed.
    NotEvaluated(String),
}

//! Repeated load on laminate.

use crate::units::Ratio;

/// Share of the static strength that is left for a number of cycles.
///
/// ```text
///   k = 1 − b log₁₀ N,  not below zero
/// ```
///
/// | symbol | meaning                                                        | argument          |
/// |--------|----------------------------------------------------------------|-------------------|
/// | *N*    | cycles; none counts as one                                     | `cycles`          |
/// | *b*    | share of the static strength lost per decade, 0.1 for glass    | `loss_per_decade` |
///
/// # Validity
///
/// Peak stress of tension to tension; load that changes sign is worse. Glass in polyester or epoxy, up to some 10⁷
/// cycles. Bonds, foam and threads in board have shares of their own.
///
/// # Source
///
/// [`MANDELL_1982`](crate::source::MANDELL_1982) (from memory).
///
/// # Examples
///
/// A million cycles at 0.1 per decade: 0.4.
///
/// ```
/// use skinspan::{fastening::laminate_fatigue_share, units::Ratio};
/// assert!((laminate_fatigue_share(1_000_000, Ratio::from(0.1)).value - 0.4).abs() < 1e-12);
/// assert_eq!(laminate_fatigue_share(1, Ratio::from(0.1)), Ratio::from(1.0));
/// ```
#[must_use]
pub fn laminate_fatigue_share(cycles: u32, loss_per_decade: Ratio) -> Ratio {
    let share = Ratio::from(1.0) - loss_per_decade * f64::from(cycles.max(1)).log10();
    if share.value < 0.0 { Ratio::from(0.0) } else { share }
}

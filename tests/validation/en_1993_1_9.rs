//! EN 1993-1-9, 7.1: shares of the detail category at the knee and the cut-off of the curves, 0.737 and 0.549 × 0.737 (from
//! memory, as is the category of bolts; 36.8 MPa at the knee is the constant-amplitude limit of category 50).

use approx::assert_relative_eq;
use skinspan::fastening::{BOLT_THREAD_CATEGORY, bolt_fatigue_range};

/// 0.737 and 0.549: three digits.
const THREE_DIGITS: f64 = 0.001;

fn share(cycles: u32) -> f64 {
    (bolt_fatigue_range(cycles, BOLT_THREAD_CATEGORY) / BOLT_THREAD_CATEGORY).value
}

#[test]
fn knee_and_cut_off() {
    assert_relative_eq!(share(2_000_000), 1.0, max_relative = 1e-15);
    assert_relative_eq!(share(5_000_000), 0.737, max_relative = THREE_DIGITS);
    assert_relative_eq!(share(100_000_000) / share(5_000_000), 0.549, max_relative = THREE_DIGITS);
}

#[test]
fn slopes_of_three_and_five() {
    assert_relative_eq!(share(250_000), 2.0, max_relative = 1e-14);
    assert_relative_eq!(share(10_000) / share(80_000), 2.0, max_relative = 1e-14);
    assert_relative_eq!(share(6_250_000) / share(25_000_000), 4f64.powf(0.2), max_relative = 1e-14);
    assert_relative_eq!(share(5_000_000), share(5_000_001), max_relative = 1e-6);
    assert_eq!(share(100_000_000).to_bits(), share(u32::MAX).to_bits());
    assert_eq!(share(0).to_bits(), share(1).to_bits());
}

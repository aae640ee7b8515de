//! Repeated pull on a bolt.

use std::marker::PhantomData;

use crate::units::{Pressure, Ratio};

/// Range of stress that the thread of a bolt in tension bears two million times, 50 MPa.
///
/// Source: [`EN_1993_1_9`](crate::source::EN_1993_1_9), Table 8.1, bolts and rods in tension, detail category 50 (from
/// memory).
pub const BOLT_THREAD_CATEGORY: Pressure = Pressure { dimension: PhantomData, units: PhantomData, value: 50_000_000.0 };

const CYCLES_OF_CATEGORY: f64 = 2e6;
/// Here the curve bends, and under even loads ends: 0.737 of the category.
const KNEE: f64 = 5e6;
/// Below the range for this number no cycle does harm: 0.405 of the category.
const CUT_OFF: f64 = 1e8;

/// Range of stress that a bolt bears for a number of cycles.
///
/// ```text
///   Δσ = Δσ_C (2 × 10⁶/N)^(1/3)       N ≤ 5 × 10⁶
///   Δσ = Δσ_D (5 × 10⁶/N)^(1/5)       5 × 10⁶ < N ≤ 10⁸,  Δσ_D = 0.737 Δσ_C
///   Δσ = Δσ(10⁸)                      beyond
/// ```
///
/// | symbol | meaning                                                              | argument   |
/// |--------|----------------------------------------------------------------------|------------|
/// | *N*    | cycles; none counts as one                                           | `cycles`   |
/// | `Δσ_C` | [`BOLT_THREAD_CATEGORY`]                                             | `category` |
///
/// # Validity
///
/// Stress from the largest to the smallest force in the bolt, on the stress area, bending and prying in it; threads up
/// to 30 mm. Preload in a stiff joint makes the range small, see [`bolt_load`](super::bolt_load). Sea water is not
/// covered: a stainless bolt that pits has no such curve. The static strength stays the limit for few cycles.
///
/// # Source
///
/// [`EN_1993_1_9`](crate::source::EN_1993_1_9), 7.1, before its partial factor (from memory; the shares follow from
/// the slopes).
///
/// # Examples
///
/// Two million: 50 MPa; 10⁵: 50 × 20^(1/3) = 135.7 MPa.
///
/// ```
/// use skinspan::fastening::{BOLT_THREAD_CATEGORY, bolt_fatigue_range};
/// use uom::si::pressure::megapascal;
/// let range = |n| bolt_fatigue_range(n, BOLT_THREAD_CATEGORY).get::<megapascal>();
/// assert!((range(2_000_000) - 50.0).abs() < 1e-12);
/// assert!((range(100_000) - 135.72).abs() < 0.01);
/// ```
#[must_use]
pub fn bolt_fatigue_range(cycles: u32, category: Pressure) -> Pressure {
    let cycles = f64::from(cycles.max(1));
    let steep = (CYCLES_OF_CATEGORY / cycles.min(KNEE)).cbrt();
    let flat = (KNEE / cycles.clamp(KNEE, CUT_OFF)).powf(0.2);
    Ratio::from(steep * flat) * category
}

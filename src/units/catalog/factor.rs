//! Exact conversion factors.
//!
//! A factor is a quotient of two whole numbers, so that a definition such as 1 in = 254/10000 m enters without
//! rounding and a product of definitions stays exact. Floating point comes in only when a value is converted.

/// A positive quotient of two whole numbers in lowest terms.
#[derive(Clone, Copy)]
pub(super) struct Factor {
    up: u128,
    down: u128,
}

impl Factor {
    pub(super) const fn new(up: u128, down: u128) -> Self {
        let (mut a, mut b) = (up, down);
        while b != 0 {
            (a, b) = (b, a % b);
        }
        Self { up: up / a, down: down / a }
    }

    pub(super) const fn times(self, other: Self) -> Self {
        Self::new(self.up * other.up, self.down * other.down)
    }

    pub(super) const fn over(self, other: Self) -> Self {
        Self::new(self.up * other.down, self.down * other.up)
    }

    pub(super) const fn squared(self) -> Self {
        self.times(self)
    }

    pub(super) const fn cubed(self) -> Self {
        self.times(self).times(self)
    }

    /// Numerator and denominator. A number that `f64` cannot hold exactly does not compile.
    pub(super) const fn parts(self) -> (f64, f64) {
        (held_exactly(self.up), held_exactly(self.down))
    }
}

#[expect(
    clippy::cast_precision_loss,
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "the assertion, made at compile time, is that the casts lose nothing"
)]
const fn held_exactly(number: u128) -> f64 {
    let held = number as f64;
    assert!(held as u128 == number, "the factor has too many digits");
    held
}

pub(super) const ONE: Factor = Factor::new(1, 1);
pub(super) const KILO: Factor = Factor::new(1_000, 1);
pub(super) const MEGA: Factor = Factor::new(1_000_000, 1);
pub(super) const GIGA: Factor = Factor::new(1_000_000_000, 1);
pub(super) const CENTI: Factor = Factor::new(1, 100);
pub(super) const MILLI: Factor = Factor::new(1, 1_000);
pub(super) const MICRO: Factor = Factor::new(1, 1_000_000);

/// [`YARD_POUND_1959`](crate::source::YARD_POUND_1959): 1 yd = 0.9144 m, hence 1 in = 0.0254 m exactly.
pub(super) const IN: Factor = Factor::new(254, 10_000);
pub(super) const FT: Factor = IN.times(Factor::new(12, 1));
pub(super) const YD: Factor = FT.times(Factor::new(3, 1));
/// [`YARD_POUND_1959`](crate::source::YARD_POUND_1959): 1 lb = 0.45359237 kg exactly.
pub(super) const LB: Factor = Factor::new(45_359_237, 100_000_000);
pub(super) const OZ: Factor = LB.times(Factor::new(1, 16));
/// Standard acceleration of free fall, 9.80665 m/s² by definition of the third CGPM, 1901.
pub(super) const GRAVITY: Factor = Factor::new(980_665, 100_000);
pub(super) const LBF: Factor = LB.times(GRAVITY);
pub(super) const PSI: Factor = LBF.over(IN.squared());
/// US liquid gallon, 231 in³.
pub(super) const GALLON: Factor = IN.cubed().times(Factor::new(231, 1));
pub(super) const MINUTE: Factor = Factor::new(60, 1);
pub(super) const HOUR: Factor = Factor::new(3_600, 1);
pub(super) const DAY: Factor = Factor::new(86_400, 1);
/// One degree Fahrenheit as a difference.
pub(super) const FAHRENHEIT: Factor = Factor::new(5, 9);

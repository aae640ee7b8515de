//! Short names for quantities in SI units.

use skinspan::units::{FlexuralRigidity, Force, ForcePerWidth, Length, Pressure, Ratio, per_width};
use uom::si::{force::newton, length::meter, pressure::pascal, ratio::ratio};

pub fn m(x: f64) -> Length {
    Length::new::<meter>(x)
}

pub fn force(x: f64) -> ForcePerWidth {
    per_width(Force::new::<newton>(x) / m(1.0))
}

pub fn rigidity(x: f64) -> FlexuralRigidity {
    per_width(Force::new::<newton>(x) * m(1.0))
}

pub fn pressure(x: f64) -> Pressure {
    Pressure::new::<pascal>(x)
}

pub fn share(x: f64) -> Ratio {
    Ratio::new::<ratio>(x)
}

/// Asserts that `value` lies within `tolerance` of `expected`, as a share of it.
pub fn within(value: f64, expected: f64, tolerance: f64) {
    assert!((value / expected - 1.0).abs() <= tolerance, "{value} is not {expected} within {tolerance}");
}

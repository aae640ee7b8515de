//! Numbers as quantities, for every file of invariants.

use skinspan::units::{Force, Length, Pressure, Ratio};
use uom::si::{force::newton, length::millimeter, pressure::megapascal, ratio::ratio};

pub(crate) fn mpa(value: f64) -> Pressure {
    Pressure::new::<megapascal>(value)
}

pub(crate) fn mm(value: f64) -> Length {
    Length::new::<millimeter>(value)
}

pub(crate) fn newtons(value: f64) -> Force {
    Force::new::<newton>(value)
}

pub(crate) fn r(value: f64) -> Ratio {
    Ratio::new::<ratio>(value)
}

/// The same but for rounding.
pub(crate) fn close(a: f64, b: f64) -> bool {
    (a - b).abs() <= 1e-10 * a.abs().max(b.abs())
}

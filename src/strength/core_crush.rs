//! Crushing of the core under pads and along pipes.

use std::f64::consts::PI;

use crate::units::{Force, ForcePerWidth, Length, Pressure, Torque, plain};

/// Rectangular contact on a skin.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pad {
    /// One side.
    pub length: Length,
    /// The other side.
    pub width: Length,
}

/// Mean pressure on the core under a stiff rectangular pad.
///
/// ```text
///   σ = P / ((l + 2 t)(w + 2 t))
/// ```
///
/// | symbol   | meaning                                  | argument             |
/// |----------|------------------------------------------|----------------------|
/// | *P*      | load                                     | `force`              |
/// | *l*, *w* | sides of the pad                         | `pad.length`, `pad.width` |
/// | *t*      | thickness of the skin; zero: no spread   | `skin_thickness`     |
///
/// # Validity
///
/// The load spreads 1:1 through the skin and no further. A mean: [`SkinOnCore`](super::SkinOnCore) gives the peak.
///
/// # Source
///
/// [`DERIVED`](crate::source::DERIVED): equilibrium. The spread is common practice, no source; *t* = 0 is the safe
/// side.
///
/// # Examples
///
/// 1000 N on 96 mm × 46 mm through a skin of 2 mm: 1000/(100 × 50) = 0.2 MPa.
///
/// ```
/// use skinspan::{strength::{Pad, pad_pressure}, units::{Force, Length}};
/// use uom::si::{force::newton, length::millimeter, pressure::megapascal};
/// let mm = Length::new::<millimeter>;
/// let pad = Pad { length: mm(96.0), width: mm(46.0) };
/// let sigma = pad_pressure(Force::new::<newton>(1000.0), pad, mm(2.0));
/// assert!((sigma.get::<megapascal>() - 0.2).abs() < 1e-12);
/// ```
#[must_use]
pub fn pad_pressure(force: Force, pad: Pad, skin_thickness: Length) -> Pressure {
    let spread = 2.0 * skin_thickness;
    force / ((pad.length + spread) * (pad.width + spread))
}

/// Largest pressure on the core under a stiff square pad that is tipped, on top of the mean.
///
/// ```text
///   σ = 6 M / (a + 2 t)³
/// ```
///
/// | symbol | meaning                                  | argument         |
/// |--------|------------------------------------------|------------------|
/// | *M*    | overturning moment, along a side         | `moment`         |
/// | *a*    | side of the pad                          | `side`           |
/// | *t*    | thickness of the skin; zero: no spread   | `skin_thickness` |
///
/// # Validity
///
/// Pad that stays in touch all over, as bonded or pressed down enough (*M* ≤ *P* (*a* + 2*t*)/6): one that lifts presses
/// its rim harder. Spread as in [`pad_pressure`].
///
/// # Source
///
/// [`DERIVED`](crate::source::DERIVED): a pressure that goes straight across a square has *M* = σ *a*³/6.
///
/// # Examples
///
/// 40 N·m on 96 mm through a skin of 2 mm: 6 × 40000/100³ = 0.24 MPa.
///
/// ```
/// use skinspan::{strength::tipped_pad_pressure, units::{Length, Torque}};
/// use uom::si::{length::millimeter, pressure::megapascal, torque::newton_meter};
/// let mm = Length::new::<millimeter>;
/// let sigma = tipped_pad_pressure(Torque::new::<newton_meter>(40.0), mm(96.0), mm(2.0));
/// assert!((sigma.get::<megapascal>() - 0.24).abs() < 1e-12);
/// ```
#[must_use]
pub fn tipped_pad_pressure(moment: Torque, side: Length, skin_thickness: Length) -> Pressure {
    let side = side + 2.0 * skin_thickness;
    6.0 * moment / (side * side * side)
}

/// Mean pressure on the core under a stiff round pad.
///
/// ```text
///   σ = P / (π (a + t)²)
/// ```
///
/// | symbol | meaning                                  | argument         |
/// |--------|------------------------------------------|------------------|
/// | *P*    | load                                     | `force`          |
/// | *a*    | radius of the pad                        | `radius`         |
/// | *t*    | thickness of the skin; zero: no spread   | `skin_thickness` |
///
/// # Validity
///
/// As [`pad_pressure`].
///
/// # Source
///
/// [`DERIVED`](crate::source::DERIVED), as [`pad_pressure`].
///
/// # Examples
///
/// 1000 N on a radius of 18 mm through a skin of 2 mm: 1000/(π 20²) = 0.796 MPa.
///
/// ```
/// use skinspan::{strength::round_pad_pressure, units::{Force, Length}};
/// use uom::si::{force::newton, length::millimeter, pressure::megapascal};
/// let mm = Length::new::<millimeter>;
/// let sigma = round_pad_pressure(Force::new::<newton>(1000.0), mm(18.0), mm(2.0));
/// assert!((sigma.get::<megapascal>() - 0.796).abs() < 1e-3);
/// ```
#[must_use]
pub fn round_pad_pressure(force: Force, radius: Length, skin_thickness: Length) -> Pressure {
    let spread = radius + skin_thickness;
    force / (PI * spread * spread)
}

/// Mean pressure on the core along a pipe or another line of support.
///
/// ```text
///   σ = R / (s + 2 t)
/// ```
///
/// | symbol | meaning                                                   | argument         |
/// |--------|-----------------------------------------------------------|------------------|
/// | *R*    | reaction per length of pipe                               | `reaction`       |
/// | *s*    | width of the seat: saddle, pad or bed of sealant on the pipe | `seat_width`  |
/// | *t*    | thickness of the skin; zero: no spread                    | `skin_thickness` |
///
/// # Validity
///
/// As [`pad_pressure`]. A bare round pipe has no seat width: without a saddle use
/// [`StripLoad`](super::StripLoad) with a width of zero.
///
/// # Source
///
/// [`DERIVED`](crate::source::DERIVED), as [`pad_pressure`].
///
/// # Examples
///
/// 10 N/mm on a seat of 21 mm through a skin of 2 mm: 10/25 = 0.4 MPa.
///
/// ```
/// use skinspan::{strength::line_pressure, units::{Force, Length, per_width}};
/// use uom::si::{force::newton, length::millimeter, pressure::megapascal};
/// let mm = Length::new::<millimeter>;
/// let r = per_width(Force::new::<newton>(10.0) / mm(1.0));
/// assert!((line_pressure(r, mm(21.0), mm(2.0)).get::<megapascal>() - 0.4).abs() < 1e-12);
/// ```
#[must_use]
pub fn line_pressure(reaction: ForcePerWidth, seat_width: Length, skin_thickness: Length) -> Pressure {
    plain(reaction) / (seat_width + 2.0 * skin_thickness)
}

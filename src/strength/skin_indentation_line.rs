//! Denting of the skin along a pipe, a bead or an edge.

use super::SkinOnCore;
use crate::units::{Curvature, ForcePerWidth, Length, MomentPerWidth, Pressure, Ratio, per_width, plain};

/// Load along a line, spread evenly over a seat.
///
/// The skin bends as a beam of unit width; a seat of zero width is a knife edge.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct StripLoad {
    /// Load per length of the line.
    pub force: ForcePerWidth,
    /// Width of the seat.
    pub seat_width: Length,
}

impl StripLoad {
    /// Pressure on the core under the middle of the seat.
    ///
    /// ```text
    ///   σ = (P/s) (1 − e^(−λs/2) cos(λs/2))        λ = (k/(4 D_f))^(1/4)
    ///   σ = P λ/2                                  for a knife edge
    /// ```
    ///
    /// | symbol | meaning                                          | field or argument    |
    /// |--------|--------------------------------------------------|----------------------|
    /// | *P*    | load per length of the line                      | `force`              |
    /// | *s*    | width of the seat                                | `seat_width`         |
    /// | `D_f`  | rigidity of the skin about its own middle        | `skin.skin_rigidity` |
    /// | *k*    | modulus of the bed                               | `skin.foundation`    |
    ///
    /// # Validity
    ///
    /// Skin that reaches at least 3π/(4λ) beyond the seat on both sides; core below its crushing strength; even
    /// pressure under the seat.
    ///
    /// # Source
    ///
    /// [`HETENYI_1946`](crate::source::HETENYI_1946) (from memory); [`DERIVED`](crate::source::DERIVED).
    ///
    /// # Examples
    ///
    /// `D_f` = 16 N·m on 10⁹ N/m³: λ = (10⁹/64)^(1/4) = 62.87 /m. A knife edge with 10 N/mm: 10 × 0.06287/2 = 0.3144
    /// MPa.
    ///
    /// ```
    /// # use skinspan::{strength::{SkinOnCore, StripLoad}, units::{Force, Length, Pressure, Ratio, per_width}};
    /// # use uom::si::{force::newton, length::{meter, millimeter}, pressure::{megapascal, pascal}};
    /// # let m = Length::new::<meter>(1.0);
    /// let skin = SkinOnCore {
    ///     skin_rigidity: per_width(Pressure::new::<pascal>(16.0) * m * m * m),
    ///     poisson: Ratio::from(0.3),
    ///     foundation: Pressure::new::<megapascal>(1.0) / Length::new::<millimeter>(1.0),
    /// };
    /// let pipe = StripLoad { force: per_width(Force::new::<newton>(10e3) / m), seat_width: 0.0 * m };
    /// assert!((pipe.core_pressure(&skin).get::<megapascal>() - 0.3144).abs() < 1e-4);
    /// ```
    #[must_use]
    pub fn core_pressure(&self, skin: &SkinOnCore) -> Pressure {
        let lambda = wave_number(skin);
        let x = lambda * self.seat_width / 2.0;
        plain(self.force) * lambda / 2.0 * pressure_shape(x)
    }

    /// Depth of the dent under the middle of the seat.
    ///
    /// ```text
    ///   w = σ/k
    /// ```
    ///
    /// | symbol | meaning                                    | field or argument |
    /// |--------|--------------------------------------------|-------------------|
    /// | *σ*    | [`core_pressure`](Self::core_pressure)     |                   |
    /// | *k*    | modulus of the bed                         | `skin.foundation` |
    ///
    /// # Validity
    ///
    /// As [`core_pressure`](Self::core_pressure).
    ///
    /// # Source
    ///
    /// [`DERIVED`](crate::source::DERIVED): definition of *k*.
    ///
    /// # Examples
    ///
    /// 0.3144 MPa on 1 N/mm³: 0.3144 mm.
    ///
    /// ```
    /// # use skinspan::{strength::{SkinOnCore, StripLoad}, units::{Force, Length, Pressure, Ratio, per_width}};
    /// # use uom::si::{force::newton, length::{meter, millimeter}, pressure::{megapascal, pascal}};
    /// # let m = Length::new::<meter>(1.0);
    /// let skin = SkinOnCore {
    ///     skin_rigidity: per_width(Pressure::new::<pascal>(16.0) * m * m * m),
    ///     poisson: Ratio::from(0.3),
    ///     foundation: Pressure::new::<megapascal>(1.0) / Length::new::<millimeter>(1.0),
    /// };
    /// let pipe = StripLoad { force: per_width(Force::new::<newton>(10e3) / m), seat_width: 0.0 * m };
    /// assert!((pipe.dent(&skin).get::<millimeter>() - 0.3144).abs() < 1e-4);
    /// ```
    #[must_use]
    pub fn dent(&self, skin: &SkinOnCore) -> Length {
        self.core_pressure(skin) / skin.foundation
    }

    /// Bending moment of the skin across the line, under the middle of the seat.
    ///
    /// ```text
    ///   M = (P/s) e^(−λs/2) sin(λs/2) / (2 λ²)
    ///   M = P/(4 λ)                                for a knife edge
    /// ```
    ///
    /// | symbol | meaning                                          | field or argument    |
    /// |--------|--------------------------------------------------|----------------------|
    /// | *P*    | load per length of the line                      | `force`              |
    /// | *s*    | width of the seat                                | `seat_width`         |
    /// | *λ*    | as in [`core_pressure`](Self::core_pressure)     | `skin`               |
    ///
    /// # Validity
    ///
    /// As [`core_pressure`](Self::core_pressure). The stress at the surface is 6 *M*/*t*².
    ///
    /// # Source
    ///
    /// [`HETENYI_1946`](crate::source::HETENYI_1946) (from memory); [`DERIVED`](crate::source::DERIVED).
    ///
    /// # Examples
    ///
    /// A knife edge with 10 N/mm and λ = 62.87 /m: 10 000/(4 × 62.87) = 39.76 N.
    ///
    /// ```
    /// # use skinspan::{strength::{SkinOnCore, StripLoad}, units::{Force, Length, Pressure, Ratio, per_width}};
    /// # use uom::si::{force::newton, length::{meter, millimeter}, pressure::{megapascal, pascal}};
    /// # let m = Length::new::<meter>(1.0);
    /// let skin = SkinOnCore {
    ///     skin_rigidity: per_width(Pressure::new::<pascal>(16.0) * m * m * m),
    ///     poisson: Ratio::from(0.3),
    ///     foundation: Pressure::new::<megapascal>(1.0) / Length::new::<millimeter>(1.0),
    /// };
    /// let pipe = StripLoad { force: per_width(Force::new::<newton>(10e3) / m), seat_width: 0.0 * m };
    /// assert!((pipe.skin_moment(&skin).value - 39.76).abs() < 0.01);
    /// ```
    #[must_use]
    pub fn skin_moment(&self, skin: &SkinOnCore) -> MomentPerWidth {
        let lambda = wave_number(skin);
        let x = lambda * self.seat_width / 2.0;
        per_width(plain(self.force) / (4.0 * lambda) * moment_shape(x))
    }
}

fn wave_number(skin: &SkinOnCore) -> Curvature {
    1.0 / (skin.spread_length() * std::f64::consts::SQRT_2)
}

/// (1 − e^(−x) cos x)/x, which is 1 for a knife edge.
fn pressure_shape(x: Ratio) -> f64 {
    let x = x.value;
    if x < 1e-8 {
        return 1.0;
    }
    // 1 − e⁻ˣ cos x = (1 − e⁻ˣ) + 2 e⁻ˣ sin²(x/2): no digits are lost for a narrow seat.
    (2.0 * (-x).exp() * (x / 2.0).sin().powi(2) - (-x).exp_m1()) / x
}

/// e^(−x) sin x/x, which is 1 for a knife edge.
fn moment_shape(x: Ratio) -> f64 {
    let x = x.value;
    if x < 1e-8 { 1.0 } else { (-x).exp() * x.sin() / x }
}

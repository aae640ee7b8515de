//! Denting of the skin into the core under a foot.

use std::f64::consts::PI;

use super::kelvin::disc_functions;
use crate::units::{
    FlexuralRigidity, Force, FoundationModulus, Length, MomentPerWidth, Pressure, Ratio, per_width, plain,
};

/// Whether the far skin gives the core something to stand on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Denting {
    /// The far skin is held: the whole core is squeezed.
    FarSkinHeld,
    /// Both skins dent towards each other: mid-core stays where it is, each skin squeezes one half.
    BothSkins,
}

/// Modulus of the core as a bed of springs under the skin.
///
/// ```text
///   k = E_c/c        far skin held
///   k = 2 E_c/c      both skins dent
/// ```
///
/// | symbol | meaning                                       | argument         |
/// |--------|-----------------------------------------------|------------------|
/// | `E_c`  | modulus of the core through its thickness     | `core_modulus`   |
/// | *c*    | thickness of the core                         | `core_thickness` |
///
/// # Validity
///
/// Springs that do not feel each other. It is soft for a core that is thick against the width of the dent, where only
/// the part near the skin is squeezed: then the dent is less and the pressure more, see
/// [`DeepCore`](super::DeepCore).
///
/// # Source
///
/// [`HETENYI_1946`](crate::source::HETENYI_1946) (from memory) for the bed of springs;
/// [`DERIVED`](crate::source::DERIVED).
///
/// # Examples
///
/// 75 MPa over 19 mm: 3.95 N/mm³, or 7.89 with both skins denting.
///
/// ```
/// use skinspan::{strength::{Denting, foundation_modulus}, units::{Length, Pressure}};
/// use uom::si::{length::millimeter, pressure::megapascal};
/// let (e, c) = (Pressure::new::<megapascal>(75.0), Length::new::<millimeter>(19.0));
/// assert!((foundation_modulus(e, c, Denting::FarSkinHeld).value - 3.947e9).abs() < 1e6); // N/m³
/// assert!((foundation_modulus(e, c, Denting::BothSkins).value - 7.895e9).abs() < 1e6);
/// ```
#[must_use]
pub fn foundation_modulus(core_modulus: Pressure, core_thickness: Length, denting: Denting) -> FoundationModulus {
    match denting {
        Denting::FarSkinHeld => core_modulus / core_thickness,
        Denting::BothSkins => 2.0 * core_modulus / core_thickness,
    }
}

/// Load spread evenly over a disc.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct DiscLoad {
    /// The load.
    pub force: Force,
    /// Radius over which it is spread.
    pub radius: Length,
}

impl DiscLoad {
    pub(super) fn pressure(self) -> Pressure {
        self.force / (PI * self.radius * self.radius)
    }
}

/// A skin that rests on its core as on a bed of springs.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SkinOnCore {
    /// Rigidity of the skin about its own middle.
    pub skin_rigidity: FlexuralRigidity,
    /// Poisson's ratio of the skin.
    pub poisson: Ratio,
    /// Modulus of the bed, [`foundation_modulus`].
    pub foundation: FoundationModulus,
}

impl SkinOnCore {
    /// Length that measures how far a load spreads under the skin.
    ///
    /// ```text
    ///   ℓ = (D_f/k)^(1/4)
    /// ```
    ///
    /// | symbol | meaning                                      | field           |
    /// |--------|----------------------------------------------|-----------------|
    /// | `D_f`  | rigidity of the skin about its own middle    | `skin_rigidity` |
    /// | *k*    | modulus of the bed                           | `foundation`    |
    ///
    /// # Validity
    ///
    /// The skin must reach about 4 ℓ beyond the load on every side.
    ///
    /// # Source
    ///
    /// [`TIMOSHENKO_1959`](crate::source::TIMOSHENKO_1959), chapter on plates on elastic foundation (from memory).
    ///
    /// # Examples
    ///
    /// `D_f` = 16 N·m on 1 N/mm³ = 10⁹ N/m³: (16 × 10⁻⁹)^(1/4) = 11.247 mm.
    ///
    /// ```
    /// # use skinspan::{strength::SkinOnCore, units::{Length, Pressure, Ratio, per_width}};
    /// # use uom::si::{length::{meter, millimeter}, pressure::{megapascal, pascal}};
    /// # let m = Length::new::<meter>(1.0);
    /// let skin = SkinOnCore {
    ///     skin_rigidity: per_width(Pressure::new::<pascal>(16.0) * m * m * m),
    ///     poisson: Ratio::from(0.3),
    ///     foundation: Pressure::new::<megapascal>(1.0) / Length::new::<millimeter>(1.0),
    /// };
    /// assert!((skin.spread_length().get::<millimeter>() - 11.247).abs() < 1e-3);
    /// ```
    #[must_use]
    pub fn spread_length(&self) -> Length {
        (plain(self.skin_rigidity) / self.foundation).sqrt().sqrt()
    }

    /// Pressure on the core under the middle of a disc load.
    ///
    /// ```text
    ///   σ = F/(π a²) · (1 + x ker′ x)        x = a/ℓ
    /// ```
    ///
    /// The deflection under a point load is −(*Fℓ*²/2π`D_f`) kei(*r*/ℓ); over the disc ∫ *s* kei *s* d*s* = −*s* ker′
    /// *s*, which is 1 at *s* = 0. A point load gives *F*/(8ℓ²), a wide disc *F*/(π*a*²).
    ///
    /// | symbol | meaning                                             | field or argument |
    /// |--------|-----------------------------------------------------|-------------------|
    /// | *F*    | load                                                | `load.force`      |
    /// | *a*    | radius over which it is spread                      | `load.radius`     |
    /// | ℓ      | [`spread_length`](Self::spread_length)              |                   |
    /// | ker    | Kelvin's function                                   |                   |
    ///
    /// # Validity
    ///
    /// Even pressure under the disc, which must have a radius above zero; a stiff foot presses harder along its rim.
    /// It exceeds *F*/(π*a*²) by up to an eighth for *a* between 2.7 and 7.2 ℓ. For *a* above 4 ℓ the largest
    /// pressure lies off the middle, up to 6 % above this. Core elastic: below its crushing strength. Core not deeper
    /// than about 2 ℓ, otherwise take [`DeepCore`](super::DeepCore) too.
    ///
    /// # Source
    ///
    /// [`TIMOSHENKO_1959`](crate::source::TIMOSHENKO_1959), chapter on plates on elastic foundation, for the point
    /// load (from memory); the disc is [`DERIVED`](crate::source::DERIVED).
    ///
    /// # Examples
    ///
    /// Almost a point, 1000 N on a radius of 0.1 mm, ℓ = 11.247 mm: 1000/(8 × 126.49) = 0.9882 MPa.
    ///
    /// ```
    /// # use skinspan::{strength::{DiscLoad, SkinOnCore}, units::{Force, Length, Pressure, Ratio, per_width}};
    /// # use uom::si::{force::newton, length::{meter, millimeter}, pressure::{megapascal, pascal}};
    /// # let m = Length::new::<meter>(1.0);
    /// let skin = SkinOnCore {
    ///     skin_rigidity: per_width(Pressure::new::<pascal>(16.0) * m * m * m),
    ///     poisson: Ratio::from(0.3),
    ///     foundation: Pressure::new::<megapascal>(1.0) / Length::new::<millimeter>(1.0),
    /// };
    /// let load = DiscLoad { force: Force::new::<newton>(1000.0), radius: Length::new::<millimeter>(0.1) };
    /// assert!((skin.core_pressure(load).get::<megapascal>() - 0.9882).abs() < 2e-4);
    /// ```
    #[must_use]
    pub fn core_pressure(&self, load: DiscLoad) -> Pressure {
        load.pressure() * disc_functions((load.radius / self.spread_length()).value).0
    }

    /// Depth of the dent under the middle of a disc load.
    ///
    /// ```text
    ///   w = σ/k
    /// ```
    ///
    /// | symbol | meaning                                    | field or argument |
    /// |--------|--------------------------------------------|-------------------|
    /// | *σ*    | [`core_pressure`](Self::core_pressure)     | `load`            |
    /// | *k*    | modulus of the bed                         | `foundation`      |
    ///
    /// # Validity
    ///
    /// As [`core_pressure`](Self::core_pressure); less than about half the thickness of the skin.
    ///
    /// # Source
    ///
    /// [`DERIVED`](crate::source::DERIVED): definition of *k*.
    ///
    /// # Examples
    ///
    /// 0.9882 MPa on 1 N/mm³: 0.9882 mm.
    ///
    /// ```
    /// # use skinspan::{strength::{DiscLoad, SkinOnCore}, units::{Force, Length, Pressure, Ratio, per_width}};
    /// # use uom::si::{force::newton, length::{meter, millimeter}, pressure::{megapascal, pascal}};
    /// # let m = Length::new::<meter>(1.0);
    /// let skin = SkinOnCore {
    ///     skin_rigidity: per_width(Pressure::new::<pascal>(16.0) * m * m * m),
    ///     poisson: Ratio::from(0.3),
    ///     foundation: Pressure::new::<megapascal>(1.0) / Length::new::<millimeter>(1.0),
    /// };
    /// let load = DiscLoad { force: Force::new::<newton>(1000.0), radius: Length::new::<millimeter>(0.1) };
    /// assert!((skin.dent(load).get::<millimeter>() - 0.9882).abs() < 2e-4);
    /// ```
    #[must_use]
    pub fn dent(&self, load: DiscLoad) -> Length {
        self.core_pressure(load) / self.foundation
    }

    /// Bending moment of the skin under the middle of a disc load, the same in every direction.
    ///
    /// ```text
    ///   M = (1 + ν)/2 · p ℓ² · x kei′ x        p = F/(π a²)    x = a/ℓ
    /// ```
    ///
    /// At the middle both curvatures are half of ∇²*w*; for a point load −`D_f`∇²*w* = (*F*/2π) ker(*r*/ℓ), and over
    /// the disc ∫ *s* ker *s* d*s* = *s* kei′ *s*. It grows as ln(ℓ/*a*) when the disc shrinks.
    ///
    /// | symbol | meaning                                             | field or argument |
    /// |--------|-----------------------------------------------------|-------------------|
    /// | *F*, *a* | load and the radius over which it is spread       | `load`            |
    /// | *ν*    | Poisson's ratio of the skin                         | `poisson`         |
    /// | ℓ      | [`spread_length`](Self::spread_length)              |                   |
    /// | kei    | Kelvin's function                                   |                   |
    ///
    /// # Validity
    ///
    /// As [`core_pressure`](Self::core_pressure). The stress at the surface is 6 *M*/*t*²; a radius below about the
    /// thickness of the skin overstates it.
    ///
    /// # Source
    ///
    /// [`TIMOSHENKO_1959`](crate::source::TIMOSHENKO_1959), chapter on plates on elastic foundation, for the point
    /// load (from memory); the disc is [`DERIVED`](crate::source::DERIVED).
    ///
    /// # Examples
    ///
    /// 1000 N on a radius of 1 mm, ℓ = 11.247 mm: (1.3 × 1000/4π)(ln(2 × 11.247) + 0.5 − 0.5772) = 103.45 × 3.0361 =
    /// 314.1 N; the terms left out are below 1 %.
    ///
    /// ```
    /// # use skinspan::{strength::{DiscLoad, SkinOnCore}, units::{Force, Length, Pressure, Ratio, per_width}};
    /// # use uom::si::{force::newton, length::{meter, millimeter}, pressure::{megapascal, pascal}};
    /// # let m = Length::new::<meter>(1.0);
    /// let skin = SkinOnCore {
    ///     skin_rigidity: per_width(Pressure::new::<pascal>(16.0) * m * m * m),
    ///     poisson: Ratio::from(0.3),
    ///     foundation: Pressure::new::<megapascal>(1.0) / Length::new::<millimeter>(1.0),
    /// };
    /// let load = DiscLoad { force: Force::new::<newton>(1000.0), radius: Length::new::<millimeter>(1.0) };
    /// assert!((skin.skin_moment(load).value - 314.1).abs() < 0.5);
    /// ```
    #[must_use]
    pub fn skin_moment(&self, load: DiscLoad) -> MomentPerWidth {
        let l = self.spread_length();
        let shape = disc_functions((load.radius / l).value).1;
        per_width(load.pressure() * l * l * (0.5 * (1.0 + self.poisson.value) * shape))
    }
}

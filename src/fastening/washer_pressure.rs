//! Pressure of a washer or a head on what lies below the skin: core or backing.

use crate::{
    strength::{DeepCore, DiscLoad, SkinOnCore},
    units::{Force, Length, Pressure},
};

/// Largest pressure below the skin under a washer or a head.
///
/// ```text
///   σ = max(σ_springs, σ_deep)
///   σ_springs = F/(π a²) · (1 + x ker′ x),       x = a/ℓ
///   σ_deep    = F/(π a²) · y ∫ J₁(ys)/(1 + s³) ds,  y = a/ℓ₀
/// ```
///
/// | symbol | meaning                                               | argument  |
/// |--------|-------------------------------------------------------|-----------|
/// | *F*, *a* | load and radius of the washer                       | `load`    |
/// | ℓ      | [`SkinOnCore::spread_length`]                         | `springs` |
/// | ℓ₀     | [`DeepCore::spread_length`]                           | `deep`    |
///
/// The bed of springs holds for a washer that is wide against the depth of the core, the deep core for a small one;
/// each is low where the other holds. Between both skins of a through-bolt the bed is
/// [`Denting::BothSkins`](crate::strength::Denting::BothSkins), under a head on one side
/// [`Denting::FarSkinHeld`](crate::strength::Denting::FarSkinHeld). For a skin on a backing take the modulus and the
/// depth of the backing.
///
/// # Validity
///
/// Even pressure under the washer: one that is stiff against the core presses harder along its rim, one that is thin
/// against its overhang counts as no wider than the nut. Skin that reaches 4 ℓ beyond the washer; the hole is left
/// out.
///
/// # Source
///
/// [`DERIVED`](crate::source::DERIVED): [`SkinOnCore::core_pressure`] and [`DeepCore::pressure_under_disc`], whose
/// greater is within 8 % of a core of finite depth.
///
/// # Examples
///
/// Very small washer, 1000 N, ℓ = 11.247 mm and ℓ₀ = 5 mm: 1000/(8 × 126.5) = 0.99 MPa from the springs, but
/// 1000/(3√3 × 25) = 7.70 MPa from the deep core.
///
/// ```
/// use skinspan::fastening::washer_pressure;
/// use skinspan::{strength::{DeepCore, DiscLoad, SkinOnCore}, units::{Force, Length, Pressure, Ratio, per_width}};
/// use uom::si::{force::newton, length::{meter, millimeter}, pressure::{megapascal, pascal}};
/// let (m, mm) = (Length::new::<meter>(1.0), Length::new::<millimeter>);
/// let rigidity = |newton_meters: f64| per_width(Pressure::new::<pascal>(newton_meters) * m * m * m);
/// let springs = SkinOnCore {
///     skin_rigidity: rigidity(16.0),
///     poisson: Ratio::from(0.3),
///     foundation: Pressure::new::<megapascal>(1.0) / mm(1.0),
/// };
/// let deep = DeepCore { skin_rigidity: rigidity(4.0), core_modulus: Pressure::new::<megapascal>(64.0) };
/// let load = DiscLoad { force: Force::new::<newton>(1000.0), radius: mm(0.01) };
/// assert!((washer_pressure(load, &springs, &deep).get::<megapascal>() - 7.70).abs() < 0.02);
/// ```
#[must_use]
pub fn washer_pressure(load: DiscLoad, springs: &SkinOnCore, deep: &DeepCore) -> Pressure {
    springs.core_pressure(load).max(deep.pressure_under_disc(load))
}

/// Load on a washer at which what lies below the skin reaches its strength: the most that a bolt may clamp.
///
/// ```text
///   F = F₁ σ_c/σ(F₁)
/// ```
///
/// | symbol | meaning                                            | argument   |
/// |--------|----------------------------------------------------|------------|
/// | *a*    | radius of the washer                               | `radius`   |
/// | *σ*    | [`washer_pressure`]                                | `springs`, `deep` |
/// | `σ_c`  | compressive strength of what lies below the skin   | `strength` |
///
/// # Validity
///
/// As [`washer_pressure`], which is linear in the load.
///
/// # Source
///
/// [`DERIVED`](crate::source::DERIVED): inverse of [`washer_pressure`].
///
/// # Examples
///
/// As in [`washer_pressure`], strength 1.54 MPa: 1000 × 1.54/7.70 = 200 N.
///
/// ```
/// use skinspan::fastening::force_at_crush;
/// use skinspan::{strength::{DeepCore, SkinOnCore}, units::{Length, Pressure, Ratio, per_width}};
/// use uom::si::{force::newton, length::{meter, millimeter}, pressure::{megapascal, pascal}};
/// let (m, mm) = (Length::new::<meter>(1.0), Length::new::<millimeter>);
/// let rigidity = |newton_meters: f64| per_width(Pressure::new::<pascal>(newton_meters) * m * m * m);
/// let springs = SkinOnCore {
///     skin_rigidity: rigidity(16.0),
///     poisson: Ratio::from(0.3),
///     foundation: Pressure::new::<megapascal>(1.0) / mm(1.0),
/// };
/// let deep = DeepCore { skin_rigidity: rigidity(4.0), core_modulus: Pressure::new::<megapascal>(64.0) };
/// let force = force_at_crush(mm(0.01), &springs, &deep, Pressure::new::<megapascal>(1.54));
/// assert!((force.get::<newton>() - 200.0).abs() < 0.5);
/// ```
#[must_use]
pub fn force_at_crush(radius: Length, springs: &SkinOnCore, deep: &DeepCore, strength: Pressure) -> Force {
    let even = DiscLoad { force: strength * (std::f64::consts::PI * radius * radius), radius };
    even.force * (strength / washer_pressure(even, springs, deep))
}

//! Bending of the skins under and beside what presses on one of them: a seat, a foot, a footing.

use std::f64::consts::FRAC_PI_4;

use super::{DiscLoad, SkinBending, SkinOnCore, kelvin::scaled_k0_k1, skin_moment_at_edge};
use crate::units::{
    FlexuralRigidity, Force, ForcePerWidth, FoundationModulus, Length, MomentPerWidth, Ratio, per_width, plain,
};

/// A panel of which one skin is pressed.
///
/// With a core that has no stiffness in its own plane the skins move in two ways that do not mix: both together, as
/// [`SkinBending`] has it, and towards each other, as one beam of the rigidity *D₁D₂*/(*D₁* + *D₂*) on the core as a bed
/// of springs. Of a load on skin 1 the share *D₂*/(*D₁* + *D₂*) does the second.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PressedPanel {
    /// The panel as a whole.
    pub panel: SkinBending,
    /// Rigidity of the pressed skin about its own middle, *D₁*.
    pub pressed: FlexuralRigidity,
    /// Rigidity of the other skin about its own middle, *D₂*.
    pub far: FlexuralRigidity,
    /// Poisson's ratio of the skins.
    pub poisson: Ratio,
    /// The whole core as a bed of springs between the skins: its modulus over its thickness.
    pub core: FoundationModulus,
}

/// Moments of the skins about their own middles, on top of their share of the panel's moment.
///
/// The dent turns over beyond the edge of what presses: there the pressed skin has up to `dent` the other way, and the far
/// skin has it everywhere.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LocalBending {
    /// Of the pressed skin and of the other one as they bend together, hogging over a seat, sagging under a foot.
    pub together: [MomentPerWidth; 2],
    /// Of either skin as they bend towards each other; in the pressed skin it adds to the first.
    pub dent: MomentPerWidth,
}

impl LocalBending {
    /// Most that the pressed skin has.
    #[must_use]
    pub fn pressed(&self) -> MomentPerWidth {
        self.together[0] + self.dent
    }
}

impl PressedPanel {
    /// Largest moments over a seat that presses evenly.
    ///
    /// ```text
    ///   m₁ = (R/s) C² D₁/S (1 − e^(−αs/2)) + (R₁/s) B/(4 λ²)      R₁ = R D₂/(D₁ + D₂),  λ⁴ = k/(4 D_r),  D_r = D₁D₂/(D₁ + D₂)
    ///   B = largest of β(λy) + β(λ(s − y)) over 0 ≤ y ≤ s/2,       β(x) = e^(−x) sin x
    /// ```
    ///
    /// The first part: the core shears with the slope *R*/(*s S*) under the seat, and the skins follow; the second: the
    /// seat presses the skin into the core. The far skin has *D₂*/*D₁* of the first, and the second the other way round. A seat of no width, such as a round pipe without a tab, gives
    /// *m₁* = *R C D₁*/(2*α D₂*) + *R₁*/(4*λ*).
    ///
    /// | symbol | meaning                                              | field or argument    |
    /// |--------|------------------------------------------------------|----------------------|
    /// | *R*    | push per length of the seat                          | `push`               |
    /// | *s*    | width of the seat                                    | `seat`               |
    /// | *C*, *α* | core share, one over the decay length              | `panel`              |
    /// | *D₁*, *D₂* | rigidities of the skins                          | `pressed`, `far`     |
    /// | *k*    | core as a bed of springs                             | `core`               |
    ///
    /// # Validity
    ///
    /// Panel that goes on at least 3/*λ* beyond the seat on both sides. A core deep against 1/*λ* presses the skin less:
    /// safe. Not beside the edge of a rigid flat seat: [`beside_hard_edge`](Self::beside_hard_edge).
    ///
    /// # Source
    ///
    /// [`HETENYI_1946`](crate::source::HETENYI_1946) (from memory) for the bed of springs;
    /// [`DERIVED`](crate::source::DERIVED).
    ///
    /// # Examples
    ///
    /// Skins 2 mm of *E′* = 16.484 GPa on 38 mm of core, *E* 90, *G* 35 MPa; 300 N/m on 38 mm are 7895 Pa: 7895 × 0.99834
    /// × 10.989/1.4737·10⁶ × (1 − e^(−4.922)) = 0.0583 N. *λ* = 101.89 /m, *B* = 0.327 near *λy* = 0.88: 3947 ×
    /// 0.327/(4 × 10 381) = 0.0311 N. Sum 0.0894 N.
    ///
    /// ```
    /// use skinspan::{strength::{PressedPanel, SkinBending}, units::{Force, Length, Pressure, Ratio, per_width}};
    /// use uom::si::{force::newton, length::{meter, millimeter}, pressure::megapascal};
    /// let (mpa, mm) = (Pressure::new::<megapascal>, Length::new::<millimeter>);
    /// let panel = SkinBending::of_equal_skins(mpa(16_483.5), mpa(35.0), mm(2.0), mm(38.0));
    /// let skin = panel.skins / 2.0;
    /// let pressed = PressedPanel {
    ///     panel, pressed: skin, far: skin, poisson: Ratio::from(0.3), core: mpa(90.0) / mm(38.0),
    /// };
    /// let push = per_width(Force::new::<newton>(300.0) / Length::new::<meter>(1.0));
    /// let m = pressed.over_even_seat(push, mm(38.0));
    /// assert!((m.pressed().value - 0.0894).abs() < 1e-4);
    /// // A line: 300 (0.99917 × 3.8602/4 + 9.8148/8)/1000 = 0.6573 N.
    /// let line = pressed.over_even_seat(push, mm(0.0));
    /// assert!((line.pressed().value - 0.6573).abs() < 1e-4);
    /// ```
    #[must_use]
    pub fn over_even_seat(&self, push: ForcePerWidth, seat: Length) -> LocalBending {
        let together = skin_moment_at_edge(push / 2.0, &self.panel, self.pressed)
            * spread_share((seat / self.panel.decay_length()).value / 2.0);
        let wave = self.dent_length();
        let dent = plain(push) * self.dent_share() * wave / 4.0 * dent_share((seat / wave).value);
        self.both(together, per_width(dent))
    }

    /// Largest moments beside the edge of something rigid and flat that presses on one skin.
    ///
    /// ```text
    ///   m₁(x) = V C D₁/(α D_s) · e^(−αx) + V₁/(4 λ) · |e^(−λx) (cos λx − sin λx)|      V₁ = V D₂/(D₁ + D₂),  D_s = D₁ + D₂
    /// ```
    ///
    /// The first part is that of a panel that the edge holds from turning and shearing ([`skin_moment_at_edge`]); the
    /// second that of the same force as a line on the pressed skin, which gives way into the core.
    ///
    /// | symbol | meaning                                              | field or argument    |
    /// |--------|------------------------------------------------------|----------------------|
    /// | *V*    | shear force of the panel per width beside the edge   | `shear_force`        |
    /// | *x*    | distance from the edge                               | `off`                |
    /// | *C*, *α*, `D_s` | core share, one over the decay length, skins alone | `panel`       |
    /// | *D₁*, *D₂*, *λ* | as [`over_even_seat`](Self::over_even_seat) |                      |
    ///
    /// # Validity
    ///
    /// A bound for an edge that neither bends nor turns. Right at a sharp edge an elastic skin has no bound, and nearer
    /// than half its thickness it is no plate: take that as the least *x*. From there on layered solids stay below this.
    ///
    /// # Source
    ///
    /// [`DERIVED`](crate::source::DERIVED) as above.
    ///
    /// # Examples
    ///
    /// The panel of [`over_even_seat`](Self::over_even_seat), 180 N/m: 180 (0.99917 × 3.8602/2 + 9.8148/8)/1000 = 0.5680 N.
    ///
    /// ```
    /// use skinspan::{strength::{PressedPanel, SkinBending}, units::{Force, Length, Pressure, Ratio, per_width}};
    /// use uom::si::{force::newton, length::{meter, millimeter}, pressure::megapascal};
    /// let (mpa, mm) = (Pressure::new::<megapascal>, Length::new::<millimeter>);
    /// let panel = SkinBending::of_equal_skins(mpa(16_483.5), mpa(35.0), mm(2.0), mm(38.0));
    /// let skin = panel.skins / 2.0;
    /// let pressed = PressedPanel {
    ///     panel, pressed: skin, far: skin, poisson: Ratio::from(0.3), core: mpa(90.0) / mm(38.0),
    /// };
    /// let shear = per_width(Force::new::<newton>(180.0) / Length::new::<meter>(1.0));
    /// assert!((pressed.beside_hard_edge(shear, mm(0.0)).pressed().value - 0.5680).abs() < 1e-4);
    /// ```
    #[must_use]
    pub fn beside_hard_edge(&self, shear_force: ForcePerWidth, off: Length) -> LocalBending {
        let left = (-off / self.panel.decay_length()).value.exp();
        let together = skin_moment_at_edge(shear_force, &self.panel, self.pressed) * left;
        let (dent, x) = (self.dent_length(), (off / self.dent_length()).value);
        let wave = ((-x).exp() * (x.cos() - x.sin())).abs();
        self.both(together, per_width(plain(shear_force) * self.dent_share() * dent / 4.0 * wave))
    }

    /// Largest moments under a disc that presses evenly, such as a foot.
    ///
    /// ```text
    ///   m₁ = (1 + ν)/2 · p C² D₁/S · [1 − αb K₁(αb)] + p₁ max((1 + ν)/2 · ℓ² x kei′ x, ℓ²/6 where x > 2)
    ///   p = F/(π b²),  p₁ = p D₂/(D₁ + D₂),  ℓ⁴ = D_r/k,  x = b/ℓ
    /// ```
    ///
    /// The parts are those of [`over_even_seat`](Self::over_even_seat). Under the middle the core's shear spreads over
    /// both directions alike. Under a wide disc the dent is flat and the skin bends inside its rim, by *p₁ℓ²*/6.
    ///
    /// | symbol | meaning                                              | field or argument    |
    /// |--------|------------------------------------------------------|----------------------|
    /// | *F*, *b* | force, and the radius over which it is spread      | `load`               |
    /// | *ν*    | Poisson's ratio of the skins                         | `poisson`            |
    /// | *K₁*, kei | Bessel's and Kelvin's functions                   |                      |
    ///
    /// # Validity
    ///
    /// As [`over_even_seat`](Self::over_even_seat). The value at the rim, a numerical integral rounded up, is safe up to
    /// *ν* = 0.3 and an eighth low at 0.5.
    ///
    /// # Source
    ///
    /// [`DERIVED`](crate::source::DERIVED); [`SkinOnCore::skin_moment`] for the dent.
    ///
    /// # Examples
    ///
    /// The panel of [`over_even_seat`](Self::over_even_seat), 1 kN on a disc of 100 cm²: *αb* = 14.6, *x* = 8.1: 0.65 × 10⁵ ×
    /// 0.99834 × 10.989/1.4737·10⁶ = 0.4839 N, and 5·10⁴ × 48.16·10⁻⁶/6 = 0.4013 N.
    ///
    /// ```
    /// use skinspan::{strength::{DiscLoad, PressedPanel, SkinBending}};
    /// use skinspan::units::{Force, Length, Pressure, Ratio};
    /// use uom::si::{force::newton, length::millimeter, pressure::megapascal};
    /// let (mpa, mm) = (Pressure::new::<megapascal>, Length::new::<millimeter>);
    /// let panel = SkinBending::of_equal_skins(mpa(16_483.5), mpa(35.0), mm(2.0), mm(38.0));
    /// let skin = panel.skins / 2.0;
    /// let pressed = PressedPanel {
    ///     panel, pressed: skin, far: skin, poisson: Ratio::from(0.3), core: mpa(90.0) / mm(38.0),
    /// };
    /// let load = DiscLoad { force: Force::new::<newton>(1000.0), radius: mm(56.419) };
    /// assert!((pressed.under_even_disc(load).pressed().value - 0.8852).abs() < 2e-4);
    /// ```
    #[must_use]
    pub fn under_even_disc(&self, load: DiscLoad) -> LocalBending {
        let both_ways = 0.5 * (1.0 + self.poisson.value);
        let reach = (load.radius / self.panel.decay_length()).value;
        let (_, k1) = scaled_k0_k1(reach);
        let still = 1.0 - reach * k1 * (-reach).exp();
        let share = self.panel.core_share();
        let together = load.pressure() * share * share * (self.pressed / self.panel.shear) * (both_ways * still);
        let on_core = SkinOnCore { skin_rigidity: self.towards(), poisson: self.poisson, foundation: self.core };
        let force: Force = load.force * self.dent_share();
        let own = DiscLoad { force, ..load };
        let spread = on_core.spread_length();
        let at_rim: Force = own.pressure() * spread * spread / 6.0;
        let rim = if load.radius > spread * 2.0 { at_rim } else { Force::default() };
        self.both(per_width(together), on_core.skin_moment(own).max(per_width(rim)))
    }

    /// Length over which a dent of the pressed skin dies away, in waves, as e^(−x) (cos x + sin x).
    ///
    /// ```text
    ///   1/λ = (4 D_r/k)^(1/4),   D_r = D₁D₂/(D₁ + D₂)
    /// ```
    ///
    /// | symbol | meaning                                              | field                |
    /// |--------|------------------------------------------------------|----------------------|
    /// | *D₁*, *D₂* | rigidities of the skins                          | `pressed`, `far`     |
    /// | *k*    | core as a bed of springs                             | `core`               |
    ///
    /// # Validity
    ///
    /// As [`over_even_seat`](Self::over_even_seat).
    ///
    /// # Source
    ///
    /// [`HETENYI_1946`](crate::source::HETENYI_1946) (from memory); [`DERIVED`](crate::source::DERIVED).
    ///
    /// # Examples
    ///
    /// Two skins of 10.989 N·m on 90 MPa over 38 mm: (4 × 5.4945/2.3684·10⁹)^(1/4) = 9.815 mm.
    ///
    /// ```
    /// use skinspan::{strength::{PressedPanel, SkinBending}, units::{Length, Pressure, Ratio}};
    /// use uom::si::{length::millimeter, pressure::megapascal};
    /// let (mpa, mm) = (Pressure::new::<megapascal>, Length::new::<millimeter>);
    /// let panel = SkinBending::of_equal_skins(mpa(16_483.5), mpa(35.0), mm(2.0), mm(38.0));
    /// let skin = panel.skins / 2.0;
    /// let pressed = PressedPanel {
    ///     panel, pressed: skin, far: skin, poisson: Ratio::from(0.3), core: mpa(90.0) / mm(38.0),
    /// };
    /// assert!((pressed.dent_length().get::<millimeter>() - 9.815).abs() < 1e-3);
    /// ```
    #[must_use]
    pub fn dent_length(&self) -> Length {
        (4.0 * plain(self.towards()) / self.core).sqrt().sqrt()
    }

    fn both(&self, together: MomentPerWidth, dent: MomentPerWidth) -> LocalBending {
        LocalBending { together: [together, together * (self.far / self.pressed).value], dent }
    }

    /// Rigidity of the skins when they move towards each other.
    fn towards(&self) -> FlexuralRigidity {
        self.pressed * self.dent_share().value
    }

    /// Share of a load on the pressed skin that moves the skins towards each other.
    fn dent_share(&self) -> Ratio {
        self.far / (self.pressed + self.far)
    }
}

/// (1 − e^(−x))/x, which is 1 at nought.
fn spread_share(x: f64) -> f64 {
    if x < 1e-8 { 1.0 } else { -(-x).exp_m1() / x }
}

/// The largest of β(y) + β(x − y) under a load of width *x*, over *x*; β(x) = e^(−x) sin x. It is 1 for a line.
fn dent_share(x: f64) -> f64 {
    if x < 1e-8 {
        return 1.0;
    }
    let beta = |y: f64| (-y).exp() * y.sin();
    // The middle, or where the nearer edge alone does most.
    let places =
        (0..=STEPS).map(|step| x / 2.0 - (x / 2.0 - FRAC_PI_4).max(0.0) * (f64::from(step) / f64::from(STEPS)));
    places.map(|y| beta(y) + beta(x - y)).fold(f64::NEG_INFINITY, f64::max) / x
}

/// Places between the middle of a seat and one decay off its edge; the largest is flat.
const STEPS: u32 = 16;

//! Shear of the core beside a backing strip and round a plug.

use crate::{
    strength::{Pad, SkinBending, punching_stress},
    units::{Force, ForcePerWidth, Length, Pressure, Ratio, Torque, per_width, plain},
};

/// Load on a backing strip.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BackingLoad {
    /// Load across the panel.
    pub force: Force,
    /// Moment about the run of the strip.
    pub moment: Torque,
    /// Width of the strip.
    pub width: Length,
    /// Length over which the load leaves the strip,
    /// [`effective_length_near_end`](super::effective_length_near_end).
    pub length: Length,
}

impl BackingLoad {
    /// Shear force per length on the more loaded long side of the strip.
    ///
    /// ```text
    ///   q = |P|/(2 L) + |M|/(w L)
    /// ```
    ///
    /// | symbol | meaning                                        | field    |
    /// |--------|------------------------------------------------|----------|
    /// | *P*    | load across the panel                          | `force`  |
    /// | *M*    | moment about the run of the strip              | `moment` |
    /// | *w*    | width of the strip                             | `width`  |
    /// | *L*    | length over which the load leaves the strip    | `length` |
    ///
    /// [`skin_moment_at_edge`](crate::strength::skin_moment_at_edge) takes it for the skins.
    ///
    /// # Validity
    ///
    /// The long sides carry all, even over *L*; the moment as a couple of the two sides, which leaves out what the
    /// skins carry of it as bending of the panel.
    ///
    /// # Source
    ///
    /// [`DERIVED`](crate::source::DERIVED): equilibrium.
    ///
    /// # Examples
    ///
    /// 1000 N and 20 N·m on 100 mm × 200 mm: 2.5 + 1 = 3.5 N/mm.
    ///
    /// ```
    /// use skinspan::{fastening::BackingLoad, units::{Force, Length, Torque}};
    /// use uom::si::{force::newton, length::millimeter, torque::newton_meter};
    /// let mm = Length::new::<millimeter>;
    /// let load = BackingLoad {
    ///     force: Force::new::<newton>(1000.0),
    ///     moment: Torque::new::<newton_meter>(20.0),
    ///     width: mm(100.0),
    ///     length: mm(200.0),
    /// };
    /// assert!((load.line_shear().value - 3500.0).abs() < 1e-9); // N/m
    /// ```
    #[must_use]
    pub fn line_shear(&self) -> ForcePerWidth {
        let couple: Force = self.moment.abs() / self.width;
        per_width((self.force.abs() / 2.0 + couple) / self.length)
    }

    /// Shear stress of the core beside the strip.
    ///
    /// ```text
    ///   τ = (q/d)(D₀/D)
    /// ```
    ///
    /// | symbol    | meaning                                         | argument or field |
    /// |-----------|-------------------------------------------------|-------------------|
    /// | *q*       | [`line_shear`](Self::line_shear)                |                   |
    /// | *d*       | distance between the middles of the skins       | `skin_distance`   |
    /// | *D₀*/*D*  | [`SkinBending::core_share`]                     | `panel`           |
    ///
    /// # Validity
    ///
    /// As [`line_shear`](Self::line_shear). The stress rises as 1 − e^(−αx) from nothing at the strip and stays below
    /// this.
    ///
    /// # Source
    ///
    /// [`DERIVED`](crate::source::DERIVED) in [`skin_moment_at_edge`](crate::strength::skin_moment_at_edge).
    ///
    /// # Examples
    ///
    /// 3.5 N/mm, *d* = 20 mm, *D₀*/*D* = 0.99668: 0.17442 MPa.
    ///
    /// ```
    /// use skinspan::{fastening::BackingLoad, strength::SkinBending, units::{Force, Length, Pressure, Torque}};
    /// use uom::si::{force::newton, length::millimeter, pressure::megapascal, torque::newton_meter};
    /// let (mpa, mm) = (Pressure::new::<megapascal>, Length::new::<millimeter>);
    /// let panel = SkinBending::of_equal_skins(mpa(12_000.0), mpa(27.0), mm(2.0), mm(18.0));
    /// let load = BackingLoad {
    ///     force: Force::new::<newton>(1000.0),
    ///     moment: Torque::new::<newton_meter>(20.0),
    ///     width: mm(100.0),
    ///     length: mm(200.0),
    /// };
    /// assert!((load.core_shear(&panel, mm(20.0)).get::<megapascal>() - 0.17442).abs() < 1e-5);
    /// ```
    #[must_use]
    pub fn core_shear(&self, panel: &SkinBending, skin_distance: Length) -> Pressure {
        panel.core_share() * (plain(self.line_shear()) / skin_distance)
    }
}

/// Shear stress of the core round a rectangular plug that stands alone.
///
/// ```text
///   τ = P/(2 (l + w) d) · (D₀/D)/k
/// ```
///
/// | symbol   | meaning                                                     | argument        |
/// |----------|-------------------------------------------------------------|-----------------|
/// | *P*      | load across the panel                                       | `force`         |
/// | *l*, *w* | sides of the plug                                           | `plug`          |
/// | *k*      | mean over peak along the rim: what the corners leave of it  | `evenness`      |
/// | *d*      | distance between the middles of the skins                   | `skin_distance` |
/// | *D₀*/*D* | [`SkinBending::core_share`]                                 | `panel`         |
///
/// # Validity
///
/// Plug fast to both skins, panel wide on all sides. 0.8 is common practice for *k*.
///
/// # Source
///
/// [`DERIVED`](crate::source::DERIVED): [`punching_stress`].
///
/// # Examples
///
/// 800 N on 100 mm × 100 mm, *d* = 20 mm, *k* = 0.8, *D₀*/*D* = 0.99668: 0.1 × 0.99668/0.8 = 0.12459 MPa.
///
/// ```
/// use skinspan::fastening::core_shear_round_plug;
/// use skinspan::{strength::{Pad, SkinBending}, units::{Force, Length, Pressure, Ratio}};
/// use uom::si::{force::newton, length::millimeter, pressure::megapascal};
/// let (mpa, mm) = (Pressure::new::<megapascal>, Length::new::<millimeter>);
/// let panel = SkinBending::of_equal_skins(mpa(12_000.0), mpa(27.0), mm(2.0), mm(18.0));
/// let plug = Pad { length: mm(100.0), width: mm(100.0) };
/// let tau = core_shear_round_plug(Force::new::<newton>(800.0), plug, Ratio::from(0.8), &panel, mm(20.0));
/// assert!((tau.get::<megapascal>() - 0.12459).abs() < 1e-5);
/// ```
#[must_use]
pub fn core_shear_round_plug(
    force: Force,
    plug: Pad,
    evenness: Ratio,
    panel: &SkinBending,
    skin_distance: Length,
) -> Pressure {
    panel.core_share() * punching_stress(force, 2.0 * (plug.length + plug.width), skin_distance) / evenness
}

//! Bending of the skin right beside a hard edge: a strip, an insert, a pipe.

use super::{SkinBending, kelvin::scaled_k0_k1};
use crate::units::{FlexuralRigidity, ForcePerWidth, Length, MomentPerWidth, ShearStiffness, per_width, plain};

/// Bending moment that one skin has on top of its share of the panel's moment, at a straight hard edge.
///
/// With the deflection *w* and the shear angle *γ* the equilibrium of the two ways of bending is
///
/// ```text
///   S γ = −D₀ (w″ − γ′)′        V = S γ − D₂ w‴
///   ⇒  γ″ − α² γ = −V/D₂,       α² = S D/(D₀ D₂)
///   γ(0) = 0  ⇒  γ = (D₀ V/(D S)) (1 − e^(−αx))
///   ⇒  at the edge, of both skins together:  m = (D₂ D₀/D) γ′(0) = V D₀/(α D)
///   of one skin with the rigidity D_f:       m = (V D₀/(α D)) · D_f/D₂
/// ```
///
/// | symbol | meaning                                                | argument        |
/// |--------|--------------------------------------------------------|-----------------|
/// | *V*    | shear force per width on this side of the edge         | `shear_force`   |
/// | *D₀*, *D₂*, *D*, *S* | of the panel                             | `panel`         |
/// | `D_f`  | rigidity of this skin about its own middle             | `skin_rigidity` |
///
/// Away from the edge it falls off with [`SkinBending::decay_length`]. Its stress, 6 *m*/*t*², adds to that of the
/// panel's moment. Over a pipe with panel on both sides *V* is the shear on one side.
///
/// # Validity
///
/// The edge holds the section from turning and from shearing, as a solid strip or the line of symmetry over a support
/// does. Core that keeps its thickness.
///
/// # Source
///
/// [`DERIVED`](crate::source::DERIVED) as above, checked against a numerical solution of the boundary value problem.
///
/// # Examples
///
/// *V* = 10 N/mm, 1/α = 5.155 mm, *D₀*/*D* = 0.99668, equal skins: 10 × 5.155 × 0.99668/2 = 25.69 N·mm/mm.
///
/// ```
/// use skinspan::{strength::{SkinBending, skin_moment_at_edge}, units::{Force, Length, Pressure, per_width}};
/// use uom::si::{force::newton, length::millimeter, pressure::megapascal};
/// let (mpa, mm) = (Pressure::new::<megapascal>, Length::new::<millimeter>);
/// let panel = SkinBending::of_equal_skins(mpa(12_000.0), mpa(27.0), mm(2.0), mm(18.0));
/// let v = per_width(Force::new::<newton>(10.0) / mm(1.0));
/// let m = skin_moment_at_edge(v, &panel, panel.skins / 2.0);
/// assert!((m.value - 25.69).abs() < 0.01); // N·m per m is N·mm per mm
/// ```
#[must_use]
pub fn skin_moment_at_edge(
    shear_force: ForcePerWidth,
    panel: &SkinBending,
    skin_rigidity: FlexuralRigidity,
) -> MomentPerWidth {
    let both = plain(shear_force) * panel.decay_length() * panel.core_share();
    per_width(both * (skin_rigidity / panel.skins))
}

/// As [`skin_moment_at_edge`], round a hard disc such as a bolted foot or a potted insert.
///
/// ```text
///   m = (V D₀/(α D)) · (K₀(αb)/K₁(αb)) · D_f/D₂         V = P/(2πb)
/// ```
///
/// | symbol | meaning                                                | argument        |
/// |--------|--------------------------------------------------------|-----------------|
/// | *V*    | shear force per length of the rim                      | `shear_force`   |
/// | *b*    | radius of the disc                                     | `radius`        |
/// | *K₀*, *K₁* | modified Bessel functions of the second kind       |                 |
/// | `D_f`  | rigidity of this skin about its own middle             | `skin_rigidity` |
///
/// # Validity
///
/// As [`skin_moment_at_edge`]; the disc is fast to both skins and the panel much wider than 1/α. Radial moment, on
/// top of the skin's share of the panel's radial moment at the rim.
///
/// # Source
///
/// [`DERIVED`](crate::source::DERIVED) as for the straight edge, with *γ* ∝ 1/*r* − *K₁*(*αr*)/(*b K₁*(*αb*)).
///
/// # Examples
///
/// *αb* = 2: *K₀*/*K₁* = 0.11389/0.13987 = 0.8143 of the straight edge.
///
/// ```
/// use skinspan::{strength::{SkinBending, skin_moment_at_edge, skin_moment_at_round_edge}};
/// use skinspan::units::{Force, Length, Pressure, per_width};
/// use uom::si::{force::newton, length::millimeter, pressure::megapascal};
/// let (mpa, mm) = (Pressure::new::<megapascal>, Length::new::<millimeter>);
/// let panel = SkinBending::of_equal_skins(mpa(12_000.0), mpa(27.0), mm(2.0), mm(18.0));
/// let v = per_width(Force::new::<newton>(10.0) / mm(1.0));
/// let (b, skin) = (2.0 * panel.decay_length(), panel.skins / 2.0);
/// let round = skin_moment_at_round_edge(v, b, &panel, skin) / skin_moment_at_edge(v, &panel, skin);
/// assert!((round.value - 0.8143).abs() < 1e-4);
/// ```
#[must_use]
pub fn skin_moment_at_round_edge(
    shear_force: ForcePerWidth,
    radius: Length,
    panel: &SkinBending,
    skin_rigidity: FlexuralRigidity,
) -> MomentPerWidth {
    let (k0, k1) = scaled_k0_k1((radius / panel.decay_length()).value);
    skin_moment_at_edge(shear_force, panel, skin_rigidity) * (k0 / k1)
}

/// As [`skin_moment_at_edge`], beside a strip between the same skins that shears a little itself.
///
/// ```text
///   γ and γ′ are the same on both sides, γ∞ = D₀ V/(D S) and α = √(S D/(D₀ D₂)) differ
///   ⇒  m(x) = (V D₀/(α D)) · (D_f/D₂) · |1 − √(S/S_b)| · e^(−αx)
/// ```
///
/// | symbol | meaning                                                | argument        |
/// |--------|--------------------------------------------------------|-----------------|
/// | *V*    | shear force per width across the edge                  | `shear_force`   |
/// | *D₀*, *D₂*, *D*, *S*, *α* | of the panel beside the strip       | `panel`         |
/// | `S_b`  | shear stiffness of the panel with the strip as its core | `strip`        |
/// | *x*    | distance from the edge                                 | `off`           |
/// | `D_f`  | rigidity of this skin about its own middle             | `skin_rigidity` |
///
/// # Validity
///
/// As [`skin_moment_at_edge`], which is the limit of a rigid strip; strip wider than three of its own decay lengths. The
/// skins are fast to the strip, which keeps its thickness, so that neither of them is dented. Nearer to the edge than
/// half the thickness of a skin it is no plate: take that as the least *x*. There it is a third above layered solids.
///
/// # Source
///
/// [`DERIVED`](crate::source::DERIVED) as above.
///
/// # Examples
///
/// Four times as stiff: 1 − √(1/4) = half of a rigid strip; a decay length off, 1/e of that.
///
/// ```
/// use skinspan::{strength::{SkinBending, skin_moment_at_edge, skin_moment_beside_strip}};
/// use skinspan::units::{Force, Length, Pressure, per_width};
/// use uom::si::{force::newton, length::millimeter, pressure::megapascal};
/// let (mpa, mm) = (Pressure::new::<megapascal>, Length::new::<millimeter>);
/// let panel = SkinBending::of_equal_skins(mpa(12_000.0), mpa(27.0), mm(2.0), mm(18.0));
/// let v = per_width(Force::new::<newton>(10.0) / mm(1.0));
/// let skin = panel.skins / 2.0;
/// let beside = |off| skin_moment_beside_strip(v, &panel, panel.shear * 4.0, skin, off);
/// let rigid = skin_moment_at_edge(v, &panel, skin);
/// assert!(((beside(mm(0.0)) / rigid).value - 0.5).abs() < 1e-12);
/// assert!(((beside(panel.decay_length()) / rigid).value - 0.5 / 1.0_f64.exp()).abs() < 1e-12);
/// ```
#[must_use]
pub fn skin_moment_beside_strip(
    shear_force: ForcePerWidth,
    panel: &SkinBending,
    strip: ShearStiffness,
    skin_rigidity: FlexuralRigidity,
    off: Length,
) -> MomentPerWidth {
    let stiffer = 1.0 - (panel.shear / strip).sqrt().value;
    let left = (-off / panel.decay_length()).value.exp();
    skin_moment_at_edge(shear_force, panel, skin_rigidity) * (stiffer.abs() * left)
}

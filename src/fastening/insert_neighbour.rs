//! Shear of the core round an insert that has a neighbour or a free edge beside it.

use std::{error, f64::consts::PI, fmt};

use crate::{
    strength::{PeakShear, RoundFoot, SkinBending, punching_peak, punching_shear_at},
    units::{Force, Length, Pressure},
};

/// Places along the line of centres at which the sum is looked at.
const PLACES: u32 = 400;

/// Another insert.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Neighbour {
    /// Load on it; the sign tells whether it acts the same way as that of the insert.
    pub force: Force,
    /// Distance from middle to middle.
    pub distance: Length,
}

/// The insert and its neighbour, or its mirror image behind a free edge, touch.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct InsertsTouch {
    /// Radius of the insert.
    pub radius: Length,
    /// Distance from middle to middle.
    pub distance: Length,
}

impl fmt::Display for InsertsTouch {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let mm = |length: Length| length.get::<uom::si::length::millimeter>();
        write!(
            f,
            "inserts of {:.1} mm radius touch at a distance of {:.1} mm from middle to middle",
            mm(self.radius),
            mm(self.distance)
        )
    }
}

impl error::Error for InsertsTouch {}

/// Largest shear stress of the core round an insert beside another one.
///
/// ```text
///   same way:       max over r of  τ(r) + P₂ D₀/(2π d D (a + r))     on the side away from the neighbour
///   opposite way:   max over r of  τ(r) + |P₂| D₀/(2π d D (a − r))   between the two
/// ```
///
/// The shear flows away from each load. Between two loads that act the same way the flows meet and cancel, and they
/// add behind; between a pull and a push, as of a foot that is bent over, they add.
///
/// | symbol | meaning                                            | argument             |
/// |--------|----------------------------------------------------|----------------------|
/// | *τ*(*r*) | [`punching_shear_at`]                            | `foot`, `panel`      |
/// | *P₂*   | load on the neighbour                              | `neighbour.force`    |
/// | *a*    | distance from middle to middle                     | `neighbour.distance` |
///
/// # Validity
///
/// As [`punching_shear_at`]. The neighbour's field is that of a load without an insert: its own skins' share, and how
/// the two stiff plugs draw each other's flow, are left out; trust it from *a* = 4 radii on. Where the peaks of a push and
/// of a pull lie beyond the middle between them, both parts are taken at their greatest, which is safe.
///
/// # Errors
///
/// [`InsertsTouch`] when *a* is not above twice the radius.
///
/// # Source
///
/// [`DERIVED`](crate::source::DERIVED): superposition of the shear *P*/(2π*r*) of two loads on a wide plate.
///
/// # Examples
///
/// A neighbour far away changes nothing. Alone 0.2193 MPa at 30.6 mm. One at 80 mm that acts the same way adds
/// 0.99668 × 1000/(2π × 20 × 110.6) = 0.0717 MPa; one that pulls the other way makes 0.193 + 0.198 MPa at
/// 40 mm, 0.172 MPa more.
///
/// ```
/// use skinspan::fastening::{Neighbour, core_shear_with_neighbour};
/// use skinspan::{strength::{RoundFoot, SkinBending, punching_peak}, units::{Force, Length, Pressure}};
/// use uom::si::{force::newton, length::millimeter, pressure::megapascal};
/// let (mpa, mm, n) = (Pressure::new::<megapascal>, Length::new::<millimeter>, Force::new::<newton>);
/// let panel = SkinBending::of_equal_skins(mpa(12_000.0), mpa(27.0), mm(2.0), mm(18.0));
/// let foot = RoundFoot { force: n(1000.0), radius: mm(20.0), skin_distance: mm(20.0) };
/// let alone = punching_peak(&foot, &panel).stress;
/// let beside = |force: f64, a: f64| {
///     let peak = core_shear_with_neighbour(&foot, &panel, Neighbour { force: n(force), distance: mm(a) })?;
///     Ok::<_, skinspan::fastening::InsertsTouch>((peak.stress - alone).get::<megapascal>())
/// };
/// assert!(beside(1000.0, 1e6)?.abs() < 2e-5);
/// assert!((beside(-1000.0, 80.0)? - 0.172).abs() < 0.001 && (beside(1000.0, 80.0)? - 0.072).abs() < 0.002);
/// assert!(beside(1000.0, 40.0).is_err());
/// # Ok::<(), skinspan::fastening::InsertsTouch>(())
/// ```
pub fn core_shear_with_neighbour(
    foot: &RoundFoot,
    panel: &SkinBending,
    neighbour: Neighbour,
) -> Result<PeakShear, InsertsTouch> {
    let a = neighbour.distance;
    let apart = a > 2.0 * foot.radius;
    if !apart {
        return Err(InsertsTouch { radius: foot.radius, distance: a });
    }
    let alike = (foot.force >= Force::default()) == (neighbour.force >= Force::default());
    let foot = RoundFoot { force: foot.force.abs(), ..*foot };
    let flow = panel.core_share() * neighbour.force.abs() / (2.0 * PI * foot.skin_distance);
    let sum = |r: Length| -> Pressure {
        let from_neighbour = if alike { a + r } else { a - r };
        punching_shear_at(r, &foot, panel) + flow / from_neighbour
    };
    // The neighbour's part falls outwards behind the insert and rises towards the neighbour between the two: the
    // greatest sum lies on that side of the insert's own peak.
    let alone = punching_peak(&foot, panel);
    let midway = a / 2.0;
    if !alike && alone.radius > midway {
        return Ok(PeakShear { stress: alone.stress + flow / midway, radius: midway });
    }
    let last = if alike { alone.radius } else { midway };
    let mut peak = PeakShear { stress: sum(alone.radius), radius: alone.radius };
    for i in 1..=PLACES {
        // Closer together near the rim, where the stress changes fast.
        let part = f64::from(i) / f64::from(PLACES);
        let radius = foot.radius + (last - foot.radius) * (part * part);
        let stress = sum(radius);
        if stress > peak.stress {
            peak = PeakShear { stress, radius };
        }
    }
    Ok(peak)
}

/// Largest shear stress of the core round an insert near a free edge of the panel.
///
/// ```text
///   as core_shear_with_neighbour, with P₂ = P at a = 2 e
/// ```
///
/// No shear leaves through a free edge: a second load behind it, the mirror image of the first, has that effect. Far from
/// the insert twice the flow then goes inwards.
///
/// | symbol | meaning                                        | argument        |
/// |--------|------------------------------------------------|-----------------|
/// | *P*    | load on the insert                             | `foot.force`    |
/// | *e*    | distance of its middle from the edge           | `edge_distance` |
///
/// # Validity
///
/// As [`core_shear_with_neighbour`]. The edge of a plate carries shear along itself by twisting, which the image leaves
/// out: a first estimate.
///
/// # Errors
///
/// [`InsertsTouch`] when the insert reaches the edge.
///
/// # Source
///
/// [`DERIVED`](crate::source::DERIVED): mirror image.
///
/// # Examples
///
/// 40 mm from the edge, as in [`core_shear_with_neighbour`] at 80 mm: 0.072 MPa more.
///
/// ```
/// use skinspan::fastening::core_shear_beside_free_edge;
/// use skinspan::{strength::{RoundFoot, SkinBending, punching_peak}, units::{Force, Length, Pressure}};
/// use uom::si::{force::newton, length::millimeter, pressure::megapascal};
/// let (mpa, mm) = (Pressure::new::<megapascal>, Length::new::<millimeter>);
/// let panel = SkinBending::of_equal_skins(mpa(12_000.0), mpa(27.0), mm(2.0), mm(18.0));
/// let foot = RoundFoot { force: Force::new::<newton>(1000.0), radius: mm(20.0), skin_distance: mm(20.0) };
/// let more = core_shear_beside_free_edge(&foot, &panel, mm(40.0))?.stress - punching_peak(&foot, &panel).stress;
/// assert!((more.get::<megapascal>() - 0.072).abs() < 0.002);
/// # Ok::<(), skinspan::fastening::InsertsTouch>(())
/// ```
pub fn core_shear_beside_free_edge(
    foot: &RoundFoot,
    panel: &SkinBending,
    edge_distance: Length,
) -> Result<PeakShear, InsertsTouch> {
    core_shear_with_neighbour(foot, panel, Neighbour { force: foot.force, distance: 2.0 * edge_distance })
}

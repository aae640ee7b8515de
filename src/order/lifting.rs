//! Slings: where they bear, and what is in them.

use uom::si::ratio::ratio;

use super::lift_check::{LiftCheck, lift_check};
use crate::{
    geometry::{Band, Point},
    load::weight::gravity,
    top::{Top, Weight},
    units::{Angle, Force, Length, Ratio},
};

/// Shares of the way from the centre of gravity to the nearer end at which slings are tried, in twentieths.
const SHARES: std::ops::RangeInclusive<u32> = 8..=18;
const PARTS: f64 = 20.0;

/// Where slings bend an even beam the least: 0.207 of its length from its ends, 1 − 2 · 0.207 of the half.
const LEAST_BENDING: f64 = 0.586;

/// What a sling on backing is worth, as a way off that place. Our choice: it moves a sling by no more than a twentieth.
const ON_BACKING: f64 = 0.06;

/// One sling.
#[derive(Clone, Debug, PartialEq)]
pub struct Sling {
    /// Where it bears, from below.
    pub at: Point,
    /// The backing above it.
    pub backing: Option<String>,
    /// The conduit that its bearing reaches to.
    pub conduit: Option<String>,
}

/// How the bare top is lifted.
#[derive(Clone, Debug, PartialEq)]
pub struct Lifting {
    /// Four slings, symmetrical about the centre of gravity of the bare top.
    pub slings: Vec<Sling>,
    /// Side of the square that each bears on.
    pub pad: Length,
    /// Weight of the bare top, at rest.
    pub weight: Force,
    /// Jerk: times weight at rest.
    pub factor: Ratio,
    /// Slings that are counted on.
    pub legs: Ratio,
    /// Angle of a sling from the vertical.
    pub angle: Angle,
    /// Load in a sling leg.
    pub leg: Force,
    /// What a slanting leg pulls inwards by, in the plane of the top; a spreader takes it away.
    pub inwards: Force,
    /// Whether the top bears it.
    pub check: LiftCheck,
}

/// Four slings of a bare top, and what is in a leg.
///
/// ```text
/// S = φ m g / (n cos β),  H = S sin β
/// ```
///
/// | symbol | meaning |
/// |---|---|
/// | *S*, *H* | load in a leg, its part in the plane of the top |
/// | *φ* | jerk over weight at rest |
/// | *m* | mass of the bare top |
/// | *n* | legs that are counted on |
/// | *β* | angle of a leg from the vertical |
///
/// Places are tried at twentieths of the way from the centre of gravity to the nearer end, along and across. The best are
/// nearest to where an even beam is bent the least, and on backing.
///
/// # Source
///
/// [`DERIVED`](crate::source::DERIVED): statics; *φ*, *n*, *β* are criteria.
pub(super) fn lifting(top: &Top, weight: &Weight) -> Option<Lifting> {
    let criteria = &top.criteria;
    let pad = criteria.sling_pad.value;
    let places = places(top, weight.bare_centre, pad)?;
    let at_rest: Force = weight.bare * gravity();
    let (factor, legs, angle) = (criteria.lift_factor.value, criteria.sling_legs.value, criteria.sling_angle.value);
    let leg: Force = at_rest * factor / (legs * angle.cos());
    let sling = |at: Point| {
        let backing = top.backings.iter().find(|backing| {
            let band = Band { line: &backing.along, width: backing.width };
            on_band(&band, at)
        });
        let conduit = top.conduits.iter().find(|conduit| {
            Band { line: &conduit.along, width: conduit.diameter }.clearance(at) < pad * std::f64::consts::FRAC_1_SQRT_2
        });
        Sling {
            at,
            backing: backing.map(|backing| backing.name.clone()),
            conduit: conduit.map(|conduit| conduit.name.clone()),
        }
    };
    Some(Lifting {
        slings: places.into_iter().map(sling).collect(),
        pad,
        weight: at_rest,
        factor,
        legs,
        angle,
        leg,
        inwards: leg * angle.sin(),
        check: lift_check(top, &places, pad, leg * angle.sin()),
    })
}

fn on_band(band: &Band<'_>, at: Point) -> bool {
    band.side_distance(at) >= Length::default() && band.end_distance(at) >= Length::default()
}

/// Four places about a centre; none where no four lie on the top.
fn places(top: &Top, centre: Point, pad: Length) -> Option<[Point; 4]> {
    let outline = &top.outline;
    let half = [centre.x.min(outline.length() - centre.x), centre.y.min(outline.width() - centre.y)];
    let within = pad * std::f64::consts::FRAC_1_SQRT_2;
    let mut best: Option<(f64, [Point; 4])> = None;
    for along in SHARES {
        for across in SHARES {
            let shares = [f64::from(along) / PARTS, f64::from(across) / PARTS];
            let (x, y) = (half[0] * shares[0], half[1] * shares[1]);
            let four = [(-1.0, -1.0), (1.0, -1.0), (1.0, 1.0), (-1.0, 1.0)]
                .map(|(i, j)| Point { x: centre.x + x * i, y: centre.y + y * j });
            if four.iter().any(|place| outline.within_by(*place) < within) {
                continue;
            }
            let backed = four.iter().filter(|place| {
                top.backings
                    .iter()
                    .any(|backing| on_band(&Band { line: &backing.along, width: backing.width }, **place))
            });
            #[expect(clippy::cast_precision_loss, reason = "four at the most")]
            let backed = backed.count() as f64;
            let off: f64 = shares.iter().map(|share| (share - LEAST_BENDING).abs()).sum();
            let score = off - ON_BACKING * backed;
            if best.is_none_or(|(known, _)| score < known - 1e-12) {
                best = Some((score, four));
            }
        }
    }
    best.map(|(_, four)| four)
}

impl Lifting {
    /// Load on one sling straight up, all four bearing alike.
    #[must_use]
    pub fn even(&self) -> Force {
        self.weight * self.factor / 4.0
    }

    /// Its jerk as a number.
    #[must_use]
    pub fn times(&self) -> f64 {
        self.factor.get::<ratio>()
    }
}

//! Delaunay refinement: places added until triangles have their size and no angle is needlessly small.
//!
//! A bad triangle gets a place at the centre of the circle round it, as in Ruppert, *A Delaunay refinement algorithm for
//! quality 2-dimensional mesh generation*, J. Algorithms 18 (1995) 548 (quoted); a piece of rim or line between the
//! triangle and that place is halved instead. His proof of an end does not hold for sharp angles in the plan; what ends
//! it here is the spacing.

use super::{
    MOST_NODES, Sizes,
    arrange::Arrangement,
    error::MeshError,
    net::{Corners, Face, Net, Way},
    plane::{Spot, centre, distance, least_angle},
    point,
    split::split,
};

/// Angle below which a triangle is cut, rad: 22°.
const ANGLE: f64 = 0.384;
/// The same where all three corners lie on rim or lines, as in a narrow band: 14°.
const ANGLE_IN_BAND: f64 = 0.244;
/// A side longer than the size by so much is too long.
const LONG: f64 = 1.4;
/// Rounds of cutting.
const ROUNDS: usize = 100;

/// A triangle to be cut.
struct Fault {
    corners: Corners,
    /// The worse, the higher.
    rank: f64,
    /// Where a new place would mend it.
    cure: Spot,
    /// No two places may come nearer than this for its sake.
    spacing: f64,
}

/// Triangles of an arrangement. It comes to an end even at sharp angles of the plan: no new place makes a side shorter
/// than the shortest of the triangle for whose angle it is added, or than half of the side that is too long. A triangle that could be
/// mended no other way stays as it is.
pub(super) fn refined(arrangement: &Arrangement, sizes: &Sizes<'_>) -> Result<Net, MeshError> {
    let mut places = arrangement.places.clone();
    let cuts = split(&mut places, &arrangement.joins, sizes)?;
    let mut net = Net::new(places, cuts, arrangement)?;
    for _ in 0..ROUNDS {
        if !round(&mut net, &arrangement.rim, sizes)? {
            break;
        }
    }
    Ok(net)
}

/// Cuts every triangle that was bad at the start of the round and still stands, worst first; says whether it did.
fn round(net: &mut Net, rim: &[Vec<usize>], sizes: &Sizes<'_>) -> Result<bool, MeshError> {
    let mut faults = Vec::new();
    for face in net.on_panel(rim) {
        faults.extend(fault(net, face, sizes)?);
    }
    faults.sort_by(|one, other| other.rank.total_cmp(&one.rank).then(one.corners.cmp(&other.corners)));
    let mut changed = false;
    for fault in faults {
        if let Some(face) = net.standing(fault.corners) {
            changed |= mend(net, face, &fault)?;
        }
        if net.places.len() > MOST_NODES {
            return Err(MeshError::TooFine { place: point(fault.cure) });
        }
    }
    Ok(changed)
}

/// What is wrong with a triangle.
fn fault(net: &Net, face: Face, sizes: &Sizes<'_>) -> Result<Option<Fault>, MeshError> {
    let corners = net.corners(face);
    let spots = net.spots(corners);
    let (angle, sharp) = least_angle(spots);
    let [p, q] = [spots[(sharp + 1) % 3], spots[(sharp + 2) % 3]];
    let cure = centre(spots);
    let least = if corners.iter().all(|corner| net.bound[*corner]) { ANGLE_IN_BAND } else { ANGLE };
    if angle < least && !net.given(corners, sharp) {
        let (rank, spacing) = (2.0 - angle, distance(p, q));
        return Ok(Some(Fault { corners, rank, cure, spacing }));
    }
    let gravity = [0, 1].map(|i| (spots[0][i] + spots[1][i] + spots[2][i]) / 3.0);
    let size = sizes.at(gravity)?;
    let long = (0..3).map(|i| distance(spots[i], spots[(i + 1) % 3])).fold(0.0, f64::max);
    Ok((long > LONG * size).then(|| Fault { corners, rank: 1.0 - size / long, cure, spacing: 0.5 * long }))
}

fn mend(net: &mut Net, face: Face, fault: &Fault) -> Result<bool, MeshError> {
    let arrived = match net.walk(face, fault.cure) {
        Way::Arrives(face) => face,
        Way::Blocked(edge) => return net.halve(edge, fault.spacing),
        Way::Lost => return Ok(false),
    };
    let wide = net.seen_wide(arrived, fault.cure);
    if let Some(edge) = wide {
        return net.halve(edge, fault.spacing);
    }
    let near = net.corners(arrived)[0];
    let spots = net.spots(net.corners(arrived));
    if spots.iter().any(|spot| distance(*spot, fault.cure) < (1.0 - 1e-9) * fault.spacing) {
        return Ok(false);
    }
    net.add(fault.cure, near)?;
    Ok(true)
}

//! Delaunay refinement: places added until triangles have their size and no angle is needlessly small.

use spade::{
    ConstrainedDelaunayTriangulation, Point2, Triangulation,
    handles::{FixedDirectedEdgeHandle, FixedFaceHandle, FixedVertexHandle, InnerTag},
};

use super::{
    MOST_NODES, Sizes,
    arrange::{Arrangement, join, ring_joins},
    error::MeshError,
    plane::{Spot, between, cross, distance, dot, least_angle, minus, turn},
    point,
    split::{Cuts, along, split},
};

/// Angle below which a triangle is cut, rad: 22°.
const ANGLE: f64 = 0.384;
/// The same where all three corners lie on rim or lines, as in a narrow band: 14°.
const ANGLE_IN_BAND: f64 = 0.244;
/// A side longer than the size by so much is too long.
const LONG: f64 = 1.4;
/// No place nearer to another than this share of the size is added for size.
const CLOSE: f64 = 0.5;
/// Cosine of the angle under which a piece of a line is seen from a new place; seen wider, the piece is cut instead: 120°.
const SEEN: f64 = -0.5;
/// Rounds of cutting. A dozen are usual.
const ROUNDS: usize = 100;

type Delaunay = ConstrainedDelaunayTriangulation<Point2<f64>>;
type Corners = [usize; 3];

/// A triangulation of a plan under work.
pub(super) struct Refined {
    pub(super) places: Vec<Spot>,
    /// Anticlockwise.
    pub(super) triangles: Vec<Corners>,
    pub(super) cuts: Cuts,
}

/// Triangles of an arrangement.
pub(super) fn refined(arrangement: &Arrangement, sizes: &Sizes<'_>) -> Result<Refined, MeshError> {
    let mut places = arrangement.places.clone();
    let joins: Vec<_> = arrangement.joins.iter().copied().collect();
    let cuts = split(&mut places, &joins, sizes)?;
    let mut work = Work { delaunay: Delaunay::new(), bound: vec![true; places.len()], places, cuts };
    for index in 0..work.places.len() {
        work.add(work.places[index], index)?;
    }
    for (a, b) in joins {
        let mut way = Vec::new();
        along(&work.cuts, [a, b], &mut way);
        way.push(b);
        for pair in way.windows(2) {
            work.join(pair[0], pair[1])?;
        }
    }
    let rim = &arrangement.rim;
    for _ in 0..ROUNDS {
        if !work.round(rim, sizes)? {
            break;
        }
    }
    let triangles = work.on_panel(rim).into_iter().map(|face| work.corners(face)).collect();
    Ok(Refined { triangles, places: work.places, cuts: work.cuts })
}

struct Work {
    delaunay: Delaunay,
    places: Vec<Spot>,
    cuts: Cuts,
    /// Whether a place lies on rim or lines.
    bound: Vec<bool>,
}

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

/// Where the way to a place led.
enum Way {
    /// Into a triangle.
    Arrives(FixedFaceHandle<InnerTag>),
    /// Against a piece of rim or line.
    Blocked(FixedDirectedEdgeHandle),
    /// Nowhere: a place in line with a corner.
    Lost,
}

impl Work {
    fn add(&mut self, spot: Spot, near: usize) -> Result<(), MeshError> {
        let tangled = MeshError::Tangled { place: point(spot) };
        let place = Point2::new(spot[0], spot[1]);
        let added = if near < self.delaunay.num_vertices() {
            self.delaunay.insert_with_hint(place, FixedVertexHandle::from_index(near))
        } else {
            self.delaunay.insert(place)
        };
        match added {
            Ok(vertex) if vertex.index() + 1 == self.delaunay.num_vertices() => Ok(()),
            _ => Err(tangled),
        }
    }

    fn join(&mut self, a: usize, b: usize) -> Result<(), MeshError> {
        let (from, to) = (FixedVertexHandle::from_index(a), FixedVertexHandle::from_index(b));
        if !self.delaunay.can_add_constraint(from, to) {
            return Err(MeshError::Tangled { place: point(self.places[a]) });
        }
        self.delaunay.add_constraint(from, to);
        Ok(())
    }

    fn corners(&self, face: FixedFaceHandle<InnerTag>) -> Corners {
        self.delaunay.face(face).vertices().map(|vertex| vertex.index())
    }

    fn spots(&self, corners: Corners) -> [Spot; 3] {
        corners.map(|corner| self.places[corner])
    }

    /// The triangles on the panel: from the left of each side of the rim on, never over the rim.
    fn on_panel(&self, rim: &[Vec<usize>]) -> Vec<FixedFaceHandle<InnerTag>> {
        let mut held = vec![false; self.delaunay.num_inner_faces() + 1];
        let mut barred = vec![false; self.delaunay.num_directed_edges()];
        let mut open: Vec<FixedFaceHandle<InnerTag>> = Vec::new();
        for ring in rim {
            let mut way = Vec::new();
            for pair in ring_joins(ring) {
                along(&self.cuts, pair, &mut way);
            }
            for [a, b] in ring_joins(&way) {
                let ends = [a, b].map(FixedVertexHandle::from_index);
                let Some(edge) = self.delaunay.get_edge_from_neighbors(ends[0], ends[1]) else { continue };
                barred[edge.index()] = true;
                barred[edge.rev().index()] = true;
                open.extend(edge.face().as_inner().map(|face| face.fix()));
            }
        }
        while let Some(face) = open.pop() {
            if std::mem::replace(&mut held[face.index()], true) {
                continue;
            }
            for edge in self.delaunay.face(face).adjacent_edges() {
                if !barred[edge.index()] {
                    open.extend(edge.rev().face().as_inner().map(|face| face.fix()));
                }
            }
        }
        self.delaunay.inner_faces().map(|face| face.fix()).filter(|face| held[face.index()]).collect()
    }

    /// Cuts every triangle that was bad at the start of the round and still stands, worst first; says whether it did.
    fn round(&mut self, rim: &[Vec<usize>], sizes: &Sizes<'_>) -> Result<bool, MeshError> {
        let mut faults = Vec::new();
        for face in self.on_panel(rim) {
            faults.extend(self.fault(face, sizes)?);
        }
        faults.sort_by(|one, other| other.rank.total_cmp(&one.rank).then(one.corners.cmp(&other.corners)));
        let mut changed = false;
        for fault in faults {
            if let Some(face) = self.standing(fault.corners) {
                changed |= self.mend(face, &fault)?;
            }
            if self.places.len() > MOST_NODES {
                return Err(MeshError::TooFine { place: point(fault.cure) });
            }
        }
        Ok(changed)
    }

    /// The triangle with these corners, if it still stands.
    fn standing(&self, [a, b, c]: Corners) -> Option<FixedFaceHandle<InnerTag>> {
        let ends = [a, b].map(FixedVertexHandle::from_index);
        let edge = self.delaunay.get_edge_from_neighbors(ends[0], ends[1])?;
        (edge.next().to().index() == c).then(|| edge.face().as_inner().map(|face| face.fix()))?
    }

    /// What is wrong with a triangle.
    fn fault(&self, face: FixedFaceHandle<InnerTag>, sizes: &Sizes<'_>) -> Result<Option<Fault>, MeshError> {
        let corners = self.corners(face);
        let spots = self.spots(corners);
        let (angle, sharp) = least_angle(spots);
        let [p, q] = [spots[(sharp + 1) % 3], spots[(sharp + 2) % 3]];
        let (short, middle) = (distance(p, q), between(p, q, 0.5));
        let centre = centre(spots);
        let least = if corners.iter().all(|corner| self.bound[*corner]) { ANGLE_IN_BAND } else { ANGLE };
        if angle < least && !self.given(corners, sharp) {
            // No farther from the short side than makes a triangle of the angle on it.
            let (way, reach) = (minus(centre, middle), 0.5 * short / (0.5 * ANGLE).tan());
            let share = (reach / way[0].hypot(way[1])).min(1.0);
            let cure = between(middle, centre, share);
            return Ok(Some(Fault { corners, rank: 2.0 - angle, cure, spacing: short }));
        }
        let gravity = [0, 1].map(|i| (spots[0][i] + spots[1][i] + spots[2][i]) / 3.0);
        let size = sizes.at(gravity)?;
        let long = (0..3).map(|i| distance(spots[i], spots[(i + 1) % 3])).fold(0.0, f64::max);
        Ok((long > LONG * size).then(|| Fault {
            corners,
            rank: 1.0 - size / long,
            cure: centre,
            spacing: (CLOSE * size).min(0.5 * long),
        }))
    }

    /// Whether the plan itself has the angle at a corner: both sides there are rim or lines.
    fn given(&self, corners: Corners, at: usize) -> bool {
        let corner = FixedVertexHandle::from_index(corners[at]);
        [corners[(at + 1) % 3], corners[(at + 2) % 3]]
            .into_iter()
            .all(|end| self.delaunay.exists_constraint(corner, FixedVertexHandle::from_index(end)))
    }

    fn mend(&mut self, face: FixedFaceHandle<InnerTag>, fault: &Fault) -> Result<bool, MeshError> {
        let arrived = match self.walk(face, fault.cure) {
            Way::Arrives(face) => face,
            Way::Blocked(edge) => return self.halve(edge, fault.spacing),
            Way::Lost => return Ok(false),
        };
        let wide = self.seen_wide(arrived, fault.cure);
        if let Some(edge) = wide {
            return self.halve(edge, fault.spacing);
        }
        let near = self.corners(arrived)[0];
        let spots = self.spots(self.corners(arrived));
        if spots.iter().any(|spot| distance(*spot, fault.cure) < (1.0 - 1e-9) * fault.spacing) {
            return Ok(false);
        }
        self.places.push(fault.cure);
        self.bound.push(false);
        self.add(fault.cure, near)?;
        Ok(true)
    }

    /// The piece of rim or line about a triangle, or about its neighbours, that is seen too wide from a place in it.
    fn seen_wide(&self, face: FixedFaceHandle<InnerTag>, place: Spot) -> Option<FixedDirectedEdgeHandle> {
        let edges = self.delaunay.face(face).adjacent_edges();
        let beyond = edges
            .into_iter()
            .filter(|edge| !edge.is_constraint_edge() && edge.rev().face().as_inner().is_some())
            .flat_map(|edge| [edge.rev().next(), edge.rev().prev()]);
        edges
            .into_iter()
            .chain(beyond)
            .filter(|edge| edge.is_constraint_edge())
            .map(|edge| {
                let [from, to] = [edge.from(), edge.to()].map(|end| minus(self.places[end.index()], place));
                (dot(from, to) / (from[0].hypot(from[1]) * to[0].hypot(to[1])), edge.fix())
            })
            .filter(|(cosine, _)| *cosine < SEEN)
            .min_by(|one, other| one.0.total_cmp(&other.0))
            .map(|(_, edge)| edge)
    }

    /// Straight from the middle of a triangle towards a place.
    fn walk(&self, face: FixedFaceHandle<InnerTag>, place: Spot) -> Way {
        let spots = self.spots(self.corners(face));
        let start = [0, 1].map(|i| (spots[0][i] + spots[1][i] + spots[2][i]) / 3.0);
        let mut face = face;
        for _ in 0..self.delaunay.num_inner_faces() {
            let mut next = None;
            let mut outside = false;
            for edge in self.delaunay.face(face).adjacent_edges() {
                let [a, b] = [edge.from(), edge.to()].map(|end| self.places[end.index()]);
                if turn([a, b, place]) < 0.0 {
                    outside = true;
                    if turn([start, place, a]) <= 0.0 && turn([start, place, b]) >= 0.0 {
                        next = Some(edge);
                    }
                }
            }
            let Some(edge) = next else { return if outside { Way::Lost } else { Way::Arrives(face) } };
            match edge.rev().face().as_inner() {
                Some(beyond) if !edge.is_constraint_edge() => face = beyond.fix(),
                _ => return Way::Blocked(edge.fix()),
            }
        }
        Way::Lost
    }

    /// Cuts a piece of rim or line in two, unless places would come nearer than `spacing`.
    fn halve(&mut self, edge: FixedDirectedEdgeHandle, spacing: f64) -> Result<bool, MeshError> {
        let edge = self.delaunay.directed_edge(edge);
        let ends = [edge.from().index(), edge.to().index()];
        let [a, b] = ends.map(|end| self.places[end]);
        let middle = between(a, b, 0.5);
        let apexes = [edge, edge.rev()].into_iter().filter_map(|side| side.opposite_vertex());
        let room = apexes.map(|apex| distance(self.places[apex.index()], middle)).fold(distance(a, middle), f64::min);
        if room < (1.0 - 1e-9) * spacing {
            return Ok(false);
        }
        let joined = edge.as_undirected().fix();
        self.delaunay.remove_constraint_edge(joined);
        let number = self.places.len();
        self.places.push(middle);
        self.bound.push(true);
        self.add(middle, ends[0])?;
        self.cuts.insert(join(ends[0], ends[1]), vec![number]);
        self.join(ends[0], number)?;
        self.join(number, ends[1])?;
        Ok(true)
    }
}

/// Centre of the circle through three places.
fn centre([a, b, c]: [Spot; 3]) -> Spot {
    let (p, q) = (minus(b, a), minus(c, a));
    let (pp, qq, twice) = (dot(p, p), dot(q, q), 2.0 * cross(p, q));
    [a[0] + (q[1] * pp - p[1] * qq) / twice, a[1] + (p[0] * qq - q[0] * pp) / twice]
}

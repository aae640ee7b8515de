//! The triangulation under work: constrained Delaunay, rim and lines the constraints.

use spade::{
    ConstrainedDelaunayTriangulation, Point2, Triangulation,
    handles::{FixedDirectedEdgeHandle, FixedFaceHandle, FixedVertexHandle, InnerTag},
};

use super::{
    arrange::{Arrangement, join, ring_joins},
    error::MeshError,
    plane::{Spot, between, distance, dot, minus, turn},
    point,
    split::{Cuts, along},
};

/// Cosine of the angle under which a piece of a line is seen from a new place; seen wider, the piece is cut instead: 120°.
const SEEN: f64 = -0.5;
pub(super) type Corners = [usize; 3];
pub(super) type Face = FixedFaceHandle<InnerTag>;
pub(super) type Edge = FixedDirectedEdgeHandle;

/// Triangles, their corners numbered as the places.
pub(super) struct Net {
    delaunay: ConstrainedDelaunayTriangulation<Point2<f64>>,
    pub(super) places: Vec<Spot>,
    pub(super) cuts: Cuts,
    /// Whether a place lies on rim or lines.
    pub(super) bound: Vec<bool>,
}

/// Where the way to a place led.
pub(super) enum Way {
    /// Into a triangle.
    Arrives(Face),
    /// Against a piece of rim or line.
    Blocked(Edge),
    /// Nowhere: a place in line with a corner.
    Lost,
}

impl Net {
    /// Triangles over the places of rim and lines, cut as they are.
    pub(super) fn new(places: Vec<Spot>, cuts: Cuts, arrangement: &Arrangement) -> Result<Self, MeshError> {
        let bound = vec![true; places.len()];
        let mut net = Self { delaunay: ConstrainedDelaunayTriangulation::new(), places, cuts, bound };
        for index in 0..net.places.len() {
            net.insert(index, None)?;
        }
        for (a, b) in &arrangement.joins {
            let mut way = Vec::new();
            along(&net.cuts, [*a, *b], &mut way);
            way.push(*b);
            for pair in way.windows(2) {
                net.join(pair[0], pair[1])?;
            }
        }
        Ok(net)
    }

    /// A new place inside; one of those near it is known.
    pub(super) fn add(&mut self, spot: Spot, near: usize) -> Result<(), MeshError> {
        self.places.push(spot);
        self.bound.push(false);
        self.insert(self.places.len() - 1, Some(near))
    }

    fn insert(&mut self, index: usize, near: Option<usize>) -> Result<(), MeshError> {
        let spot = self.places[index];
        let place = Point2::new(spot[0], spot[1]);
        let added = match near {
            Some(near) => self.delaunay.insert_with_hint(place, FixedVertexHandle::from_index(near)),
            None => self.delaunay.insert(place),
        };
        // A place that stood already would shift the numbers.
        match added {
            Ok(vertex) if vertex.index() == index => Ok(()),
            _ => Err(MeshError::Tangled { place: point(spot) }),
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

    pub(super) fn corners(&self, face: Face) -> Corners {
        self.delaunay.face(face).vertices().map(|vertex| vertex.index())
    }

    pub(super) fn spots(&self, corners: Corners) -> [Spot; 3] {
        corners.map(|corner| self.places[corner])
    }

    /// The triangles on the panel: from the left of each side of the rim on, never over the rim.
    pub(super) fn on_panel(&self, rim: &[Vec<usize>]) -> Vec<Face> {
        let mut held = vec![false; self.delaunay.num_inner_faces() + 1];
        let mut barred = vec![false; self.delaunay.num_directed_edges()];
        let mut open: Vec<Face> = Vec::new();
        for ring in rim {
            let mut way = Vec::new();
            for pair in ring_joins(ring) {
                along(&self.cuts, pair, &mut way);
            }
            for [a, b] in ring_joins(&way) {
                let ends = [a, b].map(FixedVertexHandle::from_index);
                let Some(edge) = self.delaunay.get_edge_from_neighbors(ends[0], ends[1]) else { continue };
                barred[edge.index()] = true;
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

    /// The triangle with these corners, if it still stands.
    pub(super) fn standing(&self, [a, b, c]: Corners) -> Option<Face> {
        let ends = [a, b].map(FixedVertexHandle::from_index);
        let edge = self.delaunay.get_edge_from_neighbors(ends[0], ends[1])?;
        (edge.next().to().index() == c).then(|| edge.face().as_inner().map(|face| face.fix()))?
    }

    /// Whether the plan itself has the angle at a corner: both sides there are rim or lines.
    pub(super) fn given(&self, corners: Corners, at: usize) -> bool {
        let corner = FixedVertexHandle::from_index(corners[at]);
        [corners[(at + 1) % 3], corners[(at + 2) % 3]]
            .into_iter()
            .all(|end| self.delaunay.exists_constraint(corner, FixedVertexHandle::from_index(end)))
    }

    /// The piece of rim or line about a triangle, or about its neighbours, that is seen too wide from a place in it.
    pub(super) fn seen_wide(&self, face: Face, place: Spot) -> Option<Edge> {
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
    pub(super) fn walk(&self, face: Face, place: Spot) -> Way {
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
    pub(super) fn halve(&mut self, edge: Edge, spacing: f64) -> Result<bool, MeshError> {
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
        self.insert(number, Some(ends[0]))?;
        self.cuts.insert(join(ends[0], ends[1]), vec![number]);
        self.join(ends[0], number)?;
        self.join(number, ends[1])?;
        Ok(true)
    }
}

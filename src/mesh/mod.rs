//! A plan cut into triangles: few and well shaped, small only where asked.
//!
//! [`Plan`] → places and lines snapped together (`arrange`) → rim and lines divided to size (`split`) → triangles
//! refined (`net`, `refine`) → [`Mesh`]. The same plan gives the same mesh, bit for bit.

mod arrange;
mod error;
mod grid;
mod net;
mod plane;
mod refine;
mod rings;
mod split;

pub use error::{MeshError, Ring};

use uom::si::{angle::radian, length::meter};

use crate::{
    geometry::Point,
    units::{Angle, Length},
};
use arrange::{Arrangement, ring_joins};
use grid::Grid;
use plane::{Spot, least_angle};

/// A mesh of more corners is refused.
const MOST_NODES: usize = 200_000;

/// What is to be meshed.
pub struct Plan<'a> {
    /// Closed ring of corners, the last joined to the first.
    pub outline: Vec<Point>,
    /// Closed rings within it, apart from it and from each other.
    pub holes: Vec<Vec<Point>>,
    /// Lines that sides of triangles follow: pipes, borders of strips, of conduits, of loads. They may cross, run along
    /// each other or the rim, end anywhere and run out over the rim. A line of one point puts a corner there.
    pub lines: Vec<Vec<Point>>,
    /// Length of the sides of triangles at a place.
    pub size: &'a dyn Fn(Point) -> Length,
    /// A line that passes a corner of another nearer than this runs through it; corners of lines nearer than 1.2 times
    /// this become one, and move onto the rim from as near. The corners of the rim stay; those nearer than that to the
    /// one before are left out.
    pub merge: Length,
}

/// Triangles of a [`Plan`].
#[derive(Clone, Debug, PartialEq)]
pub struct Mesh {
    nodes: Vec<Point>,
    triangles: Vec<[usize; 3]>,
    lines: Vec<Vec<Vec<usize>>>,
    rim: Vec<Vec<usize>>,
    grid: Grid,
}

impl Mesh {
    /// Cuts the panel of a plan into triangles whose sides follow rim and lines.
    ///
    /// ```text
    /// pieces of rim and lines   l ≤ 1.35 min(h, 3 g)
    /// sides of triangles        l ≤ 1.4 h
    /// angles                    α ≥ 22°, or 14° where all corners lie on rim or lines
    /// ```
    ///
    /// | symbol | meaning | unit |
    /// | --- | --- | --- |
    /// | `l` | length of a side | m |
    /// | `h` | size asked for at the place | m |
    /// | `g` | distance of the piece from the next rim or line that it does not meet | m |
    /// | `α` | smallest angle of a triangle | rad |
    ///
    /// A narrow band gets triangles about three times as long as wide: right-angled, they have atan(1/3) = 18.4°.
    ///
    /// # Validity
    ///
    /// The angles are aims: where the plan has a sharper angle, or a short side beside long ones with no room to
    /// grade, triangles have sharper angles too, rather than ever smaller ones be made. Angles between lines stay but
    /// for the snapping. Lengths and angles of the aims are practice; the mesh is exact whatever they are: area, rim
    /// and joined lines to rounding.
    ///
    /// # Errors
    ///
    /// A rim that meets itself, has too few corners, or holes that do not lie apart within the outline; a size that is
    /// not positive or asks for more than 200 000 corners; coordinates that are no numbers; lines too tangled to be
    /// snapped together. Each says where.
    ///
    /// # Source
    ///
    /// Delaunay refinement after Ruppert, J. Algorithms 18 (1995) 548 (quoted); the snapping, the division of bands and
    /// the rule that ends it are derived here.
    ///
    /// # Examples
    ///
    /// A square of 1 m with a pipe along one diagonal, and triangles as large as they come:
    ///
    /// ```
    /// use skinspan::{geometry::Point, mesh::{Mesh, Plan}, units::Length};
    /// use uom::si::{angle::degree, length::{meter, millimeter}};
    /// let m = Length::new::<meter>;
    /// let point = |x: f64, y: f64| Point { x: m(x), y: m(y) };
    /// let plan = Plan {
    ///     outline: vec![point(0.0, 0.0), point(1.0, 0.0), point(1.0, 1.0), point(0.0, 1.0)],
    ///     holes: vec![],
    ///     lines: vec![vec![point(0.0, 0.0), point(1.0, 1.0)]],
    ///     size: &|_| m(2.0),
    ///     merge: Length::new::<millimeter>(2.0),
    /// };
    /// let mesh = Mesh::new(&plan)?;
    /// assert_eq!(mesh.triangles().len(), 2);
    /// assert_eq!(mesh.line(0), [[0, 2]]); // corner to corner in one piece
    /// assert!((mesh.least_angle().get::<degree>() - 45.0).abs() < 1e-12);
    /// assert_ne!(mesh.holding(point(0.9, 0.1)), mesh.holding(point(0.1, 0.9)));
    /// # Ok::<(), skinspan::mesh::MeshError>(())
    /// ```
    pub fn new(plan: &Plan<'_>) -> Result<Self, MeshError> {
        let merge = plan.merge.get::<meter>();
        if !(merge > 0.0 && merge.is_finite()) {
            return Err(MeshError::Merge);
        }
        let rings = rings::rings(&plan.outline, &plan.holes, arrange::SPACING * merge)?;
        let lines = plan.lines.iter().map(|line| spots(line)).collect::<Result<Vec<_>, _>>()?;
        let arrangement = Arrangement::new(&rings, &lines, merge)?;
        let net = refine::refined(&arrangement, &Sizes(plan.size))?;
        let way = |chain: &Vec<usize>| {
            let mut way = Vec::new();
            for pair in chain.windows(2) {
                split::along(&net.cuts, [pair[0], pair[1]], &mut way);
            }
            way.extend(chain.last());
            way
        };
        let around = |ring: &Vec<usize>| {
            let mut way = Vec::new();
            for pair in ring_joins(ring) {
                split::along(&net.cuts, pair, &mut way);
            }
            way
        };
        let spots = |corners: &[usize; 3]| corners.map(|corner| net.places[corner]);
        let triangles: Vec<[usize; 3]> =
            net.on_panel(&arrangement.rim).into_iter().map(|face| net.corners(face)).collect();
        Ok(Self {
            lines: arrangement.lines.iter().map(|chains| chains.iter().map(way).collect()).collect(),
            rim: arrangement.rim.iter().map(around).collect(),
            grid: Grid::new(&triangles.iter().map(spots).collect::<Vec<_>>()),
            nodes: net.places.into_iter().map(point).collect(),
            triangles,
        })
    }

    /// The corners of the triangles.
    #[must_use]
    pub fn nodes(&self) -> &[Point] {
        &self.nodes
    }

    /// The corners of each triangle, anticlockwise, as numbers of [`nodes`](Self::nodes).
    #[must_use]
    pub fn triangles(&self) -> &[[usize; 3]] {
        &self.triangles
    }

    /// The chains of corners along a line of the plan, in its direction: one for each stretch of it on the panel.
    /// Neighbours in a chain are joined by a side of a triangle. Empty for a number that the plan does not have.
    #[must_use]
    pub fn line(&self, index: usize) -> &[Vec<usize>] {
        self.lines.get(index).map_or(&[], Vec::as_slice)
    }

    /// The rings of corners along the rim: the outline, anticlockwise, then the holes, clockwise. The last corner is
    /// joined to the first.
    #[must_use]
    pub fn rim(&self) -> &[Vec<usize>] {
        &self.rim
    }

    /// The smallest angle of a triangle.
    #[must_use]
    pub fn least_angle(&self) -> Angle {
        let angles = (0..self.triangles.len()).map(|index| least_angle(self.corners(index)).0);
        Angle::new::<radian>(angles.fold(f64::INFINITY, f64::min))
    }

    /// The triangle that holds a place: of those that meet there the one in which it lies deepest, of two as good the
    /// first. None off the panel.
    #[must_use]
    pub fn holding(&self, place: Point) -> Option<usize> {
        self.grid.holding(spot(place), |index| self.corners(index))
    }

    fn corners(&self, triangle: usize) -> [Spot; 3] {
        self.triangles[triangle].map(|corner| spot(self.nodes[corner]))
    }
}

/// The size function, checked.
struct Sizes<'a>(&'a dyn Fn(Point) -> Length);

impl Sizes<'_> {
    fn at(&self, spot: Spot) -> Result<f64, MeshError> {
        let place = point(spot);
        let size = (self.0)(place);
        if size.get::<meter>() > 0.0 { Ok(size.get::<meter>()) } else { Err(MeshError::Size { place, size }) }
    }
}

fn point(spot: Spot) -> Point {
    Point { x: Length::new::<meter>(spot[0]), y: Length::new::<meter>(spot[1]) }
}

fn spot(point: Point) -> Spot {
    [point.x.get::<meter>(), point.y.get::<meter>()]
}

fn spots(points: &[Point]) -> Result<Vec<Spot>, MeshError> {
    let spots: Vec<Spot> = points.iter().map(|point| spot(*point)).collect();
    if spots.iter().flatten().all(|x| x.is_finite()) { Ok(spots) } else { Err(MeshError::NotFinite) }
}

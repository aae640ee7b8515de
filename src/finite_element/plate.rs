//! A plate on beams, beds and held lines: built once, factored once, then solved for any number of loads.

use nalgebra::DVector;

use super::{
    assembly::Assembly,
    beam::{BeamLine, Spring},
    element::{Fields, ShellStiffness},
    factor::Factor,
    load::Load,
    shape::Degree,
    solution::Solution,
    steps::Ordered,
};
use crate::{
    geometry::Point,
    units::{BeamRigidity, Length, Pressure},
};

/// What a line of the mesh is held by.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default)]
pub struct Held {
    /// Its deflection is nothing.
    pub deflection: bool,
    /// So are its rotations in the planes of x and of y.
    pub rotations: [bool; 2],
    /// So are its displacements along x and along y.
    pub displacements: [bool; 2],
}

/// A beam below the plate. Beams that meet at a corner are joined there by a hinge: they deflect alike.
#[derive(Clone, Debug, PartialEq)]
pub struct Beam {
    /// Bending rigidity.
    pub rigidity: BeamRigidity,
    /// Corners of the mesh on its line where a post holds it.
    pub posts: Vec<usize>,
}

/// A line of the mesh that the plate lies on, through a bed of springs: what yields between the plate's mid-plane and the
/// pipe.
#[derive(Clone, Debug, PartialEq)]
pub struct Bed {
    /// Corners of the mesh along the line.
    pub corners: Vec<usize>,
    /// Force per length and deflection.
    pub stiffness: Pressure,
    /// The beam below; none where what is below does not move.
    pub beam: Option<Beam>,
}

/// Everything that makes a plate.
pub struct Model<'a> {
    /// Corners of the mesh.
    pub corners: &'a [Point],
    /// Triangles, each by its corners, anticlockwise.
    pub triangles: &'a [[usize; 3]],
    /// Degree of the fields.
    pub degree: Degree,
    /// Which fields there are.
    pub fields: Fields,
    /// Stiffness of a triangle.
    pub shells: &'a dyn Fn(usize) -> ShellStiffness,
    /// Lines that are held, each by the corners along it.
    pub held: &'a [(Vec<usize>, Held)],
    /// Lines that it lies on.
    pub beds: &'a [Bed],
}

/// Why a plate cannot be solved.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Mechanism {
    /// It can move as a whole, without resistance: a unit of deflection at the place, and slopes along x and y.
    WholeMoves {
        /// Where it moves least: a line through here along the other direction is the hinge.
        about: Point,
        /// Direction in which it tips, from 0 (about a line across) to a right angle.
        tips: [f64; 2],
    },
    /// Some part moves without resistance.
    PartMoves,
    /// Two corners that follow one another on a line do not share a side of a triangle.
    BrokenLine,
}

impl std::fmt::Display for Mechanism {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match self {
            Self::WholeMoves { .. } => f.write_str(
                "the top is not held: it can tip or drop as a whole without resistance, since all that it stands on lies \
                 on one line; give it a second pipe, or posts that stand apart",
            ),
            Self::PartMoves => f.write_str(
                "the top or a pipe is not held: some part of it can move without resistance; see that every pipe has two \
                 posts or more",
            ),
            Self::BrokenLine => f.write_str("a line of the mesh is broken"),
        }
    }
}

impl std::error::Error for Mechanism {}

/// A plate that can be solved.
#[derive(Clone, Debug)]
pub struct Plate {
    pub(super) assembly: Assembly,
    pub(super) ordered: Ordered,
    pub(super) factor: Factor,
    pub(super) shells: Vec<ShellStiffness>,
    pub(super) beams: Vec<BeamLine>,
    pub(super) springs: Vec<Spring>,
}

impl Plate {
    /// Builds and factors a plate.
    ///
    /// ```text
    /// K x = f,   K = Σ triangles ∫ strainᵀ [A B 0; B D 0; 0 0 S] strain + Σ beds w k (w − w_b)² + Σ beams ∫ EI w_b''²
    /// ```
    ///
    /// | symbol | meaning |
    /// |---|---|
    /// | `A`, `B`, `D`, `S` | stiffness of the shell, [`ShellStiffness`] |
    /// | `k`, `w` | stiffness of a bed per length; weight of a node in the Gauss-Lobatto rule along the side |
    /// | `w_b`, `EI` | deflection and bending rigidity of a beam |
    ///
    /// # Validity
    /// Linear: small deflections, first-order shear. A bed pulls as well as it pushes. Beams bend upwards and downwards
    /// only; a bend of 20° and more in their line is a hinge, at a slighter one bending goes on undiminished. Where beams meet,
    /// force passes and no moment.
    ///
    /// # Errors
    /// [`Mechanism`] where something can move without resistance.
    ///
    /// # Source
    /// Displacement method with Lagrange triangles of degree 2 to 4 for every field and exact integration:
    /// [`DERIVED`](crate::source::DERIVED).
    pub fn new(model: &Model<'_>) -> Result<Self, Mechanism> {
        Ordered::new(model)?.assembled(model)?.factored()
    }

    /// The same plate of other stiffness, its beds and beams too: `model` differs from that of this plate in nothing else.
    ///
    /// # Errors
    /// [`Mechanism`] as for [`Plate::new`].
    pub fn of_other_stiffness(&self, model: &Model<'_>) -> Result<Self, Mechanism> {
        self.ordered.assembled(model)?.factored()
    }

    /// Which fields it has.
    #[must_use]
    pub fn fields(&self) -> Fields {
        self.assembly.fields()
    }

    /// Unknowns that are solved for.
    #[must_use]
    pub fn unknowns(&self) -> usize {
        self.assembly.size()
    }

    /// Solutions under loads.
    #[must_use]
    pub fn solve<L: std::borrow::Borrow<Load>>(&self, loads: &[L]) -> Vec<Solution> {
        let size = self.assembly.size();
        let mut sides = Vec::with_capacity(size * loads.len());
        for load in loads {
            sides.extend_from_slice(&load.borrow().values);
        }
        self.factor.solve(&mut sides, size);
        let solved = sides.chunks_exact(size).zip(loads.iter().map(std::borrow::Borrow::borrow));
        solved.map(|(values, load)| Solution::new(values.to_vec(), load.inner.clone(), load.held.clone())).collect()
    }

    /// Corners of a triangle.
    #[must_use]
    pub fn corners(&self, triangle: usize) -> [Point; 3] {
        self.assembly.numbering().triangles[triangle].corners.map(point)
    }

    /// How many triangles there are.
    #[must_use]
    pub fn triangles(&self) -> usize {
        self.shells.len()
    }

    /// Room for the numbers of a triangle.
    pub(super) fn no_numbers(&self) -> DVector<f64> {
        DVector::zeros(self.assembly.numbering().degree.in_triangle() * self.assembly.fields().count())
    }

    pub(super) fn numbers(&self, triangle: usize, solution: &Solution, into: &mut DVector<f64>) {
        self.assembly.of_triangle(triangle, &solution.values, &solution.inner, into);
    }
}

pub(super) fn point([x, y]: [f64; 2]) -> Point {
    let m = Length::new::<uom::si::length::meter>;
    Point { x: m(x), y: m(y) }
}

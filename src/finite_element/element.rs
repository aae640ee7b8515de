//! Stiffness of one triangle of a shallow, shear-deformable shell.

use nalgebra::{DMatrix, Matrix2, Matrix3};

use super::shape::{Degree, OPERATORS};
use crate::{
    laminate::Stiffness,
    units::{Curvature, FlexuralRigidity, ForcePerWidth, Length, Ratio, ShearStiffness},
};

/// Share of the thickness that the neutral plane may move without being looked at: its square is what is left out of the
/// rigidity.
const COUPLING: f64 = 1e-3;

/// Which fields a plate has.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Fields {
    /// Deflection and two rotations: where nothing couples bending with stretching.
    Bending,
    /// These and two displacements in the plane.
    BendingAndStretching,
}

impl Fields {
    /// Numbers at a node.
    pub(super) const fn count(self) -> usize {
        match self {
            Self::Bending => 3,
            Self::BendingAndStretching => 5,
        }
    }

    /// The fields that a plate of these shells needs. Bending and stretching fall apart only where the shells are flat and
    /// `B A⁻¹` is one distance times the unit matrix, the same all over the plate.
    #[must_use]
    pub fn of(shells: &[ShellStiffness], thickness: Length) -> Self {
        let Some(first) = shells.first() else { return Self::Bending };
        let one = Matrix3::identity() * first.neutral()[(0, 0)];
        let alike = |shell: &ShellStiffness| {
            shell.crown.iter().all(|crown| *crown == 0.0)
                && (shell.neutral() - one).amax() <= COUPLING * thickness.value
        };
        if shells.iter().all(alike) { Self::Bending } else { Self::BendingAndStretching }
    }

    /// Place of the deflection among the numbers of a node; the rotations about it follow.
    pub(super) const fn deflection(self) -> usize {
        match self {
            Self::Bending => 0,
            Self::BendingAndStretching => 2,
        }
    }
}

/// Stiffness of a shell at a place.
///
/// ```text
/// N = A e + B k,   M = B e + D k,   Q = S g
/// ex = u,x − cx w,   ey = v,y − cy w,   exy = u,y + v,x
/// kx = a,x,   ky = b,y,   kxy = a,y + b,x,   gx = w,x + a,   gy = w,y + b
/// ```
///
/// | symbol | meaning |
/// |---|---|
/// | `N`, `M`, `Q` | forces, moments, transverse shears per width |
/// | `A`, `B`, `D` | stiffness matrices about the mid-plane |
/// | `S` | shear stiffness |
/// | `u`, `v`, `w` | displacements, `w` inwards; `a`, `b` rotations: `u(z) = u + z a` |
/// | `cx`, `cy` | second slopes of the mid-plane's own `z`: above zero for a top whose middle rises |
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ShellStiffness {
    pub(super) a: Matrix3<f64>,
    pub(super) b: Matrix3<f64>,
    pub(super) d: Matrix3<f64>,
    pub(super) s: Matrix2<f64>,
    pub(super) crown: [f64; 2],
}

impl ShellStiffness {
    /// A shell from the stiffness of its section, its shear stiffness both ways, and its crown.
    ///
    /// # Source
    /// Linear shallow-shell theory of Marguerre with first-order shear; [`DERIVED`](crate::source::DERIVED) in these
    /// variables (`u` is the displacement along the shell plus the slope of the shell times `w`).
    #[must_use]
    pub fn new(section: &Stiffness, shear: [ShearStiffness; 2], crown: [Curvature; 2]) -> Self {
        let [a, b, d] = section.matrices();
        Self { a, b, d, s: Matrix2::new(shear[0].value, 0.0, 0.0, shear[1].value), crown: crown.map(|c| c.value) }
    }

    /// A flat plate of which only the bending is known; stretched, it has no stiffness until
    /// [`with_membrane`](Self::with_membrane) gives it one.
    #[must_use]
    pub fn of_plate(bending: [[FlexuralRigidity; 3]; 3], shear: [ShearStiffness; 2]) -> Self {
        let d = Matrix3::from_fn(|i, j| bending[i][j].value);
        let s = Matrix2::new(shear[0].value, 0.0, 0.0, shear[1].value);
        Self { a: Matrix3::zeros(), b: Matrix3::zeros(), d, s, crown: [0.0; 2] }
    }

    /// The same with a membrane about whose middle nothing couples.
    #[must_use]
    pub fn with_membrane(self, membrane: [[ForcePerWidth; 3]; 3]) -> Self {
        Self { a: Matrix3::from_fn(|i, j| membrane[i][j].value), ..self }
    }

    /// The same with a crown.
    #[must_use]
    pub fn with_crown(self, crown: [Curvature; 2]) -> Self {
        Self { crown: crown.map(|c| c.value), ..self }
    }

    /// The same with a share of its shear stiffness.
    #[must_use]
    pub fn with_shear_left(self, left: Ratio) -> Self {
        Self { s: self.s * left.value, ..self }
    }

    /// The same with the membrane free of force: for plates whose fields are those of bending alone.
    #[must_use]
    pub fn membrane_free(self) -> Self {
        // A is that of a real section, so it can be inverted.
        let reduced = self.a.try_inverse().map_or(self.d, |inverse| self.d - self.b * inverse * self.b);
        Self { b: Matrix3::zeros(), d: reduced, crown: [0.0; 2], ..self }
    }

    /// Distance of the neutral planes from the mid-plane, as a matrix.
    fn neutral(&self) -> Matrix3<f64> {
        self.a.try_inverse().map_or_else(Matrix3::zeros, |inverse| self.b * inverse)
    }

    /// Forces, moments and shears that go with eight strains.
    pub(super) fn resultants(&self, strains: &[f64; 8]) -> [f64; 8] {
        let (e, k) = (
            nalgebra::Vector3::new(strains[0], strains[1], strains[2]),
            nalgebra::Vector3::new(strains[3], strains[4], strains[5]),
        );
        let (n, m) = (self.a * e + self.b * k, self.b * e + self.d * k);
        let q = self.s * nalgebra::Vector2::new(strains[6], strains[7]);
        [n.x, n.y, n.z, m.x, m.y, m.z, q.x, q.y]
    }

    pub(super) fn matrix(&self) -> [[f64; 8]; 8] {
        let mut all = [[0.0; 8]; 8];
        for i in 0..3 {
            for j in 0..3 {
                all[i][j] = self.a[(i, j)];
                all[i][3 + j] = self.b[(i, j)];
                all[3 + i][j] = self.b[(j, i)];
                all[3 + i][3 + j] = self.d[(i, j)];
            }
        }
        for i in 0..2 {
            for j in 0..2 {
                all[6 + i][6 + j] = self.s[(i, j)];
            }
        }
        all
    }
}

/// How the eight strains come from the fields: (strain, field, operator of value / x / y, factor). The fields are
/// u, v, w, a, b.
pub(super) fn strain_terms(crown: [f64; 2]) -> [(usize, usize, usize, f64); 14] {
    [
        (0, 0, 1, 1.0),
        (0, 2, 0, -crown[0]),
        (1, 1, 2, 1.0),
        (1, 2, 0, -crown[1]),
        (2, 0, 2, 1.0),
        (2, 1, 1, 1.0),
        (3, 3, 1, 1.0),
        (4, 4, 2, 1.0),
        (5, 3, 2, 1.0),
        (5, 4, 1, 1.0),
        (6, 2, 1, 1.0),
        (6, 3, 0, 1.0),
        (7, 2, 2, 1.0),
        (7, 4, 0, 1.0),
    ]
}

/// A straight-sided triangle.
#[derive(Clone, Copy, Debug)]
pub(super) struct Triangle {
    pub(super) corners: [[f64; 2]; 3],
}

impl Triangle {
    /// Twice the area.
    pub(super) fn jacobian(&self) -> f64 {
        let [[ax, ay], [bx, by], [cx, cy]] = self.corners;
        (bx - ax) * (cy - ay) - (cx - ax) * (by - ay)
    }

    /// Slopes of ξ and η along x, then along y.
    pub(super) fn slopes(&self) -> [[f64; 2]; 2] {
        let [[ax, ay], [bx, by], [cx, cy]] = self.corners;
        let j = self.jacobian();
        [[(cy - ay) / j, (ay - by) / j], [(ax - cx) / j, (bx - ax) / j]]
    }

    pub(super) fn place(&self, [xi, eta]: [f64; 2]) -> [f64; 2] {
        let [a, b, c] = self.corners;
        [0, 1].map(|i| a[i] + xi * (b[i] - a[i]) + eta * (c[i] - a[i]))
    }

    pub(super) fn reference(&self, [x, y]: [f64; 2]) -> [f64; 2] {
        let [dx, dy] = self.slopes();
        let (x, y) = (x - self.corners[0][0], y - self.corners[0][1]);
        [dx[0] * x + dy[0] * y, dx[1] * x + dy[1] * y]
    }

    /// `∫ a(φi) b(φj)` over the triangle, for value, slope along x, slope along y.
    pub(super) fn products(&self, degree: Degree) -> [[DMatrix<f64>; OPERATORS]; OPERATORS] {
        let (shape, j, [dx, dy]) = (degree.shape(), self.jacobian(), self.slopes());
        let parts: [&[(usize, f64)]; OPERATORS] = [&[(0, 1.0)], &[(1, dx[0]), (2, dx[1])], &[(1, dy[0]), (2, dy[1])]];
        parts.map(|m| {
            parts.map(|n| {
                let mut sum = DMatrix::zeros(degree.in_triangle(), degree.in_triangle());
                for &(p, f) in m {
                    for &(q, g) in n {
                        sum.zip_apply(&shape.products[p][q], |s, value| *s += j * f * g * value);
                    }
                }
                sum
            })
        })
    }

    /// `∫ a(φi)` over the triangle, for value, slope along x, slope along y.
    pub(super) fn integrals(&self, degree: Degree) -> [Vec<f64>; OPERATORS] {
        let ([value, xi, eta], j, [dx, dy]) = (&degree.shape().integrals, self.jacobian(), self.slopes());
        let along = |d: [f64; 2]| xi.iter().zip(eta).map(|(xi, eta)| j * (d[0] * xi + d[1] * eta)).collect();
        [value.iter().map(|value| j * value).collect(), along(dx), along(dy)]
    }

    /// Stiffness matrix, the numbers of a node side by side; every value of `all` is written.
    pub(super) fn stiffness(&self, degree: Degree, fields: Fields, shell: &ShellStiffness, all: &mut DMatrix<f64>) {
        let (nodes, count) = (degree.in_triangle(), fields.count());
        let (first, material, shape) = (5 - count, shell.matrix(), degree.shape());
        let (j, [dx, dy]) = (self.jacobian(), self.slopes());
        // What value, slope along x and slope along y are in value and slopes along the reference coordinates.
        let slopes = [[1.0, 0.0, 0.0], [0.0, dx[0], dx[1]], [0.0, dy[0], dy[1]]];
        // Sum the material over the strains first: each pair of fields and reference operators is then added once.
        let mut factors = [[[[0.0; OPERATORS]; OPERATORS]; 5]; 5];
        let terms = strain_terms(shell.crown);
        for &(m, f, o, x) in &terms {
            for &(n, g, p, y) in terms.iter().filter(|(_, g, ..)| *g >= f) {
                let factor = j * x * y * material[m][n];
                if factor != 0.0 {
                    for (row, slope) in factors[f][g].iter_mut().zip(slopes[o]) {
                        row.iter_mut().zip(slopes[p]).for_each(|(own, other)| *own += factor * slope * other);
                    }
                }
            }
        }
        let mut block = vec![0.0; nodes * nodes];
        for (f, factors) in factors.iter().enumerate().skip(first) {
            for (g, factors) in factors.iter().enumerate().skip(f) {
                block.fill(0.0);
                for (row, products) in factors.iter().zip(&shape.products) {
                    for (&factor, product) in row.iter().zip(products).filter(|(factor, _)| **factor != 0.0) {
                        block.iter_mut().zip(product.as_slice()).for_each(|(sum, value)| *sum += factor * value);
                    }
                }
                for (column, values) in block.chunks_exact(nodes).enumerate() {
                    for (row, value) in values.iter().enumerate() {
                        let (row, column) = (row * count + f - first, column * count + g - first);
                        all[(row, column)] = *value;
                        all[(column, row)] = *value;
                    }
                }
            }
        }
    }
}

//! First mode of a plate against a quadratic form of its deflection: what swinging and buckling have in common.

use nalgebra::{DMatrix, DVector, SymmetricEigen};
use uom::si::pressure::pascal;

use super::{load::Load, plate::Plate, solution::Solution};
use crate::units::Pressure;

/// Modes that are followed at once: as many may lie close together without slowing one another down.
const FOLLOWED: usize = 4;

/// Residual, over the value itself, at which a mode is found unless it is asked for less closely. The value is then right to
/// its square.
pub(super) const RESIDUAL: f64 = 1e-5;

/// Steps after which the bound on the error is given as it stands.
const MOST_STEPS: usize = 100;

/// Share of the longest square of directions below which another, at right angles to it, is not told from rounding.
const DEPENDENT: f64 = 1e-6;

/// Length, over that of which it is a difference, below which a direction is mostly rounding. Below [`RESIDUAL`].
const ROUNDING: f64 = 1e-7;

/// A value so much smaller than others, without their sign, is none.
const NOTHING: f64 = 1e-12;

/// Steps for the eigenvalues of a matrix of eight rows, far more than it needs.
const MOST_SWEEPS: usize = 1000;

/// Why a plate has no mode.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NoMode {
    /// A mass or a force is not finite.
    NotFinite,
    /// No mass moves.
    NoMass,
    /// Nothing is compressed.
    OnlyPulled,
}

impl std::fmt::Display for NoMode {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str(match self {
            Self::NotFinite => "a mass or a force is not a finite number",
            Self::NoMass => "nothing that can move has a mass",
            Self::OnlyPulled => "nothing is compressed, so nothing buckles",
        })
    }
}

impl std::error::Error for NoMode {}

/// A quadratic form `wᵀ B w` of the deflection, by triangle: a matrix on the deflections of its nodes.
pub(super) struct Form(pub(super) Vec<DMatrix<f64>>);

impl Form {
    pub(super) fn is_finite(&self) -> bool {
        self.0.iter().all(|matrix| matrix.iter().all(|value| value.is_finite()))
    }

    /// `B x` as a load.
    fn times(&self, plate: &Plate, solution: &Solution) -> Load {
        let assembly = &plate.assembly;
        let (count, first) = (assembly.fields().count(), assembly.fields().deflection());
        let nodes = assembly.numbering().degree.in_triangle();
        let mut load = Load::none(plate);
        let (mut deflections, mut forces) = (DVector::zeros(nodes), plate.no_numbers());
        for (triangle, matrix) in self.0.iter().enumerate() {
            assembly.deflections(triangle, solution, &mut deflections);
            for (node, force) in (matrix * &deflections).iter().enumerate() {
                forces[node * count + first] = *force;
            }
            assembly.load(triangle, &forces, &mut load.values, &mut load.inner);
        }
        load
    }
}

/// A movement of the plate, with the forces that hold it there.
struct Direction {
    x: Solution,
    /// How far the loads of `x` inside triangles move these while their sides are held.
    inside: Vec<f64>,
    /// `K x`.
    kx: Load,
    /// `B x`.
    bx: Load,
}

impl Direction {
    fn sum(plate: &Plate, parts: &[(&Self, f64)]) -> Option<Self> {
        let x = Solution::sum(&parts.iter().map(|(part, factor)| (&part.x, *factor)).collect::<Vec<_>>())?;
        let loads = |of: fn(&Self) -> &Load| {
            parts.iter().fold(Load::none(plate), |sum, (part, factor)| sum.plus(of(part), *factor))
        };
        let mut inside = vec![0.0; x.inner.len()];
        for (part, factor) in parts {
            inside.iter_mut().zip(&part.inside).for_each(|(sum, own)| *sum += factor * own);
        }
        Some(Self { x, inside, kx: loads(|part| &part.kx), bx: loads(|part| &part.bx) })
    }

    /// Root of `xᵀ K x`.
    fn size(&self) -> f64 {
        self.work(&self.kx).max(0.0).sqrt()
    }

    /// Work of a load on the direction.
    fn work(&self, load: &Load) -> f64 {
        let sides: f64 = load.values.iter().zip(&self.x.values).map(|(a, b)| a * b).sum();
        sides + load.inner.iter().zip(&self.inside).map(|(a, b)| a * b).sum::<f64>()
    }

    /// The same of size one; none where what is left of a difference is rounding.
    fn of_unit(&self, plate: &Plate, size: f64, of: f64) -> Option<Self> {
        if size > ROUNDING * of { Self::sum(plate, &[(self, 1.0 / size)]) } else { None }
    }
}

/// The first mode.
pub(super) struct First {
    /// Largest `θ` of `B x = θ K x`, from below.
    pub(super) value: f64,
    /// There is a `θ` of the plate's matrices no farther above the value than this.
    pub(super) residual: f64,
    /// Scaled so that the largest deflection of a node on the sides of triangles is one.
    pub(super) shape: Solution,
}

/// The largest `θ` of `B x = θ K x`; none where nothing can move.
///
/// Inverse iteration of a few directions at once, by Rayleigh and Ritz: the best sums of those so far and of `K⁻¹ B`
/// times each of them. What is best is taken by sign and not by size, so a form of both signs needs nothing more. `settled` is the
/// residual at which it ends.
pub(super) fn first(plate: &Plate, form: &Form, settled: f64) -> Option<First> {
    let begun = made(plate, form, (0..FOLLOWED).map(|number| scattered(plate, number)).collect());
    let (mut values, loads) = best(plate, &begun)?;
    let sizes: Vec<f64> =
        begun.iter().map(|direction| direction.work(&direction.bx).abs() / direction.work(&direction.kx)).collect();
    let scale = sizes.into_iter().fold(0.0, f64::max);
    let mut followed = made(plate, form, loads);
    let mut residual = f64::INFINITY;
    let mut moved = Vec::new();
    for _ in 0..MOST_STEPS {
        let next = made(plate, form, followed.iter().map(|direction| direction.bx.clone()).collect());
        let mut rest = Vec::with_capacity(FOLLOWED);
        for (number, (next, direction)) in next.iter().zip(&followed).enumerate() {
            // K⁻¹ B x − θ x stands at right angles to all that are followed.
            let along = Direction::sum(plate, &[(next, 1.0), (direction, -values[number])])?;
            let size = along.size();
            if number == 0 {
                residual = size;
            }
            rest.extend(along.of_unit(plate, size, values[number].abs()));
        }
        if residual <= settled * values[0] {
            break;
        }
        let known = followed.len();
        let basis: Vec<Direction> = followed.into_iter().chain(rest).chain(moved).collect();
        let loads;
        (values, loads) = best(plate, &basis)?;
        // Solved anew, or what rounding leaves between x and K x would grow from step to step.
        followed = made(plate, form, loads);
        moved = onward(plate, &basis[..known], &followed)?;
    }
    if values[0] <= NOTHING * scale {
        return None;
    }
    let shape = followed.swap_remove(0).x;
    let shape = Solution::sum(&[(&shape, 1.0 / largest(plate, &shape)?)])?;
    Some(First { value: values[0], residual, shape })
}

fn made(plate: &Plate, form: &Form, loads: Vec<Load>) -> Vec<Direction> {
    let solved = plate.solve(&loads);
    let made = solved.into_iter().zip(loads).map(|(x, kx)| Direction {
        bx: form.times(plate, &x),
        inside: plate.assembly.inner_moves(&x.inner),
        x,
        kx,
    });
    made.collect()
}

/// Which way the followed have moved, square to what they were: with it each step knows of all before, as conjugate
/// gradients do.
fn onward(plate: &Plate, before: &[Direction], now: &[Direction]) -> Option<Vec<Direction>> {
    let mut moved = Vec::with_capacity(now.len());
    for direction in now {
        let mut parts = vec![(direction, 1.0)];
        parts.extend(before.iter().map(|before| (before, -direction.work(&before.kx))));
        let by = Direction::sum(plate, &parts)?;
        moved.extend(by.of_unit(plate, by.size(), 1.0));
    }
    Some(moved)
}

/// The best sums of directions, best first, each with `xᵀ K x` of one: their quotients and their `K x`.
fn best(plate: &Plate, basis: &[Direction]) -> Option<(Vec<f64>, Vec<Load>)> {
    let size = basis.len();
    let products = |of: fn(&Direction) -> &Load| {
        let mut all = DMatrix::zeros(size, size);
        for i in 0..size {
            for j in i..size {
                all[(i, j)] = basis[i].work(of(&basis[j]));
                all[(j, i)] = all[(i, j)];
            }
        }
        all
    };
    let (k, b) = (products(|direction| &direction.kx), products(|direction| &direction.bx));
    let scale = k.diagonal().map(|own| if own > 0.0 { own.sqrt().recip() } else { 0.0 });
    let scaled = DMatrix::from_fn(size, size, |i, j| scale[i] * k[(i, j)] * scale[j]);
    let lengths = decomposed(scaled)?;
    let longest = lengths.eigenvalues.max();
    let apart: Vec<usize> = (0..size).filter(|&i| lengths.eigenvalues[i] > DEPENDENT * longest).collect();
    if apart.is_empty() {
        return None;
    }
    let square = DMatrix::from_fn(size, apart.len(), |i, j| {
        scale[i] * lengths.eigenvectors[(i, apart[j])] / lengths.eigenvalues[apart[j]].sqrt()
    });
    let quotients = decomposed(square.tr_mul(&b) * &square)?;
    let mut order: Vec<usize> = (0..apart.len()).collect();
    order.sort_by(|&i, &j| quotients.eigenvalues[j].total_cmp(&quotients.eigenvalues[i]));
    order.truncate(FOLLOWED);
    let all = square * &quotients.eigenvectors;
    let sums = order.iter().map(|&i| {
        basis
            .iter()
            .zip(all.column(i).iter())
            .fold(Load::none(plate), |sum, (part, factor)| sum.plus(&part.kx, *factor))
    });
    Some((order.iter().map(|&i| quotients.eigenvalues[i]).collect(), sums.collect()))
}

fn decomposed(matrix: DMatrix<f64>) -> Option<SymmetricEigen<f64, nalgebra::Dyn>> {
    if matrix.iter().all(|value| value.is_finite()) {
        SymmetricEigen::try_new(matrix, f64::EPSILON, MOST_SWEEPS)
    } else {
        None
    }
}

/// Pressures that differ from triangle to triangle without order, so that no symmetry of the plate keeps them from a mode.
fn scattered(plate: &Plate, number: usize) -> Load {
    /// 2⁶⁴ over the golden section: its multiples, cut off at 2⁶⁴, lie all over.
    const GOLDEN: u64 = 0x9e37_79b9_7f4a_7c15;
    let pressure = |triangle: usize| {
        let mixed = ((triangle + 1) as u64).wrapping_mul(2 * number as u64 + 1).wrapping_mul(GOLDEN);
        Pressure::new::<pascal>(f64::from((mixed >> 48) as u16) / f64::from(u16::MAX))
    };
    Load::none(plate).pressed(plate, &pressure)
}

/// Largest deflection of a node, with its sign.
fn largest(plate: &Plate, solution: &Solution) -> Option<f64> {
    let assembly = &plate.assembly;
    let (count, first) = (assembly.fields().count(), assembly.fields().deflection());
    let deflections = (0..assembly.numbering().shared).map(|node| solution.values[node * count + first]);
    deflections.max_by(|a, b| a.abs().total_cmp(&b.abs())).filter(|largest| *largest != 0.0)
}

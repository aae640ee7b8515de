//! Membrane forces at which a plate buckles.

use nalgebra::DMatrix;

use super::{
    modes::{First, Form, NoMode, RESIDUAL, first},
    plate::Plate,
    solution::Solution,
};
use crate::{
    laminate::Forces,
    units::{ForcePerWidth, Ratio},
};

/// Corners, middles of the sides and the middle of a triangle, with weights that give the mean of a cubic exactly.
const MEAN: [([f64; 2], f64); 7] = [
    ([0.0, 0.0], 0.05),
    ([1.0, 0.0], 0.05),
    ([0.0, 1.0], 0.05),
    ([0.5, 0.0], 2.0 / 15.0),
    ([0.5, 0.5], 2.0 / 15.0),
    ([0.0, 0.5], 2.0 / 15.0),
    ([1.0 / 3.0, 1.0 / 3.0], 0.45),
];

/// How a plate buckles.
#[derive(Clone, Debug, PartialEq)]
pub struct Buckling {
    /// Least multiple of the forces at which it does; that of the same mesh at a higher degree is no higher.
    pub factor: Ratio,
    /// Some multiple for this mesh lies between this and the least; that none lies below rests on a start that has a part of
    /// every mode.
    pub at_least: Ratio,
    /// How it moves; the largest deflection of a node is 1 m.
    pub shape: Solution,
}

impl Plate {
    /// Least multiple of membrane forces at which the plate buckles, with how it moves.
    ///
    /// ```text
    /// K x = λ B x,   xᵀ B x = −∫ (Nx w,x² + 2 Nxy w,x w,y + Ny w,y²) dA
    /// λ from above: least positive of xᵀ K x / xᵀ B x
    /// from below:   λ/(1 + r),  r = |K⁻¹ B x − x/λ| / |x/λ|,  |x|² = xᵀ K x
    /// ```
    ///
    /// | symbol | meaning | unit |
    /// |---|---|---|
    /// | `λ` | multiple of the forces | |
    /// | `K` | stiffness of plate, beds and beams, see [`Plate::new`] | |
    /// | `Nx`, `Ny`, `Nxy` | membrane forces, pulling positive, even over each triangle: `forces` | N/m |
    /// | `w` | deflection | m |
    /// | `r` | residual | |
    ///
    /// Forces that pull one way and press the other, or shear, are multiplied together; only positive multiples count:
    /// turn the signs for the other direction of shear.
    ///
    /// # Validity
    /// Small deflections up to buckling, so nothing of what a crown or an eccentric push adds on the way; forces that do not
    /// change as it bends. Where `λ N` comes to `S` the plate crimps in half waves as short as the mesh has them: `λ N` is
    /// never above `S` by more than the mesh is too stiff for them. Wrinkling of skins is not seen.
    ///
    /// # Errors
    /// [`NoMode::NotFinite`] where a force is not finite; [`NoMode::OnlyPulled`] where nothing is compressed.
    ///
    /// # Source
    /// Rayleigh and Ritz with the work of the membrane forces after Bryan (name from memory), on the whole slope of
    /// the deflection, as Engesser's column does; bound by the residual after Krylov and Weinstein (names from memory):
    /// [`DERIVED`](crate::source::DERIVED).
    ///
    /// # Examples
    /// A simply supported square of 1 m, `D` = 1000 N·m, `ν` = 0.3, `S` = 100 kN/m, pressed alike both ways by 1 kN/m.
    /// With `g` = 2π² = 19.739: `N = D g/(1 + D g/S)` = 19739/1.19739 = 16485 N/m; four triangles give
    /// 0.19 % more.
    /// ```
    /// use skinspan::{
    ///     finite_element::{Degree, Fields, Held, Model, Plate, ShellStiffness},
    ///     geometry::Point,
    ///     laminate::Forces,
    ///     units::{Force, ForcePerWidth, Length, per_width},
    /// };
    /// use uom::si::{force::newton, length::meter};
    /// let m = Length::new::<meter>;
    /// let per_m = |n| per_width(Force::new::<newton>(n) / m(1.0));
    /// let corners = [(0.0, 0.0), (1.0, 0.0), (1.0, 1.0), (0.0, 1.0), (0.5, 0.5)].map(|(x, y)| Point { x: m(x), y: m(y) });
    /// let rigidity = [[1000.0, 300.0, 0.0], [300.0, 1000.0, 0.0], [0.0, 0.0, 350.0]];
    /// let rigidity = rigidity.map(|row| row.map(|d| per_width(Force::new::<newton>(d) * m(1.0))));
    /// let shell = ShellStiffness::of_plate(rigidity, [per_m(1e5); 2]);
    /// let edge = |rotations| Held { deflection: true, rotations, ..Held::default() };
    /// let (along_x, along_y) = (edge([true, false]), edge([false, true]));
    /// let plate = Plate::new(&Model {
    ///     corners: &corners,
    ///     triangles: &[[0, 1, 4], [1, 2, 4], [2, 3, 4], [3, 0, 4]],
    ///     degree: Degree::Four,
    ///     fields: Fields::Bending,
    ///     shells: &|_| shell,
    ///     held: &[(vec![0, 1], along_x), (vec![1, 2], along_y), (vec![2, 3], along_x), (vec![3, 0], along_y)],
    ///     beds: &[],
    /// })?;
    /// let pressed = Forces { x: per_m(-1000.0), y: per_m(-1000.0), xy: ForcePerWidth::default() };
    /// let buckling = plate.first_buckling(&|_| pressed)?;
    /// assert!((buckling.factor.value / 16.485 - 1.0).abs() < 2.5e-3);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn first_buckling(&self, forces: &dyn Fn(usize) -> Forces) -> Result<Buckling, NoMode> {
        self.first_buckling_within(Ratio::from(RESIDUAL), forces)
    }

    /// The same, sought until the residual `r` is no more than that: the multiple is right to about its square.
    ///
    /// # Errors
    /// As for [`Plate::first_buckling`].
    pub fn first_buckling_within(&self, residual: Ratio, forces: &dyn Fn(usize) -> Forces) -> Result<Buckling, NoMode> {
        let all: Vec<Forces> = (0..self.triangles()).map(forces).collect();
        let form = self.work_of(&all);
        if !form.is_finite() {
            return Err(NoMode::NotFinite);
        }
        if !all.iter().any(presses) {
            return Err(NoMode::OnlyPulled);
        }
        let First { value, residual, shape } = first(self, &form, residual.value).ok_or(NoMode::OnlyPulled)?;
        if value <= 0.0 {
            return Err(NoMode::OnlyPulled);
        }
        Ok(Buckling { factor: Ratio::from(value.recip()), at_least: Ratio::from((value + residual).recip()), shape })
    }

    /// Mean of the membrane forces of a triangle, of a shell that stretches.
    ///
    /// ```text
    /// mean = 1/20 Σ corners + 2/15 Σ middles of sides + 9/20 middle
    /// ```
    ///
    /// # Validity
    /// Exact where the forces are cubic over the triangle; a crown with deflections of the fourth degree is not quite.
    ///
    /// # Source
    /// Rule of seven points, derived from the means of 1, `xy`, `x²y`: [`DERIVED`](crate::source::DERIVED).
    #[must_use]
    pub fn mean_membrane(&self, triangle: usize, solution: &Solution) -> Forces {
        let states = self.states(triangle, &MEAN.map(|(share, _)| share), solution);
        let mean = |of: fn(&Forces) -> ForcePerWidth| {
            let parts = states.iter().zip(MEAN).map(|(state, (_, weight))| of(&state.resultants.force) * weight);
            parts.fold(ForcePerWidth::default(), |sum, part| sum + part)
        };
        Forces { x: mean(|force| force.x), y: mean(|force| force.y), xy: mean(|force| force.xy) }
    }

    fn work_of(&self, forces: &[Forces]) -> Form {
        let numbering = self.assembly.numbering();
        let of_triangle = numbering.triangles.iter().zip(forces).map(|(triangle, force)| -> DMatrix<f64> {
            let [_, [_, xx, xy], [_, yx, yy]] = triangle.products(numbering.degree);
            xx * -force.x.value + (xy + yx) * -force.xy.value + yy * -force.y.value
        });
        Form(of_triangle.collect())
    }
}

/// Whether forces press in some direction.
fn presses(forces: &Forces) -> bool {
    let [x, y, xy] = [forces.x, forces.y, forces.xy].map(|force| force.value);
    0.5 * (x + y) < (0.5 * (x - y)).hypot(xy)
}

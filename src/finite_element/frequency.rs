//! First natural frequency of a plate.

use std::f64::consts::TAU;

use nalgebra::DMatrix;
use uom::si::frequency::hertz;

use super::{
    modes::{First, Form, NoMode, RESIDUAL, first},
    plate::Plate,
    solution::Solution,
};
use crate::{
    geometry::Point,
    units::{ArealMassDensity, Frequency, Mass, Ratio},
};

/// What moves when a plate swings.
pub struct Masses<'a> {
    /// Mass per area of a triangle.
    pub per_area: &'a dyn Fn(usize) -> ArealMassDensity,
    /// Masses at places, each with the triangle that holds it.
    pub points: &'a [(usize, Point, Mass)],
}

/// How a plate swings.
#[derive(Clone, Debug, PartialEq)]
pub struct Swinging {
    /// First natural frequency; that of the same mesh at a higher degree is no higher.
    pub frequency: Frequency,
    /// Some frequency of this mesh lies between this and the first; that none lies below rests on a start that has a part
    /// of every mode.
    pub at_least: Frequency,
    /// How it moves; the largest deflection of a node is 1 m.
    pub shape: Solution,
}

impl Plate {
    /// First natural frequency, with how the plate moves.
    ///
    /// ```text
    /// K x = ω² M x,   xᵀ M x = ∫ m w² dA + Σ mp w(p)²,   f = ω/2π
    /// ω² from above: least of xᵀ K x / xᵀ M x
    /// from below:    ω²/(1 + r),  r = |K⁻¹ M x − x/ω²| / |x/ω²|,  |x|² = xᵀ K x
    /// ```
    ///
    /// | symbol | meaning | unit |
    /// |---|---|---|
    /// | `f`, `ω` | frequency, circular frequency | Hz, 1/s |
    /// | `K`, `M` | stiffness of plate, beds and beams, see [`Plate::new`]; mass | |
    /// | `m` | mass per area | kg/m² |
    /// | `mp` | mass at a place | kg |
    /// | `w` | deflection | m |
    /// | `r` | residual | |
    ///
    /// # Validity
    /// Mass moves with the deflection alone: rotation (below 0.1 % for a panel with thin skins) and movement in the plane
    /// have no inertia, and neither have beams. No damping, no air that moves along. `K` and `M` are those of the same
    /// fields, so a finer mesh or a higher degree lowers `f`. Under a mass at a point shear deflection grows without bound as
    /// the mesh gets finer, though slowly: spread it over points of an area. A mass below zero is one that is missing, and
    /// must be missing from something.
    ///
    /// # Errors
    /// [`NoMode::NotFinite`] where a mass is not finite; [`NoMode::NoMass`] where nothing that can move has mass.
    ///
    /// # Source
    /// Rayleigh and Ritz with a consistent mass; bound by the residual after Krylov and Weinstein (name from memory):
    /// [`DERIVED`](crate::source::DERIVED).
    ///
    /// # Examples
    /// A simply supported square of 1 m, `D` = 1000 N·m, `ν` = 0.3, `S` = 100 kN/m, 10 kg/m². With `g` = 2π² = 19.739:
    /// `ω² = D g²/m/(1 + D g/S)` = 38964/1.19739 = 32541, `f` = 28.71 Hz; four triangles give 0.12 % more.
    /// ```
    /// use skinspan::{
    ///     finite_element::{Degree, Fields, Held, Masses, Model, Plate, ShellStiffness},
    ///     geometry::Point,
    ///     units::{ArealMassDensity, Force, Length, per_width},
    /// };
    /// use uom::si::{areal_mass_density::kilogram_per_square_meter, force::newton, length::meter};
    /// let m = Length::new::<meter>;
    /// let corners = [(0.0, 0.0), (1.0, 0.0), (1.0, 1.0), (0.0, 1.0), (0.5, 0.5)].map(|(x, y)| Point { x: m(x), y: m(y) });
    /// let rigidity = [[1000.0, 300.0, 0.0], [300.0, 1000.0, 0.0], [0.0, 0.0, 350.0]];
    /// let rigidity = rigidity.map(|row| row.map(|d| per_width(Force::new::<newton>(d) * m(1.0))));
    /// let shell = ShellStiffness::of_plate(rigidity, [per_width(Force::new::<newton>(1e5) / m(1.0)); 2]);
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
    /// let mass = ArealMassDensity::new::<kilogram_per_square_meter>(10.0);
    /// let swinging = plate.first_frequency(&Masses { per_area: &|_| mass, points: &[] })?;
    /// assert!((swinging.frequency.value / 28.710 - 1.0).abs() < 1.5e-3);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn first_frequency(&self, masses: &Masses<'_>) -> Result<Swinging, NoMode> {
        self.first_frequency_within(Ratio::from(RESIDUAL), masses)
    }

    /// The same, sought until the residual `r` is no more than that: the frequency is right to about its square.
    ///
    /// # Errors
    /// As for [`Plate::first_frequency`].
    pub fn first_frequency_within(&self, residual: Ratio, masses: &Masses<'_>) -> Result<Swinging, NoMode> {
        let form = self.mass(masses);
        if !form.is_finite() {
            return Err(NoMode::NotFinite);
        }
        let First { value, residual, shape } = first(self, &form, residual.value).ok_or(NoMode::NoMass)?;
        // Also where a mass is missing nearly everywhere.
        if value <= 0.0 {
            return Err(NoMode::NoMass);
        }
        let frequency = |value: f64| Frequency::new::<hertz>(value.sqrt().recip() / TAU);
        Ok(Swinging { frequency: frequency(value), at_least: frequency(value + residual), shape })
    }

    fn mass(&self, masses: &Masses<'_>) -> Form {
        let numbering = self.assembly.numbering();
        let degree = numbering.degree;
        let mut all: Vec<DMatrix<f64>> = numbering
            .triangles
            .iter()
            .enumerate()
            .map(|(number, triangle)| {
                &degree.shape().products[0][0] * (triangle.jacobian() * (masses.per_area)(number).value)
            })
            .collect();
        let mut rows = [Vec::new(), Vec::new(), Vec::new()];
        for &(triangle, place, mass) in masses.points {
            degree.shape().at(self.share(triangle, place), &mut rows);
            let at = nalgebra::DVector::from_column_slice(&rows[0]);
            all[triangle].ger(mass.value, &at, &at, 1.0);
        }
        Form(all)
    }
}

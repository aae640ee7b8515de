//! Double sine series of a simply supported, shear-flexible plate: what turns plate cases into section cases.

#![allow(clippy::unwrap_used)] // a test may panic

use nalgebra::{Matrix3, Vector3};
use skinspan::laminate::{
    Component::{X, Xy, Y},
    Deformation,
};
use skinspan::section::{Axis, Section};

/// A rectangle `a` by `b`, m, simply supported all round, its section symmetric and without twist coupling.
pub struct Plate<'a> {
    pub section: &'a Section,
    pub a: f64,
    pub b: f64,
}

impl Plate<'_> {
    /// Deflection and deformation at `(x, y)` under the pressure `q sin(m pi x/a) sin(n pi y/b)`.
    pub fn term(&self, q: f64, (m, n): (u32, u32), (x, y): (f64, f64)) -> (f64, Deformation) {
        let pi = std::f64::consts::PI;
        let (al, be) = (f64::from(m) * pi / self.a, f64::from(n) * pi / self.b);
        let stiffness = self.section.stiffness();
        let d = |i, j| stiffness.bending_free(i, j).value;
        let (sx, sy) = (self.section.shear_stiffness(Axis::X).value, self.section.shear_stiffness(Axis::Y).value);
        let mixed = (d(X, Y) + d(Xy, Xy)) * al * be;
        let matrix = Matrix3::new(
            sx * al * al + sy * be * be,
            sx * al,
            sy * be,
            sx * al,
            d(X, X) * al * al + d(Xy, Xy) * be * be + sx,
            mixed,
            sy * be,
            mixed,
            d(Xy, Xy) * al * al + d(Y, Y) * be * be + sy,
        );
        let amplitude = matrix.try_inverse().unwrap() * Vector3::new(q, 0.0, 0.0);
        let ((sin_x, cos_x), (sin_y, cos_y)) = ((al * x).sin_cos(), (be * y).sin_cos());
        let mut deformation = Deformation::default();
        deformation.curvature.x.value = -al * amplitude.y * sin_x * sin_y;
        deformation.curvature.y.value = -be * amplitude.z * sin_x * sin_y;
        deformation.curvature.xy.value = (be * amplitude.y + al * amplitude.z) * cos_x * cos_y;
        (amplitude.x * sin_x * sin_y, deformation)
    }

    /// Deflection and deformation at `(x, y)` under an even pressure, from the odd terms up to `last`.
    pub fn uniform(&self, q: f64, last: u32, at: (f64, f64)) -> (f64, Deformation) {
        let odd = || (1..=last).step_by(2);
        odd()
            .flat_map(|m| odd().map(move |n| (m, n)))
            .map(|(m, n)| {
                let share = 16.0 / (std::f64::consts::PI.powi(2) * f64::from(m) * f64::from(n));
                self.term(q * share, (m, n), at)
            })
            .fold((0.0, Deformation::default()), |sum, term| (sum.0 + term.0, sum.1 + term.1))
    }
}

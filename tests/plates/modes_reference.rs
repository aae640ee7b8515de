//! First frequencies and buckling loads of `tests/reference/plates/a8_*` and `a9_*`.

use std::{fs, path::PathBuf};

use skinspan::{
    finite_element::{Degree, Held, Masses},
    laminate::Forces,
};
use toml::{Table, Value};

use crate::{
    frequency::per_area,
    kit::{Grid, orthotropic, per_m},
};

/// Times the error that the reference states for itself.
const OF_STATED: f64 = 5.0;
/// Ends of lines inside the plate are sharp: the slopes there have no bound and the mesh shows.
const SHARP_ENDS: f64 = 2e-4;
/// The more so, the more of the deflection is shear.
const SHARP_ENDS_SOFT: f64 = 1e-3;
/// Along soft edges lies a boundary layer, as thin as the core is stiff.
const LAYER: f64 = 2e-4;
/// Held edges all round leave the fields smooth.
const SMOOTH: f64 = 2e-5;

struct Problem(Table);

impl Problem {
    fn of(name: &str) -> Self {
        let path: PathBuf = [env!("CARGO_MANIFEST_DIR"), "tests/reference/plates", name].iter().collect();
        Self(fs::read_to_string(path).unwrap().parse().unwrap())
    }

    fn number(&self, table: &str, key: &str) -> f64 {
        number(&self.0[table], key)
    }

    fn supports(&self) -> &[Value] {
        self.0["support"].as_array().unwrap()
    }

    /// Lines of the supports and the plate's edges, with steps between that shrink towards the lines.
    fn steps(&self, length: &str, ends: [&str; 2]) -> Vec<f64> {
        let length = self.number("plate", length);
        let mut lines = vec![0.0, length];
        lines.extend(self.supports().iter().flat_map(|line| ends.map(|end| number(line, end))));
        lines.sort_by(f64::total_cmp);
        lines.dedup_by(|a, b| same(*a, *b));
        let mut steps = vec![0.0];
        for pair in lines.windows(2) {
            // A strip at the edge, all there is, or what lies between two lines.
            let shares: &[f64] = match (same(pair[0], 0.0), same(pair[1], length)) {
                (true, true) => &[0.02, 0.1, 0.3, 0.5, 0.7, 0.9, 0.98, 1.0],
                (true, false) => &[0.5, 0.93, 1.0],
                (false, true) => &[0.07, 0.5, 1.0],
                (false, false) => &[0.007, 0.04, 0.15, 0.5, 0.85, 0.96, 0.993, 1.0],
            };
            steps.extend(shares.iter().map(|share| pair[0] + share * (pair[1] - pair[0])));
        }
        steps
    }

    fn plate(&self) -> skinspan::finite_element::Plate {
        let [d11, d12, d22, d66, sx, sy] =
            ["D11", "D12", "D22", "D66", "Sx", "Sy"].map(|key| self.number("stiffness", key));
        let shell = orthotropic([[d11, d12, 0.0], [d12, d22, 0.0], [0.0, 0.0, d66]], [sx, sy]);
        let grid = Grid::new(&self.steps("length_x", ["x0", "x1"]), &self.steps("length_y", ["y0", "y1"]));
        let held: Vec<_> = self
            .supports()
            .iter()
            .map(|line| {
                let [x0, x1, y0, y1] = ["x0", "x1", "y0", "y1"].map(|key| number(line, key));
                let corners = if same(x0, x1) { grid.along_y(x0, [y0, y1]) } else { grid.along_x(y0, [x0, x1]) };
                let holds =
                    |what: &str| line["holds"].as_array().unwrap().iter().any(|held| held.as_str() == Some(what));
                (corners, Held { deflection: holds("w"), rotations: ["tx", "ty"].map(holds), ..Held::default() })
            })
            .collect();
        grid.plate(Degree::Four, &shell, &held, &[])
    }

    fn compare(&self, name: &str, found: f64, tolerance: f64) {
        let result = &self.0["result"].as_array().unwrap()[0];
        let (value, error) = (number(result, "value"), number(result, "error"));
        assert!(
            (found - value).abs() <= (OF_STATED * error).max(tolerance * value),
            "{name}: {found} is not {value} ± {error}, off by {:e}",
            found / value - 1.0
        );
    }
}

fn same(a: f64, b: f64) -> bool {
    (a - b).abs() < 1e-9
}

fn number(table: &Value, key: &str) -> f64 {
    table[key].as_float().unwrap()
}

fn frequencies(supports: &str, cores: &[&str], tolerance: f64) {
    for core in cores {
        let name = format!("a8_{supports}{core}.toml");
        let problem = Problem::of(&name);
        let mass = per_area(problem.0["mass"].as_float().unwrap());
        let swinging = problem.plate().first_frequency(&Masses { per_area: &|_| mass, points: &[] }).unwrap();
        problem.compare(&name, swinging.frequency.value, tolerance);
    }
}

#[test]
fn frequencies_on_edges_held_against_turning() {
    frequencies("hard", &["_thin", "_sandwich", "_very_soft"], SMOOTH);
}

#[test]
fn frequencies_on_edges_free_to_turn() {
    frequencies("soft", &["_thin", "_sandwich", "_very_soft"], LAYER);
}

#[test]
fn frequencies_on_two_lines() {
    frequencies("lines", &["", "_thin", "_sandwich"], SHARP_ENDS);
    frequencies("lines", &["_very_soft"], SHARP_ENDS_SOFT);
}

#[test]
fn buckling_loads_as_the_reference_has_them() {
    for name in ["a9_both_ways.toml", "a9_one_way.toml"] {
        let problem = Problem::of(name);
        let [nx, ny] = ["nx", "ny"].map(|key| per_m(-problem.number("compression", key)));
        let forces = Forces { x: nx, y: ny, xy: per_m(0.0) };
        let buckling = problem.plate().first_buckling(&|_| forces).unwrap();
        problem.compare(name, buckling.factor.value, SMOOTH);
    }
}

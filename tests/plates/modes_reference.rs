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
const SHARP_ENDS: f64 = 3e-4;
/// On edges all along the fields are smooth; soft supports have a boundary layer as thin as the core is stiff.
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

    /// Lines of the supports and the plate's edges, with steps between that shrink towards each of them.
    fn steps(&self, length: &str, ends: [&str; 2]) -> Vec<f64> {
        let mut lines = vec![0.0, self.number("plate", length)];
        lines.extend(self.supports().iter().flat_map(|line| ends.map(|end| number(line, end))));
        lines.sort_by(f64::total_cmp);
        lines.dedup_by(|a, b| (*a - *b).abs() < 1e-9);
        let mut steps = vec![0.0];
        for pair in lines.windows(2) {
            let shares: &[f64] = if pair[1] - pair[0] < 0.5 { &[0.1, 0.4, 1.0] } else { &[0.02, 0.07, 0.2, 0.5, 0.8, 0.93, 0.98, 1.0] };
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
                let corners = if x0 == x1 { grid.along_y(x0, [y0, y1]) } else { grid.along_x(y0, [x0, x1]) };
                let holds = |what: &str| line["holds"].as_array().unwrap().iter().any(|held| held.as_str() == Some(what));
                (corners, Held { deflection: holds("w"), rotations: ["tx", "ty"].map(holds), ..Held::default() })
            })
            .collect();
        grid.plate(Degree::Four, shell, &held, &[])
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

fn number(table: &Value, key: &str) -> f64 {
    table[key].as_float().unwrap()
}

#[test]
fn frequencies_as_the_reference_has_them() {
    for supports in ["hard", "soft", "lines"] {
        for core in ["", "_thin", "_sandwich", "_very_soft"] {
            let name = format!("a8_{supports}{core}.toml");
            // On hard and soft edges there is none without a word for its core.
            if core.is_empty() && supports != "lines" {
                continue;
            }
            let problem = Problem::of(&name);
            let mass = per_area(problem.0["mass"].as_float().unwrap());
            let swinging = problem.plate().first_frequency(&Masses { per_area: &|_| mass, points: &[] }).unwrap();
            let tolerance = if supports == "lines" { SHARP_ENDS } else { SMOOTH };
            problem.compare(&name, swinging.frequency.value, tolerance);
        }
    }
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

//! A problem solved, and its quantities read off.

use skinspan::{
    finite_element::{Degree, Fields, Load, Plate, Solution},
    laminate::{Forces, Moments, Resultants},
    units::{MomentPerWidth, per_width},
};

use super::{
    data::{Area, Pressing, Problem, Quantity},
    folder, model,
};
use crate::kit::{Grid, gauss, n, numbers, pa, point};

pub struct Solved {
    pub problem: Problem,
    grid: Grid,
    plate: Plate,
    load: Load,
    solution: Solution,
    /// Name of the support that a bed is part of, and from where to where along x it goes.
    beds: Vec<(String, [f64; 2])>,
}

impl Solved {
    pub fn new(name: &str) -> Self {
        let text = std::fs::read_to_string(folder().join(format!("{name}.toml"))).unwrap();
        let problem: Problem = toml::from_str(&text).unwrap();
        let grid = model::grid_of(&problem);
        let (held, beds, names) = model::supports(&problem, &grid);
        let shell = |triangle: usize| model::shell(&problem, grid.middle(triangle));
        let fields = if problem.stiffness.A11 > 0.0 { Fields::BendingAndStretching } else { Fields::Bending };
        let plate = grid.with(Degree::Four, fields, &shell, &held, &beds);
        let pressure = |triangle: usize| {
            let at = grid.middle(triangle);
            pa(problem
                .load
                .iter()
                .map(|load| match load {
                    Pressing::Pressure { pressure } => -pressure,
                    Pressing::Patch { force, area } if area.holds(at) => {
                        -force / ((area.x1 - area.x0) * (area.y1 - area.y0))
                    }
                    Pressing::Patch { .. } | Pressing::Heat { .. } => 0.0,
                })
                .sum())
        };
        let heat = |triangle: usize| {
            let here = |area: &Option<Area>| area.is_none_or(|area| area.holds(grid.middle(triangle)));
            let of = |load: &Pressing| match load {
                Pressing::Heat { moment, area } if here(area) => -moment,
                _ => 0.0,
            };
            let moment = per_width(n(problem.load.iter().map(of).sum()));
            let moment = Moments { x: moment, y: moment, xy: MomentPerWidth::default() };
            Resultants { force: Forces::default(), moment }
        };
        let load = Load::none(&plate).pressed(&plate, &pressure).heated(&plate, &heat);
        let solution = plate.solve(std::slice::from_ref(&load)).remove(0);
        Self { problem, grid, plate, load, solution, beds: names }
    }

    fn beds_of<'a>(&'a self, support: &'a str) -> impl Iterator<Item = usize> + 'a {
        (0..self.beds.len()).filter(move |&bed| self.beds[bed].0 == support)
    }

    fn borne(&self, bed: usize) -> f64 {
        self.plate.pushes(bed, &self.solution).iter().map(|push| push.force.value).sum()
    }

    pub fn value(&self, quantity: &Quantity) -> f64 {
        match quantity {
            Quantity::Deflection { x, y } => {
                let (x, y) = (x.min(self.problem.plate.length_x), y.min(self.problem.plate.length_y));
                -numbers(&self.grid.state(&self.plate, &self.solution, point(x, y), point(x, y)))[0]
            }
            Quantity::Mean { of, area } => self.mean(of, area),
            Quantity::Reaction { support, x0, x1 } => {
                let within = |&bed: &usize| {
                    let [from, to] = self.beds[bed].1;
                    x0.is_none_or(|x0| from > x0 - 1e-9) && x1.is_none_or(|x1| to < x1 + 1e-9)
                };
                self.beds_of(support).filter(within).map(|bed| self.borne(bed)).sum()
            }
            Quantity::BedForce { support } => self.beds_of(support).map(|bed| self.borne(bed)).sum(),
            Quantity::PostForce { support, x } => {
                let bed = self.beds_of(support).next().unwrap();
                let forces = self.plate.beam_forces(bed, &self.solution);
                let at = x - self.beds[bed].1[0];
                forces.posts.iter().find(|(along, _)| (along.value - at).abs() < 1e-9).unwrap().1.value
            }
            Quantity::BeamMoment { support, x0, x1 } => {
                let bed = self.beds_of(support).next().unwrap();
                let start = self.beds[bed].1[0];
                let moments = self.plate.beam_forces(bed, &self.solution).moments;
                // Two for each piece of the beam, between which the moment runs straight.
                let pieces = moments
                    .chunks_exact(2)
                    .filter(|ends| ends[0].0.value + start > x0 - 1e-9 && ends[1].0.value + start < x1 + 1e-9);
                let area = pieces.map(|ends| 0.5 * (ends[0].1 + ends[1].1).value * (ends[1].0 - ends[0].0).value);
                area.sum::<f64>() / (x1 - x0)
            }
            Quantity::StrainEnergy => 0.5 * self.plate.work(&self.load, &self.solution).value,
        }
    }

    /// Over the part of each cell that lies in the area, in each half of it.
    fn mean(&self, of: &str, area: &Area) -> f64 {
        let kind = ["w", "Nx", "Ny", "Nxy", "Mx", "My", "Mxy", "Qx", "Qy"].iter().position(|own| *own == of).unwrap();
        let sign = if of.starts_with('N') { 1.0 } else { -1.0 };
        let cut = |list: &[f64], from: f64, to: f64| {
            let mut cuts: Vec<f64> = list.iter().copied().filter(|&x| x > from + 1e-9 && x < to - 1e-9).collect();
            cuts.insert(0, from);
            cuts.push(to);
            cuts
        };
        let points = |cuts: &[f64]| {
            let cells = cuts.windows(2).map(|cell| (cell[0], cell[1] - cell[0])).collect::<Vec<_>>();
            cells
                .into_iter()
                .flat_map(|(from, step)| gauss().map(|(at, weight)| (from + at * step, weight * step)))
                .collect::<Vec<_>>()
        };
        let (xs, ys) = (cut(self.grid.xs(), area.x0, area.x1), cut(self.grid.ys(), area.y0, area.y1));
        let (xs, ys) = (points(&xs), points(&ys));
        let mut sum = 0.0;
        for &(x, v) in &xs {
            for &(y, w) in &ys {
                sum += v * w * numbers(&self.grid.state(&self.plate, &self.solution, point(x, y), point(x, y)))[kind];
            }
        }
        sign * sum / ((area.x1 - area.x0) * (area.y1 - area.y0))
    }
}

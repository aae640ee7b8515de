//! Plates beside the independent solutions of `tests/reference/plates`.
//!
//! There `z`, deflections and pressures are positive upwards, here downwards: deflections, moments and shears change
//! their signs, forces in the plane do not, and a second slope of the mid-plane does.

use std::{collections::BTreeSet, path::PathBuf};

use serde::Deserialize;
use skinspan::finite_element::{Beam, Bed, Degree, Fields, Held, Load, Plate, ShellStiffness, Solution};

use crate::kit::{Grid, bed, gauss, m, n, numbers, orthotropic, pa, per_m, point, six};

/// A line that does not yield, as a bed: a thousandth of a thousandth of the plates' deflections under what they bear.
const FIRM: f64 = 1e12;

/// Largest difference from a deflection, a reaction or an energy, and from a moment or a shear, as a share; or
/// [`TIMES_ERROR`] the stated error, whichever is more.
const DEFLECTION: f64 = 1e-3;
const FORCES: f64 = 5e-3;
const TIMES_ERROR: f64 = 5.0;

/// Six lines stand for a pad. Between two of them, s = 19 mm apart at its middle, the plate dips by up to p s²/(8 S):
/// 0.8 % of the pad's deflection p/k.
const BETWEEN_LINES: f64 = 8e-3;

/// Frequencies and buckling loads, which no plate of ours gives.
const WITHOUT_LOAD: [&str; 12] = [
    "a8_hard_sandwich",
    "a8_hard_thin",
    "a8_hard_very_soft",
    "a8_lines",
    "a8_lines_sandwich",
    "a8_lines_thin",
    "a8_lines_very_soft",
    "a8_soft_sandwich",
    "a8_soft_thin",
    "a8_soft_very_soft",
    "a9_both_ways",
    "a9_one_way",
];

const COMPARED: [&str; 12] = [
    "a10_crown",
    "a10_crown_stiff",
    "a10_diaphragms",
    "a1_orthotropic",
    "a1_square",
    "a2_lines",
    "a3_corner_patch",
    "a4_bands",
    "a5_pads",
    "a5_pads_patch",
    "a6_beams",
    "a7_turned",
];

#[derive(Deserialize)]
struct Sides {
    length_x: f64,
    length_y: f64,
}

#[derive(Deserialize)]
#[serde(default, deny_unknown_fields)]
#[derive(Default)]
#[expect(non_snake_case, reason = "names of the data")]
struct Stiffnesses {
    D11: f64,
    D12: f64,
    D22: f64,
    D66: f64,
    D16: f64,
    D26: f64,
    Sx: f64,
    Sy: f64,
    A11: f64,
    A12: f64,
    A22: f64,
    A66: f64,
    ky: f64,
}

#[derive(Clone, Copy, Deserialize)]
struct Area {
    x0: f64,
    x1: f64,
    y0: f64,
    y1: f64,
}

impl Area {
    fn holds(&self, [x, y]: [f64; 2]) -> bool {
        x > self.x0 && x < self.x1 && y > self.y0 && y < self.y1
    }
}

#[derive(Deserialize)]
struct Region {
    #[serde(flatten)]
    area: Area,
    bending_factor: f64,
    shear_factor: f64,
}

#[derive(Deserialize)]
#[serde(tag = "kind", rename_all = "snake_case")]
enum Kind {
    Line {
        holds: Vec<String>,
    },
    Bed {
        stiffness: f64,
    },
    Beam {
        #[serde(rename = "EI")]
        ei: f64,
        posts: Vec<[f64; 2]>,
    },
}

#[derive(Deserialize)]
struct Support {
    name: String,
    #[serde(flatten)]
    kind: Kind,
    #[serde(flatten)]
    area: Area,
}

impl Support {
    fn is_pad(&self) -> bool {
        matches!(self.kind, Kind::Bed { .. })
    }
}

#[derive(Deserialize)]
#[serde(tag = "kind", rename_all = "snake_case")]
enum Pressing {
    Pressure {
        pressure: f64,
    },
    Patch {
        force: f64,
        #[serde(flatten)]
        area: Area,
    },
}

#[derive(Deserialize)]
#[serde(tag = "kind", rename_all = "snake_case")]
enum Quantity {
    Deflection {
        x: f64,
        y: f64,
    },
    Mean {
        of: String,
        #[serde(flatten)]
        area: Area,
    },
    Reaction {
        support: String,
        x0: Option<f64>,
        x1: Option<f64>,
    },
    BedForce {
        support: String,
    },
    PostForce {
        support: String,
        x: f64,
    },
    BeamMoment {
        support: String,
        x0: f64,
        x1: f64,
    },
    StrainEnergy,
}

#[derive(Deserialize)]
struct Named {
    name: String,
    #[serde(flatten)]
    quantity: Quantity,
    value: f64,
    error: f64,
}

#[derive(Deserialize)]
struct Problem {
    plate: Sides,
    stiffness: Stiffnesses,
    #[serde(default)]
    pins: Vec<(f64, f64, String)>,
    #[serde(default)]
    region: Vec<Region>,
    support: Vec<Support>,
    load: Vec<Pressing>,
    result: Vec<Named>,
}

fn folder() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("tests/reference/plates")
}

/// Coordinates of a grid: every place that matters, drawn together towards the sharp ones, nowhere wider than `widest`.
fn drawn_together(places: &[f64], sharp: &[f64], widest: f64) -> Vec<f64> {
    const LAYERS: i32 = 3;
    const RATIO: f64 = 0.25;
    const WIDEST_LAYER: f64 = 0.05;
    let rounded = |x: f64| (x * 1e9).round() / 1e9;
    let sorted = |mut list: Vec<f64>| {
        list.sort_by(f64::total_cmp);
        list.dedup();
        list
    };
    let sharp: Vec<f64> = sharp.iter().copied().map(rounded).collect();
    let mut all = sorted(places.iter().chain(&sharp).copied().map(rounded).collect());
    let mut layers = Vec::new();
    for pair in all.windows(2) {
        let (step, both) = (pair[1] - pair[0], sharp.contains(&pair[0]) && sharp.contains(&pair[1]));
        let reach = (if both { 0.5 * step } else { step }).min(WIDEST_LAYER);
        for layer in 0..LAYERS {
            let off = reach * RATIO.powi(layer);
            if off < 0.9 * step && sharp.contains(&pair[0]) {
                layers.push(pair[0] + off);
            }
            if off < 0.9 * step && sharp.contains(&pair[1]) {
                layers.push(pair[1] - off);
            }
        }
    }
    all.extend(layers.into_iter().map(rounded));
    all = sorted(all);
    let mut lines = vec![all[0]];
    for pair in all.windows(2) {
        let count = ((pair[1] - pair[0]) / widest - 1e-9).ceil().max(1.0) as usize;
        lines.extend((1..=count).map(|k| pair[0] + (pair[1] - pair[0]) * k as f64 / count as f64));
    }
    lines
}

struct Solved {
    problem: Problem,
    grid: Grid,
    plate: Plate,
    load: Load,
    solution: Solution,
    /// Name of the support that a bed is part of, and from where to where along x it goes.
    beds: Vec<(String, [f64; 2])>,
}

fn grid_of(problem: &Problem) -> Grid {
    let (a, b) = (problem.plate.length_x, problem.plate.length_y);
    // Along free edges the twist dies out within some 40 mm.
    let edge = 0.05;
    let (mut xs, mut ys) = (vec![0.0, edge, a - edge, a], vec![0.0, edge, b - edge, b]);
    let (mut sharp_x, mut sharp_y) = (Vec::new(), Vec::new());
    for support in &problem.support {
        let Area { x0, x1, y0, y1 } = support.area;
        sharp_x.extend([x0, x1]);
        sharp_y.extend([y0, y1]);
        match &support.kind {
            Kind::Bed { .. } => ys.extend(six().map(|(at, _)| y0 + at * (y1 - y0))),
            Kind::Beam { posts, .. } => xs.extend(posts.iter().map(|post| post[0])),
            Kind::Line { .. } => {}
        }
    }
    for region in &problem.region {
        sharp_y.extend([region.area.y0, region.area.y1]);
        xs.extend([region.area.x0, region.area.x1]);
    }
    for load in &problem.load {
        if let Pressing::Patch { area, .. } = load {
            xs.extend([area.x0, area.x1]);
            ys.extend([area.y0, area.y1]);
        }
    }
    for (x, y, _) in &problem.pins {
        xs.push(*x);
        ys.push(*y);
    }
    for result in &problem.result {
        match &result.quantity {
            Quantity::Reaction { x0, x1, .. } => xs.extend(x0.iter().chain(x1)),
            Quantity::BeamMoment { x0, x1, .. } => xs.extend([x0, x1]),
            _ => {}
        }
    }
    let widest = 0.15 * b;
    Grid::new(&drawn_together(&xs, &sharp_x, widest), &drawn_together(&ys, &sharp_y, widest))
}

impl Solved {
    fn new(name: &str) -> Self {
        let text = std::fs::read_to_string(folder().join(format!("{name}.toml"))).unwrap();
        let problem: Problem = toml::from_str(&text).unwrap();
        let grid = grid_of(&problem);
        let (held, beds, names) = supports(&problem, &grid);
        let shell = |triangle: usize| shell(&problem, grid.middle(triangle));
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
                    Pressing::Patch { .. } => 0.0,
                })
                .sum())
        };
        let load = Load::none(&plate).pressed(&plate, &pressure);
        let solution = plate.solve(std::slice::from_ref(&load)).remove(0);
        Self { problem, grid, plate, load, solution, beds: names }
    }

    fn beds_of<'a>(&'a self, support: &'a str) -> impl Iterator<Item = usize> + 'a {
        (0..self.beds.len()).filter(move |&bed| self.beds[bed].0 == support)
    }

    fn borne(&self, bed: usize) -> f64 {
        self.plate.pushes(bed, &self.solution).iter().map(|push| push.force.value).sum()
    }

    fn value(&self, quantity: &Quantity) -> f64 {
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

fn shell(problem: &Problem, at: [f64; 2]) -> ShellStiffness {
    let s = &problem.stiffness;
    let (mut bending, mut shear) = (1.0, 1.0);
    for region in problem.region.iter().filter(|region| region.area.holds(at)) {
        bending *= region.bending_factor;
        shear *= region.shear_factor;
    }
    let d = [[s.D11, s.D12, s.D16], [s.D12, s.D22, s.D26], [s.D16, s.D26, s.D66]].map(|row| row.map(|x| x * bending));
    let plate = orthotropic(d, [s.Sx * shear, s.Sy * shear]);
    if s.A11 == 0.0 {
        return plate;
    }
    let membrane = [[s.A11, s.A12, 0.0], [s.A12, s.A22, 0.0], [0.0, 0.0, s.A66]];
    plate.with_membrane(membrane.map(|row| row.map(per_m))).with_crown([1.0 / m(1.0) * 0.0, 1.0 / m(1.0) * -s.ky])
}

type Supports = (Vec<(Vec<usize>, Held)>, Vec<Bed>, Vec<(String, [f64; 2])>);

fn supports(problem: &Problem, grid: &Grid) -> Supports {
    let (mut held, mut beds, mut names) = (Vec::new(), Vec::new(), Vec::new());
    for (x, y, field) in &problem.pins {
        let displacements = [field == "u", field == "v"];
        held.push((grid.along_x(*y, [*x, *x]), Held { displacements, ..Held::default() }));
    }
    for support in &problem.support {
        let Area { x0, x1, y0, y1 } = support.area;
        let line = |from: f64, to: f64| {
            if x0 == x1 { grid.along_y(x0, [y0, y1]) } else { grid.along_x(y0, [from, to]) }
        };
        match &support.kind {
            Kind::Line { holds } => {
                let holds = |field: &str| holds.iter().any(|own| own == field);
                let rotations = [holds("tx"), holds("ty")];
                held.push((
                    line(x0, x1),
                    Held { deflection: false, rotations, displacements: [holds("u"), holds("v")] },
                ));
                // In pieces, where the reaction of a part is asked for.
                let mut ends = vec![x0];
                for result in &problem.result {
                    if let Quantity::Reaction { support: own, x0: Some(from), x1: Some(to) } = &result.quantity {
                        ends.extend(
                            [*from, *to].into_iter().filter(|&end| *own == support.name && end > x0 && end < x1),
                        );
                    }
                }
                ends.push(x1);
                ends.sort_by(f64::total_cmp);
                for part in ends.windows(2) {
                    beds.push(bed(line(part[0], part[1]), FIRM));
                    names.push((support.name.clone(), [part[0], part[1]]));
                }
            }
            Kind::Bed { stiffness } => {
                // Lines at Gauss's points, each with its share.
                for (at, weight) in six() {
                    beds.push(bed(grid.along_x(y0 + at * (y1 - y0), [x0, x1]), stiffness * weight * (y1 - y0)));
                    names.push((support.name.clone(), [x0, x1]));
                }
            }
            Kind::Beam { ei, posts } => {
                let posts = posts.iter().map(|&[x, y]| grid.along_x(y, [x, x])[0]).collect();
                let rigidity = n(*ei) * m(1.0) * m(1.0);
                beds.push(Bed { beam: Some(Beam { rigidity, posts }), ..bed(line(x0, x1), FIRM) });
                names.push((support.name.clone(), [x0, x1]));
            }
        }
    }
    (held, beds, names)
}

/// Largest difference, as a share.
fn allowed(problem: &Problem, quantity: &Quantity) -> f64 {
    match quantity {
        Quantity::Mean { .. } | Quantity::BeamMoment { .. } => FORCES,
        Quantity::Deflection { x, y } if problem.support.iter().any(|own| own.is_pad() && own.area.holds([*x, *y])) => {
            BETWEEN_LINES
        }
        _ => DEFLECTION,
    }
}

fn compare(name: &str) {
    let solved = Solved::new(name);
    let mut wrong = Vec::new();
    for Named { name, quantity, value, error } in &solved.problem.result {
        let found = solved.value(quantity);
        if (found - value).abs() > (allowed(&solved.problem, quantity) * value.abs()).max(TIMES_ERROR * error) {
            wrong.push(format!("{name}: {found}, of the reference {value} ± {error}"));
        }
    }
    assert!(!solved.problem.result.is_empty() && wrong.is_empty(), "{}", wrong.join("\n"));
}

#[test]
fn every_file_is_compared_or_named() {
    let files = std::fs::read_dir(folder()).unwrap().map(|entry| entry.unwrap().file_name().into_string().unwrap());
    let files: BTreeSet<String> = files.map(|name| name.trim_end_matches(".toml").to_owned()).collect();
    let known: BTreeSet<String> = COMPARED.iter().chain(&WITHOUT_LOAD).map(|&name| name.to_owned()).collect();
    assert_eq!(files, known);
}

macro_rules! compared {
    ($($name:ident),+) => { $(
        #[test]
        fn $name() {
            assert!(COMPARED.contains(&stringify!($name)));
            compare(stringify!($name));
        }
    )+ };
}

compared!(
    a10_crown,
    a10_crown_stiff,
    a10_diaphragms,
    a1_orthotropic,
    a1_square,
    a2_lines,
    a3_corner_patch,
    a4_bands,
    a5_pads,
    a5_pads_patch,
    a6_beams,
    a7_turned
);

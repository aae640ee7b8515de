//! From a problem to a mesh and what stands on it.

use skinspan::finite_element::{Beam, Bed, Held, ShellStiffness};

use super::data::{Area, Kind, Pressing, Problem, Quantity};
use crate::kit::{Grid, bed, m, n, orthotropic, per_m, six};

/// A line that does not yield, as a bed: a thousandth of a thousandth of the plates' deflections under what they bear.
const FIRM: f64 = 1e12;

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
        let step = pair[1] - pair[0];
        let count = (1..1000).find(|&count| step <= f64::from(count) * widest * (1.0 + 1e-9)).unwrap();
        lines.extend((1..=count).map(|k| pair[0] + step * f64::from(k) / f64::from(count)));
    }
    lines
}

pub fn grid_of(problem: &Problem) -> Grid {
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
        if let Pressing::Patch { area, .. } | Pressing::Heat { area: Some(area), .. } = load {
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

pub fn shell(problem: &Problem, at: [f64; 2]) -> ShellStiffness {
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

pub type Supports = (Vec<(Vec<usize>, Held)>, Vec<Bed>, Vec<(String, [f64; 2])>);

pub fn supports(problem: &Problem, grid: &Grid) -> Supports {
    let (mut held, mut beds, mut names) = (Vec::new(), Vec::new(), Vec::new());
    for (x, y, field) in &problem.pins {
        let displacements = [field == "u", field == "v"];
        held.push((grid.along_x(*y, [*x, *x]), Held { displacements, ..Held::default() }));
    }
    for support in &problem.support {
        let Area { x0, x1, y0, y1 } = support.area;
        let line = |from: f64, to: f64| {
            if x1 - x0 < 1e-9 { grid.along_y(x0, [y0, y1]) } else { grid.along_x(y0, [from, to]) }
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

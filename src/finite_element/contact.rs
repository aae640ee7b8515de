//! A plate that may lift off its beds, and what holds it down.

use nalgebra::{DMatrix, DVector};

use super::{
    beam::{BeamForces, BeamLine, Push},
    complementary,
    load::Load,
    plate::Plate,
    solution::Solution,
};
use crate::units::{Force, Length, Stiffness, si};

/// A bed that presses and does not pull.
#[derive(Clone, Debug, PartialEq)]
pub struct Loose {
    /// The bed, as its place in the model.
    pub bed: usize,
    /// What holds the plate down: distance along the bed, and pull over the opening there.
    pub fixings: Vec<(Length, Stiffness)>,
    /// Places along the bed at which the plate may open, each taken to the nearest node; the ends are always among them.
    pub stations: Vec<Length>,
}

/// An opening that falls from one at a place to none at its neighbours.
#[derive(Clone, Debug)]
struct Hat {
    bed: usize,
    at: f64,
    before: f64,
    after: f64,
}

impl Hat {
    fn value(&self, along: f64) -> f64 {
        let off = (along - self.at).abs();
        let reach = if along < self.at { self.at - self.before } else { self.after - self.at };
        if off == 0.0 { 1.0 } else { (1.0 - off / reach).max(0.0) }
    }
}

/// Openings between a plate and its beds.
#[derive(Clone, Debug)]
pub struct Contact {
    hats: Vec<Hat>,
    /// What each opening does by itself, the springs stretched over it.
    solutions: Vec<Solution>,
    matrix: DMatrix<f64>,
    fixings: Vec<Fixing>,
}

#[derive(Clone, Debug)]
struct Fixing {
    bed: usize,
    along: f64,
    stiffness: f64,
}

/// A load at whose openings something opens without end.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct LiftsOff;

impl std::fmt::Display for LiftsOff {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str("the top lifts off its pipes: nothing holds it down")
    }
}

impl std::error::Error for LiftsOff {}

impl Contact {
    /// What may open, of a plate that has its beds pull as well as press.
    ///
    /// ```text
    /// springs   f = k (w − w_b + g),   g = Σ g_i N_i ≥ 0
    /// A g + b ≥ 0,  g ≥ 0,  each of them none where the other is not
    /// b_i = Σ N_i f under the load, all closed;   A_ij = Σ N_i f_j + Σ fixings k_f N_i N_j
    /// ```
    ///
    /// | symbol | meaning | unit |
    /// |---|---|---|
    /// | `w`, `w_b` | deflection of the plate, of what is below | m |
    /// | `k` | stiffness of a spring | N/m |
    /// | `g`, `N_i` | opening; one at place `i`, none at its neighbours, straight between | m, – |
    /// | `f_j` | springs' forces where `g_j` alone opens | N/m |
    /// | `k_f` | pull of a fixing over its opening | N/m |
    ///
    /// # Validity
    /// No friction. A fixing is not tightened before: it pulls from the first opening, and what it pulls spreads over the
    /// plate as far as the hats reach. Between two places the opening is straight. Each place is a node of the bed, so that no
    /// opening is the sum of others.
    ///
    /// # Source
    /// Least of the energy over all openings that are not below none, [`DERIVED`](crate::source::DERIVED); the conditions
    /// are those of Signorini.
    #[must_use]
    pub fn new(plate: &Plate, loose: &[Loose]) -> Self {
        let hats: Vec<Hat> = loose.iter().flat_map(|loose| hats(plate, loose)).collect();
        let loads: Vec<Load> = hats.iter().map(|hat| stretched(plate, hat)).collect();
        let solutions = plate.solve(&loads);
        let fixings: Vec<Fixing> = loose
            .iter()
            .flat_map(|loose| {
                let of_bed = loose.fixings.iter();
                of_bed.map(|(along, k)| Fixing { bed: loose.bed, along: along.value, stiffness: k.value })
            })
            .collect();
        let mut new = Self { hats, solutions, matrix: DMatrix::zeros(0, 0), fixings };
        let size = new.hats.len();
        let mut matrix = DMatrix::zeros(size, size);
        for (j, solution) in new.solutions.iter().enumerate() {
            matrix.set_column(j, &new.closed(plate, solution));
        }
        for (i, one) in new.hats.iter().enumerate() {
            for (j, other) in new.hats.iter().enumerate().filter(|(_, other)| other.bed == one.bed) {
                for spring in plate.springs.iter().filter(|spring| spring.line == one.bed) {
                    matrix[(i, j)] += spring.stiffness * one.value(spring.along()) * other.value(spring.along());
                }
                for fixing in new.fixings.iter().filter(|fixing| fixing.bed == one.bed) {
                    matrix[(i, j)] += fixing.stiffness * one.value(fixing.along) * other.value(fixing.along);
                }
            }
        }
        // Equal but for rounding.
        new.matrix = (&matrix + matrix.transpose()) * 0.5;
        new
    }

    fn closed(&self, plate: &Plate, solution: &Solution) -> DVector<f64> {
        let force = |hat: &Hat| {
            let springs = plate.springs.iter().filter(|spring| spring.line == hat.bed);
            springs.map(|spring| hat.value(spring.along()) * spring.force(&solution.values)).sum::<f64>()
        };
        DVector::from_iterator(self.hats.len(), self.hats.iter().map(force))
    }

    /// What presses at each place where the plate may open, under a load, all closed; below none it pulls.
    #[must_use]
    pub fn pressing(&self, plate: &Plate, solution: &Solution) -> Vec<Force> {
        self.closed(plate, solution).iter().map(|force| si(*force)).collect()
    }

    /// How far each place opens where, all closed, the beds would bear this; nothing where all of it presses.
    ///
    /// # Errors
    /// [`LiftsOff`] where something opens without end.
    pub fn openings(&self, pressing: &[Force]) -> Result<Option<Vec<Length>>, LiftsOff> {
        if pressing.iter().all(|force| *force >= Force::default()) {
            return Ok(None);
        }
        let b = DVector::from_iterator(pressing.len(), pressing.iter().map(|force| force.value));
        let found = complementary::openings(&self.matrix, &b).ok_or(LiftsOff)?;
        Ok(Some(found.iter().map(|opening| si(*opening)).collect()))
    }

    /// How many places may open.
    #[must_use]
    pub fn places(&self) -> usize {
        self.hats.len()
    }

    /// What each place does by itself that opens by 1 m.
    #[must_use]
    pub fn opened(&self) -> &[Solution] {
        &self.solutions
    }

    /// What the plate presses on a bed with, node by node, where a place opens by 1 m.
    #[must_use]
    pub fn pushes(&self, plate: &Plate, bed: usize, place: usize) -> Vec<Push> {
        let hat = &self.hats[place];
        let springs = plate.springs.iter().filter(|spring| spring.line == bed);
        springs
            .map(|spring| {
                let over = if hat.bed == bed { spring.stiffness * hat.value(spring.along()) } else { 0.0 };
                spring.push(spring.force(&self.solutions[place].values) + over)
            })
            .collect()
    }

    /// What the beam below a bed bears where a place opens by 1 m.
    #[must_use]
    pub fn beam_forces(&self, plate: &Plate, bed: usize, place: usize) -> BeamForces {
        let pushes = |bed: usize| self.pushes(plate, bed, place).iter().map(|push| push.force.value).collect();
        BeamLine::forces(&plate.beams, bed, &self.solutions[place].values, &pushes)
    }

    /// Pull of each fixing, bed by bed in the order in which they were given.
    #[must_use]
    pub fn fixing_pulls(&self, openings: &[Length]) -> Vec<Force> {
        let pull = |fixing: &Fixing| {
            let hats = self.hats.iter().zip(openings).filter(|(hat, _)| hat.bed == fixing.bed);
            si(fixing.stiffness * hats.map(|(hat, opening)| hat.value(fixing.along) * opening.value).sum::<f64>())
        };
        self.fixings.iter().map(pull).collect()
    }
}

fn hats(plate: &Plate, loose: &Loose) -> Vec<Hat> {
    let nodes = &plate.beams[loose.bed].at;
    let Some(&end) = nodes.last() else { return Vec::new() };
    let nearest = |along: f64| {
        let k = nodes.partition_point(|node| *node < along).min(nodes.len() - 1);
        let before = k.saturating_sub(1);
        if along - nodes[before] < nodes[k] - along { before } else { k }
    };
    let wanted = loose.stations.iter().map(|station| station.value).chain([0.0, end]);
    let mut taken: Vec<usize> = wanted.map(nearest).collect();
    taken.sort_unstable();
    taken.dedup();
    let at = |k: usize| nodes[taken[k]];
    (0..taken.len())
        .map(|k| Hat {
            bed: loose.bed,
            at: at(k),
            before: at(k.saturating_sub(1)),
            after: at((k + 1).min(taken.len() - 1)),
        })
        .collect()
}

/// The springs below a hat, stretched over it: they press the plate up and what is below down.
fn stretched(plate: &Plate, hat: &Hat) -> Load {
    let mut load = Load::none(plate);
    for spring in plate.springs.iter().filter(|spring| spring.line == hat.bed) {
        let force = spring.stiffness * hat.value(spring.along());
        let ends = [(Some(spring.plate), -force), (spring.below, force)];
        for (unknown, force) in ends {
            if let Some(unknown) = unknown.filter(|&unknown| !plate.assembly.is_held(unknown)) {
                load.values[unknown] += force;
            }
        }
    }
    load
}

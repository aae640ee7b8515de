//! What the top puts on the pipes that hold bays: the bays on both sides together, or a bay and the overhang beyond it.

use super::{Bay, BayForces};
use crate::{geometry::Point, units::ForcePerWidth};

/// Largest loads on a stretch of pipe between two others under a case.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PipeLoad {
    /// The pipe, as its place in the list.
    pub pipe: usize,
    /// The case, as its place in the list.
    pub case: usize,
    /// Middle of the stretch.
    pub at: Point,
    /// Push of the top on the pipe.
    pub push: ForcePerWidth,
    /// Pull of the top at the fixings, as a positive number.
    pub pull: ForcePerWidth,
}

/// What an overhang puts on the pipe at its root under a case.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct OnPipe {
    /// The pipe, as its place in the list.
    pub pipe: usize,
    /// The case, as its place in the list.
    pub case: usize,
    /// Push by all that stays where it is.
    pub still: ForcePerWidth,
    /// Push with what moves.
    pub push: ForcePerWidth,
    /// Pull with what moves, as a positive number.
    pub pull: ForcePerWidth,
}

/// Loads on every stretch of pipe beside bays.
///
/// ```text
/// R = Σ R_still + max R_moving        over the two sides of the pipe
/// ```
///
/// A person stands on one side only, or with half the weight on either. The largest of either side counts, wherever along
/// the stretch it lies.
#[must_use]
pub fn pipe_loads(bays: &[Bay], plates: &[BayForces], overhangs: &[OnPipe]) -> Vec<PipeLoad> {
    let mut loads = Vec::with_capacity(4 * plates.len());
    for (number, bay) in bays.iter().enumerate() {
        let mut cases: Vec<usize> =
            plates.iter().filter(|forces| forces.bay == number).map(|forces| forces.case).collect();
        cases.dedup();
        for (edge, &pipe) in bay.pipes.iter().enumerate() {
            let beyond = bays.iter().position(|other| shares(bay, edge, other));
            // What two bays share is listed with the first.
            if beyond.is_some_and(|beyond| beyond < number) {
                continue;
            }
            for &case in &cases {
                let mut stretch = Stretch::default();
                stretch.add_bay(plates, (number, case), edge);
                match beyond {
                    Some(beyond) => stretch.add_bay(plates, (beyond, case), opposite(edge)),
                    None => {
                        overhangs
                            .iter()
                            .filter(|on| on.pipe == pipe && on.case == case)
                            .for_each(|on| stretch.add_overhang(on));
                    }
                }
                let nothing = ForcePerWidth::default();
                let push = (stretch.press + stretch.moving).max(nothing);
                loads.push(PipeLoad { pipe, case, at: bay.on_edge(edge), push, pull: stretch.lift.max(nothing) });
            }
        }
    }
    loads
}

/// The edge across the bay, in the order of [`Bay::pipes`].
const fn opposite(edge: usize) -> usize {
    edge ^ 1
}

/// Whether another bay stands on the other side of an edge of a bay.
fn shares(bay: &Bay, edge: usize, other: &Bay) -> bool {
    let beside = if edge < 2 { bay.from.x == other.from.x } else { bay.from.y == other.from.y };
    beside && other.pipes[opposite(edge)] == bay.pipes[edge]
}

/// What both sides of a stretch of pipe put on it.
#[derive(Default)]
struct Stretch {
    press: ForcePerWidth,
    lift: ForcePerWidth,
    moving: ForcePerWidth,
}

impl Stretch {
    fn add_bay(&mut self, plates: &[BayForces], (bay, case): (usize, usize), edge: usize) {
        let here =
            || plates.iter().filter(|forces| forces.bay == bay && forces.case == case).map(|forces| forces.push[edge]);
        self.press += here().map(|push| push.still).reduce(ForcePerWidth::max).unwrap_or_default();
        self.lift += here().map(|push| -push.still).reduce(ForcePerWidth::max).unwrap_or_default();
        self.moving = here().fold(self.moving, |moving, push| moving.max(push.moving));
    }

    fn add_overhang(&mut self, on: &OnPipe) {
        self.press += on.still;
        self.lift += on.pull;
        self.moving = self.moving.max(on.push - on.still);
    }
}

#[cfg(test)]
mod tests {
    use uom::si::length::meter;

    use super::*;
    use crate::{
        analysis::bay::EdgePush,
        closed_form::plate::EdgeHold,
        units::{Force, Length, MomentPerWidth, Pressure, Ratio, per_width},
    };

    fn m(x: f64) -> Length {
        Length::new::<meter>(x)
    }

    fn load(newtons: f64) -> ForcePerWidth {
        per_width(Force::new::<uom::si::force::newton>(newtons) / m(1.0))
    }

    fn bay(x: f64, pipes: [usize; 4]) -> Bay {
        Bay {
            from: Point { x: m(x), y: m(0.0) },
            sides: [m(1.0), m(2.0)],
            pipes,
            holds: [EdgeHold::Clamped; 2],
            backing: Vec::new(),
        }
    }

    fn forces(bay: usize, still: [f64; 4], moving: f64) -> BayForces {
        BayForces {
            bay,
            case: 3,
            middle: [MomentPerWidth::default(); 2],
            over_pipes: [MomentPerWidth::default(); 2],
            shear: load(0.0),
            push: still.map(|still| EdgePush { still: load(still), moving: load(moving) }),
            sag: m(0.0),
            pressure: Pressure::default(),
            sag_by_pressure: m(0.0),
            under_load: m(0.0),
            numerical_error: Ratio::default(),
        }
    }

    /// Two bays side by side over pipes 2, 3 and 4; pipes 0 and 1 run along both. One case, which presses and lifts.
    #[test]
    fn a_shared_pipe_takes_both_bays_and_one_person() {
        let bays = [bay(0.0, [0, 1, 2, 3]), bay(1.0, [0, 1, 3, 4])];
        let plates = [
            forces(0, [1.0, 2.0, 3.0, 4.0], 100.0),
            forces(0, [-1.0, -2.0, -3.0, -5.0], 0.0),
            forces(1, [10.0, 20.0, 30.0, 40.0], 200.0),
        ];
        let overhang = OnPipe { pipe: 2, case: 3, still: load(7.0), push: load(507.0), pull: load(9.0) };
        let elsewhere = OnPipe { case: 2, ..overhang };
        let loads = pipe_loads(&bays, &plates, &[overhang, elsewhere]);
        assert_eq!(loads.len(), 7, "the pipe between the bays is listed once");
        let on = |pipe: usize, x: f64| {
            let load =
                loads.iter().find(|load| load.pipe == pipe && (load.at.x.value - x).abs() < 1e-12).expect("listed");
            (load.push.value, load.pull.value)
        };
        assert_eq!(on(3, 1.0), (4.0 + 30.0 + 200.0, 0.0));
        assert_eq!(on(2, 0.0), (3.0 + 7.0 + 500.0, 3.0 + 9.0));
        assert_eq!(on(0, 0.5), (1.0 + 100.0, 1.0));
        assert_eq!(on(0, 1.5), (10.0 + 200.0, 0.0));
        assert_eq!(on(4, 2.0), (40.0 + 200.0, 0.0));
    }
}

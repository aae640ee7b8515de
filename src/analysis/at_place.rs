//! The worst states of one place.

use crate::{finite_element::State, laminate::Resultants, units::Length};

/// Ways in which a state can be the worst, those of `finite_element::Worst`: moments along and across, sagging and hogging;
/// twist; the outer skin pressed and pulled in any direction, the inner one; shear.
const WAYS: usize = 10;

/// Deflection, forces, moments, shears.
type Numbers = [f64; 9];

/// The states of a place that are the worst of it, and its largest sag.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct AtPlace {
    worst: [Kept; WAYS],
    sag: f64,
    sag_case: usize,
}

/// A state with the case that makes it.
#[derive(Clone, Copy, Debug, Default)]
struct Kept {
    rank: f64,
    case: usize,
    numbers: Numbers,
}

impl AtPlace {
    /// Takes in the sum of states, each times a factor for strength and one for sag; where the place is `punched` its shear
    /// does not count.
    pub(super) fn take(
        &mut self,
        states: impl Iterator<Item = (State, f64, f64)>,
        lever: Length,
        case: usize,
        punched: &dyn Fn() -> bool,
    ) {
        let (mut sum, mut sag) = ([0.0; 9], 0.0);
        for (state, times, rest) in states {
            for (sum, own) in sum.iter_mut().zip(numbers(&state)) {
                *sum += times * own;
            }
            sag += rest * state.deflection.value;
        }
        if sag.abs() > self.sag || sag.is_nan() {
            (self.sag, self.sag_case) = (sag.abs(), case);
        }
        for (way, rank) in ranks(&sum, lever.value).into_iter().enumerate() {
            let known = &mut self.worst[way];
            // What is not a number must be seen.
            if (rank > known.rank || rank.is_nan()) && !(way == WAYS - 1 && punched()) {
                *known = Kept { rank, case, numbers: sum };
            }
        }
    }

    /// Takes in what was seen of the same place after it.
    pub(super) fn merge(&mut self, later: &Self) {
        if later.sag > self.sag || later.sag.is_nan() {
            (self.sag, self.sag_case) = (later.sag, later.sag_case);
        }
        for (own, later) in self.worst.iter_mut().zip(&later.worst) {
            if later.rank > own.rank || later.rank.is_nan() {
                *own = *later;
            }
        }
    }

    /// The worst states, each once, with its case.
    #[expect(clippy::float_cmp, reason = "the same state, not one that is as bad")]
    pub(super) fn states(&self) -> impl Iterator<Item = (usize, State)> {
        let own = self.worst.iter().enumerate().filter(|(_, kept)| kept.rank != 0.0);
        // One state is often the worst in several ways: what is asked of it once need not be asked again.
        let once = own.filter(|(way, kept)| {
            *way == WAYS - 1 || self.worst[..*way].iter().all(|known| known.numbers != kept.numbers)
        });
        once.map(|(way, kept)| {
            let mut state = state(&kept.numbers);
            // The shear of a state that is the worst by another may be that of punching: only the last one's counts.
            if way < WAYS - 1 {
                state.shear = Default::default();
            }
            (kept.case, state)
        })
    }

    /// The largest deflection, up or down, in metres, and its case.
    pub(super) const fn sag(&self) -> (f64, usize) {
        (self.sag, self.sag_case)
    }
}

/// What ranks a state, way by way: the larger, the worse.
fn ranks([_, nx, ny, nxy, mx, my, mxy, qx, qy]: &Numbers, lever: f64) -> [f64; WAYS] {
    let face = |sign: f64| {
        let [x, y, xy] = [(nx, mx), (ny, my), (nxy, mxy)].map(|(n, m)| 0.5 * n + sign * m / lever);
        let (middle, radius) = (0.5 * (x + y), (0.25 * (x - y) * (x - y) + xy * xy).sqrt());
        [radius - middle, middle + radius]
    };
    let ([outer_pressed, outer_pulled], [inner_pressed, inner_pulled]) = (face(-1.0), face(1.0));
    let shear = (qx * qx + qy * qy).sqrt();
    [*mx, -mx, *my, -my, mxy.abs(), outer_pressed, outer_pulled, inner_pressed, inner_pulled, shear]
}

fn numbers(state: &State) -> Numbers {
    let State { deflection, resultants: Resultants { force, moment }, shear } = state;
    let [nx, ny, nxy] = [force.x.value, force.y.value, force.xy.value];
    [deflection.value, nx, ny, nxy, moment.x.value, moment.y.value, moment.xy.value, shear[0].value, shear[1].value]
}

fn state(&[w, nx, ny, nxy, mx, my, mxy, qx, qy]: &Numbers) -> State {
    let mut state = State::default();
    state.deflection.value = w;
    let Resultants { force, moment } = &mut state.resultants;
    (force.x.value, force.y.value, force.xy.value) = (nx, ny, nxy);
    (moment.x.value, moment.y.value, moment.xy.value) = (mx, my, mxy);
    (state.shear[0].value, state.shear[1].value) = (qx, qy);
    state
}

#[cfg(test)]
mod tests {
    use super::{AtPlace, state};
    use crate::units::Length;

    fn lever() -> Length {
        Length::new::<uom::si::length::millimeter>(50.0)
    }

    #[test]
    fn keeps_the_worst_in_each_way_with_its_case() {
        let mut place = AtPlace::default();
        let no = || false;
        place.take(
            [(state(&[0.001, 0.0, 0.0, 0.0, 10.0, -2.0, 0.0, 3.0, 4.0]), 2.0, 1.0)].into_iter(),
            lever(),
            7,
            &no,
        );
        place.take(
            [(state(&[-0.004, 0.0, 0.0, 0.0, -5.0, 1.0, 0.5, 1.0, 0.0]), 1.0, 0.5)].into_iter(),
            lever(),
            8,
            &no,
        );
        assert_eq!(place.sag(), (0.002, 8), "at rest, either way");
        let found: Vec<(usize, [f64; 3])> = place
            .states()
            .map(|(case, state)| (case, [state.resultants.moment.x.value, state.shear[0].value, state.shear[1].value]))
            .collect();
        assert_eq!(found.first(), Some(&(7, [20.0, 0.0, 0.0])), "sagging; its shear is not the worst by shear");
        assert_eq!(found.get(1), Some(&(8, [-5.0, 0.0, 0.0])), "hogging");
        assert_eq!(found.last(), Some(&(7, [20.0, 6.0, 8.0])), "shear");
    }

    #[test]
    fn punching_takes_the_shear_out_and_nothing_else() {
        let (mut free, mut punched) = (AtPlace::default(), AtPlace::default());
        let own = state(&[0.0, 0.0, 0.0, 0.0, 10.0, 0.0, 0.0, 3.0, 4.0]);
        free.take([(own, 1.0, 1.0)].into_iter(), lever(), 0, &|| false);
        punched.take([(own, 1.0, 1.0)].into_iter(), lever(), 0, &|| true);
        let shear = |place: &AtPlace| place.states().map(|(_, state)| state.shear_size().value).fold(0.0, f64::max);
        assert_eq!((shear(&free), shear(&punched)), (5.0, 0.0));
        let moment =
            |place: &AtPlace| place.states().map(|(_, state)| state.resultants.moment.x.value).fold(0.0, f64::max);
        assert_eq!((moment(&free), moment(&punched)), (10.0, 10.0));
    }

    #[test]
    fn of_two_the_later_counts_where_it_is_worse() {
        let (mut one, mut other) = (AtPlace::default(), AtPlace::default());
        one.take(
            [(state(&[0.002, 0.0, 0.0, 0.0, 10.0, 0.0, 0.0, 1.0, 0.0]), 1.0, 1.0)].into_iter(),
            lever(),
            1,
            &|| false,
        );
        other.take(
            [(state(&[0.001, 0.0, 0.0, 0.0, 4.0, 9.0, 0.0, 2.0, 0.0]), 1.0, 1.0)].into_iter(),
            lever(),
            2,
            &|| false,
        );
        one.merge(&other);
        assert_eq!(one.sag(), (0.002, 1));
        let cases: Vec<usize> = one.states().map(|(case, _)| case).collect();
        assert_eq!((cases.first(), cases.last()), (Some(&1), Some(&2)));
    }
}

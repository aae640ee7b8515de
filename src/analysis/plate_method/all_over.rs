//! The worst that all loads do to the whole top, place by place: for drawings. Checks look at [`PlateForces`](super::PlateForces).

use std::collections::BTreeMap;

use rayon::prelude::*;

use super::{
    NoPlate,
    layout::Net,
    lifting::{Lifting, Part, Seen},
    loads::StillLoads,
    people,
    wind::Winds,
};
use crate::{
    analysis::{Analysis, at_place::AtPlace, line::Region, spread::Spread},
    finite_element::{Degree, Load, Plate, Sampler, Solution, State},
    geometry::{Axis, Point},
    load_case::{self, LoadCase},
    units::{Length, Ratio},
};

/// Places that are solved for together.
const AT_ONCE: usize = 64;

/// Corners, middles of the sides and the middle of a triangle.
const SHARES: [[f64; 2]; 7] =
    [[0.0, 0.0], [1.0, 0.0], [0.0, 1.0], [0.5, 0.0], [0.5, 0.5], [0.0, 0.5], [1.0 / 3.0, 1.0 / 3.0]];

/// Those round the middle, in turn.
const ROUND: [usize; 6] = [0, 3, 1, 4, 2, 5];

/// The whole top with the worst of all loads at every place.
#[derive(Clone, Debug)]
pub struct AllOver {
    places: Vec<(Point, Region)>,
    triangles: Vec<[usize; 3]>,
    /// By state of the material, by place.
    worst: Vec<Vec<AtPlace>>,
}

impl Analysis<'_> {
    /// What all loads of all cases do all over the top, by the plate method on the mesh that its forces are from, people and
    /// hands tried everywhere.
    ///
    /// ```text
    /// states at a place: of all Σ parts × times that may act together, those that are the worst there in one of the ways of
    /// `finite_element::Worst`
    /// ```
    ///
    /// # Validity
    /// As [`PlateMethod::new`](super::PlateMethod::new): the same loads and openings, at the degree at which that tries people
    /// everywhere, whose difference from the next is the numerical error; on the finest triangles that any case was solved on. What triangles of one region say of a place that they
    /// share is not joined: the largest counts. Shear within the punching discs of people and hands is left out, as in the
    /// checks; the peaks at ends of pipes, corners of backing and footings are in it as first-order theory has them, without
    /// the mean over a disc.
    ///
    /// # Errors
    /// [`NoPlate`] where there is no plate solution.
    ///
    /// # Source
    /// [`DERIVED`](crate::source::DERIVED): sums of solutions that the envelope takes too.
    ///
    /// # Examples
    ///
    /// Nowhere does any load make it sag more than the map shows:
    ///
    /// ```
    /// use skinspan::{analysis::{Analysis, DIVISIONS}, input::{NamedText, read_design, read_tables}};
    /// # let text = std::fs::read_to_string(concat!(env!("CARGO_MANIFEST_DIR"), "/examples/galley-roof.toml")).unwrap();
    /// # let text = NamedText { name: String::new(), text };
    /// let top = read_design(&text, &read_tables(&[]).unwrap(), None).unwrap();
    /// let analysis = Analysis::new(&top, DIVISIONS).unwrap().with_plate_method();
    /// let sag = analysis.all_over().expect("a solution").sag();
    /// let largest = sag.values[sag.largest().unwrap()];
    /// for forces in analysis.fields() {
    ///     // The map has fewer places.
    ///     let error = (1.0 + forces.error.sag.value) * 1.02;
    ///     assert!(forces.between.iter().all(|found| found.sag.value.abs() <= largest * error));
    /// }
    /// ```
    pub fn all_over(&self) -> Result<AllOver, NoPlate> {
        let sides = self.whole.iter().flatten().next().map_or_else(|| Ratio::from(1.0), |method| method.finest().sides);
        let net = Net::new(self.top, &self.sections, sides).map_err(NoPlate::Mesh)?;
        let numbers: Vec<usize> = self.fields().map(|forces| forces.case).collect();
        // Cases whose core is alike share a matrix; the first leads the others.
        let mut alike: Vec<(Ratio, Vec<usize>)> = Vec::new();
        for number in numbers {
            let left = self.core_left(number);
            match alike.iter_mut().find(|(known, _)| *known == left) {
                Some((_, numbers)) => numbers.push(number),
                None => alike.push((left, vec![number])),
            }
        }
        let leading = alike.first().map_or_else(|| Ratio::from(1.0), |(left, _)| *left);
        let first = net.plate(self.top, &self.sections, (Degree::Three, leading), None)?;
        let sampler = net.sampler(self.top, &first, std::iter::empty());
        let looked = Looked::new(self, &net, (&first, &sampler));
        let winds = Winds::new(self.top, &net, &self.cases);
        let solved: Result<Vec<Vec<OfState>>, NoPlate> = alike
            .par_iter()
            .map(|(left, numbers)| {
                let own;
                let plate = if *left == leading {
                    &first
                } else {
                    own = net.plate(self.top, &self.sections, (Degree::Three, *left), Some(&first))?;
                    &own
                };
                looked.worst(plate, *left, numbers, &winds)
            })
            .collect();
        let mut worst: Vec<OfState> = Vec::new();
        for (state, own) in solved?.into_iter().flatten() {
            match worst.iter_mut().find(|(known, _)| *known == state) {
                Some((_, all)) => merge(all, &own),
                None => worst.push((state, own)),
            }
        }
        let Looked { places, triangles, .. } = looked;
        Ok(AllOver { places, triangles, worst: worst.into_iter().map(|(_, own)| own).collect() })
    }
}

/// The worst of a state of the material, by place.
type OfState = (load_case::State, Vec<AtPlace>);

fn merge(all: &mut [AtPlace], later: &[AtPlace]) {
    all.iter_mut().zip(later).for_each(|(own, later)| own.merge(later));
}

impl AllOver {
    /// The largest of a quantity over all states at each place; it is asked for by case, region and state.
    #[must_use]
    pub fn spread(&self, of: &(dyn Fn(usize, Region, &State) -> Ratio + Sync)) -> Spread {
        let at = |place: usize| {
            let region = self.places[place].1;
            let states = self.worst.iter().flat_map(|own| own[place].states());
            let each = states.map(|(case, state)| (of(case, region, &state).value, case));
            each.fold((0.0, 0), |a: (f64, usize), b| if b.0 > a.0 || b.0.is_nan() { b } else { a })
        };
        self.made((0..self.places.len()).into_par_iter().map(at).collect())
    }

    /// The largest deflection of each place, up or down, people at rest, in metres.
    #[must_use]
    pub fn sag(&self) -> Spread {
        let at = |place: usize| {
            let each = self.worst.iter().map(|own| own[place].sag());
            each.fold((0.0, 0), |a: (f64, usize), b| if b.0 > a.0 { b } else { a })
        };
        self.made((0..self.places.len()).map(at).collect())
    }

    fn made(&self, values: Vec<(f64, usize)>) -> Spread {
        let (values, cases) = values.into_iter().unzip();
        let places = self.places.iter().map(|(at, _)| *at).collect();
        Spread { places, values, triangles: self.triangles.clone(), cases }
    }
}

/// Where the top is looked at.
struct Looked<'a> {
    analysis: &'a Analysis<'a>,
    net: &'a Net,
    sampler: &'a Sampler,
    places: Vec<(Point, Region)>,
    triangles: Vec<[usize; 3]>,
    /// By sample: the place that it is one of, with the distance of the skins' middles; none of those on discs.
    samples: Vec<Option<(usize, Length)>>,
}

impl<'a> Looked<'a> {
    fn new(analysis: &'a Analysis<'a>, net: &'a Net, (plate, sampler): (&Plate, &'a Sampler)) -> Self {
        let key = |region: usize, at: Point| (region, [at.x, at.y].map(micrometers));
        let mut known: BTreeMap<(usize, [i64; 2]), usize> = BTreeMap::new();
        let (mut places, mut triangles) = (Vec::new(), Vec::new());
        for triangle in 0..plate.triangles() {
            let own = SHARES.map(|share| {
                let at = plate.place(triangle, share);
                let next = places.len();
                let place = *known.entry(key(net.of_triangle[triangle], at)).or_insert(next);
                if place == next {
                    places.push((at, net.region(triangle)));
                }
                place
            });
            triangles.extend((0..6).map(|k| [own[6], own[ROUND[k]], own[ROUND[(k + 1) % 6]]]));
        }
        let lever = |triangle: usize| analysis.sections.of(net.region(triangle)).lever(Axis::X);
        let samples = sampler.places().map(|(at, triangle)| {
            known.get(&key(net.of_triangle[triangle], at)).map(|place| (*place, lever(triangle)))
        });
        let samples = samples.collect();
        Self { analysis, net, sampler, places, triangles, samples }
    }

    fn nothing(&self) -> Vec<AtPlace> {
        vec![AtPlace::default(); self.places.len()]
    }

    /// The worst of cases that share a matrix.
    fn worst(&self, plate: &Plate, left: Ratio, numbers: &[usize], winds: &Winds) -> Result<Vec<OfState>, NoPlate> {
        let (top, cases) = (self.analysis.top, &self.analysis.cases[..]);
        let reader = self.sampler.on(plate);
        let lifting = Lifting::new(top, self.net, &reader, left);
        let lifting = lifting.as_ref();
        let still = StillLoads::new(top, self.net, plate).solve(&self.analysis.sections, (cases, numbers), winds);
        let seen = |solutions: &[Solution]| self.net.seen(&reader, lifting, solutions);
        let lying: Vec<Vec<Seen>> = still.iter().map(|still| seen(&still.parts)).collect();
        // Cases with the same people on them share what those do.
        let mut groups: Vec<Vec<usize>> = Vec::new();
        let same = |a: &LoadCase, b: &LoadCase| a.people == b.people && a.hand == b.hand;
        for (number, own) in still.iter().enumerate() {
            match groups.iter_mut().find(|group| same(&cases[still[group[0]].case], &cases[own.case])) {
                Some(group) => group.push(number),
                None => groups.push(vec![number]),
            }
        }
        let mut all: Vec<OfState> = Vec::new();
        let mut take =
            |state: load_case::State, own: &[AtPlace]| match all.iter_mut().find(|(known, _)| *known == state) {
                Some((_, all)) => merge(all, own),
                None => all.push((state, own.to_vec())),
            };
        for group in groups {
            let placed = people::placed(top, self.net, &cases[still[group[0]].case]);
            let parts: Result<Vec<Vec<OfState>>, NoPlate> = placed
                .par_chunks(AT_ONCE)
                // Where nothing moves, what lies still is all.
                .chain(placed.is_empty().then_some(&placed[..]).into_par_iter())
                .map(|chunk| {
                    let loads: Vec<Load> = chunk.iter().map(|placed| placed.load(plate)).collect();
                    let moving = seen(&plate.solve(&loads));
                    let ways = moving.iter().zip(chunk).map(Some).chain(chunk.is_empty().then_some(None));
                    let ways: Vec<_> = ways.collect();
                    let each = group.iter().map(|&number| {
                        let mut worst = self.nothing();
                        for from in &still[number].from {
                            for way in &ways {
                                let mut parts: Vec<Part<'_>> =
                                    from.iter().map(|&(part, times)| (&lying[number][part], times, times)).collect();
                                parts.extend(way.map(|(seen, placed)| (seen, 1.0, placed.at_rest)));
                                if let Some(lifting) = lifting {
                                    lifting.open(&mut parts, top.supports.len())?;
                                }
                                self.take(&mut worst, &parts, (still[number].case, way.map(|(_, placed)| placed)));
                            }
                        }
                        Ok((cases[still[number].case].state, worst))
                    });
                    each.collect()
                })
                .collect();
            for (state, own) in parts?.into_iter().flatten() {
                take(state, &own);
            }
        }
        Ok(all)
    }

    /// Looks at what acts together, at every place.
    fn take(&self, worst: &mut [AtPlace], parts: &[Part<'_>], (case, moving): (usize, Option<&people::Placed>)) {
        for (number, sample) in self.samples.iter().enumerate() {
            let Some((place, lever)) = *sample else { continue };
            let states =
                parts.iter().map(|(seen, times, rest)| (self.sampler.state(&seen.sampled, number), *times, *rest));
            let at = self.places[place].0;
            let punched =
                || moving.is_some_and(|moving| moving.beside.iter().any(|disc| disc.at.distance(at) < disc.radius));
            worst[place].take(states, lever, case, &punched);
        }
    }
}

/// Whole micrometres: places that differ by rounding are one.
#[expect(clippy::cast_possible_truncation, reason = "a top is some metres long")]
fn micrometers(length: Length) -> i64 {
    length.get::<uom::si::length::micrometer>().round() as i64
}

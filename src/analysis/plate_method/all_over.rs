//! What the whole top does under one load, place by place: for drawings. Checks look at [`PlateForces`](super::PlateForces).

use std::collections::BTreeMap;

use super::{NoPlate, layout::Net, lifting::Lifting, loads::StillLoads, people, wind::Winds};
use crate::{
    analysis::{Analysis, line::Region},
    finite_element::{Degree, Load, Plate, Solution, State},
    geometry::Point,
    load_case::LoadCase,
    units::{Dimensioned, Length, Ratio},
};

/// Pieces that each side of a triangle is cut into. A field of degree 4 is nearly straight over a sixth of a side.
const PIECES: u32 = 6;

/// A place of the top with what it does there.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Spot {
    /// Where.
    pub at: Point,
    /// The field or the backing that it lies in; a conduit, too narrow for triangles of its own, counts as what is round it.
    pub region: Region,
    /// Deflection, forces, moments and shears.
    pub state: State,
}

/// The whole top under one load.
#[derive(Clone, Debug, PartialEq)]
pub struct AllOver {
    /// Places, triangle by triangle.
    spots: Vec<Spot>,
    /// By spot: the place that it is one of. Triangles that meet see a place each in their own way.
    one_place: Vec<usize>,
    places: Vec<Point>,
    triangles: Vec<[usize; 3]>,
}

/// A quantity all over the top: its value at places that small triangles join.
#[derive(Clone, Debug, PartialEq)]
pub struct Spread<Q> {
    /// Places; where a backing ends twice, as the field and as the backing see them.
    pub places: Vec<Point>,
    /// Value at each.
    pub values: Vec<Q>,
    /// Triangles, anticlockwise, as numbers of places.
    pub triangles: Vec<[usize; 3]>,
}

/// Which load is to be looked at.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LookedAt {
    /// The case, as its place in [`Analysis::cases`].
    pub case: usize,
    /// Where the person or the hand is that moves in it.
    pub load_at: Option<Point>,
    /// The place at which, of all ways in which wind and people may act together, the worst is wanted.
    pub at: Point,
    /// Whether people rest, as sag is judged, or move with strength.
    pub at_rest: bool,
}

impl Analysis<'_> {
    /// What the top does all over under one load of a case, by the plate method on the mesh that its forces are from.
    ///
    /// ```text
    /// state = Σ parts × times,   the sum of those that may act together for which size(state at `at`) is largest
    /// ```
    ///
    /// # Validity
    /// As [`PlateMethod::new`](super::PlateMethod::new): the same loads and openings. What is seen where triangles meet is not
    /// joined yet, see [`AllOver::spread`]; the peaks at ends of pipes and corners of backing are in it as first-order theory
    /// has them, without the mean over a disc.
    ///
    /// # Errors
    /// [`NoPlate`] where there is no plate solution.
    ///
    /// # Source
    /// [`DERIVED`](crate::source::DERIVED): sums of solutions that the envelope takes too.
    ///
    /// # Examples
    ///
    /// Where the envelope found the largest sag under its own weight, the map has it too:
    ///
    /// ```
    /// use skinspan::{analysis::{Analysis, DIVISIONS, LookedAt}, input::{NamedText, read_design, read_tables}, units::Ratio};
    /// # let text = std::fs::read_to_string(concat!(env!("CARGO_MANIFEST_DIR"), "/examples/galley-roof.toml")).unwrap();
    /// # let text = NamedText { name: String::new(), text };
    /// let top = read_design(&text, &read_tables(&[]).unwrap(), None).unwrap();
    /// let analysis = Analysis::new(&top, DIVISIONS).unwrap().with_plate_method();
    /// let forces = analysis.fields().find(|forces| analysis.cases[forces.case].id == "own-weight").expect("a case");
    /// let sag = forces.between[0];
    /// let looked = LookedAt { case: forces.case, load_at: None, at: sag.at, at_rest: true };
    /// let all = analysis.all_over(looked, &|_, state| Ratio::from(state.deflection.value.abs())).expect("a solution");
    /// let map = all.spread(|spot| spot.state.deflection);
    /// let near = |place: &skinspan::geometry::Point| place.distance(sag.at).value;
    /// let here = map.places.iter().zip(&map.values).min_by(|a, b| near(a.0).total_cmp(&near(b.0))).expect("a place");
    /// assert!((here.1.value / sag.sag.value - 1.0).abs() < 1e-6);
    /// ```
    pub fn all_over(&self, wanted: LookedAt, size: &dyn Fn(Region, &State) -> Ratio) -> Result<AllOver, NoPlate> {
        let (top, cases) = (self.top, &self.cases[..]);
        let sides = self.whole.iter().flatten().next().map_or_else(|| Ratio::from(1.0), |method| method.sides);
        let net = Net::new(top, &self.sections, sides).map_err(NoPlate::Mesh)?;
        let left = self.core_left(wanted.case);
        let plate = net.plate(top, &self.sections, (Degree::Four, left), None)?;
        let winds = Winds::new(top, &net, cases);
        let still = StillLoads::new(top, &net, &plate).solve(&self.sections, (cases, &[wanted.case]), &winds);
        let sampler = net.sampler(top, &plate, std::iter::empty());
        let lifting = Lifting::new(top, &net, &sampler.on(&plate), left);
        let moving = moving((&net, &plate), self, &cases[wanted.case], wanted);
        let (on, at) = StillLoads::new(top, &net, &plate).onto(wanted.at);
        let mut worst: Option<(Ratio, Solution)> = None;
        for still in &still {
            for from in &still.from {
                for moving in moving.iter().map(Some).chain(moving.is_empty().then_some(None)) {
                    let lying = from.iter().map(|&(part, times)| (&still.parts[part], times));
                    let mut parts: Vec<(&Solution, f64)> =
                        lying.chain(moving.map(|(solution, times)| (solution, *times))).collect();
                    if let Some(lifting) = &lifting {
                        let opened = lifting.opened_together(&plate, &parts)?;
                        parts.extend(opened);
                    }
                    let Some(sum) = Solution::sum(&parts) else { continue };
                    let states = plate.states(on, &[plate.share(on, at)], &sum);
                    let seen = states.first().map_or_else(Ratio::default, |state| size(net.region(on), state));
                    if worst.as_ref().is_none_or(|(known, _)| seen > *known) {
                        worst = Some((seen, sum));
                    }
                }
            }
        }
        let solution = worst.map_or_else(|| plate.solve(&[Load::none(&plate)]).remove(0), |(_, solution)| solution);
        Ok(AllOver::new(&net, &plate, &solution))
    }
}

/// What moves at the place that is asked for, each way by itself, with how many times it acts.
fn moving(
    (net, plate): (&Net, &Plate),
    analysis: &Analysis<'_>,
    case: &LoadCase,
    wanted: LookedAt,
) -> Vec<(Solution, f64)> {
    let here = |at: Point| wanted.load_at.is_some_and(|wanted| wanted == at);
    let placed: Vec<_> = people::placed(analysis.top, net, case).into_iter().filter(|placed| here(placed.at)).collect();
    let loads: Vec<Load> = placed.iter().map(|placed| placed.load(plate)).collect();
    let times = placed.iter().map(|placed| if wanted.at_rest { placed.at_rest } else { 1.0 });
    plate.solve(&loads).into_iter().zip(times).collect()
}

impl AllOver {
    fn new(net: &Net, plate: &Plate, solution: &Solution) -> Self {
        let shares: Vec<[f64; 2]> = (0..=PIECES)
            .flat_map(|row| (0..=PIECES - row).map(move |k| [k, row].map(|n| f64::from(n) / f64::from(PIECES))))
            .collect();
        let small = small_triangles();
        let mut all = Self { spots: Vec::new(), one_place: Vec::new(), places: Vec::new(), triangles: Vec::new() };
        let mut known: BTreeMap<(usize, [i64; 2]), usize> = BTreeMap::new();
        for triangle in 0..plate.triangles() {
            let (first, region) = (all.spots.len(), net.of_triangle[triangle]);
            for (&share, state) in shares.iter().zip(plate.states(triangle, &shares, solution)) {
                let at = plate.place(triangle, share);
                let next = all.places.len();
                let place = *known.entry((region, [at.x, at.y].map(micrometers))).or_insert(next);
                if place == next {
                    all.places.push(at);
                }
                all.one_place.push(place);
                all.spots.push(Spot { at, region: net.region(triangle), state });
            }
            all.triangles.extend(small.iter().map(|corners| corners.map(|corner| first + corner)));
        }
        all
    }

    /// A quantity all over the top. Where triangles of one region meet it is the mean of what they say: of sizes, not of
    /// vectors, so that a shear that changes its sign over a pipe does not vanish there.
    pub fn spread<Q: Dimensioned>(&self, of: impl Fn(&Spot) -> Q) -> Spread<Q> {
        let mut sums = vec![(0.0, 0.0); self.places.len()];
        for (spot, &place) in self.spots.iter().zip(&self.one_place) {
            let (sum, count) = &mut sums[place];
            *sum += of(spot).si();
            *count += 1.0;
        }
        Spread {
            places: self.places.clone(),
            values: sums.into_iter().map(|(sum, count)| Q::from_si(sum / f64::max(count, 1.0))).collect(),
            triangles: self.triangles.iter().map(|corners| corners.map(|corner| self.one_place[corner])).collect(),
        }
    }
}

/// The triangles that the rows of places in a large one make.
fn small_triangles() -> Vec<[usize; 3]> {
    let mut all = Vec::new();
    let mut first = 0;
    for row in 0..PIECES {
        let count = (PIECES - row) as usize;
        let above = first + count + 1;
        for k in 0..count {
            all.push([first + k, first + k + 1, above + k]);
            if k + 1 < count {
                all.push([first + k + 1, above + k + 1, above + k]);
            }
        }
        first = above;
    }
    all
}

/// Whole micrometres: places that differ by rounding are one.
#[expect(clippy::cast_possible_truncation, reason = "a top is some metres long")]
fn micrometers(length: Length) -> i64 {
    length.get::<uom::si::length::micrometer>().round() as i64
}

//! Strips: equilibrium, reciprocity, superposition, mirror, subdivision, and the stiffness method as a second opinion.
#![allow(clippy::unwrap_used, reason = "a test that cannot go on has failed")]

use nalgebra::{DMatrix, DVector};
use proptest::prelude::*;
use skinspan::{
    closed_form::strip::{Action, MovingPatch, Segment, Station, Strip, StripError, StripForces, Support},
    units::{ArealMassDensity, Force, ForcePerWidth, Length, Pressure, per_width},
};
use uom::si::{areal_mass_density::kilogram_per_square_meter, force::newton, length::meter, pressure::pascal};

/// Rounding of sums over some dozen stations.
const EXACT: f64 = 1e-11;
/// Distance of the bounds of `ω²` that count as met, for frequencies as close as may be.
const BOUNDS_MET: f64 = 1e-6;
/// Mass at the middles of 200 parts: ten of them at least in the shortest bay.
const GATHERED: f64 = 5e-3;
/// The stiffness method loses digits to its matrix, whose condition grows with the fourth power of the stations.
const STIFFNESS_METHOD: f64 = 1e-6;

fn m(x: f64) -> Length {
    Length::new::<meter>(x)
}

fn force(x: f64) -> ForcePerWidth {
    per_width(Force::new::<newton>(x) / m(1.0))
}

fn segment(length: f64, d: f64, s: f64) -> Segment {
    Segment {
        length: m(length),
        rigidity: per_width(Force::new::<newton>(d) * m(1.0)),
        shear: force(s),
        mass: ArealMassDensity::new::<kilogram_per_square_meter>(8.0),
    }
}

fn patch(centre: f64, length: f64, p: f64) -> Action {
    Action::Patch { centre: m(centre), length: m(length), force: force(p) }
}

/// What a random strip is made of: segments (length, D, S) and supports as shares of the length.
#[derive(Clone, Debug)]
struct Plan {
    segments: Vec<(f64, f64, f64)>,
    supports: Vec<(f64, bool)>,
}

impl Plan {
    fn length(&self) -> f64 {
        self.segments.iter().map(|s| s.0).sum()
    }

    fn strip(&self, extra: &[f64], divisions: usize) -> Strip {
        let l = self.length();
        let segments: Vec<_> = self.segments.iter().map(|&(l, d, s)| segment(l, d, s)).collect();
        let supports: Vec<_> = self.supports.iter().map(|&(x, clamped)| Support { at: m(x * l), clamped }).collect();
        let extra: Vec<_> = extra.iter().map(|&x| m(x * l)).collect();
        Strip::new(&segments, &supports, &extra, divisions).unwrap()
    }

    fn mirrored(&self) -> Self {
        Self {
            segments: self.segments.iter().rev().copied().collect(),
            supports: self.supports.iter().rev().map(|&(x, c)| (1.0 - x, c)).collect(),
        }
    }
}

fn plan() -> impl Strategy<Value = Plan> {
    let segments = prop::collection::vec((0.2..1.2, 300.0..9000.0, 1e4..1e6), 1..4);
    // Supports on a coarse grid, so that none stand on top of each other; at least two.
    let supports = prop::sample::subsequence((0..=10).collect::<Vec<u32>>(), 2..5)
        .prop_flat_map(|grid| (Just(grid), prop::collection::vec(prop::bool::weighted(0.2), 5)));
    (segments, supports).prop_map(|(segments, (grid, clamps))| Plan {
        segments,
        supports: grid.iter().zip(clamps).map(|(&g, c)| (f64::from(g) / 10.0, c)).collect(),
    })
}

fn close(a: f64, b: f64, scale: f64, tolerance: f64) -> Result<(), TestCaseError> {
    prop_assert!((a - b).abs() <= tolerance * scale, "{a} is not {b} (scale {scale})");
    Ok(())
}

fn values(s: &Station) -> [f64; 6] {
    let (ml, mr) = (s.moment_left.value, s.moment_right.value);
    [ml, mr, s.shear_left.value, s.shear_right.value, s.deflection.value, s.rotation.value]
}

/// Largest size of each value on either side, to measure differences against; not below what a small load does, as a
/// load on a support leaves rounding alone.
fn scales(forces: &StripForces<'_>) -> [f64; 6] {
    let top = forces.stations().fold([1e-3, 1e-3, 1e-3, 1e-3, 1e-5, 1e-5], |mut top: [f64; 6], s| {
        for (t, v) in top.iter_mut().zip(values(&s)) {
            *t = t.max(v.abs());
        }
        top
    });
    let (moment, shear) = (top[0].max(top[1]), top[2].max(top[3]));
    [moment, moment, shear, shear, top[4], top[5]]
}

fn same(a: &Station, b: &Station, scales: &[f64; 6], tolerance: f64) -> Result<(), TestCaseError> {
    for ((x, y), scale) in values(a).into_iter().zip(values(b)).zip(scales) {
        close(x, y, *scale, tolerance)?;
    }
    Ok(())
}

fn loads(plan: &Plan, x: f64, c: f64, p: f64, q: f64) -> [Action; 4] {
    let l = plan.length();
    let centre = (x * l).clamp(c * l / 2.0, l - c * l / 2.0);
    [
        patch(centre, c * l, p),
        Action::Uniform { from: m(0.1 * l), to: m(0.9 * x.max(0.2) * l), pressure: Pressure::new::<pascal>(q) },
        Action::Moment { at: m(x * l), moment: per_width(Force::new::<newton>(p / 10.0)) },
        Action::Curvature { from: m(0.25 * l), to: m(l), curvature: (p / 3e4) / m(1.0) },
    ]
}

/// Dense stiffness method with exact elements between the stations of `strip`, nodal forces only.
fn stiffness_method(plan: &Plan, strip: &Strip, forces: &[f64]) -> DVector<f64> {
    let x: Vec<f64> = strip.stations().map(|x| x.value).collect();
    let n = x.len();
    let mut k = DMatrix::<f64>::zeros(2 * n, 2 * n);
    for (e, pair) in x.windows(2).enumerate() {
        let (h, middle) = (pair[1] - pair[0], f64::midpoint(pair[0], pair[1]));
        let mut end = 0.0;
        let &(_, d, s) = plan
            .segments
            .iter()
            .find(|p| {
                end += p.0;
                middle < end
            })
            .unwrap();
        let phi = 12.0 * d / (s * h * h);
        let c = d / (h.powi(3) * (1.0 + phi));
        let (a, b) = ((4.0 + phi) * h * h, (2.0 - phi) * h * h);
        let local = [
            [12.0, 6.0 * h, -12.0, 6.0 * h],
            [6.0 * h, a, -6.0 * h, b],
            [-12.0, -6.0 * h, 12.0, -6.0 * h],
            [6.0 * h, b, -6.0 * h, a],
        ];
        for (i, row) in local.iter().enumerate() {
            for (j, v) in row.iter().enumerate() {
                k[(2 * e + i, 2 * e + j)] += c * v;
            }
        }
    }
    let mut f = DVector::zeros(2 * n);
    for (i, p) in forces.iter().enumerate() {
        f[2 * i] = *p;
    }
    for s in strip.supports() {
        let i = x.iter().position(|p| (p - s.at.value).abs() < 1e-9).unwrap();
        for dof in [2 * i, 2 * i + 1].into_iter().take(if s.clamped { 2 } else { 1 }) {
            k.row_mut(dof).fill(0.0);
            k.column_mut(dof).fill(0.0);
            k[(dof, dof)] = 1.0;
            f[dof] = 0.0;
        }
    }
    k.lu().solve(&f).unwrap()
}

proptest! {
    #[test]
    fn strip_agrees_with_stiffness_method(plan in plan(), seed in prop::collection::vec(-1.0..1.0, 40)) {
        let strip = plan.strip(&[], 3);
        let x: Vec<f64> = strip.stations().map(|x| x.value).collect();
        let p: Vec<f64> = x.iter().zip(seed.iter().cycle()).map(|(_, s)| 100.0 * s).collect();
        let actions: Vec<_> = x.iter().zip(&p).map(|(&x, &p)| Action::Point { at: m(x), force: force(p) }).collect();
        let forces = strip.solve(&actions).unwrap();
        let u = stiffness_method(&plan, &strip, &p);
        let scale = scales(&forces);
        for (i, s) in forces.stations().enumerate() {
            close(s.deflection.value, u[2 * i], scale[4], STIFFNESS_METHOD)?;
            close(s.rotation.value, u[2 * i + 1], scale[5], STIFFNESS_METHOD)?;
        }
    }

    /// With no mass but concentrated ones, `ω²` is one over the largest root of flexibility times mass.
    #[test]
    fn strip_swings_as_its_flexibility_says(
        plan in plan(), places in prop::collection::vec((0.0..1.0, 0.1..30.0), 1..6), divisions in 1_usize..4,
    ) {
        let l = plan.length();
        let segments: Vec<_> =
            plan.segments.iter().map(|&(l, d, s)| Segment { mass: ArealMassDensity::default(), ..segment(l, d, s) }).collect();
        let supports: Vec<_> = plan.supports.iter().map(|&(x, clamped)| Support { at: m(x * l), clamped }).collect();
        let strip = Strip::new(&segments, &supports, &[], divisions).unwrap();
        let area = |mass| ArealMassDensity::new::<kilogram_per_square_meter>(mass) * m(1.0);
        let masses: Vec<_> = places.iter().map(|&(x, mass)| (m(x * l), area(mass))).collect();
        let n = places.len();
        let mut dynamic = DMatrix::<f64>::zeros(n, n);
        for (j, &(x, b)) in places.iter().enumerate() {
            let forces = strip.solve(&[Action::Point { at: m(x * l), force: force(1.0) }]).unwrap();
            for (i, &(y, a)) in places.iter().enumerate() {
                dynamic[(i, j)] = (a * b).sqrt() * forces.at(m(y * l)).unwrap().deflection.value;
            }
        }
        let largest = dynamic.symmetric_eigen().eigenvalues.max();
        let due = largest.recip().sqrt() / std::f64::consts::TAU;
        let swing = strip.swing(&masses).unwrap();
        let first = swing.first_frequency().value;
        close(first, due, due, BOUNDS_MET)?;
        prop_assert!(swing.at_least().value <= first * (1.0 + EXACT));
    }

    /// Mass spread over a strip, against the same mass gathered at many places.
    #[test]
    fn strip_swings_alike_with_its_mass_gathered(plan in plan()) {
        let (l, parts) = (plan.length(), 200_u32);
        let strip = plan.strip(&[], 1);
        let bare: Vec<_> =
            plan.segments.iter().map(|&(l, d, s)| Segment { mass: ArealMassDensity::default(), ..segment(l, d, s) }).collect();
        let supports: Vec<_> = strip.supports().collect();
        let bare = Strip::new(&bare, &supports, &[], 1).unwrap();
        let part = m(l / f64::from(parts));
        let gathered: Vec<_> = (0..parts)
            .map(|i| (part * (f64::from(i) + 0.5), ArealMassDensity::new::<kilogram_per_square_meter>(8.0) * part))
            .collect();
        let (due, got) = (bare.first_frequency(&gathered).unwrap(), strip.first_frequency(&[]).unwrap());
        close(got.value, due.value, due.value, GATHERED)?;
    }

    #[test]
    fn strip_keeps_equilibrium(plan in plan(), x in 0.0..1.0, c in 0.0..0.3, p in 1.0..900.0, q in -900.0..900.0) {
        let strip = plan.strip(&[], 2);
        let actions = loads(&plan, x, c, p, q);
        let forces = strip.solve(&actions).unwrap();
        let l = plan.length();
        let Action::Uniform { from, to, .. } = actions[1] else { unreachable!() };
        let Action::Patch { centre, .. } = actions[0] else { unreachable!() };
        let pressed = q * (to.value - from.value);
        let total = p + pressed;
        let up: f64 = forces.reactions().map(|r| r.force.value).sum();
        let about: f64 = forces.reactions().map(|r| r.force.value * r.at.value - r.moment.value).sum();
        let middle = f64::midpoint(from.value, to.value);
        let due = p * centre.value + pressed * middle + p / 10.0;
        let size: f64 = p + pressed.abs() + forces.reactions().map(|r| r.force.value.abs()).sum::<f64>();
        close(up, total, size, EXACT)?;
        close(about, due, size * l, EXACT)?;
    }

    #[test]
    fn strip_takes_other_sections(
        plan in plan(), share in 0.2_f64..1.0, x in 0.0..1.0, c in 0.0..0.3, p in 1.0..900.0, q in -900.0..900.0,
    ) {
        let softer = Plan {
            segments: plan.segments.iter().map(|&(l, d, s)| (l, d * share.sqrt(), s * share)).collect(),
            supports: plan.supports.clone(),
        };
        let segments: Vec<_> = softer.segments.iter().map(|&(l, d, s)| segment(l, d, s)).collect();
        let (turned, built) = (plan.strip(&[0.4], 3).with_sections(&segments).unwrap(), softer.strip(&[0.4], 3));
        let actions = loads(&plan, x, c, p, q);
        let (a, b) = (turned.solve(&actions).unwrap(), built.solve(&actions).unwrap());
        prop_assert!(a.stations().eq(b.stations()));
        let longer: Vec<_> = softer.segments.iter().map(|&(l, d, s)| segment(l * 1.01, d, s)).collect();
        prop_assert_eq!(turned.with_sections(&longer).unwrap_err(), StripError::OtherLengths);
    }

    #[test]
    fn strip_is_reciprocal(plan in plan(), a in 0.0..1.0, b in 0.0..1.0) {
        let strip = plan.strip(&[], 1);
        let l = plan.length();
        let one = |x: f64| strip.solve(&[Action::Point { at: m(x * l), force: force(1.0) }]).unwrap();
        let (fa, fb) = (one(a), one(b));
        let at = |f: &StripForces<'_>, x: f64| f.at(m(x * l)).unwrap().deflection.value;
        let scale = at(&fa, a).abs().max(at(&fb, b).abs());
        close(at(&fa, b), at(&fb, a), scale.max(1e-9), EXACT)?;
    }

    #[test]
    fn strip_adds_up(plan in plan(), x in 0.0..1.0, c in 0.0..0.3, p in 1.0..900.0, q in -900.0..900.0) {
        let strip = plan.strip(&[0.123, 0.77], 2);
        let actions = loads(&plan, x, c, p, q);
        let together = strip.solve(&actions).unwrap();
        let parts: Vec<_> = actions.iter().map(|a| strip.solve(std::slice::from_ref(a)).unwrap()).collect();
        let mut scale = [0.0; 6];
        for part in &parts {
            for (t, v) in scale.iter_mut().zip(scales(part)) {
                *t += v;
            }
        }
        for (i, s) in together.stations().enumerate() {
            let mut sum = [0.0; 6];
            for part in &parts {
                for (t, v) in sum.iter_mut().zip(values(&part.stations().nth(i).unwrap())) {
                    *t += v;
                }
            }
            for ((got, due), scale) in values(&s).into_iter().zip(sum).zip(scale) {
                close(got, due, scale, EXACT)?;
            }
        }
    }

    #[test]
    fn strip_mirrors(plan in plan(), x in 0.0_f64..1.0, c in 0.0_f64..0.3, p in 1.0..900.0) {
        let l = plan.length();
        let centre = (x * l).clamp(c * l / 2.0, l - c * l / 2.0);
        let (a, b) = (plan.strip(&[], 2), plan.mirrored().strip(&[], 2));
        let fa = a.solve(&[patch(centre, c * l, p)]).unwrap();
        let fb = b.solve(&[patch(l - centre, c * l, p)]).unwrap();
        let scale = scales(&fa);
        let back: Vec<_> = fb.stations().collect();
        for (s, t) in fa.stations().zip(back.iter().rev()) {
            let mirrored = Station {
                moment_left: t.moment_right, moment_right: t.moment_left,
                shear_left: -t.shear_right, shear_right: -t.shear_left,
                rotation: -t.rotation, ..*t
            };
            same(&s, &mirrored, &scale, EXACT)?;
        }
    }

    #[test]
    fn strip_ignores_stations(
        plan in plan(), x in 0.0..1.0, c in 0.0..0.3, p in 1.0..900.0, q in -900.0..900.0,
        extra in prop::collection::vec(0.0..1.0, 3), divisions in 1_usize..9,
    ) {
        let (coarse, fine) = (plan.strip(&[], 1), plan.strip(&extra, divisions));
        let actions = loads(&plan, x, c, p, q);
        let (a, b) = (coarse.solve(&actions).unwrap(), fine.solve(&actions).unwrap());
        let scale = scales(&b);
        for s in b.stations() {
            same(&a.at(s.at).unwrap(), &s, &scale, EXACT)?;
        }
        let l = coarse.length();
        close(a.largest_sagging().value.value, b.largest_sagging().value.value, scale[0], EXACT)?;
        close(a.largest_hogging().value.value, b.largest_hogging().value.value, scale[0], EXACT)?;
        close(a.largest_shear().value.value.abs(), b.largest_shear().value.value.abs(), scale[2], EXACT)?;
        let most = |f: &StripForces<'_>| f.largest_deflection_between(m(0.0), l).unwrap().value.value.abs();
        close(most(&a), most(&b), most(&b), EXACT)?;
    }

    #[test]
    fn strip_peaks_bound_every_place(plan in plan(), x in 0.0..1.0, c in 0.0..0.3, p in 1.0..900.0, q in -900.0..900.0) {
        let strip = plan.strip(&[], 1);
        let forces = strip.solve(&loads(&plan, x, c, p, q)).unwrap();
        let (high, low) = (forces.largest_sagging().value.value, forces.largest_hogging().value.value);
        let shear = forces.largest_shear().value.value.abs();
        let w = forces.largest_deflection_between(m(0.0), strip.length()).unwrap();
        prop_assert!(high >= 0.0 && low <= 0.0);
        for i in 0..=200 {
            let s = forces.at(strip.length() * (f64::from(i) / 200.0)).unwrap();
            for moment in [s.moment_left.value, s.moment_right.value] {
                prop_assert!(moment <= high + 1e-9 && moment >= low - 1e-9, "{moment} at {:?}", s.at);
            }
            prop_assert!(s.shear_left.value.abs() <= shear + 1e-9);
            prop_assert!(s.deflection.value.abs() <= w.value.value.abs() * (1.0 + EXACT));
        }
        close(forces.at(w.at).unwrap().deflection.value, w.value.value, w.value.value.abs(), EXACT)?;
    }

    #[test]
    fn envelope_is_the_extreme_of_its_positions(plan in plan(), c in 0.0..0.2, p in 1.0..900.0) {
        let strip = plan.strip(&[], 3);
        let l = plan.length();
        let positions: Vec<_> = strip.stations().map(|x| MovingPatch {
            hogging: force(2.0 * p), shear: force(3.0 * p), deflection: force(0.5 * p), ..MovingPatch::even(x, force(p))
        }).collect();
        let envelope = strip.envelope(m(c * l), &positions).unwrap();
        let solved: Vec<_> = positions.iter().map(|k| {
            let centre = k.centre.value.clamp(c * l / 2.0, l - c * l / 2.0);
            strip.solve(&[patch(centre, c * l, p)]).unwrap()
        }).collect();
        for (i, e) in envelope.moments().enumerate() {
            let all = |f: &StripForces<'_>| { let s = f.stations().nth(i).unwrap(); [s.moment_left.value, s.moment_right.value] };
            let due_max = solved.iter().flat_map(all).fold(0.0, f64::max);
            let due_min = solved.iter().flat_map(all).fold(0.0, f64::min);
            close(e.max.value, due_max, p * l, EXACT)?;
            close(e.min.value, 2.0 * due_min, p * l, EXACT)?;
            let cause = all(&solved[e.max_from]).into_iter().fold(0.0, f64::max);
            close(cause, due_max, p * l, EXACT)?;
        }
        for (i, (left, right)) in envelope.shears_left().zip(envelope.shears_right()).enumerate() {
            let at = |f: &StripForces<'_>| f.stations().nth(i).unwrap();
            close(left.max.value, solved.iter().map(|f| 3.0 * at(f).shear_left.value).fold(0.0, f64::max), p, EXACT)?;
            close(right.min.value, solved.iter().map(|f| 3.0 * at(f).shear_right.value).fold(0.0, f64::min), p, EXACT)?;
        }
        for (i, e) in envelope.deflections().enumerate() {
            let due = solved.iter().map(|f| 0.5 * f.stations().nth(i).unwrap().deflection.value).fold(0.0, f64::max);
            close(e.max.value, due, due.max(1e-4), EXACT)?;
        }
        for (i, e) in envelope.reactions().enumerate() {
            let due = solved.iter().map(|f| 3.0 * f.reactions().nth(i).unwrap().force.value).fold(0.0, f64::max);
            close(e.max.value, due, p, EXACT)?;
        }
    }
}

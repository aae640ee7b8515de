//! Effective widths against series solutions of the shear-flexible plate. The strip must never show less than the
//! plate, and not absurdly more.
#![allow(clippy::unwrap_used, reason = "a test that cannot go on has failed")]

use skinspan::{
    closed_form::{
        effective_width::{
            NearEdge, Spread, deflection, hogging, near_free_edge, overhang, rim_twist, sagging, shear_at_support,
            shear_beside_patch, shear_near_free_edge, tip_deflection,
        },
        plate::{Plate, PlateLoad, PlateStiffness},
    },
    units::{Force, Length},
};
use uom::si::force::newton;

use crate::{
    free_corner::{Bent, Corner},
    kit::{force, m, rigidity, share, within},
    semi_analytic::{Patch, Reference, Row},
};

/// Mesh and truncation of the reference, measured by refining it.
const REFERENCE: f64 = 0.01;
/// Width of the plate in spans: the effect of its far edges falls below 1 %.
const WIDTH: f64 = 3.0;

/// Stiffness along the strip is 1, span 1.
#[derive(Clone, Copy, Debug)]
struct Case {
    d22: f64,
    eta: f64,
    shear: f64,
    phi: f64,
    /// Side of the square patch.
    side: f64,
    x: f64,
}

impl Case {
    /// `D12`, `D66`, `Sx`, `Sy`.
    fn others(&self) -> [f64; 4] {
        let root = self.d22.sqrt();
        let d12 = 0.25 * root.min(self.d22).min(1.0) * self.eta.min(1.0);
        [d12, (self.eta * root - d12) / 2.0, 1.0 / self.phi, self.shear / self.phi]
    }

    fn spread(&self) -> Spread {
        let [d12, d66, sx, sy] = self.others();
        Spread::new(&PlateStiffness {
            d11: rigidity(1.0),
            d12: rigidity(d12),
            d22: rigidity(self.d22),
            d66: rigidity(d66),
            shear_x: force(sx),
            shear_y: force(sy),
        })
    }

    /// Plate along the strip: a row of results through the middle of the patch, which stands at `at`.
    fn along(&self, length: f64, supports: &[(f64, bool)], at: f64) -> Vec<Row> {
        let [d12, d66, s1, s2] = self.others();
        let plate =
            Reference { length, width: WIDTH, supports: supports.to_vec(), d11: 1.0, d12, d22: self.d22, d66, s1, s2 };
        let patch = Patch { centre: [at, WIDTH / 2.0], size: [self.side; 2] };
        plate.solve(patch, WIDTH / 2.0, self.terms(WIDTH), 0.4)
    }

    /// Bay with a free edge along the strip at distance `e`: the series now runs along the strip. Row across it.
    fn beside_edge(&self, e: f64, t: f64) -> Vec<Row> {
        let [d12, d66, s1, s2] = self.others();
        // Along and across change places.
        let plate =
            Reference { length: 2.5, width: 1.0, supports: vec![], d11: self.d22, d12, d22: 1.0, d66, s1: s2, s2: s1 };
        plate.solve(Patch { centre: [e, self.x], size: [self.side; 2] }, t, self.terms(1.0) + 30, 0.3)
    }

    /// Six waves for each patch width across.
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a small count")]
    fn terms(&self, width: f64) -> usize {
        (6.0 * width / self.side).round() as usize
    }

    /// Moment of a simple strip under the patch, at its largest.
    fn simple_moment(&self) -> f64 {
        let left = 1.0 - self.x;
        left * (self.x - self.side / 2.0) + left * left * self.side / 2.0
    }

    /// Deflection of a simple strip under the middle of the patch; a point is a little more than a patch.
    fn simple_deflection(&self) -> f64 {
        let reach = self.x * (1.0 - self.x);
        reach * reach / 3.0 + self.phi * (reach - self.side / 8.0)
    }
}

/// Corners of the stated range, each with a stiff and a soft core.
fn cases(loads: &[(f64, f64)]) -> Vec<Case> {
    let plates = [
        (1.0, 1.0, 1.0),
        (0.3, 1.0, 1.0),
        (3.0, 1.0, 1.0),
        (0.3, 0.4, 1.0),
        (1.0, 1.5, 1.0),
        (0.3, 0.4, 0.5),
        (1.0, 1.0, 2.0),
    ];
    let mut all = Vec::new();
    for (d22, eta, shear) in plates {
        for phi in PHIS {
            for &(side, x) in loads {
                all.push(Case { d22, eta, shear, phi, side, x });
            }
        }
    }
    all
}

const PHIS: [f64; 2] = [1e-4, 0.5];

fn top(rows: &[Row], f: impl Fn(&Row) -> f64) -> f64 {
    rows.iter().map(f).fold(0.0, f64::max)
}

/// The strip may not show less than the plate, nor more than `most` times as much.
struct Bounds {
    name: &'static str,
    most: f64,
}

impl Bounds {
    fn new(name: &'static str, most: f64) -> Self {
        Self { name, most }
    }

    fn see(&self, strip: f64, plate: f64, case: &impl std::fmt::Debug) {
        let ratio = strip / plate;
        assert!(ratio >= 1.0 - REFERENCE, "{}: strip/plate = {ratio:.3} for {case:?}", self.name);
        assert!(ratio <= self.most, "{}: strip/plate = {ratio:.3} for {case:?}", self.name);
    }
}

fn per(width: Length) -> f64 {
    1.0 / width.value
}

#[test]
fn widths_in_a_bay_are_safe() {
    let moment = Bounds::new("sagging", 2.0);
    let sink = Bounds::new("deflection", 1.7);
    let support = Bounds::new("shear at support", 6.0);
    let beside = Bounds::new("shear beside patch", 3.0);
    for c in cases(&IN_BAY) {
        let rows = c.along(1.0, &[(0.0, false), (1.0, false)], c.x);
        let (t, x, l, s) = (m(c.side), m(c.x), m(1.0), c.spread());
        let reaction = 1.0 - c.x;
        moment.see(c.simple_moment() * per(sagging(t, x, l, &s)), top(&rows, |r| r.m1), &c);
        sink.see(c.simple_deflection() * per(deflection(t, x, l, &s)), top(&rows, |r| r.w), &c);
        support.see(reaction * per(shear_at_support(t, x, false, &s)), rows[0].q1, &c);
        let near: Vec<Row> = rows.iter().filter(|r| r.s <= c.x - c.side / 2.0 + 1e-9).copied().collect();
        beside.see(reaction * per(shear_beside_patch(t, t)), top(&near, |r| r.q1), &c);
    }
}

/// Two equal bays: `M = −P y (L² − y²)/(4 L²)/(1 + 3φ)` over the middle support, `y` from the far one.
#[test]
fn widths_over_a_support_are_safe() {
    let moment = Bounds::new("hogging", 7.0);
    let under = Bounds::new("sagging, continuous", 6.0);
    for c in cases(&IN_BAY) {
        let rows = c.along(2.0, &[(0.0, false), (1.0, false), (2.0, false)], 1.0 - c.x);
        let y = 1.0 - c.x;
        let strip = y * (1.0 - y * y) / 4.0 / (1.0 + 3.0 * c.phi);
        let (t, x, l, s) = (m(c.side), m(c.x), m(1.0), c.spread());
        moment.see(strip * per(hogging(t, x, l, &s)), top(&rows, |r| -r.m1), &c);
        // End bay: nine tenths of it, measured from its outer support.
        let b = sagging(t, m(y.min(0.9)), m(0.9), &s);
        under.see((c.simple_moment() - strip * y) * per(b), top(&rows, |r| r.m1), &c);
    }
}

/// Overhang as long as the bay behind it.
#[test]
fn widths_on_an_overhang_are_safe() {
    let moment = Bounds::new("overhang", 7.0);
    let sink = Bounds::new("overhang deflection", 7.0);
    for c in cases(&[(0.05, 0.8), (0.3, 0.3), (0.3, 0.8)]) {
        let rows = c.along(2.0, &[(0.0, false), (1.0, false)], 1.0 + c.x);
        let (t, x, s) = (m(c.side), m(c.x), c.spread());
        moment.see(c.x * per(overhang(t, x, &s)), top(&rows, |r| -r.m1), &c);
        let strip = c.x * c.x * (1.0 + c.x) / 3.0 + c.phi * 2.0 * c.x;
        let under = rows.iter().find(|r| (r.s - 1.0 - c.x).abs() < 1e-9).unwrap();
        sink.see(strip * per(tip_deflection(t, x, m(1.0), &s)), under.w, &c);
    }
}

#[test]
fn widths_on_a_clamped_overhang_are_safe() {
    let moment = Bounds::new("clamped", 5.0);
    let sink = Bounds::new("clamped deflection", 6.0);
    let shear = Bounds::new("clamped shear", 8.0);
    for c in cases(&[(0.05, 0.8), (0.3, 0.3), (0.3, 0.8)]) {
        let rows = c.along(1.0, &[(0.0, true)], c.x);
        let (t, x, s) = (m(c.side), m(c.x), c.spread());
        moment.see(c.x * per(overhang(t, x, &s)), top(&rows, |r| -r.m1), &c);
        let under = rows.iter().find(|r| (r.s - c.x).abs() < 1e-9).unwrap();
        sink.see((c.x.powi(3) / 3.0 + c.phi * c.x) * per(tip_deflection(t, x, m(0.0), &s)), under.w, &c);
        shear.see(per(shear_at_support(t, x, true, &s)), rows[0].q1, &c);
    }
}

#[test]
fn widths_near_a_free_edge_are_safe() {
    let moment = Bounds::new("sagging at edge", 3.6);
    let sink = Bounds::new("deflection at edge", 2.7);
    let support = Bounds::new("shear at edge", 12.0);
    for c in cases(&IN_BAY) {
        for e in [c.side / 2.0, 0.25] {
            let (t, x, l, s) = (m(c.side), m(c.x), m(1.0), c.spread());
            let rows = c.beside_edge(e, c.x);
            let b = near_free_edge(sagging(t, x, l, &s), m(e), NearEdge::SpanMoment);
            moment.see(c.simple_moment() * per(b), top(&rows, |r| r.m2), &c);
            let b = near_free_edge(deflection(t, x, l, &s), m(e), NearEdge::SpanDeflection);
            sink.see(c.simple_deflection() * per(b), top(&rows, |r| r.w), &c);
            if c.phi >= 0.05 {
                let b = shear_near_free_edge(t, x, m(e), false, &s);
                support.see((1.0 - c.x) * per(b), top(&c.beside_edge(e, 0.0), |r| r.q2), &c);
            }
        }
    }
}

/// A top of practical size beside a free end, over a pipe at `pipe` inside its edge and another at the end of the bay.
#[derive(Clone, Copy, Debug)]
struct Top {
    d: f64,
    s: f64,
    /// `D22/D11`, and the twist stiffness over `√(D11 D22)` or `D11`, whichever is less.
    d22: f64,
    twist: f64,
    bay: f64,
    pipe: f64,
    side: f64,
    /// Distance of the skins.
    skins: f64,
}

impl Top {
    fn spread(&self) -> Spread {
        let [d12, d66] = self.others();
        Spread::new(&PlateStiffness {
            d11: rigidity(self.d),
            d12: rigidity(d12),
            d22: rigidity(self.d * self.d22),
            d66: rigidity(d66),
            shear_x: force(self.s),
            shear_y: force(self.s),
        })
    }

    fn others(&self) -> [f64; 2] {
        let root = self.d22.sqrt();
        [0.3 * self.d * root.min(self.d22), self.twist * self.d * root.min(1.0)]
    }

    /// Mesh lines at pipes and patches.
    fn plate(&self, patches: &[Patch]) -> Corner {
        let [d12, d66] = self.others();
        let (pipe, end) = (self.pipe, self.pipe + self.bay);
        let mut along = vec![0.0, pipe, end];
        let mut across = vec![0.0, self.side, 0.35, self.bay + 0.8];
        for patch in patches {
            let [s, t] = patch.centre;
            let half = self.side / 2.0;
            along.extend([s - half, s + half]);
            across.extend([t - half, t, t + half]);
        }
        // A pipe that lies nearer to the edge than that has a line all the same.
        let close = if pipe > 0.0 { pipe.min(0.015) * (1.0 - 1e-9) } else { 0.015 };
        let tidy = |mut lines: Vec<f64>| {
            lines.sort_by(f64::total_cmp);
            lines.dedup_by(|b, a| *b - *a < close);
            lines
        };
        Corner {
            lines: (tidy(along), tidy(across)),
            supports: vec![pipe, end],
            hard: false,
            d11: self.d,
            d12,
            d22: self.d * self.d22,
            d66,
            s1: self.s,
            s2: self.s,
        }
    }

    fn patch(&self, s: f64, t: f64) -> Patch {
        Patch { centre: [s, t], size: [self.side; 2] }
    }

    /// Largest of the results along the pipe about `t`: moment up and down, mean shear over the distance of the skins
    /// on either hand of it, peak of the shear.
    fn at_pipe(&self, bent: &Bent<'_>, t: f64, bay_side: bool) -> [f64; 3] {
        let mut most = [0.0_f64; 3];
        // The solution gives the side of larger s; the shears of both sides differ by the reaction.
        let s = if bay_side { self.pipe } else { self.pipe - 1e-6 };
        for step in 0..=20 {
            let at = (t - self.side + 0.1 * self.side * f64::from(step)).max(0.0);
            let [_, moment, shear] = bent.at(s, at);
            let mean = bent.mean_shear(s, at, at + self.skins);
            most = [most[0].max(moment.abs()), most[1].max(mean.abs()), most[2].max(shear.abs())];
        }
        most
    }
}

/// `D`, `S` and distance of the skins that go together; `D22/D11` and twist; bay, overhang and patch.
const TOPS: [Top; 6] = [
    Top { d: 3e3, s: 0.5e6, d22: 1.0, twist: 0.35, bay: 0.6, pipe: 0.08, side: 0.065, skins: 0.03 },
    Top { d: 3e3, s: 0.5e6, d22: 0.5, twist: 0.25, bay: 0.6, pipe: 0.15, side: 0.1, skins: 0.03 },
    Top { d: 3e3, s: 1e6, d22: 1.0, twist: 0.12, bay: 0.6, pipe: 0.6, side: 0.1, skins: 0.03 },
    Top { d: 8e3, s: 1e6, d22: 2.0, twist: 0.5, bay: 1.2, pipe: 0.3, side: 0.065, skins: 0.04 },
    Top { d: 20e3, s: 2.5e6, d22: 0.5, twist: 0.25, bay: 1.2, pipe: 0.6, side: 0.1, skins: 0.05 },
    Top { d: 20e3, s: 0.5e6, d22: 1.0, twist: 0.35, bay: 0.6, pipe: 0.15, side: 0.065, skins: 0.05 },
];

/// The free corner of an overhang, a little way in, and away from free ends.
#[test]
fn widths_at_the_tip_of_an_overhang_are_safe() {
    let moment = Bounds::new("root moment", 2.6);
    let sink = Bounds::new("tip deflection", 2.1);
    let shear = Bounds::new("mean root shear", 2.6);
    for top in TOPS {
        let half = top.side / 2.0;
        let places = [half, 0.12, 0.7];
        let patches = places.map(|t| top.patch(half, t));
        let plate = top.plate(&patches);
        let factored = plate.factor();
        let (t, x, l, s) = (m(top.side), top.pipe - half, top.bay, top.spread());
        for patch in patches {
            let e = patch.centre[1];
            let bent = factored.under(patch);
            let [root, mean, peak] = top.at_pipe(&bent, e, false);
            let edge = if e < half + 1e-9 { 0.0 } else { e };
            let sag = bent.at(half, edge)[0].max(bent.at(half, e)[0]);
            let b = near_free_edge(overhang(t, m(x), &s), m(e), NearEdge::OverhangMoment);
            moment.see(x * per(b), root, &top);
            let b = near_free_edge(tip_deflection(t, m(x), m(l), &s), m(e), NearEdge::OverhangDeflection);
            sink.see((x * x * (x + l) / (3.0 * top.d) + x * (1.0 + x / l) / top.s) * per(b), sag, &top);
            let b = shear_near_free_edge(t, m(x), m(e), true, &s);
            assert!(b >= t, "a load goes to the support over its own width at the least");
            shear.see(per(b), mean, &top);
            assert!(peak <= PEAK * per(b), "peak {peak} for {top:?}");
        }
    }
}

/// Peak of the first-order theory over the strip's shear, at most.
const PEAK: f64 = 1.2;

/// Beside the free end, close to the pipe and in the middle of the bay; the pipe inside the edge of the top, and right
/// under it, where twist presses the corner down.
#[test]
fn shear_beside_a_free_end_is_safe() {
    /// The push over the distance of the skins over that of the strip, at most.
    const PUSH: f64 = 1.15;
    /// The seats of these pipes are lines: what a seat adds is on the safe side.
    const SEAT: f64 = 0.0;
    let inside = Bounds::new("mean shear in the bay", 3.4);
    let at_rim = Bounds::new("mean shear in the bay, pipe at the rim", 3.4);
    let near_rim = Bounds::new("mean shear in the bay, pipe near the rim", 3.4);
    let push = Bounds::new("push on the pipe over the side of the patch", 3.4);
    for (pipe, seen) in [(0.0, &at_rim), (0.008, &near_rim), (0.016, &inside), (0.03, &inside), (0.1, &inside)] {
        for top in TOPS.map(|top| Top { pipe, ..top }) {
            let half = top.side / 2.0;
            // From 15 mm on none is needed.
            let twist = if pipe < 0.015 { rim_twist(m(pipe), m(0.0), m(top.skins), m(SEAT)).value } else { 1.0 };
            for x in [half, half + 0.02, top.bay / 2.0] {
                let patch = top.patch(top.pipe + x, half);
                let plate = top.plate(&[patch]);
                let factored = plate.factor();
                let bent = factored.under(patch);
                let mean = top.at_pipe(&bent, half, true)[1];
                let b = shear_near_free_edge(m(top.side), m(x), m(half), false, &top.spread());
                let strip = twist * (1.0 - x / top.bay) * per(b);
                seen.see(strip, mean, &top);
                let over = |to: f64| {
                    let beyond = if pipe > 0.0 { bent.mean_shear(pipe - 1e-6, 0.0, to) } else { 0.0 };
                    (bent.mean_shear(pipe + 1e-9, 0.0, to) - beyond).abs()
                };
                push.see(strip, over(top.side), &top);
                assert!(over(top.skins) <= PUSH * strip, "push {} for {top:?}", over(top.skins) / strip);
            }
        }
    }
}

/// A pipe that goes in from the rim, or a load from the free end, by a tenth of a millimetre never asks for much less.
#[test]
fn twist_at_a_corner_falls_off_evenly() {
    let steps = || (0..2000).map(|step| f64::from(step) * 1e-4);
    for top in TOPS {
        // 0.21 over the distance of the skins.
        let most = 0.21 * 1e-4 / top.skins * (1.0 + 1e-6);
        let twist = |c: f64, g: f64| rim_twist(m(c), m(g), m(top.skins), m(0.038)).value;
        for fixed in [0.0, 0.02, 0.05, 0.08] {
            for at in steps() {
                assert!((0.0..=most).contains(&(twist(at, fixed) - twist(at + 1e-4, fixed))), "pipe at {at}");
                assert!((0.0..=most).contains(&(twist(fixed, at) - twist(fixed, at + 1e-4))), "load at {at}");
            }
        }
        assert!(twist(0.0, 0.0) > 1.2 && twist(0.2, 0.0) <= 1.0 && twist(0.0, 0.2) <= 1.0);
    }
}

/// A footprint that lies as far from the free end as the skins are apart: no twist is added there, with the pipe at the
/// rim all the same.
#[test]
fn shear_a_little_way_from_a_corner_is_safe() {
    let shear = Bounds::new("mean shear near a corner", 3.4);
    for top in TOPS.map(|top| Top { pipe: 0.0, ..top }) {
        let (half, e) = (top.side / 2.0, top.side / 2.0 + top.skins);
        for x in [half, top.bay / 2.0] {
            let patch = top.patch(x, e);
            let plate = top.plate(&[patch]);
            let factored = plate.factor();
            let mean = top.at_pipe(&factored.under(patch), e, true)[1];
            let b = shear_near_free_edge(m(top.side), m(x), m(e), false, &top.spread());
            shear.see((1.0 - x / top.bay) * per(b), mean, &top);
        }
    }
}

/// The reference for corners itself: against the sine series away from its ends, on supports that hold the rotation as
/// the series has it; and its shear along the pipe against equilibrium at a corner.
#[test]
fn corner_reference_agrees_with_series_and_equilibrium() {
    /// The far ends of the plate are free in one and supported in the other, 1.6 m away.
    const FAR_ENDS: f64 = 0.01;
    /// Elements meet stresses only in the mean.
    const MESH: f64 = 1e-3;
    let top = Top { pipe: 0.3, bay: 0.8, side: 0.08, ..TOPS[3] };
    let (width, half) = (3.2, top.side / 2.0);
    let patches = [top.patch(half, width / 2.0), top.patch(half, half)];
    let mut plate = top.plate(&patches);
    plate.lines.1.extend([2.4, width]);
    plate.hard = true;
    let [d12, d66] = top.others();
    let series = Reference {
        length: 1.1,
        width,
        supports: vec![(0.3, false), (1.1, false)],
        d11: plate.d11,
        d12,
        d22: plate.d22,
        d66,
        s1: plate.s1,
        s2: plate.s2,
    };
    let rows = series.solve(patches[0], width / 2.0, 120, 0.2);
    let factored = plate.factor();
    let bent = factored.under(patches[0]);
    let tip = rows.iter().find(|r| (r.s - half).abs() < 1e-9).unwrap();
    let root = rows.iter().find(|r| (r.s - 0.3).abs() < 1e-9).unwrap();
    within(bent.at(half, width / 2.0)[0], tip.w, FAR_ENDS);
    within(bent.at(0.3 - 1e-9, width / 2.0)[1], root.m1, FAR_ENDS);
    within(bent.at(0.3 - 1e-6, width / 2.0)[2], root.q1, FAR_ENDS);
    plate.hard = false;
    let factored = plate.factor();
    let bent = factored.under(patches[1]);
    let lines = &plate.lines.1;
    let whole: f64 = lines.windows(2).map(|l| bent.mean_shear(0.3 - 1e-6, l[0], l[1]) * (l[1] - l[0])).sum();
    within(whole, -1.0, MESH);
}

/// Side of the patch and distance from the support.
const IN_BAY: [(f64, f64); 3] = [(0.05, 0.5), (0.05, 0.16), (0.3, 0.5)];

/// The reference itself: Timoshenko's long thin plate, 0.01695 P a²/D under a central point load, and Jaramillo's
/// long thin cantilever, −0.509 P at the root and 0.168 P a²/D at the tip for ν = 0.3 (both from memory).
#[test]
fn reference_timoshenko_jaramillo() {
    /// Four printed digits, and a patch of 0.02 instead of a point.
    const LONG_PLATE: f64 = 1e-3;
    /// Patch of 0.02 of the overhang, its middle 0.01 from the edge: a load at 0.99 a.
    const CANTILEVER: f64 = 0.03;
    let nu = 0.3;
    let plate = |supports: &[(f64, bool)], at: f64| {
        let reference = Reference {
            length: 1.0,
            width: 6.0,
            supports: supports.to_vec(),
            d11: 1.0,
            d12: nu,
            d22: 1.0,
            d66: 0.35,
            s1: 1e6,
            s2: 1e6,
        };
        reference.solve(Patch { centre: [at, 3.0], size: [0.02, 0.02] }, 3.0, 600, 0.2)
    };
    let bay = plate(&[(0.0, false), (1.0, false)], 0.5);
    within(top(&bay, |r| r.w), 0.01695, LONG_PLATE);
    let cantilever = plate(&[(0.0, true)], 0.99);
    within(cantilever.last().unwrap().w, 0.168, CANTILEVER);
    within(cantilever[0].m1, -0.509, CANTILEVER);
}

/// The reference against the double sine series, for an orthotropic plate with a soft core and a patch off the middle.
#[test]
fn reference_agrees_with_double_series() {
    /// Truncation of both series.
    const SERIES: f64 = 3e-3;
    let stiffness = PlateStiffness {
        d11: rigidity(1.0),
        d12: rigidity(0.2),
        d22: rigidity(0.5),
        d66: rigidity(0.3),
        shear_x: force(8.0),
        shear_y: force(5.0),
    };
    let patch = Patch { centre: [0.35, 0.8], size: [0.2, 0.3] };
    let reference = Reference {
        length: 1.0,
        width: 1.5,
        supports: vec![(0.0, false), (1.0, false)],
        d11: 1.0,
        d12: 0.2,
        d22: 0.5,
        d66: 0.3,
        s1: 8.0,
        s2: 5.0,
    };
    let row = reference.solve(patch, 0.8, 120, 0.15);
    let under = row.iter().find(|r| (r.s - 0.35).abs() < 1e-9).unwrap();
    let load =
        PlateLoad::Patch { force: Force::new::<newton>(1.0), centre: patch.centre.map(m), size: patch.size.map(m) };
    let plate = Plate::new(m(1.0), m(1.5), stiffness).unwrap();
    let point = plate.at(&load, [m(0.35), m(0.8)], share(1e-3)).unwrap();
    within(under.w, point.deflection.value, SERIES);
    within(under.m1, point.mx.value, SERIES);
    within(under.m2, point.my.value, SERIES);
    let edge = plate.at(&load, [m(0.0), m(0.8)], share(1e-3)).unwrap();
    within(row[0].q1, edge.qx.value, SERIES);
}

//! Textbook closed forms of shear-flexible beams: statics and integration, hence exact. The bending parts stand in any
//! handbook; the shear parts are derived (the names of the sources from memory).
#![allow(clippy::unwrap_used, reason = "a test that cannot go on has failed")]

use skinspan::{
    closed_form::strip::{Action, Segment, Strip, StripForces, Support},
    units::{ArealMassDensity, Curvature, Force, ForcePerWidth, Length, MomentPerWidth, Pressure, per_width},
};
use uom::si::{force::newton, length::meter, pressure::pascal};

/// Both sides are exact; only rounding is left.
const EXACT: f64 = 1e-12;

/// Rigidity, shear stiffness and span that are no round numbers of each other; `φ = D/(S L²)` = 0.386.
const D: f64 = 7.3;
const S: f64 = 2.1;
const L: f64 = 3.0;
const PHI: f64 = D / (S * L * L);

fn m(x: f64) -> Length {
    Length::new::<meter>(x)
}

fn force(x: f64) -> ForcePerWidth {
    per_width(Force::new::<newton>(x) / m(1.0))
}

fn moment(x: f64) -> MomentPerWidth {
    per_width(Force::new::<newton>(x))
}

fn curvature(x: f64) -> Curvature {
    x / m(1.0)
}

fn strip(length: f64, supports: &[Support]) -> Strip {
    let segment = Segment {
        length: m(length),
        rigidity: per_width(Force::new::<newton>(D) * m(1.0)),
        shear: force(S),
        mass: ArealMassDensity::default(),
    };
    Strip::new(&[segment], supports, &[], 1).unwrap()
}

fn simple() -> Strip {
    strip(L, &[Support::pipe(m(0.0)), Support::pipe(m(L))])
}

fn cantilever() -> Strip {
    strip(L, &[Support::clamp(m(0.0))])
}

fn fixed() -> Strip {
    strip(L, &[Support::clamp(m(0.0)), Support::clamp(m(L))])
}

fn spans(n: u32) -> Strip {
    let pipes: Vec<_> = (0..=n).map(|i| Support::pipe(m(L * f64::from(i)))).collect();
    strip(L * f64::from(n), &pipes)
}

fn pressure(strip: &Strip, q: f64) -> Action {
    Action::uniform_all(strip, Pressure::new::<pascal>(q))
}

fn point(at: f64, p: f64) -> Action {
    Action::Point { at: m(at), force: force(p) }
}

fn near(value: f64, expected: f64) {
    assert!((value - expected).abs() <= EXACT * expected.abs().max(1.0), "{value} is not {expected}");
}

fn sag(forces: &StripForces<'_>, x: f64) -> f64 {
    forces.at(m(x)).unwrap().deflection.value
}

fn bending(forces: &StripForces<'_>, x: f64) -> f64 {
    forces.at(m(x)).unwrap().moment_left.value
}

/// `w = kb P L³/D + ks P L/S` with `P` the whole load.
#[test]
fn deflection_beam_tables_kb_ks() {
    type Row = (&'static str, Strip, Vec<Action>, f64, f64, f64);
    let all = |s: Strip| {
        let q = pressure(&s, 1.0 / L);
        (s, vec![q])
    };
    let (simple_q, cantilever_q, fixed_q) = (all(simple()), all(cantilever()), all(fixed()));
    let rows: [Row; 8] = [
        ("simple, uniform", simple_q.0, simple_q.1, L / 2.0, 5.0 / 384.0, 1.0 / 8.0),
        ("simple, central", simple(), vec![point(L / 2.0, 1.0)], L / 2.0, 1.0 / 48.0, 1.0 / 4.0),
        ("simple, quarters", simple(), vec![point(L / 4.0, 0.5), point(0.75 * L, 0.5)], L / 2.0, 11.0 / 768.0, 0.125),
        (
            "simple, thirds",
            simple(),
            vec![point(L / 3.0, 0.5), point(2.0 * L / 3.0, 0.5)],
            L / 2.0,
            23.0 / 1296.0,
            1.0 / 6.0,
        ),
        ("cantilever, uniform", cantilever_q.0, cantilever_q.1, L, 1.0 / 8.0, 1.0 / 2.0),
        ("cantilever, tip", cantilever(), vec![point(L, 1.0)], L, 1.0 / 3.0, 1.0),
        ("fixed, uniform", fixed_q.0, fixed_q.1, L / 2.0, 1.0 / 384.0, 1.0 / 8.0),
        ("fixed, central", fixed(), vec![point(L / 2.0, 1.0)], L / 2.0, 1.0 / 192.0, 1.0 / 4.0),
    ];
    for (name, strip, actions, x, kb, ks) in rows {
        let forces = strip.solve(&actions).unwrap();
        let expected = kb * L.powi(3) / D + ks * L / S;
        let w = sag(&forces, x);
        assert!((w / expected - 1.0).abs() < EXACT, "{name}: {w} is not {expected}");
    }
}

#[test]
fn deflection_beam_tables_point_off_centre() {
    let (s, a) = (simple(), 0.37 * L);
    let b = L - a;
    let forces = s.solve(&[point(a, 1.3)]).unwrap();
    near(sag(&forces, a), 1.3 * (a * a * b * b / (3.0 * D * L) + a * b / (S * L)));
    near(sag(&forces, L / 2.0), 1.3 * (a * (3.0 * L * L - 4.0 * a * a) / (48.0 * D) + a / (2.0 * S)));
    near(bending(&forces, a), 1.3 * a * b / L);
    near(forces.at(m(a)).unwrap().shear_left.value, 1.3 * b / L);
    near(forces.at(m(a)).unwrap().shear_right.value, -1.3 * a / L);
}

#[test]
fn deflection_beam_tables_central_patch() {
    let c = 0.4 * L;
    let s = simple();
    let forces = s.solve(&[Action::Patch { centre: m(L / 2.0), length: m(c), force: force(1.3) }]).unwrap();
    let expected = 1.3 * ((8.0 * L.powi(3) - 4.0 * L * c * c + c.powi(3)) / (384.0 * D) + (2.0 * L - c) / (8.0 * S));
    near(sag(&forces, L / 2.0), expected);
    near(bending(&forces, L / 2.0), 1.3 * (2.0 * L - c) / 8.0);
}

#[test]
fn deflection_beam_tables_end_moment() {
    let s = simple();
    let forces = s.solve(&[Action::Moment { at: m(0.0), moment: moment(0.9) }]).unwrap();
    near(sag(&forces, L / 2.0), 0.9 * L * L / (16.0 * D));
    near(bending(&forces, L / 4.0), 0.9 * 0.75);
    // The same moment at the other end acts leftwards, so it bends the other way.
    let other = s.solve(&[Action::Moment { at: m(L), moment: moment(0.9) }]).unwrap();
    near(sag(&other, L / 2.0), -0.9 * L * L / (16.0 * D));
}

#[test]
fn deflection_beam_tables_overhang_tip() {
    let c = 0.45 * L;
    for (at, supports) in [(L + c, [0.0, L]), (0.0, [c, L + c])] {
        let s = strip(L + c, &supports.map(|x| Support::pipe(m(x))));
        let forces = s.solve(&[point(at, 1.3)]).unwrap();
        near(sag(&forces, at), 1.3 * (c * c * (L + c) / (3.0 * D) + c * (1.0 + c / L) / S));
        near(forces.largest_hogging().value.value, -1.3 * c);
    }
}

#[test]
fn reaction_beam_tables_propped_cantilever() {
    let s = strip(L, &[Support::clamp(m(0.0)), Support::pipe(m(L))]);
    let forces = s.solve(&[pressure(&s, 1.7)]).unwrap();
    let reactions: Vec<_> = forces.reactions().collect();
    near(reactions[1].force.value, 0.375 * 1.7 * L * (1.0 + 4.0 * PHI) / (1.0 + 3.0 * PHI));
    near(reactions[0].moment.value, -1.7 * L * L / 8.0 / (1.0 + 3.0 * PHI));
    let central = s.solve(&[point(L / 2.0, 1.7)]).unwrap();
    let prop = central.reactions().nth(1).unwrap().force.value;
    near(prop, 0.3125 * 1.7 * (1.0 + 4.8 * PHI) / (1.0 + 3.0 * PHI));
}

#[test]
fn support_moment_beam_tables_two_and_three_spans() {
    let two = spans(2);
    let forces = two.solve(&[pressure(&two, 1.7)]).unwrap();
    near(bending(&forces, L), -1.7 * L * L / 8.0 / (1.0 + 3.0 * PHI));
    let middle = forces.reactions().nth(1).unwrap().force.value;
    near(middle, 1.7 * L * (5.0 + 12.0 * PHI) / (4.0 + 12.0 * PHI));
    let three = spans(3);
    let forces = three.solve(&[pressure(&three, 1.7)]).unwrap();
    near(bending(&forces, L), -1.7 * L * L / 10.0 / (1.0 + 1.2 * PHI));
    near(bending(&forces, 2.0 * L), -1.7 * L * L / 10.0 / (1.0 + 1.2 * PHI));
}

/// A free strip only bows; two equal bays force it straight at the middle.
#[test]
fn support_moment_beam_tables_thermal() {
    let kappa = 0.031;
    let one = simple();
    let forces = one.solve(&[Action::curvature_all(&one, curvature(kappa))]).unwrap();
    near(sag(&forces, L / 2.0), kappa * L * L / 8.0);
    near(forces.largest_sagging().value.value, 0.0);
    let two = spans(2);
    let forces = two.solve(&[Action::curvature_all(&two, curvature(kappa))]).unwrap();
    near(bending(&forces, L), -1.5 * D * kappa / (1.0 + 3.0 * PHI));
    let clamped = fixed();
    let forces = clamped.solve(&[Action::curvature_all(&clamped, curvature(kappa))]).unwrap();
    near(bending(&forces, L / 2.0), -D * kappa);
    near(forces.largest_deflection_between(m(0.0), m(L)).unwrap().value.value, 0.0);
}

/// Peaks between stations: `x` = 3L/8 is the place of no shear of a propped strip without shear; with shear it is `R/q`.
#[test]
fn peaks_beam_tables_between_stations() {
    let s = strip(L, &[Support::clamp(m(0.0)), Support::pipe(m(L))]);
    let forces = s.solve(&[pressure(&s, 1.7)]).unwrap();
    let prop = forces.reactions().nth(1).unwrap().force.value;
    let peak = forces.largest_sagging();
    near(peak.value.value, prop * prop / (2.0 * 1.7));
    near(peak.at.value, L - prop / 1.7);
    near(forces.largest_shear().value.value, 1.7 * L - prop);
    // Without shear: w_max = 0.0054161 q L⁴/D at 0.57846 L from the clamp; S so large that φ is 1e-9.
    let rigid = Segment {
        length: m(L),
        rigidity: per_width(Force::new::<newton>(D) * m(1.0)),
        shear: force(D / (1e-9 * L * L)),
        mass: ArealMassDensity::default(),
    };
    let s = Strip::new(&[rigid], &[Support::clamp(m(0.0)), Support::pipe(m(L))], &[], 1).unwrap();
    let forces = s.solve(&[pressure(&s, 1.0)]).unwrap();
    let peak = forces.largest_deflection_between(m(0.0), m(L)).unwrap();
    // x = (15 − √33)/16 L from the clamp, exact for φ = 0.
    let x = (15.0 - 33.0_f64.sqrt()) / 16.0;
    assert!((peak.at.value / L - x).abs() < 1e-7, "φ is not 0");
    let w = x * x * (3.0 - 2.0 * x) * (1.0 - x) / 48.0;
    assert!((peak.value.value * D / L.powi(4) / w - 1.0).abs() < 1e-7, "φ is not 0");
}

/// Stepped rigidity: a cantilever with half of its length four times as stiff, by integration of `M²/D`.
#[test]
fn deflection_beam_tables_stepped_cantilever() {
    let part = |d: f64, s: f64| Segment {
        length: m(L / 2.0),
        rigidity: per_width(Force::new::<newton>(d) * m(1.0)),
        shear: force(s),
        mass: ArealMassDensity::default(),
    };
    let s = Strip::new(&[part(4.0 * D, 2.0 * S), part(D, S)], &[Support::clamp(m(0.0))], &[], 1).unwrap();
    let forces = s.solve(&[point(L, 1.0)]).unwrap();
    let half = L / 2.0;
    let expected =
        (L.powi(3) - half.powi(3)) / (3.0 * 4.0 * D) + half.powi(3) / (3.0 * D) + half / (2.0 * S) + half / S;
    near(sag(&forces, L), expected);
}

#[test]
fn equilibrium_beam_tables_total_load() {
    let s = spans(3);
    let forces = s.solve(&[pressure(&s, 1.7)]).unwrap();
    let total: f64 = forces.reactions().map(|r| r.force.value).sum();

    near(total, 1.7 * 3.0 * L);
}

//! Members of a bolted joint. Budynas and Nisbett, *Shigley's Mechanical Engineering Design*, 9th ed., 2011, example
//! 8–6, printed page 454 (read): two bars of 1 in × 4 in, bolts 3/4 in, yield of the bars 54 kpsi, design factor 1.5.

use skinspan::{
    fastening::{SlenderHole, bearing_capacity, net_section_capacity, shear_out_capacity},
    units::{Force, Length, Pressure},
};
use uom::si::{force::newton, length::inch};

use crate::kit::{m, pressure, share, within};

/// Three digits, some of them two.
const PRINTED: f64 = 0.0006;
/// The same products in another order.
const ROUNDING: f64 = 1e-12;
/// From the unit's definition: the pound of the catalogue is rounded.
const KIP: f64 = 1000.0 * 0.45359237 * 9.80665;

fn inches(x: f64) -> Length {
    Length::new::<inch>(x)
}

fn kpsi(x: f64) -> Pressure {
    Force::new::<newton>(x * KIP) / (inches(1.0) * inches(1.0))
}

fn kip(force: Force) -> f64 {
    force.value / KIP
}

/// A metal has no slender hole.
fn metal() -> SlenderHole {
    SlenderHole { limit: share(f64::INFINITY), left: share(1.0) }
}

#[test]
fn members_shigley_9_example_8_6() {
    let allowed = kpsi(54.0) / 1.5;
    let (d, t) = (inches(0.75), inches(1.0));
    within(kip(2.0 * bearing_capacity(d, t, allowed, metal())), 54.0, PRINTED);
    within(kip(2.0 * bearing_capacity(d, t, kpsi(85.0) / 1.5, metal())), 85.0, PRINTED);
    // Two bolts, planes of 1.125 in from the middle of the holes.
    within(kip(2.0 * shear_out_capacity(inches(1.125), inches(0.0), t, 0.577 * allowed)), 93.5, PRINTED);
    within(kip(net_section_capacity(inches(4.0), 2.0 * d, t, allowed, share(1.0))), 90.0, PRINTED);
}

#[test]
fn members_exact() {
    let (tau, f) = (pressure(60e6), pressure(150e6));
    // Planes from the edge of a hole of 6 mm are those of a pin without width 3 mm nearer to the edge.
    let from_edge = shear_out_capacity(m(0.023), m(0.006), m(0.002), tau).value;
    within(from_edge, shear_out_capacity(m(0.020), m(0.0), m(0.002), tau).value, ROUNDING);
    within(from_edge, 2.0 * 0.020 * 0.002 * 60e6, ROUNDING);
    within(net_section_capacity(m(0.030), m(0.006), m(0.002), f, share(2.5)).value, 0.024 * 0.002 * 60e6, ROUNDING);
    // A slender hole: 6 mm in 1.4 mm and 1.6 mm lie on either side of 4.
    let slender = SlenderHole { limit: share(4.0), left: share(0.6) };
    within(bearing_capacity(m(0.006), m(0.0014), f, slender).value, 0.6 * 0.006 * 0.0014 * 150e6, ROUNDING);
    within(bearing_capacity(m(0.006), m(0.0016), f, slender).value, 0.006 * 0.0016 * 150e6, ROUNDING);
}

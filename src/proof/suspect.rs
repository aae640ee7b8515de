//! Readings judged one by one: what supports move taken off, and the one reading that is out while the rest is not.

use super::{
    Gauge, GaugeAt, GaugeCompared, Proof,
    moved::Moved,
    slip::{Slip, slip},
};
use crate::{
    geometry::Point,
    top::Top,
    units::{Length, Ratio},
};

/// A gauge on the top that alone is out of its band by so many times is taken for a fault of that gauge; what is less a top may do.
/// Our choice.
const FAR: f64 = 3.0;

/// Readings judged.
pub(super) struct Judged {
    /// By gauge, with what supports move and whether it lies in its band.
    pub(super) gauges: Vec<GaugeCompared>,
    /// How much more than expected supports moved.
    pub(super) moved: Option<Moved>,
    /// Gauges whose readings look as if they had been written down otherwise.
    pub(super) slips: Vec<(usize, Slip)>,
    /// The gauge that alone is out, as its place on the card.
    pub(super) suspect: Option<usize>,
    /// Gauges on supports that give way, as places on the card.
    pub(super) give_way: Vec<usize>,
}

/// Judges readings, the likeliest single fault first: one unit taken for another in all columns; then one gauge alone; then each
/// gauge by itself.
pub(super) fn judged(top: &Top, proof: &Proof, gauges: &[GaugeCompared], heads: &[Option<super::Head>]) -> Judged {
    let noise = top.criteria.proof_gauge_noise.value;
    let head = |one: &GaugeCompared| heads.get(one.gauge).copied().flatten();
    let slipped = |one: &GaugeCompared| slip(&proof.gauges[one.gauge], (one.read - one.moved, head(one)), noise);
    // Supports read in a wrong unit as well say nothing of how they moved.
    let large: Vec<&GaugeCompared> =
        gauges.iter().filter(|one| proof.gauges[one.gauge].reading.expected.abs() > noise * FAR).collect();
    let raw: Vec<Option<Slip>> = large.iter().map(|one| slipped(one)).collect();
    if let [Some(first), _, ..] = raw[..]
        && raw.iter().all(|slip| *slip == Some(first))
    {
        let slips = large.iter().map(|one| (one.gauge, first)).collect();
        return Judged { gauges: gauges.to_vec(), moved: None, slips, suspect: None, give_way: Vec::new() };
    }
    let usual = taken_off(top, proof, gauges, None);
    let suspect = suspect(top, proof, gauges, &usual.0);
    let (gauges, moved) = if suspect.is_some() { taken_off(top, proof, gauges, suspect) } else { usual };
    let on_top = |one: &&GaugeCompared| !on_support(&proof.gauges[one.gauge]);
    let slips = gauges
        .iter()
        .filter(|one| suspect.map_or_else(|| on_top(one), |suspect| one.gauge == suspect))
        .filter_map(|one| Some((one.gauge, slipped(one)?)))
        .collect();
    let give_way = gauges
        .iter()
        .filter(|one| !on_top(one) && !one.in_band && Some(one.gauge) != suspect)
        .map(|one| one.gauge)
        .collect();
    Judged { gauges, moved, slips, suspect, give_way }
}

const fn on_support(gauge: &Gauge) -> bool {
    matches!(gauge.on, GaugeAt::Support(_))
}

/// Gauges with what supports move taken off and whether they lie in their bands then; of how supports moved the gauge `without` is not
/// asked, and is out.
fn taken_off(
    top: &Top,
    proof: &Proof,
    gauges: &[GaugeCompared],
    without: Option<usize>,
) -> (Vec<GaugeCompared>, Option<Moved>) {
    let criteria = &top.criteria;
    let (noise, settling) = (criteria.proof_gauge_noise.value, criteria.proof_settling.value);
    let gauge = |one: &GaugeCompared| &proof.gauges[one.gauge];
    let more = |one: &GaugeCompared| one.read - gauge(one).reading.expected;
    let on_supports: Vec<(Point, Length)> = gauges
        .iter()
        .filter(|one| on_support(gauge(one)) && Some(one.gauge) != without)
        .map(|one| (gauge(one).at, more(one)))
        .collect();
    let moved = Moved::by(&on_supports, &gauges.iter().map(|one| gauge(one).at).collect::<Vec<_>>());
    let judge = |one: &GaugeCompared| {
        let Gauge { on, at, reading, .. } = gauge(one);
        let by = moved.as_ref().map_or_else(Length::default, |moved| moved.at(*at));
        let bent = moved.as_ref().map_or_else(Length::default, |moved| moved.may_bend(*on, noise));
        let within = if on_support(gauge(one)) {
            more(one).abs() <= reading.band + settling
        } else {
            (more(one) - by).abs() + bent <= reading.band
        };
        GaugeCompared { moved: by, in_band: within && Some(one.gauge) != without, ..one.clone() }
    };
    (gauges.iter().map(judge).collect(), moved)
}

/// The gauge that alone is out: on a support, where all others are as they should be without it and the top is not with it; on the
/// top, where it is far out and another there is not.
fn suspect(top: &Top, proof: &Proof, gauges: &[GaugeCompared], usual: &[GaugeCompared]) -> Option<usize> {
    let on_support = |one: &GaugeCompared| on_support(&proof.gauges[one.gauge]);
    let out: Vec<&GaugeCompared> = usual.iter().filter(|one| !one.in_band).collect();
    if !out.iter().any(|one| !on_support(one)) {
        return None;
    }
    let fits_without = |one: &&GaugeCompared| {
        on_support(one)
            && taken_off(top, proof, gauges, Some(one.gauge))
                .0
                .iter()
                .all(|other| other.in_band || other.gauge == one.gauge)
    };
    let far = |one: &GaugeCompared| {
        let reading = proof.gauges[one.gauge].reading;
        (one.read - reading.expected - one.moved).abs() > reading.band * Ratio::from(FAR)
    };
    let alone = match out[..] {
        [one] if far(one) && usual.iter().filter(|one| !on_support(one)).count() > 1 => Some(one.gauge),
        _ => None,
    };
    let mut all = gauges.iter().filter(fits_without).map(|one| one.gauge).chain(alone);
    match (all.next(), all.next()) {
        (Some(one), None) => Some(one),
        _ => None,
    }
}

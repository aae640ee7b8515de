//! Readings against the card.

use super::{
    Gauge, Proof,
    cause::{Causes, causes},
    heaps::count,
    moved::Moved,
    slip::{Head, Slip},
    suspect::{Judged, judged},
};
use crate::{
    top::Top,
    units::{Length, Ratio},
};

/// One line of readings.
#[derive(Clone, Debug, PartialEq)]
pub struct Row {
    /// Bags that lay on the top.
    pub bags: usize,
    /// Readings in the order of the gauges, downwards positive; none where a gauge was not read.
    pub readings: Vec<Option<Length>>,
}

/// Readings of a test.
#[derive(Clone, Debug, PartialEq)]
pub struct Readings {
    /// Line by line, in the order of the test.
    pub rows: Vec<Row>,
    /// The units that stood in the heads of the columns, in the order of the gauges; none where another did, or the gauge has no column.
    pub heads: Vec<Option<Head>>,
}

/// What the readings of one gauge say.
#[derive(Clone, Debug, PartialEq)]
pub struct GaugeCompared {
    /// The gauge, as its place on the card.
    pub gauge: usize,
    /// What it read without bags, by the straight line through all steps.
    pub zero: Length,
    /// What it reads under all bags, by the slope of that line.
    pub read: Length,
    /// That over what was expected: below one it gives less than expected.
    pub over_expected: Ratio,
    /// What the supports' moving takes it down by beyond what was expected, by the plane through their gauges.
    pub moved: Length,
    /// Whether it lies in the band with that taken off, and what the supports may have bent the top by counted against it. A support
    /// itself may leave its band by what it may settle; the suspect does not lie in its own.
    pub in_band: bool,
    /// Largest way of a reading off the line, over that under all bags; none where it was read at less than three loads, through which
    /// no line has to lead.
    pub off_line: Option<Ratio>,
    /// Whether that is small enough; none where it is not known.
    pub straight: Option<bool>,
    /// Largest difference between loading and unloading, over the reading under all bags; none where it was not unloaded.
    pub hysteresis: Option<Ratio>,
    /// What was left after unloading; none where it was not read.
    pub residual: Option<Length>,
    /// Whether that is small enough; none where it was not read.
    pub springs_back: Option<bool>,
}

/// Readings against the card.
#[derive(Clone, Debug, PartialEq)]
pub struct Compared {
    /// By gauge; those that were not read enough are left out.
    pub gauges: Vec<GaugeCompared>,
    /// How much more than expected the supports moved: taken off all other readings; none where no gauge on a support was read.
    pub moved: Option<Moved>,
    /// Bags of the heaviest step that was read.
    pub most_bags: usize,
    /// The gauge, as its place on the card, that alone is out while all others read as they should: itself the likeliest fault.
    pub suspect: Option<usize>,
    /// Gauges, as places on the card, on supports that went down by more than their bands and what supports may settle.
    pub give_way: Vec<usize>,
    /// Gauges, as places on the card, whose readings look as if they had been written down otherwise than the card has them.
    pub slips: Vec<(usize, Slip)>,
    /// What explains them, or why that could not be said.
    pub causes: Result<Causes, String>,
}

impl Compared {
    /// Whether the top passes: loaded with all bags of a test that stands for the whole case and in which every check could be
    /// made, all gauges in their bands, straight, and back where they were.
    #[must_use]
    pub fn passes(&self, proof: &Proof) -> bool {
        if !proof.stands() {
            return false;
        }
        let full = proof.steps.last().is_some_and(|last| self.most_bags >= last.bags);
        let good = |one: &GaugeCompared| one.in_band && one.straight == Some(true) && one.springs_back == Some(true);
        full && self.gauges.len() == proof.gauges.len() && self.gauges.iter().all(good)
    }
}

/// Compares readings with the card.
///
/// ```text
/// r = z + k n/N  by least squares over all steps
/// ```
///
/// | symbol | meaning |
/// |---|---|
/// | *r*, *n* | reading and bags of a step |
/// | *N* | all bags |
/// | *z*, *k* | zero and slope: the reading under all bags |
///
/// # Source
///
/// [`DERIVED`](crate::source::DERIVED): least squares.
#[must_use]
pub fn compare(top: &Top, proof: &Proof, readings: &Readings) -> Compared {
    let rows = &readings.rows;
    let all = proof.steps.last().map_or(1, |last| last.bags.max(1));
    let gauges: Vec<GaugeCompared> =
        proof.gauges.iter().enumerate().filter_map(|(at, gauge)| one(top, (at, gauge), rows, all)).collect();
    let Judged { gauges, moved, slips, suspect, give_way } = judged(top, proof, &gauges, &readings.heads);
    // What one gauge alone says against all others explains nothing.
    let trusted: Vec<&GaugeCompared> = gauges.iter().filter(|one| Some(one.gauge) != suspect).collect();
    let used: Vec<&Gauge> = trusted.iter().map(|one| &proof.gauges[one.gauge]).collect();
    // As if the supports had gone down level: how far that is the causes say.
    let level = moved.as_ref().map_or_else(Length::default, |moved| moved.mean);
    let slopes: Vec<Length> = trusted.iter().map(|one| one.read - one.moved + level).collect();
    let causes = if used.is_empty() {
        Err("no gauge was read at two steps or more".to_owned())
    } else if !slips.is_empty() {
        Err("readings look as if they were in another unit, or a gauge's sign were turned".to_owned())
    } else {
        causes(top, (&proof.heaps, proof.bag), &used, &slopes)
    };
    let most_bags = rows.iter().map(|row| row.bags).max().unwrap_or(0);
    Compared { gauges, moved, most_bags, suspect, give_way, slips, causes }
}

/// Loads through which a line leads only where readings are straight.
const LINE: usize = 3;

fn one(top: &Top, (at, gauge): (usize, &Gauge), rows: &[Row], all: usize) -> Option<GaugeCompared> {
    let read: Vec<(usize, Length)> =
        rows.iter().filter_map(|row| Some((row.bags, row.readings.get(at).copied().flatten()?))).collect();
    let (zero, slope) = line(&read, all)?;
    let criteria = &top.criteria;
    let expected = gauge.reading.expected;
    let full = slope.abs();
    // A gauge on a support hardly moves: what is less than its own error says nothing.
    let least = criteria.proof_gauge_noise.value;
    let over_full = |length: Length| length / full.max(least);
    let share = |bags: usize| count(bags) / count(all);
    let off = read.iter().map(|(bags, reading)| (*reading - zero - slope * share(*bags)).abs());
    let loads: std::collections::BTreeSet<usize> = read.iter().map(|(bags, _)| *bags).collect();
    let off = if loads.len() < LINE { None } else { off.reduce(Length::max) };
    let heaviest = read.iter().map(|(bags, _)| *bags).max()?;
    let turn = read.iter().position(|(bags, _)| *bags == heaviest)?;
    let (up, down) = read.split_at(turn + 1);
    let apart = down.iter().filter_map(|(bags, reading)| {
        let loading = up.iter().rev().find(|(known, _)| known == bags)?;
        Some((*reading - loading.1).abs())
    });
    let hysteresis = apart.reduce(Length::max).map(over_full);
    let first = up.iter().find(|(bags, _)| *bags == 0).map_or(zero, |(_, reading)| *reading);
    let residual = down.iter().rev().find(|(bags, _)| *bags == 0).map(|(_, reading)| *reading - first);
    let small = |length: Length, share: Ratio| length.abs() <= least.max(full * share);
    Some(GaugeCompared {
        gauge: at,
        zero,
        read: slope,
        over_expected: slope / expected,
        moved: Length::default(),
        // Judged once all are known.
        in_band: false,
        off_line: off.map(over_full),
        straight: off.map(|off| small(off, criteria.proof_straightness.value)),
        hysteresis,
        residual,
        springs_back: residual.map(|residual| small(residual, criteria.proof_residual.value)),
    })
}

/// Zero and slope of the straight line through readings; none where they were taken at one load alone.
fn line(read: &[(usize, Length)], all: usize) -> Option<(Length, Length)> {
    let number = count(read.len());
    let share = |bags: usize| count(bags) / count(all);
    let mean_share = read.iter().map(|(bags, _)| share(*bags)).sum::<f64>() / number;
    let mean = read.iter().map(|(_, reading)| *reading).sum::<Length>() / number;
    let square: f64 = read.iter().map(|(bags, _)| (share(*bags) - mean_share).powi(2)).sum();
    if square < 1e-9 {
        return None;
    }
    let product: Length = read.iter().map(|(bags, reading)| (*reading - mean) * (share(*bags) - mean_share)).sum();
    let slope = product / square;
    Some((mean - slope * mean_share, slope))
}

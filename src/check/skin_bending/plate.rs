//! Skins bent by themselves, by the forces of the plate method.

use super::{
    places::{At, beside_backing, beside_footing, over_seat, under_sole},
    skins::{PanelState, Skins},
};
use crate::{
    analysis::{Bent, FieldPeak, Region, RegionPeaks},
    check::{Outcomes, Part, Place},
    geometry::{Axis, Point},
    laminate::Resultants,
    top::Support,
    units::{ForcePerWidth, Length, Ratio, per_width, plain},
};

pub(super) fn evaluate(skins: &Skins<'_>, outcomes: &mut Outcomes<'_>) {
    let analysis = skins.analysis;
    for forces in analysis.fields() {
        let of = |region: Region| forces.regions.iter().find(|of| of.region == region);
        for pipe in &forces.pipes {
            let own = &analysis.top.supports[pipe.pipe];
            let push: ForcePerWidth = per_width(plain(pipe.push) * (pipe.along_error[0] + Ratio::from(1.0)));
            for region in analysis.under_pipe(pipe.pipe).into_iter().filter_map(of) {
                for axis in across(own, pipe.push_at) {
                    let panel = [states(region, region.region, &|peak| peak.is_worst_hogging(axis))];
                    let place = Place::of(Part::Support(pipe.pipe), Some(pipe.push_at)).under(pipe.push_under);
                    let at = At { case: forces.case, region: region.region, axis, panel: &panel, place };
                    // The pressure is one; a longer side of a pad carries more of it.
                    let seat = own.seat_along(axis);
                    over_seat(
                        skins,
                        outcomes,
                        &at,
                        (per_width(plain(push) * (seat / own.seat)), largest_shear(region)),
                        seat,
                    );
                }
            }
        }
        for edge in &forces.edges {
            // Each state with its own shear, which grows without bound at corners: no more than what is seen along the edge,
            // where anything is seen between them.
            let most = edge.shears().next().map(|_| largest_shear(edge));
            for peak in &edge.peaks {
                let panel = [states(edge, Region::Field, &|own| own.worst == peak.worst)];
                let place = Place::of(Part::Region(edge.region), Some(peak.at)).under(peak.load_at);
                for axis in Axis::BOTH {
                    let own = peak.state.shear[axis.index()].abs();
                    let shear: ForcePerWidth = per_width(plain(own) * (edge.error.shear + Ratio::from(1.0)));
                    let shear = most.map_or(shear, |most| shear.min(most));
                    let at = At { case: forces.case, region: edge.region, axis, panel: &panel, place };
                    beside_backing(skins, outcomes, &at, shear);
                }
            }
        }
        let panel = |region: Region, ways: &[Bent]| {
            let nothing = PanelState { section: region, states: Vec::new(), used: Default::default(), error: None };
            of(region).map_or(nothing, |of| states(of, region, &|peak| ways.iter().any(|way| peak.is_worst_bent(*way))))
        };
        under_sole(skins, outcomes, forces.case, &|| panel(Region::Field, &[Bent::Sagging]));
        beside_footing(skins, outcomes, forces.case, &|region| panel(region, &Bent::BOTH));
    }
}

/// Some of the worst states of a region, with what they may be off by, as those of a section.
fn states(of: &RegionPeaks, section: Region, counts: &dyn Fn(&FieldPeak) -> bool) -> PanelState {
    let times = 1.0 + of.error.moment.value;
    let own = of.peaks.iter().filter(|peak| counts(peak)).map(|peak| peak.state.resultants);
    let larger = |state: Resultants| Resultants { force: state.force * times, moment: state.moment * times };
    // Too few to leave any out beforehand.
    PanelState {
        section,
        states: own.map(larger).collect(),
        used: [Ratio::from(f64::INFINITY); 2],
        error: Some(of.error.moment),
    }
}

/// Largest shear of a region, with what it may be off by.
fn largest_shear(of: &RegionPeaks) -> ForcePerWidth {
    let most = of.shears().map(|peak| peak.state.shear_size()).fold(ForcePerWidth::default(), ForcePerWidth::max);
    per_width(plain(most) * (of.error.shear + Ratio::from(1.0)))
}

/// The axes that a support does not run along at a place: the skin is bent across it.
fn across(support: &Support, at: Point) -> Vec<Axis> {
    // A pad has an edge on every side.
    if support.is_pad() {
        return Axis::BOTH.to_vec();
    }
    let nearest = support.along.points().windows(2).min_by(|a, b| detour(a, at).value.total_cmp(&detour(b, at).value));
    let Some(pair) = nearest else { return Axis::BOTH.to_vec() };
    let length = pair[0].distance(pair[1]);
    let runs = |axis: Axis| ((pair[1].along(axis) - pair[0].along(axis)) / length).abs();
    Axis::BOTH.into_iter().filter(|axis| runs(*axis).value < ALONG).collect()
}

/// How much farther it is from one end of a piece to the other by way of a place.
fn detour(piece: &[Point], by: Point) -> Length {
    piece[0].distance(by) + by.distance(piece[1]) - piece[0].distance(piece[1])
}

/// Share of a pipe's length from which on it runs along an axis: within 18 degrees.
const ALONG: f64 = 0.95;

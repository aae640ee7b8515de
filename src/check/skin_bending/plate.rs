//! Skins bent by themselves, by the forces of the plate method.

use super::{
    hand::{At, beside_backing, over_seat, under_feet},
    skins::{Skins, lesser},
};
use crate::{
    analysis::{Bent, Region, RegionPeaks, ply_factor},
    check::{Outcomes, Part, Place},
    finite_element::Worst,
    geometry::{Axis, Point, Polyline},
    laminate::Criterion,
    section::{PlyReserve, Skin, UnitResponse},
    units::{ForcePerWidth, Ratio, per_width, plain},
};

pub(super) fn evaluate(skins: &Skins<'_>, outcomes: &mut Outcomes<'_>) {
    let analysis = skins.analysis;
    let Some(Ok(method)) = &analysis.whole else { return };
    let responses: Vec<(Region, UnitResponse)> =
        method.regions.iter().map(|&region| (region, analysis.sections.of(region).section.unit_response())).collect();
    let share = |of: &RegionPeaks, section: Region, counts: &dyn Fn(Worst) -> bool| {
        let response = responses.iter().find(|(known, _)| *known == section);
        response.map_or_else(Default::default, |(_, response)| used(skins, response, of, counts))
    };
    let moments = |worst: Worst| bends(worst, &Bent::BOTH);
    for forces in analysis.fields() {
        let of = |region: Region| forces.regions.iter().find(|of| of.region == region);
        for pipe in &forces.pipes {
            let own = &analysis.top.pipes[pipe.pipe];
            let push: ForcePerWidth = per_width(plain(pipe.push) * (forces.error.shear + Ratio::from(1.0)));
            if push <= ForcePerWidth::default() {
                continue;
            }
            for region in analysis.under_pipe(pipe.pipe).into_iter().filter_map(of) {
                for axis in across(&own.along, pipe.push_at) {
                    let hogging = if axis == Axis::X { Worst::HoggingX } else { Worst::HoggingY };
                    let used = share(region, region.region, &|worst| worst == hogging);
                    let place = Place::of(Part::Pipe(pipe.pipe), Some(pipe.push_at)).under(pipe.push_under);
                    let at = At { case: forces.case, region: region.region, axis, used, place };
                    over_seat(skins, outcomes, at, (push, largest_shear(region)), own.seat);
                }
            }
        }
        let Some(field) = of(Region::Field) else { continue };
        let in_field = share(field, Region::Field, &moments);
        for region in forces.regions.iter().filter(|of| matches!(of.region, Region::Backing(_))) {
            let lower = if largest_shear(region) < largest_shear(field) { region } else { field };
            let Some(peak) = lower.shears().next() else { continue };
            let used = lesser(share(region, Region::Field, &moments), in_field);
            for axis in Axis::BOTH {
                let place = Place::of(Part::Region(region.region), Some(peak.at)).under(peak.load_at);
                let at = At { case: forces.case, region: region.region, axis, used, place };
                beside_backing(skins, outcomes, at, largest_shear(lower));
            }
        }
        let anywhere = |region: Region, ways: &[Bent]| {
            of(region).map_or_else(Default::default, |of| share(of, region, &|worst| bends(worst, ways)))
        };
        under_feet(skins, outcomes, forces.case, &anywhere);
    }
}

/// Whether a state that is the worst in some way is bent one of some ways.
fn bends(worst: Worst, ways: &[Bent]) -> bool {
    let way = match worst {
        Worst::SaggingX | Worst::SaggingY | Worst::OuterPressed | Worst::InnerPulled => Bent::Sagging,
        Worst::HoggingX | Worst::HoggingY | Worst::OuterPulled | Worst::InnerPressed => Bent::Hogging,
        Worst::Twist => return true,
        Worst::Shear => return false,
    };
    ways.contains(&way)
}

/// What some of the worst states of a region use of the skins of a section, with their factors.
fn used(skins: &Skins<'_>, response: &UnitResponse, of: &RegionPeaks, counts: &dyn Fn(Worst) -> bool) -> [Ratio; 2] {
    let analysis = skins.analysis;
    let mut most = [Ratio::default(); 2];
    for peak in of.peaks.iter().filter(|peak| counts(peak.worst)) {
        for reserve in response.reserves(Criterion::TsaiWu, &peak.state.resultants, None) {
            // A ply without strength is said to be open when the skin is looked at alone.
            let Ok(PlyReserve { place, reserve, .. }) = reserve else { continue };
            let Some(ply) = analysis.sections.field.section.skin(place.skin).plies().nth(place.ply) else { continue };
            let share: Ratio = ply_factor(&analysis.top.criteria, ply, reserve.mode) / reserve.factor;
            let known = &mut most[usize::from(place.skin == Skin::Inner)];
            *known = known.max(share * (of.error.moment + Ratio::from(1.0)));
        }
    }
    most
}

/// Largest shear of a region, with what it may be off by.
fn largest_shear(of: &RegionPeaks) -> ForcePerWidth {
    let most = of.shears().map(|peak| peak.state.shear_size()).fold(ForcePerWidth::default(), ForcePerWidth::max);
    per_width(plain(most) * (of.error.shear + Ratio::from(1.0)))
}

/// The axes that a pipe does not run along at a place: the skin is bent across it.
fn across(along: &Polyline, at: Point) -> Vec<Axis> {
    let pieces = along.points().windows(2);
    let near = |pair: &&[Point]| {
        let middle = Point { x: (pair[0].x + pair[1].x) / 2.0, y: (pair[0].y + pair[1].y) / 2.0 };
        let reach = pair[0].distance(pair[1]) / 2.0;
        middle.distance(at) <= reach * 1.000_001
    };
    let Some(pair) = pieces.filter(|pair| near(&pair)).next() else { return Axis::BOTH.to_vec() };
    let length = pair[0].distance(pair[1]);
    let runs = |axis: Axis| (pair[1].along(axis) - pair[0].along(axis)).abs() / length;
    Axis::BOTH.into_iter().filter(|axis| runs(*axis).value < ALONG).collect()
}

/// Share of a pipe's length from which on it runs along an axis: within 18 degrees.
const ALONG: f64 = 0.95;

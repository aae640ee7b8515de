//! Skins bent by themselves, by the forces of the hand method.

use super::{
    places::{At, beside_backing, beside_footing, over_seat, under_sole},
    skins::{PanelState, Skins},
};
use crate::{
    analysis::{BayForces, Bent, Region},
    check::{Outcomes, Part, Place},
    geometry::Axis,
    units::{ForcePerWidth, MomentPerWidth, per_width, plain},
};

pub(super) fn evaluate(skins: &Skins<'_>, outcomes: &mut Outcomes<'_>) {
    at_seats(skins, outcomes);
    at_pipes_of_bays(skins, outcomes);
    beside_backings(skins, outcomes);
    beside_backings_of_bays(skins, outcomes);
    for case in 0..skins.analysis.cases.len() {
        under_sole(skins, outcomes, case, &|| in_region(skins, (case, Region::Field), &[Bent::Sagging]));
        beside_footing(skins, outcomes, case, &|region| in_region(skins, (case, region), &Bent::BOTH));
    }
}

fn at_seats(skins: &Skins<'_>, outcomes: &mut Outcomes<'_>) {
    let analysis = skins.analysis;
    for forces in &analysis.strips {
        let line = &analysis.lines[forces.line];
        for (seat, own) in line.seats.iter().zip(&forces.seats) {
            let Some(pipe) = seat.pipe else { continue };
            let region = line.region_at(seat.at);
            let Some(of) = forces.regions.iter().find(|of| of.region == region) else { continue };
            let push: ForcePerWidth = per_width(plain(own.push.value) * analysis.rim_twist(line, seat));
            let place = Place::of(Part::Support(pipe), Some(line.place(seat.at)))
                .under(own.push.load_at.map(|at| line.place(at)));
            let panel = skins.bent(region, line.axis, &[(Bent::Hogging, of.hogging.value)]);
            let at = At { case: forces.case, region, axis: line.axis, panel: &[panel], place };
            over_seat(skins, outcomes, &at, (push, of.shear.value), seat.width);
        }
    }
}

fn at_pipes_of_bays(skins: &Skins<'_>, outcomes: &mut Outcomes<'_>) {
    let analysis = skins.analysis;
    for load in &analysis.pipe_loads {
        let pipe = &analysis.top.supports[load.pipe];
        let axis = pipe.along.main_axis().other();
        let stands_on = |forces: &&BayForces| analysis.bays[forces.bay].pipes.contains(&load.pipe);
        let (mut moment, mut shear) = (MomentPerWidth::default(), ForcePerWidth::default());
        for forces in analysis.plates.iter().filter(|forces| forces.case == load.case).filter(stands_on) {
            (moment, shear) = (moment.max(forces.over_pipes[axis.index()]), shear.max(forces.shear));
        }
        for region in analysis.under_pipe(load.pipe) {
            let panel = skins.bent(region, axis, &[(Bent::Hogging, moment)]);
            let place = Place::of(Part::Support(load.pipe), Some(load.at));
            let at = At { case: load.case, region, axis, panel: &[panel], place };
            over_seat(skins, outcomes, &at, (load.push, shear), pipe.seat);
        }
    }
}

fn beside_backings(skins: &Skins<'_>, outcomes: &mut Outcomes<'_>) {
    let analysis = skins.analysis;
    for forces in &analysis.strips {
        let line = &analysis.lines[forces.line];
        for edge in &forces.edges {
            let region = Region::Backing(edge.backing);
            let place = Place::of(Part::Region(region), Some(line.place(edge.shear.at)))
                .under(edge.shear.load_at.map(|at| line.place(at)));
            let moments = [(Bent::Sagging, edge.sagging.value), (Bent::Hogging, edge.hogging.value)];
            let panel = skins.bent(Region::Field, line.axis, &moments);
            let at = At { case: forces.case, region, axis: line.axis, panel: &[panel], place };
            beside_backing(skins, outcomes, &at, edge.shear.value);
        }
    }
}

/// Where in a bay a backing ends is not known to its forces: the largest may act there.
fn beside_backings_of_bays(skins: &Skins<'_>, outcomes: &mut Outcomes<'_>) {
    let analysis = skins.analysis;
    for forces in &analysis.plates {
        let bay = &analysis.bays[forces.bay];
        for region in analysis.regions_of(bay).into_iter().filter(|region| matches!(region, Region::Backing(_))) {
            for axis in Axis::BOTH {
                let panel = skins.bent(Region::Field, axis, &in_bay(forces, axis, &Bent::BOTH));
                let at = At { case: forces.case, region, axis, panel: &[panel], place: Place::in_bay(bay, region) };
                beside_backing(skins, outcomes, &at, forces.shear);
            }
        }
    }
}

fn in_bay(forces: &BayForces, axis: Axis, ways: &[Bent]) -> Vec<(Bent, MomentPerWidth)> {
    let (middle, over) = (forces.middle[axis.index()], forces.over_pipes[axis.index()]);
    let most = |way| if way == Bent::Sagging { middle } else { over.max(-middle) };
    ways.iter().map(|&way| (way, most(way))).collect()
}

/// The largest moments of a region under a case, anywhere, bent some ways.
fn in_region(skins: &Skins<'_>, (case, region): (usize, Region), ways: &[Bent]) -> PanelState {
    let analysis = skins.analysis;
    let mut all: [[MomentPerWidth; 2]; 2] = Default::default();
    let mut raise = |axis: Axis, way: Bent, moment: MomentPerWidth| {
        let known = &mut all[axis.index()][way as usize];
        *known = known.max(moment);
    };
    for forces in analysis.strips.iter().filter(|forces| forces.case == case) {
        let axis = analysis.lines[forces.line].axis;
        for of in forces.regions.iter().filter(|of| of.region == region) {
            raise(axis, Bent::Sagging, of.sagging.value);
            raise(axis, Bent::Hogging, of.hogging.value);
        }
    }
    for forces in analysis.plates.iter().filter(|forces| forces.case == case) {
        for axis in Axis::BOTH {
            for (way, moment) in in_bay(forces, axis, &Bent::BOTH) {
                raise(axis, way, moment);
            }
        }
    }
    let mut state =
        PanelState { section: region, states: Vec::with_capacity(4), used: Default::default(), error: None };
    for axis in Axis::BOTH {
        let moments: Vec<_> = ways.iter().map(|&way| (way, all[axis.index()][way as usize])).collect();
        state.join(skins.bent(region, axis, &moments));
    }
    state
}

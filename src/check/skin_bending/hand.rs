//! Skins bent by themselves, by the forces of the hand method.

use super::skins::{Local, Skins, by_skin, worse};
use crate::{
    analysis::{Bent, GearAction, Region},
    check::{Outcomes, Part, Place},
    geometry::Axis,
    section::Skin,
    strength::skin_moment_beside_strip,
    units::{Force, ForcePerWidth, Length, MomentPerWidth, Ratio, per_width, plain},
};

pub(super) fn evaluate(skins: &Skins<'_>, outcomes: &mut Outcomes<'_>) {
    at_seats(skins, outcomes);
    at_pipes_of_bays(skins, outcomes);
    beside_backings(skins, outcomes);
    beside_backings_of_bays(skins, outcomes);
    for case in 0..skins.analysis.cases.len() {
        under_feet(skins, outcomes, case, &|region, ways| share_of_region(skins, (case, region), ways));
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
            if push <= ForcePerWidth::default() {
                continue;
            }
            let place =
                Place::of(Part::Pipe(pipe), Some(line.place(seat.at))).under(own.push.load_at.map(|at| line.place(at)));
            let used = skins.used(region, line.axis, Bent::Hogging, of.hogging.value);
            let at = At { case: forces.case, region, axis: line.axis, used, place };
            over_seat(skins, outcomes, at, (push, of.shear.value), seat.width);
        }
    }
}

/// Where a seat lies.
#[derive(Clone, Copy)]
pub(super) struct At {
    pub(super) case: usize,
    pub(super) region: Region,
    pub(super) axis: Axis,
    pub(super) used: [Ratio; 2],
    pub(super) place: Place,
}

pub(super) fn over_seat(
    skins: &Skins<'_>,
    outcomes: &mut Outcomes<'_>,
    At { case, region, axis, used, place }: At,
    (push, shear): (ForcePerWidth, ForcePerWidth),
    width: Length,
) {
    let panel = skins.pressed(case, region, axis, Skin::Inner);
    let moments = by_skin(skins.over_seat(&panel, (push, shear), width), Skin::Inner);
    skins.compare(outcomes, &Local { case, axis, moments, used, place }, |finding| {
        let finding = finding.term("R", push).term("w", width).term("V", push.min(shear));
        let finding = finding.term("h", skins.analysis.top.criteria.seat_edge_share.value);
        finding.term("a", panel.panel.decay_length()).term("b", panel.dent_length())
    });
}

fn at_pipes_of_bays(skins: &Skins<'_>, outcomes: &mut Outcomes<'_>) {
    let analysis = skins.analysis;
    for load in analysis.pipe_loads.iter().filter(|load| load.push > ForcePerWidth::default()) {
        let pipe = &analysis.top.pipes[load.pipe];
        let axis = pipe.along.main_axis().other();
        let beside = analysis
            .plates
            .iter()
            .filter(|forces| forces.case == load.case && analysis.bays[forces.bay].pipes.contains(&load.pipe));
        let (mut moment, mut shear) = (MomentPerWidth::default(), ForcePerWidth::default());
        for forces in beside {
            (moment, shear) = (moment.max(forces.over_pipes[axis.index()]), shear.max(forces.shear));
        }
        for region in analysis.under_pipe(load.pipe) {
            let used = skins.used(region, axis, Bent::Hogging, moment);
            let place = Place::of(Part::Pipe(load.pipe), Some(load.at));
            over_seat(
                skins,
                outcomes,
                At { case: load.case, region, axis, used, place },
                (load.push, shear),
                pipe.seat,
            );
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
            let used = bent(skins, line.axis, (edge.sagging.value, edge.hogging.value), Region::Field);
            let at = At { case: forces.case, region, axis: line.axis, used, place };
            beside_backing(skins, outcomes, at, edge.shear.value);
        }
    }
}

/// What moments use of the skins of a section, whichever way they bend.
fn bent(
    skins: &Skins<'_>,
    axis: Axis,
    (sagging, hogging): (MomentPerWidth, MomentPerWidth),
    section: Region,
) -> [Ratio; 2] {
    worse(skins.used(section, axis, Bent::Sagging, sagging), skins.used(section, axis, Bent::Hogging, hogging))
}

pub(super) fn beside_backing(
    skins: &Skins<'_>,
    outcomes: &mut Outcomes<'_>,
    At { case, region, axis, used, place }: At,
    shear: ForcePerWidth,
) {
    let panel = skins.panel(case, Region::Field, axis);
    let strip = skins.panel(case, region, axis).shear;
    let moment = |skin| skin_moment_beside_strip(shear, &panel, strip, skins.rigidity(skin, axis), skins.off(skin));
    let moments = Skin::BOTH.map(moment);
    skins.compare(outcomes, &Local { case, axis, moments, used, place }, |finding| {
        finding.term("V", shear).term("a", panel.decay_length()).term("S", panel.shear).term("S_b", strip)
    });
}

fn beside_backings_of_bays(skins: &Skins<'_>, outcomes: &mut Outcomes<'_>) {
    let analysis = skins.analysis;
    for forces in &analysis.plates {
        let bay = &analysis.bays[forces.bay];
        for region in analysis.regions_of(bay).into_iter().filter(|region| matches!(region, Region::Backing(_))) {
            for axis in Axis::BOTH {
                let (middle, over) = (forces.middle[axis.index()], forces.over_pipes[axis.index()]);
                let most = middle.abs().max(over);
                let share = |way| skins.used(Region::Field, axis, way, most);
                let used = worse(share(Bent::Sagging), share(Bent::Hogging));
                let at = At { case: forces.case, region, axis, used, place: Place::in_bay(bay, region) };
                beside_backing(skins, outcomes, at, forces.shear);
            }
        }
    }
}

/// The most that the moments of a region use of the skins under a case, anywhere, bent some ways.
fn share_of_region(skins: &Skins<'_>, (case, region): (usize, Region), ways: &[Bent]) -> [Ratio; 2] {
    let analysis = skins.analysis;
    let mut most = [Ratio::default(); 2];
    for forces in analysis.strips.iter().filter(|forces| forces.case == case) {
        let axis = analysis.lines[forces.line].axis;
        for of in forces.regions.iter().filter(|of| of.region == region) {
            for &way in ways {
                let moment = if way == Bent::Sagging { of.sagging.value } else { of.hogging.value };
                most = worse(most, skins.used(region, axis, way, moment));
            }
        }
    }
    for forces in analysis.plates.iter().filter(|forces| forces.case == case) {
        for axis in Axis::BOTH {
            let middle = forces.middle[axis.index()];
            for &way in ways {
                let moment = if way == Bent::Sagging { middle } else { forces.over_pipes[axis.index()].max(-middle) };
                most = worse(most, skins.used(region, axis, way, moment));
            }
        }
    }
    most
}

/// Under a person, who may stand anywhere, and beside footings that are not fastened: the rims of those that are belong to
/// skin beside backing.
pub(super) fn under_feet(
    skins: &Skins<'_>,
    outcomes: &mut Outcomes<'_>,
    number: usize,
    used: &dyn Fn(Region, &[Bent]) -> [Ratio; 2],
) {
    let analysis = skins.analysis;
    let case = &analysis.cases[number];
    if let Some(people) = case.people {
        let load = skins.sole(people.each);
        let used = used(Region::Field, &[Bent::Sagging]);
        for axis in Axis::BOTH {
            let panel = skins.pressed(number, Region::Field, axis, Skin::Outer);
            let moments = by_skin(panel.under_even_disc(load), Skin::Outer);
            let local = Local { case: number, axis, moments, used, place: Place::of(Part::Foot, None) };
            skins.compare(outcomes, &local, |finding| {
                finding.term("P", load.force).term("r", load.radius).term("a", panel.panel.decay_length())
            });
        }
    }
    let loose = analysis.top.gear.iter().enumerate().filter(|(_, gear)| case.with_gear && gear.fastened.is_none());
    for (index, gear) in loose {
        let force: Force = GearAction::of(analysis.top, gear, case).up.abs();
        let shear = skins.beside_footing(force, gear.footing());
        let region = analysis.below_gear[index];
        let used = used(region, &Bent::BOTH);
        for axis in Axis::BOTH {
            let panel = skins.pressed(number, region, axis, Skin::Outer);
            let moments = by_skin(panel.beside_hard_edge(shear, skins.off(Skin::Outer)), Skin::Outer);
            let place = Place::of(Part::Gear(index), Some(gear.at));
            skins.compare(outcomes, &Local { case: number, axis, moments, used, place }, |finding| {
                let finding = finding.term("P", force).term("f", gear.footing()).term("V", shear);
                finding.term("a", panel.panel.decay_length()).term("b", panel.dent_length())
            });
        }
    }
}

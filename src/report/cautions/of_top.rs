//! Cautions that hang on the top alone, whoever looked at it.

use super::super::{without_fixings, words::point};
use crate::{
    analysis::below_footing,
    service::{Sun, Walking},
    top::{Carrier, Gear, Scope, Support, Top},
    units::{Length, show},
};

pub(super) const CERTIFICATION: &str = "Not a certification: for comparison and preliminary design. Local codes, class \
    rules and a qualified engineer prevail; people get hurt when tops fail.";

pub(super) const OPEN: &str = "A check that could not be made is not a pass.";

pub(super) const NOT_CHECKED: &str = "Not checked here: the welds of the frame, its posts and how it stands sideways, the \
    bond of skin to core, voids and dry spots, and bare hard seats unless `seat-edge-share` says so.";

pub(super) const ON_TESTS: &str = "Blind fixings let go without warning, and their hold is known from tests alone: pull \
    samples before people stand below.";

/// Whose fixings the file does not give; of pipes, what that makes of them as a plate.
pub(super) fn silent(top: &Top, tied: bool) -> Option<String> {
    let silent = without_fixings(top);
    if silent.is_empty() {
        return None;
    }
    let tied = if tied { " The plate method takes the top as held down all along these pipes." } else { "" };
    Some(format!(
        "The file does not say how these are fixed, so their fixings were not checked: {}.{tied}",
        silent.join(", ")
    ))
}

/// Footings that are wider than what backs them.
pub(super) fn past_backing(top: &Top) -> Option<String> {
    let past = |gear: &&Gear| gear.fastened.is_some() && below_footing(top, gear).len() > 1;
    let past: Vec<&str> = top.gear.iter().filter(past).map(|gear| gear.name.as_str()).collect();
    (!past.is_empty()).then(|| {
        format!(
            "The footing reaches past the backing below it: {}. It is taken as bedded on the backing alone, and core beside \
             that is held against all of its pressure: lay a wider backing.",
            past.join(", ")
        )
    })
}

/// Fixings of the file that nothing asks for.
pub(super) fn idle(top: &Top) -> Option<String> {
    (!top.idle_fixings.is_empty()).then(|| {
        format!(
            "These fixings hold nothing, since no gear, pipe, wall or pad asks for them in its `fixings`: {}.",
            top.idle_fixings.join(", ")
        )
    })
}

/// Pipes that the plate method has as rigid, since the file does not give what they bend by.
pub(super) fn rigid<'a>(supports: impl Iterator<Item = &'a Support>) -> Option<String> {
    let rigid: Vec<String> = supports
        .filter_map(|support| Some((support, support.pipe()?)))
        .map(|(support, pipe)| format!("{} (give {})", support.name, pipe.missing().join(", ")))
        .collect();
    (!rigid.is_empty())
        .then(|| format!("Taken as rigid: {}. Sag and frequency are then on the unsafe side.", rigid.join("; ")))
}

/// Pipes that cross or touch, and how the plate method joins them.
pub(super) fn joints(top: &Top) -> Option<String> {
    let joints: Vec<String> = top
        .joints()
        .iter()
        .map(|joint| {
            let [one, other] = joint.pipes.map(|pipe| top.supports[pipe].name.as_str());
            format!("{one} and {other} at {}", point(joint.at, top.report))
        })
        .collect();
    (!joints.is_empty()).then(|| {
        format!(
            "Pipes cross or touch: {}. Below one top they lie at one height, so they are joined there. Where both bend, the plate \
             method has them go up and down as one at the joint and hand force to each other, as by a hinge: bending that one \
             passes to the twist of the other is left out. Beside a joint both count as softened by its weld; whether the weld \
             bears what passes it is not checked.",
            joints.join("; ")
        )
    })
}

/// Gear whose footing the plate method does not see whole.
pub(super) fn over_rim(top: &Top) -> Option<String> {
    let over = top.gear.iter().filter(|gear| gear.hangs_over(&top.outline));
    let over: Vec<&str> = over.map(|gear| gear.name.as_str()).collect();
    (!over.is_empty()).then(|| {
        format!(
            "The footing reaches over the rim or a hole: {}. The plate method puts all of its load on the part that \
             lies on the top.",
            over.join(", ")
        )
    })
}

/// Pipes that the plate method cuts at a hole.
pub(super) fn pipes_across_holes(top: &Top) -> Vec<String> {
    let bends = |support: &&Support| support.pipe().is_some_and(|pipe| pipe.wall.is_some() && pipe.alloy.is_some());
    top.supports
        .iter()
        .filter(bends)
        .filter_map(|pipe| {
            let (hole, _) = top.outline.hole_on(&pipe.along)?;
            Some(format!(
                "{} goes on below {}: the plate method takes it as ending at the hole, each part held by its own posts, or by \
                 the panel where it has none. It is stiffer than that, and bears more itself.",
                pipe.name, hole.name
            ))
        })
        .collect()
}

/// What walls and pads are taken for.
pub(super) fn walls_and_pads(top: &Top) -> Vec<String> {
    let names = |which: &dyn Fn(&Support) -> bool| -> Vec<&str> {
        top.supports.iter().filter(|support| which(support)).map(|support| support.name.as_str()).collect()
    };
    let mut cautions = Vec::new();
    let walls = names(&|support| matches!(support.carrier, Carrier::Wall(_)));
    if !walls.is_empty() {
        cautions.push(format!(
            "Walls are taken as rigid and were not checked themselves, nor was what they stand on: {}.",
            walls.join(", ")
        ));
    }
    let clamped = names(&Support::clamps);
    if !clamped.is_empty() {
        cautions.push(format!(
            "Clamped in the plate method: {}. That takes for granted that neither wall nor joint turns at all, which few do, \
             and that the joint bears the moment (clamped joint), which was not checked and is in no fixing's pull. Sag and frequency are on \
             the unsafe side where it turns; so are stresses away from the wall. Try it hinged as well. By hand it is hinged.",
            clamped.join(", ")
        ));
    }
    let pads = names(&Support::is_pad);
    if !pads.is_empty() {
        cautions.push(format!(
            "Pads are rigid seats in the plate method, on which the top hardly turns, and nothing to the hand method, whose \
             forces leave them out: {}. A soft pad that presses evenly lets the top turn and sag more.",
            pads.join(", ")
        ));
    }
    cautions
}

/// What is to be said about an outline that the hand method does not see as it is.
pub(super) fn outline(top: &Top) -> Vec<String> {
    let outline = &top.outline;
    let mut cautions = Vec::new();
    if top.scope == Scope::Patch {
        return cautions;
    }
    if outline.corner_radii() != Some([Length::default(); 4]) {
        cautions.push(format!(
            "The hand method takes the outline's bounding rectangle, {} by {}, for strips, bays and wind. Weight, people on \
             strips, places and distances to the rim go by the outline itself.",
            show(outline.length(), top.report),
            show(outline.width(), top.report)
        ));
    }
    let holes: Vec<&str> = outline.holes().iter().map(|hole| hole.name.as_str()).collect();
    if !holes.is_empty() {
        cautions.push(format!(
            "The hand method runs its strips across holes as if panel were there: {}. What the panel loses beside a hole is \
             not checked by it; weight and distances to the rim count it.",
            holes.join(", ")
        ));
    }
    cautions
}

/// That the hand method does not see the crown.
pub(super) fn crown(top: &Top, by_plate: bool) -> Option<String> {
    if top.crown <= Length::default() {
        return None;
    }
    let plate = if by_plate {
        "; the plate method has it across the boat, and it can raise stresses as well as lower them"
    } else {
        ""
    };
    Some(format!(
        "The hand method takes the top as flat: its crown of {} is not counted{plate}.",
        show(top.crown, top.report)
    ))
}

/// What its service asks of those on board.
pub(super) fn service(top: &Top) -> Vec<String> {
    let mut cautions = Vec::new();
    if top.service.people == 0 && top.service.walking == Walking::NoWalk {
        cautions.push("Nobody may stand on this top: put a placard on it.".to_owned());
    } else if top.service.walking == Walking::NoWalk {
        cautions.push(format!(
            "Placard: {} on the top at once.",
            match top.service.people {
                1 => "one person".to_owned(),
                people => format!("{people} people"),
            }
        ));
    }
    if top.service.sun == Sun::Dark {
        cautions.push(
            "Dark paint: temperatures are assumed. Measure one like it in the sun before you rely on them.".to_owned(),
        );
    }
    cautions
}

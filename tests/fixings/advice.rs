//! What is offered for fixings, and what could be saved.

use super::whole::example;
use skinspan::{
    advice::{Change, Remedy, changed, changes, fittings, left_by_plate, savings},
    analysis::{Analysis, DIVISIONS, MountOn, below_footing},
    check::{CHECKS, Measure, Outcome, Verdict, run},
    geometry::Pattern,
    top::{Laid, Top},
};
use uom::si::length::millimeter;

fn outcomes(top: &Top) -> Vec<Outcome> {
    run(&Analysis::new(top, DIVISIONS).expect("a layout"))
}

fn saved(top: &Top, of: impl Fn(&Change) -> bool) -> Option<Remedy> {
    savings(top, &outcomes(top)).into_iter().find(|saving| of(&saving.change))
}

fn passes(top: &Top) -> bool {
    outcomes(top).iter().all(Outcome::passes)
}

/// The counts of a mount that are offered, in their order.
fn counts(top: &Top, on: MountOn) -> Vec<(usize, Laid)> {
    let all = changes(top).into_iter().flatten();
    let own = all.filter_map(|change| match change {
        Change::FixingCount { on: held, count, laid } if held == on => Some((count, laid)),
        _ => None,
    });
    own.collect()
}

#[test]
fn more_on_a_circle_stand_on_the_same_circle() {
    let top = example("radar-pad", &[]);
    let offered = counts(&top, MountOn::Gear(0));
    assert_eq!(offered.iter().map(|(count, _)| *count).collect::<Vec<_>>(), [7, 8, 9, 10, 11, 12, 13, 14]);
    for (count, laid) in offered {
        let at = laid.about_middle();
        assert_eq!(at.len(), count);
        assert!(at.iter().all(|place| (place.x.hypot(place.y).get::<millimeter>() - 101.6).abs() < 1e-9), "{at:?}");
    }
}

#[test]
fn more_along_a_pipe_stand_evenly_between_the_same_ends() {
    let top = example("rail-row", &[]);
    let (pipe, before) = (&top.supports[0].along, top.supports[0].fastened.as_ref().expect("fixings"));
    let before = before.laid.along(pipe);
    let offered = counts(&top, MountOn::Support(0));
    assert_eq!(offered.iter().map(|(count, _)| *count).collect::<Vec<_>>(), [25, 26, 27, 28, 29, 30, 31, 32]);
    for (count, laid) in offered {
        let at = laid.along(pipe);
        assert_eq!(at.len(), count);
        let ends = [(&at[0], &before[0]), (&at[count - 1], &before[before.len() - 1])];
        assert!(ends.iter().all(|(now, then)| now.distance(**then).get::<millimeter>() < 1e-6));
        let gaps = at.windows(2).map(|pair| pair[0].distance(pair[1]).get::<millimeter>());
        let all = before[0].distance(before[before.len() - 1]).get::<millimeter>();
        assert!(
            gaps.into_iter()
                .all(|gap| (gap / all * f64::from(u32::try_from(count - 1).expect("a few")) - 1.0).abs() < 1e-6)
        );
    }
}

/// The fewest that hold are named: one less fails, or is no pattern any more.
#[test]
fn the_fewest_fixings_hold() {
    let circle = |count: &str| example("radar-pad", &[("circle = 6", &format!("circle = {count}"))]);
    let of = |change: &Change| matches!(change, Change::FixingCount { on: MountOn::Gear(0), .. });
    let Some(Remedy { change: Change::FixingCount { count, laid, .. }, .. }) = saved(&circle("14"), of) else {
        panic!("nothing can be saved")
    };
    assert!(count < 14 && passes(&circle(&count.to_string())), "{count}");
    assert!(!passes(&circle(&(count - 1).to_string())) || count == 14 - 8, "{count}");
    let Laid::Pattern { pattern: Pattern::Circle { diameter, .. }, .. } = laid else { panic!("{laid:?}") };
    assert!((diameter.get::<millimeter>() - 203.2).abs() < 1e-9);
    // Three on a circle are the fewest that hold a moment from every side.
    let light = |count: &str| {
        let changes =
            [("circle = 6", count), ("grab_height = \"10 in\"", ""), ("slam      = \"3 g\"", "slam = \"none\"")];
        example("radar-pad", &changes)
    };
    let Some(Remedy { change: Change::FixingCount { count, .. }, .. }) = saved(&light("circle = 5"), of) else {
        panic!("nothing can be saved")
    };
    assert_eq!(count, 3);
    assert!(saved(&light("circle = 3"), of).is_none());
}

#[test]
fn fewer_along_a_pipe_hold() {
    let apart = |spacing: &str| {
        let text = format!("spacing = \"{spacing}\"");
        example("rail-row", &[("spacing = \"3.5 in\"", &text)])
    };
    let top = apart("3 in");
    let count = |top: &Top| {
        let pipe = &top.supports[1];
        pipe.fastened.as_ref().expect("fixings").laid.along(&pipe.along).len()
    };
    let of = |change: &Change| matches!(change, Change::FixingCount { on: MountOn::Support(1), .. });
    let saving = saved(&top, of).expect("half of them hold");
    let Change::FixingCount { count: fewest, .. } = saving.change else { panic!("{saving:?}") };
    assert!(fewest < count(&top));
    let after = changed(&top, &saving.change).expect("a change");
    assert!(count(&after) == fewest && passes(&after));
}

#[test]
fn a_larger_size_is_offered_and_tried() {
    let sizes = |name: &str, edits: &[(&str, &str)]| {
        let top = example(name, edits);
        let sizes = changes(&top).into_iter().flatten().filter(|change| matches!(change, Change::Size { .. }));
        let tried = sizes.map(|change| {
            let on = |top: &Top| match change {
                Change::Size { on: MountOn::Gear(index), .. } => top.gear[index].fastened.clone(),
                Change::Size { on: MountOn::Support(index), .. } => top.supports[index].fastened.clone(),
                _ => None,
            };
            let (before, after) =
                (on(&top).expect("fixings"), on(&changed(&top, &change).expect("a change")).expect("fixings"));
            assert_ne!(after.fixing.hold.size(), before.fixing.hold.size());
            assert_eq!(after.laid, before.laid);
            after.fixing.hold.size().to_owned()
        });
        tried.collect::<Vec<_>>()
    };
    assert_eq!(sizes("radar-pad", &[]), ["M10 coarse", "M12 coarse"]);
    let lag = "hold = \"screw\"\nscrew = \"lag-1-4\"\ndepth = \"1.25 in\"";
    let edits = [
        ("hold        = \"through-bolt\"\nthread      = \"m8\"", lag),
        ("lubrication = \"lubricated-stainless\"\n", ""),
        ("washer      = { outside = \"40 mm\", thickness = \"4 mm\" }\ntorque      = \"2 N.m\"\n", ""),
    ];
    assert_eq!(sizes("radar-pad", &edits).len(), 1);
    // A bolt goes through its sleeve or is not offered.
    let sleeve =
        ("torque      = \"2 N.m\"", "sleeve = { outside = \"14 mm\", wall = \"1.5 mm\", alloy = \"6061-t6\" }");
    assert_eq!(sizes("radar-pad", &[sleeve]), ["M10 coarse"]);
    // Both pipes hang on the same kind; the insert's own family goes to M10.
    assert_eq!(sizes("rail-row", &[]), ["M10 coarse", "M10 coarse"]);
}

#[test]
fn a_bolt_that_is_too_thin_is_made_thicker() {
    let top =
        example("radar-pad", &[("\"m8\"", "\"m4\""), ("grab_height = \"10 in\"", "given = [{ up = \"3000 lbf\" }]")]);
    let before = outcomes(&top);
    let fails: Vec<&str> = before
        .iter()
        .filter(|outcome| !outcome.passes())
        .map(|outcome| skinspan::check::CHECKS[outcome.check].id())
        .collect();
    assert!(fails.contains(&"fastener-combined"), "{fails:?}");
    let advice = skinspan::advice::advise(&top, &before);
    let own = advice
        .iter()
        .find(|item| item.check.is_some_and(|check| skinspan::check::CHECKS[check].id() == "fastener-combined"));
    let remedies = &own.expect("advice").remedies;
    assert!(remedies.iter().any(|remedy| matches!(remedy.change, Change::Size { .. })), "{remedies:?}");
}

#[test]
fn another_kind_of_board_is_offered_and_none_of_metal() {
    let top = example("radar-pad", &[]);
    let kinds: Vec<String> = changes(&top)
        .into_iter()
        .flatten()
        .filter_map(|change| {
            let Change::BackingKind { board, .. } = &change else { return None };
            let now = &changed(&top, &change).expect("a change").backings[0].board;
            assert!(now.id == *board && now.family != top.backings[0].board.family && now.bondable);
            Some(now.family.clone())
        })
        .collect();
    assert!(
        kinds.iter().any(|family| family == "plywood") && kinds.iter().any(|family| family == "laminate"),
        "{kinds:?}"
    );
    assert!(kinds.iter().all(|family| family != "aluminium"));
}

/// A backing fills the core: a thinner one is a thinner core, and a fixing must still end in it.
#[test]
fn a_thinner_backing_is_a_thinner_core() {
    let of = |change: &Change| matches!(change, Change::CoreThickness(_));
    let top = example("whip-rail-mended", &[("thickness = \"25 mm\"", "thickness = \"40 mm\"")]);
    let saving = saved(&top, of).expect("it holds on less");
    let after = changed(&top, &saving.change).expect("a change");
    assert!(after.core.thickness < top.core.thickness && passes(&after) && saving.added.value < 0.0, "{saving:?}");
    let deep = "hold = \"tapped-screw\"\ndepth = \"40 mm\"";
    let washer = ("washer      = { outside = \"40 mm\", thickness = \"5 mm\" }\n", "");
    let edits = [("thickness = \"25 mm\"", "thickness = \"40 mm\""), ("hold        = \"through-bolt\"", deep), washer];
    let top = example("whip-rail-mended", &edits);
    assert!(saved(&top, of).is_none_or(|saving| {
        let Change::CoreThickness(thickness) = saving.change else { return false };
        thickness.get::<millimeter>() > 35.0
    }));
}

/// A rounded corner takes from the top what a square one would have given to a longer or wider strip.
#[test]
fn strips_stay_within_rounded_corners() {
    let top = |radius: &str| {
        let outline = format!("width = \"600 mm\", corner_radius = \"{radius}\" }}");
        example("whip-rail-mended", &[("width = \"600 mm\" }", &outline)])
    };
    let tried = |top: &Top, long: bool| {
        let all = changes(top).into_iter().flatten();
        let own = all.filter(|change| match change {
            Change::BackingLength { .. } => long,
            Change::BackingWidth { .. } => !long,
            _ => false,
        });
        own.map(|change| changed(top, &change).is_some()).collect::<Vec<_>>()
    };
    let (square, round) = (top("0 mm"), top("250 mm"));
    // The strip of 175 mm from 50 to 750 mm; at its end 37.5 mm beside the middle of the arc, 250 mm wide at the most.
    assert_eq!(tried(&square, true)[..3], [true, true, false]);
    assert_eq!(tried(&round, true)[..3], [true, false, false]);
    // Its corner at 50 mm lies 200 mm from the middle of the arc: 150 mm beside it is as far as it goes, 400 mm in all.
    assert!(tried(&square, false).iter().all(|fits| *fits));
    let wider = tried(&round, false);
    assert!(wider.iter().enumerate().all(|(step, fits)| *fits == (step < 9)), "{wider:?}");
}

/// Fourteen along each rail hold by hand; the plate method draws the insert at the end of the row out.
#[test]
fn what_the_plate_pulls_out_is_not_saved() {
    let top = example("rail-row", &[]);
    let analysis = Analysis::new(&top, DIVISIONS).expect("a layout").with_plate_method();
    let all = run(&analysis);
    let by_hand = savings(&top, &all);
    let fewer = |saving: &&Remedy| matches!(saving.change, Change::FixingCount { .. });
    assert_eq!(by_hand.iter().filter(fewer).count(), 2);
    let left = left_by_plate(&analysis, by_hand.clone());
    assert_eq!(left.iter().filter(fewer).count(), 0);
    let alone = Analysis::new(&top, DIVISIONS).expect("a layout");
    assert_eq!(left_by_plate(&alone, by_hand.clone()).len(), by_hand.len());
}

#[test]
fn no_pad_is_narrowed_to_less_than_its_footing() {
    let pad = |width: &str| example("radar-pad", &[("width    = \"16 in\"", &format!("width    = \"{width}\""))]);
    let narrower = |change: &Change| matches!(change, Change::BackingWidth { .. });
    let Some(Remedy { change: Change::BackingWidth { width, .. }, .. }) = saved(&pad("16 in"), narrower) else {
        panic!("nothing can be saved")
    };
    assert!((width.get::<millimeter>() - 254.0).abs() < 1e-9, "{width:?}");
    assert!(saved(&pad("9.5 in"), narrower).is_none());
    assert_eq!([pad("10 in"), pad("9.5 in")].map(|top| below_footing(&top, &top.gear[0]).len()), [1, 2]);
}

/// Ten inches of foot on nine of pad: what reaches past it stands on foam.
#[test]
fn a_footing_that_reaches_past_its_pad_presses_on_core() {
    let strength = |width: &str| {
        let top = example("radar-pad", &[("width    = \"16 in\"", &format!("width    = \"{width}\""))]);
        let own = |outcome: &Outcome| CHECKS[outcome.check].id() == "footing-pressure";
        let Verdict::Compared(finding) = outcomes(&top).into_iter().find(own).expect("an outcome").verdict else {
            panic!("not evaluated")
        };
        let known = finding.terms.iter().find(|term| term.symbol == "s").expect("a strength").value;
        (known, Measure::from(top.core.material.compressive_strength.value))
    };
    let (wide, core) = strength("10 in");
    assert_ne!(wide, core);
    let (narrow, core) = strength("9 in");
    assert_eq!(narrow, core);
}

#[test]
fn through_bolts_are_drilled_by_what_they_go_through() {
    let drills = |width: &str| {
        let top = example("radar-pad", &[("width    = \"16 in\"", &format!("width    = \"{width}\""))]);
        let analysis = Analysis::new(&top, DIVISIONS).expect("a layout");
        fittings(&analysis)[0].drills.iter().map(|drill| drill.what.clone()).collect::<Vec<_>>()
    };
    assert_eq!(drills("16 in"), ["through both skins and radar pad"]);
    let over_core = drills("2 in");
    assert!(over_core[0].contains("radar pad") && over_core[1].contains("through the inner skin and the core (4 of"));
    assert_eq!(over_core[2], "the filling, through both skins");
}

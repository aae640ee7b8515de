//! A whole top against numbers that an independent program found for it: its own laminate theory, beam elements and
//! wind, written without sight of this code's results. The survey launch with a core of 1.5 in.

use approx::assert_relative_eq;
use skinspan::{
    analysis::{Analysis, DIVISIONS, thermal_curvature},
    check::{CHECKS, Outcome, run},
    geometry::Axis,
    input::{NamedText, read_design, read_tables},
    top::Top,
    units::{
        ArealMassDensity, Curvature, FlexuralRigidity, ForcePerWidth, Length, Mass, MomentPerWidth, Pressure, parse,
    },
};

/// Four digits were noted.
const NOTED: f64 = 5e-4;
/// The independent program left the tube in the conduit out: 1.2 lb of 184.
const WITHOUT_THE_TUBE: f64 = 8e-3;

fn top() -> Top {
    let path = concat!(env!("CARGO_MANIFEST_DIR"), "/examples/survey-launch.toml");
    let text = std::fs::read_to_string(path).expect("an example");
    let text = text.replace("thickness = \"2 in\"", "thickness = \"1.5 in\"");
    let text = text.replace("setback = \"2 in\"", "setback = \"1.5 in\"");
    // The pad of the radar was shorter and lighter when the numbers were found.
    let text = text.replace(
        "[[\"29 in\", \"52 in\"], [\"45 in\", \"52 in\"]]",
        "[[\"30 in\", \"52 in\"], [\"44 in\", \"52 in\"]]",
    );
    let text = text.replace("pu-board-glass-415", "pu-board-glass-320");
    let table = read_tables(&[]).expect("the built-in table");
    read_design(&NamedText { name: "top".to_owned(), text }, &table, None).expect("an example that reads")
}

#[test]
fn section_and_weight() {
    let top = top();
    let analysis = Analysis::new(&top, DIVISIONS).expect("a layout");
    let field = &analysis.sections.field;
    let rigidity: FlexuralRigidity = parse("293760 lbf·in").expect("a rigidity");
    assert_relative_eq!(field.rigidity(Axis::Y).value, rigidity.value, max_relative = NOTED);
    let lever: Length = parse("1.5763 in").expect("a length");
    assert_relative_eq!(field.lever(Axis::Y).value, lever.value, max_relative = NOTED);
    let mass: ArealMassDensity = parse("2.7345 lb/ft2").expect("a mass per area");
    assert_relative_eq!(top.field_mass().value, mass.value, max_relative = NOTED);
    let bare: Mass = parse("183.99 lb").expect("a mass");
    assert_relative_eq!(top.weight().bare.value, bare.value, max_relative = WITHOUT_THE_TUBE);
    let rise = analysis.cases.iter().find_map(|case| case.temperatures).expect("a case in the sun");
    let curvature: Curvature = parse("0.0002432 1/in").expect("a curvature");
    assert_relative_eq!(thermal_curvature(field, Axis::Y, &rise).value, -curvature.value, max_relative = NOTED);
}

#[test]
fn wind_snow_and_storm() {
    let top = top();
    let analysis = Analysis::new(&top, DIVISIONS).expect("a layout");
    let case = |id: &str| analysis.cases.iter().position(|case| case.id == id).expect("a case");
    let psf = |text: &str| parse::<Pressure>(text).expect("a pressure").value;
    let storm = analysis.cases[case("storm-up")].wind;
    for (found, due) in [(storm.interior, "-31.7 psf"), (storm.edge, "-45.8 psf"), (storm.corner, "-63.4 psf")] {
        assert_relative_eq!(found.value, psf(due), max_relative = 2e-3);
    }
    let lines = &analysis.lines;
    let across = |id: &str| {
        let number = case(id);
        analysis.strips.iter().filter(move |forces| forces.case == number && lines[forces.line].axis == Axis::Y)
    };
    let hogging = across("snow").flat_map(|forces| &forces.regions).map(|region| region.hogging.value.value);
    let due: MomentPerWidth = parse("19.90 lbf·in/in").expect("a moment");
    assert_relative_eq!(hogging.fold(0.0, f64::max), due.value, max_relative = NOTED);
    let push = across("snow").flat_map(|forces| &forces.seats).map(|seat| seat.push.value.value);
    let due: ForcePerWidth = parse("7.993 lbf/in").expect("a line load");
    assert_relative_eq!(push.fold(0.0, f64::max), due.value, max_relative = NOTED);
    let lifted = across("storm-up")
        .flat_map(|forces| &forces.regions)
        .map(|region| region.sagging.value.value.max(region.hogging.value.value));
    let due: MomentPerWidth = parse("37.19 lbf·in/in").expect("a moment");
    assert_relative_eq!(lifted.fold(0.0, f64::max), due.value, max_relative = NOTED);
}

#[test]
fn a_hand_tips_one_piece_of_gear_at_a_time() {
    let with = |grabbed: [bool; 2]| {
        let mut top = top();
        let mut other = top.gear[0].clone();
        other.at.y = parse("26 in").expect("a length");
        top.gear.push(other);
        for (gear, grabbed) in top.gear.iter_mut().zip(grabbed) {
            gear.grab_height = gear.grab_height.filter(|_| grabbed);
        }
        let analysis = Analysis::new(&top, DIVISIONS).expect("a layout");
        let grab = analysis.cases.iter().position(|case| case.id == "grab").expect("a case");
        ["ply-failure", "wrinkling", "core-shear"].map(|id| {
            let outcomes = run(&analysis);
            let found = outcomes.iter().find(|outcome| CHECKS[outcome.check].id() == id && outcome.case == Some(grab));
            found.and_then(Outcome::utilisation).expect("a utilisation").value
        })
    };
    let (one, other, both) = (with([true, false]), with([false, true]), with([true, true]));
    for k in 0..3 {
        assert_relative_eq!(both[k], one[k].max(other[k]), max_relative = 1e-9);
    }
}

#[test]
fn nobody_stands_where_a_corner_is_cut_off() {
    let path = concat!(env!("CARGO_MANIFEST_DIR"), "/examples/kelp-harvester.toml");
    let text = std::fs::read_to_string(path).expect("an example");
    // Where the top is softest, how far that lies within it, and how far its rim goes in there.
    let softest = |text: &str| {
        let file = NamedText { name: "top".to_owned(), text: text.to_owned() };
        let top = read_design(&file, &read_tables(&[]).expect("the built-in table"), None).expect("a top");
        let analysis = Analysis::new(&top, DIVISIONS).expect("a layout");
        let side = top.criteria.standing_footprint.value;
        for forces in analysis.strips.iter().filter(|forces| analysis.cases[forces.case].people.is_some()) {
            let line = &analysis.lines[forces.line];
            let sags = forces.sags.iter().filter_map(|sag| sag.peak.load_at);
            for at in sags.chain(forces.under_load.load_at) {
                let mut place = line.place(at);
                let inside = |at: Length, size: Length| at.max(side / 2.0).min(size - side / 2.0);
                (place.x, place.y) = (inside(place.x, top.outline.length()), inside(place.y, top.outline.width()));
                assert!(top.outline.within_by(place) > side * 0.25, "{place:?}");
            }
        }
        let outcomes = run(&analysis);
        let found = outcomes.iter().find(|outcome| CHECKS[outcome.check].id() == "underfoot").expect("an outcome");
        (found.utilisation().expect("a utilisation").value, top.outline.within_by(found.place.at.expect("a place")))
    };
    let sharp = "outline = { length = \"2600 mm\", width = \"1900 mm\" }";
    let (at_corner, _) = softest(
        &text.replace("outline = { length = \"2600 mm\", width = \"1900 mm\", corner_radius = \"450 mm\" }", sharp),
    );
    let (rounded, within) = softest(&text);
    assert!(within >= Length::default(), "{within:?}");
    assert!(rounded < 0.95 * at_corner, "{rounded} {at_corner}");
}

//! Bays that pipes hold on four sides: what acts both ways, backing in them and under their pipes, pipes that two share.

use std::path::Path;

use skinspan::{
    analysis::{Analysis, BayForces, DIVISIONS, Region, bay_frequency},
    check::{CHECKS, Measure, Part, Verdict, run},
    closed_form::plate::{Plate, PlateLoad},
    geometry::Axis,
    input::{NamedText, read_design, read_tables},
    load::weight::gravity,
    top::Top,
    units::{ForcePerWidth, Length, Ratio},
};
use uom::si::{force::newton, length::meter, ratio::ratio};

/// Rounding.
const EXACT: f64 = 1e-9;
/// Half waves of a bay's series against those of one that goes on until it is good to a thousandth.
const SERIES: f64 = 5e-3;

fn roof() -> String {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("examples/galley-roof.toml");
    std::fs::read_to_string(path).expect("an example")
}

/// The galley roof with tables put in before its service.
fn with(tables: &str) -> Top {
    read(&roof().replace("[service]", &format!("{tables}\n[service]")))
}

/// With square corners, so that lines may run along the rim.
fn read(text: &str) -> Top {
    let table = read_tables(&[]).expect("the built-in table");
    let text = text.replace(", corner_radius = \"80 mm\"", "");
    let file = NamedText { name: "top.toml".to_owned(), text };
    read_design(&file, &table, None).unwrap_or_else(|problems| panic!("{}", problems[0].render(false)))
}

fn analysed(top: &Top) -> Analysis<'_> {
    Analysis::new(top, DIVISIONS).expect("a layout")
}

/// The one or two sets of forces of the first bay under a case.
fn under(analysis: &Analysis<'_>, id: &str) -> Vec<BayForces> {
    let case = analysis.cases.iter().position(|case| case.id == id).expect("a case");
    analysis.plates.iter().filter(|forces| forces.bay == 0 && forces.case == case).cloned().collect()
}

fn close(a: f64, b: f64, tolerance: f64) {
    assert!((a - b).abs() <= tolerance * a.abs().max(b.abs()), "{a} against {b}");
}

/// A box of 12 kg off the middle; wind finds nothing to hold.
const GEAR: &str = "[[gear]]\nname = \"box\"\nmass = \"12 kg\"\ncg_height = \"0.1 m\"\nat = [\"500 mm\", \"400 mm\"]\n\
                    footing = \"200 mm\"\nwind_area = \"WIND m2\"\ndrag = 1.2\n";

fn gear(wind_area: &str) -> Top {
    with(&GEAR.replace("WIND", wind_area))
}

#[test]
fn what_acts_both_ways_is_looked_at_both_ways() {
    let (bare, loaded) = (with(""), gear("0.000000000001"));
    let (bare, loaded) = (analysed(&bare), analysed(&loaded));
    let own = |analysis: &Analysis<'_>, id: &str| under(analysis, id)[0].clone();
    // Own weight presses down and so does the box: with it, and without it.
    let (still, both) = (own(&bare, "storm-down"), under(&loaded, "storm-down"));
    assert_eq!(under(&bare, "storm-down").len(), 1, "nothing acts the other way");
    assert_eq!(both.len(), 2);
    let by_box = [0, 1].map(|i| (both[0].middle[i] - still.middle[i]).value);
    assert!(by_box[0] > 1.0 && by_box[1] > 1.0, "{by_box:?}");
    let sag_by_box = (both[0].sag - still.sag).value;
    assert!(sag_by_box > 0.0);
    for i in 0..2 {
        close(both[1].middle[i].value, still.middle[i].value, EXACT);
    }
    close(both[1].sag.value, still.sag.value, EXACT);
    // A storm that lifts: the box holds it down with a share of its weight, or has been taken off.
    let (still, both) = (own(&bare, "storm-up"), under(&loaded, "storm-up"));
    let case = &loaded.cases[both[0].case];
    let share = case.gear_gravity.get::<ratio>();
    assert!(share > 0.0 && still.middle[0].value < 0.0 && still.push[0].still.value < 0.0);
    for (i, by_box) in by_box.into_iter().enumerate() {
        close(both[0].middle[i].value, still.middle[i].value + share * by_box, EXACT);
        close(both[1].middle[i].value, still.middle[i].value, EXACT);
    }
    close(both[0].sag.value, still.sag.value - share * sag_by_box, EXACT);
    close(both[1].sag.value, still.sag.value, EXACT);
    for edge in 0..4 {
        assert!(both[0].push[edge].still > both[1].push[edge].still);
        close(both[1].push[edge].still.value, still.push[edge].still.value, EXACT);
    }
}

#[test]
fn in_a_rebound_gear_acts_upward() {
    let slam = |text: String| read(&text.replace("slam      = \"none\"", "slam      = \"3 g\""));
    let bare = slam(roof());
    let gear = GEAR.replace("WIND", "0.000000000001");
    let loaded = slam(roof().replace("[service]", &format!("{gear}\n[service]")));
    let (bare, loaded) = (analysed(&bare), analysed(&loaded));
    let still = under(&bare, "rebound")[0].clone();
    let both = under(&loaded, "rebound");
    // What roll does to the footing is in both, so that only the difference is the weight: without it, half of the pair.
    let case = &loaded.cases[both[0].case];
    assert!(case.gear_gravity.get::<ratio>() < 0.0);
    let roll = 12.0 * gravity().value * case.gear_sideways.get::<ratio>();
    let moment = roll * 0.1 / 0.2 / 2.0;
    assert!(moment > 1.0, "{moment}");
    close(both[0].middle[0].value, still.middle[0].value - moment, EXACT);
    assert!(both[1].middle[0].value < both[0].middle[0].value - 1.0, "{both:?}");
    // The couple of roll presses one pipe and lifts another.
    let couple = roll * 0.1 / 0.2 / 0.2;
    for edge in 0..4 {
        close(both[0].push[edge].still.value, still.push[edge].still.value + couple, EXACT);
        assert!(both[1].push[edge].still.value < still.push[edge].still.value - couple);
    }
}

fn backing(board: &str, width: &str, along: &str) -> String {
    format!("[[backing]]\nname = \"strip\"\nmaterial = \"{board}\"\nwidth = \"{width}\"\nalong = {along}\n")
}

const MIDDLE: &str = "[[\"0 mm\", \"650 mm\"], [\"1500 mm\", \"650 mm\"]]";
const ON_PORT_PIPE: &str = "[[\"0 mm\", \"50 mm\"], [\"1500 mm\", \"50 mm\"]]";

fn m(x: f64) -> Length {
    Length::new::<meter>(x)
}

/// Heavier than core by 400 kg/m³ of 50 mm, 100 mm wide over the middle of 1.4 m by 1.2 m.
#[test]
fn backing_weighs_where_it_lies() {
    let (bare, stripped) = (with(""), with(&backing("plywood-fir", "100 mm", MIDDLE)));
    let (a, b) = (analysed(&bare), analysed(&stripped));
    let bay = &b.bays[0];
    assert_eq!(bay.backing.len(), 1);
    let more = 400.0 * 0.05;
    close(bay.backing_mass(&stripped).value, more * 0.1 / 1.2, 1e-6);
    let (without, found) = (&under(&a, "storm-down")[0], &under(&b, "storm-down")[0]);
    close(found.sag_by_pressure.value, without.sag_by_pressure.value, EXACT);
    let left = b.core_left(found.case);
    let plate = Plate::new(m(1.4), m(1.2), a.sections.field.plate_stiffness(Axis::X, left)).expect("a plate");
    let force = uom::si::f64::Force::new::<newton>(more * gravity().value * 0.1 * 1.4);
    let load = PlateLoad::Patch { force, centre: [m(0.7), m(0.6)], size: [m(1.4), m(0.1)] };
    let due = plate.at(&load, [m(0.7), m(0.6)], Ratio::from(1e-3)).expect("on the plate");
    close((found.middle[0] - without.middle[0]).value, due.mx.value, SERIES);
    close((found.middle[1] - without.middle[1]).value, due.my.value, SERIES);
    close((found.sag - without.sag).value, due.deflection.value, SERIES);
    // A landing weighs it as many times.
    let slam = |top: &str| read(&top.replace("slam      = \"none\"", "slam      = \"3 g\""));
    let text = roof().replace("[service]", &format!("{}\n[service]", backing("plywood-fir", "100 mm", MIDDLE)));
    let (bare, stripped) = (slam(&roof()), slam(&text));
    let (a, b) = (analysed(&bare), analysed(&stripped));
    let by = |id: &str| (under(&b, id)[0].middle[0] - under(&a, id)[0].middle[0]).value;
    let times = a.cases[under(&a, "landing")[0].case].gravity.get::<ratio>();
    assert!(times > 2.0);
    close(by("landing"), times * by("storm-down"), 0.02);
}

/// Half a wave squared over the middle tenth of its length is (1 + sin φ/φ)/2 of its peak, φ = π/12, over a mean of half.
#[test]
fn backing_swings_with_the_bay() {
    let (bare, stripped) = (with(""), with(&backing("plywood-fir", "100 mm", MIDDLE)));
    let (a, b) = (analysed(&bare), analysed(&stripped));
    let one = Ratio::from(1.0);
    let of = |analysis: &Analysis<'_>, top: &Top| {
        bay_frequency(top, &analysis.sections, &analysis.bays[0], one).expect("a plate").value
    };
    let phi = std::f64::consts::PI / 12.0;
    let more = 400.0 * 0.05 * 0.1 / 1.2 * (1.0 + phi.sin() / phi);
    let due = (bare.field_mass().value / (bare.field_mass().value + more)).sqrt();
    close(of(&b, &stripped) / of(&a, &bare), due, 1e-6);
    let at_pipe = with(&backing("plywood-fir", "100 mm", ON_PORT_PIPE));
    let c = analysed(&at_pipe);
    close(of(&c, &at_pipe), of(&a, &bare), 1e-3);
}

/// The worst finding of a check, with the part of the top and one of its terms.
fn worst(analysis: &Analysis<'_>, check: &str, case: &str, symbol: &str) -> (f64, Part, Measure) {
    let case = analysis.cases.iter().position(|known| known.id == case);
    let outcome = run(analysis)
        .into_iter()
        .find(|outcome| CHECKS[outcome.check].id() == check && outcome.case == case)
        .expect("an outcome");
    let Verdict::Compared(finding) = &outcome.verdict else { panic!("{check} was not made") };
    let term = finding.terms.iter().find(|term| term.symbol == symbol).expect("a term");
    (finding.utilisation.get::<ratio>(), outcome.place.part, term.value)
}

#[test]
fn backing_that_is_softer_and_weaker_than_core_counts() {
    // 22 MPa and 1.6 MPa in shear, where the core has more of both; it crosses the bay at an angle.
    let across = "[[\"300 mm\", \"0 mm\"], [\"1100 mm\", \"1300 mm\"]]";
    let (bare, weak) = (with(""), with(&backing("pu-board-160", "80 mm", across)));
    let (a, b) = (analysed(&bare), analysed(&weak));
    assert_eq!(b.regions_of(&b.bays[0]), [Region::Field, Region::Backing(0)]);
    let (without, found) = (&under(&a, "storm-down")[0], &under(&b, "storm-down")[0]);
    assert!(found.sag_by_pressure > without.sag_by_pressure * 1.05, "softer in shear");
    let (before, part, _) = worst(&a, "core-shear", "storm-down", "t_u");
    assert_eq!(part, Part::Bay);
    let (after, part, strength) = worst(&b, "core-shear", "storm-down", "t_u");
    assert_eq!(part, Part::Region(Region::Backing(0)));
    assert_eq!(strength, Measure::Pressure(weak.backings[0].board.shear_strength.value));
    assert!(after > before * 1.1, "{before} {after}");
    // Beside the top's bays it is nothing to them.
    let outside = with(&backing("pu-board-160", "20 mm", "[[\"10 mm\", \"0 mm\"], [\"10 mm\", \"1300 mm\"]]"));
    let c = analysed(&outside);
    assert_eq!(c.regions_of(&c.bays[0]), [Region::Field]);
    assert_eq!(under(&c, "storm-down"), under(&a, "storm-down"));
}

#[test]
fn what_lies_under_a_pipe_is_crushed() {
    let region = |tables: &str| {
        let top = with(tables);
        let analysis = analysed(&top);
        analysis.under_pipe(2)
    };
    let all = [Region::Field, Region::Backing(0)];
    assert_eq!(region(""), [Region::Field]);
    assert_eq!(region(&backing("pu-board-320", "60 mm", ON_PORT_PIPE)), [Region::Backing(0)]);
    assert_eq!(region(&backing("pu-board-320", "20 mm", ON_PORT_PIPE)), all, "narrower than the seat");
    let short = "[[\"100 mm\", \"50 mm\"], [\"1400 mm\", \"50 mm\"]]";
    assert_eq!(region(&backing("pu-board-320", "60 mm", short)), all, "shorter than the pipe");
    let beside = "[[\"0 mm\", \"70 mm\"], [\"1500 mm\", \"70 mm\"]]";
    assert_eq!(region(&backing("pu-board-320", "60 mm", beside)), all, "not under all of the seat");
    assert_eq!(region(&backing("pu-board-320", "60 mm", MIDDLE)), [Region::Field]);
    // The weaker of two where both may bear: 2.2 MPa of the board, 3.8 MPa of the core.
    let top = with(&backing("pu-board-160", "60 mm", short));
    let analysis = analysed(&top);
    let (_, part, strength) = worst(&analysis, "core-crush", "storm-down", "s_c");
    assert_eq!(part, Part::Support(2));
    assert_eq!(strength, Measure::Pressure(top.backings[0].board.compressive_strength.value));
}

#[test]
fn a_wall_between_two_bays_takes_both_and_one_person() {
    let top = with(
        "[[wall]]\nname = \"middle\"\nseat = \"30 mm\"\n\
         along = [[\"750 mm\", \"50 mm\"], [\"750 mm\", \"1250 mm\"]]\n",
    );
    let analysis = analysed(&top);
    assert_eq!(analysis.bays.len(), 2);
    let load = |id: &str, pipe: usize| {
        let case = analysis.cases.iter().position(|case| case.id == id).expect("a case");
        let on = |load: &&skinspan::analysis::PipeLoad| load.pipe == pipe && load.case == case;
        analysis.pipe_loads.iter().filter(on).copied().collect::<Vec<_>>()
    };
    let bay = &under(&analysis, "people")[0];
    let (still, moving) = (bay.push[3].still, bay.push[3].moving);
    let middle = load("people", 4);
    assert_eq!(middle.len(), 1);
    close(middle[0].push.value, (still * 2.0 + moving).value, EXACT);
    let lifted = &under(&analysis, "storm-up")[0];
    close(load("storm-up", 4)[0].pull.value, -(lifted.push[3].still * 2.0).value, EXACT);
    assert_eq!(load("storm-up", 4)[0].push, ForcePerWidth::default());
    // The port side has a stretch beside each bay, and the overhang beyond it adds its own.
    let outer = load("storm-up", 2);
    assert_eq!(outer.len(), 2);
    assert!(outer[0].pull > -lifted.push[0].still, "the overhang lifts too");
}

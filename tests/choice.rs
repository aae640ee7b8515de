//! The search over what one can lay up, against looking at all of it.
#![allow(clippy::unwrap_used, reason = "a test that cannot go on has failed")]

use std::sync::{
    LazyLock,
    atomic::{AtomicUsize, Ordering},
};

use skinspan::{
    advice::{Change, changed},
    analysis::{Analysis, DIVISIONS, Role, mounts},
    check::{CHECKS, Outcome, Subject, run, run_one, settled},
    choice::{
        Arrangement, Arranging, Candidate, Chosen, Fate, LeftOut, Limits, Open, Order, Space, Watch, choose, frame_mass,
    },
    input::{NamedText, read_choice, read_design, read_tables},
    service::Sun,
    top::{Carrier, CoreSheet, Top, WallEdge},
    units::{Length, Mass},
};
use uom::si::length::inch;

/// Rounding of sums of some dozen masses and thicknesses.
const ROUNDING: f64 = 1e-9;

struct Nobody;

impl Watch for Nobody {
    fn at(&self, _: usize, _: usize, _: usize) {}
    fn stops(&self) -> bool {
        false
    }
}

/// Stops at once.
struct Hurried;

impl Watch for Hurried {
    fn at(&self, _: usize, _: usize, _: usize) {}
    fn stops(&self) -> bool {
        true
    }
}

fn example(name: &str) -> Top {
    let path = format!("{}/examples/{name}.toml", env!("CARGO_MANIFEST_DIR"));
    let text = NamedText { name: name.to_owned(), text: std::fs::read_to_string(path).unwrap() };
    read_design(&text, &read_tables(&[]).unwrap(), None).unwrap()
}

/// Cores of two families in three thicknesses round that of the file, and skins of a layer more or less.
fn space(top: &Top) -> Space {
    let table = read_tables(&[]).unwrap();
    let families = ["pvc-foam", "pet-foam"].map(|id| table.core(id).unwrap());
    let thicknesses = [1.0, 1.5, 2.0].map(Length::new::<inch>);
    let densities =
        [130.0, 200.0].map(skinspan::units::MassDensity::new::<uom::si::mass_density::kilogram_per_cubic_meter>);
    let few = |skins: Vec<skinspan::top::Schedule>| skins.into_iter().rev().step_by(5).take(3).collect();
    Space {
        arrangements: vec![Arrangement::own(top)],
        prices: None,
        cores: Space::sheets(top, families, Some(&thicknesses), Some(&densities)),
        outer: few(Space::skins(&top.outer)),
        inner: few(Space::skins(&top.inner)),
        limits: Limits::default(),
        order: Order::Weight,
    }
}

/// A top, what may be laid up in its place, and those of it that hold, with their measures.
struct Whole {
    top: Top,
    space: Space,
    holding: Vec<(Candidate, Vec<f64>)>,
}

/// The roof, looked at whole once for all tests.
static ROOF: LazyLock<Whole> = LazyLock::new(|| {
    let top = example("galley-roof");
    let space = space(&top);
    Whole { holding: holding(&space, &[]), space, top }
});

/// What `choose` answers on it, asked for weight.
static CHOSEN: LazyLock<Chosen> = LazyLock::new(|| choose(&ROOF.top, &ROOF.space, &Nobody));

/// A few of a space: the thinnest and the thickest cores, two skins on either side.
fn few_of(space: Space) -> Space {
    let thick = |core: &CoreSheet| core.thickness.value;
    let [thin, most] = [f64::min, f64::max].map(|of| space.cores.iter().map(thick).reduce(of).unwrap());
    let ends = |core: &CoreSheet| thick(core).total_cmp(&thin).is_eq() || thick(core).total_cmp(&most).is_eq();
    let cores = space.cores.into_iter().filter(ends).collect();
    let [outer, inner] = [space.outer, space.inner].map(|skins| skins.into_iter().take(2).collect());
    Space { cores, outer, inner, ..space }
}

/// How far a top sags by both methods, where it passes all checks but one of a name that nobody can make; none where it does not.
fn passes(top: &Top, but: &[&str]) -> Option<f64> {
    let analysis = Analysis::new(top, DIVISIONS).ok()?;
    let all_pass = |analysis: &Analysis<'_>| {
        run(analysis).iter().all(|outcome| but.contains(&CHECKS[outcome.check].id()) || outcome.passes())
    };
    // What fails by hand fails, whatever the plate says.
    if !analysis.open_cases.is_empty() || !all_pass(&analysis) {
        return None;
    }
    let analysis = settled(analysis.with_plate_method());
    if !analysis.whole.as_ref().is_some_and(Result::is_ok) || !all_pass(&analysis) {
        return None;
    }
    let held = analysis.strips.iter().filter(|forces| analysis.lines[forces.line].role != Role::Carried);
    let strips = held.flat_map(|forces| forces.sags.iter().map(|sag| sag.peak.value.value.abs()));
    let bays = analysis.plates.iter().map(|forces| forces.sag.value.abs());
    let plate = analysis.fields().flat_map(|forces| {
        let sags = forces.between.iter().chain(&forces.tip);
        sags.map(|sag| sag.sag.value.abs() * (1.0 + forces.error.sag.value))
    });
    strips.chain(bays).chain(plate).reduce(f64::max)
}

/// Weight of tubes by their volume, by the millimetre.
fn tubes(top: &Top) -> f64 {
    let millimeters = |length: Length| length.get::<uom::si::length::millimeter>();
    let tube = |support: &skinspan::top::Support| {
        let pipe = support.pipe().unwrap();
        let (outer, inner) =
            (millimeters(pipe.outside) / 2.0, millimeters(pipe.outside - pipe.wall.unwrap() * 2.0) / 2.0);
        std::f64::consts::PI * (outer * outer - inner * inner) * millimeters(support.along.length()) * 2700e-9
    };
    top.supports.iter().map(tube).sum()
}

/// Those of a whole space that hold, but for a check of a name, by looking at each of them by both methods; with weight, thickness, cost
/// where there are prices, and sag.
fn holding(space: &Space, but: &[&str]) -> Vec<(Candidate, Vec<f64>)> {
    let pipes = space.arrangements.iter().any(|known| known.top.supports != space.arrangements[0].top.supports);
    (0..space.len())
        .map(|number| space.candidate(number))
        .filter_map(|candidate| {
            let other = space.top(candidate);
            let sag = other
                .conduits
                .iter()
                .all(|conduit| conduit.diameter < other.core.thickness)
                .then(|| passes(&other, but))??;
            let mass = other.weight().bare.value + if pipes { tubes(&other) } else { 0.0 };
            let mut measures = vec![mass, other.thickness().value];
            measures.extend(space.prices.as_ref().map(|prices| prices.cost(&other).unwrap().amount()));
            measures.push(sag);
            Some((candidate, measures))
        })
        .collect()
}

/// Those of a whole space that no other beats in weight, thickness and cost.
fn by_force(space: &Space, but: &[&str]) -> Vec<Candidate> {
    unbeaten(&holding(space, but), false)
}

/// Those of all that hold that no other beats; in sag too where that is asked.
fn unbeaten(holding: &[(Candidate, Vec<f64>)], in_sag: bool) -> Vec<Candidate> {
    let mut holding = holding.to_vec();
    for (_, measures) in holding.iter_mut().filter(|_| !in_sag) {
        measures.pop();
    }
    let beats = |(first, a): &(Candidate, Vec<f64>), (second, b): &(Candidate, Vec<f64>)| {
        let as_good = a.iter().zip(b).all(|(a, b)| *a <= b * (1.0 + ROUNDING));
        let better = a.iter().zip(b).any(|(a, b)| *a < b * (1.0 - ROUNDING));
        as_good && (better || first < second)
    };
    let kept = holding.iter().filter(|own| !holding.iter().any(|other| other.0 != own.0 && beats(other, own)));
    kept.map(|(candidate, _)| *candidate).collect()
}

/// The candidates of an answer, in the order of the space.
fn candidates(chosen: &Chosen) -> Vec<Candidate> {
    let mut all: Vec<Candidate> = chosen.found.iter().filter_map(|found| found.candidate).collect();
    all.sort_unstable();
    all
}

fn count(chosen: &Chosen, which: impl Fn(&Fate) -> bool) -> usize {
    chosen.tally.iter().filter(|tally| which(&tally.fate)).map(|tally| tally.count).sum()
}

#[test]
fn the_search_finds_what_looking_at_all_finds() {
    let (chosen, space) = (&*CHOSEN, &ROOF.space);
    assert_eq!(candidates(chosen), unbeaten(&ROOF.holding, false));
    assert!(chosen.found.is_sorted_by_key(|found| found.mass.value));
    assert!(
        !chosen.found.is_empty()
            && chosen.cannot.is_empty()
            && chosen.left_out.is_empty()
            && chosen.found.iter().all(|found| found.holds),
        "{:?}",
        chosen.tally
    );
    // Nobody is counted twice or left out, and something was told by what failed before.
    assert_eq!(count(chosen, |_| true), space.len());
    assert!(count(chosen, |fate| matches!(fate, Fate::Fails { at_a_glance: true, .. })) > 0, "{:?}", chosen.tally);
}

/// With prices and with other pipes: what is dearer or thicker than one that holds, in one measure alone, is not beaten.
#[test]
fn so_it_does_with_prices_and_other_pipes() {
    let path = concat!(env!("CARGO_MANIFEST_DIR"), "/examples/seine-tender.toml");
    let text = std::fs::read_to_string(path).unwrap();
    // Few enough to look at all of them.
    let text = text
        .replace("\"pvc-foam\", \"san-foam\"", "\"pvc-foam\"")
        .replace("\"1 in\", \"1-1/4 in\"", "\"1-1/4 in\"")
        .replace("densities      = [\"80 kg/m3\", \"100 kg/m3\", \"110 kg/m3\"]", "densities = [\"110 kg/m3\"]");
    let file = NamedText { name: "seine-tender".to_owned(), text };
    let (top, space) = read_choice(&file, &read_tables(&[]).unwrap(), None).unwrap();
    assert!(space.prices.is_some() && space.arrangements.len() == 4 && space.len() == 32, "{}", space.len());
    let chosen = choose(&top, &space, &Nobody);
    let holding = holding(&space, &[]);
    assert_eq!(candidates(&chosen), unbeaten(&holding, false));
    for found in &chosen.found {
        let own = space.prices.as_ref().unwrap().cost(&space.top(found.candidate.unwrap()));
        assert_eq!(found.cost, own);
    }
    // Asked for the least sag, that is one more in which one of them may be better.
    assert_what_sags_least(&top, &Space { order: Order::Sag, ..space.clone() }, &holding);
    let cheapest = choose(&top, &Space { order: Order::Cost, ..space.clone() }, &Nobody);
    assert!(cheapest.found.is_sorted_by_key(|found| found.cost));
    let most = cheapest.found[0].cost;
    let limited = choose(&top, &Space { limits: Limits { cost: most, ..space.limits }, ..space }, &Nobody);
    assert_eq!(limited.found.iter().map(|found| found.cost).collect::<Vec<_>>(), [most]);
}

/// What sags least of all that hold comes first; all that hold and are not beaten in weight, thickness and cost are shown, and of the others
/// none that sags no less than a smaller one.
fn assert_what_sags_least(top: &Top, space: &Space, holding: &[(Candidate, Vec<f64>)]) -> Chosen {
    let chosen = choose(top, space, &Nobody);
    let sag = |candidate: &Candidate| {
        holding.iter().find(|(own, _)| own == candidate).and_then(|(_, measures)| measures.last().copied()).unwrap()
    };
    let least = holding.iter().filter_map(|(_, measures)| measures.last().copied()).fold(f64::INFINITY, f64::min);
    let first = chosen.found[0].candidate.unwrap();
    assert!(sag(&first) <= least * (1.0 + ROUNDING), "{first:?} {} over {least}", sag(&first));
    assert!(chosen.found.is_sorted_by_key(|found| found.sag));
    let shown = candidates(&chosen);
    assert!(unbeaten(holding, false).iter().all(|own| shown.contains(own)), "{shown:?}");
    let unbeaten = unbeaten(holding, true);
    for found in &chosen.found {
        let own = found.candidate.unwrap();
        // Beaten at most by one that was passed over, since by hand it sags little less than one that is shown.
        assert!((found.sag.unwrap().value / sag(&own) - 1.0).abs() < ROUNDING);
        assert!(unbeaten.contains(&own) || found.sag > chosen.found[0].sag, "{own:?}");
        let beats = |other: &&skinspan::choice::Found| {
            other.candidate != found.candidate
                && other.mass <= found.mass
                && other.thickness <= found.thickness
                && (other.cost <= found.cost)
                && other.sag <= found.sag
        };
        assert!(space.arrangements.len() > 1 || !chosen.found.iter().any(|other| beats(&other)), "{own:?}");
    }
    assert_eq!(count(&chosen, |_| true), space.len());
    assert_eq!(count(&chosen, |fate| *fate == Fate::Shown), chosen.found.len());
    chosen
}

/// The least sag is among those that are shown, by hand or by a plate.
#[test]
fn asked_for_sag_it_finds_what_sags_least() {
    let (top, lightest) = (&ROOF.top, &*CHOSEN);
    let free = Space { order: Order::Sag, ..ROOF.space.clone() };
    let chosen = assert_what_sags_least(top, &free, &ROOF.holding);
    // Something sags less than all that are not beaten without sag.
    assert!(lightest.found.iter().all(|found| found.sag > chosen.found[0].sag));
    // Within a limit it is the least of what keeps it.
    let limits = Limits { mass: Some(lightest.found[0].mass), ..Limits::default() };
    let limited = choose(top, &Space { limits, ..free }, &Nobody);
    assert_eq!(candidates(&limited), [lightest.found[0].candidate.unwrap()]);
}

/// A clamped wall: what its joint bears is not known, so that nothing passes; all else is judged.
#[test]
fn what_nobody_can_judge_hides_nothing_else() {
    let mut top = example("galley-roof");
    top.supports[0].carrier = Carrier::Wall(WallEdge::Clamped);
    let space = few_of(space(&top));
    let chosen = choose(&top, &space, &Nobody);
    assert_eq!(candidates(&chosen), by_force(&space, &["clamped-joint"]));
    let clamped = |open: &Open| matches!(open, Open::Check { check, .. } if CHECKS[*check].id() == "clamped-joint");
    assert!(chosen.cannot.len() == 1 && chosen.cannot.iter().all(clamped), "{:?}", chosen.cannot);
    assert!(!chosen.found.is_empty());
    for found in chosen.found.iter().chain([&chosen.own]) {
        assert!(!found.holds && found.open.len() == 1 && found.open.iter().all(clamped), "{found:?}");
        assert!(found.governs.as_ref().unwrap().passes());
    }
    assert!(chosen.steps.iter().all(|step| step.utilisation.is_finite()));
}

/// What is open for one core alone stands against that core, and is said of no other.
#[test]
fn what_one_core_leaves_open_is_not_open_for_all() {
    let mut top = example("galley-roof");
    let mut space = space(&top);
    space.outer.truncate(1);
    space.inner.truncate(1);
    top.service.sun = Sun::Dark;
    let epoxy = std::mem::replace(&mut top.resin, example("night-watch").resin);
    space.arrangements = vec![Arrangement::own(&top)];
    // The file's own is not laid under dark paint, those of the space are.
    top.core.material.under_dark_paint = false;
    let chosen = choose(&top, &space, &Nobody);
    assert!(!chosen.own.open.is_empty() && !chosen.own.holds);
    assert!(chosen.cannot.is_empty() && chosen.found.iter().all(|found| found.holds), "{:?}", chosen.cannot);
    // Where none of them is, that is said; and of none that it holds.
    for core in &mut space.cores {
        core.material.under_dark_paint = false;
    }
    let chosen = choose(&top, &space, &Nobody);
    let of_check = |open: &Open| matches!(open, Open::Check { check, .. } if CHECKS[*check].id() == "hot-core");
    assert!(chosen.cannot.len() == 1 && chosen.cannot.iter().all(of_check), "{:?}", chosen.cannot);
    assert!(chosen.found.iter().all(|found| !found.holds));
    // Load cases of which nothing is known are worse: what is too light for them nobody can say.
    top.resin = epoxy;
    space.arrangements = vec![Arrangement::own(&top)];
    let chosen = choose(&top, &space, &Nobody);
    assert!(chosen.cannot.iter().any(|open| matches!(open, Open::Case { id: "people", .. })), "{:?}", chosen.cannot);
    assert!(chosen.found.is_empty() && count(&chosen, |fate| *fate == Fate::Shown) == 0);
}

#[test]
fn backing_along_a_pipe_that_is_gone_is_left_out() {
    let top = example("survey-launch");
    let names = |top: &Top| top.backings.iter().map(|backing| backing.name.clone()).collect::<Vec<_>>();
    assert_eq!(names(&top), ["port strip", "middle strip", "starboard strip", "radar pad"]);
    let two = |top: &Top| {
        let all = Arrangement::all(top, &Arranging { pipes: vec![2], ..Arranging::default() }).unwrap();
        all.into_iter().find(|known| !known.changes.is_empty()).unwrap()
    };
    let known = two(&top);
    assert_eq!((known.left_out.clone(), known.top.supports.len()), (vec![1], 2));
    assert_eq!(names(&known.top), ["port strip", "starboard strip", "radar pad"]);
    // It weighs what it weighs more than the core that lies there then.
    let strip = &top.backings[1];
    let over = (strip.board.density.value - top.core.material.density)
        * top.core.thickness
        * (strip.width * strip.along.length());
    let less = top.weight().bare - known.top.weight().bare;
    assert!((less - over).value.abs() < 1e-9, "{less:?} {over:?}");
    // Gear that stands on it keeps it.
    let mut held = top.clone();
    held.gear[0].at.y = strip.along.points()[0].y;
    assert_eq!(names(&two(&held).top), names(&top));
}

/// Backing goes with the pipe that it serves, those between the outer two too.
#[test]
fn backing_goes_with_its_pipe() {
    let mut top = example("survey-launch");
    // Gear holds the backing below it where it is.
    top.backings.truncate(3);
    top.gear.clear();
    let asked = Arranging { pipes: vec![4], overhangs: vec![Length::new::<inch>(20.0)], ..Arranging::default() };
    let all = Arrangement::all(&top, &asked).unwrap();
    for known in all.iter().filter(|known| known.top.supports.len() == 4) {
        for pipe in &known.top.supports {
            let over = |backing: &skinspan::top::Backing| {
                (backing.along.points()[0].y - pipe.along.points()[0].y).abs() < Length::new::<inch>(0.01)
            };
            assert_eq!(known.top.backings.iter().filter(|backing| over(backing)).count(), 1, "{:?}", known.changes);
        }
        assert_eq!(known.left_out, [1], "the middle strip lay over none of four");
    }
    assert!(all.iter().any(|known| known.changes.len() == 2));
}

#[test]
fn pipes_weigh_and_cost_where_there_is_a_choice_of_them() {
    let path = concat!(env!("CARGO_MANIFEST_DIR"), "/examples/seine-tender.toml");
    let text = std::fs::read_to_string(path).unwrap();
    let read = |text: &str| {
        let file = NamedText { name: "seine-tender".to_owned(), text: text.to_owned() };
        read_choice(&file, &read_tables(&[]).unwrap(), None).unwrap()
    };
    let (top, space) = read(&text);
    let frames = space.frames().unwrap();
    assert_eq!(frames.len(), space.arrangements.len());
    for (frame, known) in frames.iter().zip(&space.arrangements) {
        assert!((frame.value - tubes(&known.top)).abs() < 1e-9);
    }
    // One pipe more is half as much again.
    let three = space.arrangements.iter().position(|known| known.top.supports.len() == 3).unwrap();
    assert!((frames[three] / frames[0]).value - 1.5 < 1e-9);
    let (prices, without) =
        (space.prices.clone().unwrap(), read(&text.replace("pipe     =", "# pipe =")).1.prices.unwrap());
    assert!(prices.pipe.is_some() && without.pipe.is_none());
    // Two of 78 in at 9.00 a foot.
    let more = prices.cost(&top).unwrap() - without.cost(&top).unwrap();
    assert!((more.amount() - 2.0 * 78.0 / 12.0 * 9.0).abs() < 1e-9, "{more:?}");
    // Where the wall of one of them is not given nothing is known.
    let mut blind = top.clone();
    blind.supports[0].pipe_mut().unwrap().wall = None;
    assert!(frame_mass(&blind).is_none() && frame_mass(&top).is_some());
}

/// Stops when it has been asked so often.
struct Patient(AtomicUsize, usize);

impl Watch for Patient {
    fn at(&self, _: usize, _: usize, _: usize) {}
    fn stops(&self) -> bool {
        self.0.fetch_add(1, Ordering::Relaxed) >= self.1
    }
}

/// Whenever somebody stops it, what there is is right, and the answer says what is missing.
#[test]
fn whoever_stops_it_is_told_what_is_missing() {
    let top = example("galley-roof");
    let space = few_of(space(&top));
    let whole = choose(&top, &space, &Nobody);
    let asked = Patient(AtomicUsize::new(0), usize::MAX);
    let _ = choose(&top, &space, &asked);
    let often = asked.0.into_inner();
    let mut seen = Vec::new();
    for patience in [1, 3, often - 30, often - 12, often - 3, often - 1, often] {
        let chosen = choose(&top, &space, &Patient(AtomicUsize::new(0), patience));
        assert_eq!(count(&chosen, |_| true), space.len());
        let known = candidates(&whole);
        // From the lightest up: what is shown early stays.
        assert!(candidates(&chosen).iter().all(|own| known.contains(own)), "{patience}");
        assert_eq!(chosen.stopped, count(&chosen, |fate| *fate == Fate::NotLookedAt) > 0);
        assert_eq!(chosen.grids.is_empty(), chosen.left_out.contains(&LeftOut::Grids), "{patience}");
        assert_eq!(chosen.steps.is_empty(), chosen.left_out.contains(&LeftOut::Steps), "{patience}");
        assert!(!chosen.stopped || chosen.left_out.len() == 2);
        seen.push(chosen.left_out);
    }
    assert!(seen.contains(&Vec::new()) && seen.contains(&vec![LeftOut::ByBoth]), "{seen:?}");
    assert!(seen.contains(&vec![LeftOut::Grids, LeftOut::Steps]), "{seen:?}");
}

/// Where the table's border is judged by both methods, their verdict is that of a whole look.
#[test]
fn the_border_of_the_table_is_judged_by_both() {
    let top = example("galley-roof");
    let table = read_tables(&[]).unwrap();
    // Thick enough that some lie behind the border.
    let mut space = space(&top);
    let families = ["pvc-foam", "pet-foam"].map(|id| table.core(id).unwrap());
    let thicknesses = [1.0, 1.5, 2.0, 3.0, 4.0].map(Length::new::<inch>);
    let densities = space.cores.iter().map(|core| core.material.density).collect::<Vec<_>>();
    space.cores = Space::sheets(&top, families, Some(&thicknesses), Some(&[densities[0], densities[3]]));
    space.outer.truncate(1);
    space.inner.truncate(1);
    let chosen = choose(&top, &space, &Nobody);
    let behind = chosen.grids.iter().flat_map(|grid| grid.cells.iter().flatten().flatten());
    assert!(behind.filter(|cell| !cell.by_both && cell.utilisation.value <= 1.0).count() > 0);
    let grids = chosen.grids.iter().map(|grid| (table.core(&grid.family).unwrap(), grid));
    let mut judged = 0;
    for (family, grid) in grids {
        for (row, density) in grid.densities.iter().enumerate() {
            for (column, &thickness) in grid.thicknesses.iter().enumerate() {
                let Some(cell) = grid.cells[row][column].filter(|cell| cell.by_both) else { continue };
                judged += 1;
                // It lies on the border, as both methods find it.
                let fails = |row: usize, column: usize| {
                    let cell = grid.cells.get(row).and_then(|cells| cells.get(column).copied().flatten());
                    cell.is_some_and(|cell| cell.utilisation.value > 1.0)
                };
                let beside = [
                    (row.wrapping_sub(1), column),
                    (row + 1, column),
                    (row, column.wrapping_sub(1)),
                    (row, column + 1),
                ];
                assert!(beside.into_iter().any(|(row, column)| fails(row, column)), "{density:?} {thickness:?}");
                let core = CoreSheet { family: family.clone(), material: family.at(*density).unwrap(), thickness };
                let other = Top { core, ..top.clone() };
                let outcomes = run(&Analysis::new(&other, DIVISIONS).unwrap().with_plate_method());
                assert_eq!(outcomes[0].utilisation(), Some(cell.utilisation));
                assert_eq!(outcomes[0].check, cell.governs);
            }
        }
    }
    assert!((1..=6).contains(&judged), "{judged}");
    // Steps that save weight and hold by hand, no others.
    let both = chosen.steps.iter().filter(|step| step.by_both);
    assert!(both.clone().count() <= 2 && both.clone().all(|step| step.added < Mass::default()));
}

#[test]
fn the_answer_does_not_hang_on_the_number_of_threads() {
    let top = example("galley-roof");
    let space = few_of(space(&top));
    let with = |threads| {
        let pool = rayon::ThreadPoolBuilder::new().num_threads(threads).build().unwrap();
        format!("{:?}", pool.install(|| choose(&top, &space, &Nobody)))
    };
    assert_eq!(with(1), with(3));
}

#[test]
fn who_stops_it_gets_what_there_is() {
    let top = example("galley-roof");
    let chosen = choose(&top, &space(&top), &Hurried);
    assert!(chosen.stopped && chosen.found.is_empty());
    assert_eq!(count(&chosen, |fate| *fate == Fate::NotLookedAt), chosen.of);
    // The file's own top was looked at all the same.
    assert!(chosen.own.governs.is_some());
}

#[test]
fn limits_leave_out_what_is_too_heavy_or_too_thick() {
    let top = example("galley-roof");
    let free = &*CHOSEN;
    let thinnest = free.found.iter().map(|found| found.thickness).fold(free.found[0].thickness, Length::min);
    let limits = Limits { thickness: Some(thinnest), ..Limits::default() };
    let chosen = choose(&top, &Space { limits, ..space(&top) }, &Nobody);
    assert!(chosen.found.iter().all(|found| found.thickness <= thinnest) && !chosen.found.is_empty());
    assert!(count(&chosen, |fate| *fate == Fate::OverLimit) > 0);
    let limits = Limits { mass: Some(Mass::default()), ..Limits::default() };
    let chosen = choose(&top, &Space { limits, ..space(&top) }, &Nobody);
    assert_eq!(count(&chosen, |fate| *fate == Fate::OverLimit), chosen.of);
}

/// What fails under one load case looked at alone fails in the whole: no more is made of it than there is.
#[test]
fn a_part_of_the_analysis_finds_nothing_that_the_whole_does_not() {
    for name in ["galley-roof", "survey-launch"] {
        let top = example(name);
        let whole = Analysis::new(&top, DIVISIONS).unwrap();
        let outcomes = run(&whole);
        for case in &whole.cases {
            let mut part = Analysis::unsolved(&top, &|other| other.id == case.id).unwrap();
            assert!(part.parts() > 1);
            let solved = (0..part.parts()).flat_map(|number| {
                part.solve_part(number, DIVISIONS).unwrap();
                run(&part)
            });
            for outcome in solved.collect::<Vec<_>>() {
                let Some(used) = outcome.utilisation().filter(|_| outcome.case.is_some()) else { continue };
                let same = outcomes.iter().filter(|other| {
                    other.check == outcome.check && other.case.is_some_and(|at| whole.cases[at].id == case.id)
                });
                let most = same.filter_map(Outcome::utilisation).map(|used| used.value).fold(0.0, f64::max);
                assert!(used.value <= most * (1.0 + ROUNDING), "{name}, {}: {} over {most}", case.id, used.value);
            }
        }
    }
}

#[test]
fn skins_are_laid_in_all_ways_and_the_file_s_own_is_one_of_them() {
    let top = example("survey-launch");
    for skin in [&top.outer, &top.inner] {
        let all = Space::skins(skin);
        assert!(all.contains(skin), "its own");
        let texts: Vec<Vec<&str>> =
            all.iter().map(|skin| skin.layers().iter().map(|layer| layer.text.as_str()).collect()).collect();
        let mut apart = texts.clone();
        apart.sort_unstable();
        apart.dedup();
        assert_eq!(apart.len(), all.len(), "none twice");
        // Coats stay, and something with fibre does.
        for layers in &all {
            let coats = |skin: &skinspan::top::Schedule| skin.layers().iter().filter(|layer| !layer.carries()).count();
            assert_eq!(coats(layers), coats(skin));
        }
    }
    // Mat 0 to 3 times, 18 oz at 45 degrees 0 to 3, 24 oz 1 to 4.
    assert_eq!(Space::skins(&top.outer).len(), 4 * 4 * 4);
    assert_eq!(Space::skins(&top.inner).len(), 4 * 4);
}

/// The roof with a lamp in the wind whose bolts have washers of that size.
fn with_lamp(washer: &str, in_wind: &str) -> Top {
    let path = concat!(env!("CARGO_MANIFEST_DIR"), "/examples/galley-roof.toml");
    let text = format!(
        r#"{}
[[fixing]]
name        = "lamp bolts"
hold        = "through-bolt"
thread      = "m6"
grade       = "a4-70"
lubrication = "lubricated-stainless"
washer      = {{ outside = "{washer}", thickness = "2 mm" }}

[[gear]]
name      = "lamp"
mass      = "3 kg"
cg_height = "300 mm"
at        = ["750 mm", "650 mm"]
footing   = {{ diameter = "200 mm" }}
body      = "dome"
wind_area = "{in_wind}"
fixings   = {{ fixing = "lamp bolts", circle = 4, diameter = "150 mm", clamped = "6 mm", to_body = "20 mm" }}
"#,
        std::fs::read_to_string(path).unwrap()
    );
    read_design(&NamedText { name: "lamp".to_owned(), text }, &read_tables(&[]).unwrap(), None).unwrap()
}

/// What `choose` leaves as it is and what fails in all is said, with what to change; all else is judged, and nothing is said to hold.
#[test]
fn what_fails_whatever_is_laid_up_is_said_and_hides_nothing_else() {
    let top = with_lamp("18 mm", "0.6 m2");
    let space = few_of(space(&top));
    let chosen = choose(&top, &space, &Nobody);
    assert!(chosen.none_holds && !chosen.always.is_empty(), "{:?}", chosen.tally);
    let crush = CHECKS.iter().position(|check| check.id() == "washer-crush").unwrap();
    let own = chosen.always.iter().find(|own| own.check == crush).unwrap();
    assert_eq!(own.of.as_deref(), Some("lamp"));
    // It fails in each of them, in none by less than is said of those judged, and these are some of them.
    let used = |top: &Top| {
        let outcomes = run(&Analysis::new(top, DIVISIONS).unwrap());
        let of_check = outcomes.iter().filter(|outcome| outcome.check == crush);
        of_check.filter_map(Outcome::utilisation).map(|used| used.value).fold(0.0, f64::max)
    };
    let least = (0..space.len()).map(|number| used(&space.top(space.candidate(number)))).fold(f64::INFINITY, f64::min);
    let said = own.least.utilisation().unwrap().value;
    assert!(least > 1.0 && said >= least * (1.0 - ROUNDING), "{least} {said}");
    // The file's own is one of those judged, and not the one that is used least.
    assert!(said < used(&top), "{said}");
    assert!(own.judged > 4 && own.judged <= space.len() + 1);
    // What is shown is what passes all else, by both methods, and what would pass is a change of fixings that makes it pass.
    assert!(!chosen.found.is_empty());
    for found in &chosen.found {
        assert!(!found.holds && found.governs.as_ref().unwrap().passes());
        assert!(found.fails.iter().any(|fails| fails.check == crush && !fails.passes()));
    }
    let of_fixings = |remedy: &skinspan::advice::Remedy| matches!(remedy.change, Change::FixingCount { .. });
    assert!(own.remedies.iter().any(of_fixings), "{:?}", own.remedies);
    let first = space.top(chosen.found[0].candidate.unwrap());
    for remedy in &own.remedies {
        assert!(used(&changed(&first, &remedy.change).unwrap()) <= 1.0, "{:?}", remedy.change);
    }
    let others: Vec<&str> = chosen.always.iter().map(|own| CHECKS[own.check].id()).collect();
    assert_eq!(candidates(&chosen), by_force(&space, &others));
}

/// What fails in the file's own and not in all of a space is no more than that.
#[test]
fn what_some_pass_is_not_said_to_fail_in_all() {
    let top = with_lamp("13 mm", "0.2 m2");
    let space = space(&top);
    let chosen = choose(&top, &space, &Nobody);
    assert!(!chosen.own.holds && chosen.always.is_empty() && !chosen.none_holds);
    assert_eq!(candidates(&chosen), by_force(&space, &[]));
    assert!(chosen.found.iter().all(|found| found.holds && found.fails.is_empty()));
    // Fixings rule others out at a glance.
    let at_a_glance = |fate: &Fate| matches!(fate, Fate::Fails { check, at_a_glance: true, .. } if CHECKS[*check].subject() == Subject::Fixings);
    assert!(count(&chosen, at_a_glance) > 0, "{:?}", chosen.tally);
}

/// Where nothing holds, each for its own reason, nothing is said to fail in all.
#[test]
fn what_some_pass_is_not_said_to_fail_in_all_where_nothing_holds() {
    let top = with_lamp("13 mm", "0.2 m2");
    let limits = Limits { mass: Some(Mass::default()), ..Limits::default() };
    let chosen = choose(&top, &Space { limits, ..space(&top) }, &Nobody);
    assert!(!chosen.own.holds && chosen.found.is_empty());
    assert!(chosen.always.is_empty() && !chosen.none_holds, "{:?}", chosen.always);
}

/// A core that fails in all may be another: only what is left as it is is said to fail whatever is laid up.
#[test]
fn cores_that_fail_are_not_said_to_fail_whatever_is_laid_up() {
    let mut top = with_lamp("18 mm", "0.6 m2");
    let mut space = space(&top);
    let weak = space.cores.iter().min_by(|a, b| a.thickness.value.total_cmp(&b.thickness.value)).unwrap().clone();
    top.core = CoreSheet { thickness: weak.thickness * 0.5, ..weak };
    (space.cores, space.outer, space.inner) =
        (vec![top.core.clone()], vec![top.outer.clone()], vec![top.inner.clone()]);
    let of_top = run(&Analysis::new(&top, DIVISIONS).unwrap());
    assert!(of_top.iter().any(|outcome| CHECKS[outcome.check].subject() == Subject::Top && !outcome.passes()));
    let chosen = choose(&top, &space, &Nobody);
    assert!(chosen.found.is_empty() && !chosen.always.is_empty());
    assert!(chosen.always.iter().all(|own| CHECKS[own.check].subject() == Subject::Fixings));
}

/// What no hand method looks at fails on plates alone: that is said of those that were judged, and of no other.
#[test]
fn pipes_that_bend_whatever_is_laid_up_are_said_of_those_judged() {
    let path = concat!(env!("CARGO_MANIFEST_DIR"), "/examples/seine-tender.toml");
    let text = std::fs::read_to_string(path).unwrap();
    let text = text
        .replace("wall    = \"0.125 in\"", "wall    = \"0.049 in\"")
        .replace("outside = \"1.5 in\"", "outside = \"0.75 in\"");
    let file = NamedText { name: "seine-tender".to_owned(), text };
    let (top, mut space) = read_choice(&file, &read_tables(&[]).unwrap(), None).unwrap();
    space.arrangements.truncate(1);
    space.cores.truncate(2);
    let chosen = choose(&top, &space, &Nobody);
    let ids: Vec<(&str, Option<&str>)> =
        chosen.always.iter().map(|own| (CHECKS[own.check].id(), own.of.as_deref())).collect();
    assert_eq!(ids, [("pipe-bending", None)], "{:?}", chosen.own);
    assert!(!chosen.none_holds && chosen.found.iter().all(|found| !found.holds));
    assert!(chosen.always[0].judged > 1 && chosen.always[0].least.utilisation().unwrap().value > 1.0);
}

/// Fixings of one mount under what of the strips is solved are used no more than under all of them.
#[test]
fn a_mount_alone_fails_no_more_than_in_the_whole() {
    for top in [with_lamp("13 mm", "0.2 m2"), example("survey-launch"), example("rail-row")] {
        let whole = Analysis::new(&top, DIVISIONS).unwrap();
        let outcomes = run(&whole);
        let mut seen = 0;
        for case in &whole.cases {
            let mut part = Analysis::unsolved(&top, &|other| other.id == case.id).unwrap();
            part.mounts = mounts(&top);
            for number in 0..part.parts() {
                part.solve_part(number, DIVISIONS).unwrap();
                for on in whole.mounts.iter().map(|mount| mount.on) {
                    part.solve_mount(on);
                    let of_fixings = (0..CHECKS.len()).filter(|check| CHECKS[*check].subject() == Subject::Fixings);
                    for outcome in of_fixings.flat_map(|check| run_one(check, &part)) {
                        let Some(used) = outcome.utilisation() else { continue };
                        let same = outcomes.iter().filter(|other| {
                            other.check == outcome.check
                                && other.case.map(|at| whole.cases[at].id) == outcome.case.map(|_| case.id)
                        });
                        let most = same.filter_map(Outcome::utilisation).map(|used| used.value).fold(0.0, f64::max);
                        assert!(used.value <= most * (1.0 + ROUNDING), "{}: {} over {most}", case.id, used.value);
                        seen += 1;
                    }
                }
            }
        }
        assert!(seen > 0);
    }
}

/// What a limit of weight is of is what the order of the finished top says that it weighs bare.
#[test]
fn weight_is_that_of_the_finished_top() {
    let top = with_lamp("30 mm", "0.2 m2");
    let space = few_of(space(&top));
    let chosen = choose(&top, &space, &Nobody);
    for found in &chosen.found {
        let finished = skinspan::order::order(&space.top(found.candidate.unwrap())).weight;
        assert!((finished.bare.value / found.mass.value - 1.0).abs() < ROUNDING);
        assert!((finished.total - finished.bare).value - 3.0 < ROUNDING);
    }
    assert!(!chosen.found.is_empty());
}

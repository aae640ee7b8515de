//! The search over what one can lay up, against looking at all of it.
#![allow(clippy::unwrap_used, reason = "a test that cannot go on has failed")]

use skinspan::{
    analysis::{Analysis, DIVISIONS},
    check::{Outcome, run, settled},
    choice::{Arrangement, Candidate, Chosen, Fate, Limits, Order, Space, Watch, choose},
    input::{NamedText, read_choice, read_design, read_tables},
    top::Top,
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

fn holds(top: &Top) -> bool {
    let Ok(analysis) = Analysis::new(top, DIVISIONS) else { return false };
    let by_hand = run(&analysis);
    // What fails by hand fails, whatever the plate says.
    if !analysis.open_cases.is_empty() || !by_hand.iter().all(Outcome::passes) {
        return false;
    }
    let analysis = settled(analysis.with_plate_method());
    analysis.whole.as_ref().is_some_and(Result::is_ok) && run(&analysis).iter().all(Outcome::passes)
}

/// Those of a whole space that hold and that no other beats, by looking at each of them by both methods.
fn by_force(space: &Space) -> Vec<Candidate> {
    let mut holding: Vec<(Candidate, Mass, Length, f64)> = (0..space.len())
        .map(|number| space.candidate(number))
        .filter_map(|candidate| {
            let other = space.top(candidate);
            let fits = other.conduits.iter().all(|conduit| conduit.diameter < other.core.thickness);
            let cost = space.prices.as_ref().map_or(0.0, |prices| prices.cost(&other).unwrap().amount());
            (fits && holds(&other)).then(|| (candidate, other.weight().bare, other.thickness(), cost))
        })
        .collect();
    holding.sort_by(|a, b| {
        a.1.value.total_cmp(&b.1.value).then(a.2.value.total_cmp(&b.2.value)).then(a.3.total_cmp(&b.3))
    });
    let mut kept: Vec<(Candidate, Mass, Length, f64)> = Vec::new();
    for own in holding {
        if kept.iter().all(|known| own.2 < known.2 || own.3 < known.3) {
            kept.push(own);
        }
    }
    kept.into_iter().map(|(candidate, ..)| candidate).collect()
}

fn count(chosen: &Chosen, which: impl Fn(&Fate) -> bool) -> usize {
    chosen.tally.iter().filter(|tally| which(&tally.fate)).map(|tally| tally.count).sum()
}

#[test]
fn the_search_finds_what_looking_at_all_finds() {
    let top = example("galley-roof");
    let space = space(&top);
    let chosen = choose(&top, &space, &Nobody);
    let found: Vec<Candidate> = chosen.found.iter().filter_map(|found| found.candidate).collect();
    assert_eq!(found, by_force(&space));
    assert!(!found.is_empty() && chosen.found.iter().all(|found| found.holds), "{:?}", chosen.tally);
    // Nobody is counted twice or left out, and something was told by what failed before.
    assert_eq!(count(&chosen, |_| true), space.len());
    assert!(count(&chosen, |fate| matches!(fate, Fate::Fails { at_a_glance: true, .. })) > 0, "{:?}", chosen.tally);
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
    let found: Vec<Candidate> = chosen.found.iter().filter_map(|found| found.candidate).collect();
    assert_eq!(found, by_force(&space));
    for found in &chosen.found {
        let own = space.prices.as_ref().unwrap().cost(&space.top(found.candidate.unwrap()));
        assert_eq!(found.cost, own);
    }
    let cheapest = choose(&top, &Space { order: Order::Cost, ..space.clone() }, &Nobody);
    assert!(cheapest.found.is_sorted_by_key(|found| found.cost));
    let most = cheapest.found[0].cost;
    let limited = choose(&top, &Space { limits: Limits { cost: most, ..space.limits }, ..space }, &Nobody);
    assert_eq!(limited.found.iter().map(|found| found.cost).collect::<Vec<_>>(), [most]);
}

#[test]
fn the_answer_does_not_hang_on_the_number_of_threads() {
    let top = example("galley-roof");
    let space = space(&top);
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
    let free = choose(&top, &space(&top), &Nobody);
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

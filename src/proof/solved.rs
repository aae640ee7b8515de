//! The top under its bags: short, dry, at room temperature, without gear.

use std::sync::Arc;

use super::heaps::{Heap, as_gear};
use crate::{
    analysis::{Analysis, DIVISIONS, PlateMethod, Role},
    check::{Measure, Verdict, run},
    geometry::Point,
    laminate::{Elastic, Ply},
    load_case::{Duration, LoadCase, State},
    top::{Schedule, SkinLayer, Top},
    units::{Length, Mass, Pressure, Ratio},
};

/// What a check says of the top under all bags.
#[derive(Clone, Debug, PartialEq)]
pub struct TestCheck {
    /// The check, as its place in the list.
    pub check: usize,
    /// Demand.
    pub demand: Measure,
    /// Allowable.
    pub allowable: Measure,
    /// How far it is used, its factor with it.
    pub used: Ratio,
}

const AT_TEST: State = State { hot: false, duration: Duration::Short };

/// The top with bags for gear, dry.
pub(super) fn loaded(top: &Top, heaps: &[Heap], bag: Mass) -> Top {
    let mut criteria = (*top.criteria).clone();
    criteria.wet_core.value = Ratio::from(1.0);
    criteria.wet_laminate.value = Ratio::from(1.0);
    Top {
        gear: heaps.iter().map(|heap| as_gear(top, heap, bag)).collect(),
        criteria: Arc::new(criteria),
        ..top.clone()
    }
}

/// Own weight and bags.
fn under_bags() -> LoadCase {
    LoadCase::at_rest("proof", "proof test", AT_TEST)
}

/// Bags alone: gauges are set to zero before they are laid.
pub(super) fn bags_alone() -> LoadCase {
    LoadCase { gravity: Ratio::default(), ..under_bags() }
}

/// What all checks say under all bags, the worst first, and which could not be made.
pub(super) type Checked = (Vec<TestCheck>, Vec<(usize, String)>);

pub(super) fn checks(loaded: &Top) -> Result<Checked, String> {
    let analysis = Analysis::under_cases(loaded, DIVISIONS, vec![under_bags()])?.with_plate_method();
    if let Some(Err(reason)) = &analysis.whole {
        return Err(reason.to_string());
    }
    if let Some((_, reason)) = analysis.open_cases.first() {
        return Err(reason.clone());
    }
    let (mut made, mut open): Checked = (Vec::new(), Vec::new());
    for outcome in run(&analysis) {
        match outcome.verdict {
            // What hangs on no load says nothing of the test.
            Verdict::Compared(finding) if outcome.case.is_some() => {
                if !made.iter().any(|known| known.check == outcome.check) {
                    let (demand, allowable, used) = (finding.demand, finding.allowable, finding.utilisation);
                    made.push(TestCheck { check: outcome.check, demand, allowable, used });
                }
            }
            Verdict::Compared(_) => {}
            Verdict::NotEvaluated(reason) => {
                if !open.iter().any(|(known, _)| *known == outcome.check) {
                    open.push((outcome.check, reason));
                }
            }
        }
    }
    Ok((made, open))
}

/// Largest sags by the hand method under bags alone: between supports, of a tip.
pub(super) fn by_hand(loaded: &Top) -> [Option<Length>; 2] {
    let Ok(analysis) = Analysis::under_cases(loaded, DIVISIONS, vec![bags_alone()]) else { return [None; 2] };
    let strips = analysis.strips.iter().filter(|forces| analysis.lines[forces.line].role != Role::Carried);
    let sags: Vec<_> = strips.flat_map(|forces| &forces.sags).collect();
    let largest = |tip: bool| sags.iter().filter(|sag| sag.tip == tip).map(|sag| sag.peak.value).reduce(Length::max);
    let of_bays = analysis.plates.iter().map(|forces| forces.sag).reduce(Length::max);
    [largest(false).into_iter().chain(of_bays).reduce(Length::max), largest(true)]
}

/// How much more the materials give than the table says: zero as the table has it, 0.1 for a tenth more.
#[derive(Clone, Copy, Debug, PartialEq, Default)]
pub(super) struct Give {
    pub(super) core: f64,
    pub(super) skin: f64,
}

/// Deflections under bags alone.
pub(super) fn deflections(loaded: &Top, give: Give, places: &[Point]) -> Result<Vec<Length>, String> {
    let top = softer(loaded, give)?;
    let analysis = Analysis::without_forces(&top, vec![bags_alone()])?;
    let left = analysis.core_left(0);
    let found = PlateMethod::deflections(&top, &analysis.sections, left, &analysis.cases, places);
    found.map_err(|reason| reason.to_string()).map(|mut by_case| by_case.pop().unwrap_or_default())
}

/// The top with a core and skins that give more.
fn softer(top: &Top, Give { core, skin }: Give) -> Result<Top, String> {
    let mut softer = top.clone();
    let material = &mut softer.core.material;
    for modulus in [Some(&mut material.shear_modulus), material.shear_modulus_w.as_mut()].into_iter().flatten() {
        modulus.value /= 1.0 + core;
    }
    if skin != 0.0 {
        softer.outer = of_skin(&top.outer, skin)?;
        softer.inner = of_skin(&top.inner, skin)?;
    }
    Ok(softer)
}

fn of_skin(schedule: &Schedule, skin: f64) -> Result<Schedule, String> {
    let less = |modulus: Pressure| modulus / (1.0 + skin);
    let ply = |ply: &Ply| {
        let own = ply.elastic;
        let elastic = Elastic { e1: less(own.e1), e2: less(own.e2), g12: less(own.g12), ..own };
        Ply { elastic, ..*ply }
    };
    let layer = |layer: &SkinLayer| SkinLayer { plies: layer.plies.iter().map(ply).collect(), ..layer.clone() };
    Schedule::new(schedule.layers().iter().map(layer).collect()).map_err(|invalid| invalid.to_string())
}

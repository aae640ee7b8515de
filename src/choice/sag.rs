//! How far a top sags, and how far a candidate sags at least before all of it is known.

use crate::{
    analysis::{Analysis, DIVISIONS, Role},
    top::Top,
    units::{Length, Ratio},
};

/// A deflection of the shape of a top, with its load case as its place in the analysis.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Deepest {
    pub(super) sag: Length,
    pub(super) case: usize,
}

impl Deepest {
    /// The largest that the hand method finds, in the parts that were solved.
    pub(super) fn by_hand(analysis: &Analysis<'_>) -> Option<Self> {
        // What is carried by its ends alone may bend as it likes: no check of sags looks at it.
        let held = analysis.strips.iter().filter(|forces| analysis.lines[forces.line].role != Role::Carried);
        let strips = held.flat_map(|forces| forces.sags.iter().map(|sag| (sag.peak.value, forces.case)));
        let bays = analysis.plates.iter().map(|forces| (forces.sag, forces.case));
        deepest(strips.chain(bays))
    }

    /// The largest of those that the plate method finds to be worst over their spans, with its numerical error.
    pub(super) fn by_plate(analysis: &Analysis<'_>) -> Option<Self> {
        let sags = analysis.fields().flat_map(|forces| {
            let error = Ratio::from(1.0) + forces.error.sag;
            forces.between.iter().chain(&forces.tip).map(move |own| (own.sag * error, forces.case))
        });
        deepest(sags)
    }

    /// What the plate method says at least: its numerical error is taken off instead.
    pub(super) fn at_least_by_plate(analysis: &Analysis<'_>) -> Option<Length> {
        let sags = analysis.fields().flat_map(|forces| {
            let error = Ratio::from(1.0) + forces.error.sag;
            forces.between.iter().chain(&forces.tip).map(move |own| (own.sag / error, forces.case))
        });
        deepest(sags).map(|deepest| deepest.sag)
    }

    /// The larger of both.
    pub(super) fn of(analysis: &Analysis<'_>) -> Option<Self> {
        let both = [Self::by_hand(analysis), Self::by_plate(analysis)];
        deepest(both.into_iter().flatten().map(|own| (own.sag, own.case)))
    }
}

/// The first of the largest.
fn deepest(sags: impl Iterator<Item = (Length, usize)>) -> Option<Deepest> {
    let sags = sags.map(|(sag, case)| Deepest { sag: sag.abs(), case });
    sags.reduce(|most, other| if other.sag > most.sag { other } else { most })
}

/// Where those sagged most by hand that were looked at before: the load case, and the strip or bay.
///
/// The sag of a top is the largest that any strip or bay, any load case and either method finds: one of them alone finds no more.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct SaggedAt(Option<(&'static str, usize)>);

impl SaggedAt {
    /// How far a top sags there, which is no more than its sag.
    pub(super) fn least(&self, top: &Top) -> Option<Length> {
        let (case, part) = self.0?;
        let mut analysis = Analysis::unsolved(top, &|other| other.id == case).ok()?;
        in_part(&mut analysis, part)
    }

    /// Remembers where a top sags most by hand: its load case, and of it the part, which takes a look at all of them.
    pub(super) fn learn(&mut self, top: &Top, case: &'static str) {
        let Ok(mut analysis) = Analysis::unsolved(top, &|other| other.id == case) else { return };
        let sags = (0..analysis.parts()).filter_map(|part| Some((part, in_part(&mut analysis, part)?)));
        let most = sags.reduce(|most, other| if other.1 > most.1 { other } else { most });
        self.0 = most.map(|(part, _)| (case, part));
    }
}

fn in_part(analysis: &mut Analysis<'_>, part: usize) -> Option<Length> {
    // A part of another layout: the top of the other candidate had more of them.
    if part >= analysis.parts() {
        return None;
    }
    analysis.solve_part(part, DIVISIONS).ok()?;
    Deepest::by_hand(analysis).map(|deepest| deepest.sag)
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test that cannot go on has failed")]
mod tests {
    use super::*;
    use crate::input::{NamedText, read_design, read_tables};

    /// Where one sags most another sags no more than it does all in all, so that nothing is taken for beaten that is not.
    #[test]
    fn one_part_sags_no_more_than_all() {
        for name in ["survey-launch", "galley-roof"] {
            let path = format!("{}/examples/{name}.toml", env!("CARGO_MANIFEST_DIR"));
            let text = NamedText { name: name.to_owned(), text: std::fs::read_to_string(path).unwrap() };
            let top = read_design(&text, &read_tables(&[]).unwrap(), None).unwrap();
            let by_hand = |top: &Top| {
                let analysis = Analysis::new(top, DIVISIONS).unwrap();
                let deepest = Deepest::by_hand(&analysis).unwrap();
                (deepest.sag, analysis.cases[deepest.case].id)
            };
            let mut sagged_at = SaggedAt::default();
            assert!(sagged_at.least(&top).is_none(), "nothing is known yet");
            let (sag, case) = by_hand(&top);
            sagged_at.learn(&top, case);
            assert!((sagged_at.least(&top).unwrap() / sag).value - 1.0 < 1e-12);
            for thick in [0.6, 0.8, 1.3] {
                for skin in [&top.outer, &top.inner] {
                    let mut other = Top { outer: skin.clone(), ..top.clone() };
                    other.core.thickness *= thick;
                    let least = sagged_at.least(&other).unwrap();
                    assert!(least.value <= by_hand(&other).0.value * (1.0 + 1e-12) && least.value > 0.0, "{name}");
                }
            }
        }
    }
}

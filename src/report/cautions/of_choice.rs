//! The cautions beside a choice: those of a report that both methods made, as far as the top alone tells.

use super::{
    governing, landings,
    of_top::{self, CERTIFICATION, NOT_CHECKED, ON_TESTS, OPEN},
    strips,
};
use crate::{
    advice::fittings,
    analysis::{Analysis, DIVISIONS},
    check::Outcome,
    top::Top,
};

/// About a top that was looked at by both methods, what governs it, and whether a check could not be made on some.
pub(in crate::report) fn of_choice(top: &Top, governs: Option<&Outcome>, open: bool) -> Vec<String> {
    // Of the layout and the mounts the hand method says the same as both.
    let analysis = Analysis::new(top, DIVISIONS).ok();
    let mut cautions = vec![CERTIFICATION.to_owned()];
    cautions.extend(governing(governs));
    if open {
        cautions.push(OPEN.to_owned());
    }
    cautions.push(NOT_CHECKED.to_owned());
    let tied = top.supports.iter().any(|support| support.fastened.is_none() && !support.clamps());
    cautions.extend(of_top::silent(top, tied));
    cautions.extend(of_top::past_backing(top));
    cautions.extend(of_top::idle(top));
    cautions.extend(analysis.as_ref().and_then(landings));
    if analysis.as_ref().is_some_and(|analysis| fittings(analysis).iter().any(|fitting| fitting.test.is_some())) {
        cautions.push(ON_TESTS.to_owned());
    }
    cautions.extend(of_top::outline(top));
    cautions.extend(of_top::crown(top, true));
    let short = |pipe: &crate::top::Pipe| !pipe.missing().is_empty();
    cautions.extend(of_top::rigid(top.supports.iter().filter(|support| support.pipe().is_some_and(short))));
    cautions.extend(of_top::over_rim(top));
    cautions.extend(of_top::walls_and_pads(top));
    cautions.extend(of_top::pipes_across_holes(top));
    cautions.extend(analysis.as_ref().map_or_else(Vec::new, |analysis| strips(top, analysis)));
    cautions.extend(of_top::service(top));
    cautions
}

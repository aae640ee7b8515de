//! What a bending foot adds to the pull, in words.

use uom::si::ratio::ratio;

use crate::{
    analysis::Mount,
    check::{Prying, prying},
    top::Top,
    units::{System, show},
};

/// The fixing that its foot pries on hardest.
pub(super) fn hardest(top: &Top, mount: &Mount<'_>) -> Option<Prying> {
    let all = (0..mount.places.len()).map(|number| prying(top, mount, number));
    all.max_by(|a, b| a.factor.value.total_cmp(&b.factor.value))
}

/// What a bending foot adds to the pull, in words.
pub(super) fn pried(top: &Top, mount: &Mount<'_>, system: System) -> String {
    let Some(hardest) = hardest(top, mount) else { return String::new() };
    let factor = format!("pull × {:.2}", hardest.factor.get::<ratio>());
    let Some([to_body, to_edge]) = hardest.levers else {
        return format!("{factor}, for a foot whose measures the file does not say (`to_body`, `to_edge`)");
    };
    let of = if mount.fastened.to_body.is_some() {
        "from the body that pulls"
    } else {
        "from the middle of the footing, where its body is taken to be (`to_body`)"
    };
    format!("{factor}: {} {of}, {} from the edge of the foot", show(to_body, system), show(to_edge, system))
}

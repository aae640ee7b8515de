//! Names that say where port or the bow is, against what the file says of it.

use crate::{
    geometry::Axis,
    top::{Forward, Top},
};

/// Words for the side that lies at greater *x* or *y* with the bow to the right, then for the other.
const SIDES: [(Axis, [&str; 3], [&str; 3]); 2] = [
    (Axis::Y, ["port", "larboard", "portside"], ["starboard", "stbd", "steerboard"]),
    (Axis::X, ["fore", "forward", "bow"], ["aft", "after", "stern"]),
];

/// That a name contradicts where the bow lies.
pub(super) fn hands(top: &Top) -> Option<String> {
    let bow = top.bow();
    let named: Vec<(Forward, &str)> = SIDES.iter().filter_map(|side| by_name(top, side)).collect();
    let (other, name) = named.iter().find(|(by_name, _)| *by_name != bow)?;
    let says =
        if top.forward.is_some() { "the file says" } else { "is taken for granted, since the file does not say it" };
    let says = format!("with the bow to the {}, as {says} (`forward`)", bow.word());
    Some(match named.iter().find(|(by_name, _)| by_name != other) {
        Some((_, with)) => format!(
            "By their names {name} and {with} do not go together: seen from above, with x to the right and y upwards, they put the bow \
             on different sides. Either a name is wrong, or places were measured from below.",
        ),
        None => format!(
            "By its name {name} lies on the other side of the boat than it does {says}. Either the name is wrong, or write `forward = \
             \"{}\"`.",
            other.word()
        ),
    })
}

/// Where the bow would lie by the name of the first thing that has one of the words in front.
fn by_name<'t>(top: &'t Top, (axis, greater, lesser): &(Axis, [&str; 3], [&str; 3])) -> Option<(Forward, &'t str)> {
    let half = top.outline.size(*axis) / 2.0;
    let supports = top.supports.iter().map(|support| (support.name.as_str(), &support.along));
    let backings = top.backings.iter().map(|backing| (backing.name.as_str(), &backing.along));
    supports.chain(backings).find_map(|(name, along)| {
        let first = name.split(|letter: char| !letter.is_alphanumeric()).next()?.to_lowercase();
        let says_greater = greater.contains(&first.as_str());
        if !says_greater && !lesser.contains(&first.as_str()) {
            return None;
        }
        let is_greater = along.at(along.length() / 2.0).along(*axis) > half;
        Some((if says_greater == is_greater { Forward::Right } else { Forward::Left }, name))
    })
}

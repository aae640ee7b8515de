//! What candidates weigh and cost, and how thick they are, without laying each of them up.

use super::{
    price::Money,
    space::{Candidate, Space},
};
use crate::{
    top::Top,
    units::{Length, Mass},
};

/// What one candidate is beside another.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Size {
    /// Of the bare top.
    pub(super) mass: Mass,
    /// Of its pipes, where they count.
    pub(super) frame: Mass,
    pub(super) thickness: Length,
    /// None where there are no prices.
    pub(super) cost: Option<Money>,
}

/// Sums of some dozen masses and thicknesses are no better known.
const ROUNDING: f64 = 1e-12;

impl Size {
    fn of(top: &Top, space: &Space) -> Self {
        let cost = space.prices.as_ref().and_then(|prices| prices.cost(top));
        Self { mass: top.weight().bare, frame: Mass::default(), thickness: top.thickness(), cost }
    }

    fn with(self, other: Self, sign: f64) -> Self {
        let cost = self.cost.zip(other.cost).map(|(own, other)| own + other * sign);
        Self {
            mass: self.mass + other.mass * sign,
            frame: self.frame + other.frame * sign,
            thickness: self.thickness + other.thickness * sign,
            cost,
        }
    }

    /// With its pipes, where these count.
    pub(super) fn weight(&self) -> Mass {
        self.mass + self.frame
    }

    /// Whether it is as light, as thin and as cheap as another, but for rounding: sums of the same layers in another order are the same.
    pub(super) fn beats(&self, other: &Self) -> bool {
        let no_more = |own: f64, other: f64| own <= other * (1.0 + ROUNDING);
        no_more(self.weight().value, other.weight().value)
            && no_more(self.thickness.value, other.thickness.value)
            && self.cost.zip(other.cost).is_none_or(|(own, other)| no_more(own.amount(), other.amount()))
    }
}

impl Space {
    /// The least that a candidate weighs, bare, the least that one is thick, and where there are prices the least that one costs.
    #[must_use]
    pub fn least(&self) -> (Mass, Length, Option<Money>) {
        let Sizes(all) = Sizes::of(self);
        let least = all.iter().map(|of| {
            let parts = [&of.cores, &of.skins[0], &of.skins[1]];
            let mass =
                parts.iter().filter_map(|part| part.iter().map(|size| size.mass).reduce(Mass::min)).sum::<Mass>();
            let thickness = parts
                .iter()
                .filter_map(|part| part.iter().map(|size| size.thickness).reduce(Length::min))
                .sum::<Length>();
            let cheaper = |a: Money, b: Money| if b < a { b } else { a };
            let cheapest = parts.iter().map(|part| part.iter().filter_map(|size| size.cost).reduce(cheaper));
            (mass, thickness, cheapest.sum::<Option<Money>>())
        });
        let cheaper = |a: Option<Money>, b: Option<Money>| if b < a { b } else { a };
        least.reduce(|a, b| (a.0.min(b.0), a.1.min(b.1), cheaper(a.2, b.2))).unwrap_or_default()
    }
}

/// Sizes of all that can be chosen, by arrangement: each part adds its own.
pub(super) struct Sizes(Vec<OfArrangement>);

struct OfArrangement {
    /// Of the whole top with each core, in the skins of the file.
    cores: Vec<Size>,
    /// Of each skin over that of the file.
    skins: [Vec<Size>; 2],
}

impl Sizes {
    pub(super) fn of(space: &Space) -> Self {
        let frames = space.frames();
        let of_arrangement = |(place, top): (usize, &Top)| {
            let frame = frames.as_ref().map_or_else(Mass::default, |frames| frames[place]);
            let size = |top: &Top| Size { frame, ..Size::of(top, space) };
            let without = size(top);
            let over = |top: Top| size(&top).with(without, -1.0);
            let cores = space.cores.iter().map(|core| size(&Top { core: core.clone(), ..top.clone() }));
            let outer = space.outer.iter().map(|outer| over(Top { outer: outer.clone(), ..top.clone() }));
            let inner = space.inner.iter().map(|inner| over(Top { inner: inner.clone(), ..top.clone() }));
            OfArrangement { cores: cores.collect(), skins: [outer.collect(), inner.collect()] }
        };
        Self(space.arrangements.iter().map(|known| &known.top).enumerate().map(of_arrangement).collect())
    }

    pub(super) fn size(&self, of: Candidate) -> Size {
        let known = &self.0[of.arrangement];
        known.cores[of.core].with(known.skins[0][of.outer], 1.0).with(known.skins[1][of.inner], 1.0)
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test that cannot go on has failed")]
mod tests {
    use super::*;
    use crate::{
        choice::frame_mass,
        input::{NamedText, read_choice, read_tables},
    };

    /// What parts add up to is what the whole is: nothing is taken for beaten or over a limit that is not.
    #[test]
    fn sizes_are_those_of_the_tops() {
        let path = concat!(env!("CARGO_MANIFEST_DIR"), "/examples/seine-tender.toml");
        let text = NamedText { name: "seine-tender".to_owned(), text: std::fs::read_to_string(path).unwrap() };
        let (_, space) = read_choice(&text, &read_tables(&[]).unwrap(), None).unwrap();
        let sizes = Sizes::of(&space);
        let same = |a: f64, b: f64| (a - b).abs() <= 1e-9 * b.abs();
        for candidate in (0..space.len()).map(|number| space.candidate(number)) {
            let (size, top) = (sizes.size(candidate), space.top(candidate));
            let whole = top.weight().bare + frame_mass(&top).unwrap();
            assert!(same(size.weight().value, whole.value) && same(size.mass.value, top.weight().bare.value));
            assert!(same(size.thickness.value, top.thickness().value));
            let cost = space.prices.as_ref().unwrap().cost(&top).unwrap();
            assert!(same(size.cost.unwrap().amount(), cost.amount()));
        }
    }

    /// A lighter top on heavier pipes does not beat a heavier one on lighter pipes.
    #[test]
    fn pipes_count_in_what_beats_what() {
        let kilograms = Mass::new::<uom::si::mass::kilogram>;
        let size = |mass, frame| Size {
            mass: kilograms(mass),
            frame: kilograms(frame),
            thickness: Length::default(),
            cost: None,
        };
        assert!(size(10.0, 1.0).beats(&size(9.5, 2.0)) && !size(9.5, 2.0).beats(&size(10.0, 1.0)));
    }

    /// The same parts in another order are the same; a thousandth of a millionth of the whole is not rounding.
    #[test]
    fn sums_of_the_same_parts_beat_one_another() {
        let size = |own: [f64; 3]| Size {
            mass: Mass::new::<uom::si::mass::kilogram>(own[0]),
            frame: Mass::default(),
            thickness: Length::new::<uom::si::length::meter>(own[1]),
            cost: Some(Money::new(own[2])),
        };
        let (sum, whole) = (0.1 + 0.2, 0.3);
        assert!(sum > whole);
        for number in 0..3 {
            let with = |value: f64| {
                let mut all = [whole; 3];
                all[number] = value;
                size(all)
            };
            assert!(with(sum).beats(&with(whole)) && with(whole).beats(&with(sum)), "{number}");
            let more = with(whole * (1.0 + 1e-9));
            assert!(with(whole).beats(&more) && !more.beats(&with(whole)), "{number}");
        }
    }
}

//! What lies round a fixing: its backing, conduits, the rim, its neighbours.

use crate::{geometry::Point, top::Top, units::Length};

use super::super::line::{Region, region_at};

/// A fixing in its place.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FixingPlace {
    /// The place.
    pub at: Point,
    /// What lies between the skins there.
    pub region: Region,
    /// The backing that it stands in, or the one that it misses least; none where the top has none.
    pub backing: Option<InBacking>,
    /// The conduit nearest to it, and the distance to the conduit's axis.
    pub conduit: Option<(usize, Length)>,
    /// Distance to the rim of the top.
    pub rim: Length,
    /// Distance to the nearest fixing of the same mount, where there is another.
    pub neighbour: Option<Length>,
}

/// Where a fixing lies in a backing.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct InBacking {
    /// The backing, as its place in the list.
    pub backing: usize,
    /// Distance from the backing's centre line.
    pub across: Length,
    /// Distance from the middle of the backing's length, along it.
    pub along: Length,
    /// Half of the backing's length.
    pub half_length: Length,
}

impl InBacking {
    /// Where a place lies in the backing that holds it, or in the one that it misses least; none without backings.
    #[must_use]
    pub fn at(top: &Top, place: Point) -> Option<Self> {
        let all = top.backings.iter().enumerate().map(|(index, backing)| {
            let (found, half_length): (_, Length) = (backing.along.place(place), backing.along.length() / 2.0);
            let along = (found.along - half_length).abs();
            Self { backing: index, across: found.offset, along, half_length }
        });
        all.min_by(|a, b| a.missed(top).value.total_cmp(&b.missed(top).value))
    }

    /// Whether the middle of the fixing lies in the backing at all.
    #[must_use]
    pub fn holds(&self, top: &Top) -> bool {
        self.missed(top) <= Length::default()
    }

    /// How far the middle of the fixing misses the backing, or how far it lies inside as a negative length.
    fn missed(&self, top: &Top) -> Length {
        (self.across - top.backings[self.backing].width / 2.0).max(self.along - self.half_length)
    }
}

/// Looks round each fixing of a mount.
pub(super) fn places(top: &Top, at: &[Point]) -> Vec<FixingPlace> {
    at.iter()
        .enumerate()
        .map(|(index, &place)| FixingPlace {
            at: place,
            region: region_at(top, place),
            backing: InBacking::at(top, place),
            conduit: conduit(top, place),
            rim: top.outline.within_by(place),
            neighbour: at
                .iter()
                .enumerate()
                .filter(|(other, _)| *other != index)
                .map(|(_, other)| other.distance(place))
                .min_by(|a, b| a.value.total_cmp(&b.value)),
        })
        .collect()
}

fn conduit(top: &Top, place: Point) -> Option<(usize, Length)> {
    let all = top.conduits.iter().enumerate().map(|(index, conduit)| (index, conduit.along.distance(place)));
    all.min_by(|a, b| a.1.value.total_cmp(&b.1.value))
}

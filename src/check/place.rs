//! Where on the top something happens.

use crate::{
    analysis::{Bay, FieldPeak, MountOn, Region},
    geometry::Point,
    section::{PlyPlace, Skin},
};

/// The part of the top that a finding is about.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Part {
    /// What lies between the skins at the place.
    Region(Region),
    /// The seat on a support, or the pipe itself, as its place in the list.
    Support(usize),
    /// A pipe beside a weld, of a post or of another pipe, as its place in the list.
    Weld(usize),
    /// A bay between pipes or walls.
    Bay,
    /// The tip of an overhang.
    Tip,
    /// Under a person's foot.
    Foot,
    /// Under gear, as its place in the list.
    Gear(usize),
    /// One fixing of a mount, as its place in the mount's list.
    Fixing {
        /// What it holds.
        on: MountOn,
        /// Its place in the list.
        number: usize,
    },
    /// Two fixings of two mounts, each by what it holds and its place in that mount's list.
    Fixings([(MountOn, usize); 2]),
    /// A mount as a whole.
    Mount(MountOn),
    /// At the edge, under a hand.
    Hand,
    /// All of it.
    Whole,
}

impl Part {
    /// The mount that it is a fixing of, or is; of two fixings that of the first.
    #[must_use]
    pub fn mount(self) -> Option<MountOn> {
        match self {
            Self::Fixing { on, .. } | Self::Mount(on) | Self::Fixings([(on, _), _]) => Some(on),
            _ => None,
        }
    }

    /// Whether it is a mount on this, or a fixing of it.
    pub(super) fn is_of(self, mount: MountOn) -> bool {
        match self {
            Self::Fixing { on, .. } | Self::Mount(on) => on == mount,
            Self::Fixings(both) => both.iter().any(|(on, _)| *on == mount),
            _ => false,
        }
    }
}

/// Where on the top something happens.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Place {
    /// The part of the top.
    pub part: Part,
    /// The place in plan; none where it is everywhere.
    pub at: Option<Point>,
    /// Where the person stands who causes it.
    pub load_at: Option<Point>,
    /// The skin.
    pub skin: Option<Skin>,
    /// The ply.
    pub ply: Option<PlyPlace>,
}

impl Place {
    /// A part of the top, at a place where it has one.
    #[must_use]
    pub const fn of(part: Part, at: Option<Point>) -> Self {
        Self { part, at, load_at: None, skin: None, ply: None }
    }

    /// In a region, at a worst state of the plate method.
    #[must_use]
    pub const fn on_plate(region: Region, peak: &FieldPeak) -> Self {
        Self::of(Part::Region(region), Some(peak.at)).under(peak.load_at)
    }

    /// In a bay; by its name in what takes the place of core there.
    #[must_use]
    pub fn in_bay(bay: &Bay, region: Region) -> Self {
        let part = if region == Region::Field { Part::Bay } else { Part::Region(region) };
        Self::of(part, Some(bay.middle()))
    }

    /// With the place of the person who causes it.
    #[must_use]
    pub const fn under(self, load_at: Option<Point>) -> Self {
        Self { load_at, ..self }
    }

    /// In a skin.
    #[must_use]
    pub const fn in_skin(self, skin: Skin) -> Self {
        Self { skin: Some(skin), ..self }
    }

    /// In a ply.
    #[must_use]
    pub const fn in_ply(self, ply: PlyPlace) -> Self {
        Self { skin: Some(ply.skin), ply: Some(ply), ..self }
    }
}

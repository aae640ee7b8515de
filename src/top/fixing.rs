//! Fixings: what holds gear on the top, and the top on what it stands on.

use std::sync::Arc;

use crate::{
    material::{Adhesive, Alloy, Fastener, Filler, Insert, Lubrication, PottedInsert, Rivet, Screw, Stud, Thread},
    units::{Length, Torque},
};

/// A thread with the grade of its steel and what its flanks slide on.
#[derive(Clone, Debug, PartialEq)]
pub struct Bolt {
    /// Its thread.
    pub thread: Thread,
    /// Its grade.
    pub grade: Fastener,
    /// What it is tightened with.
    pub lubrication: Lubrication,
}

/// A flat ring under a head or a nut.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Washer {
    /// Outside diameter.
    pub outside: Length,
    /// Thickness.
    pub thickness: Length,
}

impl Washer {
    /// The large one of a thread.
    #[must_use]
    pub const fn large_of(thread: &Thread) -> Self {
        Self { outside: thread.large_washer_outside.value, thickness: thread.large_washer_thickness.value }
    }
}

/// A tube round a bolt, as long as the panel is thick, that takes what the nut is tightened by.
#[derive(Clone, Debug, PartialEq)]
pub struct Sleeve {
    /// Outside diameter.
    pub outside: Length,
    /// Wall.
    pub wall: Length,
    /// What it is made of.
    pub alloy: Alloy,
}

/// How a fixing holds on to the panel.
#[derive(Clone, Debug, PartialEq)]
pub enum Hold {
    /// A bolt through both skins, with a washer under its nut.
    ThroughBolt {
        /// The bolt.
        bolt: Bolt,
        /// Under the nut, on the far skin.
        washer: Washer,
        /// Round the bolt, between head and nut.
        sleeve: Option<Sleeve>,
    },
    /// A machine screw in a thread that is cut into the backing.
    TappedScrew {
        /// The screw.
        bolt: Bolt,
        /// How deep it goes, from the face of the near skin.
        depth: Length,
    },
    /// A screw that cuts its own way into the backing.
    Screw {
        /// Its size.
        screw: Screw,
        /// Its grade.
        grade: Fastener,
        /// How deep it goes, from the face of the near skin.
        depth: Length,
    },
    /// A threaded insert that is set from one side and bulges behind what it grips.
    BlindInsert {
        /// The screw in it.
        bolt: Bolt,
        /// The insert.
        insert: Insert,
    },
    /// A threaded insert in a plug of potting.
    PottedInsert {
        /// The screw in it.
        bolt: Bolt,
        /// The insert.
        insert: PottedInsert,
        /// What it is potted with.
        potting: Filler,
        /// How deep the plug goes, from the face of the near skin.
        depth: Length,
    },
    /// A rivet that is set from one side, through the near skin.
    BlindRivet {
        /// The rivet.
        rivet: Rivet,
    },
    /// A stud on a plate that is glued to the near skin.
    BondedStud {
        /// The nut's side of it.
        bolt: Bolt,
        /// The stud.
        stud: Stud,
        /// What it is glued with.
        adhesive: Adhesive,
    },
}

/// One kind of fixing, as the design file names it.
#[derive(Clone, Debug, PartialEq)]
pub struct Fixing {
    /// Name in the report.
    pub name: String,
    /// How it holds.
    pub hold: Hold,
    /// The torque that the shop tightens it with, where the file says one.
    pub torque: Option<Torque>,
    /// The same hold in each larger size that the table has, the smallest first, so that another can be tried.
    pub larger: Arc<[Hold]>,
}

impl Hold {
    /// Its size: that of its thread, screw or rivet.
    #[must_use]
    pub fn size(&self) -> &str {
        match self {
            Self::ThroughBolt { bolt, .. }
            | Self::TappedScrew { bolt, .. }
            | Self::BlindInsert { bolt, .. }
            | Self::PottedInsert { bolt, .. }
            | Self::BondedStud { bolt, .. } => &bolt.thread.name,
            Self::Screw { screw, .. } => &screw.name,
            Self::BlindRivet { rivet } => &rivet.name,
        }
    }
}

impl Fixing {
    /// The bolt or machine screw, where there is one.
    #[must_use]
    pub const fn bolt(&self) -> Option<&Bolt> {
        match &self.hold {
            Hold::ThroughBolt { bolt, .. }
            | Hold::TappedScrew { bolt, .. }
            | Hold::BlindInsert { bolt, .. }
            | Hold::PottedInsert { bolt, .. }
            | Hold::BondedStud { bolt, .. } => Some(bolt),
            Hold::Screw { .. } | Hold::BlindRivet { .. } => None,
        }
    }

    /// Diameter of what stands in the skin: shank, screw, rivet, or the insert's body.
    #[must_use]
    pub fn diameter(&self) -> Length {
        match &self.hold {
            Hold::ThroughBolt { bolt, sleeve, .. } => {
                sleeve.as_ref().map_or(bolt.thread.major.value, |sleeve| sleeve.outside)
            }
            Hold::TappedScrew { bolt, .. } => bolt.thread.major.value,
            Hold::Screw { screw, .. } => screw.major.value,
            Hold::BlindInsert { insert, .. } => insert.hole.value,
            Hold::PottedInsert { insert, .. } => insert.bore.value,
            Hold::BlindRivet { rivet } => rivet.hole.value,
            Hold::BondedStud { stud, .. } => stud.base.value,
        }
    }

    /// Diameter of the hole in the near skin; none where nothing is drilled.
    #[must_use]
    pub fn hole(&self) -> Option<Length> {
        match &self.hold {
            Hold::ThroughBolt { bolt, sleeve: None, .. } => Some(bolt.thread.clearance_hole.value),
            Hold::BondedStud { .. } => None,
            _ => Some(self.diameter()),
        }
    }

    /// Diameter of the widest that it has on the face of a skin: washer, flange or base; none where that is its hole.
    #[must_use]
    pub const fn footprint(&self) -> Option<Length> {
        match &self.hold {
            Hold::ThroughBolt { washer, .. } => Some(washer.outside),
            Hold::BlindInsert { insert, .. } => Some(insert.flange.value),
            Hold::PottedInsert { insert, .. } => Some(insert.flange.value),
            Hold::BondedStud { stud, .. } => Some(stud.base.value),
            Hold::TappedScrew { .. } | Hold::Screw { .. } | Hold::BlindRivet { .. } => None,
        }
    }

    /// Whether it holds in the backing alone, so that it is worth nothing in foam.
    #[must_use]
    pub const fn needs_backing(&self) -> bool {
        matches!(self.hold, Hold::TappedScrew { .. } | Hold::Screw { .. } | Hold::BlindInsert { .. })
    }

    /// How deep it goes from the face of the near skin; none for one that goes through or stays on the skin.
    #[must_use]
    pub fn depth(&self) -> Option<Length> {
        match &self.hold {
            Hold::TappedScrew { depth, .. } | Hold::Screw { depth, .. } | Hold::PottedInsert { depth, .. } => {
                Some(*depth)
            }
            Hold::BlindInsert { insert, .. } => Some(insert.length.value),
            Hold::ThroughBolt { .. } | Hold::BlindRivet { .. } | Hold::BondedStud { .. } => None,
        }
    }

    /// How it holds, in the words of the report.
    #[must_use]
    pub const fn words(&self) -> &'static str {
        match self.hold {
            Hold::ThroughBolt { sleeve: None, .. } => "through-bolt",
            Hold::ThroughBolt { .. } => "through-bolt in a sleeve",
            Hold::TappedScrew { .. } => "machine screw tapped into backing",
            Hold::Screw { .. } => "screw cut into backing",
            Hold::BlindInsert { .. } => "blind threaded insert in backing",
            Hold::PottedInsert { .. } => "threaded insert potted in core",
            Hold::BlindRivet { .. } => "blind rivet through one skin",
            Hold::BondedStud { .. } => "bonded stud",
        }
    }
}

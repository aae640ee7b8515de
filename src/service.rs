//! What a top must live through, as its owner says it.

use crate::{
    load::{
        slam::{HeadSea, PlaningBoat},
        wind::Underside,
    },
    units::{Acceleration, Force, Length, Mass, Pressure, Velocity},
};

/// The service of a top. `None` means that the design file says `"none"`: the report lists what was ruled out.
#[derive(Clone, Debug, PartialEq)]
pub struct Service {
    /// Greatest speed of the boat.
    pub speed: Option<Velocity>,
    /// Wind that it runs against.
    pub headwind: Velocity,
    /// Wind at the dock or on the mooring, a gust.
    pub storm: Option<Velocity>,
    /// Road speed on the trailer.
    pub trailer: Option<Velocity>,
    /// What stands below the top.
    pub underside: Underside,
    /// How hard the boat lands.
    pub slam: Slam,
    /// How many people may be on the top at once.
    pub people: usize,
    /// Mass of one of them.
    pub person: Mass,
    /// Rule pressure for tops that are walked on.
    pub walking: Walking,
    /// A person who holds on to the edge.
    pub hand_load: Force,
    /// Depth of water that can stand on the top.
    pub ponding: Option<Length>,
    /// Snow on the top while laid up.
    pub snow: Option<Pressure>,
    /// Sun on the top.
    pub sun: Sun,
}

/// Vertical acceleration in a landing.
#[derive(Clone, Debug, PartialEq)]
pub enum Slam {
    /// Not asked for.
    None,
    /// A given acceleration at the top, on top of gravity.
    Given(Acceleration),
    /// From the boat's data, by formula.
    Boat(Box<BoatInWaves>),
}

/// A boat in a head sea, for the planing-hull formula.
#[derive(Clone, Debug, PartialEq)]
pub struct BoatInWaves {
    /// The boat.
    pub boat: PlaningBoat,
    /// The sea.
    pub sea: HeadSea,
    /// Distance of the top's centre ahead of the boat's centre of gravity.
    pub ahead: Length,
}

/// Walking presets.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Walking {
    /// Placarded against standing on it.
    NoWalk,
    /// A top that people walk on.
    WalkOn,
    /// A coachroof that is part of the weather deck.
    Coachroof,
}

/// Sun on the top.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Sun {
    /// Kept under cover.
    None,
    /// A light finish in full sun.
    Light,
    /// A dark finish in full sun.
    Dark,
}

//! Wind on a top that stands free: velocity pressure, net coefficients, zones.
//!
//! The coefficients come from building wind tunnels (a canopy near the ground, gusty wind). On a boat they stand in for
//! a measurement that nobody has published. Sign: positive presses the top down, negative lifts it.

mod free_roof;
mod pressure;
mod zone;

pub use self::{
    free_roof::{FreeRoof, NetPair, Underside, ZoneCoefficients},
    pressure::{gear_drag, net_pressure, relative_wind, velocity_pressure},
    zone::{Zone, zone_width},
};

//! Wind on a top that stands free: velocity pressure, net coefficients, zones.
//!
//! The coefficients come from building wind tunnels (a canopy near the ground, gusty wind). On a boat they stand in for
//! a measurement that nobody has published. Sign: positive presses the top down, negative lifts it.

mod exposure;
mod free_roof;
mod pressure;
mod storm;
mod zone;

pub use self::{
    exposure::{Exposure, exposure_coefficient},
    free_roof::{FreeRoof, NetPair, Underside, ZoneCoefficients},
    pressure::{gear_drag, gust_speed, net_pressure, relative_wind, velocity_pressure},
    storm::Storm,
    zone::{Zone, zone_width},
};

//! On the trailer: the road's accelerations.

use uom::si::ratio::ratio;

use crate::units::Ratio;

/// Accelerations of a top on the road, over gravity.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RoadAccelerations {
    /// Braking: inertia towards the bow of the truck.
    pub forward: Ratio,
    /// Starting, or stopping in reverse: inertia towards the rear.
    pub rearward: Ratio,
    /// Cornering, to either side.
    pub sideways: Ratio,
    /// Potholes, downwards; weight at rest included.
    pub down: Ratio,
}

/// One set of simultaneous inertia loads, over weight, in the axes of the top.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BodyLoad {
    /// Which event.
    pub event: &'static str,
    /// Towards the front.
    pub forward: Ratio,
    /// Towards port.
    pub port: Ratio,
    /// Downwards, weight included.
    pub down: Ratio,
}

impl RoadAccelerations {
    /// The events of the road, each on its own.
    ///
    /// ```text
    ///   brake (f, 0, 1)   start (−r, 0, 1)   corner (0, ±s, 1)   pothole (0, 0, d)
    /// ```
    ///
    /// | symbol        | meaning                     | field                             |
    /// |---------------|-----------------------------|-----------------------------------|
    /// | *f*, *r*, *s* | forward, rearward, sideways | `forward`, `rearward`, `sideways` |
    /// | *d*           | downwards, with the weight  | `down`                            |
    ///
    /// # Validity
    ///
    /// The in-plane values are those that securement of cargo has to hold up to its breaking strength; the rule applies
    /// them separately.
    ///
    /// # Source
    ///
    /// [`CFR_49_393`](crate::source::CFR_49_393), §393.102(a)(1): 0.8 forward, 0.5 rearward, 0.5 lateral (read); the pothole
    /// is our assumption.
    ///
    /// # Examples
    ///
    /// ```
    /// use skinspan::load::trailer::RoadAccelerations;
    /// use uom::si::{f64::Ratio, ratio::ratio};
    /// let r = |x| Ratio::new::<ratio>(x);
    /// let road = RoadAccelerations { forward: r(0.8), rearward: r(0.5), sideways: r(0.5), down: r(2.0) };
    /// assert_eq!(road.events()[0].forward, r(0.8));
    /// assert_eq!(road.events()[4].down, r(2.0));
    /// ```
    #[must_use]
    pub fn events(&self) -> [BodyLoad; 5] {
        let zero = Ratio::new::<ratio>(0.0);
        let weight = Ratio::new::<ratio>(1.0);
        let event = |event, forward, port, down| BodyLoad { event, forward, port, down };
        [
            event("braking", self.forward, zero, weight),
            event("starting", -self.rearward, zero, weight),
            event("cornering, load to port", zero, self.sideways, weight),
            event("cornering, load to starboard", zero, -self.sideways, weight),
            event("pothole", zero, zero, self.down),
        ]
    }
}

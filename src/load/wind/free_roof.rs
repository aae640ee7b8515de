//! Net coefficients of a roof that stands on posts.

use super::zone::Zone;
use crate::units::Ratio;

/// What stands below the top and holds the air up.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Underside {
    /// Air passes freely: things below the top block at most half of the opening.
    Open,
    /// Windscreen, curtains or boxes fill more than half of the opening.
    Blocked,
}

/// Largest net coefficients of a zone, over and under side together.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct NetPair {
    /// Pressing down, positive.
    pub down: Ratio,
    /// Lifting, negative.
    pub up: Ratio,
}

/// Net coefficients of the three zones.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ZoneCoefficients {
    /// Interior.
    pub interior: NetPair,
    /// Edges.
    pub edge: NetPair,
    /// Corners.
    pub corner: NetPair,
}

/// Net coefficients of a flat free roof.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FreeRoof {
    /// With a clear opening below.
    pub open: ZoneCoefficients,
    /// With a blocked opening below.
    pub blocked: ZoneCoefficients,
}

impl FreeRoof {
    /// Coefficients of one zone.
    ///
    /// ```text
    ///   (C_N down, C_N up) = table[underside][zone]
    /// ```
    ///
    /// | symbol  | meaning          | argument            |
    /// |---------|------------------|---------------------|
    /// | *`C_N`* | net coefficients | `zone`, `underside` |
    ///
    /// # Validity
    ///
    /// Level tops. At 7.5° of slope the coefficients are larger by about a third, in a blocked corner by 40 %; a top that
    /// runs nose up, or one with much crown, lies between. No values for curved tops are known to us.
    ///
    /// # Source
    ///
    /// [`BNBC_2020`](crate::source::BNBC_2020), Part 6 Fig. 6.2.19(a) (read), which reprints the figure of
    /// [`ASCE_7`](crate::source::ASCE_7) (7-16 Fig. 30.7-1); the values are criteria.
    ///
    /// # Examples
    ///
    /// ```
    /// use skinspan::load::wind::{FreeRoof, NetPair, Underside, Zone, ZoneCoefficients};
    /// use uom::si::{f64::Ratio, ratio::ratio};
    /// let pair = |down, up| NetPair { down: Ratio::new::<ratio>(down), up: Ratio::new::<ratio>(up) };
    /// let open = ZoneCoefficients { interior: pair(1.2, -1.1), edge: pair(1.8, -1.7), corner: pair(2.4, -3.3) };
    /// let roof = FreeRoof { open, blocked: open };
    /// assert_eq!(roof.at(Zone::Edge, Underside::Open), pair(1.8, -1.7));
    /// ```
    #[must_use]
    pub fn at(&self, zone: Zone, underside: Underside) -> NetPair {
        let zones = match underside {
            Underside::Open => self.open,
            Underside::Blocked => self.blocked,
        };
        match zone {
            Zone::Interior => zones.interior,
            Zone::Edge => zones.edge,
            Zone::Corner => zones.corner,
        }
    }
}

//! Things that the top carries.

use super::{Fastened, Outline};
use crate::{
    geometry::{Foot, Point},
    units::{Area, Force, Length, Mass, Ratio, Torque},
};

/// A radar, an antenna, a light, a raft, with its footing.
#[derive(Clone, Debug, PartialEq)]
pub struct Gear {
    /// Name in the report.
    pub name: String,
    /// Its mass.
    pub mass: Mass,
    /// Height of its centre of gravity above the outer skin.
    pub cg_height: Length,
    /// Where its footing is centred.
    pub at: Point,
    /// What it stands on.
    pub foot: Foot,
    /// Frontal area, for wind.
    pub wind_area: Area,
    /// Height above the outer skin at which the wind acts.
    pub wind_height: Length,
    /// Drag coefficient on that area.
    pub drag: Ratio,
    /// Lift coefficient on that area.
    pub lift: Ratio,
    /// Whether it swings on its footing, as a whip does.
    pub limber: bool,
    /// Height at which somebody may hold on to it, where anybody may.
    pub grab_height: Option<Length>,
    /// Forces that its maker or its use gives.
    pub given: Vec<GivenForce>,
    /// What holds it down, where the file says it.
    pub fastened: Option<Fastened>,
}

impl Gear {
    /// Side of a square as large as its footing.
    #[must_use]
    pub fn footing(&self) -> Length {
        self.foot.area().sqrt()
    }

    /// Whether its footing reaches over the rim of a top or of a hole.
    ///
    /// ```
    /// # use skinspan::{input::{NamedText, read_design, read_tables}, units::parse};
    /// # let text = std::fs::read_to_string(concat!(env!("CARGO_MANIFEST_DIR"), "/examples/survey-launch.toml")).unwrap();
    /// # let text = NamedText { name: String::new(), text };
    /// let mut top = read_design(&text, &read_tables(&[]).unwrap(), None).unwrap();
    /// // Its radar stands on a disc of 10 in.
    /// assert!(!top.gear[0].hangs_over(&top.outline));
    /// top.gear[0].at.y = parse("4.9 in").unwrap();
    /// assert!(top.gear[0].hangs_over(&top.outline));
    /// ```
    #[must_use]
    pub fn hangs_over(&self, outline: &Outline) -> bool {
        let on_top = |place: Point| {
            outline.within_by(Point { x: self.at.x + place.x, y: self.at.y + place.y })
                >= -Length::new::<uom::si::length::micrometer>(1.0)
        };
        let within = |place: Point| self.foot.holds(Point { x: place.x - self.at.x, y: place.y - self.at.y });
        !self.foot.border().into_iter().all(on_top)
            || outline.holes().iter().any(|hole| within(hole.contour.vertices()[0].at))
    }
}

/// A force on gear that the design file gives.
#[derive(Clone, Debug, PartialEq)]
pub struct GivenForce {
    /// What it is, for the report.
    pub name: String,
    /// Away from the top.
    pub up: Force,
    /// In the plane of the top, from any side.
    pub side: Force,
    /// Height above the outer skin at which it acts from the side.
    pub height: Length,
    /// About the axis square to the top.
    pub twist: Torque,
}

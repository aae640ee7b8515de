//! Weight of the top and its centre of gravity.

use uom::si::mass::kilogram;

use super::{Backing, Conduit, Top};
use crate::{
    geometry::{Axis, Point, Polyline},
    units::{ArealMassDensity, Length, LinearMassDensity, Mass, MassDensity},
};

/// One thing that weighs.
#[derive(Clone, Debug, PartialEq)]
pub struct WeightItem {
    /// Name in the report.
    pub name: String,
    /// Its mass; negative where it takes the place of core.
    pub mass: Mass,
    /// Its centre in plan.
    pub at: Point,
}

/// Weight of a top.
#[derive(Clone, Debug, PartialEq)]
pub struct Weight {
    /// Skins, core, resin, inlays, edge; then gear.
    pub items: Vec<WeightItem>,
    /// The top without gear.
    pub bare: Mass,
    /// With gear.
    pub total: Mass,
    /// Centre of gravity with gear.
    pub centre: Point,
}

impl Top {
    /// Mass per area of the field: skins with their coats, core, and the resin that the core takes up on both sides.
    ///
    /// ```text
    /// m = m_outer + m_inner + ρ_c c + 2 u
    /// ```
    ///
    /// | symbol | meaning |
    /// |---|---|
    /// | *m* | mass per area of a skin, fibre, resin and coats |
    /// | `ρ_c`, `c` | density and thickness of the core |
    /// | *u* | resin taken up by one side of the core, with the bond |
    ///
    /// # Source
    ///
    /// [`DERIVED`](crate::source::DERIVED): adding up.
    #[must_use]
    pub fn field_mass(&self) -> ArealMassDensity {
        self.layer_mass(self.core.material.density) + self.core.material.resin_uptake.value * 2.0
    }

    /// Mass per area where a backing takes the place of core.
    #[must_use]
    pub fn backing_mass(&self, backing: &Backing) -> ArealMassDensity {
        self.layer_mass(backing.board.density.value) + self.core.material.resin_uptake.value * 2.0
    }

    fn layer_mass(&self, between: MassDensity) -> ArealMassDensity {
        let core: ArealMassDensity = between * self.core.thickness;
        self.outer.mass() + self.inner.mass() + core
    }

    /// Mass per length that the filled edge has over the core it replaces.
    #[must_use]
    pub fn edge_mass(&self) -> LinearMassDensity {
        self.edge.as_ref().map_or_else(LinearMassDensity::default, |edge| {
            (edge.fill.density.typical.value - self.core.material.density) * (edge.setback * self.core.thickness)
        })
    }

    /// Weight by item, and the centre of gravity.
    #[must_use]
    pub fn weight(&self) -> Weight {
        let middle = self.outline.centre();
        let area = self.outline.area();
        let item = |name: &str, mass: Mass, at: Point| WeightItem { name: name.to_owned(), mass, at };
        let core: ArealMassDensity = self.core.material.density * self.core.thickness;
        let mut items = vec![
            item("outer skin, with coats", self.outer.mass() * area, middle),
            item("core", core * area, middle),
            item("resin in and on the core", self.core.material.resin_uptake.value * 2.0 * area, middle),
            item("inner skin, with coats", self.inner.mass() * area, middle),
        ];
        if self.edge.is_some() {
            items.push(item(
                "edge fill over core",
                self.edge_mass() * self.outline.perimeter(),
                self.outline.rim_centre(),
            ));
        }
        for backing in &self.backings {
            let extra = (backing.board.density.value - self.core.material.density) * self.core.thickness;
            let mass = extra * (backing.width * backing.along.length());
            items.push(item(&format!("{} over core", backing.name), mass, middle_of(&backing.along)));
        }
        for conduit in &self.conduits {
            items.push(item(
                &format!("{} over core", conduit.name),
                self.conduit_mass(conduit),
                middle_of(&conduit.along),
            ));
        }
        let bare = items.iter().fold(Mass::default(), |sum, item| sum + item.mass);
        items.extend(self.gear.iter().map(|gear| item(&gear.name, gear.mass, gear.at)));
        let total = items.iter().fold(Mass::default(), |sum, item| sum + item.mass);
        let centre = |axis: Axis| {
            items.iter().fold(0.0, |sum, item| sum + item.mass.get::<kilogram>() * item.at.along(axis).value)
                / total.get::<kilogram>()
        };
        let metre = Length::new::<uom::si::length::meter>;
        let centre = Point { x: metre(centre(Axis::X)), y: metre(centre(Axis::Y)) };
        Weight { items, bare, total, centre }
    }

    fn conduit_mass(&self, conduit: &Conduit) -> Mass {
        let bore = std::f64::consts::FRAC_PI_4 * conduit.diameter * conduit.diameter;
        let tube = conduit.tube.as_ref().map_or_else(LinearMassDensity::default, |tube| {
            let (outside, wall) = (tube.outside.value, tube.wall.value);
            tube.density.value * (std::f64::consts::PI * (outside - wall) * wall)
        });
        (tube - self.core.material.density * bore) * conduit.along.length()
    }
}

/// Centre of a line of even mass.
fn middle_of(line: &Polyline) -> Point {
    let mut centre = [Length::default(); 2];
    for pair in line.points().windows(2) {
        let piece = (pair[1].x - pair[0].x).hypot(pair[1].y - pair[0].y);
        let share = piece / line.length();
        centre[0] += (pair[0].x + pair[1].x) / 2.0 * share;
        centre[1] += (pair[0].y + pair[1].y) / 2.0 * share;
    }
    Point { x: centre[0], y: centre[1] }
}

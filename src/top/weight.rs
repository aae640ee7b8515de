//! Weight of the top and its centre of gravity.

use uom::si::mass::kilogram;

use super::{Backing, Conduit, Top};
use crate::{
    geometry::{Point, Polyline},
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
    /// Height of its centre above the lower face of the inner skin; the top taken as flat.
    pub height: Length,
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
    /// Its height above the lower face of the inner skin.
    pub height: Length,
    /// Centre of gravity of the top without gear.
    pub bare_centre: Point,
    /// Its height, as for [`Self::height`].
    pub bare_height: Length,
}

impl Weight {
    fn of(items: Vec<WeightItem>, bare_items: usize) -> Self {
        let sum = |items: &[WeightItem]| items.iter().fold(Mass::default(), |sum, item| sum + item.mass);
        let mean = |items: &[WeightItem], pick: fn(&WeightItem) -> Length| {
            let moment = items.iter().fold(0.0, |moment, item| moment + item.mass.get::<kilogram>() * pick(item).value);
            Length::new::<uom::si::length::meter>(moment / sum(items).get::<kilogram>())
        };
        let place = |items: &[WeightItem]| Point { x: mean(items, |item| item.at.x), y: mean(items, |item| item.at.y) };
        let bare = &items[..bare_items];
        Self {
            bare: sum(bare),
            total: sum(&items),
            centre: place(&items),
            height: mean(&items, |item| item.height),
            bare_centre: place(bare),
            bare_height: mean(bare, |item| item.height),
            items,
        }
    }
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
        let (core_low, core_high) =
            (self.inner.laminate().thickness(), self.thickness() - self.outer.laminate().thickness());
        let heights = [0.5 * (core_high + self.thickness()), 0.5 * (core_low + core_high), 0.5 * core_low];
        let [of_outer, of_core, of_inner] = heights;
        let item =
            |name: &str, mass: Mass, at: Point, height: Length| WeightItem { name: name.to_owned(), mass, at, height };
        let core: ArealMassDensity = self.core.material.density * self.core.thickness;
        let uptake = self.core.material.resin_uptake.value * 2.0 * area;
        let mut items = vec![
            item("outer skin, with coats", self.outer.mass() * area, middle, of_outer),
            item("core", core * area, middle, of_core),
            item("resin in and on the core", uptake, middle, of_core),
            item("inner skin, with coats", self.inner.mass() * area, middle, of_inner),
        ];
        if self.edge.is_some() {
            let mass = self.edge_mass() * self.outline.perimeter();
            items.push(item("edge fill over core", mass, self.outline.rim_centre(), of_core));
        }
        for backing in &self.backings {
            let extra = (backing.board.density.value - self.core.material.density) * self.core.thickness;
            let mass = extra * (backing.width * backing.along.length());
            items.push(item(&format!("{} over core", backing.name), mass, middle_of(&backing.along), of_core));
        }
        for conduit in &self.conduits {
            let mass = self.tube_mass(conduit) - self.bored_mass(conduit);
            items.push(item(&format!("{} over core", conduit.name), mass, middle_of(&conduit.along), of_core));
        }
        let bare_items = items.len();
        let on_top = |gear: &super::Gear| item(&gear.name, gear.mass, gear.at, self.thickness() + gear.cg_height);
        items.extend(self.gear.iter().map(on_top));
        Weight::of(items, bare_items)
    }

    /// Mass of the core that a conduit takes the place of.
    #[must_use]
    pub fn bored_mass(&self, conduit: &Conduit) -> Mass {
        let bore = std::f64::consts::FRAC_PI_4 * conduit.diameter * conduit.diameter;
        self.core.material.density * bore * conduit.along.length()
    }

    /// Mass of the tube of a conduit; nothing of a plain hole.
    #[must_use]
    pub fn tube_mass(&self, conduit: &Conduit) -> Mass {
        let tube = conduit.tube.as_ref().map_or_else(LinearMassDensity::default, |tube| {
            let (outside, wall) = (tube.outside.value, tube.wall.value);
            tube.density.value * (std::f64::consts::PI * (outside - wall) * wall)
        });
        tube * conduit.along.length()
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

//! What the materials of a top cost, where the file has prices.

use std::{
    iter::Sum,
    ops::{Add, Mul, Sub},
};

use crate::{
    top::{Schedule, Top},
    units::{Area, ArealMassDensity, Length, Mass, Volume},
};

/// An amount of money, in the currency of the file. Money is no physical quantity: it has no unit to convert.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd, Default)]
pub struct Money(f64);

impl Money {
    /// So much of the currency.
    #[must_use]
    pub const fn new(amount: f64) -> Self {
        Self(amount)
    }

    /// How much of the currency.
    #[must_use]
    pub const fn amount(self) -> f64 {
        self.0
    }
}

impl Add for Money {
    type Output = Self;
    fn add(self, other: Self) -> Self {
        Self(self.0 + other.0)
    }
}

impl Sub for Money {
    type Output = Self;
    fn sub(self, other: Self) -> Self {
        Self(self.0 - other.0)
    }
}

impl Mul<f64> for Money {
    type Output = Self;
    fn mul(self, times: f64) -> Self {
        Self(self.0 * times)
    }
}

impl Sum for Money {
    fn sum<I: Iterator<Item = Self>>(all: I) -> Self {
        all.fold(Self::default(), Add::add)
    }
}

/// What a price is for.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Per {
    /// A mass.
    Mass(Mass),
    /// An area of fabric.
    Area(Area),
    /// A volume of core or board.
    Volume(Volume),
    /// A length of pipe.
    Length(Length),
}

/// A price: money for so much of something.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Price {
    /// The money.
    pub money: Money,
    /// What one gets for it.
    pub per: Per,
}

impl Price {
    /// What so much costs, of which all is known that it may be sold by.
    fn of(self, much: Much) -> Money {
        let times = match self.per {
            Per::Mass(unit) => much.mass / unit,
            Per::Area(unit) => much.area / unit,
            Per::Volume(unit) => much.volume / unit,
            Per::Length(unit) => much.length / unit,
        };
        self.money * times.value
    }
}

/// How much there is of something, by what it may be sold by.
#[derive(Clone, Copy, Default)]
struct Much {
    mass: Mass,
    area: Area,
    volume: Volume,
    length: Length,
}

/// Prices of what a top is laid up of, and of what it stands on.
#[derive(Clone, Debug, PartialEq)]
pub struct Prices {
    /// Name of the currency.
    pub currency: String,
    /// Of resin with its hardener, and of coats that have no price of their own; by mass.
    pub resin: Price,
    /// Of dry fabric, where a layer has no price of its own.
    pub fabric: Option<Price>,
    /// Of layers by what the design file writes for them.
    pub layers: Vec<(String, Price)>,
    /// Of families of cores by their rows.
    pub cores: Vec<(String, Price)>,
    /// Of boards by their rows.
    pub boards: Vec<(String, Price)>,
    /// Of the pipes below, whatever their size; none where they are not reckoned with.
    pub pipe: Option<Price>,
}

impl Prices {
    /// What the materials in a top cost, without waste; none where one of them has no price.
    ///
    /// ```text
    /// C = A (Σ layers (p_f m_f + p_r (m − m_f)) + 2 p_r u) + p_c c (A − s P − Σ A_b) + Σ p_b c A_b + p_t Σ L
    /// ```
    ///
    /// | symbol | meaning |
    /// |---|---|
    /// | `A`, `A_b` | area of the top, and of each backing |
    /// | *s*, *P* | set-back of the core, and length of the rim |
    /// | `m`, `m_f` | mass per area of a layer as cured, and of its dry fabric |
    /// | *L* | length of each pipe in plan |
    /// | `p_f`, `p_r`, `p_c`, `p_b`, `p_t` | prices of fabric, resin, core, board and pipe; that of pipe none where the file has none |
    /// | `u` | resin taken up by one side of the core |
    /// | `c` | thickness of the core |
    ///
    /// # Validity
    ///
    /// Skins, core, resin and boards as they are in the finished top. Left out: waste, the fill of the edge, tubes of conduits,
    /// fixings, posts, paint, and work.
    ///
    /// # Source
    ///
    /// [`DERIVED`](crate::source::DERIVED): adding up.
    #[must_use]
    pub fn cost(&self, top: &Top) -> Option<Money> {
        let area = top.outline.area();
        let core = &top.core;
        let uptake: ArealMassDensity = core.material.resin_uptake.value * 2.0;
        let mut money = self.skin(&top.outer, area)? + self.skin(&top.inner, area)? + self.resin(uptake * area);
        // The fill takes the place of core along the rim, as it does in the weight.
        let edge = top.edge.as_ref().map_or_else(Area::default, |edge| edge.setback * top.outline.perimeter());
        let mut of_core: Area = area - edge;
        for backing in &top.backings {
            let own: Area = backing.width * backing.along.length();
            of_core -= own;
            let volume: Volume = own * core.thickness;
            let much = Much { area: own, volume, mass: backing.board.density.value * volume, ..Much::default() };
            money = money + price_of(&self.boards, &backing.board.id)?.of(much);
        }
        let pipes = top.supports.iter().filter(|support| support.pipe().is_some());
        let length = pipes.map(|support| support.along.length()).sum::<Length>();
        let of_pipes = self.pipe.map_or_else(Money::default, |price| price.of(Much { length, ..Much::default() }));
        let volume: Volume = of_core * core.thickness;
        let much = Much { area: of_core, volume, mass: core.material.density * volume, ..Much::default() };
        Some(money + of_pipes + price_of(&self.cores, &core.family.id)?.of(much))
    }

    /// What of a top has no price, as the file would name it: none where [`Prices::cost`] is known.
    #[must_use]
    pub fn missing(&self, top: &Top) -> Option<Unpriced> {
        let layers = top.outer.layers().iter().chain(top.inner.layers());
        let layer = layers
            .filter(|layer| layer.carries())
            .find(|layer| self.fabric.is_none() && price_of(&self.layers, &layer.text).is_none());
        if let Some(layer) = layer {
            return Some(Unpriced::Layer(layer.text.clone()));
        }
        if price_of(&self.cores, &top.core.family.id).is_none() {
            return Some(Unpriced::Core(top.core.family.id.clone()));
        }
        let board = top.backings.iter().find(|backing| price_of(&self.boards, &backing.board.id).is_none());
        board.map(|backing| Unpriced::Board(backing.board.id.clone()))
    }

    fn skin(&self, skin: &Schedule, area: Area) -> Option<Money> {
        let mut money = Money::default();
        for layer in skin.layers() {
            let own = price_of(&self.layers, &layer.text);
            let (fibre, whole): (Mass, Mass) = (layer.fibre * area, layer.mass * area);
            money = money
                + match (layer.carries(), own) {
                    (true, own) => {
                        own.or(self.fabric)?.of(Much { area, mass: fibre, ..Much::default() })
                            + self.resin(whole - fibre)
                    }
                    (false, Some(own)) => own.of(Much { area, mass: whole, ..Much::default() }),
                    (false, None) => self.resin(whole),
                };
        }
        Some(money)
    }

    fn resin(&self, mass: Mass) -> Money {
        self.resin.of(Much { mass, ..Much::default() })
    }
}

/// What has no price.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Unpriced {
    /// A layer, as the design file writes it.
    Layer(String),
    /// A family of cores, by its row.
    Core(String),
    /// A board, by its row.
    Board(String),
}

fn price_of(prices: &[(String, Price)], name: &str) -> Option<Price> {
    prices.iter().find(|(known, _)| known == name).map(|(_, price)| *price)
}

//! Fabrics: plies, breadths off a roll, what is bought.

use uom::si::{angle::radian, ratio::ratio};

use crate::{
    geometry::{Cut, Point, Ring},
    top::{SkinLayer, Top},
    units::{Angle, Area, ArealMassDensity, Length, Mass, Ratio},
};

/// Share of a breadth by which a top may be wider before another is laid: the rounding of its size.
const ROUNDING: f64 = 1e-9;

/// Sine of twice the angle below which a roll runs along the top or across it.
const SQUARE: f64 = 1e-6;

/// A fabric of one kind, in all its plies.
#[derive(Clone, Debug, PartialEq)]
pub struct FabricLine {
    /// Row of the fabric.
    pub id: String,
    /// Its name.
    pub name: String,
    /// Dry fibre per area of each of its parts.
    pub parts: Vec<ArealMassDensity>,
    /// How often it is laid, in both skins together.
    pub plies: usize,
    /// Of these, how many are cut at an angle from the roll.
    pub slanted: usize,
    /// Area in plan of all plies, laid over the outline by the edge lap; holes are laid across.
    pub net: Area,
    /// Breadths of one roll that all plies take.
    pub breadths: usize,
    /// Length of roll.
    pub length: Length,
    /// Area of that roll.
    pub area: Area,
    /// Its mass, dry.
    pub mass: Mass,
    /// Length of roll where it is bought with its fibres at the angle already, so that it is laid along the top; none where
    /// nothing is slanted.
    pub along: Option<Length>,
    /// Dry fibre that stays in the top.
    pub in_top: Mass,
}

/// Breadths of a ply.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Breadths {
    count: usize,
    length: Length,
}

/// Fabrics of both skins, each kind once, in the order of the schedule.
///
/// ```text
/// n = ⌈(V − l)/(W − l)⌉,  L = (1 + q) Σ (U_i + 2 e),  m = μ W L
/// ```
///
/// | symbol | meaning |
/// |---|---|
/// | *n* | breadths of a ply; one where *V* ≤ *W* |
/// | *V* | width of the outline across the roll, with an edge lap *e* on both sides |
/// | *W*, *l* | width of the roll, lap of two breadths |
/// | `U_i` | length of the outline along the roll, where breadth *i* lies |
/// | *L*, *q* | length of roll, share of waste |
/// | *m*, *μ* | mass of the roll, dry fibre per area |
///
/// Areas and widths are those of the surface: across, a crown makes them larger by [`Top::along_crown`].
///
/// A ply runs along the angle that the design gives it: one at 45° is counted as cut on the slant from a roll that runs at
/// 45° over the top. A mat runs along the top or across, whichever takes less.
///
/// # Source
///
/// [`DERIVED`](crate::source::DERIVED): plane geometry.
///
/// # Examples
///
/// ```
/// # use skinspan::{input::{NamedText, read_design, read_tables}, order::fabrics};
/// # use uom::si::{area::square_meter, length::millimeter};
/// # let text = std::fs::read_to_string(concat!(env!("CARGO_MANIFEST_DIR"), "/examples/galley-roof.toml")).unwrap();
/// # let text = NamedText { name: String::new(), text };
/// let top = read_design(&text, &read_tables(&[]).unwrap(), None).unwrap();
/// let fabrics = fabrics(&top);
/// assert_eq!((fabrics.len(), fabrics[0].plies, fabrics[0].slanted), (1, 4, 2));
/// // 1.5 m by 1.3 m with corners of 80 mm and 50.8 mm over all edges.
/// let r: f64 = 0.08;
/// let pi = std::f64::consts::PI;
/// let (area, rim) = (1.5 * 1.3 - (4.0 - pi) * r * r, 2.0 * (1.5 + 1.3) - (8.0 - 2.0 * pi) * r);
/// let net = 4.0 * (area + rim * 0.0508 + pi * 0.0508 * 0.0508);
/// assert!((fabrics[0].net.get::<square_meter>() - net).abs() < 1e-9);
/// ```
#[must_use]
pub fn fabrics(top: &Top) -> Vec<FabricLine> {
    let criteria = &top.criteria;
    let over = criteria.order_edge_lap.value;
    let contour = top.outline.contour();
    let laid = (contour.area() + contour.perimeter() * over + std::f64::consts::PI * over * over) * top.along_crown();
    let mut lines: Vec<FabricLine> = Vec::new();
    for layer in layers(top).filter(|layer| layer.carries()) {
        let (bought, turned) = (&layer.bought, layer.bought.turned.unwrap_or_default());
        let straight = straight(top);
        let slanted = (turned.get::<radian>() * 2.0).sin().abs() > SQUARE;
        let own = if bought.turned.is_some() { breadths(top, turned) } else { straight };
        let waste = Ratio::from(1.0) + criteria.order_fabric_waste.value;
        let length: Length = own.length * waste;
        let area: Area = length * criteria.order_roll_width.value;
        let known = lines.iter().position(|line| line.id == bought.id && line.parts == bought.parts);
        let at = known.unwrap_or(lines.len());
        if known.is_none() {
            lines.push(FabricLine {
                id: bought.id.clone(),
                name: bought.name.clone(),
                parts: bought.parts.clone(),
                plies: 0,
                slanted: 0,
                net: Area::default(),
                breadths: 0,
                length: Length::default(),
                area: Area::default(),
                mass: Mass::default(),
                along: None,
                in_top: Mass::default(),
            });
        }
        let line = &mut lines[at];
        let along_before = line.along.unwrap_or(line.length);
        let along_own = if slanted { straight.length * waste } else { length };
        line.plies += 1;
        line.slanted += usize::from(slanted);
        line.net += laid;
        line.breadths += own.count;
        line.length += length;
        line.area += area;
        line.mass += area * layer.fibre;
        line.along = (line.slanted > 0).then(|| along_before + along_own);
        line.in_top += layer.fibre * top.outline.area();
    }
    lines
}

/// Layers of both skins, from the sky down.
pub(super) fn layers(top: &Top) -> impl Iterator<Item = &SkinLayer> {
    top.outer.layers().iter().chain(top.inner.layers())
}

/// How far plies reach over what of them stays in the top, as a share of it.
pub(super) fn laid_over_kept(top: &Top) -> Ratio {
    let (contour, over) = (top.outline.contour(), top.criteria.order_edge_lap.value);
    let laid = contour.area() + contour.perimeter() * over + std::f64::consts::PI * over * over;
    laid * top.along_crown() / top.outline.area()
}

/// Breadths along the top or across it, whichever take less.
fn straight(top: &Top) -> Breadths {
    let [along, across] = [0.0, std::f64::consts::FRAC_PI_2].map(|angle| breadths(top, Angle::new::<radian>(angle)));
    if across.length < along.length { across } else { along }
}

/// Breadths of a ply whose roll runs at an angle.
fn breadths(top: &Top, turned: Angle) -> Breadths {
    let criteria = &top.criteria;
    let (roll, lap, over) = (criteria.order_roll_width.value, criteria.order_lap.value, criteria.order_edge_lap.value);
    let (sin, cos) = turned.get::<radian>().sin_cos();
    // A crown makes it wider than it is seen from above.
    let across = top.along_crown();
    let on_surface = |place: &Point| Point { x: place.x, y: place.y * across };
    let along = |place: Point| Point { x: place.x * cos + place.y * sin, y: place.y * cos - place.x * sin };
    let ring = Ring::new(Ring::of(top.outline.contour()).places().iter().map(on_surface).map(along).collect());
    let Some([low, high]) = ring.bounds() else { return Breadths { count: 0, length: Length::default() } };
    let wide: Length = high.y - low.y + over * 2.0;
    let more: Ratio = (wide - roll) / (roll - lap);
    #[expect(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "no fewer than none, no more than the roof of a house"
    )]
    let count = 1 + (more.get::<ratio>() - ROUNDING).ceil().clamp(0.0, 1e6) as usize;
    let mut length = Length::default();
    let mut from: Length = low.y - over;
    for _ in 0..count {
        let to = from + roll;
        // What lies within an edge lap of the breadth is laid by it.
        let place = |x: Length, y: Length| Point { x, y };
        let own = ring
            .cut(Cut { from: place(low.x, from - over), to: place(high.x, from - over) })
            .cut(Cut { from: place(high.x, to + over), to: place(low.x, to + over) });
        if let Some([low, high]) = own.bounds() {
            length += high.x - low.x + over * 2.0;
        }
        from += roll - lap;
    }
    Breadths { count, length }
}

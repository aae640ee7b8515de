//! Putty of the edge.

use crate::{
    geometry::Contour,
    top::{Outline, Top},
    units::{Area, Length, Mass, Ratio, Volume},
};

/// Putty of the edge.
#[derive(Clone, Debug, PartialEq)]
pub struct Putty {
    /// Its name.
    pub name: String,
    /// Whether it is cured by a catalyst that is bought beside it.
    pub catalysed: bool,
    /// How far the core is cut back.
    pub setback: Length,
    /// Length of all rims.
    pub rim: Length,
    /// Area in plan of the border that it fills.
    pub border: Area,
    /// What is bought.
    pub volume: Volume,
    /// Its mass.
    pub mass: Mass,
    /// What stays in the top as its weight counts it: as deep as it is cut back along all rims.
    pub in_top: Mass,
}

/// Putty that fills the edge.
///
/// ```text
/// V = B c (1 + q),  m = ρ V,  B = A_o − A_o(−s) + Σ (A_h(s) − A_h);  in the top  ρ s c P
/// ```
///
/// | symbol | meaning |
/// |---|---|
/// | *B* | border in plan |
/// | `A_o`, `A_o(−s)` | area in the outline, and in the line that runs inside it |
/// | `A_h`, `A_h(s)` | area of a hole, and in the line that runs round it |
/// | *s*, *c* | how far the core is cut back, its thickness |
/// | *P* | length of all rims |
/// | *q*, *ρ* | share of waste, density |
///
/// A border of a hole that meets that of the outline is counted twice where they meet.
pub(super) fn putty(top: &Top) -> Option<Putty> {
    let edge = top.edge.as_ref()?;
    let (rim, border) = (top.outline.perimeter(), border(&top.outline, edge.setback));
    let volume = border * top.core.thickness * (Ratio::from(1.0) + top.criteria.order_putty_waste.value);
    let density = edge.fill.density.typical.value;
    Some(Putty {
        name: edge.fill.name.clone(),
        catalysed: catalysed(&edge.fill.family),
        setback: edge.setback,
        rim,
        border,
        volume,
        mass: density * volume,
        in_top: density * (edge.setback * top.core.thickness * rim),
    })
}

/// Area between the rims and the lines that run beside them in the top.
fn border(outline: &Outline, setback: Length) -> Area {
    let beside = |contour: &Contour, by: Length| -> Area { contour.beside(by).iter().map(Contour::area).sum() };
    let rim = outline.contour();
    let of_holes = outline.holes().iter().map(|hole| beside(&hole.contour, setback) - hole.contour.area());
    of_holes.fold(rim.area() - beside(rim, -setback), |sum, own| sum + own)
}

/// Whether a putty or glue of a family is a polyester: what cures it is no part of its name.
pub(super) fn catalysed(family: &str) -> bool {
    family.starts_with("polyester")
}

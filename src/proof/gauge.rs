//! Gauges: where they stand, what they should read.

use super::solved::{Give, bags_alone, deflections};
use crate::{
    analysis::{Analysis, FieldSag},
    geometry::Point,
    material::Basis,
    top::Top,
    units::{Length, Ratio},
};

/// Step by which a material is made to give more, to see how readings hang on it.
const MORE: f64 = 0.1;

/// Where a gauge stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum GaugeAt {
    /// Where the top sags most between supports.
    MidSpan,
    /// Half way from there to the nearest support.
    Quarter,
    /// At the tip of the overhang that sags most.
    Tip,
    /// On a support, as its place in the list: what supports move more than expected is taken off the other readings, as a plane.
    Support(usize),
}

/// What a gauge should read under all bags.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Reading {
    /// By the plate method, downwards positive.
    pub expected: Length,
    /// How far it may lie to either side.
    pub band: Length,
    /// How much more it reads for each time that the core gives as much again.
    pub core: Length,
    /// The same of both skins.
    pub skin: Length,
    /// Error of the plate method, to either side.
    pub method: Length,
}

/// A gauge below the top.
#[derive(Clone, Debug, PartialEq)]
pub struct Gauge {
    /// A letter.
    pub name: String,
    /// Where it stands, in words for the report.
    pub on: GaugeAt,
    /// In plan.
    pub at: Point,
    /// What it should read under all bags.
    pub reading: Reading,
}

/// Gauges of a test, and what they should read.
///
/// ```text
/// b = √((s_c ∂w/∂κ_c)² + (s_s ∂w/∂κ_s)² + (ε w)²) + u
/// ```
///
/// | symbol | meaning |
/// |---|---|
/// | *b* | half of the band |
/// | `s_c`, `s_s` | scatter of the shear modulus of the core and of the moduli of the skins, by their basis |
/// | `∂w/∂κ` | how the reading grows with what the material gives, from a solution with a tenth more |
/// | *ε* | error that the plate method says of itself |
/// | *u* | error of a gauge |
pub(super) fn gauges(top: &Top, loaded: &Top) -> Result<Vec<Gauge>, String> {
    let analysis = Analysis::by_plate_alone(loaded, vec![bags_alone()])?;
    if let Some(Err(reason)) = &analysis.whole {
        return Err(reason.to_string());
    }
    let forces = analysis.fields().next().ok_or("the plate method has no forces")?;
    let largest = |sags: &[FieldSag]| {
        sags.iter().max_by(|a, b| a.sag.abs().value.total_cmp(&b.sag.abs().value)).map(|sag| sag.at)
    };
    let noise = top.criteria.proof_gauge_noise.value;
    // Where a pipe sags it takes the top with it: between supports is clear of them.
    let beside = top.thickness() * 2.0;
    let clear = |sag: &&FieldSag| top.supports.iter().all(|support| support.distance(sag.at) > beside);
    // A tip that hardly moves says nothing.
    let tips: Vec<FieldSag> = forces.tip.iter().filter(clear).filter(|sag| sag.sag.abs() > noise).copied().collect();
    let between: Vec<FieldSag> = forces.between.iter().filter(clear).copied().collect();
    let between = largest(&between).or_else(|| largest(&forces.between));
    let places = places(top, between, largest(&tips));
    let plan: Vec<Point> = places.iter().map(|(_, at)| *at).collect();
    let of = |core: f64, skin: f64| deflections(loaded, Give { core, skin }, &plan);
    let (usual, core, skin) = (of(0.0, 0.0)?, of(MORE, 0.0)?, of(0.0, MORE)?);
    let [of_core, of_skin] = scatters(top);
    let gauge = |(number, (on, at)): (usize, (GaugeAt, Point))| {
        let expected = usual[number];
        let [by_core, by_skin] = [&core, &skin].map(|softer| (softer[number] - expected) / MORE);
        let method: Length = (expected * forces.error.sag).abs();
        let parts = [by_core * of_core, by_skin * of_skin, method];
        let squares: f64 = parts.iter().map(|part| part.value * part.value).sum();
        let band = Length::new::<uom::si::length::meter>(squares.sqrt()) + noise;
        let letter = u8::try_from(number).map_or('?', |number| char::from(b'A' + number));
        Gauge {
            name: letter.to_string(),
            on,
            at,
            reading: Reading { expected, band, core: by_core, skin: by_skin, method },
        }
    };
    Ok(places.into_iter().enumerate().map(gauge).collect())
}

/// Bases of what the readings hang on: the core's shear modulus, and the skins as their strengths have it, since moduli are
/// no worse known.
#[must_use]
pub fn bases(top: &Top) -> [Basis; 2] {
    [top.core.material.shear_modulus.basis, top.outer.basis().max(top.inner.basis())]
}

/// How far what the table says of core and skins may scatter, by their [`bases`].
#[must_use]
pub fn scatters(top: &Top) -> [Ratio; 2] {
    let criteria = &top.criteria;
    bases(top).map(|basis| match basis {
        Basis::Measured => criteria.proof_scatter_measured.value,
        Basis::Minimum | Basis::Characteristic => criteria.proof_scatter_minimum.value,
        Basis::Typical => criteria.proof_scatter_typical.value,
        Basis::Estimate => criteria.proof_scatter_estimate.value,
    })
}

/// Where gauges stand: between supports, at a tip, and on the supports beside both.
fn places(top: &Top, between: Option<Point>, tip: Option<Point>) -> Vec<(GaugeAt, Point)> {
    let mut places = Vec::new();
    let nearest = |place: Point| {
        let mut near: Vec<(Length, usize)> =
            top.supports.iter().enumerate().map(|(number, support)| (support.distance(place), number)).collect();
        near.sort_by(|(a, i), (b, j)| a.value.total_cmp(&b.value).then(i.cmp(j)));
        near.into_iter().map(|(_, number)| number)
    };
    let on = |number: usize, place: Point| {
        let along = &top.supports[number].along;
        let station = along.place(place).along.max(Length::default()).min(along.length());
        along.at(station)
    };
    let mut supports: Vec<(usize, Point)> = Vec::new();
    let mut beside = |number: usize, place: Point| {
        if !supports.iter().any(|(known, _)| *known == number) {
            supports.push((number, on(number, place)));
        }
    };
    if let Some(middle) = between {
        places.push((GaugeAt::MidSpan, middle));
        for (rank, number) in nearest(middle).take(2).enumerate() {
            beside(number, middle);
            if rank == 0 {
                let foot = on(number, middle);
                let half = Ratio::from(0.5);
                let quarter =
                    Point { x: middle.x + (foot.x - middle.x) * half, y: middle.y + (foot.y - middle.y) * half };
                places.push((GaugeAt::Quarter, quarter));
            }
        }
    }
    if let Some(tip) = tip {
        places.push((GaugeAt::Tip, tip));
        for number in nearest(tip).take(1) {
            beside(number, tip);
        }
    }
    places.extend(supports.into_iter().map(|(number, at)| (GaugeAt::Support(number), at)));
    places
}

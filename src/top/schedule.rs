//! A skin as the shop lays it: layers from the outside to the inside.

use std::sync::Arc;

use uom::si::areal_mass_density::kilogram_per_square_meter;

use crate::{
    laminate::{InvalidLaminate, Laminate, Ply},
    material::{Basis, Origin, Property},
    units::{Angle, ArealMassDensity, Length, Pressure, Ratio},
};

/// What a part of a layer bears round a fixing; none where the table has no value.
#[derive(Clone, Debug, PartialEq)]
pub struct RoundFixing {
    /// Thickness of the part.
    pub thickness: Length,
    /// Bearing strength against a shank, finger-tight, far from edges.
    pub bearing: Option<Property<Pressure>>,
    /// Strength in shear through the thickness, backed.
    pub punching_shear: Option<Property<Pressure>>,
}

/// What a layer is bought as.
#[derive(Clone, Debug, PartialEq)]
pub struct Bought {
    /// Row of the fabric or the coat.
    pub id: String,
    /// Its name for people.
    pub name: String,
    /// Class that it belongs to.
    pub family: String,
    /// Dry fibre per area of each part of a fabric; none of a coat.
    pub parts: Vec<ArealMassDensity>,
    /// From the length of the top to the length of the roll; none where the fabric has no direction, and of a coat.
    pub turned: Option<Angle>,
}

/// One line of the schedule: a fabric with its resin, or a coat.
#[derive(Clone, Debug, PartialEq)]
pub struct SkinLayer {
    /// As the design file writes it, without the count before it: what is laid twice is two layers.
    pub text: String,
    /// What it is bought as.
    pub bought: Bought,
    /// Its plies; none for a coat, whose strength does not count.
    pub plies: Vec<Ply>,
    /// What its parts bear round a fixing, part by part; none for a coat.
    pub round_fixing: Vec<RoundFixing>,
    /// Dry fibre per area.
    pub fibre: ArealMassDensity,
    /// Fibre mass fraction, where there is fibre.
    pub fibre_fraction: Option<Ratio>,
    /// Mass per area as cured.
    pub mass: ArealMassDensity,
    /// Basis of the weakest strength in it; best for a coat.
    pub basis: Basis,
    /// Basis of the weakest modulus in it; best for a coat.
    pub stiffness_basis: Basis,
    /// Whether there is carbon in it: a metal that touches it corrodes.
    pub carbon: bool,
    /// Where its values come from.
    pub origins: Vec<Arc<Origin>>,
}

impl SkinLayer {
    /// Whether it carries.
    #[must_use]
    pub fn carries(&self) -> bool {
        !self.plies.is_empty()
    }

    /// Thickness of its plies.
    #[must_use]
    pub fn thickness(&self) -> Length {
        self.plies.iter().map(|ply| ply.thickness).sum()
    }
}

/// A skin: layers from the outside to the inside, and the laminate that they make.
#[derive(Clone, Debug, PartialEq)]
pub struct Schedule {
    layers: Vec<SkinLayer>,
    laminate: Laminate,
    bearing: Option<(Pressure, Basis)>,
    punching_shear: Option<(Pressure, Basis)>,
}

impl Schedule {
    /// A skin of layers, outside first.
    ///
    /// # Errors
    ///
    /// [`InvalidLaminate`] where no layer carries, or a ply cannot exist.
    pub fn new(layers: Vec<SkinLayer>) -> Result<Self, InvalidLaminate> {
        let plies: Vec<Ply> = layers.iter().flat_map(|layer| layer.plies.iter().copied()).collect();
        let laminate = Laminate::new(&plies)?;
        let bearing = mean(&layers, |part| part.bearing.as_ref());
        let punching_shear = mean(&layers, |part| part.punching_shear.as_ref());
        Ok(Self { layers, laminate, bearing, punching_shear })
    }

    /// The layers, outside first.
    #[must_use]
    pub fn layers(&self) -> &[SkinLayer] {
        &self.layers
    }

    /// The plies as one laminate.
    #[must_use]
    pub const fn laminate(&self) -> &Laminate {
        &self.laminate
    }

    /// Bearing strength against a shank, mean over the thickness of what carries, with its weakest basis; none where a
    /// layer that carries has none.
    #[must_use]
    pub const fn bearing(&self) -> Option<(Pressure, Basis)> {
        self.bearing
    }

    /// Strength in shear through the thickness, as for [`Self::bearing`].
    #[must_use]
    pub const fn punching_shear(&self) -> Option<(Pressure, Basis)> {
        self.punching_shear
    }

    /// Mass per area, coats included.
    #[must_use]
    pub fn mass(&self) -> ArealMassDensity {
        self.layers.iter().fold(ArealMassDensity::new::<kilogram_per_square_meter>(0.0), |sum, layer| sum + layer.mass)
    }

    /// Basis of the weakest strength.
    #[must_use]
    pub fn basis(&self) -> Basis {
        self.layers.iter().map(|layer| layer.basis).max().unwrap_or(Basis::Estimate)
    }

    /// Basis of the weakest modulus.
    #[must_use]
    pub fn stiffness_basis(&self) -> Basis {
        self.layers.iter().map(|layer| layer.stiffness_basis).max().unwrap_or(Basis::Estimate)
    }

    /// The layer whose ply stands at `index` of the laminate.
    #[must_use]
    pub fn layer_of_ply(&self, index: usize) -> Option<&SkinLayer> {
        self.layers.iter().flat_map(|layer| layer.plies.iter().map(move |_| layer)).nth(index)
    }

    /// The same skin with one of its layers laid twice.
    ///
    /// # Errors
    ///
    /// [`InvalidLaminate`] as for [`Schedule::new`].
    pub fn with_repeated(&self, index: usize) -> Result<Self, InvalidLaminate> {
        let mut layers = self.layers.clone();
        if let Some(layer) = self.layers.get(index) {
            layers.insert(index, layer.clone());
        }
        Self::new(layers)
    }
}

/// Mean over the thickness of all parts that carry, and the weakest basis.
fn mean(layers: &[SkinLayer], pick: impl Fn(&RoundFixing) -> Option<&Property<Pressure>>) -> Option<(Pressure, Basis)> {
    let (mut sum, mut thickness, mut basis) =
        (Pressure::default() * Length::default(), Length::default(), Basis::Measured);
    for layer in layers.iter().filter(|layer| layer.carries()) {
        for part in &layer.round_fixing {
            let strength = pick(part)?;
            sum += strength.value * part.thickness;
            thickness += part.thickness;
            basis = basis.max(strength.basis);
        }
    }
    (thickness > Length::default()).then(|| (sum / thickness, basis))
}

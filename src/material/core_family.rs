//! Cores: a family over its densities, and one core of a given density.

use super::{Choices, Curve, OutOfRange, Property, schema::kind};
use crate::units::{
    ArealMassDensity, Length, MassDensity, Pressure, Ratio, TemperatureCoefficient, ThermodynamicTemperature,
};

kind! {
    /// A family of cores, its properties as functions of density.
    CoreFamily {
        #[doc = "Shear modulus through the thickness; along the ribbon (L) where directions differ."]
        shear_modulus: Curve<MassDensity, Pressure> => MODULUS,
        #[doc = "Shear modulus across the ribbon (W), where it differs."]
        shear_modulus_w: Option<Curve<MassDensity, Pressure>> => MODULUS,
        #[doc = "Shear strength through the thickness; along the ribbon (L) where directions differ."]
        shear_strength: Curve<MassDensity, Pressure> => STRENGTH,
        #[doc = "Shear strength across the ribbon (W), where it differs."]
        shear_strength_w: Option<Curve<MassDensity, Pressure>> => STRENGTH,
        #[doc = "Compressive modulus through the thickness."]
        compressive_modulus: Curve<MassDensity, Pressure> => MODULUS,
        #[doc = "Compressive strength through the thickness."]
        compressive_strength: Curve<MassDensity, Pressure> => STRENGTH,
        #[doc = "Tensile strength through the thickness."]
        tensile_strength: Option<Curve<MassDensity, Pressure>> => STRENGTH,
        #[doc = "Modulus in the plane of the sheet; that along the face grain or ribbon where directions differ."]
        in_plane_modulus: Curve<MassDensity, Pressure> => MODULUS,
        #[doc = "Poisson's ratio in the plane of the sheet."]
        in_plane_poisson: Property<Ratio> => POISSON,
        #[doc = "Thermal expansion."]
        thermal_expansion: Property<TemperatureCoefficient> => EXPANSION,
        #[doc = "Shear strain at failure."]
        shear_elongation: Option<Curve<MassDensity, Ratio>> => STRAIN,
        #[doc = "Highest temperature for a short time, as under the sun."]
        service_temperature: Property<ThermodynamicTemperature> => TEMPERATURE,
        #[doc = "Fraction of the room-temperature strength and stiffness that is left when hot."]
        hot_retention: Curve<ThermodynamicTemperature, Ratio> => FRACTION,
        #[doc = "Resin that the surface of a plain sheet takes up, on one side."]
        resin_uptake: Property<ArealMassDensity> => AREAL,
        #[doc = "Size of the open cell of a honeycomb: the skin spans it."]
        cell_size: Option<Property<Length>> => SIZE,
        #[doc = "Densities that are sold."]
        sold_densities: Choices<MassDensity> => DENSITY,
        #[doc = "Thicknesses that are sold."]
        sold_thicknesses: Choices<Length> => SIZE,
        #[doc = "Whether the trade lays it under a dark top."]
        under_dark_paint: bool => PLAIN,
    }
}

/// A core of one density.
#[derive(Clone, Debug, PartialEq)]
pub struct Core {
    /// Row that it comes from.
    pub id: String,
    /// Name for people.
    pub name: String,
    /// Class of material that it belongs to.
    pub family: String,
    /// Caution that belongs beside every result.
    pub note: Option<String>,
    /// Density.
    pub density: MassDensity,
    /// Shear modulus through the thickness; along the ribbon (L) where directions differ.
    pub shear_modulus: Property<Pressure>,
    /// Shear modulus across the ribbon (W), where it differs.
    pub shear_modulus_w: Option<Property<Pressure>>,
    /// Shear strength through the thickness; along the ribbon (L) where directions differ.
    pub shear_strength: Property<Pressure>,
    /// Shear strength across the ribbon (W), where it differs.
    pub shear_strength_w: Option<Property<Pressure>>,
    /// Compressive modulus through the thickness.
    pub compressive_modulus: Property<Pressure>,
    /// Compressive strength through the thickness.
    pub compressive_strength: Property<Pressure>,
    /// Tensile strength through the thickness.
    pub tensile_strength: Option<Property<Pressure>>,
    /// Modulus in the plane of the sheet.
    pub in_plane_modulus: Property<Pressure>,
    /// Poisson's ratio in the plane of the sheet.
    pub in_plane_poisson: Property<Ratio>,
    /// Thermal expansion.
    pub thermal_expansion: Property<TemperatureCoefficient>,
    /// Shear strain at failure.
    pub shear_elongation: Option<Property<Ratio>>,
    /// Highest temperature for a short time, as under the sun.
    pub service_temperature: Property<ThermodynamicTemperature>,
    /// Fraction of the room-temperature strength and stiffness that is left when hot.
    pub hot_retention: Curve<ThermodynamicTemperature, Ratio>,
    /// Resin that the surface of a plain sheet takes up, on one side.
    pub resin_uptake: Property<ArealMassDensity>,
    /// Size of the open cell of a honeycomb.
    pub cell_size: Option<Property<Length>>,
    /// Thicknesses that are sold.
    pub sold_thicknesses: Choices<Length>,
    /// Whether the trade lays it under a dark top.
    pub under_dark_paint: bool,
}

impl CoreFamily {
    /// Whether it is end-grain balsa, which comes in small sheets.
    #[must_use]
    pub fn is_balsa(&self) -> bool {
        self.family == "balsa"
    }

    /// Lightest and heaviest density at which every property is given; the first is above the second if the tables
    /// leave none.
    #[must_use]
    pub fn density_range(&self) -> Option<(MassDensity, MassDensity)> {
        let required = [
            &self.shear_modulus,
            &self.shear_strength,
            &self.compressive_modulus,
            &self.compressive_strength,
            &self.in_plane_modulus,
        ];
        let optional = [&self.shear_modulus_w, &self.shear_strength_w, &self.tensile_strength];
        let curves = required.into_iter().chain(optional.into_iter().flatten()).filter_map(Curve::range);
        curves
            .chain(self.shear_elongation.as_ref().and_then(Curve::range))
            .reduce(|(a, b), (low, high)| (if low > a { low } else { a }, if high < b { high } else { b }))
    }

    /// The core of one density.
    ///
    /// ```text
    /// P(ρ) = P_a + (P_b − P_a)·(ρ − ρ_a)/(ρ_b − ρ_a)
    /// ```
    ///
    /// | symbol | meaning |
    /// |---|---|
    /// | P | a property |
    /// | ρ | density |
    /// | a, b | the neighbours of ρ in the table |
    ///
    /// # Validity
    /// Between the lightest and the heaviest density of the table.
    ///
    /// # Errors
    /// [`OutOfRange`] if one of the properties is not given at this density.
    ///
    /// # Source
    /// [`DERIVED`](crate::source::DERIVED), linear interpolation; the values have their own sources in the table.
    ///
    /// # Examples
    /// ```
    /// use skinspan::{material::MaterialTable, units::MassDensity};
    /// use uom::si::{mass_density::kilogram_per_cubic_meter as kg_m3, pressure::megapascal};
    /// let table = MaterialTable::built_in().unwrap();
    /// let core = table.core("pvc-foam").unwrap().at(MassDensity::new::<kg_m3>(80.0)).unwrap();
    /// assert_eq!(core.shear_strength.value.get::<megapascal>(), 1.15);
    /// ```
    pub fn at(&self, density: MassDensity) -> Result<Core, OutOfRange<MassDensity>> {
        let at = |curve: &Option<Curve<MassDensity, Pressure>>| curve.as_ref().map(|c| c.at(density)).transpose();
        Ok(Core {
            id: self.id.clone(),
            name: self.name.clone(),
            family: self.family.clone(),
            note: self.note.clone(),
            density,
            shear_modulus: self.shear_modulus.at(density)?,
            shear_modulus_w: at(&self.shear_modulus_w)?,
            shear_strength: self.shear_strength.at(density)?,
            shear_strength_w: at(&self.shear_strength_w)?,
            compressive_modulus: self.compressive_modulus.at(density)?,
            compressive_strength: self.compressive_strength.at(density)?,
            tensile_strength: at(&self.tensile_strength)?,
            in_plane_modulus: self.in_plane_modulus.at(density)?,
            in_plane_poisson: self.in_plane_poisson.clone(),
            thermal_expansion: self.thermal_expansion.clone(),
            shear_elongation: self.shear_elongation.as_ref().map(|c| c.at(density)).transpose()?,
            service_temperature: self.service_temperature.clone(),
            hot_retention: self.hot_retention.clone(),
            resin_uptake: self.resin_uptake.clone(),
            cell_size: self.cell_size.clone(),
            sold_thicknesses: self.sold_thicknesses.clone(),
            under_dark_paint: self.under_dark_paint,
        })
    }
}

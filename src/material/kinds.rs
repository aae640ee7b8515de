//! Kinds of rows that are values only.

use super::{
    Banded, Curve, Property,
    schema::{Layer, kind},
};
use crate::units::{
    ArealMassDensity, Length, MassDensity, Pressure, Ratio, TemperatureCoefficient, ThermodynamicTemperature,
};

kind! {
    /// A fibre. Direction 1 runs along it.
    Fibre {
        #[doc = "Density."]
        density: Property<MassDensity> => DENSITY,
        #[doc = "Modulus along the fibre."]
        e1: Property<Pressure> => MODULUS,
        #[doc = "Modulus across the fibre."]
        e2: Property<Pressure> => MODULUS,
        #[doc = "Shear modulus along the fibre."]
        g12: Property<Pressure> => MODULUS,
        #[doc = "Poisson's ratio: contraction across for extension along."]
        nu12: Property<Ratio> => POISSON,
        #[doc = "Thermal expansion along the fibre."]
        alpha1: Property<TemperatureCoefficient> => EXPANSION,
        #[doc = "Thermal expansion across the fibre."]
        alpha2: Property<TemperatureCoefficient> => EXPANSION,
    }
}

kind! {
    /// A cured resin, isotropic. Its `family` picks the plies that it makes with a fibre.
    Resin {
        #[doc = "Density, cured."]
        density: Property<MassDensity> => DENSITY,
        #[doc = "Modulus in tension."]
        modulus: Property<Pressure> => MODULUS,
        #[doc = "Poisson's ratio."]
        poisson: Property<Ratio> => POISSON,
        #[doc = "Thermal expansion."]
        thermal_expansion: Property<TemperatureCoefficient> => EXPANSION,
        #[doc = "Loss of volume by curing."]
        shrinkage: Property<Ratio> => FRACTION,
        #[doc = "Heat distortion temperature."]
        heat_distortion: Property<ThermodynamicTemperature> => TEMPERATURE,
        #[doc = "Fraction of the room-temperature strength and stiffness of the laminate that is left when hot."]
        hot_retention: Curve<ThermodynamicTemperature, Ratio> => FRACTION,
    }
}

kind! {
    /// A coating: mass only, no strength is counted.
    Coat {
        #[doc = "Mass per area as applied, dry."]
        areal_mass: Banded<ArealMassDensity> => AREAL,
        #[doc = "Thickness."]
        thickness: Option<Banded<Length>> => SIZE,
    }
}

kind! {
    /// A board in place of core, to take fasteners. Values are those through the thickness where it matters.
    Board {
        #[doc = "Density."]
        density: Property<MassDensity> => DENSITY,
        #[doc = "Modulus in the plane of the board."]
        modulus: Property<Pressure> => MODULUS,
        #[doc = "Shear modulus through the thickness."]
        shear_modulus: Property<Pressure> => MODULUS,
        #[doc = "Shear strength through the thickness."]
        shear_strength: Property<Pressure> => STRENGTH,
        #[doc = "Compressive modulus through the thickness."]
        compressive_modulus: Property<Pressure> => MODULUS,
        #[doc = "Compressive strength through the thickness."]
        compressive_strength: Property<Pressure> => STRENGTH,
        #[doc = "Tensile strength through the thickness, of the board or of a bond to it, whichever is the less."]
        flatwise_tension: Property<Pressure> => STRENGTH,
        #[doc = "Shear strength in which a screw thread strips."]
        thread_shear: Option<Property<Pressure>> => STRENGTH,
        #[doc = "Bearing strength against a shank in the plane."]
        bearing_strength: Option<Property<Pressure>> => STRENGTH,
        #[doc = "Thermal expansion in the plane."]
        thermal_expansion: Option<Property<TemperatureCoefficient>> => EXPANSION,
        #[doc = "Whether resin and glue hold on it; if not, it carries by capture only."]
        bondable: bool => PLAIN,
    }
}

kind! {
    /// A putty or a syntactic foam.
    Filler {
        #[doc = "Density, cured."]
        density: Banded<MassDensity> => DENSITY,
        #[doc = "Modulus."]
        modulus: Banded<Pressure> => MODULUS,
        #[doc = "Compressive strength."]
        compressive_strength: Banded<Pressure> => STRENGTH,
        #[doc = "Tensile strength."]
        tensile_strength: Banded<Pressure> => STRENGTH,
        #[doc = "Shear strength."]
        shear_strength: Option<Banded<Pressure>> => STRENGTH,
    }
}

kind! {
    /// A tube let into the core.
    Conduit {
        #[doc = "Outside diameter."]
        outside: Property<Length> => SIZE,
        #[doc = "Wall."]
        wall: Property<Length> => SIZE,
        #[doc = "Density of its material."]
        density: Property<MassDensity> => DENSITY,
        #[doc = "Modulus of its material."]
        modulus: Property<Pressure> => MODULUS,
        #[doc = "Thermal expansion."]
        thermal_expansion: Property<TemperatureCoefficient> => EXPANSION,
        #[doc = "Temperature at which it goes soft."]
        softening: Property<ThermodynamicTemperature> => TEMPERATURE,
    }
}

kind! {
    /// A metal for pipes and plates.
    Alloy {
        #[doc = "Density."]
        density: Property<MassDensity> => DENSITY,
        #[doc = "Modulus."]
        modulus: Property<Pressure> => MODULUS,
        #[doc = "Shear modulus."]
        shear_modulus: Property<Pressure> => MODULUS,
        #[doc = "Yield, 0.2 % offset."]
        yield_strength: Property<Pressure> => STRENGTH,
        #[doc = "Tensile strength."]
        ultimate_strength: Property<Pressure> => STRENGTH,
        #[doc = "Yield in the zone that a weld has softened."]
        weld_yield_strength: Option<Property<Pressure>> => STRENGTH,
        #[doc = "Tensile strength in the zone that a weld has softened."]
        weld_ultimate_strength: Option<Property<Pressure>> => STRENGTH,
        #[doc = "How far the softened zone reaches from the weld."]
        weld_zone: Option<Property<Length>> => SIZE,
        #[doc = "Thermal expansion."]
        thermal_expansion: Property<TemperatureCoefficient> => EXPANSION,
    }
}

kind! {
    /// A grade of bolts and screws.
    Fastener {
        #[doc = "Proof stress, or yield at 0.2 % offset where the standard gives no proof stress."]
        proof_stress: Property<Pressure> => STRENGTH,
        #[doc = "Tensile strength."]
        ultimate_stress: Property<Pressure> => STRENGTH,
        #[doc = "Modulus."]
        modulus: Property<Pressure> => MODULUS,
        #[doc = "Thermal expansion."]
        thermal_expansion: Property<TemperatureCoefficient> => EXPANSION,
    }
}

kind! {
    /// Fibre and resin in one form. Rule formulas and tabulated laminates stand here; what a unidirectional ply of
    /// glass has not, comes from fibre and resin.
    Ply {
        #[doc = "Fibre, by its row."]
        fibre: String => PLAIN,
        #[doc = "Families of resin that it holds for."]
        resins: Vec<String> => PLAIN,
        #[doc = "Form: mat, woven or unidirectional."]
        form: String => PLAIN,
        #[doc = "Modulus along direction 1."]
        e1: Option<Curve<Ratio, Pressure>> => MODULUS,
        #[doc = "Modulus along direction 2."]
        e2: Option<Curve<Ratio, Pressure>> => MODULUS,
        #[doc = "In-plane shear modulus; a mat has that of an isotropic sheet."]
        g12: Option<Curve<Ratio, Pressure>> => MODULUS,
        #[doc = "Poisson's ratio: contraction along 2 for extension along 1."]
        nu12: Option<Property<Ratio>> => POISSON,
        #[doc = "Thermal expansion along direction 1."]
        alpha1: Option<Property<TemperatureCoefficient>> => EXPANSION,
        #[doc = "Thermal expansion along direction 2."]
        alpha2: Option<Property<TemperatureCoefficient>> => EXPANSION,
        #[doc = "Tensile strength along direction 1."]
        tension1: Curve<Ratio, Pressure> => STRENGTH,
        #[doc = "Compressive strength along direction 1."]
        compression1: Curve<Ratio, Pressure> => STRENGTH,
        #[doc = "Tensile strength along direction 2; that along 1 if absent."]
        tension2: Option<Curve<Ratio, Pressure>> => STRENGTH,
        #[doc = "Compressive strength along direction 2; that along 1 if absent."]
        compression2: Option<Curve<Ratio, Pressure>> => STRENGTH,
        #[doc = "In-plane shear strength."]
        shear: Curve<Ratio, Pressure> => STRENGTH,
        #[doc = "Interlaminar shear strength."]
        interlaminar_shear: Option<Curve<Ratio, Pressure>> => STRENGTH,
        #[doc = "Bearing strength against a shank, finger-tight, far from edges."]
        bearing: Option<Property<Pressure>> => STRENGTH,
        #[doc = "Punching shear strength through the thickness, backed."]
        punching_shear: Option<Property<Pressure>> => STRENGTH,
    }
}

kind! {
    /// A fabric as its row has it; [`super::Fabric`] is the one to use.
    FabricRow {
        #[doc = "Form: mat, woven, stitched, or combined from other fabrics."]
        form: String => PLAIN,
        #[doc = "Fibre, by its row; not for a combined fabric."]
        fibre: Option<String> => PLAIN,
        #[doc = "Sub-layers by angle and share of the mass; not for mat and combined fabrics."]
        layers: Option<Vec<Layer>> => PLAIN,
        #[doc = "Fabrics that a combined one is made of, by their rows."]
        parts: Option<Vec<String>> => PLAIN,
        #[doc = "Whether a design must say at which angle it lies."]
        needs_angle: bool => PLAIN,
        #[doc = "Fraction of the straight fibre's modulus that the waviness of stitching leaves."]
        waviness: Option<Property<Ratio>> => FRACTION,
        #[doc = "Fibre mass fraction, laid by hand."]
        fibre_fraction_hand: Option<Banded<Ratio>> => FRACTION,
        #[doc = "Fibre mass fraction, under a vacuum bag."]
        fibre_fraction_bag: Option<Banded<Ratio>> => FRACTION,
        #[doc = "Fibre mass fraction, infused."]
        fibre_fraction_infusion: Option<Banded<Ratio>> => FRACTION,
    }
}

//! From fabric, resin and fibre content to the sub-layers of a skin, each value with its origin.

use std::sync::Arc;

use super::{Curve, Fibre, Kind, MaterialTable, NoPly, Origin, Part, Ply, PlyForm, PlyLayer, Property, Resin};
use crate::{
    laminate::{
        Elastic,
        fibre_content::Densities,
        micromechanics::{Constituent, unidirectional},
    },
    source::{JONES_1999, Mark},
    units::{Angle, Pressure, Ratio},
};

impl MaterialTable {
    /// The sub-layers of one part of a fabric in a resin.
    ///
    /// ```text
    /// unidirectional glass:  E1 = k·E1(Vf), the rest by micromechanics      Vf = Vf(psi)
    /// mat:                   E2 = E1,  G12 = E1/(2·(1 + nu))
    /// woven, carbon, aramid: as tabulated
    /// angle of a sub-layer = angle of the roll + its angle in the fabric
    /// ```
    ///
    /// | symbol | meaning |
    /// |---|---|
    /// | psi, Vf | fibre mass fraction and volume fraction |
    /// | k | what the waviness of stitching leaves of the stiffness along the fibre |
    /// | E1, E2, G12, nu | elastic constants of the sub-layer |
    ///
    /// # Validity
    /// Inside the range of fibre mass fractions of the row. Stitching is taken to cost stiffness along the fibre only.
    ///
    /// # Errors
    /// [`NoPly`]: an angle is missing, the table has no such ply, or `psi` is out of range.
    ///
    /// # Source
    /// [`JONES_1999`], ch. 3, by [`unidirectional`] and [`Densities`], which say how well it is known; the values have
    /// their own sources in the table.
    ///
    /// # Examples
    /// Stitched biaxial at 45° is two half plies at 45° and 135°; without an angle it is nothing.
    /// ```
    /// use skinspan::{material::MaterialTable, units::{Angle, Ratio}};
    /// use uom::si::angle::degree;
    /// let table = MaterialTable::built_in().unwrap();
    /// let (part, resin) = (&table.fabric("biaxial").unwrap().parts[0], table.resin("polyester").unwrap());
    /// let psi = Ratio::from(0.5);
    /// let plies = table.plies(part, resin, psi, Some(Angle::new::<degree>(45.0))).unwrap();
    /// let angles: Vec<_> = plies.iter().map(|ply| ply.angle.get::<degree>().round()).collect();
    /// assert_eq!(angles, [45.0, 135.0]);
    /// assert!(table.plies(part, resin, psi, None).is_err());
    /// ```
    pub fn plies(&self, part: &Part, resin: &Resin, psi: Ratio, angle: Option<Angle>) -> Result<Vec<PlyLayer>, NoPly> {
        let angle = match angle {
            Some(angle) => angle,
            None if part.needs_angle => return Err(NoPly::NeedsAngle { fabric: part.fabric.clone() }),
            None => Angle::default(),
        };
        let no_data = || NoPly::NoData { fibre: part.fibre.clone(), form: part.form, resin: resin.family.clone() };
        let ply = self.ply_row(&part.fibre, part.form, &resin.family).ok_or_else(no_data)?;
        let fibre = self.fibre(&part.fibre).map_err(|_| no_data())?;
        let layer = sub_layer(ply, part, fibre, resin, psi)?;
        let laid = |l: &super::Layer| PlyLayer { share: l.share, angle: angle + l.angle, ..layer.clone() };
        Ok(part.layers.iter().map(laid).collect())
    }

    fn ply_row(&self, fibre: &str, form: PlyForm, resin: &str) -> Option<&Ply> {
        let fits = |ply: &&Ply| {
            ply.fibre == fibre && ply.form == form.word() && ply.resins.iter().any(|family| family == resin)
        };
        self.plies.iter().find(fits)
    }
}

/// The constants and strengths of a sub-layer that lies at 0°.
fn sub_layer(ply: &Ply, part: &Part, fibre: &Fibre, resin: &Resin, psi: Ratio) -> Result<PlyLayer, NoPly> {
    let at = |curve: &Curve<Ratio, Pressure>| curve.at(psi);
    let optional = |curve: &Option<Curve<Ratio, Pressure>>| curve.as_ref().map(at).transpose();
    let tension1 = at(&ply.tension1)?;
    let compression1 = at(&ply.compression1)?;
    let tension2 = optional(&ply.tension2)?.unwrap_or_else(|| tension1.clone());
    let compression2 = optional(&ply.compression2)?.unwrap_or_else(|| compression1.clone());
    let (e1, e2) = (optional(&ply.e1)?, optional(&ply.e2)?);
    let g12 = optional(&ply.g12)?;
    let computed = Computed { ply, part, fibre, resin, elastic: glass(fibre, resin, psi) };
    let missing = |property| NoPly::NotTabulated { ply: ply.id.clone(), property };
    let nu12 = ply.nu12.clone().or_else(|| computed.property("nu12", |e| e.nu12)).ok_or(missing("nu12"))?;
    let e1 = e1.or_else(|| computed.along_the_fibre()).ok_or(missing("e1"))?;
    let e2 = match part.form {
        PlyForm::Mat | PlyForm::Woven => e2.unwrap_or_else(|| e1.clone()),
        PlyForm::Unidirectional => e2.or_else(|| computed.property("e2", |e| e.e2)).ok_or(missing("e2"))?,
    };
    let g12 = match part.form {
        PlyForm::Mat => g12.unwrap_or_else(|| isotropic_shear(&e1, &nu12, &ply.id)),
        PlyForm::Woven => g12.ok_or(missing("g12"))?,
        PlyForm::Unidirectional => g12.or_else(|| computed.property("g12", |e| e.g12)).ok_or(missing("g12"))?,
    };
    let alpha1 = ply.alpha1.clone().or_else(|| computed.property("alpha1", |e| e.alpha1)).ok_or(missing("alpha1"))?;
    let alpha2 = match part.form {
        PlyForm::Mat | PlyForm::Woven => ply.alpha2.clone().unwrap_or_else(|| alpha1.clone()),
        PlyForm::Unidirectional => {
            ply.alpha2.clone().or_else(|| computed.property("alpha2", |e| e.alpha2)).ok_or(missing("alpha2"))?
        }
    };
    Ok(PlyLayer {
        share: Ratio::from(1.0),
        angle: Angle::default(),
        e1,
        e2,
        g12,
        nu12,
        alpha1,
        alpha2,
        tension1,
        compression1,
        tension2,
        compression2,
        shear: at(&ply.shear)?,
        interlaminar_shear: optional(&ply.interlaminar_shear)?,
        bearing: ply.bearing.clone(),
        punching_shear: ply.punching_shear.clone(),
    })
}

/// Constants of straight parallel fibres, if the fibre is isotropic: micromechanics says so of its own validity.
fn glass(fibre: &Fibre, resin: &Resin, psi: Ratio) -> Option<Elastic> {
    let isotropic = fibre.e1.value == fibre.e2.value && fibre.alpha1.value == fibre.alpha2.value;
    isotropic.then(|| {
        let densities = Densities { fibre: fibre.density.value, resin: resin.density.value };
        let of_fibre = Constituent { modulus: fibre.e1.value, nu: fibre.nu12.value, alpha: fibre.alpha1.value };
        let of_resin =
            Constituent { modulus: resin.modulus.value, nu: resin.poisson.value, alpha: resin.thermal_expansion.value };
        unidirectional(&of_fibre, &of_resin, densities.fibre_volume_fraction(psi))
    })
}

/// What fibre and resin say of a ply whose row is silent.
struct Computed<'a> {
    ply: &'a Ply,
    part: &'a Part,
    fibre: &'a Fibre,
    resin: &'a Resin,
    elastic: Option<Elastic>,
}

impl Computed<'_> {
    fn property<Q>(&self, name: &str, pick: fn(&Elastic) -> Q) -> Option<Property<Q>> {
        let value = pick(self.elastic.as_ref()?);
        let basis = self.fibre.e1.basis.max(self.resin.modulus.basis);
        let as_written = format!("from fibre `{}` and resin `{}`", self.fibre.id, self.resin.id);
        Some(Property { value, basis, origin: derived(&self.ply.id, name, as_written, &self.fibre.e1.origin) })
    }

    /// Modulus along the fibre, less what stitching costs.
    fn along_the_fibre(&self) -> Option<Property<Pressure>> {
        let straight = self.property("e1", |e| e.e1)?;
        let Some(waviness) = &self.part.waviness else { return Some(straight) };
        let as_written = format!("{}, waviness {}", straight.origin.as_written, waviness.origin.as_written);
        Some(Property {
            value: straight.value * waviness.value,
            basis: straight.basis.max(waviness.basis),
            origin: derived(&self.ply.id, "e1", as_written, &self.fibre.e1.origin),
        })
    }
}

/// A mat is isotropic in its plane, so its shear modulus is not free.
fn isotropic_shear(e: &Property<Pressure>, nu: &Property<Ratio>, ply: &str) -> Property<Pressure> {
    Property {
        value: e.value / (2.0 * (1.0 + nu.value.value)),
        basis: e.basis.max(nu.basis),
        origin: derived(ply, "g12", "E/(2·(1 + ν))".to_owned(), &e.origin),
    }
}

fn derived(ply: &str, property: &str, as_written: String, from: &Origin) -> Arc<Origin> {
    Arc::new(Origin {
        row: format!("{} {ply}", Kind::Ply.word()),
        property: property.to_owned(),
        as_written,
        source: JONES_1999.0.to_owned(),
        locator: "micromechanics".to_owned(),
        mark: Mark::Derived,
        condition: None,
        table: from.table.clone(),
    })
}

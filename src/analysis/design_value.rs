//! Design values: a material value times its knock-downs, each of them a named criterion.

use uom::si::ratio::ratio;

use crate::{
    criteria::{Criteria, Criterion},
    load_case::{Duration, HotTop, State},
    material::{Adhesive, Basis, Core},
    section::Skin,
    top::Top,
    units::{Dimensioned, Ratio, ThermodynamicTemperature},
};

/// What is left of a value, and why.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Shares {
    /// For its basis.
    pub basis: Ratio,
    /// When hot.
    pub hot: Ratio,
    /// When wet.
    pub wet: Ratio,
    /// Under a load that lasts.
    pub time: Ratio,
}

impl Shares {
    /// All of them together.
    #[must_use]
    pub fn product(&self) -> Ratio {
        Ratio::new::<ratio>(self.basis.value * self.hot.value * self.wet.value * self.time.value)
    }

    /// The design value of a property.
    pub fn of<Q: Dimensioned>(&self, value: Q) -> Q {
        Q::from_si(value.si() * self.product().value)
    }
}

/// Knock-downs of everything in a top, in one state.
#[derive(Clone, Debug, PartialEq)]
pub struct Knockdowns<'a> {
    criteria: &'a Criteria,
    state: State,
    wood: bool,
    core_hot: Ratio,
    board_hot: Ratio,
    skin_hot: [Ratio; 2],
    /// Temperatures, where the state is hot.
    sun: Option<HotTop>,
}

impl<'a> Knockdowns<'a> {
    /// Knock-downs of a top in a state; `sun` is what heats it when the state is hot.
    ///
    /// # Errors
    ///
    /// Says in words which material has no value at its temperature: then nothing about it can be checked.
    pub fn new(top: &'a Top, state: State, sun: Option<HotTop>) -> Result<Self, String> {
        let criteria = &*top.criteria;
        let one = Ratio::new::<ratio>(1.0);
        let (mut core_hot, mut board_hot, mut skin_hot) = (one, one, [one; 2]);
        if let Some(hot) = sun.filter(|_| state.hot) {
            core_hot = top.core.material.hot_retention.at(hot.core).map_err(|out| out.to_string())?.value;
            board_hot = board_retention(criteria, hot.core);
            skin_hot = [top.resin.hot_retention.at(hot.outer), top.resin.hot_retention.at(hot.inner)]
                .map(|share| share.map(|share| share.value))
                .into_iter()
                .collect::<Result<Vec<_>, _>>()
                .map_err(|out| out.to_string())?
                .try_into()
                .map_err(|_| "two skins have two temperatures".to_owned())?;
        }
        let sun = sun.filter(|_| state.hot);
        Ok(Self { criteria, state, wood: is_wood(&top.core.material), core_hot, board_hot, skin_hot, sun })
    }

    /// What is left of a strength of the core.
    #[must_use]
    pub fn core_strength(&self, basis: Basis) -> Shares {
        let c = self.criteria;
        let (foam, wood) = match self.state.duration {
            Duration::Instant => (&c.foam_strength_instant, &c.balsa_strength_instant),
            Duration::Short => (&c.foam_strength_short, &c.balsa_strength_short),
            Duration::Long => (&c.foam_strength_long, &c.balsa_strength_long),
            Duration::Permanent => (&c.foam_strength_permanent, &c.balsa_strength_permanent),
        };
        self.shares(basis, self.core_hot, &c.wet_core, if self.wood { wood } else { foam })
    }

    /// What is left of a modulus of the core, where stability hangs on it.
    #[must_use]
    pub fn core_modulus(&self, basis: Basis) -> Shares {
        let c = self.criteria;
        let (foam, wood) = match self.state.duration {
            Duration::Instant => (&c.foam_modulus_instant, &c.balsa_modulus_instant),
            Duration::Short => (&c.foam_modulus_short, &c.balsa_modulus_short),
            Duration::Long => (&c.foam_modulus_long, &c.balsa_modulus_long),
            Duration::Permanent => (&c.foam_modulus_permanent, &c.balsa_modulus_permanent),
        };
        self.shares(basis, self.core_hot, &c.wet_core, if self.wood { wood } else { foam })
    }

    /// What is left of a modulus of the core where sag is asked for: the mean of the material, so no share for its
    /// basis.
    #[must_use]
    pub fn core_stiffness(&self) -> Ratio {
        let shares = Shares { basis: Ratio::new::<ratio>(1.0), ..self.core_modulus(Basis::Measured) };
        shares.product()
    }

    /// What is left of a strength of a backing board. Boards are taken to age as foam does.
    #[must_use]
    pub fn board_strength(&self, basis: Basis) -> Shares {
        let c = self.criteria;
        let time = match self.state.duration {
            Duration::Instant => &c.foam_strength_instant,
            Duration::Short => &c.foam_strength_short,
            Duration::Long => &c.foam_strength_long,
            Duration::Permanent => &c.foam_strength_permanent,
        };
        self.shares(basis, self.board_hot, &c.wet_core, time)
    }

    /// What is left of a strength of a skin.
    #[must_use]
    pub fn skin_strength(&self, skin: Skin, basis: Basis) -> Shares {
        let c = self.criteria;
        let time = match self.state.duration {
            Duration::Instant => &c.laminate_strength_instant,
            Duration::Short => &c.laminate_strength_short,
            Duration::Long => &c.laminate_strength_long,
            Duration::Permanent => &c.laminate_strength_permanent,
        };
        self.shares(basis, self.skin_hot[skin_index(skin)], &c.wet_laminate, time)
    }

    /// What is left of the strength of a resin that sits in the top: potting. It is taken to soften as the skin beside
    /// it does. The factor on a bond has its ageing in it, so that water is not counted twice.
    #[must_use]
    pub fn potting_strength(&self, beside: Skin, basis: Basis) -> Shares {
        Shares { wet: Ratio::new::<ratio>(1.0), ..self.skin_strength(beside, basis) }
    }

    /// What is left of the strength of a glue on a skin; water as for [`Self::potting_strength`].
    ///
    /// # Errors
    ///
    /// Says in words that the glue has no value at its temperature.
    pub fn glue_strength(&self, glue: &Adhesive, on: Skin, basis: Basis) -> Result<Shares, String> {
        let hot = match self.sun {
            Some(sun) => {
                let temperature = if on == Skin::Outer { sun.outer } else { sun.inner };
                glue.hot_retention.at(temperature).map_err(|out| format!("{}: {out}", glue.name))?.value
            }
            None => Ratio::new::<ratio>(1.0),
        };
        Ok(Shares { hot, ..self.potting_strength(on, basis) })
    }

    /// What is left of the modulus of a skin where that keeps it from wrinkling or dimpling: it goes where it is weakest, so
    /// that its basis counts, which it does not in sag.
    ///
    /// Heat takes of it what it takes of the strengths that hang on the resin. Fibres keep more, so that this is safe, and
    /// most so where they lie along the push.
    #[must_use]
    pub fn skin_modulus(&self, skin: Skin, basis: Basis) -> Shares {
        let c = self.criteria;
        let time = match self.state.duration {
            Duration::Instant => &c.laminate_modulus_instant,
            Duration::Short => &c.laminate_modulus_short,
            Duration::Long => &c.laminate_modulus_long,
            Duration::Permanent => &c.laminate_modulus_permanent,
        };
        self.shares(basis, self.skin_hot[skin_index(skin)], &c.wet_laminate, time)
    }

    /// What is left of the bending stiffness of the top where that keeps it from buckling: as much as of the modulus of the
    /// skin that keeps less. Water is left out, since the factor on buckling has the ageing of laminates in it.
    #[must_use]
    pub fn rigidity(&self, top: &Top) -> Shares {
        let of = |skin, basis| Shares { wet: Ratio::new::<ratio>(1.0), ..self.skin_modulus(skin, basis) };
        let (outer, inner) =
            (of(Skin::Outer, top.outer.stiffness_basis()), of(Skin::Inner, top.inner.stiffness_basis()));
        if outer.product() < inner.product() { outer } else { inner }
    }

    /// What is left of the push at which the whole top buckles on its frame, of which heat, water and time have already
    /// softened the core: nothing that holds the top keeps less of its stiffness than this, so that the push falls by no
    /// more.
    #[must_use]
    pub fn whole_top(&self, top: &Top) -> Ratio {
        let core = self.criteria.basis_share(top.core.material.shear_modulus.basis).value;
        self.rigidity(top).product().min(core)
    }

    fn shares(&self, basis: Basis, hot: Ratio, wet: &Criterion<Ratio>, time: &Criterion<Ratio>) -> Shares {
        Shares { basis: self.criteria.basis_share(basis).value, hot, wet: wet.value, time: time.value }
    }
}

const fn skin_index(skin: Skin) -> usize {
    match skin {
        Skin::Outer => 0,
        Skin::Inner => 1,
    }
}

/// A board keeps its strength up to a temperature and a share of it beyond.
fn board_retention(criteria: &Criteria, core: ThermodynamicTemperature) -> Ratio {
    if core > criteria.board_hot_above.value { criteria.board_hot.value } else { Ratio::new::<ratio>(1.0) }
}

/// Whether a core ages as wood does.
fn is_wood(core: &Core) -> bool {
    matches!(core.family.as_str(), "balsa" | "plywood")
}

/// Factor on the shear strength of a core, by how it fails. A family that the criteria do not know is taken as brittle.
#[must_use]
pub fn core_shear_factor<'a>(criteria: &'a Criteria, core: &Core) -> &'a Criterion<Ratio> {
    match core.family.as_str() {
        "linear PVC" | "styrene-acrylonitrile" => &criteria.core_shear_ductile_factor,
        "cross-linked PVC" | "polyethylene terephthalate" | "polymethacrylimide" => &criteria.core_shear_factor,
        _ => &criteria.core_shear_brittle_factor,
    }
}

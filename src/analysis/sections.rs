//! The sections of a top, region by region, and what each of them bears per unit moment.

use uom::si::{force::newton, length::meter, ratio::ratio};

use super::line::Region;
use crate::{
    closed_form::plate::PlateStiffness,
    criteria::Criteria,
    geometry::Axis,
    laminate::{Component, Criterion, Mode, Ply, PlyStress, Reserve, Resultants},
    material::{Board, Core},
    section::{
        CoreLayer, InvalidCore, PlyPlace, PlyReserve, Section, Skin, SkinShear, Temperatures, UnitResponse, Width,
    },
    strength::{DESIGN_FACTOR, WrinklingModuli, wrinkling_stress},
    top::Top,
    units::{
        FlexuralRigidity, Force, ForcePerWidth, Length, MomentPerWidth, Pressure, Ratio, ShearStiffness, per_width,
        plain,
    },
};

/// Which way a strip is bent.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Bent {
    /// Sagging: the outer skin is pressed.
    Sagging,
    /// Hogging: the inner skin is pressed.
    Hogging,
}

impl Bent {
    /// Both ways.
    pub const BOTH: [Self; 2] = [Self::Sagging, Self::Hogging];

    /// The skin that is pressed.
    #[must_use]
    pub const fn pressed(self) -> Skin {
        match self {
            Self::Sagging => Skin::Outer,
            Self::Hogging => Skin::Inner,
        }
    }
}

/// The first ply that fails in bending, at room temperature and full strength.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FirstPly {
    /// Moment at which it fails.
    pub moment: MomentPerWidth,
    /// Which ply, and on which side.
    pub place: PlyPlace,
    /// How it fails.
    pub mode: Mode,
    /// Its stress at that moment, in its own axes.
    pub stress: PlyStress,
    /// Factor of safety that its mode asks for.
    pub factor: Ratio,
}

/// Mean stress of a pressed skin at a moment of one unit, compression positive.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PressedSkin {
    /// In the direction of the strip.
    pub along: Pressure,
    /// Across the strip.
    pub across: Pressure,
}

/// The section of one region.
#[derive(Clone, Debug)]
pub struct RegionSection {
    /// The section, with the core or the board between the skins.
    pub section: Section,
    /// Core left where a conduit passes; one elsewhere.
    pub core_left: Ratio,
    first_ply: [[[Option<FirstPly>; 2]; 2]; 2],
    pressed: [[PressedSkin; 2]; 2],
    core_shear: [Pressure; 2],
    skin_moduli: [[Pressure; 2]; 2],
}

impl RegionSection {
    fn new(section: Section, core_left: Ratio, axes: &[Axis], criteria: &Criteria) -> Self {
        let response = section.unit_response();
        let one: MomentPerWidth = per_width(Force::new::<newton>(1.0));
        let mut first_ply = [[[None; 2]; 2]; 2];
        let nothing = PressedSkin { along: Pressure::default(), across: Pressure::default() };
        let mut pressed = [[nothing; 2]; 2];
        for &axis in axes {
            for (i, bent) in Bent::BOTH.into_iter().enumerate() {
                let moment = if bent == Bent::Sagging { one } else { -one };
                let load = section.bent(axis, Width::Wide, moment);
                first_ply[axis.index()][i] = first_to_fail(&section, &response, &load, criteria);
                let stress = section.skin_stress(bent.pressed(), &section.deformation(&load), &Temperatures::default());
                let (along, across) = match axis {
                    Axis::X => (stress.x, stress.y),
                    Axis::Y => (stress.y, stress.x),
                };
                pressed[axis.index()][i] = PressedSkin { along: -along, across: -across };
            }
        }
        let unit: ForcePerWidth = per_width(Force::new::<newton>(1.0) / Length::new::<meter>(1.0));
        let core_shear = Axis::BOTH.map(|axis| {
            section.shear_flow(axis, Width::Wide, SkinShear::Rigid).max_between(unit, section.core_faces())
        });
        let skin_moduli = [Skin::Outer, Skin::Inner].map(|skin| {
            let flexural = section.skin(skin).flexural_constants();
            [flexural.plate_x, flexural.plate_y]
        });
        Self { section, core_left, first_ply, pressed, core_shear, skin_moduli }
    }

    /// The first ply of each skin that fails when the strip is bent: which skin goes first hangs on how hot each is.
    #[must_use]
    pub fn first_ply(&self, axis: Axis, bent: Bent) -> [Option<&FirstPly>; 2] {
        self.first_ply[axis.index()][bent as usize].each_ref().map(Option::as_ref)
    }

    /// Stress of the pressed skin at one newton-metre per metre.
    #[must_use]
    pub fn pressed(&self, axis: Axis, bent: Bent) -> PressedSkin {
        self.pressed[axis.index()][bent as usize]
    }

    /// Largest shear stress in the core, exact over its thickness.
    #[must_use]
    pub fn core_shear(&self, axis: Axis, shear: ForcePerWidth) -> Pressure {
        self.core_shear[axis.index()]
            * (shear / per_width(Force::new::<newton>(1.0) / Length::new::<meter>(1.0))).get::<ratio>()
    }

    /// Rigidity of a strip with neighbours.
    #[must_use]
    pub fn rigidity(&self, axis: Axis) -> FlexuralRigidity {
        self.section.bending(axis, Width::Wide).rigidity
    }

    /// Distance of the middles of the skins.
    #[must_use]
    pub fn lever(&self, axis: Axis) -> Length {
        self.section.bending(axis, Width::Wide).lever
    }

    /// Shear stiffness with a share of the core's modulus left.
    #[must_use]
    pub fn shear_stiffness(&self, axis: Axis, core_modulus_left: Ratio) -> ShearStiffness {
        per_width(plain(self.section.shear_stiffness(axis)) * core_modulus_left * self.core_left)
    }

    /// Stiffness as a plate, `x` of the plate along an axis, with a share of the core's shear modulus left.
    #[must_use]
    pub fn plate_stiffness(&self, axis: Axis, core_left: Ratio) -> PlateStiffness {
        let (along, across) = match axis {
            Axis::X => (Component::X, Component::Y),
            Axis::Y => (Component::Y, Component::X),
        };
        let d = |i, j| self.section.stiffness().bending_free(i, j);
        PlateStiffness {
            d11: d(along, along),
            d12: d(along, across),
            d22: d(across, across),
            d66: d(Component::Xy, Component::Xy),
            shear_x: self.shear_stiffness(axis, core_left),
            shear_y: self.shear_stiffness(axis.other(), core_left),
        }
    }

    /// Bending modulus of a skin along an axis, as part of a plate.
    #[must_use]
    pub fn skin_modulus(&self, skin: Skin, axis: Axis) -> Pressure {
        self.skin_moduli[usize::from(skin == Skin::Inner)][axis.index()]
    }

    /// Stress at which a pressed skin wrinkles along a direction, with given shares of the moduli; `through` is the
    /// modulus of what lies between the skins, through the thickness.
    #[must_use]
    pub fn wrinkling_stress(&self, skin: Skin, axis: Axis, through: Pressure, shares: ModulusShares) -> Pressure {
        let moduli = WrinklingModuli {
            skin: self.skin_modulus(skin, axis) * shares.skin,
            core: through * shares.core,
            core_shear: self.section.core().shear_modulus(axis) * shares.core,
        };
        wrinkling_stress(DESIGN_FACTOR, moduli)
    }
}

/// The side of a ply of each skin that fails first once each mode of failure has its factor: a crack between fibres
/// asks for less than a fibre that breaks. None where a ply has no strength.
fn first_to_fail(
    section: &Section,
    response: &UnitResponse,
    unit: &Resultants,
    criteria: &Criteria,
) -> [Option<FirstPly>; 2] {
    let unit_moment: MomentPerWidth = per_width(Force::new::<newton>(1.0));
    let mut first: [Option<FirstPly>; 2] = [None; 2];
    for reserve in response.reserves(Criterion::TsaiWu, unit, None) {
        let Ok(PlyReserve { place, stress, reserve }) = reserve else { return [None; 2] };
        let Some(ply) = section.skin(place.skin).plies().nth(place.ply) else { return [None; 2] };
        let factor = ply_factor(criteria, ply, &reserve);
        let times = reserve.factor.get::<ratio>();
        let moment = unit_moment * times;
        let known = &mut first[usize::from(place.skin == Skin::Inner)];
        if known.is_none_or(|known| moment / factor.get::<ratio>() < known.moment / known.factor.get::<ratio>()) {
            let stress = PlyStress { s1: stress.s1 * times, s2: stress.s2 * times, s12: stress.s12 * times };
            *known = Some(FirstPly { moment, place, mode: reserve.mode, stress, factor });
        }
    }
    first
}

/// Factor of safety on the failure of a ply. Only a ply with one direction of fibres cracks between them; in a mat or a weave
/// the same stress breaks fibres.
///
/// ```text
/// F = F_c + (F_f − F_c) min(1, 2 (1 − a))   of a ply with one direction;   F = F_f   of any other
/// ```
///
/// | symbol | meaning |
/// |---|---|
/// | `F_c`, `F_f` | factors on cracks between fibres and on failure, criteria |
/// | *a* | share of stress across the fibres in the failure, [`Reserve::across`] |
///
/// # Validity
///
/// A ply has one direction where it is a fifth stiffer along it than across. Between pure cracking and half of it the factor
/// goes over evenly, so that a little more stress never asks for much less (our choice).
///
/// # Source
///
/// The two factors as their criteria say; [`DERIVED`](crate::source::DERIVED) between them.
///
/// # Examples
///
/// At 23.890 MPa across, of which 30 MPa alone tear it, and at half of its strength in shear a ply fails, three quarters of it
/// across: 1.6 + (2.6 − 1.6) · 0.5 = 2.1.
///
/// ```
/// # use skinspan::{analysis::ply_factor, criteria::Criteria, laminate::{Elastic, Ply, PlyStress, Strength, TsaiWu}, units::*};
/// # let (mpa, ratio) = (|x: f64| parse::<Pressure>(&format!("{x} MPa")).unwrap(), |x: f64| Ratio::from(x));
/// let strength = Strength { xt: mpa(480.0), xc: mpa(320.0), yt: mpa(30.0), yc: mpa(105.0), s: mpa(50.0) };
/// let stress = PlyStress { s1: mpa(0.0), s2: mpa(23.890), s12: mpa(25.0) };
/// let reserve = TsaiWu::new(&strength).reserve(&stress, &PlyStress::default());
/// # let none = TemperatureCoefficient::default();
/// # let elastic = Elastic { e1: mpa(40e3), e2: mpa(10e3), g12: mpa(4e3), nu12: ratio(0.3), alpha1: none, alpha2: none };
/// # let ply = Ply { elastic, strength: Some(strength), thickness: parse("1 mm").unwrap(), angle: Angle::default() };
/// let factor = ply_factor(&Criteria::built_in().unwrap(), &ply, &reserve);
/// assert!((reserve.factor.value - 1.0).abs() < 1e-4 && (factor.value - 2.1).abs() < 1e-3);
/// ```
#[must_use]
pub fn ply_factor(criteria: &Criteria, ply: &Ply, reserve: &Reserve) -> Ratio {
    let directed = ply.elastic.e1 > ply.elastic.e2 * 1.2;
    let failure = criteria.ply_failure_factor.value;
    if !directed {
        return failure;
    }
    let cracking = criteria.ply_cracking_factor.value;
    let rest = ((1.0 - reserve.across.value) * 2.0).min(1.0);
    cracking + (failure - cracking) * rest
}

/// What is left of the moduli that hold a skin against wrinkling.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ModulusShares {
    /// Of the skin.
    pub skin: Ratio,
    /// Of the core.
    pub core: Ratio,
}

/// Sections of all regions of a top.
#[derive(Clone, Debug)]
pub struct Sections {
    /// Where core lies between the skins.
    pub field: RegionSection,
    /// By backing.
    pub backings: Vec<RegionSection>,
    /// By conduit.
    pub conduits: Vec<RegionSection>,
}

impl Sections {
    /// The sections of a top for strips in the given directions.
    ///
    /// # Errors
    ///
    /// [`InvalidCore`] where the constants of a core or a board contradict one another.
    pub fn new(top: &Top, axes: &[Axis]) -> Result<Self, InvalidCore> {
        let whole = Ratio::new::<ratio>(1.0);
        let section = |core: CoreLayer| Section::new(top.outer.laminate().clone(), core, top.inner.laminate().clone());
        let core = core_layer(&top.core.material, top.core.thickness);
        let field = RegionSection::new(section(core)?, whole, axes, &top.criteria);
        let boards: Vec<CoreLayer> = top.backings.iter().map(|backing| board_layer(&backing.board, top)).collect();
        let mut backings: Vec<RegionSection> = Vec::with_capacity(boards.len());
        for (index, board) in boards.iter().enumerate() {
            // Backings of one board have one section.
            backings.push(match boards[..index].iter().position(|known| known == board) {
                Some(known) => backings[known].clone(),
                None => RegionSection::new(section(*board)?, whole, axes, &top.criteria),
            });
        }
        let conduits = top
            .conduits
            .iter()
            .map(|conduit| {
                let core_left = (top.core.thickness - conduit.diameter) / top.core.thickness;
                RegionSection { core_left, ..field.clone() }
            })
            .collect();
        Ok(Self { field, backings, conduits })
    }

    /// The section of a region.
    #[must_use]
    pub fn of(&self, region: Region) -> &RegionSection {
        match region {
            Region::Field => &self.field,
            Region::Backing(index) => &self.backings[index],
            Region::Conduit(index) => &self.conduits[index],
        }
    }
}

fn core_layer(core: &Core, thickness: Length) -> CoreLayer {
    CoreLayer {
        thickness,
        e_x: core.in_plane_modulus.value,
        e_y: core.in_plane_modulus.value,
        nu: core.in_plane_poisson.value,
        g_xz: core.shear_modulus.value,
        g_yz: core.shear_modulus_w.as_ref().unwrap_or(&core.shear_modulus).value,
        alpha: core.thermal_expansion.value,
    }
}

fn board_layer(board: &Board, top: &Top) -> CoreLayer {
    // Boards are laid as they come, alike both ways.
    CoreLayer {
        thickness: top.core.thickness,
        e_x: board.modulus.value,
        e_y: board.modulus.value,
        nu: top.criteria.board_poisson.value,
        g_xz: board.shear_modulus.value,
        g_yz: board.shear_modulus.value,
        alpha: board.thermal_expansion.as_ref().map_or_else(Default::default, |alpha| alpha.value),
    }
}

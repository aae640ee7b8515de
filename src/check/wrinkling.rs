//! Wrinkling of the pressed skin: short waves into and out of the core.

use uom::si::ratio::ratio;

use super::{Check, Finding, Outcomes, Part, Place};
use crate::{
    analysis::{Analysis, Bent, ModulusShares, Region},
    geometry::Axis,
    material::{Basis, Property},
    section::Skin,
    source::{Citation, LR_SSC, Mark},
    strength::{DESIGN_FACTOR, HOFF_MAUTNER_FACTOR, wrinkling_under_biaxial_compression},
    units::{MomentPerWidth, Pressure, Ratio},
};

pub(super) struct Wrinkling;

impl Check for Wrinkling {
    fn id(&self) -> &'static str {
        "wrinkling"
    }

    fn title(&self) -> &'static str {
        "skin wrinkling"
    }

    fn what(&self) -> &'static str {
        "the pressed skin buckles in short waves into or away from the core"
    }

    fn formula(&self) -> &'static str {
        "s · factor ≤ s_w / u,  s_w = 0.5 (E_f E_c G_c)^(1/3), lower where the core is thinner than the wave is deep; u from \
         (s_x/s_wx)³ + s_y/s_wy = 1 where the skin is pressed both ways"
    }

    fn limits(&self) -> &'static str {
        "flat skins, sound bond; 0.5 covers the waviness of a well-laid skin, not a disbond or an unfilled core joint"
    }

    fn citation(&self) -> Citation {
        Citation { work: LR_SSC, locator: "Pt 8, Ch 7, 3.2.2", mark: Mark::Quoted }
    }

    fn evaluate(&self, analysis: &Analysis<'_>, outcomes: &mut Outcomes<'_>) {
        for forces in &analysis.strips {
            let line = &analysis.lines[forces.line];
            for region in &forces.regions {
                for (bent, peak) in [(Bent::Sagging, region.sagging), (Bent::Hogging, region.hogging)] {
                    let place = Place::of(Part::Region(region.region), Some(line.place(peak.at)))
                        .under(peak.load_at.map(|at| line.place(at)))
                        .in_skin(bent.pressed());
                    let pressed = Pressed { region: region.region, axis: line.axis, bent, moment: peak.value };
                    compare(analysis, outcomes, forces.case, pressed, place);
                }
            }
        }
        for forces in &analysis.plates {
            let at = Some(analysis.bays[forces.bay].middle());
            for axis in Axis::BOTH {
                let (middle, over) = (forces.middle[axis.index()], forces.over_pipes[axis.index()]);
                for (bent, moment) in [
                    (if middle > MomentPerWidth::default() { Bent::Sagging } else { Bent::Hogging }, middle.abs()),
                    (Bent::Hogging, over),
                    (Bent::Sagging, over),
                ] {
                    let pressed = Pressed { region: Region::Field, axis, bent, moment };
                    let place = Place::of(Part::Bay, at).in_skin(bent.pressed());
                    compare(analysis, outcomes, forces.case, pressed, place);
                }
            }
        }
    }
}

/// A strip that is bent, so that one of its skins is pressed.
#[derive(Clone, Copy)]
struct Pressed {
    region: Region,
    axis: Axis,
    bent: Bent,
    moment: MomentPerWidth,
}

fn compare(analysis: &Analysis<'_>, outcomes: &mut Outcomes<'_>, case: usize, pressed: Pressed, place: Place) {
    let Pressed { region, axis, bent, moment } = pressed;
    let section = analysis.sections.of(region);
    let skin = bent.pressed();
    let bearing = Bearing::of(analysis, case, region);
    let unit = section.pressed(axis, bent);
    let times = (moment / MomentPerWidth { value: 1.0, ..moment }).get::<ratio>();
    let (along, across): (Pressure, Pressure) = (unit.along * times, unit.across * times);
    let bearable = bearing.stress(section, skin, axis);
    let used =
        wrinkling_under_biaxial_compression(along / bearable, across / bearing.stress(section, skin, axis.other()));
    let factor = analysis.top.criteria.wrinkling_factor.value;
    outcomes.compare(Some(case), used * factor, || {
        // A skin that is not pressed at all has nothing to divide by.
        let allowable = if used > Ratio::default() { along / used } else { bearable };
        let finding = Finding::compare(along, allowable, factor, bearing.basis())
            .term("M", moment)
            .term("s_y", across)
            .term("s_wx", bearable)
            .term("s_wy", bearing.stress(section, skin, axis.other()))
            .term("E_f", bearing.skin_modulus(section, skin, axis))
            .term("E_c", bearing.through.value * bearing.shares.core)
            .term("G_c", section.section.core().shear_modulus(axis) * bearing.shares.core);
        (place, finding)
    });
}

/// What holds the skins of a region against wrinkling in a state.
struct Bearing<'a> {
    through: &'a Property<Pressure>,
    shear: &'a Property<Pressure>,
    shares: ModulusShares,
}

impl<'a> Bearing<'a> {
    fn of(analysis: &'a Analysis<'_>, case: usize, region: Region) -> Self {
        let knockdowns = analysis.knockdowns(analysis.cases[case].state);
        let skin = knockdowns.skin_modulus();
        let (through, shear) = match region {
            Region::Backing(index) => {
                let board = &analysis.top.backings[index].board;
                (&board.compressive_modulus, &board.shear_modulus)
            }
            Region::Field | Region::Conduit(_) => {
                let core = &analysis.top.core.material;
                (&core.compressive_modulus, &core.shear_modulus)
            }
        };
        let core = knockdowns.core_modulus(through.basis.max(shear.basis)).product();
        Self { through, shear, shares: ModulusShares { skin, core } }
    }

    fn basis(&self) -> Basis {
        self.through.basis.max(self.shear.basis)
    }

    fn stress(&self, section: &crate::analysis::RegionSection, skin: Skin, axis: Axis) -> Pressure {
        section.wrinkle(skin, axis, self.through.value, self.shares).stress * (DESIGN_FACTOR / HOFF_MAUTNER_FACTOR)
    }

    fn skin_modulus(&self, section: &crate::analysis::RegionSection, skin: Skin, axis: Axis) -> Pressure {
        let flexural = section.section.skin(skin).flexural_constants();
        let modulus = match axis {
            Axis::X => flexural.plate_x,
            Axis::Y => flexural.plate_y,
        };
        modulus * self.shares.skin
    }
}

//! The actions of a load case that stay where they are on a strip.

use uom::si::ratio::ratio;

use super::{
    gear_action::GearAction,
    hand::Ready,
    line::Role,
    moving::{PatchLoad, patches},
    sections::RegionSection,
};
use crate::{
    closed_form::strip::Action,
    geometry::Axis,
    load::weight::gravity,
    load_case::LoadCase,
    section::Temperatures,
    units::{
        Acceleration, ArealMassDensity, Curvature, ForcePerWidth, Length, MomentPerWidth, Pressure, Ratio, Torque,
        per_width, plain,
    },
};

impl Ready<'_> {
    /// Everything that stays where it is.
    pub(super) fn actions(&self, case: &LoadCase) -> Vec<Action> {
        let (top, line) = (self.laid.top, self.laid.line);
        if line.role == Role::Carried {
            // Whatever the strip passes, it carries its share of the whole top.
            let even: Pressure = top.weight().bare * (gravity() * case.gravity) / top.outline.area();
            return vec![Action::uniform_all(&self.strip, even)];
        }
        let handed = 1.0 + self.handed.get::<ratio>();
        let loaded = self.laid.loaded();
        let mut actions = Vec::with_capacity(line.pieces.len() + 8);
        let mut from = Length::default();
        for (piece, &mass) in line.pieces.iter().zip(&self.laid.masses) {
            let to = from + piece.length;
            if from < loaded {
                let pressure = (weight(mass, case.gravity) + case.pressure) * handed;
                actions.push(Action::Uniform { from, to: to.min(loaded), pressure });
            }
            from = to;
        }
        for (from, to, pressure) in self.wind(case) {
            if to > from && pressure != Pressure::default() {
                actions.push(Action::Uniform { from, to, pressure: pressure * handed });
            }
        }
        let rim = per_width(top.edge_mass() * gravity()) * case.gravity.get::<ratio>() * handed;
        if rim != ForcePerWidth::default() {
            actions.push(Action::Point { at: Length::default(), force: rim });
            if line.role != Role::EndOverhang {
                actions.push(Action::Point { at: self.strip.length(), force: rim });
            }
        }
        if let Some(rise) = &case.temperatures {
            let curvature = thermal_curvature(&self.laid.sections.field, line.axis, rise);
            actions.push(Action::curvature_all(&self.strip, curvature));
        }
        actions
    }

    /// Wind by zones along the strip.
    fn wind(&self, case: &LoadCase) -> [(Length, Length, Pressure); 3] {
        let (wind, line, nothing) = (case.wind, self.laid.line, Length::default());
        let (length, zone) = (self.laid.loaded(), case.zone.min(self.laid.loaded() / 2.0));
        let beside = line.to_outline < case.zone;
        match line.role {
            Role::EndOverhang => {
                let zone = case.zone.min(length);
                [(nothing, zone, wind.corner), (zone, length, wind.edge), (length, length, wind.edge)]
            }
            Role::Field | Role::Edge | Role::Carried => {
                let (ends, middle) = if beside { (wind.corner, wind.edge) } else { (wind.edge, wind.interior) };
                [(nothing, zone, ends), (zone, length - zone, middle), (length - zone, length, ends)]
            }
        }
    }

    /// Moments that wind and roll put into the footings of gear, from one side.
    pub(super) fn gear_moments(&self, case: &LoadCase) -> Vec<(Length, MomentPerWidth)> {
        let (top, line) = (self.laid.top, self.laid.line);
        let moments = line.gear.iter().filter_map(|on_line| {
            let gear = &top.gear[on_line.gear];
            let action = GearAction::of(top, gear, case);
            if action.moment == Torque::default() {
                return None;
            }
            let load = PatchLoad::resting(action.side, gear.footing());
            let at = std::iter::once(on_line.at);
            let per = patches(line, &self.strip, &self.spread, at, load).first()?.sagging;
            Some((on_line.at, per_width(plain(per) * action.height())))
        });
        moments.collect()
    }
}

/// Curvature that a strip takes of itself when its skins differ in temperature and its neighbours keep it from curling
/// the other way; sagging positive, so a hot outer skin gives a negative one.
#[must_use]
pub fn thermal_curvature(field: &RegionSection, axis: Axis, rise: &Temperatures) -> Curvature {
    let held = field.section.thermal_flat(rise).moment;
    let held = match axis {
        Axis::X => held.x,
        Axis::Y => held.y,
    };
    -(plain(held) / plain(field.rigidity(axis)))
}

fn weight(mass: ArealMassDensity, multiple: Ratio) -> Pressure {
    let acceleration: Acceleration = gravity() * multiple;
    mass * acceleration
}

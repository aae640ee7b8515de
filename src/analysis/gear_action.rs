//! What weight, wind, motion and hands do to gear at its footing.

use crate::{
    load::{
        weight::{gravity, inertia_force},
        wind::gear_drag,
    },
    load_case::LoadCase,
    top::{Gear, Top},
    units::{Force, Length, Pressure, Ratio, Torque},
};

/// What acts on a footing at the outer skin; sideways from one side, which is still open.
#[derive(Clone, Copy, Debug, PartialEq, Default)]
pub struct GearAction {
    /// Away from the top.
    pub up: Force,
    /// In the plane of the skin.
    pub side: Force,
    /// Overturning moment.
    pub moment: Torque,
    /// About the axis square to the skin.
    pub twist: Torque,
}

impl GearAction {
    /// What acts on a piece of gear under a case.
    #[must_use]
    pub fn of(top: &Top, gear: &Gear, case: &LoadCase) -> Self {
        let criteria = &top.criteria;
        let mut sum = Self::default();
        if !case.with_gear {
            return sum;
        }
        let given = case.given.and_then(|number| gear.given.get(number));
        // Against a force that does not press, no more weight is counted than against wind from below.
        let weight = match given {
            Some(given) if given.up >= Force::default() => criteria.weight_against_uplift.value,
            _ => case.gear_gravity,
        };
        sum.up -= inertia_force(gear.mass, weight);
        let swing = if gear.limber { criteria.whip_resonance.value } else { Ratio::from(1.0) };
        sum.push(inertia_force(gear.mass, case.gear_sideways) * swing, gear.cg_height);
        sum.push(gear_drag(case.gear_wind, gear.drag, gear.wind_area), gear.wind_height);
        if case.wind.interior < Pressure::default() {
            sum.up += gear_drag(case.gear_wind, gear.lift, gear.wind_area);
        }
        if let (Some(grab), Some(height)) = (case.grab, gear.grab_height) {
            sum.push(grab, height);
        }
        if case.snagged && gear.limber {
            // Never above its own tip, twice as high as its middle.
            sum.push(criteria.whip_snag_force.value, criteria.whip_snag_height.value.min(gear.cg_height * 2.0));
        }
        if let Some(given) = given {
            sum.up += given.up;
            sum.twist += given.twist;
            sum.push(given.side, given.height);
        }
        sum
    }

    /// Overturning moments gear by gear, in each way in which a case may put them in: wind and motion tip all gear at once; a
    /// hand, or a branch that catches a whip, has one piece of gear at a time. Empty where nothing tips.
    #[must_use]
    pub fn overturning(top: &Top, case: &LoadCase) -> Vec<Vec<Torque>> {
        let moments =
            |case: &LoadCase| -> Vec<Torque> { top.gear.iter().map(|gear| Self::of(top, gear, case).moment).collect() };
        let alone = moments(&LoadCase { grab: None, snagged: false, ..case.clone() });
        let touched = moments(case);
        let one_by_one = (0..touched.len()).filter(|&gear| touched[gear] != alone[gear]).map(|gear| {
            let mut moments = alone.clone();
            moments[gear] = touched[gear];
            moments
        });
        let ways: Vec<Vec<Torque>> = one_by_one.collect();
        let tipped = alone.iter().any(|moment| *moment != Torque::default());
        if ways.is_empty() && tipped { vec![alone] } else { ways }
    }

    fn push(&mut self, force: Force, height: Length) {
        let moment: Torque = (force * height).into();
        self.side += force;
        self.moment += moment;
    }

    /// Push into the top over the weight of the gear; negative where it is pulled off.
    pub(super) fn push_over_weight(&self, gear: &Gear) -> Ratio {
        -self.up / (gear.mass * gravity())
    }

    /// Height at which the force from the side makes the same moment; zero where nothing acts.
    pub(super) fn height(&self) -> Length {
        if self.side == Force::default() { Length::default() } else { self.moment / self.side }
    }
}

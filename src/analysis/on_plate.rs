//! An analysis with the plate method beside the hand method.

use super::{Analysis, Asked, Fineness, MountOn, PlateForces, PlateMethod, mount};
use crate::top::Scope;

impl Analysis<'_> {
    /// The same with the forces of the plate method beside those of the hand method. A piece of panel round a mount has
    /// no outline to solve on.
    #[must_use]
    pub fn with_plate_method(self) -> Self {
        let swinging = Some(self.swinging_stiffness());
        self.on_plate(Asked { cases: None, swinging, buckling: true }, Fineness::usual())
    }

    /// The same with a rough plate: a first look at forces and buckling, whose error is larger; no frequency is sought.
    #[must_use]
    pub fn with_rough_plate(self) -> Self {
        self.on_plate(Asked { cases: None, swinging: None, buckling: true }, Fineness::rough())
    }

    /// The same with the plate method on finer triangles throughout.
    #[must_use]
    pub fn with_finer_plate(self) -> Self {
        let swinging = Some(self.swinging_stiffness());
        self.on_plate(Asked { cases: None, swinging, buckling: true }, Fineness::finer())
    }

    /// The same with the forces of some cases from finer triangles; modes stay as they were found.
    #[must_use]
    pub fn with_finer_cases(self, cases: &[usize]) -> Self {
        self.on_plate(Asked { cases: Some(cases), swinging: None, buckling: false }, Fineness::finer())
    }

    fn on_plate(mut self, asked: Asked<'_>, fineness: Fineness) -> Self {
        if self.top.scope == Scope::Whole {
            let found = PlateMethod::new(self.top, &self.sections, (&self.cases, &self.knockdowns), asked, fineness);
            self.whole = Some(match (self.whole.take(), found) {
                (Some(Ok(whole)), Ok(anew)) if asked.cases.is_some() => Ok(whole.with_finer(anew)),
                (_, found) => found,
            });
            self.rows_on_plate();
        }
        self
    }

    /// Fixings of what the top stands on by the plate method, beside those by the hand method.
    fn rows_on_plate(&mut self) {
        let mut found = Vec::new();
        for (number, mount) in self.mounts.iter().enumerate() {
            let MountOn::Support(on) = mount.on else { continue };
            for forces in self.fields() {
                let case = &self.cases[forces.case];
                let pipe = forces.pipes.iter().find(|pipe| pipe.pipe == on);
                found.extend(pipe.map(|pipe| mount::forces_on_plate(self.top, (number, forces.case), case, pipe)));
            }
        }
        self.mount_forces.retain(|known| !known.on_plate);
        self.mount_forces.extend(found);
        if self.fields().next().is_some() {
            // What the hand method cannot say of pads is known now.
            let (top, mounts) = (self.top, &self.mounts);
            self.open_mounts.retain(|open| match mounts[open.mount].on {
                MountOn::Support(on) => !top.supports[on].is_pad(),
                MountOn::Gear(_) => true,
            });
        }
    }

    /// Forces by the plate method, case by case.
    pub fn fields(&self) -> impl Iterator<Item = &PlateForces> {
        self.whole.iter().flatten().flat_map(|method| &method.cases)
    }
}

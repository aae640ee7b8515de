//! Deflections at places of the caller's choice.

use super::{NoPlate, PlateMethod, layout::Net, loads::StillLoads, wind::Winds};
use crate::{
    analysis::sections::Sections,
    finite_element::Degree,
    geometry::Point,
    load_case::LoadCase,
    top::Top,
    units::{Length, Ratio},
};

impl PlateMethod {
    /// Deflections at places under load cases, downwards positive: by case, then by place.
    ///
    /// Supports bear both ways here: nothing lifts off between fixings. On the usual triangles at the usual degree it is the
    /// deflection that the forces of a case have at the place.
    ///
    /// # Errors
    ///
    /// [`NoPlate`] where the outline cannot be meshed or something is not held.
    pub fn deflections(
        top: &Top,
        sections: &Sections,
        core_left: Ratio,
        cases: &[LoadCase],
        places: &[Point],
    ) -> Result<Vec<Vec<Length>>, NoPlate> {
        let net = Net::new(top, sections, Ratio::from(1.0)).map_err(NoPlate::Mesh)?;
        let plate = net.plate(top, sections, (Degree::Four, core_left), None)?;
        let (loads, winds) = (StillLoads::new(top, &net, &plate), Winds::new(top, &net, cases));
        let numbers: Vec<usize> = (0..cases.len()).collect();
        let solved = loads.solve(sections, (cases, &numbers), &winds);
        let at = |place: &Point, still: &super::loads::Still| {
            let (triangle, place) = loads.onto(*place);
            let share = plate.share(triangle, place);
            let states = still.parts.first().map(|solution| plate.states(triangle, &[share], solution));
            states.and_then(|states| states.first().map(|state| state.deflection)).unwrap_or_default()
        };
        Ok(solved.iter().map(|still| places.iter().map(|place| at(place, still)).collect()).collect())
    }
}

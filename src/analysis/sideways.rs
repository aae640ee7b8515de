//! What pushes the whole frame sideways.

use super::Analysis;
use crate::{load::weight::gravity, load_case::Held, units::Force};

impl Analysis<'_> {
    /// What pushes the whole frame sideways at the most, at the height of the centre of gravity, and in which case: the top by its
    /// inertia in its plane, gear by its own. None where nothing does.
    ///
    /// ```text
    /// F = g (m a + Σ m_i a_i)
    /// ```
    ///
    /// | symbol | meaning |
    /// |---|---|
    /// | *m*, `m_i` | masses of the bare top and of each piece of gear |
    /// | *a*, `a_i` | their accelerations sideways in the case, over gravity |
    ///
    /// # Validity
    ///
    /// From any side; all of it at once, which is safe. Wind on the rim and on gear is not in it.
    ///
    /// # Source
    ///
    /// [`DERIVED`](crate::source::DERIVED): statics.
    ///
    /// # Examples
    ///
    /// ```
    /// use skinspan::{analysis::{Analysis, DIVISIONS}, input::{NamedText, read_design, read_tables}};
    /// # let text = std::fs::read_to_string(concat!(env!("CARGO_MANIFEST_DIR"), "/examples/rail-row.toml")).unwrap();
    /// # let text = NamedText { name: String::new(), text };
    /// let top = read_design(&text, &read_tables(&[]).unwrap(), None).unwrap();
    /// let analysis = Analysis::new(&top, DIVISIONS).unwrap();
    /// // No gear, no trailer, no landing: it rolls on its mooring.
    /// let (force, case) = analysis.sideways().expect("it rolls");
    /// assert_eq!(analysis.cases[case].id, "rolling");
    /// let share = analysis.cases[case].in_plane.value;
    /// assert!((force.value / (top.weight().bare.value * 9.80665 * share) - 1.0).abs() < 1e-12);
    /// ```
    #[must_use]
    pub fn sideways(&self) -> Option<(Force, usize)> {
        let bare = self.top.weight().bare;
        let each =
            self.cases.iter().enumerate().filter(|(_, case)| case.held == Held::OnFrame).map(|(number, case)| {
                let gear: Force = self.top.gear.iter().map(|gear| gear.mass * gravity() * case.gear_sideways).sum();
                let force: Force = bare * gravity() * case.in_plane + gear;
                (force, number)
            });
        each.reduce(|a, b| if b.0 > a.0 { b } else { a }).filter(|(force, _)| *force > Force::default())
    }
}

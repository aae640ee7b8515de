//! An analysis by the hand method: strips, bays, and what hangs on both.

use super::{
    Analysis, Layout, MountOn,
    bay::{self, OnPipe},
    hand, mount,
};
use crate::load_case::LoadCase;

impl Analysis<'_> {
    /// How many strips and bays the hand method has.
    #[must_use]
    pub fn parts(&self) -> usize {
        self.lines.len() + self.bays.len()
    }

    /// Forces of one strip or bay alone, in place of what was known. What fails here fails in the whole analysis.
    ///
    /// # Errors
    ///
    /// As for [`Analysis::new`].
    pub fn solve_part(&mut self, part: usize, divisions: usize) -> Result<(), String> {
        self.strips.clear();
        self.plates.clear();
        if part < self.lines.len() { self.strip(part, divisions) } else { self.bay(part - self.lines.len()) }
    }

    pub(super) fn forces(&mut self, divisions: usize) -> Result<(), String> {
        (0..self.lines.len()).try_for_each(|line| self.strip(line, divisions))?;
        if matches!(self.layout, Layout::FourSides { .. }) {
            (0..self.bays.len()).try_for_each(|bay| self.bay(bay))?;
            let overhangs = self.overhangs_on_pipes(divisions)?;
            self.pipe_loads = bay::pipe_loads(&self.bays, &self.plates, &overhangs);
        }
        Ok(())
    }

    fn strip(&mut self, line: usize, divisions: usize) -> Result<(), String> {
        let of_line = (line, &self.lines[line]);
        let forces = hand::strip_forces(self.top, &self.sections, of_line, &self.cases, &self.knockdowns, divisions);
        self.strips.extend(forces.map_err(|error| error.to_string())?);
        Ok(())
    }

    fn bay(&mut self, bay: usize) -> Result<(), String> {
        let left = |case: &LoadCase| self.knockdowns(case.state).core_stiffness();
        let forces = bay::bay_forces(self.top, &self.sections, (bay, &self.bays[bay]), &self.cases, left);
        self.plates.extend(forces.map_err(|error| error.to_string())?);
        Ok(())
    }

    pub(super) fn fixing_forces(&mut self) {
        for number in 0..self.mounts.len() {
            self.forces_of_mount(number);
        }
    }

    /// Forces in the fixings of one mount alone, in place of what was known: a row along a pipe is pulled by what of strips and bays is
    /// solved. What fails here fails in the whole analysis, in which no less pulls.
    pub fn solve_mount(&mut self, on: MountOn) {
        self.mount_forces.clear();
        self.open_mounts.clear();
        if let Some(number) = self.mounts.iter().position(|mount| mount.on == on) {
            self.forces_of_mount(number);
        }
    }

    fn forces_of_mount(&mut self, number: usize) {
        let pull = |pipe, case| {
            self.line_load(pipe, case)
                .map(|load| mount::Pull { per_length: load.pull, most: self.most_pull_by_hand(pipe, case) })
        };
        let (forces, open) =
            mount::forces(self.top, (number, &self.mounts[number]), &self.cases, &self.knockdowns, pull);
        self.mount_forces.extend(forces);
        self.open_mounts.extend(open);
    }

    /// What the overhangs round bays put on the pipes at their roots, with and without what moves.
    fn overhangs_on_pipes(&self, divisions: usize) -> Result<Vec<OnPipe>, String> {
        let unmoved: Vec<LoadCase> =
            self.cases.iter().map(|case| LoadCase { people: None, hand: None, ..case.clone() }).collect();
        let mut overhangs = Vec::new();
        for (index, line) in self.lines.iter().enumerate() {
            let Some(pipe) = line.seats[0].pipe else { continue };
            let still =
                hand::strip_forces(self.top, &self.sections, (index, line), &unmoved, &self.knockdowns, divisions)
                    .map_err(|error| error.to_string())?;
            let all = self.strips.iter().filter(|forces| forces.line == index);
            overhangs.extend(all.zip(&still).map(|(all, still)| OnPipe {
                pipe,
                case: all.case,
                still: still.seats[0].push.value,
                push: all.seats[0].push.value,
                pull: all.seats[0].pull.value,
            }));
        }
        Ok(overhangs)
    }
}

//! The steps from a model to a factored plate, each of which can be timed alone.

use std::sync::Arc;

use super::{
    assembly::Assembly,
    beam::{BeamLine, Spring},
    element::{Fields, ShellStiffness},
    factor::Order,
    layout::{Layout, Part},
    numbering::Numbering,
    plate::{Mechanism, Model, Plate},
    rigid,
};

/// Unknowns of a plate, how they hang together, and the order in which they are eliminated, whatever their stiffness.
#[derive(Clone, Debug)]
pub struct Ordered {
    pub(super) layout: Arc<Layout>,
    pub(super) order: Order,
}

/// A plate's matrix, not yet factored.
#[derive(Clone, Debug)]
pub struct Assembled {
    ordered: Ordered,
    assembly: Assembly,
    shells: Vec<ShellStiffness>,
    lines: Lines,
}

impl Ordered {
    /// Numbers the unknowns of a plate and orders them: the first step of [`Plate::new`].
    ///
    /// # Errors
    /// [`Mechanism`] where a line is broken, or the plate can move as a whole.
    pub fn new(model: &Model<'_>) -> Result<Self, Mechanism> {
        let corners: Vec<[f64; 2]> = model.corners.iter().map(|place| [place.x.value, place.y.value]).collect();
        let numbering = Numbering::new(&corners, model.triangles, model.degree);
        let first_extra = numbering.shared * model.fields.count();
        let lines = Lines::new(model, &numbering, first_extra)?;
        let mut held: Vec<usize> = lines.beams.iter().flat_map(BeamLine::held).collect();
        held.extend(held_unknowns(model, &numbering)?);
        rigid::check(&numbering, model.fields, &lines.beams, &lines.springs, &held)?;
        let layout = Layout::new(numbering, model.fields, lines.unknowns - first_extra, &held, &lines.parts());
        let order = layout.order().map_err(|_| Mechanism::PartMoves)?;
        Ok(Self { layout: Arc::new(layout), order })
    }

    /// Puts the matrix together: the second step of [`Plate::new`], the first of [`Plate::of_other_stiffness`].
    ///
    /// # Errors
    /// [`Mechanism`] where a line is broken.
    pub fn assembled(&self, model: &Model<'_>) -> Result<Assembled, Mechanism> {
        let numbering = &self.layout.numbering;
        let lines = Lines::new(model, numbering, numbering.shared * model.fields.count())?;
        let shells: Vec<ShellStiffness> = (0..model.triangles.len()).map(model.shells).collect();
        let assembly = Assembly::new(self.layout.clone(), &lines.parts(), &shells);
        Ok(Assembled { ordered: self.clone(), assembly, shells, lines })
    }
}

impl Assembled {
    /// Factors the matrix: the last step.
    ///
    /// # Errors
    /// [`Mechanism`] where some part can move without resistance.
    pub fn factored(self) -> Result<Plate, Mechanism> {
        let Self { ordered, mut assembly, shells, lines: Lines { beams, springs, .. } } = self;
        // Whatever is asked of a plate later is asked of its factor and of its triangles.
        let values = std::mem::take(&mut assembly.values);
        let factor = ordered.layout.pattern.factor(&values, &ordered.order);
        let factor = factor.map_err(|_| Mechanism::PartMoves)?;
        Ok(Plate { assembly, ordered, factor, shells, beams, springs })
    }
}

/// Beds and beams of a plate.
#[derive(Clone, Debug)]
struct Lines {
    beams: Vec<BeamLine>,
    springs: Vec<Spring>,
    /// Unknowns of the plate and of the beams.
    unknowns: usize,
}

impl Lines {
    fn new(model: &Model<'_>, numbering: &Numbering, mut unknowns: usize) -> Result<Self, Mechanism> {
        let beams = BeamLine::all(model.beds, numbering, &mut unknowns).ok_or(Mechanism::BrokenLine)?;
        let mut springs = Vec::new();
        for (number, line) in beams.iter().enumerate() {
            springs.extend(line.springs(number, numbering, model.fields));
        }
        Ok(Self { beams, springs, unknowns })
    }

    fn parts(&self) -> Vec<Part> {
        self.beams.iter().flat_map(BeamLine::parts).chain(self.springs.iter().map(Spring::part)).collect()
    }
}

fn held_unknowns(model: &Model<'_>, numbering: &Numbering) -> Result<Vec<usize>, Mechanism> {
    let (count, first) = (model.fields.count(), model.fields.deflection());
    let mut unknowns = Vec::new();
    for (line, held) in model.held {
        let mut nodes: Vec<usize> = line.first().copied().into_iter().collect();
        for side in line.windows(2) {
            nodes.extend(numbering.along(side[0], side[1]).ok_or(Mechanism::BrokenLine)?.iter().skip(1));
        }
        for node in nodes {
            let mut hold = |field: usize, yes: bool| unknowns.extend(yes.then_some(node * count + field));
            hold(first, held.deflection);
            hold(first + 1, held.rotations[0]);
            hold(first + 2, held.rotations[1]);
            if model.fields == Fields::BendingAndStretching {
                hold(0, held.displacements[0]);
                hold(1, held.displacements[1]);
            }
        }
    }
    if model.fields == Fields::BendingAndStretching
        && !model.held.iter().any(|(_, held)| held.displacements != [false; 2])
    {
        unknowns.extend(rigid::in_plane(numbering));
    }
    unknowns.sort_unstable();
    unknowns.dedup();
    Ok(unknowns)
}

//! What the pipes below a top weigh.

use crate::{
    top::Top,
    units::{Area, LinearMassDensity, Mass},
};

/// What the pipes weigh that a top stands on, as far as they carry it; none where the wall or the alloy of one is not given.
///
/// ```text
/// m = Σ ρ π (D − t) t L
/// ```
///
/// | symbol | meaning |
/// |---|---|
/// | `ρ` | density of the alloy |
/// | *D*, *t* | outside diameter and wall |
/// | *L* | length of the pipe in plan |
///
/// # Validity
///
/// Pipes alone: posts, feet, welds and fixings are left out, and so are walls and pads, which the boat has anyhow.
///
/// # Source
///
/// [`DERIVED`](crate::source::DERIVED): volume of a tube.
///
/// # Examples
///
/// ```
/// # use skinspan::{choice::frame_mass, input::{NamedText, read_design, read_tables}, units::Mass};
/// # let text = std::fs::read_to_string(concat!(env!("CARGO_MANIFEST_DIR"), "/examples/seine-tender.toml")).unwrap();
/// # let text = NamedText { name: String::new(), text };
/// let top = read_design(&text, &read_tables(&[]).unwrap(), None).unwrap();
/// // Two tubes of 38.1 mm by 3.175 mm, 1.9812 m long, of 2700 kg/m³: π · 34.925 · 3.175 = 348.4 mm² each.
/// let mass = frame_mass(&top).unwrap().get::<uom::si::mass::kilogram>();
/// assert!((mass - 2.0 * 348.36e-6 * 1.9812 * 2700.0).abs() < 1e-4, "{mass}");
/// ```
#[must_use]
pub fn frame_mass(top: &Top) -> Option<Mass> {
    let mut pipes = top.supports.iter().filter_map(|support| Some((support, support.pipe()?)));
    pipes.try_fold(Mass::default(), |sum, (support, pipe)| {
        let wall = pipe.wall?;
        let ring: Area = (pipe.outside - wall) * wall * std::f64::consts::PI;
        let per_length: LinearMassDensity = pipe.alloy.as_ref()?.density.value * ring;
        Some(sum + per_length * support.along.length())
    })
}

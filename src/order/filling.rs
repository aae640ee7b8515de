//! What joints, grooves, bores and studs are filled with and glued by.

use super::{CorePlan, core::NoPlan, putty::catalysed};
use crate::{
    analysis::{MountOn, mounts},
    top::{Backing, Hold, Top},
    units::{Area, Length, Mass, Ratio, Volume},
};

/// What a filling is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum FillingUse {
    /// Joints of backing and of pieces of core.
    Joints,
    /// Beside tubes, in the grooves that they are laid into.
    Grooves,
    /// Bores through the core for bolts that stand in no backing.
    Bores,
    /// Round inserts that are potted.
    Potting,
    /// Below studs.
    Studs,
}

/// A filling of one kind.
#[derive(Clone, Debug, PartialEq)]
pub struct Filling {
    /// What it is for.
    pub used: FillingUse,
    /// Its material; none where the file names none.
    pub material: Option<String>,
    /// Whether that is cured by a catalyst that is bought beside it.
    pub catalysed: bool,
    /// How many places; of joints and grooves none.
    pub places: Option<usize>,
    /// What is bought.
    pub volume: Volume,
    /// Its mass, where its density is known.
    pub mass: Option<Mass>,
}

/// Fillings that are bought, waste with them.
///
/// ```text
/// joints   V = g c (Σ 2 (w + l) + Σ s),   grooves  V = Σ (d² − π d²/4) L,   bores  V = n π/4 B² (c + t)
/// potting  V = n π/4 D² h,                studs    V = n π/4 b² g,          each × (1 + q)
/// ```
///
/// | symbol | meaning |
/// |---|---|
/// | *g*, *q* | thickness of glue, `order-glue-line`; share of waste of putty |
/// | *c*, *t* | thickness of the core, of the skin on its far side |
/// | *w*, *l* | width and length of a backing |
/// | *s* | length of a seam of the core |
/// | *d*, *L* | diameter and length of a tube in a groove as deep as it is wide |
/// | *n* | fixings that are set |
/// | *B*, *D*, *h*, *b* | bores in core; bore and depth of potting; base of a stud |
///
/// The insert's own volume is not taken off its potting, nor what two backings share where they meet.
///
/// # Source
///
/// [`DERIVED`](crate::source::DERIVED): plane geometry.
pub(super) fn fillings(top: &Top, core: &Result<CorePlan, NoPlan>) -> Vec<Filling> {
    let criteria = &top.criteria;
    let waste = Ratio::from(1.0) + criteria.order_putty_waste.value;
    let glue = criteria.order_glue_line.value;
    let putty = top.edge.as_ref().map(|edge| &edge.fill);
    let of_putty = |used, volume: Volume| Filling {
        used,
        material: putty.map(|fill| fill.name.clone()),
        catalysed: putty.is_some_and(|fill| catalysed(&fill.family)),
        places: None,
        volume: volume * waste,
        mass: putty.map(|fill| fill.density.typical.value * volume * waste),
    };
    let round = |backing: &Backing| (backing.width + backing.along.length()) * 2.0;
    let joints: Length = top.backings.iter().map(round).sum();
    let seams: Length = core.iter().flat_map(|plan| &plan.seams).map(|seam| seam.length).sum();
    let mut all = vec![of_putty(FillingUse::Joints, (joints + seams) * top.core.thickness * glue)];
    let groove = |conduit: &crate::top::Conduit| -> Volume {
        (conduit.diameter * conduit.diameter - disc(conduit.diameter)) * conduit.along.length()
    };
    let tubes = top.conduits.iter().filter(|conduit| conduit.tube.is_some());
    all.push(of_putty(FillingUse::Grooves, tubes.map(groove).sum()));
    for mount in mounts(top) {
        let fastened = mount.fastened;
        let set = mount.places.len();
        let times = |count: usize, each: Volume| -> Volume {
            #[expect(clippy::cast_precision_loss, reason = "some hundreds of fixings")]
            let count = count as f64;
            each * count * waste
        };
        let (used, named, places, volume, density) = match &fastened.fixing.hold {
            Hold::ThroughBolt { bolt, sleeve: None, .. } => {
                let in_core = |place: &&crate::analysis::FixingPlace| !place.backing.is_some_and(|own| own.holds(top));
                let over_core = mount.places.iter().filter(in_core).count();
                let bore = bolt.thread.major.value * criteria.plug_diameters.value;
                let far = match mount.on {
                    MountOn::Gear(_) => &top.inner,
                    MountOn::Support(_) => &top.outer,
                };
                let deep = top.core.thickness + far.laminate().thickness();
                (FillingUse::Bores, None, over_core, times(over_core, disc(bore) * deep), None)
            }
            Hold::PottedInsert { insert, potting, depth, .. } => {
                let volume = times(set, disc(insert.bore.value) * *depth);
                let named = Some((&potting.name, catalysed(&potting.family)));
                (FillingUse::Potting, named, set, volume, Some(potting.density.typical.value))
            }
            Hold::BondedStud { stud, adhesive, .. } => {
                let named = Some((&adhesive.name, catalysed(&adhesive.family)));
                (FillingUse::Studs, named, set, times(set, disc(stud.base.value) * glue), None)
            }
            _ => continue,
        };
        let mass = density.map(|density| density * volume);
        let (material, catalysed) =
            (named.map(|(name, _)| name.clone()), named.is_some_and(|(_, catalysed)| catalysed));
        match all.iter_mut().find(|own| own.used == used && own.material == material) {
            Some(own) => {
                own.volume += volume;
                own.places = own.places.map(|known| known + places);
                own.mass = own.mass.zip(mass).map(|(known, more)| known + more);
            }
            None => all.push(Filling { used, material, catalysed, places: Some(places), volume, mass }),
        }
    }
    all.retain(|own| own.volume > Volume::default());
    all
}

fn disc(diameter: Length) -> Area {
    diameter * diameter * std::f64::consts::FRAC_PI_4
}

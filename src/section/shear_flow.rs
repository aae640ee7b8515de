//! Shear stress over the thickness of a layered strip, from equilibrium with the bending stress.

use crate::units::{ForcePerWidth, Length, Pressure, ShearStiffness};

/// A layer between `z0` and `z1`, m, whose bending stress per unit moment per width, 1/m², runs straight from
/// `stress0` to `stress1`.
#[derive(Clone, Copy, Debug)]
pub(super) struct Slab {
    pub(super) z0: f64,
    pub(super) z1: f64,
    pub(super) stress0: f64,
    pub(super) stress1: f64,
    pub(super) g: f64,
}

/// A slab with the shear stress per unit shear force per width, 1/m, at its outer side.
#[derive(Clone, Copy, Debug)]
struct Sheared {
    slab: Slab,
    tau0: f64,
}

impl Sheared {
    fn tau(&self, z: f64) -> f64 {
        let Slab { z0, z1, stress0, stress1, .. } = self.slab;
        let x = z - z0;
        self.tau0 - x * (stress0 + 0.5 * (stress1 - stress0) * x / (z1 - z0))
    }

    /// Where the bending stress vanishes and the shear stress is largest.
    fn turning_point(&self) -> Option<f64> {
        let Slab { z0, z1, stress0, stress1, .. } = self.slab;
        (stress0 * stress1 < 0.0).then(|| z0 + (z1 - z0) * stress0 / (stress0 - stress1))
    }
}

/// Shear stress over the thickness of a strip.
#[derive(Clone, Debug)]
pub struct ShearFlow {
    layers: Vec<Sheared>,
}

impl ShearFlow {
    pub(super) fn new(slabs: impl Iterator<Item = Slab>) -> Self {
        let mut tau0 = 0.0;
        let layers = slabs
            .map(|slab| {
                let layer = Sheared { slab, tau0 };
                tau0 = layer.tau(slab.z1);
                layer
            })
            .collect();
        Self { layers }
    }

    /// Shear stress at `z` from the outer surface; zero outside of the section. See
    /// [`Section::shear_flow`](super::Section::shear_flow).
    #[must_use]
    pub fn stress(&self, v: ForcePerWidth, z: Length) -> Pressure {
        let layer = self.layers.iter().find(|l| l.slab.z0 <= z.value && z.value <= l.slab.z1);
        pascal(layer.map_or(0.0, |l| l.tau(z.value)) * v.value)
    }

    /// Largest shear stress between two planes.
    ///
    /// ```text
    /// max |tau(z)|,  from <= z <= to: at the ends, at layer borders, or where the bending stress vanishes
    /// ```
    ///
    /// | symbol | meaning |
    /// |---|---|
    /// | `tau` | shear stress over the thickness |
    /// | `z` | from the outer surface |
    ///
    /// # Validity
    /// See [`Section::shear_flow`](super::Section::shear_flow).
    ///
    /// # Source
    /// [`DERIVED`](crate::source::DERIVED), `d tau/dz = −sigma` per unit of `V`.
    ///
    /// # Examples
    /// ```
    #[doc = sample!()]
    /// let flow = section.shear_flow(Axis::X, Width::Narrow, SkinShear::Rigid);
    /// let mut v = ForcePerWidth::default();
    /// v.value = 4840.0 + 40.0 / 3.0;
    /// near(flow.max_between(v, section.core_faces()).get::<megapascal>(), 0.22);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn max_between(&self, v: ForcePerWidth, [from, to]: [Length; 2]) -> Pressure {
        let largest = self
            .layers
            .iter()
            .filter(|l| l.slab.z0 < to.value && from.value < l.slab.z1)
            .flat_map(|l| {
                let (low, high) = (l.slab.z0.max(from.value), l.slab.z1.min(to.value));
                let turn = l.turning_point().unwrap_or(low).clamp(low, high);
                [low, turn, high].map(|z| l.tau(z).abs())
            })
            .fold(0.0, f64::max);
        pascal(largest * v.value.abs())
    }

    /// Shear stiffness by strain energy.
    ///
    /// ```text
    /// 1/S = ∫ tau(z)²/G(z) dz,  tau for V = 1
    /// ```
    ///
    /// | symbol | meaning |
    /// |---|---|
    /// | `tau` | shear stress over the thickness |
    /// | `G` | shear modulus across the thickness of each layer |
    ///
    /// # Validity
    /// Exact if cross-sections warp freely. With [`SkinShear::Rigid`](super::SkinShear::Rigid) only the core strains.
    ///
    /// # Source
    /// [`DERIVED`](crate::source::DERIVED), the energy of the shear stress per length equals `V²/(2 S)`.
    ///
    /// # Examples
    /// ```
    #[doc = sample!()]
    /// let flow = section.shear_flow(Axis::X, Width::Narrow, SkinShear::Rigid);
    /// // with E = 0 the stress is even over the core: tau = (E t d/2)/D = D0/(D d), S = Gc/(c tau²)
    /// let d0_share = 4840.0 / (4840.0 + 40.0 / 3.0);
    /// near(flow.energy_stiffness().value, 726e3 / (d0_share * d0_share));
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn energy_stiffness(&self) -> ShearStiffness {
        // tau² is of degree 4: three Gauss points are exact
        const POINTS: [(f64, f64); 3] =
            [(-0.774_596_669_241_483_4, 5.0 / 9.0), (0.0, 8.0 / 9.0), (0.774_596_669_241_483_4, 5.0 / 9.0)];
        let compliance = self
            .layers
            .iter()
            .map(|l| {
                let (half, middle) = (0.5 * (l.slab.z1 - l.slab.z0), 0.5 * (l.slab.z0 + l.slab.z1));
                POINTS.iter().map(|(x, w)| w * l.tau(middle + half * x).powi(2)).sum::<f64>() * half / l.slab.g
            })
            .sum::<f64>();
        ShearStiffness { dimension: std::marker::PhantomData, units: std::marker::PhantomData, value: 1.0 / compliance }
    }
}

fn pascal(value: f64) -> Pressure {
    Pressure::new::<uom::si::pressure::pascal>(value)
}

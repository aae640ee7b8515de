//! Shear of the core beside a conduit.

use std::{error, fmt};

use crate::units::{Length, Pressure};

/// The conduit leaves no core to carry shear.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ConduitFillsCore {
    /// Thickness of the core.
    pub core_thickness: Length,
    /// Diameter of the conduit.
    pub conduit: Length,
}

impl fmt::Display for ConduitFillsCore {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let mm = |length: Length| length.get::<uom::si::length::millimeter>();
        write!(
            f,
            "a conduit of {:.1} mm leaves nothing of a core of {:.1} mm to carry shear across it",
            mm(self.conduit),
            mm(self.core_thickness)
        )
    }
}

impl error::Error for ConduitFillsCore {}

/// Mean shear stress in what a conduit leaves of the core.
///
/// ```text
///   τ_net = τ c/(c − φ)
/// ```
///
/// | symbol | meaning                                        | argument         |
/// |--------|------------------------------------------------|------------------|
/// | *τ*    | shear stress of the whole core at this place   | `shear_stress`   |
/// | *c*    | thickness of the core                          | `core_thickness` |
/// | *φ*    | diameter of the conduit                        | `conduit`        |
///
/// # Validity
///
/// Shear that acts across the run of the conduit. A mean over the net section: the peak at the wall of the hole is
/// left out, which foam that yields in shear can bear and brittle core cannot. A stiff tube that is bonded in does
/// better.
///
/// # Errors
///
/// [`ConduitFillsCore`] when the conduit is as thick as the core, or the thickness is not a number.
///
/// # Source
///
/// [`DERIVED`](crate::source::DERIVED): net section (our assumption). No published source was found.
///
/// # Examples
///
/// 0.2 MPa in a core of 38 mm with a conduit of 19 mm: 0.4 MPa.
///
/// ```
/// use skinspan::{strength::core_shear_beside_conduit, units::{Length, Pressure}};
/// use uom::si::{length::millimeter, pressure::megapascal};
/// let mm = Length::new::<millimeter>;
/// let tau = Pressure::new::<megapascal>(0.2);
/// let net = core_shear_beside_conduit(tau, mm(38.0), mm(19.0))?;
/// assert!((net.get::<megapascal>() - 0.4).abs() < 1e-12);
/// assert!(core_shear_beside_conduit(tau, mm(38.0), mm(38.0)).is_err());
/// # Ok::<(), skinspan::strength::ConduitFillsCore>(())
/// ```
pub fn core_shear_beside_conduit(
    shear_stress: Pressure,
    core_thickness: Length,
    conduit: Length,
) -> Result<Pressure, ConduitFillsCore> {
    if core_thickness > conduit {
        Ok(shear_stress * (core_thickness / (core_thickness - conduit)))
    } else {
        Err(ConduitFillsCore { core_thickness, conduit })
    }
}

//! Internal forces by the hand method: strips over the pipes, plates where pipes hold four sides.

mod design_value;
mod forces;
mod layout;
mod line;
mod sections;

pub use design_value::{Knockdowns, Shares, core_shear_factor};
pub use forces::{Peak, RegionForces, Sag, SeatForces, StripForces};
pub use layout::{Layout, NoLayout, StripLayout, layout};
pub use line::{Line, Overhang, Piece, Region, Role, Seat, handed_on};
pub use sections::{Bent, FirstPly, ModulusShares, PressedSkin, RegionSection, Sections};

//! How wide a strip carries a concentrated load: on a top that runs far to both sides of it, over line supports.
//!
//! A strip knows only loads per width. A load `P` on a patch goes on it as `P/b`, with `b` from here; each result needs
//! its own `b`, since the deflection spreads widest and the shear least. All widths are smaller than those of the plate
//! theory, so the results are on the safe side; how far stands with each function. They were measured against series
//! solutions of the shear-flexible plate (`tests/validation/effective_width.rs`) for
//!
//! - square patches between 0.04 and 0.3 of the span, and patches of sides 1 : 3 either way,
//! - `D22/D11` from 0.3 to 3, `(D12 + 2 D66)/√(D11 D22)` from 0.4 to 1.5, `Sy/Sx` from 0.5 to 2,
//! - `D/(S L²)` from 0 to 0.5,
//!
//! where `x`, index 1, runs along the strip. The form, patch plus a multiple of the distance to the support, is that
//! of concrete slabs: [`DAFSTB_240`](crate::source::DAFSTB_240) gives `t + 2.5 x (1 − x/l)` in a simple span, `t + 0.5 x (2 − x/l)` at a clamp,
//! `t + 1.5 x` at the root of a cantilever, `t + 0.5 x` and `t + 0.3 x` for shear there (read in a reprinted table);
//! [`IS_456_2000`](crate::source::IS_456_2000) cl. 24.3.2.1 the like (from memory). For an isotropic plate the 2.5 is
//! 10 % unsafe under a patch of 0.04 of the span, hence the 2.1 here.
//!
//! Overhangs that run on into a bay, and free edges and corners there, were measured against elements of a high order
//! (`tests/validation/free_corner.rs`), on supports that hold the deflection only:
//!
//! - bays of 0.6 and 1.2 m, overhangs of 0.08 to 0.6 m, square patches of 65 and 100 mm, at the tip and half way out,
//! - `D11` of 3 to 20 kN·m, `Sx` of 0.5 to 2.5 MN/m, `D22/D11` from 0.5 to 2, `D66` down to 0.12 of `D11`, `Sy/Sx` of
//!   0.6 and 1.
//!
//! Not in here: the shear beside the patch on its other sides, the moment across the strip under the load.

mod deflection;
mod edge;
mod moment;
mod shear;
mod spread;

pub use self::{
    deflection::{deflection, tip_deflection},
    edge::{NearEdge, near_free_edge, rim_twist, shear_near_free_edge},
    moment::{hogging, overhang, sagging},
    shear::{shear_at_support, shear_beside_patch},
    spread::Spread,
};

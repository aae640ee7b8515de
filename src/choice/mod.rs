//! What one can buy and build, judged on the real top: every core, thickness and pair of skins on every arrangement of pipes and
//! backing in a space, which of them hold, and what no other of these beats.

mod always;
mod arrangement;
mod aside;
mod both;
mod cannot;
mod fate;
mod found;
mod frame;
mod grid;
mod looking;
mod price;
mod sag;
mod search;
mod shown;
mod sizes;
mod space;
mod step;
mod witness;

pub use always::Always;
pub use arrangement::{Arrangement, Arranging, BackingOptions, NoArrangement};
pub use cannot::Open;
pub use fate::{Fate, Tally};
pub use found::Found;
pub use frame::frame_mass;
pub use grid::{Cell, Grid};
pub use price::{Money, Per, Price, Prices, Unpriced};
pub use search::{Chosen, LeftOut, Watch, choose};
pub use space::{Candidate, Limits, MOST_CANDIDATES, Measures, Order, Space};
pub use step::{Beside, Step};

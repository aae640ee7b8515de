//! What one can buy and build, judged on the real top: every core, thickness and pair of skins on every arrangement of pipes and
//! backing in a space, which of them hold, and what no other of these beats.

mod arrangement;
mod found;
mod grid;
mod price;
mod search;
mod sizes;
mod space;
mod step;
mod witness;

pub use arrangement::{Arrangement, Arranging, BackingOptions, NoArrangement};
pub use found::Found;
pub use grid::{Cell, Grid};
pub use price::{Money, Per, Price, Prices, Unpriced};
pub use search::{Chosen, Fate, Tally, Watch, choose};
pub use space::{Candidate, Limits, MOST_CANDIDATES, Order, Space};
pub use step::{Beside, Step};

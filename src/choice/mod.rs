//! What one can buy, judged on the real top: every core, thickness and pair of skins of a space, which of them hold, and
//! what no other of these beats.

mod found;
mod grid;
mod search;
mod sizes;
mod space;
mod step;
mod witness;

pub use found::Found;
pub use grid::{Cell, Grid};
pub use search::{Chosen, Fate, Tally, Watch, choose};
pub use space::{Candidate, Limits, MOST_CANDIDATES, Order, Space};
pub use step::{Beside, Step};

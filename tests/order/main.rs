//! What `order` buys, weighs, cuts and lifts: against numbers worked out by hand, and what holds for every top.

mod bought;
mod core;
mod forms;
mod input;
mod kit;
mod said;
mod weight;

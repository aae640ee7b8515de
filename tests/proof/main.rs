//! The proof test: its card against the analysis and against hand computation, and what made-up readings are taken for.

mod card;
mod forms;
mod kit;
mod readings;
mod suspect;

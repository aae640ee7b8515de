//! Published cases, one file for each source. Names say the source and the place in it; each tolerance is a constant
//! with its cause, and each published case is paired with an exact one.
mod beam_tables;
mod columns;
mod effective_width;
mod frequencies;
mod kit;
mod mindlin;
mod nafems_plate;
mod roark;
mod semi_analytic;
mod timoshenko;

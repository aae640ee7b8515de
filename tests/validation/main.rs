//! Published cases, one file for each source. Names say the source and the place in it; each tolerance is a constant
//! with its cause, and each published case is paired with an exact one.
mod beam_tables;

mod abs_yachts_2021;
mod asce_7;
mod bnbc_2020;
mod en_1991_1_4;
mod saffir_simpson;
mod savitsky_brown_1976;
mod columns;
mod frequencies;
mod kit;
mod mindlin;
mod nafems_plate;
mod roark;
mod timoshenko;

//! Published cases, one file for each source. Names say the source and the place in it; each tolerance is a constant
//! with its cause, and each published case is paired with an exact one.
mod beam_tables;

mod abs_yachts_2021;
mod asce_7;
mod bnbc_2020;
mod cfr_46_177;
mod cfr_49_393;
mod effective_width;
mod en_1991_1_4;
mod free_corner;
mod frequencies;
mod kit;
mod mindlin;
mod nafems_plate;
mod roark;
mod savitsky_brown_1976;
mod semi_analytic;
mod timoshenko;

mod glass_plies;
mod iso_12215_annex_h;
mod kaw_2006;
mod mallick_2008;
mod nafems_r0031;
mod navier;
mod pagano_1970;
mod tsai_hahn_1980;

mod abramowitz_stegun_1964;
mod bazant_2003;
mod boresi_schmidt_2003;
mod foundation;
mod hoff_mautner_1945;
mod huang_2004;
mod insert;
mod lr_ssc;
mod navier_buckling;

mod en_1993_1_8_punching;
mod en_1995_1_1_dowels;
mod insert_neighbours;
mod shigley_9_members;
mod strip_end;
mod volkersen_1938;

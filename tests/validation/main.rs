//! Published cases, one file for each source. Names say the source and the place in it; each tolerance is a constant
//! with its cause, and each published case is paired with an exact one.
mod abramowitz_stegun_1964;
mod abs_yachts_2021;
mod asce_7;
mod asme_b1_1;
mod bazant_2003;
mod beam_tables;
mod bnbc_2020;
mod boresi_schmidt_2003;
mod cfr_46_177;
mod cfr_49_393;
mod chapman_1996;
mod effective_width;
mod en_1991_1_4;
mod en_1993_1_8;
mod en_1993_1_9;
mod fed_std_h28;
mod foundation;
mod free_corner;
mod frequencies;
mod faa_ac_43_13_2;
mod fixing_group;
mod free_corner;
mod frequencies;
mod gear;
mod kit;
mod mindlin;
mod nafems_plate;
mod roark;
mod savitsky_brown_1976;
mod semi_analytic;
mod shigley_9;
mod timoshenko;

mod glass_plies;
mod hoff_mautner_1945;
mod huang_2004;
mod insert;
mod iso_12215_annex_h;
mod iso_898_1;
mod iso_965_1;
mod kaw_2006;
mod kit;
mod lr_ssc;
mod mallick_2008;
mod mindlin;
mod nafems_plate;
mod nafems_r0031;
mod navier;
mod navier_buckling;
mod nds_2018;
mod pagano_1970;
mod prying;
mod roark;
mod sae_j429;
mod savitsky_brown_1976;
mod semi_analytic;
mod shigley_9_bolts;
mod thread_rows;
mod timoshenko;
mod tsai_hahn_1980;
mod vdi_2230;
mod wood_handbook;





mod en_1993_1_8_punching;
mod en_1995_1_1_dowels;
mod insert_neighbours;
mod shigley_9_members;
mod strip_end;
mod volkersen_1938;

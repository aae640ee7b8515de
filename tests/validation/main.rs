//! Published cases, one file for each source. Names say the source and the place in it; each tolerance is a constant
//! with its cause, and each published case is paired with an exact one.

mod glass_plies;
mod iso_12215_annex_h;
mod kaw_2006;
mod mallick_2008;
mod nafems_r0031;
mod navier;
mod pagano_1970;
mod tsai_hahn_1980;

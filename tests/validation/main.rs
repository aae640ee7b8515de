//! Published cases, one file for each source. Names say the source and the place in it; each tolerance is a constant
//! with its cause, and each published case is paired with an exact one.

mod abramowitz_stegun_1964;
mod bazant_2003;
mod boresi_schmidt_2003;
mod foundation;
mod hoff_mautner_1945;
mod huang_2004;
mod insert;
mod lr_ssc;
mod navier_buckling;

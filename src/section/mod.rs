//! The sandwich: outer skin, core, inner skin, and everything about it that does not depend on span or load.

/// The section of the worked examples, for the reader in one line and for the compiler in full.
macro_rules! sample {
    () => {
        r#"# use skinspan::{laminate::*, section::*, units::*};
# use uom::{ConstZero, si::{length::{meter, millimeter}, pressure::{gigapascal, megapascal}}};
# use uom::si::{temperature_coefficient::per_kelvin, temperature_interval::kelvin};
# let mm = |x: f64| Length::new::<millimeter>(x);
# let mpa = |x: f64| Pressure::new::<megapascal>(x);
# let elastic = Elastic::isotropic(mpa(10e3), Ratio::ZERO, TemperatureCoefficient::new::<per_kelvin>(20e-6));
# let strength = Strength { xt: mpa(120.0), xc: mpa(120.0), yt: mpa(120.0), yc: mpa(120.0), s: mpa(60.0) };
# let ply = Ply { elastic, strength: Some(strength), thickness: mm(2.0), angle: Angle::ZERO };
# let skin = Laminate::new(&[ply])?;
# let core = CoreLayer::isotropic(mm(20.0), mpa(0.0), Ratio::ZERO, mpa(30.0), TemperatureCoefficient::ZERO);
# let near = |value: f64, expected: f64| assert!((value / expected - 1.0).abs() < 1e-9, "{value} {expected}");
// skins 2 mm, E = 10 GPa, nu = 0, alpha = 20e-6/K; core 20 mm, E = 0, G = 30 MPa
let section = Section::new(skin.clone(), core, skin)?;"#
    };
}

mod bending;
mod core_layer;
mod sandwich;
mod shear;
mod shear_flow;
mod skin_load;
mod strain;
mod thermal;
mod unit_response;
mod validity;
mod width;

pub use crate::geometry::Axis;
pub use bending::Bending;
pub use core_layer::{CoreLayer, InvalidCore};
pub use sandwich::{Section, Skin};
pub use shear::SkinShear;
pub use shear_flow::ShearFlow;
pub use skin_load::SkinStress;
pub use strain::FaceStrains;
pub use thermal::{HeldFlat, Temperatures};
pub use unit_response::{NoStrength, PlyPlace, PlyReserve, Residual, UnitResponse};
pub use validity::SkinCheck;
pub use width::Width;

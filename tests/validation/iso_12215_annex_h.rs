//! ISO 12215-5:2008, annex H, table H.1 in its corrected form, as quoted by notes at second hand: seven glass plies, strip
//! 1 mm wide.

#![allow(clippy::unwrap_used)] // a test may panic

use approx::assert_relative_eq;
use skinspan::laminate::{Elastic, Laminate, Ply, fibre_content::rule_ply_thickness};
use skinspan::section::{Axis, CoreLayer, Section, SkinShear, Width};
use skinspan::units::{
    Angle, ArealMassDensity, ForcePerWidth, Length, MomentPerWidth, Pressure, Ratio, TemperatureCoefficient,
};
use uom::ConstZero;
use uom::si::{areal_mass_density::kilogram_per_square_meter, length::millimeter, pressure::megapascal};

/// Dry mass kg/m², glass mass fraction, printed thickness mm; the outside first.
const TABLE: [(f64, f64, f64); 7] = [
    (0.3, 0.30, 0.701),
    (0.3, 0.30, 0.701),
    (0.5, 0.48, 0.647),
    (0.45, 0.30, 1.051),
    (0.8, 0.48, 1.035),
    (0.45, 0.30, 1.051),
    (0.8, 0.48, 1.035),
];
/// Three decimals of a mm are printed, the last of them not always rounded the nearer way.
const THREE_DECIMALS: f64 = 8e-4;
/// Six digits are printed.
const SIX_DIGITS: f64 = 3e-6;
/// Five digits are printed.
const FIVE_DIGITS: f64 = 5e-5;
/// Moduli of table C.4 as the worked table uses them, MPa.
const MAT: f64 = 6400.0;
const ROVING: f64 = 13240.0;

fn mm(x: f64) -> Length {
    Length::new::<millimeter>(x)
}

fn thickness(w: f64, psi: f64) -> Length {
    rule_ply_thickness(ArealMassDensity::new::<kilogram_per_square_meter>(w), Ratio::from(psi))
}

fn modulus(psi: f64) -> f64 {
    if psi < 0.4 { MAT } else { ROVING }
}

/// Plies with the thickness of the rule, which the table carries on unrounded; the fourth, a mat, stands as core. The
/// table knows no Poisson's ratio.
fn section() -> Section {
    let ply = |&(w, psi, _): &(f64, f64, f64)| Ply {
        elastic: Elastic::isotropic(
            Pressure::new::<megapascal>(modulus(psi)),
            Ratio::ZERO,
            TemperatureCoefficient::ZERO,
        ),
        strength: None,
        thickness: thickness(w, psi),
        angle: Angle::ZERO,
    };
    let skin = |rows: &[(f64, f64, f64)]| Laminate::new(&rows.iter().map(ply).collect::<Vec<_>>()).unwrap();
    let middle = CoreLayer::isotropic(
        thickness(TABLE[3].0, TABLE[3].1),
        Pressure::new::<megapascal>(MAT),
        Ratio::ZERO,
        Pressure::new::<megapascal>(MAT / 2.0),
        TemperatureCoefficient::ZERO,
    );
    Section::new(skin(&TABLE[..3]), middle, skin(&TABLE[4..])).unwrap()
}

#[test]
fn thickness_iso_12215_5_table_h_1() {
    for (w, psi, t) in TABLE {
        let computed = thickness(w, psi).get::<millimeter>();
        assert!((computed - t).abs() < THREE_DECIMALS, "{computed} against {t}");
    }
    assert!((section().thickness().get::<millimeter>() - 6.219).abs() < 3.0 * THREE_DECIMALS); // printed total
}

#[test]
fn rule_modulus_iso_12215_5_table_h_1() {
    // E = 38000 psi − 5000 MPa gives both moduli
    assert_relative_eq!(38000.0 * 0.30 - 5000.0, MAT, max_relative = 1e-12);
    assert_relative_eq!(38000.0 * 0.48 - 5000.0, ROVING, max_relative = 1e-12);
}

#[test]
fn extensional_stiffness_iso_12215_5_table_h_1() {
    use skinspan::laminate::Component::X;
    // N/mm
    assert_relative_eq!(section().stiffness().a(X, X).value * 1e-3, 58378.0, max_relative = FIVE_DIGITS);
}

#[test]
fn neutral_plane_and_rigidity_iso_12215_5_table_h_1() {
    use skinspan::laminate::Component::X;
    let section = section();
    let bending = section.bending(Axis::X, Width::Narrow);
    assert!((bending.neutral_plane.get::<millimeter>() - 3.38).abs() < 0.005); // two decimals printed
    assert_relative_eq!(bending.rigidity.value * 1e3, 183255.0, max_relative = SIX_DIGITS); // N·mm²/mm
    // about the outer surface
    let base = section.stiffness().shifted(-section.thickness() / 2.0);
    assert_relative_eq!(base.d(X, X).value * 1e3, 850226.0, max_relative = SIX_DIGITS);
}

#[test]
fn shear_and_first_moments_iso_12215_5_table_h_1() {
    // with V as large as the rigidity the stress is the first moment of stiffness
    let section = section();
    let flow = section.shear_flow(Axis::X, Width::Narrow, SkinShear::Rigid);
    let first_moment = |z: Length| {
        let v =
            ForcePerWidth { value: section.bending(Axis::X, Width::Narrow).rigidity.value, ..ForcePerWidth::default() };
        flow.stress(v, z).value // N·mm/mm
    };
    assert_relative_eq!(first_moment(thickness(0.3, 0.3)), 13584.0, max_relative = FIVE_DIGITS);
    assert_relative_eq!(first_moment(thickness(0.6, 0.3)), 24027.0, max_relative = FIVE_DIGITS);
    // 5.2 N/mm at the edge: 0.4 MPa between plies 1 and 2, one digit printed
    let v = ForcePerWidth { value: 5.2e3, ..ForcePerWidth::default() };
    assert!((flow.stress(v, mm(0.701)).get::<megapascal>() - 0.4).abs() < 0.05);
}

#[test]
fn compliance_factor_of_ply_1_iso_12215_5_table_h_1() {
    // 347 N·mm/mm at the edge stretches the outside; half of 85 MPa is allowed, printed ratio 1.04
    let section = section();
    let moment = MomentPerWidth { value: -347.0, ..MomentPerWidth::default() };
    let bent = section.deformation(&section.bent(Axis::X, Width::Narrow, moment));
    let (_, outside) = section.ply_stresses(bent, skinspan::section::Temperatures::default()).next().unwrap();
    assert!((0.5 * 85.0 / outside.s1.get::<megapascal>() - 1.04).abs() < 0.005);
}

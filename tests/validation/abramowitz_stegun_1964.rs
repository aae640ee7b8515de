//! Bessel and Kelvin functions, seen through the formulas that use them. Abramowitz and Stegun, *Handbook of
//! Mathematical Functions*, Tables 9.8 and 9.12. The digits were read in a public table of test values that cites the
//! handbook; it has more of them than the handbook prints.

use std::f64::consts::{PI, SQRT_2};

use approx::assert_relative_eq;
use skinspan::{
    strength::{
        DiscLoad, RoundFoot, SkinBending, SkinOnCore, punching_shear_at, skin_moment_at_edge, skin_moment_at_round_edge,
    },
    units::{FlexuralRigidity, Force, Length, Pressure, Ratio, ShearStiffness, per_width},
};
use uom::si::{force::newton, length::meter, pressure::pascal};

/// The table has 16 digits; the sums behind it lose two or three of them.
const TABLE_OF_TEST_VALUES: f64 = 1e-13;

/// 1 + x ker′ x and x kei′ x are differences of the printed values, which cancel up to 1 part in 100.
const DIFFERENCES_OF_PRINTED_VALUES: f64 = 1e-12;

/// x, ker₁ x, kei₁ x.
#[allow(clippy::excessive_precision)] // zeros at the end, as the table has them
const TABLE_9_12: [(f64, f64, f64); 10] = [
    (0.5, -1.522403406532090, -1.051182085412523),
    (1.0, -0.7403222768419827, -0.2419959664297382),
    (1.5, -0.4170442851662574, 0.001008680985009855),
    (2.0, -0.2308059295181230, 0.08004939780706674),
    (2.5, -0.1172561358598705, 0.09331378813535750),
    (3.0, -0.04989830778751491, 0.08027022252392219),
    (3.5, -0.01272324936181659, 0.05937625647622691),
    (4.0, 0.005351296460277448, 0.03916601076917133),
    (4.5, 0.01209090413515866, 0.02300216024690250),
    (5.0, 0.01273739048421857, 0.01157775439325247),
];

/// x, K₀, K₁.
#[allow(clippy::excessive_precision)] // likewise
const TABLE_9_8: [(f64, f64, f64); 8] = [
    (0.1, 2.427069024702017, 9.853844780870606),
    (0.2, 1.752703855528146, 4.775972543220472),
    (0.4, 1.114529134524434, 2.184354424732687),
    (0.6, 0.7775220919047293, 1.302834939763502),
    (0.8, 0.5653471052658957, 0.8617816344721803),
    (1.0, 0.4210244382407083, 0.6019072301972346),
    (1.2, 0.3185082202865936, 0.4345923910607150),
    (1.4, 0.2436550611815419, 0.3208359022298758),
];

fn rigidity(newton_meters: f64) -> FlexuralRigidity {
    per_width(Force::new::<newton>(newton_meters) * Length::new::<meter>(1.0))
}

fn stiffness(newtons_per_meter: f64) -> ShearStiffness {
    per_width(Force::new::<newton>(newtons_per_meter) / Length::new::<meter>(1.0))
}

/// Skin whose spread length is 1 m, with *ν* = 1 so that the moment is x kei′ x itself under a pressure of 1 Pa.
fn unit_skin() -> SkinOnCore {
    SkinOnCore {
        skin_rigidity: rigidity(1.0),
        poisson: Ratio::from(1.0),
        foundation: Pressure::new::<pascal>(1.0) / Length::new::<meter>(1.0),
    }
}

/// Panel whose decay length is 1 m.
fn unit_panel() -> SkinBending {
    SkinBending { flanges: rigidity(2.0), skins: rigidity(2.0), shear: stiffness(1.0) }
}

#[test]
fn core_pressure_abramowitz_stegun_1964_table_9_12() {
    for (x, ker1, kei1) in TABLE_9_12 {
        let load = DiscLoad { force: Force::new::<newton>(PI * x * x), radius: Length::new::<meter>(x) };
        // √2 ker′ x = ker₁ x + kei₁ x, equation 9.9.16
        let expected = 1.0 + x * (ker1 + kei1) / SQRT_2;
        let pressure = unit_skin().core_pressure(load).value;
        assert_relative_eq!(pressure, expected, max_relative = DIFFERENCES_OF_PRINTED_VALUES);
        assert_relative_eq!(unit_skin().dent(load).value, pressure);
    }
}

#[test]
fn skin_moment_abramowitz_stegun_1964_table_9_12() {
    for (x, ker1, kei1) in TABLE_9_12 {
        let load = DiscLoad { force: Force::new::<newton>(PI * x * x), radius: Length::new::<meter>(x) };
        // √2 kei′ x = kei₁ x − ker₁ x, equation 9.9.16
        let expected = x * (kei1 - ker1) / SQRT_2;
        let moment = unit_skin().skin_moment(load).value;
        assert_relative_eq!(moment, expected, epsilon = DIFFERENCES_OF_PRINTED_VALUES, max_relative = 1e-11);
    }
}

#[test]
fn skin_moment_round_edge_abramowitz_stegun_1964_table_9_8() {
    let (panel, v) = (unit_panel(), stiffness(1.0));
    for (x, k0, k1) in TABLE_9_8 {
        let round = skin_moment_at_round_edge(v, Length::new::<meter>(x), &panel, panel.skins);
        let ratio = (round / skin_moment_at_edge(v, &panel, panel.skins)).value;
        assert_relative_eq!(ratio, k0 / k1, max_relative = TABLE_OF_TEST_VALUES);
    }
}

#[test]
fn punching_shear_abramowitz_stegun_1964_table_9_8() {
    let panel = unit_panel();
    let (rim, _, k1_at_rim) = TABLE_9_8[1];
    let foot = RoundFoot {
        force: Force::new::<newton>(2.0 * PI * rim),
        radius: Length::new::<meter>(rim),
        skin_distance: Length::new::<meter>(1.0),
    };
    for (x, _, k1) in &TABLE_9_8[1..] {
        let stress = punching_shear_at(Length::new::<meter>(*x), &foot, &panel).value;
        let expected = 0.5 * (rim / x - k1 / k1_at_rim);
        assert_relative_eq!(stress, expected, epsilon = TABLE_OF_TEST_VALUES, max_relative = 1e-11);
    }
}

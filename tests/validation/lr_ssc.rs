//! Wrinkling cap of a class society. Lloyd's Register, *Rules and Regulations for the Classification of Special
//! Service Craft*, Part 8, Chapter 7, Section 3.2.2: `0.5 (E_cps E_c G)^(1/3)` (quoted at second hand). The rules print
//! no worked number; these are the arithmetic of the formula, to four digits.

use approx::assert_relative_eq;
use skinspan::{
    strength::{DESIGN_FACTOR, WrinklingModuli, wrinkling_stress},
    units::Pressure,
};
use uom::si::pressure::megapascal;

/// Four digits.
const ARITHMETIC: f64 = 0.0005;

#[test]
fn wrinkling_stress_lr_ssc_part_8_chapter_7_section_3_2_2() {
    let mpa = Pressure::new::<megapascal>;
    for (skin, core, core_shear, cap) in
        [(12_000.0, 90.0, 27.0, 153.9), (12_000.0, 135.0, 35.0, 192.1), (7_000.0, 70.0, 20.0, 107.0)]
    {
        let moduli = WrinklingModuli { skin: mpa(skin), core: mpa(core), core_shear: mpa(core_shear) };
        let stress = wrinkling_stress(DESIGN_FACTOR, moduli).get::<megapascal>();
        assert_relative_eq!(stress, cap, max_relative = ARITHMETIC);
    }
}

#[test]
fn wrinkling_stress_of_equal_moduli_is_half_of_them() {
    let e = Pressure::new::<megapascal>(64.0);
    let moduli = WrinklingModuli { skin: e, core: e, core_shear: e };
    assert_relative_eq!(wrinkling_stress(DESIGN_FACTOR, moduli).get::<megapascal>(), 32.0, max_relative = 1e-14);
}

//! Forest Products Laboratory, *Wood Handbook*, chapter 8: means of ultimate withdrawal. The wood-screw formula in US
//! units is quoted at second hand with an example; the metric coefficients and the lag-screw formula are from memory.

use approx::assert_relative_eq;
use skinspan::{
    fastening::{WithdrawalBasis, lag_screw_withdrawal, wood_screw_withdrawal},
    units::{Force, Length, Ratio, parse},
};
use uom::si::length::millimeter;

/// The metric coefficients have four and five digits of the US ones.
const FOUR_DIGITS: f64 = 3e-4;
/// 1262 lbf: four digits.
const HALF_A_POUND: f64 = 4e-4;

fn mm(x: f64) -> Length {
    Length::new::<millimeter>(x)
}

#[test]
fn metric_coefficients() {
    let mean = WithdrawalBasis::MeanUltimate;
    for (gravity, d, l) in [(0.35f64, 4.2f64, 20.0), (0.5, 4.8, 38.0), (0.7, 6.3, 50.0)] {
        let screw = wood_screw_withdrawal(mean, Ratio::from(gravity), mm(d), mm(l));
        assert_relative_eq!(screw.value, 108.25 * gravity * gravity * d * l, max_relative = FOUR_DIGITS);
        let lag = lag_screw_withdrawal(mean, Ratio::from(gravity), mm(d), mm(l));
        assert_relative_eq!(lag.value, 125.4 * gravity.powf(1.5) * d.powf(0.75) * l, max_relative = FOUR_DIGITS);
    }
}

#[test]
fn number_8_screw_in_red_oak() {
    // 0.164 in, one inch of thread, 0.70: 15 700 × 0.49 × 0.164 = 1262 lbf.
    let inches = |x: f64| parse::<Length>(&format!("{x} in")).expect("a length");
    let force = wood_screw_withdrawal(WithdrawalBasis::MeanUltimate, Ratio::from(0.7), inches(0.164), inches(1.0));
    let pounds = force.value / parse::<Force>("1 lbf").expect("a force").value;
    assert_relative_eq!(pounds, 1262.0, max_relative = HALF_A_POUND);
    assert_relative_eq!(pounds, 15_700.0 * 0.7 * 0.7 * 0.164, max_relative = 1e-12);
}

#[test]
fn the_wood_code_keeps_five_and_a_half_and_four_and_a_half() {
    let (gravity, d, l) = (Ratio::from(0.5), mm(6.0), mm(40.0));
    let safety = |f: fn(WithdrawalBasis, Ratio, Length, Length) -> Force| {
        (f(WithdrawalBasis::MeanUltimate, gravity, d, l) / f(WithdrawalBasis::Allowable, gravity, d, l)).value
    };
    assert_relative_eq!(safety(wood_screw_withdrawal), 15_700.0 / 2850.0, max_relative = 1e-14);
    assert_relative_eq!(safety(lag_screw_withdrawal), 4.5, max_relative = 1e-14);
}

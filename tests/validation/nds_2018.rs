//! *National Design Specification for Wood Construction*, 2018, Table 12.2A: withdrawal of lag screws, lbf per inch (read
//! in a scanned copy of the page; four numbers that the scan garbles are left out). The wood-screw formula is quoted
//! in a book of formulas; its table was not seen. Example of a lag screw of 1/2 × 4 in: quoted at second hand.

use approx::assert_relative_eq;
use skinspan::{
    fastening::{Interaction, WithdrawalBasis, effective_engagement, lag_screw_withdrawal, wood_screw_withdrawal},
    units::{Force, Length, Ratio, parse},
};

/// Whole pounds per inch, and the formula is evaluated by hand in the source: half a unit.
const HALF_A_POUND: f64 = 0.505;
/// The example is given to a hundredth of a newton.
const SIX_DIGITS: f64 = 2e-6;

const DIAMETERS: [f64; 11] = [0.25, 0.3125, 0.375, 0.4375, 0.5, 0.625, 0.75, 0.875, 1.0, 1.125, 1.25];
const TABLE_12_2A: [(f64, [f64; 11]); 16] = [
    (0.73, [397.0, 469.0, 538.0, 604.0, 668.0, 789.0, 905.0, 1016.0, 1123.0, 1226.0, 1327.0]),
    (0.71, [381.0, 450.0, 516.0, 579.0, 640.0, 757.0, 868.0, 974.0, 1077.0, 1176.0, 1273.0]),
    (0.68, [357.0, 422.0, 484.0, 543.0, 600.0, 709.0, 813.0, 913.0, 1009.0, 1103.0, 1193.0]),
    (0.67, [349.0, 413.0, 473.0, 531.0, 587.0, 694.0, 796.0, 893.0, 987.0, 1078.0, 1167.0]),
    (0.58, [281.0, 332.0, 381.0, 428.0, 473.0, 559.0, 641.0, 719.0, 795.0, 869.0, 940.0]),
    (0.55, [260.0, 307.0, 352.0, 395.0, 437.0, 516.0, 592.0, 664.0, 734.0, 802.0, 868.0]),
    (0.51, [232.0, 274.0, 314.0, 353.0, 390.0, 461.0, 528.0, 593.0, 656.0, 716.0, 775.0]),
    (0.50, [225.0, 266.0, 305.0, 342.0, 378.0, 447.0, 513.0, 576.0, 636.0, 695.0, 752.0]),
    (0.47, [205.0, 242.0, 278.0, 312.0, 345.0, 408.0, 467.0, 525.0, 580.0, 634.0, 686.0]),
    (0.42, [173.0, 205.0, 235.0, 264.0, 291.0, 344.0, 395.0, 443.0, 490.0, 535.0, 579.0]),
    (0.41, [167.0, 198.0, 226.0, 254.0, 281.0, 332.0, 381.0, 428.0, 473.0, 516.0, 559.0]),
    (0.40, [161.0, 190.0, 218.0, 245.0, 271.0, 320.0, 367.0, 412.0, 455.0, 497.0, 538.0]),
    (0.38, [149.0, 176.0, 202.0, 227.0, 251.0, 296.0, 340.0, 381.0, 422.0, 461.0, 498.0]),
    (0.36, [137.0, 163.0, 186.0, 209.0, 231.0, 273.0, 313.0, 352.0, 389.0, 425.0, 460.0]),
    (0.35, [132.0, 156.0, 179.0, 200.0, 222.0, 262.0, 300.0, 337.0, 373.0, 407.0, 441.0]),
    (0.31, [110.0, 130.0, 149.0, 167.0, 185.0, 218.0, 250.0, 281.0, 311.0, 339.0, 367.0]),
];

fn inches(x: f64) -> Length {
    parse::<Length>(&format!("{x} in")).expect("a length")
}

fn pounds(force: Force) -> f64 {
    force.value / parse::<Force>("1 lbf").expect("a force").value
}

fn lag(gravity: f64, diameter: f64, length: Length) -> Force {
    lag_screw_withdrawal(WithdrawalBasis::Allowable, Ratio::from(gravity), inches(diameter), length)
}

#[test]
fn table_12_2a() {
    for (gravity, row) in TABLE_12_2A {
        for (diameter, printed) in DIAMETERS.into_iter().zip(row) {
            let value = pounds(lag(gravity, diameter, inches(1.0)));
            assert!((value - printed).abs() <= HALF_A_POUND, "{gravity} {diameter}: {value}, printed {printed}");
        }
    }
}

#[test]
fn lag_screw_of_half_an_inch_by_four() {
    // Through 1½ in of side member, less a tip of 5/16 in: 2.1875 in of thread in wood of 0.55; 4247.94 N.
    let length = effective_engagement(inches(4.0), inches(1.5), inches(0.3125), inches(0.5), Ratio::from(100.0));
    assert_relative_eq!(length.value, inches(2.1875).value, max_relative = 1e-14);
    assert_relative_eq!(lag(0.55, 0.5, length).value, 4247.94, max_relative = SIX_DIGITS);
}

#[test]
fn wood_screws_by_hand() {
    // 2850 × 0.45² × 0.190 = 109.65 lbf per inch.
    let gravity = Ratio::from(0.45);
    let force = wood_screw_withdrawal(WithdrawalBasis::Allowable, gravity, inches(0.19), inches(1.0));
    assert_relative_eq!(pounds(force), 2850.0 * 0.2025 * 0.19, max_relative = 1e-12);
}

#[test]
fn lag_screws_scale_exactly() {
    // Four times the density, eight times the load; sixteen times the diameter, eight times the load.
    let base = lag(0.2, 0.25, inches(1.0)).value;
    assert_relative_eq!(lag(0.8, 0.25, inches(1.0)).value, 8.0 * base, max_relative = 1e-14);
    assert_relative_eq!(lag(0.2, 4.0, inches(1.0)).value, 8.0 * base, max_relative = 1e-14);
    assert_relative_eq!(lag(0.2, 0.25, inches(3.0)).value, 3.0 * base, max_relative = 1e-14);
}

#[test]
fn linear_interaction_lies_within_hankinson_12_4_2() {
    // Z = W Z₀/(W cos²α + Z₀ sin²α), α from the surface (from memory). Its components are Z sin α and Z cos α: the linear
    // rule allows as much along the axes and less between.
    let (w, z0) = (1000.0, 400.0);
    let used = |degrees: f64| {
        let (sin, cos) = degrees.to_radians().sin_cos();
        let z = w * z0 / (w * cos * cos + z0 * sin * sin);
        Interaction::Linear.utilisation(Ratio::from(z * sin / w), Ratio::from(z * cos / z0)).value
    };
    assert_relative_eq!(used(0.0), 1.0, max_relative = 1e-14);
    assert_relative_eq!(used(90.0), 1.0, max_relative = 1e-14);
    assert_relative_eq!(used(45.0), 2f64.sqrt(), max_relative = 1e-14);
    assert!((1..90).all(|degrees| used(f64::from(degrees)) > 1.0));
}

//! Withdrawal of screws from wood.

use crate::units::{Force, Length, Pressure, Ratio};

/// One pound-force per square inch, by its definition: `uom` rounds its own.
const PSI: f64 = 6_894.757_293_168_361;
const INCH: f64 = 0.0254;

/// What kind of value a withdrawal formula gives.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum WithdrawalBasis {
    /// Mean of ultimate loads in tests.
    MeanUltimate,
    /// Allowable for a load of ten years, as the wood code has it, before its adjustment factors.
    Allowable,
}

/// Pull that draws a wood screw from the side grain of wood.
///
/// ```text
///   F = k G² D L,   k = 15 700 lbf/in² mean ultimate (108.25 MPa)
///                   k =  2 850 lbf/in² allowable
/// ```
///
/// | symbol | meaning                                             | argument           |
/// |--------|-----------------------------------------------------|--------------------|
/// | *G*    | density of the oven-dry wood over that of water     | `specific_gravity` |
/// | *D*    | shank diameter                                      | `diameter`         |
/// | *L*    | length of thread in the wood                        | `length`           |
///
/// # Validity
///
/// Seasoned solid wood across the grain, pilot hole of about 0.7 of the root diameter (hard woods 0.9). Nothing along
/// the grain. Plywood holds less: tests on larch plywood lay below this formula, so take a share of it. Foam, board
/// and plastics are not wood, and the square of a density means nothing there: use
/// [`board_strip_capacity`](super::board_strip_capacity). An over-driven screw has stripped its hole.
///
/// # Source
///
/// [`WOOD_HANDBOOK`](crate::source::WOOD_HANDBOOK), chapter 8, wood screws (quoted at second hand), for the mean; for
/// the allowable [`NDS_2018`](crate::source::NDS_2018), 12.2.2 (quoted at second hand).
///
/// # Examples
///
/// No. 10, 0.190 in, one inch in wood of 0.5: 15 700 × 0.25 × 0.190 = 745.75 lbf = 3317 N.
///
/// ```
/// use skinspan::{fastening::{WithdrawalBasis, wood_screw_withdrawal}, units::{Length, Ratio}};
/// use uom::si::{force::newton, length::inch};
/// let inches = Length::new::<inch>;
/// let f = wood_screw_withdrawal(WithdrawalBasis::MeanUltimate, Ratio::from(0.5), inches(0.19), inches(1.0));
/// assert!((f.get::<newton>() - 3317.3).abs() < 0.1);
/// ```
#[must_use]
pub fn wood_screw_withdrawal(
    basis: WithdrawalBasis,
    specific_gravity: Ratio,
    diameter: Length,
    length: Length,
) -> Force {
    let coefficient = match basis {
        WithdrawalBasis::MeanUltimate => 15_700.0,
        WithdrawalBasis::Allowable => 2_850.0,
    };
    psi(coefficient) * (specific_gravity * specific_gravity) * (diameter * length)
}

/// Pull that draws a lag screw from the side grain of wood.
///
/// ```text
///   F = k G^1.5 (D/in)^0.75 in · L,   k = 8 100 lbf/in² mean ultimate
///                                     k = 1 800 lbf/in² allowable
/// ```
///
/// | symbol | meaning                                             | argument           |
/// |--------|-----------------------------------------------------|--------------------|
/// | *G*    | density of the oven-dry wood over that of water     | `specific_gravity` |
/// | *D*    | shank diameter                                      | `diameter`         |
/// | *L*    | length of thread in the wood, without the tip       | `length`           |
///
/// # Validity
///
/// As [`wood_screw_withdrawal`]; diameters from 6 mm (1/4 in). Along the grain three quarters.
///
/// # Source
///
/// [`NDS_2018`](crate::source::NDS_2018), 12.2.1, for the allowable (its table was read);
/// [`WOOD_HANDBOOK`](crate::source::WOOD_HANDBOOK), chapter 8, lag screws, for the mean (from memory).
///
/// # Examples
///
/// 1/2 in in wood of 0.55: 1800 × 0.4079 × 0.5946 = 436.6 lbf per inch, 1942 N.
///
/// ```
/// use skinspan::{fastening::{WithdrawalBasis, lag_screw_withdrawal}, units::{Length, Ratio}};
/// use uom::si::{force::newton, length::inch};
/// let inches = Length::new::<inch>;
/// let f = lag_screw_withdrawal(WithdrawalBasis::Allowable, Ratio::from(0.55), inches(0.5), inches(1.0));
/// assert!((f.get::<newton>() - 1942.0).abs() < 0.5);
/// ```
#[must_use]
pub fn lag_screw_withdrawal(
    basis: WithdrawalBasis,
    specific_gravity: Ratio,
    diameter: Length,
    length: Length,
) -> Force {
    let coefficient = match basis {
        WithdrawalBasis::MeanUltimate => 8_100.0,
        WithdrawalBasis::Allowable => 1_800.0,
    };
    let inch = Length::new::<uom::si::length::meter>(INCH);
    let in_inches = (diameter / inch).value;
    psi(coefficient) * specific_gravity.value.powf(1.5) * in_inches.powf(0.75) * (inch * length)
}

fn psi(value: f64) -> Pressure {
    Pressure::new::<uom::si::pressure::pascal>(value * PSI)
}

//! Quantities as text: for reading, rounded; for files, exact.

use super::catalog::{Dimensioned, Step, System, Unit};

/// What stands where a value is not a number.
const NOTHING: &str = "—";

/// Beyond so many decimals a number is easier to read with an exponent.
const MOST_DECIMALS: i32 = 7;

/// The quantity in the usual unit of its size, to four significant digits or as many decimals as anyone reads.
///
/// A fourth digit that is zero is left out. What is not finite prints as `—`.
///
/// ```
/// use skinspan::units::{Length, Pressure, System, parse, show};
/// let core = parse::<Length>("1-1/2 in")?;
/// assert_eq!(show(core, System::Us), "1.50 in");
/// assert_eq!(show(core, System::Si), "38.1 mm");
/// assert_eq!(show(parse::<Pressure>("75 N/mm2")?, System::Us), "10.88 ksi");
/// # Ok::<(), skinspan::units::ParseError>(())
/// ```
#[must_use]
pub fn show<Q: Dimensioned>(quantity: Q, system: System) -> String {
    let Some((unit, step)) = step::<Q>(quantity, system) else { return NOTHING.to_owned() };
    let value = unit.of_si(quantity.si());
    if value.is_finite() { with_symbol(significant(value, step.decimals), unit) } else { NOTHING.to_owned() }
}

/// As [`show`], in the unit in which another value prints: two that stand side by side are read against each other.
///
/// ```
/// use skinspan::units::{Pressure, System, parse, show_as};
/// let (small, large) = (parse::<Pressure>("474.1 psi")?, parse::<Pressure>("15.62 ksi")?);
/// assert_eq!(show_as(small, large, System::Us), "0.4741 ksi");
/// assert_eq!(show_as(large, small, System::Us), "15620 psi");
/// # Ok::<(), skinspan::units::ParseError>(())
/// ```
#[must_use]
pub fn show_as<Q: Dimensioned>(quantity: Q, like: Q, system: System) -> String {
    let Some((unit, step)) = step::<Q>(like, system) else { return NOTHING.to_owned() };
    let value = unit.of_si(quantity.si());
    // In the unit of something larger there is more to read behind the point.
    let decimals = if quantity.si().abs() < like.si().abs() { step.decimals + 3 } else { step.decimals };
    if value.is_finite() { with_symbol(significant(value, decimals), unit) } else { NOTHING.to_owned() }
}

/// The quantity in a unit of the caller's choice, with so many decimals.
///
/// An unknown unit gives the SI base unit, so the text is right in any case. What is not finite prints as `—`.
///
/// ```
/// use skinspan::units::{Pressure, parse, show_in};
/// assert_eq!(show_in(parse::<Pressure>("1 kPa")?, "psf", 1), "20.9 psf");
/// # Ok::<(), skinspan::units::ParseError>(())
/// ```
#[must_use]
pub fn show_in<Q: Dimensioned>(quantity: Q, unit: &str, decimals: usize) -> String {
    let Some(unit) = Q::ENTRY.unit(unit).or_else(|| Q::ENTRY.base()) else { return NOTHING.to_owned() };
    let value = unit.of_si(quantity.si());
    if value.is_finite() { with_symbol(unsigned_zero(format!("{value:.decimals$}")), unit) } else { NOTHING.to_owned() }
}

/// The quantity in one system, and in the other in brackets.
///
/// ```
/// use skinspan::units::{Length, System, both, parse};
/// assert_eq!(both(parse::<Length>("1.5 in")?, System::Us), "1.50 in (38.1 mm)");
/// # Ok::<(), skinspan::units::ParseError>(())
/// ```
#[must_use]
pub fn both<Q: Dimensioned>(quantity: Q, system: System) -> String {
    let (first, second) = (show(quantity, system), show(quantity, system.other()));
    if first == second { first } else { format!("{first} ({second})") }
}

/// As [`both`], for what is set by hand and must not be passed: three digits, rounded down in either system.
///
/// ```
/// use skinspan::units::{System, Torque, both, both_at_most, parse};
/// let torque = parse::<Torque>("3.6678 N.m")?;
/// assert_eq!(both(torque, System::Si), "3.668 N·m (32.46 lbf·in)");
/// assert_eq!(both_at_most(torque, System::Si), "3.66 N·m (32.4 lbf·in)");
/// # Ok::<(), skinspan::units::ParseError>(())
/// ```
#[must_use]
pub fn both_at_most<Q: Dimensioned>(quantity: Q, system: System) -> String {
    let [first, second] = [system, system.other()].map(|system| {
        let Some((unit, step)) = step::<Q>(quantity, system) else { return NOTHING.to_owned() };
        let value = unit.of_si(quantity.si());
        if value.is_finite() { with_symbol(at_most(value, step.decimals), unit) } else { NOTHING.to_owned() }
    });
    if first == second { first } else { format!("{first} ({second})") }
}

/// The shortest text that reads back as exactly this quantity, to the last bit.
///
/// It is in the usual unit of the system where a number for it exists, else in another unit of the system, else in the
/// SI base unit, where one always does. What is not finite has no text that reads back: `—`.
///
/// ```
/// use skinspan::units::{Length, System, exact, parse};
/// let third = parse::<Length>("1/3 in")?;
/// assert_eq!(parse::<Length>(&exact(third, System::Us))?.value.to_bits(), third.value.to_bits());
/// assert_eq!(exact(parse::<Length>("1-1/2 in")?, System::Si), "38.1 mm");
/// # Ok::<(), skinspan::units::ParseError>(())
/// ```
#[must_use]
pub fn exact<Q: Dimensioned>(quantity: Q, system: System) -> String {
    let si = quantity.si();
    if !si.is_finite() {
        return NOTHING.to_owned();
    }
    let usual = step::<Q>(quantity, system).map(|(unit, _)| unit);
    let own = Q::UNITS.iter().filter(|unit| unit.system == Some(system));
    usual
        .into_iter()
        .chain(own)
        .chain(Q::ENTRY.base())
        .find_map(|unit| exact_in(si, unit).map(|value| with_symbol(value, unit)))
        .unwrap_or_else(|| NOTHING.to_owned())
}

/// The unit in which [`show`] prints this quantity.
///
/// For tables with one unit in the head: ask with the largest value of the column.
#[must_use]
pub fn usual_unit<Q: Dimensioned>(quantity: Q, system: System) -> Option<&'static Unit> {
    step::<Q>(quantity, system).map(|(unit, _)| unit)
}

fn step<Q: Dimensioned>(quantity: Q, system: System) -> Option<(&'static Unit, &'static Step)> {
    // One part in 10⁹ below the border is the border: 1 m³ may come out of a product as 0.9999999999999999 m³.
    let size = quantity.si().abs() * (1.0 + 1e-9);
    let steps = Q::ENTRY.steps(system);
    let step = steps.iter().rev().find(|step| step.from <= size).or(steps.first())?;
    Some((Q::ENTRY.unit(step.unit)?, step))
}

fn with_symbol(value: String, unit: &Unit) -> String {
    match unit.symbol {
        "" => value,
        symbol @ ("°" | "%") => value + symbol,
        symbol => format!("{value} {symbol}"),
    }
}

/// Four significant digits; three if the fourth is zero.
fn significant(value: f64, decimals: usize) -> String {
    if value == 0.0 {
        return "0".to_owned();
    }
    let scientific = format!("{value:.3e}");
    let Some((mantissa, exponent)) = scientific.split_once('e') else { return scientific };
    let exponent: i32 = exponent.parse().unwrap_or(0);
    let wanted = usize::try_from(3 - exponent).unwrap_or(0);
    let allowed = wanted.min(decimals);
    if exponent >= MOST_DECIMALS || i32::try_from(allowed).is_ok_and(|allowed| allowed > MOST_DECIMALS) {
        return format!("{}e{exponent}", mantissa.strip_suffix('0').unwrap_or(mantissa));
    }
    let text = format!("{value:.allowed$}");
    let text = match text.strip_suffix('0') {
        Some(shorter) if allowed == wanted && allowed > 0 => shorter.trim_end_matches('.').to_owned(),
        _ => text,
    };
    unsigned_zero(text)
}

/// Three digits, which is what a wrench is set by, and not above the value.
fn at_most(value: f64, decimals: usize) -> String {
    let scientific = format!("{value:.3e}");
    let exponent = scientific.split_once('e').and_then(|(_, exponent)| exponent.parse::<i32>().ok()).unwrap_or(0);
    let last = (2 - exponent).min(i32::try_from(decimals).unwrap_or(i32::MAX));
    let scale = 10f64.powi(last);
    // One part in 10⁹ is what a product may lose.
    let most = (value * scale + value.abs() * scale * 1e-9).floor() / scale;
    unsigned_zero(format!("{most:.*}", usize::try_from(last).unwrap_or(0)))
}

/// `-0.00` is nothing that anyone measured.
fn unsigned_zero(text: String) -> String {
    match text.strip_prefix('-') {
        Some(rest) if rest.bytes().all(|byte| matches!(byte, b'0' | b'.')) => rest.to_owned(),
        _ => text,
    }
}

/// The shortest number that is exactly `si` in this unit, if one is.
fn exact_in(si: f64, unit: &Unit) -> Option<String> {
    let near = unit.of_si(si);
    let hits = |value: f64| value.is_finite() && unit.to_si(value).to_bits() == si.to_bits();
    let rounded =
        (0..17).filter_map(|digits| format!("{near:.digits$e}").parse::<f64>().ok()).find(|value| hits(*value));
    let value = rounded.or_else(|| {
        let (mut below, mut above) = (near, near);
        (0..4).find_map(|_| {
            (below, above) = (below.next_down(), above.next_up());
            [below, above].into_iter().find(|value| hits(*value))
        })
    })?;
    let plain = value == 0.0 || (1e-5..1e15).contains(&value.abs());
    Some(if plain { format!("{value}") } else { format!("{value:e}") })
}

#[cfg(test)]
mod tests {
    use super::{System, at_most, both, both_at_most, exact, exact_in, show, show_in, significant, usual_unit};
    use crate::units::{
        Angle, Curvature, Dimensioned, Force, Length, Mass, Pressure, QUANTITIES, Ratio, TemperatureCoefficient,
        ThermodynamicTemperature, Torque, Volume, parse,
    };

    fn shown<Q: Dimensioned>(text: &str) -> [String; 2] {
        let quantity = parse::<Q>(text).unwrap_or_else(|error| unreachable!("{text}: {error}"));
        [show(quantity, System::Us), show(quantity, System::Si)]
    }

    #[test]
    fn what_must_not_be_passed_is_never_rounded_up() {
        for step in 1..20_000 {
            let value = 0.000_713 * f64::from(step) * f64::from(step % 37 + 1);
            for decimals in [0, 1, 2, 3, 9] {
                let (down, near) = (at_most(value, decimals), significant(value, decimals));
                let (down, near) = (down.parse::<f64>().unwrap_or(f64::NAN), near.parse::<f64>().unwrap_or(f64::NAN));
                assert!(down <= value * (1.0 + 1e-9), "{value}: {down}");
                // Three digits of value are left, or all decimals that there are.
                let last = 10f64.powi(-i32::try_from(decimals).unwrap_or(0));
                assert!(
                    (near - down).abs() <= (value * 1.01e-2).max(last * 1.001),
                    "{value} {decimals}: {down} {near}"
                );
            }
        }
        let torque = |text: &str| parse::<Torque>(text).unwrap_or_else(|error| unreachable!("{error}"));
        assert_eq!(both_at_most(torque("2 N.m"), System::Si), "2.00 N·m (17.7 lbf·in)");
    }

    #[test]
    fn sizes_choose_their_unit_and_digits() {
        assert_eq!(shown::<Length>("1.5 in"), ["1.50 in", "38.1 mm"]);
        assert_eq!(shown::<Length>("9 ft 2 in"), ["110 in", "2794 mm"]);
        assert_eq!(shown::<Length>("1/32 in"), ["0.031 in", "0.79 mm"]);
        assert_eq!(shown::<Length>("0 mm"), ["0 in", "0 mm"]);
        assert_eq!(shown::<Length>("-1e-9 mm"), ["0.000 in", "0.00 mm"]);
        assert_eq!(shown::<Pressure>("5 kPa"), ["0.7252 psi", "5.00 kPa"]);
        assert_eq!(shown::<Pressure>("10 Msi"), ["10.0 Msi", "68.95 GPa"]);
        assert_eq!(shown::<Pressure>("120 psi"), ["120 psi", "0.827 MPa"]);
        assert_eq!(shown::<Force>("12 kN"), ["2698 lbf", "12.0 kN"]);
        assert_eq!(shown::<Torque>("20 N m"), ["14.75 lbf·ft", "20.0 N·m"]);
        assert_eq!(shown::<Torque>("5 N m"), ["44.25 lbf·in", "5.00 N·m"]);
        assert_eq!(shown::<Mass>("250 g"), ["8.82 oz", "250 g"]);
        assert_eq!(shown::<Ratio>("35 %"), ["0.350", "0.350"]);
        assert_eq!(shown::<Ratio>("1.25e-5"), ["1.25e-5", "1.25e-5"]);
        assert_eq!(shown::<Curvature>("0.002 1/m"), ["5.08e-5 1/in", "0.00200 1/m"]);
        assert_eq!(shown::<Angle>("45 deg"), ["45.0°", "45.0°"]);
        assert_eq!(shown::<TemperatureCoefficient>("23 ppm/K"), ["12.78 ppm/°F", "23.0 ppm/K"]);
        assert_eq!(shown::<ThermodynamicTemperature>("80 °C"), ["176 °F", "80.0 °C"]);
        assert_eq!(shown::<Volume>("1 m3"), ["35.31 ft³", "1.00 m³"]);
    }

    #[test]
    fn what_is_not_finite_prints_as_nothing() {
        let nan = Length::from_si(f64::NAN);
        assert_eq!([show(nan, System::Us), exact(nan, System::Si), show_in(nan, "in", 2)], ["—"; 3]);
        assert_eq!(show(Length::from_si(f64::INFINITY), System::Si), "—");
    }

    #[test]
    fn a_named_unit_is_kept_and_an_unknown_one_is_si() {
        let core = Length::from_si(0.0381);
        assert_eq!([show_in(core, "in", 3), show_in(core, "parsec", 3)], ["1.500 in", "0.038 m"]);
        assert_eq!(both(core, System::Si), "38.1 mm (1.50 in)");
        assert_eq!(both(Ratio::from_si(0.5), System::Us), "0.500");
        assert_eq!(usual_unit(core, System::Us).map(|unit| unit.symbol), Some("in"));
    }

    #[test]
    fn what_was_written_in_a_unit_is_exact_in_it() {
        for unit in QUANTITIES.iter().flat_map(|entry| entry.units) {
            for i in 1..2000_u32 {
                let value = f64::from(i).sqrt() * 1.7;
                assert!(exact_in(unit.to_si(value), unit).is_some(), "{value} {}", unit.symbol);
            }
        }
    }

    #[test]
    fn exact_text_is_short_where_it_can_be() {
        let text = |text, system| parse::<Length>(text).map(|q| exact(q, system));
        assert_eq!(text("1-1/2 in", System::Us).as_deref(), Ok("1.5 in"));
        assert_eq!(text("1/8 in", System::Si).as_deref(), Ok("3.175 mm"));
        assert_eq!(exact(Length::from_si(-0.0), System::Us), "-0 in");
        // Above 4 in the steps of f64 are wider in inches than in metres: not every length has a number of inches.
        let lengths = (0..100).map(|i| Length::from_si(0.11 + f64::from(i) * f64::EPSILON / 16.0));
        let texts: Vec<_> = lengths.map(|length| exact(length, System::Us)).collect();
        assert!(texts.iter().any(|text| text.ends_with(" in")) && texts.iter().any(|text| !text.ends_with(" in")));
    }
}

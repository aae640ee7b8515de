//! Reading and writing quantities.

use proptest::prelude::*;
use skinspan::units::{
    Acceleration, Angle, Area, ArealMassDensity, Curvature, Dimensioned, Entry, FlexuralRigidity, Force, ForcePerWidth,
    FoundationModulus, Frequency, Length, LinearMassDensity, Mass, MassDensity, MomentPerWidth, ParseError, Pressure,
    QUANTITIES, Ratio, Sign, System, TemperatureCoefficient, TemperatureInterval, ThermodynamicTemperature, Time,
    Torque, Unit, Velocity, Volume, both, exact, parse, parse_prefix, parse_signed, show,
};

/// One product and one quotient, rounded once each, on both sides of a comparison.
const ROUNDING: f64 = 8.0 * f64::EPSILON;

macro_rules! for_each_quantity {
    ($check:ident $arguments:tt) => {
        for_each_quantity!(@ $check $arguments
            Length Area Volume Angle Mass MassDensity ArealMassDensity LinearMassDensity Force Pressure Torque Time
            Frequency Velocity Acceleration TemperatureInterval TemperatureCoefficient Ratio ForcePerWidth
            MomentPerWidth FlexuralRigidity Curvature FoundationModulus ThermodynamicTemperature)
    };
    (@ $check:ident $arguments:tt $($quantity:ident)*) => { $($check::<$quantity> $arguments?;)* };
}

type Outcome = Result<(), TestCaseError>;

/// Any finite number, and often one of a size that somebody would write.
fn number() -> impl Strategy<Value = f64> {
    prop_oneof![
        proptest::num::f64::NORMAL | proptest::num::f64::SUBNORMAL | proptest::num::f64::ZERO,
        -1e4..1e4,
        (-100_000_i32..100_000).prop_map(|n| f64::from(n) / 100.0),
    ]
}

fn round_trip<Q: Dimensioned>(si: f64) -> Outcome {
    let si = if Q::ENTRY.lowest.is_some() { si.abs() } else { si };
    for system in [System::Us, System::Si] {
        let text = exact(Q::from_si(si), system);
        let back = parse::<Q>(&text).map(Dimensioned::si).map(f64::to_bits);
        prop_assert_eq!(back, Ok(si.to_bits()), "{}", text);
    }
    Ok(())
}

/// Four digits are shown, or a thousandth of the unit; both must be readable and near.
fn shown_text_is_near<Q: Dimensioned>(si: f64) -> Outcome {
    // Absolute zero is -459.67 °F, which four digits round to something below it.
    let si = if Q::ENTRY.lowest.is_some() { si.abs() + 0.1 } else { si };
    for system in [System::Us, System::Si] {
        let text = show(Q::from_si(si), system);
        prop_assert!(!text.contains("NaN") && !text.contains("inf"), "{}", text);
        prop_assert!(both(Q::from_si(si), system).starts_with(&text));
        let Ok(back) = parse::<Q>(&text) else {
            // Beyond the range of f64 after rounding up, or in the other unit.
            prop_assert!(text == "—" || si.abs() > 1e280 || si.abs() < 1e-280, "{}", text);
            continue;
        };
        let unit = Q::UNITS.iter().filter(|unit| text.ends_with(unit.symbol)).max_by_key(|unit| unit.symbol.len());
        // Half of the last of two decimals, the fewest of any list, or of the fourth digit; a degree's zero is far.
        let step = unit.map_or(0.0, |unit| unit.to_si(1.0) - unit.to_si(0.0));
        let far = unit.map_or(0.0, |unit| unit.of_si(si).abs() * step);
        prop_assert!((back.si() - si).abs() <= 0.0501 * step + 5.01e-4 * far, "{} for {}", text, si);
    }
    Ok(())
}

fn is_inside(text: &str, error: &ParseError) -> Outcome {
    prop_assert!(text.get(error.range.clone()).is_some(), "{:?} in {:?}", error.range, text);
    prop_assert!(!error.message.is_empty());
    Ok(())
}

fn fault_is_inside<Q: Dimensioned>(text: &str) -> Outcome {
    match parse::<Q>(text) {
        Ok(quantity) => {
            prop_assert!(quantity.si().is_finite());
            // What the whole is, the prefix is too.
            prop_assert_eq!(
                parse_prefix::<Q>(text).map(|(q, used)| (q.si(), used)),
                Ok((quantity.si(), text.trim_end().len()))
            );
        }
        Err(error) => {
            is_inside(text, &error)?;
            if let Some(good) = error.replacement {
                prop_assert_ne!(&good, text.trim());
            }
        }
    }
    match parse_prefix::<Q>(text) {
        Ok((_, used)) => {
            let prefix = text.get(..used);
            prop_assert!(prefix.is_some(), "{} in {:?}", used, text);
            prop_assert!(prefix.is_some_and(|prefix| parse::<Q>(prefix).is_ok()), "{:?}", prefix);
        }
        Err(error) => is_inside(text, &error)?,
    }
    Ok(())
}

fn all_forms_agree<Q: Dimensioned>(value: f64) -> Outcome {
    let value = if Q::ENTRY.lowest.is_some() { value.abs() } else { value };
    for unit in Q::UNITS {
        let expected = unit.to_si(value);
        for name in unit.names.iter().chain([&unit.symbol]) {
            for text in [
                format!("{value} {name}"),
                format!("{value}{name}"),
                format!("  {value}\u{a0}{name} "),
                format!("{value} {}", name.replace('2', "²").replace('3', "³")),
                format!("{value} {}", name.replace('2', "^2").replace('3', "^3")),
                format!("{value} {}", name.replace('·', "*")),
                format!("{value} {}", name.replace('·', " ")),
            ] {
                // `5 10-6/K` needs the space, and `·10-6/K` its sign.
                if name.starts_with(|c: char| c.is_ascii_digit() || c == '·') && !text.contains(&format!(" {name}")) {
                    continue;
                }
                let read = parse::<Q>(&text).map(Dimensioned::si);
                prop_assert_eq!(read.map(f64::to_bits), Ok(expected.to_bits()), "{}", text);
            }
        }
    }
    Ok(())
}

fn scales<Q: Dimensioned>(value: f64, factor: f64) -> Outcome {
    for unit in Q::UNITS.iter().filter(|unit| !unit.has_offset()) {
        let name = unit.names.first().copied().unwrap_or_default();
        let one = parse::<Q>(&format!("{value} {name}")).map(Dimensioned::si);
        let more = parse::<Q>(&format!("{} {name}", value * factor)).map(Dimensioned::si);
        let (Ok(one), Ok(more)) = (one, more) else { return Err(TestCaseError::fail(name)) };
        prop_assert!((more - one * factor).abs() <= ROUNDING * more.abs(), "{} {}", one, more);
    }
    Ok(())
}

fn sign_is_kept<Q: Dimensioned>(value: f64) -> Outcome {
    for unit in Q::UNITS.iter().filter(|unit| !unit.has_offset() && Q::ENTRY.lowest.is_none()) {
        let text = format!("{value} {}", unit.symbol);
        prop_assert_eq!(parse_signed::<Q>(&text, Sign::NotNegative, Q::ARTICLE).is_ok(), value >= 0.0);
        prop_assert_eq!(parse_signed::<Q>(&text, Sign::Positive, Q::ARTICLE).is_ok(), value > 0.0);
        prop_assert!(parse_signed::<Q>(&text, Sign::Any, Q::ARTICLE).is_ok());
    }
    Ok(())
}

/// Pieces of quantities in any order, so that most of a text is nearly right.
fn near_valid() -> impl Strategy<Value = String> {
    let names: Vec<&'static str> = QUANTITIES
        .iter()
        .flat_map(|entry: &&Entry| entry.units)
        .flat_map(|unit: &Unit| unit.names.iter().copied())
        .collect();
    let piece = prop_oneof![
        3 => proptest::sample::select(names).prop_map(str::to_owned),
        3 => "[0-9]{1,4}",
        1 => "[0-9]{1,3}[.,/ -][0-9]{1,3}",
        1 => "[-−+.,/^·* @'\"°²³½¾eE%]{1,2}",
        2 => Just(" ".to_owned()),
        1 => "\\PC",
    ];
    proptest::collection::vec(piece, 0..7).prop_map(|pieces| pieces.concat())
}

proptest! {
    #[test]
    fn exact_text_reads_back_to_the_last_bit(si in number()) {
        for_each_quantity!(round_trip(si));
    }

    #[test]
    fn exact_text_keeps_the_unit_that_was_written(value in -1e4..1e4) {
        for (system, unit) in [(System::Us, "in"), (System::Si, "mm")] {
            let text = parse::<Length>(&format!("{value} {unit}")).map(|length| exact(length, system));
            prop_assert!(text.as_ref().is_ok_and(|text| text.ends_with(unit)), "{:?}", text);
        }
    }

    #[test]
    fn shown_text_reads_back_near(si in number()) {
        for_each_quantity!(shown_text_is_near(si));
    }

    #[test]
    fn any_text_is_read_or_explained(text in any::<String>()) {
        for_each_quantity!(fault_is_inside(&text));
    }

    #[test]
    fn nearly_right_text_is_read_or_explained(text in near_valid()) {
        for_each_quantity!(fault_is_inside(&text));
    }

    #[test]
    fn every_name_of_a_unit_means_the_same(value in (-100_000_i32..100_000).prop_map(|n| f64::from(n) / 100.0)) {
        for_each_quantity!(all_forms_agree(value));
    }

    #[test]
    fn a_multiple_of_the_number_is_a_multiple_of_the_quantity(value in 1e-3..1e3, factor in 1e-3..1e3) {
        for_each_quantity!(scales(value, factor));
    }

    #[test]
    fn a_sign_is_refused_exactly_where_it_is_not_due(value in prop_oneof![-1e3..1e3, Just(0.0)]) {
        for_each_quantity!(sign_is_kept(value));
    }

    #[test]
    fn feet_and_inches_are_inches(feet in 0_u32..1000, inches in 0_u32..12, sixteenths in 1_u32..16) {
        let all = f64::from(feet * 12 + inches) + f64::from(sixteenths) / 16.0;
        let expected = parse::<Length>(&format!("{all} in")).map(Dimensioned::si);
        for text in [
            format!("{feet} ft {inches}-{sixteenths}/16 in"),
            format!("{feet}' {inches} {sixteenths}/16\""),
            format!("{feet}'-{inches} {sixteenths}/16″"),
        ] {
            prop_assert_eq!(parse::<Length>(&text).map(Dimensioned::si), expected.clone(), "{}", text);
        }
        let negative = parse::<Length>(&format!("-{feet} ft {inches}-{sixteenths}/16 in")).map(|q| -q.si());
        prop_assert_eq!(negative, expected);
    }
}

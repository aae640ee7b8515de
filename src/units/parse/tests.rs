use super::{
    super::{
        Acceleration, ArealMassDensity, Curvature, Dimensioned, Force, Length, Mass, MassDensity, Pressure, Ratio,
        TemperatureCoefficient, TemperatureInterval, ThermodynamicTemperature, Time, Torque, Velocity,
    },
    ParseError, Sign, parse, parse_prefix, parse_signed,
};

fn si<Q: Dimensioned>(text: &str) -> f64 {
    parse::<Q>(text).map_or_else(|error| unreachable!("{text}: {error}"), Dimensioned::si)
}

fn same<Q: Dimensioned>(texts: &[&str], expected: f64) {
    for text in texts {
        assert_eq!(si::<Q>(text).to_bits(), expected.to_bits(), "{text}: {} for {expected}", si::<Q>(text));
    }
}

fn fault<Q: Dimensioned>(text: &str) -> ParseError {
    parse::<Q>(text).err().unwrap_or_else(|| unreachable!("{text} was accepted"))
}

/// Text, the part at fault, a part of the message, the replacement.
fn faults<Q: Dimensioned>(rows: &[(&str, &str, &str, Option<&str>)]) {
    for (text, at_fault, message, replacement) in rows {
        let error = fault::<Q>(text);
        assert_eq!(&text[error.range.clone()], *at_fault, "{text}: {error}");
        assert!(error.message.contains(message), "{text}: {error}");
        assert_eq!(error.replacement.as_deref(), *replacement, "{text}: {error}");
        if let Some(good) = &error.replacement {
            assert!(parse::<Q>(good).is_ok(), "{text}: {good} is offered and wrong");
        }
    }
}

#[test]
fn lengths_as_they_stand_on_drawings() {
    same::<Length>(
        &["38.1 mm", "38.1mm", " 38.1  mm ", "1.5 in", "1.5in", "1-1/2 in", "1 1/2\"", "1½ in", "1½″", "1.5''"],
        0.0381,
    );
    same::<Length>(
        &["5 ft 6 in", "5' 6\"", "5'6\"", "5’6”", "5ft6in", "5 ft, 6 in".replace(',', "").as_str(), "66 in", "5'-6\""],
        1.6764,
    );
    same::<Length>(&["-5 ft 6 in", "−5' 6\"", "-66 in"], -1.6764);
    same::<Length>(&["5'6-1/2\"", "5' 6 1/2\"", "5 ft 6½ in", "66.5 in"], 1.6891);
    same::<Length>(&["1 m 20 cm", "120 cm", "1.2 m", "1.2e3 mm"], 1.2);
    same::<Length>(&["9 ft 2 in"], 2.794);
}

#[test]
fn the_ways_to_write_a_power_and_a_product() {
    same::<Pressure>(&["2 N/mm2", "2 N/mm²", "2 N/mm^2", "2N / mm2", "2 MPa", "2 MN/m2"], 2e6);
    same::<MassDensity>(&["80 kg/m3", "80kg/m³", "80 kg/m^3", "0.08 g/cm3", "0.08 g/cc"], 80.0);
    same::<MassDensity>(&["7 lb/ft3", "7 pcf", "7 lb/ft³", "7 lbs/ft^3"], si::<MassDensity>("7 pcf"));
    same::<Torque>(&["20 N·m", "20 N*m", "20 N m", "20 Nm", "20 N-m", "20 N.m", "20 N⋅m"], 20.0);
    same::<Torque>(&["10 lbf·ft", "10 lbf ft", "10 ft-lb", "10 ft lbf"], si::<Torque>("10 ft·lb"));
    same::<Torque>(&["1 lbf·ft", "12 in-lb"], 1.3558179483314004);
    same::<TemperatureCoefficient>(
        &["23e-6 1/K", "23 1e-6/K", "23 ppm/K", "23 ×10⁻⁶/K", "23 10^-6/K", "23e-6/K"],
        23e-6,
    );
    same::<Curvature>(&["0.5 1/m", "0.5/m", "0.5 m^-1", "0.5 m⁻¹"], 0.5);
    same::<Acceleration>(&["3 g", "29.41995 m/s2"], 29.41995);
}

#[test]
fn offsets_belong_to_temperatures_and_not_to_differences() {
    same::<ThermodynamicTemperature>(&["32 °F", "0 °C", "0 degC", "32 F", "273.15 K", "0 ºC"], 273.15);
    same::<TemperatureInterval>(&["20 K", "20 °C", "36 °F"], 20.0);
    faults::<ThermodynamicTemperature>(&[("-300 °C", "-300 °C", "absolute zero", None)]);
}

#[test]
fn masses_speeds_times_ratios() {
    same::<Mass>(&["2 lb 4 oz", "36 oz", "2.25 lb"], 1.0205828325);
    same::<Velocity>(&["45 kn", "45 knots", "45 kt"], 23.15);
    same::<Time>(&["1 h 30 min", "90 min", "5400 s"], 5400.0);
    same::<Ratio>(&["0.35", "35 %", "35%", "7/20", " 0.35 "], 0.35);
    same::<ArealMassDensity>(&["600 g/m2", "600 gsm", "0.6 kg/m²"], 0.6);
}

#[test]
fn a_bare_number_is_offered_in_both_systems() {
    faults::<Length>(&[("600", "600", "a length needs a unit", None), (" 600 ", "600", "needs a unit", None)]);
    assert_eq!(fault::<Length>("600").help.as_deref(), Some("did you mean `600 mm` or `600 in`?"));
    assert_eq!(fault::<Pressure>("80").help.as_deref(), Some("did you mean `80 MPa` or `80 psi`?"));
    faults::<Length>(&[
        ("5 ft 6", "6", "`6` needs a unit", Some("5 ft 6 in")),
        ("5'6", "6", "needs a unit", Some("5'6 in")),
    ]);
}

#[test]
fn commas_spaces_and_ranges_in_a_number() {
    faults::<Length>(&[
        ("1,5 mm", ",", "decimal point", Some("1.5 mm")),
        ("0,500 mm", ",", "decimal point", Some("0.500 mm")),
        (",5 mm", ",", "decimal sign", Some("0.5 mm")),
        ("1,500 mm", ",", "decimal point", None),
        ("1,500,000 mm", ",", "commas", Some("1500000 mm")),
        ("1,234.5 mm", ",", "commas", Some("1234.5 mm")),
        ("1.234,5 mm", ",", "commas", Some("1234.5 mm")),
        ("1.2.3 mm", ".", "one decimal point", None),
        ("1 500 mm", "1 500", "two numbers", Some("1500 mm")),
        ("1\u{202f}500 mm", "1\u{202f}500", "two numbers", Some("1500 mm")),
        ("5 6 in", "5 6", "two numbers", None),
        ("3-4 mm", "3-4", "not a range", None),
        ("1 / 2 in", "1 / 2", "no space", Some("1/2 in")),
        ("1.5/2 in", "1.5/2", "two whole numbers", None),
        ("5×10³ mm", "5×10³", "written with `e`", Some("5e3 mm")),
        ("5 * 10^-3 m", "5 * 10^-3", "written with `e`", Some("5e-3 m")),
        ("1_000 mm", "_000", "unknown unit", None),
        ("1 500,5 mm", "1 500", "two numbers", None),
    ]);
    assert_eq!(fault::<Length>("1,500 mm").help.as_deref(), Some("did you mean `1.500 mm` or `1500 mm`?"));
    faults::<Ratio>(&[("0,35", ",", "decimal point", Some("0.35"))]);
}

#[test]
fn a_unit_of_another_quantity_is_named() {
    faults::<MassDensity>(&[("7 psi", "psi", "`psi` is a unit of pressure, but a density is needed here", None)]);
    faults::<Length>(&[
        ("5 m2", "m2", "unit of area", None),
        ("5 ft lbf", "ft lbf", "unit of torque", None),
        ("5 kg", "kg", "unit of mass", None),
    ]);
    faults::<Force>(&[
        ("200 lb", "lb", "unit of mass", Some("200 lbf")),
        ("200 kg", "kg", "unit of mass", Some("200 kgf")),
        ("5 N m", "N m", "unit of torque", None),
    ]);
    faults::<Pressure>(&[("20 lb/ft2", "lb/ft2", "unit of mass per area", Some("20 lbf/ft2"))]);
    faults::<Velocity>(&[("25 kN", "kN", "unit of force", Some("25 kn"))]);
    faults::<ArealMassDensity>(&[("600 g", "g", "unit of mass", Some("600 g/m2"))]);
    faults::<MassDensity>(&[("80 kg", "kg", "unit of mass", Some("80 kg/m3")), ("5 lb", "lb", "unit of mass", None)]);
    faults::<Ratio>(&[("3 mm", "mm", "a ratio is needed here", None)]);
}

#[test]
fn ounces_of_cloth_and_of_mat_are_told_apart() {
    let error = fault::<ArealMassDensity>("18 oz");
    assert_eq!(error.range, 3..5);
    assert!(error.message.contains("mat is sold in oz/ft2, cloth in oz/yd2"));
    assert_eq!(error.help.as_deref(), Some("write `18 oz/ft2` for mat or `18 oz/yd2` for cloth"));
    assert!(parse::<Mass>("18 oz").is_ok());
}

#[test]
fn misspelt_units_are_corrected() {
    faults::<Pressure>(&[
        ("3 Mpa", "Mpa", "unknown unit of pressure: `Mpa`", Some("3 MPa")),
        ("3 Pa3x", "Pa3x", "unknown unit", None),
        ("3 PSI", "PSI", "unknown unit", Some("3 psi")),
        ("3 kpsi", "kpsi", "unknown unit", Some("3 ksi")),
    ]);
    faults::<Acceleration>(&[("3g4ft", "g4ft", "unknown unit", None)]);
    faults::<Velocity>(&[("40 MPH", "MPH", "unknown", Some("40 mph")), ("40 Kn", "Kn", "unknown", Some("40 kn"))]);
    faults::<Length>(&[
        ("3/4 inn", "inn", "unknown", Some("3/4 in")),
        ("3 milimetres", "milimetres", "unknown", Some("3 millimetres")),
        ("3 furlong", "furlong", "unknown", None),
    ]);
    assert!(fault::<Length>("3 furlong").help.is_some_and(|help| help.starts_with("units of length: in, ft")));
}

#[test]
fn a_guess_that_would_change_the_size_is_not_made() {
    faults::<Pressure>(&[
        ("5 kg/cm2", "kg/cm2", "unknown", Some("5 kgf/cm2")),
        ("5 kgf/m2", "kgf/m2", "unknown", None),
        ("5 hPa", "hPa", "unknown", None),
    ]);
    faults::<Velocity>(&[("5 mps", "mps", "unknown", None), ("5 km", "km", "unknown", None)]);
    faults::<Length>(&[
        ("5 nm", "nm", "unknown", None),
        ("5 mi", "mi", "unknown", None),
        ("5 km", "km", "unknown", None),
    ]);
    faults::<MassDensity>(&[("5 kg/mm3", "kg/mm3", "unknown", None), ("5 g/m3", "g/m3", "unknown", None)]);
    faults::<Length>(&[("38.1 m m", "m", "does not belong", None)]);
    faults::<TemperatureCoefficient>(&[("23e-6 1/k", "1/k", "unknown", Some("23e-6 1/K"))]);
    assert!(fault::<TemperatureCoefficient>("23e-6").help.is_some_and(|help| help.contains("`23e-6 1/K`")));
    assert!(fault::<TemperatureCoefficient>("23").help.is_some_and(|help| help.contains("`23 ppm/K`")));
}

#[test]
fn what_is_no_number_is_said_to_be_none() {
    faults::<Length>(&[
        ("", "", "a length is missing", None),
        ("  ", "  ", "a length is missing", None),
        ("nan mm", "nan", "finite", None),
        ("-inf m", "-inf", "finite", None),
        ("1e999 m", "1e999", "too large", None),
        ("1e-400 m", "1e-400", "too small", None),
        ("1/0 in", "1/0", "zero below the line", None),
        ("1 5/4 in", "1 5/4", "less than one", None),
        ("long", "long", "starts with a number", None),
        ("mm 600", "mm", "the unit comes after", Some("600 mm")),
    ]);
}

#[test]
fn text_after_a_quantity_is_refused() {
    faults::<Length>(&[
        ("5 mm thick", "thick", "does not belong", None),
        ("5 mm.", ".", "does not belong", Some("5 mm")),
        ("5 ft - 6 in", "- 6 in", "does not belong", None),
        ("6 in 5 ft", "5 ft", "the larger unit comes first", None),
        ("5 ft 20 mm", "20 mm", "do not go together", None),
    ]);
    faults::<Pressure>(&[("5 psi 3 psf", "3 psf", "one pressure is due here", None)]);
    faults::<Ratio>(&[("0.3 half", "half", "does not belong", None)]);
}

#[test]
fn a_prefix_ends_where_the_quantity_ends() {
    let taken = |text| parse_prefix::<ArealMassDensity>(text).map(|(q, used)| (q.si(), used));
    assert_eq!(taken("600 g/m2 @ 45"), Ok((0.6, 8)));
    assert_eq!(taken("600g/m²@45"), Ok((0.6, 8)));
    assert_eq!(parse_prefix::<Length>("5 ft 6 @ x").map(|(q, used)| (q.si(), used)), Ok((1.524, 4)));
    assert_eq!(parse_prefix::<Ratio>("0.5 of it").map(|(q, used)| (q.si(), used)), Ok((0.5, 3)));
    assert!(parse_prefix::<ArealMassDensity>("600 @ 45").is_err_and(|error| error.message.contains("needs a unit")));
}

#[test]
fn signs_that_are_not_due() {
    let signed = |text, sign| parse_signed::<Length>(text, sign, "a thickness").map_err(|error| error.message);
    assert_eq!(signed("-3 mm", Sign::NotNegative), Err("a thickness cannot be negative".to_owned()));
    assert_eq!(signed("0 mm", Sign::Positive), Err("a thickness cannot be zero".to_owned()));
    assert!(signed("0 mm", Sign::NotNegative).is_ok() && signed("-3 mm", Sign::Any).is_ok());
}

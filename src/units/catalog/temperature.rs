//! Temperature, difference of temperatures, thermal expansion.

use super::{
    Entry, Step, Unit,
    factor::{FAHRENHEIT, MICRO, ONE},
};

pub(super) const TEMPERATURE: Entry = Entry {
    name: "temperature",
    article: "a temperature",
    units: &[
        Unit::us("°F", &["°F", "degF", "F", "℉"], FAHRENHEIT).with_offset(459.67),
        Unit::si("°C", &["°C", "degC", "C", "℃"], ONE).with_offset(273.15),
        Unit::si("K", &["K", "kelvin"], ONE),
    ],
    usual: ["°C", "°F"],
    us: &[Step::new("°F", 0.0, 1)],
    si: &[Step::new("°C", 0.0, 1)],
    compound: false,
    lowest: Some(0.0),
};

/// A degree here is a step of the scale, so the zero of the scale does not come in.
pub(super) const INTERVAL: Entry = Entry {
    name: "temperature difference",
    article: "a temperature difference",
    units: &[
        Unit::us("°F", &["°F", "degF", "F", "F°", "℉"], FAHRENHEIT),
        Unit::si("K", &["K", "kelvin", "°C", "degC", "C", "C°", "℃"], ONE),
    ],
    usual: ["K", "°F"],
    us: &[Step::new("°F", 0.0, 1)],
    si: &[Step::new("K", 0.0, 1)],
    compound: false,
    lowest: None,
};

pub(super) const COEFFICIENT: Entry = Entry {
    name: "thermal expansion",
    article: "a thermal expansion",
    units: &[
        Unit::us("1/°F", &["1/°F", "/°F", "1/F", "/F", "1/degF", "/degF", "in/in/°F", "in/in/F"], ONE.over(FAHRENHEIT)),
        Unit::us(
            "ppm/°F",
            &[
                "ppm/°F",
                "ppm/F",
                "1e-6/°F",
                "1e-6/F",
                "10-6/°F",
                "·10-6/°F",
                "µin/in/°F",
                "uin/in/°F",
                "µin/in/F",
                "uin/in/F",
            ],
            MICRO.over(FAHRENHEIT),
        ),
        Unit::si("1/K", &["1/K", "/K", "K-1", "1/°C", "/°C", "1/degC", "/degC"], ONE),
        Unit::si(
            "ppm/K",
            &[
                "ppm/K",
                "1e-6/K",
                "10-6/K",
                "·10-6/K",
                "ppm/°C",
                "1e-6/°C",
                "10-6/°C",
                "·10-6/°C",
                "µm/m/K",
                "um/m/K",
                "µm/m/°C",
                "um/m/°C",
            ],
            MICRO,
        ),
    ],
    usual: ["ppm/K", "ppm/°F"],
    us: &[Step::new("ppm/°F", 0.0, 2)],
    si: &[Step::new("ppm/K", 0.0, 2)],
    compound: false,
    lowest: None,
};

//! Time, frequency, speed, acceleration.

use super::{
    Entry, Step, Unit,
    factor::{DAY, FT, Factor, GRAVITY, HOUR, KILO, MINUTE, ONE, YD},
};

const TIME_STEPS: &[Step] = &[
    Step::new("s", 0.0, 3),
    Step::new("min", 120.0, 1),
    Step::new("h", 7_200.0, 1),
    Step::new("day", 172_800.0, 1),
    Step::new("year", 63_115_200.0, 1),
];

pub(super) const TIME: Entry = Entry {
    name: "time",
    article: "a time",
    units: &[
        Unit::any("s", &["s", "sec", "second", "seconds"], ONE),
        Unit::any("min", &["min", "minute", "minutes"], MINUTE),
        Unit::any("h", &["h", "hr", "hour", "hours"], HOUR),
        Unit::any("day", &["day", "d", "days"], DAY),
        // 365.25 days, the Julian year: our assumption, and immaterial for the duration of a load.
        Unit::any("year", &["year", "years", "yr", "yrs"], DAY.times(Factor::new(36_525, 100))),
    ],
    usual: ["s", "h"],
    us: TIME_STEPS,
    si: TIME_STEPS,
    compound: true,
    lowest: None,
};

pub(super) const FREQUENCY: Entry = Entry {
    name: "frequency",
    article: "a frequency",
    units: &[
        Unit::any("Hz", &["Hz", "1/s", "/s"], ONE),
        Unit::any("kHz", &["kHz"], KILO),
        Unit::any("rpm", &["rpm", "r/min", "1/min"], ONE.over(MINUTE)),
    ],
    usual: ["Hz", "rpm"],
    us: &[Step::new("Hz", 0.0, 2)],
    si: &[Step::new("Hz", 0.0, 2)],
    compound: false,
    lowest: None,
};

pub(super) const VELOCITY: Entry = Entry {
    name: "speed",
    article: "a speed",
    units: &[
        // 1 mile is 1760 yd.
        Unit::us("mph", &["mph", "mi/h"], YD.times(Factor::new(1_760, 1)).over(HOUR)),
        Unit::us("ft/s", &["ft/s", "fps"], FT),
        // International nautical mile, 1852 m.
        Unit::any("kn", &["kn", "kt", "kts", "knot", "knots"], Factor::new(1_852, 1).over(HOUR)),
        Unit::si("m/s", &["m/s"], ONE),
        Unit::si("km/h", &["km/h", "kph", "kmh"], KILO.over(HOUR)),
    ],
    usual: ["kn", "mph"],
    us: &[Step::new("mph", 0.0, 2)],
    si: &[Step::new("m/s", 0.0, 2)],
    compound: false,
    lowest: None,
};

pub(super) const ACCELERATION: Entry = Entry {
    name: "acceleration",
    article: "an acceleration",
    units: &[
        Unit::us("ft/s²", &["ft/s2"], FT),
        Unit::si("m/s²", &["m/s2"], ONE),
        Unit::any("g", &["g", "gn", "g0"], GRAVITY),
    ],
    usual: ["m/s2", "g"],
    us: &[Step::new("ft/s2", 0.0, 2)],
    si: &[Step::new("m/s2", 0.0, 2)],
    compound: false,
    lowest: None,
};

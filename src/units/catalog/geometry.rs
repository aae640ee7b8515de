//! Length, area, volume, angle.

use super::{
    Entry, Step, Unit,
    factor::{CENTI, FT, GALLON, IN, MICRO, MILLI, ONE, YD},
};

pub(super) const LENGTH: Entry = Entry {
    name: "length",
    article: "a length",
    units: &[
        Unit::us("in", &["in", "inch", "inches", "in.", "\"", "''"], IN),
        Unit::us("ft", &["ft", "foot", "feet", "ft.", "'"], FT),
        Unit::us("yd", &["yd", "yard", "yards"], YD),
        Unit::us("mil", &["mil", "mils", "thou"], IN.times(MILLI)),
        Unit::si("mm", &["mm", "millimetre", "millimetres", "millimeter", "millimeters"], MILLI),
        Unit::si("cm", &["cm", "centimetre", "centimetres", "centimeter", "centimeters"], CENTI),
        Unit::si("m", &["m", "metre", "metres", "meter", "meters"], ONE),
        Unit::si("µm", &["µm", "um", "micron", "microns"], MICRO),
    ],
    usual: ["mm", "in"],
    us: &[Step::new("in", 0.0, 3)],
    si: &[Step::new("mm", 0.0, 2)],
    compound: true,
    lowest: None,
};

pub(super) const AREA: Entry = Entry {
    name: "area",
    article: "an area",
    units: &[
        Unit::us("in²", &["in2", "sq·in", "sqin"], IN.squared()),
        Unit::us("ft²", &["ft2", "sq·ft", "sqft"], FT.squared()),
        Unit::us("yd²", &["yd2", "sq·yd", "sqyd"], YD.squared()),
        Unit::si("mm²", &["mm2", "sq·mm"], MILLI.squared()),
        Unit::si("cm²", &["cm2", "sq·cm"], CENTI.squared()),
        Unit::si("m²", &["m2", "sq·m"], ONE),
    ],
    usual: ["m2", "ft2"],
    us: &[Step::new("in2", 0.0, 4), Step::new("ft2", 0.09290304, 2)],
    si: &[Step::new("mm2", 0.0, 2), Step::new("m2", 0.01, 4)],
    compound: false,
    lowest: None,
};

pub(super) const VOLUME: Entry = Entry {
    name: "volume",
    article: "a volume",
    units: &[
        Unit::us("in³", &["in3", "cu·in"], IN.cubed()),
        Unit::us("ft³", &["ft3", "cu·ft"], FT.cubed()),
        Unit::us("gal", &["gal", "gallon", "gallons"], GALLON),
        Unit::si("mm³", &["mm3"], MILLI.cubed()),
        Unit::si("cm³", &["cm3", "cc", "mL", "ml"], CENTI.cubed()),
        Unit::si("L", &["L", "l", "litre", "litres", "liter", "liters"], MILLI),
        Unit::si("m³", &["m3"], ONE),
    ],
    usual: ["L", "gal"],
    us: &[Step::new("in3", 0.0, 4), Step::new("ft3", 0.028316846592, 3)],
    si: &[Step::new("cm3", 0.0, 3), Step::new("L", 0.001, 3), Step::new("m3", 1.0, 3)],
    compound: false,
    lowest: None,
};

pub(super) const ANGLE: Entry = Entry {
    name: "angle",
    article: "an angle",
    units: &[
        Unit {
            symbol: "°",
            names: &["deg", "°", "degree", "degrees"],
            system: None,
            numerator: std::f64::consts::PI,
            denominator: 180.0,
            offset: 0.0,
        },
        Unit::any("rad", &["rad", "radian", "radians"], ONE),
    ],
    usual: ["deg", "rad"],
    us: &[Step::new("deg", 0.0, 2)],
    si: &[Step::new("deg", 0.0, 2)],
    compound: false,
    lowest: None,
};

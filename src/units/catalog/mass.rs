//! Mass, and mass per volume, area and length.

use super::{
    Entry, Step, Unit,
    factor::{CENTI, FT, IN, KILO, LB, MILLI, ONE, OZ, YD},
};

pub(super) const MASS: Entry = Entry {
    name: "mass",
    article: "a mass",
    units: &[
        Unit::us("lb", &["lb", "lbs", "lbm", "pound", "pounds", "lb."], LB),
        Unit::us("oz", &["oz", "ounce", "ounces", "oz."], OZ),
        Unit::si("kg", &["kg", "kilogram", "kilograms"], ONE),
        Unit::si("g", &["g", "gram", "grams"], MILLI),
        Unit::si("t", &["t", "tonne", "tonnes"], KILO),
    ],
    usual: ["kg", "lb"],
    us: &[Step::new("oz", 0.0, 2), Step::new("lb", 0.45359237, 2)],
    si: &[Step::new("g", 0.0, 1), Step::new("kg", 1.0, 2)],
    compound: true,
    lowest: None,
};

pub(super) const DENSITY: Entry = Entry {
    name: "density",
    article: "a density",
    units: &[
        Unit::us("lb/ft³", &["lb/ft3", "pcf", "lbs/ft3", "lbm/ft3", "lb/cu·ft", "lb/cuft"], LB.over(FT.cubed())),
        Unit::us("lb/in³", &["lb/in3", "lbs/in3", "lbm/in3"], LB.over(IN.cubed())),
        Unit::si("kg/m³", &["kg/m3"], ONE),
        Unit::si("g/cm³", &["g/cm3", "g/cc", "kg/L", "kg/l", "g/mL", "g/ml"], MILLI.over(CENTI.cubed())),
    ],
    usual: ["kg/m3", "lb/ft3"],
    us: &[Step::new("lb/ft3", 0.0, 2)],
    si: &[Step::new("kg/m3", 0.0, 1)],
    compound: false,
    lowest: None,
};

pub(super) const AREAL: Entry = Entry {
    name: "mass per area",
    article: "a mass per area",
    units: &[
        Unit::us("oz/yd²", &["oz/yd2", "oz/sq·yd", "oz/sqyd"], OZ.over(YD.squared())),
        Unit::us("oz/ft²", &["oz/ft2", "oz/sq·ft", "oz/sqft"], OZ.over(FT.squared())),
        Unit::us("lb/ft²", &["lb/ft2", "lbs/ft2", "lbm/ft2", "lb/sq·ft", "lb/sqft"], LB.over(FT.squared())),
        Unit::si("g/m²", &["g/m2", "gsm"], MILLI),
        Unit::si("kg/m²", &["kg/m2"], ONE),
    ],
    usual: ["g/m2", "oz/yd2"],
    // Fabrics are named in grams and ounces, whole panels in kilograms and pounds.
    us: &[Step::new("oz/yd2", 0.0, 2), Step::new("lb/ft2", 2.0, 3)],
    si: &[Step::new("g/m2", 0.0, 1), Step::new("kg/m2", 2.0, 2)],
    compound: false,
    lowest: None,
};

pub(super) const LINEAR: Entry = Entry {
    name: "mass per length",
    article: "a mass per length",
    units: &[
        Unit::us("lb/ft", &["lb/ft", "lbs/ft", "lbm/ft"], LB.over(FT)),
        Unit::us("lb/in", &["lb/in", "lbs/in", "lbm/in"], LB.over(IN)),
        Unit::si("kg/m", &["kg/m"], ONE),
        Unit::si("g/m", &["g/m"], MILLI),
    ],
    usual: ["kg/m", "lb/ft"],
    us: &[Step::new("lb/ft", 0.0, 3)],
    si: &[Step::new("kg/m", 0.0, 3)],
    compound: false,
    lowest: None,
};

//! Quantities of panels: per unit width, per unit depth, and plain ratios.

use super::{
    Entry, Step, Unit,
    factor::{CENTI, FT, IN, KILO, LBF, MEGA, MILLI, ONE},
};

pub(super) const RATIO: Entry = Entry {
    name: "ratio",
    article: "a ratio",
    units: &[Unit::any("", &[""], ONE), Unit::any("%", &["%", "percent"], CENTI)],
    usual: ["", "%"],
    us: &[Step::new("", 0.0, 9)],
    si: &[Step::new("", 0.0, 9)],
    compound: false,
    lowest: None,
};

pub(super) const FORCE_PER_WIDTH: Entry = Entry {
    name: "force per width",
    article: "a force per width",
    units: &[
        Unit::us("lbf/in", &["lbf/in", "pli"], LBF.over(IN)),
        Unit::us("lbf/ft", &["lbf/ft", "plf"], LBF.over(FT)),
        Unit::si("N/m", &["N/m"], ONE),
        Unit::si("N/mm", &["N/mm"], KILO),
        Unit::si("kN/m", &["kN/m"], KILO),
    ],
    usual: ["N/mm", "lbf/in"],
    us: &[Step::new("lbf/in", 0.0, 3)],
    si: &[Step::new("N/m", 0.0, 2), Step::new("N/mm", 1e3, 3)],
    compound: false,
    lowest: None,
};

pub(super) const MOMENT_PER_WIDTH: Entry = Entry {
    name: "moment per width",
    article: "a moment per width",
    units: &[
        Unit::us(
            "lbf·in/in",
            &["lbf·in/in", "in·lbf/in", "lbf·ft/ft", "ft·lbf/ft", "lb·in/in", "in·lb/in", "lbf"],
            LBF,
        ),
        Unit::si("N·m/m", &["N·m/m", "Nm/m", "N·mm/mm", "Nmm/mm", "N"], ONE),
        Unit::si("kN·m/m", &["kN·m/m", "kNm/m", "kN"], KILO),
    ],
    usual: ["N m/m", "lbf in/in"],
    us: &[Step::new("lbf·in/in", 0.0, 3)],
    si: &[Step::new("N·m/m", 0.0, 3)],
    compound: false,
    lowest: None,
};

pub(super) const RIGIDITY: Entry = Entry {
    name: "flexural rigidity",
    article: "a flexural rigidity",
    units: &[
        Unit::us("lbf·in", &["lbf·in", "in·lbf", "lbf·in2/in", "in2·lbf/in"], LBF.times(IN)),
        Unit::si("N·m", &["N·m", "Nm", "N·m2/m", "Nm2/m"], ONE),
        Unit::si("kN·m", &["kN·m", "kNm", "kN·m2/m", "kNm2/m"], KILO),
        Unit::si("N·mm", &["N·mm", "Nmm", "N·mm2/mm", "Nmm2/mm"], MILLI),
    ],
    usual: ["N m", "lbf in"],
    us: &[Step::new("lbf·in", 0.0, 2)],
    si: &[Step::new("N·m", 0.0, 2)],
    compound: false,
    lowest: None,
};

pub(super) const CURVATURE: Entry = Entry {
    name: "curvature",
    article: "a curvature",
    units: &[
        Unit::us("1/in", &["1/in", "/in", "in-1"], ONE.over(IN)),
        Unit::us("1/ft", &["1/ft", "/ft", "ft-1"], ONE.over(FT)),
        Unit::si("1/m", &["1/m", "/m", "m-1"], ONE),
        Unit::si("1/mm", &["1/mm", "/mm", "mm-1"], ONE.over(MILLI)),
    ],
    usual: ["1/m", "1/in"],
    us: &[Step::new("1/in", 0.0, 9)],
    si: &[Step::new("1/m", 0.0, 9)],
    compound: false,
    lowest: None,
};

pub(super) const FOUNDATION: Entry = Entry {
    name: "foundation modulus",
    article: "a foundation modulus",
    units: &[
        Unit::us("lbf/in³", &["lbf/in3", "psi/in", "pci"], LBF.over(IN.cubed())),
        Unit::si("N/m³", &["N/m3", "Pa/m"], ONE),
        Unit::si("kN/m³", &["kN/m3", "kPa/m"], KILO),
        Unit::si("MN/m³", &["MN/m3", "MPa/m"], MEGA),
        Unit::si("N/mm³", &["N/mm3", "MPa/mm"], ONE.over(MILLI.cubed())),
    ],
    usual: ["N/mm3", "psi/in"],
    us: &[Step::new("lbf/in3", 0.0, 3)],
    si: &[Step::new("N/mm3", 0.0, 9)],
    compound: false,
    lowest: None,
};

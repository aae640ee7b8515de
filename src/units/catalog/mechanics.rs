//! Force, pressure, torque.

use super::{
    Entry, Step, Unit,
    factor::{CENTI, FT, Factor, GIGA, GRAVITY, IN, KILO, LBF, MEGA, MILLI, ONE, PSI},
};

pub(super) const FORCE: Entry = Entry {
    name: "force",
    article: "a force",
    units: &[
        Unit::us("lbf", &["lbf"], LBF),
        Unit::us("kip", &["kip", "kips"], LBF.times(KILO)),
        Unit::si("N", &["N", "newton", "newtons"], ONE),
        Unit::si("kN", &["kN"], KILO),
        Unit::si("kgf", &["kgf"], GRAVITY),
    ],
    usual: ["N", "lbf"],
    us: &[Step::new("lbf", 0.0, 2)],
    si: &[Step::new("N", 0.0, 1), Step::new("kN", 10e3, 2)],
    compound: false,
    lowest: None,
};

pub(super) const PRESSURE: Entry = Entry {
    name: "pressure",
    article: "a pressure",
    units: &[
        Unit::us("psi", &["psi", "lbf/in2"], PSI),
        Unit::us("ksi", &["ksi"], PSI.times(KILO)),
        Unit::us("Msi", &["Msi"], PSI.times(MEGA)),
        Unit::us("psf", &["psf", "lbf/ft2"], LBF.over(FT.squared())),
        Unit::si("Pa", &["Pa", "N/m2"], ONE),
        Unit::si("kPa", &["kPa", "kN/m2"], KILO),
        Unit::si("MPa", &["MPa", "N/mm2", "MN/m2"], MEGA),
        Unit::si("GPa", &["GPa", "kN/mm2"], GIGA),
        Unit::si("kgf/cm²", &["kgf/cm2"], GRAVITY.over(CENTI.squared())),
        Unit::si("bar", &["bar"], Factor::new(100_000, 1)),
    ],
    usual: ["MPa", "psi"],
    us: &[Step::new("psi", 0.0, 4), Step::new("ksi", 68_947_572.931_68, 2), Step::new("Msi", 6_894_757_293.168, 3)],
    si: &[Step::new("Pa", 0.0, 2), Step::new("kPa", 1e3, 3), Step::new("MPa", 1e5, 3), Step::new("GPa", 1e9, 3)],
    compound: false,
    lowest: None,
};

pub(super) const TORQUE: Entry = Entry {
    name: "torque",
    article: "a torque",
    units: &[
        // A torque can only hold pounds of force: here `lb` is no mass.
        Unit::us("lbf·ft", &["lbf·ft", "ft·lbf", "lb·ft", "ft·lb", "ft·lbs"], LBF.times(FT)),
        Unit::us("lbf·in", &["lbf·in", "in·lbf", "lb·in", "in·lb", "in·lbs"], LBF.times(IN)),
        Unit::si("N·m", &["N·m", "Nm"], ONE),
        Unit::si("kN·m", &["kN·m", "kNm"], KILO),
        Unit::si("N·mm", &["N·mm", "Nmm"], MILLI),
    ],
    usual: ["N m", "lbf ft"],
    // Small fasteners are tightened in inch-pounds: below 10 lbf·ft.
    us: &[Step::new("lbf·in", 0.0, 2), Step::new("lbf·ft", 13.558_179_483, 2)],
    si: &[Step::new("N·m", 0.0, 3), Step::new("kN·m", 10e3, 2)],
    compound: false,
    lowest: None,
};

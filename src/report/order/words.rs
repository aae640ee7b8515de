//! Words and units that all forms of the order share.

use super::Ordered;
use crate::{
    order::{ConduitLine, FabricLine, Filling, FillingUse, FixingPart, Hardener, Rule, Seam},
    report::said::counted,
    units::{Area, ArealMassDensity, Length, Mass, System, Torque, Volume, both, show, show_in},
};

/// A length of roll or tube: in yards or metres.
pub(super) fn run(length: Length, system: System) -> String {
    // What is bought is never less than what it takes: up to the next tenth.
    let up = |unit: &str, one: Length| show_in(one * (((length / one).value * 10.0 - 1e-6).ceil() / 10.0), unit, 1);
    match system {
        System::Us => up("yd", Length::new::<uom::si::length::yard>(1.0)),
        System::Si => up("m", Length::new::<uom::si::length::meter>(1.0)),
    }
}

pub(super) fn area(area: Area, system: System) -> String {
    match system {
        System::Us => show_in(area, "ft2", 1),
        System::Si => show_in(area, "m2", 2),
    }
}

pub(super) fn mass(mass: Mass, system: System) -> String {
    match system {
        System::Us => show_in(mass, "lb", 2),
        System::Si => show_in(mass, "kg", 2),
    }
}

/// Resin or coat over the area that it is laid on.
pub(super) fn per_area(mass: ArealMassDensity, system: System) -> String {
    match system {
        System::Us => show_in(mass, "lb/ft2", 4),
        System::Si => show_in(mass, "kg/m2", 3),
    }
}

pub(super) fn volume(volume: Volume, system: System) -> String {
    match system {
        System::Us => show_in(volume, "gal", 2),
        System::Si => show_in(volume, "L", 1),
    }
}

pub(super) fn torque(torque: Torque, system: System) -> String {
    match system {
        System::Us => show_in(torque, "lbf·ft", 1),
        System::Si => show_in(torque, "N·m", 1),
    }
}

/// A fabric with its mass per area, part by part.
pub(super) fn fabric(line: &FabricLine, system: System) -> String {
    let last = line.parts.len().saturating_sub(1);
    // Mat goes by the square foot, stitched below a cloth as well: "1708" is 17 oz/yd2 of cloth with 0.75 oz/ft2 of mat.
    let is_mat = |number: usize| line.id == "mat" || line.id.ends_with("-mat") && last > 0 && number == last;
    let part = |(number, part): (usize, &crate::units::ArealMassDensity)| {
        if is_mat(number) && system == System::Us { show_in(*part, "oz/ft2", 2) } else { show(*part, system) }
    };
    let parts: Vec<String> = line.parts.iter().enumerate().map(part).collect();
    format!("{}, {}", line.name, parts.join(" + "))
}

/// What a filling is called where the file names no material.
pub(super) const fn unnamed(used: FillingUse) -> &'static str {
    match used {
        FillingUse::Bores => "Thickened resin",
        _ => "Putty",
    }
}

/// What a filling is for.
pub(super) fn filling(own: &Filling) -> String {
    let places = own.places.unwrap_or_default();
    match own.used {
        FillingUse::Joints => "joints round backing and between pieces of core".to_owned(),
        FillingUse::Grooves => "beside tubes, in grooves as deep as they are wide".to_owned(),
        FillingUse::Bores => {
            format!("{} through the core, for bolts that stand in no backing", counted(places, "bore"))
        }
        FillingUse::Potting => {
            format!("potting of {}, the insert's own volume not taken off", counted(places, "insert"))
        }
        FillingUse::Studs => format!("below {}", counted(places, "bonded stud")),
    }
}

/// How often a tube is laid, and what its mass is made of.
pub(super) fn tube(line: &ConduitLine, system: System) -> String {
    let runs = counted(line.runs, "run");
    let Some((wall, density)) = line.tube else { return runs };
    format!("{runs}, {} across, {} wall, {}", show(line.diameter, system), show(wall, system), show(density, system))
}

/// What goes with a fixing.
pub(super) fn part(part: &FixingPart, system: System) -> String {
    match part {
        FixingPart::Nut { thread, grade } => format!("nut, {thread}, {grade}"),
        FixingPart::Washer { washer, thread, metal } => format!(
            "washer for {thread}, {} across, {} thick, {metal}",
            show(washer.outside, system),
            show(washer.thickness, system)
        ),
        FixingPart::Sleeve { outside, wall, alloy } => {
            format!("sleeve, {} across, {} wall, {alloy}", show(*outside, system), show(*wall, system))
        }
        FixingPart::Insert(name) => name.clone(),
        FixingPart::Filling(name) => format!("set in {name}"),
        FixingPart::ByMaker => "length by its maker's table".to_owned(),
    }
}

pub(super) const fn hardener(kind: Hardener) -> &'static str {
    match kind {
        Hardener::Catalyst => "catalyst",
        Hardener::Hardener => "hardener",
    }
}

/// Where no seam should be.
pub(super) fn rule(rule: &Rule) -> String {
    match rule {
        Rule::MidSpan => "mid-span".to_owned(),
        Rule::Conduit(name) => format!("conduit {name}"),
        Rule::BackingEnd(name) => format!("the end of {name}"),
    }
}

/// What a seam breaks, in words; none where it breaks nothing.
pub(super) fn breaks(seam: &Seam, ordered: Ordered<'_>) -> Option<String> {
    let one = |(broken, length): &(Rule, Length)| {
        let word = if seam.runs_along(*length) { "NOT clear of" } else { "crosses" };
        format!("{word} {}, {} of it", rule(broken), show(*length, ordered.system()))
    };
    let all: Vec<String> = seam.breaks.iter().map(one).collect();
    (!all.is_empty()).then(|| all.join("; "))
}

/// The core with its density and thickness.
pub(super) fn core(ordered: Ordered<'_>) -> String {
    let (core, system) = (&ordered.top.core, ordered.system());
    format!("{}, {}, {} thick", core.material.name, show(core.material.density, system), show(core.thickness, system))
}

/// A size of a sheet.
pub(super) fn sheet([length, width]: [Length; 2], system: System) -> String {
    format!("{} by {}", show(length, system), show(width, system))
}

/// How many plies of a fabric, and how they lie.
pub(super) fn plies(line: &FabricLine, ordered: Ordered<'_>) -> String {
    let plies = if line.plies == 1 { "1 ply".to_owned() } else { format!("{} plies", line.plies) };
    let slanted = match line.along {
        None => String::new(),
        Some(along) => format!(
            "; {} cut on the slant, {} of roll if it is bought with its fibres at that angle",
            line.slanted,
            run(along, ordered.system())
        ),
    };
    format!("{plies}, {} net, {}{slanted}", area(line.net, ordered.system()), counted(line.breadths, "breadth"))
}

/// A mass in both systems.
pub(super) fn both_masses(of: Mass, ordered: Ordered<'_>) -> String {
    both(of, ordered.system())
}

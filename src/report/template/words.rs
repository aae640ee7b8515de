//! Sizes of drills and places in words.

use uom::si::length::{inch, millimeter};

use super::inch_drills::{InchDrill, nearest, of_size};
use crate::{
    advice::Drill,
    plan::FixingMark,
    units::{Length, System, show_in},
};

/// A drill by the name on its shank: a tenth of a millimetre, a fraction of an inch, a number or a letter; with its size in the
/// other system beside it.
pub(super) fn drill(diameter: Length) -> String {
    let (mm, inches) = (diameter.get::<millimeter>(), diameter.get::<inch>());
    if (mm * 10.0 - (mm * 10.0).round()).abs() < 1e-6 {
        return format!("{mm:.1} mm ({inches:.3} in)");
    }
    match of_size(diameter) {
        Some(InchDrill { name, .. }) if name.ends_with(" in") => format!("{name} ({mm:.1} mm)"),
        Some(InchDrill { name, .. }) => format!("{name} ({inches:.3} in, {mm:.2} mm)"),
        None => format!("{inches:.3} in ({mm:.2} mm)"),
    }
}

/// The same without the other.
pub(super) fn drill_alone(diameter: Length) -> String {
    let words = drill(diameter);
    words.split_once(" (").map_or(words.clone(), |(own, _)| own.to_owned())
}

/// A place along one axis, as fine as a rule is read.
pub(super) fn place(at: Length, system: System) -> String {
    match system {
        System::Us => show_in(at, "in", 2),
        System::Si => show_in(at, "mm", 1),
    }
}

/// A depth in both, whichever the shop's stop collar is marked in.
pub(super) fn depth(depth: Length) -> String {
    format!("{} ({})", show_in(depth, "mm", 1), show_in(depth, "in", 2))
}

/// One step of the work on a hole; to a shop that has drills in inches, which of them comes nearest to one in millimetres.
pub(super) fn step(step: &Drill, system: System) -> String {
    let stop = step.depth.map_or_else(String::new, |stop| format!(", stop at {}", depth(stop)));
    let near = (system == System::Us && of_size(step.diameter).is_none()).then(|| nearest(step.diameter)).flatten();
    let near = near.map_or_else(String::new, |near| {
        let over = near.inches - step.diameter.get::<inch>();
        let word = if over > 0.0 { "larger" } else { "smaller" };
        format!(", nearest in inches {} ({:.3} in), {:.3} in {word}", near.name, near.inches, over.abs())
    });
    format!("drill {}{near}{stop}: {}", drill(step.diameter), step.what)
}

/// The drills of a hole one after the other.
pub(super) fn sizes(mark: &FixingMark) -> String {
    let all: Vec<String> = mark.drills.iter().map(|drill| drill_alone(drill.diameter)).collect();
    if all.is_empty() { "none".to_owned() } else { all.join(", then ") }
}

/// How deep it goes.
pub(super) fn stop(mark: &FixingMark) -> String {
    let through = if mark.drills.is_empty() { "none" } else { "through" };
    mark.stop().map_or_else(|| through.to_owned(), |stop| show_in(stop, "mm", 1))
}

/// What stands beside a hole on the drawing, line by line.
pub(super) fn beside(mark: &FixingMark) -> Vec<String> {
    let first = if mark.drills.is_empty() {
        format!("{}: no hole", mark.number)
    } else {
        format!("{}: drill {}", mark.number, sizes(mark))
    };
    let mut lines = vec![first];
    let more: Vec<String> = mark
        .tap
        .iter()
        .map(|tap| format!("tap {tap}"))
        .chain(mark.stop().map(|stop| format!("stop {}", show_in(stop, "mm", 1))))
        .collect();
    if !more.is_empty() {
        lines.push(more.join(", "));
    }
    if mark.in_band.is_some() {
        lines.push("NEAR A CONDUIT".to_owned());
    }
    lines
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_drill_goes_by_the_name_on_its_shank() {
        let mm = Length::new::<millimeter>;
        let inches = Length::new::<inch>;
        assert_eq!(drill(mm(9.0)), "9.0 mm (0.354 in)");
        assert_eq!(drill(inches(0.3125)), "5/16 in (7.9 mm)");
        assert_eq!(drill(inches(0.257)), "F (0.257 in, 6.53 mm)");
        assert_eq!(drill(inches(0.3)), "0.300 in (7.62 mm)");
        assert_eq!(drill(inches(1.25)), "1-1/4 in (31.8 mm)");
        assert_eq!(drill(inches(1.0)), "25.4 mm (1.000 in)");
        assert_eq!(drill_alone(inches(0.203_125)), "13/64 in");
        assert_eq!(drill_alone(inches(0.201)), "no. 7");
    }

    #[test]
    fn a_drill_in_millimetres_has_its_nearest_in_inches() {
        let clearance = Drill { what: "both skins".to_owned(), diameter: Length::new::<millimeter>(9.0), depth: None };
        assert_eq!(
            step(&clearance, System::Us),
            "drill 9.0 mm (0.354 in), nearest in inches T (0.358 in), 0.004 in larger: both skins"
        );
        assert_eq!(step(&clearance, System::Si), "drill 9.0 mm (0.354 in): both skins");
    }
}

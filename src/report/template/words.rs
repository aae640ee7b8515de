//! Sizes of drills and places in words.

use uom::si::length::{inch, millimeter};

use crate::{
    advice::Drill,
    plan::FixingMark,
    units::{Length, System, show_in},
};

/// A drill by its own name: a tenth of a millimetre, a sixty-fourth or a thousandth of an inch, with the other beside it.
pub(super) fn drill(diameter: Length) -> String {
    let (mm, inches) = (diameter.get::<millimeter>(), diameter.get::<inch>());
    let sixty_fourths = (inches * 64.0).round();
    if (mm * 10.0 - (mm * 10.0).round()).abs() < 1e-6 {
        format!("{mm:.1} mm ({inches:.3} in)")
    } else if (inches * 64.0 - sixty_fourths).abs() < 1e-6 {
        format!("{} in ({mm:.1} mm)", fraction(sixty_fourths))
    } else {
        format!("{inches:.3} in ({mm:.2} mm)")
    }
}

/// The same without the other.
pub(super) fn drill_alone(diameter: Length) -> String {
    let words = drill(diameter);
    words.split_once(" (").map_or(words.clone(), |(own, _)| own.to_owned())
}

/// So many sixty-fourths, cancelled.
fn fraction(sixty_fourths: f64) -> String {
    let (mut over, mut under) = (sixty_fourths, 64.0);
    while over % 2.0 == 0.0 && under > 1.0 {
        (over, under) = (over / 2.0, under / 2.0);
    }
    let whole = (over / under).floor();
    match (whole > 0.0, under > 1.0) {
        (false, _) => format!("{over:.0}/{under:.0}"),
        (true, false) => format!("{over:.0}"),
        (true, true) => format!("{whole:.0}-{:.0}/{under:.0}", over - whole * under),
    }
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

/// One step of the work on a hole.
pub(super) fn step(step: &Drill) -> String {
    let stop = step.depth.map_or_else(String::new, |stop| format!(", stop at {}", depth(stop)));
    format!("drill {}{stop}: {}", drill(step.diameter), step.what)
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
        assert_eq!(drill(inches(0.257)), "0.257 in (6.53 mm)");
        assert_eq!(drill(inches(1.25)), "1-1/4 in (31.8 mm)");
        assert_eq!(drill(inches(1.0)), "25.4 mm (1.000 in)");
        assert_eq!(drill_alone(inches(0.203_125)), "13/64 in");
    }
}

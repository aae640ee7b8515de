//! Buckling of the whole top on its frame, pushed in its plane.

use super::{envelope::Lying, loads::Still};
use crate::{
    finite_element::{Buckling, NoMode, Plate, Sampler},
    geometry::Point,
    laminate::Forces,
    load_case::LoadCase,
    units::{Force, ForcePerWidth, Length, Ratio, per_width, si},
};

/// Even push from all sides at once at which the top on its frame buckles; one from one side alone may be higher.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct EvenPush {
    /// Push per width at which it buckles, or why it does not.
    pub bears: Result<ForcePerWidth, NoMode>,
    /// What it may be too high by: from the same mesh at two degrees, and what the search left over.
    pub error: Ratio,
}

/// Compression in the plane of a crowned top by what lies still on it in a case.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pressed {
    /// The case, as its place in the list.
    pub case: usize,
    /// Largest compression in any direction.
    pub most: ForcePerWidth,
    /// What it may be off by, from the same mesh at two degrees.
    pub error: Ratio,
    /// Where.
    pub at: Point,
    /// How many times all that presses it would buckle it; sought only where the largest compression, taken as an even push,
    /// says too little.
    pub buckles_at: Option<Ratio>,
}

/// Residual at which the search for the even push ends; it counts as error.
const SETTLED: f64 = 1e-3;

/// The same where forces press here and pull there: modes then lie close together.
const SETTLED_AS_THEY_ARE: f64 = 1e-2;

/// Share of what a top bears below which the largest compression says enough.
const ENOUGH: f64 = 0.7;

/// Whether something pushes the top in its plane.
pub(super) fn is_pushed(case: &LoadCase) -> bool {
    case.in_plane != Ratio::default() || case.hand.is_some_and(|hand| hand != Force::default())
}

/// The even push, at the higher of two degrees.
pub(super) fn even_push(lower: &Plate, higher: &Plate) -> EvenPush {
    match (pushed(lower), pushed(higher)) {
        (Ok(lower), Ok(higher)) => {
            let between = (lower.factor / higher.factor).value - 1.0;
            let left_over = (higher.factor / higher.at_least).value - 1.0;
            EvenPush { bears: Ok(unit() * higher.factor.value), error: Ratio::from(between.abs() + left_over) }
        }
        (Err(error), _) | (_, Err(error)) => EvenPush { bears: Err(error), error: Ratio::default() },
    }
}

/// The most that the even push can be: a plate that moves by fewer numbers than another on the same triangles buckles no
/// sooner.
pub(super) fn most_even_push(plate: &Plate) -> EvenPush {
    EvenPush { bears: pushed(plate).map(|buckling| unit() * buckling.factor.value), error: Ratio::default() }
}

/// Buckling under one newton for each metre, from all sides.
fn pushed(plate: &Plate) -> Result<Buckling, NoMode> {
    let pressed = Forces { x: -unit(), y: -unit(), xy: ForcePerWidth::default() };
    plate.first_buckling_within(Ratio::from(SETTLED), &|_| pressed)
}

fn unit() -> ForcePerWidth {
    per_width(Force::new::<uom::si::force::newton>(1.0) / Length::new::<uom::si::length::meter>(1.0))
}

/// Compression by what lies still on a crowned top, gear not tipped; none where nothing presses.
pub(super) fn pressed(sampler: &Sampler, lying: &Lying) -> Option<Pressed> {
    let sampled = &lying.parts.first()?.sampled;
    let mut worst: Option<(f64, Point)> = None;
    for (number, (at, _)) in sampler.places().enumerate() {
        let pressed = compression(&sampler.state(sampled, number).resultants.force);
        if pressed > worst.map_or(0.0, |(most, _)| most) {
            worst = Some((pressed, at));
        }
    }
    worst.map(|(most, at)| Pressed { case: lying.case, most: si(most), error: Ratio::default(), at, buckles_at: None })
}

impl Pressed {
    /// The even push from all sides that would bring the top as near to buckling as this compression does.
    #[must_use]
    pub fn as_even(&self, bears: ForcePerWidth) -> ForcePerWidth {
        self.buckles_at.map_or(self.most, |times| bears * times.recip().value)
    }

    /// Whether the mode of the forces as they are must be looked for.
    pub(super) fn is_unclear(&self, bears: ForcePerWidth, factor: Ratio) -> bool {
        (self.most / bears).value * factor.value > ENOUGH
    }

    /// Looks for it: forces of what lies still, triangle by triangle.
    pub(super) fn look_closer(&mut self, plate: &Plate, still: &Still) {
        let Some(solution) = still.parts.first() else { return };
        let found = plate.first_buckling_within(Ratio::from(SETTLED_AS_THEY_ARE), &|triangle| {
            plate.mean_membrane(triangle, solution)
        });
        // Where nothing buckles, the largest compression stands.
        if let Ok(found) = found {
            self.error = Ratio::from((found.factor / found.at_least).value - 1.0);
            self.buckles_at = Some(found.factor);
        }
    }

    /// Compares with the same at a lower degree, which has looked for modes.
    pub(super) fn settle(&mut self, lower: &Self) {
        (self.buckles_at, self.error) = (lower.buckles_at, lower.error);
        if lower.buckles_at.is_none() {
            self.error = Ratio::from((lower.most / self.most).value - 1.0).abs();
        }
    }
}

/// Largest compression in any direction, in newtons per metre.
fn compression(forces: &Forces) -> f64 {
    let [x, y, xy] = [forces.x, forces.y, forces.xy].map(|force| force.value);
    (0.5 * (x - y)).hypot(xy) - 0.5 * (x + y)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn compression_is_that_of_the_worst_direction() {
        let pressed = |x: f64, y: f64, xy: f64, most: f64| {
            (compression(&Forces { x: si(x), y: si(y), xy: si(xy) }) - most).abs() < 1e-12
        };
        assert!(pressed(-3.0, 1.0, 0.0, 3.0));
        assert!(pressed(0.0, 0.0, 2.0, 2.0));
        // Pulled all round, a negative number: nothing presses.
        assert!(pressed(4.0, 2.0, 0.0, -2.0));
    }
}

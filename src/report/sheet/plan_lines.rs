//! What is drawn on the plan, as places a millimetre of the paper apart: names keep off them.

use super::figure::OnPaper;
use crate::{
    geometry::Point,
    plan::{Item, LayerKind, Line, Shape},
    units::Ratio,
};

/// How much it matters that a name covers a millimetre of a line: what is built, and what only helps to read.
const BUILT: f64 = 4.0;
const HELP: f64 = 0.7;

/// What it costs to cover a millimetre of a line on a layer.
pub(super) const fn weight(kind: LayerKind) -> f64 {
    match kind {
        LayerKind::NoDrill | LayerKind::Middle | LayerKind::CoreEdge | LayerKind::Moulded => HELP,
        _ => BUILT,
    }
}

/// Places on the lines of an item.
pub(super) fn places(item: &Item, on: OnPaper) -> Vec<[f64; 2]> {
    let mut all = Vec::new();
    for shape in &item.shapes {
        match shape {
            Shape::Line(line) => of_line(line, on, &mut all),
            Shape::Circle { centre, diameter } => {
                let half = *diameter / 2.0;
                let side = |way: f64| Point { x: centre.x + half * way, y: centre.y };
                for (from, to) in [(side(1.0), side(-1.0)), (side(-1.0), side(1.0))] {
                    of_piece((from, to, Ratio::from(1.0)), on, &mut all);
                }
            }
            Shape::Cross { at } => all.push(on.at(*at)),
            Shape::Label(_) | Shape::Dimension(_) => {}
        }
    }
    all
}

fn of_line(line: &Line, on: OnPaper, all: &mut Vec<[f64; 2]>) {
    for piece in line.pieces() {
        of_piece(piece, on, all);
    }
}

/// Places on a straight piece or an arc: bulge *b*, half of its angle 2 arctan *b*.
fn of_piece((from, to, bulge): (Point, Point, Ratio), on: OnPaper, all: &mut Vec<[f64; 2]>) {
    let ([x0, y0], [x1, y1]) = (on.at(from), on.at(to));
    let (across, up) = (x1 - x0, y1 - y0);
    let long = across.hypot(up);
    if long <= 0.0 {
        return;
    }
    let half = 2.0 * bulge.value.atan();
    let straight = half.abs() < 1e-6;
    let way = if straight { long } else { (long * half / half.sin()).abs() };
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "millimetres of a sheet of paper")]
    let steps = way.ceil() as u32;
    for step in 0..=steps {
        let share = f64::from(step) / f64::from(steps.max(1));
        // Along the chord from its middle, and off it to its right as one goes, on a paper that counts downwards.
        let (along, off) = if straight {
            (long * (share - 0.5), 0.0)
        } else {
            let (radius, angle) = (long / (2.0 * half.sin()), half * (2.0 * share - 1.0));
            (radius * angle.sin(), radius * (angle.cos() - half.cos()))
        };
        let (cos, sin) = (across / long, up / long);
        all.push([f64::midpoint(x0, x1) + along * cos - off * sin, f64::midpoint(y0, y1) + along * sin + off * cos]);
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::Length;

    #[test]
    fn a_circle_is_one_and_an_arc_bulges_to_the_right() {
        let mm = Length::new::<uom::si::length::millimeter>;
        let at = |x: f64, y: f64| Point { x: mm(x), y: mm(y) };
        let on = OnPaper { scale: 1.0, left: 0.0, bottom: 100.0 };
        let circle = Shape::Circle { centre: at(50.0, 40.0), diameter: mm(20.0) };
        let places = places(&Item { name: String::new(), shapes: vec![circle] }, on);
        assert!(places.len() > 60, "{}", places.len());
        for [x, y] in places {
            assert!(((x - 50.0).hypot(y - 60.0) - 10.0).abs() < 1e-9, "{x} {y}");
        }
        // A quarter against the clock from (10, 0) to (0, 10) about the corner: on paper its middle lies at 7.07, 92.93.
        let mut all = Vec::new();
        of_piece((at(10.0, 0.0), at(0.0, 10.0), Ratio::from((std::f64::consts::FRAC_PI_8).tan())), on, &mut all);
        assert!(all.iter().all(|[x, y]| (x.hypot(100.0 - y) - 10.0).abs() < 1e-9), "{all:?}");
        assert!(all.len() == 17, "{}", all.len());
    }
}

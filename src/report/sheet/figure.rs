//! Figures: drawings in millimetres of the paper, with a title and a description for those who do not see them.

use maud::{Markup, html};

use crate::{
    geometry::Point,
    units::{Length, System, show},
};

/// Width of the widest drawing, in millimetres: fits A4 and Letter with their margins.
pub(super) const PAPER: f64 = 172.0;

/// Round scales, one to so many.
const SCALES: [f64; 19] =
    [1.0, 2.0, 2.5, 4.0, 5.0, 7.5, 10.0, 12.5, 15.0, 20.0, 25.0, 30.0, 40.0, 50.0, 60.0, 75.0, 100.0, 150.0, 200.0];

/// A drawing.
pub(super) struct Figure<'a> {
    pub(super) id: &'a str,
    pub(super) title: &'a str,
    /// The same in words.
    pub(super) description: &'a str,
    /// Millimetres.
    pub(super) size: [f64; 2],
    pub(super) body: Markup,
    pub(super) caption: Markup,
}

impl Figure<'_> {
    pub(super) fn markup(&self) -> Markup {
        let (title, words) = (format!("{}-name", self.id), format!("{}-words", self.id));
        let [width, height] = self.size;
        html! {
            figure id=(self.id) {
                svg role="img" aria-labelledby={ (title) " " (words) } viewBox={ "0 0 " (mm(width)) " " (mm(height)) }
                    style={ "max-width:" (mm(width)) "mm" } {
                    title id=(title) { (self.title) }
                    desc id=(words) { (self.description) }
                    (self.body)
                }
                figcaption { (self.caption) }
            }
        }
    }
}

/// The smallest round scale at which a length fits a room in millimetres of paper.
pub(super) fn scale(size: Length, room: f64) -> f64 {
    let needed = size.get::<uom::si::length::millimeter>() / room;
    SCALES.into_iter().find(|scale| *scale >= needed).unwrap_or(needed)
}

/// A number of a drawing: to a hundredth of a millimetre, without zeros that say nothing.
pub(super) fn mm(value: f64) -> String {
    let text = format!("{value:.2}");
    let text = text.trim_end_matches('0').trim_end_matches('.');
    if text == "-0" { "0".to_owned() } else { text.to_owned() }
}

/// A path through points; a closed one ends where it began.
pub(super) fn path(points: &[[f64; 2]], closed: bool) -> String {
    let mut text = String::new();
    for (k, [x, y]) in points.iter().enumerate() {
        text.push_str(if k == 0 { "M" } else { "L" });
        text.push_str(&mm(*x));
        text.push(' ');
        text.push_str(&mm(*y));
    }
    if closed {
        text.push('Z');
    }
    text
}

/// The top in plan on paper: the length to the right, the width upwards.
#[derive(Clone, Copy, Debug)]
pub(super) struct OnPaper {
    /// One to so many.
    pub(super) scale: f64,
    /// Where the corner of the rectangle round the top lies on the paper.
    pub(super) left: f64,
    pub(super) bottom: f64,
}

impl OnPaper {
    pub(super) fn at(self, place: Point) -> [f64; 2] {
        [self.left + self.length(place.x), self.bottom - self.length(place.y)]
    }

    /// The place that is drawn there.
    pub(super) fn place(self, [x, y]: [f64; 2]) -> Point {
        let length = |paper: f64| Length::new::<uom::si::length::millimeter>(paper * self.scale);
        Point { x: length(x - self.left), y: length(self.bottom - y) }
    }

    pub(super) fn length(self, length: Length) -> f64 {
        length.get::<uom::si::length::millimeter>() / self.scale
    }

    pub(super) fn path(self, places: &[Point], closed: bool) -> String {
        path(&places.iter().map(|place| self.at(*place)).collect::<Vec<_>>(), closed)
    }
}

/// A bar of a round length, to measure by.
pub(super) fn scale_bar([x, y]: [f64; 2], scale: f64, system: System) -> Markup {
    let lengths: &[f64] = match system {
        System::Us => &[25.4, 101.6, 304.8, 609.6, 1219.2],
        System::Si => &[20.0, 100.0, 250.0, 500.0, 1000.0],
    };
    let long = lengths.iter().copied().find(|length| length / scale >= 20.0).unwrap_or(25.4 * scale);
    let (end, words) = (x + long / scale, show(Length::new::<uom::si::length::millimeter>(long), system));
    html! {
        path class="line" d={ "M" (mm(x)) " " (mm(y - 1.2)) "V" (mm(y + 1.2)) "M" (mm(x)) " " (mm(y)) "H" (mm(end)) "M" (mm(end)) " " (mm(y - 1.2)) "V" (mm(y + 1.2)) } {}
        text class="t mid" x=(mm(f64::midpoint(x, end))) y=(mm(y - 1.8)) { (words) }
    }
}

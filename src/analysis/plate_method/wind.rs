//! Wind on the plate: the zone that a place lies in, whatever the outline.

use super::layout::Net;
use crate::{
    geometry::Point,
    load::wind::Zone,
    load_case::{LoadCase, ZonePressure},
    top::Top,
    units::{Length, Pressure},
};

/// Parts that each side of a triangle is divided into to find how much of it lies in which zone: its square is the number
/// of places that are looked at.
const PARTS: u32 = 4;

/// The wind of every case on every triangle.
pub(super) struct Winds(Vec<Vec<Pressure>>);

impl Winds {
    pub(super) fn new(top: &Top, net: &Net, cases: &[LoadCase]) -> Self {
        // Cases mostly have zones of one width: how triangles lie in them is found once.
        let mut known: Vec<(Length, Vec<[f64; 3]>)> = Vec::new();
        let mut all = Vec::with_capacity(cases.len());
        for LoadCase { zone, wind, .. } in cases {
            if !known.iter().any(|(width, _)| width == zone) {
                let triangles = 0..net.of_triangle.len();
                known.push((*zone, triangles.map(|triangle| shares(top, *zone, net.corners(triangle))).collect()));
            }
            let of_width = known.iter().filter(|(width, _)| width == zone).flat_map(|(_, shares)| shares);
            all.push(of_width.map(|shares| mean(*wind, *shares)).collect());
        }
        Self(all)
    }

    pub(super) fn on(&self, case: usize, triangle: usize) -> Pressure {
        self.0[case][triangle]
    }
}

/// The wind of a triangle of which so much lies in each zone.
fn mean(wind: ZonePressure, [interior, edge, corner]: [f64; 3]) -> Pressure {
    wind.interior * interior + wind.edge * edge + wind.corner * corner
}

/// How much of a triangle lies in the interior, at edges and at corners.
fn shares(top: &Top, width: Length, corners: [Point; 3]) -> [f64; 3] {
    let mut shares = [0.0; 3];
    for place in places(corners) {
        shares[zone(top, width, place) as usize] += 1.0 / f64::from(PARTS * PARTS);
    }
    shares
}

/// The zone of a place: at an edge within the zone's width of a rim, be it that of a hole; at a corner within it of two
/// sides of the rectangle round the top that meet, or of two parts of the rim whose directions are far enough apart.
///
/// For a rectangle both are the two sides that meet at its corner. The rim of a hole has no corners: what loads those of
/// a roof are the vortices that a wind over two edges rolls up, and before the rim of a hole lies panel.
fn zone(top: &Top, width: Length, place: Point) -> Zone {
    let outline = &top.outline;
    let [to_x, to_y] = [place.x.min(outline.length() - place.x), place.y.min(outline.width() - place.y)];
    match Zone::of(outline.within_by(place), to_x.max(to_y), width) {
        Zone::Edge if outline.contour().turns_near(place, width, top.criteria.wind_corner_turn.value) => Zone::Corner,
        zone => zone,
    }
}

/// The middles of equal parts of a triangle.
fn places([a, b, c]: [Point; 3]) -> impl Iterator<Item = Point> {
    let place = move |i: f64, j: f64| {
        let (i, j) = (i / f64::from(PARTS), j / f64::from(PARTS));
        Point { x: a.x + (b.x - a.x) * i + (c.x - a.x) * j, y: a.y + (b.y - a.y) * i + (c.y - a.y) * j }
    };
    let rows = || (0..PARTS).flat_map(|i| (0..PARTS - i).map(move |j| (i, j)));
    // Parts that stand as the whole does, and between them those that stand on their heads.
    let upright = rows().map(move |(i, j)| place(f64::from(i) + 1.0 / 3.0, f64::from(j) + 1.0 / 3.0));
    let turned = rows().filter(|(i, j)| i + j + 1 < PARTS);
    upright.chain(turned.map(move |(i, j)| place(f64::from(i) + 2.0 / 3.0, f64::from(j) + 2.0 / 3.0)))
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test may panic")]
mod tests {
    use uom::si::{length::meter, pressure::pascal};

    use super::*;
    use crate::{
        geometry::{Contour, Corner},
        input::{NamedText, read_design, read_tables},
        load_case::{OnGear, load_cases},
        top::Outline,
    };

    fn m(metres: f64) -> Length {
        Length::new::<meter>(metres)
    }

    fn point(x: f64, y: f64) -> Point {
        Point { x: m(x), y: m(y) }
    }

    /// A top of any outline under a wind of 1, 10 and 100 Pa, its zones 0.3 m wide.
    fn blown(contour: &Contour) -> (Top, LoadCase) {
        let path = concat!(env!("CARGO_MANIFEST_DIR"), "/examples/galley-roof.toml");
        let text = NamedText { name: "galley-roof".to_owned(), text: std::fs::read_to_string(path).unwrap() };
        let mut top = read_design(&text, &read_tables(&[]).unwrap(), None).unwrap();
        top.outline = Outline::new(contour, Vec::new()).unwrap();
        let (cases, _) = load_cases(&top.service, &top.criteria, m(2.0), OnGear::default());
        let pa = Pressure::new::<pascal>;
        let wind = ZonePressure { interior: pa(1.0), edge: pa(10.0), corner: pa(100.0) };
        let case = LoadCase { wind, zone: m(0.3), ..cases.into_iter().next().unwrap() };
        (top, case)
    }

    /// Places some centimetres apart on a top.
    fn all_over(top: &Top) -> impl Iterator<Item = Point> {
        let places = (0..150).flat_map(|i| (0..100).map(move |j| point(0.0215 * f64::from(i), 0.0215 * f64::from(j))));
        places.filter(|place| top.outline.within_by(*place) > m(1e-6))
    }

    #[test]
    fn a_rectangle_has_the_zones_of_the_figure() {
        for width in [2.0, 0.5] {
            let (top, case) = blown(&Contour::rectangle(m(3.0), m(width), [m(0.0); 4]).unwrap());
            for place in all_over(&top) {
                let [across, along] = [place.x.min(m(3.0) - place.x), place.y.min(m(width) - place.y)];
                let expected = Zone::of(along.min(across), along.max(across), m(0.3));
                assert_eq!(zone(&top, case.zone, place), expected, "{place:?}");
            }
        }
    }

    #[test]
    fn a_slanted_corner_is_one_and_a_slight_bend_is_none() {
        let sharp = |x: f64, y: f64| Corner { at: point(x, y), radius: m(0.0) };
        let bow = [sharp(0.0, 0.0), sharp(2.0, 0.0), sharp(3.0, 1.0), sharp(2.0, 2.0), sharp(0.0, 2.0)];
        let (top, case) = blown(&Contour::polygon(&bow).unwrap());
        assert_eq!(zone(&top, case.zone, point(2.7, 1.0)), Zone::Corner, "0.21 m from both sides of the bow");
        assert_eq!(zone(&top, case.zone, point(2.0, 0.1)), Zone::Edge, "bends by 45 degrees and no more");
        assert_eq!(zone(&top, case.zone, point(2.5, 0.6)), Zone::Edge);
        assert_eq!(zone(&top, case.zone, point(1.5, 1.0)), Zone::Interior);
    }

    #[test]
    fn rounding_a_corner_leaves_it_the_zone_that_it_had() {
        for radius in [0.05, 0.3, 0.45, 0.6, 0.9, 1.0] {
            let (sharp, case) = blown(&Contour::rectangle(m(3.0), m(2.0), [m(0.0); 4]).unwrap());
            let (round, _) = blown(&Contour::rectangle(m(3.0), m(2.0), [m(radius); 4]).unwrap());
            for place in all_over(&round) {
                let [before, after] = [&sharp, &round].map(|top| zone(top, case.zone, place));
                assert!(after >= before, "{radius}: {place:?} {before:?} {after:?}");
            }
        }
        // All of a small round end is corner, of a large disc nothing is.
        let (disc, case) = blown(&Contour::circle(point(1.0, 1.0), m(0.8)).unwrap());
        assert_eq!(zone(&disc, case.zone, point(0.01, 0.4)), Zone::Corner);
        let (disc, case) = blown(&Contour::circle(point(1.0, 1.0), m(2.0)).unwrap());
        assert_eq!(zone(&disc, case.zone, point(0.01, 1.0)), Zone::Edge);
    }

    #[test]
    fn a_triangle_across_the_border_of_a_zone_has_the_mean_of_both() {
        let (top, case) = blown(&Contour::rectangle(m(3.0), m(2.0), [m(0.0); 4]).unwrap());
        // Its base of 0.8 m stands at the edge; 1 − (0.5 / 0.8)² = 39/64 of it lie within 0.3 m of that.
        let corners = [point(1.0, 0.0), point(2.0, 0.0), point(1.5, 0.8)];
        let on_triangle = |corners| mean(case.wind, shares(&top, case.zone, corners)).get::<pascal>();
        let mean = on_triangle(corners);
        let exact = 10.0 * 39.0 / 64.0 + 25.0 / 64.0;
        assert!((mean / exact - 1.0).abs() < 0.15, "{mean} {exact}");
        // One of 10 cm in a corner lies in its zone.
        let corners = [point(0.0, 0.0), point(0.1, 0.0), point(0.0, 0.1)];
        assert!((on_triangle(corners) - 100.0).abs() < 1e-9);
    }
}

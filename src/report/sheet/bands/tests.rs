use super::{Surface, slimmed};

/// A square of side 2 in four triangles about its middle, the value its distance from the left side.
const PLACES: [[f64; 2]; 5] = [[0.0, 0.0], [2.0, 0.0], [2.0, 2.0], [0.0, 2.0], [1.0, 1.0]];
const TRIANGLES: [[usize; 3]; 4] = [[0, 1, 4], [1, 2, 4], [2, 3, 4], [3, 0, 4]];

fn area(ring: &[[f64; 2]]) -> f64 {
    ring.iter().zip(ring.iter().cycle().skip(1)).map(|([x0, y0], [x1, y1])| 0.5 * (x0 * y1 - x1 * y0)).sum()
}

#[test]
fn what_lies_above_has_the_area_and_the_line_of_the_plane() {
    let values = PLACES.map(|[x, _]| x);
    let surface = Surface { places: &PLACES, values: &values, triangles: &TRIANGLES };
    for level in [0.3, 0.99, 1.0, 1.5] {
        let above = surface.above(level);
        assert_eq!((above.rings.len(), above.lines.len()), (1, 1), "{level}");
        assert!((area(&above.rings[0]) - 2.0 * (2.0 - level)).abs() < 1e-12, "{level}");
        assert!(above.lines[0].iter().all(|[x, _]| (x - level).abs() < 1e-12));
        // What is above lies on the left of the line: it runs downwards.
        let line = &above.lines[0];
        assert!((line[0][1] - 2.0).abs() < 1e-12 && line[line.len() - 1][1].abs() < 1e-12, "{line:?}");
    }
    assert!(surface.above(2.5).rings.is_empty());
    assert!((area(&surface.above(-1.0).rings[0]) - 4.0).abs() < 1e-12);
}

#[test]
fn a_pit_is_a_ring_of_its_own() {
    let values = [1.0, 1.0, 1.0, 1.0, 0.0];
    let above = Surface { places: &PLACES, values: &values, triangles: &TRIANGLES }.above(0.5);
    // The square, and against the clock the pit of half its side.
    let mut areas: Vec<f64> = above.rings.iter().map(|ring| area(ring)).collect();
    areas.sort_by(f64::total_cmp);
    assert_eq!(areas.len(), 2);
    assert!((areas[0] + 1.0).abs() < 1e-12 && (areas[1] - 4.0).abs() < 1e-12, "{areas:?}");
    assert_eq!(above.lines.len(), 1);
    assert_eq!(above.lines[0].first(), above.lines[0].last());
}

#[test]
fn slim_lines_keep_their_corners() {
    let line = [[0.0, 0.0], [1.0, 0.001], [2.0, 0.0], [2.0, 1.0], [2.0, 2.0]];
    assert_eq!(slimmed(&line, 0.01), [[0.0, 0.0], [2.0, 0.0], [2.0, 2.0]]);
    assert_eq!(slimmed(&line, 0.0001).len(), 4);
    assert!(slimmed(&[], 1.0).is_empty());
}

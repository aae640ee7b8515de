//! Names on the plan: at their things, moved along them where another name stands already.

/// Size of a letter in millimetres of the paper: as wide and as high as on a narrow screen.
const LETTER: [f64; 2] = [2.1, 4.2];

/// How far a name is moved along its thing, and beside it.
const ALONG: [f64; 9] = [0.0, -26.0, 26.0, -48.0, 48.0, -13.0, 13.0, -64.0, 64.0];
const BESIDE: [f64; 3] = [0.0, -5.0, 5.0];

/// Names that stand on the plan, and what they keep off, as boxes: middle and half sizes.
pub(super) struct Names(Vec<([f64; 2], [f64; 2])>);

impl Names {
    pub(super) const fn new() -> Self {
        Self(Vec::new())
    }

    /// Keeps names off a place, so far on each side.
    pub(super) fn keep_off(&mut self, at: [f64; 2], by: f64) {
        self.0.push((at, [by, by]));
    }

    /// A place for a name whose line runs at an angle (degrees, clockwise as on the paper), as near to where it belongs as there
    /// is room; none where there is not.
    pub(super) fn place(&mut self, text: &str, [x, y]: [f64; 2], turned: f64) -> Option<[f64; 2]> {
        #[expect(clippy::cast_precision_loss, reason = "a short name")]
        let [long, high] = [text.chars().count() as f64 * LETTER[0], LETTER[1]];
        let (sin, cos) = turned.to_radians().sin_cos();
        let half =
            [f64::midpoint(long * cos.abs(), high * sin.abs()), f64::midpoint(long * sin.abs(), high * cos.abs())];
        let free = |at: [f64; 2]| {
            self.0.iter().all(|(known, size)| (0..2).any(|k| (at[k] - known[k]).abs() >= half[k] + size[k]))
        };
        let places = BESIDE
            .into_iter()
            .flat_map(|beside| ALONG.map(|along| [x + along * cos - beside * sin, y + along * sin + beside * cos]));
        let at = places.into_iter().find(|at| free(*at))?;
        self.0.push((at, half));
        Some(at)
    }
}

#[cfg(test)]
mod tests {
    use super::Names;

    #[test]
    fn a_name_keeps_off_a_hole() {
        let mut names = Names::new();
        names.keep_off([80.0, 40.0], 1.5);
        // Half of the nine letters, and the hole, are less than 13 mm: the second step along.
        assert_eq!(names.place("port rail", [80.0, 40.0], 0.0), Some([54.0, 40.0]));
        assert_eq!(names.place("x", [77.0, 40.0], 0.0), Some([77.0, 40.0]));
    }

    #[test]
    fn two_names_of_one_place_stand_apart() {
        let mut names = Names::new();
        let first = names.place("port rail", [80.0, 40.0], 0.0);
        assert_eq!(first, Some([80.0, 40.0]));
        assert_eq!(names.place("port strip", [80.0, 40.0], 0.0), Some([54.0, 40.0]));
        // Up the paper: moved along its own line.
        let up = names.place("wall", [80.0, 40.0], -90.0).unwrap_or_default();
        assert!((up[0] - 80.0).abs() < 1e-9 && (up[1] - 66.0).abs() < 1e-9, "{up:?}");
    }
}

//! Where the values of contour lines stand: on the line, apart from one another and from the border of the drawing.

/// Room that a label of five letters takes with its white rim, from its middle, in millimetres of the paper: as large as on a narrow
/// screen.
const HALF_WIDE: f64 = 8.7;
const HALF_HIGH: f64 = 3.2;

/// Lines shorter than this have no label.
const SHORTEST: f64 = 6.0;

/// Labels on a drawing so far.
pub(super) struct Labels {
    size: [f64; 2],
    known: Vec<[f64; 2]>,
}

impl Labels {
    /// None yet; `taken` are middles of what stands there already.
    pub(super) const fn on(size: [f64; 2], taken: Vec<[f64; 2]>) -> Self {
        Self { size, known: taken }
    }

    /// A place for the value of a line, if there is room: of its points the one that is farthest from all other labels, those
    /// near its ends last.
    pub(super) fn place(&mut self, line: &[[f64; 2]]) -> Option<[f64; 2]> {
        let stations: Vec<f64> = line
            .windows(2)
            .scan(0.0, |sum, pair| {
                *sum += (pair[1][0] - pair[0][0]).hypot(pair[1][1] - pair[0][1]);
                Some(*sum)
            })
            .collect();
        let length = *stations.last()?;
        if length < SHORTEST {
            return None;
        }
        let closed = line.first() == line.last();
        let candidates = line[1..].iter().zip(&stations).filter(|(at, along)| {
            let [x, y] = **at;
            let inside = x > HALF_WIDE && x < self.size[0] - HALF_WIDE && y > HALF_HIGH && y < self.size[1] - HALF_HIGH;
            inside && (closed || (**along > length * 0.1 && **along < length * 0.9))
        });
        let room = |[x, y]: [f64; 2]| {
            let apart = |[a, b]: &[f64; 2]| ((x - a).abs() / (2.0 * HALF_WIDE)).max((y - b).abs() / (2.0 * HALF_HIGH));
            self.known.iter().map(apart).fold(f64::INFINITY, f64::min)
        };
        // Beyond some distance more room is no better: then the middle of the line is.
        let rank = |at: [f64; 2], along: f64| room(at).min(2.0) - 0.5 * (along / length - 0.5).abs();
        let (at, _) = candidates
            .map(|(at, along)| (*at, rank(*at, *along)))
            .filter(|(at, _)| room(*at) >= 1.0)
            .max_by(|a, b| a.1.total_cmp(&b.1))?;
        self.known.push(at);
        Some(at)
    }
}

#[cfg(test)]
mod tests {
    use super::Labels;

    #[test]
    fn values_stand_on_their_lines_and_apart() {
        let mut labels = Labels::on([100.0, 60.0], vec![[50.0, 30.0]]);
        let line: Vec<[f64; 2]> = (0..=20).map(|k| [f64::from(k) * 5.0, 30.0]).collect();
        let first = labels.place(&line).unwrap_or_default();
        assert!(line.contains(&first) && (first[0] - 50.0).abs() >= 15.8, "{first:?}");
        let second = labels.place(&line).unwrap_or_default();
        assert!((second[0] - first[0]).abs() >= 15.8 && (second[0] - 50.0).abs() >= 15.8, "{second:?}");
        assert!(labels.place(&[[46.0, 30.0], [50.0, 31.0], [54.0, 30.0]]).is_none(), "where another stands");
        assert!(labels.place(&[[10.0, 10.0], [12.0, 10.0]]).is_none(), "too short");
        assert!(labels.place(&[[0.0, 1.0], [100.0, 1.0]]).is_none(), "at the border");
    }
}

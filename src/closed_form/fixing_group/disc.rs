//! A disc of unit radius on its bed: the part below a sloping plane is a segment of the circle.

use std::f64::consts::PI;

use super::{
    foot::Bed,
    sums::{Plane, Sums},
};

/// Integrals over the whole disc.
pub(super) const fn whole() -> Sums {
    Sums { moments: [PI, 0.0, 0.0, PI / 4.0, 0.0, PI / 4.0], force: [0.0; 3] }
}

/// Integrals over the part of the disc where *w* < 0.
pub(super) fn bed(plane: &Plane) -> Bed {
    let [_, b, c] = plane.a;
    let slope = b.hypot(c);
    // ξ runs up the slope, η along it.
    let [n_x, n_y] = if slope > 0.0 { [b / slope, c / slope] } else { [1.0, 0.0] };
    let depth = -plane.lift([-n_x, -n_y]);
    if depth <= 0.0 {
        return Bed::default();
    }
    let from_centre = if depth < 2.0 * slope {
        // w = slope (ξ − h), and ξ < h is pressed.
        let segment = Segment::of_depth(depth / slope);
        let h = depth / slope - 1.0;
        let xi = h * segment.area - segment.first;
        let xi_xi = h * h * segment.area - 2.0 * h * segment.first + segment.second;
        let eta_eta = segment.along;
        let w = -slope * segment.first;
        let w_xi = -slope * (h * segment.first - segment.second);
        Sums {
            moments: [
                segment.area,
                n_x * xi,
                n_y * xi,
                n_x * n_x * xi_xi + n_y * n_y * eta_eta,
                n_x * n_y * (xi_xi - eta_eta),
                n_y * n_y * xi_xi + n_x * n_x * eta_eta,
            ],
            force: [w, n_x * w_xi, n_y * w_xi],
        }
    } else {
        Sums { force: [PI * (slope - depth), PI / 4.0 * b, PI / 4.0 * c], ..whole() }
    };
    Bed { sums: from_centre.seen_from(plane.origin), depth }
}

/// Integrals over a segment of the unit circle.
struct Segment {
    area: f64,
    /// Of the distance from the chord.
    first: f64,
    /// Of its square.
    second: f64,
    /// Of the square of the coordinate along the chord, from its middle.
    along: f64,
}

/// Terms of the series; at [`SMALL`] the next one is below the last digit.
const TERMS: usize = 13;
/// Half angle below which the closed forms lose digits: they are differences of numbers of order one, and the integrals
/// fall with its third to seventh power.
const SMALL: f64 = 0.5;

/// A sum *p α* + *q α* cos *jα* + *r* sin *jα* + *s* sin *kα*.
struct Waves {
    p: f64,
    q: f64,
    /// *j* and *r*.
    slow: (usize, f64),
    /// *k* and *s*.
    fast: (usize, f64),
    /// How many terms of its series *α*, *α*³, *α*⁵ … cancel.
    cancelled: usize,
}

const AREA: Waves = Waves { p: 1.0, q: 0.0, slow: (2, -0.5), fast: (4, 0.0), cancelled: 1 };
const FIRST: Waves = Waves { p: 0.0, q: -1.0, slow: (1, 0.75), fast: (3, 1.0 / 12.0), cancelled: 2 };
const SECOND: Waves = Waves { p: 0.75, q: 0.5, slow: (2, -7.0 / 12.0), fast: (4, -1.0 / 48.0), cancelled: 3 };
const ALONG: Waves = Waves { p: 0.25, q: 0.0, slow: (2, -1.0 / 6.0), fast: (4, 1.0 / 48.0), cancelled: 2 };

/// The multiples of an angle that [`Waves`] take, as numbers.
const MULTIPLES: [f64; 5] = [0.0, 1.0, 2.0, 3.0, 4.0];

/// Half of the angle that an arc spans, with the sines of its multiples and the cosines of the first two.
struct HalfAngle {
    alpha: f64,
    sin: [f64; 5],
    cos: [f64; 3],
}

impl HalfAngle {
    /// Of the arc over a segment that is so deep, 0 to 2.
    fn over(depth: f64) -> Self {
        let alpha = 2.0 * (0.5 * depth).sqrt().min(1.0).asin();
        let (cos, sin) = (1.0 - depth, (depth * (2.0 - depth)).max(0.0).sqrt());
        let (sin_2, cos_2) = (2.0 * sin * cos, 1.0 - 2.0 * sin * sin);
        let (sin_3, sin_4) = (sin * (3.0 - 4.0 * sin * sin), 2.0 * sin_2 * cos_2);
        Self { alpha, sin: [0.0, sin, sin_2, sin_3, sin_4], cos: [1.0, cos, cos_2] }
    }
}

impl Waves {
    /// Coefficients of *α*, *α*³, *α*⁵ …; those that cancel are zero, not what rounding leaves of them.
    const fn series(&self) -> [f64; TERMS] {
        let mut found = [0.0; TERMS];
        let ((j, r), (k, s)) = (self.slow, self.fast);
        let (j, k) = (MULTIPLES[j], MULTIPLES[k]);
        // j²ⁱ/(2i)! and k²ⁱ/(2i)! with the sign of the term.
        let (mut slow, mut fast) = (1.0, 1.0);
        let (mut i, mut odd) = (0, 1.0);
        while i < TERMS {
            if i >= self.cancelled {
                found[i] = self.q * slow + r * slow * j / odd + s * fast * k / odd;
            }
            slow *= -j * j / (odd * (odd + 1.0));
            fast *= -k * k / (odd * (odd + 1.0));
            odd += 2.0;
            i += 1;
        }
        found
    }

    fn at(&self, series: &[f64; TERMS], half: &HalfAngle) -> f64 {
        let &HalfAngle { alpha, sin, cos } = half;
        if alpha < SMALL {
            let square = alpha * alpha;
            return alpha * series.iter().rev().fold(0.0, |sum, term| sum * square + term);
        }
        let ((j, r), (k, s)) = (self.slow, self.fast);
        alpha * (self.p + self.q * cos[j]) + r * sin[j] + s * sin[k]
    }
}

impl Segment {
    /// The segment that is so deep, 0 to 2.
    fn of_depth(depth: f64) -> Self {
        const SERIES: [[f64; TERMS]; 4] = [AREA.series(), FIRST.series(), SECOND.series(), ALONG.series()];
        let half = HalfAngle::over(depth);
        Self {
            area: AREA.at(&SERIES[0], &half),
            first: FIRST.at(&SERIES[1], &half),
            second: SECOND.at(&SERIES[2], &half),
            along: ALONG.at(&SERIES[3], &half),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Rounding of the closed forms where the series take over: 10⁻¹⁶ over the smallest integral there, 3·10⁻⁴.
    const JOINT: f64 = 2e-12;

    #[test]
    fn series_meet_the_closed_forms() {
        for waves in [AREA, FIRST, SECOND, ALONG] {
            let series = waves.series();
            let [below, above] = [1.0 - 2e-14, 1.0 + 2e-14].map(|of| {
                let half = HalfAngle::over(1.0 - (SMALL * of).cos());
                assert!((half.alpha < SMALL) == (of < 1.0), "on the two sides of the joint");
                waves.at(&series, &half)
            });
            assert!((below / above - 1.0).abs() < JOINT, "{below} {above}");
        }
    }

    /// The chord cuts the disc in half, or not at all.
    #[test]
    fn half_and_full_disc() {
        let close = |value: f64, exact: f64| assert!((value - exact).abs() < 1e-14, "{value} {exact}");
        let half = Segment::of_depth(1.0);
        for (value, exact) in
            [(half.area, PI / 2.0), (half.first, 2.0 / 3.0), (half.second, PI / 8.0), (half.along, PI / 8.0)]
        {
            close(value, exact);
        }
        let full = Segment::of_depth(2.0);
        for (value, exact) in [(full.area, PI), (full.first, PI), (full.second, 1.25 * PI), (full.along, PI / 4.0)] {
            close(value, exact);
        }
    }

    /// A small segment is a parabola: 4/3 √2 *δ*^1.5, and the pressed depth 2/5 of its own.
    #[test]
    fn small_segment_is_a_parabola() {
        let depth = 1e-6;
        let segment = Segment::of_depth(depth);
        let area = 4.0 / 3.0 * 2.0_f64.sqrt() * depth.powf(1.5);
        for (value, exact) in [
            (segment.area, area),
            (segment.first, 0.4 * depth * area),
            (segment.second, 8.0 / 35.0 * depth * depth * area),
            (segment.along, 0.4 * depth * area),
        ] {
            assert!((value / exact - 1.0).abs() < 1e-5, "{value} {exact}");
        }
    }
}

//! Sums over springs, and the small set of equations that they make.

/// Share of the square of the springs' mean distance from the origin that their centre may have: as much is lost of the
/// sums about it.
const ASIDE: f64 = 0.5;

/// A rigid plane over the foot, *w* = *a*₀ + *a*₁ (*x* − *`o_x`*) + *a*₂ (*y* − *`o_y`*), coordinates over the reach of the
/// foot.
///
/// The origin *o* is where the springs are centred: a foot that tips about a stiff place near its rim has a large *w*
/// in its middle, and the small one at that place would be the difference of large numbers.
#[derive(Clone, Copy, Default)]
pub(super) struct Plane {
    pub origin: [f64; 2],
    pub a: [f64; 3],
}

impl Plane {
    pub fn lift(&self, [x, y]: [f64; 2]) -> f64 {
        self.a[0] + self.a[1] * (x - self.origin[0]) + self.a[2] * (y - self.origin[1])
    }

    /// The same plane seen from another origin.
    pub fn seen_from(&self, origin: [f64; 2]) -> Self {
        Self { origin, a: [self.lift(origin), self.a[1], self.a[2]] }
    }

    pub fn moved(&self, step: [f64; 3], share: f64) -> Self {
        let [a, b, c] = self.a;
        Self { a: [a + share * step[0], b + share * step[1], c + share * step[2]], ..*self }
    }
}

/// Sums over a set of springs below a [`Plane`], coordinates from its origin.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(super) struct Sums {
    /// Σ 1, *x*, *y*, *x*², *xy*, *y*².
    pub moments: [f64; 6],
    /// Σ *w*, *w x*, *w y*. Summed by itself: as moments times *a* it would be the small difference of large numbers
    /// where little of the foot touches.
    pub force: [f64; 3],
}

impl Sums {
    /// Takes in a spring at a place.
    pub fn add_spring(&mut self, [x, y]: [f64; 2], w: f64) {
        for (sum, part) in self.moments.iter_mut().zip([1.0, x, y, x * x, x * y, y * y]) {
            *sum += part;
        }
        for (sum, part) in self.force.iter_mut().zip([w, w * x, w * y]) {
            *sum += part;
        }
    }

    /// The same springs from another origin.
    pub fn seen_from(&self, [x, y]: [f64; 2]) -> Self {
        let [m_1, m_x, m_y, m_xx, m_xy, m_yy] = self.moments;
        let [f, f_x, f_y] = self.force;
        Self {
            moments: [
                m_1,
                m_x - x * m_1,
                m_y - y * m_1,
                m_xx - 2.0 * x * m_x + x * x * m_1,
                m_xy - x * m_y - y * m_x + x * y * m_1,
                m_yy - 2.0 * y * m_y + y * y * m_1,
            ],
            force: [f, f_x - x * f, f_y - y * f],
        }
    }

    /// Where the springs are centred, if that is so far from the origin that sums about it are small differences of sums
    /// about the origin.
    pub fn centre_aside(&self) -> Option<[f64; 2]> {
        let [m_1, m_x, m_y, m_xx, _, m_yy] = self.moments;
        let (x, y) = (m_x / m_1, m_y / m_1);
        (x * x + y * y > ASIDE * (m_xx + m_yy) / m_1).then_some([x, y])
    }

    /// The sums with each spring so much stiffer.
    pub fn scaled(mut self, by: f64) -> Self {
        self.moments.iter_mut().chain(&mut self.force).for_each(|sum| *sum *= by);
        self
    }

    /// Both sets together.
    pub fn joined(mut self, other: &Self) -> Self {
        self.moments.iter_mut().zip(other.moments).for_each(|(sum, part)| *sum += part);
        self.force.iter_mut().zip(other.force).for_each(|(sum, part)| *sum += part);
        self
    }

    /// The *a* of the plane at which springs of these moments, each with a share of their mean stiffness more, carry a load.
    ///
    /// By Cholesky with the roots left out. `extra` keeps the pivots off zero where nothing holds the foot against a way to move.
    pub fn held(&self, load: [f64; 3], extra: f64) -> [f64; 3] {
        let [m_1, m_x, m_y, m_xx, m_xy, m_yy] = self.moments;
        let extra = extra * (m_1 + m_xx + m_yy);
        let d_0 = m_1 + extra;
        let (l_x, l_y) = (m_x / d_0, m_y / d_0);
        let d_1 = (m_xx - l_x * m_x).max(0.0) + extra;
        let l_xy = (m_xy - l_x * m_y) / d_1;
        let d_2 = (m_yy - l_y * m_y - l_xy * l_xy * d_1).max(0.0) + extra;
        let z_1 = load[1] - l_x * load[0];
        let z_2 = load[2] - l_y * load[0] - l_xy * z_1;
        let a_2 = z_2 / d_2;
        let a_1 = z_1 / d_1 - l_xy * a_2;
        [load[0] / d_0 - l_x * a_1 - l_y * a_2, a_1, a_2]
    }
}

pub(super) fn dot(a: [f64; 3], b: [f64; 3]) -> f64 {
    a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
}

//! Sums over springs, and the small set of equations that they make.

/// Sums over a set of springs that stand at *w* = *a*·(1, *x*, *y*).
#[derive(Clone, Copy, Default)]
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

    /// The *a* at which springs of these moments, each with a share of their mean stiffness more, carry a load.
    ///
    /// By LDLᵀ. `extra` keeps the pivots off zero where nothing holds the foot against a way to move.
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

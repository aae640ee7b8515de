use super::{Peak, StripError, StripForces, core::check_inside, loads::Kind, si};
use crate::units::{ForcePerWidth, Length, MomentPerWidth};

/// Part of an element on which the load does not change, with the state at its left end.
struct Stretch {
    x: f64,
    h: f64,
    m: f64,
    v: f64,
    q: f64,
    slope: f64,
    w: f64,
    d: f64,
    curvature: f64,
    shear: f64,
}

impl StripForces<'_> {
    /// Largest sagging moment anywhere, at stations or between them; 0 at station 0 if the strip hogs everywhere.
    #[must_use]
    pub fn largest_sagging(&self) -> Peak<MomentPerWidth> {
        self.moment_peak(1.0)
    }

    /// Largest hogging moment anywhere (a negative value); 0 at station 0 if the strip sags everywhere.
    #[must_use]
    pub fn largest_hogging(&self) -> Peak<MomentPerWidth> {
        self.moment_peak(-1.0)
    }

    /// Shear of the largest size anywhere, with its sign.
    #[must_use]
    pub fn largest_shear(&self) -> Peak<ForcePerWidth> {
        let mut best = (0.0, 0.0);
        for s in self.stretches() {
            larger(&mut best, s.x, s.v);
            larger(&mut best, s.x + s.h, s.v - s.q * s.h);
        }
        Peak { at: si(best.0), value: si(best.1) }
    }

    /// Deflection of the largest size between two stations, with its sign.
    ///
    /// # Errors
    /// [`StripError::Outside`] if `a` or `b` is not on the strip.
    pub fn largest_deflection_between(&self, a: Length, b: Length) -> Result<Peak<Length>, StripError> {
        let length = self.core.length();
        check_inside("station", a.value, length)?;
        check_inside("station", b.value, length)?;
        let (a, b) = (a.value.clamp(0.0, length), b.value.clamp(0.0, length));
        let mut best = (a, self.at(si(a))?.deflection.value);
        for s in self.stretches() {
            let (from, to) = ((a - s.x).max(0.0), (b - s.x).min(s.h));
            if from <= to {
                for r in [from, to].into_iter().chain(s.turning_points(from, to)) {
                    larger(&mut best, s.x + r, s.deflection(r));
                }
            }
        }
        Ok(Peak { at: si(best.0), value: si(best.1) })
    }

    fn moment_peak(&self, sign: f64) -> Peak<MomentPerWidth> {
        let mut best = (0.0, 0.0);
        let mut try_at = |x: f64, m: f64| {
            if m * sign > best.1 * sign {
                best = (x, m);
            }
        };
        for s in self.stretches() {
            try_at(s.x, s.m);
            try_at(s.x + s.h, s.moment(s.h));
            let zero = s.v / s.q;
            if zero > 0.0 && zero < s.h {
                try_at(s.x + zero, s.moment(zero));
            }
        }
        Peak { at: si(best.0), value: si(best.1) }
    }

    fn stretches(&self) -> impl Iterator<Item = Stretch> + '_ {
        (0..self.core.elements.len()).flat_map(move |e| {
            let element = &self.core.elements[e];
            let [pressure, curvature] = self.loads.even[e];
            let pieces = self.pieces(e);
            let mut cuts = vec![0.0, element.h];
            cuts.extend(pieces.clone().flat_map(|p| [p.start, p.end]));
            cuts.sort_by(f64::total_cmp);
            cuts.dedup();
            let mut parts = Vec::with_capacity(cuts.len());
            for c in cuts.windows(2) {
                let (from, to) = (c[0], c[1]);
                let at = self.inside(e, from, true);
                let over = |kind: Kind| -> f64 {
                    pieces
                        .clone()
                        .filter(|p| p.kind == kind && p.start <= from && p.end >= to)
                        .map(super::loads::Piece::intensity)
                        .sum()
                };
                parts.push(Stretch {
                    x: self.core.x[e] + from,
                    h: to - from,
                    m: at.m,
                    v: at.v,
                    q: pressure + over(Kind::Force),
                    slope: at.psi,
                    w: at.w,
                    d: element.d,
                    curvature: curvature + over(Kind::Curvature),
                    shear: element.s,
                });
            }
            parts
        })
    }
}

impl Stretch {
    fn moment(&self, r: f64) -> f64 {
        self.m + r * (self.v - self.q * r / 2.0)
    }

    fn deflection(&self, r: f64) -> f64 {
        let bend = self.m / 2.0 + r * (self.v / 6.0 - self.q * r / 24.0);
        let shear = self.v - self.q * r / 2.0;
        self.w + r * (self.slope + shear / self.shear) - r * r * (bend / self.d + self.curvature / 2.0)
    }

    fn incline(&self, r: f64) -> f64 {
        let bend = self.m + r * (self.v / 2.0 - self.q * r / 6.0);
        self.slope + (self.v - self.q * r) / self.shear - r * (bend / self.d + self.curvature)
    }

    /// Places between `from` and `to` where the deflection has no slope: the slope is a cubic, so it is monotone
    /// between the zeros of its own slope, a parabola.
    fn turning_points(&self, from: f64, to: f64) -> impl Iterator<Item = f64> + '_ {
        // Slope of the incline, times −D: a + b r + c r².
        let a = self.m + self.d * (self.q / self.shear + self.curvature);
        let (b, c) = (self.v, -self.q / 2.0);
        let root = (b * b - 4.0 * a * c).sqrt();
        let big = -(b + b.signum() * root) / 2.0;
        let mut edges = vec![from, to];
        edges.extend([big / c, a / big].into_iter().filter(|r| *r > from && *r < to));
        edges.sort_by(f64::total_cmp);
        let brackets: Vec<_> = edges.windows(2).map(|p| (p[0], p[1])).collect();
        brackets.into_iter().filter_map(|(lo, hi)| self.level(lo, hi))
    }

    fn level(&self, mut lo: f64, mut hi: f64) -> Option<f64> {
        let rising = self.incline(hi) > 0.0;
        if (self.incline(lo) > 0.0) == rising {
            return None;
        }
        loop {
            let middle = f64::midpoint(lo, hi);
            if middle <= lo || middle >= hi {
                return Some(middle);
            }
            if (self.incline(middle) > 0.0) == rising {
                hi = middle;
            } else {
                lo = middle;
            }
        }
    }
}

fn larger(best: &mut (f64, f64), x: f64, value: f64) {
    if value.abs() > best.1.abs() {
        *best = (x, value);
    }
}

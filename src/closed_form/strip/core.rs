//! Geometry of the strip and the factored three-moment equations, in SI base units.

use super::{
    Segment, StripError, Support,
    element::{Element, Section},
};
use crate::units::{Length, si};

/// Stations nearer than this part of the length are one: far above rounding, far below any part of a top.
const SAME: f64 = 1e-9;

#[derive(Clone, Copy, Debug)]
pub(super) struct Held {
    pub node: usize,
    pub clamped: bool,
}

/// End rotations of a bay cut at its supports, per unit moment at its ends: `ψ0 = f00 a + f01 b`, `ψ1 = −f01 a + f11 b`.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct Bay {
    pub first: usize,
    pub last: usize,
    pub length: f64,
    pub w_v: f64,
    pub psi_v: f64,
    pub f00: f64,
    pub f01: f64,
    pub f11: f64,
}

#[derive(Clone, Debug)]
pub(super) struct Core {
    pub x: Vec<f64>,
    pub elements: Vec<Element>,
    /// Ends of the segments, and the segment of each element.
    ends: Vec<f64>,
    segment: Vec<usize>,
    pub supports: Vec<Held>,
    pub bays: Vec<Bay>,
    /// Unknown index of the moment at the start and the end of each bay; `None` where an overhang or an end gives it.
    pub unknown: Vec<[Option<usize>; 2]>,
    /// `LDLᵀ` of the tridiagonal system.
    pub pivot: Vec<f64>,
    pub lower: Vec<f64>,
}

impl Core {
    pub fn new(
        segments: &[Segment],
        supports: &[Support],
        extra: &[Length],
        divisions: usize,
    ) -> Result<Self, StripError> {
        let ends = segment_ends(segments)?;
        let length = ends[ends.len() - 1];
        let held = sorted_supports(supports, length)?;
        let mut x: Vec<f64> = vec![0.0, length];
        for at in extra {
            check_inside("station", at.value, length)?;
            x.push(at.value.clamp(0.0, length));
        }
        x.extend_from_slice(&ends);
        let mut fixed: Vec<f64> = vec![0.0, length];
        fixed.extend(held.iter().map(|s| s.at.value));
        fixed.sort_by(f64::total_cmp);
        for pair in fixed.windows(2) {
            divide(pair[0], pair[1], divisions, &mut x);
        }
        // Supports and segment ends keep their exact place: the first of equal stations wins below.
        let mut marked: Vec<(f64, u8)> = x.iter().map(|&x| (x, 2)).collect();
        marked.extend(ends.iter().chain([&0.0]).map(|&x| (x, 1)));
        marked.extend(held.iter().map(|s| (s.at.value, 0)));
        let x = merge(marked, SAME * length);

        let in_segment = |p: &[f64]| {
            let middle = f64::midpoint(p[0], p[1]);
            ends.partition_point(|&e| e < middle).min(segments.len() - 1)
        };
        let segment: Vec<usize> = x.windows(2).map(in_segment).collect();
        let elements = elements(&x, &segment, segments);
        let supports = held
            .iter()
            .map(|s| {
                let near = |p: &f64| (p - s.at.value).abs() <= SAME * length;
                Held { node: x.iter().position(near).unwrap_or(0), clamped: s.clamped }
            })
            .collect();
        let mut core = Self {
            x,
            elements,
            ends,
            segment,
            supports,
            bays: Vec::new(),
            unknown: Vec::new(),
            pivot: Vec::new(),
            lower: Vec::new(),
        };
        core.factor();
        Ok(core)
    }

    /// The same stations and supports with other sections between them.
    pub fn with_sections(&self, segments: &[Segment]) -> Result<Self, StripError> {
        if segment_ends(segments)? != self.ends {
            return Err(StripError::OtherLengths);
        }
        let mut core = Self {
            x: self.x.clone(),
            elements: elements(&self.x, &self.segment, segments),
            ends: self.ends.clone(),
            segment: self.segment.clone(),
            supports: self.supports.clone(),
            bays: Vec::new(),
            unknown: Vec::new(),
            pivot: Vec::new(),
            lower: Vec::new(),
        };
        core.factor();
        Ok(core)
    }

    pub fn length(&self) -> f64 {
        self.x[self.x.len() - 1]
    }

    pub fn tolerance(&self) -> f64 {
        SAME * self.length()
    }

    /// `x`, moved onto the strip if it misses it by rounding.
    pub fn position(&self, x: f64) -> Result<f64, StripError> {
        check_inside("station", x, self.length())?;
        Ok(x.clamp(0.0, self.length()))
    }

    /// Element that contains `x`; a node belongs to the element on its right.
    pub fn element_at(&self, x: f64) -> usize {
        self.x.partition_point(|&p| p <= x).clamp(1, self.elements.len()) - 1
    }

    fn bay(&self, first: usize, last: usize) -> Bay {
        // Columns: what unit moment and unit shear at the start do at the end. Moments first, as each is the next one's load.
        let (mut psi_m, mut w_m) = (0.0, 0.0);
        let (mut m_v, mut psi_v, mut w_v) = (0.0, 0.0, 0.0);
        for e in &self.elements[first..last] {
            w_m += psi_m * e.h + e.w_m;
            psi_m += e.psi_m;
            w_v += psi_v * e.h + e.w_m * m_v + e.w_v;
            psi_v += e.psi_m * m_v + e.psi_v;
            m_v += e.h;
        }
        let length = self.x[last] - self.x[first];
        let f00 = (w_v / length - w_m) / length;
        let f01 = -w_v / (length * length);
        Bay { first, last, length, w_v, psi_v, f00, f01, f11: f01 + psi_v / length }
    }

    fn factor(&mut self) {
        self.bays = self.supports.windows(2).map(|p| self.bay(p[0].node, p[1].node)).collect();
        let n = self.supports.len();
        let mut diagonal: Vec<f64> = Vec::with_capacity(2 * n);
        let mut coupled: Vec<f64> = Vec::with_capacity(2 * n);
        self.unknown = vec![[None; 2]; self.bays.len()];
        for i in 0..n {
            let (left, right) = (i.checked_sub(1), Some(i).filter(|&i| i + 1 < n));
            let clamped = self.supports[i].clamped;
            if let Some(k) = left
                && (clamped || right.is_some())
            {
                self.unknown[k][1] = Some(diagonal.len());
                coupled.push(if self.unknown[k][0].is_some() { self.bays[k].f01 } else { 0.0 });
                diagonal.push(-self.bays[k].f11);
            }
            if let Some(k) = right
                && (clamped || left.is_some())
            {
                if clamped {
                    coupled.push(0.0);
                    diagonal.push(0.0);
                }
                let index = diagonal.len() - 1;
                self.unknown[k][0] = Some(index);
                diagonal[index] += self.bays[k].f00;
            }
        }
        self.pivot = diagonal;
        self.lower = vec![0.0; self.pivot.len()];
        for (i, &c) in coupled.iter().enumerate().skip(1) {
            self.lower[i] = c / self.pivot[i - 1];
            self.pivot[i] -= self.lower[i] * c;
        }
    }

    /// Replaces the right-hand side by the solution.
    pub fn back_substitute(&self, r: &mut [f64]) {
        for i in 1..r.len() {
            r[i] -= self.lower[i] * r[i - 1];
        }
        for i in (0..r.len()).rev() {
            r[i] /= self.pivot[i];
            if i + 1 < r.len() {
                r[i] -= self.lower[i + 1] * r[i + 1];
            }
        }
    }
}

fn elements(x: &[f64], segment: &[usize], segments: &[Segment]) -> Vec<Element> {
    x.windows(2).zip(segment).map(|(p, &i)| Element::new(p[1] - p[0], &Section::of(&segments[i]))).collect()
}

fn segment_ends(segments: &[Segment]) -> Result<Vec<f64>, StripError> {
    let mut end = 0.0;
    let mut ends = Vec::with_capacity(segments.len());
    for (index, s) in segments.iter().enumerate() {
        let positive = |v: f64| v.is_finite() && v > 0.0;
        for (ok, what) in [
            (positive(s.length.value), "its length must be positive"),
            (positive(s.rigidity.value), "its flexural rigidity must be positive"),
            (positive(s.shear.value), "its shear stiffness must be positive"),
            (s.mass.value.is_finite() && s.mass.value >= 0.0, "its mass must not be negative"),
        ] {
            if !ok {
                return Err(StripError::Segment { index, what });
            }
        }
        end += s.length.value;
        ends.push(end);
    }
    if ends.is_empty() { Err(StripError::Empty) } else { Ok(ends) }
}

fn sorted_supports(supports: &[Support], length: f64) -> Result<Vec<Support>, StripError> {
    let mut held = supports.to_vec();
    for s in &mut held {
        check_inside("support", s.at.value, length)?;
        s.at = si(s.at.value.clamp(0.0, length));
    }
    held.sort_by(|a, b| a.at.value.total_cmp(&b.at.value));
    if let Some(p) = held.windows(2).find(|p| (p[1].at.value - p[0].at.value) <= 2.0 * SAME * length) {
        return Err(StripError::SameStation { at: p[0].at });
    }
    if held.len() < 2 && !held.iter().any(|s| s.clamped) {
        return Err(StripError::Mechanism);
    }
    Ok(held)
}

pub(super) fn check_inside(what: &'static str, at: f64, length: f64) -> Result<(), StripError> {
    let slack = SAME * length;
    if at >= -slack && at <= length + slack { Ok(()) } else { Err(StripError::Outside { what, at: si(at) }) }
}

/// Adds stations that divide each existing interval between `a` and `b` no coarser than `(b − a)/divisions`.
fn divide(a: f64, b: f64, divisions: usize, x: &mut Vec<f64>) {
    let mut inner: Vec<f64> = x.iter().copied().filter(|&p| p > a && p < b).collect();
    inner.extend([a, b]);
    inner.sort_by(f64::total_cmp);
    #[expect(clippy::cast_precision_loss, reason = "a count of stations")]
    let largest = (b - a) / divisions.max(1) as f64;
    for p in inner.windows(2) {
        let gap = p[1] - p[0];
        let parts = (gap / largest - SAME).ceil();
        let mut i = 1.0;
        while i < parts {
            x.push(p[0] + gap * i / parts);
            i += 1.0;
        }
    }
}

/// Sorts stations and keeps one of each cluster: the one with the lowest mark.
fn merge(mut marked: Vec<(f64, u8)>, same: f64) -> Vec<f64> {
    marked.sort_by(|a, b| a.0.total_cmp(&b.0).then(a.1.cmp(&b.1)));
    let mut kept: Vec<(f64, u8)> = Vec::with_capacity(marked.len());
    for m in marked {
        match kept.last_mut() {
            Some(last) if m.0 - last.0 <= same => {
                if m.1 < last.1 {
                    *last = m;
                }
            }
            _ => kept.push(m),
        }
    }
    kept.into_iter().map(|m| m.0).collect()
}

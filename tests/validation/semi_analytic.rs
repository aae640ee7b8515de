//! A second opinion on plates: sine series across, high-order elements along, first-order shear theory. It takes line
//! supports anywhere, clamps and free ends, which the double sine series cannot.
#![allow(
    clippy::cast_precision_loss,
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    clippy::needless_range_loop,
    clippy::too_many_lines,
    reason = "counts are small, and matrices read best by their indices"
)]

use std::f64::consts::PI;

/// Degree of the elements.
pub const P: usize = 6;

/// Unknowns of an element.
const SIZE: usize = 3 * (P + 1);

/// Values and slopes of the shape functions at a point.
pub type Shape = ([f64; P + 1], [f64; P + 1]);

/// A plate that runs along `s` from 0, simply supported along `t` = 0 and `t` = `width`.
pub struct Reference {
    pub length: f64,
    pub width: f64,
    /// Supports: station, and whether they hold the rotation.
    pub supports: Vec<(f64, bool)>,
    pub d11: f64,
    pub d12: f64,
    pub d22: f64,
    pub d66: f64,
    pub s1: f64,
    pub s2: f64,
}

/// Unit force on a patch.
#[derive(Clone, Copy)]
pub struct Patch {
    pub centre: [f64; 2],
    pub size: [f64; 2],
}

/// Results on the line `t` = `at`, at every node of every element (twice where elements meet).
#[derive(Clone, Copy, Debug, Default)]
pub struct Row {
    pub s: f64,
    pub w: f64,
    pub m1: f64,
    pub m2: f64,
    pub q1: f64,
    pub q2: f64,
}

fn legendre(n: usize, x: f64) -> (f64, f64) {
    let (mut a, mut b) = (1.0, x);
    for k in 1..n {
        let k = k as f64;
        (a, b) = (b, ((2.0 * k + 1.0) * x * b - k * a) / (k + 1.0));
    }
    (b, n as f64 * (a - x * b) / (1.0 - x * x))
}

/// Gauss points and weights.
pub fn gauss(n: usize) -> Vec<(f64, f64)> {
    (0..n)
        .map(|i| {
            let mut x = (PI * (i as f64 + 0.75) / (n as f64 + 0.5)).cos();
            for _ in 0..20 {
                let (p, d) = legendre(n, x);
                x -= p / d;
            }
            let d = legendre(n, x).1;
            (x, 2.0 / ((1.0 - x * x) * d * d))
        })
        .collect()
}

/// Nodes: Chebyshev extremes, good enough for degree 6.
fn nodes() -> [f64; P + 1] {
    std::array::from_fn(|i| -(PI * i as f64 / P as f64).cos())
}

pub fn lagrange(x: f64) -> Shape {
    let at = nodes();
    let mut value = [1.0; P + 1];
    let mut slope = [0.0; P + 1];
    for i in 0..=P {
        for j in 0..=P {
            if j != i {
                value[i] *= (x - at[j]) / (at[i] - at[j]);
            }
        }
        for k in 0..=P {
            if k != i {
                let rest: f64 = (0..=P).filter(|&j| j != i && j != k).map(|j| (x - at[j]) / (at[i] - at[j])).product();
                slope[i] += rest / (at[i] - at[k]);
            }
        }
    }
    (value, slope)
}

impl Reference {
    fn mesh(&self, patch: Patch, largest: f64) -> Vec<f64> {
        let half = patch.size[0] / 2.0;
        let (from, to) = (patch.centre[0] - half, patch.centre[0] + half);
        let mut cuts = vec![0.0, self.length, from, patch.centre[0], to];
        cuts.extend(self.supports.iter().map(|s| s.0));
        // Finer towards loads, supports and ends, where shear makes layers.
        let layer = largest / 4.0;
        for c in cuts.clone() {
            cuts.extend([c - layer, c + layer]);
        }
        cuts.retain(|c| (0.0..=self.length).contains(c));
        cuts.sort_by(f64::total_cmp);
        cuts.dedup_by(|b, a| *b - *a < 1e-3 * layer);
        let mut x = vec![0.0];
        for pair in cuts.windows(2) {
            let n = ((pair[1] - pair[0]) / largest).ceil().max(1.0) as usize;
            x.extend((1..=n).map(|i| pair[0] + (pair[1] - pair[0]) * i as f64 / n as f64));
        }
        x
    }

    /// Element matrix as a polynomial of the wave number across: strains are linear in it.
    fn element(&self, h: f64, points: &[(f64, Shape)]) -> Vec<[[f64; 3]; SIZE]> {
        let at = |be: f64| {
            let mut k = vec![[0.0; SIZE]; SIZE];
            for (weight, (n, d)) in points {
                // Strains as rows over the unknowns W, X, Y of the element's nodes.
                let mut b = [[0.0; SIZE]; 5];
                for a in 0..=P {
                    let (n, d) = (n[a], d[a] * 2.0 / h);
                    b[0][3 * a + 1] = d;
                    b[1][3 * a + 2] = -be * n;
                    b[2][3 * a + 1] = be * n;
                    b[2][3 * a + 2] = d;
                    b[3][3 * a] = d;
                    b[3][3 * a + 1] = n;
                    b[4][3 * a] = be * n;
                    b[4][3 * a + 2] = n;
                }
                for r in 0..SIZE {
                    let stress = [
                        self.d11 * b[0][r] + self.d12 * b[1][r],
                        self.d12 * b[0][r] + self.d22 * b[1][r],
                        self.d66 * b[2][r],
                        self.s1 * b[3][r],
                        self.s2 * b[4][r],
                    ];
                    for c in 0..=r {
                        let v: f64 = (0..5).map(|i| stress[i] * b[i][c]).sum();
                        k[r][c] += weight * h / 2.0 * v;
                    }
                }
            }
            k
        };
        let (zero, plus, minus) = (at(0.0), at(1.0), at(-1.0));
        (0..SIZE)
            .map(|r| {
                std::array::from_fn(|c| {
                    let (z, p, m) = (zero[r][c], plus[r][c], minus[r][c]);
                    [z, (p - m) / 2.0, f64::midpoint(p, m) - z]
                })
            })
            .collect()
    }

    /// Rows for a unit force on `patch`, at `t` = `at`, from `terms` odd terms across.
    pub fn solve(&self, patch: Patch, at: f64, terms: usize, largest: f64) -> Vec<Row> {
        let x = self.mesh(patch, largest);
        let elements = x.len() - 1;
        let count = 3 * (elements * P + 1);
        let band = 3 * (P + 1);
        let points: Vec<_> = gauss(P + 2).into_iter().map(|(p, w)| (w, lagrange(p))).collect();
        let at_nodes: Vec<_> = nodes().into_iter().map(lagrange).collect();
        let matrices: Vec<_> = x.windows(2).map(|p| self.element(p[1] - p[0], &points)).collect();
        let mut rows = vec![Row::default(); elements * (P + 1)];
        let [s0, t0] = patch.centre;
        let [cs, ct] = patch.size;
        for i in 0..terms {
            // All terms, odd and even, so that the patch may lie off the middle.
            let be = (i + 1) as f64 * PI / self.width;
            let q = 4.0 / (self.width * be) * (be * t0).sin() * (be * ct / 2.0).sin() / (cs * ct);
            if q.abs() < 1e-12 / (cs * ct) {
                continue;
            }
            let mut k = vec![0.0; count * band];
            let mut f = vec![0.0; count];
            for e in 0..elements {
                let h = x[e + 1] - x[e];
                let middle = f64::midpoint(x[e], x[e + 1]);
                let loaded = (middle - s0).abs() < cs / 2.0;
                let base = 3 * e * P;
                for r in 0..SIZE {
                    for c in 0..=r {
                        let [k0, k1, k2] = matrices[e][r][c];
                        k[(base + r) * band + (r - c)] += k0 + be * (k1 + be * k2);
                    }
                }
                if loaded {
                    for (weight, (n, _)) in &points {
                        for a in 0..=P {
                            f[base + 3 * a] += q * weight * h / 2.0 * n[a];
                        }
                    }
                }
            }
            for &(station, clamped) in &self.supports {
                let e = x.iter().position(|p| (p - station).abs() < 1e-9).expect("a support at a mesh line");
                // A support holds the deflection, hence the slope along it, and with it that rotation.
                for dof in [0, 2, 1].into_iter().take(if clamped { 3 } else { 2 }) {
                    k[(3 * e * P + dof) * band] += 1e12 * (self.d11 + self.s1);
                }
            }
            factor(&mut k, count, band);
            substitute(&k, &mut f, band);
            let (sine, cosine) = (be * at).sin_cos();
            for e in 0..elements {
                let h = x[e + 1] - x[e];
                for (j, (n, d)) in at_nodes.iter().enumerate() {
                    let sum = |dof: usize, g: &[f64; P + 1]| -> f64 {
                        (0..=P).map(|a| f[3 * (e * P + a) + dof] * g[a]).sum()
                    };
                    let slope = 2.0 / h;
                    let (k1, k2) = (slope * sum(1, d), -be * sum(2, n));
                    let r = &mut rows[e * (P + 1) + j];
                    r.s = x[e] + h * (nodes()[j] + 1.0) / 2.0;
                    r.w += sine * sum(0, n);
                    r.m1 += sine * (self.d11 * k1 + self.d12 * k2);
                    r.m2 += sine * (self.d12 * k1 + self.d22 * k2);
                    r.q1 += sine * self.s1 * (slope * sum(0, d) + sum(1, n));
                    r.q2 += cosine * self.s2 * (be * sum(0, n) + sum(2, n));
                }
            }
        }
        rows
    }
}

/// Cholesky's factor of a banded matrix; each row holds its diagonal and then the entries left of it.
pub fn factor(k: &mut [f64], count: usize, band: usize) {
    let mut row = vec![0.0; band];
    for r in 0..count {
        let first = r.saturating_sub(band - 1);
        row.copy_from_slice(&k[r * band..(r + 1) * band]);
        for c in first..r {
            let from = first.max(c.saturating_sub(band - 1));
            let other = &k[c * band..(c + 1) * band];
            row[r - c] = (row[r - c] - dot(&row[r - c + 1..=r - from], &other[1..=c - from])) / other[0];
        }
        row[0] = (row[0] - dot(&row[1..], &row[1..])).sqrt();
        k[r * band..(r + 1) * band].copy_from_slice(&row);
    }
}

/// Four sums at a time, since one alone waits for each addition.
fn dot(a: &[f64], b: &[f64]) -> f64 {
    let mut sums = [0.0; 4];
    let (fours, others) = (a.chunks_exact(4), b.chunks_exact(4));
    let rest: f64 = fours.remainder().iter().zip(others.remainder()).map(|(a, b)| a * b).sum();
    for (a, b) in fours.zip(others) {
        for i in 0..4 {
            sums[i] += a[i] * b[i];
        }
    }
    rest + sums.iter().sum::<f64>()
}

/// Solves with the factor.
pub fn substitute(k: &[f64], f: &mut [f64], band: usize) {
    let count = f.len();
    for r in 0..count {
        for c in r.saturating_sub(band - 1)..r {
            f[r] -= k[r * band + r - c] * f[c];
        }
        f[r] /= k[r * band];
    }
    for r in (0..count).rev() {
        f[r] /= k[r * band];
        for c in r.saturating_sub(band - 1)..r {
            f[c] -= k[r * band + r - c] * f[r];
        }
    }
}

//! A third opinion on plates, for free corners: high-order elements both ways, first-order shear theory. The nodes
//! inside each element are eliminated before the elements meet.
#![allow(clippy::needless_range_loop, reason = "matrices read best by their indices")]

use crate::semi_analytic::{P, Patch, Shape, factor, gauss, lagrange, substitute};

/// Nodes along an element's side.
const N: usize = P + 1;

/// Unknowns of an element: deflection and two rotations at each node.
const UNKNOWNS: usize = 3 * N * N;

/// Unknowns of an element at nodes on its sides.
const OUTER: usize = 3 * 4 * P;

/// A plate over line supports along `t`, with its ends at `t` = 0 and `t` = `lines.1.last()` free.
pub struct Corner {
    /// Mesh lines along `s` and along `t`.
    pub lines: (Vec<f64>, Vec<f64>),
    /// Supports, each at a mesh line of `s`.
    pub supports: Vec<f64>,
    /// Whether supports hold the rotation along them.
    pub hard: bool,
    pub d11: f64,
    pub d12: f64,
    pub d22: f64,
    pub d66: f64,
    pub s1: f64,
    pub s2: f64,
}

/// Products of shape functions over an element's side: values, slopes, slope by value.
struct Products {
    values: [[f64; N]; N],
    slopes: [[f64; N]; N],
    mixed: [[f64; N]; N],
}

impl Products {
    fn new(h: f64, points: &[(f64, Shape)]) -> Self {
        let sum = |f: &dyn Fn(&Shape, usize, usize) -> f64| -> [[f64; N]; N] {
            std::array::from_fn(|i| {
                std::array::from_fn(|k| points.iter().map(|(weight, shape)| weight * f(shape, i, k)).sum())
            })
        };
        Self {
            values: sum(&|(n, _), i, k| n[i] * n[k] * h / 2.0),
            slopes: sum(&|(_, d), i, k| d[i] * d[k] * 2.0 / h),
            mixed: sum(&|(n, d), i, k| d[i] * n[k]),
        }
    }
}

/// An element after elimination: the rows of its inner unknowns, with the diagonal.
struct Element {
    /// Place of each unknown in the plate; inner ones have none.
    places: Vec<usize>,
    rows: Vec<Vec<f64>>,
}

/// A plate ready for loads.
pub struct Factored<'a> {
    plate: &'a Corner,
    elements: Vec<Element>,
    k: Vec<f64>,
    band: usize,
    count: usize,
}

/// Deflections and rotations of every element.
pub struct Bent<'a> {
    plate: &'a Corner,
    elements: Vec<Vec<f64>>,
}

/// Place of a local node: outer nodes first, then the inner ones.
fn local(i: usize, j: usize) -> usize {
    if i == 0 {
        j
    } else if i == P {
        N + j
    } else if j == 0 {
        2 * N + i - 1
    } else if j == P {
        2 * N + P - 1 + i - 1
    } else {
        4 * P + (i - 1) * (P - 1) + j - 1
    }
}

impl Corner {
    fn cells(&self) -> (usize, usize) {
        (self.lines.0.len() - 1, self.lines.1.len() - 1)
    }

    /// Number of an outer node of element `(e, g)`: line by line along `s`, those between lines in between.
    fn node(&self, e: usize, g: usize, i: usize, j: usize) -> usize {
        let along_t = self.cells().1;
        let (line, between) = (along_t * P + 1, (along_t + 1) * (P - 1));
        let base = e * (line + between);
        if i == 0 {
            base + g * P + j
        } else if i == P {
            base + line + between + g * P + j
        } else {
            // Nodes between two lines lie on the element's sides only.
            base + line + (i - 1) * (along_t + 1) + g + j / P
        }
    }

    fn stiffness(&self, s: &Products, t: &Products) -> Vec<Vec<f64>> {
        let mut k = vec![vec![0.0; UNKNOWNS]; UNKNOWNS];
        for (i, j) in pairs() {
            for (m, l) in pairs() {
                let (a, b) = (3 * local(i, j), 3 * local(m, l));
                let (ms, mt, ss, st) = (s.values[i][m], t.values[j][l], s.slopes[i][m], t.slopes[j][l]);
                k[a][b] = self.s1 * ss * mt + self.s2 * ms * st;
                k[a + 1][b + 1] = self.d11 * ss * mt + self.d66 * ms * st + self.s1 * ms * mt;
                k[a + 2][b + 2] = self.d22 * ms * st + self.d66 * ss * mt + self.s2 * ms * mt;
                let wx = self.s1 * s.mixed[i][m] * mt;
                let wy = self.s2 * ms * t.mixed[j][l];
                let xy = self.d12 * s.mixed[i][m] * t.mixed[l][j] + self.d66 * s.mixed[m][i] * t.mixed[j][l];
                (k[a][b + 1], k[b + 1][a]) = (wx, wx);
                (k[a][b + 2], k[b + 2][a]) = (wy, wy);
                (k[a + 1][b + 2], k[b + 2][a + 1]) = (xy, xy);
            }
        }
        k
    }

    pub fn factor(&self) -> Factored<'_> {
        let points: Vec<_> = gauss(P + 2).into_iter().map(|(p, w)| (w, lagrange(p))).collect();
        let products = |lines: &[f64]| -> Vec<Products> {
            lines.windows(2).map(|pair| Products::new(pair[1] - pair[0], &points)).collect()
        };
        let (along, across) = (products(&self.lines.0), products(&self.lines.1));
        let (es, et) = self.cells();
        let line = et * P + 1;
        let count = 3 * (es * (line + (et + 1) * (P - 1)) + line);
        let band = 3 * (2 * line + (et + 1) * (P - 1));
        let mut whole = vec![0.0; count * band];
        let mut elements = Vec::with_capacity(es * et);
        for e in 0..es {
            for g in 0..et {
                let mut k = self.stiffness(&along[e], &across[g]);
                let mut places = vec![0; OUTER];
                for (i, j) in pairs().filter(|&(i, j)| local(i, j) < 4 * P) {
                    for dof in 0..3 {
                        places[3 * local(i, j) + dof] = 3 * self.node(e, g, i, j) + dof;
                    }
                }
                // Inner unknowns from the last backwards.
                for p in (OUTER..UNKNOWNS).rev() {
                    let (rest, pivot) = k.split_at_mut(p);
                    let row = &pivot[0];
                    for r in 0..p {
                        let factor = row[r] / row[p];
                        for c in 0..=r {
                            rest[r][c] -= factor * row[c];
                        }
                    }
                }
                for r in 0..OUTER {
                    for c in 0..=r {
                        let (high, low) = (places[r].max(places[c]), places[r].min(places[c]));
                        whole[high * band + high - low] += k[r][c];
                    }
                }
                k.drain(..OUTER);
                elements.push(Element { places, rows: k });
            }
        }
        for station in &self.supports {
            let e = self.lines.0.iter().position(|p| (p - station).abs() < 1e-9).expect("a support at a mesh line");
            let first = e * (line + (et + 1) * (P - 1));
            for node in first..first + line {
                for dof in [0, 2].into_iter().take(if self.hard { 2 } else { 1 }) {
                    whole[(3 * node + dof) * band] += 1e9 * (self.d11 + self.s1);
                }
            }
        }
        factor(&mut whole, count, band);
        Factored { plate: self, elements, k: whole, band, count }
    }
}

fn pairs() -> impl Iterator<Item = (usize, usize)> {
    (0..N * N).map(|n| (n / N, n % N))
}

impl Factored<'_> {
    /// Under a unit force on a patch.
    pub fn under(&self, patch: Patch) -> Bent<'_> {
        let (es, et) = self.plate.cells();
        let mut whole = vec![0.0; self.count];
        let mut loads = Vec::with_capacity(es * et);
        for e in 0..es {
            for g in 0..et {
                let element = &self.elements[e * et + g];
                let (s, t) = (share(&self.plate.lines.0, e, patch, 0), share(&self.plate.lines.1, g, patch, 1));
                let mut f = vec![0.0; UNKNOWNS];
                for (i, j) in pairs() {
                    f[3 * local(i, j)] = s[i] * t[j];
                }
                for p in (OUTER..UNKNOWNS).rev() {
                    let row = &element.rows[p - OUTER];
                    let factor = f[p] / row[p];
                    for r in 0..p {
                        f[r] -= factor * row[r];
                    }
                }
                for r in 0..OUTER {
                    whole[element.places[r]] += f[r];
                }
                loads.push(f);
            }
        }
        substitute(&self.k, &mut whole, self.band);
        let elements = self
            .elements
            .iter()
            .zip(loads)
            .map(|(element, mut u)| {
                for r in 0..OUTER {
                    u[r] = whole[element.places[r]];
                }
                for p in OUTER..UNKNOWNS {
                    let row = &element.rows[p - OUTER];
                    let known: f64 = (0..p).map(|c| row[c] * u[c]).sum();
                    u[p] = (u[p] - known) / row[p];
                }
                u
            })
            .collect();
        Bent { plate: self.plate, elements }
    }
}

/// What each node of an element's side gets of a patch's unit force in one direction.
fn share(lines: &[f64], e: usize, patch: Patch, axis: usize) -> [f64; N] {
    let (low, high) = (lines[e], lines[e + 1]);
    let half = patch.size[axis] / 2.0;
    let from = low.max(patch.centre[axis] - half);
    let to = high.min(patch.centre[axis] + half);
    let mut sum = [0.0; N];
    if to > from {
        for (x, weight) in gauss(P + 2) {
            let at = from + (to - from) * (x + 1.0) / 2.0;
            let n = lagrange(2.0 * (at - low) / (high - low) - 1.0).0;
            for i in 0..N {
                sum[i] += weight * (to - from) / 2.0 * n[i] / patch.size[axis];
            }
        }
    }
    sum
}

impl Bent<'_> {
    /// Deflection, moment along `s` and shear along `s`, at a place; at a mesh line, on the side of larger `s` or `t`.
    pub fn at(&self, s: f64, t: f64) -> [f64; 3] {
        let (e, x, along) = place(&self.plate.lines.0, s);
        let (g, y, across) = place(&self.plate.lines.1, t);
        let u = &self.elements[e * self.plate.cells().1 + g];
        let ((n1, d1), (n2, d2)) = (lagrange(x), lagrange(y));
        let [mut w, mut m, mut q] = [0.0; 3];
        for (i, j) in pairs() {
            let a = 3 * local(i, j);
            let (value, ds, dt) = (n1[i] * n2[j], d1[i] * n2[j] * 2.0 / along, n1[i] * d2[j] * 2.0 / across);
            w += value * u[a];
            m += self.plate.d11 * ds * u[a + 1] + self.plate.d12 * dt * u[a + 2];
            q += self.plate.s1 * (ds * u[a] + value * u[a + 1]);
        }
        [w, m, q]
    }

    /// Mean shear over a stretch of the line `s`.
    pub fn mean_shear(&self, s: f64, from: f64, to: f64) -> f64 {
        gauss(12).iter().map(|(x, weight)| weight / 2.0 * self.at(s, from + (to - from) * (x + 1.0) / 2.0)[2]).sum()
    }
}

/// Element of a place, its coordinate there from −1 to 1, the element's length.
fn place(lines: &[f64], at: f64) -> (usize, f64, f64) {
    let e = lines.iter().rposition(|line| *line <= at + 1e-9).map_or(0, |e| e.min(lines.len() - 2));
    let h = lines[e + 1] - lines[e];
    (e, 2.0 * (at - lines[e]) / h - 1.0, h)
}

use nalgebra::{Cholesky, DMatrix, DVector};

use super::{Plate, PlateFault, navier::Numbers};
use crate::units::{Length, MomentPerWidth, Pressure, Ratio, si};

/// Functions along half of each side. Ten give the centre of a thin square to 1e-7 and its edge moment to 1e-4.
const FUNCTIONS: usize = 10;
/// Gauss points on a side; exact for products of the functions, whose degree is below 4·(FUNCTIONS + 1).
const POINTS: usize = 2 * FUNCTIONS + 3;

/// A clamped plate under pressure.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ClampedPlate {
    /// Deflection at the centre.
    pub deflection: Length,
    /// `Mx` at the centre, sagging.
    pub centre_x: MomentPerWidth,
    /// `My` at the centre, sagging.
    pub centre_y: MomentPerWidth,
    /// `Mx` at the middle of the edges across `x`; hogging, so negative.
    pub edge_x: MomentPerWidth,
    /// `My` at the middle of the edges across `y`; hogging, so negative.
    pub edge_y: MomentPerWidth,
    /// Largest change of these, each as a share of the largest of its kind, by the last function along each side.
    pub numerical_error: Ratio,
}

/// A rectangular plate clamped along all edges, under pressure: the bound opposite to simple support.
///
/// ```text
/// minimum of ½∫ D11 φx,x² + 2 D12 φx,x φy,y + D22 φy,y² + D66 (φx,y + φy,x)²
///             + Sx (w,x + φx)² + Sy (w,y + φy)²  −  ∫ q w        with w = φx = φy = 0 along the edges
/// functions along each side:  P_k(ξ) − P_{k+2}(ξ),  −1 ≤ ξ ≤ 1
/// ```
///
/// | symbol | meaning |
/// |---|---|
/// | `w`, `φx`, `φy` | deflection, rotations of the section |
/// | `D..`, `S.` | stiffnesses of the plate |
/// | `q` | pressure |
/// | `P_k` | Legendre polynomial |
///
/// # Validity
/// As [`Plate::at`] but for the edges: clamped edges hold the section and its skins. A pipe under the top seldom does,
/// so a real bay lies between this and the simply supported plate.
///
/// # Errors
/// [`PlateFault::Stiffness`] if the stiffnesses are so far apart that the equations cannot be solved in double
/// precision.
///
/// # Source
/// [`DERIVED`](crate::source::DERIVED): Ritz.
///
/// # Examples
/// A thin square of 1 m, `D` = 1000 N·m²/m, under 1 kPa: 0.001265 q a⁴/D and edge moments of −0.0513 q a².
/// ```
/// use skinspan::closed_form::plate::{Plate, PlateStiffness, clamped_plate_uniform};
/// use skinspan::units::{Force, Length, Pressure, Ratio, per_width};
/// use uom::si::{force::newton, length::{meter, millimeter}, pressure::pascal, ratio::ratio};
/// let m = Length::new::<meter>;
/// let d = per_width(Force::new::<newton>(1000.0) * m(1.0));
/// let s = per_width(Force::new::<newton>(1e9) / m(1.0));
/// let plate = Plate::new(m(1.0), m(1.0), PlateStiffness::isotropic(d, Ratio::new::<ratio>(0.3), s))?;
/// let c = clamped_plate_uniform(&plate, Pressure::new::<pascal>(1000.0))?;
/// assert!((c.deflection.get::<millimeter>() - 1.2653).abs() < 1e-3);
/// assert!((c.edge_x.value + 51.3).abs() < 0.1);
/// # Ok::<(), skinspan::closed_form::plate::PlateFault>(())
/// ```
pub fn clamped_plate_uniform(plate: &Plate, pressure: Pressure) -> Result<ClampedPlate, PlateFault> {
    let k = Numbers::new(plate);
    let [rough, fine] = [ritz(&k, FUNCTIONS - 1), ritz(&k, FUNCTIONS)];
    let (rough, fine) = (rough.ok_or(PlateFault::Stiffness)?, fine.ok_or(PlateFault::Stiffness)?);
    let share = |kind: std::ops::Range<usize>| {
        let largest = fine[kind.clone()].iter().fold(0.0, |m: f64, v| m.max(v.abs()));
        kind.map(|i| (fine[i] - rough[i]).abs() / largest).fold(0.0, f64::max)
    };
    let q = pressure.value;
    Ok(ClampedPlate {
        deflection: si(q * fine[0]),
        centre_x: si(q * fine[1]),
        centre_y: si(q * fine[2]),
        edge_x: si(q * fine[3]),
        edge_y: si(q * fine[4]),
        numerical_error: si(share(0..1).max(share(1..3)).max(share(3..5))),
    })
}

/// Values and slopes of the functions of one parity at the Gauss points and at 0; slopes at 1.
struct Functions {
    value: Vec<Vec<f64>>,
    slope: Vec<Vec<f64>>,
    value_at_centre: Vec<f64>,
    slope_at_centre: Vec<f64>,
    slope_at_edge: Vec<f64>,
}

impl Functions {
    fn new(count: usize, parity: usize, points: &[f64]) -> Self {
        let index = |i: usize| 2 * i + parity;
        let over = |at: &dyn Fn(usize) -> f64| (0..count).map(|i| at(index(i))).collect();
        Self {
            value: (0..count).map(|i| points.iter().map(|&x| function(index(i), x)).collect()).collect(),
            slope: (0..count).map(|i| points.iter().map(|&x| slope(index(i), x)).collect()).collect(),
            value_at_centre: over(&|k| function(k, 0.0)),
            slope_at_centre: over(&|k| slope(k, 0.0)),
            slope_at_edge: over(&|k| slope(k, 1.0)),
        }
    }
}

fn legendre(k: usize, x: f64) -> f64 {
    let (mut before, mut p, mut n) = (0.0, 1.0, 0.0);
    for _ in 0..k {
        (before, p) = (p, ((2.0 * n + 1.0) * x * p - n * before) / (n + 1.0));
        n += 1.0;
    }
    p
}

/// Vanishes at both ends.
fn function(k: usize, x: f64) -> f64 {
    legendre(k, x) - legendre(k + 2, x)
}

/// Its slope is one Legendre polynomial, so the stiffness along a side is diagonal and the system stays regular.
fn slope(k: usize, x: f64) -> f64 {
    #[expect(clippy::cast_precision_loss, reason = "a small count")]
    let factor = (2 * k + 3) as f64;
    -factor * legendre(k + 1, x)
}

/// Gauss points and weights on −1 to 1.
fn gauss() -> (Vec<f64>, Vec<f64>) {
    #[expect(clippy::cast_precision_loss, reason = "a small count")]
    let n = POINTS as f64;
    let mut points = Vec::with_capacity(POINTS);
    let mut weights = Vec::with_capacity(POINTS);
    let mut i = 0.0;
    while i < n {
        let mut x = (std::f64::consts::PI * (i + 0.75) / (n + 0.5)).cos();
        let mut derivative = 1.0;
        for _ in 0..8 {
            derivative = n * (legendre(POINTS - 1, x) - x * legendre(POINTS, x)) / (1.0 - x * x);
            x -= legendre(POINTS, x) / derivative;
        }
        points.push(x);
        weights.push(2.0 / ((1.0 - x * x) * derivative * derivative));
        i += 1.0;
    }
    (points, weights)
}

/// Deflection, moments at the centre and at mid-sides for unit pressure, with `n` functions along half of each side.
fn ritz(k: &Numbers, n: usize) -> Option<[f64; 5]> {
    let (points, weights) = gauss();
    let even = Functions::new(n, 0, &points);
    let odd = Functions::new(n, 1, &points);
    let integral = |f: &[f64], g: &[f64]| -> f64 { weights.iter().zip(f).zip(g).map(|((w, f), g)| w * f * g).sum() };
    let table = |f: &[Vec<f64>], g: &[Vec<f64>]| DMatrix::from_fn(n, n, |i, j| integral(&f[i], &g[j]));
    // Half sides: dx = (a/2) dξ.
    let (hx, hy) = (k.a / 2.0, k.b / 2.0);
    let (ee, oo) = (table(&even.value, &even.value), table(&odd.value, &odd.value));
    let (dee, doo) = (table(&even.slope, &even.slope), table(&odd.slope, &odd.slope));
    let (o_de, do_e) = (table(&odd.value, &even.slope), table(&odd.slope, &even.value));

    // Unknowns: w even-even, φx odd-even, φy even-odd; each by function along x, then along y.
    let block = n * n;
    let area = hx * hy;
    let pair = |f: &DMatrix<f64>, g: &DMatrix<f64>, c: f64| {
        DMatrix::from_fn(block, block, |r, s| c * area * f[(r / n, s / n)] * g[(r % n, s % n)])
    };
    let mut matrix = DMatrix::zeros(3 * block, 3 * block);
    let mut add = |r: usize, s: usize, m: &DMatrix<f64>| {
        let mut view = matrix.view_mut((r * block, s * block), (block, block));
        view += m;
        if r != s {
            let mut view = matrix.view_mut((s * block, r * block), (block, block));
            view += m.transpose();
        }
    };
    add(0, 0, &(pair(&dee, &ee, k.sx / (hx * hx)) + pair(&ee, &dee, k.sy / (hy * hy))));
    add(1, 1, &(pair(&doo, &ee, k.d11 / (hx * hx)) + pair(&oo, &dee, k.d66 / (hy * hy)) + pair(&oo, &ee, k.sx)));
    add(2, 2, &(pair(&ee, &doo, k.d22 / (hy * hy)) + pair(&dee, &oo, k.d66 / (hx * hx)) + pair(&ee, &oo, k.sy)));
    add(1, 0, &pair(&o_de, &ee, k.sx / hx));
    add(2, 0, &pair(&ee, &o_de, k.sy / hy));
    let both = k.d12 / (hx * hy);
    let twist = k.d66 / (hx * hy);
    // φx,x φy,y = (slope odd)(even) · (even)(slope odd); φx,y φy,x = (odd)(slope even) · (slope even)(odd).
    add(1, 2, &(pair(&do_e, &do_e.transpose(), both) + pair(&o_de, &o_de.transpose(), twist)));

    let one = vec![1.0; points.len()];
    let lift: Vec<f64> = even.value.iter().map(|f| integral(f, &one)).collect();
    let mut load = DVector::zeros(3 * block);
    for r in 0..block {
        load[r] = area * lift[r / n] * lift[r % n];
    }
    let u = Cholesky::new(matrix)?.solve(&load);

    let field = |part: usize, fx: &[f64], fy: &[f64]| -> f64 {
        (0..block).map(|r| u[part * block + r] * fx[r / n] * fy[r % n]).sum()
    };
    let w = field(0, &even.value_at_centre, &even.value_at_centre);
    let cx = field(1, &odd.slope_at_centre, &even.value_at_centre) / hx;
    let cy = field(2, &even.value_at_centre, &odd.slope_at_centre) / hy;
    // Along an edge the rotation along it is zero, so only one curvature is left there.
    let ex = field(1, &odd.slope_at_edge, &even.value_at_centre) / hx;
    let ey = field(2, &even.value_at_centre, &odd.slope_at_edge) / hy;
    Some([w, k.d11 * cx + k.d12 * cy, k.d12 * cx + k.d22 * cy, k.d11 * ex, k.d22 * ey])
}

//! The characteristic function of a swinging strip, with its slope and bend.

use super::{core::Core, element::Section};

/// A function of ω² about one value of it: the value, the slope, and half the bend.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct Jet(pub [f64; 3]);

impl Jet {
    const ONE: Self = Self([1.0, 0.0, 0.0]);

    #[inline]
    fn plus(self, o: Self) -> Self {
        Self([self.0[0] + o.0[0], self.0[1] + o.0[1], self.0[2] + o.0[2]])
    }

    #[inline]
    fn times(self, f: f64) -> Self {
        Self(self.0.map(|c| c * f))
    }

    #[inline]
    fn by(self, o: Self) -> Self {
        let ([a, b, c], [d, e, f]) = (self.0, o.0);
        Self([a * d, a * e + b * d, a * f + b * e + c * d])
    }

    /// Times `factor ω²`.
    #[inline]
    fn by_square(self, factor: f64, omega2: f64) -> Self {
        let [a, b, c] = self.0;
        Self([a * omega2 * factor, (b * omega2 + a) * factor, (c * omega2 + b) * factor])
    }

    #[inline]
    fn minor(a: Self, b: Self, c: Self, d: Self) -> Self {
        a.by(d).plus(b.by(c).times(-1.0))
    }

    fn is_below(self, share: f64, o: Self) -> bool {
        self.0.iter().zip(&o.0).all(|(a, b)| a.abs() <= share * b.abs())
    }
}

/// What a strip that swings meets from its left end to its right end.
#[derive(Clone, Copy, Debug)]
pub(super) enum Part {
    /// A stretch with one section.
    Stretch { h: f64, section: Section },
    /// A mass that rides on it.
    Mass(f64),
    /// A support.
    Held { clamped: bool },
}

/// The parts of a strip with masses at `x`, left to right.
pub(super) fn parts(core: &Core, masses: &[(f64, f64)]) -> Vec<Part> {
    let mut parts = Vec::with_capacity(core.supports.len() + 2 * masses.len() + 8);
    let (mut masses, mut held) = (masses.iter().peekable(), core.supports.iter().peekable());
    for (node, &x) in core.x.iter().enumerate() {
        if let Some(held) = held.next_if(|held| held.node == node) {
            parts.push(Part::Held { clamped: held.clamped });
        }
        let Some(element) = core.elements.get(node) else { break };
        let mut from = x;
        while let Some((at, mass)) = masses.next_if(|(at, _)| *at < x + element.h) {
            stretch(&mut parts, at - from, element.section());
            parts.push(Part::Mass(*mass));
            from = *at;
        }
        stretch(&mut parts, x + element.h - from, element.section());
    }
    parts.extend(masses.map(|(_, mass)| Part::Mass(*mass)));
    parts
}

/// Adds a stretch to the parts, to the one before if they are of one section.
fn stretch(parts: &mut Vec<Part>, length: f64, of: Section) {
    if length <= 0.0 {
        return;
    }
    match parts.last_mut() {
        Some(Part::Stretch { h, section }) if *section == of => *h += length,
        _ => parts.push(Part::Stretch { h: length, section: of }),
    }
}

/// Amplitudes of deflection, rotation, moment and shear.
type Shape = [Jet; 4];

const MOMENT: Shape = [Jet([0.0; 3]), Jet([0.0; 3]), Jet::ONE, Jet([0.0; 3])];
const SHEAR: Shape = [Jet([0.0; 3]), Jet([0.0; 3]), Jet([0.0; 3]), Jet::ONE];

/// A function of ω² that is zero at the natural frequencies and nowhere else: of the two shapes that the left end lets
/// through, what the right end does not.
pub(super) fn characteristic(parts: &[Part], omega2: f64) -> Jet {
    let mut factor = Jet::ONE;
    let mut shapes: [Shape; 2] = [
        [Jet::ONE, Jet::default(), Jet::default(), Jet::default()],
        [Jet::default(), Jet::ONE, Jet::default(), Jet::default()],
    ];
    for part in parts {
        match *part {
            Part::Stretch { h, section } => {
                let over = Over::new(h, section, omega2);
                shapes = shapes.map(|shape| over.carry(shape));
            }
            Part::Mass(mass) => {
                for shape in &mut shapes {
                    shape[3] = shape[3].plus(shape[0].by_square(-mass, omega2));
                }
            }
            Part::Held { clamped: true } => {
                let [a, b] = shapes;
                factor = factor.by(Jet::minor(a[0], a[1], b[0], b[1]));
                shapes = [MOMENT, SHEAR];
            }
            Part::Held { clamped: false } => {
                let [a, b] = shapes;
                // The one mixture that does not move; the support adds a shear of its own.
                let still = |i: usize| Jet::minor(a[i], a[0], b[i], b[0]);
                shapes = [[Jet::default(), still(1), still(2), Jet::default()], SHEAR];
            }
        }
    }
    let [a, b] = shapes;
    factor.by(Jet::minor(a[2], a[3], b[2], b[3]))
}

/// How a stretch that swings carries a shape over: `exp A = e0 + o0 A + e2 A² + o2 A³`, `A` the equations of the strip
/// times its length. As `A⁴ = α − α σ A²`, with `α = m ω² h⁴/D` and `σ = D/(S h²)`, four series stand for all powers.
struct Over {
    /// What `A` multiplies by: `h`, `h/S`, `h/D`, `m h`.
    by: [f64; 4],
    omega2: f64,
    /// `e0`, `o0`, `e2`, `o2`.
    series: [Jet; 4],
}

/// Terms of the series below this share of their sum are left out.
const ROUNDING: f64 = 1e-17;

impl Over {
    fn new(h: f64, Section { d, s, mass }: Section, omega2: f64) -> Self {
        let (alpha, sigma) = (mass * h * h * h * h / d, d / (s * h * h));
        // The power 2k of A is a + b A²: it stands over (2k)! in the even powers, and over (2k + 1)! in the odd ones.
        let (mut a, mut b) = (Jet::ONE, Jet::default());
        let [mut e0, mut o0, mut e2, mut o2] = [Jet::ONE, Jet::ONE, Jet::default(), Jet::default()];
        let (mut n, mut share) = (0.0, 1.0);
        loop {
            let next = b.by_square(alpha, omega2);
            (a, b) = (next, a.plus(next.times(-sigma)));
            n += 2.0;
            share /= n * (n - 1.0);
            let (even_a, even_b) = (a.times(share), b.times(share));
            e0 = e0.plus(even_a);
            e2 = e2.plus(even_b);
            o0 = o0.plus(even_a.times(1.0 / (n + 1.0)));
            o2 = o2.plus(even_b.times(1.0 / (n + 1.0)));
            if even_a.is_below(ROUNDING, e0) && even_b.is_below(ROUNDING, e2) || share == 0.0 {
                break;
            }
        }
        Self { by: [h, h / s, h / d, h * mass], omega2, series: [e0, o0, e2, o2] }
    }

    #[inline]
    fn apply(&self, [w, psi, m, v]: &Shape) -> Shape {
        let [h, h_s, h_d, h_m] = self.by;
        [psi.times(h).plus(v.times(h_s)), m.times(-h_d), v.times(h), w.by_square(-h_m, self.omega2)]
    }

    #[inline]
    fn carry(&self, shape: Shape) -> Shape {
        let first = self.apply(&shape);
        let second = self.apply(&first);
        let third = self.apply(&second);
        let [e0, o0, e2, o2] = self.series;
        std::array::from_fn(|i| e0.by(shape[i]).plus(o0.by(first[i])).plus(e2.by(second[i])).plus(o2.by(third[i])))
    }
}

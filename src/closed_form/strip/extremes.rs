/// A smallest and a largest value, and which position of the load causes each. Never on the far side of 0: a load that
/// is not there causes 0, and then the position is the first.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Extreme<T> {
    /// Smallest value, at most 0.
    pub min: T,
    /// Largest value, at least 0.
    pub max: T,
    /// Position that causes the smallest, as an index into the positions given.
    pub min_from: usize,
    /// Position that causes the largest.
    pub max_from: usize,
}

/// [`Extreme`]s of several results in SI base units, side by side so that they are seen together.
#[derive(Clone, Copy, Debug)]
pub(super) struct Extremes<const N: usize> {
    min: [f64; N],
    max: [f64; N],
    min_from: [u64; N],
    max_from: [u64; N],
}

impl<const N: usize> Extremes<N> {
    pub const NOTHING: Self = Self { min: [0.0; N], max: [0.0; N], min_from: [0; N], max_from: [0; N] };

    /// Takes the values of a unit force in, with the forces that go with what lies below and above 0.
    #[inline]
    pub fn see(&mut self, values: [f64; N], low: [f64; N], high: [f64; N], from: u64) {
        for i in 0..N {
            let (l, h) = (values[i] * low[i], values[i] * high[i]);
            // Selections, not branches: while the load comes nearer most values set a new record, and no one can foretell which.
            self.min_from[i] = if l < self.min[i] { from } else { self.min_from[i] };
            self.min[i] = if l < self.min[i] { l } else { self.min[i] };
            self.max_from[i] = if h > self.max[i] { from } else { self.max_from[i] };
            self.max[i] = if h > self.max[i] { h } else { self.max[i] };
        }
    }

    /// Takes in what goes with a factor and the extremes of another result: for what lies below 0 of one, for what lies
    /// above 0 of the other.
    #[inline]
    pub fn take<const M: usize>(&mut self, i: usize, factor: f64, other: &Extremes<M>, [low, high]: [usize; 2]) {
        let (min, max) =
            (|of: usize| (other.min[of], other.min_from[of]), |of: usize| (other.max[of], other.max_from[of]));
        let ((l, from_l), (h, from_h)) = if factor < 0.0 { (max(low), min(high)) } else { (min(low), max(high)) };
        if factor * l < self.min[i] {
            (self.min[i], self.min_from[i]) = (factor * l, from_l);
        }
        if factor * h > self.max[i] {
            (self.max[i], self.max_from[i]) = (factor * h, from_h);
        }
    }

    pub fn is_nothing(&self) -> bool {
        self.min.iter().chain(&self.max).all(|value| *value == 0.0)
    }

    pub fn of<T>(&self, result: usize, quantity: impl Fn(f64) -> T) -> Extreme<T> {
        let place = |from: u64| usize::try_from(from).unwrap_or(usize::MAX);
        Extreme {
            min: quantity(self.min[result]),
            max: quantity(self.max[result]),
            min_from: place(self.min_from[result]),
            max_from: place(self.max_from[result]),
        }
    }
}

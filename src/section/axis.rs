//! Direction of bending.

/// Direction in which a panel spans: `X` bends in the `x`–`z` plane and stretches or presses along `x`.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Axis {
    /// Along `x`.
    X,
    /// Along `y`.
    Y,
}

impl Axis {
    /// Both directions.
    pub const BOTH: [Self; 2] = [Self::X, Self::Y];

    /// The other direction.
    #[must_use]
    pub const fn other(self) -> Self {
        match self {
            Self::X => Self::Y,
            Self::Y => Self::X,
        }
    }

    pub(crate) const fn index(self) -> usize {
        match self {
            Self::X => 0,
            Self::Y => 1,
        }
    }
}

/// What keeps a strip from curling across its span.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Width {
    /// Nothing: a beam or coupon. The moments across and of twist are zero.
    Narrow,
    /// Its neighbours: a strip of a wide panel, bent to a cylinder. The curvatures across and of twist are zero.
    Wide,
}

impl Width {
    pub(crate) const fn index(self) -> usize {
        match self {
            Self::Narrow => 0,
            Self::Wide => 1,
        }
    }
}

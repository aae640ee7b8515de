//! What a strip's neighbours do to its bending.

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

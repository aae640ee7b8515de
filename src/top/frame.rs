//! Pipes that the top lies on.

use super::Fastened;
use crate::{geometry::Polyline, units::Length};

/// One pipe of the frame. The hand method takes it as rigid; its posts and wall are kept for the drawing and the
/// order.
#[derive(Clone, Debug, PartialEq)]
pub struct Pipe {
    /// Name in the report.
    pub name: String,
    /// Its line in plan.
    pub along: Polyline,
    /// Outside diameter.
    pub outside: Length,
    /// Width of the bearing between pipe and inner skin: a flat tab or seat, not the diameter.
    pub seat: Length,
    /// Wall thickness, where given.
    pub wall: Option<Length>,
    /// Alloy, where given.
    pub alloy: Option<crate::material::Alloy>,
    /// Stations along the pipe where a post stands.
    pub posts: Vec<Length>,
    /// What holds the top on it, where the file says it.
    pub fastened: Option<Fastened>,
}

impl Pipe {
    /// Least distance of its first post from its last, in its diameters, so that it counts as a beam: one is longer than
    /// thick.
    pub const POSTS_APART: f64 = 4.0;

    /// Whether its posts hold it as a beam: two that stand apart. Posts that stand together hold it like one.
    #[must_use]
    pub fn posts_hold(&self) -> bool {
        let stations = || self.posts.iter().copied();
        let first = stations().fold(self.along.length(), Length::min);
        let last = stations().fold(Length::default(), Length::max);
        self.posts.len() >= 2 && last - first >= self.outside * Self::POSTS_APART
    }

    /// What the file would have to give so that it bends on its posts; nothing where it does.
    #[must_use]
    pub fn missing(&self) -> Vec<&'static str> {
        let apart = self.posts_hold();
        let posts = if self.posts.len() < 2 { "two `posts` or more" } else { "two `posts` that stand well apart" };
        let all = [("`wall`", self.wall.is_some()), ("`alloy`", self.alloy.is_some()), (posts, apart)];
        all.into_iter().filter(|(_, given)| !given).map(|(key, _)| key).collect()
    }
}

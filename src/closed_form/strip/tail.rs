//! What lies beyond a load: it bends in one shape only, whatever the load, and by as much as the support before it turns.

use super::{
    core::Core,
    loads::State,
    solve::{Node, Results},
};

/// The strip on one side of a support, for a unit turn of the strip over it.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct Tail {
    /// Moment over the support.
    stiffness: f64,
    /// Shear beside the support.
    pub shear: f64,
    /// Turn over the next support.
    pub turn: f64,
}

/// The tails on one side of all supports.
#[derive(Clone, Debug)]
pub(super) struct Tails {
    /// By support.
    pub tails: Vec<Tail>,
    /// Results at each station for a unit turn over the support next to it, on the side of the tails' supports; over a
    /// support, for a unit turn over the one before it.
    pub shape: Vec<Results>,
}

impl Core {
    /// The tails to the left of the supports.
    ///
    /// ```text
    /// a = c b      c = K f01/(1 − K f00), over a clamp −f01/f00      b = 1/(f11 − f01 c)
    /// ```
    /// `a`, `b` moments at the far and the near end of the bay, `K` stiffness of the tail beyond it.
    pub fn left_tails(&self) -> Tails {
        let mut shape = vec![[0.0; 4]; self.x.len()];
        let root = self.supports[0].node;
        for (results, x) in shape[..root].iter_mut().zip(&self.x) {
            results[3] = x - self.x[root];
        }
        let mut tails = vec![Tail::default(); self.supports.len()];
        for (k, b) in self.bays.iter().enumerate() {
            let (beyond, clamped) = (tails[k], self.supports[k].clamped);
            let stiff = beyond.stiffness;
            let carried = if clamped { -b.f01 / b.f00 } else { stiff * b.f01 / (1.0 - stiff * b.f00) };
            let near = 1.0 / (b.f11 - b.f01 * carried);
            let far = carried * near;
            let shear = (near - far) / b.length;
            let turn = if clamped { 0.0 } else { b.f00 * far + b.f01 * near };
            self.carry([b.first, b.last], State { w: 0.0, psi: turn, m: far, v: shear }, &mut shape);
            shape[b.first] = [far, turn * beyond.shear, shear, 0.0];
            tails[k + 1] = Tail { stiffness: near, shear, turn };
        }
        Tails { tails, shape }
    }

    /// The tails to the right of the supports, as [`left_tails`](Self::left_tails) seen from the other end.
    pub fn right_tails(&self) -> Tails {
        let mut shape = vec![[0.0; 4]; self.x.len()];
        let last = self.supports.len() - 1;
        let root = self.supports[last].node;
        for (results, x) in shape.iter_mut().zip(&self.x).skip(root + 1) {
            results[3] = x - self.x[root];
        }
        let mut tails = vec![Tail::default(); last + 1];
        for (k, b) in self.bays.iter().enumerate().rev() {
            let (beyond, clamped) = (tails[k + 1], self.supports[k + 1].clamped);
            let stiff = beyond.stiffness;
            let carried = if clamped { b.f01 / b.f11 } else { -stiff * b.f01 / (1.0 - stiff * b.f11) };
            let near = 1.0 / (b.f00 + b.f01 * carried);
            let far = carried * near;
            let shear = (far - near) / b.length;
            let turn = if clamped { 0.0 } else { b.f11 * far - b.f01 * near };
            self.carry([b.first, b.last], State { w: 0.0, psi: 1.0, m: near, v: shear }, &mut shape);
            shape[b.last] = [far, shear, turn * beyond.shear, 0.0];
            tails[k] = Tail { stiffness: near, shear, turn };
        }
        Tails { tails, shape }
    }

    /// Shows the stations within a bay without load.
    fn carry(&self, [first, last]: [usize; 2], mut s: State, shape: &mut [Results]) {
        for (element, results) in self.elements[first..last].iter().zip(&mut shape[first + 1..last]) {
            s = s.over(element, &State::default());
            *results = Node { w: s.w, psi: s.psi, m: [s.m; 2], v: [s.v; 2] }.results();
        }
    }
}

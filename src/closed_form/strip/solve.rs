//! From loads to the state at every station.

use super::{
    core::{Bay, Core},
    loads::{Loads, State},
};

/// State at a station; moment and shear may jump there.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct Node {
    pub w: f64,
    pub psi: f64,
    pub m: [f64; 2],
    pub v: [f64; 2],
}

/// Memory of a solution, to be used again.
#[derive(Clone, Debug)]
pub(super) struct Work {
    pub nodes: Vec<Node>,
    moments: Vec<f64>,
    particular: Vec<State>,
}

impl Work {
    pub fn new(core: &Core) -> Self {
        Self {
            nodes: vec![Node::default(); core.x.len()],
            moments: vec![0.0; core.pivot.len()],
            particular: vec![State::default(); core.bays.len()],
        }
    }
}

impl Core {
    pub fn solve(&self, loads: &Loads, work: &mut Work) {
        let (first, last) = (self.supports[0], self.supports[self.supports.len() - 1]);
        let end = self.x.len() - 1;

        // Overhangs: moment and shear by statics.
        let left = self.run(loads, 0, first.node, end_jump(loads, 0, first.node), |_| ());
        let right = if last.node < end {
            let p = self.run(loads, last.node, end, State::default(), |_| ());
            let v = loads.node[end][0] - p.v;
            let m = -loads.node[end][1] - p.m - v * (self.x[end] - self.x[last.node]);
            State { m, v, ..State::default() }
        } else {
            State::default()
        };

        self.support_moments(loads, left, right, work);

        let clamp_only = self.bays.is_empty();
        let mut psi = 0.0;
        for k in 0..self.bays.len() {
            let b = &self.bays[k];
            let p = work.particular[k];
            let [start, stop] = self.bay_moments(loads, work, k, left, right);
            let v = (stop - start - p.m) / b.length;
            let psi0 = b.rotation(start, stop, &p);
            let near = &mut work.nodes[b.first];
            (near.w, near.psi, near.m[1], near.v[1]) = (0.0, psi0, start, v);
            let s = self.fill(loads, b.first, b.last, State { w: 0.0, psi: psi0, m: start, v }, &mut work.nodes);
            psi = s.psi;
            let far = &mut work.nodes[b.last];
            // The far end is known: moment from the equations, no deflection.
            (far.w, far.psi, far.m[0], far.v[0]) = (0.0, s.psi, stop, s.v);
        }

        let psi_first = if clamp_only { 0.0 } else { work.nodes[first.node].psi };
        self.left_overhang(loads, left, psi_first, work);
        let root = &mut work.nodes[last.node];
        (root.w, root.psi, root.m[1], root.v[1]) = (0.0, psi, right.m, right.v);
        if last.node < end {
            let tip = self.fill(loads, last.node, end, State { psi, ..right }, &mut work.nodes);
            let [f, m] = loads.node[end];
            work.nodes[end] = Node { w: tip.w, psi: tip.psi, m: [-m, 0.0], v: [f, 0.0] };
        } else if !last.clamped {
            // A moment put on an end support has nowhere to go but left.
            root.m[0] = -loads.node[end][1];
        }
    }

    fn left_overhang(&self, loads: &Loads, root: State, psi: f64, work: &mut Work) {
        let node = self.supports[0].node;
        if node > 0 {
            let psi0 = psi - root.psi;
            let w0 = -(root.w + psi0 * self.x[node]);
            let start = State { w: w0, psi: psi0, ..end_jump(loads, 0, node) };
            work.nodes[0] = Node { w: w0, psi: psi0, m: [0.0, start.m], v: [0.0, start.v] };
            let _ = self.fill(loads, 0, node, start, &mut work.nodes);
        }
        let held = &mut work.nodes[node];
        (held.w, held.psi, held.m[0], held.v[0]) = (0.0, psi, root.m, root.v);
    }

    /// Carries `s`, the state just right of station `from`, to just left of `to`; shows every station between.
    #[inline]
    fn run(&self, loads: &Loads, from: usize, to: usize, s: State, mut show: impl FnMut(Node)) -> State {
        if from == to {
            return s;
        }
        let mut s = s.over(&self.elements[from], &loads.element[from]);
        let elements = self.elements[from + 1..to].iter().zip(&loads.element[from + 1..to]);
        for ((element, load), &[f, m]) in elements.zip(&loads.node[from + 1..to]) {
            let here = Node { w: s.w, psi: s.psi, m: [s.m, s.m + m], v: [s.v, s.v - f] };
            s = State { m: here.m[1], v: here.v[1], ..s }.over(element, load);
            show(here);
        }
        s
    }

    /// As [`run`](Self::run), keeping every station between.
    #[inline]
    fn fill(&self, loads: &Loads, from: usize, to: usize, s: State, nodes: &mut [Node]) -> State {
        let mut kept = nodes[from..to].iter_mut().skip(1);
        self.run(loads, from, to, s, |here| {
            if let Some(node) = kept.next() {
                *node = here;
            }
        })
    }

    fn support_moments(&self, loads: &Loads, left: State, right: State, work: &mut Work) {
        for (p, b) in work.particular.iter_mut().zip(&self.bays) {
            let loaded = loads.between(b.first, b.last);
            *p = if loaded { self.run(loads, b.first, b.last, State::default(), |_| ()) } else { State::default() };
        }
        work.moments.fill(0.0);
        for (k, b) in self.bays.iter().enumerate() {
            let [c0, c1] = b.free_rotations(&work.particular[k]);
            let [i0, i1] = self.unknown[k];
            // A moment on the support itself is added to the unknown, which is the moment just left of it.
            let jump = if self.supports[k].clamped { 0.0 } else { loads.node[b.first][1] };
            let known0 = if i0.is_none() { left.m + jump } else { jump };
            let known1 = if i1.is_none() { right.m - loads.node[b.last][1] } else { 0.0 };
            if let Some(i) = i0 {
                work.moments[i] -= c0 + b.f00 * known0 + b.f01 * known1;
            }
            if let Some(i) = i1 {
                work.moments[i] += c1 - b.f01 * known0 + b.f11 * known1;
            }
        }
        self.back_substitute(&mut work.moments);
    }

    fn bay_moments(&self, loads: &Loads, work: &Work, k: usize, left: State, right: State) -> [f64; 2] {
        let b = &self.bays[k];
        let [i0, i1] = self.unknown[k];
        let jump = if self.supports[k].clamped { 0.0 } else { loads.node[b.first][1] };
        [
            i0.map_or(left.m, |i| work.moments[i]) + jump,
            i1.map_or_else(|| right.m - loads.node[b.last][1], |i| work.moments[i]),
        ]
    }
}

/// State just right of the free left end: a load may stand on the very end.
fn end_jump(loads: &Loads, from: usize, to: usize) -> State {
    if from == to {
        return State::default();
    }
    let [f, m] = loads.node[from];
    State { v: -f, m, ..State::default() }
}

impl Bay {
    /// Rotations of the two ends of the bay, cut at its supports, from its loads.
    fn free_rotations(&self, p: &State) -> [f64; 2] {
        let lift = p.m / self.length;
        let c0 = (self.w_v * lift - p.w) / self.length;
        [c0, c0 + p.psi - self.psi_v * lift]
    }

    fn rotation(&self, start: f64, stop: f64, p: &State) -> f64 {
        self.f00 * start + self.f01 * stop + self.free_rotations(p)[0]
    }
}

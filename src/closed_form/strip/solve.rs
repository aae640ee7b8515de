//! From loads to the state at every station.

use std::ops::Range;

use super::{
    core::{Bay, Core},
    loads::{Loads, State},
};

/// Moment, shear just left, shear just right, deflection at a station.
pub(super) type Results = [f64; 4];

/// State at a station; moment and shear may jump there.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct Node {
    pub w: f64,
    pub psi: f64,
    pub m: [f64; 2],
    pub v: [f64; 2],
}

impl Node {
    /// What is listed of it: of the moments the left one, which jumps only under a moment and over a clamp.
    pub fn results(&self) -> Results {
        [self.m[0], self.v[0], self.v[1], self.w]
    }
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
        self.solve_spans(loads, 0..self.supports.len() + 1, work);
    }

    /// First and last station of a span: the left overhang, the bays, the right overhang.
    pub fn span(&self, index: usize) -> [usize; 2] {
        let from = if index == 0 { 0 } else { self.supports[index - 1].node };
        [from, self.supports.get(index).map_or(self.x.len() - 1, |support| support.node)]
    }

    /// The spans that loads lie on, and those between them; none if they lie over a support alone.
    pub fn loaded_spans(&self, loads: &Loads) -> Range<usize> {
        let last = self.supports.len();
        let loaded = |index: &usize| {
            let [from, to] = self.span(*index);
            // The free end of an overhang belongs to it, a support to no span.
            from < to && (loads.between(from, to) || loads.at_end(from, to, [*index == 0, *index == last]))
        };
        let first = (0..=last).find(loaded).unwrap_or(0);
        first..(first..=last).rfind(loaded).map_or(first, |index| index + 1)
    }

    /// Shows the stations of some spans, what lies beside them being without load.
    pub fn solve_spans(&self, loads: &Loads, spans: Range<usize>, work: &mut Work) {
        let (first, last) = (self.supports[0], self.supports[self.supports.len() - 1]);
        let (end, count) = (self.x.len() - 1, self.supports.len());

        // Overhangs: moment and shear by statics.
        let left = if spans.start == 0 {
            self.run(loads, 0, first.node, end_jump(loads, 0, first.node), |_| ())
        } else {
            State::default()
        };
        let right = if last.node < end && spans.end > count {
            let p = self.run(loads, last.node, end, State::default(), |_| ());
            let v = loads.node[end][0] - p.v;
            let m = -loads.node[end][1] - p.m - v * (self.x[end] - self.x[last.node]);
            State { m, v, ..State::default() }
        } else {
            State::default()
        };

        self.support_moments(loads, left, right, work);

        for k in spans.start.max(1)..spans.end.min(count) {
            let b = &self.bays[k - 1];
            let p = work.particular[k - 1];
            let [start, stop] = self.bay_moments(loads, work, k - 1, left, right);
            let v = (stop - start - p.m) / b.length;
            let psi = b.rotations(start, stop, &p)[0];
            let near = &mut work.nodes[b.first];
            (near.w, near.psi, near.m[1], near.v[1]) = (0.0, psi, start, v);
            let s = self.fill(loads, b.first, b.last, State { w: 0.0, psi, m: start, v }, &mut work.nodes);
            let far = &mut work.nodes[b.last];
            // The far end is known: moment from the equations, no deflection.
            (far.w, far.psi, far.m[0], far.v[0]) = (0.0, s.psi, stop, s.v);
        }

        let turn = |bay: usize, end: usize| {
            self.bays.get(bay).map_or(0.0, |b| {
                let [start, stop] = self.bay_moments(loads, work, bay, left, right);
                b.rotations(start, stop, &work.particular[bay])[end]
            })
        };
        let over = [turn(0, 0), turn(count.saturating_sub(2), 1)];
        if spans.start == 0 {
            self.left_overhang(loads, left, over[0], work);
        }
        if spans.end > count {
            self.right_overhang(loads, right, over[1], work);
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

    fn right_overhang(&self, loads: &Loads, right: State, psi: f64, work: &mut Work) {
        let (last, end) = (self.supports[self.supports.len() - 1], self.x.len() - 1);
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

    /// Rotations of the two ends of the bay, with moments over its supports.
    fn rotations(&self, start: f64, stop: f64, p: &State) -> [f64; 2] {
        let [c0, c1] = self.free_rotations(p);
        [self.f00 * start + self.f01 * stop + c0, self.f11 * stop - self.f01 * start + c1]
    }
}

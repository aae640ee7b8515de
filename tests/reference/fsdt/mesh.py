"""Rectangular meshes: lines through every place that matters, drawn together where the solution is singular."""

import numpy as np
from skfem import MeshQuad
from skfem.mapping import MappingIsoparametric


def graded(places, singular, widest, layers, ratio=0.2):
    """Grid lines through `places`; beside each of `singular` the cells shrink by `ratio`, `layers` times.

    No cell is wider than `widest`.
    """
    places = sorted({round(float(p), 9) for p in places} | {round(float(s), 9) for s in singular})
    singular = {round(float(s), 9) for s in singular}
    lines = [places[0]]
    for a, b in zip(places, places[1:]):
        left, right = a in singular, b in singular
        inner = set()
        reach = (b - a) / 2 if left and right else b - a
        if left and right:
            inner.add(a + reach)
        if left:
            inner |= {a + reach * ratio**k for k in range(1, layers + 1)}
        if right:
            inner |= {b - reach * ratio**k for k in range(1, layers + 1)}
        for c in sorted(inner) + [b]:
            n = max(1, int(np.ceil((c - lines[-1]) / widest - 1e-9)))
            start = lines[-1]
            lines += [start + (c - start) * i / n for i in range(1, n)] + [c]
    return np.array(lines)


def grid(x, y):
    """Tensor grid whose cells all have their local axes along the global ones.

    The p-elements need that: their odd edge functions have a direction.
    """
    mesh = MeshQuad.init_tensor(x, y)
    p, t = mesh.p, mesh.t
    first, second = p[:, t[1]] - p[:, t[0]], p[:, t[3]] - p[:, t[0]]
    assert (first[1] > 0).all() and np.allclose(first[0], 0), "local axes differ from cell to cell"
    assert (second[0] > 0).all() and np.allclose(second[1], 0)
    return mesh


class Rectangles(MappingIsoparametric):
    """The mapping of a `grid`, with its inverse written down: iteration does not settle in cells of microns."""

    def __init__(self, mesh):
        super().__init__(mesh, mesh.elem(), mesh.bndelem)

    def invF(self, x, tind=None):
        p, t = self.mesh.p, self.mesh.t if tind is None else self.mesh.t[:, tind]
        first = (x[1] - p[1, t[0]][:, None]) / (p[1, t[1]] - p[1, t[0]])[:, None]
        second = (x[0] - p[0, t[0]][:, None]) / (p[0, t[3]] - p[0, t[0]])[:, None]
        return np.clip(np.array([first, second]), 0.0, 1.0)

"""An elastic beam under the plate: its cubics are exact members of the plate's own edge functions."""

import numpy as np
from scipy.sparse import coo_matrix, csc_matrix
from scipy.sparse.linalg import spsolve
from skfem import BilinearForm, LinearForm


NARROWEST = 0.02  # m


def hermite(t, h):
    """The four cubics on a cell of length `h`: value and slope at its start, value and slope at its end."""
    return (1 - 3 * t**2 + 2 * t**3, h * (t - 2 * t**2 + t**3), 3 * t**2 - 2 * t**3, h * (t**3 - t**2))


class Beam:
    """Euler beam along x; w of the plate equals its deflection all along, so it holds the plate both ways."""

    def __init__(self, model, support):
        self.model, self.support = model, support
        self.dofs = model.dofs_on(support)
        self.x = self.nodes(model, np.unique(model.mesh.p[0, model.mesh.facets[:, model.facets_on(support)]]))
        self.cells = np.diff(self.x)
        self.held = np.array([2 * self.node(post[0]) for post in support["posts"]])
        self.kept = np.setdiff1d(np.arange(2 * len(self.x)), self.held)
        self.traces = self.exact_traces()

    @staticmethod
    def nodes(model, lines):
        """Some of the plate's grid lines: those that matter, others no closer than `NARROWEST`.

        The beam is smooth where the plate is not, and 12 EI/h^3 of a cell of a tenth of a millimetre drowns the rest.
        """
        matter = np.array(sorted(model.places()[0]))
        chosen = [x for x in lines if np.min(abs(matter - x)) < 1e-8]
        for x in lines:
            if min(abs(x - c) for c in chosen) > NARROWEST:
                chosen.append(x)
        return np.sort(np.array(chosen))

    def node(self, x):
        i = int(np.argmin(abs(self.x - x)))
        assert abs(self.x[i] - x) < 1e-8
        return i

    def exact_traces(self):
        """Unknowns of the plate on the line, a column for each value and slope of the beam."""
        basis = self.model.line_basis(self.support)
        mass = BilinearForm(lambda u, v, _: u * v).assemble(basis).tocsc()[self.dofs][:, self.dofs]
        columns = np.zeros((len(self.dofs), 2 * len(self.x)))
        at = basis.global_coordinates().value[0]
        cell = np.clip(np.searchsorted(self.x, at.mean(axis=1)) - 1, 0, len(self.cells) - 1)
        h = self.cells[cell][:, None]
        t = (at - self.x[cell][:, None]) / h
        for k, shape in enumerate(hermite(t, h)):
            for i in range(len(self.cells)):
                only = np.where((cell == i)[:, None], shape, 0.0)
                columns[:, 2 * i + k] += LinearForm(lambda v, c: c["c"] * v).assemble(basis, c=only)[self.dofs]
        return spsolve(mass, csc_matrix(columns)).toarray()

    def trace(self, size):
        """Unknowns of the plate, of all `size`, from the free values and slopes of the beam."""
        kept = self.traces[:, self.kept]
        row, column = np.nonzero(abs(kept) > 1e-14 * abs(kept).max(axis=0))
        return coo_matrix((kept[row, column], (self.dofs[row], column)), shape=(size, len(self.kept)))

    def full_stiffness(self):
        n = 2 * len(self.x)
        k = np.zeros((n, n))
        for i, h in enumerate(self.cells):
            e = np.array([[12, 6 * h, -12, 6 * h], [6 * h, 4 * h * h, -6 * h, 2 * h * h],
                          [-12, -6 * h, 12, -6 * h], [6 * h, 2 * h * h, -6 * h, 4 * h * h]])
            k[2 * i : 2 * i + 4, 2 * i : 2 * i + 4] += self.support["EI"] / h**3 * e
        return k

    def stiffness(self):
        return csc_matrix(self.full_stiffness()[self.kept][:, self.kept])

    def values(self, free):
        """Deflection and slope at each node."""
        v = np.zeros(2 * len(self.x))
        v[self.kept] = free
        return v

    def mean_moment(self, free, x0, x1):
        """EI w'' averaged from x0 to x1, positive where the beam sags (w up)."""
        v = self.values(free)
        return self.support["EI"] * (v[2 * self.node(x1) + 1] - v[2 * self.node(x0) + 1]) / (x1 - x0)

    def post_force(self, free, residual, x):
        """Force of the post at `x` on the beam, up."""
        i = 2 * self.node(x)
        return float(self.full_stiffness()[i] @ self.values(free) + self.traces[:, i] @ residual[self.dofs])

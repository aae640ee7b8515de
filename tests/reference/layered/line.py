"""One direction of a grid of bricks: its matrices, from scikit-fem's line elements of any degree."""

import logging

import numpy as np
from skfem import Basis, BilinearForm, ElementLinePp, MeshLine

# It would rather have its own quadratic element; all degrees go one way here.
logging.getLogger("skfem.element.element_line.element_line_pp").setLevel(logging.ERROR)


class Line:
    """Bricks on a grid are products of line elements, so every matrix of the solid is a product of these."""

    def __init__(self, places, degree):
        self.x = np.array(places)
        self.basis = Basis(MeshLine(self.x), ElementLinePp(degree), intorder=2 * degree)
        self.n, self.degree = self.basis.N, degree
        self.middle = (self.x[1:] + self.x[:-1]) / 2
        self.gauss = np.polynomial.legendre.leggauss(degree + 1)

    def matrices(self, low=-np.inf, high=np.inf):
        """Of the cells between `low` and `high`: values with values, slopes with slopes, slope of the test with value."""
        inside = ((self.middle > low) & (self.middle < high)).astype(float)
        c = np.repeat(inside[:, None], self.basis.dx.shape[1], axis=1)
        forms = (
            BilinearForm(lambda u, v, p: p["c"] * u * v),
            BilinearForm(lambda u, v, p: p["c"] * u.grad[0] * v.grad[0]),
            BilinearForm(lambda u, v, p: p["c"] * u * v.grad[0]),
        )
        return [form.assemble(self.basis, c=c) for form in forms]

    def at(self, points, cells):
        """Matrices that give values and slopes at `points`, each in its cell."""
        values, slopes = np.zeros((len(points), self.n)), np.zeros((len(points), self.n))
        for row, (x, k) in enumerate(zip(points, cells)):
            h = self.x[k + 1] - self.x[k]
            xi = np.array([[(x - self.x[k]) / h]])
            # A fresh element: scikit-fem's keeps its polynomials for as long as the count of points is the same.
            element = ElementLinePp(self.degree)
            for i, dof in enumerate(self.basis.element_dofs[:, k]):
                value, slope = element.lbasis(xi, i)
                values[row, dof] += value[0]
                slopes[row, dof] += slope[0, 0] / h
        return values, slopes

    def window(self, low, high):
        """Points and weights (sum 1) for the mean from `low` to `high`, with their matrices; one point if they are one."""
        if high - low < 1e-12:
            k = int(np.clip(np.searchsorted(self.x, low) - 1, 0, len(self.x) - 2))
            return np.ones(1), *self.at([low], [k])
        points, weights, cells = [], [], []
        for k, (a, b) in enumerate(zip(self.x, self.x[1:])):
            a, b = max(a, low), min(b, high)
            if b - a > 1e-12:
                points += list(a + (b - a) * (self.gauss[0] + 1) / 2)
                weights += list((b - a) / (high - low) * self.gauss[1] / 2)
                cells += [k] * len(self.gauss[0])
        return np.array(weights), *self.at(points, cells)

    def end(self, first):
        """The unknown at the first or last place."""
        return int(self.basis.nodal_dofs[0, 0 if first else -1])

    def vertex(self, x):
        k = int(np.argmin(abs(self.x - x)))
        assert abs(self.x[k] - x) < 1e-9
        return int(self.basis.nodal_dofs[0, k])


class Plane(Line):
    """The direction across which nothing changes: plane strain."""

    def __init__(self):
        self.n = 1

    def matrices(self, *_):
        one, nought = np.ones((1, 1)), np.zeros((1, 1))
        return [one, nought, nought]

    def window(self, *_):
        return np.ones(1), np.ones((1, 1)), np.zeros((1, 1))

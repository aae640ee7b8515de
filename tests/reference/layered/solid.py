"""A layered panel as a solid: a quarter of it, symmetric about x = 0 and y = 0; z up, from its middle."""

import numpy as np
from scipy.sparse import bmat, csr_matrix, diags, kron, triu
from scipy.sparse.linalg import splu

from .line import Plane

AXES = "xyz"


def kron3(a, b, c):
    return kron(kron(a, b), c, format="csr")


def moduli(material):
    """C11, C12, C44 of a material with E, nu and G each by itself (alike along all three axes)."""
    e, nu, g = material
    c12 = e * nu / ((1 + nu) * (1 - 2 * nu))
    return e * (1 - nu) / ((1 + nu) * (1 - 2 * nu)), c12, g


class Solid:
    """Regions: (material, x from, x to, z from, z to). They must fill the panel once."""

    def __init__(self, x, y, z, regions):
        self.lines, self.regions = (x, y, z), regions
        self.shape = (x.n, y.n, z.n)
        self.n = x.n * y.n * z.n
        self.plane = isinstance(y, Plane)
        self.stiffness = self.assemble()
        self.load = np.zeros(3 * self.n)

    def assemble(self):
        x, y, z = self.lines
        ym = y.matrices()
        blocks = [[None] * 3 for _ in range(3)]
        for material, x0, x1, z0, z1 in self.regions:
            c11, c12, c44 = moduli(material)
            parts = (x.matrices(x0, x1), ym, z.matrices(z0, z1))
            for i in range(3):
                for j in range(i + 1):
                    block = self.block(parts, i, j, c11, c12, c44)
                    blocks[i][j] = block if blocks[i][j] is None else blocks[i][j] + block
        for i in range(3):
            for j in range(i):
                blocks[j][i] = blocks[i][j].T
        return bmat(blocks, format="csr")

    @staticmethod
    def block(parts, i, j, c11, c12, c44):
        """Test along axis i, trial along axis j."""
        def product(choice):
            return kron3(*(choice(m) for m in range(3)))

        if i == j:
            return sum(
                (c11 if k == i else c44) * product(lambda m, k=k: parts[m][1] if m == k else parts[m][0])
                for k in range(3))
        normal = product(lambda m: parts[m][2] if m == i else parts[m][2].T if m == j else parts[m][0])
        shear = product(lambda m: parts[m][2].T if m == i else parts[m][2] if m == j else parts[m][0])
        return c12 * normal + c44 * shear

    def numbers(self, field, x=None, y=None, z=None):
        """Unknowns of a displacement; each direction all or one."""
        index = np.arange(self.n).reshape(self.shape)
        for axis, k in enumerate((x, y, z)):
            if k is not None:
                index = np.take(index, [k], axis=axis)
        return AXES.index(field) * self.n + index.ravel()

    def face(self, x0, x1, y0, y1, top):
        """Points of a rectangle of the top or bottom face: weights in area, and rows that give w there."""
        x, y, z = self.lines
        wx, bx, _ = x.window(x0, x1)
        wy, by, _ = y.window(y0, y1)
        at_z = np.zeros((1, z.n))
        at_z[0, z.end(not top)] = 1.0
        width = 1.0 if self.plane else y1 - y0
        return np.kron(wx * (x1 - x0), wy * width), kron3(csr_matrix(bx), csr_matrix(by), csr_matrix(at_z))

    def press(self, pressure, x0, x1, y0, y1, top):
        """Pressure along z, up positive, on a rectangle of a face."""
        weights, rows = self.face(x0, x1, y0, y1, top)
        self.load[2 * self.n :] += pressure * (rows.T @ weights)

    def held(self):
        x, y, z = self.lines
        held = set(self.numbers("x", x=x.end(True)))
        held |= set(self.numbers("y")) if self.plane else set(self.numbers("y", y=y.end(True)))
        return held

    def solve(self, seat=None, held_w=()):
        """`seat`: (rectangle of the bottom, stiffness per area, lying) or None; `held_w`: unknowns of w held.

        A lying seat only presses: the points where it would pull let go, until none does.
        """
        free = np.setdiff1d(np.arange(3 * self.n), sorted(self.held() | set(held_w)))
        matrix = self.stiffness
        self.rounds = 1
        if seat is None:
            self.u = self.solved(matrix, free)
            return self
        rectangle, bed, lying = seat
        weights, rows = self.face(*rectangle, top=False)
        wide = csr_matrix((rows.data, rows.indices + 2 * self.n, rows.indptr), shape=(rows.shape[0], 3 * self.n))
        pressing = np.ones(len(weights), dtype=bool)
        for self.rounds in range(1, 40):
            self.u = self.solved(matrix + wide.T @ diags(bed * weights * pressing) @ wide, free)
            w = wide @ self.u
            now = w < 0 if lying else pressing
            if (now == pressing).all():
                break
            pressing = now
        else:
            raise RuntimeError("the seat's contact does not settle")
        self.seat_force = float(bed * (weights * pressing) @ -w)
        self.contact = float(weights[pressing].sum() / weights.sum())
        return self

    def solved(self, matrix, free):
        reduced = matrix[free][:, free]
        u = np.zeros(matrix.shape[0])
        scale = 1 / np.sqrt(reduced.diagonal())
        d = diags(scale)
        scaled = (d @ reduced @ d).tocsr()
        b = scale * self.load[free]
        if len(free) < 30_000:
            u[free] = scale * splu(scaled.tocsc(), permc_spec="MMD_AT_PLUS_A", diag_pivot_thresh=0.0,
                                   options={"SymmetricMode": True}).solve(b)
            return u
        from pypardiso import PyPardisoSolver

        solver = PyPardisoSolver(mtype=2)
        upper = triu(scaled, format="csr")
        upper.sort_indices()
        solver.factorize(upper)
        u[free] = scale * solver.solve(upper, b)
        solver.free_memory(everything=True)
        return u

    def gradient(self, x, y, z):
        """Mean of every displacement's derivative over a box, from (low, high) in each direction."""
        fields = self.u.reshape(3, *self.shape)
        windows = [line.window(*r) for line, r in zip(self.lines, (x, y, z))]
        out = np.zeros((3, 3))
        for axis in range(3):
            mean = [w @ (s if k == axis else v) for k, (w, v, s) in enumerate(windows)]
            out[:, axis] = np.einsum("fxyz,x,y,z->f", fields, *mean)
        return out

    def stress(self, material, x, y, z):
        """Mean stresses over a box of one material: xx, yy, zz, xz."""
        g = self.gradient(x, y, z)
        c11, c12, c44 = moduli(material)
        e = np.diag(g)
        direct = (c11 - c12) * e + c12 * e.sum()
        return {"xx": direct[0], "yy": direct[1], "zz": direct[2], "xz": c44 * (g[0, 2] + g[2, 0])}

    def deflection(self, x, y, z):
        fields = self.u.reshape(3, *self.shape)
        mean = [w @ v for w, v, _ in (line.window(*r) for line, r in zip(self.lines, (x, y, z)))]
        return float(np.einsum("xyz,x,y,z->", fields[2], *mean))

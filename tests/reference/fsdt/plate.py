"""Assembly of one problem on one mesh: stiffness, loads, supports, solution."""

import numpy as np
from scipy.sparse import block_diag, bmat, coo_matrix, csc_matrix, diags, hstack
from scipy.sparse.linalg import splu
from skfem import Basis, BilinearForm, ElementQuadP, FacetBasis, LinearForm

from . import mesh as meshing
from .beam import Beam

EPS = 1e-9
BENDING = ("D11", "D12", "D22", "D16", "D26", "D66")
MEMBRANE = ("A11", "A12", "A22", "A16", "A26", "A66")


def scalar_form(basis, first, second, weight):
    """Integral of weight * first(trial) * second(test); each is "v", "x" or "y": value or derivative."""

    def part(f, what):
        return f.value if what == "v" else f.grad["xy".index(what)]

    return BilinearForm(lambda u, v, c: c["c"] * part(u, first) * part(v, second)).assemble(basis, c=weight)


class Model:
    """A problem (see `problems.py`) on a grid of elements of degree `degree`."""

    def __init__(self, problem, widest, layers, degree=4):
        self.problem, self.degree = problem, degree
        p = problem
        self.lx, self.ly = p["plate"]["length_x"], p["plate"]["length_y"]
        x, y = self.places()
        self.mesh = meshing.grid(
            meshing.graded(x, p.get("singular_x", ()), widest, layers),
            meshing.graded(y, p.get("singular_y", ()), widest, layers),
        )
        self.basis = Basis(self.mesh, ElementQuadP(degree), intorder=2 * degree)
        self.n = self.basis.N
        self.shell = "A11" in p["stiffness"]
        self.fields = ["w", "tx", "ty"] + (["u", "v"] if self.shell else [])
        self.offset = {f: i * self.n for i, f in enumerate(self.fields)}
        self.centre = self.mesh.p[:, self.mesh.t].mean(axis=1)
        self.stiffness = self.assemble_stiffness()
        self.load = self.assemble_load()

    def places(self):
        """Every coordinate that needs a grid line."""
        x, y = {0.0, self.lx}, {0.0, self.ly}
        lists = ("region", "support", "load", "quantity")
        for entry in (e for name in lists for e in self.problem.get(name, ())):
            x |= {entry[k] for k in ("x", "x0", "x1") if k in entry}
            y |= {entry[k] for k in ("y", "y0", "y1") if k in entry}
            for post in entry.get("posts", ()):
                x.add(post[0])
                y.add(post[1])
        return x, y

    def inside(self, r):
        """Which elements lie in the rectangle `r`; without one, all."""
        if "x0" not in r:
            return np.ones(self.mesh.nelements, dtype=bool)
        (cx, cy) = self.centre
        return (cx > r["x0"]) & (cx < r["x1"]) & (cy > r["y0"]) & (cy < r["y1"])

    def constants(self, name):
        """A stiffness on every element, with the factors of the regions."""
        c = np.full(self.mesh.nelements, float(self.problem["stiffness"].get(name, 0.0)))
        for r in self.problem.get("region", ()):
            factor = r["bending_factor"] if name in BENDING else r["shear_factor"] if name in ("Sx", "Sy") else 1.0
            c[self.inside(r)] *= factor
        return c

    def weight(self, c):
        return np.repeat(c[:, None], self.basis.dx.shape[1], axis=1)

    def form(self, first, second, c):
        """None if the constant is nought everywhere."""
        return scalar_form(self.basis, first, second, self.weight(c)) if np.any(c) else None

    def membrane_like(self, c11, c12, c22, c16, c26, c66):
        """Blocks (1,1), (2,1), (2,2) of strains (a,x ; b,y ; a,y + b,x)."""

        def add(*terms):
            return sum((t for t in terms if t is not None), csc_matrix((self.n, self.n)))

        f = self.form
        return (
            add(f("x", "x", c11), f("x", "y", c16), f("y", "x", c16), f("y", "y", c66)),
            add(f("x", "y", c12), f("x", "x", c16), f("y", "y", c26), f("y", "x", c66)),
            add(f("y", "y", c22), f("y", "x", c26), f("x", "y", c26), f("x", "x", c66)),
        )

    def assemble_stiffness(self):
        sx, sy = self.constants("Sx"), self.constants("Sy")
        f = self.form
        k11, k21, k22 = self.membrane_like(*(self.constants(k) for k in BENDING))
        wx, wy = f("x", "v", sx), f("y", "v", sy)
        ww = f("x", "x", sx) + f("y", "y", sy)
        for s in self.problem.get("support", ()):
            if s["kind"] == "bed":
                ww = ww + f("v", "v", s["stiffness"] * self.inside(s))
        blocks = [
            [ww, wx.T, wy.T],
            [wx, k11 + f("v", "v", sx), k21.T],
            [wy, k21, k22 + f("v", "v", sy)],
        ]
        if self.shell:
            blocks = self.with_membrane(blocks)
        return bmat(blocks, format="csr")

    def with_membrane(self, blocks):
        """Adds u, v with strains ex = u,x - w kx, ey = v,y - w ky, exy = u,y + v,x - 2 w kxy."""
        a11, a12, a22, a16, a26, a66 = (self.constants(k) for k in MEMBRANE)
        k = [self.problem["stiffness"].get(c, 0.0) for c in ("kx", "ky", "kxy")]
        k[2] *= 2
        n = [a11 * k[0] + a12 * k[1] + a16 * k[2], a12 * k[0] + a22 * k[1] + a26 * k[2],
             a16 * k[0] + a26 * k[1] + a66 * k[2]]
        m11, m21, m22 = self.membrane_like(a11, a12, a22, a16, a26, a66)

        def coupling(direct, shear, along, across):
            terms = [self.form("v", along, -direct), self.form("v", across, -shear)]
            return sum((t for t in terms if t is not None), csc_matrix((self.n, self.n)))

        uw, vw = coupling(n[0], n[2], "x", "y"), coupling(n[1], n[2], "y", "x")
        blocks[0][0] = blocks[0][0] + self.form("v", "v", sum(a * b for a, b in zip(n, k)))
        return [
            blocks[0] + [uw.T, vw.T],
            blocks[1] + [None, None],
            blocks[2] + [None, None],
            [uw, None, None, m11, m21.T],
            [vw, None, None, m21, m22],
        ]

    def assemble_load(self):
        """Work of the pressures on w, and of the moments of heat on the curvatures."""
        total = np.zeros(len(self.fields) * self.n)
        heat = self.heat()
        if np.any(heat):
            for field, along in (("tx", 0), ("ty", 1)):
                form = LinearForm(lambda v, c, along=along: c["c"] * v.grad[along])
                start = self.offset[field]
                total[start : start + self.n] += form.assemble(self.basis, c=self.weight(heat))
        for load in self.loads():
            area = (load["x1"] - load["x0"]) * (load["y1"] - load["y0"]) if "x0" in load else None
            pressure = load["force"] / area if "force" in load else load["pressure"]
            q = self.weight(pressure * self.inside(load))
            total[: self.n] += LinearForm(lambda v, c: c["c"] * v).assemble(self.basis, c=q)
        return total

    def loads(self):
        """What presses."""
        return [load for load in self.problem.get("load", ()) if load["kind"] != "heat"]

    def heat(self):
        """On every element the moment of heat m, alike both ways: M = D k - m."""
        moment = np.zeros(self.mesh.nelements)
        for load in self.problem.get("load", ()):
            if load["kind"] == "heat":
                moment[self.inside(load)] += load["moment"]
        return moment

    def facets_on(self, line):
        """Facets on the straight line (along x or y) from (x0, y0) to (x1, y1)."""
        m = self.mesh.p[:, self.mesh.facets].mean(axis=1)
        length = self.mesh.p[:, self.mesh.facets[1]] - self.mesh.p[:, self.mesh.facets[0]]
        on = (m[0] > line["x0"] - EPS) & (m[0] < line["x1"] + EPS)
        on &= (m[1] > line["y0"] - EPS) & (m[1] < line["y1"] + EPS)
        across = 1 if abs(line["y1"] - line["y0"]) < EPS else 0
        return np.nonzero(on & (abs(length[across]) < EPS))[0]

    def dofs_on(self, line):
        return np.unique(self.basis.get_dofs(facets=self.facets_on(line)).all())

    def vertex(self, x, y):
        d = (self.mesh.p[0] - x) ** 2 + (self.mesh.p[1] - y) ** 2
        i = int(np.argmin(d))
        assert d[i] < EPS**2 * 100, f"no grid point at {x}, {y}"
        return int(self.basis.nodal_dofs[0, i])

    def held(self):
        """Numbers of the unknowns that are nought."""
        held = set()
        for s in self.problem.get("support", ()):
            if s["kind"] == "line":
                on = self.dofs_on(s)
                for field in s["holds"]:
                    held |= set((self.offset[field] + on).tolist())
        for x, y, field in self.problem.get("pins", ()):
            held.add(self.offset[field] + self.vertex(x, y))
        return held

    def reduction(self):
        """Matrix from the free unknowns to all, and the stiffness that beams add to the free ones."""
        size = self.stiffness.shape[0]
        self.beams = [Beam(self, s) for s in self.problem.get("support", ()) if s["kind"] == "beam"]
        slave = np.zeros(size, dtype=bool)
        for b in self.beams:
            slave[b.dofs] = True
        slave[list(self.held())] = True
        free = np.nonzero(~slave)[0]
        columns = [coo_matrix((np.ones(len(free)), (free, np.arange(len(free)))), shape=(size, len(free)))]
        extra = [csc_matrix((len(free), len(free)))]
        self.slices, start = [], len(free)
        for b in self.beams:
            columns.append(b.trace(size))
            extra.append(b.stiffness())
            self.slices.append(slice(start, start + columns[-1].shape[1]))
            start += columns[-1].shape[1]
        return hstack(columns, format="csc"), block_diag(extra, format="csc")

    def factor(self):
        """Factors the reduced, scaled stiffness; gives a solver on reduced right-hand sides."""
        self.p, beams = self.reduction()
        self.reduced = (self.p.T @ self.stiffness @ self.p + beams).tocsc()
        scale = 1 / np.sqrt(self.reduced.diagonal())
        d = diags(scale)
        lu = splu((d @ self.reduced @ d).tocsc(), permc_spec="MMD_AT_PLUS_A", diag_pivot_thresh=0.0,
                  options={"SymmetricMode": True})

        def solve(b):
            x = scale * lu.solve(scale * b)
            return x + scale * lu.solve(scale * (b - self.reduced @ x))

        return solve

    def solve(self):
        solve = self.factor()
        free = solve(self.p.T @ self.load)
        self.u = self.p @ free
        self.beam_values = [free[s] for s in self.slices]
        # What holds the plate: forces that its own stiffness (with beds) leaves over.
        self.residual = self.stiffness @ self.u - self.load
        self.energy = 0.5 * float(self.load @ self.u)
        return self

    def of(self, field):
        start = self.offset[field]
        return self.u[start : start + self.n]

    def line_basis(self, line):
        return self.facet_basis(self.facets_on(line))

    def facet_basis(self, facets):
        element, mapping = ElementQuadP(self.degree), meshing.Rectangles(self.mesh)
        return FacetBasis(self.mesh, element, mapping=mapping, facets=facets, intorder=2 * self.degree)

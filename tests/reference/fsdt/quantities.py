"""What is read off a solved model. Never a value at a singular point: means over small rectangles, and totals."""

import numpy as np
from scipy.sparse.linalg import spsolve
from skfem import BilinearForm

UNITS = {"deflection": "m", "reaction": "N", "bed_force": "N", "post_force": "N", "beam_moment": "N*m",
         "strain_energy": "J", "frequency": "Hz", "buckling_load": "N/m"}


def unit(quantity):
    if quantity["kind"] == "mean":
        return "N" if quantity["of"][0] == "M" else "N/m"
    return UNITS[quantity["kind"]]


class Reader:
    """Reads the quantities of a problem off a solved `model`."""

    def __init__(self, model):
        self.model = model
        self.supports = {s["name"]: s for s in model.problem.get("support", ())}
        self._density = None

    def value(self, q):
        return float(getattr(self, q["kind"])(q))

    def strain_energy(self, _):
        return self.model.energy

    def deflection(self, q):
        return self.model.of("w")[self.model.vertex(q["x"], q["y"])]

    def mean(self, q):
        """Mean of a stress resultant over a rectangle."""
        field, inside = self.resultant(q["of"]), self.model.inside(q)
        dx = self.model.basis.dx
        return (field * dx)[inside].sum() / dx[inside].sum()

    def resultant(self, name):
        m = self.model
        w, tx, ty = (m.basis.interpolate(m.of(f)) for f in ("w", "tx", "ty"))

        def c(key):
            return m.constants(key)[:, None]

        if name == "Qx":
            return c("Sx") * (w.grad[0] + tx.value)
        if name == "Qy":
            return c("Sy") * (w.grad[1] + ty.value)
        k = (tx.grad[0], ty.grad[1], tx.grad[1] + ty.grad[0])
        if name[0] == "M":
            rows = {"Mx": ("D11", "D12", "D16"), "My": ("D12", "D22", "D26"), "Mxy": ("D16", "D26", "D66")}
        else:
            u, v = (m.basis.interpolate(m.of(f)) for f in "uv")
            b = m.problem["stiffness"]
            k = (u.grad[0] - w.value * b.get("kx", 0.0), v.grad[1] - w.value * b.get("ky", 0.0),
                 u.grad[1] + v.grad[0] - 2 * w.value * b.get("kxy", 0.0))
            rows = {"Nx": ("A11", "A12", "A16"), "Ny": ("A12", "A22", "A26"), "Nxy": ("A16", "A26", "A66")}
        heat = m.heat()[:, None] if name in ("Mx", "My") else 0.0
        return sum(c(key) * part for key, part in zip(rows[name], k)) - heat

    def line_density(self):
        """Force of the line supports on the plate per length: the function of the edges' own space whose work on
        every deflection is that of the residual forces."""
        if self._density is not None:
            return self._density
        m = self.model
        lines = [s for s in self.supports.values() if s["kind"] == "line"]
        facets = np.unique(np.concatenate([m.facets_on(s) for s in lines]))
        basis = m.facet_basis(facets)
        dofs = np.unique(m.basis.get_dofs(facets=facets).all())
        mass = BilinearForm(lambda u, v, _: u * v).assemble(basis).tocsc()[dofs][:, dofs]
        density = np.zeros(m.n)
        density[dofs] = spsolve(mass, m.residual[dofs])
        self._density = density
        return density

    def reaction(self, q):
        """Force of a line support on the plate, up; of the part of it in the rectangle given, or of all of it."""
        line = self.supports[q["support"]]
        part = {k: q.get(k, line[k]) for k in ("x0", "x1", "y0", "y1")}
        basis = self.model.line_basis(part)
        return (basis.interpolate(self.line_density()).value * basis.dx).sum()

    def bed_force(self, q):
        """Force of a spring bed on the plate, up."""
        m, bed = self.model, self.supports[q["support"]]
        w = m.basis.interpolate(m.of("w")).value
        return -bed["stiffness"] * (w * m.basis.dx)[m.inside(bed)].sum()

    def beam(self, q):
        names = [s["name"] for s in self.model.problem["support"] if s["kind"] == "beam"]
        i = names.index(q["support"])
        return self.model.beams[i], self.model.beam_values[i]

    def post_force(self, q):
        beam, values = self.beam(q)
        return beam.post_force(values, self.model.residual, q["x"])

    def beam_moment(self, q):
        beam, values = self.beam(q)
        return beam.mean_moment(values, q["x0"], q["x1"])

    def balance(self):
        """Out-of-balance force, and moments about the axes, over the load.

        The forces of the supports are those that the other methods here read off. Where supports hold more than w
        they take couples too, and where they hold a shell in its plane its membrane carries: then only what is left
        of the three sums is meant.
        """
        held = {f for s in self.supports.values() for f in s.get("holds", ())} - {"w"}
        if held & {"u", "v"}:
            return 0.0
        load = self.load_resultants()
        total = load + sum(self.resultants(s) for s in self.supports.values())
        size = abs(load[0]) or self.pressing()
        over = abs(total) / (size * np.array([1.0, self.model.lx, self.model.ly]))
        return float(over[0] if held else over.max())

    def pressing(self):
        """What presses and pulls on the lines, all counted up: heat loads nothing, and has them balance each other."""
        lines = [s for s in self.supports.values() if s["kind"] == "line"]
        bases = [self.model.line_basis(line) for line in lines]
        return sum((abs(basis.interpolate(self.line_density()).value) * basis.dx).sum() for basis in bases)

    def resultants(self, support):
        """Force up, and its moments (x times force, y times force), of one support on the plate."""
        m = self.model
        if support["kind"] == "beam":
            posts = [(self.post_force({"support": support["name"], "x": x}), x, y) for x, y in support["posts"]]
            return np.array([(f, f * x, f * y) for f, x, y in posts]).sum(axis=0)
        if support["kind"] == "bed":
            w, inside = m.basis.interpolate(m.of("w")).value, m.inside(support)
            f, at = (-support["stiffness"] * w * m.basis.dx)[inside], m.basis.global_coordinates().value[:, inside]
        else:
            basis = m.line_basis(support)
            f, at = basis.interpolate(self.line_density()).value * basis.dx, basis.global_coordinates().value
        return np.array([f.sum(), (f * at[0]).sum(), (f * at[1]).sum()])

    def load_resultants(self):
        m = self.model
        total = np.zeros(3)
        for load in m.loads():
            r = {"x0": 0.0, "x1": m.lx, "y0": 0.0, "y1": m.ly} | load
            area = (r["x1"] - r["x0"]) * (r["y1"] - r["y0"])
            f = load["force"] if "force" in load else load["pressure"] * area
            total += f * np.array([1, (r["x0"] + r["x1"]) / 2, (r["y0"] + r["y1"]) / 2])
        return total

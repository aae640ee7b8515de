"""Closed forms on a plate with hard simple supports all round (w and the tangential rotation held): double series."""

import numpy as np

TERMS = 1000


def strains(p, alpha, beta):
    """Amplitude of strain energy's matrix for w, tx, ty (and u, v) ~ sin sin, cos sin, sin cos: exact for each term."""
    s = {k: p["stiffness"].get(k, 0.0) for k in
         ("D11", "D12", "D22", "D66", "Sx", "Sy", "A11", "A12", "A22", "A66", "kx", "ky")}
    shell = s["A11"] > 0
    size = 5 if shell else 3
    k = np.zeros(alpha.shape + (size, size))

    def put(i, j, value):
        k[..., i, j] += value
        if i != j:
            k[..., j, i] += value

    def membrane(i, j, c11, c12, c22, c66):
        put(i, i, c11 * alpha**2 + c66 * beta**2)
        put(j, j, c22 * beta**2 + c66 * alpha**2)
        put(i, j, (c12 + c66) * alpha * beta)

    put(0, 0, s["Sx"] * alpha**2 + s["Sy"] * beta**2)
    put(0, 1, s["Sx"] * alpha)
    put(0, 2, s["Sy"] * beta)
    membrane(1, 2, s["D11"], s["D12"], s["D22"], s["D66"])
    put(1, 1, s["Sx"] + 0 * alpha)
    put(2, 2, s["Sy"] + 0 * alpha)
    if shell:
        nx = s["A11"] * s["kx"] + s["A12"] * s["ky"]
        ny = s["A12"] * s["kx"] + s["A22"] * s["ky"]
        membrane(3, 4, s["A11"], s["A12"], s["A22"], s["A66"])
        put(0, 0, nx * s["kx"] + ny * s["ky"] + 0 * alpha)
        # ex = u,x - w kx with u ~ cos sin: u,x = -alpha u, so the products have a plus.
        put(0, 3, nx * alpha)
        put(0, 4, ny * beta)
    return k


class Navier:
    """The solution under uniform pressure."""

    def __init__(self, problem):
        (load,) = problem["load"]
        self.p = problem
        a, b = problem["plate"]["length_x"], problem["plate"]["length_y"]
        m = np.arange(1, TERMS, 2)
        self.alpha, self.beta = np.meshgrid(m * np.pi / a, m * np.pi / b, indexing="ij")
        self.a, self.b = a, b
        k = strains(problem, self.alpha, self.beta)
        q = np.zeros(k.shape[:-1])
        mm, nn = np.meshgrid(m, m, indexing="ij")
        q[..., 0] = 16 * load["pressure"] / (np.pi**2 * mm * nn)
        self.c = np.linalg.solve(k, q[..., None])[..., 0]
        self.energy = 0.5 * (self.c * q).sum() * a * b / 4

    def value(self, q):
        if q["kind"] == "strain_energy":
            return self.energy
        if q["kind"] == "deflection":
            return (self.c[..., 0] * np.sin(self.alpha * q["x"]) * np.sin(self.beta * q["y"])).sum()
        if q["kind"] == "mean":
            return self.mean(q["of"], q["x0"], q["x1"], q["y0"], q["y1"])
        return self.reaction(q)

    def mean(self, of, x0, x1, y0, y1):
        s, (al, be) = self.p["stiffness"], (self.alpha, self.beta)

        def sin(k, c0, c1):
            return (np.cos(k * c0) - np.cos(k * c1)) / (k * (c1 - c0))

        def cos(k, c0, c1):
            return (np.sin(k * c1) - np.sin(k * c0)) / (k * (c1 - c0))

        w, tx, ty = (self.c[..., i] for i in range(3))
        if of == "Qx":
            return (s["Sx"] * (al * w + tx) * cos(al, x0, x1) * sin(be, y0, y1)).sum()
        if of == "Qy":
            return (s["Sy"] * (be * w + ty) * sin(al, x0, x1) * cos(be, y0, y1)).sum()
        if of == "Mxy":
            return (s["D66"] * (be * tx + al * ty) * cos(al, x0, x1) * cos(be, y0, y1)).sum()
        if of[0] == "M":
            d = (s["D11"], s["D12"]) if of == "Mx" else (s["D12"], s["D22"])
            first, second = -al * tx, -be * ty
        else:
            d = (s["A11"], s["A12"]) if of == "Nx" else (s["A12"], s["A22"])
            u, v = self.c[..., 3], self.c[..., 4]
            first, second = -al * u - w * s.get("kx", 0.0), -be * v - w * s.get("ky", 0.0)
        return ((d[0] * first + d[1] * second) * sin(al, x0, x1) * sin(be, y0, y1)).sum()

    def reaction(self, q):
        """Of a whole edge: the shear along it, as its support takes it up. The tail falls with 1/terms: extrapolated."""
        line = next(s for s in self.p["support"] if s["name"] == q["support"])
        al, be, (w, tx, ty) = self.alpha, self.beta, (self.c[..., i] for i in range(3))
        if line["x0"] == line["x1"]:
            terms = -self.p["stiffness"]["Sx"] * (al * w + tx) * 2 / be
        else:
            terms = -self.p["stiffness"]["Sy"] * (be * w + ty) * 2 / al
        half = TERMS // 4
        return 2 * terms.sum() - terms[:half, :half].sum()


def roots(problem, modes=60):
    """Stiffness of each mode on w alone (tx, ty condensed), isotropic or orthotropic, and alpha, beta."""
    a, b = problem["plate"]["length_x"], problem["plate"]["length_y"]
    m = np.arange(1, modes)
    alpha, beta = np.meshgrid(m * np.pi / a, m * np.pi / b, indexing="ij")
    k = strains(problem, alpha, beta)
    inner = np.linalg.solve(k[..., 1:, 1:], k[..., 1:, :1])
    return k[..., 0, 0] - (k[..., :1, 1:] @ inner)[..., 0, 0], alpha, beta


def frequency(problem):
    k, _, _ = roots(problem)
    return float(np.sqrt(k.min() / problem["mass"]) / (2 * np.pi))


def buckling(problem):
    k, alpha, beta = roots(problem)
    n = problem["compression"]
    return float((k / (n["nx"] * alpha**2 + n["ny"] * beta**2)).min())

"""What the assembly must give exactly, on a few cells: the energy of constant strains, with every coupling."""

import numpy as np
from scipy.sparse.linalg import spsolve
from skfem import LinearForm

from .plate import BENDING, MEMBRANE, Model


def check_assembly():
    """Energy of a field with constant curvature, shear and membrane strain against area * (strains . stiffness)."""
    numbers = np.random.default_rng(1).uniform(0.5, 2.0, 40)
    stiffness = dict(zip(BENDING + MEMBRANE + ("Sx", "Sy", "kx", "ky", "kxy"), numbers.tolist()))
    a, b = 1.3, 0.7
    model = Model({"plate": {"length_x": a, "length_y": b}, "stiffness": stiffness, "singular_x": (0.5,)}, 0.4, 2, 3)
    r = numbers[20:]
    kx, ky, g, h, e, f, gx, gy, w0 = r[0], r[1], r[2], r[3], r[4], r[5], r[6], r[7], r[8]
    # Curvature: tx = kx x + g y, ty = h x + ky y, and w such that the shear strains are constant needs g = h.
    h = g
    fields = {
        "tx": lambda x, y: kx * x + g * y,
        "ty": lambda x, y: h * x + ky * y,
        "w": lambda x, y: gx * x + gy * y - kx * x**2 / 2 - g * x * y - ky * y**2 / 2 + w0,
        "u": lambda x, y: e * x + f * y,
        "v": lambda x, y: h * x - e * y,
    }
    mass = model.form("v", "v", np.ones(model.mesh.nelements)).tocsc()
    u = np.concatenate([
        spsolve(mass, LinearForm(lambda v, c: fields[name](*c.x) * v).assemble(model.basis)) for name in model.fields])
    s = stiffness
    bend, shear = np.array([kx, ky, g + h]), np.array([gx, gy])
    d, m = (np.array([[s[k + "11"], s[k + "12"], s[k + "16"]], [s[k + "12"], s[k + "22"], s[k + "26"]],
                      [s[k + "16"], s[k + "26"], s[k + "66"]]]) for k in "DA")
    x, weight = np.polynomial.legendre.leggauss(8)
    x, y = np.meshgrid(a * (x + 1) / 2, b * (x + 1) / 2, indexing="ij")
    wk = fields["w"](x, y)[..., None] * np.array([s["kx"], s["ky"], 2 * s["kxy"]])
    strain = np.array([e, -e, f + h]) - wk
    membrane = (np.einsum("...i,ij,...j", strain, m, strain) * np.outer(weight, weight)).sum() * a * b / 4
    energy = a * b * (bend @ d @ bend + shear @ np.diag([s["Sx"], s["Sy"]]) @ shear) + membrane
    assembled = u @ (model.stiffness @ u)
    assert abs(assembled - energy) < 1e-10 * energy, f"assembled {assembled}, exact {energy}"


def check_heat():
    """Heat alone bends a free plate to the sphere k = m/(D (1 + nu)), and leaves no forces."""
    a, b, d, nu, moment = 1.3, 0.7, 2.0, 0.3, 0.9
    stiffness = {"D11": d, "D12": nu * d, "D22": d, "D66": d * (1 - nu) / 2, "Sx": 5.0, "Sy": 5.0}
    load = [{"kind": "heat", "moment": moment}]
    model = Model({"plate": {"length_x": a, "length_y": b}, "stiffness": stiffness, "load": load}, 0.4, 2, 3)
    k = moment / (d * (1 + nu))
    fields = {"tx": lambda x, y: k * x, "ty": lambda x, y: k * y, "w": lambda x, y: -k * (x**2 + y**2) / 2}
    mass = model.form("v", "v", np.ones(model.mesh.nelements)).tocsc()
    u = np.concatenate([
        spsolve(mass, LinearForm(lambda v, c: fields[name](*c.x) * v).assemble(model.basis)) for name in model.fields])
    left = abs(model.stiffness @ u - model.load).max()
    assert left < 1e-12 * moment * (a + b), f"a free plate is loaded by heat: {left}"

"""The closed forms of sweep.rs over the same candidates, by arrays: sweep.py FOLDER.

Written from the formulas of the theory of laminates, not from the program: plies to stiffness, stiffness to rigidity, all
candidates of an outer skin at once. Exit code 1: some number differs by more than a billionth.
"""

import json
import sys
import time
from pathlib import Path

import numpy as np

NEAR = 1e-9
"""Rounding: both work out the same formulas, in another order of sums."""

TIMES = 3


def ply_stiffness(ply):
    """Plane stress of a ply, turned into the axes of the top."""
    e1, e2, g12, nu12, _, angle = ply
    nu21 = nu12 * e2 / e1
    q11, q22, q12, q66 = e1 / (1 - nu12 * nu21), e2 / (1 - nu12 * nu21), nu12 * e2 / (1 - nu12 * nu21), g12
    c, s = np.cos(angle), np.sin(angle)
    turn = np.array([[c * c, s * s, 2 * c * s], [s * s, c * c, -2 * c * s], [-c * s, c * s, c * c - s * s]])
    back = np.linalg.inv(turn)
    own = np.array([[q11, q12, 0], [q12, q22, 0], [0, 0, q66]])
    engineering = np.diag([1.0, 1.0, 2.0])
    return back @ own @ engineering @ turn @ np.linalg.inv(engineering)


def skin(plies):
    """A, B, D about the middle, and the thickness."""
    thick = sum(ply[4] for ply in plies)
    a, b, d = np.zeros((3, 3)), np.zeros((3, 3)), np.zeros((3, 3))
    z = -thick / 2
    for ply in plies:
        q, top = ply_stiffness(ply), z + ply[4]
        a += q * (top - z)
        b += q * (top**2 - z**2) / 2
        d += q * (top**3 - z**3) / 3
        z = top
    return a, b, d, thick


def stacked(skins):
    parts = [skin(plies) for plies in skins]
    return [np.array([part[number] for part in parts]) for number in range(4)]


def sweep(given):
    """Rigidity, shear stiffness, core shear, sag under a pressure and under a load: core by outer by inner skin."""
    span, pressure, load = given["span"], given["pressure"], given["load"]
    cores = np.array(given["cores"])
    outer, inner = stacked(given["outer"]), stacked(given["inner"])
    shape = (len(cores), len(outer[3]), len(inner[3]))

    def over(values, axis):
        """Values of one part along its axis of all candidates."""
        own = [1, 1, 1]
        own[axis] = len(values)
        return values.reshape(own + list(values.shape[1:]))

    c, e, nu, g = (over(column, 0) for column in cores.T)
    t_o, t_i = over(outer[3], 1), over(inner[3], 2)
    # Middles of the skins and of the core, inwards of the middle of the whole.
    half = (t_o + c + t_i) / 2
    z_o, z_c, z_i = t_o / 2 - half, t_o + c / 2 - half, half - t_i / 2

    # A core is alike in all directions of its plane.
    q_c = np.zeros(c.shape + (3, 3))
    q_c[..., 0, 0] = q_c[..., 1, 1] = e / (1 - nu**2)
    q_c[..., 0, 1] = q_c[..., 1, 0] = nu * e / (1 - nu**2)
    q_c[..., 2, 2] = e / (2 * (1 + nu))
    a_o, b_o, d_o = (over(part, 1) for part in outer[:3])
    a_i, b_i, d_i = (over(part, 2) for part in inner[:3])

    def by(number, matrix):
        return number[..., None, None] * matrix

    a_c, d_c = by(c, q_c), by(c**3 / 12, q_c)
    a = a_o + a_c + a_i
    b = b_o + by(z_o, a_o) + by(z_c, a_c) + b_i + by(z_i, a_i)
    d = d_o + by(2 * z_o, b_o) + by(z_o**2, a_o) + d_c + by(z_c**2, a_c) + d_i + by(2 * z_i, b_i) + by(z_i**2, a_i)
    free = d - b @ np.linalg.solve(a, b)
    rigidity = 1 / np.linalg.inv(free)[..., 0, 0]

    lever = z_i + b_i[..., 0, 0] / a_i[..., 0, 0] - z_o - b_o[..., 0, 0] / a_o[..., 0, 0]
    stiffness = g * lever**2 / c
    shear = pressure * span / (2 * lever)
    even = 5 * pressure * span**4 / (384 * rigidity) + pressure * span**2 / (8 * stiffness)
    middle = load * span**3 / (48 * rigidity) + load * span / (4 * stiffness)
    numbers = [rigidity, stiffness, shear, even, middle]
    return np.stack([np.broadcast_to(number, shape) for number in numbers], axis=-1).reshape(-1, 5)


def main():
    folder = Path(sys.argv[1])
    given = json.loads((folder / "given.json").read_text())
    found = np.fromfile(folder / "found.f64", dtype="<f8").reshape(-1, 5)
    seconds = []
    for _ in range(TIMES):
        start = time.perf_counter()
        swept = sweep(given)
        seconds.append(time.perf_counter() - start)
    fewest = min(seconds)
    what = f"closed form alone, numpy {np.__version__}"
    print(f"{what:<58} {len(swept):>8} {fewest:>9.3f} s {len(swept) / fewest:>12.1f} a second")
    print(f"so the closed form is {fewest / given['seconds']:.1f} times as fast here, one thread each")
    if found.shape != swept.shape:
        sys.exit(f"{found.shape} numbers here, {swept.shape} there")
    apart = np.abs(found / swept - 1)
    worst = np.unravel_index(np.argmax(apart), apart.shape)
    print(f"furthest apart: {apart[worst]:.1e} of the number (candidate {worst[0]}, number {worst[1]})")
    if not apart[worst] <= NEAR:
        sys.exit("the two do not agree")


if __name__ == "__main__":
    main()

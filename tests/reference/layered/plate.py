"""The same panel as a shear-deformable plate, and the closed form of the skins' own bending beside a hard edge."""

import math

from fsdt.plate import Model
from fsdt.quantities import Reader

from . import panel as p

MODULUS = p.SKIN[0] / (1 - p.SKIN[1] ** 2)
FLANGES, SKINS = MODULUS * p.T * p.D**2 / 2, MODULUS * p.T**3 / 6
RIGIDITY, SHEAR = FLANGES + SKINS, p.CORE[2] * p.D**2 / p.C
STRIP_BENDING = 1 + p.STRIP[0] / (1 - p.STRIP[1] ** 2) * p.C**3 / 12 / RIGIDITY
STRIP_SHEAR = p.STRIP[2] / p.CORE[2]

DECAY = math.sqrt(FLANGES * SKINS / (SHEAR * RIGIDITY))
"""1/alpha: over it the skins' own bending falls to 1/e in the theory with a core that keeps its thickness."""


def edge_stress(shear):
    """Outer fibre of one skin from m = V D0/(alpha D) Df/D2, at a hard edge, of the shear force per width there."""
    return abs(shear) * DECAY * FLANGES / RIGIDITY / 2 * 6 / p.T**2


def problem(seat, load, strip, plane):
    """`seat`: "line" under the seat's middle, or as the solid's."""
    width = 0.02 if plane else 2 * p.HALF_WIDTH
    middle, nu = p.HALF_LENGTH, p.SKIN[1]
    d = RIGIDITY
    out = {
        "plate": {"length_x": 2 * middle, "length_y": width},
        "stiffness": {"D11": d, "D12": nu * d, "D22": d, "D66": d * (1 - nu) / 2, "Sx": SHEAR, "Sy": SHEAR},
        "support": [], "load": [], "region": [], "quantity": [],
        "singular_x": tuple(middle + s * x for x in (*p.SEAT, p.SEAT_CENTRE, *p.STRIP_AT) for s in (-1, 1)),
    }

    def both(x0, x1):
        return [{"x0": middle + x0, "x1": middle + x1, "y0": 0.0, "y1": width},
                {"x0": middle - x1, "x1": middle - x0, "y0": 0.0, "y1": width}]

    if load == "uniform":
        out["load"].append({"pressure": -p.PRESSURE})
    else:
        c, y, h = middle, width / 2, p.PATCH
        out["load"].append({"force": -p.FORCE, "x0": c - h, "x1": c + h, "y0": y - h, "y1": y + h})
    if strip:
        out["region"] = [r | {"bending_factor": STRIP_BENDING, "shear_factor": STRIP_SHEAR} for r in both(*p.STRIP_AT)]
    names = ("right", "left")
    if seat == "line":
        out["support"] = [{"name": n, "kind": "line", "holds": ["w"]} | r
                          for n, r in zip(names, both(p.SEAT_CENTRE, p.SEAT_CENTRE))]
    elif seat == "even":
        pressure = p.PRESSURE * p.HALF_LENGTH / (p.SEAT[1] - p.SEAT[0])
        out["load"] += [{"pressure": pressure} | r for r in both(*p.SEAT)]
        c = p.SEAT_CENTRE
        out["pins"] = [[middle - c, 0.0, "w"], [middle + c, 0.0, "w"], [middle - c, width, "w"]]
    else:
        bed = p.PAD if seat == "pad" else p.RIGID
        out["support"] = [{"name": n, "kind": "bed", "stiffness": bed} | r for n, r in zip(names, both(*p.SEAT))]
    if plane:
        out["support"] += [{"name": f"y {y}", "kind": "line", "holds": ["ty"], "x0": 0.0, "x1": 2 * middle, "y0": y, "y1": y}
                           for y in (0.0, width)]
    return out, middle, width


def values(seat, load, strip, plane):
    """Name to value, the names as those of the solid; stresses from the plate's moment and shear force.

    "own": a skin bends about its own middle with -w,xx, which is tx,x less the slope of the shear angle.
    """
    model_of, middle, width = problem(seat, load, strip, plane)
    y0, y1 = width / 2, width / 2 + (0.01 if not plane else width / 2)

    def mean(of, x0, x1):
        return {"kind": "mean", "of": of, "x0": middle + x0, "x1": middle + x1, "y0": y0, "y1": y1}

    asked = {}
    for name, kind, x0, x1 in p.places(strip):
        if kind == "skins":
            asked[name] = mean("Mx", x0, x1)
            half = (x0 + x1) / 2
            asked[name, "-x"], asked[name, "+x"] = mean("Qx", x0, half), mean("Qx", half, x1)
            asked[name, "-y"] = mean("Qy", x0, x1) | {"y1": (y0 + y1) / 2}
            asked[name, "+y"] = mean("Qy", x0, x1) | {"y0": (y0 + y1) / 2}
        else:
            asked[name] = mean("Qx", x0, x1)
    edge = (p.STRIP_AT if strip else p.SEAT)[0]
    asked["shear force at the edge"] = mean("Qx", edge - 0.002, edge)
    c = p.SEAT_CENTRE
    seat_line = {"x0": middle + c - 1e-3, "x1": middle + c + 1e-3, "y0": 0.0, "y1": width}
    model_of["quantity"] = list(asked.values()) + [seat_line, {"x": middle, "y": width / 2}]
    model = Model(model_of, 0.06, 3, 4).solve()
    reader = Reader(model)
    out = {}
    for name, kind, x0, x1 in p.places(strip):
        v = reader.value(asked[name])
        if kind == "core":
            for word in ("mid-core", "mean over the core"):
                out[f"core shear, {word}, {name}"] = v / p.D
            continue
        per_strain = MODULUS * v / RIGIDITY
        slope = {}
        for axis, width_of in (("x", x1 - x0), ("y", y1 - y0)):
            ends = (reader.value(asked[name, sign + axis]) for sign in "+-")
            slope[axis] = (next(ends) - next(ends)) / (width_of / 2) / SHEAR
        own = MODULUS * (slope["x"] + p.SKIN[1] * slope["y"]) * p.T / 2
        for word, sign in (("top", 1), ("bottom", -1)):
            out[f"{word} skin, membrane, {name}"] = sign * per_strain * p.D / 2
            out[f"{word} skin, outer fibre, {name}"] = sign * per_strain * p.TOP
            out[f"own {word} skin, outer fibre, {name}"] = sign * (per_strain * p.TOP - own)
    inside = model.inside(seat_line)
    w = model.basis.interpolate(model.of("w")).value
    at_seat = (w * model.basis.dx)[inside].sum() / model.basis.dx[inside].sum()
    middle_w = model.of("w")[model.vertex(middle, width / 2)]
    out["deflection of midspan below the seat's middle"] = middle_w - at_seat
    out["shear force at the edge"] = reader.value(asked["shear force at the edge"])
    return out

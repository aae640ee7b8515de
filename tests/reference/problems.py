"""The problems of part A. SI units; see README.md for what each word means."""

import math

NU, D, S = 0.3, 4500.0, 1.2e6
A, B = 2.4, 1.6


def isotropic(d, s, nu=NU):
    return {"D11": d, "D12": nu * d, "D22": d, "D66": d * (1 - nu) / 2, "Sx": s, "Sy": s}


def turned(d11, d12, d22, d66, s, degrees):
    """Orthotropic bending stiffness with its axes turned by an angle: gives D16, D26."""
    c, n = math.cos(math.radians(degrees)), math.sin(math.radians(degrees))
    h = d12 + 2 * d66
    return {
        "D11": d11 * c**4 + 2 * h * c**2 * n**2 + d22 * n**4,
        "D22": d11 * n**4 + 2 * h * c**2 * n**2 + d22 * c**4,
        "D12": (d11 + d22 - 4 * d66) * c**2 * n**2 + d12 * (c**4 + n**4),
        "D66": (d11 + d22 - 2 * d12 - 2 * d66) * c**2 * n**2 + d66 * (c**4 + n**4),
        "D16": (d11 - d12 - 2 * d66) * c**3 * n + (d12 - d22 + 2 * d66) * c * n**3,
        "D26": (d11 - d12 - 2 * d66) * c * n**3 + (d12 - d22 + 2 * d66) * c**3 * n,
        "Sx": s,
        "Sy": s,
    }


def rectangle(x0, x1, y0, y1):
    return {"x0": x0, "x1": x1, "y0": y0, "y1": y1}


def line(name, x0, x1, y0, y1, *holds):
    return {"name": name, "kind": "line"} | rectangle(x0, x1, y0, y1) | {"holds": list(holds)}


def edges(a, b, hard, membrane=False):
    """Simple supports all round; hard ones hold the tangential rotation, and for a shell the tangential movement."""
    of_x = ["w"] + (["ty"] if hard else []) + (["v"] if membrane else [])
    of_y = ["w"] + (["tx"] if hard else []) + (["u"] if membrane else [])
    return [line("left", 0.0, 0.0, 0.0, b, *of_x), line("right", a, a, 0.0, b, *of_x),
            line("front", 0.0, a, 0.0, 0.0, *of_y), line("back", 0.0, a, b, b, *of_y)]


def deflection(name, x, y):
    return {"name": "w " + name, "kind": "deflection", "x": x, "y": y}


def mean(name, of, x0, x1, y0, y1):
    return {"name": f"{of} {name}", "kind": "mean", "of": of} | rectangle(x0, x1, y0, y1)


def reaction(name, support, **part):
    return {"name": "reaction " + name, "kind": "reaction", "support": support} | part


ENERGY = {"name": "strain energy", "kind": "strain_energy"}
UNIFORM = [{"kind": "pressure", "pressure": -1000.0}]


def on_two_lines():
    """Plate with free edges on two rigid lines that end inside."""
    return {
        "plate": {"length_x": A, "length_y": B},
        "stiffness": isotropic(D, S),
        "singular_x": (0.2, 2.2),
        "singular_y": (0.25, 1.35),
        "support": [line("front", 0.2, 2.2, 0.25, 0.25, "w"), line("back", 0.2, 2.2, 1.35, 1.35, "w")],
        "load": UNIFORM,
    }


def around_two_lines():
    return [
        deflection("centre", 1.2, 0.8),
        deflection("middle of the front edge", 1.2, 0.0),
        deflection("middle of the left edge", 0.0, 0.8),
        deflection("corner", 0.0, 0.0),
        mean("centre", "Mx", 1.175, 1.225, 0.775, 0.825),
        mean("centre", "My", 1.175, 1.225, 0.775, 0.825),
        mean("inside the line, mid-length", "My", 1.175, 1.225, 0.25, 0.3),
        mean("inside the line, mid-length", "Qy", 1.175, 1.225, 0.25, 0.3),
        mean("inside the line, mid-length, 0.05 away", "Qy", 1.175, 1.225, 0.3, 0.35),
        mean("outside the line, mid-length", "My", 1.175, 1.225, 0.2, 0.25),
        mean("outside the line, mid-length", "Qy", 1.175, 1.225, 0.2, 0.25),
        mean("inside the line, at its end", "Qy", 0.2, 0.25, 0.25, 0.3),
        mean("inside the line, at its end", "My", 0.2, 0.25, 0.25, 0.3),
        mean("outside the line, at its end", "Qy", 0.2, 0.25, 0.2, 0.25),
        mean("beyond the line's end", "Qx", 0.15, 0.2, 0.225, 0.275),
        mean("beyond the line's end", "Mx", 0.15, 0.2, 0.225, 0.275),
        mean("by the corner", "Mxy", 0.05, 0.1, 0.05, 0.1),
        ENERGY,
    ]


LINE_REACTIONS = [
    reaction("of the front line", "front"),
    reaction("of the front line, its left 0.1 m", "front", x0=0.2, x1=0.3),
    reaction("of the back line", "back"),
    reaction("of the back line, its left 0.1 m", "back", x0=0.2, x1=0.3),
]
"""Left ends only; where the problem is not symmetric the right ends are asked for as well."""
RIGHT_ENDS = [
    reaction("of the front line, its right 0.1 m", "front", x0=2.1, x1=2.2),
    reaction("of the back line, its right 0.1 m", "back", x0=2.1, x1=2.2),
]


def simply_supported(a, b):
    x, y = a / 2, b / 2
    return [
        deflection("centre", x, y),
        mean("centre", "Mx", x - 0.025, x + 0.025, y - 0.025, y + 0.025),
        mean("centre", "My", x - 0.025, x + 0.025, y - 0.025, y + 0.025),
        mean("corner", "Mxy", 0.0, 0.05, 0.0, 0.05),
        mean("beside the left edge", "Qx", 0.0, 0.05, y - 0.025, y + 0.025),
        mean("beside the front edge", "Qy", x - 0.025, x + 0.025, 0.0, 0.05),
        reaction("of the left edge", "left"),
        reaction("of the front edge", "front"),
        ENERGY,
    ]


def pads():
    places = {"front left": (0.2, 0.2), "front right": (2.12, 0.2), "back left": (0.2, 1.32), "back right": (2.12, 1.32)}
    return [{"name": n, "kind": "bed", "stiffness": 2e8} | rectangle(x, x + 0.08, y, y + 0.08)
            for n, (x, y) in places.items()]


def around_pads():
    return [
        deflection("centre", 1.2, 0.8),
        deflection("middle of the front edge", 1.2, 0.0),
        deflection("middle of the left edge", 0.0, 0.8),
        deflection("corner", 0.0, 0.0),
        deflection("centre of a pad", 0.24, 0.24),
        mean("centre", "Mx", 1.175, 1.225, 0.775, 0.825),
        mean("centre", "My", 1.175, 1.225, 0.775, 0.825),
        mean("over the pad", "Mx", 0.2, 0.28, 0.2, 0.28),
        mean("over the pad", "My", 0.2, 0.28, 0.2, 0.28),
        mean("beside the pad, along x", "Qx", 0.28, 0.33, 0.2, 0.28),
        mean("beside the pad, along y", "Qy", 0.2, 0.28, 0.28, 0.33),
        {"name": "force of the front left pad", "kind": "bed_force", "support": "front left"},
        ENERGY,
    ]


def on_beams():
    beam = {"kind": "beam", "EI": 5.5e4}
    p = on_two_lines()
    p["support"] = [
        {"name": n} | beam | rectangle(0.2, 2.2, y, y) | {"posts": [[0.6, y], [1.8, y]]}
        for n, y in (("front", 0.25), ("back", 1.35))
    ]
    p["quantity"] = around_two_lines() + [
        deflection("beam at mid-length", 1.2, 0.25),
        deflection("beam's end", 0.2, 0.25),
        {"name": "force of the front left post", "kind": "post_force", "support": "front", "x": 0.6, "y": 0.25},
        {"name": "moment of the front beam, mid-length", "kind": "beam_moment", "support": "front",
         "x0": 1.175, "x1": 1.225},
        {"name": "moment of the front beam, inside its post", "kind": "beam_moment", "support": "front",
         "x0": 0.6, "x1": 0.65},
        {"name": "moment of the front beam, outside its post", "kind": "beam_moment", "support": "front",
         "x0": 0.55, "x1": 0.6},
    ]
    return p


def crowned(d, s, ky=0.11):
    """Two skins of 2 mm, E = 15 GPa, nu = 0.3: the membrane stiffness."""
    membrane = 15e9 * 0.004 / (1 - NU**2)
    p = on_two_lines()
    p["stiffness"] = isotropic(d, s) | {
        "A11": membrane, "A12": NU * membrane, "A22": membrane, "A66": membrane * (1 - NU) / 2, "ky": ky}
    # Three pins that only stop the plate from drifting in its plane.
    p["pins"] = [[1.2, 0.8, "u"], [1.2, 0.8, "v"], [0.0, 0.8, "v"]]
    p["quantity"] = around_two_lines() + LINE_REACTIONS + [
        mean("centre", "Nx", 1.175, 1.225, 0.775, 0.825),
        mean("middle of the front edge", "Nx", 1.175, 1.225, 0.0, 0.05),
        mean("inside the line, mid-length", "Nx", 1.175, 1.225, 0.25, 0.3),
        mean("centre", "Ny", 1.175, 1.225, 0.775, 0.825),
    ]
    return p


def diaphragms():
    """Crown on hard supports that hold the tangential movement in the plane: has a closed form."""
    p = crowned(D, S) | {"support": edges(A, B, True, membrane=True), "closed_form": "navier"}
    p["quantity"] = simply_supported(A, B)[:6] + [
        mean("centre", "Nx", 1.175, 1.225, 0.775, 0.825), mean("centre", "Ny", 1.175, 1.225, 0.775, 0.825), ENERGY]
    for key in ("pins", "singular_x", "singular_y"):
        del p[key]
    return p


def vibrating(kind, ratio):
    """D/(S b^2) = `ratio`, b = 1.6 m."""
    p = on_two_lines() if kind == "lines" else {
        "plate": {"length_x": A, "length_y": B}, "support": edges(A, B, kind == "hard"),
        # Beside soft edges the twist dies out over sqrt(D(1-nu)/(2S)).
        "singular_x": (0.0, A) if kind == "soft" else (), "singular_y": (0.0, B) if kind == "soft" else ()}
    p.pop("load", None)
    p["stiffness"] = isotropic(D, D / (ratio * B**2))
    p["mass"] = 12.0
    p["quantity"] = [{"name": "first frequency", "kind": "frequency"}]
    if kind == "hard":
        p["closed_form"] = "frequency"
    return p


def compressed(ratio, nx, ny):
    return {
        "plate": {"length_x": 1.0, "length_y": 1.0},
        "stiffness": isotropic(D, D / ratio),
        "support": edges(1.0, 1.0, True),
        "compression": {"nx": nx, "ny": ny},
        "quantity": [{"name": "buckling load", "kind": "buckling_load"}],
        "closed_form": "buckling",
    }


def with_bands():
    p = on_two_lines()
    p["region"] = [
        rectangle(0.2, 2.2, 0.2, 0.3) | {"bending_factor": 1.1, "shear_factor": 20.0},
        rectangle(0.2, 2.2, 1.3, 1.4) | {"bending_factor": 1.1, "shear_factor": 20.0},
        rectangle(0.0, A, 0.784, 0.816) | {"bending_factor": 1.0, "shear_factor": 0.35},
    ]
    p["quantity"] = around_two_lines() + LINE_REACTIONS + [
        mean("beside the strip, at its end", "Qy", 0.2, 0.25, 0.3, 0.35),
        mean("along the void, left end", "Qy", 0.0, 0.05, 0.784, 0.816),
        mean("beyond the strip's end", "Qx", 0.15, 0.2, 0.2, 0.3),
    ]
    return p


def in_the_sun():
    """Heat on the upper side, on strips with a heat of their own: the lines keep straight what would bow along them."""
    p = with_bands()
    strips = p["region"] = p["region"][:2]
    at = [{k: strip[k] for k in ("x0", "x1", "y0", "y1")} for strip in strips]
    p["load"] = [{"kind": "heat", "moment": 120.0}] + [{"kind": "heat", "moment": -45.0} | strip for strip in at]
    # Nothing presses between the ends of the lines: no shear worth a comparison.
    p["quantity"] = [q for q in around_two_lines() if q != ENERGY
                     and not (q["name"].startswith("Qy") and "mid-length" in q["name"])] + [
        reaction("of the front line, its left 0.1 m", "front", x0=0.2, x1=0.3),
        reaction("of the front line, its next 0.1 m", "front", x0=0.3, x1=0.4),
        reaction("of the front line, its middle", "front", x0=0.7, x1=1.7),
        mean("beside the strip, at its end", "Qy", 0.2, 0.25, 0.3, 0.35),
        mean("beside the strip, at its end", "My", 0.2, 0.25, 0.3, 0.35),
        mean("in the strip, at its end", "Mx", 0.2, 0.25, 0.25, 0.3),
        mean("beyond the strip's end", "Qx", 0.15, 0.2, 0.2, 0.3),
        mean("in the strip, mid-length", "Mx", 1.175, 1.225, 0.25, 0.3),
    ]
    return p


def corner_patch():
    p = on_two_lines()
    p["load"] = [{"kind": "patch", "force": -1000.0} | rectangle(0.0, 0.25, 0.0, 0.25)]
    p["quantity"] = around_two_lines() + [deflection("centre of the patch", 0.125, 0.125)] + LINE_REACTIONS + RIGHT_ENDS
    return p


def middle_patch():
    return {
        "plate": {"length_x": A, "length_y": B}, "stiffness": isotropic(D, S), "support": pads(),
        "singular_x": (0.2, 0.28, 2.12, 2.2), "singular_y": (0.2, 0.28, 1.32, 1.4),
        "load": [{"kind": "patch", "force": -1000.0} | rectangle(1.05, 1.35, 0.65, 0.95)], "quantity": around_pads()}


def all_problems():
    """Name to (title, problem)."""
    square = {"plate": {"length_x": 1.0, "length_y": 1.0}, "stiffness": isotropic(D, 4.5e5),
              "singular_x": (0.0, 1.0), "singular_y": (0.0, 1.0),
              "support": edges(1.0, 1.0, True), "load": UNIFORM, "closed_form": "navier",
              "quantity": simply_supported(1.0, 1.0)}
    orthotropic = square | {
        "plate": {"length_x": 1.2, "length_y": 0.8}, "support": edges(1.2, 0.8, True),
        "singular_x": (0.0, 1.2), "singular_y": (0.0, 0.8),
        "stiffness": {"D11": 6000.0, "D12": 900.0, "D22": 3000.0, "D66": 1200.0, "Sx": 1.5e6, "Sy": 0.8e6},
        "quantity": simply_supported(1.2, 0.8)}
    skew = {"plate": {"length_x": 1.2, "length_y": 0.8}, "stiffness": turned(6000.0, 900.0, 3000.0, 1200.0, 8e5, 30.0),
            "support": edges(1.2, 0.8, False), "load": UNIFORM,
            "singular_x": (0.0, 1.2), "singular_y": (0.0, 0.8),
            "quantity": simply_supported(1.2, 0.8)[:6] + [
                mean("beside the left edge, by the corner", "Qx", 0.0, 0.05, 0.0, 0.05),
                mean("centre", "Mxy", 0.575, 0.625, 0.375, 0.425), ENERGY]}
    on_pads = middle_patch() | {"load": UNIFORM}
    lines = on_two_lines() | {"quantity": around_two_lines() + LINE_REACTIONS}
    out = {
        "a1_square": ("square, hard simple supports, uniform pressure", square),
        "a1_orthotropic": ("orthotropic rectangle, hard simple supports, uniform pressure", orthotropic),
        "a2_lines": ("on two rigid lines that end inside, uniform pressure", lines),
        "a3_corner_patch": ("on two rigid lines, patch load on an overhanging corner", corner_patch()),
        "a4_bands": ("on two rigid lines, stiff strips over them and a soft band between, uniform pressure", with_bands()),
        "a5_pads": ("on four elastic pads, uniform pressure", on_pads),
        "a5_pads_patch": ("on four elastic pads, patch load in the middle", middle_patch()),
        "a6_beams": ("on two elastic beams on posts, uniform pressure", on_beams()),
        "a7_turned": ("stiffness turned by 30 degrees, soft simple supports, uniform pressure", skew),
        "a9_both_ways": ("square, hard simple supports, compressed alike both ways, D/(S b^2) = 0.1",
                         compressed(0.1, 1.0, 1.0)),
        "a9_one_way": ("square, hard simple supports, compressed one way, D/(S b^2) = 0.02", compressed(0.02, 1.0, 0.0)),
        "a10_crown": ("crowned, on two rigid lines, uniform pressure", crowned(D, S)),
        "a10_crown_stiff": ("crowned, bending of skins 40 mm apart, on two rigid lines, uniform pressure",
                            crowned(15e9 * 0.002 * 0.04**2 / 2 / (1 - NU**2), S)),
        "a10_diaphragms": ("crowned, hard supports that hold along the edge, uniform pressure", diaphragms()),
        "a11_heat": ("on two rigid lines below strips, heated on its upper side", in_the_sun()),
        "a8_lines": ("first frequency on two rigid lines", vibrating("lines", D / (S * B**2))),
    }
    for kind in ("hard", "soft", "lines"):
        for word, ratio in (("thin", 1e-5), ("sandwich", 1e-2), ("very_soft", 1.0)):
            words = {"hard": "hard simple supports", "soft": "soft simple supports", "lines": "two rigid lines"}[kind]
            out[f"a8_{kind}_{word}"] = (f"first frequency, {words}, D/(S b^2) = {ratio:g}", vibrating(kind, ratio))
    return out

"""The panel of part B: its layers, grids, seats and loads, and the places where it is read."""

from .line import Line, Plane
from .solid import Solid

SKIN, CORE, STRIP = (15e9, 0.3, 15e9 / 2.6), (90e6, 90 / 70 - 1, 35e6), (1.2e9, 0.3, 0.4e9)
"""E, nu, G. The strip's E and G would ask for nu = 0.5 were it isotropic: nu is set apart."""

T, C = 0.002, 0.038
D = T + C
TOP = C / 2 + T
HALF_LENGTH, HALF_WIDTH = 0.3, 0.2
SEAT = (0.181, 0.219)
SEAT_CENTRE = 0.2
STRIP_AT = (0.15, 0.25)
PATCH = 0.05
PRESSURE, FORCE = 1000.0, 1000.0
RIGID, PAD = 1e13, 5e8
"""Stiffness of a seat per area, N/m^3. Rigid: 0.01 micron under 0.1 MPa."""

WINDOW = 0.002
FROM_EDGE = (0.001, 0.003, 0.005, 0.01, 0.02, 0.04, 0.08)
CORE_DEPTHS = (0.5, 1.0, 2.0)
MIDDLE = (0.0, 0.01)
"""Read over this width beside the middle of the panel."""


def refined(places, edges, steps):
    """Places, with `steps` on both sides of each edge."""
    out = set(places) | {round(e + s * k, 9) for e in edges for k in steps for s in (-1, 1)}
    return sorted(round(p, 9) for p in out | set(edges) if -1e-12 <= p <= HALF_LENGTH)


def panel(strip, degree, plane):
    """The solid; fine in plane strain, where it costs nothing."""
    edges = list(SEAT) + (list(STRIP_AT) if strip else [])
    if plane:
        steps = (0.00005, 0.0002, 0.0006, 0.0015, 0.003, 0.006, 0.01, 0.016)
        coarse = [0.0, 0.03, 0.05, 0.08, 0.1, 0.12, 0.135, 0.145, 0.155, 0.2, 0.24, 0.27, 0.3]
        x = Line(refined(coarse, edges, steps), degree)
        y = Plane()
        z = [-TOP, -0.0203, -0.0195, -0.019, -0.0188, -0.018, -0.016, -0.012, -0.006, 0.0, 0.008, 0.014, 0.018, 0.019, TOP]
    else:
        coarse = [0.0, 0.03, 0.05, 0.08, 0.105, 0.125, 0.137, 0.15, 0.162, 0.2, 0.235, 0.27, 0.3]
        x = Line(refined(coarse, edges, (0.001, 0.003, 0.008)), degree)
        y = Line([0.0, 0.025, 0.05, 0.09, 0.13, 0.165, 0.185, 0.195, 0.2], degree)
        z = [-TOP, -0.019, -0.017, -0.012, 0.0, 0.012, 0.017, 0.019, TOP]
    h = C / 2
    regions = [(SKIN, 0.0, 1.0, -TOP, -h), (SKIN, 0.0, 1.0, h, TOP)]
    if strip:
        a, b = STRIP_AT
        regions += [(CORE, 0.0, a, -h, h), (STRIP, a, b, -h, h), (CORE, b, 1.0, -h, h)]
    else:
        regions += [(CORE, 0.0, 1.0, -h, h)]
    return Solid(x, y, Line(z, degree), regions)


def solved(seat, load, strip, degree, plane):
    s = panel(strip, degree, plane)
    if load == "uniform":
        s.press(-PRESSURE, 0.0, HALF_LENGTH, 0.0, HALF_WIDTH, True)
        reaction = PRESSURE * HALF_LENGTH / (SEAT[1] - SEAT[0])
    else:
        s.press(-FORCE / (2 * PATCH) ** 2, 0.0, PATCH, 0.0, PATCH, True)
    if seat == "even":
        s.press(reaction, *SEAT, 0.0, HALF_WIDTH, False)
        x, y, z = s.lines
        held = s.numbers("z", x=x.vertex(SEAT_CENTRE), y=0 if plane else y.end(True), z=z.vertex(0.0))
        return s.solve(held_w=held)
    stiffness = PAD if seat == "pad" else RIGID
    return s.solve(seat=((*SEAT, 0.0, HALF_WIDTH), stiffness, seat == "lying"))


def places(strip):
    """Name, kind, x from, x to: kinds are read off solid and plate alike."""
    edge, word = (STRIP_AT[0], "strip") if strip else (SEAT[0], "seat")
    out = []
    for d in FROM_EDGE:
        out += [(f"{d * 1e3:g} mm from the {word}'s edge", "skins", edge - d - WINDOW / 2, edge - d + WINDOW / 2)]
    out += [("midspan", "skins", 0.0, 0.004)]
    for k in CORE_DEPTHS:
        out += [(f"{k:g} core depths from the {word}'s edge", "core", edge - k * C - WINDOW / 2, edge - k * C + WINDOW / 2)]
    outside = STRIP_AT[1] if strip else SEAT[1]
    at = outside + C / 2
    out += [(f"0.5 core depths outside the {word}'s edge", "core", at - WINDOW / 2, at + WINDOW / 2)]
    return out


def read(solid, strip):
    """Name to value."""
    out, h = {}, C / 2
    for name, kind, x0, x1 in places(strip):
        if kind == "core":
            for word, z in (("mid-core", (0.0, 0.0)), ("mean over the core", (-h, h))):
                out[f"core shear, {word}, {name}"] = solid.stress(CORE, (x0, x1), MIDDLE, z)["xz"]
            continue
        for word, outer, inner in (("top", TOP, h), ("bottom", -TOP, -h)):
            low, high = sorted((outer, inner))
            out[f"{word} skin, membrane, {name}"] = solid.stress(SKIN, (x0, x1), MIDDLE, (low, high))["xx"]
            out[f"{word} skin, outer fibre, {name}"] = solid.stress(SKIN, (x0, x1), MIDDLE, (outer, outer))["xx"]
    seat = (SEAT_CENTRE, SEAT_CENTRE)
    middle = solid.deflection((0.0, 0.0), (0.0, 0.0), (0.0, 0.0))
    out["deflection of midspan below the seat's middle"] = middle - solid.deflection(seat, (0.0, HALF_WIDTH), (0.0, 0.0))
    out["top skin nearer to the bottom skin over the seat's middle"] = (
        solid.deflection(seat, MIDDLE, (-h, -h)) - solid.deflection(seat, MIDDLE, (h, h)))
    if not strip:
        edge = (SEAT[0], SEAT[0] + WINDOW)
        out["core, normal stress under the bottom skin, within 2 mm inside the seat's edge"] = solid.stress(
            CORE, edge, MIDDLE, (-h, -h + 1e-4))["zz"]
        out["core, normal stress at mid-depth over the seat's middle"] = solid.stress(
            CORE, (SEAT_CENTRE - 0.001, SEAT_CENTRE + 0.001), MIDDLE, (0.0, 0.0))["zz"]
    if hasattr(solid, "contact"):
        out["share of the seat that presses"] = solid.contact
    return out

"""Writes the drawings of the tests: forms.dxf beside this file, and examples/bow-wing.dxf.

    pip install ezdxf==1.4.5
    python tests/input/drawings/make.py

An independent writer of the format: what the reader of this package finds in them it cannot have agreed on with itself.
Prints the areas that the tests compare with, reckoned here.
"""

import math
from pathlib import Path

import ezdxf
from ezdxf.math import Vec2

HERE = Path(__file__).parent
ROOT = HERE.parents[2]
NOTE = "Written by tests/input/drawings/make.py with the Python package ezdxf."


def document(units):
    doc = ezdxf.new("R2000")
    doc.header["$INSUNITS"] = units
    return doc, doc.modelspace()


def save(doc, path):
    text = __import__("io").StringIO()
    doc.write(text)
    path.write_text(f"999\n{NOTE}\n" + text.getvalue())


def area(points):
    points = list(points)
    pairs = zip(points, points[1:] + points[:1])
    return abs(sum(a.x * b.y - b.x * a.y for a, b in pairs)) / 2


def periodic(poles, steps=1000):
    """Places of the even closed cubic spline by its basis written out, not by knots."""
    count = len(poles)
    for start in range(count):
        p = [Vec2(poles[(start + k) % count]) for k in range(4)]
        for step in range(steps):
            t = step / steps
            basis = ((1 - t) ** 3, 3 * t**3 - 6 * t**2 + 4, -3 * t**3 + 3 * t**2 + 3 * t + 1, t**3)
            yield sum((q * (b / 6) for q, b in zip(p, basis)), Vec2())


def forms():
    doc, msp = document(4)  # mm

    def on(layer, **more):
        return {"layer": layer, **more}

    # A slot of 2000 by 1000 with half circles at both ends, three ways, shifted, and once seen from below.
    slot = [(500, 200, 0), (1500, 200, 1), (1500, 1200, 0), (500, 1200, 1)]
    msp.add_lwpolyline(slot, format="xyb", close=True, dxfattribs=on("LIGHT"))
    msp.add_polyline2d(slot, format="xyb", close=True, dxfattribs=on("HEAVY"))
    msp.add_lwpolyline([(-x, y, -b) for x, y, b in slot], format="xyb", close=True,
                       dxfattribs=on("BELOW", extrusion=(0, 0, -1)))
    # Pieces out of order, the first clockwise; an arc runs anticlockwise, as all arcs of the format do, and has to be turned.
    msp.add_line((500, 1200), (1500, 1200), dxfattribs=on("PIECES"))
    msp.add_arc((1500, 700), 500, 270, 90, dxfattribs=on("PIECES"))
    msp.add_line((1500, 200), (500, 200), dxfattribs=on("PIECES"))
    msp.add_arc((500, 700), 500, 90, 270, dxfattribs=on("PIECES"))
    msp.add_text("a note", dxfattribs=on("PIECES")).set_placement((700, 700))

    msp.add_circle((100, -300), 600, dxfattribs=on("ROUND"))
    msp.add_ellipse((0, 0), major_axis=(900, 300), ratio=0.6, dxfattribs=on("OVAL"))
    # Half of an ellipse, seen from below, closed by its diameter.
    half = msp.add_ellipse((0, 0), major_axis=(1600, 0), ratio=0.5, start_param=0, end_param=math.pi,
                           dxfattribs=on("HALF OVAL", extrusion=(0, 0, -1)))
    msp.add_line(half.start_point, half.end_point, dxfattribs=on("HALF OVAL"))

    loop = [(0, 0, 0), (1000, -200, 0), (2000, 0, 0), (1800, 700, 0), (1000, 1100, 0), (200, 700, 0)]
    msp.add_spline(dxfattribs=on("WAVE")).set_closed(loop, degree=3)
    print("WAVE mm2", repr(area(periodic(loop))))
    drop = msp.add_spline(dxfattribs=on("DROP"))
    drop.set_open_uniform([*loop, loop[0]], degree=3)
    print("DROP mm2", repr(area(Vec2(p) for p in drop.flattening(0.001, segments=64))))
    # A quarter circle as a rational spline, closed by two lines.
    quarter = msp.add_rational_spline([(1000, 0, 0), (1000, 1000, 0), (0, 1000, 0)], [1, math.sqrt(0.5), 1], degree=2,
                                      dxfattribs=on("QUARTER"))
    assert quarter.dxf.n_knots == 6
    msp.add_line((0, 1000), (0, 0), dxfattribs=on("QUARTER"))
    msp.add_line((0, 0), (1000, 0), dxfattribs=on("QUARTER"))

    # What is wrong.
    msp.add_lwpolyline([(0, 0), (1000, 0), (1000, 1000), (3, 4)], dxfattribs=on("GAP"))
    msp.add_lwpolyline([(0, 0), (1000, 1000), (1000, 0), (0, 1000)], close=True, dxfattribs=on("CROSSED"))
    msp.add_lwpolyline([(0, 0), (1000, 0), (1000, 1000)], close=True, dxfattribs=on("FORK"))
    for end in [(1000, 0), (0, 1000), (-700, -700)]:
        msp.add_line((0, 0), end, dxfattribs=on("FORK"))
    for x in (0, 1500):
        msp.add_circle((x, 0), 600, dxfattribs=on("TWO"))
    msp.add_circle((0, 0), 40, dxfattribs=on("TINY"))
    block = doc.blocks.new("PART")
    block.add_circle((0, 0), 600)
    msp.add_blockref("PART", (0, 0), dxfattribs=on("PART"))
    msp.add_circle((0, 0), 600, dxfattribs=on("TILTED", extrusion=(0, 1, 1)))
    doc.layout("Layout1").add_circle((0, 0), 600, dxfattribs=on("PAPER"))
    save(doc, HERE / "forms.dxf")


def bow_wing():
    """The outline of examples/bow-wing.toml in millimetres, somewhere on the sheet, by centres and angles."""
    doc, msp = document(4)
    inch, away = 25.4, Vec2(1234.5, -678.9)
    corners = [((0, 0), 8), ((66, 0), 40), ((98, 15), 10), ((98, 53), 10), ((66, 68), 40), ((0, 68), 8)]
    corners = [(away + Vec2(at) * inch, radius * inch) for at, radius in corners]
    ends = []
    for index, (at, radius) in enumerate(corners):
        before = (corners[index - 1][0] - at).normalize()
        behind = (corners[(index + 1) % len(corners)][0] - at).normalize()
        # The centre lies on the line that halves the corner.
        half = before.angle_between(behind) / 2
        half = min(half, math.pi - half)
        centre = at + (before + behind).normalize() * (radius / math.sin(half))
        touch = [at + way * (radius / math.tan(half)) for way in (before, behind)]
        angles = [(place - centre).angle_deg for place in touch]
        msp.add_arc(centre, radius, *angles, dxfattribs={"layer": "OUTLINE"})
        ends.append(touch)
    for index, (_, start) in enumerate(ends):
        msp.add_line(start, ends[(index + 1) % len(ends)][0], dxfattribs={"layer": "OUTLINE"})
    msp.add_circle(away + Vec2(70, 22) * inch, 8 * inch, dxfattribs={"layer": "HATCH"})
    save(doc, ROOT / "examples" / "bow-wing.dxf")


forms()
bow_wing()

"""Reads templates with independent readers and compares them with the design files, to a micrometre.

check.py PROGRAM EXAMPLES WORK
"""

import math
import subprocess
import sys
from pathlib import Path
from xml.etree import ElementTree

import ezdxf
from svgelements import SVG, Arc, Circle, Line, Path as SvgPath, Point

import design

# In millimetres.
MICROMETRE = 1e-3
TRIM = 25.0  # trim-allowance
NO_DRILL_HOLE = 10.0  # no-drill-hole, more than any hole of these designs but those that are said
CONDUIT = {"pvc-1-2-sch40": 0.840 * 25.4}
# What each design drills: M8 in clearance, the insert of M8, nothing, and beside its board a plug of three diameters for an
# M6 in clearance.
DRILLED = {
    "survey-launch": [9.0],
    "rail-row": [11.0],
    "radar-pad": [9.0],
    "bow-wing": [],
    "whip-rail": [18.0, 6.6],
}

faults = []
compared = 0


def same(what, found, expected):
    global compared
    compared += 1
    if not math.dist(found, expected) < MICROMETRE:
        faults.append(f"{what}: {found} is not {expected}")


def same_sets(what, found, expected):
    """Whichever order they are in."""
    global compared
    compared += 1
    left = list(expected)
    for one in found:
        twin = next((other for other in left if math.dist(one, other) < MICROMETRE), None)
        if twin is None:
            faults.append(f"{what}: {one} is not expected")
        else:
            left.remove(twin)
    if left:
        faults.append(f"{what}: {left} are missing")


def draw(program, example, work, *more):
    out = [str(work / f"{example.stem}.{end}") for end in ("svg", "dxf")]
    arguments = [program, "template", str(example), "-o", out[0], "-o", out[1], *more]
    done = subprocess.run(arguments, capture_output=True, text=True)
    if done.returncode not in (0, 1):
        sys.exit(f"{arguments}: {done.stderr}")
    return out, done.stdout


def pieces(entities):
    """Straight pieces and arcs of polylines."""
    straights, arcs = [], []
    for line in entities:
        for piece in line.virtual_entities():
            if piece.dxftype() == "ARC":
                arcs.append(piece)
            else:
                straights.append(piece)
    return straights, arcs


def rim_of_dxf(what, lines, rim, up):
    straights, arcs = pieces(lines)
    same_sets(
        f"{what}: arcs",
        [(arc.dxf.center.x, up * arc.dxf.center.y, arc.dxf.radius) for arc in arcs],
        [(*centre, radius) for centre, radius, _, _ in rim.arcs],
    )
    ends = lambda pair: sorted(pair)
    same_sets(
        f"{what}: straight pieces",
        [sum(ends([(s.dxf.start.x, up * s.dxf.start.y), (s.dxf.end.x, up * s.dxf.end.y)]), ()) for s in straights],
        [sum(ends([tuple(one), tuple(other)]), ()) for one, other in rim.straights if math.dist(one, other) > 1e-3],
    )


def beside(what, lines, rim, off, up):
    """Every point of a line is so far from the rim, and the line goes all round."""
    straights, arcs = pieces(lines)
    places = []
    for piece in straights:
        start, end = piece.dxf.start, piece.dxf.end
        places += [start.lerp(end, k / 20) for k in range(21)]
    for arc in arcs:
        places += list(arc.flattening(1e-4))
    worst = max(abs(rim.distance((place.x, up * place.y)) - off) for place in places)
    global compared
    compared += 1
    if worst > MICROMETRE:
        faults.append(f"{what}: {worst} mm off its distance of {off} mm")
    return places


def check_dxf(path, name, data, rim, up):
    drawing = ezdxf.readfile(path)
    if drawing.header.get("$INSUNITS", 0) != 4:
        faults.append(f"{name}: its unit is not the millimetre")
    auditor = drawing.audit()
    if auditor.has_errors:
        faults.append(f"{name}: {[str(error.message) for error in auditor.errors]}")
    model = drawing.modelspace()
    on = lambda layer, kind: list(model.query(f'{kind}[layer=="{layer}"]'))
    panel = data.get("top") or data["patch"]
    rim_of_dxf(f"{name}: outline", on("OUTLINE", "POLYLINE"), rim, up)
    if "top" in data:
        places = beside(f"{name}: laid-up edge", on("MOULDED", "POLYLINE"), rim, TRIM, up)
        low, high = min(place.x for place in places), max(place.x for place in places)
        far = max(x for straight in rim.straights for x, _ in straight)
        same(f"{name}: laid-up length", (low, high), (-TRIM, far + TRIM))
    if "edge" in panel:
        setback = design.mm(panel["edge"]["setback"])
        lines = on("CORE-EDGE", "POLYLINE")
        beside(f"{name}: core", lines[:1], rim, setback, up)
        for hole, line in zip(data.get("hole", []), lines[1:]):
            middle, radius = [design.mm(at) for at in hole["circle"]["at"]], design.mm(hole["circle"]["diameter"]) / 2
            for arc in pieces([line])[1]:
                found = (arc.dxf.center.x, up * arc.dxf.center.y, arc.dxf.radius)
                same(f"{name}: core round {hole['name']}", found, (*middle, radius + setback))
    for pipe in data.get("pipe", []):
        (x0, y0), (x1, y1) = [[design.mm(at) for at in point] for point in pipe["along"]]
        stations = [design.mm(post) for post in pipe.get("posts", [])]
        length, half = math.hypot(x1 - x0, y1 - y0), design.mm(pipe["outside"]) / 2
        posts = [(x0 + (x1 - x0) * s / length, y0 + (y1 - y0) * s / length, half) for s in stations]
        found = [(c.dxf.center.x, up * c.dxf.center.y, c.dxf.radius) for c in on("POSTS", "CIRCLE")]
        near = [one for one in found if any(math.dist(one, post) < 1.0 for post in posts)]
        same_sets(f"{name}: posts of {pipe['name']}", near, posts)
    sides = []
    for line in on("PIPES", "POLYLINE"):
        sides += [(vertex.dxf.location.x, up * vertex.dxf.location.y) for vertex in line.vertices]
    expected = []
    for pipe in data.get("pipe", []):
        half = design.mm(pipe["outside"]) / 2
        for x, y in [[design.mm(at) for at in point] for point in pipe["along"]]:
            expected += [(x, y - half), (x, y + half)]
    same_sets(f"{name}: sides of pipes, which run along", sides, expected)
    hole = max([NO_DRILL_HOLE, *DRILLED[name]])
    borders, expected = [], []
    for line in on("NO-DRILL", "POLYLINE"):
        borders += [(vertex.dxf.location.x, up * vertex.dxf.location.y) for vertex in line.vertices]
    for conduit in data.get("conduit", []):
        diameter = CONDUIT[conduit["material"]] if "material" in conduit else design.mm(conduit["diameter"])
        half = (diameter + 3 * hole) / 2
        for x, y in [[design.mm(at) for at in point] for point in conduit["along"]]:
            expected += [(x, y - half), (x, y + half)]
    same_sets(f"{name}: bands beside conduits", borders, expected)
    found = [(c.dxf.center.x, up * c.dxf.center.y, c.dxf.radius) for c in on("FIXINGS", "CIRCLE")]
    places = design.fixings(data)
    same_sets(f"{name}: holes", found, [(x, y, drill / 2) for x, y in places for drill in DRILLED[name]])
    points = [(p.dxf.location.x, up * p.dxf.location.y) for p in on("FIXINGS-CENTRE", "POINT")]
    same_sets(f"{name}: points to drill at", points, places)


def check_svg(path, name, data, rim, up):
    sheet = SVG.parse(path, ppi=25.4)
    # The reader has an inch of 25.40001 mm: what it makes of the size of the sheet is set against the size as it is written.
    root = ElementTree.parse(path).getroot()
    _, _, across, down = (float(word) for word in root.get("viewBox").split())
    same(f"{name}: size of the sheet", [float(root.get(key).removesuffix("mm")) for key in ("width", "height")], (across, down))
    scale = across / float(sheet.width)
    by_id = {element.id: element for element in sheet.elements() if getattr(element, "id", None)}
    datum = next(element for element in by_id["datum"] if isinstance(element, Circle))
    place = lambda at: (scale * (at.x - float(datum.cx)), scale * up * (float(datum.cy) - at.y))
    outline = by_id["outline"]
    arcs, straights = [], []
    for piece in SvgPath(outline).segments():
        if isinstance(piece, Arc):
            arcs.append((*place(piece.center), scale * piece.rx))
            if abs(piece.rx - piece.ry) > 1e-9:
                faults.append(f"{name}: an ellipse")
        elif isinstance(piece, Line) and abs(piece.end - piece.start) > MICROMETRE:
            straights.append(sum(sorted([place(piece.start), place(piece.end)]), ()))
    same_sets(f"{name}: arcs of the sheet", arcs, [(*centre, radius) for centre, radius, _, _ in rim.arcs])
    same_sets(
        f"{name}: straight pieces of the sheet",
        straights,
        [sum(sorted([tuple(one), tuple(other)]), ()) for one, other in rim.straights if math.dist(one, other) > 1e-3],
    )
    if places := design.fixings(data):
        circles = [element for element in walk(by_id["layer-fixings"]) if isinstance(element, Circle)]
        found = [(*place(Point(c.cx, c.cy)), scale * float(c.rx)) for c in circles]
        same_sets(f"{name}: holes of the sheet", found, [(x, y, drill / 2) for x, y in places for drill in DRILLED[name]])


def walk(group):
    for element in group:
        yield element
        if isinstance(element, list):
            yield from walk(element)


def main():
    program, examples, work = sys.argv[1], Path(sys.argv[2]), Path(sys.argv[3])
    for name in DRILLED:
        for face, up in [("above", 1), ("below", -1)]:
            (svg, dxf), words = draw(program, examples / f"{name}.toml", work, "--from", face)
            data = design.read(examples / f"{name}.toml")
            rim = design.rim((data.get("top") or data["patch"])["outline"])
            check_dxf(dxf, name, data, rim, up)
            check_svg(svg, name, data, rim, up)
            count = sum(line.split()[0].isdigit() for line in words.splitlines() if line.startswith("     ") and line.split())
            if count != len(design.fixings(data)):
                faults.append(f"{name}: {count} rows of holes, not {len(design.fixings(data))}")
    for fault in faults:
        print(fault, file=sys.stderr)
    print(f"{compared} comparisons, {len(faults)} faults")
    sys.exit(1 if faults else 0)


main()

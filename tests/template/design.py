"""What a template has to show, worked out from the plain numbers of a design file. Millimetres and radians."""

import math
import re
import tomllib

UNITS = {"mm": 1.0, "cm": 10.0, "m": 1000.0, "in": 25.4, "ft": 304.8}


def number(text):
    """1.5, 3/4, 1-1/2."""
    whole, _, fraction = text.partition("-")
    parts = [whole, fraction] if fraction else [whole]
    total = 0.0
    for part in parts:
        over, _, under = part.partition("/")
        total += float(over) / (float(under) if under else 1.0)
    return total


def mm(text):
    """A length as the design writes it, such as 9 ft 2 in."""
    return sum(number(value) * UNITS[unit] for value, unit in re.findall(r"([\d./-]+)\s*(mm|cm|m|in|ft)\b", text))


def read(path):
    with open(path, "rb") as file:
        return tomllib.load(file)


class Rim:
    """A polygon with rounded corners: straight pieces, and arcs by centre, radius and the places where they begin and end."""

    def __init__(self, corners):
        self.straights, self.arcs = [], []
        count = len(corners)
        cuts = []
        for k in range(count):
            (ax, ay, _), (bx, by, radius), (cx, cy, _) = corners[k - 1], corners[k], corners[(k + 1) % count]
            to_a, to_c = math.hypot(ax - bx, ay - by), math.hypot(cx - bx, cy - by)
            ua, uc = ((ax - bx) / to_a, (ay - by) / to_a), ((cx - bx) / to_c, (cy - by) / to_c)
            half = math.acos(ua[0] * uc[0] + ua[1] * uc[1]) / 2
            cut = radius / math.tan(half)
            start, end = (bx + ua[0] * cut, by + ua[1] * cut), (bx + uc[0] * cut, by + uc[1] * cut)
            middle = (ua[0] + uc[0], ua[1] + uc[1])
            out = radius / math.sin(half) / math.hypot(*middle)
            if radius > 0:
                self.arcs.append(((bx + middle[0] * out, by + middle[1] * out), radius, start, end))
            cuts.append((start, end))
        for k in range(count):
            self.straights.append((cuts[k - 1][1], cuts[k][0]))

    def distance(self, place):
        """To the nearest point of it."""
        return min(
            [from_straight(place, *straight) for straight in self.straights]
            + [from_arc(place, *arc) for arc in self.arcs]
        )


def from_straight(place, one, other):
    dx, dy = other[0] - one[0], other[1] - one[1]
    length = dx * dx + dy * dy
    if length == 0:
        return math.dist(place, one)
    share = ((place[0] - one[0]) * dx + (place[1] - one[1]) * dy) / length
    share = min(max(share, 0.0), 1.0)
    return math.dist(place, (one[0] + share * dx, one[1] + share * dy))


def from_arc(place, centre, radius, start, end):
    """An arc that turns by less than half a circle: between its ends as seen from the centre."""
    ahead = (place[0] - centre[0], place[1] - centre[1])
    middle = (start[0] + end[0] - 2 * centre[0], start[1] + end[1] - 2 * centre[1])
    angle = lambda a, b: math.acos(max(-1.0, min(1.0, (a[0] * b[0] + a[1] * b[1]) / (math.hypot(*a) * math.hypot(*b)))))
    if math.hypot(*ahead) > 0:
        if angle(ahead, middle) <= angle((start[0] - centre[0], start[1] - centre[1]), middle):
            return abs(math.dist(place, centre) - radius)
    return min(math.dist(place, start), math.dist(place, end))


def rim(outline):
    """The outline of a rectangle or of corners."""
    if "points" in outline:
        usual = mm(outline.get("corner_radius", "0 mm"))
        corners = []
        for point in outline["points"]:
            radius = mm(point[2]["radius"]) if len(point) > 2 else usual
            corners.append((mm(point[0]), mm(point[1]), radius))
        return Rim(corners)
    length, width, radius = mm(outline["length"]), mm(outline["width"]), mm(outline.get("corner_radius", "0 mm"))
    return Rim([(0, 0, radius), (length, 0, radius), (length, width, radius), (0, width, radius)])


def fixings(design):
    """Places of all fixings: of gear in a circle or a grid, of pipes in a row."""
    places = []
    for gear in design.get("gear", []):
        held = gear.get("fixings")
        if held and "circle" in held:
            (x, y), radius, count = [mm(at) for at in gear["at"]], mm(held["diameter"]) / 2, held["circle"]
            turns = [2 * math.pi * k / count for k in range(count)]
            places += [(x + radius * math.cos(turn), y + radius * math.sin(turn)) for turn in turns]
        elif held and "grid" in held:
            (x, y), (nx, ny), (px, py) = [mm(at) for at in gear["at"]], held["grid"], [mm(p) for p in held["pitch"]]
            places += [
                (x + (i - (nx - 1) / 2) * px, y + (j - (ny - 1) / 2) * py) for j in range(ny) for i in range(nx)
            ]
    for pipe in design.get("pipe", []):
        held = pipe.get("fixings")
        if held:
            (x0, y0), (x1, y1) = [[mm(at) for at in point] for point in pipe["along"]]
            length, end = math.hypot(x1 - x0, y1 - y0), mm(held["end"])
            gaps = math.ceil((length - 2 * end) / mm(held["spacing"]) - 1e-9)
            for k in range(gaps + 1):
                share = (end + (length - 2 * end) * k / gaps) / length
                places.append((x0 + (x1 - x0) * share, y0 + (y1 - y0) * share))
    return places

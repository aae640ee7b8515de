"""The data files: TOML, one problem and its results in each."""

import math
import tomllib


def rounded(coarse, fine):
    """Value and error: the error is the difference of the two grids, the value has one digit more than it."""
    error = max(abs(fine - coarse), 2e-7 * abs(fine), 1e-12)
    unit = 10.0 ** math.floor(math.log10(error))
    places = 1 - int(round(math.log10(unit)))
    digits = math.ceil(error / unit - 1e-9)
    return round(fine, places), round(digits * unit, max(0, places))


def text(value):
    if isinstance(value, str):
        return f'"{value}"'
    if isinstance(value, float):
        return repr(float(value))
    if isinstance(value, list):
        return "[" + ", ".join(text(v) for v in value) + "]"
    raise TypeError(f"{value!r} has no place in the data")


def table(name, entries, many):
    lines = ["", f"[[{name}]]" if many else f"[{name}]"]
    return lines + [f"{k} = {text(v)}" for k, v in entries.items()]


def written(title, problem, results):
    """The file as text. Grids and closed forms are the generator's own business and are left out."""
    lines = [f"title = {text(title)}"]
    if "mass" in problem:
        lines.append(f"mass = {text(problem['mass'])}")
    if "pins" in problem:
        lines.append(f"pins = {text(problem['pins'])}")
    for key in ("plate", "stiffness", "compression"):
        if key in problem:
            lines += table(key, problem[key], False)
    for key in ("region", "support", "load"):
        for entry in problem.get(key, ()):
            lines += table(key, entry, True)
    for entry in results:
        lines += table("result", entry, True)
    return "\n".join(lines) + "\n"


def read(path):
    with open(path, "rb") as file:
        return tomllib.load(file)

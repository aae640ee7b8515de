"""Solves the layered solids of part B and writes them beside the plate: generate_layered.py FOLDER [NAME ...].

Not in CI: some minutes for each solid. Needs requirements-layered.txt.
"""

import sys
import time
from pathlib import Path

from fsdt.data import rounded, table, text
from layered import panel, plate

SMALL = 0.05  # of the largest of its kind: below, a factor says nothing

RUNS = {
    "b1_even": ("pressed evenly over the seat, uniform load", "even", "uniform", False, False),
    "b1_lying": ("rigid flat seat that only presses, uniform load", "lying", "uniform", False, False),
    "b1_tied": ("rigid flat seat that holds both ways, uniform load", "tied", "uniform", False, False),
    "b2_pad": ("soft pad as seat, patch load at midspan", "pad", "patch", False, False),
    "b2_tied": ("rigid flat seat that holds both ways, patch load at midspan", "tied", "patch", False, False),
    "b3_even": ("solid strip over the seat, pressed evenly, uniform load", "even", "uniform", True, False),
    "b3_tied": ("solid strip over a rigid seat that holds both ways, uniform load", "tied", "uniform", True, False),
}
RUNS |= {f"{k}_plane": (f"plane strain: {t}", seat, load, strip, True)
         for k, (t, seat, load, strip, _) in RUNS.items() if load == "uniform"}


def same_seat(seat):
    """The solid lies on both edges of its seat and lifts off between: for the plate that is as good as held."""
    return "tied" if seat == "lying" else seat


def solve(name, folder):
    title, seat, load, strip, plane = RUNS[name]
    start = time.time()
    readings = [panel.read(panel.solved(seat, load, strip, degree, plane), strip)
                for degree in ((3, 4) if plane else (2, 3))]
    line, same = (plate.values(s, load, strip, plane) for s in ("line", same_seat(seat)))
    kinds = {}
    for k, v in line.items():
        kinds[k[:3]] = max(kinds.get(k[:3], 0.0), abs(v))
    shear = same["shear force at the edge"]
    lines = [f"title = {text(title)}", f"plate_seat = {text(same_seat(seat))}",
             f"decay_length = {plate.DECAY:.6g}", f"shear_force_at_edge = {shear:.5g}",
             f"closed_form_skin_stress_at_edge = {plate.edge_stress(shear):.5g}"]
    for key in readings[0]:
        value, error = rounded(readings[0][key], readings[1][key])
        unit = "" if key.startswith("share") else "m" if "deflection" in key or "nearer" in key else "Pa"
        entry = {"name": key, "value": value, "error": error, "unit": unit}
        for word, by in (("line", line), ("seat", same)):
            if key in by:
                entry[f"plate_on_{word}"] = float(f"{by[key]:.5g}")
                if abs(by[key]) > SMALL * kinds[key[:3]]:
                    entry[f"factor_on_{word}"] = float(f"{readings[1][key] / by[key]:.4g}")
        if f"own {key}" in same:
            entry["plate_on_seat_own_curvature"] = float(f"{same[f'own {key}']:.5g}")
        lines += table("result", entry, True)
    (Path(folder) / f"{name}.toml").write_text("\n".join(lines) + "\n")
    print(f"{name}: {time.time() - start:.0f} s", flush=True)


def main(folder, names):
    Path(folder).mkdir(parents=True, exist_ok=True)
    for name in names or RUNS:
        solve(name, folder)


if __name__ == "__main__":
    main(sys.argv[1], sys.argv[2:])

"""Compares freshly generated data with the committed: compare.py COMMITTED FRESH. Exit 1 on a difference.

Problems must be the same word for word; each value may differ by the error that the committed file states.
"""

import sys
from pathlib import Path

from fsdt.data import read

FRESH_ONLY = ("value", "error", "closed_form")


def differences(committed, fresh):
    """Lines that say what differs."""
    names = [sorted(p.name for p in folder.glob("*.toml")) for folder in (committed, fresh)]
    if names[0] != names[1]:
        yield f"files differ: {sorted(set(names[0]) ^ set(names[1]))}"
    for name in (n for n in names[0] if n in names[1]):
        old, new = read(committed / name), read(fresh / name)
        if problem(old) != problem(new):
            yield f"{name}: another problem or other quantities"
            continue
        for a, b in zip(old["result"], new["result"]):
            if not abs(a["value"] - b["value"]) <= a["error"]:
                yield f"{name}: {a['name']}: {a['value']} +- {a['error']} {a['unit']}, now {b['value']}"


def problem(data):
    results = [{k: v for k, v in r.items() if k not in FRESH_ONLY} for r in data["result"]]
    return data | {"result": results}


def main(committed, fresh):
    found = list(differences(Path(committed), Path(fresh)))
    print("\n".join(found) or "all as committed")
    return 1 if found else 0


if __name__ == "__main__":
    sys.exit(main(*sys.argv[1:]))

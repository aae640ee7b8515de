"""Solves every problem of part A on two grids and writes one data file for each: generate.py FOLDER [NAME ...]."""

import os
import sys
import time

for variable in ("OMP_NUM_THREADS", "OPENBLAS_NUM_THREADS", "MKL_NUM_THREADS"):
    os.environ.setdefault(variable, "1")  # one thread for each of the processes below; also the same bytes

from multiprocessing import Pool  # noqa: E402
from pathlib import Path  # noqa: E402

from fsdt import data, eigen, navier  # noqa: E402
from fsdt.checks import check_assembly, check_heat  # noqa: E402
from fsdt.plate import Model  # noqa: E402
from fsdt.quantities import Reader, unit  # noqa: E402
from problems import all_problems  # noqa: E402

COARSE = {"widest": 0.22, "layers": 3, "degree": 3}
FINE = {"widest": 0.16, "layers": 5, "degree": 4}
IMBALANCE = 2e-6  # forces and moments over the load: rounding in cells of a tenth of a millimetre


def values(problem, grid):
    model = Model(problem, **grid)
    kinds = {q["kind"] for q in problem["quantity"]}
    if kinds & {"frequency", "buckling_load"}:
        solve = eigen.first_frequency if "frequency" in kinds else eigen.buckling_load
        return [float(solve(model))]
    reader = Reader(model.solve())
    assert reader.balance() < IMBALANCE, f"out of balance by {reader.balance():.1e}"
    return [reader.value(q) for q in problem["quantity"]]


def exact(problem):
    """Closed-form values, or None."""
    form = problem.get("closed_form")
    if form is None:
        return [None] * len(problem["quantity"])
    if form == "navier":
        series = navier.Navier(problem)
        return [float(series.value(q)) for q in problem["quantity"]]
    return [{"frequency": navier.frequency, "buckling": navier.buckling}[form](problem)]


def solve(job):
    name, folder = job
    start = time.process_time()
    title, problem = all_problems()[name]
    results = []
    for q, c, f, e in zip(problem["quantity"], values(problem, COARSE), values(problem, FINE), exact(problem)):
        value, error = data.rounded(c, f)
        results.append(q | {"value": value, "error": error, "unit": unit(q)})
        if e is not None:
            scale = max(abs(e), abs(value))
            results[-1]["closed_form"] = float(f"{e:.8g}")
            assert abs(f - e) < 1e-4 * scale, f"{name}: {q['name']}: {f} differs from the closed form {e}"
    (Path(folder) / f"{name}.toml").write_text(data.written(title, problem, results))
    return name, time.process_time() - start


def main(folder, names):
    Path(folder).mkdir(parents=True, exist_ok=True)
    check_assembly()
    check_heat()
    with Pool(2) as pool:
        for name, seconds in pool.imap(solve, [(n, folder) for n in names or all_problems()]):
            print(f"{name}: {seconds:.1f} s", flush=True)


if __name__ == "__main__":
    main(sys.argv[1], sys.argv[2:])

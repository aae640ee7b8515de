"""First natural frequency and buckling load of a model."""

import numpy as np
from scipy.sparse import block_diag, csc_matrix
from scipy.sparse.linalg import LinearOperator, eigsh


def smallest(model, second):
    """The smallest positive root of K u = root * B u, where `second` = B works on w alone."""
    solve = model.factor()
    rest = model.stiffness.shape[0] - model.n
    b = model.p.T @ block_diag([second, csc_matrix((rest, rest))], format="csc") @ model.p
    n = b.shape[0]
    inverse = LinearOperator((n, n), matvec=solve, dtype=float)
    # A fixed start: same input, same bytes. Not symmetric, so that no mode is left out.
    start = solve(b @ np.cos(np.arange(n)))
    roots = eigsh(model.reduced, k=2, M=b, sigma=0.0, OPinv=inverse, v0=start, return_eigenvectors=False, tol=1e-11)
    return float(min(r for r in roots if r > 0))


def first_frequency(model):
    """f = sqrt(root)/(2 pi), mass of deflection only."""
    mass = model.form("v", "v", np.full(model.mesh.nelements, model.problem["mass"]))
    return np.sqrt(smallest(model, mass)) / (2 * np.pi)


def buckling_load(model):
    """Multiplier on the compression (nx, ny per width)."""
    n = model.problem["compression"]
    ones = np.ones(model.mesh.nelements)
    parts = [model.form(d, d, n[k] * ones) for d, k in (("x", "nx"), ("y", "ny"))]
    return smallest(model, sum((p for p in parts if p is not None), csc_matrix((model.n, model.n))))

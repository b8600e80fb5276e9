"""Variance components of invented unbalanced classes, recorded for tests/plan/learn/recorded.rs.

    python3 tests/reference/random_effects.py

Two routes that share nothing with the Rust code or with each other: statsmodels MixedLM
(REML, method "powell"; its default method fails on some of these) and the restricted
likelihood written down with whole covariance matrices and minimised by SciPy over both
variances' logarithms. `classes`, `cells` and `values` are the data, rounded to six decimals
before they are fitted. Seeds and versions stand in the file. Where the class variance is zero
statsmodels comes near it only; such sets carry "boundary": true when the second route, whose
logarithms go down without end, ends at less than a thousand-millionth of the error.
"""

import json
import sys
import warnings
from pathlib import Path

import numpy as np
import scipy
import statsmodels
from scipy.optimize import minimize
from statsmodels.regression.mixed_linear_model import MixedLM

CLOSE = {"xatol": 1e-10, "fatol": 1e-12, "maxiter": 20000, "maxfev": 20000}
STARTS = ([-4, -4], [-6, -4], [-3, -5])

# Seed, canvases of each class, cells, standard deviation of class and of student.
SETS = [
    (1, [3, 8, 5, 2, 6], 1, 0.10, 0.12),
    (2, [12, 1, 4], 1, 0.15, 0.10),
    (3, [7, 9, 6, 8, 10, 5, 7], 1, 0.06, 0.15),
    (4, [4, 4, 5, 4], 1, 0.30, 0.05),
    (5, [3, 8, 5, 2, 6], 2, 0.10, 0.12),
    (6, [10, 9, 11], 2, 0.12, 0.12),
    (7, [6, 5, 7, 4, 8, 6], 3, 0.20, 0.10),
    (8, [2, 3, 2, 3, 2, 4, 2, 3], 2, 0.15, 0.10),
    (9, [6, 6, 6, 6], 2, 0.15, 0.15),
    (10, [5, 9, 4, 7], 1, 0.0, 0.15),
    (11, [5, 9, 4, 7], 2, 0.0, 0.15),
    (12, [8, 3, 6, 5], 2, 0.0, 0.20),
]


def draw(seed, sizes, cells, class_sd, student_sd):
    rng = np.random.default_rng(seed)
    classes, cell_of, values = [], [], []
    for at, size in enumerate(sizes):
        effect = rng.normal(0, class_sd)
        for _ in range(size):
            cell = int(rng.integers(cells))
            classes.append(at)
            cell_of.append(cell)
            value = 1.0 + 0.2 * cell + effect + rng.normal(0, student_sd)
            values.append(round(float(value), 6))
    return np.array(classes), np.array(cell_of), np.array(values)


def minus_two_log(classes, design, values, class_var, error_var):
    same = classes[:, None] == classes[None, :]
    v = error_var * np.eye(len(values)) + class_var * same
    inverse = np.linalg.inv(v)
    information = design.T @ inverse @ design
    means = np.linalg.solve(information, design.T @ inverse @ values)
    rest = values - design @ means
    df = len(values) - design.shape[1]
    return (
        df * np.log(2 * np.pi)
        + np.linalg.slogdet(v)[1]
        + np.linalg.slogdet(information)[1]
        + rest @ inverse @ rest
    )


def direct(classes, design, values):
    def both(logs):
        return minus_two_log(classes, design, values, *np.exp(logs))

    best = min(
        (minimize(both, start, method="Nelder-Mead", options=CLOSE) for start in STARTS),
        key=lambda fit: fit.fun,
    )
    class_var, error_var = np.exp(best.x)
    return float(class_var), float(error_var), float(best.fun)


recorded = []
for seed, sizes, cells, class_sd, student_sd in SETS:
    classes, cell_of, values = draw(seed, sizes, cells, class_sd, student_sd)
    design = (cell_of[:, None] == np.unique(cell_of)[None, :]).astype(float)
    with warnings.catch_warnings(record=True) as said:
        warnings.simplefilter("always")
        fit = MixedLM(values, design, groups=classes).fit(reml=True, method="powell", ftol=1e-14)
    class_var, error_var, criterion = direct(classes, design, values)
    record = {
        "seed": seed,
        "classes": classes.tolist(),
        "cells": cell_of.tolist(),
        "values": values.tolist(),
        "boundary": class_var < 1e-9 * error_var,
        "statsmodels": {
            "class": float(fit.cov_re[0, 0]),
            "error": float(fit.scale),
            "means": [float(mean) for mean in fit.fe_params],
            "criterion": float(-2 * fit.llf),
        },
        "direct": {"class": class_var, "error": error_var, "criterion": criterion},
    }
    print(seed, record["statsmodels"], record["direct"], [str(w.message)[:60] for w in said], file=sys.stderr)
    recorded.append(record)
versions = {
    "statsmodels": statsmodels.__version__,
    "scipy": scipy.__version__,
    "numpy": np.__version__,
    "python": sys.version.split()[0],
}
record = {**versions, "sets": recorded}
Path(__file__).with_suffix(".json").write_text(json.dumps(record, separators=(",", ":")) + "\n")

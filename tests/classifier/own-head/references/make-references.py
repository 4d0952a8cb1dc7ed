"""Fits penalised logistic regressions with general libraries and writes questions and answers to logistic-fits.json.

    python3 -m venv .cache/references
    .cache/references/bin/pip install scikit-learn==1.9.1 scipy==1.17.1 numpy==2.4.6
    .cache/references/bin/python tests/classifier/own-head/references/make-references.py
    npx biome format --write tests/classifier/own-head/references

Only needed when the questions change: the tests read the JSON alone.
"""

import json
import pathlib

import numpy as np
import scipy
import sklearn
from scipy.optimize import minimize
from scipy.special import expit
from sklearn.linear_model import LogisticRegression

HERE = pathlib.Path(__file__).parent
ROWS, COLUMNS = 40, 9
draw = np.random.default_rng(20261129)
labels = (draw.random(ROWS) < 0.4).astype(float)
inputs = np.round(draw.normal(size=(2, ROWS, COLUMNS)) + 0.7 * labels[None, :, None], 3)
inputs[:, :, 0] = 1
offsets = np.round(np.stack([np.zeros(ROWS), draw.normal(size=ROWS) - 0.5]), 3)
counts = np.stack([(draw.random(ROWS) < 0.8).astype(float), np.round(draw.random(ROWS), 2)])


def without_offset(x, count):
    fit = LogisticRegression(C=1.0, fit_intercept=False, solver="newton-cholesky", tol=1e-12, max_iter=1000)
    return fit.fit(x, labels, sample_weight=count).coef_[0]


def with_offset(x, offset, count):
    def loss(u):
        odds = x @ u + offset
        return count @ (np.logaddexp(0, odds) - labels * odds) + u @ u / 2

    def slope(u):
        return x.T @ (count * (expit(x @ u + offset) - labels)) + u

    def bend(u):
        p = expit(x @ u + offset)
        return x.T @ (x * (count * p * (1 - p))[:, None]) + np.eye(COLUMNS)

    zero = np.zeros(COLUMNS)
    return minimize(loss, zero, jac=slope, hess=bend, method="trust-exact", options={"gtol": 1e-12}).x


answers = [without_offset(inputs[0], counts[0]), with_offset(inputs[1], offsets[1], counts[1])]
(HERE / "logistic-fits.json").write_text(
    json.dumps(
        {
            "by": f"scikit-learn {sklearn.__version__} (first fit), scipy {scipy.__version__} (second), numpy {np.__version__}",
            "labels": labels.tolist(),
            "inputs": inputs.tolist(),
            "offsets": offsets.tolist(),
            "counts": counts.tolist(),
            "coefficients": [answer.tolist() for answer in answers],
        }
    )
)

"""Writes tests/golden/local_level.json: what a general statistics library makes of an invented series.

Run once, from the project's top, with Python 3.11, statsmodels 0.15.0 and numpy 2.4.6 (pip install statsmodels in a
virtual environment):

    python tests/reference/local_level.py > tests/golden/local_level.json

The filter in src/strength/filter.rs must agree to 1e-6. Nothing here is shared with it: statsmodels' own Kalman filter
does the work, with an exact diffuse start. A second way, the joint normal distribution of all readings given the first
one, checks the likelihood of statsmodels before anything is written.

The scale is the natural logarithm of kilograms, time is in days, irregular, and once not forward (a clock set back).
"""

import json

import numpy as np
from statsmodels.tsa.statespace.kalman_filter import KalmanFilter

COUNT = 60
DRIFT_VAR = 0.005**2


def invented():
    """Days, readings, leans and noises; the level behind them is a random walk."""
    rng = np.random.default_rng(20260105)
    steps = rng.choice([2.0, 3.0, 3.5, 4.0, 7.0, 30.0, 0.25, 0.0], size=COUNT - 1)
    steps[5] = -1.5
    noises = rng.uniform(0.045, 0.07, size=COUNT) ** 2
    level = np.log(100.0)
    values = []
    for i in range(COUNT):
        if i > 0:
            level += rng.normal(0.0, np.sqrt(DRIFT_VAR * max(steps[i - 1], 0.0)))
        values.append(level + rng.normal(0.0, np.sqrt(noises[i])))
    return {
        "days": np.concatenate([[0.0], np.cumsum(steps)]).tolist(),
        "values": [float(value) for value in values],
        "leans": rng.uniform(0.0, 0.3, size=COUNT).tolist(),
        "noises": noises.tolist(),
        "drift_var": DRIFT_VAR,
    }


def gaps(given):
    return np.maximum(np.diff(given["days"]), 0.0)


def filtered(given, name):
    """Mean and variance after each reading, and the log-likelihood of all but the first, by statsmodels."""
    kalman = KalmanFilter(k_endog=1, k_states=1, k_posdef=1)
    kalman.bind(np.array(given[name]).reshape(-1, 1))
    kalman["design"] = np.ones((1, 1))
    kalman["transition"] = np.ones((1, 1))
    kalman["selection"] = np.ones((1, 1))
    kalman["obs_cov"] = np.array(given["noises"]).reshape(1, 1, -1)
    # The state noise at t leads from t to t + 1.
    state_cov = np.zeros((1, 1, COUNT))
    state_cov[0, 0, :-1] = given["drift_var"] * gaps(given)
    kalman["state_cov"] = state_cov
    kalman.initialize_diffuse()
    result = kalman.filter()
    return result.filtered_state[0], result.filtered_state_cov[0, 0], result.llf_obs[1:].sum()


def joint_loglik(given):
    """The same log-likelihood from one joint normal: readings less the first one, covariance written out."""
    passed = np.concatenate([[0.0], np.cumsum(gaps(given))])
    whole = given["drift_var"] * np.minimum.outer(passed, passed) + np.diag(given["noises"])
    less_first = np.hstack([-np.ones((COUNT - 1, 1)), np.eye(COUNT - 1)])
    cov = less_first @ whole @ less_first.T
    off = less_first @ np.array(given["values"])
    _, logdet = np.linalg.slogdet(cov)
    return -0.5 * (len(off) * np.log(2 * np.pi) + logdet + off @ np.linalg.solve(cov, off))


def main():
    given = invented()
    level, variance, loglik = filtered(given, "values")
    assert abs(loglik - joint_loglik(given)) < 1e-8
    mean_lean, _, _ = filtered(given, "leans")
    answer = {
        "level": level.tolist(),
        "variance": variance.tolist(),
        "mean_lean": mean_lean.tolist(),
        "loglik": float(loglik),
    }
    print(json.dumps(given | answer, indent=1))


main()

"""Writes tests/golden/local_level.json: what a general statistics library makes of two invented series.

Run once, from the project's top, with Python 3.11, statsmodels 0.15.0 and numpy 2.4.6 (pip install statsmodels in a
virtual environment):

    python tests/reference/local_level.py > tests/golden/local_level.json

The filter in src/strength/filter.rs must agree to 1e-6. Nothing here is shared with it: statsmodels' own Kalman filter
does the work, with an exact diffuse start for the level. A second way, the joint normal distribution of all readings
given the first one, checks the likelihood of statsmodels before anything is written.

The scale is the natural logarithm of kilograms, time is in days, irregular, and once not forward (a clock set back).
"""

import json

import numpy as np
from statsmodels.tsa.statespace.initialization import Initialization
from statsmodels.tsa.statespace.kalman_filter import KalmanFilter

DRIFT_VAR = 0.005**2


def series(seed, count, lean_of, own, own_var):
    """An invented series: level and own curve are drawn, readings follow."""
    rng = np.random.default_rng(seed)
    steps = rng.choice([2.0, 3.0, 3.5, 4.0, 7.0, 30.0, 0.25, 0.0], size=count - 1)
    steps[5] = -1.5
    leans = lean_of(rng, count)
    noises = rng.uniform(0.045, 0.07, size=count) ** 2
    level = np.log(100.0)
    values = []
    for i in range(count):
        if i > 0:
            level += rng.normal(0.0, np.sqrt(DRIFT_VAR * max(steps[i - 1], 0.0)))
        values.append(level + leans[i] * own + rng.normal(0.0, np.sqrt(noises[i])))
    return {
        "days": [float(day) for day in np.concatenate([[0.0], np.cumsum(steps)])],
        "values": [float(value) for value in values],
        "leans": [float(lean) for lean in leans],
        "noises": [float(noise) for noise in noises],
        "drift_var": DRIFT_VAR,
        "own_var": own_var,
    }


def gaps(given):
    return np.maximum(np.diff(given["days"]), 0.0)


def filtered(given):
    """Mean and variances after each reading, and the log-likelihood of all but the first, by statsmodels."""
    count = len(given["values"])
    two = given["own_var"] > 0.0
    states = 2 if two else 1
    kalman = KalmanFilter(k_endog=1, k_states=states, k_posdef=1)
    kalman.bind(np.array(given["values"]).reshape(-1, 1))
    design = np.ones((1, states, count))
    if two:
        design[0, 1, :] = given["leans"]
    kalman["design"] = design
    kalman["transition"] = np.eye(states)
    kalman["selection"] = np.eye(states)[:, :1]
    kalman["obs_cov"] = np.array(given["noises"]).reshape(1, 1, -1)
    # The state noise at t leads from t to t + 1.
    state_cov = np.zeros((1, 1, count))
    state_cov[0, 0, :-1] = given["drift_var"] * gaps(given)
    kalman["state_cov"] = state_cov
    start = Initialization(states)
    start.set(0, "diffuse")
    if two:
        start.set(1, "known", constant=[0.0], stationary_cov=[[given["own_var"]]])
    kalman.initialize(start)
    result = kalman.filter()
    means, covs = result.filtered_state, result.filtered_state_cov
    answer = {
        "level": means[0].tolist(),
        "level_var": covs[0, 0].tolist(),
        "loglik": float(result.llf_obs[1:].sum()),
    }
    if two:
        answer["own"] = means[1].tolist()
        answer["both"] = covs[0, 1].tolist()
        answer["own_var_after"] = covs[1, 1].tolist()
    return answer


def joint_loglik(given):
    """The same log-likelihood from one joint normal: readings less the first one, covariance written out."""
    passed = np.concatenate([[0.0], np.cumsum(gaps(given))])
    drift = given["drift_var"] * np.minimum.outer(passed, passed)
    leans = np.array(given["leans"]) if given["own_var"] > 0.0 else np.zeros(len(passed))
    whole = drift + given["own_var"] * np.outer(leans, leans) + np.diag(given["noises"])
    less_first = np.hstack([-np.ones((len(passed) - 1, 1)), np.eye(len(passed) - 1)])
    cov = less_first @ whole @ less_first.T
    off = less_first @ np.array(given["values"])
    _, logdet = np.linalg.slogdet(cov)
    return float(-0.5 * (len(off) * np.log(2 * np.pi) + logdet + off @ np.linalg.solve(cov, off)))


def main():
    plain = series(20260105, 40, lambda rng, n: np.zeros(n), 0.0, 0.0)
    own = series(20260106, 40, lambda rng, n: rng.uniform(0.0, 0.3, size=n), 0.2, 0.29**2)
    written = {}
    for name, given in [("local_level", plain), ("with_own_curve", own)]:
        answer = filtered(given)
        assert abs(answer["loglik"] - joint_loglik(given)) < 1e-8, name
        written[name] = given | answer
    print(json.dumps(written, indent=1))


main()

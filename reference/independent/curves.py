"""Fits the invented children of simulated.csv once more, in another way than the project does.

    python3 reference/independent/curves.py > reference/independent/curves-python.json

The statistical model is the project's: cubic B-splines on 20 equal steps of ln length from 45 to 205 cm, differences
penalised (second for the median and the mean, first for the others). The way is not: basis functions from scipy,
scores and information by finite differences of the published log densities, Newton steps with the observed (not the expected)
information, and smoothness by direct maximisation of the Laplace approximation of the restricted likelihood (Wood 2011)
instead of the Fellner-Schall update.
"""
import json
import sys
from pathlib import Path

import numpy as np
import scipy
from scipy.interpolate import BSpline
from scipy.optimize import minimize

here = Path(__file__).parent
children = np.genfromtxt(here / "simulated.csv", delimiter=",", names=True)
lengths = [52, 58, 65, 75, 85, 95, 105, 118, 132, 148, 165, 185]
low, high, intervals = np.log(45), np.log(205), 20
step = (high - low) / intervals
knots = low + step * np.arange(-3, intervals + 4)
size = intervals + 3


def basis(x):
    return BSpline.design_matrix(x, knots, 3).toarray()


def box_cox(eta, y):
    """ln density of ln y where ((y/M)^L - 1) / (L S) is standard normal (Cole and Green 1992)."""
    log_median, log_sigma, power = eta
    ratio = np.log(y) - log_median
    small = np.abs(power * ratio) < 1e-9
    safe = np.where(small, 1.0, power)
    z = np.where(small, ratio, np.expm1(safe * ratio) / safe) / np.exp(log_sigma)
    return power * ratio - log_sigma - z**2 / 2


def boy(eta, is_boy):
    return np.where(is_boy, -np.logaddexp(0, -eta[0]), -np.logaddexp(0, eta[0]))


def correlated(eta, first, second, slips=0.01):
    """ln of 99 % bivariate normal and 1 % independent, over the density of independence."""
    rho = np.tanh(eta[0])
    rest = 1 - rho**2
    pair = -np.log(rest) / 2 - (first**2 - 2 * rho * first * second + second**2) / (2 * rest) + (first**2 + second**2) / 2
    return np.logaddexp(np.log(1 - slips) + pair, np.log(slips))


def derivatives(log_density, eta, h=1e-4):
    """Gradient and Hessian of the rows' log densities by their predictors, by central differences."""
    count = len(eta)
    at = lambda *moves: log_density([e + sum(h * m for j, m in moves if j == i) for i, e in enumerate(eta)])
    middle = at()
    gradient = np.array([(at((i, 1)) - at((i, -1))) / (2 * h) for i in range(count)])
    hessian = np.empty((count, count, len(middle)))
    for i in range(count):
        hessian[i, i] = (at((i, 1)) - 2 * middle + at((i, -1))) / h**2
        for j in range(i):
            both = at((i, 1), (j, 1)) - at((i, 1), (j, -1)) - at((i, -1), (j, 1)) + at((i, -1), (j, -1))
            hessian[i, j] = hessian[j, i] = both / (4 * h * h)
    return middle.sum(), gradient, hessian


def fit(log_density, design, start, orders):
    count = len(orders)
    penalties = []
    for order in orders:
        difference = np.diff(np.eye(size), n=order, axis=0)
        penalties.append(difference.T @ difference)
    state = {"theta": np.concatenate(start)}

    def assemble(theta):
        eta = [design @ part for part in np.split(theta, count)]
        value, gradient, hessian = derivatives(log_density, eta)
        slope = np.concatenate([design.T @ g for g in gradient])
        information = -np.block([[design.T @ (hessian[i, j][:, None] * design) for j in range(count)] for i in range(count)])
        return value, slope, information

    def penalty_of(log_smoothness):
        # The ridge gives coefficients that no row touches a value.
        return scipy.linalg.block_diag(*[np.exp(s) * p for s, p in zip(log_smoothness, penalties)]) + 1e-8 * np.eye(size * count)

    def maximise(log_smoothness):
        penalty = penalty_of(log_smoothness)
        theta = state["theta"]
        value, slope, information = assemble(theta)
        for _ in range(100):
            total = information + penalty
            lift = max(0.0, 1e-6 - np.linalg.eigvalsh(total)[0])
            move = np.linalg.solve(total + lift * np.eye(len(total)), slope - penalty @ theta)
            current = value - theta @ penalty @ theta / 2
            scale = 1.0
            while True:
                candidate = theta + scale * move
                new = assemble(candidate)
                if new[0] - candidate @ penalty @ candidate / 2 >= current - 1e-10 or scale < 1e-6:
                    break
                scale /= 2
            theta, (value, slope, information) = candidate, new
            if np.max(np.abs(slope - penalty @ theta)) < 1e-4:
                break
        state["theta"] = theta
        return theta, value, information, penalty

    def restricted(log_smoothness):
        theta, value, information, penalty = maximise(log_smoothness)
        ranks = sum((size - order) * s for order, s in zip(orders, log_smoothness)) / 2
        return -(value - theta @ penalty @ theta / 2 + ranks - np.linalg.slogdet(information + penalty)[1] / 2)

    bounds = [(np.log(1e-3), np.log(1e7))] * count
    found = minimize(restricted, np.full(count, np.log(10.0)), method="Nelder-Mead", bounds=bounds,
                     options={"xatol": 1e-3, "fatol": 1e-5, "maxiter": 600})
    theta, value, information, penalty = maximise(found.x)
    covariance = np.linalg.inv(information + penalty)
    at = basis(np.log(lengths))
    curves = []
    for i in range(count):
        block = slice(i * size, (i + 1) * size)
        curves.append({
            "value": [float("%.6g" % v) for v in at @ theta[block]],
            "standardError": [float("%.3g" % e) for e in np.sqrt(np.einsum("ij,jk,ik->i", at, covariance[block, block], at))],
            "smoothness": float("%.4g" % np.exp(found.x[i])),
        })
    print(found.nit, found.fun, value, file=sys.stderr)
    return curves


x = np.log(children["length_cm"])
design = basis(x)
y = children["value"]
flat = lambda value: np.full(size, value)
line = np.polynomial.Polynomial.fit(x, np.log(y), 1)
# The blossom of a straight line: its values at the centres of the basis functions.
straight = line(low + step * np.arange(-1, intervals + 2))

[mean] = fit(lambda eta: -((np.log(y) - eta[0]) ** 2) / (2 * 0.15**2), design, [straight], [2])
[boys] = fit(lambda eta: boy(eta, children["boy"] == 1), design, [flat(0.0)], [1])
[correlation] = fit(lambda eta: correlated(eta, children["first"], children["second"]), design, [flat(0.8)], [1])
log_median, log_sigma, power = fit(
    lambda eta: box_cox(eta, y), design, [straight, flat(np.log(0.15)), flat(0.0)], [2, 1, 1])

print(json.dumps({
    "madeBy": "reference/independent/curves.py",
    "versions": {"python": sys.version.split()[0], "numpy": np.__version__, "scipy": scipy.__version__},
    "lengthsCm": lengths,
    "curves": {"mean": mean, "boys": boys, "correlation": correlation, "logMedian": log_median, "logSigma": log_sigma, "lambda": power},
}, indent=2))

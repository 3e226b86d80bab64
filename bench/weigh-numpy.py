"""The peer of estimateWeight for length, arm and a known sex: the same sums on whole columns at once, with numpy.

Reads from standard input {"rows", "lengthCm": [..], "armMm": [..], "reference": path of by-length.json, "shift", "slope", "spread", "t975"}
and prints {"seconds", "totalKg": [..first rows..], "low95Kg", "high95Kg"}. Tables are made before the clock starts.
"""

import json
import sys
import time

import numpy as np

STRAIGHT_FROM = 0.25

given = json.load(sys.stdin)
with open(given["reference"], encoding="utf8") as file:
    reference = json.load(file)
index, basis, residual = reference["index"], reference["basis"], reference["residual"]


def spline(coefficients):
    """One curve at every step of the table."""
    points = round((index["high"] - index["low"]) / index["step"]) + 1
    x = np.clip(np.log(index["low"] + index["step"] * np.arange(points)), basis["low"], basis["high"])
    position = (x - basis["low"]) / (basis["high"] - basis["low"]) * basis["intervals"]
    first = np.minimum(np.floor(position).astype(int), basis["intervals"] - 1)
    t = position - first
    u = 1 - t
    weights = [u**3 / 6, (3 * t**3 - 6 * t**2 + 4) / 6, (-3 * t**3 + 3 * t**2 + 3 * t + 1) / 6, t**3 / 6]
    return sum(weight * np.asarray(coefficients)[first + i] for i, weight in enumerate(weights))


own = reference["sexes"]["f"]


def tables(quantity):
    curve = own["curves"][quantity]
    return spline(curve["logMedian"]), np.exp(spline(curve["logSigma"])), spline(curve["lambda"])


weight_table, arm_table = tables("weight"), tables("arm")
correlation_table = np.tanh(spline(own["correlations"]["weight~arm"]))
bend_tables = [spline(coefficients) for coefficients in reference["bend"]]


def box_cox_z(log_value, log_median, sigma, lam):
    log_ratio = log_value - log_median
    power = np.exp(lam * log_ratio)
    curved = (power - 1) / (lam * sigma)
    knee = (STRAIGHT_FROM - 1) / (lam * sigma)
    straight = knee + (log_ratio - np.log(STRAIGHT_FROM) / lam) * STRAIGHT_FROM / sigma
    return np.where(power >= STRAIGHT_FROM, curved, straight)


def box_cox_kg(z, log_median, sigma, lam):
    power = 1 + lam * sigma * z
    curved = np.log(np.maximum(power, STRAIGHT_FROM)) / lam
    knee = (STRAIGHT_FROM - 1) / (lam * sigma)
    straight = np.log(STRAIGHT_FROM) / lam + (z - knee) * sigma / STRAIGHT_FROM
    return np.exp(log_median + np.where(power >= STRAIGHT_FROM, curved, straight))


def weigh(length_cm, arm_mm):
    position = (length_cm - index["low"]) / index["step"]
    row = np.minimum(position.astype(int), len(correlation_table) - 2)
    part = position - row

    def read(column):
        return column[row] * (1 - part) + column[row + 1] * part

    weight, arm = [[read(column) for column in table] for table in (weight_table, arm_table)]
    correlation = read(correlation_table)
    mean = correlation * box_cox_z(np.log(arm_mm), *arm)
    variance = 1 - correlation**2
    slope = np.maximum(1 + weight[2] * weight[1] * mean, STRAIGHT_FROM)
    scale = np.sqrt(variance) * residual["scale"] * slope ** residual["spreadPower"]
    m = np.clip(mean, -1.25, 2.5)
    bend = sum(read(table) * m**power for power, table in enumerate(bend_tables))
    mean = mean + variance * (1 - variance) * bend
    scale = scale * np.sqrt(given["spread"]**2 + given["shift"] + given["slope"] * mean**2)
    t = given["t975"]
    return [box_cox_kg(mean + quantile * scale, *weight) for quantile in (0, -t, t)]


length_cm, arm_mm = np.array(given["lengthCm"], float), np.array(given["armMm"], float)
seconds = []
for _ in range(4):
    start = time.perf_counter()
    total, low, high = weigh(length_cm, arm_mm)
    seconds.append(time.perf_counter() - start)
first = slice(0, 1000)
print(
    json.dumps(
        {
            "seconds": min(seconds),
            "totalKg": total[first].tolist(),
            "low95Kg": low[first].tolist(),
            "high95Kg": high[first].tolist(),
        }
    )
)

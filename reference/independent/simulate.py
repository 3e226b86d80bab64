"""Invents the children of simulated.csv: nobody was measured. numpy only; the same seed gives the same file.

    python3 reference/independent/simulate.py > reference/independent/simulated.csv

value   Box-Cox-normal given length, from the curves below
boy     1 with a probability that falls with length
first, second   two standard normal scores whose correlation rises with length
"""
import numpy as np

rng = np.random.default_rng(20261125)
rows = 2000
x = rng.uniform(np.log(50), np.log(195), rows)
t = (x - np.log(50)) / (np.log(195) - np.log(50))

median = 3.4 * (np.exp(x) / 50) ** 2.1 * np.exp(0.12 * np.sin(2 * np.pi * t))
spread = 0.09 + 0.09 * t**2
power = 0.4 - 1.4 * t
z = rng.standard_normal(rows)
value = median * (1 + power * spread * np.clip(z, -4, 4)) ** (1 / power)

boy = rng.uniform(size=rows) < 1 / (1 + np.exp(-(0.6 - 1.5 * t + 0.5 * np.sin(5 * t))))

rho = 0.5 + 0.4 * t
first = rng.standard_normal(rows)
second = rho * first + np.sqrt(1 - rho**2) * rng.standard_normal(rows)

print("length_cm,value,boy,first,second")
for row in zip(np.exp(x), value, boy, first, second):
    print("%.2f,%.4g,%d,%.3f,%.3f" % row)

"""BCa bootstrap of the bias at a level from Passing-Bablok lines: every drawn sample fitted from all of its slopes.
All lines and biases are fractions, so that a drawn bias equals that of all pairs exactly or not at all.

Run from tests/ReferenceData:  python3 scripts/passing_bablok_bootstrap.py
Standard library only; reads computed/regression_pairs.csv, writes computed/passing_bablok_bootstrap.csv.
"""

import math
import platform
from fractions import Fraction
from statistics import fmean, median

from slope_bootstrap import NORMAL, quantile7, splitmix64


def line(pairs):
    slopes, vertical, below = [], 0, 0
    for i, (xi, yi) in enumerate(pairs):
        for xj, yj in pairs[i + 1:]:
            if xi == xj:
                vertical += yi != yj
                continue
            slope = (yi - yj) / (xi - xj)
            if slope != -1:
                slopes.append(slope)
                below += slope < -1
    n = len(slopes) + vertical
    slopes.sort()
    middle = [(n + 1) // 2 + below - 1, n // 2 + 1 + below - 1]
    if n == 0 or middle[1] >= len(slopes):
        return None
    slope = (slopes[middle[0]] + slopes[middle[1]]) / 2
    return slope, median(y - slope * x for x, y in pairs)


def interval(pairs, at, level, replicates, seed):
    n = len(pairs)
    bias = lambda fit: fit[1] + (fit[0] - 1) * Fraction(str(at))
    master = splitmix64(seed)
    drawn, redrawn = [], 0
    for _ in range(replicates):
        stream = splitmix64(next(master))
        while True:
            fit = line([pairs[int(((next(stream) >> 12) + 0.5) / 2**52 * n)] for _ in range(n)])
            if fit:
                break
            redrawn += 1
        drawn.append(bias(fit))
    value = bias(line(pairs))
    drawn.sort()
    z0 = NORMAL.inv_cdf((sum(s < value for s in drawn) + sum(s <= value for s in drawn)) / (2 * replicates))
    drawn = [float(s) for s in drawn]
    left = [float(bias(line(pairs[:i] + pairs[i + 1:]))) for i in range(n)]
    mean = fmean(left)
    a = sum((mean - s) ** 3 for s in left) / (6 * sum((mean - s) ** 2 for s in left) ** 1.5)
    ends = []
    for tail in ((1 - level) / 2, (1 + level) / 2):
        z = z0 + NORMAL.inv_cdf(tail)
        ends.append(quantile7(drawn, NORMAL.cdf(z0 + z / (1 - a * z))))
    return float(value), *ends, z0, a, redrawn


cases = {}
with open("computed/regression_pairs.csv") as file:
    for row in file.readlines()[1:]:
        case, x, y = row.strip().split(",")
        cases.setdefault(case, []).append((Fraction(x), Fraction(y)))

with open("computed/passing_bablok_bootstrap.csv", "w") as file:
    file.write(f"# Python {platform.python_version()}; scripts/passing_bablok_bootstrap.py\n")
    file.write("case,at,level,replicates,seed,bias,lower,upper,z0,a,redrawn\n")
    for case, at, level, replicates, seed in (
        ("wide", 30, 0.95, 400, 1),
        ("wide", 50, 0.9, 399, 20240819),
        ("narrow", 11.5, 0.95, 300, 2),
        ("tied", 1.5, 0.9, 400, 3),
        ("tied", 1.2, 0.9, 300, 1),
        ("small", 18.7, 0.9, 2000, 5),
    ):
        *values, redrawn = interval(cases[case], at, level, replicates, seed)
        file.write(f"{case},{at},{level},{replicates},{seed}," + ",".join(f"{v:.17g}" for v in values) + f",{redrawn}\n")

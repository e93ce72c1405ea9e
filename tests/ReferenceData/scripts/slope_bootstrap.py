"""BCa bootstrap of the Deming slope, in Python whole numbers and floats.

Run from tests/ReferenceData:  python3 scripts/slope_bootstrap.py
Standard library only; reads computed/regression_pairs.csv, writes computed/slope_bootstrap.csv.
"""

import math
import platform
from statistics import NormalDist, fmean

MASK = (1 << 64) - 1
NORMAL = NormalDist()


def splitmix64(state):
    while True:
        state = (state + 0x9E3779B97F4A7C15) & MASK
        z = ((state ^ (state >> 30)) * 0xBF58476D1CE4E5B9) & MASK
        z = ((z ^ (z >> 27)) * 0x94D049BB133111EB) & MASK
        yield z ^ (z >> 31)


def deming(pairs, ratio):
    mx, my = fmean(p[0] for p in pairs), fmean(p[1] for p in pairs)
    sxx = math.fsum((p[0] - mx) ** 2 for p in pairs)
    syy = math.fsum((p[1] - my) ** 2 for p in pairs)
    sxy = math.fsum((p[0] - mx) * (p[1] - my) for p in pairs)
    d = ratio * syy - sxx
    return (d + math.sqrt(d * d + 4 * ratio * sxy * sxy)) / (2 * ratio * sxy)


def quantile7(values, share):
    h = (len(values) - 1) * share
    k = min(int(h), len(values) - 2)
    return values[k] + (h - k) * (values[k + 1] - values[k])


def interval(pairs, ratio, level, replicates, seed):
    n = len(pairs)
    master = splitmix64(seed)
    slopes = []
    for _ in range(replicates):
        stream = splitmix64(next(master))
        draw = [pairs[int(((next(stream) >> 12) + 0.5) / 2**52 * n)] for _ in range(n)]
        slopes.append(deming(draw, ratio))
    slope = deming(pairs, ratio)
    slopes.sort()
    z0 = NORMAL.inv_cdf((sum(s < slope for s in slopes) + sum(s <= slope for s in slopes)) / (2 * replicates))
    left = [deming(pairs[:i] + pairs[i + 1:], ratio) for i in range(n)]
    mean = fmean(left)
    a = sum((mean - s) ** 3 for s in left) / (6 * sum((mean - s) ** 2 for s in left) ** 1.5)
    ends = []
    for tail in ((1 - level) / 2, (1 + level) / 2):
        z = z0 + NORMAL.inv_cdf(tail)
        ends.append(quantile7(slopes, NORMAL.cdf(z0 + z / (1 - a * z))))
    return slope, *ends, z0, a


def main():
    cases = {}
    with open("computed/regression_pairs.csv") as file:
        for line in file.readlines()[1:]:
            case, x, y = line.strip().split(",")
            cases.setdefault(case, []).append((float(x), float(y)))

    with open("computed/slope_bootstrap.csv", "w") as file:
        file.write(f"# Python {platform.python_version()}; scripts/slope_bootstrap.py\n")
        file.write("case,ratio,level,replicates,seed,slope,lower,upper,z0,a\n")
        for case, ratio, level, replicates, seed in (
            ("wide", 1, 0.95, 1000, 1),
            ("wide", 0.5, 0.9, 999, 20240819),
            ("narrow", 1, 0.95, 1000, 2),
            ("tied", 2, 0.9, 500, 3),
        ):
            values = interval(cases[case], ratio, level, replicates, seed)
            file.write(f"{case},{ratio},{level},{replicates},{seed}," + ",".join(f"{v:.17g}" for v in values) + "\n")


if __name__ == "__main__":
    main()

"""Noncentral t probabilities and quantiles with 30 digits, beyond the range of the common series.

Run from tests/ReferenceData:  python3 scripts/noncentral_t.py
Integrates P(T <= t) = int Phi(t w - d) f(w) dw over w, with f the density of sqrt(chi2/df), in mpmath.
"""
import sys
import mpmath as mp

mp.mp.dps = 30


def cdf(t, df, d):
    t, df, d = mp.mpf(t), mp.mpf(df), mp.mpf(d)
    log_constant = mp.log(2) + df / 2 * mp.log(df / 2) - mp.loggamma(df / 2)
    density = lambda w: mp.exp(log_constant + (df - 1) * mp.log(w) - df * w * w / 2) if w > 0 else (
        mp.exp(log_constant) if df == 1 else mp.mpf(0))
    width = 1 / mp.sqrt(2 * df)
    low, high = max(mp.mpf(0), 1 - 14 * width), 1 + 14 * width
    points = [low + (high - low) * i / 24 for i in range(25)]
    if t > 0 and low < d / t < high:
        rise = 1 / t
        points = sorted(set(points + [x for x in (d / t + k * rise for k in range(-8, 9, 2)) if low < x < high]))
    return mp.quad(lambda w: mp.ncdf(t * w - d) * density(w), points)


with open("computed/noncentral_t_cdf.csv", "w") as out:
    out.write(f"# mpmath {mp.__version__}, Python {sys.version.split()[0]}; scripts/noncentral_t.py\n")
    out.write("t,df,ncp,cdf\n")
    for n in (2, 3, 5, 17, 40, 200, 1000, 10000):
        d = 1.96 * n ** 0.5
        spread = (1 + d * d / (2 * n)) ** 0.5
        for k in (-3, -2, -1, 0, 0.7, 2, 3):
            t = round(d + k * spread, 6)
            out.write(f"{t!r},{n - 1},{d!r},{mp.nstr(cdf(t, n - 1, d), 20)}\n")
    for t, df, d in ((0, 4, 1.5), (-1.25, 3, 0.5), (2.5, 7, -1.0), (1.5, 10, 0), (60, 1, 27.7), (300, 2, 5), (-40, 6, -30.0)):
        out.write(f"{t},{df},{d},{mp.nstr(cdf(t, df, d), 20)}\n")

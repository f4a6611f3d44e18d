"""Makes src/test/resources/coldproof/stats/distribution/noncentral-t-tails.csv.

Noncentral t by the trapezoidal rule over log s of the normal tail times the chi density, in 40-digit arithmetic; the step is halved
until 18 digits stand still. Needs mpmath (1.3.0 was used). Run: python3 noncentral_t.py > noncentral-t-tails.csv
"""
import random

from mpmath import erfc, exp, fsum, gamma, mp, mpf, nstr, sqrt

mp.dps = 40
HEADER = """# Noncentral t, random and far-tail inputs: lower = P(T <= t), upper = P(T > t).
# mpmath 1.3.0, 40 digits, Python 3.11: trapezoidal rule over log s of the normal tail times the chi density, step halved until
# 18 digits stood still; random.seed(20260114). Made 2026-11-25 by src/test/python/noncentral_t.py. All printed digits trusted."""


def tails(t, df, noncentrality):
    """P(T <= t) and P(T > t)."""
    t, df, noncentrality = mpf(str(t)), mpf(str(df)), mpf(str(noncentrality))
    factor = 2 * (df / 2) ** (df / 2) / gamma(df / 2)

    def integral(sign, step):
        low = mpf(-60) / max(1, df / 4) - 4
        points = (low + i * step for i in range(int((3 - low) / step) + 1))

        def integrand(u):
            s = exp(u)
            return factor * s**df * exp(-df * s * s / 2) * erfc(-sign * (t * s - noncentrality) / sqrt(mpf(2))) / 2

        return step * fsum(integrand(u) for u in points)

    both = []
    for sign in (1, -1):
        step = mpf(1) / 16 / max(1, sqrt(df) / 3) / max(1, abs(noncentrality) / 10)
        coarse, fine = integral(sign, step), integral(sign, step / 2)
        if abs(coarse / fine - 1) > mpf(10) ** -20:
            coarse, fine = fine, integral(sign, step / 4)
        assert abs(coarse / fine - 1) < mpf(10) ** -18, (t, df, noncentrality, coarse, fine)
        both.append(fine)
    return both


def main():
    random.seed(20260114)
    rows = [(1, 15, -3.2453), (38, 15, -8.8353), (7.3, 8, -2.7174), (22, 25, -14.361)]
    for _ in range(40):
        df = random.choice([1, 2, 3, 5, 1.5, 2.7, 4.4, 6.6, 9.1, 12, 17.5, 30, 80])
        noncentrality = random.choice([0, 0.3, 1, 2, 5, 12, 30, 60]) * random.choice([1, 1, -1])
        rows.append((df, noncentrality, round(noncentrality * random.uniform(-0.5, 2) + random.gauss(0, 4), 3)))
    print(HEADER)
    print("df,ncp,t,lower,upper")
    for df, noncentrality, t in rows:
        lower, upper = tails(t, df, noncentrality)
        print(",".join([str(df), str(noncentrality), str(t), nstr(lower, 17), nstr(upper, 17)]))


if __name__ == "__main__":
    main()

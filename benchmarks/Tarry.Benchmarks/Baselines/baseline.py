# The same statistics in NumPy and SciPy, one step after another; prints step, CPU seconds, and the same checksum.
import itertools, sys, time
import numpy as np
from scipy import special, stats

x = np.loadtxt(sys.argv[1]).reshape(24, 4, 1500)
conditions = x.reshape(24, 6000)
levels = np.array([.05, .5, .95, .99])


def step(name, f):
    before = time.process_time()
    value = f()
    print(f"{name}\t{time.process_time() - before:.6f}\t{value:.12g}")


def moderate():
    m = x.mean(2)
    s2, d = m.var(1, ddof=1), 3.0
    e = np.log(s2) - special.digamma(d / 2) + np.log(d / 2)
    v = e.var(ddof=1) - special.polygamma(1, d / 2)
    if v <= 0:
        return m.mean(1), np.full(24, s2.mean()), 72.0
    y = 0.5 + 1 / v
    for _ in range(50):
        t = special.polygamma(1, y)
        change = t * (1 - t / v) / special.polygamma(2, y)
        y += change
        if -change / y < 1e-8:
            break
    d0 = 2 * y
    s0 = np.exp(e.mean() + special.digamma(d0 / 2) - np.log(d0 / 2))
    return m.mean(1), (d0 * s0 + d * s2) / (d0 + d), min(d0 + d, 72.0)


def quantile_intervals():
    total = 0.0
    for v in conditions:
        s = np.sort(v)
        low = stats.binom.ppf(.025, s.size, levels).astype(int)
        high = stats.binom.ppf(.975, s.size, levels).astype(int) + 1
        total += np.quantile(s, levels).sum() + s[low - 1].sum() + s[high - 1].sum()
    return total


def densities():
    # SciPy has no Sheather-Jones rule; its normal-reference rule stands in.
    return sum(stats.gaussian_kde(v)(np.linspace(v.min(), v.max(), 512)).max() for v in conditions)


def comparisons():
    means, post, df = moderate()
    i, j = np.array(list(itertools.combinations(range(24), 2))).T
    p = 2 * stats.t.sf(np.abs(means[i] - means[j]) / np.sqrt((post[i] + post[j]) / 4), df)
    o = np.argsort(p)
    return np.minimum(1, np.maximum.accumulate(p[o] * (p.size - np.arange(p.size)))).sum()


def ranking():
    means, post, df = moderate()
    q = stats.studentized_range.ppf(.95, 24, df) / np.sqrt(2)
    D, S = means[:, None] - means, np.sqrt((post[:, None] + post) / 4)
    return float(24 * 24 - (np.abs(D) > q * S).sum())


def drift():
    total = 0.0
    for v in x.reshape(96, 1500):
        b = v.reshape(20, 75)
        total += 75 * b.mean(1).var(ddof=1) / b.var(1, ddof=1).mean()
        y = v - v.mean()
        r = np.array([y[k:] @ y[:-k] for k in range(1, 21)]) / (y @ y)
        total += 1500 * 1502 * (r**2 / (1500 - np.arange(1, 21))).sum()
        ranks = stats.rankdata(v)
        m = ranks.reshape(25, 60).mean(1)
        total += np.abs(np.cumsum(ranks - ranks.mean())).max() / (np.sqrt(np.mean(np.diff(m)**2) / 2 * 60) * np.sqrt(1500))
    return total


step("summaries", lambda: (x.reshape(24, 6000).mean(1) + x.reshape(24, 6000).std(1, ddof=1)).sum())
step("quantile intervals", quantile_intervals)
step("densities", densities)
step("comparisons", comparisons)
step("ranking", ranking)
step("drift and dependence", drift)

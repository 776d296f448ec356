# The device part in NumPy and SciPy; prints step, CPU seconds and checksum. "... by hand" is the method of this project
# written out in NumPy; without it, what SciPy's own functions give.
import sys, time
import numpy as np
from scipy import optimize, signal, special, stats

CONDITIONS, SLOT_MS, LEVELS = (1, 5), 1.0, (.05, .5, .95, .99)
x = np.loadtxt(sys.argv[1]).reshape(24, 4, 1500)
presses = np.loadtxt(sys.argv[2]).reshape(2, 2, 1500, 2)
rng = np.random.default_rng(1)


def step(name, f, scale=1):
    before = time.process_time()
    value = f()
    print(f"{name}\t{(time.process_time() - before) * scale:.6f}\t{value:.12g}", flush=True)


# Line spectrum: latencies over press times, 50 to 1,400 Hz, half a cell apart; the sawtooth's tallest line.
def prepared(device):
    for t, y in ((s[:, 0] / 1000, s[:, 1]) for s in presses[device]):
        low, high = np.quantile(y, [.002, .97])
        z = np.clip(y, low, high + .1 * (high - low))
        yield t - t.mean(), z - z.mean()


def exact_peak(sessions, f, width):
    for _ in range(4):
        grid = np.linspace(f - width, f + width, 17)
        power = sum(np.abs(np.exp(-2j * np.pi * np.outer(grid, t)) @ z) ** 2 / (z @ z) for t, z in sessions)
        f, width = grid[power.argmax()], width / 5
    return f


LOMB_PART = 20


def lomb_scargle():
    # A twentieth of the band, about the line, stands for the whole: every frequency costs the same.
    total = 0.0
    for device, about in enumerate((125.0, 250.0)):
        sessions = list(prepared(device))
        span = max(np.ptp(t) for t, _ in sessions)
        f = np.arange(about - 1350 / LOMB_PART / 2, about + 1350 / LOMB_PART / 2, .5 / span)
        power = sum(signal.lombscargle(t, z, 2 * np.pi * f) for t, z in sessions)
        total += 1000 / exact_peak(sessions, f[power.argmax()], .5 / span)
    return total


def fast_fourier():
    total, dt, size, centre = 0.0, 5e-4, 1 << 20, 725.0
    for device in (0, 1):
        sessions, power = list(prepared(device)), 0.0
        for t, z in sessions:
            u = t - t.min()
            bins = np.floor(u / dt + .5).astype(int)
            turned = z * np.exp(-2j * np.pi * centre * (u - bins * dt))
            sums = np.bincount(bins, turned.real, size) + 1j * np.bincount(bins, turned.imag, size)
            power = power + np.abs(np.fft.fft(sums)) ** 2 / (z @ z)
        at = np.arange(int(50 * size * dt), int(1400 * size * dt))
        f = at / (size * dt)
        best = (power[at % size] / np.sinc((f - centre) * dt) ** 2).argmax()
        total += 1000 / exact_peak(sessions, f[best], .6 / max(np.ptp(t) for t, _ in sessions))
    return total


# Shapes: the exact likelihood of six families with late responses and a place for each session; the one of the lowest BIC.
def phi(u):
    return np.exp(-.5 * u * u) / np.sqrt(2 * np.pi)


def block(y, T, s):
    a, b = y / s, (y - T) / s
    return np.where(b > 0, special.ndtr(-b) - special.ndtr(-a), special.ndtr(a) - special.ndtr(b)) / T


def two_blocks(y, a, b, s):
    u = -np.abs(y - (a + b) / 2)
    G = lambda k: (u + k) / s * special.ndtr((u + k) / s) + phi((u + k) / s)
    h, d = (a + b) / 2, (a - b) / 2
    return np.maximum(G(h) - G(d) - G(-d) + G(-h), 0) * s / (a * b)


def tail(y, s, tau):
    v = (s / tau - y / s) / np.sqrt(2)
    near = np.exp(-.5 * (y / s) ** 2) * special.erfcx(np.maximum(v, -20)) / (2 * tau)
    return np.where(v > -20, near, np.exp(np.minimum(s * s / (2 * tau * tau) - y / tau, 0)) / tau)


e, w = np.exp, special.expit
FAMILIES = [  # density, mean and variance by its parameters, starts as (place, parameters) by low, median, width, robust sd
    (lambda y, p: phi(y / e(p[0])) / e(p[0]), lambda p: (0, e(2 * p[0])), lambda l, m, W, r: [(m, [np.log(r)])]),
    (lambda y, p: block(y, *e(p)), lambda p: (e(p[0]) / 2, e(2 * p[0]) / 12 + e(2 * p[1])),
     lambda l, m, W, r: [(l, np.log([W, .05 * W])), (l + .2 * W, np.log([.6 * W, .15 * W]))]),
    (lambda y, p: tail(y, *e(p)), lambda p: (e(p[1]), e(2 * p[0]) + e(2 * p[1])),
     lambda l, m, W, r: [(m - .5 * r, np.log([.6 * r, .7 * r])), (l + .1 * r, np.log([.2 * r, 1.2 * r]))]),
    (lambda y, p: two_blocks(y, *e(p)), lambda p: ((e(p[0]) + e(p[1])) / 2, (e(2 * p[0]) + e(2 * p[1])) / 12 + e(2 * p[2])),
     lambda l, m, W, r: [(l - .05 * W, np.log([k * W, (1 - k) * W, .04 * W])) for k in (.55, .75, .9)]),
    (lambda y, p: (1 - w(p[3])) * block(y, *e(p[:2])) + w(p[3]) * block(y - e(p[0]) - e(p[2]), *e(p[:2])), None,
     lambda l, m, W, r: [(l, [np.log(a * W), np.log(b * W), np.log(c * W), d]) for a, b, c, d in ((.4, .05, .15, 0), (.15, .03, .65, -.5), (.45, .03, .05, -2.5))]),
    (lambda y, p: (1 - w(p[3])) * phi(y / e(p[0])) / e(p[0]) + w(p[3]) * phi((y - e(p[1])) / e(p[2])) / e(p[2]), None,
     lambda l, m, W, r: [(a, [np.log(b), np.log(c * W), np.log(b), d]) for a, b, c, d in ((l + .2 * W, .15 * W, .5, 0), (l + .1 * W, .08 * W, .75, 0), (m, r, .7, -1.5))]),
]


def shapes():
    total = 0.0
    for condition in CONDITIONS:
        sessions = x[condition]
        shift = sessions.mean(1) - sessions.mean()
        pooled = sessions - shift[:, None]
        low, q1, median, q3, high = np.quantile(pooled, [.02, .25, .5, .75, .98])
        late = 1 / (max(pooled.max(), median + 10) + 1 - median)
        best = None
        for density, moments, starts in FAMILIES:
            count = len(starts(low, median, high - low, 1)[0][1])

            def minus_log_likelihood(p):
                places, share = p[count:-1], w(p[-1])
                with np.errstate(all="ignore"):
                    f = density(sessions - places[:, None], np.clip(p[:count], -8, 8))
                    return -np.log(np.maximum((1 - share) * f + share * late * (pooled > median), 1e-300)).sum()

            fits = [optimize.minimize(minus_log_likelihood, np.r_[p, place + shift, -5.0], method="BFGS", options={"gtol": .05})
                    for place, p in starts(low, median, (high - low) / .96, (q3 - q1) / 1.35)]
            fit = min(fits, key=lambda fit: fit.fun)
            bic = 2 * fit.fun + fit.x.size * np.log(sessions.size)
            if best is None or bic < best[0]:
                best = bic, fit.x, count, moments
        mean, variance = best[3](best[1][:best[2]])
        total += best[1][best[2]:-1].mean() + mean + np.sqrt(variance)
    return total


# Deconvolution: Richardson-Lucy, iterations by four held-out folds, a band of 60 resamples.
H, NUMBERS = .1, (5, 10, 15, 20, 30, 40, 60, 80, 120, 160, 240, 320, 480, 640, 960)


def iterate(y, kernel, d, steps):
    for _ in range(steps):
        predicted = np.convolve(d, kernel)
        d = d * np.correlate(np.where(y > 0, y / np.maximum(predicted, 1e-300), 0), kernel, "valid") / y.sum()
    return d


def deconvolution():
    total = 0.0
    slot = np.full(round(SLOT_MS / H), H / SLOT_MS)
    smooth = phi(np.arange(-4.0, 5)) / phi(np.arange(-4.0, 5)).sum()
    references = x[0]
    kernel_from = np.floor(references.min() / H) * H - 4 * H
    kernel_bins = int((references.max() - kernel_from) / H) + 5
    kernel_of = lambda values: np.convolve(np.bincount(((values - kernel_from) / H).astype(int), minlength=kernel_bins), smooth, "same") / values.size
    for condition in CONDITIONS:
        latencies = x[condition]
        delay_from = np.floor((latencies.min() - np.quantile(references, .995)) / H) * H - H
        delay_bins = int(np.ceil((latencies.max() + SLOT_MS - references.min() - delay_from) / H)) + 1
        size = delay_bins + kernel_bins - 1
        flat = np.ones(delay_bins) / delay_bins
        counts_of = lambda values: np.convolve(np.bincount(((values - delay_from - kernel_from) / H).astype(int), minlength=size), slot)[:size]
        kernel, all_latencies = kernel_of(references.ravel()), latencies.ravel()
        fold = rng.integers(0, 4, all_latencies.size)
        parts = [(counts_of(all_latencies[fold != k]), counts_of(all_latencies[fold == k])) for k in range(4)]
        found, done, scores = [flat] * 4, 0, []
        for number in NUMBERS:
            found = [iterate(rest, kernel, d, number - done) for d, (rest, _) in zip(found, parts)]
            done = number
            scores.append(sum(held @ np.log(np.maximum(np.convolve(d, kernel), 1e-9)) for d, (_, held) in zip(found, parts)))
            if scores[-1] < max(scores) - 3:
                break
        iterations = next(n for n, score in zip(NUMBERS, scores) if score >= max(scores) - .5)
        density = iterate(counts_of(all_latencies), kernel, flat, iterations)
        band = []
        for _ in range(60):
            chosen = rng.integers(0, 4, 4)
            drawn = np.concatenate([rng.choice(latencies[s], 1500) for s in chosen])
            drawn_references = np.concatenate([rng.choice(references[s], 1500) for s in chosen])
            band.append(iterate(counts_of(drawn), kernel_of(drawn_references), flat, iterations))
        low, high = np.quantile(band, [.05, .95], axis=0)
        middles = delay_from + (np.arange(delay_bins) + .5) * H
        mean = density @ middles
        total += mean + np.sqrt(density @ (middles - mean) ** 2) + (high - low).sum()
    return total


# Play: the best hit probability of 6 settings, their flattery from 100 resamples, and two curves of 100 windows.
FRAME = 1000 / 60
WINDOWS, PLAYERS, CURVE = (FRAME / 2, FRAME, 2 * FRAME), (0, 10), np.arange(1, 101) * (2 * FRAME * 1.2 / 100)


def hit(distance, window, sd):
    return special.ndtr((window - distance) / sd) - special.ndtr((-window - distance) / sd)


def best_share(values, window, sd, polish=True):
    if sd == 0:
        s = np.sort(values)
        return (np.searchsorted(s, s + 2 * window + 1e-9, "right") - np.arange(s.size)).max() / s.size
    h = min(sd / 8, .1)
    counts = np.bincount(np.rint((values - values.min()) / h).astype(int)) / values.size
    reach = int(np.ceil((window + 8.5 * sd) / h))
    shares = signal.fftconvolve(counts, hit(np.arange(-reach, reach + 1) * h, window, sd))
    if not polish:
        return shares.max()
    top = values.min() + (shares.argmax() - reach) * h
    return -optimize.minimize_scalar(lambda c: -hit(values - c, window, sd).mean(), bounds=(top - 2 * h, top + 2 * h), method="bounded").fun


def play():
    total = 0.0
    for condition in CONDITIONS:
        sessions = x[condition]
        values = sessions.ravel()
        for sd in PLAYERS:
            total += sum(best_share(values, window, sd, polish=False) for window in CURVE)
        best = {(sd, window): best_share(values, window, sd) for sd in PLAYERS for window in WINDOWS}
        sums = dict.fromkeys(best, 0.0)
        for _ in range(100):
            drawn = np.concatenate([rng.choice(session, session.size) for session in sessions])
            for key in sums:
                sums[key] += best_share(drawn, key[1], key[0])
        total += sum(2 * best[key] - sums[key] / 100 for key in best)
    return total


def play_by_hand():
    total = 0.0
    for condition in CONDITIONS:
        values = np.sort(x[condition].ravel())
        n, first = values.size, np.arange(values.size)
        session_of = np.argsort(x[condition].ravel(), kind="stable") // 1500
        places = [np.flatnonzero(session_of == s) for s in range(4)]
        bins = np.rint((values - values[0]) / .1).astype(int)
        candidates = np.arange(-1, bins[-1] // 12 + 2) * 12

        def maximum(window, sd):
            if sd == 0:
                end = np.searchsorted(values, values + 2 * window + 1e-9, "right")
                return lambda weights: (lambda c: (c[end] - c[first]).max())(np.r_[0, np.cumsum(weights)])
            table = hit((candidates[:, None] - np.arange(bins[-1] + 1)) * .1, window, sd)

            def top(weights):
                shares = table @ np.bincount(bins, weights)
                i = min(max(shares.argmax(), 1), shares.size - 2)
                slope, curve = (shares[i + 1] - shares[i - 1]) / 2, shares[i + 1] - 2 * shares[i] + shares[i - 1]
                return shares[i] - .5 * slope * slope / curve
            return top
        ones = np.full(n, 1 / n)
        for sd in PLAYERS:
            total += sum(maximum(window, sd)(ones) for window in CURVE)
        of = [maximum(window, sd) for sd in PLAYERS for window in WINDOWS]
        draws = (np.bincount(np.concatenate([rng.choice(p, p.size) for p in places]), minlength=n) / n for _ in range(100))
        flattered = np.mean([[f(weights) for f in of] for weights in draws], axis=0)
        total += sum(2 * f(ones) for f in of) - flattered.sum()
    return total


# Intervals as they are usually made: percentiles of 10,000 resamples.
def intervals():
    total = 0.0
    for condition in CONDITIONS:
        values = x[condition].ravel()
        for statistic in (np.mean, lambda v, axis: np.quantile(v, LEVELS, axis=axis)):
            limits = stats.bootstrap((values,), statistic, n_resamples=10_000, batch=100, vectorized=True, method="percentile", random_state=rng).confidence_interval
            total += np.sum(limits.low) + np.sum(limits.high)
    return total


step("line spectrum", lomb_scargle, LOMB_PART)
step("line spectrum by hand", fast_fourier)
step("shape fits", shapes)
step("deconvolution", deconvolution)
step("play", play)
step("play by hand", play_by_hand)
step("intervals", intervals)

# Measures of a stick in NumPy and SciPy; prints recording, CPU seconds and checksum. Positions in counts, 1,000 a second.
import sys, time
import numpy as np
from scipy import optimize, signal

HALF = 32767
rest, rim = (np.loadtxt(f) * 100 / HALF for f in sys.argv[1:3])


def step(name, f):
    before = time.process_time()
    value = f()
    print(f"{name}\t{time.process_time() - before:.6f}\t{value:.12g}", flush=True)


# Centre and its error by 20 batch means, noise, drift, spectrum of either axis.
def at_rest():
    for axis in rest.T:
        batches = np.array_split(axis, 20)
        means = np.array([b.mean() for b in batches])
        means.std(ddof=1)
        np.polyfit(np.arange(20), means, 1)
        signal.welch(axis, 1000, "hann", 1024)
    x = rest[:, 0]
    slope, intercept = np.polyfit(np.arange(x.size), x, 1)
    return x.mean() + np.sqrt(np.mean((x - slope * np.arange(x.size) - intercept) ** 2))


# Every turn: mean positions in 360 bins, circle of least squares, ellipse; means over turns.
def turns():
    angle = np.unwrap(np.arctan2(rim[:, 1], rim[:, 0]))
    half = rim.shape[0] // 2
    radii, gains = [], []
    for part in (slice(0, half), slice(half, None)):
        a, p = angle[part], rim[part]
        number = np.floor(np.abs(a - a[0]) / (2 * np.pi)).astype(int)
        for n in range(number.max()):
            q = p[number == n]
            bins = (np.arctan2(q[:, 1], q[:, 0]) % (2 * np.pi) * 180 / np.pi).astype(int) % 360
            counts = np.bincount(bins, minlength=360)
            if counts.min() == 0:
                continue
            x, y = (np.bincount(bins, c, 360) / counts / np.sinc(1 / 360) for c in q.T)
            fit = optimize.least_squares(lambda c: np.hypot(x - c[0], y - c[1]) - c[2], [0, 0, 90])
            radii.append(fit.x[2])
            u = np.linalg.lstsq(np.c_[x * x, x * y, y * y, x, y], np.ones(360), rcond=None)[0]
            gains.append(100 * (np.sqrt(u[2] / u[0]) - 1))
    return np.mean(radii) + np.mean(gains)


step("rest", at_rest)
step("turns", turns)

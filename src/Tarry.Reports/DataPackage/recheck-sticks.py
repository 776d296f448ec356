"""Recomputes values of sticks from the positions in sticks/, with NumPy and SciPy: python3 recheck-sticks.py
From stick-recordings.csv it takes ranges, stated steps and which recordings are set aside. From stick-findings.csv it takes the
values to print beside its own, and over how many recordings each goes; no value of its own rests on one of those."""
import csv, math
import numpy as np
from scipy.optimize import least_squares

def rows(name):
    with open(name, newline="", encoding="utf-8") as file: return list(csv.DictReader(file))

class Axis:
    """Positions along an axis in counts and in per cent of half the range, and the step that they show."""
    def __init__(self, name, recording, table):
        self.low, self.high = float(recording[name + "_minimum"]), float(recording[name + "_maximum"])
        self.stated = float(recording[name + "_step"] or 0)
        self.counts = np.array([float(row[name]) for row in table])
        self.percent = 100 * (self.counts - (self.high + self.low) / 2) / ((self.high - self.low) / 2)
        # Neighbouring positions are visited in slow motion, or where the levels are too many to be steps themselves.
        levels = {row["stimulus_" + name] for row in table} if recording["stimulus"] == "level" else None
        moves = recording["procedure"] in ("rim-sweep", "slow-ramp") if levels is None else len(levels) > len(table) // 10
        self.found = self.step() if moves and np.ptp(self.counts) > (self.high - self.low) / 4 else None
        self.coarsest = max(self.stated, self.found or 0)

    def step(self):
        """The mean distance of neighbouring distinct positions, if nine in ten are about a multiple of their median."""
        distinct = np.unique(self.counts)
        gaps = np.diff(distinct)
        if len(distinct) < 32: return None
        median = np.sort(gaps)[(len(gaps) - 1) // 2]
        tolerance = max(0.02 * median, 1.01 if median > 4 and np.all(distinct == np.floor(distinct)) else 0)
        multiples = np.rint(gaps / median)
        if np.sum((multiples >= 1) & (np.abs(gaps - median * multiples) <= tolerance)) < 0.9 * len(gaps): return None
        step = np.ptp(distinct) / np.sum(np.maximum(1, multiples))
        # A steady motion without noise moves by the same from report to report: that is its speed, and no step.
        moved = np.abs(np.diff(self.counts)) / step
        single = (moved >= 0.5) & (moved < 1.5)
        if np.sum(single[1:] & single[:-1]) >= 0.95 * np.sum(moved >= 0.5): return None
        return step if len(self.counts) / 2 > np.ptp(distinct) / step else None

    def positions(self):
        """How many it can say: steps of whole counts leave what is less than a step at the end of the range, others were scaled to fill it."""
        steps = (self.high - self.low) / self.found
        return (math.floor(steps) if self.found == math.floor(self.found) else round(steps)) + 1

def rest(ms, positions, step):
    """Mean of 20 batch means; standard deviation about the line through them, less that of rounding (Sheppard)."""
    cut = [len(positions) * batch // 20 for batch in range(21)]
    parts = [slice(a, b) for a, b in zip(cut, cut[1:])]
    means = [positions[part].mean() for part in parts]
    slope, start = np.polyfit([(ms[part][0] + ms[part][-1]) / 2 for part in parts], means, 1)
    squares = (positions - start - slope * ms) ** 2
    variance = np.mean([squares[part].mean() for part in parts])
    told = step == 0 or np.ptp(positions) >= 1.5 * step
    return np.mean(means), math.sqrt(max(variance - step * step / 12, variance / 16)) if told else 0.0

def stretches(angle, counts):
    """First and last index of each stretch one way round; it ends where the stick has come back by 30 degrees or left the gate."""
    i, back = 0, math.pi / 6
    while i < len(angle):
        low = high = i; way = 0
        while i < len(angle) and counts[i]:
            if way <= 0 and angle[i] <= angle[low]: low = i
            if way >= 0 and angle[i] >= angle[high]: high = i
            if way == 0: way = 1 if angle[i] - angle[low] > back else -1 if angle[high] - angle[i] > back else 0
            if (way > 0 and angle[high] - angle[i] > back) or (way < 0 and angle[i] - angle[low] > back): break
            i += 1
        if way: yield (low, high) if way > 0 else (high, low)
        i = max(low, high) if way and i < len(angle) and counts[i] else i + 1

def turns(x, y):
    """The whole turns of a sweep: from and to an index, and whether counter-clockwise."""
    radius, raw = np.hypot(x, y), np.arctan2(y, x)
    jump = np.diff(raw, prepend=raw[0])
    angle = raw + 2 * math.pi * np.cumsum(np.where(jump > math.pi, -1, np.where(jump < -math.pi, 1, 0)))
    for a, b in stretches(angle, radius > np.sort(radius)[len(radius) // 2] / 2):
        start = a
        for i in range(a, b + 1):
            if abs(angle[i] - angle[start]) >= 2 * math.pi:
                yield start, i, angle[b] > angle[a]
                start = i

def profiles(x, y):
    """Mean positions in equal bins of angle, of each pair of turns one each way, or of each turn where there are not two pairs."""
    found = list(turns(x, y))
    share = np.arctan2(y, x) / (2 * math.pi) % 1
    for bins in (360, 180, 120, 72, 36):
        bin_of = (share * bins).astype(int) % bins
        counts = [np.bincount(bin_of[a:b], minlength=bins) for a, b, _ in found]
        if found and all(np.all(count > 0) for count in counts): break
    else: return []
    chord = math.sin(math.pi / bins) / (math.pi / bins)  # the mean of points along an arc lies inside it
    means = [np.array([np.bincount(bin_of[a:b], along[a:b], bins) / count / chord for along in (x, y)]) for (a, b, _), count in zip(found, counts)]
    pairs = list(zip([m for m, turn in zip(means, found) if turn[2]], [m for m, turn in zip(means, found) if not turn[2]]))
    return [(a + b) / 2 for a, b in pairs] if len(pairs) >= 2 else means

def circle(profile):
    """Centre and radius of the circle with the least squares of distances."""
    start = [*profile.mean(axis=1), np.hypot(*(profile - profile.mean(axis=1, keepdims=True))).mean()]
    return least_squares(lambda c: np.hypot(profile[0] - c[0], profile[1] - c[1]) - c[2], start, xtol=1e-15, ftol=1e-15, gtol=1e-15).x

def deviation(turned):
    """Peak less valley about the circle: where they stand is told by the other turns, how high by the turn itself; mean over turns."""
    values = []
    for k, own in enumerate(turned):
        others = np.mean([turn for j, turn in enumerate(turned) if j != k], axis=0)
        cx, cy, _ = circle(others)
        distance = np.hypot(others[0] - cx, others[1] - cy)
        smooth = sum(np.roll(distance, by) for by in range(-2, 3)) if len(distance) >= 120 else distance
        at = np.hypot(own[0] - cx, own[1] - cy)
        values.append(at[np.argmax(smooth)] - at[np.argmin(smooth)])
    return np.mean(values)

def values_of(recordings):
    """Of each key the values of the recordings that show it."""
    loaded = []
    for recording in recordings:
        table = rows("sticks/%s.csv" % recording["session"])
        ms = np.array([float(row["time_us"]) for row in table]) / 1000
        loaded.append((recording["procedure"], ms - ms[0], {name: Axis(name, recording, table) for name in "xy"}))
    found = {}
    def add(key, value): found.setdefault(key, []).append(float(value))
    for procedure, ms, axes in loaded:
        for name, axis in axes.items():
            if procedure == "rest" and len(ms) >= 200:
                step = max(axes[name].coarsest for _, _, axes in loaded)
                centre, noise = rest(ms, axis.percent, 100 * step / ((axis.high - axis.low) / 2))
                add("centre_offset_%s_percent" % name, centre)
                add("rest_noise_%s_percent" % name, noise)
            if procedure in ("rim-sweep", "slow-ramp", "substitution") and axis.found:
                add("distinct_steps_%s_count" % name, axis.positions())
        turned = profiles(axes["x"].percent, axes["y"].percent) if procedure == "rim-sweep" else []
        if turned:
            x, y, radius = np.mean([circle(turn) for turn in turned], axis=0)
            add("circle_radius_percent", radius); add("circle_centre_x_percent", x); add("circle_centre_y_percent", y)
        if len(turned) > 1: add("radial_deviation_percent", deviation(turned))
    return found

recordings = [row for row in rows("stick-recordings.csv") if row["excluded"] == "0"]
published = {(row["condition"], row["key"]): row for row in rows("stick-findings.csv") if row["value"]}
greatest, shown = 0.0, 0
for condition in dict.fromkeys(row["condition"] for row in rows("stick-findings.csv")):
    for key, values in values_of([row for row in recordings if row["condition"] == condition]).items():
        row = published.get((condition, key))
        # A recording may be refused for a measure: a circle that is cut off, or a centre from releases where nobody let it rest.
        if row is None or int(row["sessions"]) != len(values): continue
        value = np.mean(values)
        if key.startswith("rest_noise"):  # a size: the mean of its logarithm; 0 in a recording is not told from none
            value = math.exp(np.mean(np.log(values))) if min(values) > 0 else max(values)
        print(condition, key, "%.6f" % value, row["value"], sep=" | ")
        greatest, shown = max(greatest, abs(value - float(row["value"]))), shown + 1
print("%d values recomputed; greatest difference from stick-findings.csv %.1e" % (shown, greatest))

"""Recomputes what NumPy and SciPy have of a study's findings from its exported trials.
Usage: recheck.py trials.csv stated.csv out.csv
stated.csv says of each condition what the study states beside its results: from where a response is late, the sittings in which
the device alone was set against the reference, and the reference's id and report interval."""
import csv
import itertools
import sys

import numpy as np
from scipy import stats

with open(sys.argv[2], newline="") as file:
    stated = {row["condition"]: row for row in csv.DictReader(file)}

NO_FACTORS = {"condition", "sitting", "seq", "press_time_us", "latency_us", "outcome", "latency_high_us", "flags", "edges", "excluded", "nominal_report_hz"}
presses, pressed, used, factors = {}, {}, {}, {}
with open(sys.argv[1], newline="") as file:
    for row in csv.DictReader(file):
        if row["excluded"] != "0" or row["outcome"] not in ("response", "missed"):
            continue
        factors[row["condition"]] = {key: value for key, value in row.items() if key not in NO_FACTORS}
        missed = row["outcome"] == "missed"
        ms = np.inf if missed else float(row["latency_us"]) / 1000
        presses.setdefault(row["condition"], []).append(ms)
        pressed.setdefault(row["condition"], {}).setdefault(row["sitting"], []).append(ms)
        if not missed:
            used.setdefault(row["condition"], {}).setdefault(row["sitting"], []).append(ms)

rows = []
for condition, all_presses in presses.items():
    sessions = [np.array(values) for values in used[condition].values()]
    x = np.sort(all_presses)
    rows.append((condition, "mean_ms.value", np.mean([s.mean() for s in sessions])))
    rows.append((condition, "sd_ms.value", np.sqrt(np.mean([s.var(ddof=1) for s in sessions]))))
    for name, level in (("median_ms", 0.5), ("p05_ms", 0.05), ("p95_ms", 0.95)):
        rows.append((condition, name + ".value", np.quantile(x, level)))
    rows.append((condition, "spread_ms.value", np.sqrt(np.mean([
        (np.quantile(p, 0.95, method="median_unbiased") - np.quantile(p, 0.05, method="median_unbiased")) ** 2 for p in pressed[condition].values()]))))
    late = sum(int((s > float(stated[condition]["late_beyond_ms"])).sum()) for s in sessions)
    n = sum(s.size for s in sessions)
    rows.append((condition, "late_share.value", late / n))
    if late == 0:
        exact = stats.binomtest(0, n).proportion_ci(method="exact")
        rows.append((condition, "late_share.high", exact.high))


def by_sitting(condition, statistic):
    return {sitting: statistic(np.array(values)) for sitting, values in used[condition].items()}


def within_sittings(a, b, statistic, sittings=None):
    of_a, of_b = by_sitting(a, statistic), by_sitting(b, statistic)
    return np.mean([of_a[sitting] - of_b[sitting] for sitting in (sittings or of_a) if sitting in of_b])


# The device alone by moments: the reference's wait for its own report slot, uniform over T, is added back.
for condition, says in stated.items():
    if says["reference"] == condition:
        continue
    slot = float(says["reference_interval_ms"])
    rows.append((condition, "device_only.mean_ms.value", within_sittings(condition, says["reference"], np.mean) + slot / 2))
    if sittings := says["sound_sittings"].split():
        variance = within_sittings(condition, says["reference"], lambda s: s.var(ddof=1), sittings) + slot**2 / 12
        rows.append((condition, "device_only.sd_ms.value", np.sqrt(variance)))

# What a layer costs: the difference, within sittings, of two conditions that differ in the layer alone.
for a, b in itertools.combinations(factors, 2):
    if {key for key in factors[a] if factors[a][key] != factors[b][key]} == {"layer"}:
        rows.append((f"{factors[a]['layer']}/{factors[b]['layer']}", "cost_ms.value", within_sittings(a, b, np.mean)))

with open(sys.argv[3], "w", newline="") as file:
    writer = csv.writer(file)
    writer.writerow(("condition", "statistic", "value"))
    writer.writerows(rows)

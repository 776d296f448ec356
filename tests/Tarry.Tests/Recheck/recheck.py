"""Recomputes what NumPy and SciPy have of a study's findings from its exported trials.
Usage: recheck.py trials.csv out.csv"""
import csv
import sys

import numpy as np
from scipy import stats

presses, pressed, used = {}, {}, {}
with open(sys.argv[1], newline="") as file:
    for row in csv.DictReader(file):
        if row["excluded"] != "0" or row["outcome"] not in ("response", "missed"):
            continue
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
    late = sum(int((s > np.quantile(x, 0.5) + 10).sum()) for s in sessions)
    n = sum(s.size for s in sessions)
    rows.append((condition, "late_share.value", late / n))
    if late == 0:
        exact = stats.binomtest(0, n).proportion_ci(method="exact")
        rows.append((condition, "late_share.high", exact.high))

with open(sys.argv[2], "w", newline="") as file:
    writer = csv.writer(file)
    writer.writerow(("condition", "statistic", "value"))
    writer.writerows(rows)

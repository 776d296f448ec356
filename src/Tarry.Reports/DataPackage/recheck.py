"""Recomputes the headline table from trials.csv with the standard library: python3 recheck.py
From headline.csv it takes what the interval borrows from all conditions (shared variance, weight) and the quantile of Student's t, and no result."""
import csv, math, statistics
h, x = list(csv.DictReader(open("headline.csv", encoding="utf-8"))), {row["condition"]: {} for row in csv.DictReader(open("headline.csv", encoding="utf-8"))}
for row in csv.DictReader(open("trials.csv", encoding="utf-8")):
    if row["outcome"] == "response" and row["excluded"] == "0":
        x[row["condition"]].setdefault(row["sitting"], []).append((float(row["latency_us"]) + float(row["latency_high_us"] or row["latency_us"])) / 2000)
m = {c: {s: math.fsum(v) / len(v) for s, v in sessions.items()} for c, sessions in x.items()}
reference = next((m[row["condition"]] for row in h if row["is_reference"] == "1"), {})
def text(v, row, name):
    if not row[name + "_own_weight"]: return "%.3f (interval: see findings.json)" % statistics.fmean(v) if v else "no sitting with the reference"
    half = float(row[name + "_t"]) * math.sqrt((float(row[name + "_shared_variance_ms2"]) + float(row[name + "_own_weight"]) * (statistics.variance(v) if len(v) > 1 else 0)) / len(v))
    digits = min(3, max(0, 1 - math.floor(math.log10(2 * half)))) if half else 3
    return ("{0:{3}} ({1:{3}} to {2:{3}})".format(statistics.fmean(v), statistics.fmean(v) - half, statistics.fmean(v) + half, ("+" if name == "difference" else "") + ".%df" % digits)).replace("-", "\u2212")
for row in sorted(h, key=lambda row: statistics.fmean(m[row["condition"]].values())):
    own = m[row["condition"]]; difference = [own[s] - reference[s] for s in own if s in reference]
    print(row["condition"], text(list(own.values()), row, "mean"), "is the reference" if row["is_reference"] == "1" else text(difference, row, "difference"), len(own), sum(map(len, x[row["condition"]].values())), sep=" | ")

using Tarry.Statistics.SlotGrid;

namespace Tarry.Findings.ReportIntervals;

/// <summary>Folds the responses of a condition over its grids.</summary>
internal static class SlotFolding
{
    private const int Bins = 48;
    private const int MostPoints = 800;

    public static SlotFold Of(ReportIntervalFound found, IReadOnlyList<PressSeries> series)
    {
        var total = series.Sum(one => one.Count);
        var every = Math.Max(1, (total + MostPoints - 1) / MostPoints);
        var points = new List<SlotFoldPoint>();
        var (counts, sums) = (new int[Bins], new double[Bins]);
        var (arrivals, frames) = (new int[Bins], new int[Bins]);
        var trial = 0;
        foreach (var (one, grid) in series.Zip(found.Series))
        {
            for (var i = 0; i < one.Count; i++, trial++)
            {
                var press = one.PressMs(i) - one.OriginMs;
                var latency = one.LatencyMs(i);
                var pressPhase = Phase(press - grid.SlotPhaseMs, found.IntervalMs);
                var arrivalPhase = Phase(press + latency - grid.SlotPhaseMs, found.IntervalMs);
                var bin = Bin(pressPhase);
                counts[bin]++;
                sums[bin] += latency;
                arrivals[Bin(arrivalPhase)]++;
                if (grid is { FramePhaseMs: { } phase, FrameIntervalMs: { } interval })
                {
                    frames[Bin(Phase(press + latency - phase + (interval / 2), interval))]++;
                }

                if (trial % every == 0)
                {
                    points.Add(new SlotFoldPoint(pressPhase * found.IntervalMs, latency, arrivalPhase * found.IntervalMs));
                }
            }
        }

        return new SlotFold(
            points,
            [.. counts.Zip(sums, (count, sum) => new SlotFoldBin(count, count > 0 ? sum / count : 0))],
            arrivals,
            found.FrameIntervalMs is null ? [] : frames);
    }

    private static double Phase(double time, double interval) => (time / interval) - Math.Floor(time / interval);

    private static int Bin(double phase) => Math.Min((int)(phase * Bins), Bins - 1);
}

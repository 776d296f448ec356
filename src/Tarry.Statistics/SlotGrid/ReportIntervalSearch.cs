namespace Tarry.Statistics.SlotGrid;

/// <summary>The report interval of a device from when it was pressed and how long each response took.</summary>
public static class ReportIntervalSearch
{
    // A clock strays this far from one session of a sitting to the next; a line this near to one of the reference's is the same.
    private const double SameLine = 5e-6;

    // Below this ratio of slot to frame interval a combination line m/T1 + k/T2 can be taller than the device's own.
    private const double CombinationsBelow = 1.2;

    // A maker's statement tells which of two grids is meant, not how long it is.
    private const double SameAsStated = 0.01;

    /// <summary>Finds the slots of a device, or says why they cannot be told.</summary>
    /// <param name="series">The series of the device; those below <see cref="PressSeries.SmallestCount"/> are left out.</param>
    /// <param name="chain">What the reference tells of the chain; null without a reference.</param>
    /// <param name="nominalIntervalMs">The interval that the maker states; tells only whose a single grid is.</param>
    public static ReportIntervalOutcome Of(IReadOnlyList<PressSeries> series, ChainGrids? chain, double? nominalIntervalMs = null)
    {
        ArgumentNullException.ThrowIfNull(series);
        var usable = series.Where(one => one.Count >= PressSeries.SmallestCount && one.Span > 0).ToList();
        if (usable.Count == 0)
        {
            return new ReportIntervalRefused(series.Sum(one => one.Count), null, ReportIntervalReason.TooFewTrials, null, []);
        }

        var frames = usable.ConvertAll(one => chain?.FrameFrequency(one.Sitting));
        if (frames.TrueForAll(frame => frame is not null))
        {
            var grids = usable.Zip(frames, (one, frame) => FrameGrid.Near(one, frame!.Value)).ToList();
            if (grids.TrueForAll(grid => grid.Phasor >= FrameGrid.LeastPhasor))
            {
                var search = new TwoGridSearch(grids, chain!.FurtherHz);
                var outcome = Attributed(search, search.Find(), chain);
                if (outcome is ReportIntervalFound || !grids.Exists(grid => grid.Wanders))
                {
                    return outcome;
                }
            }
        }

        return BySawtooth(usable, frames.TrueForAll(frame => frame is not null) ? frames[0] : null, chain, nominalIntervalMs);
    }

    // In front of frames an interval beside theirs is the device's, unless the chain has a further grid, which the reference shows too.
    private static ReportIntervalOutcome Attributed(TwoGridSearch search, ReportIntervalOutcome outcome, ChainGrids chain) => outcome switch
    {
        ReportIntervalFound found when search.ShowsFurther && found.IntervalMs < CombinationsBelow * 1000 / chain.FurtherHz =>
            new ReportIntervalRefused(
                found.Trials,
                found.FrameIntervalMs,
                chain.IsStated ? ReportIntervalReason.FurtherGrid : ReportIntervalReason.NotAttributed,
                null,
                [found.IntervalMs]),
        ReportIntervalFound found when search.ShowsFurther =>
            found with { Series = [.. found.Series.Select(series => series with { FixedDelay = new FixedDelayRefused(FixedDelayReason.FurtherGrid, null, null, series.FixedDelay.Trials) })] },
        ReportIntervalRefused { Reason: ReportIntervalReason.NoGridSeen, FrameIntervalMs: { } frame } refused when !chain.IsAttributed =>
            refused with { Reason = ReportIntervalReason.NotAttributed, UpperMs = null, ChoicesMs = [frame] },
        _ => outcome,
    };

    private static bool Agrees(double intervalMs, double? nominalIntervalMs) =>
        nominalIntervalMs is { } nominal && Math.Abs((intervalMs / nominal) - 1) < SameAsStated;

    private static ReportIntervalOutcome BySawtooth(List<PressSeries> series, double? frame, ChainGrids? chain, double? nominalIntervalMs)
    {
        var search = new SawtoothSearch(series);
        var lines = search.Lines();
        var shared = lines.Where(line => chain?.SawtoothLines.Any(known => Math.Abs((line.Frequency / known) - 1) < SameLine) == true).ToList();
        lines.RemoveAll(shared.Contains);
        if (frame is { } rate)
        {
            lines.RemoveAll(line => Math.Abs((line.Frequency / rate) - Math.Round(line.Frequency / rate)) * rate <= 2 * search.Resolution);
        }

        if (lines.Count == 0)
        {
            return shared.Count > 0 && chain is { IsStated: false }
                ? Refused(ReportIntervalReason.NotAttributed, null, 1000 / shared[0].Frequency)
                : Refused(ReportIntervalReason.NoGridSeen, search.Smallest * 1000);
        }

        var interval = 1000 / lines[0].Frequency;
        if (frame is { } present && lines[0].Frequency > present / CombinationsBelow)
        {
            return Refused(ReportIntervalReason.FramesNotIndexed, null, interval);
        }

        var seen = search.Found(lines[0]);
        return chain is { HasReference: true } || Agrees(interval, nominalIntervalMs)
            ? seen
            : Refused(ReportIntervalReason.NotAttributed, null, seen.IntervalMs);

        ReportIntervalRefused Refused(ReportIntervalReason reason, double? upperMs, params double[] choices) =>
            new(search.Trials, 1000 / frame, reason, upperMs, choices);
    }
}

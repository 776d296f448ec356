using Tarry.Statistics.Distributions;

namespace Tarry.Statistics.SlotGrid;

/// <summary>The report interval of a device in front of frames that stand on a stable grid in every series.</summary>
/// <remarks>
/// Lines of <see cref="EdgeTransit"/> and what they can be images, multiples and parts of are put to the test of
/// <see cref="TwoGridModel"/>: with m of n presses not explained, log likelihood m ln e + (n - m) ln(1 - e), e = (m + 1/2)/(n + 1).
/// </remarks>
internal sealed class TwoGridSearch
{
    private const double LeadOverNone = 12;
    private const double LeadOverRivals = 18;
    private const double StepsShare = 0.5;

    // One frequency is asked about, within a cell; a fixed delay must not be claimed where it may be there.
    private const double FurtherAt = 1e-4;
    private const int TallestLines = 60;
    private const int LinesWithMultiples = 6;
    private const int LinesWithImages = 3;
    private const int PhaseSurvivors = 20;

    // n (T1/T2)^2/4 presses tell an interval from its images; twice that frequency is looked at all the same.
    private const double ImagesTold = 10;

    private readonly IReadOnlyList<FrameGrid> grids;
    private readonly TwoGridModel[] models;
    private readonly double span;
    private readonly double[] frames;
    private readonly double? further;
    private readonly int trials;
    private readonly int unexplainedWithout;

    public TwoGridSearch(IReadOnlyList<FrameGrid> grids, double? further)
    {
        this.further = further;
        this.grids = grids;
        models = [.. grids.Select(grid => new TwoGridModel(grid))];
        span = grids.Max(grid => grid.Series.Span) * 1.02;
        trials = grids.Sum(grid => grid.Series.Count);
        frames = [.. grids.Select(grid => Math.Round(grid.Interval, 7)).Distinct()];
        unexplainedWithout = trials - models.Sum(model => model.WithoutSlots.Count);
    }

    /// <summary>Whether a line that the reference has beside the frames is seen here as well.</summary>
    public bool ShowsFurther { get; private set; }

    private double FrameInterval => grids.Average(grid => grid.Interval);

    // No slot at all would lose a share T1/(4 T2) of the presses.
    private double Upper => 4 * FrameInterval * (unexplainedWithout + 4 + (3.3 * Math.Sqrt(unexplainedWithout + 1))) / trials;

    public ReportIntervalOutcome Find()
    {
        var bin = frames.Length == 1 ? FrameInterval : FrameInterval / 2;
        var search = new LineSearch(grids.Count, span, bin, 1 / FrameInterval, 2 * Math.Sqrt(trials / (4 * ImagesTold)) / FrameInterval);
        var lines = search.Lines((low, high) => [.. grids.Select(grid => EdgeTransit.Of(grid, 1 / low, 2 / (low + high)))]);

        // Within two cells of a multiple of the frame rate a line cannot be told from the frames: slots that keep step with them.
        var inStep = lines.Where(line => frames.Any(frame => Math.Abs((line.Frequency * frame) - Math.Round(line.Frequency * frame)) / frame <= 2 / span)).ToList();
        lines.RemoveAll(inStep.Contains);
        if (inStep.Count > 0 && (lines.Count == 0 || inStep[0].Power > StepsShare * lines[0].Power))
        {
            return Refused(ReportIntervalReason.Beat, []) with { UpperMs = null };
        }

        if (lines.Count == 0)
        {
            return Refused(ReportIntervalReason.NoGridSeen, []);
        }

        ShowsFurther = further is { } other && Shows(other);

        var fits = Ranked(Candidates(lines));
        var (best, without) = (fits[0], LogLikelihood(trials - unexplainedWithout));
        var next = fits.Skip(1).Where(fit => Math.Abs(fit.Frequency - best.Frequency) > 1.5 / span).ToList();
        var rivals = next.Where(fit => best.LogLikelihood - fit.LogLikelihood < LeadOverRivals).ToList();
        if (best.LogLikelihood - without < LeadOverNone)
        {
            return Refused(ReportIntervalReason.NoGridSeen, []);
        }

        if (rivals.Count > 0)
        {
            return Refused(ReportIntervalReason.ImagesNotToldApart, [.. rivals.Append(best).Select(fit => 1000 / fit.Frequency).Order()]);
        }

        var shortest = grids.Min(grid => grid.Series.Span);
        if (grids.Any(grid => GridBeat.TooSlow(1000 / best.Frequency, grid.Interval * 1000, shortest) is not null))
        {
            return Refused(ReportIntervalReason.Beat, [1000 / best.Frequency]) with { UpperMs = null };
        }

        var lead = next.Count > 0 ? best.LogLikelihood - next[0].LogLikelihood : best.LogLikelihood - without;
        var found = Found(best, search.Threshold, best.LogLikelihood - without, lead);
        return found.Evidence.LineToThreshold >= 1 ? found : Refused(ReportIntervalReason.ImagesNotToldApart, [found.IntervalMs]);
    }

    private bool Shows(double frequency)
    {
        var parts = grids.Select(grid => EdgeTransit.Of(grid, 1 / frequency, 1 / frequency)).Where(part => part.IsUsable).ToList();
        return parts.Count > 0
            && ChiSquaredDistribution.UpperTail(LinePower.Zoom(parts, frequency, span).Power, 2 * parts.Count) < FurtherAt;
    }

    private ReportIntervalFound Found(Fit best, double threshold, double leadOverNone, double leadOverRival)
    {
        var parts = grids
            .Select((grid, i) => EdgeTransit.Of(grid, 1 / best.Frequency, 1 / best.Frequency, best.Series[i].FixedDelay + (((1 / best.Frequency) + grid.Interval) / 2)))
            .ToList();
        var (frequency, power) = LinePower.Zoom(parts, best.Frequency, span);
        var half = FrequencyUncertainty.HalfWidth(parts, frequency);
        var interval = 1000 / frequency;
        return new ReportIntervalFound(
            trials,
            FrameInterval * 1000,
            interval,
            interval * (1 - half),
            interval * (1 + half),
            new SlotGridEvidence(SlotGridKind.TwoGrids, power / threshold, best.Series.Sum(fit => fit.Explained) / (double)trials, leadOverNone, leadOverRival),
            [.. models.Zip(best.Series, Series)]);
    }

    private static SlotSeries Series(TwoGridModel model, TwoGridFit fit) => new(
        model.Grid.Series.Sitting,
        fit.Point.Phase * 1000,
        model.Grid.Phase * 1000,
        model.Grid.Interval * 1000,
        FixedDelay(model, fit));

    private static FixedDelayOutcome FixedDelay(TwoGridModel model, in TwoGridFit fit)
    {
        var trials = model.Grid.Series.Count;
        if (model.Grid.Wanders)
        {
            return new FixedDelayRefused(FixedDelayReason.FramesWander, null, null, trials);
        }

        var (delay, error, blur) = model.FixedDelay(fit);
        return error * 1000 <= FixedDelayFound.LargestStandardErrorMs
            ? new FixedDelayFound(delay * 1000, error * 1000, blur * 1000, trials)
            : new FixedDelayRefused(FixedDelayReason.TooUncertain, error * 1000, blur * 1000, trials);
    }

    private ReportIntervalRefused Refused(ReportIntervalReason reason, IReadOnlyList<double> choices) =>
        new(trials, FrameInterval * 1000, reason, Upper * 1000, choices);

    private List<double> Candidates(List<SpectralLine> lines)
    {
        var candidates = new List<double>();
        foreach (var line in lines.Take(TallestLines))
        {
            Add(line.Frequency);
        }

        foreach (var line in lines.Take(LinesWithMultiples))
        {
            for (var k = 2; k <= 5; k++)
            {
                Add(line.Frequency / k);
                Add(line.Frequency * k);
            }
        }

        foreach (var line in lines.Take(LinesWithImages))
        {
            foreach (var frame in frames)
            {
                var last = (int)(LineSearch.HighestHz * frame) + 1;
                for (var k = -last; k <= last; k++)
                {
                    Add(line.Frequency + (k / frame));
                }
            }
        }

        return candidates;

        void Add(double frequency)
        {
            if (frequency is >= LineSearch.LowestHz and <= LineSearch.HighestHz
                && !candidates.Exists(known => Math.Abs(known - frequency) < 1.5 / span))
            {
                candidates.Add(frequency);
            }
        }
    }

    // Candidates are thinned by cheap fits, and rivals get as much polish as the winner.
    private List<Fit> Ranked(List<double> candidates)
    {
        var first = candidates
            .Select(frequency => (Frequency: frequency, Explained: models.Sum(model => model.ByPhase(frequency).Explained)))
            .OrderByDescending(candidate => candidate.Explained)
            .ThenBy(candidate => candidate.Frequency)
            .Take(PhaseSurvivors)
            .Select(candidate => Zoomed(candidate.Frequency));
        var fits = Sorted(first.Select(frequency => Polished(frequency, 1, thorough: false)));
        fits = Again(fits, keep: 8, gap: 60, passes: 4, thorough: false);
        return Again(fits, keep: 5, gap: 30, passes: 10, thorough: true);
    }

    private List<Fit> Again(List<Fit> fits, int keep, double gap, int passes, bool thorough)
    {
        var close = fits.Take(keep).Where(fit => fits[0].LogLikelihood - fit.LogLikelihood < gap).ToList();
        return Sorted(close.Select(fit => Polished(fit.Frequency, passes, thorough)).Concat(fits.Skip(close.Count)));
    }

    private double Zoomed(double frequency)
    {
        var parts = grids.Select(grid => EdgeTransit.Of(grid, 1 / frequency, 1 / frequency)).Where(part => part.IsUsable).ToList();
        return parts.Count > 0 ? LinePower.Zoom(parts, frequency, span).Frequency : frequency;
    }

    private Fit Polished(double frequency, int passes, bool thorough)
    {
        var series = models.Select(model => model.Polished(frequency, passes, thorough)).ToArray();
        return new Fit(frequency, LogLikelihood(series.Sum(fit => fit.Explained)), series);
    }

    private double LogLikelihood(int explained)
    {
        var share = (trials - explained + 0.5) / (trials + 1);
        return ((trials - explained) * Math.Log(share)) + (explained * Math.Log(1 - share));
    }

    private static List<Fit> Sorted(IEnumerable<Fit> fits) =>
        [.. fits.OrderByDescending(fit => fit.LogLikelihood).ThenBy(fit => fit.Frequency)];

    private sealed record Fit(double Frequency, double LogLikelihood, TwoGridFit[] Series);
}

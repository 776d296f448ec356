namespace Tarry.Statistics.SlotGrid;

/// <summary>What the reference tells of the chain in each sitting, and which lines of its latencies are not its own.</summary>
public sealed class ChainGrids
{
    // Two clocks of crystals agree to this share.
    private const double SameClock = 3e-4;

    private readonly double? slotSeconds;

    private ChainGrids(IReadOnlyList<ChainGrid> sittings, double? slotSeconds, IReadOnlyList<double> sawtoothLines)
    {
        (Sittings, this.slotSeconds, SawtoothLines) = (sittings, slotSeconds, sawtoothLines);
    }

    private ChainGrids(ChainGrids known, double further)
        : this(known.Sittings, known.slotSeconds, known.SawtoothLines) =>
        (FurtherHz, IsStated, HasReference) = (further, known.IsStated, known.HasReference);

    /// <summary>The chain in each sitting that the reference was run in.</summary>
    public IReadOnlyList<ChainGrid> Sittings { get; }

    /// <summary>Whether the reference's own slots are known, stated or found, so that what else it shows belongs to the chain.</summary>
    public bool IsAttributed => slotSeconds is not null;

    /// <summary>Whether the reference's slots were stated, not found in its own latencies.</summary>
    public bool IsStated { get; private init; }

    /// <summary>Whether it comes from a reference, so that a line which that does not show is the device's.</summary>
    public bool HasReference { get; private init; }

    // A grid of the chain beside the frames, in hertz; null where none is seen.
    internal double? FurtherHz { get; }

    // Hertz; lines of the reference's latencies that are not of its slots.
    internal IReadOnlyList<double> SawtoothLines { get; }

    /// <summary>The chain as the reference shows it.</summary>
    /// <param name="reference">The series of the reference; those below <see cref="PressSeries.SmallestCount"/> are left out.</param>
    /// <param name="slotIntervalMs">The reference's own slot interval in milliseconds, more than 0; null where not known.</param>
    public static ChainGrids Of(IReadOnlyList<PressSeries> reference, double? slotIntervalMs)
    {
        ArgumentNullException.ThrowIfNull(reference);
        if (slotIntervalMs is { } interval)
        {
            Argument.RequirePositive(interval, nameof(slotIntervalMs));
        }

        var usable = reference.Where(series => series.Count >= PressSeries.SmallestCount && series.Span > 0).ToList();
        var slot = slotIntervalMs / 1000;
        var sittings = usable
            .GroupBy(series => series.Sitting, StringComparer.Ordinal)
            .Select(sitting => Sitting(sitting.MaxBy(series => series.Count)!, slot))
            .ToList();
        var frames = sittings.All(sitting => sitting.FrameIntervalMs is not null);
        var lines = frames || usable.Count == 0 ? [] : new SawtoothSearch(usable).Lines();
        return new ChainGrids(
            sittings,
            slot,
            [.. lines.Select(line => line.Frequency).Where(frequency => !IsMultiple(frequency, slot, SameClock))])
        {
            IsStated = slot is not null,
            HasReference = usable.Count > 0,
        };
    }

    /// <summary>
    /// The chain as those see it who have no reference: in each sitting the lowest strong line of the arrivals that two conditions or more share.
    /// Nothing tells whether that is the frames or one clock that all devices report by.
    /// </summary>
    /// <param name="conditions">The series of each condition.</param>
    public static ChainGrids Shared(IReadOnlyList<IReadOnlyList<PressSeries>> conditions)
    {
        ArgumentNullException.ThrowIfNull(conditions);
        var sittings = conditions
            .SelectMany(condition => condition.Where(series => series.Count >= PressSeries.SmallestCount && series.Span > 0)
                .GroupBy(series => series.Sitting, StringComparer.Ordinal)
                .Select(sitting => Sitting(sitting.MaxBy(series => series.Count)!, null)))
            .GroupBy(sitting => sitting.Sitting, StringComparer.Ordinal)
            .Select(sitting => sitting.FirstOrDefault(one => sitting.Any(other => other != one && IsSame(one.FrameIntervalMs, other.FrameIntervalMs)))
                ?? new ChainGrid(sitting.Key, null, []));
        return new ChainGrids([.. sittings], null, []);
    }

    /// <summary>
    /// The same chain, with what the search found in the reference's own latencies: its slots where these were not stated; else a
    /// further grid of the chain, such as the screen's refresh, that must not be taken for a device's.
    /// </summary>
    public ChainGrids WithOwn(ReportIntervalOutcome reference)
    {
        if (reference is not ReportIntervalFound found)
        {
            return this;
        }

        return found.Evidence.Kind != SlotGridKind.TwoGrids || IsMultiple(1000 / found.IntervalMs, slotSeconds, SameClock) ? this
            : new ChainGrids(IsStated ? this : WithSlots(found.IntervalMs), 1000 / found.IntervalMs);
    }

    private ChainGrids WithSlots(double slotIntervalMs)
    {
        var slot = slotIntervalMs / 1000;
        return new ChainGrids(
            [.. Sittings.Select(sitting => sitting with { Lines = [.. sitting.Lines.Select(line => line.Owner == ChainLineOwner.PressRate ? line : Attributed(line.FrequencyHz, line.PowerToThreshold, sitting.FrameIntervalMs / 1000, slot))] })],
            slot,
            [.. SawtoothLines.Where(frequency => !IsMultiple(frequency, slot, SameClock))])
        {
            HasReference = HasReference,
        };
    }

    internal double? FrameFrequency(string sitting) =>
        1000 / Sittings.FirstOrDefault(chain => chain.Sitting == sitting)?.FrameIntervalMs;

    private static ChainGrid Sitting(PressSeries series, double? slot)
    {
        var search = FrameLine.Search(series);
        var arrivals = FrameGrid.Arrivals(series);
        var lines = search.Lines((_, _) => [arrivals]);
        var frame = FrameLine.Of(series, lines, frequency => IsMultiple(frequency, slot, SameClock));
        return new ChainGrid(
            series.Sitting,
            1000 / frame,
            [.. lines.Select(line => IsShadow(line, lines, frame, series.Count / series.Span)
                ? new ChainLine(line.Frequency, line.Power / search.Threshold, ChainLineOwner.PressRate, (int)Math.Round(line.Frequency / frame!.Value), 0)
                : Attributed(line.Frequency, line.Power / search.Threshold, 1 / frame, slot))]);
    }

    // Presses that are not quite at random have a hump at their rate, and each line one at that distance.
    private static bool IsShadow(SpectralLine line, List<SpectralLine> lines, double? frame, double pressRate)
    {
        const double farthest = 0.4;
        const double tallest = 0.1;
        if (frame is not { } rate)
        {
            return false;
        }

        var offset = Math.Abs(line.Frequency - (Math.Round(line.Frequency / rate) * rate)) / pressRate;
        return offset > 1 - farthest && Math.Abs(offset - Math.Round(offset)) < farthest && offset < 2.5 && line.Power < tallest * lines[0].Power;
    }

    private static ChainLine Attributed(double frequency, double power, double? frame, double? slot)
    {
        const int mostFrames = 12;
        if (frame is { } t2 && IsMultiple(frequency, t2, 2e-5))
        {
            return new(frequency, power, ChainLineOwner.Frames, (int)Math.Round(frequency * t2), 0);
        }

        if (slot is { } t1 && IsMultiple(frequency, t1, SameClock))
        {
            return new(frequency, power, ChainLineOwner.ReferenceSlots, 0, (int)Math.Round(frequency * t1));
        }

        for (var k = -mostFrames; k <= mostFrames; k++)
        {
            if (frame is { } interval && slot is { } own && k != 0 && IsMultiple(Math.Abs(frequency - (k / interval)), own, SameClock))
            {
                return new(frequency, power, ChainLineOwner.Combination, k, (int)Math.Round((frequency - (k / interval)) * own));
            }
        }

        return new(frequency, power, ChainLineOwner.Unknown, 0, 0);
    }

    private static bool IsSame(double? a, double? b) => a is { } one && b is { } other && Math.Abs((one / other) - 1) < 2e-5;

    private static bool IsMultiple(double frequency, double? interval, double tolerance)
    {
        if (interval is not { } known)
        {
            return false;
        }

        var multiple = Math.Max(1, Math.Round(frequency * known));
        return Math.Abs((frequency * known / multiple) - 1) < tolerance;
    }
}

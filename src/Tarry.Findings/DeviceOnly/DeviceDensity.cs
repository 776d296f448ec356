using Tarry.Statistics.Deconvolution;

namespace Tarry.Findings.DeviceOnly;

/// <summary>The density of the device alone, or why there is none.</summary>
internal static class DeviceDensity
{
    // Two sessions of as many trials as spare a session its caution; below, the density is off by more than it shows.
    public const int FewestTrials = 400;
    private const int Replicates = 60;
    private const double BandLevel = 0.9;

    // Of the variance that the reference's slot wait must leave room for; the rest is chance.
    private const double LeastShareOfSlot = 0.9;

    public static DeviceOnlyRefusal? Refusal(SharedSessions shared, double slotMs)
    {
        if (shared.Refusal is { } kind)
        {
            return new DeviceOnlyRefusal(kind, new Dictionary<string, double>());
        }

        var pairs = shared.Pairs;
        var (trials, references) = (Trials(pairs), ReferenceTrials(pairs));
        var slot = slotMs * slotMs / 12;
        var variance = pairs.Average(pair => SittingPair.Variance(pair.Condition));
        var reference = pairs.Average(pair => SittingPair.Variance(pair.Reference));
        if (trials < FewestTrials || references < FewestTrials)
        {
            return new(DeviceOnlyRefusalKind.TooFewTrials, new Dictionary<string, double>
            {
                ["trials"] = trials,
                ["need"] = FewestTrials,
                ["reference_trials"] = references,
                ["reference_need"] = FewestTrials,
            });
        }

        var numbers = new Dictionary<string, double>
        {
            ["variance_ms2"] = variance,
            ["reference_variance_ms2"] = reference,
            ["slot_variance_ms2"] = slot,
            ["reference_interval_ms"] = slotMs,
        };
        return reference < LeastShareOfSlot * slot ? new(DeviceOnlyRefusalKind.SlotWaitAboveReference, numbers)
            : variance <= reference - slot ? new(DeviceOnlyRefusalKind.SpreadBelowReference, numbers)
            : null;
    }

    public static DeviceOnlyDensity Of(IReadOnlyList<SittingPair> pairs, double slotMs, ulong seed)
    {
        var (latencies, references) = SessionAlignment.Align(
            [.. pairs.Select(pair => pair.Condition.Latencies.InOrder.ToArray())],
            [.. pairs.Select(pair => pair.Reference.Latencies.InOrder.ToArray())]);
        var found = new MeasuredKernelDeconvolution(latencies, references, slotMs, seed).Find(Replicates, BandLevel);
        return new DeviceOnlyDensity(
            found.From,
            found.Step,
            found.PerMs,
            found.Low,
            found.High,
            BandLevel,
            found.Iterations,
            found.BeyondShare,
            Trials(pairs),
            ReferenceTrials(pairs));
    }

    private static int Trials(IReadOnlyList<SittingPair> pairs) => pairs.Sum(pair => pair.Condition.Latencies.Count);

    private static int ReferenceTrials(IReadOnlyList<SittingPair> pairs) => pairs.Sum(pair => pair.Reference.Latencies.Count);
}

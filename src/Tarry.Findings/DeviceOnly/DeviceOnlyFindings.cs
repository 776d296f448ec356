using Tarry.Findings.Conditions;
using Tarry.Findings.Quality;
using Tarry.Metrology;

namespace Tarry.Findings.DeviceOnly;

/// <summary>The device alone in every condition but the reference.</summary>
internal static class DeviceOnlyFindings
{
    /// <summary>The conditions, each with its device alone.</summary>
    /// <param name="conditions">What was found of them.</param>
    /// <param name="diagnoses">Their sessions.</param>
    /// <param name="seed">The study's seed.</param>
    public static List<ConditionFinding> Attach(
        IReadOnlyList<ConditionFinding> conditions,
        IReadOnlyDictionary<string, SessionDiagnosis[]> diagnoses,
        ulong seed)
    {
        var reference = conditions.FirstOrDefault(condition => condition.IsReference);
        var slot = reference is null ? null : ReferenceSlot.Of(reference);
        var shared = conditions.Where(condition => !condition.IsReference).ToDictionary(
            condition => condition.Id,
            condition => SharedSessions.Of(diagnoses[condition.Id], reference is null ? [] : diagnoses[reference.Id]));
        var deviations = new DeviceDeviations(shared.ToDictionary(entry => entry.Key, entry => entry.Value.Pairs), slot?.IntervalMs ?? 0);
        return
        [
            .. conditions.AsParallel().AsOrdered().Select((condition, index) => condition.IsReference
                ? condition
                : condition with { DeviceOnly = Of(condition, slot, shared[condition.Id], deviations, SeedOf(seed, index)) }),
        ];
    }

    private static DeviceOnlyFinding Of(
        ConditionFinding condition,
        ReferenceSlot? slot,
        SharedSessions shared,
        DeviceDeviations deviations,
        ulong seed)
    {
        var slotMs = slot?.IntervalMs ?? 0;
        var refusal = DeviceDensity.Refusal(shared, slotMs);
        var isSlotKnown = refusal?.Kind is not (DeviceOnlyRefusalKind.NoReference or DeviceOnlyRefusalKind.SlotWaitAboveReference);
        return new DeviceOnlyFinding
        {
            Mean = isSlotKnown ? Later(condition.Relative!, slotMs / 2) : Unknown,
            StandardDeviation = isSlotKnown ? deviations.Of(condition.Id) : Unknown,
            Density = refusal is null ? DeviceDensity.Of(shared.Pairs, slotMs, seed) : null,
            Refusal = refusal,
            ReferenceSlot = slot,
            Sittings = [.. shared.Pairs.Select(pair => pair.Sitting)],
        };
    }

    private static NotEnough<LatencyDifference> Unknown => new(0, 1, "references whose report interval is known");

    private static EstimateOutcome<LatencyDifference> Later(EstimateOutcome<LatencyDifference> outcome, double byMs)
    {
        LatencyDifference Shifted(LatencyDifference value) => LatencyDifference.FromMilliseconds(value.Milliseconds + byMs);
        return outcome is Estimate<LatencyDifference> estimate
            ? estimate with { Value = Shifted(estimate.Value), Interval = new(Shifted(estimate.Interval.Low), Shifted(estimate.Interval.High)) }
            : outcome;
    }

    private static ulong SeedOf(ulong seed, int index) => SeededGenerator.ForPart(seed, (ulong)index).NextUInt64();
}

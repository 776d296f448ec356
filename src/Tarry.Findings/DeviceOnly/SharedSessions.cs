using Tarry.Findings.Quality;

namespace Tarry.Findings.DeviceOnly;

/// <summary>The sittings in which a condition can be set against the reference, and what stood in the way of others.</summary>
internal sealed class SharedSessions
{
    private SharedSessions(IReadOnlyList<SittingPair> pairs, DeviceOnlyRefusalKind? refusal) => (Pairs, Refusal) = (pairs, refusal);

    /// <summary>The sittings in which both are sound, in the order of their names.</summary>
    public IReadOnlyList<SittingPair> Pairs { get; }

    /// <summary>Why there is none.</summary>
    public DeviceOnlyRefusalKind? Refusal { get; }

    public static SharedSessions Of(SessionDiagnosis[] condition, SessionDiagnosis[] reference)
    {
        var byReference = WithResponses(reference);
        if (byReference.Count == 0)
        {
            return new([], DeviceOnlyRefusalKind.NoReference);
        }

        var shared = WithResponses(condition)
            .Where(entry => byReference.ContainsKey(entry.Key))
            .Select(entry => (Sitting: entry.Key, Condition: entry.Value, Reference: byReference[entry.Key]))
            .ToList();
        var referred = shared.Where(sitting => IsSound(sitting.Reference)).ToList();
        var sound = referred.Where(sitting => IsSound(sitting.Condition)).ToList();
        DeviceOnlyRefusalKind? refusal = shared.Count == 0 ? DeviceOnlyRefusalKind.NoSharedSitting
            : referred.Count == 0 ? DeviceOnlyRefusalKind.ReferenceCautioned
            : sound.Count == 0 ? DeviceOnlyRefusalKind.ConditionCautioned
            : null;
        return new([.. sound.Select(sitting => new SittingPair(sitting.Sitting, sitting.Condition.Session, sitting.Reference.Session))], refusal);
    }

    private static SortedDictionary<string, SessionDiagnosis> WithResponses(SessionDiagnosis[] sessions) => new(
        sessions.Where(diagnosis => diagnosis.Session.Latencies.Count > 0).ToDictionary(diagnosis => diagnosis.Session.Key.Sitting),
        StringComparer.Ordinal);

    // Latencies that are known as intervals only have no spread of their own to set against the reference's.
    // Presses on a lattice meet some phases of the slots only: a wait that is not uniform cannot be taken out as if it were.
    private static bool IsSound(SessionDiagnosis diagnosis) =>
        diagnosis.InPool && !diagnosis.Session.IntervalCensored && !diagnosis.Cautions.Any(caution => caution.Kind is CautionKind.PressLattice or CautionKind.Beat);
}

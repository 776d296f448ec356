using Tarry.Studies;

namespace Tarry.Findings.Samples;

/// <summary>The latencies that are used of a condition's sealed sessions, without any statistics: for a picture beside a run that grows.</summary>
public static class UsedLatencies
{
    /// <summary>The latencies in milliseconds on the sessions' fitted clocks; of those known as an interval the middle.</summary>
    /// <param name="study">The study.</param>
    /// <param name="condition">The condition's id.</param>
    /// <exception cref="StudyException">A session cannot be read.</exception>
    public static IReadOnlyList<double> Of(Study study, string condition)
    {
        ArgumentNullException.ThrowIfNull(study);
        return
        [
            .. study.SessionKeys
                .Where(key => key.Condition == condition && study.IsSealed(key))
                .SelectMany(key => SessionSampler.Prepare(study.Read(key), study.File.Exclusions).Latencies.InOrder.ToArray()),
        ];
    }
}

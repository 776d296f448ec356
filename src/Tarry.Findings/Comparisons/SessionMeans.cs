namespace Tarry.Findings.Comparisons;

/// <summary>The session means of one condition, as comparisons need them.</summary>
/// <param name="Id">The condition's id.</param>
/// <param name="Group">Its link: conditions of one link are expected to scatter alike.</param>
/// <param name="Sittings">By sitting: mean, its variance from trials within the session, how many trials, and whether it may enter the pool.</param>
internal sealed record SessionMeans(string Id, string Group, IReadOnlyDictionary<string, SessionMean> Sittings)
{
    public double Mean => Sittings.Values.Average(session => session.MeanMs);

    /// <summary>Half the width of the interval in which the mean lies for want of exact latencies, ms; 0 where all are exact.</summary>
    public double HalfWidthMs => Sittings.Values.Average(session => session.HalfWidthMs);

    public int Trials => Sittings.Values.Sum(session => session.Trials);
}

/// <summary>One session's mean.</summary>
/// <param name="MeanMs">The mean, ms.</param>
/// <param name="VarianceOfMean">Its variance from trials within the session, ms squared; null with too few trials to tell.</param>
/// <param name="Trials">How many trials.</param>
/// <param name="InPool">Whether it may enter the pooled variance.</param>
/// <param name="HalfWidthMs">Half the width of the interval in which it lies where latencies are known as intervals only, ms.</param>
internal sealed record SessionMean(double MeanMs, double? VarianceOfMean, int Trials, bool InPool, double HalfWidthMs = 0);

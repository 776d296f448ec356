namespace Tarry.Findings.Comparisons;

/// <summary>Two conditions, and their differences within the sittings that both were run in.</summary>
internal sealed class ConditionPair
{
    public ConditionPair(SessionMeans a, SessionMeans b)
    {
        A = a;
        B = b;
        Sittings = a.Sittings.Keys.Where(b.Sittings.ContainsKey).Order(StringComparer.Ordinal).ToList();
        Differences = Sittings.Select(sitting => a.Sittings[sitting].MeanMs - b.Sittings[sitting].MeanMs).ToArray();
        InPool = Sittings.All(sitting => a.Sittings[sitting].InPool && b.Sittings[sitting].InPool);
    }

    public SessionMeans A { get; }

    public SessionMeans B { get; }

    public IReadOnlyList<string> Sittings { get; }

    public double[] Differences { get; }

    public bool InPool { get; }

    public double Mean => Differences.Average();

    /// <summary>
    /// Part of the variance of a within-sitting difference that trials within the sessions explain, ms squared; null where
    /// a session is too short to tell.
    /// </summary>
    public double? WithinVariance
    {
        get
        {
            var parts = Sittings.Select(sitting => A.Sittings[sitting].VarianceOfMean + B.Sittings[sitting].VarianceOfMean).ToList();
            return parts.Contains(null) ? null : parts.Average();
        }
    }

    public int Trials => Sittings.Sum(sitting => A.Sittings[sitting].Trials + B.Sittings[sitting].Trials);

    /// <summary>Trials of the shortest session of either in those sittings.</summary>
    public int FewestTrials => Sittings.Min(sitting => Math.Min(A.Sittings[sitting].Trials, B.Sittings[sitting].Trials));
}

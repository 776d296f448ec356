namespace Tarry.Findings.Comparisons;

/// <summary>The differences of two conditions within the sittings that both were run in.</summary>
internal sealed class PairedDifference
{
    public PairedDifference(SessionMeans a, SessionMeans b)
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

    /// <summary>Part of the variance of a within-sitting difference that trials within the sessions explain.</summary>
    public double WithinVariance => Sittings.Average(sitting => A.Sittings[sitting].VarianceOfMean + B.Sittings[sitting].VarianceOfMean);

    public int Trials => Sittings.Sum(sitting => A.Sittings[sitting].Trials + B.Sittings[sitting].Trials);
}

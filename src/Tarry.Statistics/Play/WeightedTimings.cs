namespace Tarry.Statistics.Play;

/// <summary>The responses of several sessions in one ascending array, each with its weight: every session weighs alike, and what a miss would weigh is left out.</summary>
internal sealed class WeightedTimings
{
    public WeightedTimings(IReadOnlyList<TimingSession> sessions)
    {
        var count = sessions.Sum(session => session.Sorted.Length);
        Values = new double[count];
        SessionOf = new int[count];
        var at = 0;
        for (var session = 0; session < sessions.Count; session++)
        {
            sessions[session].Sorted.CopyTo(Values.AsSpan(at));
            SessionOf.AsSpan(at, sessions[session].Sorted.Length).Fill(session);
            at += sessions[session].Sorted.Length;
        }

        Array.Sort(Values, SessionOf);
        WeightOf = [.. sessions.Select(session => 1.0 / sessions.Count / session.Presses)];
        Weights = Array.ConvertAll(SessionOf, session => WeightOf[session]);
    }

    /// <summary>The latencies, ascending.</summary>
    public double[] Values { get; }

    /// <summary>The weight of each latency.</summary>
    public double[] Weights { get; }

    /// <summary>Which session each latency is of.</summary>
    public int[] SessionOf { get; }

    /// <summary>The weight of a press of each session.</summary>
    public double[] WeightOf { get; }

    /// <summary>The value that half of the weight of all responses lies at or below.</summary>
    public double Median()
    {
        var half = 0.5 * Weights.Sum();
        var sum = 0.0;
        for (var i = 0; i < Values.Length; i++)
        {
            sum += Weights[i];
            if (sum >= half * (1 + 1e-12))
            {
                return Values[i];
            }

            if (sum >= half * (1 - 1e-12))
            {
                return 0.5 * (Values[i] + Values[Math.Min(i + 1, Values.Length - 1)]);
            }
        }

        return Values[^1];
    }
}

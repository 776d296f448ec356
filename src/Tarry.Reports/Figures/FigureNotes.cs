using Tarry.Reports.Wording;

namespace Tarry.Reports.Figures;

/// <summary>What figures say of their evidence: conditions, sessions, trials, level, and what is drawn open.</summary>
internal static class FigureNotes
{
    /// <summary>Conditions, sessions and trials over all rows, and the level of the intervals of means.</summary>
    public static string Evidence(IReadOnlyList<RankedRow> rows)
    {
        var levels = Levels(rows);
        return levels.Length == 0 ? Basis(rows) : $"{Basis(rows)} Intervals of means at {levels}.";
    }

    /// <summary>Conditions, sessions and trials over all rows.</summary>
    public static string Basis(IReadOnlyList<RankedRow> rows)
    {
        var sessions = rows.Sum(row => row.Condition.UsedSessions);
        var trials = rows.Sum(row => row.Condition.Counts.Used);
        return $"{Numbers.Count(rows.Count, "condition")}, {Numbers.Count(sessions, "session")}, {Numbers.Count(trials, "trial")} used.";
    }

    /// <summary>The levels of the means' intervals, as a rule one.</summary>
    public static string Levels(IReadOnlyList<RankedRow> rows) => Listing.And(
        [.. rows.Select(row => row.Mean).OfType<Metrology.Estimate<Metrology.Latency>>()
            .Select(mean => mean.Level).Distinct().Order().Select(Numbers.Level)]);

    /// <summary>What open marks mean, where there are some.</summary>
    public static string? Open(IReadOnlyList<RankedRow> rows) => rows.Any(row => row.IsOpen)
        ? "Open marks: one sitting; the interval holds within that sitting only."
        : null;
}

using Tarry.Findings.Samples;
using Tarry.Statistics.SlotGrid;

namespace Tarry.Findings.ReportIntervals;

/// <summary>The presses of a condition as series, one a segment of a session, and why they may not be used.</summary>
internal sealed class ConditionPresses
{
    public ConditionPresses(IReadOnlyList<SessionSample> sessions)
    {
        Sessions = sessions;
        var all = sessions
            .SelectMany(session => session.Timed.Select(timed => new PressSeries(session.Key.Sitting, timed.PressesMs, timed.LatenciesMs)))
            .ToList();
        Series = [.. all.Where(series => series.Count < PressSeries.SmallestCount || !PressLattice.IsIn(series))];
        var trials = sessions.Sum(session => session.Latencies.Count);
        Refused = sessions.Any(session => session.IntervalCensored) ? new ReportIntervalRefused(trials, null, ReportIntervalReason.LatenciesAreIntervals, null, [])
            : trials > 0 && all.Count == 0 ? new ReportIntervalRefused(trials, null, ReportIntervalReason.NoPressTimes, null, [])
            : all.Count > 0 && Usable.Count == 0 && all.Exists(series => series.Count >= PressSeries.SmallestCount) ? new ReportIntervalRefused(trials, null, ReportIntervalReason.PressLattice, null, [])
            : Usable.Count == 0 ? new ReportIntervalRefused(trials, null, ReportIntervalReason.TooFewTrials, null, [])
            : null;
    }

    public IReadOnlyList<SessionSample> Sessions { get; }

    /// <summary>The series that are no lattice.</summary>
    public IReadOnlyList<PressSeries> Series { get; }

    /// <summary>Those of them with enough presses.</summary>
    public List<PressSeries> Usable => [.. Series.Where(series => series.Count >= PressSeries.SmallestCount)];

    /// <summary>Why no search is made; null where one is.</summary>
    public ReportIntervalRefused? Refused { get; }
}

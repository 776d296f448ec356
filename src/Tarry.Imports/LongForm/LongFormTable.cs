using Tarry.Studies.Sessions;
using Tarry.Studies.StudyFiles;

namespace Tarry.Imports.LongForm;

/// <summary>A study as one table, one row a trial: its columns and its rows, whatever file they are written to.</summary>
internal sealed class LongFormTable
{
    /// <summary>The columns that every study has.</summary>
    public static readonly IReadOnlyList<string> TrialColumns =
        ["condition", "sitting", "seq", "press_time_us", "latency_us", "outcome", "latency_high_us", "flags", "edges", "excluded"];

    private readonly StudyFile study;

    public LongFormTable(StudyFile study) => (this.study, Factors) = (study, new FactorColumns(study, TrialColumns));

    /// <summary>The columns that say what the condition is.</summary>
    public FactorColumns Factors { get; }

    /// <summary>The names of all columns, in order.</summary>
    public IReadOnlyList<string> ColumnNames => [.. TrialColumns, .. Factors.Names];

    /// <summary>The rows of a session, by sequence. A press that moves an axis counts from the stated crossing.</summary>
    public IEnumerable<LongFormRow> Rows(SessionData session)
    {
        var exclusions = study.Exclusions.Where(exclusion => exclusion.Session == session.Record.Key).ToList();
        var ticksPerSecond = session.Record.Segments.Select(TicksPerSecond).ToArray();
        var crossings = session.Record.Segments.Select(segment => session.Record.Run?.CrossingTicks(segment.TickHz) ?? 0).ToArray();
        foreach (var trial in session.Trials)
        {
            var hertz = ticksPerSecond[trial.Segment];
            var crossing = crossings[trial.Segment];
            yield return new LongFormRow(
                trial,
                Microseconds(trial.PressTicks + crossing, hertz),
                Microseconds(trial.LatencyTicks - crossing, hertz),
                Microseconds(trial.LatencyHighTicks - crossing, hertz),
                exclusions.Any(exclusion => trial.Sequence >= (exclusion.FirstSequence ?? 1) && trial.Sequence <= (exclusion.LastSequence ?? long.MaxValue)));
        }
    }

    /// <summary>The sessions, each let go before the next is asked for.</summary>
    /// <exception cref="ArgumentException">They are not in order of their keys.</exception>
    public static IEnumerable<SessionData> InOrder(IEnumerable<SessionData> sessions)
    {
        SessionKey? before = null;
        foreach (var session in sessions)
        {
            var key = session.Record.Key;
            if (before >= key)
            {
                throw new ArgumentException($"The session {key} comes after {before}; give the sessions by ascending key.", nameof(sessions));
            }

            before = key;
            yield return session;
        }
    }

    /// <summary>By the fit where there is one, else as stated.</summary>
    private static decimal TicksPerSecond(Segment segment) =>
        segment.TickHz * (1 + ((decimal)(segment.ClockFit?.RateErrorPpm ?? 0) / 1_000_000m));

    private static decimal? Microseconds(long? ticks, decimal ticksPerSecond) =>
        ticks is null ? null : decimal.Round(ticks.Value * 1_000_000_000m / ticksPerSecond) / 1_000m;
}

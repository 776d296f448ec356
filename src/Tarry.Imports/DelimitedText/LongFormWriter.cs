using System.Globalization;
using Tarry.Studies;
using Tarry.Studies.Sessions;
using Tarry.Studies.StudyFiles;

namespace Tarry.Imports.DelimitedText;

/// <summary>Writes a study as long-form CSV, one row a trial, every trial in it. See <c>docs/formats/long-form-csv.md</c>.</summary>
/// <remarks>
/// A press that moves an axis counts from the crossing of its stated threshold, so a device that answers sooner has a latency below 0.
/// Times are microseconds to the nanosecond, from ticks by the clock of the trial's segment: as fitted where there is a fit, else
/// as stated. UTF-8 without a byte order mark, lines end with LF, numbers with a decimal point; no comments. The same study gives
/// the same bytes. A level that a spreadsheet program would take for a formula has an apostrophe before it.
/// </remarks>
public static class LongFormWriter
{
    private const int TrialsBetweenChecks = 65_536;
    private static readonly string[] TrialColumns =
        ["condition", "sitting", "seq", "press_time_us", "latency_us", "outcome", "latency_high_us", "flags", "edges", "excluded"];

    /// <summary>Writes all trials of the given sessions, in order of sequence.</summary>
    /// <param name="output">Where to; it is flushed and left open.</param>
    /// <param name="study">The study file: its factors become columns, its exclusions the column <c>excluded</c>.</param>
    /// <param name="sessions">The sessions by ascending key; each is let go before the next is asked for.</param>
    /// <param name="cancellation">Stops the writing.</param>
    /// <returns>How many trials came to what.</returns>
    /// <exception cref="ArgumentException">The sessions are not in order of their keys.</exception>
    /// <exception cref="IOException">The output cannot be written.</exception>
    /// <exception cref="OperationCanceledException">The writing was stopped.</exception>
    public static SessionCounts Write(TextWriter output, StudyFile study, IEnumerable<SessionData> sessions, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(output);
        ArgumentNullException.ThrowIfNull(study);
        ArgumentNullException.ThrowIfNull(sessions);
        var factors = study.Conditions.SelectMany(condition => condition.Factors.Keys).Distinct().OrderBy(UsualPlace).ToList();
        var withRates = study.Conditions.Any(condition => condition.NominalReportHz is not null);
        output.Write(string.Join(',', [.. TrialColumns, .. factors.Select(ColumnName), .. withRates ? new[] { "nominal_report_hz" } : []]) + "\n");

        var counts = default(SessionCounts);
        SessionKey? before = null;
        foreach (var session in sessions)
        {
            var key = session.Record.Key;
            if (before >= key)
            {
                throw new ArgumentException($"The session {key} comes after {before}; give the sessions by ascending key.", nameof(sessions));
            }

            before = key;
            var condition = study.Conditions.FirstOrDefault(entry => entry.Id == key.Condition);
            WriteSession(output, session, ExclusionsOf(study, key), FactorCells(condition, factors, withRates), cancellation);
            counts += SessionTally.Of(session, study.Exclusions);
        }

        output.Flush();
        return counts;
    }

    private static void WriteSession(
        TextWriter output, SessionData session, IReadOnlyList<Exclusion> exclusions, string factorCells, CancellationToken cancellation)
    {
        var names = $"{session.Record.Key.Condition},{session.Record.Key.Sitting},";
        var ticksPerSecond = session.Record.Segments.Select(TicksPerSecond).ToArray();
        var crossings = session.Record.Segments.Select(segment => session.Record.Run?.CrossingTicks(segment.TickHz) ?? 0).ToArray();
        for (var index = 0; index < session.Trials.Count; index++)
        {
            if (index % TrialsBetweenChecks == 0)
            {
                cancellation.ThrowIfCancellationRequested();
            }

            var trial = session.Trials[index];
            var hertz = ticksPerSecond[trial.Segment];
            var crossing = crossings[trial.Segment];
            var excluded = exclusions.Any(exclusion => trial.Sequence >= (exclusion.FirstSequence ?? 1) && trial.Sequence <= (exclusion.LastSequence ?? long.MaxValue));
            output.Write(string.Create(
                CultureInfo.InvariantCulture,
                $"{names}{trial.Sequence},{Microseconds(trial.PressTicks + crossing, hertz):0.###},{Microseconds(trial.LatencyTicks - crossing, hertz):0.###},{OutcomeNames.Word(trial.Outcome)},{Microseconds(trial.LatencyHighTicks - crossing, hertz):0.###},{(int)trial.Flags},{trial.Edges},{(excluded ? 1 : 0)}{factorCells}\n"));
        }
    }

    /// <summary>By the fit where there is one, else as stated.</summary>
    private static decimal TicksPerSecond(Segment segment) =>
        segment.TickHz * (1 + ((decimal)(segment.ClockFit?.RateErrorPpm ?? 0) / 1_000_000m));

    private static decimal? Microseconds(long? ticks, decimal ticksPerSecond) =>
        ticks is null ? null : decimal.Round(ticks.Value * 1_000_000_000m / ticksPerSecond) / 1_000m;

    private static List<Exclusion> ExclusionsOf(StudyFile study, SessionKey key) =>
        [.. study.Exclusions.Where(exclusion => exclusion.Session == key)];

    private static string FactorCells(ConditionEntry? condition, IReadOnlyList<string> factors, bool withRates)
    {
        var levels = factors.Select(factor => FactorText.ToCell(condition?.Factors.GetValueOrDefault(factor) ?? ""));
        var rate = condition?.NominalReportHz?.ToString("0.############", CultureInfo.InvariantCulture) ?? "";
        return string.Concat((withRates ? levels.Append(rate) : levels).Select(cell => "," + cell));
    }

    private static int UsualPlace(string factor)
    {
        var place = HeaderReader.KnownFactors.IndexOf(factor);
        return place < 0 ? int.MaxValue : place;
    }

    /// <summary>A factor that is called as one of the other columns keeps apart from it.</summary>
    private static string ColumnName(string factor) => FactorText.ToCell(TrialColumns.Contains(factor) || factor == "session" ? $"factor_{factor}" : factor);
}

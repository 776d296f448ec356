using System.Globalization;
using Tarry.Imports.LongForm;
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

    /// <summary>The names of the columns that a study has in the long form, in order.</summary>
    public static IReadOnlyList<string> ColumnNames(StudyFile study)
    {
        ArgumentNullException.ThrowIfNull(study);
        return new LongFormTable(study).ColumnNames;
    }

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
        var table = new LongFormTable(study);
        output.Write(string.Join(',', table.ColumnNames.Select(FactorText.ToCell)) + "\n");

        var counts = default(SessionCounts);
        foreach (var session in LongFormTable.InOrder(sessions))
        {
            WriteSession(output, session, table, cancellation);
            counts += SessionTally.Of(session, study.Exclusions);
        }

        output.Flush();
        return counts;
    }

    private static void WriteSession(TextWriter output, SessionData session, LongFormTable table, CancellationToken cancellation)
    {
        var names = $"{session.Record.Key.Condition},{session.Record.Key.Sitting},";
        var factorCells = string.Concat(table.Factors.Cells(session.Record.Key.Condition).Select(cell => "," + cell));
        var index = 0;
        foreach (var row in table.Rows(session))
        {
            if (index++ % TrialsBetweenChecks == 0)
            {
                cancellation.ThrowIfCancellationRequested();
            }

            var trial = row.Trial;
            output.Write(string.Create(
                CultureInfo.InvariantCulture,
                $"{names}{trial.Sequence},{row.PressTimeUs:0.###},{row.LatencyUs:0.###},{OutcomeNames.Word(trial.Outcome)},{row.LatencyHighUs:0.###},{(int)trial.Flags},{trial.Edges},{(row.Excluded ? 1 : 0)}{factorCells}\n"));
        }
    }
}

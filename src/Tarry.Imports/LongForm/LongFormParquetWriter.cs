using ParquetSharp;
using Tarry.Imports.DelimitedText;
using Tarry.Studies;
using Tarry.Studies.Sessions;
using Tarry.Studies.StudyFiles;

namespace Tarry.Imports.LongForm;

/// <summary>Writes a study as one Parquet file with the columns, rows and numbers of the long-form CSV; one row group a session.</summary>
/// <remarks>
/// Times are float64 microseconds: a nanosecond is exact to a part in 2^53. What is empty in the CSV is null here. Factor levels
/// are written as they are: no spreadsheet program takes them for formulas. The same study gives the same bytes with the same
/// version of the program.
/// </remarks>
public static class LongFormParquetWriter
{
    /// <summary>Writes all trials of the given sessions, in order of sequence.</summary>
    /// <param name="output">Where to; it is left open.</param>
    /// <param name="study">The study file: its factors become columns, its exclusions the column <c>excluded</c>.</param>
    /// <param name="sessions">The sessions by ascending key; each is let go before the next is asked for.</param>
    /// <param name="cancellation">Stops between sessions.</param>
    /// <returns>How many trials came to what.</returns>
    /// <exception cref="ArgumentException">The sessions are not in order of their keys.</exception>
    public static SessionCounts Write(Stream output, StudyFile study, IEnumerable<SessionData> sessions, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(output);
        ArgumentNullException.ThrowIfNull(study);
        ArgumentNullException.ThrowIfNull(sessions);
        var table = new LongFormTable(study);
        var counts = default(SessionCounts);
        using var builder = new WriterPropertiesBuilder();
        using var properties = builder.Compression(Compression.Zstd).EnablePageChecksum().Build();
        using var file = new ParquetFileWriter(output, Columns(table), null, properties, null, leaveOpen: true);
        foreach (var session in LongFormTable.InOrder(sessions))
        {
            cancellation.ThrowIfCancellationRequested();
            using var group = file.AppendRowGroup();
            WriteSession(group, session, table);
            counts += SessionTally.Of(session, study.Exclusions);
        }

        file.Close();
        return counts;
    }

    private static Column[] Columns(LongFormTable table) =>
    [
        new Column<string>("condition"),
        new Column<string>("sitting"),
        new Column<long>("seq"),
        new Column<double?>("press_time_us"),
        new Column<double?>("latency_us"),
        new Column<string>("outcome"),
        new Column<double?>("latency_high_us"),
        new Column<int>("flags"),
        new Column<int>("edges"),
        new Column<int>("excluded"),
        .. table.Factors.Factors.Select(factor => new Column<string?>(table.Factors.Name(factor))),
        .. table.Factors.WithRates ? new Column[] { new Column<double?>("nominal_report_hz") } : [],
    ];

    private static void WriteSession(RowGroupWriter group, SessionData session, LongFormTable table)
    {
        var rows = table.Rows(session).ToArray();
        var condition = table.Factors.Of(session.Record.Key.Condition);
        Write(group, rows, _ => session.Record.Key.Condition);
        Write(group, rows, _ => session.Record.Key.Sitting);
        Write(group, rows, row => row.Trial.Sequence);
        Write(group, rows, row => (double?)row.PressTimeUs);
        Write(group, rows, row => (double?)row.LatencyUs);
        Write(group, rows, row => OutcomeNames.Word(row.Trial.Outcome));
        Write(group, rows, row => (double?)row.LatencyHighUs);
        Write(group, rows, row => (int)row.Trial.Flags);
        Write(group, rows, row => (int)row.Trial.Edges);
        Write(group, rows, row => row.Excluded ? 1 : 0);
        foreach (var factor in table.Factors.Factors)
        {
            Write(group, rows, _ => condition?.Factors.GetValueOrDefault(factor));
        }

        if (table.Factors.WithRates)
        {
            Write(group, rows, _ => condition?.NominalReportHz);
        }
    }

    private static void Write<T>(RowGroupWriter group, LongFormRow[] rows, Func<LongFormRow, T> value)
    {
        using var column = group.NextColumn().LogicalWriter<T>();
        column.WriteBatch(Array.ConvertAll(rows, row => value(row)));
    }
}

using System.Globalization;
using Tarry.Studies.Reports;

namespace Tarry.Imports.ReportStreams;

/// <summary>Writes a session of reports as CSV, one row a report: time, endpoint, report id, its bytes in hex, and a column a field.</summary>
/// <remarks>UTF-8 without a byte order mark, lines end with LF, numbers with a decimal point; a cell is empty where there is no value. The same session gives the same bytes.</remarks>
public static class ReportCsvWriter
{
    private const int RowsBetweenChecks = 65_536;

    /// <summary>Writes all reports.</summary>
    /// <param name="output">Where to; it is flushed and left open.</param>
    /// <param name="session">The session.</param>
    /// <param name="cancellation">Stops the writing.</param>
    /// <exception cref="IOException">The output cannot be written.</exception>
    /// <exception cref="OperationCanceledException">The writing was stopped.</exception>
    public static void Write(TextWriter output, ReportSession session, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(output);
        ArgumentNullException.ThrowIfNull(session);
        var (stream, reports) = (session.Stream, session.Reports);
        output.Write(string.Join(',', ReportRows.FixedColumns.Concat(stream.Fields.Select(field => field.Column))) + "\n");
        for (var index = 0; index < reports.Count; index++)
        {
            if (index % RowsBetweenChecks == 0)
            {
                cancellation.ThrowIfCancellationRequested();
            }

            output.Write(string.Create(
                CultureInfo.InvariantCulture,
                $"{ReportRows.TimeUs(session, index):0.###},{reports.Endpoint(index)},{stream.ReportIdOf(reports, index)},{Convert.ToHexStringLower(reports.Data(index))}"));
            foreach (var field in stream.Fields)
            {
                output.Write(string.Create(CultureInfo.InvariantCulture, $",{stream.ValueOf(field, reports, index)}"));
            }

            output.Write('\n');
        }

        output.Flush();
    }
}

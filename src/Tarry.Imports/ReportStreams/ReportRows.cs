using Tarry.Studies.Reports;

namespace Tarry.Imports.ReportStreams;

/// <summary>A session of reports as a table for other programs, one row a report: its columns and its times.</summary>
public static class ReportRows
{
    /// <summary>The columns that every table begins with; the fields of the reports follow.</summary>
    public static IReadOnlyList<string> FixedColumns { get; } = ["time_us", "endpoint", "report_id", "data"];

    /// <summary>When a report came, in microseconds from the session's beginning, to the nanosecond.</summary>
    internal static decimal TimeUs(ReportSession session, int index) => TickTime.Microseconds(session.Record.Segments[0], session.Reports.Tick(index));
}

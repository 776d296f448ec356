namespace Tarry.Studies.Reports;

/// <summary>The columns that every <c>reports.parquet</c> begins with.</summary>
public static class ReportColumns
{
    /// <summary>Their names, in order.</summary>
    public static IReadOnlyList<string> Fixed { get; } = ["tick", "endpoint", "report_id", "data"];
}

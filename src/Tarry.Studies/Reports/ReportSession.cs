using Tarry.Studies.Sessions;

namespace Tarry.Studies.Reports;

/// <summary>A session of the kind <c>reports</c>: its record, which says what the reports are, and the reports.</summary>
/// <param name="Record">What it is; its <see cref="SessionRecord.ReportStream"/> is there.</param>
/// <param name="Reports">Its reports in order of time, in ticks of the record's one segment.</param>
public sealed record ReportSession(SessionRecord Record, ReportLog Reports)
{
    /// <summary>What the reports are.</summary>
    public ReportStream Stream => Record.ReportStream
        ?? throw new InvalidOperationException($"Session {Record.Key} says nothing of its reports.");
}

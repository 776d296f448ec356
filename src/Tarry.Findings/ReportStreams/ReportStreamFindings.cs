using Tarry.Metrology;
using Tarry.Statistics.Densities;
using Tarry.Studies;
using Tarry.Studies.Reports;
using Tarry.Studies.Sessions;

namespace Tarry.Findings.ReportStreams;

/// <summary>The report streams of a study: one finding an endpoint of each session of reports. They are no latencies and enter no condition's counts.</summary>
public static class ReportStreamFindings
{
    private const int BinsInSlot = 20;
    private const int SlotsShown = 4;

    /// <summary>All of them, by session and endpoint. A session that the study file excludes as a whole is left out.</summary>
    /// <param name="study">The study.</param>
    /// <param name="cancellation">Stops between sessions.</param>
    /// <exception cref="StudyException">A session cannot be read.</exception>
    public static IReadOnlyList<ReportStreamFinding> Of(Study study, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(study);
        var findings = new List<ReportStreamFinding>();
        foreach (var key in study.ReportSessionKeys.Where(key => !study.File.Exclusions.Any(exclusion => exclusion.Session == key && exclusion is { FirstSequence: null, LastSequence: null })))
        {
            cancellation.ThrowIfCancellationRequested();
            var session = study.ReadReports(key);
            findings.AddRange(session.Stream.Endpoints.Select(endpoint => Of(key, session, endpoint)));
        }

        return findings;
    }

    /// <summary>The finding of one endpoint.</summary>
    /// <param name="key">The session.</param>
    /// <param name="session">Its reports.</param>
    /// <param name="endpoint">The endpoint.</param>
    public static ReportStreamFinding Of(SessionKey key, ReportSession session, ReportEndpoint endpoint)
    {
        ArgumentNullException.ThrowIfNull(session);
        ArgumentNullException.ThrowIfNull(endpoint);
        var segment = session.Record.Segments[0];
        var clock = new TimerClock(segment.TickHz, segment.ClockFit?.RateErrorPpm ?? 0);
        var reports = session.Reports;
        var times = Enumerable.Range(0, reports.Count)
            .Where(index => reports.Endpoint(index) == endpoint.Number)
            .Select(index => clock.ToMicroseconds(reports.Tick(index)) / 1_000)
            .ToArray();
        var intervals = times.Zip(times.Skip(1), (before, after) => after - before).ToArray();
        var interval = SlotInterval.Of(times);
        var slotMs = interval is Estimate<Latency> estimate ? estimate.Value.Milliseconds : (double?)null;
        return new ReportStreamFinding
        {
            Session = key,
            Device = session.Stream.Device,
            Endpoint = endpoint,
            Reports = times.Length,
            Interval = interval,
            Slots = slotMs is { } slot ? SlotCounts.Of(intervals, slot) : null,
            // Bins are centred on the slot, so that a steady stream fills one and not two.
            Histogram = slotMs is { } width ? Histogram.Of(intervals, -0.5 * width / BinsInSlot, width / BinsInSlot, (SlotsShown * BinsInSlot) + 1) : null,
        };
    }
}

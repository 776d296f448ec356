using Tarry.Metrology;
using Tarry.Statistics.Densities;
using Tarry.Studies.Reports;
using Tarry.Studies.Sessions;

namespace Tarry.Findings.ReportStreams;

/// <summary>What the reports from one endpoint of a device say of its report interval.</summary>
public sealed record ReportStreamFinding
{
    /// <summary>The session.</summary>
    public required SessionKey Session { get; init; }

    /// <summary>The device as the capture numbers it.</summary>
    public required string Device { get; init; }

    /// <summary>Where the reports came from, with the polling interval that is declared.</summary>
    public required ReportEndpoint Endpoint { get; init; }

    /// <summary>How many reports.</summary>
    public required int Reports { get; init; }

    /// <summary>The interval between report slots that is observed, on the clock of the capture.</summary>
    public required EstimateOutcome<Latency> Interval { get; init; }

    /// <summary>What came of the slots; null where the interval cannot be told.</summary>
    public required SlotCounts? Slots { get; init; }

    /// <summary>How often which time lay between two reports, in milliseconds; null where the interval cannot be told.</summary>
    public required Histogram? Histogram { get; init; }

    /// <summary>The declared polling interval; null where the capture does not say it.</summary>
    public Latency? Declared => Endpoint.DeclaredIntervalUs is { } declared ? Latency.FromMicroseconds(declared) : null;

    /// <summary>The observed interval in declared ones: 1 where each poll is answered; null where one is not known.</summary>
    public double? ObservedOverDeclared =>
        Declared is { Microseconds: > 0 } declared && Interval is Estimate<Latency> observed ? observed.Value.Microseconds / declared.Microseconds : null;
}

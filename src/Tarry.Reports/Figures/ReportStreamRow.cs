using System.Globalization;
using Tarry.Findings.ReportStreams;
using Tarry.Metrology;
using Tarry.Reports.Wording;

namespace Tarry.Reports.Figures;

/// <summary>A row of the report streams.</summary>
/// <param name="Stream">The stream; its histogram is there.</param>
/// <param name="Name">The session.</param>
/// <param name="Source">The device and endpoint.</param>
/// <param name="Observed">The interval as observed, with its limits.</param>
/// <param name="Slots">What is declared, and what came of the slots.</param>
/// <param name="Declared">The declared interval in observed ones; null where it is not known.</param>
internal sealed record ReportStreamRow(ReportStreamFinding Stream, string Name, string Source, string Observed, string Slots, double? Declared)
{
    /// <summary>The streams whose interval is known.</summary>
    public static IReadOnlyList<ReportStreamRow> Of(IReadOnlyList<ReportStreamFinding> streams) => [.. streams.Where(stream => stream.Histogram is not null).Select(Of)];

    private static ReportStreamRow Of(ReportStreamFinding stream)
    {
        var observed = (Estimate<Latency>)stream.Interval;
        var counts = stream.Slots!;
        var declared = stream.Declared is { } stated ? $"declared {Numbers.Milliseconds(stated.Milliseconds)}" : "none declared";
        return new ReportStreamRow(
            stream,
            stream.Session.ToString(),
            string.Create(CultureInfo.InvariantCulture, $"{stream.Device}, {stream.Endpoint.Transport} 0x{stream.Endpoint.Number:x2}"),
            $"{EstimateWording.Value(observed, Quantity.StreamInterval)} ({EstimateWording.Bounds(observed, Quantity.StreamInterval)})",
            $"{declared}; {Numbers.Whole(counts.Missed)} missed, {Numbers.Whole(counts.Doubled)} doubled",
            stream.ObservedOverDeclared is { } ratio ? 1 / ratio : null);
    }
}

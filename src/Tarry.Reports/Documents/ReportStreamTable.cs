using System.Globalization;
using System.Xml.Linq;
using Tarry.Findings.ReportStreams;
using Tarry.Metrology;
using Tarry.Reports.Wording;

namespace Tarry.Reports.Documents;

/// <summary>The table of report streams: the reports that a device sent, as a capture of its connection holds them.</summary>
internal static class ReportStreamTable
{
    /// <summary>The table, or null without streams.</summary>
    public static XElement? Build(IReadOnlyList<ReportStreamFinding> streams)
    {
        if (streams.Count == 0)
        {
            return null;
        }

        var table = new HtmlTable(
            "Reports as captured on the connection. Intervals at 95\u00A0% beneath. Missed: slots without a report, which a device that reports only changes leaves empty without fault. Doubled: less than half a slot after the one before. Jitter: standard deviation of intervals of one slot.",
            "session",
            "reports",
            "declared interval, ms",
            "observed interval, ms",
            "observed over declared",
            "missed",
            "doubled",
            "jitter, us");
        foreach (var stream in streams)
        {
            table.Add(
                new(stream.Session.ToString(), string.Create(CultureInfo.InvariantCulture, $"{stream.Device}, {stream.Endpoint.Transport} 0x{stream.Endpoint.Number:x2}")),
                [
                    Numbers.Whole(stream.Reports),
                    stream.Declared is { } declared ? Numbers.Plain(declared.Milliseconds) : "not stated",
                    TableCell.Of(stream.Interval, Quantity.StreamInterval),
                    stream.ObservedOverDeclared is { } ratio ? Numbers.Fixed(ratio, 3) : "not known",
                    stream.Slots is { } slots ? Numbers.Whole(slots.Missed) : "not known",
                    stream.Slots is { } counted ? Numbers.Whole(counted.Doubled) : "not known",
                    stream.Slots?.JitterMs is { } jitter ? Numbers.Fixed(jitter * 1000, 1) : "not known",
                ],
                "long");
        }

        return table.Element;
    }
}

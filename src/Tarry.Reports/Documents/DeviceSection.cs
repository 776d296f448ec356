using System.Xml.Linq;
using Tarry.Findings;
using Tarry.Findings.Conditions;
using Tarry.Findings.DeviceOnly;
using Tarry.Findings.ReportIntervals;
using Tarry.Findings.Shapes;
using Tarry.Metrology;
using Tarry.Reports.Figures;
using Tarry.Reports.Wording;

namespace Tarry.Reports.Documents;

/// <summary>What the device alone does: its report interval, its own delay, the shape of latencies, and its reports where these were captured.</summary>
internal static class DeviceSection
{
    private const string Beneath = "Intervals at 95\u00A0% beneath.";

    /// <summary>The section, or null where nothing is known of devices alone.</summary>
    /// <param name="document">The findings.</param>
    /// <param name="figures">The figures that the report has.</param>
    public static XElement? Build(FindingsDocument document, IReadOnlyList<StudyFigure> figures)
    {
        IReadOnlyList<RankedRow> rows = [.. RankedRow.Of(document).Where(row => row.Condition is { ReportInterval: not null } or { DeviceOnly: not null } or { Shape: not null })];
        var streams = ReportStreamTable.Build(document.ReportStreams ?? []);
        if (rows.Count == 0)
        {
            return streams is null ? null : Html.Section("device", "The device alone", streams, FiguresSection.Of(FigurePart.Reports, document, figures));
        }

        var sentences = DeviceSentences.Of(rows).ToList();
        var evidence = DeviceSentences.Evidence(rows).ToList();
        return Html.Section(
            "device",
            "The device alone",
            Html.Paragraph("A device looks for a press, and hands it on, at report slots of its own. When each press came and when it was answered tells how far apart these slots are; what the reference measured tells what the chain adds, and can be taken out."),
            sentences.Count == 0 ? null : Html.List(sentences),
            Device(rows),
            Shapes(rows),
            evidence.Count == 0 ? null : Html.Details("What speaks for each report interval", Html.List(evidence)),
            streams,
            FiguresSection.Of(FigurePart.Reports, document, figures));
    }

    private static XElement Device(IReadOnlyList<RankedRow> rows)
    {
        var clock = rows.Max(row => row.Condition.ReportInterval?.Clock.HalfWidthPpm ?? 0);
        var table = new HtmlTable(
            $"The device alone. {Beneath} Report intervals are on the clock of the data, which may be off by {Numbers.Fixed(clock, Numbers.Decimals(clock))} parts per million; reports a second have that in them. Mean and standard deviation: of the delay in excess of the reference's fixed delay, the wait for the device's own slot inside.",
            "condition",
            "report interval, ms",
            "reports a second",
            "stated",
            "mean alone, ms",
            "sd alone, ms");
        foreach (var row in rows)
        {
            var condition = row.Condition;
            table.Add(
                new(condition.Id, condition.IsReference ? "reference" : ""),
                [
                    Interval(condition.ReportInterval),
                    ReportRate.Of(condition.ReportInterval) is { } rate ? new TableCell(rate.Value, rate.Bounds) : new TableCell("not known"),
                    condition.NominalReportHz is { } stated ? Numbers.Plain(stated) : "not stated",
                    Alone(condition, condition.DeviceOnly?.Mean),
                    Alone(condition, condition.DeviceOnly?.StandardDeviation),
                ],
                "long");
        }

        return table.Element;
    }

    private static XElement Shapes(IReadOnlyList<RankedRow> rows)
    {
        var isExtreme = rows.Any(row => row.Condition.LateTail?.P999 is Estimate<Latency>);
        IReadOnlyList<string> heads = ["condition", "frame interval, ms", "fixed delay, ms", "block of the device, ms", "shape", "late, %", "late lumps"];
        var table = new HtmlTable(
            $"What the latencies look like, chain and all. {Beneath} A block is a wait, uniform over its width; BIC, the Bayesian information criterion, weighs one family of shapes against the next. Late: by the fitted shape.",
            isExtreme ? [.. heads, "p99.9, ms"] : heads);
        foreach (var row in rows)
        {
            var condition = row.Condition;
            table.Add(
                new(condition.Id, condition.IsReference ? "reference" : ""),
                [
                    condition.ReportInterval?.FrameInterval is { } frame ? Numbers.Fixed(frame.Milliseconds, 4) : "not known",
                    condition.ReportInterval?.FixedDelay is { } delay ? TableCell.Of(delay, Quantity.Latency) : "not known",
                    Block(condition.BlockWidth),
                    TableCell.Words(ShapeWording.Shape(condition.Shape), ShapeWording.Evidence(condition.Shape)),
                    condition.LateTail is { } tail ? TableCell.Of(tail.ShareByFit, Quantity.Share) : "not known",
                    TableCell.Words(ShapeWording.Lumps(condition.LateTail) is { Length: > 0 } lumps ? lumps : "none told"),
                    .. isExtreme ? [condition.LateTail is { } late ? TableCell.Of(late.P999, Quantity.Latency) : new TableCell("not known")] : Array.Empty<TableCell>(),
                ]);
        }

        return table.Element;
    }

    private static TableCell Interval(ReportIntervalFinding? finding) => finding switch
    {
        { Interval: { } interval } => TableCell.Of(interval, Quantity.ReportInterval),
        { Unidentified: { } not } => new TableCell("not identifiable", ReportIntervalWording.Words(not.Reason)),
        _ => new TableCell("not known"),
    };

    private static TableCell Block(BlockWidthFinding? finding)
    {
        if (finding is null)
        {
            return new("not known");
        }

        var moments = finding is { MomentsAgree: false, ByMoments: { } by } ? $"; moments say {Numbers.Fixed(by.Milliseconds, 2)}" : "";
        if (finding.Width is { } width)
        {
            var cell = TableCell.Of(width, Quantity.Scatter);
            var whose = finding.Evidence == BlockWidthEvidence.ShapeAlone ? "; the widest wait of the chain" : "";
            return cell with { Detail = cell.Detail + whose + moments };
        }

        var reason = finding.Reason is { } why ? ShapeWording.Reason(why) : "";
        return finding.AtMost is { } most
            ? new($"at most{Numbers.NoBreakSpace}{Numbers.Fixed(most.Milliseconds, 2)}", reason + moments)
            : new("not known", reason + moments);
    }

    private static TableCell Alone(ConditionFinding condition, EstimateOutcome<LatencyDifference>? outcome) => outcome switch
    {
        null => new(condition.IsReference ? "reference" : "not known"),
        NotEnough<LatencyDifference> => new("not known", condition.DeviceOnly!.Refusal is { } refusal ? DeviceOnlyWording.Words(refusal.Kind) : ""),
        _ => TableCell.Of(outcome, Quantity.Scatter),
    };
}

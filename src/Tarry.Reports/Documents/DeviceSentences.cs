using Tarry.Findings.DeviceOnly;
using Tarry.Findings.ReportIntervals;
using Tarry.Reports.Figures;
using Tarry.Reports.Wording;
using Tarry.Statistics.SlotGrid;

namespace Tarry.Reports.Documents;

/// <summary>What is worth saying of the devices alone: rates that are not as stated, what contradicts itself, and what could not be told.</summary>
internal static class DeviceSentences
{
    /// <summary>The sentences, of all conditions together first.</summary>
    public static IEnumerable<string> Of(IReadOnlyList<RankedRow> rows)
    {
        var stated = rows
            .Where(row => row.Condition.NominalReportHz is not null)
            .Select(row => (row.Condition.Id, Stated: row.Condition.NominalReportHz!.Value, Found: ReportRate.Of(row.Condition.ReportInterval)))
            .Where(row => row.Found is not null)
            .ToList();
        var asStated = stated.Where(row => row.Found!.Is(row.Stated)).Select(row => row.Id).ToList();
        if (asStated.Count > 0)
        {
            yield return $"As often as stated, to the 0.25{Numbers.NoBreakSpace}% that USB allows a device's clock (USB 2.0, 7.1.11): {Listing.And(asStated)}.";
        }

        foreach (var row in stated.Where(row => !row.Found!.Is(row.Stated)))
        {
            yield return $"{row.Id} reports {row.Found!.Value} times a second; {Numbers.Plain(row.Stated)} are stated.";
        }

        var agreeing = Ids(rows, SlotShapeAgreement.Agree);
        if (agreeing.Count > 0)
        {
            yield return $"Press times and the shape of the latencies tell the same report interval of {Listing.And(agreeing)}.";
        }

        foreach (var row in rows)
        {
            if (Own(row).ToList() is { Count: > 0 } own)
            {
                yield return $"{row.Condition.Id}: {string.Join(' ', own)}";
            }
        }
    }

    /// <summary>What speaks for the report interval of each condition that has one.</summary>
    public static IEnumerable<string> Evidence(IReadOnlyList<RankedRow> rows) => rows
        .Where(row => row.Condition.ReportInterval?.Interval is not null)
        .Select(row => $"{row.Condition.Id}: {ReportIntervalWording.Evidence(row.Condition.ReportInterval!)} {ReportIntervalWording.Agreement(row.Condition.ReportInterval!)}".TrimEnd());

    private static IEnumerable<string> Own(RankedRow row)
    {
        var condition = row.Condition;
        if (condition.ReportInterval is { } interval)
        {
            if (interval.Agreement is SlotShapeAgreement.Conflict or SlotShapeAgreement.ShapeOnly && ReportIntervalWording.Agreement(interval) is { Length: > 0 } words)
            {
                yield return words;
            }

            if (interval.Unidentified is { } not)
            {
                yield return $"{ReportIntervalWording.Reason(not)} {ReportIntervalWording.Remedy(not)}";
            }

            if (interval.FixedDelay is null && interval.FixedDelays.Select(delay => delay.Outcome).OfType<FixedDelayRefused>().FirstOrDefault() is { } refused)
            {
                yield return $"Its fixed delay is not claimed. {FixedDelayWording.Reason(refused)} {FixedDelayWording.Remedy(refused)}";
            }
        }

        if (condition.DeviceOnly?.Refusal is { } refusal)
        {
            yield return DeviceOnlyWording.Sentence(refusal);
        }
    }

    private static List<string> Ids(IReadOnlyList<RankedRow> rows, SlotShapeAgreement agreement) =>
        [.. rows.Where(row => row.Condition.ReportInterval?.Agreement == agreement).Select(row => row.Condition.Id)];
}

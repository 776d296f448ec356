using System.Globalization;
using Tarry.Findings.Conditions;
using Tarry.Findings.DeviceOnly;
using Tarry.Findings.ReportIntervals;
using Tarry.Findings.Shapes;
using Tarry.Metrology;
using Tarry.Statistics.SlotGrid;
using static Tarry.Reports.Wording.Numbers;

namespace Tarry.Reports.Wording;

/// <summary>What one condition's shape, tail and report slots say, a sentence each, with what speaks for it or against.</summary>
public static class ConditionSentences
{
    /// <summary>Of the shape of its latencies.</summary>
    public static IEnumerable<string> Shape(ConditionFinding condition)
    {
        ArgumentNullException.ThrowIfNull(condition);
        switch (condition.Shape)
        {
            case ShapeFinding shape:
                yield return $"{(shape.Decided ? "The shape that describes the latencies best" : "The data cannot tell which shape describes the latencies best")}: {ShapeWording.Shape(shape)}; {ShapeWording.Evidence(shape)}. It rests on {EstimateWording.Basis(shape.Sessions, shape.Trials)}.";
                yield return $"Of the best: {Listing.And([.. shape.Parameters.Take(6).Select(parameter => Parameter(parameter.Key, parameter.Value))])}.";
                break;
            case ShapeNotEnough lack:
                yield return $"There are too few trials for a shape: {ShapeWording.Shape(lack)}.";
                break;
            default:
                yield return "No shape was looked for: latencies are known as intervals only, or no session is steady enough.";
                break;
        }

        if (condition.Density is { } density)
        {
            yield return $"The density is smoothed by a normal kernel with a standard deviation of {Fixed(density.BandwidthMs, 2)}{NoBreakSpace}ms: edges look softer by that than they are.";
        }
    }

    /// <summary>Of its late responses.</summary>
    public static IEnumerable<string> Late(ConditionFinding condition)
    {
        ArgumentNullException.ThrowIfNull(condition);
        if (condition.LateBeyond is { } beyond)
        {
            yield return $"Late is {(beyond.Definition.StartsWith("later", StringComparison.Ordinal) ? "" : "later than ")}{beyond.Definition}, which is {Milliseconds(beyond.Threshold.Milliseconds)}. The late share: {EstimateWording.ClaimOrLack(condition.LateShare, Quantity.Share)}.";
        }

        yield return $"Missed: {EstimateWording.ClaimOrLack(condition.MissedShare, Quantity.Share)}. A miss counts as later than any response in the quantiles.";
        if (condition.LateTail is not { } tail)
        {
            yield break;
        }

        if (tail.ShareByFit is Estimate<Proportion> share)
        {
            yield return $"By the fitted shape {EstimateWording.Claim(share, Quantity.Share)} lie beyond its block{(tail.BlockEnd is { } end ? $", which ends at {Fixed(end.Milliseconds, 2)}{NoBreakSpace}ms" : "")}.";
        }

        yield return ShapeWording.Lumps(tail) is { Length: > 0 } lumps
            ? $"Late responses bunch {lumps} of the responses, as retransmission makes them."
            : "Late responses are not told to bunch at multiples of an interval.";
        yield return $"p99.9: {EstimateWording.ClaimOrLack(tail.P999, Quantity.Latency)}.";
    }

    /// <summary>Of its report interval, its fixed delay and the width of its block.</summary>
    public static IEnumerable<string> Slots(ConditionFinding condition)
    {
        ArgumentNullException.ThrowIfNull(condition);
        if (condition.ReportInterval is { } finding)
        {
            foreach (var sentence in Interval(condition, finding).Concat(FixedDelay(finding)).Where(sentence => sentence.Length > 0))
            {
                yield return sentence;
            }
        }
        else
        {
            yield return "A report interval was not looked for.";
        }

        if (condition.BlockWidth is { } block)
        {
            yield return Block(block);
        }
    }

    /// <summary>Of the device without the chain.</summary>
    public static IEnumerable<string> Alone(ConditionFinding condition)
    {
        ArgumentNullException.ThrowIfNull(condition);
        if (condition.DeviceOnly is not { } alone)
        {
            return condition.IsReference ? ["This is the reference: what it measures is what is taken out of the others."] : [];
        }

        return
        [
            $"Without the chain: mean {EstimateWording.ClaimOrLack(alone.Mean, Quantity.Scatter)}; standard deviation {EstimateWording.ClaimOrLack(alone.StandardDeviation, Quantity.Scatter)}.",
            .. alone.Refusal is { } refusal ? [DeviceOnlyWording.Sentence(refusal)] : Array.Empty<string>(),
            .. DeviceOnlyWording.Assumptions(alone),
        ];
    }

    private static IEnumerable<string> Interval(ConditionFinding condition, ReportIntervalFinding finding)
    {
        if (finding.Interval is { } interval)
        {
            var rate = ReportRate.Of(finding) is { } found ? $", {found.Value} reports a second ({found.Bounds}, the clock in it)" : "";
            var stated = condition.NominalReportHz is { } hertz ? $"; {Plain(hertz)} are stated" : "";
            yield return $"Report interval: {EstimateWording.Claim(interval, Quantity.ReportInterval)}{rate}{stated}.";
            yield return ReportIntervalWording.Evidence(finding);
        }
        else if (finding.Unidentified is { } not)
        {
            yield return $"No report interval is claimed. {ReportIntervalWording.Reason(not)} {ReportIntervalWording.Remedy(not)}";
        }

        yield return ReportIntervalWording.Agreement(finding);
        yield return finding.FrameInterval is { } frame ? $"Responses come in frames {Fixed(frame.Milliseconds, 4)}{NoBreakSpace}ms apart." : "";
    }

    private static IEnumerable<string> FixedDelay(ReportIntervalFinding finding)
    {
        if (finding.FixedDelay is { } delay)
        {
            yield return $"Fixed delay, without the waits for slot and frame: {EstimateWording.ClaimOrLack(delay, Quantity.Latency)}.";
        }
        else if (finding.FixedDelays.Select(one => one.Outcome).OfType<FixedDelayRefused>().FirstOrDefault() is { } refused)
        {
            yield return $"Its fixed delay is not claimed. {FixedDelayWording.Reason(refused)} {FixedDelayWording.Remedy(refused)}";
        }
    }

    private static string Block(BlockWidthFinding block)
    {
        var moments = block is { ByMoments: { } by, MomentsAgree: { } agree } ? $" The moments say {Fixed(by.Milliseconds, 2)}{NoBreakSpace}ms, which {(agree ? "agrees" : "does not agree")}." : "";
        if (block.Width is { } width)
        {
            var whose = block.Evidence == BlockWidthEvidence.ShapeAlone ? " It is the widest wait of the chain, not of the device for certain." : "";
            return $"By the shape of the latencies the wait for a slot is a block {EstimateWording.Claim(width, Quantity.Scatter)} wide.{whose}{moments}";
        }

        var most = block.AtMost is { } bound ? $"; it is at most {Fixed(bound.Milliseconds, 2)}{NoBreakSpace}ms wide" : "";
        return $"The shape of the latencies gives no width of a block: {(block.Reason is { } reason ? ShapeWording.Reason(reason) : "not known")}{most}.{moments}";
    }

    // A key carries its unit at its end.
    private static string Parameter(string key, double value)
    {
        var words = key.Split('_');
        return words[^1] == "ms"
            ? $"{string.Join(' ', words[..^1])} {Fixed(value, 3)}{NoBreakSpace}ms"
            : $"{string.Join(' ', words)} {value.ToString("0.###", CultureInfo.InvariantCulture)}";
    }
}

using Tarry.Findings.Conditions;
using Tarry.Metrology;
using Tarry.Statistics.SlotGrid;

namespace Tarry.Findings.ReportIntervals;

/// <summary>Sets the report interval of the slot grid beside the block width of the shape: agreement, conflict, or the one that there is.</summary>
/// <remarks>
/// Where press times are not known, or too few, nothing was looked for in the grid, and the block width told apart by the
/// reference stands for the report interval. Where the grid was looked for and not found, or the presses keep a lattice, which
/// undoes the shape as well, it does not.
/// </remarks>
internal static class ShapeJoin
{
    private const double ThreeSigma = 3 / 1.96;
    private const double Apart = 0.1;

    public static ConditionFinding Joined(ConditionFinding condition)
    {
        if (condition.ReportInterval is not { } finding || condition.BlockWidth?.Width is not { } width)
        {
            return condition;
        }

        return condition with
        {
            ReportInterval = (finding with { ShapeBlockWidth = width.Value }) is var joined && finding.Interval is { } interval
                ? joined with { Agreement = Contradict(interval, width) ? SlotShapeAgreement.Conflict : SlotShapeAgreement.Agree }
                : joined with
                {
                    Agreement = SlotShapeAgreement.ShapeOnly,
                    Interval = NotLookedFor(finding) && IsTheDevices(condition) ? width : null,
                    Unidentified = NotLookedFor(finding) && IsTheDevices(condition) ? null : finding.Unidentified,
                },
        };
    }

    private static bool Contradict(Estimate<LatencyDifference> interval, Estimate<LatencyDifference> width)
    {
        var (byGrid, byShape) = (interval.Value.Milliseconds, width.Value.Milliseconds);
        var low = byShape - (ThreeSigma * (byShape - width.Interval.Low.Milliseconds));
        var high = byShape + (ThreeSigma * (width.Interval.High.Milliseconds - byShape));
        return (byGrid < low || byGrid > high) && Math.Abs(byShape - byGrid) > Apart * byGrid;
    }

    private static bool NotLookedFor(ReportIntervalFinding finding) =>
        finding.Unidentified?.Reason is ReportIntervalReason.NoPressTimes or ReportIntervalReason.TooFewTrials;

    private static bool IsTheDevices(ConditionFinding condition) =>
        condition.BlockWidth!.Evidence is Shapes.BlockWidthEvidence.ChainFromReference;
}

using Tarry.Findings.Conditions;
using Tarry.Metrology;
using Tarry.Statistics.Shapes;

namespace Tarry.Findings.Shapes;

/// <summary>How wide a condition's block is: through the chain of the reference where there is one, else by its shape alone.</summary>
internal static class BlockWidths
{
    private const double WidestPart = 0.25;
    private const double AgreeingErrors = 3;

    public static BlockWidthFinding TooFew(bool hasReference, double? referenceIntervalMs) =>
        Without(BlockWidthReason.TooFewTrials, null, Evidence(hasReference, referenceIntervalMs));

    public static BlockWidthFinding Of(FittedCondition condition, bool isReference, FittedCondition? reference, double? referenceIntervalMs)
    {
        var evidence = Evidence(reference is not null && !isReference, referenceIntervalMs);
        if (isReference)
        {
            return Without(BlockWidthReason.IsTheReference, null, evidence);
        }

        var choice = condition.Choice;
        if (choice.Decided && choice.Best.Shape.Family is not (ShapeFamily.Normal or ShapeFamily.UniformNormal or ShapeFamily.UniformUniformNormal))
        {
            return Without(BlockWidthReason.NoBlock, null, evidence);
        }

        var fit = reference is null ? BlockWidthFit.Alone(choice) : BlockWidthFit.Through(choice, reference.Choice, referenceIntervalMs);
        var (low, high) = (fit.Limits.Low, Math.Max(fit.Limits.High, fit.WidthMs));
        BlockWidthReason? reason = low <= 0 ? BlockWidthReason.IncludesZero
            : !fit.IsApart ? BlockWidthReason.WaitsNotApart
            : Math.Max(high - fit.WidthMs, fit.WidthMs - low) > WidestPart * fit.WidthMs ? BlockWidthReason.TooWide
            : null;
        var finding = reason is { } why
            ? Without(why, high, evidence)
            : new BlockWidthFinding
            {
                Width = Estimates.Difference(
                    fit.WidthMs,
                    Math.Min(low, fit.WidthMs),
                    high,
                    reference is null ? MethodName.BlockWidthByShapeAlone : MethodName.BlockWidthThroughReference,
                    condition.Sessions),
                AtMost = null,
                Reason = null,
                Evidence = evidence,
            };
        return reference is not null && referenceIntervalMs is { } stated ? WithMoments(finding, condition, reference, stated) : finding;
    }

    private static BlockWidthFinding WithMoments(BlockWidthFinding finding, FittedCondition condition, FittedCondition reference, double statedMs)
    {
        var (mine, myError) = condition.VarianceOfMainBlock();
        var (theirs, theirError) = reference.VarianceOfMainBlock();
        var square = (12 * (mine - theirs)) + (statedMs * statedMs);
        var slack = AgreeingErrors * 12 * Math.Sqrt((myError * myError) + (theirError * theirError));
        return finding with
        {
            ByMoments = square > 0 ? LatencyDifference.FromMilliseconds(Math.Sqrt(square)) : null,
            MomentsAgree = finding.Width is { } width
                ? Square(width.Interval.Low.Milliseconds) <= square + slack && Square(width.Interval.High.Milliseconds) >= square - slack
                : null,
        };
    }

    private static BlockWidthEvidence Evidence(bool hasReference, double? referenceIntervalMs) =>
        !hasReference ? BlockWidthEvidence.ShapeAlone
        : referenceIntervalMs is null ? BlockWidthEvidence.ChainFromReferenceOfUnstatedRate
        : BlockWidthEvidence.ChainFromReference;

    private static BlockWidthFinding Without(BlockWidthReason reason, double? atMostMs, BlockWidthEvidence evidence) => new()
    {
        Width = null,
        AtMost = atMostMs is { } most ? LatencyDifference.FromMilliseconds(most) : null,
        Reason = reason,
        Evidence = evidence,
    };

    private static double Square(double value) => value * value;
}

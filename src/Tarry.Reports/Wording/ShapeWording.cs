using Tarry.Findings.Shapes;
using Tarry.Statistics.Shapes;
using static Tarry.Reports.Wording.Numbers;

namespace Tarry.Reports.Wording;

/// <summary>The words of shapes, block widths and late lumps.</summary>
public static class ShapeWording
{
    private const double PoorFit = 0.01;

    /// <summary>A family in a few words.</summary>
    public static string Family(ShapeFamily family) => family switch
    {
        ShapeFamily.Normal => "normal curve",
        ShapeFamily.UniformNormal => "one block",
        ShapeFamily.UniformUniformNormal => "two blocks added",
        ShapeFamily.ExponentiallyModifiedNormal => "long tail",
        ShapeFamily.TwoNormalLumps => "two normal lumps",
        ShapeFamily.TwoUniformLumps => "two blocks apart",
        _ => throw new ArgumentOutOfRangeException(nameof(family), family, "A family without words."),
    };

    /// <summary>The shape in a few words; where the data cannot tell, the two that are nearest.</summary>
    public static string Shape(ShapeOutcome? outcome) => outcome switch
    {
        ShapeFinding { Decided: true } shape => Family(shape.Family),
        ShapeFinding { Candidates: [var first, var second, ..] } => $"{Family(first.Family)} or {Family(second.Family)}",
        ShapeFinding shape => Family(shape.Family),
        ShapeNotEnough lack => $"{Whole(lack.Have)} of {Whole(lack.Need)} {lack.Of}",
        _ => "not looked for",
    };

    /// <summary>By how much the family leads, and whether the data agree with it; empty without a shape.</summary>
    public static string Evidence(ShapeOutcome? outcome)
    {
        if (outcome is not ShapeFinding shape)
        {
            return "";
        }

        var lead = $"{(shape.Decided ? "ahead by" : "the data cannot tell:")} {Fixed(shape.MarginInBic, 1)} in BIC";
        return shape.Fit is { } fit ? $"{lead}; {(fit.P < PoorFit ? "fits poorly" : "fits")}, p{NoBreakSpace}{Probability(fit.P)}" : lead;
    }

    /// <summary>Why a shape gives no block width, in a few words.</summary>
    public static string Reason(BlockWidthReason reason) => reason switch
    {
        BlockWidthReason.IncludesZero => "may be none",
        BlockWidthReason.TooWide => "too uncertain",
        BlockWidthReason.WaitsNotApart => "two waits alike",
        BlockWidthReason.NoBlock => "no single block",
        BlockWidthReason.IsTheReference => "the reference",
        BlockWidthReason.TooFewTrials => "too few trials",
        _ => throw new ArgumentOutOfRangeException(nameof(reason), reason, "A reason without words."),
    };

    /// <summary>Late lumps: <c>every 4.2 ms: 5.9, 0.0, 1.3 %</c>, shares of the responses; empty where there are none.</summary>
    public static string Lumps(LateTailFinding? tail) => tail is { LumpInterval: { } interval, Lumps: { Count: > 0 } lumps }
        ? $"every {Fixed(interval.Value.Milliseconds, 1)}{NoBreakSpace}ms: {string.Join(", ", lumps.Select(lump => Fixed(lump.Share.Value.Value * 100, 1)))}{NoBreakSpace}%"
        : "";
}

namespace Tarry.Findings.Comparisons;

/// <summary>The verdict of a pair from what was told and whether its 90 % interval lies inside the margin.</summary>
internal static class VerdictRule
{
    public const double ToldBelow = 0.05;

    public static Verdict Of(double differenceMs, bool told, bool small) => (told, small) switch
    {
        (true, true) => Verdict.BelowMargin,
        (true, false) => differenceMs > 0 ? Verdict.Slower : Verdict.Faster,
        (false, true) => Verdict.NoDifferenceThatMatters,
        _ => Verdict.Undecided,
    };
}

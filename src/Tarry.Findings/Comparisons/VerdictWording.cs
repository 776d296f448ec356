namespace Tarry.Findings.Comparisons;

/// <summary>The words of a verdict.</summary>
public static class VerdictWording
{
    /// <summary>The verdict as it stands in JSON, such as <c>no-difference-that-matters</c>.</summary>
    public static string Key(Verdict verdict) => Hyphenated.Name(verdict.ToString());

    /// <summary>The verdict of b against a, from that of a against b.</summary>
    public static Verdict Reversed(Verdict verdict) => verdict switch
    {
        Verdict.Slower => Verdict.Faster,
        Verdict.Faster => Verdict.Slower,
        _ => verdict,
    };
}

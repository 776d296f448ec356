namespace Tarry.Findings.Comparisons;

/// <summary>The words of a verdict.</summary>
public static class VerdictWording
{
    /// <summary>The verdict as it stands in JSON, such as <c>no-difference-that-matters</c>.</summary>
    public static string Key(Verdict verdict) => Hyphenated.Name(verdict.ToString());
}

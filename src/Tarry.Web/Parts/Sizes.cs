using Tarry.Reports.Wording;

namespace Tarry.Web.Parts;

/// <summary>Lengths of files as people read them.</summary>
internal static class Sizes
{
    private const double Thousand = 1000;

    /// <summary>A length with its unit, thousands apart (kB = 1,000 bytes).</summary>
    public static string Of(long bytes) => bytes switch
    {
        < 1_000 => Numbers.Count(bytes, "byte"),
        < 1_000_000 => Numbers.Fixed(bytes / Thousand, bytes < 10_000 ? 1 : 0) + "\u00a0kB",
        < 1_000_000_000 => Numbers.Fixed(bytes / Thousand / Thousand, bytes < 10_000_000 ? 1 : 0) + "\u00a0MB",
        _ => Numbers.Fixed(bytes / Thousand / Thousand / Thousand, 1) + "\u00a0GB",
    };
}

using static Tarry.Reports.Wording.Numbers;

namespace Tarry.Reports.Wording;

/// <summary>Lists of names in a sentence.</summary>
public static class Listing
{
    private const int MostNames = 6;

    /// <summary><c>a</c>, <c>a and b</c>, <c>a, b and c</c>; past six names the rest are counted.</summary>
    public static string And(IReadOnlyList<string> names)
    {
        if (names.Count > MostNames)
        {
            var rest = names.Count - MostNames + 1;
            return $"{string.Join(", ", names.Take(MostNames - 1))} and {Count(rest, "other")}";
        }

        return names.Count switch
        {
            0 => "",
            1 => names[0],
            _ => $"{string.Join(", ", names.Take(names.Count - 1))} and {names[^1]}",
        };
    }
}

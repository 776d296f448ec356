using Tarry.Findings.Comparisons;

namespace Tarry.Findings.Contrasts;

/// <summary>Two conditions of one study.</summary>
public static class WithinStudyContrast
{
    /// <summary>What the study says of a against b.</summary>
    /// <param name="document">The study's findings.</param>
    /// <param name="a">The first condition's id.</param>
    /// <param name="b">The second's.</param>
    /// <exception cref="ContrastException">A condition is not in the study or has no data, or both are the same.</exception>
    public static ContrastFinding Of(FindingsDocument document, string a, string b)
    {
        ArgumentNullException.ThrowIfNull(document);
        var (first, second) = (ContrastCondition.Find(document, a), ContrastCondition.Find(document, b));
        if (a == b)
        {
            throw new ContrastException($"'{a}' would be compared with itself.", "Give two conditions, or a condition of another study: STUDY:A OTHER:B.");
        }

        return new ContrastFinding
        {
            A = ContrastCondition.Side(document, first),
            B = ContrastCondition.Side(document, second),
            Comparison = Pair(document, a, b),
            FactorDifferences = FactorDifference.Between(first, second),
            ReferenceChange = null,
            Cautions = [.. first.Cautions, .. second.Cautions, .. SeveralFactors.Of(first, second), .. document.Cautions],
        };
    }

    private static ComparisonFinding Pair(FindingsDocument document, string a, string b)
    {
        var pair = document.Comparisons.First(pair => (pair.A == a && pair.B == b) || (pair.A == b && pair.B == a));
        return pair.A == a ? pair : pair.Swapped();
    }
}

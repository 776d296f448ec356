using Tarry.Findings.Conditions;
using Tarry.Findings.Quality;

namespace Tarry.Findings.Contrasts;

/// <summary>A retest of one specimen in which more than one thing was changed cannot say which of them did it.</summary>
internal static class SeveralFactors
{
    private static readonly string[] Specimen = ["device", "unit"];

    public static IEnumerable<Caution> Of(ConditionFinding a, ConditionFinding b)
    {
        var differences = FactorDifference.Between(a, b);
        var sameSpecimen = a.Factors.ContainsKey("device") && !differences.Any(difference => Specimen.Contains(difference.Factor));
        if (sameSpecimen && differences.Count > 1)
        {
            yield return new Caution(
                CautionKind.SeveralFactors,
                string.Join(", ", differences),
                new Dictionary<string, double> { ["factors"] = differences.Count });
        }
    }
}

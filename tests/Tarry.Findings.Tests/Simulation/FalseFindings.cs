using Tarry.Findings.Comparisons;
using Tarry.Findings.Quality;

namespace Tarry.Findings.Tests.Simulation;

/// <summary>What a study says that is not so, where nothing differs and nothing is amiss.</summary>
internal static class FalseFindings
{
    /// <summary>Kinds that accuse a session or a condition of something that its data show.</summary>
    private static readonly HashSet<CautionKind> Accusations =
    [
        CautionKind.Drift, CautionKind.ChangePoint, CautionKind.Dependence, CautionKind.PhaseLocked, CautionKind.PressLattice,
        CautionKind.Beat, CautionKind.Modes, CautionKind.ShapeUnexpected, CautionKind.UnequalVariances,
    ];

    public static bool InComparisons(FindingsDocument document) => document.Comparisons.Any(pair => IsTold(pair.Verdict));

    public static bool InContrasts(FindingsDocument document) =>
        document.Factors!.Any(factor => factor.Contrasts.Any(contrast => IsTold(contrast.Comparison.Verdict)));

    public static bool InCosts(FindingsDocument document) =>
        document.Factors!.Any(factor => factor.Costs.Any(cost => IsTold(cost.Verdict)));

    public static IEnumerable<Caution> OfCautions(FindingsDocument document) =>
        document.Conditions.SelectMany(condition => condition.Cautions).Concat(document.Cautions).Where(caution => Accusations.Contains(caution.Kind));

    public static IEnumerable<Caution> OfSessions(IEnumerable<Caution> cautions) => cautions.Where(caution => Accusations.Contains(caution.Kind));

    /// <summary>Told, even where the difference is within the margin.</summary>
    private static bool IsTold(Verdict? verdict) => verdict is Verdict.Slower or Verdict.Faster or Verdict.BelowMargin;
}

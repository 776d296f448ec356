using Tarry.Findings.Comparisons;
using Tarry.Statistics.Intervals;
using Tarry.Statistics.Uncertainty;
using Tarry.Studies.Sessions;

namespace Tarry.Findings.Budgets;

/// <summary>
/// The uncertainty of a difference: what both sides of a sitting have in common cancels, and a clock's rate acts on the difference alone.
/// Two sides of the same source are combined with correlation +1 where the error is one and the same, else with 0.
/// </summary>
internal static class DifferenceBudget
{
    /// <summary>The budget of a pair; null where there is no difference.</summary>
    public static StatedUncertainty? Of(PairEvidence evidence, IReadOnlyDictionary<SessionKey, SessionChain> chains)
    {
        var pair = evidence.Pair;
        if (Sampling(evidence) is not { } sampling)
        {
            return null;
        }

        var together = pair.Sittings.Count > 0;
        var a = Chains(pair.A, together ? pair.Sittings : [.. pair.A.Sittings.Keys], chains);
        var b = Chains(pair.B, together ? pair.Sittings : [.. pair.B.Sittings.Keys], chains);
        var inputsA = ConditionChain.Together(a).ToDictionary(input => input.Source);
        var inputsB = ConditionChain.Together(b).ToDictionary(input => input.Source);
        var parts = inputsA.Keys.Union(inputsB.Keys).Order().Select(source =>
        {
            var shared = together && a.Zip(b).All(sides => sides.First.Shares(source, sides.Second));
            return Combine(source, inputsA.GetValueOrDefault(source), pair.A.Mean, inputsB.GetValueOrDefault(source), pair.B.Mean, shared);
        });
        return StatedUncertainty.Of((Delays(inputsB.Values) - Delays(inputsA.Values)) / 1000, [.. parts, sampling]);
    }

    private static BudgetContribution? Sampling(PairEvidence evidence) => (evidence.Difference, evidence.Pair) switch
    {
        ({ } difference, _) => new(UncertaintySource.Sampling, 1, difference.StandardError, difference.DegreesOfFreedom, false),
        (_, { Differences.Length: 1, WithinVariance: { } variance }) => new(UncertaintySource.Sampling, 1, Math.Sqrt(variance), BatchMeansInterval.Batches - 1, false),
        _ => null,
    };

    private static double Delays(IEnumerable<BudgetInput> inputs) => inputs.Where(input => input.Unit == "us").Sum(input => input.Estimate);

    private static List<SessionChain> Chains(SessionMeans condition, IReadOnlyList<string> sittings, IReadOnlyDictionary<SessionKey, SessionChain> chains) =>
        [.. sittings.Select(sitting => chains[new SessionKey(sitting, condition.Id)])];

    private static BudgetContribution Combine(UncertaintySource source, BudgetInput? a, double latencyA, BudgetInput? b, double latencyB, bool shared)
    {
        var sides = new[] { Side(a, latencyA, 1), Side(b, latencyB, -1) };
        var correlation = shared ? 1.0 : 0;
        var combined = LawOfPropagation.Combine(sides, new[,] { { 1, correlation }, { correlation, 1 } });
        var alone = LawOfPropagation.Combine(sides);
        return new BudgetContribution(
            source,
            null,
            combined,
            Math.Min(a?.DegreesOfFreedom ?? double.PositiveInfinity, b?.DegreesOfFreedom ?? double.PositiveInfinity),
            Cancels: shared && combined <= 1e-9 * alone);
    }

    private static UncertaintyComponent Side(BudgetInput? input, double latencyMs, int sign) => input is null
        ? new UncertaintyComponent(0, sign, double.PositiveInfinity)
        : new UncertaintyComponent(input.StandardUncertainty, sign * ConditionChain.Sensitivity(input, latencyMs), input.DegreesOfFreedom);
}

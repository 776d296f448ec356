using Tarry.Findings.Comparisons;
using Tarry.Statistics.Comparisons;
using Tarry.Studies.StudyFiles;

namespace Tarry.Findings.Factors;

/// <summary>Judges every factor that differs alone between conditions, each within a family of its own.</summary>
/// <remarks>
/// The family of a factor: its contrasts, and its costs over several settings. Holm within it, times the number of families, so
/// that the chance of a false word about any factor of the study stays at 5 %. A question that the design asks (what does this
/// layer cost?) has few answers, and need not pay for all pairs of the study, of which most were not asked about.
/// </remarks>
internal static class FactorFindings
{
    private static readonly string[] InReadingOrder = ["layer", "link", "placement", "control", "device_firmware", FactorLevel.ReportRate, "unit", "device"];

    /// <summary>One finding a factor, layers first.</summary>
    /// <param name="conditions">The conditions to set against each other, in the study file's order; pairs with another are left out.</param>
    /// <param name="reference">The reference condition's id.</param>
    /// <param name="evidence">What is known of every pair.</param>
    /// <param name="comparisons">What the study says of every pair, in the same order.</param>
    /// <param name="grounds">What refuses a verdict.</param>
    public static IReadOnlyList<FactorFinding> Of(
        IReadOnlyList<ConditionEntry> conditions,
        string? reference,
        IReadOnlyList<PairEvidence> evidence,
        IReadOnlyList<ComparisonFinding> comparisons,
        VerdictGrounds grounds)
    {
        var factors = FactorPair.Of(conditions, reference, evidence, comparisons)
            .GroupBy(pair => pair.Factor, StringComparer.Ordinal)
            .OrderBy(factor => Place(factor.Key))
            .ThenBy(factor => factor.Key, StringComparer.Ordinal)
            .Select(factor => new Family(factor.Key, [.. factor], grounds))
            .ToList();
        var families = Math.Max(1, factors.Count(factor => factor.Tests > 0));
        return [.. factors.Select(factor => factor.Findings(families))];
    }

    private static int Place(string factor) =>
        Array.IndexOf(InReadingOrder, factor) is >= 0 and var place ? place : InReadingOrder.Length;

    private sealed class Family
    {
        private readonly string factor;
        private readonly VerdictGrounds grounds;
        private readonly List<FactorPair> pairs;
        private readonly List<Level> levels;
        private readonly double[] probabilities;

        public Family(string factor, List<FactorPair> pairs, VerdictGrounds grounds)
        {
            this.factor = factor;
            this.grounds = grounds;
            this.pairs = pairs;
            levels = [.. pairs.GroupBy(pair => (pair.Level, pair.Baseline)).Select(group => new Level([.. group], grounds))];
            probabilities =
            [
                .. pairs.Where(IsTested).Select(pair => pair.Evidence.Guarded!.Value.TwoSidedP),
                .. levels.Select(level => level.Common).OfType<CommonCost>().Where(common => !common.Agreement.Differ).Select(common => common.Pooled.TwoSidedP),
            ];
        }

        public int Tests => probabilities.Length;

        public FactorFinding Findings(int families)
        {
            var adjusted = new Queue<double>(HolmAdjustment.Adjust(probabilities).Select(p => Math.Min(1, p * families)));
            var tests = Tests * families;
            var contrasts = pairs.ToDictionary(pair => pair, pair => Contrast(pair, IsTested(pair) ? adjusted.Dequeue() : null, tests));
            return new FactorFinding
            {
                Factor = factor,
                Tests = Tests,
                Families = families,
                Contrasts = [.. pairs.Select(pair => contrasts[pair])],
                Costs = [.. levels.Select(level => LevelCosts.Of(
                    level.Pairs[0],
                    [.. level.Pairs.Select(pair => contrasts[pair])],
                    level.Common,
                    level.Common is { Agreement.Differ: false } ? adjusted.Dequeue() : null,
                    tests))],
            };
        }

        private static bool IsTested(FactorPair pair) => pair.Evidence.Difference is not null;

        private FactorContrast Contrast(FactorPair pair, double? adjustedP, int tests) => new()
        {
            Factor = pair.Factor,
            Level = pair.Level,
            Baseline = pair.Baseline,
            Shared = pair.Shared,
            Comparison = adjustedP is { } p ? grounds.Checked(PairFindings.Judged(pair.Comparison, pair.Evidence, p, tests), pair.Evidence) : pair.Comparison,
        };

        private sealed class Level
        {
            public Level(List<FactorPair> pairs, VerdictGrounds grounds)
            {
                Pairs = pairs;
                var settings = pairs.Where(pair => IsTested(pair) && grounds.Undoing(pair.Evidence).Count == 0)
                    .GroupBy(pair => pair.Setting, StringComparer.Ordinal)
                    .Select(setting => (IReadOnlyList<FactorPair>)[.. setting])
                    .ToList();
                Common = settings.Count >= 2 ? CommonCost.Of(settings) : null;
            }

            public List<FactorPair> Pairs { get; }

            public CommonCost? Common { get; }
        }
    }
}

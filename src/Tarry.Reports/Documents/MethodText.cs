using Tarry.Findings;

namespace Tarry.Reports.Documents;

/// <summary>What a method does, by which formula, after whom, and where its page is.</summary>
/// <param name="Words">The formula in words.</param>
/// <param name="Formula">The formula.</param>
/// <param name="Source">Who published it.</param>
/// <param name="Page">Its page in the source of Tarry.</param>
internal sealed record MethodText(string Words, string Formula, string Source, string Page)
{
    private const string Means = "docs/methods/means-and-differences.md";
    private const string Quantiles = "docs/methods/quantiles.md";
    private const string Shares = "docs/methods/shares.md";
    private const string Consistency = "docs/methods/consistency.md";
    private const string Dependence = "docs/methods/dependence-and-drift.md";
    private const string DeviceOnly = "docs/methods/device-only.md";
    private const string BetweenStudies = "docs/methods/comparison-between-studies.md";
    private const string Censoring = "docs/methods/interval-censoring.md";
    private const string Factors = "docs/methods/factors.md";
    private const string SlotGrid = "docs/methods/slot-grid.md";
    private const string ReportStreams = "docs/methods/report-streams.md";
    private const string Shapes = "docs/methods/shapes.md";
    private const string Play = "docs/methods/play.md";
    private const string Smyth = "G. K. Smyth, Stat. Appl. Genet. Mol. Biol. 3 (2004)";
    private const string BatchMeans = "the method of batch means, common practice in the analysis of simulations";
    private const string OrderStatistics = "H. A. David and H. N. Nagaraja, Order Statistics, 3rd ed. (2003), 7.1";
    private const string Quasi = "quasi-likelihood with a moderated dispersion, S. P. Lund and others, Stat. Appl. Genet. Mol. Biol. 11 (2012)";
    private const string ClopperPearson = "C. J. Clopper and E. S. Pearson, Biometrika 26 (1934)";

    /// <summary>What formulas mean by the moderated variance.</summary>
    public const string ModeratedVariance = "s² = (d₀s₀² + dv)/(d₀ + d), where v is a condition's own variance between its J sessions on d degrees of freedom, and s₀² and d₀ are estimated from all conditions that may be pooled, and the result is averaged with the mean of their variances; t has d₀ + d degrees of freedom, at most what conditions that share sittings leave. A condition that may not be pooled keeps its own. After " + Smyth + ". Page: " + Means + ".";

    private const string Ranks = "ranks l = binom⁻¹(0.025; n, p) and u = binom⁻¹(0.975; n, p) + 1 of the n trials in order";

    private static readonly Dictionary<string, MethodText> Known = new()
    {
        [MethodName.ModeratedSessionMeans] = new("The mean of the session means, with Student's t and the scatter between sessions, moderated towards what the conditions have in common.", "m ± t √(s²/J), s² the moderated variance of session means", Smyth, Means),
        [MethodName.BatchMeansWithinSession] = new("The session is cut into 20 batches of trials in order, and the means of the batches give the error.", "m ± t(19) s/√20, s the standard deviation of the batch means", BatchMeans, Dependence),
        [MethodName.WithinSessionPlusPooledScatter] = new("The error within the session, and with it the scatter between sessions that the other conditions show.", "m ± √(h² + t² s₀²), h the half-width within the session, s₀² as in the moderated variance", "the two above, combined; no published source", Means),
        [MethodName.OrderStatisticsPlusSessionScatter] = new("Order statistics of all trials, each side widened by the scatter between sessions.", $"√(h² + t² s²/J) to either side, h from {Ranks}", $"{OrderStatistics}; the widening is Tarry's own, settled by the simulation on its page", Quantiles),
        [MethodName.OrderStatisticsWithinSession] = new("Exact limits from the order of the trials, whatever their distribution.", Ranks, OrderStatistics, Quantiles),
        [MethodName.ModeratedLogScale] = new("The logarithms of the session values, with Student's t and moderated variance.", "v exp(± t √(s²/J)), s² the moderated variance of the logarithms", Smyth, Consistency),
        [MethodName.KurtosisWithinSession] = new("The standard error of a logarithm of a standard deviation, from the fourth moment.", "s exp(± 1.96 √((k − 1)/4n)), k the kurtosis", "large-sample theory of moments, from memory", Consistency),
        [MethodName.ClopperPearsonJoinedWithRootRates] = new("The interval that holds both the exact limits over all trials and those of the square roots of the session rates with Student's t.", "beta quantiles 0.025 of (x, n − x + 1) and 0.975 of (x + 1, n − x) over all trials; y = √((x + 3/8)/n) of each session, (mean y ± t s/√J)²", $"{ClopperPearson}; F. J. Anscombe, Biometrika 35 (1948); the joining is Tarry's own, settled by the simulation on its page", Shares),
        [MethodName.RootRatesOverSessions] = new("The square roots of the session rates, with Student's t.", "y = √((x + 3/8)/n) of each session, (mean y ± t s/√J)²", "F. J. Anscombe, Biometrika 35 (1948)", Shares),
        [MethodName.ClopperPearsonOverAgreeingSessions] = new("Exact limits of a share over all trials, where session rates do not differ by more than chance.", "beta quantiles 0.025 of (x, n − x + 1) and 0.975 of (x + 1, n − x)", ClopperPearson, Shares),
        [MethodName.ClopperPearsonWithinSession] = new("Exact limits of a share over the trials of the session.", "beta quantiles 0.025 of (x, n − x + 1) and 0.975 of (x + 1, n − x)", ClopperPearson, Shares),
        [MethodName.ModeratedPaired] = new("The differences within sittings, with Student's t and moderated variance.", "mean d ± t √(s²/J), s² the moderated variance of differences averaged with the mean variance of all pairs, t on at most (C − 1)(J − 1) degrees of freedom for C conditions", $"{Smyth}; the average and the limit are Tarry's own, settled by simulation", "docs/decisions/0001-variance-of-paired-differences.md"),
        [MethodName.ModeratedUnpaired] = new("The difference of two means of sessions from different sittings, their variances added.", "m₁ − m₂ ± t √(v₁ + v₂), v the variance of each mean", "B. L. Welch, Biometrika 34 (1947)", Means),
        [MethodName.LinkedThroughReferences] = new("The difference to its reference in one study less that in the other, their variances added.", "(a − r₁) − (b − r₂) ± t √(v₁ + v₂), v the variance of each difference", "B. L. Welch, Biometrika 34 (1947); F. E. Satterthwaite, Biometrics Bulletin 2 (1946)", BetweenStudies),
        [MethodName.BetweenStudies] = new("The difference of the reference's means in two studies, their variances added.", "r₁ − r₂ ± t √(v₁ + v₂), v the variance of each mean", "B. L. Welch, Biometrika 34 (1947); F. E. Satterthwaite, Biometrics Bulletin 2 (1946)", BetweenStudies),
        [MethodName.HitsOverSessions] = new("The mean over sessions of how often the constant compensation that hits most does hit, less the flattery of choosing it on the same trials; a score interval for as many trials as the sessions' own scatter leaves.", "v = 2 max − mean max*, Wilson limits at n = v(1 − v)/(φ s²) with Student's t; s² from trials, φ ≥ 1 the dispersion of session shares, moderated over conditions", $"{Quasi}; E. B. Wilson, J. Amer. Statist. Assoc. 22 (1927); B. Efron and R. J. Tibshirani, An Introduction to the Bootstrap (1993), 10.3", Play),
        [MethodName.HitsWithinSession] = new("The same over the trials of one session.", "v = 2 max − mean max*, Wilson limits with z", "E. B. Wilson, J. Amer. Statist. Assoc. 22 (1927); B. Efron and R. J. Tibshirani, An Introduction to the Bootstrap (1993), 10.3", Play),
        [MethodName.HitsWithinSittings] = new("The differences of hit shares within sittings, each condition with its own constant.", "mean d ± t √(φ s²/J), φ ≥ 1 the dispersion of the differences, moderated over pairs", Quasi, Play),
        [MethodName.HitsBetweenSittings] = new("The difference of the hit shares of conditions that share no sitting, their variances added.", "v₁ − v₂ ± t √(φ₁s₁² + φ₂s₂²)", $"{Quasi}; B. L. Welch, Biometrika 34 (1947)", Play),
        [MethodName.HitsWithinOneSitting] = new("The difference of the hit shares in the one sitting that both share.", "v₁ − v₂ ± 1.96 √(s₁² + s₂²), from trials alone", "the binomial distribution and its extension to shares between 0 and 1", Play),
        [MethodName.DifferenceWithinSession] = new("The difference in the one sitting that both share, its error from batch means.", "m₁ − m₂ ± t √(v₁ + v₂), v from 20 batch means each", BatchMeans, Dependence),
        [MethodName.MeanBetweenBounds] = new("Latencies are known as intervals: the limits reach from the low limit of the mean of their low bounds to the high limit of the mean of their high bounds.", "[L(low bounds), H(high bounds)], L and H the limits of the usual method for a mean", "the bounds hold whatever lies between them; no published source", Censoring),
        [MethodName.QuantileBetweenBounds] = new("Latencies are known as intervals: the middle of the range that the distribution of greatest likelihood gives, from the low limit of the quantile of the low bounds to the high limit of that of the high bounds.", "[L(low bounds), H(high bounds)], L and H the limits of the usual method for a quantile", $"B. W. Turnbull, J. R. Stat. Soc. B 38 (1976); {OrderStatistics}", Censoring),
        [MethodName.ScaleWidenedByBounds] = new("Latencies are known as intervals: the usual limits, wider by as much as values within the intervals can change.", "standard deviation: w/2 to either side; p95 − p5: w; w the widest interval of a latency", "Minkowski's inequality", Censoring),
        [MethodName.ShareBetweenBounds] = new("Latencies are known as intervals: from the low limit of the share that is late for certain to the high limit of the share that may be.", "[L(low bounds later), H(high bounds later)]", ClopperPearson, Censoring),
        [MethodName.DifferenceOfBounds] = new("Latencies are known as intervals: the standard error is raised by what the intervals leave open of the difference.", "d ± t(s + b/t(0.95)), b the sum of the mean half-widths of both, s the usual standard error", "Tarry's own; it holds the worst case that the intervals allow", Censoring),
        [MethodName.CommonCostOverSettings] = new("The mean of the settings' differences within sittings; what a sitting does to all settings alike is seen once a sitting.", "mean c ± t √(V/K + e), V the mean variance of a setting's difference over its sittings, K settings, e what their common sittings add; t on J + 1 degrees of freedom at most", "Tarry's own, settled by the simulation on its page", Factors),
        [MethodName.CostOverDifferingSettings] = new("The mean of the settings' differences, with the settings as the unit, because they do not agree.", "mean c ± t(K − 1) s/√K, s the standard deviation of the costs of K settings", "Student's t, from memory", Factors),
        [MethodName.TwoSlotGrids] = new("Arrivals show which frame answered each press; whether a response skipped a frame repeats with the report interval. The interval whose slots explain most frames is taken, if it leads every rival.", "a line of the edge spectrum above its false-alarm threshold; log likelihood m ln e + (n − m) ln(1 − e), m of n frames not explained, 18 nats ahead of every rival; ± t(19) times the sandwich error of the line", "the construction is Tarry's own, settled by the simulation on its page; sandwich error: P. J. Huber, Proc. 5th Berkeley Symp. 1 (1967)", SlotGrid),
        [MethodName.SlopeOverSlots] = new("The times of reports over the numbers of their slots, a line in each of 20 blocks of reports in order; the slopes of the blocks give the error.", "b ± t(19) s/√20, b the mean and s the standard deviation of the slopes", BatchMeans, ReportStreams),
        [MethodName.SlotSawtooth] = new("Latencies, waits for the next slot, draw a sawtooth over the press times.", "the tallest line of 2|Σ (L − L̄) e^(−2πift)|²/Σ (L − L̄)² above its false-alarm threshold; ± t(19) times the sandwich error of the line", "periodogram: N. R. Lomb, Astrophys. Space Sci. 39 (1976); sandwich error: P. J. Huber, Proc. 5th Berkeley Symp. 1 (1967)", SlotGrid),
        [MethodName.FixedDelayOfTwoGrids] = new("What is left of a latency without the waits for slot and frame, with Student's t over sittings.", "m ± t(J − 1) s/√J, s the standard deviation of the sittings' fixed delays", "Tarry's own, settled by the simulation on its page", SlotGrid),
        [MethodName.BlockWidthThroughReference] = new("The wait for the report slot, uniform over its width, told from the rest of the chain by the reference, whose own wait is stated: one likelihood of both.", "fixed + Uniform(0, T) + Uniform(0, T₂) + Normal(0, s), T₂ and s in common; profile likelihood, χ² on 1 degree of freedom", "maximum likelihood on binned latencies, settled by the simulation on its page", Shapes),
        [MethodName.BlockWidthByShapeAlone] = new("The widest wait that the shape shows, whichever wait of the chain it is.", "fixed + Uniform(0, T) + Uniform(0, T₂) + Normal(0, s), or without the second; profile likelihood", "maximum likelihood on binned latencies, settled by the simulation on its page", Shapes),
        [MethodName.LateShareByFit] = new("The share of responses that the fitted shape leaves over, thought to lie evenly from the median to the latest.", "(1 − e) f(x) + e/(latest − median); normal limits of ln e/(1 − e)", "maximum likelihood, settled by the simulation on its page", Shapes),
        [MethodName.LumpsOfLateResponses] = new("The interval at whose multiples copies of the main block fit the late responses best.", "Σ wₖ f(x − kR) and an even rest against an even or exponential tail, by BIC; normal limits of R", "A. P. Dempster, N. M. Laird and D. B. Rubin, J. R. Stat. Soc. B 39 (1977), for the shares; the rest is Tarry's own", Shapes),
        [MethodName.LumpShare] = new("Exact limits of the share of responses in one late lump.", "beta quantiles 0.025 of (x, n − x + 1) and 0.975 of (x + 1, n − x)", ClopperPearson, Shapes),
        [MethodName.ModeratedVarianceDifference] = new("The differences of variances within sittings, with Student's t and moderated variance; the root is taken at the end.", "v = mean of (s_L² − s_R²) + T²/12, √(v ± t √(s²/J)), s² the moderated variance of the differences, T the reference's report interval", $"{Smyth}; moments of a sum of independent parts", DeviceOnly),
        [MethodName.VarianceDifferenceWithinSession] = new("The difference of the two variances of one sitting, its error from fourth moments.", "v = s_L² − s_R² + T²/12, √(v ± 1.96 √((m₄ − m₂²)/n of each)), T the reference's report interval", "large-sample theory of moments, from memory", DeviceOnly),
    };

    /// <summary>Whether its formula rests on <see cref="ModeratedVariance"/>.</summary>
    public bool IsModerated => Formula.Contains("moderated variance", StringComparison.Ordinal);

    /// <summary>The text of a method by its name in findings; null where this version has none.</summary>
    public static MethodText? Of(string method) => Known.GetValueOrDefault(method);
}

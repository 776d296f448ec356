namespace Tarry.Findings;

/// <summary>The names of methods as they stand in findings; each has a page or section in <c>docs/methods/</c>.</summary>
public static class MethodName
{
    /// <summary>Mean of session means, t interval with moderated variance.</summary>
    public const string ModeratedSessionMeans = "moderated-t-over-session-means";

    /// <summary>Mean of one session, t interval over 20 batch means.</summary>
    public const string BatchMeansWithinSession = "batch-means-within-one-session";

    /// <summary>Mean of one session, with the pooled between-session variance of the other conditions added.</summary>
    public const string WithinSessionPlusPooledScatter = "batch-means-plus-pooled-session-scatter";

    /// <summary>Quantile over all trials; order-statistic interval widened by the between-session scatter.</summary>
    public const string OrderStatisticsPlusSessionScatter = "order-statistics-plus-session-scatter";

    /// <summary>Quantile of one session; exact order-statistic interval.</summary>
    public const string OrderStatisticsWithinSession = "order-statistics-within-one-session";

    /// <summary>A scale statistic (sd, spread), t interval of its logarithm over sessions with moderated variance.</summary>
    public const string ModeratedLogScale = "moderated-t-over-log-session-values";

    /// <summary>Standard deviation of one session, from its kurtosis.</summary>
    public const string KurtosisWithinSession = "kurtosis-within-one-session";

    /// <summary>A share over three sessions or more: what holds both Clopper-Pearson over all trials and the t interval of the square root of session rates.</summary>
    public const string ClopperPearsonJoinedWithRootRates = "clopper-pearson-joined-with-t-over-root-session-rates";

    /// <summary>A share over two sessions whose rates differ by more than chance, t interval of the square root of session rates.</summary>
    public const string RootRatesOverSessions = "t-over-root-session-rates";

    /// <summary>A share over two sessions whose rates do not differ by more than chance, or of nothing seen, Clopper-Pearson.</summary>
    public const string ClopperPearsonOverAgreeingSessions = "clopper-pearson-over-agreeing-sessions";

    /// <summary>A share of one session, Clopper-Pearson.</summary>
    public const string ClopperPearsonWithinSession = "clopper-pearson-within-one-session";

    /// <summary>Mean of within-sitting differences, t interval with moderated variance.</summary>
    public const string ModeratedPaired = "moderated-t-within-sittings";

    /// <summary>Difference of means of conditions that share no sitting, Welch's t with moderated variances.</summary>
    public const string ModeratedUnpaired = "moderated-t-between-sittings";

    /// <summary>Difference of two studies' differences from their reference, Welch-Satterthwaite.</summary>
    public const string LinkedThroughReferences = "welch-satterthwaite-through-references";

    /// <summary>Difference of one condition's means in two studies, Welch-Satterthwaite.</summary>
    public const string BetweenStudies = "welch-satterthwaite-between-studies";

    /// <summary>Difference in the one sitting that both share.</summary>
    public const string DifferenceWithinSession = "batch-means-within-one-sitting";

    /// <summary>Mean of latencies known as intervals: from the low limit of the mean of the low bounds to the high limit of that of the high bounds.</summary>
    public const string MeanBetweenBounds = "mean-between-bounds";

    /// <summary>Quantile of latencies known as intervals: of the distribution of greatest likelihood, with order-statistic limits of the bounds.</summary>
    public const string QuantileBetweenBounds = "turnbull-quantile-between-bounds";

    /// <summary>A scale statistic of latencies known as intervals, widened by what the intervals can change of it.</summary>
    public const string ScaleWidenedByBounds = "scale-widened-by-bounds";

    /// <summary>A share of latencies known as intervals: limits of those that are late for certain, and of those that may be.</summary>
    public const string ShareBetweenBounds = "share-between-bounds";

    /// <summary>Difference of conditions whose latencies are known as intervals, its standard error raised by what the intervals leave open.</summary>
    public const string DifferenceOfBounds = "difference-widened-by-bounds";

    /// <summary>Report interval in front of frames on a stable grid, from which frame showed each response.</summary>
    public const string TwoSlotGrids = "two-slot-grids";

    /// <summary>Report interval from the sawtooth of latencies over press times.</summary>
    public const string SlotSawtooth = "slot-sawtooth";

    /// <summary>Report interval of a stream of reports: mean slope of their times over slot numbers in 20 blocks, t interval.</summary>
    public const string SlopeOverSlots = "slope-over-report-slots";

    /// <summary>Fixed delay without the waits for slot and frame, t over sittings.</summary>
    public const string FixedDelayOfTwoGrids = "fixed-delay-of-two-slot-grids";

    /// <summary>Block width by one likelihood of condition and reference, profile-likelihood interval.</summary>
    public const string BlockWidthThroughReference = "block-width-through-reference";

    /// <summary>Width of the widest block by the condition's shape alone, profile-likelihood interval.</summary>
    public const string BlockWidthByShapeAlone = "block-width-by-shape-alone";

    /// <summary>Share of late responses by the fitted shape, likelihood interval.</summary>
    public const string LateShareByFit = "late-share-by-fitted-shape";

    /// <summary>The interval at whose multiples late responses bunch, by likelihood.</summary>
    public const string LumpsOfLateResponses = "lumps-of-late-responses";

    /// <summary>The share of responses in one late lump, Clopper-Pearson over all trials.</summary>
    public const string LumpShare = "clopper-pearson-of-a-late-lump";

    /// <summary>Standard deviation of the device alone: differences of variances within sittings, t interval with moderated variance.</summary>
    public const string ModeratedVarianceDifference = "moderated-t-over-session-variance-differences";

    /// <summary>Standard deviation of the device alone from one sitting: difference of variances, its error from fourth moments.</summary>
    public const string VarianceDifferenceWithinSession = "fourth-moments-of-variance-difference-within-one-sitting";

    /// <summary>Hit probability over sessions: binomial variance times a moderated dispersion, t interval.</summary>
    public const string HitsOverSessions = "quasi-binomial-t-over-sessions";

    /// <summary>Hit probability of one session.</summary>
    public const string HitsWithinSession = "binomial-within-one-session";

    /// <summary>Difference of hit probabilities within sittings: binomial variance times a moderated dispersion, t interval.</summary>
    public const string HitsWithinSittings = "quasi-binomial-t-within-sittings";

    /// <summary>Difference of hit probabilities of conditions that share no sitting.</summary>
    public const string HitsBetweenSittings = "quasi-binomial-t-between-sittings";

    /// <summary>Difference of hit probabilities in the one sitting that both share.</summary>
    public const string HitsWithinOneSitting = "binomial-within-one-sitting";

    /// <summary>What a level of a factor costs over several settings that agree: mean of the within-sitting differences, with what shared sittings add.</summary>
    public const string CommonCostOverSettings = "mean-cost-over-settings";

    /// <summary>The same over settings that differ, which then are the unit: t over the settings' costs.</summary>
    public const string CostOverDifferingSettings = "t-over-differing-settings";
}

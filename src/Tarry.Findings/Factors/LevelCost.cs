using Tarry.Findings.Comparisons;
using Tarry.Metrology;

namespace Tarry.Findings.Factors;

/// <summary>
/// What a level costs against a baseline over all settings of the other factors (mostly: all devices) that were measured with
/// both: the mean of the differences within settings.
/// </summary>
public sealed record LevelCost
{
    /// <summary>The factor.</summary>
    public required string Factor { get; init; }

    /// <summary>The level.</summary>
    public required string Level { get; init; }

    /// <summary>The level from which the cost counts.</summary>
    public required string Baseline { get; init; }

    /// <summary>
    /// The mean cost over the settings: positive where the level makes them slower. Where the settings differ they are the unit,
    /// and the interval is of another one like these.
    /// </summary>
    public required EstimateOutcome<LatencyDifference> Cost { get; init; }

    /// <summary>Probability of such a cost were there none, adjusted within the factor's family; null where it is not tested.</summary>
    public required double? AdjustedP { get; init; }

    /// <summary>The smallest cost that matters, in milliseconds.</summary>
    public required double MarginMs { get; init; }

    /// <summary>What can be said of the level against its baseline; null where the settings differ, so that no one cost holds for them.</summary>
    public required Verdict? Verdict { get; init; }

    /// <summary>The cost that this design tells with 80 % power at the 5 % level; null where it is not tested.</summary>
    public required LatencyDifference? MinimumDetectable { get; init; }

    /// <summary>What it would take to tell a cost of the margin; null where the verdict is made or nothing is known of the scatter.</summary>
    public required Needed? Needed { get; init; }

    /// <summary>The standard error of the cost, in milliseconds; null where there is none.</summary>
    public double? StandardErrorMs { get; init; }

    /// <summary>The degrees of freedom of that error; null where there is none.</summary>
    public double? DegreesOfFreedom { get; init; }

    /// <summary>Whether the settings agree in the cost; null with one.</summary>
    public required CostAgreement? Agreement { get; init; }

    /// <summary>The contrasts that it rests on, one or more a setting.</summary>
    public required IReadOnlyList<FactorContrast> Contrasts { get; init; }
}

namespace Tarry.Findings.Factors;

/// <summary>What one factor does to latency: the pairs of conditions that differ in it alone, and what each of its levels costs.</summary>
public sealed record FactorFinding
{
    /// <summary>The factor, by its key in the study file.</summary>
    public required string Factor { get; init; }

    /// <summary>
    /// The family over which probabilities are adjusted by Holm: contrasts of this factor, and costs over several devices.
    /// </summary>
    public required int Tests { get; init; }

    /// <summary>How many factors of the study have such a family; each has an equal part of the 5 %.</summary>
    public required int Families { get; init; }

    /// <summary>The contrasts, in the order of the conditions.</summary>
    public required IReadOnlyList<FactorContrast> Contrasts { get; init; }

    /// <summary>The costs over all devices, one a level and baseline.</summary>
    public required IReadOnlyList<LevelCost> Costs { get; init; }
}

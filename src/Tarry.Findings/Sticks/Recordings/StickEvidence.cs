using Tarry.Findings.Sticks.Measures;
using Tarry.Statistics.Distributions;
using Tarry.Statistics.Intervals;

namespace Tarry.Findings.Sticks.Recordings;

/// <summary>What is known of one measure of one condition: on the scale of its logarithm where it is a size.</summary>
/// <param name="Measure">The measure.</param>
/// <param name="Part">Of which part.</param>
/// <param name="Value">The value.</param>
/// <param name="StandardError">Its standard error.</param>
/// <param name="DegreesOfFreedom">The degrees of freedom of that.</param>
/// <param name="Readings">The sessions' readings.</param>
internal sealed record StickEvidence(StickMeasure Measure, StickPart Part, double Value, double StandardError, double DegreesOfFreedom, IReadOnlyList<StickReading> Readings)
{
    // A truth at the very limit must not be lost to the last digit.
    private const double Rounded = 1e-9;

    public string Method { get; init; } = StickMethodName.WithinSession;

    public StickValueKind Kind { get; init; }

    /// <summary>The step of the axes, in per cent: bounds what one step hides.</summary>
    public double StepPercent { get; init; }

    /// <summary>By how much rounding may shift the value at most.</summary>
    public double Resolution { get; init; } = Readings.Max(reading => reading.Resolution);

    /// <summary>Up to where a value above 0 would not show.</summary>
    public double Hidden => Readings.Max(reading => reading.Hidden);

    public double Common => Readings.Max(reading => reading.Common);

    public double Ideal => Readings.Average(reading => reading.Ideal);

    public double Allowance => Readings.Max(reading => reading.Allowance);

    /// <summary>Half the width of the interval: replicates, rounding and what all share.</summary>
    public double HalfWidth(double level) => WithShared(level, NormalDistribution.Quantile(0.5 + (level / 2)));

    /// <summary>How far the interval reaches down: where a place was chosen because it stands out, part of that may be the place's own uncertainty.</summary>
    public double LowerWidth(double level) => WithShared(level, NormalDistribution.Quantile(1 - ((1 - level) / 2 / Readings.Max(reading => reading.Chosen))));

    private double WithShared(double level, double quantile)
    {
        var repeated = ResolutionHalfWidth.Of(StandardError, DegreesOfFreedom, Resolution * (1 + Rounded), level);
        return Math.Sqrt((repeated * repeated) + (quantile * quantile * Common * Common));
    }

    /// <summary>The chance, one-sided, that a faultless stick departs as far from what it should show.</summary>
    public double FaultP()
    {
        var excess = Math.Abs(Value - Ideal) - Allowance - Resolution;
        if ((Kind == StickValueKind.NotNegative || Measure == StickMeasure.Squareness) && Value <= Ideal)
        {
            return 1;
        }

        var error = Math.Sqrt((StandardError * StandardError) + (Common * Common));
        return !(excess > 0) ? 1 : error == 0 ? 0 : (Kind == StickValueKind.NotNegative ? 1 : 2) * StudentDistribution.UpperTail(excess / error, DegreesOfFreedom);
    }
}

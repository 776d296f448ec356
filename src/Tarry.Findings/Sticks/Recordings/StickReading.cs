using Tarry.Findings.Sticks.Measures;
using Tarry.Studies.Sticks;

namespace Tarry.Findings.Sticks.Recordings;

/// <summary>What one session says of one measure.</summary>
/// <param name="Measure">The measure.</param>
/// <param name="Part">Of which part.</param>
/// <param name="Value">The value; for measures of size its logarithm.</param>
/// <param name="StandardError">Its standard error within the session; null where one replicate gives none.</param>
/// <param name="DegreesOfFreedom">The degrees of freedom of that error.</param>
/// <param name="Replicates">How many replicates.</param>
/// <param name="ReplicateOf">Of what.</param>
internal sealed record StickReading(StickMeasure Measure, StickPart Part, double Value, double? StandardError, double DegreesOfFreedom, int Replicates, string ReplicateOf)
{
    /// <summary>What was done.</summary>
    public StickProcedure Procedure { get; init; }

    /// <summary>By how much rounding may shift the value at most, however often it is repeated: half a step where no noise spreads it.</summary>
    public double Resolution { get; init; }

    /// <summary>Up to where a value above 0 would not show in this recording, such as an overshoot within noise; 0 where all would.</summary>
    public double Hidden { get; init; }

    /// <summary>A standard uncertainty that all replicates and sessions share, such as that of the stops' angles.</summary>
    public double Common { get; init; }

    /// <summary>Among how many places, each with that uncertainty of its own, the one was chosen.</summary>
    public int Chosen { get; init; } = 1;

    /// <summary>What a faultless stick shows.</summary>
    public double Ideal { get; init; }

    /// <summary>How far from it a faultless stick of this resolution may be.</summary>
    public double Allowance { get; init; }
}

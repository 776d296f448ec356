using Tarry.Findings.Sticks.Rankings;
using Tarry.Findings.Sticks.Reshaping;

namespace Tarry.Findings.Sticks;

/// <summary>All that a study says of sticks.</summary>
/// <param name="Conditions">The conditions that have recordings of a stick, in the study file's order.</param>
/// <param name="Rankings">The conditions by each measure that two or more have.</param>
/// <param name="Reshapings">What software layers do to positions, a layer and its counterpart without each.</param>
public sealed record StudySticks(IReadOnlyList<StickFinding> Conditions, IReadOnlyList<StickRanking> Rankings, IReadOnlyList<ReshapingFinding> Reshapings)
{
    /// <summary>Nothing: every recording is set aside.</summary>
    public static StudySticks None { get; } = new([], [], []);
}

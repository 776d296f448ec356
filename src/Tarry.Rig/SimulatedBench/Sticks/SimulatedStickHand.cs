using Tarry.Studies.Sticks;

namespace Tarry.Rig.SimulatedBench.Sticks;

/// <summary>A stick whose wipers the simulated rig reads, and the hand that does a procedure with it from the stream's beginning on.</summary>
/// <param name="Stick">The stick.</param>
/// <param name="Procedure">What is done.</param>
public sealed record SimulatedStickHand(SimulatedStick Stick, StickProcedure Procedure)
{
    /// <summary>How many times as fast as the guide has it; more than zero.</summary>
    public double Pace { get; init; } = 1;
}

namespace Tarry.Rig.SimulatedBench;

/// <summary>What a simulated device does with one press.</summary>
/// <param name="LatencyUs">From the press to the first edge; null for none.</param>
/// <param name="Edges">How many edges.</param>
/// <param name="ActiveAtPress">Whether the line was active already.</param>
internal readonly record struct SimulatedResponse(double? LatencyUs, int Edges, bool ActiveAtPress);

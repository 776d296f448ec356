namespace Tarry.Findings.Sticks.Rim;

/// <summary>A whole turn along the gate: the positions from one index up to another.</summary>
/// <param name="From">The first position.</param>
/// <param name="To">One past the last.</param>
/// <param name="CounterClockwise">Which way round.</param>
internal readonly record struct RimTurn(int From, int To, bool CounterClockwise);

namespace Tarry.Findings.Sticks.Reshaping;

/// <summary>What a software layer does to positions.</summary>
public sealed record ReshapingFinding;

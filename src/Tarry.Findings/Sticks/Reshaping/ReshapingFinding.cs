using Tarry.Findings.Sticks.Measures;

namespace Tarry.Findings.Sticks.Reshaping;

/// <summary>What a software layer does to positions: the condition with it beside one that differs in nothing else.</summary>
public sealed record ReshapingFinding
{
    /// <summary>The condition with the layer.</summary>
    public required string With { get; init; }

    /// <summary>The condition without it.</summary>
    public required string Without { get; init; }

    /// <summary>The layer.</summary>
    public required string Layer { get; init; }

    /// <summary>What it was found to do; empty where nothing is told.</summary>
    public required IReadOnlyList<ReshapingKind> Kinds { get; init; }

    /// <summary>Squareness with the layer less without, in per cent of the way from a circle to a square.</summary>
    public required StickOutcome Squareness { get; init; }

    /// <summary>The position without the layer below which it says nothing, per cent of half the range.</summary>
    public required StickOutcome DeadZone { get; init; }

    /// <summary>The position without the layer from which on it says its end.</summary>
    public required StickOutcome Saturation { get; init; }

    /// <summary>The power g of said = ((position - dead zone)/(saturation - dead zone))^g; 1 for a straight line.</summary>
    public required StickOutcome Exponent { get; init; }

    /// <summary>The map at known levels that both were recorded at; empty where there are none.</summary>
    public required IReadOnlyList<MapPoint> Map { get; init; }

    /// <summary>How far the stick reaches with the layer over without, in each of 72 sectors; empty where either has no turns.</summary>
    public required IReadOnlyList<double> ReachRatio { get; init; }
}

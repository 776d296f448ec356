namespace Tarry.Findings.Shapes;

/// <summary>What could be said about the shape of a condition's latencies: a <see cref="ShapeFinding"/>, or <see cref="ShapeNotEnough"/>.</summary>
public abstract record ShapeOutcome;

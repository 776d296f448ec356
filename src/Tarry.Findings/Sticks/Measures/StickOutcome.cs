namespace Tarry.Findings.Sticks.Measures;

/// <summary>What came of a measure: a <see cref="StickEstimate"/> or a <see cref="StickRefusal"/>.</summary>
public abstract record StickOutcome;

/// <summary>A value with its interval, in the unit of the measure.</summary>
/// <param name="Value">The estimate.</param>
/// <param name="Low">The low end of the interval.</param>
/// <param name="High">The high end.</param>
/// <param name="Level">The confidence level.</param>
/// <param name="Method">The method, as in <c>docs/methods/sticks.md</c>.</param>
/// <param name="Replicates">How many replicates it rests on.</param>
/// <param name="ReplicateOf">Of what: <c>turns</c>, <c>releases</c>, <c>batches</c>.</param>
/// <param name="Sessions">How many sessions it rests on; with one, the interval holds within it only.</param>
/// <param name="StandardError">Its standard error.</param>
/// <param name="DegreesOfFreedom">The degrees of freedom of that error.</param>
public sealed record StickEstimate(double Value, double Low, double High, double Level, string Method, int Replicates, string ReplicateOf, int Sessions, double StandardError, double DegreesOfFreedom)
    : StickOutcome;

/// <summary>The recordings cannot support the measure.</summary>
/// <param name="Reason">Why.</param>
/// <param name="Have">How much there is, of what <paramref name="Need"/> counts.</param>
/// <param name="Need">How much it takes.</param>
public sealed record StickRefusal(StickRefusalReason Reason, double Have = 0, double Need = 0) : StickOutcome;

using Tarry.Findings.Conditions;

namespace Tarry.Reports.Merits;

/// <summary>By what conditions are set side by side: of all of them less is better.</summary>
/// <param name="Key">Its name in addresses, such as <c>p95</c>.</param>
/// <param name="Name">Its name in a head of a table, such as <c>standard deviation</c>.</param>
/// <param name="Unit">The unit of its values.</param>
/// <param name="Of">What a condition has of it.</param>
public sealed record FigureOfMerit(string Key, string Name, string Unit, Func<ConditionFinding, MeritValue> Of)
{
    /// <summary>Whether it is a latency, so that it can stand on one axis with the span of the latencies.</summary>
    public bool IsLatency { get; init; }
}

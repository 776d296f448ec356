namespace Tarry.Statistics.Alignment;

/// <summary>How one clock's presses and another's answers are related: a straight line between the clocks, found from the events alone.</summary>
/// <remarks>
/// answer time = offset + (1 + rate) x press time + relative latency. The offset holds the mean latency as well, and a latency that grows steadily is in the rate: what is known is
/// how latencies differ from each other, never how long they are. See <see cref="AlignmentSearch"/> for how it is found.
/// </remarks>
/// <param name="Kind">Whether there is one.</param>
/// <param name="OffsetSeconds">The offset at the first press, the median relative latency in it.</param>
/// <param name="RatePpm">How much faster the answers' clock runs, parts per million.</param>
/// <param name="RateUncertaintyPpm">The standard uncertainty of that, as of independent latencies.</param>
/// <param name="Presses">How many presses there are.</param>
/// <param name="RelativeSeconds">For each press that was answered, in order, its latency less the median.</param>
public sealed record EventAlignment(
    AlignmentKind Kind, double OffsetSeconds, double RatePpm, double RateUncertaintyPpm, int Presses, IReadOnlyList<double> RelativeSeconds)
{
    /// <summary>There is none.</summary>
    /// <param name="why">Why.</param>
    /// <param name="presses">How many presses there are.</param>
    public static EventAlignment None(AlignmentKind why, int presses) => new(why, 0, 0, 0, presses, []);
}

using System.Text.Json.Serialization;
using Tarry.Metrology;

namespace Tarry.Studies.Sessions;

/// <summary>How a live run pressed, in the units of the rig's parameters.</summary>
/// <param name="Response">Response source: <c>edge</c>, <c>light</c> or <c>echo</c>.</param>
/// <param name="IntervalMinUs">Shortest interval from press to press.</param>
/// <param name="IntervalMaxUs">Longest interval.</param>
/// <param name="HoldUs">How long the contact is held.</param>
/// <param name="TimeOutUs">After this a press counts as missed.</param>
/// <param name="RearmUs">Lock-out after a trial.</param>
/// <param name="Seed">Seed of the interval generator.</param>
public sealed record RunSettings(string Response, long IntervalMinUs, long IntervalMaxUs, long HoldUs, long TimeOutUs, long RearmUs, uint Seed)
{
    /// <summary>What the press moved; null for a contact.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public Actuation? Actuation { get; init; }

    /// <summary>
    /// Ticks from the press to the instant that latencies count from: the axis crossing its stated threshold; 0 for everything
    /// that moves at the press. The ramp is timed by the rig's own timer, so the number holds whatever the timer's rate error.
    /// </summary>
    /// <param name="tickHz">Ticks a second as stated.</param>
    public long CrossingTicks(long tickHz) =>
        Actuation?.Axis is { } axis ? new TimerClock(tickHz).ToTicks(axis.CrossingUs) : 0;
}

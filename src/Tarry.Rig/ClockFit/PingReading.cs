namespace Tarry.Rig.ClockFit;

/// <summary>One ping: the host's window, and the rig's counter somewhere inside it.</summary>
/// <param name="SentSeconds">Host time when the ping was sent.</param>
/// <param name="ReceivedSeconds">Host time when the answer was read.</param>
/// <param name="Ticks">The rig's tick counter at the ping's last byte, extended past its wraps.</param>
public readonly record struct PingReading(double SentSeconds, double ReceivedSeconds, long Ticks)
{
    /// <summary>How long the answer took.</summary>
    public double RoundTripSeconds => ReceivedSeconds - SentSeconds;
}

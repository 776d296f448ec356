namespace Tarry.Rig.SimulatedBench;

/// <summary>Between the ticks of a simulated rig, which may run fast or slow, and true time since the bench was made.</summary>
internal sealed class TickScale(uint tickHz, double rateErrorPpm)
{
    private readonly double trueHz = tickHz * (1 + (rateErrorPpm / 1e6));

    public double ToMicroseconds(long ticks) => ticks * 1e6 / trueHz;

    public long ToTicks(double microseconds) => (long)Math.Round(microseconds * trueHz / 1e6);

    public long ToNanoseconds(long ticks) => (long)Math.Ceiling(ticks * 1e9 / trueHz);

    public long FromNanoseconds(long nanoseconds) => (long)Math.Floor(nanoseconds * (trueHz / 1e9));
}

using Tarry.Metrology;
using Tarry.Studies.Sticks;

namespace Tarry.Rig.Sticks;

/// <summary>A recording as shares of the half range about the middle of the range.</summary>
internal sealed class StickPath(StickSession session)
{
    private readonly StickSamples samples = session.Samples;
    private readonly StickRange rangeX = session.Setup.X;
    private readonly StickRange rangeY = session.Setup.Y;

    public int Count => samples.Count;

    public bool ChangesOnly => session.Setup.Source == StickSetup.FromHostEvents;

    public double Seconds => new TimerClock(session.Record.Segments[0].TickHz).ToMicroseconds(samples.Ticks[^1] - samples.Ticks[0]) / 1e6;

    public double SpanX => Span(samples.X) / (rangeX.Maximum - rangeX.Minimum);

    public double SpanY => Span(samples.Y) / (rangeY.Maximum - rangeY.Minimum);

    public double Radius(int index) => Math.Sqrt((X(index) * X(index)) + (Y(index) * Y(index)));

    public double AngleDeg(int index) => ((Math.Atan2(Y(index), X(index)) * 180 / Math.PI) + 360) % 360;

    private double X(int index) => Share(samples.X[index], rangeX);

    private double Y(int index) => Share(samples.Y[index], rangeY);

    private static double Share(double value, StickRange range) => (2 * (value - range.Minimum) / (range.Maximum - range.Minimum)) - 1;

    private static double Span(ReadOnlySpan<double> values)
    {
        var (least, greatest) = (values[0], values[0]);
        foreach (var value in values)
        {
            (least, greatest) = (Math.Min(least, value), Math.Max(greatest, value));
        }

        return greatest - least;
    }
}

using Tarry.Findings.Sticks.Measures;
using Tarry.Metrology;
using Tarry.Studies.Sessions;
using Tarry.Studies.Sticks;

namespace Tarry.Findings.Sticks.Recordings;

/// <summary>A session's positions in per cent of half the range, from the middle of it, over milliseconds from its beginning.</summary>
internal sealed class StickRecording
{
    // Until a converter has answered that it took over a level; a hold lasts longer.
    private const double LongestChangeMs = 100;

    // Of all positions at once, where some are asked for: turns need each of them many times.
    private readonly Lazy<double[]> directions;

    public StickRecording(StickSession session, AxisSteps steps)
    {
        directions = new Lazy<double[]>(Directions);
        Key = session.Record.Key;
        Setup = session.Setup;
        var samples = session.Samples;
        var segment = session.Record.Segments[0];
        var clock = new TimerClock(segment.TickHz, segment.ClockFit?.RateErrorPpm ?? 0);
        TimesMs = new double[samples.Count];
        for (var i = 0; i < TimesMs.Length; i++)
        {
            TimesMs[i] = clock.ToMicroseconds(samples.Ticks[i] - samples.Ticks[0]) / 1_000;
        }

        X = new AxisRecording(samples.X, Setup.X, steps.X, Levels(samples.Stimulus));
        Y = new AxisRecording(samples.Y, Setup.Y, steps.Y, Levels(samples.StimulusY));
        AnglesDeg = Setup.Stimulus == StickStimulus.Angle ? samples.Stimulus.ToArray() : [];
    }

    private StickRecording(StickRecording whole, int[] kept)
    {
        directions = new Lazy<double[]>(Directions);
        (Key, Setup) = (whole.Key, whole.Setup);
        TimesMs = [.. kept.Select(index => whole.TimesMs[index])];
        (X, Y) = (whole.X.Of(kept), whole.Y.Of(kept));
        AnglesDeg = whole.AnglesDeg.Length == 0 ? [] : [.. kept.Select(index => whole.AnglesDeg[index])];
    }

    public SessionKey Key { get; }

    public StickSetup Setup { get; }

    public int Count => TimesMs.Length;

    public double[] TimesMs { get; }

    public double DurationMs => Count < 2 ? 0 : TimesMs[^1];

    public AxisRecording X { get; }

    public AxisRecording Y { get; }

    /// <summary>The true angles, NaN where not known; empty where the recording has none.</summary>
    public double[] AnglesDeg { get; }

    public double Radius(int index) => Math.Sqrt((X.Percent[index] * X.Percent[index]) + (Y.Percent[index] * Y.Percent[index]));

    /// <summary>The direction of a position from the middle of the range, in radians from -pi to pi.</summary>
    public double Direction(int index) => directions.Value[index];

    /// <summary>The same without the few positions about each change of an axis's level at which it is not known; longer times without a level stay.</summary>
    public StickRecording WithoutChanges(StickPart axis)
    {
        var levels = Axis(axis).LevelPercent;
        var kept = new List<int>();
        for (var i = 0; i < levels.Length;)
        {
            var next = i + 1;
            while (next < levels.Length && double.IsNaN(levels[next]) == double.IsNaN(levels[i]))
            {
                next++;
            }

            if (!double.IsNaN(levels[i]) || TimesMs[next - 1] - TimesMs[i] > LongestChangeMs)
            {
                kept.AddRange(Enumerable.Range(i, next - i));
            }

            i = next;
        }

        return kept.Count == levels.Length ? this : new StickRecording(this, [.. kept]);
    }

    public AxisRecording Axis(StickPart part) => part == StickPart.Y ? Y : X;

    private double[] Directions()
    {
        var found = new double[Count];
        for (var i = 0; i < found.Length; i++)
        {
            found[i] = Math.Atan2(Y.Percent[i], X.Percent[i]);
        }

        return found;
    }

    private double[] Levels(ReadOnlySpan<double> stimulus) => Setup.Stimulus == StickStimulus.Level ? stimulus.ToArray() : [];
}

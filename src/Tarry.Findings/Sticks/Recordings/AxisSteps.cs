using Tarry.Findings.Sticks.Measures;
using Tarry.Studies.Sticks;

namespace Tarry.Findings.Sticks.Recordings;

/// <summary>The step of each axis of a condition: the coarsest that a session in motion shows, and no finer than stated.</summary>
/// <param name="X">Of x, in counts; 0 where none is stated and none seen.</param>
/// <param name="Y">Of y.</param>
internal readonly record struct AxisSteps(double X, double Y)
{
    // Where every position differs, the distances between them are no steps.
    private const double Fullness = 0.5;

    /// <summary>The steps, as stated and as sessions in motion show them.</summary>
    public static AxisSteps Of(IReadOnlyList<StickSession> sessions)
    {
        double x = 0, y = 0;
        foreach (var session in sessions)
        {
            var seen = session.Setup.Procedure == StickProcedure.Rest ? null : session.Samples;
            x = Math.Max(x, Of(seen is null ? [] : seen.X, session.Setup.X));
            y = Math.Max(y, Of(seen is null ? [] : seen.Y, session.Setup.Y));
        }

        return new AxisSteps(x, y);
    }

    /// <summary>Adds how many positions each axis can say, from a session in motion.</summary>
    public static void Add(SessionReadings readings, StickSession session)
    {
        Add(readings, StickPart.X, session.Samples.X, session.Setup.X);
        Add(readings, StickPart.Y, session.Samples.Y, session.Setup.Y);
    }

    private static double Of(ReadOnlySpan<double> counts, StickRange range)
    {
        var stated = range.Step ?? 0;
        return counts.Length > 0 && Span(counts) > (range.Maximum - range.Minimum) / 4 && Found(counts) is { } found ? Math.Max(stated, found.Counts) : stated;
    }

    private static FoundStep? Found(ReadOnlySpan<double> counts) =>
        FoundStep.Of(counts) is { } found && counts.Length * Fullness > Span(counts) / found.Counts ? found : null;

    private static double Span(ReadOnlySpan<double> counts)
    {
        var (least, greatest) = (counts[0], counts[0]);
        foreach (var count in counts)
        {
            (least, greatest) = (Math.Min(least, count), Math.Max(greatest, count));
        }

        return greatest - least;
    }

    private static void Add(SessionReadings readings, StickPart part, ReadOnlySpan<double> counts, StickRange range)
    {
        // An axis that hardly moves, on a ramp along the other, has nothing to say here.
        var span = range.Maximum - range.Minimum;
        if (counts.Length == 0 || Span(counts) < span / 4)
        {
            return;
        }

        if (Found(counts) is not { } found)
        {
            readings.Refuse(new StickRefusal(StickRefusalReason.NoStep), (StickMeasure.DistinctSteps, part));
            return;
        }

        var steps = (span / found.Counts) + 1;
        var ideal = range.Step is { } stated ? (span / stated) + 1 : steps;
        readings.Found.Add(new StickReading(StickMeasure.DistinctSteps, part, steps, 0, double.PositiveInfinity, counts.Length, "positions")
        {
            Rectangular = span / found.Counts * found.Uncertainty / found.Counts,
            Ideal = ideal,
            Allowance = 0.3 * ideal,
        });
    }
}

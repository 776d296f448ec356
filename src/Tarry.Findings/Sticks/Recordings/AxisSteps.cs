using Tarry.Findings.Sticks.Measures;
using Tarry.Studies.Sticks;

namespace Tarry.Findings.Sticks.Recordings;

/// <summary>The step of each axis of a condition: the coarsest that a session in motion shows, else what the axis says at rest, and no finer than stated.</summary>
/// <param name="X">Of x.</param>
/// <param name="Y">Of y.</param>
internal readonly record struct AxisSteps(AxisStep X, AxisStep Y)
{
    // Where every position differs, the distances between them are no steps.
    private const double Fullness = 0.5;

    private const double InStrides = 0.95;

    // What converters of wipers tell apart at most; a range of more says nothing about the axis (common practice, no published source).
    private const double FinestOfWipers = 4_096;

    /// <summary>The steps, as stated and as the sessions show them.</summary>
    public static AxisSteps Of(IReadOnlyList<StickSession> sessions) => new(Of(sessions, StickPart.X), Of(sessions, StickPart.Y));

    /// <summary>Adds how many positions each axis can say, from a session in motion.</summary>
    public static void Add(SessionReadings readings, StickSession session)
    {
        Add(readings, session, StickPart.X);
        Add(readings, session, StickPart.Y);
    }

    private static AxisStep Of(IReadOnlyList<StickSession> sessions, StickPart part)
    {
        double stated = 0, moving = 0, resting = 0, range = 0;
        var moved = false;
        foreach (var session in sessions)
        {
            stated = Math.Max(stated, Range(session, part).Step ?? 0);
            range = Math.Max(range, Range(session, part).Maximum - Range(session, part).Minimum);
            moved |= Moves(session, part);
            moving = Math.Max(moving, InMotion(session, part)?.Counts ?? 0);
            resting = Math.Max(resting, session.Setup.Procedure == StickProcedure.Rest ? FoundStep.AtRest(Counts(session, part))?.Counts ?? 0 : 0);
        }

        return new AxisStep(Math.Max(stated, moving > 0 ? moving : resting), moved || resting > 0 || FinestOfWipers * stated >= range);
    }

    private static StickRange Range(StickSession session, StickPart part) => part == StickPart.Y ? session.Setup.Y : session.Setup.X;

    private static ReadOnlySpan<double> Counts(StickSession session, StickPart part) => part == StickPart.Y ? session.Samples.Y : session.Samples.X;

    private static FoundStep? InMotion(StickSession session, StickPart part) => Moves(session, part) ? Found(Counts(session, part)) : null;

    // An axis that hardly moves, on a ramp along the other, has nothing to say of its steps.
    private static bool Moves(StickSession session, StickPart part)
    {
        var counts = Counts(session, part);
        var range = Range(session, part);
        return counts.Length > 0 && Visits(session, part == StickPart.Y ? session.Samples.StimulusY : session.Samples.Stimulus) && Span(counts) >= (range.Maximum - range.Minimum) / 4;
    }

    // Whether neighbouring positions are visited: a slow motion, or levels too many to be steps themselves.
    private static bool Visits(StickSession session, ReadOnlySpan<double> stimulus)
    {
        if (session.Setup.Stimulus != StickStimulus.Level)
        {
            return session.Setup.Procedure is StickProcedure.RimSweep or StickProcedure.SlowRamp;
        }

        var levels = new HashSet<double>();
        foreach (var level in stimulus)
        {
            levels.Add(level);
        }

        return levels.Count > stimulus.Length / 10;
    }

    private static FoundStep? Found(ReadOnlySpan<double> counts) =>
        FoundStep.Of(counts) is { } found && counts.Length * Fullness > Span(counts) / found.Counts && !Strides(counts, found.Counts) ? found : null;

    // A steady motion without noise moves by the same from report to report: that is its speed, and no step.
    private static bool Strides(ReadOnlySpan<double> counts, double step)
    {
        var (moves, strides, before) = (0, 0, false);
        for (var i = 1; i < counts.Length; i++)
        {
            var moved = Math.Abs(counts[i] - counts[i - 1]) / step;
            var single = moved is >= 0.5 and < 1.5;
            (moves, strides, before) = (moves + (moved >= 0.5 ? 1 : 0), strides + (single && before ? 1 : 0), single);
        }

        return strides >= InStrides * moves;
    }

    private static double Span(ReadOnlySpan<double> counts)
    {
        var (least, greatest) = (counts[0], counts[0]);
        foreach (var count in counts)
        {
            (least, greatest) = (Math.Min(least, count), Math.Max(greatest, count));
        }

        return greatest - least;
    }

    private static void Add(SessionReadings readings, StickSession session, StickPart part)
    {
        if (!Moves(session, part))
        {
            return;
        }

        var counts = Counts(session, part);
        var range = Range(session, part);
        if (Found(counts) is not { } found)
        {
            readings.Refuse(new StickRefusal(StickRefusalReason.NoStep), (StickMeasure.DistinctSteps, part));
            return;
        }

        var span = range.Maximum - range.Minimum;
        var steps = Positions(span, found.Counts);
        var ideal = range.Step is { } stated ? (span / stated) + 1 : steps;
        readings.Found.Add(new StickReading(StickMeasure.DistinctSteps, part, steps, 0, double.PositiveInfinity, counts.Length, "positions")
        {
            Resolution = span / found.Counts * found.Uncertainty / found.Counts,
            Ideal = ideal,
            Allowance = 0.3 * ideal,
        });
    }

    // Steps of whole counts, such as of bits that are always 0, leave what is less than a step at the end of the range; others were scaled to fill it.
    private static double Positions(double span, double step) => (step == Math.Floor(step) ? Math.Floor(span / step) : Math.Round(span / step)) + 1;
}

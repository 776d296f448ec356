using Tarry.Rig.Runs;
using Tarry.Studies.Sticks;

namespace Tarry.Rig.Sticks;

/// <summary>How a procedure is done: what it shows, its steps, its caution, and when its recording is accepted.</summary>
/// <param name="Procedure">Which.</param>
/// <param name="Shows">What can be told from it.</param>
/// <param name="Recording">What is done, in words.</param>
/// <param name="Acceptance">When the recording is good enough, in words; <see cref="StickAcceptance"/> checks it.</param>
/// <param name="Steps">The steps in order.</param>
public sealed record StickGuide(StickProcedure Procedure, string Shows, string Recording, string Acceptance, IReadOnlyList<StickStep> Steps)
{
    private const double StopEveryDegrees = 45;
    private const int LevelsOneWay = 33;
    private const double LeastShare = 0.25;
    private const double MostShare = 10;

    /// <summary>What can go wrong for a person or a device; null for nothing.</summary>
    public string? Caution { get; init; }

    /// <summary>How long the steps take, in seconds.</summary>
    public double Seconds => Steps.Sum(step => step.Seconds);

    /// <summary>What is asked of the hand, one after the other: steps that ask the same follow each other as one.</summary>
    public IReadOnlyList<StickPrompt> Prompts
    {
        get
        {
            var (prompts, starts) = (new List<StickPrompt>(), 0.0);
            foreach (var step in Steps)
            {
                if (prompts.Count > 0 && step.Each is null && prompts[^1].Asked == step.Prompt)
                {
                    prompts[^1] = prompts[^1] with { Seconds = prompts[^1].Seconds + step.Seconds };
                }
                else
                {
                    prompts.Add(new StickPrompt(step.Prompt, starts, step.Seconds, step.Repeats, step.Each));
                }

                starts += step.Seconds;
            }

            return prompts;
        }
    }

    /// <summary>All of them, in the order in which they are best done.</summary>
    public static IReadOnlyList<StickGuide> All { get; } = [Rest(), FlickRelease(), RimSweep(), AngleStops(), SlowRamp(), Substitution()];

    /// <summary>The one of a procedure.</summary>
    public static StickGuide Of(StickProcedure procedure) => All.Single(guide => guide.Procedure == procedure);

    /// <summary>The same more slowly or faster: every step longer or shorter alike.</summary>
    /// <param name="seconds">How long the steps take in all: from a quarter of the usual time to ten times as long.</param>
    /// <exception cref="RunSettingsException">It is out of that range.</exception>
    public StickGuide Lasting(double seconds)
    {
        var (least, most) = (LeastShare * Seconds, MostShare * Seconds);
        return seconds >= least && seconds <= most
            ? this with { Steps = [.. Steps.Select(step => step with { Seconds = step.Seconds * seconds / Seconds })] }
            : throw new RunSettingsException(
                FormattableString.Invariant($"{StickProcedures.Name(Procedure)} cannot be done in {seconds:0.###} s."),
                FormattableString.Invariant($"Give it {Math.Ceiling(least):0} to {Math.Floor(most):0} s; {Seconds:0} s is usual."));
    }

    private static StickGuide Rest() => new(
        StickProcedure.Rest,
        "centre, noise and drift",
        "The device lies on the table, its stick free, nobody touches it. Turn the stick once round before and let go.",
        "10 s at least; positions within a tenth of the range; 500 positions, unless the host tells changes only",
        [new StickStep("turn the stick once round along the gate and let go; then take the hands off", 6) { Kept = false }, new StickStep("hands off: do not touch device or table", 60)]);

    private static StickGuide FlickRelease() => new(
        StickProcedure.FlickRelease,
        "return to centre and ringing",
        "Push the stick to the gate and let it spring back by itself, once every two seconds, six times into each of eight directions.",
        "20 releases at least, from four of eight directions",
        [.. Directions().Select(direction => new StickStep($"push to the {direction} and let go", 12) { Repeats = 6, Each = "push" })]);

    private static StickGuide RimSweep() => new(
        StickProcedure.RimSweep,
        "range, circle and hysteresis",
        "Turn the stick slowly along the gate with light pressure, one turn in six seconds, five times round one way and five times the other.",
        "95 of 100 positions beyond half of the way out; every ten degrees passed in both turns with five positions",
        [
            new StickStep("push to the right and stay at the gate", 3) { Kept = false },
            new StickStep("turn counter-clockwise along the gate", 30) { Repeats = 5, Each = "turn" },
            new StickStep("stop, and stay at the gate", 3) { Kept = false },
            new StickStep("turn clockwise along the gate", 30) { Repeats = 5, Each = "turn" },
        ]);

    private static StickGuide AngleStops() => new(
        StickProcedure.AngleStops,
        "angular error",
        "Fix the jig over the stick ('tarry stick jig'), its 0 degrees to the right of the device. Hold the stick against each stop, first counter-clockwise, then back.",
        "four stops at least, each with 50 positions (five where the host tells changes only)",
        [.. Stops().SelectMany(Held), .. Stops().Reverse().SelectMany(Held)])
    {
        Caution = "Cutting the jig: mind fingers and eyes; cut away from you. Fix it with tape that leaves no glue on the device, and never press the stick against it with force.",
    };

    private static StickGuide SlowRamp() => new(
        StickProcedure.SlowRamp,
        "steps, linearity, dead zone and saturation",
        "Move the stick slowly and evenly along one axis from one end to the other and back, against a ruler's edge that keeps it straight; a screw that pushes it is better than a hand.",
        "10 s each way at least; one axis spans six tenths of its range, and its other stays within a quarter",
        [
            new StickStep("push to the left end and stay", 4) { Kept = false },
            new StickStep("move slowly to the right end", 20),
            new StickStep("stay at the right end", 2),
            new StickStep("move slowly back to the left end", 20),
        ]);

    private static StickGuide Substitution() => new(
        StickProcedure.Substitution,
        "linearity, steps and step response against a known voltage",
        "The rig's converter takes the wiper's place and goes through its levels up and down, then in steps; the device's positions, or the rig's own readings, are recorded meanwhile.",
        "nine levels at least, each with 20 positions (one where the host tells changes only)",
        [.. Levels().Select(level => new StickStep("the rig sets the levels: do not touch", 0.5) { LevelX = level }), .. Enumerable.Range(0, 20).Select(index => new StickStep("the rig sets the levels: do not touch", 0.5) { LevelX = index % 2 == 0 ? 0.25 : 0.75 })])
    {
        Caution = "5 V on a 3.3 V device can destroy it: give the converter the device's own stick supply as its reference, measured first, and lift the wiper before you connect. "
            + "Take a lithium cell out or disconnect it before you solder. Local rules and qualified people go before this.",
    };

    private static string[] Directions() => ["right", "upper right", "top", "upper left", "left", "lower left", "bottom", "lower right"];

    private static IEnumerable<double> Stops() => Enumerable.Range(0, (int)(360 / StopEveryDegrees)).Select(index => index * StopEveryDegrees);

    private static IEnumerable<StickStep> Held(double angle)
    {
        var named = FormattableString.Invariant($"the stop at {angle} degrees");
        yield return new StickStep($"go to {named}", 3);
        yield return new StickStep($"hold lightly against {named}", 3) { AngleDeg = angle };
    }

    private static IEnumerable<double> Levels()
    {
        var up = Enumerable.Range(0, LevelsOneWay).Select(index => index / (LevelsOneWay - 1.0)).ToArray();
        return up.Concat(up.Reverse());
    }
}

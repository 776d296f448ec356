using Tarry.Metrology;
using Tarry.Rig.Sticks;
using Tarry.Studies.Sticks;

namespace Tarry.Rig.SimulatedBench.Sticks;

/// <summary>Where a tester's hand has the stem while a procedure is done: the steps of its guide, as one motion in time.</summary>
/// <remarks>A release is a damped swing, r(t) = r0 exp(-z w t) cos(w sqrt(1 - z^2) t), to where friction leaves the stem.</remarks>
internal sealed class StemMotion
{
    private const double FlickSeconds = 2;
    private const double PushSeconds = 0.15;
    private const double ReleaseAfterSeconds = 0.6;
    private const double JigRadius = 0.85;
    private const double TravelSeconds = 0.5;
    private const double HandWobble = 0.03;
    private const double CreepSeconds = 0.03;
    private readonly SimulatedStick stick;
    private readonly StickGuide guide;
    private readonly double pace;
    private readonly List<(double X, double Y)> rests = [];
    private readonly List<double> starts = [0];

    /// <summary>A motion.</summary>
    /// <param name="stick">The stick, whose swing and friction count.</param>
    /// <param name="procedure">What is done.</param>
    /// <param name="pace">How many times as fast as the guide has it.</param>
    /// <param name="random">Draws where the stem comes to rest.</param>
    public StemMotion(SimulatedStick stick, StickProcedure procedure, double pace, SeededGenerator random)
    {
        (this.stick, guide, this.pace) = (stick, StickGuide.Of(procedure), pace);
        foreach (var step in guide.Steps)
        {
            starts.Add(starts[^1] + (step.Seconds / pace));
        }

        for (var release = 0; release <= starts[^1] / FlickSeconds; release++)
        {
            rests.Add((stick.ReturnSd * random.NextNormal(), stick.ReturnSd * random.NextNormal()));
        }
    }

    /// <summary>How long it takes.</summary>
    public double Seconds => starts[^1];

    /// <summary>Whether the positions at an instant are part of the recording.</summary>
    public bool IsKept(double seconds) => guide.Steps[StepAt(seconds)].Kept;

    /// <summary>Where the stem is.</summary>
    public StemPosition At(double seconds)
    {
        var index = StepAt(seconds);
        var within = seconds - starts[index];
        var share = within / (starts[index + 1] - starts[index]);
        return guide.Procedure switch
        {
            StickProcedure.Rest => StemPosition.Free(rests[0].X + (stick.DriftPerMinute * seconds / 60), rests[0].Y),
            StickProcedure.FlickRelease => Flick(seconds, index * 45.0),
            StickProcedure.RimSweep => Rim(index, share),
            StickProcedure.AngleStops => Stops(index, within),
            StickProcedure.SlowRamp => Ramp(index, share, seconds),
            _ => Substituted(guide.Steps[index].LevelX!.Value),
        };
    }

    private int StepAt(double seconds)
    {
        var found = starts.BinarySearch(seconds);
        return Math.Clamp(found >= 0 ? found : ~found - 1, 0, guide.Steps.Count - 1);
    }

    private StemPosition Flick(double seconds, double angleDeg)
    {
        var number = (int)(seconds / FlickSeconds);
        var within = seconds - (number * FlickSeconds);
        var (sine, cosine) = Math.SinCos(angleDeg * Math.PI / 180);
        var (restX, restY) = rests[Math.Min(number, rests.Count - 1)];
        var reach = within < PushSeconds ? within / PushSeconds : within < ReleaseAfterSeconds ? 1 : Swing(within - ReleaseAfterSeconds);
        return StemPosition.Free((reach * cosine) + ((1 - reach) * restX), (reach * sine) + ((1 - reach) * restY));
    }

    private double Swing(double seconds)
    {
        if (stick.RingingHz <= 0)
        {
            return Math.Exp(-seconds / CreepSeconds);
        }

        var natural = 2 * Math.PI * stick.RingingHz / Math.Sqrt(1 - (stick.RingingDamping * stick.RingingDamping));
        return Math.Exp(-stick.RingingDamping * natural * seconds) * Math.Cos(2 * Math.PI * stick.RingingHz * seconds);
    }

    private static StemPosition Rim(int step, double share)
    {
        const double turns = 5;
        var angle = step switch { 1 => turns * share, 3 => -turns * share, _ => 0 } * 2 * Math.PI;
        return StemPosition.Free(Math.Cos(angle), Math.Sin(angle));
    }

    private StemPosition Stops(int index, double within)
    {
        var step = guide.Steps[index];
        if (step.AngleDeg is { } held)
        {
            return Polar(held) with { Stimulus = held };
        }

        var target = guide.Steps[index + 1].AngleDeg!.Value;
        var from = index == 0 ? target : guide.Steps[index - 1].AngleDeg!.Value;
        var change = Math.IEEERemainder(target - from, 360);
        return Polar(from + (change * Math.Min(1, within * pace / TravelSeconds)));

        static StemPosition Polar(double degrees)
        {
            var (sine, cosine) = Math.SinCos(degrees * Math.PI / 180);
            return StemPosition.Free(JigRadius * cosine, JigRadius * sine);
        }
    }

    private static StemPosition Ramp(int step, double share, double seconds)
    {
        var x = step switch { 1 => (2 * share) - 1, 2 => 1, 3 => 1 - (2 * share), _ => -1 };
        // The edge keeps the stem on its axis but for a little.
        return StemPosition.Free(x, HandWobble * Math.Sin(2 * Math.PI * 0.21 * seconds));
    }

    private static StemPosition Substituted(double level) => new((2 * level) - 1, 0, level);
}

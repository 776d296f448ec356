using Tarry.Metrology;
using Tarry.Studies.Sessions;
using Tarry.Studies.Sticks;

namespace Tarry.Findings.Tests.Sticks;

/// <summary>A stick whose faults are known, and what it says under each procedure. Shares no code with what is tested.</summary>
internal sealed record FaultyStick
{
    public double GateRadius { get; init; } = 90;

    public double OffsetX { get; init; }

    public double OffsetY { get; init; }

    public double DriftPerMinute { get; init; }

    public double GainX { get; init; } = 1;

    public double GainY { get; init; } = 1;

    public double SkewDegrees { get; init; }

    public double RotationDegrees { get; init; }

    /// <summary>Width between there and back, of each axis.</summary>
    public double Hysteresis { get; init; }

    public double Noise { get; init; } = 0.1;

    /// <summary>Correlation of neighbouring noise values.</summary>
    public double Correlation { get; init; }

    /// <summary>A tone added to both axes: its frequency and its amplitude.</summary>
    public (double Hertz, double Amplitude) Hum { get; init; }

    public double DeadZone { get; init; }

    public bool DeadZoneIsRadial { get; init; }

    /// <summary>Whether what is left beyond the dead zone is stretched to begin at 0.</summary>
    public bool DeadZoneIsStretched { get; init; } = true;

    /// <summary>The level at which an axis is at its end; 100 for none.</summary>
    public double Saturation { get; init; } = 100;

    public bool SquareMapping { get; init; }

    public double Exponent { get; init; } = 1;

    /// <summary>Amplitude of one period of a sine over the range, added to positions.</summary>
    public double Bend { get; init; }

    /// <summary>Positions along an axis; 65,535 for steps of one count.</summary>
    public int Steps { get; init; } = 65_535;

    public double ReturnLag { get; init; }

    public double ReturnScatter { get; init; }

    public double ReleaseOvershoot { get; init; }

    /// <summary>How a push goes out over its fifth of a second: 1 evenly, 2 beginning gently.</summary>
    public double PushExponent { get; init; } = 1;

    /// <summary>The time constant of the way back after a release.</summary>
    public double ReturnMs { get; init; } = 6;

    public double DelayMs { get; init; }

    public double RiseMs { get; init; } = 1;

    public double RateHz { get; init; } = 500;

    /// <summary>What the range holds on either side, in counts.</summary>
    public const int Half = 32_767;

    public StickSession Rest(ulong seed, string condition = "pad", string sitting = "one", double seconds = 120) =>
        Record(seed, condition, sitting, StickProcedure.Rest, seconds, (_, _) => (0, 0));

    /// <summary>Whole turns, the first half of them counter-clockwise, at a speed that a hand varies.</summary>
    public StickSession Rim(ulong seed, int turnsEachWay = 4, double secondsATurn = 3, string condition = "pad", string sitting = "one", bool bothWays = true)
    {
        var random = SeededGenerator.ForPart(seed, 77);
        var (phase, depth) = (random.NextDouble() * 2 * Math.PI, 0.3 * random.NextDouble());
        var oneWay = turnsEachWay * secondsATurn * 1.02;
        return Record(seed, condition, sitting, StickProcedure.RimSweep, bothWays ? 2 * oneWay : oneWay, (t, _) =>
        {
            var along = t <= oneWay ? t : (2 * oneWay) - t;
            var turn = (2 * Math.PI * along / secondsATurn) + (depth * Math.Sin((2 * Math.PI * along / secondsATurn) + phase));
            return (GateRadius * Math.Cos(turn), GateRadius * Math.Sin(turn));
        });
    }

    /// <summary>Pushes in eight directions in turn: a fifth of a second out, held a quarter, let go, three quarters of rest.</summary>
    public StickSession Flicks(ulong seed, int count = 40, string condition = "pad", string sitting = "one")
    {
        const double each = 1.2;
        var random = SeededGenerator.ForPart(seed, 78);
        var rests = Enumerable.Range(0, count).Select(index =>
        {
            var angle = index * Math.PI / 4;
            return (Angle: angle, X: (ReturnLag * Math.Cos(angle)) + (ReturnScatter * random.NextNormal()), Y: (ReturnLag * Math.Sin(angle)) + (ReturnScatter * random.NextNormal()));
        }).ToList();
        return Record(seed, condition, sitting, StickProcedure.FlickRelease, count * each, (t, _) =>
        {
            var index = Math.Min((int)(t / each), count - 1);
            var (within, rest, before) = (t - (index * each), rests[index], index == 0 ? (Angle: 0, X: 0, Y: 0) : rests[index - 1]);
            var (x, y) = (GateRadius * Math.Cos(rest.Angle), GateRadius * Math.Sin(rest.Angle));
            // A damped return, with an excursion past the rest put onto it.
            var since = within - 0.45;
            var back = since * 1_000 / ReturnMs;
            var share = within < 0.2 ? Math.Pow(within / 0.2, PushExponent) : since < 0 ? 1 : Math.Exp(-back) - (ReleaseOvershoot / 100 * Math.Exp(-Math.Pow((back - 10) / 2, 2)));
            var from = within < 0.2 ? before : rest;
            return (from.X + (share * (x - from.X)), from.Y + (share * (y - from.Y)));
        });
    }

    /// <summary>Holds at stops around the gate, round after round, every other one the other way round where asked; the stops' true angles err by the stated uncertainty.</summary>
    public StickSession Stops(ulong seed, int stops = 8, int rounds = 4, double uncertainty = 0.1, string condition = "pad", string sitting = "one", bool thereAndBack = false)
    {
        var random = SeededGenerator.ForPart(seed, 79);
        var errors = Enumerable.Range(0, stops).Select(_ => uncertainty * random.NextNormal()).ToArray();
        var seating = Enumerable.Range(0, stops * rounds).Select(_ => 0.05 * random.NextNormal()).ToArray();
        int Stop(int hold) => thereAndBack && hold / stops % 2 == 1 ? stops - 1 - (hold % stops) : hold % stops;
        double Stated(double t) => 360.0 / stops * Stop((int)t);
        return Record(
            seed,
            condition,
            sitting,
            StickProcedure.AngleStops,
            stops * rounds,
            (t, _) =>
            {
                var hold = Math.Min((int)t, (stops * rounds) - 1);
                var angle = (Stated(t) + errors[Stop(hold)] + seating[hold] + RotationDegrees) * Math.PI / 180;
                return (GateRadius * Math.Cos(angle), GateRadius * Math.Sin(angle));
            },
            StickStimulus.Angle,
            t => (t - Math.Floor(t) > 0.2 ? Stated(t) : double.NaN, double.NaN),
            uncertainty);
    }

    /// <summary>Sweeps x from end to end and back at known levels, y held in the middle; faster by a share, and held at the ends for the rest.</summary>
    public StickSession Sweeps(ulong seed, int there = 3, double seconds = 10, bool known = true, bool alongY = false, string condition = "pad", string sitting = "one", double reach = 100, double held = 0)
    {
        double Level(double t)
        {
            var pass = t / seconds;
            var within = pass - Math.Floor(pass);
            return reach * Math.Clamp((1 + held) * (((int)pass % 2 == 0 ? 2 * within : 2 - (2 * within)) - 1), -1, 1);
        }

        return Record(
            seed,
            condition,
            sitting,
            known ? StickProcedure.Substitution : StickProcedure.SlowRamp,
            2 * there * seconds,
            (t, _) => alongY ? (0, Level(t)) : (Level(t), 0),
            known ? StickStimulus.Level : StickStimulus.None,
            t => known ? alongY ? (0.5, (Level(t) + 100) / 200) : ((Level(t) + 100) / 200, 0.5) : (double.NaN, double.NaN));
    }

    /// <summary>Holds x at levels from end to end and back, a quarter of a second each.</summary>
    public StickSession Stairs(ulong seed, int levels = 65, int there = 1, string condition = "pad", string sitting = "one")
    {
        const double hold = 0.25;
        double Level(double t)
        {
            var index = (int)((t / hold) + 1e-9) % (2 * levels);
            return (200.0 * (index < levels ? index : (2 * levels) - 1 - index) / (levels - 1)) - 100;
        }

        return Record(seed, condition, sitting, StickProcedure.Substitution, 2 * there * levels * hold, (t, _) => (Level(t), 0), StickStimulus.Level, t => ((Level(t) + 100) / 200, double.NaN));
    }

    /// <summary>Jumps of the x level between a fifth and four fifths, at times that keep no step with the reports.</summary>
    public StickSession Jumps(ulong seed, int count = 40, string condition = "pad", string sitting = "one")
    {
        var random = SeededGenerator.ForPart(seed, 80);
        var times = new double[count];
        var at = 0.3;
        for (var i = 0; i < count; i++)
        {
            times[i] = at;
            at += 0.3 + (0.05 * random.NextDouble());
        }

        double Level(double t)
        {
            var index = Array.BinarySearch(times, t);
            return ((index >= 0 ? index + 1 : ~index) % 2 == 0 ? 0.2 : 0.8) * 200 - 100;
        }

        double Answer(double t)
        {
            var index = Array.BinarySearch(times, t - (DelayMs / 1_000));
            var jumps = index >= 0 ? index + 1 : ~index;
            if (jumps == 0)
            {
                return -60;
            }

            var share = 1 - Math.Exp(-(t - (DelayMs / 1_000) - times[jumps - 1]) * 1_000 / (RiseMs / Math.Log(9)));
            return (jumps % 2 == 0 ? 60 : -60) + ((jumps % 2 == 0 ? -120 : 120) * share);
        }

        return Record(seed, condition, sitting, StickProcedure.Substitution, at, (t, _) => (Answer(t), 0), StickStimulus.Level, t => ((Level(t) + 100) / 200, 0.5));
    }

    private StickSession Record(
        ulong seed,
        string condition,
        string sitting,
        StickProcedure procedure,
        double seconds,
        Func<double, int, (double X, double Y)> position,
        StickStimulus stimulus = StickStimulus.None,
        Func<double, (double X, double Y)>? truth = null,
        double? uncertainty = null)
    {
        var random = SeededGenerator.ForPart(seed, (ulong)procedure + 1);
        var count = (int)(seconds * RateHz);
        var (ticks, xs, ys) = (new long[count], new double[count], new double[count]);
        var (trueX, trueY) = (new double[count], new double[count]);
        var (playX, playY, noiseX, noiseY) = (0.0, 0.0, random.NextNormal(), random.NextNormal());
        var fresh = Math.Sqrt(1 - (Correlation * Correlation));
        for (var i = 0; i < count; i++)
        {
            var t = i / RateHz;
            var (x, y) = position(t, i);
            var skew = SkewDegrees * Math.PI / 180;
            (x, y) = (GainX * x, GainY * ((y * Math.Cos(skew)) + (x * Math.Sin(skew))));
            playX = Math.Clamp(playX, x - (Hysteresis / 2), x + (Hysteresis / 2));
            playY = Math.Clamp(playY, y - (Hysteresis / 2), y + (Hysteresis / 2));
            (noiseX, noiseY) = ((Correlation * noiseX) + (fresh * random.NextNormal()), (Correlation * noiseY) + (fresh * random.NextNormal()));
            var hum = Hum.Amplitude * Math.Sin(2 * Math.PI * Hum.Hertz * t);
            x = playX + OffsetX + (DriftPerMinute * t / 60) + (Noise * noiseX) + hum;
            y = playY + OffsetY + (Noise * noiseY) + hum;
            (x, y) = (x + (Bend * Math.Sin(x * Math.PI / 100)), y + (Bend * Math.Sin(y * Math.PI / 100)));
            (x, y) = Software(x, y);
            ticks[i] = (long)Math.Round(t * 1_000_000);
            (xs[i], ys[i]) = (Rounded(x), Rounded(y));
            (trueX[i], trueY[i]) = truth is null ? (double.NaN, double.NaN) : truth(t);
        }

        return CountedSession.Of(condition, sitting, procedure, new StickSamples(ticks, xs, ys, truth is null ? null : trueX, stimulus == StickStimulus.Level ? trueY : null), stimulus, uncertainty);
    }

    private (double X, double Y) Software(double x, double y)
    {
        if (SquareMapping)
        {
            var radius = Math.Sqrt((x * x) + (y * y));
            var greater = Math.Max(Math.Abs(x), Math.Abs(y));
            (x, y) = greater == 0 ? (x, y) : (x * radius / greater, y * radius / greater);
        }

        if (DeadZoneIsRadial)
        {
            var radius = Math.Sqrt((x * x) + (y * y));
            var scale = radius == 0 ? 0 : Shaped(radius) / radius;
            return (x * scale, y * scale);
        }

        return (Math.Sign(x) * Shaped(Math.Abs(x)), Math.Sign(y) * Shaped(Math.Abs(y)));
    }

    private double Shaped(double size)
    {
        if (size <= DeadZone)
        {
            return 0;
        }

        var share = DeadZoneIsStretched ? (size - DeadZone) / (Saturation - DeadZone) : size / Saturation;
        return 100 * Math.Min(1, Math.Pow(share, Exponent));
    }

    private double Rounded(double percent)
    {
        // Positions of a coarse axis are scaled to the range, as firmware does.
        var step = 2.0 * Half / (Steps - 1);
        var index = Math.Clamp(Math.Round(((percent / 100 * Half) + Half) / step), 0, Steps - 1);
        return Math.Round((index * step) - Half);
    }
}

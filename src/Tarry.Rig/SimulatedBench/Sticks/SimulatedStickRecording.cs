using Tarry.Metrology;
using Tarry.Studies.Sticks;

namespace Tarry.Rig.SimulatedBench.Sticks;

/// <summary>Does a procedure with a simulated stick, and keeps what its reports say; the same seed gives the same recording.</summary>
public static class SimulatedStickRecording
{
    /// <summary>Ticks of a second in the recordings.</summary>
    public const long TickHz = 1_000_000;

    /// <summary>What such a recording is.</summary>
    public static StickSetup Setup(SimulatedStick stick, StickProcedure procedure)
    {
        ArgumentNullException.ThrowIfNull(stick);
        return new StickSetup
        {
            Procedure = procedure,
            Source = StickSetup.FromReports,
            X = stick.Range,
            Y = stick.Range,
            Stimulus = procedure switch
            {
                StickProcedure.AngleStops => StickStimulus.Angle,
                StickProcedure.Substitution => StickStimulus.Level,
                _ => StickStimulus.None,
            },
        };
    }

    /// <summary>The positions.</summary>
    /// <param name="stick">The stick.</param>
    /// <param name="procedure">What is done.</param>
    /// <param name="seed">Seed of its noise and friction.</param>
    /// <param name="pace">How many times as fast as the guide has it; more than zero.</param>
    public static StickSamples Of(SimulatedStick stick, StickProcedure procedure, ulong seed, double pace = 1)
    {
        ArgumentNullException.ThrowIfNull(stick);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(pace);
        var random = SeededGenerator.ForPart(seed, (ulong)procedure);
        var motion = new StemMotion(stick, procedure, pace, random);
        var sensor = new StickSensor(stick, random, touchesWiper: procedure == StickProcedure.Substitution);
        var hasStimulus = procedure is StickProcedure.AngleStops or StickProcedure.Substitution;
        var (ticks, x, y, stimulus) = (new List<long>(), new List<double>(), new List<double>(), new List<double>());
        for (var report = 0L; ; report++)
        {
            var tick = (long)Math.Round(report * stick.ReportIntervalMs * TickHz / 1_000);
            var seconds = tick / (double)TickHz;
            if (seconds >= motion.Seconds)
            {
                break;
            }

            var stem = motion.At(seconds);
            var (countX, countY) = sensor.Read(stem, stick.ReportIntervalMs);
            if (motion.IsKept(seconds))
            {
                ticks.Add(tick);
                x.Add(countX);
                y.Add(countY);
                stimulus.Add(stem.Stimulus);
            }
        }

        double[]? unknown = procedure == StickProcedure.Substitution ? [.. Enumerable.Repeat(double.NaN, ticks.Count)] : null;
        return new StickSamples([.. ticks], [.. x], [.. y], hasStimulus ? [.. stimulus] : null, unknown);
    }
}

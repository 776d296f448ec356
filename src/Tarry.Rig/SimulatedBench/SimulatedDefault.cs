using Tarry.Metrology;
using Tarry.Rig.SimulatedBench.Sticks;
using Tarry.Rig.Sticks;
using Tarry.Rig.Sticks.Recording;
using Tarry.Studies.Sticks;

namespace Tarry.Rig.SimulatedBench;

/// <summary>The bench behind the port <c>simulated</c>: a device on a wire at the condition's stated report rate, or the rig's own loop.</summary>
public static class SimulatedDefault
{
    /// <summary>The port's name.</summary>
    public const string Port = "simulated";

    private const double UsualReportHz = 1000;

    /// <summary>A device on a wire, and a screen.</summary>
    /// <param name="nominalReportHz">Its report rate; 1,000 where the condition states none.</param>
    public static SimulatedDevice Device(double? nominalReportHz) => new()
    {
        FixedDelayMs = 2,
        ReportIntervalMs = 1000 / (nominalReportHz ?? UsualReportHz),
        FrameIntervalMs = 4.1,
        DisplayDelayMs = 5,
        SensorNoiseSdMs = 0.1,
        BounceProbability = 0.02,
    };

    /// <summary>Press output on the response input, or its LED in front of the sensor: nothing in between but noise.</summary>
    public static SimulatedDevice Loop { get; } = new() { FixedDelayMs = 0.0015, SensorNoiseSdMs = 0.0003 };

    /// <summary>An ordinary stick whose wipers the rig reads.</summary>
    /// <param name="procedure">What is done with it.</param>
    public static SimulatedStickHand Stick(StickProcedure procedure) => new(
        new SimulatedStick { OffsetX = 0.015, OffsetY = -0.01, GainX = 0.96, GainY = 0.93, NoiseSd = 0.002, Play = 0.006, ReturnSd = 0.008, RingingHz = 22, RingingDamping = 0.3 },
        procedure);

    /// <summary>The rig with that stick at its converter.</summary>
    /// <param name="seed">The seed of the readings' noise.</param>
    /// <param name="request">What is recorded of it.</param>
    public static SimulatedRigPortSource StickBench(ulong seed, StickRecordingRequest request)
    {
        ArgumentNullException.ThrowIfNull(request);
        var pace = StickGuide.Of(request.Procedure).Seconds / request.Guide.Seconds;
        return new SimulatedRigPortSource(Loop, Rig(seed) with { StickHand = Stick(request.Procedure) with { Pace = pace } });
    }

    /// <summary>The rig.</summary>
    /// <param name="seed">The seed of the run.</param>
    /// <param name="trialsBefore">Trials that the session has already: a bench that goes on must not tell the chances of its beginning again.</param>
    public static SimulatedRigOptions Rig(ulong seed, long trialsBefore = 0) => new()
    {
        Seed = trialsBefore == 0 ? seed : SeededGenerator.ForPart(seed, (ulong)trialsBefore).NextUInt64(),
        ThresholdDelayUs = 12,
        LightWhenDark = 40,
        LightWhenBright = 210,
    };
}

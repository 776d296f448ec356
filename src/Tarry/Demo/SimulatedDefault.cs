using Tarry.Rig.SimulatedBench;
using Tarry.Rig.SimulatedBench.Sticks;
using Tarry.Studies.Sticks;

namespace Tarry.Demo;

/// <summary>The bench behind <c>--port simulated</c>: a device on a wire at the condition's stated report rate, or the rig's own loop.</summary>
internal static class SimulatedDefault
{
    private const double UsualReportHz = 1000;

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
    public static SimulatedStickHand Stick(StickProcedure procedure) => new(
        new SimulatedStick { OffsetX = 0.015, OffsetY = -0.01, GainX = 0.96, GainY = 0.93, NoiseSd = 0.002, Play = 0.006, ReturnSd = 0.008, RingingHz = 22, RingingDamping = 0.3 },
        procedure);

    public static SimulatedRigOptions Rig(ulong seed) => new()
    {
        Seed = seed,
        ThresholdDelayUs = 12,
        LightWhenDark = 40,
        LightWhenBright = 210,
    };
}

using Tarry.Rig.SimulatedBench;

namespace Tarry.Demo;

/// <summary>The device behind <c>--port simulated</c>: a wire at the condition's stated report rate.</summary>
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
}

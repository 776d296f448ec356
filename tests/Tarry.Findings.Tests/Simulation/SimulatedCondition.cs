namespace Tarry.Findings.Tests.Simulation;

/// <summary>The truth behind a condition. Latency = delay + wait for the next report slot + late part + wait for the next frame + noise.</summary>
/// <param name="Id">The condition's id.</param>
/// <param name="Factors">Its factors.</param>
internal sealed record SimulatedCondition(string Id, IReadOnlyDictionary<string, string> Factors)
{
    /// <summary>The mean of its latencies without late ones, whatever its report interval.</summary>
    public double MeanMs { get; init; } = 12;

    /// <summary>The period of its report slots.</summary>
    public double ReportMs { get; init; } = 1;

    /// <summary>How far a slot lies from its grid, as with radio.</summary>
    public double SlotJitterMs { get; init; }

    /// <summary>The period of the frames that show a response; 0 without frames.</summary>
    public double FrameMs { get; init; } = 4.1;

    /// <summary>Noise of the sensor.</summary>
    public double NoiseSdMs { get; init; } = 0.3;

    /// <summary>Share of responses that are late, as after a retry.</summary>
    public double LateShare { get; init; }

    /// <summary>The mean lateness of those, exponential.</summary>
    public double LateMeanMs { get; init; } = 8;

    /// <summary>Share of presses without a response.</summary>
    public double MissedShare { get; init; }

    /// <summary>The standard deviation of its session offsets over that of the design.</summary>
    public double OffsetFactor { get; init; } = 1;

    /// <summary>The report rate that the study file states.</summary>
    public double? NominalReportHz { get; init; }

    /// <summary>When it is pressed.</summary>
    public SimulatedPresses Presses { get; init; } = SimulatedPresses.Free;

    /// <summary>What is added to the latency of trial i of n, such as a warm-up.</summary>
    public Func<int, int, double>? Along { get; init; }

    /// <summary>In how many of its sittings, from the first on, presses and changes are as stated; elsewhere it is clean.</summary>
    public int AffectedSittings { get; init; } = int.MaxValue;

    /// <summary>A condition without stated factors beyond a link.</summary>
    public static SimulatedCondition Plain(string id) => new(id, new Dictionary<string, string> { ["link"] = "usb" });
}

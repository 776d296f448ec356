namespace Tarry.Rig.SimulatedBench;

/// <summary>
/// What lies between the contact and the sensor: press, scan and fixed delay, wait for the next report slot, link, software
/// layer, wait for the next frame, display, sensor noise. Every stage is left out at its default of zero.
/// </summary>
public sealed record SimulatedDevice
{
    /// <summary>Delay of the device that never changes: debounce, processing.</summary>
    public double FixedDelayMs { get; init; }

    /// <summary>The level of an axis, in 1/65535 of its span, that the device takes for a press.</summary>
    public int AxisThreshold { get; init; } = 32_768;

    /// <summary>The device looks at the mean of its axis over this time.</summary>
    public double AxisFilterMs { get; init; }

    /// <summary>The device looks at its contacts at multiples of this.</summary>
    public double ScanIntervalMs { get; init; }

    /// <summary>Time between report slots (T1).</summary>
    public double ReportIntervalMs { get; init; }

    /// <summary>When the first report slot is.</summary>
    public double ReportPhaseMs { get; init; }

    /// <summary>How much faster than stated the device's clock runs.</summary>
    public double ReportClockErrorPpm { get; init; }

    /// <summary>Each report is late by up to this, uniformly.</summary>
    public double ReportJitterMs { get; init; }

    /// <summary>The slots keep a fixed distance from every press, <see cref="ReportPhaseMs"/> after it: locked to the press lattice.</summary>
    public bool SlotsFollowPress { get; init; }

    /// <summary>Time that the link takes.</summary>
    public double LinkDelayMs { get; init; }

    /// <summary>A radio sends only at multiples of this.</summary>
    public double ConnectionIntervalMs { get; init; }

    /// <summary>When the first connection event is.</summary>
    public double ConnectionPhaseMs { get; init; }

    /// <summary>Share of transmissions that fail and are made again.</summary>
    public double RetryProbability { get; init; }

    /// <summary>What a repeat costs; a radio with a connection interval waits for its next event instead.</summary>
    public double RetryDelayMs { get; init; }

    /// <summary>Repeats at most; when all fail the press is missed.</summary>
    public int MaximumRetries { get; init; } = 8;

    /// <summary>Cost of the software layer.</summary>
    public double LayerCostMs { get; init; }

    /// <summary>Time between frames of the application (T2); 0 for none.</summary>
    public double FrameIntervalMs { get; init; }

    /// <summary>When the first frame is.</summary>
    public double FramePhaseMs { get; init; }

    /// <summary>How much faster than stated the frame clock runs.</summary>
    public double FrameClockErrorPpm { get; init; }

    /// <summary>Time from the frame to the light.</summary>
    public double DisplayDelayMs { get; init; }

    /// <summary>Standard deviation of the sensor's noise.</summary>
    public double SensorNoiseSdMs { get; init; }

    /// <summary>What this set-up of the bench adds to every latency.</summary>
    public double SittingOffsetMs { get; init; }

    /// <summary>Added to the first press, and fading in a straight line until the device is warm.</summary>
    public double WarmUpMs { get; init; }

    /// <summary>How long warming up takes.</summary>
    public double WarmUpSeconds { get; init; }

    /// <summary>From here on the latency drifts.</summary>
    public double DriftStartSeconds { get; init; }

    /// <summary>How fast it drifts.</summary>
    public double DriftMsPerMinute { get; init; }

    /// <summary>Share of presses with a late lump.</summary>
    public double LateProbability { get; init; }

    /// <summary>How much later these are.</summary>
    public double LateByMs { get; init; }

    /// <summary>Share of presses that nothing answers.</summary>
    public double MissProbability { get; init; }

    /// <summary>Share of responses with more than one edge.</summary>
    public double BounceProbability { get; init; }

    /// <summary>Share of presses that find the line already active.</summary>
    public double ActiveAtPressProbability { get; init; }
}

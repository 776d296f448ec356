namespace Tarry.Rig.Frames;

/// <summary>One parameter of the rig, by the table of <c>docs/protocol.md</c>.</summary>
/// <param name="Key">Its four letters.</param>
/// <param name="Default">Its value after a reset.</param>
/// <param name="Minimum">The least value allowed.</param>
/// <param name="Maximum">The greatest value allowed.</param>
public sealed record RigParameter(string Key, uint Default, uint Minimum, uint Maximum)
{
    /// <summary>Shortest interval from press to press, us.</summary>
    public static RigParameter IntervalMinimum { get; } = new("imin", 70_000, 2_000, 60_000_000);

    /// <summary>Longest interval from press to press, us; not below the shortest.</summary>
    public static RigParameter IntervalMaximum { get; } = new("imax", 120_000, 2_000, 60_000_000);

    /// <summary>How long the contact is held closed, us.</summary>
    public static RigParameter Hold { get; } = new("hold", 20_000, 100, 30_000_000);

    /// <summary>Nothing within this after the press is a miss, us.</summary>
    public static RigParameter TimeOut { get; } = new("tout", 60_000, 100, 30_000_000);

    /// <summary>How long edges still belong to the trial after release and response, us.</summary>
    public static RigParameter Rearm { get; } = new("rear", 10_000, 0, 30_000_000);

    /// <summary>A response sooner than this is early, us.</summary>
    public static RigParameter EarlyMinimum { get; } = new("emin", 20, 0, 1_000_000);

    /// <summary>Response source: 0 logic edge, 1 light sensor, 2 echo byte.</summary>
    public static RigParameter ResponseSource { get; } = new("resp", 0, 0, 2);

    /// <summary>0: the response is a rising edge; 1: falling.</summary>
    public static RigParameter Polarity { get; } = new("pola", 0, 0, 1);

    /// <summary>Light threshold in 1/256 of the supply.</summary>
    public static RigParameter Threshold { get; } = new("thre", 128, 1, 254);

    /// <summary>Seed of the interval generator.</summary>
    public static RigParameter Seed { get; } = new("seed", 1, 1, uint.MaxValue);

    /// <summary>Sequence number of the first trial.</summary>
    public static RigParameter FirstSequence { get; } = new("firs", 1, 1, uint.MaxValue - 1);

    /// <summary>Number of trials; 0 until stopped.</summary>
    public static RigParameter Count { get; } = new("coun", 0, 0, uint.MaxValue - 1);

    /// <summary>What the press moves: 0 a contact, 1 an axis through an analog switch, 2 an axis through a converter.</summary>
    public static RigParameter Actuator { get; } = new("acti", 0, 0, 2);

    /// <summary>The axis at rest, 1/65535 of the span.</summary>
    public static RigParameter AxisLow { get; } = new("alow", 0, 0, 65_535);

    /// <summary>The axis pressed, 1/65535 of the span.</summary>
    public static RigParameter AxisHigh { get; } = new("ahig", 65_535, 0, 65_535);

    /// <summary>Time from rest to pressed with a converter, us; 0 is a step.</summary>
    public static RigParameter AxisRamp { get; } = new("ramp", 0, 0, 1_000_000);

    /// <summary>1: the rig is the input device.</summary>
    public static RigParameter ReferenceMode { get; } = new("refm", 0, 0, 1);

    /// <summary>Time between the readings of a stream, us.</summary>
    public static RigParameter ReadingInterval { get; } = new("sint", 1_000, 625, 1_000_000);

    /// <summary>What the greatest reading stands for: 0 the voltage at AREF, 1 the board's own supply.</summary>
    public static RigParameter ReadingReference { get; } = new("sref", 0, 0, 1);

    /// <summary>All of them.</summary>
    public static IReadOnlyList<RigParameter> All { get; } =
    [
        IntervalMinimum, IntervalMaximum, Hold, TimeOut, Rearm, EarlyMinimum, ResponseSource, Polarity, Threshold, Seed, FirstSequence, Count,
        Actuator, AxisLow, AxisHigh, AxisRamp, ReferenceMode, ReadingInterval, ReadingReference,
    ];
}

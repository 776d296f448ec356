namespace Tarry.Rig.Runs;

/// <summary>Where a run stands. Trials count only once they are safe on the disk.</summary>
/// <param name="Key">Which session, as written.</param>
/// <param name="Phase">What the run is doing.</param>
/// <param name="CapturedOnDisk">Trials of the session that are on the disk, whatever came of them.</param>
/// <param name="Responses">Trials with a response, so far received.</param>
/// <param name="Missed">Trials without.</param>
/// <param name="Early">Trials with a response too soon.</param>
/// <param name="Refused">Trials that could not be had: gone from the rig before they came through.</param>
/// <param name="MeanMs">Mean latency so far; null with fewer than 40 responses.</param>
/// <param name="HalfWidthMs">Half-width of its 95 % interval by 20 batch means: within this session only; null with fewer than 40 responses.</param>
/// <param name="Remaining">How long it will still take, estimated; null if there is no end or nothing to estimate from.</param>
/// <param name="LastLatenciesMs">The newest latencies, oldest first, at most 50.</param>
/// <param name="Health">How rig and line are doing.</param>
public sealed record RunProgress(
    string Key,
    RunPhase Phase,
    long CapturedOnDisk,
    long Responses,
    long Missed,
    long Early,
    long Refused,
    double? MeanMs,
    double? HalfWidthMs,
    TimeSpan? Remaining,
    IReadOnlyList<double> LastLatenciesMs,
    RigHealth Health);

namespace Tarry.Findings.Samples;

/// <summary>Used latencies whose press times are known, on one unbroken clock: one segment of a session.</summary>
/// <param name="PressesMs">Press times in milliseconds, in capture order.</param>
/// <param name="LatenciesMs">The latency of each.</param>
internal sealed record TimedLatencies(double[] PressesMs, double[] LatenciesMs);

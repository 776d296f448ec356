namespace Tarry.Findings.DeviceOnly;

/// <summary>The density of the device's own delay on an even grid, with a band for the variation of sampling.</summary>
/// <remarks>The band is of sampling variation only: edges are blurred by about the width of the chain's noise, and the band does not hold them.</remarks>
/// <param name="FromMs">Delay of the first point, in milliseconds; zero as in <see cref="DeviceOnlyFinding"/>.</param>
/// <param name="StepMs">Distance between points, in milliseconds.</param>
/// <param name="PerMs">Share of trials per millisecond at each point.</param>
/// <param name="LowPerMs">The low edge of the band at each point.</param>
/// <param name="HighPerMs">The high edge of the band at each point.</param>
/// <param name="Level">The nominal level of the band at a point, such as 0.9.</param>
/// <param name="Iterations">How many iterations the held-out likelihood chose.</param>
/// <param name="BeyondShare">The share of trials later than the grid's end; the density integrates to 1 less this.</param>
/// <param name="Trials">How many trials of the condition it rests on.</param>
/// <param name="ReferenceTrials">How many trials of the reference.</param>
public sealed record DeviceOnlyDensity(
    double FromMs,
    double StepMs,
    IReadOnlyList<double> PerMs,
    IReadOnlyList<double> LowPerMs,
    IReadOnlyList<double> HighPerMs,
    double Level,
    int Iterations,
    double BeyondShare,
    int Trials,
    int ReferenceTrials);

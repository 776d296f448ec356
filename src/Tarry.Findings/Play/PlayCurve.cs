namespace Tarry.Findings.Play;

/// <summary>The probability to hit over the window, as the trials have it: each point with its own best compensation.</summary>
/// <param name="PlayerSdMs">The standard deviation of the player's own timing, in milliseconds.</param>
/// <param name="StepMs">From window to window; the first window is one step.</param>
/// <param name="HitProbabilities">The probability at each window.</param>
public sealed record PlayCurve(double PlayerSdMs, double StepMs, IReadOnlyList<double> HitProbabilities);

namespace Tarry.Findings.Plans;

/// <summary>How much latencies scatter, as a plan takes it.</summary>
/// <param name="SessionSdMs">Standard deviation of a session's true mean about its condition's, in milliseconds.</param>
/// <param name="OwnSessionSdMs">The part of it that the conditions of one sitting do not share: what is left in differences within a sitting.</param>
/// <param name="TrialSdMs">Standard deviation of a trial within its session, in milliseconds.</param>
/// <param name="SessionSdSource">Where the first two come from.</param>
/// <param name="TrialSdSource">Where the third comes from.</param>
/// <param name="Sessions">On how many sessions measured values rest; 0 where nothing is measured.</param>
public sealed record PlanVariances(
    double SessionSdMs,
    double OwnSessionSdMs,
    double TrialSdMs,
    VarianceSource SessionSdSource,
    VarianceSource TrialSdSource,
    int Sessions);

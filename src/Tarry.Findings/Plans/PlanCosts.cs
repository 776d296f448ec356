namespace Tarry.Findings.Plans;

/// <summary>What bench time costs.</summary>
/// <param name="MinutesPerSitting">To set the bench up and take it apart, a sitting.</param>
/// <param name="MinutesPerCondition">To change to the next condition within a sitting.</param>
/// <param name="SecondsPerPress">From press to press.</param>
public sealed record PlanCosts(double MinutesPerSitting, double MinutesPerCondition, double SecondsPerPress)
{
    /// <summary>Half an hour to set up and five minutes to change the device: common practice, no published source. A press every 95 ms: the middle of the run's own default, 70 to 120 ms.</summary>
    public static PlanCosts Default { get; } = new(30, 5, 0.095);

    /// <summary>Bench time in hours.</summary>
    public double Hours(int sittings, int conditions, int trialsPerSession) =>
        sittings * (MinutesPerSitting + (conditions * (MinutesPerCondition + (trialsPerSession * SecondsPerPress / 60)))) / 60;

    /// <summary>What one session costs beyond its presses, in seconds: its share of the sitting and its own change.</summary>
    public double SecondsPerSession(int conditions) => 60 * ((MinutesPerSitting / conditions) + MinutesPerCondition);
}

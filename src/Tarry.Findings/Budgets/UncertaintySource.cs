namespace Tarry.Findings.Budgets;

/// <summary>What the uncertainty of a latency is made of.</summary>
public enum UncertaintySource
{
    /// <summary>The rate of the rig's clock, after its fit against the host's where there is one.</summary>
    ClockRate,

    /// <summary>The rate of the host's clock that the rig's was fitted against.</summary>
    HostClock,

    /// <summary>The counter is read to one tick.</summary>
    Tick,

    /// <summary>From the effect reaching the sensor to its crossing the threshold.</summary>
    ThresholdDelay,

    /// <summary>From the rig's pin to the contact closing.</summary>
    ActuatorDelay,

    /// <summary>What the rig's own reading takes, as a loop-back shows it.</summary>
    LoopBackDelay,

    /// <summary>Which sessions and trials there happened to be.</summary>
    Sampling,
}
